/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Where things come to rest, against closed forms and classical results; and what has no rest. */

#include "floater-fixture.h"

/* A square log of relative density s, side 1, long enough not to stand on end. Classical result (for one
 * Gilbert, How things float, American Mathematical Monthly 98, 1991; from memory): a side lies level for s
 * below (1 - 1/sqrt 3)/2 = 0.2113 or above 0.7887, a corner stands up for 9/32 < s < 23/32, and in between
 * it lies at an angle between. The angles: wall-sided formula tan2 = 12 s (1 - s) - 2 until the corner
 * comes out at s = 1/4; from there a triangle with the legs 3/4 +- sqrt (9/16 - 2 s) is wet. */
static double
heel_of_log (double s)
{
  double less = MIN (s, 1 - s);

  if (less < (1 - 1 / sqrt (3)) / 2)
    return 0;
  if (less < 0.25)
    return atan (sqrt (12 * less * (1 - less) - 2));
  if (less < 9.0 / 32)
    return atan ((0.75 - sqrt (9.0 / 16 - 2 * less)) / (0.75 + sqrt (9.0 / 16 - 2 * less)));
  return G_PI / 4;
}

/* By how much a square is turned from the nearest of its sides, 0 to 45 degrees. */
static double
from_side (double heel)
{
  return fabs (remainder (heel, G_PI / 2));
}

static void
test_square_log (void)
{
  for (double s = 0.03; s < 0.98; s += 0.01)
    {
      g_autoptr (GbFloater) log = floating_box (6, 1, 1, 6000 * s, 0.5);
      GbAttitude upright = attitude_found (rest_from (log, 0, 0, 0, GB_HOLD_NOTHING));
      GbAttitude thrown = attitude_found (rest_from (log, 2.5, 0.3, 7, GB_HOLD_NOTHING));

      g_assert_cmpfloat (gb_attitude_heel (upright), >=, 0);
      assert_near (from_side (gb_attitude_heel (upright)), heel_of_log (s), heel_of_log (s) == 0 ? 0 : 1e-9);
      assert_near (from_side (gb_attitude_heel (thrown)), heel_of_log (s), 1e-9);
      assert_near (gb_attitude_trim (thrown), 0, 1e-9);
    }
}

/* Ship Stability for Masters and Mates (Derrett, Barrass), pages 230 and 231: a homogeneous log 6 x 3 x 3
 * m, relative density 0.4, draught 1.2, KB 0.6, BM 0.625, KG 1.5 m; the wall-sided formula gives a loll of
 * 43 degrees 10 minutes (inputs from memory). The corner is out of the water by then, where that formula
 * does not hold: the classical result above has 45 degrees. */
static void
test_log_of_the_book (void)
{
  g_autoptr (GbFloater) log = floating_box (6, 3, 3, 6 * 3 * 3 * 400, 1.5);
  GbRest level = rest_from (log, 0, 0, 0, GB_HOLD_BOTH);
  double gm = 0.6 + 0.625 - 1.5;
  GbFloatSums sums;

  gb_floater_sums (log, attitude_found (level), &sums);
  assert_near (level.attitude.height, 1.2, 1e-12);
  assert_near (sums.hulls.moment.z / sums.hulls.volume, 0.6, 1e-12);
  assert_near (sums.hulls.plane_second.yy / sums.hulls.volume, 0.625, 1e-12);
  assert_near (atan (sqrt (-2 * gm / 0.625)), (43 + 10 / 60.0) * DEGREE, 0.01 * DEGREE);
  assert_near (gb_attitude_heel (attitude_found (rest_from (log, 0, 0, 0, GB_HOLD_NOTHING))), 45 * DEGREE,
               1e-9);
}

/* Wall-sided, until an edge is wetted: GZ = sin phi (GM + BM/2 tan2 phi). Box 65 x 12 x 8 m, KG 4 m,
 * draught 4 m: KB 2, BM 3, GM 1 m; at 5 degrees GZ 0.0872 m, and at 25 degrees 0.560 m (Ship Stability for
 * Masters and Mates, pages 130 and 131). */
