/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-boat"

#include "boat.h"

#include <math.h>

typedef struct
{
  GHashTable *by_id; /* gint64 in the record -> GbRecord, owned */
  GPtrArray *roots;
  GPtrArray *all;
  GPtrArray *orphans;
  gboolean unsettled; /* something came, went or moved */
} Table;

struct _GbBoat
{
  Table tables[GB_N_RECORDS];
};

static const GPtrArray *
no_records (void)
{
  static GPtrArray *none;

  if (g_once_init_enter (&none))
    g_once_init_leave (&none, g_ptr_array_new ());
  return none;
}

GbBoat *
gb_boat_new (void)
{
  GbBoat *boat = g_new0 (GbBoat, 1);
  GbRecord *build;

  for (guint k = 0; k < GB_N_RECORDS; k++)
    {
      Table *table = &boat->tables[k];

      table->by_id = g_hash_table_new_full (g_int64_hash, g_int64_equal, NULL, (GDestroyNotify) gb_record_free);
      table->roots = g_ptr_array_new ();
      table->all = g_ptr_array_new ();
      table->orphans = g_ptr_array_new ();
    }
  build = gb_record_new (GB_RECORD_BUILD);
  build->id = 1;
  gb_boat_take (boat, build);
  gb_boat_settle (boat);
  return boat;
}

GbBoat *
gb_boat_copy (const GbBoat *boat)
{
  GbBoat *copy = gb_boat_new ();

  for (guint k = 0; k < GB_N_RECORDS; k++)
    {
      GHashTableIter iter;
      gpointer record;

      g_hash_table_iter_init (&iter, boat->tables[k].by_id);
      while (g_hash_table_iter_next (&iter, NULL, &record))
        gb_boat_take (copy, gb_record_copy (record));
    }
  gb_boat_settle (copy);
  return copy;
}

void
gb_boat_free (GbBoat *boat)
{
  if (boat == NULL)
    return;
  for (guint k = 0; k < GB_N_RECORDS; k++)
    {
      g_hash_table_unref (boat->tables[k].by_id);
      g_ptr_array_unref (boat->tables[k].roots);
      g_ptr_array_unref (boat->tables[k].all);
      g_ptr_array_unref (boat->tables[k].orphans);
    }
  g_free (boat);
}

GbRecord *
gb_boat_take (GbBoat *boat, GbRecord *record)
{
  Table *table = &boat->tables[record->kind];
  GbRecord *old;

  g_return_val_if_fail (record->id > 0, NULL);

  old = g_hash_table_lookup (table->by_id, &record->id);
  if (old == NULL)
    {
      g_hash_table_insert (table->by_id, &record->id, record);
      table->unsettled = TRUE;
      return record;
    }
  if (old->owner != record->owner || old->position != record->position)
    table->unsettled = TRUE;
  gb_record_assign (old, record);
  gb_record_free (record);
  return old;
}

void
gb_boat_remove (GbBoat *boat, GbRecordKind kind, gint64 id)
{
  Table *table = &boat->tables[kind];

  if (g_hash_table_remove (table->by_id, &id))
    table->unsettled = TRUE;
}

static int
compare_siblings (gconstpointer a, gconstpointer b)
{
  const GbRecord *r = *(const GbRecord *const *) a;
  const GbRecord *s = *(const GbRecord *const *) b;

  if (r->owner != s->owner)
    return r->owner < s->owner ? -1 : 1;
  if (r->position != s->position)
    return r->position < s->position ? -1 : 1;
  return r->id < s->id ? -1 : r->id > s->id;
}

/* Appends @top and, where its kind may hold its own kind, what lives in it, depth first. */
static void
flatten (Table *table, GbRecord *top)
{
  g_autoptr (GPtrArray) stack = g_ptr_array_new ();
  gboolean is_part = top->kind == GB_RECORD_PART;

  g_ptr_array_add (stack, top);
  while (stack->len > 0)
    {
      GbRecord *record = g_ptr_array_steal_index (stack, stack->len - 1);

      record->index = table->all->len;
      g_ptr_array_add (table->all, record);
      if (!is_part)
        continue;
      ((GbPart *) record)->n_below = 0;
      for (guint i = record->children != NULL ? record->children->len : 0; i > 0; i--)
        {
          GbPart *child = record->children->pdata[i - 1];

          child->depth = ((GbPart *) record)->depth + 1;
          g_ptr_array_add (stack, child);
        }
    }
}

