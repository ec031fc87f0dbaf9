/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-grid-columns"

/* Each field of the table is a column of its own accord; a column of the grid's type with the name of a field
 * takes its place. */

#include "grid-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define PADDING 28    /* of a cell, both sides, with a little air */
#define LEAST_MAIN 14 /* characters of the main column that are seen at least */

static void
column_free (GbColumn *column)
{
  g_free (column->name);
  g_clear_object (&column->view_column);
  g_free (column);
}

GbColumn *
gb_grid_column (GbGrid *self, guint index)
{
  return index < self->columns->len ? self->columns->pdata[index] : NULL;
}

GbColumn *
gb_grid_column_by_name (GbGrid *self, const char *name)
{
  for (guint i = 0; i < self->columns->len; i++)
    if (strcmp (gb_grid_column (self, i)->name, name) == 0)
      return gb_grid_column (self, i);
  return NULL;
}

guint
gb_grid_main_column (GbGrid *self)
{
  return gb_grid_column_by_name (self, self->type->main_column)->index;
}

gboolean
gb_grid_is_main (GbGrid *self, const GbColumn *column)
{
  return strcmp (column->name, self->type->main_column) == 0;
}

static GbColumn *
column_of (GbGrid *self, GtkColumnViewColumn *view_column)
{
  for (guint i = 0; i < self->columns->len; i++)
    if (gb_grid_column (self, i)->view_column == view_column)
      return gb_grid_column (self, i);
  return NULL;
}

GArray *
gb_grid_shown_columns (GbGrid *self)
{
  GListModel *all = gtk_column_view_get_columns (self->view);
  GArray *shown = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; i < g_list_model_get_n_items (all); i++)
    {
      g_autoptr (GtkColumnViewColumn) view_column = g_list_model_get_item (all, i);

      g_array_append_val (shown, column_of (self, view_column)->index);
    }
  return shown;
}

/* How cells look ----------------------------------------------------------------------------------------- */

static char *
blank_text (GbGrid *self, GbGridRow *row)
{
  const GbBoat *boat = gb_project_get_boat (self->project);
  const GbPart *group = gb_boat_part (boat, gb_grid_row_get_spot (row).owner);

  if (gb_grid_row_is_draft (row))
    return g_strdup (gb_grid_row_get_part_kind (row) == GB_KIND_GROUP ? _ ("Name of the group") : _ ("Name"));
  if (self->type->kind == GB_RECORD_PART && group != NULL && self->type->blank_text_group != NULL)
    return g_strdup_printf (_ (self->type->blank_text_group), group->name);
  return g_strdup (_ (self->type->blank_text));
}

static char *
field_text (GbGrid *self, const GbField *field, const GbRecord *record)
{
  char *text;

  if (!gb_field_applies (field, record))
    return NULL;
  if (field->dim == GB_DIM_FLAG)
    return gb_field_get_integer (field, record) != 0 ? g_strdup ("✓") : NULL;
  text = gb_project_display (self->project, field, record);
  return text != NULL ? g_strdelimit (text, "\n\t", ' ') : NULL;
}

void
gb_grid_look (GbGrid *self, const GbColumn *column, GbGridRow *row, GbCellLook *look)
{
  const GbRecord *record = gb_grid_row_get_record (row);

  if (gb_grid_row_is_blank (row))
    {
      if (gb_grid_is_main (self, column))
        look->text = blank_text (self, row);
      look->flags = GB_CELL_DIM;
    }
  else if (record == NULL)
    return;
  else if (column->spec != NULL && column->spec->look != NULL)
    column->spec->look (self, record, look);
  else if (record->kind != self->type->kind)
    {
      look->text = gb_grid_is_main (self, column) ? gb_record_dup_title (record) : NULL;
      look->flags = GB_CELL_STRONG;
    }
  else if (column->field != NULL)
    look->text = field_text (self, column->field, record);
}

const GbField *
gb_grid_cell_field (GbGrid *self, const GbColumn *column, const GbRecord *record)
{
  if (column->spec != NULL && column->spec->enter != NULL)
    return NULL;
  if (record->kind == GB_RECORD_BUILD)
    return gb_grid_is_main (self, column) ? gb_field (GB_RECORD_BUILD, "name") : NULL;
  return column->field != NULL && gb_field_applies (column->field, record) ? column->field : NULL;
}

