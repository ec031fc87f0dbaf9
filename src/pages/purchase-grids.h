/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "widgets/grid.h"

G_BEGIN_DECLS

/* The tables of the purchases page: the receipts, and the lines of one. */
extern const GbGridType gb_purchase_grid_type;
extern const GbGridType gb_line_grid_type;

/* What all lines of a receipt come to; GB_MONEY_UNKNOWN if one has no price. */
gint64 gb_purchase_total (const GbRecord *purchase);

G_END_DECLS
