/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/mesh.h"

#include <math.h>

G_BEGIN_DECLS

/* How a boat lies in the water, in her own axes (x forward, y to port, z up): the water is where up . p <
 * height, and 'up', a unit vector, points out of it. Heel is positive to starboard, trim is positive by the
 * bow; this is the one place that says so:
 *
 *   up = (-sin trim, sin heel cos trim, cos heel cos trim)
 */
typedef struct
{
  GbVec3 up;
  double height;
} GbAttitude;

static inline GbAttitude
gb_attitude (double heel, double trim, double height)
{
  return (GbAttitude){ { -sin (trim), sin (heel) * cos (trim), cos (heel) * cos (trim) }, height };
}

/* From -180 to 180 degrees, in radians; 0 where she stands on end. */
static inline double
gb_attitude_heel (GbAttitude attitude)
{
  return atan2 (attitude.up.y, attitude.up.z);
}

/* From -90 to 90 degrees, in radians. */
static inline double
gb_attitude_trim (GbAttitude attitude)
{
  return asin (fmax (-1, fmin (1, -attitude.up.x)));
}

/* How high @p is above the water; negative under it. */
static inline double
gb_attitude_above (GbAttitude attitude, GbVec3 p)
{
  return attitude.up.x * p.x + attitude.up.y * p.y + attitude.up.z * p.z - attitude.height;
}

G_END_DECLS