/* The children of @owners' kind are cleared and filled anew from the sorted records of @table. */
static void
link_children (Table *table, Table *owners, GPtrArray *sorted)
{
  GHashTableIter iter;
  gpointer value;

  g_hash_table_iter_init (&iter, owners->by_id);
  while (g_hash_table_iter_next (&iter, NULL, &value))
    if (((GbRecord *) value)->children != NULL)
      g_ptr_array_set_size (((GbRecord *) value)->children, 0);

  for (guint i = 0; i < sorted->len; i++)
    {
      GbRecord *record = sorted->pdata[i];
      GbRecord *owner;

      if (record->owner == 0)
        continue;
      owner = g_hash_table_lookup (owners->by_id, &record->owner);
      if (owner == NULL)
        continue;
      if (owner->children == NULL)
        owner->children = g_ptr_array_new ();
      g_ptr_array_add (owner->children, record);
    }
}

static GPtrArray *
sorted_records (const Table *table)
{
  GPtrArray *sorted = g_ptr_array_sized_new (g_hash_table_size (table->by_id));
  GHashTableIter iter;
  gpointer record;

  g_hash_table_iter_init (&iter, table->by_id);
  while (g_hash_table_iter_next (&iter, NULL, &record))
    g_ptr_array_add (sorted, record);
  g_ptr_array_sort (sorted, compare_siblings);
  return sorted;
}

static void
settle_table (GbBoat *boat, GbRecordKind kind)
{
  const GbRecordType *type = gb_record_type (kind);
  Table *table = &boat->tables[kind];
  gboolean owned = type->owner != GB_N_RECORDS;
  gboolean nested = type->owner == kind;
  g_autoptr (GPtrArray) sorted = sorted_records (table);

  g_ptr_array_set_size (table->roots, 0);
  g_ptr_array_set_size (table->all, 0);
  g_ptr_array_set_size (table->orphans, 0);
  if (owned)
    link_children (table, &boat->tables[type->owner], sorted);

  for (guint i = 0; i < sorted->len; i++)
    ((GbRecord *) sorted->pdata[i])->index = G_MAXUINT;
  for (guint i = 0; i < sorted->len; i++)
    {
      GbRecord *record = sorted->pdata[i];

      if (record->owner == 0)
        {
          g_ptr_array_add (table->roots, record);
          if (kind == GB_RECORD_PART)
            ((GbPart *) record)->depth = 0;
          flatten (table, record);
        }
      else if (!nested && g_hash_table_contains (boat->tables[type->owner].by_id, &record->owner))
        {
          record->index = table->all->len;
          g_ptr_array_add (table->all, record);
        }
    }
  for (guint i = 0; i < sorted->len; i++)
    if (((GbRecord *) sorted->pdata[i])->index == G_MAXUINT)
      g_ptr_array_add (table->orphans, sorted->pdata[i]);

  /* Backwards, each part hands its count on to the group that it is in. */
  for (guint i = nested ? table->all->len : 0; i > 0; i--)
    {
      GbPart *part = table->all->pdata[i - 1];
      GbPart *group = (GbPart *) gb_boat_get (boat, kind, part->rec.owner);

      if (group != NULL)
        group->n_below += part->n_below + 1;
    }
}

void
gb_boat_settle (GbBoat *boat)
{
  /* Owners stand before what they own in the list of kinds; a change of owners unsettles what lives in them. */
  for (guint k = 0; k < GB_N_RECORDS; k++)
    {
      GbRecordKind owner = gb_record_type (k)->owner;

      if (owner < k && boat->tables[owner].unsettled)
        boat->tables[k].unsettled = TRUE;
    }
  for (guint k = 0; k < GB_N_RECORDS; k++)
    if (boat->tables[k].unsettled)
      {
        settle_table (boat, k);
        boat->tables[k].unsettled = FALSE;
      }
}

