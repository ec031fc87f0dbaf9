/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-project"

#include "project/copying.h"

#include "project/edit-private.h"
#include "project/names.h"

#include <string.h>

typedef struct
{
  const GbRecord *original;
  GbRecord *copy; /* the edit's */
} Pair;

struct _GbCopying
{
  GbEdit *edit;
  const GbBoat *from, *to;
  GArray *pairs;      /* of Pair; grows while it is worked through */
  GHashTable *copies; /* original -> copy */
  GHashTable *names;  /* names that are taken, folded; NULL until asked for */
  gboolean other_money;
};

GbCopying *
gb_copying_new (GbEdit *edit, const GbBoat *from, const GbBoat *to)
{
  GbCopying *copying = g_new0 (GbCopying, 1);

  copying->edit = edit;
  copying->from = from;
  copying->to = to;
  copying->pairs = g_array_new (FALSE, FALSE, sizeof (Pair));
  copying->copies = g_hash_table_new (NULL, NULL);
  copying->other_money = g_strcmp0 (gb_boat_build (from)->currency, gb_boat_build (to)->currency) != 0;
  return copying;
}

void
gb_copying_free (GbCopying *copying)
{
  if (copying == NULL)
    return;
  g_array_unref (copying->pairs);
  g_hash_table_unref (copying->copies);
  g_clear_pointer (&copying->names, g_hash_table_unref);
  g_free (copying);
}

static void
forget_money (GbRecord *record)
{
  const GbRecordType *type = gb_record_type (record->kind);

  for (guint i = 0; i < type->n_fields; i++)
    if (type->fields[i].dim == GB_DIM_MONEY)
      {
        g_auto (GbValue) unknown = gb_field_unknown (&type->fields[i]);

        gb_field_set (&type->fields[i], record, &unknown);
      }
}

GbRecord *
gb_copying_add (GbCopying *copying, const GbRecord *record)
{
  Pair pair = { record, gb_record_copy (record) };

  pair.copy->id = 0;
  pair.copy->owner = 0;
  pair.copy->position = 0;
  if (record->kind == GB_RECORD_PART)
    ((GbPart *) pair.copy)->state = GB_STATE_PLANNED;
  if (copying->other_money)
    forget_money (pair.copy);
  gb_edit_put (copying->edit, pair.copy);
  g_array_append_val (copying->pairs, pair);
  g_hash_table_insert (copying->copies, (gpointer) record, pair.copy);
  return pair.copy;
}

static void
copy_children (GbCopying *copying, const GPtrArray *children, gint64 owner)
{
  for (guint i = 0; i < children->len; i++)
    {
      GbRecord *copy = gb_copying_add (copying, children->pdata[i]);

      copy->owner = owner;
      copy->position = i + 1;
    }
}

/* Copies what lives in the pairs from @first on, to any depth. */
static void
copy_below (GbCopying *copying, guint first)
{
  for (guint i = first; i < copying->pairs->len; i++)
    {
      Pair pair = g_array_index (copying->pairs, Pair, i);

      for (guint k = 0; k < GB_N_RECORDS; k++)
        copy_children (copying, gb_record_children_of (pair.original, k), pair.copy->id);
    }
}

/* The record of the other build that is the same as @record, as far as one can tell. */
static gint64
find_same (const GbCopying *copying, const GbRecord *record)
{
  const GbRecord *same = gb_boat_get (copying->to, record->kind, record->id);
  g_autofree char *title = gb_record_dup_title (record);
  g_autofree char *same_title = same != NULL ? gb_record_dup_title (same) : NULL;
  g_autoptr (GPtrArray) found = NULL;

  if (g_strcmp0 (title, same_title) == 0)
    return same->id;
  found = gb_names_find (copying->to, record->kind, title);
  return found->len > 0 ? ((const GbRecord *) found->pdata[0])->id : 0;
}

static gboolean
is_carried_along (GbRecordKind kind)
{
  return kind == GB_RECORD_MATERIAL || kind == GB_RECORD_STOCK || kind == GB_RECORD_CATEGORY;
}

static gint64
map_reference (GbCopying *copying, GbRecordKind kind, gint64 id)
{
  const GbRecord *meant = gb_boat_get (copying->from, kind, id);
  const GbRecord *copy = meant != NULL ? g_hash_table_lookup (copying->copies, meant) : NULL;
  guint first = copying->pairs->len;
  gint64 same;

  if (copy != NULL)
    return copy->id;
  if (meant == NULL || copying->from == copying->to)
    return id;
  same = find_same (copying, meant);
  if (same != 0 || !is_carried_along (kind))
    return same;
  copy = gb_copying_add (copying, meant);
  copy_below (copying, first);
  return copy->id;
}

void
gb_copying_finish (GbCopying *copying)
{
  copy_below (copying, 0);
  for (guint i = 0; i < copying->pairs->len; i++)
    {
      GbRecord *copy = g_array_index (copying->pairs, Pair, i).copy;
      const GbRecordType *type = gb_record_type (copy->kind);

      for (guint j = 0; j < type->n_fields; j++)
        {
          const GbField *field = &type->fields[j];

          if (field->dim == GB_DIM_REF)
            gb_field_set_integer (
              field, copy, map_reference (copying, field->refers_to, gb_field_get_integer (field, copy)));
        }
    }
}

/* Names -------------------------------------------------------------------------------------------------- */

static GHashTable *
taken_names (const GbBoat *boat, GbRecordKind kind)
{
  const GPtrArray *all = gb_boat_all (boat, kind);
  GHashTable *names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < all->len; i++)
    {
      g_autofree char *title = gb_record_dup_title (all->pdata[i]);

      g_hash_table_add (names, g_utf8_casefold (title, -1));
    }
  return names;
}

/* Where the number at the end of @name begins, and the number; at the end and 1 if there is none (or one too
 * long to count on). */
static gsize
split_number (const char *name, guint64 *number)
{
  gsize length = strlen (name);
  gsize start = length;

  while (start > 0 && g_ascii_isdigit (name[start - 1]))
    start--;
  *number = 1;
  if (start == length || length - start > 9)
    return length;
  *number = g_ascii_strtoull (name + start, NULL, 10);
  return start;
}

void
gb_copying_rename (GbCopying *copying, GbRecord *copy)
{
  const GbField *field = gb_field_find (copy->kind, "name");
  const char *name = field != NULL ? gb_field_get_text (field, copy) : NULL;
  g_autofree char *base = NULL;
  guint64 number;
  gsize start;

  if (name == NULL)
    return;
  if (copying->names == NULL)
    copying->names = taken_names (copying->to, copy->kind);
  start = split_number (name, &number);
  base = name[start] == '\0' ? g_strconcat (name, " ", NULL) : g_strndup (name, start);
  for (;;)
    {
      g_autofree char *next = g_strdup_printf ("%s%" G_GUINT64_FORMAT, base, ++number);

      if (g_hash_table_add (copying->names, g_utf8_casefold (next, -1)))
        {
          gb_field_set_text (field, copy, next);
          return;
        }
    }
}

void
gb_copying_hand_out (const GPtrArray *records, GArray **ids)
{
  if (ids == NULL)
    return;
  *ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  for (guint i = 0; i < records->len; i++)
    g_array_append_val (*ids, ((const GbRecord *) records->pdata[i])->id);
}
