/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-project"

#include "project/record-hub.h"

struct _GbRecordHub
{
  GbProject *project;              /* whose hub this is */
  GHashTable *items[GB_N_RECORDS]; /* id in the item -> GbRecordItem */
  GHashTable *lists;               /* set of GbRecordList */
};

GbRecordHub *
gb_record_hub_new (GbProject *project)
{
  GbRecordHub *hub = g_new0 (GbRecordHub, 1);

  hub->project = project;
  for (guint k = 0; k < GB_N_RECORDS; k++)
    hub->items[k] = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  hub->lists = g_hash_table_new (NULL, NULL);
  return hub;
}

void
gb_record_hub_free (GbRecordHub *hub)
{
  if (hub == NULL)
    return;
  for (guint k = 0; k < GB_N_RECORDS; k++)
    g_hash_table_unref (hub->items[k]);
  g_hash_table_unref (hub->lists);
  g_free (hub);
}

GbRecordItem *
gb_record_hub_find (GbRecordHub *hub, GbRecordKind kind, gint64 id)
{
  return g_hash_table_lookup (hub->items[kind], &id);
}

void
gb_record_hub_add_item (GbRecordHub *hub, GbRecordItem *item)
{
  gint64 id = gb_record_item_get_id (item);

  g_hash_table_insert (hub->items[gb_record_item_get_kind (item)], g_memdup2 (&id, sizeof id), item);
}

void
gb_record_hub_remove_item (GbRecordHub *hub, GbRecordItem *item)
{
  gint64 id = gb_record_item_get_id (item);

  g_hash_table_remove (hub->items[gb_record_item_get_kind (item)], &id);
}

void
gb_record_hub_add_list (GbRecordHub *hub, GbRecordList *list)
{
  g_hash_table_add (hub->lists, list);
}

void
gb_record_hub_remove_list (GbRecordHub *hub, GbRecordList *list)
{
  g_hash_table_remove (hub->lists, list);
}

/* Objects that a handler may let go of while others are still to be told. */
static void
hold (GPtrArray *held, GHashTable *objects)
{
  GHashTableIter iter;
  gpointer object;

  g_hash_table_iter_init (&iter, objects);
  while (g_hash_table_iter_next (&iter, NULL, &object))
    g_ptr_array_add (held, g_object_ref (object));
}

static GHashTable *
owners_of_changed_parts (GbRecordHub *hub, const GbChanges *changes)
{
  const GbBoat *boat = gb_project_get_boat (hub->project);
  GHashTable *owners = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);

  for (guint i = 0; i < changes->changes->len; i++)
    {
      const GbChange *change = &g_array_index (changes->changes, GbChange, i);
      const GbPart *part = change->kind == GB_RECORD_PART ? gb_boat_part (boat, change->id) : NULL;

      if (part != NULL && !g_hash_table_contains (owners, &part->rec.owner))
        g_hash_table_add (owners, g_memdup2 (&part->rec.owner, sizeof part->rec.owner));
    }
  return owners;
}

void
gb_record_hub_tell (GbRecordHub *hub, const GbChanges *changes)
{
  g_autoptr (GHashTable) owners = owners_of_changed_parts (hub, changes);
  GbNews news = { .owners = owners };
  g_autoptr (GPtrArray) lists = g_ptr_array_new_with_free_func (g_object_unref);
  g_autoptr (GPtrArray) items = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint k = 0; k < GB_N_RECORDS; k++)
    news.restructured[k] = gb_changes_restructure (changes, k);
  hold (lists, hub->lists);
  for (guint i = 0; i < lists->len; i++)
    gb_record_list_tell (lists->pdata[i], &news);
  for (guint k = 0; k < GB_N_RECORDS; k++)
    hold (items, hub->items[k]);
  for (guint i = 0; i < items->len; i++)
    gb_record_item_tell (items->pdata[i]);
}
