/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-grid-selection"

#include "grid-private.h"

/* Ids of the selected records, in the order shown. */
static GArray *
selected_ids (GbGrid *self)
{
  GArray *ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  g_autoptr (GtkBitset) selected = NULL;
  GtkBitsetIter iter;
  guint position;

  if (self->selection == NULL)
    return ids;
  selected = gtk_selection_model_get_selection (GTK_SELECTION_MODEL (self->selection));
  for (gboolean more = gtk_bitset_iter_init_first (&iter, selected, &position); more;
       more = gtk_bitset_iter_next (&iter, &position))
    {
      g_autoptr (GbGridRow) row = gb_grid_dup_row (self, position);
      gint64 id = row != NULL ? gb_grid_row_get_id (row) : 0;

      if (id > 0)
        g_array_append_val (ids, id);
    }
  return ids;
}

gint64 *
gb_grid_dup_selected (GbGrid *self, guint *n_ids)
{
  GArray *ids = selected_ids (self);

  *n_ids = ids->len;
  return (gint64 *) g_array_free (ids, FALSE);
}

gint64 *
gb_grid_dup_selected_tops (GbGrid *self, guint *n_ids)
{
  const GbBoat *boat = self->project != NULL ? gb_project_get_boat (self->project) : NULL;
  GArray *ids = selected_ids (self);
  guint kept = 0;

  /* In the order of the tree all that lies in a group comes right after it. */
  for (guint i = 0; i < ids->len; i++)
    {
      gint64 id = g_array_index (ids, gint64, i);

      if (self->type->kind == GB_RECORD_PART && kept > 0
          && gb_boat_is_below (boat, id, g_array_index (ids, gint64, kept - 1)))
        continue;
      g_array_index (ids, gint64, kept++) = id;
    }
  *n_ids = kept;
  return (gint64 *) g_array_free (ids, FALSE);
}

gboolean
gb_grid_is_boat_selected (GbGrid *self)
{
  guint position;

  return self->rows != NULL && gb_grid_rows_find (self->rows, GB_RECORD_BUILD, 1, &position)
         && gtk_selection_model_is_selected (GTK_SELECTION_MODEL (self->selection), position);
}

void
gb_grid_select (GbGrid *self, const gint64 *ids, guint n_ids)
{
  g_autoptr (GtkBitset) selected = gtk_bitset_new_empty ();
  g_autoptr (GtkBitset) mask = NULL;

  if (self->rows == NULL)
    return;
  for (guint i = 0; i < n_ids; i++)
    {
      guint position;

      if (gb_grid_rows_find (self->rows, self->type->kind, ids[i], &position))
        gtk_bitset_add (selected, position);
    }
  mask = gtk_bitset_new_range (0, g_list_model_get_n_items (G_LIST_MODEL (self->rows)));
  gtk_selection_model_set_selection (GTK_SELECTION_MODEL (self->selection), selected, mask);
}

/* The column in which @name is seen: its own, one that stands for it, or the main column. */
static guint
column_for (GbGrid *self, const char *name)
{
  g_autoptr (GArray) shown = gb_grid_shown_columns (self);
  guint index = gb_grid_main_column (self);

  for (guint i = 0; name != NULL && i < shown->len; i++)
    {
      GbColumn *column = gb_grid_column (self, g_array_index (shown, guint, i));

      if (g_str_equal (column->name, name))
        return column->index;
      if (column->spec != NULL && column->spec->stands_for != NULL
          && g_strv_contains (column->spec->stands_for, name))
        index = column->index;
    }
  return index;
}

gboolean
gb_grid_go_to (GbGrid *self, GbRecordKind kind, gint64 id, const char *column_name, gboolean focus)
{
  guint index = column_for (self, column_name);
  guint position;

  if (self->rows == NULL)
    return FALSE;
  if (kind == self->type->kind)
    gb_grid_rows_reveal (self->rows, id);
  if (!gb_grid_rows_find (self->rows, kind, id, &position))
    return FALSE;
  if (focus)
    gb_grid_move_to (self, position, index, FALSE);
  else
    {
      gtk_selection_model_select_item (GTK_SELECTION_MODEL (self->selection), position, TRUE);
      self->anchor = position;
      gb_grid_scroll_to (self, position, index);
    }
  return TRUE;
}

GbCell *
gb_grid_find_cell (GbGrid *self, guint position, const char *column_name)
{
  GbColumn *column = gb_grid_column_by_name (self, column_name);

  return column != NULL ? gb_grid_cell_at (self, position, column->index) : NULL;
}
