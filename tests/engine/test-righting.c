/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Righting levers of boxes against closed forms; sides, balances and immersions. */

#include "afloat-fixture.h"

#include "engine/righting-private.h"

static GbRighting *
righting_of (Craft *craft, gint64 condition)
{
  craft_find (craft, condition);
  return gb_righting_find (craft->self, NULL, NULL);
}

static const GbLever *
lever_at (const GbRighting *righting, int degree)
{
  return &righting->levers[180 + degree];
}

/* Exact up to where deck or bottom meet the water: GZ = sin (GM + BM tan2 / 2). */
static double
wall_sided (double gm, double bm, double heel)
{
  return sin (heel) * (gm + bm * tan (heel) * tan (heel) / 2);
}

static void
test_wall_sided (void)
{
  g_auto (Craft) craft = new_craft (1000, 1000, 2, 0.2);
  g_autoptr (GbRighting) righting = NULL;
  double bm = 1.0 / 3, gm = 0.125 + bm - 0.2;

  add_block (craft.boat, 4, 1, 0.5);
  righting = righting_of (&craft, 0);
  /* The edge is half a metre out and a quarter up: it goes under at 26.57 degrees. */
  for (int i = -26; i <= 26; i++)
    {
      assert_near (lever_at (righting, i)->heel, i * DEGREE, 1e-15);
      assert_near (lever_at (righting, i)->lever, wall_sided (gm, bm, i * DEGREE), 1e-10);
      assert_near (lever_at (righting, i)->solid, lever_at (righting, i)->lever, 0);
      assert_near (lever_at (righting, i)->trim, 0, 1e-9);
    }
  assert_near (lever_at (righting, 10)->freeboard, 0.25 * cos (10 * DEGREE) - 0.5 * sin (10 * DEGREE), 1e-10);
  assert_near (righting->gm, gm, 1e-4);
  assert_near (righting->gm_solid, gm, 1e-4);
  assert_near (righting->total, 1000, 1e-9);
  g_assert_true (isnan (righting->moment));
}

/* Water comes in where the edge goes under: at tan = freeboard / half breadth. Up to there the integral of the
 * wall-sided curve is GM (1 - cos) + BM/2 (sec + cos - 2); the rest of the curve is that of a closed boat. */
static void
test_filling (void)
{
  g_auto (Craft) craft = new_craft (1000, 1000, 2, 0.2);
  g_autoptr (GbRighting) righting = NULL;
  double bm = 1.0 / 3, gm = 0.125 + bm - 0.2, edge = atan2 (0.25, 0.5), c = cos (edge);
  double area = gm * (1 - c) + bm / 2 * (1 / c + c - 2);

  add_block (craft.boat, 4, 1, 0.5);
  righting = righting_of (&craft, 0);
  assert_near (righting->starboard.filling, edge, 1e-7);
  assert_near (righting->port.filling, edge, 1e-7);
  /* Trapezia a degree wide. */
  assert_near (righting->starboard.dry_area, area, 2e-5);
  assert_near (righting->port.dry_area, righting->starboard.dry_area, 1e-9);
  g_assert_cmpfloat (righting->starboard.area, >, righting->starboard.dry_area);
  /* The curve still rises there. */
  assert_near (righting->starboard.dry_greatest_at, edge, 1e-7);
  assert_near (righting->starboard.dry_greatest, wall_sided (gm, bm, edge), 1e-8);
  assert_near (righting->port.dry_greatest, righting->starboard.dry_greatest, 1e-9);
  g_assert_cmpfloat (righting->starboard.greatest, >, righting->starboard.dry_greatest);
}

/* Where nothing fills her the greatest lever is the dry one. */
static void
test_never_filling (void)
{
  g_auto (Craft) craft = new_craft (1000, 1000, 2, 0.2);
  g_autoptr (GbRighting) righting = NULL;

  add_block (craft.boat, 4, 1, 0.5)->edge = GB_EDGE_CLOSED;
  righting = righting_of (&craft, 0);
  g_assert_true (isnan (righting->starboard.filling));
  assert_near (righting->starboard.dry_greatest, righting->starboard.greatest, 0);
  assert_near (righting->starboard.dry_greatest_at, righting->starboard.greatest_at, 0);
}

/* Box 65 x 12 x 8 m at 4 m with KG 4 m: at 5 degrees GZ = GM sin = 0.0872 m, for which the wall-sided formula has
 * 0.0882; at 25 degrees 0.560 m by the wall-sided formula. Derrett and Barrass, Ship Stability for Masters and
 * Mates, 5th ed. (1999), p. 130-131. */
