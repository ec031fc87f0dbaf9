/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-import-preview"

/* The heads are a row of widgets of their own above a table whose own headings are hidden: a heading of the toolkit's table holds a text only. Widths
 * are fixed, so that the two stay in line, and they scroll sideways together.
 *
 *   store of PreviewRow (all rows) -> filter (refused only) -> no selection -> column view
 *
 * The rows never change; what is said of them does, at every change of a column. So the cells that are in use are kept in a set and filled anew. */

#include "import-preview.h"

#include <glib/gi18n-lib.h>

#include "import-cells.h"
#include "import-head.h"

#define MOST_COLUMNS 60 /* that are shown */
#define LINE_WIDTH 84
#define OUTCOME_WIDTH 270
#define LEAST_WIDTH 118
#define MOST_WIDTH 260
#define ROWS_MEASURED 100

/* A row by its number. */
#define PREVIEW_TYPE_ROW (preview_row_get_type ())
G_DECLARE_FINAL_TYPE (PreviewRow, preview_row, PREVIEW, ROW, GObject)

struct _PreviewRow
{
  GObject parent_instance;
  guint index;
};

G_DEFINE_FINAL_TYPE (PreviewRow, preview_row, G_TYPE_OBJECT)

static void
preview_row_class_init (PreviewRowClass *klass)
{
}

static void
preview_row_init (PreviewRow *self)
{
}

typedef struct _Column Column;
struct _Column
{
  GbImportPreview *preview;
  const GbImportCellType *cells;
  guint index;        /* in the table */
  GbImportHead *head; /* owned by the row of heads */
};

struct _GbImportPreview
{
  GtkWidget parent_instance;
  const GbImport *import;
  GtkWidget *box;
  GtkScrolledWindow *head_window;
  GtkWidget *heads;
  GtkScrolledWindow *table_window;
  GtkColumnView *view;

  GListStore *rows;
  GtkFilter *filter;
  gboolean refused_only;
  GPtrArray *columns;   /* (element-type Column): two of our own, then those of the table that are shown */
  GHashTable *cells;    /* GtkListItem in use -> Column */
  GtkStringList *names; /* of the fields */
  GtkWidget *focus;     /* weak; in the heads, while they take no input */
};

enum
{
  FIELD_CHOSEN,
  UNIT_CHOSEN,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (GbImportPreview, gb_import_preview, GTK_TYPE_WIDGET)

/* Cells ------------------------------------------------------------------------------------------------------------- */

static void
fill_cell (Column *column, GtkListItem *item)
{
  PreviewRow *row = gtk_list_item_get_item (item);

  if (column->preview->import != NULL)
    column->cells->fill (gtk_list_item_get_child (item), column->preview->import, row->index, column->index);
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, Column *column)
{
  gtk_list_item_set_child (item, column->cells->make ());
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, Column *column)
{
  g_hash_table_insert (column->preview->cells, item, column);
  fill_cell (column, item);
}

static void
unbind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, Column *column)
{
  g_hash_table_remove (column->preview->cells, item);
}

/* Columns ----------------------------------------------------------------------------------------------------------- */

static void
field_chosen_cb (Column *column, const GbField *field)
{
  g_signal_emit (column->preview, signals[FIELD_CHOSEN], 0, column->index, field);
}

static void
unit_chosen_cb (Column *column, const char *unit)
{
  g_signal_emit (column->preview, signals[UNIT_CHOSEN], 0, column->index, unit);
}

/* Column @index of the table with its head; those of our own have no drop-downs. */
static void
add_column (GbImportPreview *self, const GbImportCellType *cells, guint index, const char *heading, int width, const GPtrArray *fields)
{
  Column *column = g_new0 (Column, 1);
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_autoptr (GtkColumnViewColumn) view_column = gtk_column_view_column_new (heading, factory);

  column->preview = self;
  column->cells = cells;
  column->index = index;
  column->head = GB_IMPORT_HEAD (gb_import_head_new (heading, width, fields, G_LIST_MODEL (self->names)));
  g_ptr_array_add (self->columns, column);
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), column);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), column);
  g_signal_connect (factory, "unbind", G_CALLBACK (unbind_cb), column);
  g_signal_connect_swapped (column->head, "field-chosen", G_CALLBACK (field_chosen_cb), column);
  g_signal_connect_swapped (column->head, "unit-chosen", G_CALLBACK (unit_chosen_cb), column);
  gtk_column_view_column_set_fixed_width (view_column, width);
  gtk_column_view_append_column (self->view, view_column);
  gtk_box_append (GTK_BOX (self->heads), GTK_WIDGET (column->head));
}

