/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/boat.h"
#include "engine/mesh.h"

G_BEGIN_DECLS

/* Where a load's weight acts, and how much of it there is. */

/* The relative standard deviation of a load's mass; where it gives none, by its kind (common practice, no
 * source). */
double gb_load_spread (const GbLoad *load);

/* Height of a person's centre over the seat or the sole, where the load gives none (common practice, no
 * source). */
#define GB_ABOVE_SEAT 0.25
#define GB_ABOVE_SOLE 1.0

/* Centre of its weight; a coordinate that is not known is NAN. Of a liquid in a tank: the middle of the tank.
 * Of a pull: its point. */
GbVec3 gb_load_centre (const GbLoad *load);
/* What all of it weighs downwards, kg: of a pull, its part straight down, which may be negative. NAN:
 * unknown. */
double gb_load_weight (const GbLoad *load);
/* TRUE if its tank has all three sizes. */
gboolean gb_load_has_tank (const GbLoad *load);

G_END_DECLS
