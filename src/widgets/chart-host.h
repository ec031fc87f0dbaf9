/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/project.h"
#include "widgets/chart-area.h"

G_BEGIN_DECLS

/* Keeps the chart areas of a page true to the project: a chart that is on screen is made anew after each change, one that is not is made when
 * it comes on screen. */
#define GB_TYPE_CHART_HOST (gb_chart_host_get_type ())
G_DECLARE_FINAL_TYPE (GbChartHost, gb_chart_host, GB, CHART_HOST, GObject)

GbChartHost *gb_chart_host_new (void);
/* Before the first project. @area is held weakly. */
void gb_chart_host_add (GbChartHost *self, GbChartArea *area, GbChartKind kind);
void gb_chart_host_set_project (GbChartHost *self, GbProject *project);
/* Ids of the parts to light up, 0-terminated; copied. NULL for none. */
void gb_chart_host_set_selected (GbChartHost *self, const gint64 *selected);
/* What the charts of floating show: a condition (0: the first) and the load at hand in it (0: none). */
void gb_chart_host_set_condition (GbChartHost *self, gint64 condition, gint64 load);
/* While that load is dragged: how she floats with it at @to. @afloat is borrowed until the next call; NULL: it is no longer dragged. */
void gb_chart_host_set_moved (GbChartHost *self, const GbAfloat *afloat, GbVec3 to);

G_END_DECLS
