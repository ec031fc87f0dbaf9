/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-project"

#include "project/edit-private.h"

struct _GbEdit
{
  char *words;
  GbPlace place;
  GPtrArray *puts;   /* of GbRecord, owned, in order */
  GHashTable *index; /* kind and id of a put -> itself */
  GArray *deletions; /* of GbRecordKey */
  GHashTable *gone;  /* the same, as a set of GbRecordKey, owned */
  gint64 last_provisional;
};

static guint
record_hash (gconstpointer key)
{
  const GbRecord *record = key;

  return g_int64_hash (&record->id) * GB_N_RECORDS + record->kind;
}

static gboolean
record_same (gconstpointer a, gconstpointer b)
{
  const GbRecord *r = a, *s = b;

  return r->kind == s->kind && r->id == s->id;
}

static guint
key_hash (gconstpointer data)
{
  const GbRecordKey *key = data;

  return g_int64_hash (&key->id) * GB_N_RECORDS + key->kind;
}

static gboolean
key_same (gconstpointer a, gconstpointer b)
{
  const GbRecordKey *k = a, *l = b;

  return k->kind == l->kind && k->id == l->id;
}

GbEdit *
gb_edit_new (const char *words, GbRecordKind kind, gint64 id, const char *field)
{
  GbEdit *edit = g_new0 (GbEdit, 1);

  edit->words = g_strdup (words);
  edit->place = (GbPlace){ kind, id, field != NULL ? gb_field (kind, field)->name : NULL };
  edit->puts = g_ptr_array_new_with_free_func ((GDestroyNotify) gb_record_free);
  edit->index = g_hash_table_new (record_hash, record_same);
  edit->deletions = g_array_new (FALSE, FALSE, sizeof (GbRecordKey));
  edit->gone = g_hash_table_new_full (key_hash, key_same, g_free, NULL);
  return edit;
}

void
gb_edit_free (GbEdit *edit)
{
  if (edit == NULL)
    return;
  g_free (edit->words);
  g_hash_table_unref (edit->index);
  g_ptr_array_unref (edit->puts);
  g_array_unref (edit->deletions);
  g_hash_table_unref (edit->gone);
  g_free (edit);
}

static void
take_place (GbEdit *edit, GbRecordKind kind, gint64 id)
{
  if (edit->place.id == 0)
    edit->place = (GbPlace){ kind, id, NULL };
}

gint64
gb_edit_put (GbEdit *edit, GbRecord *record)
{
  GbRecord *before;
  guint position;

  if (record->id == 0)
    record->id = edit->last_provisional - 1;
  edit->last_provisional = MIN (edit->last_provisional, record->id);
  take_place (edit, record->kind, record->id);

  before = g_hash_table_lookup (edit->index, record);
  if (before == record)
    return record->id;
  g_hash_table_replace (edit->index, record, record);
  if (before == NULL)
    g_ptr_array_add (edit->puts, record);
  else if (g_ptr_array_find (edit->puts, before, &position))
    {
      gb_record_free (before);
      edit->puts->pdata[position] = record;
    }
  return record->id;
}

void
gb_edit_delete (GbEdit *edit, GbRecordKind kind, gint64 id)
{
  GbRecordKey key = { kind, id };

  take_place (edit, kind, id);
  if (g_hash_table_add (edit->gone, g_memdup2 (&key, sizeof key)))
    g_array_append_val (edit->deletions, key);
}

const char *
gb_edit_words (const GbEdit *edit)
{
  return edit->words;
}

const GbPlace *
gb_edit_place (const GbEdit *edit)
{
  return &edit->place;
}

guint
gb_edit_n_puts (const GbEdit *edit)
{
  return edit->puts->len;
}

const GPtrArray *
gb_edit_puts (const GbEdit *edit)
{
  return edit->puts;
}

const GArray *
gb_edit_deletions (const GbEdit *edit)
{
  return edit->deletions;
}

GbRecord *
gb_edit_get (const GbEdit *edit, GbRecordKind kind, gint64 id)
{
  GbRecord key = { .kind = kind, .id = id };

  return g_hash_table_lookup (edit->index, &key);
}

