/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Volumes, waterplanes and centres against worked examples.
 *
 * DB: Derrett and Barrass, Ship Stability for Masters and Mates, 5th edition (1999), by printed page. Their
 * sea water is 1.025 t/m3. */

#include "../engine/hull-fixture.h"

#include "engine/flotation.h"

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (GbHullSet, gb_hull_set_clear)

#define SEA 1025.0

static const GbVec3 up = { 0, 0, 1 };

static const GbMesh *
only_mesh (const GbHullSet *hulls)
{
  g_assert_cmpuint (hulls->n_hulls, ==, 1);
  if (hulls->hulls[0].trouble != NULL)
    g_error ("%s", hulls->hulls[0].trouble);
  return hulls->hulls[0].mesh;
}

/* Simpson's first rule stands for parabolas through three ordinates each: this is that curve. */
static double
simpson_curve (const double *ordinates, guint n_intervals, double t)
{
  guint i = MIN ((guint)(t / 2), n_intervals / 2 - 1) * 2;
  double s = t - i - 1, a = ordinates[i], b = ordinates[i + 1], c = ordinates[i + 2];

  return b + s * (c - a) / 2 + s * s * (a - 2 * b + c) / 2;
}

/* A hull with upright sides, 1 m deep, over that curve of half breadths. */
static void
find_upright_sides (GbHullSet *hulls, const double *half, guint n_intervals, double length)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbHull *hull = add_hull (boat, GB_HULL_STATIONS);
  guint n = n_intervals * 40;

  for (guint i = 0; i <= n; i++)
    {
      double y = fmax (simpson_curve (half, n_intervals, n_intervals * (double)i / n), 0);

      ADD_STATION (boat, hull, length * i / n, y, 0, y, 1);
    }
  find_hulls (hulls, boat);
}

static void
test_waterplanes_by_simpson (void)
{
  /* DB p. 74: half-ordinates over 120 m; printed: sum 90.5, area 1207 m2, TPC 12.37. */
  static const double db74[] = { 0, 3.7, 5.9, 7.6, 7.5, 4.6, 0.1 };
  /* A marine engineer's exam question: half-ordinates over 80 m; 650.7 m2, computed from the rule. */
  static const double exam[] = { 0.2, 4.0, 5.0, 5.2, 5.0, 4.0, 0.2 };
  /* Teaching slides: y = x/2, x from 0 to 6; sum of products 27, area 9. */
  static const double wedge[] = { 0, 0.5, 1, 1.5, 2, 2.5, 3 };
  g_auto (GbHullSet) hulls = { NULL, 0 };
  GbHydrostatics at;

  find_upright_sides (&hulls, db74, 6, 120);
  at = gb_hydrostatics_at (&hulls, SEA, 0.5);
  assert_near (at.waterplane, 1207, 0.5);
  assert_near (at.per_cm / 1000, 12.37, 0.005);
  find_upright_sides (&hulls, exam, 6, 80);
  assert_near (gb_hydrostatics_at (&hulls, SEA, 0.5).waterplane, 650.7, 0.1);
  find_upright_sides (&hulls, wedge, 6, 6);
  assert_near (gb_hydrostatics_at (&hulls, SEA, 0.5).waterplane, 2 * 9, 1e-12);
}

static void
test_volume_by_section_areas (void)
{
  /* A tutoring page: half section areas 10 m apart; printed volume 2 x 5874 = 11748 m3. The centre, 0.705 m
   * aft of the sixth station, is recomputed by the same rule (the page's own is wrong). */
  static const double areas[] = { 0, 19.4, 45.7, 73.6, 94.4, 104.1, 97.1, 76.4, 48.5, 23.5, 2.8 };
  g_auto (GbHullSet) hulls = { NULL, 0 };
  GbCut whole;

  /* With upright sides 1 m deep the half section's area is the half breadth. */
  find_upright_sides (&hulls, areas, 10, 100);
  whole = gb_mesh_whole (only_mesh (&hulls));
  assert_near (whole.volume, 11748, 3);
  assert_near (fabs (whole.centre.x - 50), 0.705, 0.02);
}

static void
test_volume_by_waterplanes (void)
{
  /* After DB chapter 10 (from memory): waterplanes at 0, 1 ... 6 m draught; sum 8824, volume 2941.3 m3,
   * 3014.9 t. */
  static const double areas[] = { 61, 300, 464, 555, 605.5, 636, 660 };
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_auto (GbHullSet) hulls = { NULL, 0 };
  GbHull *hull = add_hull (boat, GB_HULL_STATIONS);
  const guint n = 240;
  double yz[2 * 241];

  for (guint k = 0; k <= n; k++)
    {
      yz[2 * k + 1] = 6.0 * k / n;
      yz[2 * k] = simpson_curve (areas, 6, yz[2 * k + 1]) / 100;
    }
  add_station (boat, hull, 0, yz, n + 1);
  add_station (boat, hull, 50, yz, n + 1);
  find_hulls (&hulls, boat);
  assert_near (gb_hydrostatics_at (&hulls, SEA, 6).volume, 2941.3, 0.1);
  assert_near (gb_hydrostatics_at (&hulls, SEA, 6).displacement / 1000, 3014.9, 0.1);
}

