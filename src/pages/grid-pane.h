/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "widgets/grid.h"

G_BEGIN_DECLS

/* A grid with its heading, a button that starts a new row, and the menu of its columns. Deletions are told with an Undo, refusals as they are, both
 * through the window ("win.toast-undo", "win.tell"). */
#define GB_TYPE_GRID_PANE (gb_grid_pane_get_type ())
G_DECLARE_FINAL_TYPE (GbGridPane, gb_grid_pane, GB, GRID_PANE, GtkBox)

/* @heading and @add_label are translated; NULL: none. */
GbGridPane *gb_grid_pane_new (const GbGridType *type, const char *heading, const char *add_label);
GbGrid *gb_grid_pane_get_grid (GbGridPane *self);
/* NULL empties it. */
void gb_grid_pane_set_project (GbGridPane *self, GbProject *project);
/* Starts a new row, as the button does. */
void gb_grid_pane_start (GbGridPane *self);
/* What stands in its place while the build has no record of the kind: what belongs there, and the one button that starts it (by @action; NULL: by
 * gb_grid_pane_start()). All translated. */
void gb_grid_pane_set_nothing (GbGridPane *self, const char *title, const char *sentence, const char *button, const char *action);
/* A quiet sentence under the heading; "" hides it. */
void gb_grid_pane_set_hint (GbGridPane *self, const char *hint);

/* Selects the first of @records if there is one, so that what depends on the selection is not empty. */
void gb_grid_pane_select_first (GbGridPane *self, const GPtrArray *records);

/* For GbGridType.add: adds a record of the grid's kind at @spot whose field @field is what was typed or chosen. Returns its id, or 0 with an error. */
gint64 gb_grid_add_record (GbGrid *grid, const char *field, const char *text, const GbChoiceItem *chosen, GbGridSpot spot, GError **error);
/* The same for a draft of the caller's (consumed). */
gint64 gb_grid_add_draft (GbGrid *grid, GbRecord *draft, const char *field, const char *text, const GbChoiceItem *chosen, GbGridSpot spot,
                          GError **error);

G_END_DECLS
