/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Density of water at the surface against the check values of EOS-80. */

#include "engine/water.h"

#include <math.h>

static void
test_check_values (void)
{
  /* UNESCO Technical Papers in Marine Science 44 (Fofonoff and Millard 1983), check values of the
   * international equation of state at one atmosphere; from memory, and recomputed from the coefficients
   * printed there. */
  static const struct
  {
    double salinity, temperature, density;
  } checks[] = {
    { 0, 5, 999.96675 },
    { 0, 25, 997.04796 },
    { 35, 5, 1027.67547 },
    { 35, 25, 1023.34306 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (checks); i++)
    g_assert_cmpfloat_with_epsilon (gb_water_density_eos80 (checks[i].salinity, checks[i].temperature), checks[i].density,
                                    5.1e-6);
}

static void
test_handbook_values (void)
{
  /* Fresh water is densest near 4 degrees at 999.975 kg/m3 (CIPM 2001, Tanaka and others, Metrologia 38; from
   * memory): EOS-80's pure water agrees to 0.001. Sea water of salinity 35 at 15 degrees, ITTC 7.5-02-01-03
   * (2011), table 2: 1026.0210 with an absolute salinity of 35.16504 g/kg (from memory); the older equation
   * gives 1025.973, 0.05 less. */
  g_assert_cmpfloat_with_epsilon (gb_water_density_eos80 (0, 4), 999.975, 1e-3);
  g_assert_cmpfloat_with_epsilon (gb_water_density_eos80 (35, 15), 1026.0210, 0.06);
  /* ITTC 7.5-02-01-03 (2011), table 1, fresh water at 15 degrees: 999.1026 (from memory). */
  g_assert_cmpfloat_with_epsilon (gb_water_density_eos80 (0, 15), 999.1026, 2e-3);
}

static void
test_water_of_a_build (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbBuild *build = (GbBuild *) gb_boat_get (boat, GB_RECORD_BUILD, 1);

  build->water = GB_WATER_FRESH;
  build->temperature = 25;
  g_assert_cmpfloat_with_epsilon (gb_build_water_density (build), 997.04796, 5.1e-6);
  build->water = GB_WATER_SALT;
  build->salinity = 35;
  g_assert_cmpfloat_with_epsilon (gb_build_water_density (build), 1023.34306, 5.1e-6);

  /* What is left open is as in a new build: 35 g/kg and 15 degrees. */
  build->salinity = build->temperature = NAN;
  g_assert_cmpfloat (gb_build_water_density (build), ==, gb_water_density_eos80 (35, 15));

  build->water = GB_WATER_GIVEN;
  g_assert_true (isnan (gb_build_water_density (build)));
  build->water_density = 1011;
  g_assert_cmpfloat (gb_build_water_density (build), ==, 1011);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/water/check-values", test_check_values);
  g_test_add_func ("/water/handbook-values", test_handbook_values);
  g_test_add_func ("/water/of-a-build", test_water_of_a_build);
  return g_test_run ();
}
