/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "cell.h"
#include "grid-rows.h"

G_BEGIN_DECLS

/* A table of records that is edited in its cells, by keyboard alone if need be. Parts are shown as a tree.
 *
 *   arrows, Home, End, Page Up, Page Down    from cell to cell; with Shift more rows are selected
 *   Tab, Shift+Tab, Enter                    to the next cell that may be edited, or the one before
 *   Ctrl+Tab, Ctrl+Shift+Tab                 out of the table
 *   typing, Backspace                        starts editing anew; F2, Space and a double click edit what is
 * there Enter, Tab, Up, Down; Escape             keep the entry; let it go Ctrl+Enter a new row below Delete,
 * Ctrl+D                           removes, duplicates the selected rows Ctrl+X, Ctrl+C, Ctrl+V cut, copy,
 * paste rows Alt+Up, Alt+Down                         moves the selected rows among their siblings Alt+Right,
 * Alt+Left                      into the group above, out of the group
 *   +, -, Ctrl+Right, Ctrl+Left              opens or closes a group; Ctrl+Shift with them all groups
 *   Ctrl+A, Ctrl+F, Menu                     all rows; find; the menu of the rows
 *
 * An entry goes to all selected rows if the cell's row is among them. Signals:
 *
 *   "selection-changed" ()                 other rows are selected
 *   "removed" (guint n, const char *title) rows were removed; the title is that of one of them
 *   "refused" (const char *sentence)       a verb could not be done */
#define GB_TYPE_GRID (gb_grid_get_type ())
G_DECLARE_FINAL_TYPE (GbGrid, gb_grid, GB, GRID, GtkWidget)

/* A column that is more than a field of the table. Fields have columns of their own accord. */
typedef struct
{
  const char *name;  /* in the settings; that of a field takes the place of the field's own column */
  const char *title; /* untranslated; NULL: the field's label */
  int width;         /* in characters, of the main column the least; 0: as usual for the field */
  gboolean is_number;
  /* How the cell of @record looks. NULL: as the field is displayed. The record may be the boat itself in the
   * tree of parts. */
  void (*look) (GbGrid *grid, const GbRecord *record, GbCellLook *look);
  /* What an editor starts with; NULL: this cell cannot be edited. For columns with 'enter'. */
  char *(*edit_text) (GbGrid *grid, const GbRecord *record);
  /* What is offered; (element-type GbChoiceItem) (transfer full). NULL: what the field offers. */
  GPtrArray *(*choices) (GbGrid *grid, const GbRecord *record);
  /* Takes an entry. NULL: gb_project_enter() for the field. */
  gboolean (*enter) (GbGrid *grid, const gint64 *ids, guint n_ids, const char *text,
                     const GbChoiceItem *chosen, GError **error);
  /* Names of fields that are seen in this column while their own are not shown: where undo goes. May be NULL.
   */
  const char *const *stands_for;
} GbGridColumn;

/* What sort of grid it is: all that pages say about theirs, once. Static data. */
typedef struct
{
  GbRecordKind kind;
  const char *const *shown;      /* names of the columns that are shown at first, in order */
  const char *const *left_out;   /* names of fields that have no column; may be NULL */
  const char *main_column;       /* always shown; a new row starts in it */
  const char *settings_key;      /* where the columns are kept; NULL: nowhere */
  const char *blank_text;        /* untranslated: "Type a name to add a part"; NULL: no blank row */
  const char *blank_text_group; /* untranslated, with %s for the group: "Type a name to add a part to %s"; may
                                   be NULL */
  const GbGridColumn *columns;   /* ends with a NULL name */
  /* Makes a row of what was typed into the blank, a draft, or the main column of a new row. Returns its id; 0
   * with an error. */
  gint64 (*add) (GbGrid *grid, const char *text, const GbChoiceItem *chosen, GbGridSpot spot, GbPartKind kind,
                 GError **error);
  /* What the main column offers in a new row; may be NULL. */
  GPtrArray *(*add_choices) (GbGrid *grid);
  /* Rows as tab-separated text for a spreadsheet; NULL: the columns that are shown. */
  char *(*write_rows) (GbProject *project, const gint64 *ids, guint n_ids);
  /* Takes tab-separated rows in, as one edit; NULL: they are not taken. */
  gboolean (*read_rows) (GbGrid *grid, const char *text, GbGridSpot spot, GError **error);
} GbGridType;

GtkWidget *gb_grid_new (const GbGridType *type);
const GbGridType *gb_grid_get_type_data (GbGrid *self);

/* NULL empties it. */
void gb_grid_set_project (GbGrid *self, GbProject *project);
GbProject *gb_grid_get_project (GbGrid *self);
/* Shows what lives in the record @owner. */
void gb_grid_set_owner (GbGrid *self, gint64 owner);
gint64 gb_grid_get_owner (GbGrid *self);

/* The menu that rows show at a right click. */
void gb_grid_set_menu (GbGrid *self, GMenuModel *menu);
/* Which columns are shown, for a menu button; actions "grid.column" and so on, see gb_grid_get_actions(). */
GMenuModel *gb_grid_get_columns_menu (GbGrid *self);
/* The group of actions that the columns' menu names; insert it as "grid" where the menu is shown outside the
 * grid. */
GActionGroup *gb_grid_get_actions (GbGrid *self);

/* Selection: ids of records, in the order shown. Free them. The boat's own row and blanks are never among
 * them. */
gint64 *gb_grid_dup_selected (GbGrid *self, guint *n_ids);
/* The same without what lies in another selected group. */
gint64 *gb_grid_dup_selected_tops (GbGrid *self, guint *n_ids);
gboolean gb_grid_is_boat_selected (GbGrid *self);
void gb_grid_select (GbGrid *self, const gint64 *ids, guint n_ids);

/* Shows, selects and scrolls to a record, and to the cell of @column if that is not NULL. With @focus the
 * cell gets the focus. */
gboolean gb_grid_go_to (GbGrid *self, GbRecordKind kind, gint64 id, const char *column, gboolean focus);
/* The cell at hand, or NULL. For tests and for pages that put something beside it. */
GbCell *gb_grid_find_cell (GbGrid *self, guint position, const char *column);
GListModel *gb_grid_get_rows (GbGrid *self); /* of GbGridRow */

/* The sibling that stands after @spot, before which the project's verbs put things; 0: @spot is the end. */
gint64 gb_grid_sibling_after (GbGrid *self, GbGridSpot spot);

/* Verbs, as the keys do them. */
void gb_grid_new_row (GbGrid *self,
                      GbPartKind kind); /* below the row at hand; its name is asked for in place */
void gb_grid_start_blank (GbGrid *self);              /* goes to the blank last row and starts editing */
void gb_grid_edit (GbGrid *self);                     /* the cell at hand */
gboolean gb_grid_commit (GbGrid *self); /* FALSE if the entry is refused; TRUE too if none is open */
void gb_grid_remove (GbGrid *self);
void gb_grid_duplicate (GbGrid *self);
void gb_grid_copy (GbGrid *self);
void gb_grid_cut (GbGrid *self);
void gb_grid_paste (GbGrid *self);
void gb_grid_move_rows (GbGrid *self, int by);    /* -1 up, 1 down */
void gb_grid_indent (GbGrid *self, gboolean into); /* into the group above, or out */
void gb_grid_open_groups (GbGrid *self, gboolean open);
void gb_grid_find (GbGrid *self);
void gb_grid_select_all (GbGrid *self);

G_END_DECLS
