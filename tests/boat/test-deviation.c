/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Figures with how far they can be trusted. Common practice, no source: a deviation is written to the last place of its figure. */

#include "boat/deviation.h"

#include <math.h>

static void
assert_text (char *take_text, const char *expected)
{
  g_autofree char *text = take_text;

  g_assert_cmpstr (text, ==, expected);
}

static void
assert_with_sd (double value, double sd, GbDimension dim, GbUnits units, const char *expected)
{
  assert_text (gb_quantity_format_with_sd (value, sd, dim, units), expected);
}

static void
test_to_the_last_place_of_the_figure (void)
{
  assert_with_sd (35.585, 0.5042, GB_DIM_MASS, GB_UNITS_METRIC, "35.6 kg ± 0.5");
  assert_with_sd (188.6, 4.25, GB_DIM_MASS, GB_UNITS_METRIC, "189 kg ± 4");
  assert_with_sd (1.1512, 0.0031, GB_DIM_LENGTH, GB_UNITS_METRIC, "1151 mm ± 3.1");
}

static void
test_never_to_nothing (void)
{
  assert_with_sd (188.6, 0.0123, GB_DIM_MASS, GB_UNITS_METRIC, "189 kg ± 0.01");
}

static void
test_small_masses_say_both_units (void)
{
  assert_with_sd (0.05, 0.0021, GB_DIM_MASS, GB_UNITS_METRIC, "50 g ± 2.1 g");
}

static void
test_unknown_and_exact (void)
{
  assert_with_sd (NAN, 1, GB_DIM_MASS, GB_UNITS_METRIC, "–");
  assert_with_sd (12, NAN, GB_DIM_MASS, GB_UNITS_METRIC, "12 kg");
  assert_with_sd (12, 0, GB_DIM_MASS, GB_UNITS_METRIC, "12 kg");
  assert_with_sd (12, INFINITY, GB_DIM_MASS, GB_UNITS_METRIC, "12 kg");
  assert_with_sd (0, 0.5, GB_DIM_MASS, GB_UNITS_METRIC, "0 kg ± 0.5");
}

static void
test_off_and_lengths (void)
{
  assert_text (gb_quantity_format_off (-0.5849, 35.6, GB_DIM_MASS, GB_UNITS_METRIC), "0.6 kg");
  assert_text (gb_length_format (-1e-18, GB_UNITS_METRIC), "0 mm");
  assert_text (gb_length_format (0.36746, GB_UNITS_METRIC), "367 mm");
  assert_text (gb_length_format (0.0042, GB_UNITS_METRIC), "4.2 mm");
  assert_text (gb_length_format (NAN, GB_UNITS_METRIC), "–");
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/deviation/to-the-last-place-of-the-figure", test_to_the_last_place_of_the_figure);
  g_test_add_func ("/deviation/never-to-nothing", test_never_to_nothing);
  g_test_add_func ("/deviation/small-masses-say-both-units", test_small_masses_say_both_units);
  g_test_add_func ("/deviation/unknown-and-exact", test_unknown_and_exact);
  g_test_add_func ("/deviation/off-and-lengths", test_off_and_lengths);
  return g_test_run ();
}
