/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-text-form"

/* A build as text: always the same text for the same build, a line for each field or for each small record. */

#include "text-form-private.h"

#include "boat/money.h"
#include "boat/quantity.h"

#include <math.h>
#include <string.h>

#define INDENT 2
#define MAX_INDENT 80 /* deeper groups are not set in further */
#define ONE_LINE 100  /* a record that fits into so many columns stands on one line */

static gboolean
is_at_start (const GbField *field, const GbRecord *record)
{
  if (gb_field_is_unknown (field, record))
    return isnan (field->start);
  switch (gb_field_storage (field))
    {
    case GB_STORAGE_REAL:
      return gb_field_get_real (field, record) == field->start;
    case GB_STORAGE_INTEGER:
      return gb_field_get_integer (field, record) == field->start;
    case GB_STORAGE_TEXT:
    default:
      return FALSE;
    }
}

/* What was typed, where reading it again gives the same value and the same words. */
static char *
true_typed (const GbField *field, const GbRecord *record, const GbBuild *build)
{
  g_autofree char *typed = gb_typed_get (record, field->name);
  g_auto (GbValue) again = gb_field_unknown (field);
  gboolean same = FALSE;

  if (typed == NULL)
    return NULL;
  if (field->dim == GB_DIM_MONEY)
    same = gb_field_parse (field, typed, build, &again, NULL) && again.integer == gb_field_get_integer (field, record);
  else if (again.storage == GB_STORAGE_REAL)
    same = gb_text_form_quantity (field, typed, &again.real, &again.typed, NULL)
           && again.real == gb_field_get_real (field, record);
  return same && g_strcmp0 (again.typed, typed) == 0 ? g_steal_pointer (&typed) : NULL;
}

static void
append_integer (GString *out, const GbField *field, gint64 v, const GbBuild *build)
{
  g_autofree char *text = NULL;

  switch (field->dim)
    {
    case GB_DIM_CHOICE:
      gb_json_append_string (out, field->choices[v].name);
      break;
    case GB_DIM_FLAG:
      g_string_append (out, v != 0 ? "true" : "false");
      break;
    case GB_DIM_REF:
      g_string_append_printf (out, "%" G_GINT64_FORMAT, v);
      break;
    default:
      text = field->dim == GB_DIM_DATE ? gb_date_format (v) : gb_money_format_plain (v, build->currency);
      gb_json_append_string (out, text);
    }
}

static void
append_value (GString *out, const GbField *field, const GbRecord *record, const GbBuild *build)
{
  if (gb_field_is_unknown (field, record))
    g_string_append (out, "null");
  else if (gb_field_storage (field) == GB_STORAGE_REAL)
    gb_json_append_number (out, gb_field_get_real (field, record));
  else if (gb_field_storage (field) == GB_STORAGE_INTEGER)
    append_integer (out, field, gb_field_get_integer (field, record), build);
  else
    gb_json_append_string (out, gb_field_get_text (field, record));
}

/* The field as it will stand; NULL if it is left out. */
static char *
write_member (const GbField *field, const GbRecord *record, const GbBuild *build)
{
  g_autofree char *typed = true_typed (field, record, build);
  GString *member;

  if (typed == NULL && is_at_start (field, record))
    return NULL;
  member = g_string_new (NULL);
  g_string_printf (member, "\"%s\": ", field->name);
  if (typed != NULL)
    gb_json_append_string (member, typed);
  else
    append_value (member, field, record, build);
  return g_string_free (member, FALSE);
}

/* The record's members, each as it will stand. @position is the one that it would have without saying so. */
static GPtrArray *
list_members (const GbRecord *record, double position, const GbBuild *build)
{
  const GbRecordType *type = gb_record_type (record->kind);
  GPtrArray *members = g_ptr_array_new_with_free_func (g_free);

  if (record->kind != GB_RECORD_BUILD)
    g_ptr_array_add (members, g_strdup_printf ("\"id\": %" G_GINT64_FORMAT, record->id));
  if (record->position != position)
    {
      GString *member = g_string_new ("\"position\": ");

      gb_json_append_number (member, record->position);
      g_ptr_array_add (members, g_string_free (member, FALSE));
    }
  for (guint i = 0; i < type->n_fields; i++)
    {
      char *member = write_member (&type->fields[i], record, build);

      if (member != NULL)
        g_ptr_array_add (members, member);
    }
  return members;
}

static void
new_line (GString *out, guint depth)
{
  g_string_append_c (out, '\n');
  for (guint i = MIN (depth * INDENT, MAX_INDENT); i > 0; i--)
    g_string_append_c (out, ' ');
}