gboolean
gb_grid_can_edit (GbGrid *self, const GbColumn *column, GbGridRow *row)
{
  const GbRecord *record = gb_grid_row_get_record (row);
  g_autofree char *text = NULL;

  if (gb_project_get_read_only_reason (self->project) != NULL)
    return FALSE;
  if (gb_grid_row_is_blank (row))
    return gb_grid_is_main (self, column);
  if (record == NULL)
    return FALSE;
  if (column->spec == NULL || column->spec->enter == NULL)
    return gb_grid_cell_field (self, column, record) != NULL;
  text = column->spec->edit_text (self, record);
  return text != NULL;
}

static void
refresh_cell (GbCell *cell)
{
  GbGrid *self = GB_GRID (gtk_widget_get_ancestor (GTK_WIDGET (cell), GB_TYPE_GRID));
  GbGridRow *row = gb_cell_get_item (cell);
  g_auto (GbCellLook) look = { NULL };
  const GbColumn *column;

  if (self == NULL || row == NULL || self->project == NULL)
    return;
  column = gb_grid_column (self, gb_cell_get_column (cell));
  gb_grid_look (self, column, row, &look);
  gb_cell_set_look (cell, &look);
  if (gb_grid_is_main (self, column) && self->type->kind == GB_RECORD_PART)
    gb_cell_set_opener (cell, gb_grid_row_get_depth (row), gb_grid_row_can_open (row),
                        gb_grid_row_is_open (row));
}

static void
opener_clicked_cb (GbCell *cell, GbGrid *self)
{
  g_autoptr (GbGridRow) row = gb_cell_get_item (cell) != NULL ? g_object_ref (gb_cell_get_item (cell)) : NULL;

  if (row != NULL && gb_grid_commit (self))
    gb_grid_rows_set_open (self->rows, row, !gb_grid_row_is_open (row));
}

static void
setup_cb (GbColumn *column, GtkListItem *list_item)
{
  GbGrid *self = column->grid;
  GtkWidget *cell
    = gb_cell_new (column->is_number, gb_grid_is_main (self, column) && self->type->kind == GB_RECORD_PART);

  if (gb_grid_is_main (self, column))
    gb_cell_set_least_chars (
      GB_CELL (cell), column->spec != NULL && column->spec->width != 0 ? column->spec->width : LEAST_MAIN);
  g_signal_connect_object (cell, "opener-clicked", G_CALLBACK (opener_clicked_cb), self, 0);
  g_signal_connect_object (cell, "editor-left", G_CALLBACK (gb_grid_editor_left_cb), self, 0);
  gtk_list_item_set_child (list_item, cell);
}

/* The row must leave the focus to the cell that was clicked. */
static void
tame_row (GbGrid *self, GtkWidget *cell)
{
  GtkWidget *list = gtk_widget_get_last_child (GTK_WIDGET (self->view));

  for (GtkWidget *widget = gtk_widget_get_parent (cell); widget != NULL && widget != list;
       widget = gtk_widget_get_parent (widget))
    gtk_widget_set_focus_on_click (widget, FALSE);
}

static void
bind_cb (GbColumn *column, GtkListItem *list_item)
{
  GbCell *cell = GB_CELL (gtk_list_item_get_child (list_item));
  GbGridRow *row = gtk_list_item_get_item (list_item);

  gb_cell_set_place (cell, list_item, column->index);
  if (cell == column->grid->edit_cell && row != column->grid->edit_row)
    gb_grid_cancel_edit (column->grid);
  g_signal_connect_object (row, "changed", G_CALLBACK (refresh_cell), cell, G_CONNECT_SWAPPED);
  tame_row (column->grid, GTK_WIDGET (cell));
  refresh_cell (cell);
}

