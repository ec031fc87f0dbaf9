/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "widgets/grid.h"

G_BEGIN_DECLS

/* The tables of the money page: the heads of the budget with what is found of each, and the stock with what is still to buy of it. */
extern const GbGridType gb_budget_grid_type;
extern const GbGridType gb_to_buy_grid_type;

G_END_DECLS
