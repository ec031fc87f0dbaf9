/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/project.h"
#include "widgets/chart-area.h"

G_BEGIN_DECLS

/* The crew map with what it answers, and who moves in it. Signal "load-chosen" (gint64 load): another one
 * shall move. */
#define GB_TYPE_CREW_VIEW (gb_crew_view_get_type ())
G_DECLARE_FINAL_TYPE (GbCrewView, gb_crew_view, GB, CREW_VIEW, GtkBox)

/* Its chart, for the page's host. */
GbChartArea *gb_crew_view_get_area (GbCrewView *self);
/* @load: who moves, 0: there is nobody. */
void gb_crew_view_show (GbCrewView *self, GbProject *project, gint64 condition, gint64 load);

G_END_DECLS
