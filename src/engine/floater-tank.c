/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-floater"

/* A liquid in a box that is turned: it lies under the one level that holds its volume. */

#include "floater-private.h"

/* Some steps of Newton's method end it; the rest is for halving where the surface is next to nothing. */
#define MOST_STEPS 80

/* @sum gets what lies under the level surface that holds @volume, reckoned from the box's middle. Newton's
 * method on the volume, whose slope is the surface, with bisection as its guard. */
static void
find_level (const GbTank *tank, GbVec3 up, double volume, GbImmersion *sum)
{
  double high = (fabs (up.x) * tank->size.x + fabs (up.y) * tank->size.y + fabs (up.z) * tank->size.z) / 2,
         low = -high;
  double whole = tank->size.x * tank->size.y * tank->size.z;
  double level = low + (high - low) * volume / whole;

  for (guint i = 0; i < MOST_STEPS; i++)
    {
      double over, next;

      *sum = (GbImmersion){ 0 };
      gb_body_immerse (tank->body, FALSE, up, level, sum);
      over = sum->volume - volume;
      if (fabs (over) <= 1e-15 * whole)
        break;
      if (over > 0)
        high = level;
      else
        low = level;
      next = level - over / sum->plane;
      if (!(next > low && next < high))
        next = (low + high) / 2;
      if (next == level || !(low < next && next < high))
        break;
      level = next;
    }
}

void
gb_tank_settle (const GbTank *tank, GbVec3 up, GbLiquid *liquid)
{
  GbImmersion sum;
  GbVec3 moment;

  find_level (tank, up, tank->mass / tank->density, &sum);
  *liquid = (GbLiquid){ .centre = tank->centre };
  if (!(sum.volume > 0))
    return;
  liquid->centre = vec3_add (tank->centre, vec3_scale (sum.moment, 1 / sum.volume));
  if (!(sum.plane > 0))
    return;
  moment = sum.plane_moment;
  liquid->surface = (GbTensor){
    .xx = sum.plane_second.xx - moment.x * moment.x / sum.plane,
    .yy = sum.plane_second.yy - moment.y * moment.y / sum.plane,
    .zz = sum.plane_second.zz - moment.z * moment.z / sum.plane,
    .xy = sum.plane_second.xy - moment.x * moment.y / sum.plane,
    .yz = sum.plane_second.yz - moment.y * moment.z / sum.plane,
    .zx = sum.plane_second.zx - moment.z * moment.x / sum.plane,
  };
}
