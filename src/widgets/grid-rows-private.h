/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "grid-rows.h"

G_BEGIN_DECLS

/* What the files of the rows share: grid-rows.c keeps the list, grid-row.c is one row, grid-rows-filter.c
 * knows what is let through. */

/* Rows are named by keys: the id of a record, or one of these. */
#define KEY_BOAT ((gint64) 0)
#define KEY_BLANK ((gint64) -1)
#define KEY_DRAFT ((gint64) -2)

struct _GbGridRow
{
  GObject parent_instance;
  GbGridRows *rows; /* weak; NULL once the model is gone */
  gint64 key;
  GbRecordItem *item; /* NULL for blanks */
  gulong version_id;
};

struct _GbGridRows
{
  GObject parent_instance;
  GbProject *project;
  GbRecordKind kind;
  gint64 owner;
  gboolean has_blank;

  GArray *keys;       /* of gint64, in the order shown */
  GHashTable *alive;  /* key -> GbGridRow, not owned */
  GHashTable *closed; /* ids of closed groups, 0 for the boat */
  GHashTable *hidden; /* ids that the filter holds back; NULL without a filter */
  char *filter;

  gboolean has_draft;
  GbGridSpot draft;
  GbPartKind draft_kind;
};

/* grid-rows.c */
gboolean gb_grid_rows_is_tree (GbGridRows *self);
gboolean gb_grid_rows_is_open (GbGridRows *self, gint64 group);
gint64 *gb_grid_rows_copy_key (gint64 key);
/* All that could be shown, in the boat's order: borrowed. */
const GPtrArray *gb_grid_rows_records (GbGridRows *self);

/* grid-row.c */
GbGridRow *gb_grid_row_new (GbGridRows *rows, gint64 key);
void gb_grid_row_emit_changed (GbGridRow *self);

/* grid-rows-filter.c */
/* Notes down what the filter holds back now. What comes later is shown until the filter changes, so that a
 * part does not vanish while it is being entered. */
void gb_grid_rows_apply_filter (GbGridRows *self);

G_END_DECLS
