/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "choices.h"

G_BEGIN_DECLS

/* How a cell looks. Clear it after use. */
typedef enum
{
  GB_CELL_DIM = 1 << 0,     /* quiet: a placeholder, or what does not count */
  GB_CELL_STRONG = 1 << 1,  /* a sum */
  GB_CELL_TROUBLE = 1 << 2, /* something is missing or wrong; the note says what */
} GbCellFlags;

typedef struct
{
  char *text; /* owned; NULL: empty */
  char *note; /* owned; a sentence, shown with the pointer over the cell; or NULL */
  GbCellFlags flags;
} GbCellLook;

void gb_cell_look_clear (GbCellLook *look);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (GbCellLook, gb_cell_look_clear)

/* One cell of a grid: a single label, so that many of them are cheap. An editor is made when editing starts
 * and taken away when it ends; it may drop down a list to pick from, and the cell can say below itself what
 * is wrong with the entry.
 *
 * Signals: "opener-clicked" (), the arrow of a group was clicked; "editor-left" (), the focus went elsewhere.
 */
#define GB_TYPE_CELL (gb_cell_get_type ())
G_DECLARE_FINAL_TYPE (GbCell, gb_cell, GB, CELL, GtkWidget)

/* @is_number: right-aligned, with figures of one width. @has_opener: room for the arrow of a group, indented
 * by its depth. */
GtkWidget *gb_cell_new (gboolean is_number, gboolean has_opener);
/* Never narrower than so many characters. */
void gb_cell_set_least_chars (GbCell *self, int chars);

/* Where it stands. The list item is the toolkit's and outlives the cell's binding; NULL while unbound. */
void gb_cell_set_place (GbCell *self, GtkListItem *list_item, guint column);
guint gb_cell_get_position (GbCell *self); /* GTK_INVALID_LIST_POSITION while unbound */
gpointer gb_cell_get_item (GbCell *self);  /* borrowed; NULL while unbound */
guint gb_cell_get_column (GbCell *self);

/* Only what differs is drawn again. While editing the text waits behind the editor. */
void gb_cell_set_look (GbCell *self, const GbCellLook *look);
const char *gb_cell_get_text (GbCell *self);
void gb_cell_set_opener (GbCell *self, guint depth, gboolean can_open, gboolean is_open);

/* Starts editing with @text, which is selected. @choices (consumed, may be NULL) are offered; @strict as in
 * gb_completion_set_choices(). */
void gb_cell_edit (GbCell *self, const char *text, GPtrArray *choices, gboolean strict);
gboolean gb_cell_is_editing (GbCell *self);
/* The editor; NULL unless editing. */
GtkWidget *gb_cell_get_editor (GbCell *self);
const char *gb_cell_get_entry (GbCell *self);
const GbChoiceItem *gb_cell_get_chosen (GbCell *self);
/* Drops the list of choices down. */
void gb_cell_open_choices (GbCell *self);
/* TRUE if the list of choices used the key. */
gboolean gb_cell_choices_key (GbCell *self, guint keyval, GdkModifierType state);
/* Says below the cell, while editing, what is wrong with the entry. NULL takes it back. */
void gb_cell_complain (GbCell *self, const char *sentence);
const char *gb_cell_get_complaint (GbCell *self); /* NULL: none */
/* Ends editing; what stands in the editor is let go. */
void gb_cell_stop (GbCell *self);

G_END_DECLS