GbRecord *
gb_edit_touch (GbEdit *edit, const GbBoat *boat, GbRecordKind kind, gint64 id)
{
  GbRecord *record = gb_edit_get (edit, kind, id);

  if (record == NULL && gb_boat_get (boat, kind, id) != NULL)
    {
      record = gb_record_copy (gb_boat_get (boat, kind, id));
      gb_edit_put (edit, record);
    }
  return record;
}

/* TRUE if @record, or something that it lives in, is deleted. What the edit moves out of a deleted owner is
 * saved by its put. */
static gboolean
is_deleted (const GbEdit *edit, const GbBoat *boat, const GbRecord *record)
{
  guint left = gb_boat_n (boat, GB_RECORD_PART) + edit->puts->len + GB_N_RECORDS; /* a cycle is not longer */

  if (g_hash_table_size (edit->gone) == 0)
    return FALSE;
  for (; record != NULL && left > 0; left--)
    {
      GbRecordKey key = { record->kind, record->id };
      GbRecordKind owner_kind = gb_record_type (record->kind)->owner;
      GbRecord *owner = NULL;

      if (g_hash_table_contains (edit->gone, &key))
        return TRUE;
      if (owner_kind != GB_N_RECORDS && record->owner != 0)
        {
          owner = gb_edit_get (edit, owner_kind, record->owner);
          if (owner == NULL)
            owner = gb_boat_get (boat, owner_kind, record->owner);
        }
      record = owner;
    }
  return FALSE;
}

const GbRecord *
gb_edit_after (const GbEdit *edit, const GbBoat *boat, GbRecordKind kind, gint64 id)
{
  const GbRecord *record = gb_edit_get (edit, kind, id);

  if (record == NULL)
    record = gb_boat_get (boat, kind, id);
  return record != NULL && !is_deleted (edit, boat, record) ? record : NULL;
}

void
gb_edit_drop_unchanged (GbEdit *edit, const GbBoat *boat)
{
  for (guint i = edit->puts->len; i > 0; i--)
    {
      GbRecord *record = edit->puts->pdata[i - 1];
      const GbRecord *old = gb_boat_get (boat, record->kind, record->id);

      if (old == NULL || !gb_record_equal (record, old))
        continue;
      g_hash_table_remove (edit->index, record);
      g_ptr_array_remove_index (edit->puts, i - 1);
    }
}

/* Ids ---------------------------------------------------------------------------------------------------- */

/* The real id of what had the provisional @id; @id itself where it was none. */
static gint64
real_id (GHashTable *real, GbRecordKind kind, gint64 id)
{
  GbRecordKey key = { kind, id };
  const gint64 *found = id < 0 ? g_hash_table_lookup (real, &key) : NULL;

  return found != NULL ? *found : id;
}

static void
map_references (GHashTable *real, GbRecord *record)
{
  const GbRecordType *type = gb_record_type (record->kind);

  record->owner = real_id (real, type->owner, record->owner);
  for (guint i = 0; i < type->n_fields; i++)
    {
      const GbField *field = &type->fields[i];

      if (field->dim == GB_DIM_REF)
        gb_field_set_integer (field, record,
                              real_id (real, field->refers_to, gb_field_get_integer (field, record)));
    }
}

void
gb_edit_assign_ids (GbEdit *edit, gint64 (*next_id) (GbRecordKind kind, gpointer data), gpointer data)
{
  g_autoptr (GHashTable) real = g_hash_table_new_full (key_hash, key_same, g_free, g_free);

  for (guint i = 0; i < edit->puts->len; i++)
    {
      GbRecord *record = edit->puts->pdata[i];
      GbRecordKey key = { record->kind, record->id };

      if (record->id >= 0)
        continue;
      g_hash_table_remove (edit->index, record);
      record->id = next_id (record->kind, data);
      g_hash_table_add (edit->index, record);
      g_hash_table_insert (real, g_memdup2 (&key, sizeof key), g_memdup2 (&record->id, sizeof record->id));
    }
  for (guint i = 0; i < edit->puts->len; i++)
    map_references (real, edit->puts->pdata[i]);
  edit->place.id = real_id (real, edit->place.kind, edit->place.id);
}
