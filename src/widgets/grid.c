/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-grid"

/* The models behind the table:
 *
 *   GbProject ---> GbGridRows (flattened, filtered, with blanks) ---> GtkMultiSelection ---> GtkColumnView
 *
 * What the cells show comes from the row's record at each "changed" of the row; structure comes by
 * "items-changed" alone. */

#include "grid-private.h"

#include <glib/gi18n-lib.h>

enum
{
  SELECTION_CHANGED,
  REMOVED,
  REFUSED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (GbGrid, gb_grid, GTK_TYPE_WIDGET)

void
gb_grid_refuse (GbGrid *self, GError *error)
{
  g_autoptr (GError) owned = error;

  g_signal_emit (self, signals[REFUSED], 0, owned->message);
}

void
gb_grid_emit_removed (GbGrid *self, guint n, const char *title)
{
  g_signal_emit (self, signals[REMOVED], 0, n, title);
}

/* The way to a cell -------------------------------------------------------------------------------------- */

GbGridRow *
gb_grid_dup_row (GbGrid *self, guint position)
{
  return self->rows != NULL ? g_list_model_get_item (G_LIST_MODEL (self->rows), position) : NULL;
}

gboolean
gb_grid_position_of (GbGrid *self, GbGridRow *row, guint *position)
{
  if (self->rows == NULL)
    return FALSE;
  if (gb_grid_row_is_draft (row))
    return gb_grid_rows_find_draft (self->rows, position);
  if (gb_grid_row_is_blank (row))
    return gb_grid_rows_find_blank (self->rows, position);
  if (gb_grid_row_is_boat (row))
    return gb_grid_rows_find (self->rows, GB_RECORD_BUILD, 1, position);
  return gb_grid_rows_find (self->rows, self->type->kind, gb_grid_row_get_id (row), position);
}

/* The cell in @widget, a row of the table, that belongs to @column. */
static GbCell *
cell_in_row (GtkWidget *row, guint column)
{
  for (GtkWidget *frame = gtk_widget_get_first_child (row); frame != NULL;
       frame = gtk_widget_get_next_sibling (frame))
    {
      GtkWidget *cell = GB_IS_CELL (frame) ? frame : gtk_widget_get_first_child (frame);

      if (GB_IS_CELL (cell) && gb_cell_get_column (GB_CELL (cell)) == column)
        return GB_CELL (cell);
    }
  return NULL;
}

GbCell *
gb_grid_cell_at (GbGrid *self, guint position, guint column)
{
  GtkWidget *list = gtk_widget_get_last_child (GTK_WIDGET (self->view));

  for (GtkWidget *row = gtk_widget_get_first_child (list); row != NULL;
       row = gtk_widget_get_next_sibling (row))
    {
      GbCell *cell = cell_in_row (row, column);

      if (cell != NULL && gb_cell_get_position (cell) == position)
        return cell;
    }
  return NULL;
}

GbCell *
gb_grid_pick_cell (GbGrid *self, double x, double y)
{
  GtkWidget *widget = gtk_widget_pick (GTK_WIDGET (self->view), x, y, GTK_PICK_DEFAULT);

  while (widget != NULL && !GB_IS_CELL (widget))
    widget = gtk_widget_get_parent (widget);
  return widget != NULL ? GB_CELL (widget) : NULL;
}

GbCell *
gb_grid_focus_cell (GbGrid *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *list = gtk_widget_get_last_child (GTK_WIDGET (self->view));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  if (focus == NULL || !gtk_widget_is_ancestor (focus, list))
    return NULL;
  for (GtkWidget *widget = focus; widget != list; widget = gtk_widget_get_parent (widget))
    {
      if (GB_IS_CELL (widget))
        return GB_CELL (widget);
      if (gtk_widget_get_parent (widget) == list)
        return cell_in_row (widget, self->cursor_column);
    }
  return NULL;
}

void
gb_grid_set_cursor (GbGrid *self, GbCell *cell)
{
  g_set_object (&self->cursor_row, gb_cell_get_item (cell));
  self->cursor_position = gb_cell_get_position (cell);
  self->cursor_column = gb_cell_get_column (cell);
}

static void
scroll_sideways (GbGrid *self, GbCell *cell)
{
  GtkAdjustment *across = gtk_scrollable_get_hadjustment (GTK_SCROLLABLE (self->view));
  graphene_rect_t bounds;

  if (across == NULL || !gtk_widget_compute_bounds (GTK_WIDGET (cell), GTK_WIDGET (self->view), &bounds)
      || bounds.size.width <= 0)
    return;
  bounds.origin.x += (float) gtk_adjustment_get_value (across);
  gtk_adjustment_clamp_page (across, bounds.origin.x, bounds.origin.x + bounds.size.width);
}

void
gb_grid_scroll_to (GbGrid *self, guint position, guint column)
{
  GbCell *cell;

  gtk_widget_activate_action (gtk_widget_get_last_child (GTK_WIDGET (self->view)), "list.scroll-to-item", "u",
                              position);
  cell = gb_grid_cell_at (self, position, column);
  if (cell != NULL)
    scroll_sideways (self, cell);
}

void
gb_grid_move_to (GbGrid *self, guint position, guint column, gboolean extend)
{
  GtkSelectionModel *selection = GTK_SELECTION_MODEL (self->selection);
  GbCell *cell;

  if (self->rows == NULL || position >= g_list_model_get_n_items (G_LIST_MODEL (self->rows)))
    return;
  if (extend)
    {
      guint first = MIN (self->anchor, position);

      gtk_selection_model_select_range (selection, first, MAX (self->anchor, position) - first + 1, TRUE);
    }
  else
    {
      gtk_selection_model_select_item (selection, position, TRUE);
      self->anchor = position;
    }
  gb_grid_scroll_to (self, position, column);
  cell = gb_grid_cell_at (self, position, column);
  if (cell == NULL)
    return;
  gb_grid_set_cursor (self, cell);
  gtk_widget_grab_focus (GTK_WIDGET (cell));
}

/* The window's focus, unless it is in a cell whose row is gone: the toolkit keeps that as the focus until the
 * next frame, and keys get lost in it. */
static GtkWidget *
living_focus (GbGrid *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  return focus != NULL && gtk_widget_get_root (focus) == root ? focus : NULL;
}

/* A row with the focus went: the focus goes to where the row is now, or to what came up in its place. */
static void
refreshed_cb (GbGrid *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  guint n = g_list_model_get_n_items (G_LIST_MODEL (self->rows));
  guint position;
  GbCell *cell;

  if (root == NULL || gtk_root_get_focus (root) == NULL || living_focus (self) != NULL
      || self->cursor_row == NULL || n == 0)
    return;
  if (!gb_grid_position_of (self, self->cursor_row, &position))
    position = MIN (self->cursor_position, n - 1);
  cell = gb_grid_cell_at (self, position, self->cursor_column);
  if (cell == NULL)
    return;
  gb_grid_set_cursor (self, cell);
  gtk_widget_grab_focus (GTK_WIDGET (cell));
}

static void
selection_changed_cb (GbGrid *self)
{
  g_signal_emit (self, signals[SELECTION_CHANGED], 0);
}

/* Where undo or redo has been. The focus follows only if it is in the table, or nowhere. */
static void
place_cb (GbGrid *self, const GbPlace *place)
{
  GtkWidget *focus = living_focus (self);
  gboolean follow = focus == NULL || gtk_widget_is_ancestor (focus, GTK_WIDGET (self->view));

  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    gb_grid_go_to (self, place->kind, place->id, place->field, follow);
}

/* Search ------------------------------------------------------------------------------------------------- */

/* TRUE if there is a row of a record. */
static gboolean
shows_anything (GbGrid *self)
{
  guint n = g_list_model_get_n_items (G_LIST_MODEL (self->rows));

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (GbGridRow) row = gb_grid_dup_row (self, i);

      if (gb_grid_row_get_id (row) > 0)
        return TRUE;
    }
  return FALSE;
}