static void
test_box_of_the_handbook (void)
{
  g_auto (Craft) craft = new_craft (1025, 3198000, 32.5, 4);
  g_autoptr (GbRighting) righting = NULL;

  add_block (craft.boat, 65, 12, 8);
  righting = righting_of (&craft, 0);
  assert_near (lever_at (righting, 5)->lever, 0.0872, 1.1e-3);
  assert_near (lever_at (righting, 25)->lever, 0.560, 1e-3);
}

/* A box with the draught half its depth and its centre of gravity at half the depth too is the same upside down and,
 * where its section is square, on its side. */
static void
test_symmetries (void)
{
  g_auto (Craft) craft = new_craft (1000, 1200, 2, 0.3);
  g_autoptr (GbRighting) righting = NULL;

  add_block (craft.boat, 4, 1, 0.6)->edge = GB_EDGE_CLOSED;
  righting = righting_of (&craft, 0);
  for (int i = 0; i <= 180; i++)
    {
      assert_near (lever_at (righting, i)->lever, -lever_at (righting, -i)->lever, 1e-9);
      assert_near (lever_at (righting, i)->lever, -lever_at (righting, 180 - i)->lever, 1e-9);
    }
  assert_near (righting->starboard.vanishing, G_PI / 2, 1e-8);
  assert_near (righting->port.vanishing, G_PI / 2, 1e-8);
  assert_near (righting->starboard.area, righting->port.area, 1e-9);
  g_assert_cmpuint (righting->balances->len, ==, 4);
  for (guint i = 0; i < 4; i++)
    {
      GbBalance balance = g_array_index (righting->balances, GbBalance, i);

      assert_near (balance.heel, ((double) i - 1) * G_PI / 2, 1e-8);
      g_assert_cmpint (balance.stable, ==, i % 2);
    }
}

/* Where a lever is not known, the balance is between those beside it; and none where it need not be. */
static void
test_unknown_levers (void)
{
  static const int unknown[] = { -140, 60, 88, 89, 90, 91 };
  g_auto (Craft) craft = new_craft (1000, 1200, 2, 0.3);
  g_autoptr (GbRighting) righting = NULL;
  GbRightingWork work;

  add_block (craft.boat, 4, 1, 0.6)->edge = GB_EDGE_CLOSED;
  righting = righting_of (&craft, 0);
  for (guint i = 0; i < G_N_ELEMENTS (unknown); i++)
    righting->levers[GB_UPRIGHT + unknown[i]].lever = NAN;
  work = (GbRightingWork){ .righting = righting, .self = craft.self, .floater = gb_case_floater (craft.self) };
  g_array_set_size (righting->balances, 0);
  gb_righting_find_balances (&work);
  g_assert_cmpuint (righting->balances->len, ==, 4);
  for (guint i = 0; i < 4; i++)
    assert_near (g_array_index (righting->balances, GbBalance, i).heel, ((double) i - 1) * G_PI / 2, 1e-8);
}

/* A slip of the pen puts a point of her keel 100 m down: the energy wavers more, but each heel has its rest. */
static void
test_far_point (void)
{
  g_auto (Craft) craft = new_craft (1025, 300, 2, -0.3);
  GbHull *hull = add_hull (craft.boat, GB_HULL_STATIONS);
  g_autoptr (GbRighting) righting = NULL;

  ADD_STATION (craft.boat, hull, 0, 0, 0.1, 0.2, 0.2, 0.25, 0.6);
  ADD_STATION (craft.boat, hull, 2, 0, 0, 0.25, 0.15, 0.3, 0.55);
  ADD_STATION (craft.boat, hull, 4, 0, -100, 0.02, 0.4, 0.03, 0.65);
  righting = righting_of (&craft, 0);
  g_assert_nonnull (righting);
  for (guint i = 0; i < GB_N_LEVERS; i++)
    g_assert_true (isfinite (righting->levers[i].lever));
}

/* The area under the curve is the work to turn her over, over her weight: what the energy has risen by. */
static void
test_area_is_work (void)
{
  g_auto (Craft) craft = new_craft (1000, 900, 1.9, 0.25);
  g_autoptr (GbRighting) righting = NULL;
  const GbFloater *floater;
  GbRest top, rest;

  add_block (craft.boat, 4, 1.1, 0.6);
  righting = righting_of (&craft, 0);
  floater = gb_case_floater (craft.self);
  rest = gb_floater_rest (floater, craft.afloat.attitude, GB_HOLD_NOTHING, NULL, NULL);
  top = gb_floater_rest (floater, gb_attitude (righting->starboard.vanishing, craft.afloat.trim, 0), GB_HOLD_HEEL, NULL, NULL);
  assert_near (righting->starboard.area, (top.energy - rest.energy) / 900, 2e-5);
  g_assert_cmpfloat (righting->starboard.greatest, >, 0);
  g_assert_cmpfloat (righting->starboard.greatest_at, >, 0);
  g_assert_cmpfloat (righting->starboard.greatest_at, <, righting->starboard.vanishing);
  for (int i = -180; i <= 180; i++)
    if (fabs (i * DEGREE) < righting->starboard.vanishing)
      g_assert_cmpfloat (fabs (lever_at (righting, i)->lever), <=, righting->starboard.greatest + 1e-12);
}