static void
append_lines (GString *out, const GPtrArray *members, guint depth)
{
  for (guint i = 0; i < members->len; i++)
    {
      if (i > 0)
        g_string_append_c (out, ',');
      new_line (out, depth + 1);
      g_string_append (out, members->pdata[i]);
    }
}

/* An object with nothing in it but its members: on one line, or on as many as there are. */
static void
append_object (GString *out, GPtrArray *members, guint depth)
{
  g_autofree char *line = NULL;

  g_ptr_array_add (members, NULL);
  line = g_strjoinv (", ", (char **) members->pdata);
  g_ptr_array_set_size (members, (int) members->len - 1);
  if (depth * INDENT + strlen (line) + strlen ("{  }") <= ONE_LINE && strlen (line) > 0)
    {
      g_string_append_printf (out, "{ %s }", line);
      return;
    }
  g_string_append_c (out, '{');
  append_lines (out, members, depth);
  new_line (out, depth);
  g_string_append_c (out, '}');
}

/* Lists in records in lists: how far each has been written. Not by recursion, for groups may be nested to any depth. */
typedef struct
{
  const GbRecord *owner; /* NULL: the list stands at the top */
  GbRecordKind kind;
  const GPtrArray *list;
  guint next;
} Level;

static void
open_list (GString *out, GArray *levels, const GbRecord *owner, GbRecordKind kind, const GPtrArray *list)
{
  Level level = { owner, kind, list, 0 };

  g_string_append_printf (out, "\"%s\": [", gb_record_type (kind)->name);
  g_array_append_val (levels, level);
}

/* The first kind from @from on of which something lives in @record; GB_N_RECORDS if there is none. */
static GbRecordKind
next_kind_in (const GbRecord *record, GbRecordKind from)
{
  while (from < GB_N_RECORDS && gb_record_children_of (record, from)->len == 0)
    from++;
  return from;
}

/* Opens the next list of what lives in @owner, from the kind @from on. FALSE if there is none. */
static gboolean
open_next_list (GString *out, GArray *levels, guint depth, const GbRecord *owner, GbRecordKind from)
{
  GbRecordKind kind = next_kind_in (owner, from);

  if (kind == GB_N_RECORDS)
    return FALSE;
  g_string_append_c (out, ',');
  new_line (out, depth);
  open_list (out, levels, owner, kind, gb_record_children_of (owner, kind));
  return TRUE;
}

/* Closes the list, and the record that it is in unless that has another. */
static void
close_list (GString *out, GArray *levels)
{
  Level level = g_array_index (levels, Level, levels->len - 1);
  guint depth = levels->len * 2 - 1;

  g_array_set_size (levels, levels->len - 1);
  new_line (out, depth);
  g_string_append_c (out, ']');
  if (level.owner == NULL || open_next_list (out, levels, depth, level.owner, level.kind + 1))
    return;
  new_line (out, depth - 1);
  g_string_append_c (out, '}');
}

static void
append_record (GString *out, GArray *levels, const GbRecord *record, double position, const GbBuild *build)
{
  guint depth = levels->len * 2;
  g_autoptr (GPtrArray) members = list_members (record, position, build);

  new_line (out, depth);
  if (next_kind_in (record, 0) == GB_N_RECORDS)
    {
      append_object (out, members, depth);
      return;
    }
  g_string_append_c (out, '{');
  append_lines (out, members, depth);
  open_next_list (out, levels, depth + 1, record, 0);
}

static void
append_list (GString *out, GbRecordKind kind, const GPtrArray *roots, const GbBuild *build)
{
  g_autoptr (GArray) levels = g_array_new (FALSE, FALSE, sizeof (Level));

  open_list (out, levels, NULL, kind, roots);
  while (levels->len > 0)
    {
      Level *level = &g_array_index (levels, Level, levels->len - 1);
      const GbRecord *record;

      if (level->next == level->list->len)
        {
          close_list (out, levels);
          continue;
        }
      if (level->next > 0)
        g_string_append_c (out, ',');
      record = level->list->pdata[level->next++];
      append_record (out, levels, record, level->next, build);
    }
}

char *
gb_text_form_write (const GbBoat *boat)
{
  const GbBuild *build = gb_boat_build (boat);
  g_autoptr (GPtrArray) members = list_members (&build->rec, 0, build);
  GString *out = g_string_new (NULL);

  g_string_printf (out, "{\n  \"garboard\": %d,\n  \"build\": ", GB_TEXT_FORM_VERSION);
  append_object (out, members, 1);
  for (guint k = GB_RECORD_BUILD + 1; k < GB_N_RECORDS; k++)
    if (gb_boat_roots (boat, k)->len > 0)
      {
        g_string_append (out, ",\n  ");
        append_list (out, k, gb_boat_roots (boat, k), build);
      }
  g_string_append (out, "\n}\n");
  return g_string_free (out, FALSE);
}
