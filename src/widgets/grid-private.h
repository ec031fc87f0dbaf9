/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "grid.h"

G_BEGIN_DECLS

/* What the files of the grid share:
 *   grid.c            the widget, its rows, the way to a cell, and the search
 *   grid-selection.c  which rows are selected
 *   grid-columns.c    which columns there are, and how their cells look
 *   grid-columns-shown.c  which of them are shown
 *   grid-edit.c       one entry, from its start to its end
 *   grid-keys.c       keys
 *   grid-clicks.c     clicks, and the menu of the rows
 *   grid-verbs.c      what is done with selected rows
 *   grid-clipboard.c  rows to and from the clipboard
 *   grid-dnd.c        rows dragged */

typedef struct
{
  GbGrid *grid; /* borrowed */
  char *name;
  const GbField *field;     /* or NULL */
  const GbGridColumn *spec; /* or NULL: just the field */
  GtkColumnViewColumn *view_column; /* owned */
  guint index;
  gboolean is_number;
} GbColumn;

struct _GbGrid
{
  GtkWidget parent_instance;
  const GbGridType *type;
  GbProject *project;
  gint64 owner;

  GtkWidget *box; /* holds all of it */
  GtkWidget *search_bar;
  GtkWidget *search_entry;
  GtkColumnView *view;
  GbGridRows *rows;
  GtkMultiSelection *selection;
  GPtrArray *columns; /* of GbColumn, by index, shown or not */
  GSettings *settings;
  GSimpleActionGroup *actions;
  GMenu *columns_menu;
  guint save_columns_id;
  GtkWidget *menu; /* popover of the rows; NULL without one */

  GbGridRow *cursor_row; /* where the focus was last */
  guint cursor_position;
  guint cursor_column;
  guint anchor;        /* where a selection with Shift starts */

  /* The entry at hand; NULL: none. */
  GbCell *edit_cell;
  GbGridRow *edit_row;
  GbColumn *edit_column;
  char *edit_start; /* what the editor started with, unless typing replaced it */
  gboolean committing;

  /* Where a drag hovers. */
  gboolean drop_shown;
  graphene_rect_t drop_mark;
};

/* grid.c */
GbGridRow *gb_grid_dup_row (GbGrid *self, guint position); /* (transfer full), NULL past the end */
gboolean gb_grid_position_of (GbGrid *self, GbGridRow *row, guint *position);
/* The cell that the focus is in, or NULL. */
GbCell *gb_grid_focus_cell (GbGrid *self);
/* Notes down that the focus is in @cell. */
void gb_grid_set_cursor (GbGrid *self, GbCell *cell);
GbCell *gb_grid_cell_at (GbGrid *self, guint position, guint column);
GbCell *gb_grid_pick_cell (GbGrid *self, double x, double y); /* in the view's coordinates */
/* Moves the focus; @extend: keeps the selection and widens it to the row; else only that row is selected. */
void gb_grid_move_to (GbGrid *self, guint position, guint column, gboolean extend);
void gb_grid_scroll_to (GbGrid *self, guint position, guint column);
void gb_grid_refuse (GbGrid *self, GError *error); /* emits "refused"; consumes @error */
void gb_grid_emit_removed (GbGrid *self, guint n, const char *title);

/* grid-columns-shown.c */
void gb_grid_columns_init (GbGrid *self);
void gb_grid_columns_dispose (GbGrid *self);

/* grid-columns.c */
void gb_grid_make_columns (GbGrid *self);
gboolean gb_grid_is_main (GbGrid *self, const GbColumn *column);
GbColumn *gb_grid_column (GbGrid *self, guint index);
GbColumn *gb_grid_column_by_name (GbGrid *self, const char *name); /* NULL: none */
guint gb_grid_main_column (GbGrid *self);
/* Indices of the columns that are shown, in the order shown. Free with g_array_unref(). */
GArray *gb_grid_shown_columns (GbGrid *self);
/* The field that an entry into this cell goes to; NULL: it cannot be edited, or the column takes entries in
 * its own way. */
const GbField *gb_grid_cell_field (GbGrid *self, const GbColumn *column, const GbRecord *record);
gboolean gb_grid_can_edit (GbGrid *self, const GbColumn *column, GbGridRow *row);
void gb_grid_look (GbGrid *self, const GbColumn *column, GbGridRow *row, GbCellLook *look);

/* grid-edit.c */
/* @initial: starts with that instead of what is in the cell; NULL: with what is there. FALSE if the cell
 * cannot be edited. */
gboolean gb_grid_start_edit (GbGrid *self, guint position, guint column, const char *initial);
void gb_grid_cancel_edit (GbGrid *self);
gboolean gb_grid_is_editing (GbGrid *self);
/* Turns a flag over, or starts editing what is in any other cell. */
void gb_grid_open_cell (GbGrid *self, guint position, guint column);
void gb_grid_editor_left_cb (GbCell *cell, GbGrid *self);

/* grid-keys.c */
void gb_grid_keys_init (GbGrid *self);

/* grid-clicks.c */
void gb_grid_clicks_init (GbGrid *self);
void gb_grid_show_menu (GbGrid *self, double x, double y); /* in the view's coordinates */

/* grid-verbs.c */
/* Where the rows that are pasted or added go: after the row at hand. */
GbGridSpot gb_grid_spot_at_hand (GbGrid *self);
/* Selects what was moved or made, and brings the first of it into view with the focus. */
void gb_grid_go_to_all (GbGrid *self, const gint64 *ids, guint n_ids);

/* grid-clipboard.c */
/* Tab-separated, with headings. Free it. */
char *gb_grid_rows_as_text (GbGrid *self, const gint64 *ids, guint n_ids);

/* grid-dnd.c */
void gb_grid_dnd_init (GbGrid *self);
void gb_grid_dnd_snapshot (GbGrid *self, GtkSnapshot *snapshot);

G_END_DECLS
