/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/project.h"
#include "widgets/chart-area.h"

G_BEGIN_DECLS

/* Full of water: how she lies and what foam she wants, as it is reckoned here and as the published rule has
 * it, side by side. */
#define GB_TYPE_SWAMPED_VIEW (gb_swamped_view_get_type ())
G_DECLARE_FINAL_TYPE (GbSwampedView, gb_swamped_view, GB, SWAMPED_VIEW, GtkBox)

/* Its chart, for the page's host. */
GbChartArea *gb_swamped_view_get_area (GbSwampedView *self);
/* @project is borrowed until the next call. */
void gb_swamped_view_show (GbSwampedView *self, GbProject *project, gint64 condition);

G_END_DECLS