/* The list may unbind a row and bind it again at once, so an open editor stays until another row comes. */
static void
unbind_cb (GbColumn *column, GtkListItem *list_item)
{
  GbCell *cell = GB_CELL (gtk_list_item_get_child (list_item));

  g_signal_handlers_disconnect_by_func (gtk_list_item_get_item (list_item), refresh_cell, cell);
  gb_cell_set_place (cell, NULL, column->index);
}

/* Making them -------------------------------------------------------------------------------------------- */

static int
usual_width (const GbField *field)
{
  switch (field->dim)
    {
    case GB_DIM_TEXT:
    case GB_DIM_REF:
      return 18;
    case GB_DIM_NOTE:
      return 24;
    case GB_DIM_CHOICE:
      return 13;
    case GB_DIM_FLAG:
    case GB_DIM_COUNT:
      return 6;
    default:
      return 11;
    }
}

static gboolean
is_number_field (const GbField *field)
{
  return gb_field_storage (field) == GB_STORAGE_REAL || field->dim == GB_DIM_MONEY;
}

/* Wide enough for @chars figures and for the title. */
static int
width_in_pixels (GbGrid *self, int chars, const char *title)
{
  PangoContext *context = gtk_widget_get_pango_context (GTK_WIDGET (self));
  PangoFontMetrics *metrics = pango_context_get_metrics (context, NULL, NULL);
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), title);
  int figure = PANGO_PIXELS (pango_font_metrics_get_approximate_digit_width (metrics));
  int title_width;

  pango_font_metrics_unref (metrics);
  pango_layout_get_pixel_size (layout, &title_width, NULL);
  return MAX (chars * figure, title_width) + PADDING;
}

static void
make_view_column (GbGrid *self, GbColumn *column)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  const char *title
    = column->spec != NULL && column->spec->title != NULL ? column->spec->title : column->field->label;
  int width
    = column->spec != NULL && column->spec->width != 0 ? column->spec->width : usual_width (column->field);

  g_signal_connect_swapped (factory, "setup", G_CALLBACK (setup_cb), column);
  g_signal_connect_swapped (factory, "bind", G_CALLBACK (bind_cb), column);
  g_signal_connect_swapped (factory, "unbind", G_CALLBACK (unbind_cb), column);
  column->view_column = g_object_ref_sink (gtk_column_view_column_new (_ (title), factory));
  gtk_column_view_column_set_resizable (column->view_column, TRUE);
  /* The main column takes what the others leave. */
  if (gb_grid_is_main (self, column))
    gtk_column_view_column_set_expand (column->view_column, TRUE);
  else
    gtk_column_view_column_set_fixed_width (column->view_column, width_in_pixels (self, width, _ (title)));
}

static void
add_column (GbGrid *self, const char *name, const GbField *field, const GbGridColumn *spec)
{
  GbColumn *column = g_new0 (GbColumn, 1);

  column->grid = self;
  column->name = g_strdup (name);
  column->field = field;
  column->spec = spec;
  column->index = self->columns->len;
  column->is_number = (spec != NULL && spec->is_number) || (field != NULL && is_number_field (field));
  g_ptr_array_add (self->columns, column);
  make_view_column (self, column);
}

static const GbGridColumn *
find_spec (const GbGridType *type, const char *name)
{
  for (const GbGridColumn *spec = type->columns; spec != NULL && spec->name != NULL; spec++)
    if (strcmp (spec->name, name) == 0)
      return spec;
  return NULL;
}

void
gb_grid_make_columns (GbGrid *self)
{
  const GbGridType *type = self->type;
  const GbRecordType *record_type = gb_record_type (type->kind);

  self->columns = g_ptr_array_new_with_free_func ((GDestroyNotify) column_free);
  for (guint i = 0; i < record_type->n_fields; i++)
    {
      const GbField *field = &record_type->fields[i];

      if (field->dim != GB_DIM_OUTLINE
          && (type->left_out == NULL || !g_strv_contains (type->left_out, field->name)))
        add_column (self, field->name, field, find_spec (type, field->name));
    }
  for (const GbGridColumn *spec = type->columns; spec != NULL && spec->name != NULL; spec++)
    if (gb_field_find (type->kind, spec->name) == NULL)
      add_column (self, spec->name, NULL, spec);
}