static void
test_wall_sided (void)
{
  g_autoptr (GbFloater) box = floating_box (65, 12, 8, 65 * 12 * 4 * 1000, 4);

  for (double degrees = -30; degrees <= 30; degrees += 1)
    {
      double heel = degrees * DEGREE;
      GbAttitude at = attitude_found (rest_from (box, heel, 0.1, 2, GB_HOLD_HEEL));

      assert_near (gb_floater_lever (box, at), sin (heel) * (1 + 1.5 * tan (heel) * tan (heel)), 1e-12);
      assert_near (gb_attitude_heel (at), heel, 1e-14);
      assert_near (gb_attitude_trim (at), 0, 1e-12);
    }
  assert_near (gb_floater_lever (box, attitude_found (rest_from (box, 5 * DEGREE, 0, 0, GB_HOLD_HEEL))),
               0.0872 * 1.01, 0.0872 * 0.02);
  assert_near (gb_floater_lever (box, attitude_found (rest_from (box, 25 * DEGREE, 0, 0, GB_HOLD_HEEL))),
               0.560, 0.0005);
}

/* A box that is not stiff, within the formula's reach: tan loll = sqrt (-2 GM/BM). */
static void
test_loll (void)
{
  /* Draught 1, KB 0.5, BM 4/12 = 1/3, KG 0.85: GM -1/60. */
  g_autoptr (GbFloater) box = floating_box (10, 2, 2, 20000, 0.85);
  double loll = atan (sqrt (2 * (1 / 60.0) * 3));

  assert_near (gb_attitude_heel (attitude_found (rest_from (box, 0, 0, 1, GB_HOLD_NOTHING))), loll, 1e-10);
  assert_near (gb_attitude_heel (attitude_found (rest_from (box, -0.01, 0, 1, GB_HOLD_NOTHING))), -loll,
               1e-10);
  assert_near (gb_floater_lever (box, attitude_found (rest_from (box, loll, 0, 1, GB_HOLD_HEEL))), 0, 1e-12);
}

/* A weight w moved d across: m GZ = w d cos phi; for small angles tan phi = w d/(m GM), the formula of the
 * inclining test. */
static void
test_weight_moved_across (void)
{
  /* Draught 0.5, KB 0.25, BM 2 x 2/(12 x 0.5) = 2/3, KG 0.4: GM 31/60. */
  double gm = 31 / 60.0, bm = 2 / 3.0;

  for (double moved = 1; moved <= 150; moved *= 5)
    {
      g_autoptr (GbFloater) box = floating_box (4, 2, 1, 3900, 0.4);
      double heel, lever;

      gb_floater_add_mass (box, 100, (GbVec3){ 0, -moved / 100, 0.4 });
      heel = gb_attitude_heel (attitude_found (rest_from (box, 0, 0, 0, GB_HOLD_NOTHING)));
      lever = sin (heel) * (gm + bm / 2 * tan (heel) * tan (heel));
      g_assert_cmpfloat (heel, >, 0);
      assert_near (4000 * lever, moved * cos (heel), 1e-9);
      assert_near (tan (heel), moved / (4000 * gm), 0.005 * tan (heel));
    }
}

static void
test_weight_moved_along (void)
{
  /* GM along = KB + BM - KG = 0.25 + 16/(12 x 0.5) - 0.4. */
  g_autoptr (GbFloater) box = floating_box (4, 2, 1, 3900, 0.4);
  double gm = 0.25 + 8 / 3.0 - 0.4, bm = 8 / 3.0, trim;

  gb_floater_add_mass (box, 100, (GbVec3){ 1, 0, 0.4 });
  trim = gb_attitude_trim (attitude_found (rest_from (box, 0, 0, 0, GB_HOLD_HEEL)));
  g_assert_cmpfloat (trim, >, 0);
  assert_near (4000 * sin (trim) * (gm + bm / 2 * tan (trim) * tan (trim)), 100 * cos (trim), 1e-9);
}

static void
test_heeling_moment (void)
{
  g_autoptr (GbFloater) box = floating_box (4, 2, 1, 4000, 0.4);
  double heel;

  box->heeling_moment = 150;
  heel = gb_attitude_heel (attitude_found (rest_from (box, 0, 0, 0, GB_HOLD_NOTHING)));
  assert_near (4000 * sin (heel) * (31 / 60.0 + 1 / 3.0 * tan (heel) * tan (heel)), 150, 1e-9);
  /* More than she withstands at any heel: she rolls over and over, and there is no rest. */
  box->heeling_moment = 1e5;
  g_assert_cmpint (rest_from (box, 0, 0, 0, GB_HOLD_NOTHING).kind, ==, GB_REST_NONE);
}