const GbBuild *
gb_boat_build (const GbBoat *boat)
{
  return (const GbBuild *) gb_boat_get (boat, GB_RECORD_BUILD, 1);
}

GbRecord *
gb_boat_get (const GbBoat *boat, GbRecordKind kind, gint64 id)
{
  return id != 0 ? g_hash_table_lookup (boat->tables[kind].by_id, &id) : NULL;
}

const GbMaterial *
gb_boat_material (const GbBoat *boat, gint64 id)
{
  return (const GbMaterial *) gb_boat_get (boat, GB_RECORD_MATERIAL, id);
}

const GbStock *
gb_boat_stock (const GbBoat *boat, gint64 id)
{
  return (const GbStock *) gb_boat_get (boat, GB_RECORD_STOCK, id);
}

const GbPart *
gb_boat_part (const GbBoat *boat, gint64 id)
{
  return (const GbPart *) gb_boat_get (boat, GB_RECORD_PART, id);
}

const GbHull *
gb_boat_hull (const GbBoat *boat, gint64 id)
{
  return (const GbHull *) gb_boat_get (boat, GB_RECORD_HULL, id);
}

const GPtrArray *
gb_boat_roots (const GbBoat *boat, GbRecordKind kind)
{
  return boat->tables[kind].roots;
}

const GPtrArray *
gb_boat_all (const GbBoat *boat, GbRecordKind kind)
{
  return boat->tables[kind].all;
}

const GPtrArray *
gb_boat_orphans (const GbBoat *boat, GbRecordKind kind)
{
  return boat->tables[kind].orphans;
}

guint
gb_boat_n (const GbBoat *boat, GbRecordKind kind)
{
  return boat->tables[kind].all->len;
}

const GPtrArray *
gb_record_children (const GbRecord *record)
{
  return record->children != NULL ? record->children : no_records ();
}

gboolean
gb_boat_is_below (const GbBoat *boat, gint64 id, gint64 ancestor)
{
  /* A cycle cannot be longer than there are parts. */
  guint left = g_hash_table_size (boat->tables[GB_RECORD_PART].by_id) + 1;

  for (const GbPart *part = gb_boat_part (boat, id); part != NULL && left > 0; left--)
    {
      if (part->rec.id == ancestor)
        return TRUE;
      part = gb_boat_part (boat, part->rec.owner);
    }
  return FALSE;
}

double
gb_position_between (double before, double after)
{
  if (isnan (before) && isnan (after))
    return 1;
  if (isnan (before))
    return after - 1;
  if (isnan (after))
    return before + 1;
  return before + (after - before) / 2;
}

static gboolean
table_equal (const Table *a, const Table *b, const GbRecordType *type, char **difference)
{
  GHashTableIter iter;
  gpointer value;

  if (g_hash_table_size (a->by_id) != g_hash_table_size (b->by_id))
    {
      if (difference != NULL)
        *difference = g_strdup_printf ("%s: %u records against %u", type->name, g_hash_table_size (a->by_id),
                                       g_hash_table_size (b->by_id));
      return FALSE;
    }
  g_hash_table_iter_init (&iter, a->by_id);
  while (g_hash_table_iter_next (&iter, NULL, &value))
    {
      const GbRecord *record = value;
      const GbRecord *other = g_hash_table_lookup (b->by_id, &record->id);

      if (other == NULL || !gb_record_equal (record, other))
        {
          if (difference != NULL)
            *difference = g_strdup_printf ("%s %" G_GINT64_FORMAT " %s", type->name, record->id,
                                           other == NULL ? "is in one only" : "differs");
          return FALSE;
        }
    }
  return TRUE;
}

gboolean
gb_boat_equal (const GbBoat *a, const GbBoat *b, char **difference)
{
  for (guint k = 0; k < GB_N_RECORDS; k++)
    if (!table_equal (&a->tables[k], &b->tables[k], gb_record_type (k), difference))
      return FALSE;
  return TRUE;
}
