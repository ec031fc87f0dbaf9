/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-floater"

/* What is under water and what weighs, at one attitude. */

#include "floater-private.h"

/* With r the radius, a the depth of its middle and h = a + r that of its lowest point: the cap's volume V
 * is pi h2 (3 r - h)/3, and the work W to push it down so far the integral of that, pi h3 (4 r - h)/12. The
 * cap's middle lies W/V under water, since W is the integral of the depth over the cap. Its face is a
 * circle with the radius squared r2 - a2, whose second moments are area2/(4 pi). */
static void
immerse_partly (const GbBall *ball, GbVec3 up, double a, GbImmersion *sum)
{
  double r = ball->radius, h = a + r;
  double volume = G_PI * h * h * (3 * r - h) / 3, work = G_PI * h * h * h * (4 * r - h) / 12;
  double radius2 = (r - a) * (r + a), area = G_PI * radius2, second = area * radius2 / 4;
  GbVec3 face = vec3_add (ball->at, vec3_scale (up, a));

  sum->volume += volume;
  sum->moment
      = vec3_add (sum->moment, vec3_add (vec3_scale (ball->at, volume), vec3_scale (up, a * volume - work)));
  sum->plane += area;
  sum->plane_moment = vec3_add (sum->plane_moment, vec3_scale (face, area));
  gb_tensor_add_pair (&sum->plane_second, face, face, area / 2);
  gb_tensor_add_pair (&sum->plane_second, up, up, -second / 2);
  sum->plane_second.xx += second;
  sum->plane_second.yy += second;
  sum->plane_second.zz += second;
  sum->wetted += 2 * G_PI * r * h;
  sum->girth += 2 * G_PI * sqrt (radius2);
}

void
gb_ball_immerse (const GbBall *ball, GbVec3 up, double height, GbImmersion *sum)
{
  double r = ball->radius, a = height - vec3_dot (up, ball->at);

  if (a >= r)
    {
      double volume = 4 * G_PI / 3 * r * r * r;

      sum->volume += volume;
      sum->moment = vec3_add (sum->moment, vec3_scale (ball->at, volume));
      sum->wetted += 4 * G_PI * r * r;
    }
  else if (a > -r)
    immerse_partly (ball, up, a, sum);
}

static void
add_liquids (const GbFloater *floater, GbVec3 up, GbFloatSums *sums, GbVec3 *moment)
{
  for (guint i = 0; i < floater->tanks->len; i++)
    {
      const GbTank *tank = &g_array_index (floater->tanks, GbTank, i);
      double mass = tank->mass * tank->times;
      GbLiquid liquid;

      gb_tank_settle (tank, up, &liquid);
      sums->mass += mass;
      *moment = vec3_add (*moment, vec3_scale (liquid.centre, mass));
      gb_tensor_add (&sums->free_surfaces, &liquid.surface, tank->density * tank->times);
    }
}

void
gb_floater_sums (const GbFloater *floater, GbAttitude attitude, GbFloatSums *sums)
{
  GbVec3 moment = floater->moment;

  *sums = (GbFloatSums){ .mass = floater->mass };
  for (guint i = 0; i < floater->hulls->len; i++)
    {
      const GbFloatHull *hull = &g_array_index (floater->hulls, GbFloatHull, i);

      gb_body_immerse (hull->body, hull->mirrored, attitude.up, attitude.height, &sums->hulls);
    }
  for (guint i = 0; i < floater->balls->len; i++)
    gb_ball_immerse (&g_array_index (floater->balls, GbBall, i), attitude.up, attitude.height, &sums->hulls);
  add_liquids (floater, attitude.up, sums, &moment);
  sums->gravity = sums->mass > 0 ? vec3_scale (moment, 1 / sums->mass) : (GbVec3){ NAN, NAN, NAN };
}

void
gb_floater_extent (const GbFloater *floater, GbVec3 up, double *least, double *greatest)
{
  *least = INFINITY;
  *greatest = -INFINITY;
  for (guint i = 0; i < floater->hulls->len; i++)
    {
      const GbFloatHull *hull = &g_array_index (floater->hulls, GbFloatHull, i);
      double low, high;

      gb_body_extent (hull->body, (GbVec3){ up.x, hull->mirrored ? -up.y : up.y, up.z }, &low, &high);
      *least = fmin (*least, low);
      *greatest = fmax (*greatest, high);
    }
  for (guint i = 0; i < floater->balls->len; i++)
    {
      const GbBall *ball = &g_array_index (floater->balls, GbBall, i);
      double at = vec3_dot (up, ball->at);

      *least = fmin (*least, at - ball->radius);
      *greatest = fmax (*greatest, at + ball->radius);
    }
}

double
gb_floater_most (const GbFloater *floater, double *size)
{
  GbVec3 gravity = vec3_scale (floater->moment, floater->mass > 0 ? 1 / floater->mass : 0);
  double volume = 0, apart = 0;

  for (guint i = 0; i < floater->hulls->len; i++)
    {
      const GbFloatHull *hull = &g_array_index (floater->hulls, GbFloatHull, i);
      GbVec3 centre = gb_body_centre (hull->body);

      volume += gb_body_volume (hull->body);
      centre.y *= hull->mirrored ? -1 : 1;
      apart = fmax (apart, vec3_length (vec3_sub (centre, gravity)));
    }
  for (guint i = 0; i < floater->balls->len; i++)
    {
      const GbBall *ball = &g_array_index (floater->balls, GbBall, i);

      volume += 4 * G_PI / 3 * ball->radius * ball->radius * ball->radius;
      apart = fmax (apart, vec3_length (vec3_sub (ball->at, gravity)));
    }
  *size = cbrt (volume) + apart;
  return volume * floater->density;
}
