/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/money.h"
#include "engine/costs.h"

G_BEGIN_DECLS

/* How many pieces of @stock one of @part takes, nothing allowed for cutting. @density: of what is in a tin.
 * NAN where it cannot be told. */
double gb_pieces_of_stock (const GbStock *stock, double density, const GbPart *part, const GbMass *mass);
/* How many tins of resin one of @part, a cloth, takes. */
double gb_tins_of_resin (const GbStock *tin, double density, const GbPart *part, const GbMass *mass);

/* Goes through the tree of parts: fills the need of each stock, and each part's cost and what of it is to be
 * bought as such, under its head. What receipts say must be there already. */
void gb_costs_find_parts (GbCosts *costs, const GbBoat *boat, const GbRollup *rollup);

static inline double
gb_stock_pack (const GbStock *stock)
{
  return stock->pack > 0 ? stock->pack : 1;
}

/* Adds what is known; *@sum may be unknown, which then stands for nothing known yet. */
void gb_costs_add_known (gint64 *sum, gint64 amount);

G_END_DECLS