static void
search_changed_cb (GbGrid *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->search_entry));

  if (self->rows == NULL)
    return;
  gb_grid_rows_set_filter (self->rows, text);
  if (*text != '\0' && !shows_anything (self))
    gtk_widget_add_css_class (self->search_entry, "error");
  else
    gtk_widget_remove_css_class (self->search_entry, "error");
}

/* From the search to the first row that was found; past the groups that only hold it. */
static void
search_activate_cb (GbGrid *self)
{
  guint n = self->rows != NULL ? g_list_model_get_n_items (G_LIST_MODEL (self->rows)) : 0;

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (GbGridRow) row = gb_grid_dup_row (self, i);

      if (!gb_grid_row_can_open (row) || i + 1 == n)
        {
          gb_grid_move_to (self, i, gb_grid_main_column (self), FALSE);
          return;
        }
    }
}

void
gb_grid_find (GbGrid *self)
{
  if (!gb_grid_commit (self))
    return;
  gtk_search_bar_set_search_mode (GTK_SEARCH_BAR (self->search_bar), TRUE);
  gtk_widget_grab_focus (self->search_entry);
}

static void
make_search (GbGrid *self)
{
  self->search_entry = gtk_search_entry_new ();
  self->search_bar = gtk_search_bar_new ();
  gtk_editable_set_width_chars (GTK_EDITABLE (self->search_entry), 6);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->search_entry), 36);
  gtk_search_bar_set_child (GTK_SEARCH_BAR (self->search_bar), self->search_entry);
  gtk_search_bar_connect_entry (GTK_SEARCH_BAR (self->search_bar), GTK_EDITABLE (self->search_entry));
  gtk_search_bar_set_show_close_button (GTK_SEARCH_BAR (self->search_bar), TRUE);
  g_object_set (self->search_entry, "placeholder-text", _ ("Find by name, material or notes"), NULL);
  g_signal_connect_swapped (self->search_entry, "search-changed", G_CALLBACK (search_changed_cb), self);
  g_signal_connect_swapped (self->search_entry, "activate", G_CALLBACK (search_activate_cb), self);
  g_signal_connect_swapped (self->search_entry, "next-match", G_CALLBACK (search_activate_cb), self);
}

