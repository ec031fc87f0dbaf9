/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/record-list.h"

G_BEGIN_DECLS

/* What a grid shows, row by row.
 *
 * For parts this is the tree flattened as far as its groups are open and the filter lets through, with the
 * boat itself as the first row; for other kinds the records of one owner, or those that live in nothing. One
 * or two rows stand for what is not there yet: the blank last row, and a draft, which is a blank in the
 * middle that lasts until something is typed into it.
 *
 * The boat keeps its parts in flattened order, so a fresh list of ids costs one pass; it is set against the
 * old one and told as few runs of "items-changed". Which groups are closed is kept by id, so that it outlasts
 * moves and undo. */

#define GB_TYPE_GRID_ROW (gb_grid_row_get_type ())
G_DECLARE_FINAL_TYPE (GbGridRow, gb_grid_row, GB, GRID_ROW, GObject)

/* Signal "changed": what is shown of the row may be different now.
 *
 * NULL for a blank or a draft, and once the record is gone. Borrowed until the project's next "changed". */
const GbRecord *gb_grid_row_get_record (GbGridRow *self);
/* 0 for a blank or a draft; see gb_grid_row_is_boat() for the boat's own row. */
gint64 gb_grid_row_get_id (GbGridRow *self);
gboolean gb_grid_row_is_blank (GbGridRow *self); /* or a draft */
gboolean gb_grid_row_is_draft (GbGridRow *self);
gboolean gb_grid_row_is_boat (GbGridRow *self);
guint gb_grid_row_get_depth (GbGridRow *self);
gboolean gb_grid_row_can_open (GbGridRow *self); /* a group, or the boat */
gboolean gb_grid_row_is_open (GbGridRow *self);

/* Where something is, or goes: in 'owner', after its child 'after' (0: for a blank last, for a draft first).
 */
typedef struct
{
  gint64 owner;
  gint64 after;
} GbGridSpot;

/* Where what is typed into a blank or a draft goes. */
GbGridSpot gb_grid_row_get_spot (GbGridRow *self);
/* Whether a draft shall become a group. */
GbPartKind gb_grid_row_get_part_kind (GbGridRow *self);

#define GB_TYPE_GRID_ROWS (gb_grid_rows_get_type ())
G_DECLARE_FINAL_TYPE (GbGridRows, gb_grid_rows, GB, GRID_ROWS, GObject)

/* A list model of GbGridRow. Signal "refreshed" (): all runs of "items-changed" of one change are told.
 * @has_blank: with a blank last row, unless the project can only be read. */
GbGridRows *gb_grid_rows_new (GbProject *project, GbRecordKind kind, gint64 owner, gboolean has_blank);

/* FALSE if the row is not shown now. For the boat's row: the kind GB_RECORD_BUILD. */
gboolean gb_grid_rows_find (GbGridRows *self, GbRecordKind kind, gint64 id, guint *position);
gboolean gb_grid_rows_find_blank (GbGridRows *self, guint *position);
gboolean gb_grid_rows_find_draft (GbGridRows *self, guint *position);

void gb_grid_rows_set_open (GbGridRows *self, GbGridRow *row, gboolean open);
void gb_grid_rows_open_all (GbGridRows *self, gboolean open);
/* Opens the groups that @id lies in, and lets it through the filter. */
void gb_grid_rows_reveal (GbGridRows *self, gint64 id);

/* Shows what holds @text in its name, a thing that it refers to, or a text; with the groups above it. NULL or
 * "" shows all. */
void gb_grid_rows_set_filter (GbGridRows *self, const char *text);

/* Puts a draft at @spot, and takes away another one. */
void gb_grid_rows_set_draft (GbGridRows *self, GbGridSpot spot, GbPartKind part_kind);
void gb_grid_rows_clear_draft (GbGridRows *self);

G_END_DECLS
