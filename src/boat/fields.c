/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-fields"

#include "fields-private.h"
#include "money.h"
#include "outline.h"
#include "quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

G_DEFINE_QUARK (gb-field-error-quark, gb_field_error)

const GbRecordType *
gb_record_type (GbRecordKind kind)
{
  g_return_val_if_fail (kind < GB_N_RECORDS, &gb_record_types[0]);
  return &gb_record_types[kind];
}

const GbRecordType *
gb_record_type_by_name (const char *name)
{
  for (guint i = 0; i < GB_N_RECORDS; i++)
    if (strcmp (gb_record_types[i].name, name) == 0)
      return &gb_record_types[i];
  return NULL;
}

const GbField *
gb_field_find (GbRecordKind kind, const char *name)
{
  const GbRecordType *type = gb_record_type (kind);

  for (guint i = 0; i < type->n_fields; i++)
    if (strcmp (type->fields[i].name, name) == 0)
      return &type->fields[i];
  return NULL;
}

const GbField *
gb_field (GbRecordKind kind, const char *name)
{
  const GbField *field = gb_field_find (kind, name);

  if (field == NULL)
    g_error ("no field '%s' in '%s'", name, gb_record_type (kind)->name);
  return field;
}

GbStorage
gb_field_storage (const GbField *field)
{
  switch (field->dim)
    {
    case GB_DIM_TEXT:
    case GB_DIM_NOTE:
    case GB_DIM_OUTLINE:
      return GB_STORAGE_TEXT;
    case GB_DIM_CHOICE:
    case GB_DIM_FLAG:
    case GB_DIM_REF:
    case GB_DIM_DATE:
    case GB_DIM_MONEY:
      return GB_STORAGE_INTEGER;
    default:
      return GB_STORAGE_REAL;
    }
}

gboolean
gb_field_applies (const GbField *field, const GbRecord *record)
{
  const GbRecordType *type = gb_record_type (field->kind);

  if (record->kind == GB_RECORD_PART && ((const GbPart *) record)->kind == GB_KIND_GROUP)
    {
      static const char *const of_groups[] = { "name", "kind",   "pair",   "quantity", "x",     "y",
                                               "z",    "turn_x", "turn_y", "turn_z",   "notes", NULL };
      return g_strv_contains (of_groups, field->name);
    }
  if (field->when == 0 || type->switcher == NULL)
    return TRUE;

  return (field->when & (1u << gb_field_get_integer (gb_field (field->kind, type->switcher), record))) != 0;
}

guint
gb_field_n_choices (const GbField *field)
{
  guint n = 0;

  while (field->choices != NULL && field->choices[n].name != NULL)
    n++;
  return n;
}

int
gb_field_choice (const GbField *field, const char *name)
{
  for (guint i = 0; i < gb_field_n_choices (field); i++)
    if (strcmp (field->choices[i].name, name) == 0)
      return (int) i;
  return -1;
}

double
gb_field_get_real (const GbField *field, const GbRecord *record)
{
  g_return_val_if_fail (gb_field_storage (field) == GB_STORAGE_REAL, NAN);
  return G_STRUCT_MEMBER (double, record, field->offset);
}

gint64
gb_field_get_integer (const GbField *field, const GbRecord *record)
{
  g_return_val_if_fail (gb_field_storage (field) == GB_STORAGE_INTEGER, 0);
  return G_STRUCT_MEMBER (gint64, record, field->offset);
}

const char *
gb_field_get_text (const GbField *field, const GbRecord *record)
{
  g_return_val_if_fail (gb_field_storage (field) == GB_STORAGE_TEXT, NULL);
  return G_STRUCT_MEMBER (char *, record, field->offset);
}

void
gb_field_set_real (const GbField *field, GbRecord *record, double value)
{
  g_return_if_fail (gb_field_storage (field) == GB_STORAGE_REAL);
  G_STRUCT_MEMBER (double, record, field->offset) = value;
}

void
gb_field_set_integer (const GbField *field, GbRecord *record, gint64 value)
{
  g_return_if_fail (gb_field_storage (field) == GB_STORAGE_INTEGER);
  G_STRUCT_MEMBER (gint64, record, field->offset) = value;
}

void
gb_field_set_text (const GbField *field, GbRecord *record, const char *value)
{
  char **member;

  g_return_if_fail (gb_field_storage (field) == GB_STORAGE_TEXT);
  member = &G_STRUCT_MEMBER (char *, record, field->offset);
  if (*member == value)
    return;
  g_free (*member);
  *member = value != NULL && *value != '\0' ? g_strdup (value) : NULL;
}

