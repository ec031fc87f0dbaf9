/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-grid-verbs"

/* What is done with rows. Each verb is one of the project's, so one undo; afterwards the selection and the
 * cursor are where the rows are. */

#include "grid-private.h"

#include <glib/gi18n-lib.h>

static const GbBoat *
boat_of (GbGrid *self)
{
  return gb_project_get_boat (self->project);
}

/* TRUE if there is a project, it may be edited, and no entry stands in the way. */
static gboolean
may_change (GbGrid *self)
{
  const char *reason = self->project != NULL ? gb_project_get_read_only_reason (self->project) : NULL;

  if (self->project == NULL || !gb_grid_commit (self))
    return FALSE;
  if (reason != NULL)
    gb_grid_refuse (self, g_error_new_literal (G_IO_ERROR, G_IO_ERROR_READ_ONLY, reason));
  return reason == NULL;
}

/* The row that the focus is in, or the last selected one, or NULL. (transfer full) */
static GbGridRow *
row_at_hand (GbGrid *self)
{
  GbCell *cell = gb_grid_focus_cell (self);
  g_autoptr (GtkBitset) selected = NULL;

  if (cell != NULL && gb_cell_get_item (cell) != NULL)
    return g_object_ref (gb_cell_get_item (cell));
  if (self->selection == NULL)
    return NULL;
  selected = gtk_selection_model_get_selection (GTK_SELECTION_MODEL (self->selection));
  return gtk_bitset_is_empty (selected) ? NULL : gb_grid_dup_row (self, gtk_bitset_get_maximum (selected));
}

GbGridSpot
gb_grid_spot_at_hand (GbGrid *self)
{
  g_autoptr (GbGridRow) row = row_at_hand (self);
  const GbRecord *record = row != NULL ? gb_grid_row_get_record (row) : NULL;

  if (row != NULL && gb_grid_row_is_blank (row))
    return gb_grid_row_get_spot (row);
  if (record == NULL || record->kind == GB_RECORD_BUILD)
    return (GbGridSpot){ self->owner, 0 };
  if (gb_grid_row_can_open (row) && gb_grid_row_is_open (row))
    return (GbGridSpot){ record->id, 0 };
  return (GbGridSpot){ record->owner, record->id };
}

gint64
gb_grid_sibling_after (GbGrid *self, GbGridSpot spot)
{
  const GbRecord *owner = gb_boat_get (boat_of (self), gb_record_type (self->type->kind)->owner, spot.owner);
  const GPtrArray *siblings
    = owner != NULL ? gb_record_children_of (owner, self->type->kind) : gb_boat_roots (boat_of (self), self->type->kind);

  for (guint i = 0; spot.after != 0 && i + 1 < siblings->len; i++)
    if (((const GbRecord *) siblings->pdata[i])->id == spot.after)
      return ((const GbRecord *) siblings->pdata[i + 1])->id;
  return 0;
}

void
gb_grid_new_row (GbGrid *self, GbPartKind kind)
{
  guint position;

  if (!may_change (self) || self->rows == NULL)
    return;
  gb_grid_rows_set_draft (self->rows, gb_grid_spot_at_hand (self), kind);
  if (!gb_grid_rows_find_draft (self->rows, &position))
    return;
  gb_grid_move_to (self, position, gb_grid_main_column (self), FALSE);
  if (!gb_grid_start_edit (self, position, gb_grid_main_column (self), NULL))
    gb_grid_rows_clear_draft (self->rows);
}

void
gb_grid_start_blank (GbGrid *self)
{
  guint position;

  if (!may_change (self) || self->rows == NULL || !gb_grid_rows_find_blank (self->rows, &position))
    return;
  gb_grid_move_to (self, position, gb_grid_main_column (self), FALSE);
  gb_grid_start_edit (self, position, gb_grid_main_column (self), NULL);
}

void
gb_grid_edit (GbGrid *self)
{
  GbCell *cell = gb_grid_focus_cell (self);

  if (cell != NULL)
    gb_grid_start_edit (self, gb_cell_get_position (cell), gb_cell_get_column (cell), NULL);
}

void
gb_grid_remove (GbGrid *self)
{
  g_autofree gint64 *ids = NULL;
  g_autofree char *title = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GtkBitset) selected = NULL;
  guint n, first;

  if (!may_change (self))
    return;
  ids = gb_grid_dup_selected_tops (self, &n);
  if (n == 0)
    return;
  title = gb_record_dup_title (gb_boat_get (boat_of (self), self->type->kind, ids[0]));
  selected = gtk_selection_model_get_selection (GTK_SELECTION_MODEL (self->selection));
  first = gtk_bitset_get_minimum (selected);
  if (!gb_project_remove (self->project, self->type->kind, ids, n, &error))
    {
      gb_grid_refuse (self, g_steal_pointer (&error));
      return;
    }
  gb_grid_move_to (self, MIN (first, g_list_model_get_n_items (G_LIST_MODEL (self->rows)) - 1),
                   self->cursor_column, FALSE);
  gb_grid_emit_removed (self, n, title);
}

