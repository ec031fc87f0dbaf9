/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/project.h"
#include "widgets/chart-area.h"

G_BEGIN_DECLS

/* The curve of righting levers with what is read off it. */
#define GB_TYPE_RIGHTING_VIEW (gb_righting_view_get_type ())
G_DECLARE_FINAL_TYPE (GbRightingView, gb_righting_view, GB, RIGHTING_VIEW, GtkBox)

/* Its chart, for the page's host. */
GbChartArea *gb_righting_view_get_area (GbRightingView *self);
/* @project is borrowed until the next call. */
void gb_righting_view_show (GbRightingView *self, GbProject *project, gint64 condition);

G_END_DECLS
