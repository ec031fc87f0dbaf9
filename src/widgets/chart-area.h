/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "charts/chart.h"

G_BEGIN_DECLS

/* Shows one chart with its values under the pointer and a menu of its own: export as PNG, SVG or PDF, and print. A screen reader hears
 * the chart's title and its values in words.
 *
 * Signal "part-picked" (gint64 id): a part in the picture was clicked. */
#define GB_TYPE_CHART_AREA (gb_chart_area_get_type ())
G_DECLARE_FINAL_TYPE (GbChartArea, gb_chart_area, GB, CHART_AREA, GtkWidget)

GtkWidget *gb_chart_area_new (void);

/* NULL clears it. Takes a reference. */
void gb_chart_area_set_chart (GbChartArea *self, GbChart *chart, GbChartKind kind);
GbChart *gb_chart_area_get_chart (GbChartArea *self);

G_END_DECLS