/* Wide enough for what stands in the first rows, within reason. */
static int
find_width (const GbImport *import, guint column)
{
  glong most = g_utf8_strlen (gb_import_heading (import, column), -1);

  for (guint r = 0; r < MIN (gb_import_n_rows (import), ROWS_MEASURED); r++)
    most = MAX (most, g_utf8_strlen (gb_import_cell (import, r, column), GB_IMPORT_MOST_CHARACTERS));
  return (int) CLAMP ((most + 3) * GB_IMPORT_CHARACTER_WIDTH, LEAST_WIDTH, MOST_WIDTH);
}

static guint
count_mapped (const GbImport *import)
{
  guint n = 0;

  for (guint c = 0; c < gb_import_n_columns (import); c++)
    n += gb_import_get_field (import, c) != NULL;
  return n;
}

/* All columns that go into a field, and of the others the first that there is room for. */
static void
add_columns (GbImportPreview *self, const GbImport *import)
{
  const GPtrArray *fields = gb_import_fields (import);
  guint room = MOST_COLUMNS - MIN (MOST_COLUMNS, count_mapped (import));

  gtk_string_list_append (self->names, _ ("Left out"));
  for (guint i = 0; i < fields->len; i++)
    gtk_string_list_append (self->names, _ (((const GbField *) fields->pdata[i])->label));
  add_column (self, &gb_import_line_cell, 0, _ ("Line"), LINE_WIDTH, NULL);
  add_column (self, &gb_import_outcome_cell, 0, _ ("What becomes of it"), OUTCOME_WIDTH, NULL);
  for (guint c = 0; c < gb_import_n_columns (import); c++)
    {
      gboolean mapped = gb_import_get_field (import, c) != NULL;

      if (!mapped && room == 0)
        continue;
      room -= mapped ? 0 : 1;
      add_column (self, &gb_import_text_cell, c, gb_import_heading (import, c), find_width (import, c), fields);
    }
}

static void
add_rows (GbImportPreview *self, guint n)
{
  g_autoptr (GPtrArray) rows = g_ptr_array_new_full (n, g_object_unref);

  for (guint i = 0; i < n; i++)
    {
      PreviewRow *row = g_object_new (PREVIEW_TYPE_ROW, NULL);

      row->index = i;
      g_ptr_array_add (rows, row);
    }
  g_list_store_splice (self->rows, 0, 0, rows->pdata, n);
}

/* Showing ----------------------------------------------------------------------------------------------------------- */

static gboolean
is_wanted (gpointer item, gpointer data)
{
  GbImportPreview *self = data;

  return !self->refused_only || self->import == NULL || gb_import_refusal (self->import, PREVIEW_ROW (item)->index) != NULL;
}

static void
show_heads (GbImportPreview *self, const GbBuild *build)
{
  for (guint i = 0; i < self->columns->len; i++)
    {
      Column *column = self->columns->pdata[i];

      if (column->cells == &gb_import_text_cell)
        gb_import_head_show (column->head, gb_import_get_field (self->import, column->index),
                             gb_import_get_unit (self->import, column->index), build);
    }
}

static void
fill_cells (GbImportPreview *self)
{
  GHashTableIter iter;
  gpointer item, column;

  g_hash_table_iter_init (&iter, self->cells);
  while (g_hash_table_iter_next (&iter, &item, &column))
    fill_cell (column, item);
}

