/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Volumes, waterplanes and centres against worked examples, closed forms, and GSL's numerical integration.
 *
 * DB: Derrett and Barrass, Ship Stability for Masters and Mates, 5th edition (1999), by printed page. Their
 * sea water is 1.025 t/m3. */

#include "../engine/hull-fixture.h"

#include "engine/flotation.h"

#include <gsl/gsl_integration.h>

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

static void
assert_share (double value, double expected, double share)
{
  assert_near (value, expected, fabs (expected) * share);
}

/* Simpson's first rule stands for parabolas through three ordinates each: this is that curve. */
static double
simpson_curve (const double *ordinates, guint n_intervals, double t)
{
  guint i = MIN ((guint) (t / 2), n_intervals / 2 - 1) * 2;
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
      double y = fmax (simpson_curve (half, n_intervals, n_intervals * (double) i / n), 0);

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

/* Wigley's hull in its own proportions: L 10, B 1, T 0.625 m. */
#define L 10.0
#define B 1.0
#define T 0.625

static double
wigley (double x, double z)
{
  double along = 2 * x / L - 1, down = z / T;

  return B / 2 * (1 - along * along) * (1 - down * down);
}

static void
find_wigley (GbHullSet *hulls, guint n_x, guint n_z)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();

  add_analytic_hull (boat, L, T, n_x, n_z, wigley);
  find_hulls (hulls, boat);
}

/* The ruled hull holds what the trapezium rule gives: of the lengthwise factor 2/3 it finds 2/3 (1 - 1/n^2),
 * of the factor over the draught 2/3 (1 - 1/(4 n^2)); for n = 8 these are 0.65625 and 0.6640625. */
static void
test_wigley_is_the_trapezium_rule (void)
{
  static const guint counts[][2] = { { 2, 1 }, { 4, 3 }, { 8, 8 }, { 16, 5 } };

  for (guint i = 0; i < G_N_ELEMENTS (counts); i++)
    {
      g_auto (GbHullSet) hulls = { NULL, 0 };
      double n = counts[i][0], m = counts[i][1];
      GbCut cut;

      find_wigley (&hulls, counts[i][0], counts[i][1]);
      cut = gb_mesh_cut (only_mesh (&hulls), up, 0);
      assert_share (cut.volume, L * B * T * 4 / 9 * (1 - 1 / (n * n)) * (1 - 1 / (4 * m * m)), 1e-14);
      assert_share (cut.waterplane, L * B * 2 / 3 * (1 - 1 / (n * n)), 1e-14);
    }
}

static void
test_wigley_converges (void)
{
  g_auto (GbHullSet) hulls = { NULL, 0 };
  GbCut cut;

  find_wigley (&hulls, 80, 40);
  cut = gb_mesh_cut (only_mesh (&hulls), up, 0);
  /* Standard in texts of ship hydrodynamics: volume 4/9 LBT, waterplane 2/3 LB, KB 5/8 T, BM 3/35 B2/T,
   * longitudinal BM 3/40 L2/T. */
  assert_share (cut.volume, 2.77778, 5e-4);
  assert_share (cut.waterplane, 6.66667, 5e-4);
  assert_near (cut.centre.x, L / 2, 1e-12);
  assert_near (cut.centre.y, 0, 1e-12);
  assert_share (cut.centre.z + T, 0.390625, 5e-4);
  assert_share (cut.plane_ixx / cut.volume, 0.137143, 1e-3);
  assert_share (cut.plane_iyy / cut.volume, 12.0, 1e-3);
}

static void
test_triangular_prism (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_auto (GbHullSet) hulls = { NULL, 0 };
  GbHull *hull = add_hull (boat, GB_HULL_STATIONS);
  GbCut cut;

  /* Apex down, breadth 2 at draught 1.5: volume LBd/2, KB 2d/3, BM B2/(6d). */
  ADD_STATION (boat, hull, 0, 0, 0, 2, 3);
  ADD_STATION (boat, hull, 7, 0, 0, 2, 3);
  find_hulls (&hulls, boat);
  cut = gb_mesh_cut (only_mesh (&hulls), up, 1.5);
  assert_share (cut.volume, 7 * 2 * 1.5 / 2, 1e-14);
  assert_share (cut.centre.z, 1, 1e-14);
  assert_share (cut.plane_ixx / cut.volume, 4 / (6 * 1.5), 1e-14);
}

/* A floating pipe: its metacentre is its axis, at any heel. */
static void
test_cylinder (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_auto (GbHullSet) hulls = { NULL, 0 };
  GbHull *pipe = add_hull (boat, GB_HULL_PIPE);
  const double r = 0.3;
  GbCut cut;

  pipe->length = 4;
  pipe->diameter = 2 * r;
  find_hulls (&hulls, boat);
  cut = gb_mesh_cut (only_mesh (&hulls), up, r);
  /* Half under: volume L pi r2/2, KB r - 4r/(3 pi), BM 4r/(3 pi). */
  assert_share (cut.volume, 4 * G_PI * r * r / 2, 1e-12);
  assert_share (cut.centre.z, r - 4 * r / (3 * G_PI), 2e-4);
  assert_share (cut.plane_ixx / cut.volume, 4 * r / (3 * G_PI), 2e-3);
  for (int degrees = -80; degrees <= 80; degrees += 16)
    {
      double a = degrees * G_PI / 180, below = 0.12;
      GbVec3 n = { 0, sin (a), cos (a) };

      cut = gb_mesh_cut (only_mesh (&hulls), n, r * cos (a) - below);
      /* The centre lies straight under the axis, as the water sees it. */
      assert_near (cut.centre.y * cos (a) - (cut.centre.z - r) * sin (a), 0, 1e-4 * r);
      assert_share (cut.volume, 4 * (r * r * acos (below / r) - below * sqrt (r * r - below * below)), 1e-3);
    }
}

