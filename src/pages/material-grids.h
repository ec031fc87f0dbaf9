/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "widgets/grid.h"

G_BEGIN_DECLS

/* The tables of the materials page: materials, the samples of one, and stock. */
extern const GbGridType gb_material_grid_type;
extern const GbGridType gb_sample_grid_type;
extern const GbGridType gb_stock_grid_type;

G_END_DECLS