/* By hand: up to 20 degrees from the wall-sided curve, its integral is GM (1 - cos) + BM/2 (sec + cos - 2). */
static void
test_area_by_hand (void)
{
  g_auto (Craft) craft = new_craft (1000, 1000, 2, 0.2);
  g_autoptr (GbRighting) righting = NULL;
  double area = 0, gm = 0.125 + 1.0 / 3 - 0.2, heel = 20 * DEGREE;

  add_block (craft.boat, 4, 1, 0.5);
  righting = righting_of (&craft, 0);
  for (int i = 0; i < 20; i++)
    area += (lever_at (righting, i)->lever + lever_at (righting, i + 1)->lever) / 2 * DEGREE;
  assert_near (area, gm * (1 - cos (heel)) + (1 / cos (heel) + cos (heel) - 2) / 6, 1e-5);
}

/* Exact for the wall-sided box: it lolls to tan = sqrt (-2 GM / BM). */
static void
test_loll (void)
{
  g_auto (Craft) craft = new_craft (1000, 1000, 2, 0.48);
  g_autoptr (GbRighting) righting = NULL;
  double loll = atan (sqrt (2 * (0.48 - 0.125 - 1.0 / 3) * 3));

  add_block (craft.boat, 4, 1, 0.8)->edge = GB_EDGE_CLOSED;
  righting = righting_of (&craft, 0);
  for (guint i = 0; i < righting->balances->len; i++)
    {
      GbBalance balance = g_array_index (righting->balances, GbBalance, i);

      if (fabs (balance.heel) < 40 * DEGREE)
        {
          assert_near (fabs (balance.heel), balance.stable ? loll : 0, 1e-8);
          g_assert_cmpint (balance.stable, ==, fabs (balance.heel) > 0.01);
        }
    }
  /* Either side starts from its own rest. */
  assert_near (righting->starboard.area, righting->port.area, 1e-6);
  assert_near (righting->starboard.vanishing, righting->port.vanishing, 1e-8);
  assert_near (righting->starboard.greatest, righting->port.greatest, 1e-8);
  /* Stiffness at the loll: -2 GM / cos, as handbooks have it. */
  assert_near (righting->gm, 2 * (0.48 - 0.125 - 1.0 / 3) / cos (loll), 1e-4);
}

/* A moment m g over the weight is a lever; she heels to where the wall-sided curve has it. */
static void
test_steady_moment (void)
{
  g_auto (Craft) craft = new_craft (1000, 1000, 2, 0.2);
  gint64 id = craft_condition (&craft);
  GbCondition *condition = (GbCondition *) gb_boat_get (craft.boat, GB_RECORD_CONDITION, id);
  double gm = 0.125 + 1.0 / 3 - 0.2;

  add_block (craft.boat, 4, 1, 0.5);
  for (int sign = -1; sign <= 1; sign += 2)
    {
      g_autoptr (GbRighting) righting = NULL;

      condition->heeling_moment = sign * 50;
      righting = righting_of (&craft, id);
      assert_near (righting->moment, sign * 50, 0);
      assert_near (wall_sided (gm, 1.0 / 3, righting->starboard.steady), 0.05, 1e-9);
      assert_near (righting->starboard.steady, righting->port.steady, 1e-8);
      assert_near (craft.afloat.heel, 0, 1e-12);
    }
  condition->heeling_moment = 5000;
  {
    g_autoptr (GbRighting) righting = righting_of (&craft, id);

    g_assert_true (isnan (righting->starboard.steady) && isnan (righting->port.steady));
  }
  condition->heeling_moment = 0;
  {
    g_autoptr (GbRighting) righting = righting_of (&craft, id);

    assert_near (righting->starboard.steady, 0, 1e-9);
  }
}