static gint64
unknown_integer (const GbField *field)
{
  return field->dim == GB_DIM_MONEY ? GB_MONEY_UNKNOWN : 0;
}

gboolean
gb_field_is_unknown (const GbField *field, const GbRecord *record)
{
  switch (gb_field_storage (field))
    {
    case GB_STORAGE_REAL:
      return isnan (gb_field_get_real (field, record));
    case GB_STORAGE_TEXT:
      return gb_field_get_text (field, record) == NULL;
    case GB_STORAGE_INTEGER:
    default:
      if (field->dim == GB_DIM_CHOICE || field->dim == GB_DIM_FLAG)
        return FALSE;
      return gb_field_get_integer (field, record) == unknown_integer (field);
    }
}

gboolean
gb_field_equal (const GbField *field, const GbRecord *a, const GbRecord *b)
{
  double u, v;

  switch (gb_field_storage (field))
    {
    case GB_STORAGE_REAL:
      u = gb_field_get_real (field, a);
      v = gb_field_get_real (field, b);
      return u == v || (isnan (u) && isnan (v));
    case GB_STORAGE_INTEGER:
      return gb_field_get_integer (field, a) == gb_field_get_integer (field, b);
    case GB_STORAGE_TEXT:
    default:
      return g_strcmp0 (gb_field_get_text (field, a), gb_field_get_text (field, b)) == 0;
    }
}

/* Values ------------------------------------------------------------------------------------------------------------ */

void
gb_value_clear (GbValue *value)
{
  g_clear_pointer (&value->text, g_free);
  g_clear_pointer (&value->typed, g_free);
}

GbValue
gb_field_get (const GbField *field, const GbRecord *record)
{
  GbValue value = { .storage = gb_field_storage (field) };

  switch (value.storage)
    {
    case GB_STORAGE_REAL:
      value.real = gb_field_get_real (field, record);
      break;
    case GB_STORAGE_INTEGER:
      value.integer = gb_field_get_integer (field, record);
      break;
    case GB_STORAGE_TEXT:
      value.text = g_strdup (gb_field_get_text (field, record));
      break;
    }
  value.typed = gb_typed_get (record, field->name);
  return value;
}

void
gb_field_set (const GbField *field, GbRecord *record, const GbValue *value)
{
  g_return_if_fail (value->storage == gb_field_storage (field));

  switch (value->storage)
    {
    case GB_STORAGE_REAL:
      gb_field_set_real (field, record, value->real);
      break;
    case GB_STORAGE_INTEGER:
      gb_field_set_integer (field, record, value->integer);
      break;
    case GB_STORAGE_TEXT:
      gb_field_set_text (field, record, value->text);
      break;
    }
  gb_typed_set (record, field->name, value->typed);
}

GbValue
gb_field_unknown (const GbField *field)
{
  return (GbValue){ .storage = gb_field_storage (field), .real = NAN, .integer = unknown_integer (field) };
}

/* Checks ------------------------------------------------------------------------------------------------------------ */

/* What a text must be besides plain. */
static gboolean
check_meaning (const GbField *field, const char *text, GError **error)
{
  if (field->dim == GB_DIM_OUTLINE)
    {
      g_autoptr (GError) reason = NULL;
      g_autoptr (GbOutline) outline = gb_outline_parse (text, &reason);

      if (outline == NULL)
        g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE, "%s: %s", _ (field->label), reason->message);
      return outline != NULL;
    }
  if (field->offset == G_STRUCT_OFFSET (GbBuild, currency) && field->kind == GB_RECORD_BUILD && !gb_currency_is_valid (text))
    {
      g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE, _ ("%s: three capital letters are expected, such as EUR."),
                   _ (field->label));
      return FALSE;
    }
  return TRUE;
}

static gboolean
check_text (const GbField *field, const char *text, GError **error)
{
  if (!g_utf8_validate (text, -1, NULL))
    {
      g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE, _ ("%s: this text is not UTF-8; plain text is expected."),
                   _ (field->label));
      return FALSE;
    }
  if (g_utf8_strlen (text, -1) > (glong) field->max)
    {
      g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE, _ ("%s: too long; at most %d characters are kept."), _ (field->label),
                   (int) field->max);
      return FALSE;
    }
  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);
      gboolean break_ok = field->dim != GB_DIM_TEXT && (c == '\n' || c == '\t');

      if (g_unichar_iscntrl (c) && !break_ok)
        {
          g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE,
                       _ ("%s: holds a control character (U+%04X); plain text is expected."), _ (field->label), c);
          return FALSE;
        }
    }
  return *text == '\0' || check_meaning (field, text, error);
}