static void
test_fresh_water_allowance (void)
{
  /* DB p. 79: waterplanes 1 m apart with the sum of products 7918, the load waterplane 660 m2: volume 7918/3
   * = 2639 1/3 m3, 2705.3 t, TPC 6.77, fresh water allowance 99.9 mm (99.97, unrounded). With upright sides
   * of that waterplane and volume she goes down just so far. */
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_auto (GbHullSet) hulls = { NULL, 0 };
  double volume = 7918 / 3.0;
  GbHydrostatics salt, fresh;

  add_block (boat, 66, 10, 6);
  find_hulls (&hulls, boat);
  salt = gb_hydrostatics_at (&hulls, SEA, volume / 660);
  assert_near (salt.displacement / 1000, 2705.3, 0.05);
  assert_near (salt.per_cm / 1000, 6.77, 0.005);
  fresh = gb_hydrostatics_for (&hulls, 1000, salt.displacement);
  assert_near ((fresh.draught - salt.draught) * 1000, 99.9, 0.1);
}

static double
km_of (const GbHullSet *hulls, double z)
{
  double volume = 0, moment = 0, second = 0;

  for (guint i = 0; i < hulls->n_hulls; i++)
    {
      GbCut cut = gb_mesh_cut (hulls->hulls[i].mesh, up, z);

      volume += cut.volume;
      moment += cut.volume * cut.centre.z;
      second += cut.plane_ixx;
    }
  return (moment + second) / volume;
}

static void
find_box (GbHullSet *hulls, double length, double breadth, double depth)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();

  add_block (boat, length, breadth, depth);
  find_hulls (hulls, boat);
}

static void
test_box_ships (void)
{
  g_auto (GbHullSet) hulls = { NULL, 0 };
  GbHydrostatics at;
  double least = INFINITY, at_draught = 0;

  /* A nautical school's page: box 50 x 10 x 8 m, 1640 t in salt water: draught 3.2 m, KB 1.6 m. */
  find_box (&hulls, 50, 10, 8);
  at = gb_hydrostatics_for (&hulls, SEA, 1640e3);
  assert_near (at.draught, 3.2, 1e-9);
  assert_near (at.vcb, 1.6, 1e-9);

  /* DB p. 111: a box 10 m broad has its least KM, 4.08 m, at 4.08 m draught; BM at 3.5 m is 2.38 m, read off
   * a curve. */
  for (double draught = 3; draught < 5; draught += 0.01)
    if (km_of (&hulls, draught) < least)
      {
        least = km_of (&hulls, draught);
        at_draught = draught;
      }
  assert_near (least, 4.08, 0.005);
  assert_near (at_draught, 4.08, 0.0101);
  assert_near (km_of (&hulls, 3.5) - 1.75, 2.38, 0.005);

  /* DB p. 206: box 150 x 24 m at 5 m: KB 2.5, BM 9.6, KM 12.1 m. */
  find_box (&hulls, 150, 24, 10);
  assert_near (gb_hydrostatics_at (&hulls, SEA, 5).vcb, 2.5, 1e-12);
  assert_near (km_of (&hulls, 5), 12.1, 1e-9);

  /* DB chapter 3 (from memory): box 105 x 30 x 20 m, 19500 t in fresh water: reserve buoyancy 43500 m3. */
  find_box (&hulls, 105, 30, 20);
  at = gb_hydrostatics_for (&hulls, 1000, 19500e3);
  assert_near (gb_mesh_whole (only_mesh (&hulls)).volume - at.volume, 43500, 1e-6);
}

/* An empty compartment amidships is bilged: what is left floats as two boxes. */
static void
find_bilged_box (GbHullSet *hulls, double length, double breadth, double depth, double lost)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  double part = (length - lost) / 2;

  add_block (boat, part, breadth, depth);
  add_block (boat, part, breadth, depth)->x = length - part;
  find_hulls (hulls, boat);
}

static void
test_bilged_box_ships (void)
{
  g_auto (GbHullSet) hulls = { NULL, 0 };
  GbHydrostatics at;

  /* DB p. 206: box 150 x 24 m at 5 m, 20 m bilged: the draught grows by 2400/(130 x 24) = 0.77 to 5.77 m. */
  find_bilged_box (&hulls, 150, 24, 10, 20);
  at = gb_hydrostatics_for (&hulls, SEA, 150 * 24 * 5 * SEA);
  assert_near (at.draught, 5.77, 0.005);
  assert_near (at.lcb, 75, 1e-9);

  /* A DB exercise: box 40 x 6 m at 2 m, 10 m bilged: draught 2.667, KB 1.333, BM 1.125 m. */
  find_bilged_box (&hulls, 40, 6, 4, 10);
  at = gb_hydrostatics_for (&hulls, SEA, 40 * 6 * 2 * SEA);
  assert_near (at.draught, 2.667, 0.0005);
  assert_near (at.vcb, 1.333, 0.0005);
  assert_near (km_of (&hulls, at.z) - at.vcb, 1.125, 0.0005);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/hydrostatics/waterplanes-by-simpson", test_waterplanes_by_simpson);
  g_test_add_func ("/hydrostatics/volume-by-section-areas", test_volume_by_section_areas);
  g_test_add_func ("/hydrostatics/volume-by-waterplanes", test_volume_by_waterplanes);
  g_test_add_func ("/hydrostatics/fresh-water-allowance", test_fresh_water_allowance);
  g_test_add_func ("/hydrostatics/box-ships", test_box_ships);
  g_test_add_func ("/hydrostatics/bilged-box-ships", test_bilged_box_ships);
  return g_test_run ();
}