/* The widget --------------------------------------------------------------------------------------------- */

static gboolean
close_request_cb (GbGrid *self)
{
  gb_grid_commit (self);
  return GDK_EVENT_PROPAGATE;
}

static void
gb_grid_root (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (gb_grid_parent_class)->root (widget);
  if (GTK_IS_WINDOW (gtk_widget_get_root (widget)))
    g_signal_connect_object (gtk_widget_get_root (widget), "close-request", G_CALLBACK (close_request_cb),
                             widget, G_CONNECT_SWAPPED);
}

static void
gb_grid_unroot (GtkWidget *widget)
{
  gb_grid_cancel_edit (GB_GRID (widget));
  g_signal_handlers_disconnect_by_func (gtk_widget_get_root (widget), close_request_cb, widget);
  GTK_WIDGET_CLASS (gb_grid_parent_class)->unroot (widget);
}

static void
gb_grid_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  GTK_WIDGET_CLASS (gb_grid_parent_class)->snapshot (widget, snapshot);
  gb_grid_dnd_snapshot (GB_GRID (widget), snapshot);
}

static gboolean
gb_grid_grab_focus (GtkWidget *widget)
{
  GbGrid *self = GB_GRID (widget);
  g_autoptr (GtkBitset) selected = NULL;

  if (self->rows == NULL)
    return FALSE;
  selected = gtk_selection_model_get_selection (GTK_SELECTION_MODEL (self->selection));
  gb_grid_move_to (self, gtk_bitset_is_empty (selected) ? 0 : gtk_bitset_get_minimum (selected),
                   self->cursor_column, FALSE);
  return TRUE;
}

static void
gb_grid_dispose (GObject *object)
{
  GbGrid *self = GB_GRID (object);

  gb_grid_set_project (self, NULL);
  gb_grid_columns_dispose (self);
  g_clear_pointer (&self->menu, gtk_widget_unparent);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  self->view = NULL;
  g_clear_object (&self->settings);
  G_OBJECT_CLASS (gb_grid_parent_class)->dispose (object);
}