static gboolean
check_real (const GbField *field, double v, GbUnits units, GError **error)
{
  const char *label;
  g_autofree char *min = NULL;
  g_autofree char *max = NULL;
  g_autofree char *is = NULL;

  if (isnan (v))
    return TRUE;
  if (v <= field->max && (v > field->min || (v == field->min && (field->flags & GB_FIELD_ABOVE_MIN) == 0)))
    return TRUE;
  label = _ (field->label);
  if (!isfinite (v))
    {
      g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE, _ ("%s: not a finite number."), label);
      return FALSE;
    }
  min = gb_quantity_format (field->min, field->dim, units);
  max = gb_quantity_format (field->max, field->dim, units);
  is = gb_quantity_format (v, field->dim, units);
  if (v > field->max)
    g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE, _ ("%s: %s is more than any small boat needs; at most %s."), label, is,
                 max);
  else if ((field->flags & GB_FIELD_ABOVE_MIN) != 0)
    g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE, _ ("%s: must be more than %s."), label, min);
  else
    g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE, _ ("%s: must not be less than %s."), label, min);
  return FALSE;
}

static gboolean
check_integer (const GbField *field, gint64 v, GError **error)
{
  switch (field->dim)
    {
    case GB_DIM_CHOICE:
    case GB_DIM_FLAG:
      if (v >= 0 && v < (field->dim == GB_DIM_FLAG ? 2 : (gint64) gb_field_n_choices (field)))
        return TRUE;
      g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE, _ ("%s: there is no such choice."), _ (field->label));
      return FALSE;
    case GB_DIM_REF:
      if (v >= 0)
        return TRUE;
      g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE, _ ("%s: there is no such thing in this build."), _ (field->label));
      return FALSE;
    case GB_DIM_DATE:
      if (v == 0 || (v >= (gint64) field->min && v <= (gint64) field->max))
        return TRUE;
      g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE, _ ("%s: a date from 1900 to 2199 is expected."), _ (field->label));
      return FALSE;
    default:
      if (v == GB_MONEY_UNKNOWN || (v >= (gint64) field->min && v <= (gint64) field->max))
        return TRUE;
      if (v < (gint64) field->min && field->min == 0)
        g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE, _ ("%s: must not be negative."), _ (field->label));
      else
        g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE, _ ("%s: this sum is beyond any small boat."), _ (field->label));
      return FALSE;
    }
}

gboolean
gb_field_check (const GbField *field, const GbValue *value, GError **error)
{
  return gb_field_check_in (field, value, GB_UNITS_METRIC, error);
}

gboolean
gb_field_check_in (const GbField *field, const GbValue *value, GbUnits units, GError **error)
{
  gboolean unknown;

  g_return_val_if_fail (value->storage == gb_field_storage (field), FALSE);

  unknown = (value->storage == GB_STORAGE_TEXT && (value->text == NULL || *value->text == '\0'))
            || (value->storage == GB_STORAGE_REAL && isnan (value->real));
  if (unknown && (field->flags & GB_FIELD_REQUIRED) != 0)
    {
      g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE, _ ("%s: must not be empty."), _ (field->label));
      return FALSE;
    }

  switch (value->storage)
    {
    case GB_STORAGE_TEXT:
      return value->text == NULL || check_text (field, value->text, error);
    case GB_STORAGE_REAL:
      return check_real (field, value->real, units, error);
    case GB_STORAGE_INTEGER:
    default:
      return check_integer (field, value->integer, error);
    }
}

/* Records ----------------------------------------------------------------------------------------------------------- */

GbRecord *
gb_record_new (GbRecordKind kind)
{
  const GbRecordType *type = gb_record_type (kind);
  GbRecord *record = g_malloc0 (type->size);

  record->kind = kind;
  for (guint i = 0; i < type->n_fields; i++)
    {
      const GbField *field = &type->fields[i];

      if (gb_field_storage (field) == GB_STORAGE_REAL)
        gb_field_set_real (field, record, field->start);
      else if (gb_field_storage (field) == GB_STORAGE_INTEGER)
        gb_field_set_integer (field, record, isnan (field->start) ? unknown_integer (field) : (gint64) field->start);
    }
  return record;
}