/* Frozen, a tank costs nothing; running, it takes l b3 / 12 x density / W off GM. */
static void
test_free_surface (void)
{
  g_auto (Craft) craft = new_craft (1000, 900, 2, 0.2);
  gint64 condition = craft_condition (&craft);
  GbLoad *water = craft_load (&craft, condition, GB_LOAD_WATER, 100, (GbVec3){ 2, 0, 0.2 });
  g_autoptr (GbRighting) righting = NULL;

  add_block (craft.boat, 4, 1, 0.5);
  water->tank_length = 1;
  water->tank_width = 0.5;
  water->tank_height = 0.4;
  righting = righting_of (&craft, condition);
  assert_near (righting->gm_solid - righting->gm, 0.125 / 12, 1e-5);
  for (int i = 1; i < 60; i++)
    g_assert_cmpfloat (lever_at (righting, i)->lever, <, lever_at (righting, i)->solid);
  assert_near (lever_at (righting, 0)->lever, lever_at (righting, 0)->solid, 1e-12);
}

/* A rope holds her over; the curve is that of the boat without it. */
static void
test_pull (void)
{
  g_auto (Craft) craft = new_craft (1000, 1000, 2, 0.2);
  gint64 condition = craft_condition (&craft);
  GbLoad *pull = craft_load (&craft, condition, GB_LOAD_PULL, 30, (GbVec3){ 2, 0, 1 });
  g_autoptr (GbRighting) pulled = NULL, free = NULL;

  add_block (craft.boat, 4, 1, 0.5);
  pull->dip = 0;
  pull->bearing = -G_PI / 2;
  pulled = righting_of (&craft, condition);
  g_assert_cmpfloat (craft.afloat.heel, >, DEGREE);
  free = righting_of (&craft, 0);
  for (int i = -180; i <= 180; i++)
    assert_near (lever_at (pulled, i)->lever, lever_at (free, i)->lever, 1e-9);
  assert_near (pulled->starboard.area, free->starboard.area, 1e-9);
  assert_near (pulled->port.area, free->port.area, 1e-9);
  assert_near (pulled->port.vanishing, free->port.vanishing, 1e-8);
}

/* Listing by a weight off the middle: one rest serves both sides. */
static void
test_list (void)
{
  g_auto (Craft) craft = new_craft (1000, 950, 2, 0.2);
  gint64 condition = craft_condition (&craft);
  g_autoptr (GbRighting) righting = NULL;
  double heel, gm = 0.125 + 1.0 / 3 - 0.2;

  add_block (craft.boat, 4, 1, 0.5);
  craft_load (&craft, condition, GB_LOAD_GEAR, 50, (GbVec3){ 2, -0.4, 0.2 });
  righting = righting_of (&craft, condition);
  heel = craft.afloat.heel;
  assert_near (lever_at (righting, 10)->lever, wall_sided (gm, 1.0 / 3, 10 * DEGREE) - 0.02 * cos (10 * DEGREE), 1e-10);
  /* Past a right angle the weight is on the other side. */
  g_assert_cmpfloat (righting->port.vanishing, >, G_PI / 2);
  g_assert_cmpfloat (righting->port.vanishing, <, righting->starboard.vanishing);
  g_assert_cmpfloat (righting->port.area, >, righting->starboard.area);
  /* The area from the rest on, on both sides of it: from -heel to port. */
  g_assert_cmpfloat (righting->port.greatest, >, righting->starboard.greatest);
  assert_near (g_array_index (righting->immersions, GbEdgeImmersion, 0).starboard, atan (0.5), 1e-7);
  assert_near (g_array_index (righting->immersions, GbEdgeImmersion, 0).port, atan (0.5), 1e-7);
  g_assert_cmpfloat (heel, >, 0);
}

/* Exact for a box: over the side at tan = freeboard / half breadth, over the end at freeboard / half length. */
static void
test_immersions (void)
{
  g_auto (Craft) craft = new_craft (1000, 1000, 2, 0.2);
  GbHull *hull = add_block (craft.boat, 4, 1, 0.5);
  GbOpening *hatch = add_record (craft.boat, GB_RECORD_OPENING, hull->rec.id);
  GbCorner *corner = add_record (craft.boat, GB_RECORD_CORNER, hatch->rec.id);
  g_autoptr (GbRighting) righting = NULL;
  GbEdgeImmersion at;

  corner->x = 3;
  corner->y = -0.25;
  corner->z = 0.35;
  righting = righting_of (&craft, 0);
  g_assert_cmpuint (righting->immersions->len, ==, 2);
  at = g_array_index (righting->immersions, GbEdgeImmersion, 0);
  g_assert_cmpint (at.line, ==, 0);
  assert_near (at.starboard, atan (0.5), 1e-7);
  assert_near (at.port, atan (0.5), 1e-7);
  assert_near (at.bow, atan (0.125), 1e-7);
  assert_near (at.stern, atan (0.125), 1e-7);
  at = g_array_index (righting->immersions, GbEdgeImmersion, 1);
  g_assert_cmpint (at.line, ==, 1);
  assert_near (at.starboard, atan (0.4), 1e-7);
  assert_near (at.bow, atan (0.1), 1e-7);
  g_assert_cmpfloat (at.port, >, atan (0.5));

  /* Under from the start: at her rest. */
  corner->z = 0.24;
  corner->y = 0;
  gb_righting_free (g_steal_pointer (&righting));
  craft.rollup.boat.mass = 980;
  righting = righting_of (&craft, 0);
  g_assert_cmpint (craft.afloat.state, ==, GB_AFLOAT_SINKS);
  g_assert_null (righting);
}

