/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Inclining and lists by moved weights against worked examples. DB: Derrett and Barrass, Ship Stability for
 * Masters and Mates, 5th edition (1999) unless another is named. */

#include "../engine/hull-fixture.h"

#include "engine/inclining.h"

#define DEGREE (G_PI / 180)

static double
gm_of (double mass, double moved, double distance, double tangent)
{
  double moment = moved * distance, gm, gm_sd;

  g_assert_true (gb_inclining_gm (&moment, &tangent, 1, mass, &gm, &gm_sd));
  g_assert_true (isnan (gm_sd));
  return gm;
}

static void
test_by_plumb_line (void)
{
  /* DB chapter 26 (from memory): 8000 t, 25 t moved 15 m, a plumb line of 4 m goes out 20 cm, KM 7 m: GM
   * 0.9375, KG 6.06 m. */
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbInclining *test = add_record (boat, GB_RECORD_INCLINING, 0);
  GbShift *shift = add_record (boat, GB_RECORD_SHIFT, test->rec.id);
  GbAfloat afloat = { .total = 8000e3, .kb = 3, .bm = 4, .keel = 0, .gm = 0.9, .gravity = { 60, 0, 6.1 } };
  GbInclined inclined = { 0 };

  test->mass = 8000e3;
  test->pendulum = 4;
  shift->mass = 25e3;
  shift->distance = 15;
  shift->deflection = 0.20;
  gb_boat_settle (boat);
  gb_inclined_find (&inclined, boat, test, &afloat);
  g_assert_null (inclined.trouble);
  assert_near (inclined.gm, 0.9375, 1e-9);
  assert_near (inclined.km, 7, 1e-12);
  assert_near (inclined.kg, 6.06, 0.005);
  gb_inclined_clear (&inclined);
}

static void
test_lists (void)
{
  /* DB 6th edition, exercise 14.4: 1500 t, KG 2.7, KM 3.1; 10 t moved 10 m across list her 9 deg 27 min. */
  assert_near (gm_of (1500, 10, 10, tan ((9 + 27 / 60.0) * DEGREE)), 0.4, 0.001);
  /* A nautical school's page: 5000 t, GM 0.3; 20 t moved 5 m list her 3.8 degrees. */
  assert_near (gm_of (5000, 20, 5, tan (3.8 * DEGREE)), 0.3, 0.002);
  /* The same page: 10000 t, 200 t moved 5 m to starboard (and 10 m down): GM 0.6, 9.46 degrees. */
  assert_near (gm_of (10000, 200, 5, tan (9.46 * DEGREE)), 0.6, 0.001);
  /* DB 6th edition, exercise 14.2: 4515 t, KG 5.4, KM 5.8; 15 t moved 4.2 m list her 2 degrees. */
  assert_near (gm_of (4515, 15, 4.2, tan (2 * DEGREE)), 0.4, 0.001);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/published/inclining/by-plumb-line", test_by_plumb_line);
  g_test_add_func ("/published/inclining/lists", test_lists);
  return g_test_run ();
}
