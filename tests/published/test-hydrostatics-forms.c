/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Hulls by stations with closed forms, and one integrated by GSL. */

#include "../engine/hull-fixture.h"

#include <gsl/gsl_integration.h>

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (GbHullSet, gb_hull_set_clear)

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
  return canoe (*(double *)x, z);
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
  g_test_add_func ("/hydrostatics/forms/wigley-is-the-trapezium-rule", test_wigley_is_the_trapezium_rule);
  g_test_add_func ("/hydrostatics/forms/wigley-converges", test_wigley_converges);
  g_test_add_func ("/hydrostatics/forms/triangular-prism", test_triangular_prism);
  g_test_add_func ("/hydrostatics/forms/cylinder", test_cylinder);
  g_test_add_func ("/hydrostatics/forms/bodies-of-revolution", test_bodies_of_revolution);
  g_test_add_func ("/hydrostatics/forms/numerical-integration", test_numerical_integration);
  return g_test_run ();
}
