/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/attitude.h"
#include "hull-lines.h"

G_BEGIN_DECLS

/* The axes of the water that a boat lies in: level and forward, level and to port, and up from the water. A
 * boat that is drawn in them stands in every view as she is seen, with the water level. */
typedef struct
{
  GbVec3 fore, port, up; /* unit vectors in the boat's axes */
  double height;         /* of the water, along up */
} GbWaterAxes;

/* Level, with the water at the baseline; both axes are one. */
GbWaterAxes gb_water_axes_upright (void);
GbWaterAxes gb_water_axes (GbAttitude attitude);

GbVec3 gb_water_axes_to (const GbWaterAxes *axes, GbVec3 p);   /* from the boat's axes */
GbVec3 gb_water_axes_from (const GbWaterAxes *axes, GbVec3 p); /* into the boat's axes */

/* The point that stands in a view at @right and @up, in the boat's axes. Along the axis that the line of
 * sight runs nearest to it is NAN; the others are those of the point of that line that has @held's place
 * there. */
GbVec3 gb_water_axes_on_sight (const GbWaterAxes *axes, GbView view, double right, double up, GbVec3 held);

G_END_DECLS
