/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/project.h"
#include "widgets/chart-area.h"

G_BEGIN_DECLS

/* What must stay above water beside the hulls' own edges: the openings of a hull and their corners, beside
 * the drawing. */
#define GB_TYPE_OPENINGS_VIEW (gb_openings_view_get_type ())
G_DECLARE_FINAL_TYPE (GbOpeningsView, gb_openings_view, GB, OPENINGS_VIEW, GtkBox)

/* Its drawing, for the page's host. */
GbChartArea *gb_openings_view_get_area (GbOpeningsView *self);
/* NULL lets go. */
void gb_openings_view_set_project (GbOpeningsView *self, GbProject *project);
/* To the row of an opening or a corner. */
void gb_openings_view_go_to (GbOpeningsView *self, const GbPlace *place);

G_END_DECLS