/* A rope at a masthead 5 m over where the water holds against it, pulled to starboard: m GZ = F 5 cos phi. */
static void
test_pull (void)
{
  g_autoptr (GbFloater) box = floating_box (4, 2, 1, 4000, 0.4);
  GbPull pull = { 30, { 0, 0, 5.2 }, { 0, 0, 0.2 }, { 0, -1, 0 } };
  double heel, trim;

  g_array_append_val (box->pulls, pull);
  heel = gb_attitude_heel (attitude_found (rest_from (box, 0, 0, 0, GB_HOLD_NOTHING)));
  assert_near (4000 * sin (heel) * (31 / 60.0 + 1 / 3.0 * tan (heel) * tan (heel)), 150 * cos (heel), 1e-9);

  /* Ahead: she trims by the bow. */
  g_array_index (box->pulls, GbPull, 0).bearing = (GbVec3){ 1, 0, 0 };
  trim = gb_attitude_trim (attitude_found (rest_from (box, 0, 0, 0, GB_HOLD_NOTHING)));
  assert_near (4000 * sin (trim) * (0.25 + 8 / 3.0 - 0.4 + 4 / 3.0 * tan (trim) * tan (trim)),
               150 * cos (trim), 1e-9);
}

static double
gm_of (const GbFloater *floater)
{
  double heel = 1e-4;

  return gb_floater_lever (floater, attitude_found (rest_from (floater, heel, 0, 0, GB_HOLD_HEEL)))
         / sin (heel);
}

/* Loss of GM by a free surface: l b3/12 times the liquid's density over the displacement. */
static void
test_free_surface (void)
{
  g_autoptr (GbFloater) liquid = floating_box (4, 2, 1, 3900, 0.4);
  g_autoptr (GbFloater) solid = floating_box (4, 2, 1, 3900, 0.4);
  g_autoptr (GbFloater) full = floating_box (4, 2, 1, 3900, 0.4);
  GbVec3 middle = { 0, 0, 0.2 }, size = { 1, 0.8, 0.2 };
  GbFloatSums sums;

  /* 62.5 l in a tank of 160 l, twice. */
  gb_floater_add_tank (liquid, middle, size, 800, 50, 2);
  gb_floater_add_mass (solid, 100, (GbVec3){ 0, 0, 0.1 + 0.0625 / 0.8 / 2 });
  assert_near (gm_of (solid) - gm_of (liquid), 2 * 800 * (0.8 * 0.8 * 0.8 / 12) / 4000, 1e-6);
  gb_floater_sums (liquid, gb_attitude (0, 0, 0.5), &sums);
  assert_near (sums.free_surfaces.yy, 2 * 800 * (0.8 * 0.8 * 0.8 / 12), 1e-10);
  assert_near (sums.free_surfaces.xx, 2 * 800 * 0.8 / 12, 1e-10);
  assert_near (sums.gravity.z, 0.4 * 0.975 + (0.1 + 0.0625 / 0.8 / 2) * 0.025, 1e-12);

  /* Pressed full there is no free surface; nor where it is said to hold more than it can. */
  gb_floater_add_tank (full, middle, size, 800, 0.16 * 800, 1);
  gb_floater_add_tank (full, middle, size, 800, 1000, 1);
  gb_floater_sums (full, gb_attitude (0.3, 0, 0.5), &sums);
  assert_near (sums.mass, 3900 + 128 + 1000, 1e-9);
  assert_near (sums.free_surfaces.yy, 0, 1e-12);
}

/* On her beam ends the liquid stands in the other way of the box. */
static void
test_liquid_runs_down (void)
{
  g_autoptr (GbFloater) box = floating_box (4, 2, 1, 3900, 0.4);
  GbFloatSums sums;
  GbLiquid liquid;

  gb_floater_add_tank (box, (GbVec3){ 1, 0, 0.5 }, (GbVec3){ 1, 0.5, 0.4 }, 1000, 50, 1);
  for (int side = -1; side <= 1; side += 2)
    {
      gb_tank_settle (&g_array_index (box->tanks, GbTank, 0), gb_attitude (side * G_PI / 2, 0, 0).up,
                      &liquid);
      /* A quarter of the width is full. */
      assert_vec3 (liquid.centre, (GbVec3){ 1, -side * (0.25 - 0.0625), 0.5 }, 1e-12);
      assert_near (liquid.surface.zz, 0.4 * 0.4 * 0.4 / 12, 1e-12);
    }
  /* It stays where it was put when the tank is moved. */
  g_array_index (box->tanks, GbTank, 0).centre.x = -1;
  gb_floater_sums (box, gb_attitude (0, 0, 0.5), &sums);
  assert_near (sums.gravity.x, -50 / 3950.0, 1e-12);
}

