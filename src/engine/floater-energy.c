/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-floater"

/* The potential energy and its slopes.
 *
 * The water's share is the integral of the depth d - n . p over all that is under water, so its slopes are
 * integrals of (1, -p) over the volume and of (1, -p)(1, -p)T over the waterplane; that the waterplane
 * moves too does not count, since the depth is nothing there. A tank is the same the other way round: its
 * liquid lies as low as it can, so how it lies does not count for the first slope, and the second is less
 * by what it can still go down. */

#include "floater-private.h"

/* Squared sine between a pull's bearing and the way up, under which 'the bearing, projected level' begins
 * to lose its meaning: from 10 degrees on, the pull fades as that goes to nothing. */
#define LEAST_SINE2 0.0302

/* 1/sqrt q with its slopes; from where it fades on, the three terms of its series about that. */
typedef struct
{
  double value, slope, bend;
} Fading;

static Fading
inverse_root (double q)
{
  double from = fmax (q, LEAST_SINE2), t = q / from - 1, root = 1 / sqrt (from);

  return (Fading){ root * (1 - t / 2 + 3 * t * t / 8), root / from * (3 * t / 4 - 0.5),
                   root / (from * from) * 0.75 };
}

/* With b the bearing, r = at - against, s = b . n and q = 1 - s2, the level bearing is h = (b - s n)/sqrt
 * q, so -h . r is the product of a = s n . r - b . r and 1/sqrt q. */
static void
add_pull (GbFloatPoint *point, const GbPull *pull)
{
  GbVec3 b = pull->bearing, n = point->at.up, r = vec3_sub (pull->at, pull->against);
  double s = vec3_dot (b, n), v = vec3_dot (n, r), a = s * v - vec3_dot (b, r), f = pull->mass;
  GbVec3 da = vec3_add (vec3_scale (b, v), vec3_scale (r, s));
  Fading root = inverse_root (1 - s * s);
  /* Its slopes along b. */
  double slope = -2 * s * root.slope, bend = -2 * root.slope + 4 * s * s * root.bend;

  point->energy += f * a * root.value;
  point->turn
      = vec3_add (point->turn, vec3_add (vec3_scale (da, f * root.value), vec3_scale (b, f * a * slope)));
  gb_tensor_add_pair (&point->bend, b, r, f * root.value);
  gb_tensor_add_pair (&point->bend, da, b, f * slope);
  gb_tensor_add_pair (&point->bend, b, b, f * a * bend / 2);
}

/* Heel is the angle of (z, y), whose slopes are (z, -y)/(y2 + z2) in y and z. */
static void
add_heeling (GbFloatPoint *point, double moment)
{
  double y = point->at.up.y, z = point->at.up.z, s = y * y + z * z;

  if (moment == 0 || !(s > 0))
    return;
  point->energy -= moment * point->heel;
  point->turn.y -= moment * z / s;
  point->turn.z += moment * y / s;
  point->bend.yy += moment * 2 * y * z / (s * s);
  point->bend.zz -= moment * 2 * y * z / (s * s);
  point->bend.yz -= moment * (y * y - z * z) / (s * s);
}

void
gb_float_point_find (GbFloatPoint *point, const GbFloater *floater, GbAttitude at, double heel_before)
{
  double density = floater->density;
  GbFloatSums sums;
  GbVec3 weight, push;

  gb_floater_sums (floater, at, &sums);
  weight = sums.mass > 0 ? vec3_scale (sums.gravity, sums.mass) : floater->moment;
  push = vec3_scale (sums.hulls.moment, density);
  *point = (GbFloatPoint){
    .at = at,
    .heel = heel_before + remainder (gb_attitude_heel (at) - heel_before, 2 * G_PI),
    .mass = sums.mass,
    .gravity = sums.gravity,
    .sink = density * sums.hulls.volume - sums.mass,
    .turn = vec3_sub (weight, push),
    .plane = density * sums.hulls.plane,
    .plane_moment = vec3_scale (sums.hulls.plane_moment, density),
  };
  point->energy = vec3_dot (at.up, point->turn) + at.height * point->sink;
  gb_tensor_add (&point->bend, &sums.hulls.plane_second, density);
  gb_tensor_add (&point->bend, &sums.free_surfaces, -1);
  for (guint i = 0; i < floater->pulls->len; i++)
    add_pull (point, &g_array_index (floater->pulls, GbPull, i));
  add_heeling (point, floater->heeling_moment);
}

double
gb_floater_energy (const GbFloater *floater, GbAttitude attitude)
{
  GbFloatPoint point;

  gb_float_point_find (&point, floater, attitude, 0);
  return point.energy;
}

double
gb_floater_lever (const GbFloater *floater, GbAttitude attitude)
{
  GbVec3 up = attitude.up;
  GbFloatSums sums;
  GbVec3 turn;

  gb_floater_sums (floater, attitude, &sums);
  turn = vec3_sub (vec3_scale (sums.gravity, sums.mass), vec3_scale (sums.hulls.moment, floater->density));
  /* n turns by (0, n.z, -n.y) for each radian of heel. */
  return (turn.y * up.z - turn.z * up.y) / sums.mass;
}
