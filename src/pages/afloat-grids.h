/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "widgets/grid.h"

G_BEGIN_DECLS

/* The tables of the page "Afloat". */
extern const GbGridType gb_condition_grid_type;
extern const GbGridType gb_load_grid_type;
extern const GbGridType gb_inclining_grid_type;
extern const GbGridType gb_shift_grid_type;
extern const GbGridType gb_tub_grid_type;
extern const GbGridType gb_tub_load_grid_type;

G_END_DECLS