void
gb_grid_go_to_all (GbGrid *self, const gint64 *ids, guint n)
{
  if (n == 0)
    return;
  gb_grid_go_to (self, self->type->kind, ids[0], gb_grid_column (self, self->cursor_column)->name, TRUE);
  gb_grid_select (self, ids, n);
}

void
gb_grid_duplicate (GbGrid *self)
{
  g_autofree gint64 *ids = NULL;
  g_autoptr (GArray) copies = NULL;
  g_autoptr (GError) error = NULL;
  guint n;

  if (!may_change (self))
    return;
  ids = gb_grid_dup_selected_tops (self, &n);
  if (n == 0)
    return;
  if (gb_project_duplicate (self->project, self->type->kind, ids, n, &copies, &error))
    gb_grid_go_to_all (self, (const gint64 *) copies->data, copies->len);
  else
    gb_grid_refuse (self, g_steal_pointer (&error));
}

static void
move (GbGrid *self, const gint64 *ids, guint n, gint64 owner, gint64 before)
{
  g_autoptr (GError) error = NULL;

  if (gb_project_move (self->project, self->type->kind, ids, n, owner, before, &error))
    gb_grid_go_to_all (self, ids, n);
  else
    gb_grid_refuse (self, g_steal_pointer (&error));
}

static const GPtrArray *
siblings_of (GbGrid *self, const GbRecord *record)
{
  const GbRecord *owner = gb_boat_get (boat_of (self), gb_record_type (record->kind)->owner, record->owner);

  return owner != NULL ? gb_record_children_of (owner, record->kind) : gb_boat_roots (boat_of (self), record->kind);
}

static guint
place_in (const GPtrArray *siblings, gint64 id)
{
  for (guint i = 0; i < siblings->len; i++)
    if (((const GbRecord *) siblings->pdata[i])->id == id)
      return i;
  return siblings->len;
}

/* The selected rows, if they live in one owner; else none. */
static gint64 *
selected_siblings (GbGrid *self, guint *n)
{
  gint64 *ids = gb_grid_dup_selected_tops (self, n);

  for (guint i = 1; i < *n; i++)
    if (gb_boat_get (boat_of (self), self->type->kind, ids[i])->owner
        != gb_boat_get (boat_of (self), self->type->kind, ids[0])->owner)
      *n = 0;
  return ids;
}

void
gb_grid_move_rows (GbGrid *self, int by)
{
  g_autofree gint64 *ids = NULL;
  const GbRecord *first;
  const GPtrArray *siblings;
  guint n, to;

  if (!may_change (self))
    return;
  ids = selected_siblings (self, &n);
  if (n == 0)
    return;
  first = gb_boat_get (boat_of (self), self->type->kind, ids[0]);
  siblings = siblings_of (self, first);
  if (by < 0)
    {
      to = place_in (siblings, ids[0]);
      if (to > 0)
        move (self, ids, n, first->owner, ((const GbRecord *) siblings->pdata[to - 1])->id);
      return;
    }
  to = place_in (siblings, ids[n - 1]) + 2;
  if (to <= siblings->len)
    move (self, ids, n, first->owner, to < siblings->len ? ((const GbRecord *) siblings->pdata[to])->id : 0);
}

/* The last group before the first selected row among its siblings takes them in. */
static void
indent_into (GbGrid *self, const gint64 *ids, guint n)
{
  const GbRecord *first = gb_boat_get (boat_of (self), self->type->kind, ids[0]);
  const GPtrArray *siblings = siblings_of (self, first);

  for (guint i = place_in (siblings, ids[0]); i > 0; i--)
    {
      const GbPart *above = siblings->pdata[i - 1];

      if (above->kind == GB_KIND_GROUP)
        {
          move (self, ids, n, above->rec.id, 0);
          return;
        }
    }
  gb_grid_refuse (self, g_error_new_literal (G_IO_ERROR, G_IO_ERROR_FAILED,
                                             _ ("There is no group above to take it in. Ctrl+G makes one.")));
}

void
gb_grid_indent (GbGrid *self, gboolean into)
{
  g_autofree gint64 *ids = NULL;
  const GbRecord *first, *group;
  guint n;

  if (self->type->kind != GB_RECORD_PART || !may_change (self))
    return;
  ids = selected_siblings (self, &n);
  if (n == 0)
    return;
  if (into)
    {
      indent_into (self, ids, n);
      return;
    }
  first = gb_boat_get (boat_of (self), self->type->kind, ids[0]);
  group = gb_boat_get (boat_of (self), self->type->kind, first->owner);
  if (group != NULL)
    move (self, ids, n, group->owner, gb_grid_sibling_after (self, (GbGridSpot){ group->owner, group->id }));
}

void
gb_grid_open_groups (GbGrid *self, gboolean open)
{
  if (self->rows == NULL || !gb_grid_commit (self))
    return;
  gb_grid_rows_open_all (self->rows, open);
}

void
gb_grid_select_all (GbGrid *self)
{
  guint blank;

  if (self->selection == NULL)
    return;
  gtk_selection_model_select_all (GTK_SELECTION_MODEL (self->selection));
  if (gb_grid_rows_find_blank (self->rows, &blank))
    gtk_selection_model_unselect_item (GTK_SELECTION_MODEL (self->selection), blank);
}
