/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-grid-rows"

#include "grid-rows-private.h"

#include "project/row-diff.h"

enum
{
  REFRESHED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

static void list_model_iface_init (GListModelInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (GbGridRows, gb_grid_rows, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, list_model_iface_init))

gboolean
gb_grid_rows_is_tree (GbGridRows *self)
{
  return self->kind == GB_RECORD_PART && self->owner == 0;
}

gint64 *
gb_grid_rows_copy_key (gint64 key)
{
  return g_memdup2 (&key, sizeof key);
}

gboolean
gb_grid_rows_is_open (GbGridRows *self, gint64 group)
{
  return !g_hash_table_contains (self->closed, &group);
}

const GPtrArray *
gb_grid_rows_records (GbGridRows *self)
{
  const GbBoat *boat = gb_project_get_boat (self->project);
  const GbRecordType *type = gb_record_type (self->kind);
  const GbRecord *owner;
  static GPtrArray *none;

  if (gb_grid_rows_is_tree (self))
    return gb_boat_all (boat, GB_RECORD_PART);
  if (self->owner == 0)
    return gb_boat_roots (boat, self->kind);
  owner = gb_boat_get (boat, type->owner, self->owner);
  if (owner != NULL)
    return gb_record_children_of (owner, self->kind);
  if (none == NULL)
    none = g_ptr_array_new ();
  return none;
}

/* The list of keys --------------------------------------------------------------------------------------- */

static void
add_key (GArray *keys, gint64 key)
{
  g_array_append_val (keys, key);
}

/* Puts the draft behind all that lies in the sibling it comes after, or at the end of its owner. */
static void
add_draft (GbGridRows *self, GArray *keys)
{
  const GbBoat *boat = gb_project_get_boat (self->project);
  gint64 above = self->draft.after != 0 ? self->draft.after : self->draft.owner;
  gint64 draft = KEY_DRAFT;
  guint at = 0;

  if (above == 0)
    {
      add_key (keys, KEY_DRAFT);
      return;
    }
  while (at < keys->len && g_array_index (keys, gint64, at) != above)
    at++;
  if (at == keys->len)
    {
      add_key (keys, KEY_DRAFT);
      return;
    }
  for (at++; gb_grid_rows_is_tree (self) && at < keys->len; at++)
    if (!gb_boat_is_below (boat, g_array_index (keys, gint64, at), above))
      break;
  g_array_insert_val (keys, at, draft);
}

static GArray *
find_keys (GbGridRows *self)
{
  const GPtrArray *records = gb_grid_rows_records (self);
  GArray *keys = g_array_sized_new (FALSE, FALSE, sizeof (gint64), records->len + 3);
  gboolean tree = gb_grid_rows_is_tree (self);

  if (tree)
    add_key (keys, KEY_BOAT);
  for (guint i = 0; i < records->len && !(tree && !gb_grid_rows_is_open (self, KEY_BOAT));)
    {
      const GbRecord *record = records->pdata[i];
      gboolean closed = tree && self->hidden == NULL && !gb_grid_rows_is_open (self, record->id);

      if (self->hidden == NULL || !g_hash_table_contains (self->hidden, &record->id))
        add_key (keys, record->id);
      i += closed ? ((const GbPart *) record)->n_below + 1 : 1;
    }
  if (self->has_draft)
    add_draft (self, keys);
  if (self->has_blank && gb_project_get_read_only_reason (self->project) == NULL)
    add_key (keys, KEY_BLANK);
  return keys;
}

static void
run_cb (guint position, guint removed, const gint64 *added, guint n_added, gpointer user_data)
{
  GbGridRows *self = user_data;

  if (removed > 0)
    g_array_remove_range (self->keys, position, removed);
  if (n_added > 0)
    g_array_insert_vals (self->keys, position, added, n_added);
  g_list_model_items_changed (G_LIST_MODEL (self), position, removed, n_added);
}

/* Depths of rows whose group moved are told too; the few blanks may hang elsewhere now. */
static void
rows_look_changed (GbGridRows *self)
{
  g_autoptr (GPtrArray) rows = g_ptr_array_new_with_free_func (g_object_unref);
  GHashTableIter iter;
  gpointer row;

  g_hash_table_iter_init (&iter, self->alive);
  while (g_hash_table_iter_next (&iter, NULL, &row))
    g_ptr_array_add (rows, g_object_ref (row));
  for (guint i = 0; i < rows->len; i++)
    gb_grid_row_emit_changed (rows->pdata[i]);
}

static void
refresh (GbGridRows *self)
{
  g_autoptr (GArray) fresh = find_keys (self);

  gb_row_diff ((const gint64 *) self->keys->data, self->keys->len, (const gint64 *) fresh->data, fresh->len,
               run_cb, self);
  rows_look_changed (self);
  g_signal_emit (self, signals[REFRESHED], 0);
}

static void
changed_cb (GbGridRows *self, const GbChanges *changes)
{
  if (!gb_changes_restructure (changes, self->kind)
      && !gb_changes_restructure (changes, gb_record_type (self->kind)->owner))
    return;
  if (self->has_draft && self->draft.after != 0
      && gb_boat_get (gb_project_get_boat (self->project), self->kind, self->draft.after) == NULL)
    self->draft.after = 0;
  if (self->has_draft && gb_grid_rows_is_tree (self) && self->draft.owner != 0
      && gb_boat_part (gb_project_get_boat (self->project), self->draft.owner) == NULL)
    self->draft = (GbGridSpot){ 0, 0 };
  refresh (self);
}

/* The model ---------------------------------------------------------------------------------------------- */

static GType
get_item_type (GListModel *model)
{
  return GB_TYPE_GRID_ROW;
}

static guint
get_n_items (GListModel *model)
{
  return GB_GRID_ROWS (model)->keys->len;
}

static gpointer
get_item (GListModel *model, guint position)
{
  GbGridRows *self = GB_GRID_ROWS (model);
  GbGridRow *row;
  gint64 key;

  if (position >= self->keys->len)
    return NULL;
  key = g_array_index (self->keys, gint64, position);
  row = g_hash_table_lookup (self->alive, &key);
  return row != NULL ? g_object_ref (row) : gb_grid_row_new (self, key);
}

static void
list_model_iface_init (GListModelInterface *iface)
{
  iface->get_item_type = get_item_type;
  iface->get_n_items = get_n_items;
  iface->get_item = get_item;
}

static void
gb_grid_rows_dispose (GObject *object)
{
  GbGridRows *self = GB_GRID_ROWS (object);
  GHashTableIter iter;
  gpointer row;

  g_hash_table_iter_init (&iter, self->alive);
  while (g_hash_table_iter_next (&iter, NULL, &row))
    g_clear_weak_pointer (&((GbGridRow *) row)->rows);
  g_hash_table_remove_all (self->alive);
  g_clear_object (&self->project);
  G_OBJECT_CLASS (gb_grid_rows_parent_class)->dispose (object);
}

static void
gb_grid_rows_finalize (GObject *object)
{
  GbGridRows *self = GB_GRID_ROWS (object);

  g_array_unref (self->keys);
  g_hash_table_unref (self->alive);
  g_hash_table_unref (self->closed);
  g_clear_pointer (&self->hidden, g_hash_table_unref);
  g_free (self->filter);
  G_OBJECT_CLASS (gb_grid_rows_parent_class)->finalize (object);
}

static void
gb_grid_rows_class_init (GbGridRowsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = gb_grid_rows_dispose;
  G_OBJECT_CLASS (klass)->finalize = gb_grid_rows_finalize;
  signals[REFRESHED] = g_signal_new ("refreshed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                     NULL, G_TYPE_NONE, 0);
}

static void
gb_grid_rows_init (GbGridRows *self)
{
  self->keys = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->alive = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  self->closed = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
}

GbGridRows *
gb_grid_rows_new (GbProject *project, GbRecordKind kind, gint64 owner, gboolean has_blank)
{
  GbGridRows *self = g_object_new (GB_TYPE_GRID_ROWS, NULL);
  GArray *keys;

  self->project = g_object_ref (project);
  self->kind = kind;
  self->owner = owner;
  self->has_blank = has_blank;
  keys = find_keys (self);
  g_array_unref (self->keys);
  self->keys = keys;
  g_signal_connect_object (project, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  return self;
}

static gboolean
find_key (GbGridRows *self, gint64 key, guint *position)
{
  for (guint i = 0; i < self->keys->len; i++)
    if (g_array_index (self->keys, gint64, i) == key)
      {
        if (position != NULL)
          *position = i;
        return TRUE;
      }
  return FALSE;
}

gboolean
gb_grid_rows_find (GbGridRows *self, GbRecordKind kind, gint64 id, guint *position)
{
  if (kind == GB_RECORD_BUILD)
    return gb_grid_rows_is_tree (self) && find_key (self, KEY_BOAT, position);
  return kind == self->kind && id > 0 && find_key (self, id, position);
}

gboolean
gb_grid_rows_find_blank (GbGridRows *self, guint *position)
{
  return find_key (self, KEY_BLANK, position);
}

gboolean
gb_grid_rows_find_draft (GbGridRows *self, guint *position)
{
  return find_key (self, KEY_DRAFT, position);
}

static void
mark_open (GbGridRows *self, gint64 group, gboolean open)
{
  if (open)
    g_hash_table_remove (self->closed, &group);
  else
    g_hash_table_add (self->closed, gb_grid_rows_copy_key (group));
}

void
gb_grid_rows_set_open (GbGridRows *self, GbGridRow *row, gboolean open)
{
  if (!gb_grid_row_can_open (row) || gb_grid_row_is_open (row) == open)
    return;
  mark_open (self, row->key, open);
  refresh (self);
}

void
gb_grid_rows_open_all (GbGridRows *self, gboolean open)
{
  const GPtrArray *records = gb_grid_rows_records (self);

  if (!gb_grid_rows_is_tree (self))
    return;
  for (guint i = 0; i < records->len; i++)
    if (((const GbPart *) records->pdata[i])->kind == GB_KIND_GROUP)
      mark_open (self, ((const GbRecord *) records->pdata[i])->id, open);
  mark_open (self, KEY_BOAT, TRUE);
  refresh (self);
}

void
gb_grid_rows_reveal (GbGridRows *self, gint64 id)
{
  const GbBoat *boat = gb_project_get_boat (self->project);
  const GbRecord *record = gb_boat_get (boat, self->kind, id);
  guint limit = gb_boat_n (boat, self->kind);

  if (self->hidden != NULL)
    g_hash_table_remove (self->hidden, &id);
  if (gb_grid_rows_is_tree (self))
    {
      mark_open (self, KEY_BOAT, TRUE);
      for (guint i = 0; record != NULL && record->owner != 0 && i < limit; i++)
        {
          mark_open (self, record->owner, TRUE);
          if (self->hidden != NULL)
            g_hash_table_remove (self->hidden, &record->owner);
          record = gb_boat_get (boat, GB_RECORD_PART, record->owner);
        }
    }
  refresh (self);
}

void
gb_grid_rows_set_filter (GbGridRows *self, const char *text)
{
  g_autofree char *stripped = g_strstrip (g_strdup (text != NULL ? text : ""));

  if (g_strcmp0 (self->filter != NULL ? self->filter : "", stripped) == 0)
    return;
  g_free (self->filter);
  self->filter = *stripped != '\0' ? g_steal_pointer (&stripped) : NULL;
  gb_grid_rows_apply_filter (self);
  refresh (self);
}

void
gb_grid_rows_set_draft (GbGridRows *self, GbGridSpot spot, GbPartKind part_kind)
{
  if (self->has_draft)
    {
      self->has_draft = FALSE;
      refresh (self);
    }
  self->has_draft = TRUE;
  self->draft = spot;
  self->draft_kind = part_kind;
  if (gb_grid_rows_is_tree (self))
    mark_open (self, spot.owner, TRUE);
  refresh (self);
}

void
gb_grid_rows_clear_draft (GbGridRows *self)
{
  if (!self->has_draft)
    return;
  self->has_draft = FALSE;
  refresh (self);
}
