/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "water-axes.h"

static double
dot (GbVec3 a, GbVec3 b)
{
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

static GbVec3
cross (GbVec3 a, GbVec3 b)
{
  return (GbVec3){ a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x };
}

static GbVec3
along (GbVec3 a, double x, GbVec3 b, double y, GbVec3 c, double z)
{
  return (GbVec3){ a.x * x + b.x * y + c.x * z, a.y * x + b.y * y + c.y * z, a.z * x + b.z * y + c.z * z };
}

GbWaterAxes
gb_water_axes_upright (void)
{
  return (GbWaterAxes){ { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 }, 0 };
}

GbWaterAxes
gb_water_axes (GbAttitude attitude)
{
  GbVec3 up = attitude.up;
  double level = hypot (up.y, up.z), length = sqrt (dot (up, up));
  GbWaterAxes axes = gb_water_axes_upright ();

  if (!isfinite (attitude.height) || !(length > 0.5 && length < 2))
    return axes;
  axes.up = up;
  axes.height = attitude.height;
  /* Where she stands on end, port stays where it is. */
  axes.port = level > 1e-9 ? (GbVec3){ 0, up.z / level, -up.y / level } : (GbVec3){ 0, 1, 0 };
  axes.fore = cross (axes.port, up);
  return axes;
}

GbVec3
gb_water_axes_to (const GbWaterAxes *axes, GbVec3 p)
{
  return (GbVec3){ dot (axes->fore, p), dot (axes->port, p), dot (axes->up, p) - axes->height };
}

GbVec3
gb_water_axes_from (const GbWaterAxes *axes, GbVec3 p)
{
  return along (axes->fore, p.x, axes->port, p.y, axes->up, p.z + axes->height);
}

/* The part of @p along the axis 0, 1 or 2. */
static double *
part_of (GbVec3 *p, guint axis)
{
  return axis == 0 ? &p->x : axis == 1 ? &p->y : &p->z;
}

GbVec3
gb_water_axes_on_sight (const GbWaterAxes *axes, GbView view, double right, double up, GbVec3 held)
{
  GbVec3 sight = view == GB_VIEW_SIDE ? axes->port : view == GB_VIEW_PLAN ? axes->up : axes->fore;
  GbVec3 seen = view == GB_VIEW_SIDE   ? (GbVec3){ right, 0, up }
                : view == GB_VIEW_PLAN ? (GbVec3){ right, up, 0 }
                                       : (GbVec3){ 0, -right, up };
  GbVec3 p = gb_water_axes_from (axes, seen);
  guint nearest = 0;
  double far;

  for (guint axis = 1; axis < 3; axis++)
    if (fabs (*part_of (&sight, axis)) > fabs (*part_of (&sight, nearest)))
      nearest = axis;
  far = *part_of (&held, nearest);
  far = isfinite (far) ? (far - *part_of (&p, nearest)) / *part_of (&sight, nearest) : 0;
  p = along (p, 1, sight, far, (GbVec3){ 0, 0, 0 }, 0);
  *part_of (&p, nearest) = NAN;
  return p;
}
