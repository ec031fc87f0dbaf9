/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-grid-row"

#include "grid-rows-private.h"

enum
{
  CHANGED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (GbGridRow, gb_grid_row, G_TYPE_OBJECT)

void
gb_grid_row_emit_changed (GbGridRow *row)
{
  g_signal_emit (row, signals[CHANGED], 0);
}

static void
gb_grid_row_dispose (GObject *object)
{
  GbGridRow *self = GB_GRID_ROW (object);

  if (self->rows != NULL)
    {
      g_hash_table_remove (self->rows->alive, &self->key);
      g_clear_weak_pointer (&self->rows);
    }
  g_clear_signal_handler (&self->version_id, self->item);
  g_clear_object (&self->item);
  G_OBJECT_CLASS (gb_grid_row_parent_class)->dispose (object);
}

static void
gb_grid_row_class_init (GbGridRowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = gb_grid_row_dispose;
  signals[CHANGED] = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
}

static void
gb_grid_row_init (GbGridRow *self)
{
}

GbGridRow *
gb_grid_row_new (GbGridRows *rows, gint64 key)
{
  GbGridRow *self = g_object_new (GB_TYPE_GRID_ROW, NULL);

  g_set_weak_pointer (&self->rows, rows);
  self->key = key;
  if (key == KEY_BOAT)
    self->item = gb_record_item_get (rows->project, GB_RECORD_BUILD, 1);
  else if (key > 0)
    self->item = gb_record_item_get (rows->project, rows->kind, key);
  if (self->item != NULL)
    self->version_id = g_signal_connect_object (
      self->item, "notify::version", G_CALLBACK (gb_grid_row_emit_changed), self, G_CONNECT_SWAPPED);
  g_hash_table_insert (rows->alive, gb_grid_rows_copy_key (key), self);
  return self;
}

const GbRecord *
gb_grid_row_get_record (GbGridRow *self)
{
  return self->item != NULL ? gb_record_item_get_record (self->item) : NULL;
}

gint64
gb_grid_row_get_id (GbGridRow *self)
{
  return MAX (self->key, 0);
}

gboolean
gb_grid_row_is_blank (GbGridRow *self)
{
  return self->key < 0;
}

gboolean
gb_grid_row_is_draft (GbGridRow *self)
{
  return self->key == KEY_DRAFT;
}

gboolean
gb_grid_row_is_boat (GbGridRow *self)
{
  return self->key == KEY_BOAT;
}

gboolean
gb_grid_row_can_open (GbGridRow *self)
{
  const GbRecord *record = gb_grid_row_get_record (self);

  if (self->key == KEY_BOAT)
    return TRUE;
  return record != NULL && record->kind == GB_RECORD_PART && ((const GbPart *) record)->kind == GB_KIND_GROUP;
}

gboolean
gb_grid_row_is_open (GbGridRow *self)
{
  return self->rows != NULL && gb_grid_row_can_open (self) && gb_grid_rows_is_open (self->rows, self->key);
}

/* The spot behind the last row: in the group that the last row is, or that it is in. */
static GbGridSpot
blank_spot (GbGridRows *self)
{
  const GbPart *part;
  gint64 last = 0;

  if (!gb_grid_rows_is_tree (self))
    return (GbGridSpot){ self->owner, 0 };
  for (guint i = self->keys->len; i > 0 && last <= 0; i--)
    last = g_array_index (self->keys, gint64, i - 1);
  part = gb_boat_part (gb_project_get_boat (self->project), last);
  if (part == NULL)
    return (GbGridSpot){ 0, 0 };
  if (part->kind == GB_KIND_GROUP && gb_grid_rows_is_open (self, part->rec.id))
    return (GbGridSpot){ part->rec.id, 0 };
  return (GbGridSpot){ part->rec.owner, 0 };
}

GbGridSpot
gb_grid_row_get_spot (GbGridRow *self)
{
  if (self->rows == NULL)
    return (GbGridSpot){ 0, 0 };
  return self->key == KEY_DRAFT ? self->rows->draft : blank_spot (self->rows);
}

GbPartKind
gb_grid_row_get_part_kind (GbGridRow *self)
{
  return self->key == KEY_DRAFT && self->rows != NULL ? self->rows->draft_kind : GB_KIND_PART;
}

guint
gb_grid_row_get_depth (GbGridRow *self)
{
  const GbPart *part;
  guint above = 1; /* the boat's own row */

  if (self->rows == NULL || !gb_grid_rows_is_tree (self->rows) || self->key == KEY_BOAT)
    return 0;
  if (self->key < 0)
    {
      part = gb_boat_part (gb_project_get_boat (self->rows->project), gb_grid_row_get_spot (self).owner);
      above = part != NULL ? 2 : 1;
    }
  else
    part = (const GbPart *) gb_grid_row_get_record (self);
  return part != NULL ? part->depth + above : above;
}