/* Cap of a ball: pi h2 (3 r - h)/3. */
static void
test_ball (void)
{
  g_autoptr (GbFloater) floater = gb_floater_new (1000);
  GbBall ball = { { 1, 2, 3 }, 0.5 };
  GbFloatSums sums;
  GbAttitude at;

  g_array_append_val (floater->balls, ball);
  gb_floater_add_mass (floater, 1000 * G_PI * 0.2 * 0.2 * (1.5 - 0.2) / 3, (GbVec3){ 1, 2, 2.9 });
  at = attitude_found (rest_from (floater, 1, 0.3, 100, GB_HOLD_NOTHING));
  assert_near (gb_attitude_above (at, ball.at), 0.3, 1e-10);
  /* Its weight hangs under its middle. */
  assert_vec3 (at.up, (GbVec3){ 0, 0, 1 }, 1e-9);
  gb_floater_sums (floater, at, &sums);
  assert_near (sums.hulls.plane, G_PI * 0.16, 1e-9);
  assert_near (sums.hulls.plane_second.yy - sums.hulls.plane * 4, G_PI * 0.16 * 0.16 / 4, 1e-9);
  assert_near (sums.hulls.wetted, 2 * G_PI * 0.5 * 0.2, 1e-9);
  /* Middle of a cap under the ball's middle: 3 (2 r - h)2/(4 (3 r - h)). */
  assert_near (sums.hulls.moment.z / sums.hulls.volume, 3 - 3 * 0.8 * 0.8 / (4 * 1.3), 1e-9);
}

/* Upside down and not stiff that way: she rights herself. */
static void
test_rights_herself (void)
{
  g_autoptr (GbFloater) box = floating_box (4, 1, 1, 1200, 0.05);
  GbAttitude at = attitude_found (rest_from (box, G_PI, 0, 3, GB_HOLD_NOTHING));

  assert_near (gb_attitude_heel (at), 0, 1e-9);
  /* Flat and wide she stays as she is. */
  g_clear_pointer (&box, gb_floater_free);
  box = floating_box (4, 2, 0.5, 1200, 0.1);
  at = attitude_found (rest_from (box, G_PI, 0, -3, GB_HOLD_NOTHING));
  assert_near (fabs (gb_attitude_heel (at)), G_PI, 1e-9);
}

/* A ball and a shaft do not mind how they are turned. */
static void
test_neutral (void)
{
  g_autoptr (GbFloater) floater = gb_floater_new (1025);
  GbBall ball = { { 0, 0, 0 }, 1 };
  GbRest rest;

  g_array_append_val (floater->balls, ball);
  gb_floater_add_mass (floater, 1000, (GbVec3){ 0, 0, 0 });
  rest = rest_from (floater, 1.2, 0.7, 5, GB_HOLD_NOTHING);
  assert_vec3 (attitude_found (rest).up, gb_attitude (1.2, 0.7, 0).up, 1e-9);
  g_assert_cmpuint (rest.n_steps, <=, 3);
}

/* Weighing just as much as all the water that it can push away, or a hair more. */
static void
test_limits_of_carrying (void)
{
  g_autoptr (GbFloater) hovers = floating_box (2, 1, 1, 2000, 0.3);
  g_autoptr (GbFloater) nearly = floating_box (2, 1, 1, 2000 * (1 - 1e-9), 0.3);
  g_autoptr (GbFloater) sinks = floating_box (2, 1, 1, 2000.001, 0.3);
  GbRest rest = rest_from (sinks, 0.1, 0.2, 3, GB_HOLD_NOTHING);

  g_assert_cmpint (rest.kind, ==, GB_REST_SINKS);
  g_assert_true (isnan (rest.energy));
  assert_near (gb_attitude_heel (rest.attitude), 0.1, 1e-14);
  for (guint i = 0; i < 8; i++)
    {
      assert_near (gb_attitude_heel (attitude_found (rest_from (hovers, i, 0.2, 9, GB_HOLD_NOTHING))), 0,
                   1e-9);
      assert_near (gb_attitude_heel (attitude_found (rest_from (nearly, i, 0.2, -9, GB_HOLD_NOTHING))), 0,
                   1e-6);
    }
}