static gboolean
count_down_cb (gpointer data)
{
  int *left = data;

  return --*left < 0;
}

static void
test_cancel_and_nothing (void)
{
  g_auto (Craft) craft = new_craft (1000, 1000, 2, 0.2);
  gboolean done = FALSE;

  g_assert_null (righting_of (&craft, 0));
  add_block (craft.boat, 4, 1, 0.5);
  craft_find (&craft, 0);
  for (int n = 0; !done; n++)
    {
      int left = n;
      g_autoptr (GbRighting) righting = gb_righting_find (craft.self, count_down_cb, &left);

      done = righting != NULL;
      g_assert_cmpint (n, <, 1000);
      n += n / 8;
    }
  gb_righting_free (NULL);
}

/* Hulls of any shape: the curve begins and ends alike, its slope at upright is GM, and from each rest found by
 * itself the curve is nothing. */
static void
test_two_hulls (void)
{
  g_auto (Craft) craft = new_craft (1025, 300, 2, 0.4);
  GbHull *hull = add_hull (craft.boat, GB_HULL_STATIONS);
  g_autoptr (GbRighting) righting = NULL;

  hull->pair = TRUE;
  hull->y = 0.9;
  ADD_STATION (craft.boat, hull, 0, 0, 0.1, 0.2, 0.2, 0.25, 0.6);
  ADD_STATION (craft.boat, hull, 2, 0, 0, 0.25, 0.15, 0.3, 0.55);
  ADD_STATION (craft.boat, hull, 4, 0, 0.2, 0.02, 0.4, 0.03, 0.65);
  righting = righting_of (&craft, 0);
  assert_near (lever_at (righting, 180)->lever, lever_at (righting, -180)->lever, 1e-7);
  assert_near (lever_at (righting, 0)->lever, 0, 1e-10);
  assert_near (righting->gm, craft.afloat.gm, 0);
  /* It is what the curve rises by, but for what a degree is wide and for her trim. */
  assert_near ((lever_at (righting, 1)->lever - lever_at (righting, -1)->lever) / (2 * DEGREE) / righting->gm, 1, 0.02);
  g_assert_cmpuint (righting->balances->len, >=, 2);
  g_assert_cmpuint (righting->immersions->len, ==, 2);
  for (guint i = 0; i < 2; i++)
    {
      GbEdgeImmersion at = g_array_index (righting->immersions, GbEdgeImmersion, i);
      GbEdgeImmersion other = g_array_index (righting->immersions, GbEdgeImmersion, 1 - i);

      assert_near (at.starboard, other.port, 1e-6);
      assert_near (at.bow, other.bow, 1e-6);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/righting/wall-sided", test_wall_sided);
  g_test_add_func ("/righting/filling", test_filling);
  g_test_add_func ("/righting/never-filling", test_never_filling);
  g_test_add_func ("/righting/box-of-the-handbook", test_box_of_the_handbook);
  g_test_add_func ("/righting/symmetries", test_symmetries);
  g_test_add_func ("/righting/unknown-levers", test_unknown_levers);
  g_test_add_func ("/righting/far-point", test_far_point);
  g_test_add_func ("/righting/area-is-work", test_area_is_work);
  g_test_add_func ("/righting/area-by-hand", test_area_by_hand);
  g_test_add_func ("/righting/loll", test_loll);
  g_test_add_func ("/righting/steady-moment", test_steady_moment);
  g_test_add_func ("/righting/free-surface", test_free_surface);
  g_test_add_func ("/righting/pull", test_pull);
  g_test_add_func ("/righting/list", test_list);
  g_test_add_func ("/righting/immersions", test_immersions);
  g_test_add_func ("/righting/cancel-and-nothing", test_cancel_and_nothing);
  g_test_add_func ("/righting/two-hulls", test_two_hulls);
  return g_test_run ();
}