/* What takes no input loses the focus, which comes back when it does again. */
static void
set_heads_sensitive (GbImportPreview *self, gboolean sensitive)
{
  GtkWidget *focus = gtk_root_get_focus (gtk_widget_get_root (GTK_WIDGET (self)));

  if (!sensitive && focus != NULL && gtk_widget_is_ancestor (focus, self->heads))
    g_set_weak_pointer (&self->focus, focus);
  gtk_widget_set_sensitive (self->heads, sensitive);
  if (sensitive && self->focus != NULL)
    gtk_widget_grab_focus (self->focus);
  if (sensitive)
    g_clear_weak_pointer (&self->focus);
}

void
gb_import_preview_show (GbImportPreview *self, const GbImport *import, const GbBuild *build)
{
  g_return_if_fail (GB_IS_IMPORT_PREVIEW (self));

  self->import = import;
  set_heads_sensitive (self, import != NULL);
  if (import == NULL)
    return;
  if (self->columns->len == 0)
    {
      add_columns (self, import);
      add_rows (self, gb_import_n_rows (import));
    }
  else
    fill_cells (self);
  show_heads (self, build);
  if (self->refused_only)
    gtk_filter_changed (self->filter, GTK_FILTER_CHANGE_DIFFERENT);
}

void
gb_import_preview_set_refused_only (GbImportPreview *self, gboolean refused_only)
{
  g_return_if_fail (GB_IS_IMPORT_PREVIEW (self));
  if (self->refused_only == refused_only)
    return;
  self->refused_only = refused_only;
  gtk_filter_changed (self->filter, refused_only ? GTK_FILTER_CHANGE_MORE_STRICT : GTK_FILTER_CHANGE_LESS_STRICT);
}

guint
gb_import_preview_n_hidden (GbImportPreview *self)
{
  g_return_val_if_fail (GB_IS_IMPORT_PREVIEW (self), 0);
  return self->import != NULL ? gb_import_n_columns (self->import) + 2 - self->columns->len : 0;
}

GtkWidget *
gb_import_preview_get_head (GbImportPreview *self, guint index)
{
  for (guint i = 0; i < self->columns->len; i++)
    {
      Column *column = self->columns->pdata[i];

      if (column->cells == &gb_import_text_cell && column->index == index)
        return GTK_WIDGET (column->head);
    }
  return NULL;
}

GtkColumnView *
gb_import_preview_get_view (GbImportPreview *self)
{
  return self->view;
}

/* What a cell has no room for. */
static gboolean
query_tooltip_cb (GtkWidget *view, int x, int y, gboolean keyboard, GtkTooltip *tooltip, gpointer data)
{
  GtkWidget *cell = keyboard ? NULL : gtk_widget_pick (view, x, y, GTK_PICK_DEFAULT);
  const char *text = cell != NULL ? gb_import_cell_cut_text (cell) : NULL;

  gtk_tooltip_set_text (tooltip, text);
  return text != NULL;
}

/* Keys -------------------------------------------------------------------------------------------------------------- */

static void
scroll_sideways (GbImportPreview *self, double direction)
{
  GtkAdjustment *adjustment = gtk_scrolled_window_get_hadjustment (self->table_window);

  gtk_adjustment_set_value (adjustment, gtk_adjustment_get_value (adjustment) + direction * gtk_adjustment_get_page_size (adjustment) / 4);
}

/* By itself the table would let Tab through row by row. It is the last thing in its window, so that Tab starts over. */
static void
leave (GbImportPreview *self, gboolean backward)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  if (backward && gtk_widget_child_focus (self->heads, GTK_DIR_TAB_BACKWARD))
    return;
  gtk_root_set_focus (root, NULL);
  gtk_widget_child_focus (GTK_WIDGET (root), backward ? GTK_DIR_TAB_BACKWARD : GTK_DIR_TAB_FORWARD);
}