static void
test_no_rest (void)
{
  g_autoptr (GbFloater) empty = gb_floater_new (1000);
  g_autoptr (GbFloater) weightless = floating_box (2, 1, 1, 0, 0);
  g_autoptr (GbFloater) dry = floating_box (2, 1, 1, 500, 0.5);
  g_autoptr (GbFloater) nowhere = floating_box (2, 1, 1, 500, NAN);
  g_autoptr (GbFloater) inside_out = gb_floater_new (1000);
  GbFloater *none[] = { empty, weightless, dry, nowhere, inside_out };

  gb_floater_add_mass (inside_out, 100, (GbVec3){ 0, 0, 0 });
  float_mesh (
      inside_out,
      new_tetrahedron ((GbVec3){ 0, 0, 0 }, (GbVec3){ 0, 3, 1 }, (GbVec3){ 2, 0, 1 }, (GbVec3){ 0, 0, 1 }),
      FALSE);
  dry->density = NAN;
  for (guint i = 0; i < G_N_ELEMENTS (none); i++)
    for (guint hold = GB_HOLD_NOTHING; hold <= GB_HOLD_BOTH; hold++)
      {
        GbRest rest = rest_from (none[i], 0.1, 0.2, 3, hold);

        g_assert_cmpint (rest.kind, ==, GB_REST_NONE);
        g_assert_true (isnan (rest.energy));
      }
  g_assert_true (isfinite (gb_floater_energy (weightless, gb_attitude (0, 0, 1))));
}

/* A start that cannot be is upright. */
static void
test_absurd_start (void)
{
  g_autoptr (GbFloater) box = floating_box (4, 2, 1, 4000, 0.4);
  GbAttitude absurd[] = {
    { { 0, 0, 0 }, 0 },        { { NAN, 0, 1 }, 0 },   { { 0, 0, 1 }, NAN },
    { { 0, 0, 1 }, INFINITY }, { { 0, 0, 7 }, 1e300 }, { { 1, 0, 0 }, 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (absurd); i++)
    for (guint hold = GB_HOLD_NOTHING; hold < GB_HOLD_BOTH; hold++)
      {
        GbAttitude at = attitude_found (gb_floater_rest (box, absurd[i], hold, NULL, NULL));

        assert_near (gb_attitude_trim (at), 0, 1e-9);
        assert_near (remainder (gb_attitude_heel (at), G_PI), 0, 1e-9);
      }
}

/* A copy is its own: it outlives the first, and what is added to it stays in it. */
static void
test_copy (void)
{
  GbFloater *box = floating_box (4, 2, 1, 3900, 0.4);
  g_autoptr (GbFloater) copy = NULL;
  double energy;

  gb_floater_add_tank (box, (GbVec3){ 1, 0, 0.5 }, (GbVec3){ 1, 0.5, 0.4 }, 1000, 50, 1);
  energy = gb_floater_energy (box, gb_attitude (0.2, 0.1, 0.3));
  copy = gb_floater_copy (box);
  gb_floater_add_mass (copy, 100, (GbVec3){ 0, 1, 0 });
  g_assert_cmpfloat (gb_floater_energy (box, gb_attitude (0.2, 0.1, 0.3)), ==, energy);
  gb_floater_free (box);
  g_assert_cmpfloat (gb_floater_energy (copy, gb_attitude (0.2, 0.1, 0.3)), !=, energy);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/floater/square-log", test_square_log);
  g_test_add_func ("/floater/log-of-the-book", test_log_of_the_book);
  g_test_add_func ("/floater/wall-sided", test_wall_sided);
  g_test_add_func ("/floater/loll", test_loll);
  g_test_add_func ("/floater/weight-moved-across", test_weight_moved_across);
  g_test_add_func ("/floater/weight-moved-along", test_weight_moved_along);
  g_test_add_func ("/floater/heeling-moment", test_heeling_moment);
  g_test_add_func ("/floater/pull", test_pull);
  g_test_add_func ("/floater/free-surface", test_free_surface);
  g_test_add_func ("/floater/liquid-runs-down", test_liquid_runs_down);
  g_test_add_func ("/floater/ball", test_ball);
  g_test_add_func ("/floater/rights-herself", test_rights_herself);
  g_test_add_func ("/floater/neutral", test_neutral);
  g_test_add_func ("/floater/limits-of-carrying", test_limits_of_carrying);
  g_test_add_func ("/floater/no-rest", test_no_rest);
  g_test_add_func ("/floater/absurd-start", test_absurd_start);
  g_test_add_func ("/floater/copy", test_copy);
  return g_test_run ();
}
