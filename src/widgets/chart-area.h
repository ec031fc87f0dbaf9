/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "charts/chart.h"

G_BEGIN_DECLS

/* Shows one chart with its values under the pointer and a menu of its own: export as PNG, SVG or PDF, and print. A screen reader hears
 * the chart's title and its values in words.
 *
 * Signal "part-picked" (gint64 id): a part in the picture was clicked. A double click activates "win.go-to-part" (x id) as well.
 *
 * Once it is made draggable, where the chart can say what a point means in the boat (gb_chart_locate()):
 *
 *   "spot-pressed" (const GbChartSpot *spot)              a press
 *   "drag-begun" (const GbChartSpot *spot) -> gboolean    it goes on as a drag; TRUE takes it
 *   "drag-moved" (const GbChartSpot *spot)                where it is now, in the view and the chart that were pressed
 *   "drag-ended" (gboolean kept)                          let go; FALSE: by Escape or the like, so that all stays as it was
 *   "nudged" (int x, int y, int z) -> gboolean            an arrow key or a page key: so many small steps along the boat's axes; ten with
 *                                                         Shift. TRUE takes the key */
#define GB_TYPE_CHART_AREA (gb_chart_area_get_type ())
G_DECLARE_FINAL_TYPE (GbChartArea, gb_chart_area, GB, CHART_AREA, GtkWidget)

GtkWidget *gb_chart_area_new (void);

/* NULL clears it. Takes a reference. */
void gb_chart_area_set_chart (GbChartArea *self, GbChart *chart, GbChartKind kind);
GbChart *gb_chart_area_get_chart (GbChartArea *self);

/* Lets what it shows be dragged, by the signals above; once. */
void gb_chart_area_make_draggable (GbChartArea *self);

/* What its menu does once a file or a printer is chosen. @format: "png", "svg" or "pdf". There must be a chart. */
gboolean gb_chart_area_export (GbChartArea *self, const char *path, const char *format, GError **error);
gboolean gb_chart_area_print (GbChartArea *self, GtkPrintOperationAction action, const char *export_path, GError **error);

G_END_DECLS