static void
gb_grid_finalize (GObject *object)
{
  GbGrid *self = GB_GRID (object);

  g_clear_pointer (&self->columns, g_ptr_array_unref);
  g_clear_object (&self->actions);
  g_clear_object (&self->columns_menu);
  G_OBJECT_CLASS (gb_grid_parent_class)->finalize (object);
}

static void
gb_grid_class_init (GbGridClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gb_grid_dispose;
  G_OBJECT_CLASS (klass)->finalize = gb_grid_finalize;
  widget_class->root = gb_grid_root;
  widget_class->unroot = gb_grid_unroot;
  widget_class->snapshot = gb_grid_snapshot;
  widget_class->grab_focus = gb_grid_grab_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "gb-grid");

  signals[SELECTION_CHANGED] = g_signal_new ("selection-changed", G_TYPE_FROM_CLASS (klass),
                                             G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[REMOVED] = g_signal_new ("removed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 2, G_TYPE_UINT, G_TYPE_STRING);
  signals[REFUSED] = g_signal_new ("refused", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
gb_grid_init (GbGrid *self)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  self->view = GTK_COLUMN_VIEW (gtk_column_view_new (NULL));
  gtk_column_view_set_reorderable (self->view, TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (self->view), "data-table");
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), GTK_WIDGET (self->view));
  gtk_widget_set_vexpand (scrolled, TRUE);

  make_search (self);
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (self->box), self->search_bar);
  gtk_box_append (GTK_BOX (self->box), scrolled);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
}

GtkWidget *
gb_grid_new (const GbGridType *type)
{
  GbGrid *self = g_object_new (GB_TYPE_GRID, NULL);

  self->type = type;
  gb_grid_columns_init (self);
  gb_grid_keys_init (self);
  gb_grid_clicks_init (self);
  gb_grid_dnd_init (self);
  return GTK_WIDGET (self);
}

const GbGridType *
gb_grid_get_type_data (GbGrid *self)
{
  return self->type;
}

static void
drop_rows (GbGrid *self)
{
  gb_grid_cancel_edit (self);
  gtk_column_view_set_model (self->view, NULL);
  if (self->selection != NULL)
    g_signal_handlers_disconnect_by_data (self->selection, self);
  g_clear_object (&self->selection);
  g_clear_object (&self->cursor_row);
  if (self->rows != NULL)
    g_signal_handlers_disconnect_by_data (self->rows, self);
  g_clear_object (&self->rows);
}

static void
make_rows (GbGrid *self)
{
  self->rows
    = gb_grid_rows_new (self->project, self->type->kind, self->owner, self->type->blank_text != NULL);
  self->selection = gtk_multi_selection_new (G_LIST_MODEL (g_object_ref (self->rows)));
  g_signal_connect_swapped (self->selection, "selection-changed", G_CALLBACK (selection_changed_cb), self);
  gtk_column_view_set_model (self->view, GTK_SELECTION_MODEL (self->selection));
  g_signal_connect_swapped (self->rows, "refreshed", G_CALLBACK (refreshed_cb), self);
  search_changed_cb (self);
  selection_changed_cb (self);
}

void
gb_grid_set_project (GbGrid *self, GbProject *project)
{
  if (self->project == project)
    return;
  drop_rows (self);
  if (self->project != NULL)
    g_signal_handlers_disconnect_by_func (self->project, place_cb, self);
  g_set_object (&self->project, project);
  if (project == NULL)
    return;
  g_signal_connect_object (project, "place", G_CALLBACK (place_cb), self, G_CONNECT_SWAPPED);
  make_rows (self);
}

GbProject *
gb_grid_get_project (GbGrid *self)
{
  return self->project;
}

void
gb_grid_set_owner (GbGrid *self, gint64 owner)
{
  if (self->owner == owner)
    return;
  drop_rows (self);
  self->owner = owner;
  if (self->project != NULL)
    make_rows (self);
}

gint64
gb_grid_get_owner (GbGrid *self)
{
  return self->owner;
}

GListModel *
gb_grid_get_rows (GbGrid *self)
{
  return G_LIST_MODEL (self->rows);
}
