/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What holds for anything that floats: seeded random bodies, one and several, convex and not, with all that
 * may weigh and pull. */

#include "floater-fixture.h"

static double
between (double low, double high)
{
  return g_test_rand_double_range (low, high);
}

/* One to three bodies, with so much weight in them that they float. */
static GbFloater *
random_floater (guint i)
{
  GbFloater *floater = gb_floater_new (between (900, 1100));
  double size;

  for (guint k = 0; k <= i % 3; k++)
    float_mesh (floater, random_body (i + k), k == 1);
  gb_floater_add_mass (floater, gb_floater_most (floater, &size) * between (0.02, 0.9), random_place (1));
  return floater;
}

static void
add_all_sorts (GbFloater *floater)
{
  for (guint i = 0; i < 3; i++)
    {
      GbBall ball = { random_place (2), between (0.1, 0.5) };
      GbPull pull = { between (0, 200), random_place (2), random_place (2), { 0, 0, 0 } };
      double bearing = between (-4, 4);

      pull.bearing = (GbVec3){ cos (bearing), sin (bearing), 0 };
      g_array_append_val (floater->balls, ball);
      g_array_append_val (floater->pulls, pull);
      gb_floater_add_tank (floater, random_place (2),
                           (GbVec3){ between (0.1, 1), between (0.1, 1), between (0.1, 1) },
                           between (700, 1200), between (1, 50), 1 + i);
    }
  floater->heeling_moment = between (-50, 50);
}

static GbAttitude
random_attitude (void)
{
  return (GbAttitude){ random_direction (), between (-3, 3) };
}

/* From @at along the frame's tangents, about its pivot. */
static GbAttitude
nudged (GbAttitude at, const GbFloatFrame *frame, double trim, double heel, double sink)
{
  return gb_float_turned (at, frame, (const double[]){ trim, heel }, sink);
}

/* First slopes against differences of the energy, second slopes against differences of the first, along the
 * sphere. */
static void
test_slopes (void)
{
  const double step = 1e-5;

  for (guint i = 0; i < 600; i++)
    {
      g_autoptr (GbFloater) floater = random_floater (i);
      GbAttitude at = random_attitude ();
      GbFloatPoint here, ahead[3], behind[3];
      GbFloatFrame frame;
      double scale;

      add_all_sorts (floater);
      gb_float_point_find (&here, floater, at, 0);
      if (hypot (at.up.y, at.up.z) < 0.3 || fabs (fabs (here.heel) - G_PI) < 0.01)
        continue; /* heel has no slope standing on end, and a seam upside down */
      gb_float_frame (&here, &frame);
      scale = here.mass + floater->density;
      for (guint k = 0; k < 3; k++)
        {
          double trim = k == 0 ? step : 0, heel = k == 1 ? step : 0, sink = k == 2 ? step : 0;

          gb_float_point_find (&ahead[k], floater, nudged (at, &frame, trim, heel, sink), 0);
          gb_float_point_find (&behind[k], floater, nudged (at, &frame, -trim, -heel, -sink), 0);
          assert_near ((ahead[k].energy - behind[k].energy) / (2 * step),
                       k == 2 ? here.sink : frame.slopes[k], 1e-6 * scale);
          assert_near ((ahead[k].sink - behind[k].sink) / (2 * step), k == 2 ? here.plane : 0, 1e-3 * scale);
        }
      /* Along a great circle the slope's own slope is the bend. */
      for (guint k = 0; k < 2; k++)
        assert_near ((ahead[k].energy - 2 * here.energy + behind[k].energy) / (step * step), frame.bends[k],
                     2e-2 * scale);
    }
}

/* Exactly, in a direction that mixes trim and heel, and wide enough apart that rounding does not matter: a
 * smooth body, no corners near the water. */