static gboolean
key_pressed_cb (GtkEventControllerKey *controller, guint keyval, guint keycode, GdkModifierType state, GbImportPreview *self)
{
  switch (keyval)
    {
    case GDK_KEY_Tab:
    case GDK_KEY_ISO_Left_Tab:
      leave (self, keyval == GDK_KEY_ISO_Left_Tab || (state & GDK_SHIFT_MASK) != 0);
      return GDK_EVENT_STOP;
    case GDK_KEY_Left:
    case GDK_KEY_Right:
      scroll_sideways (self, keyval == GDK_KEY_Left ? -1 : 1);
      return GDK_EVENT_STOP;
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

/* Object ------------------------------------------------------------------------------------------------------------ */

static void
gb_import_preview_dispose (GObject *object)
{
  GbImportPreview *self = GB_IMPORT_PREVIEW (object);

  self->import = NULL;
  g_clear_weak_pointer (&self->focus);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->rows);
  g_clear_object (&self->filter);
  g_clear_object (&self->names);
  G_OBJECT_CLASS (gb_import_preview_parent_class)->dispose (object);
}

static void
gb_import_preview_finalize (GObject *object)
{
  GbImportPreview *self = GB_IMPORT_PREVIEW (object);

  g_ptr_array_unref (self->columns);
  g_hash_table_unref (self->cells);
  G_OBJECT_CLASS (gb_import_preview_parent_class)->finalize (object);
}

static void
gb_import_preview_class_init (GbImportPreviewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gb_import_preview_dispose;
  G_OBJECT_CLASS (klass)->finalize = gb_import_preview_finalize;
  gtk_widget_class_set_css_name (widget_class, "gb-import-preview");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  signals[FIELD_CHOSEN] = g_signal_new ("field-chosen", GB_TYPE_IMPORT_PREVIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 2,
                                        G_TYPE_UINT, G_TYPE_POINTER);
  signals[UNIT_CHOSEN] = g_signal_new ("unit-chosen", GB_TYPE_IMPORT_PREVIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 2,
                                       G_TYPE_UINT, G_TYPE_STRING);
}

static void
make_table (GbImportPreview *self)
{
  GtkFilterListModel *filtered = gtk_filter_list_model_new (G_LIST_MODEL (g_object_ref (self->rows)), g_object_ref (self->filter));
  GtkNoSelection *selection = gtk_no_selection_new (G_LIST_MODEL (filtered));
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->view = GTK_COLUMN_VIEW (gtk_column_view_new (GTK_SELECTION_MODEL (selection)));
  gtk_column_view_set_show_row_separators (self->view, TRUE);
  gtk_column_view_set_show_column_separators (self->view, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->view), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Rows of the table"), -1);
  gtk_widget_set_visible (gtk_widget_get_first_child (GTK_WIDGET (self->view)), FALSE);
  gtk_widget_set_has_tooltip (GTK_WIDGET (self->view), TRUE);
  g_signal_connect (self->view, "query-tooltip", G_CALLBACK (query_tooltip_cb), NULL);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self->view), keys);
}

static void
gb_import_preview_init (GbImportPreview *self)
{
  self->columns = g_ptr_array_new_with_free_func (g_free);
  self->cells = g_hash_table_new (NULL, NULL);
  self->names = gtk_string_list_new (NULL);
  self->rows = g_list_store_new (PREVIEW_TYPE_ROW);
  self->filter = GTK_FILTER (gtk_custom_filter_new (is_wanted, self, NULL));
  make_table (self);

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->heads = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  self->head_window = GTK_SCROLLED_WINDOW (gtk_scrolled_window_new ());
  self->table_window = GTK_SCROLLED_WINDOW (gtk_scrolled_window_new ());
  gtk_widget_add_css_class (self->heads, "heads");
  gtk_scrolled_window_set_policy (self->head_window, GTK_POLICY_EXTERNAL, GTK_POLICY_NEVER);
  gtk_scrolled_window_set_child (self->head_window, self->heads);
  gtk_scrolled_window_set_child (self->table_window, GTK_WIDGET (self->view));
  gtk_widget_set_vexpand (GTK_WIDGET (self->table_window), TRUE);
  g_object_bind_property (gtk_scrolled_window_get_hadjustment (self->table_window), "value",
                          gtk_scrolled_window_get_hadjustment (self->head_window), "value", G_BINDING_BIDIRECTIONAL);
  gtk_box_append (GTK_BOX (self->box), GTK_WIDGET (self->head_window));
  gtk_box_append (GTK_BOX (self->box), gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
  gtk_box_append (GTK_BOX (self->box), GTK_WIDGET (self->table_window));
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}
