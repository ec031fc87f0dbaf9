/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "widgets/grid.h"

G_BEGIN_DECLS

/* The tables of the hulls page. */
extern const GbGridType gb_hull_grid_type;
extern const GbGridType gb_station_grid_type;
extern const GbGridType gb_offset_grid_type;
extern const GbGridType gb_hull_choice_grid_type;
extern const GbGridType gb_opening_grid_type;
extern const GbGridType gb_corner_grid_type;

G_END_DECLS