static void
test_bends_of_smooth_body (void)
{
  const double step = 1e-3;

  for (guint i = 0; i < 100; i++)
    {
      g_autoptr (GbFloater) floater = gb_floater_new (1000);
      GbAttitude at = gb_attitude (between (-1, 1), between (-1, 1), between (-0.1, 0.1));
      double way = between (-4, 4), bend;
      GbFloatPoint points[3];
      GbFloatFrame frame;

      float_mesh (floater, new_box ((GbVec3){ -2, -2, -2 }, (GbVec3){ 2, 2, 2 }), FALSE);
      gb_floater_add_mass (floater, 3000, random_place (1));
      add_all_sorts (floater);
      g_array_set_size (floater->balls, 0);
      gb_float_point_find (&points[1], floater, at, 0);
      gb_float_frame (&points[1], &frame);
      gb_float_point_find (&points[2], floater, nudged (at, &frame, step * cos (way), step * sin (way), 0),
                           0);
      gb_float_point_find (&points[0], floater, nudged (at, &frame, -step * cos (way), -step * sin (way), 0),
                           0);
      bend = frame.bends[0] * cos (way) * cos (way) + 2 * frame.cross * cos (way) * sin (way)
             + frame.bends[1] * sin (way) * sin (way);
      assert_near ((points[0].energy - 2 * points[1].energy + points[2].energy) / (step * step), bend, 20);
    }
}

typedef struct
{
  double energy, grain;
  guint n;
} Fall;

static void
falls_cb (GbAttitude at, double energy, gpointer data)
{
  Fall *fall = data;

  g_assert_false (energy > fall->energy + fall->grain);
  fall->energy = energy;
  fall->n++;
}

/* From any start to a place that is at rest, down all the way, and lower than all around it. */
static void
assert_comes_to_rest (const GbFloater *floater, GbAttitude start, gboolean plain)
{
  Fall fall = { INFINITY, 1e-10 * floater->mass, 0 };
  GbRest rest = gb_floater_rest (floater, start, GB_HOLD_NOTHING, falls_cb, &fall);
  GbFloatPoint point;
  GbFloatFrame frame;

  g_assert_cmpint (rest.kind, ==, GB_REST_FOUND);
  g_assert_cmpuint (fall.n, ==, rest.n_steps + 1);
  g_assert_cmpuint (rest.n_steps, <, 200);
  if (plain)
    assert_near (unrest_of (floater, rest.attitude), 0, 1e-11);
  gb_float_point_find (&point, floater, rest.attitude, 0);
  gb_float_frame (&point, &frame);
  for (guint i = 0; i < 16; i++)
    {
      GbAttitude at = nudged (rest.attitude, &frame, 1e-3 * cos (i * G_PI / 8), 1e-3 * sin (i * G_PI / 8), 0);
      GbAttitude balanced = gb_floater_rest (floater, at, GB_HOLD_BOTH, NULL, NULL).attitude;
      GbFloatPoint there;

      gb_float_point_find (&there, floater, balanced, point.heel);
      g_assert_cmpfloat (there.energy, >, point.energy - 1e-10 * point.mass);
    }
}

static void
test_rest_from_anywhere (void)
{
  for (guint i = 0; i < 1500; i++)
    {
      g_autoptr (GbFloater) floater = random_floater (i);
      GbAttitude start = random_attitude ();

      start.height *= i % 5 == 0 ? 1000 : 1;
      assert_comes_to_rest (floater, start, TRUE);
    }
}

static void
test_rest_with_all_sorts (void)
{
  for (guint i = 0; i < 400; i++)
    {
      g_autoptr (GbFloater) floater = random_floater (i);

      double size;

      add_all_sorts (floater);
      floater->heeling_moment = 0; /* it may roll her over and over */
      gb_floater_add_mass (floater, -floater->mass / 2, random_place (1));
      if (gb_floater_most (floater, &size) > floater->mass + 300)
        assert_comes_to_rest (floater, random_attitude (), FALSE);
    }
}

