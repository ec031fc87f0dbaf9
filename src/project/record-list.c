/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-project"

/* A list keeps the keys of its rows and sets them against the boat after each change of structure; what
 * differs is told run by run, with the list as it stands after each run. */

#include "project/project-private.h"
#include "project/record-hub.h"
#include "project/row-diff.h"
#include "project/siblings.h"

struct _GbRecordList
{
  GObject parent_instance;

  GbProject *project; /* holds the hub that knows this list */
  GbRecordKind kind;
  gint64 owner;
  gboolean is_all;
  GArray *keys; /* of gint64, see key_of() */
};

static void gb_record_list_iface_init (GListModelInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (GbRecordList, gb_record_list, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, gb_record_list_iface_init))

/* A row's key is its id; of a group the id below 0, so that a part that becomes a group is another row. */
static gint64
key_of (const GbRecord *record)
{
  gboolean is_group = record->kind == GB_RECORD_PART && ((const GbPart *) record)->kind == GB_KIND_GROUP;

  return is_group ? -record->id : record->id;
}

static GArray *
read_keys (GbRecordList *self)
{
  const GbBoat *boat = gb_project_get_boat (self->project);
  const GPtrArray *records
    = self->is_all ? gb_boat_all (boat, self->kind) : gb_siblings (boat, self->kind, self->owner);
  guint n = records != NULL ? records->len : 0;
  GArray *keys = g_array_sized_new (FALSE, FALSE, sizeof (gint64), n);

  for (guint i = 0; i < n; i++)
    {
      gint64 key = key_of (records->pdata[i]);

      g_array_append_val (keys, key);
    }
  return keys;
}

static void
run_cb (guint position, guint removed, const gint64 *added, guint n_added, gpointer data)
{
  GbRecordList *self = data;

  if (removed > 0)
    g_array_remove_range (self->keys, position, removed);
  if (n_added > 0)
    g_array_insert_vals (self->keys, position, added, n_added);
  g_list_model_items_changed (G_LIST_MODEL (self), position, removed, n_added);
}

static gboolean
may_differ (GbRecordList *self, const GbNews *news)
{
  GbRecordKind owner_kind = gb_record_type (self->kind)->owner;

  if (news->restructured[self->kind] || (owner_kind != GB_N_RECORDS && news->restructured[owner_kind]))
    return TRUE;
  return self->kind == GB_RECORD_PART
         && (self->is_all ? g_hash_table_size (news->owners) > 0
                          : g_hash_table_contains (news->owners, &self->owner));
}

void
gb_record_list_tell (GbRecordList *self, const GbNews *news)
{
  g_autoptr (GArray) old = NULL;
  g_autoptr (GArray) new = NULL;

  if (!may_differ (self, news))
    return;
  new = read_keys (self);
  old = g_array_copy (self->keys);
  gb_row_diff ((const gint64 *) (gpointer) old->data, old->len, (const gint64 *) (gpointer) new->data,
               new->len, run_cb, self);
}

/* The list model ----------------------------------------------------------------------------------------- */

static GType
get_item_type (GListModel *list)
{
  return GB_TYPE_RECORD_ITEM;
}

static guint
get_n_items (GListModel *list)
{
  return GB_RECORD_LIST (list)->keys->len;
}

static gpointer
get_item (GListModel *list, guint position)
{
  GbRecordList *self = GB_RECORD_LIST (list);

  if (position >= self->keys->len)
    return NULL;
  return gb_record_item_get (self->project, self->kind, gb_record_list_get_id (self, position));
}

static void
gb_record_list_iface_init (GListModelInterface *iface)
{
  iface->get_item_type = get_item_type;
  iface->get_n_items = get_n_items;
  iface->get_item = get_item;
}

static void
gb_record_list_finalize (GObject *object)
{
  GbRecordList *self = GB_RECORD_LIST (object);

  if (self->project != NULL)
    gb_record_hub_remove_list (self->project->hub, self);
  g_clear_pointer (&self->keys, g_array_unref);
  g_clear_object (&self->project);
  G_OBJECT_CLASS (gb_record_list_parent_class)->finalize (object);
}

static void
gb_record_list_class_init (GbRecordListClass *class)
{
  G_OBJECT_CLASS (class)->finalize = gb_record_list_finalize;
}

static void
gb_record_list_init (GbRecordList *self)
{
}

static GbRecordList *
new_list (GbProject *project, GbRecordKind kind, gint64 owner, gboolean is_all)
{
  GbRecordList *self = g_object_new (GB_TYPE_RECORD_LIST, NULL);

  self->project = g_object_ref (project);
  self->kind = kind;
  self->owner = owner;
  self->is_all = is_all;
  self->keys = read_keys (self);
  gb_record_hub_add_list (gb_project_get_hub (project), self);
  return self;
}

GbRecordList *
gb_record_list_new (GbProject *project, GbRecordKind kind, gint64 owner)
{
  return new_list (project, kind, owner, FALSE);
}

GbRecordList *
gb_record_list_new_all (GbProject *project, GbRecordKind kind)
{
  return new_list (project, kind, 0, TRUE);
}

gint64
gb_record_list_get_id (GbRecordList *self, guint position)
{
  return position < self->keys->len ? ABS (g_array_index (self->keys, gint64, position)) : 0;
}

gboolean
gb_record_list_find (GbRecordList *self, gint64 id, guint *position)
{
  for (guint i = 0; i < self->keys->len; i++)
    if (gb_record_list_get_id (self, i) == id)
      {
        if (position != NULL)
          *position = i;
        return TRUE;
      }
  return FALSE;
}