void
gb_record_assign (GbRecord *to, const GbRecord *from)
{
  const GbRecordType *type = gb_record_type (to->kind);

  g_return_if_fail (to->kind == from->kind);

  to->id = from->id;
  to->owner = from->owner;
  to->position = from->position;
  if (to->typed != from->typed)
    {
      g_free (to->typed);
      to->typed = g_strdup (from->typed);
    }
  for (guint i = 0; i < type->n_fields; i++)
    {
      const GbField *field = &type->fields[i];

      switch (gb_field_storage (field))
        {
        case GB_STORAGE_REAL:
          gb_field_set_real (field, to, gb_field_get_real (field, from));
          break;
        case GB_STORAGE_INTEGER:
          gb_field_set_integer (field, to, gb_field_get_integer (field, from));
          break;
        case GB_STORAGE_TEXT:
          gb_field_set_text (field, to, gb_field_get_text (field, from));
          break;
        }
    }
}

GbRecord *
gb_record_copy (const GbRecord *record)
{
  GbRecord *copy = g_malloc0 (gb_record_type (record->kind)->size);

  copy->kind = record->kind;
  copy->index = record->index;
  gb_record_assign (copy, record);
  return copy;
}

gboolean
gb_record_equal (const GbRecord *a, const GbRecord *b)
{
  const GbRecordType *type = gb_record_type (a->kind);

  if (a->kind != b->kind || a->id != b->id || a->owner != b->owner || a->position != b->position
      || g_strcmp0 (a->typed, b->typed) != 0)
    return FALSE;

  for (guint i = 0; i < type->n_fields; i++)
    if (!gb_field_equal (&type->fields[i], a, b))
      return FALSE;
  return TRUE;
}

void
gb_record_free (GbRecord *record)
{
  const GbRecordType *type;

  if (record == NULL)
    return;
  type = gb_record_type (record->kind);
  for (guint i = 0; i < type->n_fields; i++)
    if (gb_field_storage (&type->fields[i]) == GB_STORAGE_TEXT)
      gb_field_set_text (&type->fields[i], record, NULL);
  g_clear_pointer (&record->children, g_ptr_array_unref);
  if (record->kind == GB_RECORD_HULL)
    g_clear_pointer (&((GbHull *) record)->openings, g_ptr_array_unref);
  g_free (record->typed);
  g_free (record);
}

char *
gb_record_dup_title (const GbRecord *record)
{
  static const char *const keys[] = { "name", "what", "supplier" };
  const GbRecordType *type = gb_record_type (record->kind);

  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    {
      const GbField *field = gb_field_find (record->kind, keys[i]);

      if (field != NULL && gb_field_get_text (field, record) != NULL)
        return g_strdup (gb_field_get_text (field, record));
    }
  return g_strdup (_ (type->label));
}

/* What was typed ---------------------------------------------------------------------------------------------------- */

/* The line of @record's typed text that belongs to @field, or NULL; @end is set behind it. */
static const char *
find_typed (const char *typed, const char *field, const char **end)
{
  gsize n = strlen (field);

  for (const char *line = typed; line != NULL && *line != '\0';)
    {
      const char *stop = strchrnul (line, '\n');

      if (strncmp (line, field, n) == 0 && line[n] == '=')
        {
          *end = stop;
          return line;
        }
      line = *stop == '\n' ? stop + 1 : stop;
    }
  return NULL;
}

char *
gb_typed_get (const GbRecord *record, const char *field)
{
  const char *end;
  const char *line = find_typed (record->typed, field, &end);

  if (line == NULL)
    return NULL;
  line += strlen (field) + 1;
  return g_strndup (line, (gsize) (end - line));
}

static int
compare_lines (gconstpointer a, gconstpointer b)
{
  return strcmp (*(const char *const *) a, *(const char *const *) b);
}

/* The lines are kept sorted: what was typed is the same, in whatever order the fields were filled in. */
void
gb_typed_set (GbRecord *record, const char *field, const char *text)
{
  g_autoptr (GPtrArray) lines = NULL;
  g_auto (GStrv) old = NULL;
  gsize n = strlen (field);

  if (record->typed == NULL && text == NULL)
    return;
  lines = g_ptr_array_new_with_free_func (g_free);
  old = g_strsplit (record->typed != NULL ? record->typed : "", "\n", -1);
  for (guint i = 0; old[i] != NULL; i++)
    if (*old[i] != '\0' && !(strncmp (old[i], field, n) == 0 && old[i][n] == '='))
      g_ptr_array_add (lines, g_strdup (old[i]));
  if (text != NULL)
    g_ptr_array_add (lines, g_strdelimit (g_strconcat (field, "=", text, NULL), "\n", ' '));
  g_ptr_array_sort (lines, compare_lines);
  g_ptr_array_add (lines, NULL);

  g_free (record->typed);
  record->typed = lines->len > 1 ? g_strjoinv ("\n", (char **) lines->pdata) : NULL;
}