/* With the heel held it stays, trim and height find their rest; with both held, the height. */
static void
test_held (void)
{
  for (guint i = 0; i < 600; i++)
    {
      g_autoptr (GbFloater) floater = random_floater (i);
      double heel = between (-3, 3), trim = between (-1.5, 1.5);
      GbAttitude both = attitude_found (rest_from (floater, heel, trim, 0, GB_HOLD_BOTH));
      GbAttitude at = attitude_found (rest_from (floater, heel, trim, 0, GB_HOLD_HEEL));
      GbFloatPoint point;
      GbFloatFrame frame;

      assert_near (gb_attitude_heel (both), heel, 1e-13);
      assert_near (gb_attitude_trim (both), trim, 1e-9);
      assert_near (gb_attitude_heel (at), heel, 1e-13);
      gb_float_point_find (&point, floater, at, 0);
      gb_float_frame (&point, &frame);
      assert_near (point.sink, 0, 1e-9 * point.mass);
      if (fabs (gb_attitude_trim (at)) < 88.9 * DEGREE)
        assert_near (frame.slopes[0], 0, 1e-9 * point.mass);
      gb_float_point_find (&point, floater, both, 0);
      assert_near (point.sink, 0, 1e-12 * point.mass);
    }
}

/* The righting moment is the slope of the potential energy, trim and sinkage following. */
static void
test_lever_is_slope (void)
{
  const double step = 1e-4;

  for (guint i = 0; i < 300; i++)
    {
      g_autoptr (GbFloater) floater = random_floater (i);
      double heel = between (-3, 3);
      GbRest here, ahead, behind;

      gb_floater_add_tank (floater, random_place (1), (GbVec3){ 0.5, 0.4, 0.3 }, 1000, 20, 1);
      here = gb_floater_rest (floater, gb_attitude (heel, 0, 0), GB_HOLD_HEEL, NULL, NULL);
      if (here.kind != GB_REST_FOUND || fabs (gb_attitude_trim (here.attitude)) > 80 * DEGREE)
        continue;
      ahead = rest_from (floater, heel + step, gb_attitude_trim (here.attitude), here.attitude.height,
                         GB_HOLD_HEEL);
      behind = rest_from (floater, heel - step, gb_attitude_trim (here.attitude), here.attitude.height,
                          GB_HOLD_HEEL);
      if (fabs (gb_attitude_trim (ahead.attitude) - gb_attitude_trim (behind.attitude)) > 0.01)
        continue; /* another rest in trim */
      assert_near (gb_floater_lever (floater, here.attitude),
                   (ahead.energy - behind.energy) / (2 * step) / (floater->mass + 20), 1e-4);
    }
}

/* Of anything, and its mirror image, with the weight low on the centreline, upright is where it stays. */
static void
test_symmetric_boats_stay_upright (void)
{
  for (guint i = 0; i < 300; i++)
    {
      g_autoptr (GbFloater) boat = gb_floater_new (1000);
      g_autoptr (GbMesh) mesh = random_body (i);
      g_autoptr (GbBody) body = gb_body_new (mesh);
      GbRest rest;
      double size;

      gb_floater_add_hull (boat, body, FALSE);
      gb_floater_add_hull (boat, body, TRUE);
      gb_floater_add_mass (boat, gb_floater_most (boat, &size) * between (0.1, 0.8),
                           (GbVec3){ gb_body_centre (body).x, 0, gb_body_centre (body).z - 4 });
      rest = rest_from (boat, 0, 0, 0, GB_HOLD_NOTHING);
      assert_near (gb_attitude_heel (attitude_found (rest)), 0, 1e-9);
      rest = rest_from (boat, between (-1.5, 1.5), between (-0.5, 0.5), 0, GB_HOLD_NOTHING);
      assert_near (gb_attitude_heel (attitude_found (rest)), 0, 1e-9);
    }
}

/* Where a weight is moved a little, or what is asked is asked again, few cuts do. */
static void
test_near_starts_take_few_steps (void)
{
  g_autoptr (GbFloater) boat = gb_floater_new (1000);
  GbAttitude at;

  float_mesh (boat, new_star ((GbVec3){ 0, 0, 0 }, 24, 16, near_one), FALSE);
  gb_floater_add_mass (boat, 1500, (GbVec3){ 0, 0, -0.4 });
  at = attitude_found (rest_from (boat, 0, 0, 0, GB_HOLD_NOTHING));
  for (guint i = 0; i < 100; i++)
    {
      g_autoptr (GbFloater) moved = gb_floater_copy (boat);
      GbRest rest;

      moved->moment.x += between (-15, 15);
      moved->moment.y += between (-15, 15);
      rest = gb_floater_rest (moved, at, GB_HOLD_NOTHING, NULL, NULL);
      g_assert_cmpuint (rest.n_steps, <=, 6);
      rest = gb_floater_rest (moved, attitude_found (rest), GB_HOLD_NOTHING, NULL, NULL);
      g_assert_cmpuint (rest.n_steps, <=, 1);
    }
}

