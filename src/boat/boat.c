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

  /* Since the last settling. */
  gboolean unsettled; /* something came, went or moved */
  GPtrArray *fresh;   /* what came or moved */
  GPtrArray *gone;    /* what went, owned: 'all' and 'fresh' may still hold it */
} Table;

/* The index of a record that is not in 'all', or not for long. */
#define ORPHAN G_MAXUINT
#define FRESH (G_MAXUINT - 1)
#define GONE (G_MAXUINT - 2)

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
      table->fresh = g_ptr_array_new ();
      table->gone = g_ptr_array_new_with_free_func ((GDestroyNotify) gb_record_free);
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
      g_ptr_array_unref (boat->tables[k].fresh);
      g_ptr_array_unref (boat->tables[k].gone);
    }
  g_free (boat);
}

static void
note_fresh (Table *table, GbRecord *record)
{
  table->unsettled = TRUE;
  if (record->index == FRESH)
    return;
  record->index = FRESH;
  g_ptr_array_add (table->fresh, record);
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
      record->index = ORPHAN;
      note_fresh (table, record);
      return record;
    }
  if (old->owner != record->owner || old->position != record->position)
    note_fresh (table, old);
  gb_record_assign (old, record);
  gb_record_free (record);
  return old;
}

void
gb_boat_remove (GbBoat *boat, GbRecordKind kind, gint64 id)
{
  Table *table = &boat->tables[kind];
  GbRecord *record = g_hash_table_lookup (table->by_id, &id);

  if (record == NULL)
    return;
  g_hash_table_steal (table->by_id, &id);
  record->index = GONE;
  g_ptr_array_add (table->gone, record);
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

/* What was in order before, without what came, went or moved, and then that by itself. Siblings that stayed are in their order. */
static GPtrArray *
in_order_but_for_fresh (Table *table, guint *n_stayed)
{
  GPtrArray *records = g_ptr_array_sized_new (g_hash_table_size (table->by_id));

  for (guint i = 0; i < table->all->len; i++)
    if (((GbRecord *) table->all->pdata[i])->index < GONE)
      g_ptr_array_add (records, table->all->pdata[i]);
  *n_stayed = records->len;
  /* An orphan may have found its owner. */
  for (guint i = 0; i < table->orphans->len; i++)
    if (((GbRecord *) table->orphans->pdata[i])->index == ORPHAN)
      g_ptr_array_add (records, table->orphans->pdata[i]);
  for (guint i = 0; i < table->fresh->len; i++)
    if (((GbRecord *) table->fresh->pdata[i])->index == FRESH)
      g_ptr_array_add (records, table->fresh->pdata[i]);
  return records;
}

/* Where @owner keeps those of @kind that live in it. */
static GPtrArray **
children_slot (GbRecord *owner, GbRecordKind kind)
{
  return kind == GB_RECORD_OPENING ? &((GbHull *) owner)->openings : &owner->children;
}

static void
forget_children (const GPtrArray *owners, GbRecordKind kind)
{
  for (guint i = 0; i < owners->len; i++)
    {
      GPtrArray *children = *children_slot (owners->pdata[i], kind);

      if (children != NULL)
        g_ptr_array_set_size (children, 0);
    }
}

/* Each record is added to the children of its owner, or to the roots. Those from @n_stayed on go to their place among what is
 * there. */
static void
link_records (Table *table, Table *owners, const GPtrArray *records, guint n_stayed)
{
  GbRecord *owner = NULL;
  g_autoptr (GHashTable) to_sort = g_hash_table_new (NULL, NULL);
  GHashTableIter iter;
  gpointer siblings;

  for (guint i = 0; i < records->len; i++)
    {
      GbRecord *record = records->pdata[i];
      GPtrArray **slot;

      siblings = table->roots;
      if (record->owner != 0)
        {
          /* Siblings mostly follow each other. */
          if (owner == NULL || owner->id != record->owner)
            owner = owners != NULL ? g_hash_table_lookup (owners->by_id, &record->owner) : NULL;
          if (owner == NULL)
            continue;
          slot = children_slot (owner, record->kind);
          if (*slot == NULL)
            *slot = g_ptr_array_new ();
          siblings = *slot;
        }
      g_ptr_array_add (siblings, record);
      if (i >= n_stayed)
        g_hash_table_add (to_sort, siblings);
    }
  g_hash_table_iter_init (&iter, to_sort);
  while (g_hash_table_iter_next (&iter, &siblings, NULL))
    g_ptr_array_sort (siblings, compare_siblings);
}

/* In the flattened tree, what is below a part is what follows it at a greater depth. */
static void
count_below (const GPtrArray *parts)
{
  g_autoptr (GPtrArray) open = g_ptr_array_new ();

  for (guint i = 0; i <= parts->len; i++)
    {
      GbPart *part = i < parts->len ? parts->pdata[i] : NULL;

      while (open->len > (part != NULL ? part->depth : 0))
        {
          GbPart *group = g_ptr_array_steal_index (open, open->len - 1);

          group->n_below = i - group->rec.index - 1;
        }
      if (part != NULL)
        g_ptr_array_add (open, part);
    }
}

/* Fills 'all': the tree flattened, or for what lives in another kind each owner's in turn. */
static void
number_records (Table *table, const Table *owners, GbRecordKind kind, gboolean nested)
{
  for (guint i = 0; i < table->roots->len; i++)
    {
      GbRecord *root = table->roots->pdata[i];

      if (nested)
        ((GbPart *) root)->depth = 0;
      flatten (table, root);
    }
  for (guint i = 0; owners != NULL && !nested && i < owners->all->len; i++)
    {
      const GPtrArray *children = gb_record_children_of (owners->all->pdata[i], kind);

      for (guint j = 0; j < children->len; j++)
        flatten (table, children->pdata[j]);
    }
  if (nested)
    count_below (table->all);
}

static void
settle_table (GbBoat *boat, GbRecordKind kind)
{
  const GbRecordType *type = gb_record_type (kind);
  Table *table = &boat->tables[kind];
  Table *owners = type->owner != GB_N_RECORDS ? &boat->tables[type->owner] : NULL;
  guint n_stayed;
  g_autoptr (GPtrArray) records = in_order_but_for_fresh (table, &n_stayed);

  g_ptr_array_set_size (table->roots, 0);
  g_ptr_array_set_size (table->all, 0);
  g_ptr_array_set_size (table->orphans, 0);
  g_ptr_array_set_size (table->fresh, 0);
  g_ptr_array_set_size (table->gone, 0);
  if (owners == table)
    forget_children (records, kind);
  else if (owners != NULL)
    {
      forget_children (owners->all, kind);
      forget_children (owners->orphans, kind);
    }
  for (guint i = 0; i < records->len; i++)
    ((GbRecord *) records->pdata[i])->index = ORPHAN;

  link_records (table, owners, records, n_stayed);
  number_records (table, owners, kind, type->owner == kind);
  for (guint i = 0; i < records->len; i++)
    if (((GbRecord *) records->pdata[i])->index == ORPHAN)
      g_ptr_array_add (table->orphans, records->pdata[i]);
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

const GPtrArray *
gb_record_children_of (const GbRecord *record, GbRecordKind kind)
{
  const GPtrArray *children;

  if (gb_record_type (kind)->owner != record->kind)
    return no_records ();
  children = kind == GB_RECORD_OPENING ? ((const GbHull *) record)->openings : record->children;
  return children != NULL ? children : no_records ();
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