/* Bodies of revolution about an upright axis, at x = 1, y = 0, apex down at z = -1. */
static double
round_half_breadth (double radius, double x)
{
  double square = radius * radius - (x - 1) * (x - 1);

  return square > 0 ? sqrt (square) : 0;
}

static double
cone (double x, double z)
{
  return round_half_breadth (1 + z, x);
}

static double
paraboloid (double x, double z)
{
  return round_half_breadth (sqrt (fmax (1 + z, 0)), x);
}

static double
sphere (double x, double z)
{
  return round_half_breadth (sqrt (fmax (1 - z * z, 0)), x);
}

static void
test_bodies_of_revolution (void)
{
  /* At draught d and radius R there: cone, volume pi R2 d/3, KB 3d/4, BM 3 R2/(4 d); paraboloid, pi R2 d/2,
   * 2d/3, R2/(2 d); half a sphere, 2/3 pi R3, 5/8 R, and KM = R. Here d = R = 1. */
  static const struct
  {
    double (*half_breadth) (double x, double z);
    double volume, kb, bm;
  } bodies[] = {
    { cone, G_PI / 3, 0.75, 0.75 },
    { paraboloid, G_PI / 2, 2.0 / 3, 0.5 },
    { sphere, G_PI * 2 / 3, 0.625, 0.375 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (bodies); i++)
    {
      g_autoptr (GbBoat) boat = gb_boat_new ();
      g_auto (GbHullSet) hulls = { NULL, 0 };
      GbCut cut;

      add_analytic_hull (boat, 2, 1, 100, 100, bodies[i].half_breadth);
      find_hulls (&hulls, boat);
      cut = gb_mesh_cut (only_mesh (&hulls), up, 0);
      assert_share (cut.volume, bodies[i].volume, 2e-3);
      assert_share (cut.centre.z + 1, bodies[i].kb, 2e-3);
      assert_share (cut.plane_ixx / cut.volume, bodies[i].bm, 4e-3);
    }
}

/* A fuller, unsymmetrical hull, 6 m long and 0.5 m deep. */
static double
canoe (double x, double z)
{
  return (0.35 + 0.05 * sin (x)) * sin (G_PI * x / 6) * (1 - exp (-4 * (z + 0.5)));
}

static double
canoe_at_z (double z, void *x)
{
  return canoe (*(double *) x, z);
}

static double
canoe_section (double x, void *unused)
{
  gsl_function f = { canoe_at_z, &x };
  double area, error;
  gsize n;

  gsl_integration_qng (&f, -0.5, 0, 0, 1e-10, &area, &error, &n);
  return 2 * area;
}

static double
canoe_section_moment (double x, void *unused)
{
  return x * canoe_section (x, NULL);
}

static double
integrate_along (double (*function) (double x, void *data))
{
  gsl_integration_workspace *space = gsl_integration_workspace_alloc (1000);
  gsl_function f = { function, NULL };
  double sum, error;

  gsl_integration_qag (&f, 0, 6, 0, 1e-9, 1000, GSL_INTEG_GAUSS31, space, &sum, &error);
  gsl_integration_workspace_free (space);
  return sum;
}

/* The error of the ruled hull falls with the square of the spacing, so two hulls tell the limit; GSL
 * integrates the formula. */
static void
test_numerical_integration (void)
{
  double volume[2], moment[2];
  double expected = integrate_along (canoe_section), expected_moment = integrate_along (canoe_section_moment);

  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (GbBoat) boat = gb_boat_new ();
      g_auto (GbHullSet) hulls = { NULL, 0 };
      GbCut cut;

      add_analytic_hull (boat, 6, 0.5, 40 << i, 20 << i, canoe);
      find_hulls (&hulls, boat);
      cut = gb_mesh_whole (only_mesh (&hulls));
      volume[i] = cut.volume;
      moment[i] = cut.volume * cut.centre.x;
    }
  assert_share (volume[0], expected, 5e-3);
  assert_share (volume[1], expected, 1.3e-3);
  assert_share ((4 * volume[1] - volume[0]) / 3, expected, 1e-6);
  assert_share ((4 * moment[1] - moment[0]) / 3, expected_moment, 1e-6);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/hydrostatics/waterplanes-by-simpson", test_waterplanes_by_simpson);
  g_test_add_func ("/hydrostatics/volume-by-section-areas", test_volume_by_section_areas);
  g_test_add_func ("/hydrostatics/volume-by-waterplanes", test_volume_by_waterplanes);
  g_test_add_func ("/hydrostatics/box-ships", test_box_ships);
  g_test_add_func ("/hydrostatics/bilged-box-ships", test_bilged_box_ships);
  g_test_add_func ("/hydrostatics/wigley-is-the-trapezium-rule", test_wigley_is_the_trapezium_rule);
  g_test_add_func ("/hydrostatics/wigley-converges", test_wigley_converges);
  g_test_add_func ("/hydrostatics/triangular-prism", test_triangular_prism);
  g_test_add_func ("/hydrostatics/cylinder", test_cylinder);
  g_test_add_func ("/hydrostatics/bodies-of-revolution", test_bodies_of_revolution);
  g_test_add_func ("/hydrostatics/numerical-integration", test_numerical_integration);
  return g_test_run ();
}