static void
test_too_heavy_sinks (void)
{
  for (guint i = 0; i < 100; i++)
    {
      g_autoptr (GbFloater) floater = random_floater (i);
      double size;

      gb_floater_add_mass (floater, gb_floater_most (floater, &size) * between (1, 5), random_place (1));
      for (guint hold = GB_HOLD_NOTHING; hold <= GB_HOLD_BOTH; hold++)
        g_assert_cmpint (gb_floater_rest (floater, random_attitude (), hold, NULL, NULL).kind, ==,
                         GB_REST_SINKS);
    }
}

/* A model in a tub and a ship, at the origin and far from it: the same rest, but for the size. */
static void
test_sizes (void)
{
  for (double size = 1e-2; size < 1e4; size *= 10)
    for (double away = 0; away < 2000; away += 999)
      {
        g_autoptr (GbFloater) box = gb_floater_new (1000);
        GbVec3 low = { (away - 2) * size, -size, away * size },
               high = { (away + 2) * size, size, (away + 1) * size };
        GbAttitude at;

        float_mesh (box, new_box (low, high), FALSE);
        gb_floater_add_mass (box, 4000 * pow (size, 3),
                             (GbVec3){ away * size, -0.05 * size, (away + 0.4) * size });
        at = attitude_found (rest_from (box, 0, 0, 0, GB_HOLD_NOTHING));
        /* GZ: see test-floater.c; the weight lies 0.05 of the size to starboard. */
        assert_near (sin (gb_attitude_heel (at)) * (31 / 60.0 + pow (tan (gb_attitude_heel (at)), 2) / 3),
                     0.05 * cos (gb_attitude_heel (at)), 1e-9);
        assert_near (gb_attitude_trim (at), 0, 1e-8);
      }
}

/* Meshes that are open, cross themselves or are partly inside out: whatever comes of it, it comes to an end,
 * and nothing but what is finite is called rest. */
static void
test_bad_meshes_come_to_an_end (void)
{
  for (guint i = 0; i < 400; i++)
    {
      g_autoptr (GbFloater) floater = gb_floater_new (1000);
      GbMesh *mesh = random_body (i);
      GbRest rest;

      mesh->n_triangles -= i % 4;
      if (i % 3 > 0)
        mesh->points[i % mesh->n_points] = random_place (5);
      if (i % 5 == 0)
        for (guint k = 0; k < mesh->n_triangles; k += 7)
          mesh->triangles[k][0] = mesh->triangles[k][1];
      float_mesh (floater, mesh, i % 2);
      gb_floater_add_mass (floater, between (1, 1000), random_place (2));
      rest = gb_floater_rest (floater, random_attitude (), i % 3, NULL, NULL);
      if (rest.kind == GB_REST_FOUND)
        g_assert_true (isfinite (rest.energy) && isfinite (rest.attitude.height));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/floater/slopes", test_slopes);
  g_test_add_func ("/floater/bends-of-smooth-body", test_bends_of_smooth_body);
  g_test_add_func ("/floater/rest-from-anywhere", test_rest_from_anywhere);
  g_test_add_func ("/floater/rest-with-all-sorts", test_rest_with_all_sorts);
  g_test_add_func ("/floater/held", test_held);
  g_test_add_func ("/floater/lever-is-slope", test_lever_is_slope);
  g_test_add_func ("/floater/symmetric-boats-stay-upright", test_symmetric_boats_stay_upright);
  g_test_add_func ("/floater/near-starts-take-few-steps", test_near_starts_take_few_steps);
  g_test_add_func ("/floater/too-heavy-sinks", test_too_heavy_sinks);
  g_test_add_func ("/floater/sizes", test_sizes);
  g_test_add_func ("/floater/bad-meshes-come-to-an-end", test_bad_meshes_come_to_an_end);
  return g_test_run ();
}
