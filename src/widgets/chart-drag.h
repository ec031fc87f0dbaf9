/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "widgets/chart-area.h"

G_BEGIN_DECLS

/* Turns what a hand does over @drawing, which shows the chart of @area, into the area's signals of dragging.
 * What it needs goes with @drawing. */
void gb_chart_drag_install (GbChartArea *area, GtkWidget *drawing);

G_END_DECLS
