/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Every unit that an entry may carry, against the UDUNITS-2 library of Unidata and the printed factors of NIST SP 811 (2008), appendix
 * B.8. */

#include "boat/quantity.h"
#include "boat/units.h"

#include <math.h>
#include <udunits2.h>

static ut_system *unit_system;

/* What @value of the unit @from is in @to, by UDUNITS. */
static double
reference (const char *from, const char *to, double value)
{
  ut_unit *u = ut_parse (unit_system, from, UT_ASCII);
  ut_unit *v = ut_parse (unit_system, to, UT_ASCII);
  cv_converter *converter;
  double result;

  if (u == NULL || v == NULL)
    g_error ("UDUNITS does not know %s or %s", from, to);
  converter = ut_get_converter (u, v);
  g_assert_nonnull (converter);
  result = cv_convert_double (converter, value);
  cv_free (converter);
  ut_free (u);
  ut_free (v);
  return result;
}

static void
assert_near (const char *what, double got, double expected, double tolerance)
{
  if (!(fabs (got - expected) <= tolerance * MAX (1e-30, fabs (expected))))
    g_error ("%s: got %.17g, expected %.17g, difference %g", what, got, expected, got - expected);
}

/* First names in the table, and the same in UDUNITS, which has some to seven figures only, or not at all. By definition the gallon of the
 * United States is 231 cubic inches, and 4 quarts, 8 pints or 128 fluid ounces; the imperial one is 4 quarts, 8 pints or 160 fluid
 * ounces; 16 ounces make a pound, 14 pounds a stone. */
static const struct
{
  const char *name, *reference;
} counterparts[] = {
  { "mm", "millimeter" },
  { "cm", "centimeter" },
  { "m", "meter" },
  { "µm", "micrometer" },
  { "in", "inch" },
  { "ft", "foot" },
  { "yd", "yard" },
  { "l", "liter" },
  { "ml", "milliliter" },
  { "cc", "centimeter^3" },
  { "gal", "231 inch^3" },
  { "qt", "57.75 inch^3" },
  { "pt", "28.875 inch^3" },
  { "fl oz", "1.8046875 inch^3" },
  { "imp gal", "Canadian_liquid_gallon" },
  { "imp qt", "0.25 Canadian_liquid_gallon" },
  { "imp pt", "0.125 Canadian_liquid_gallon" },
  { "imp fl oz", "0.00625 Canadian_liquid_gallon" },
  { "kg", "kilogram" },
  { "g", "gram" },
  { "t", "metric_ton" },
  { "lb", "avoirdupois_pound" },
  { "oz", "0.0625 avoirdupois_pound" },
  { "st", "14 avoirdupois_pound" },
  { "deg", "arc_degree" },
  { "rad", "radian" },
  { "°C", "degree_C" },
  { "°F", "degree_F" },
  { "%", "percent" },
  { "‰", "0.001" },
};

static const char *
counterpart (const char *name)
{
  for (gsize i = 0; i < G_N_ELEMENTS (counterparts); i++)
    if (g_str_equal (counterparts[i].name, name))
      return counterparts[i].reference;
  g_error ("no counterpart for %s", name);
}

static const char *
si_unit (const GbUnit *unit)
{
  if (unit->powers.temperature != 0)
    return "degree_C";
  if (unit->powers.length == 3)
    return "meter^3";
  return unit->powers.length == 1 ? "meter" : unit->powers.mass == 1 ? "kilogram" : unit->powers.angle == 1 ? "radian" : "1";
}

static void
test_every_unit (void)
{
  for (const GbUnit *unit = gb_units_all (); unit->names[0] != NULL; unit++)
    for (const char *const *name = unit->names; *name != NULL; name++)
      {
        GbDimension dim = gb_powers_dimension (unit->powers);
        g_autofree char *text = g_strdup_printf ("7.25 %s", *name);
        g_autoptr (GError) error = NULL;
        double value = NAN;

        if (!gb_quantity_parse (text, dim, GB_UNITS_METRIC, &value, &error))
          g_error ("%s: %s", text, error->message);
        assert_near (text, value, reference (counterpart (unit->names[0]), si_unit (unit), 7.25), 1e-14);
      }
}

static void
test_temperatures (void)
{
  static const double fahrenheit[] = { -40, -4, 0, 32, 59, 68, 212 };

  for (gsize i = 0; i < G_N_ELEMENTS (fahrenheit); i++)
    {
      g_autofree char *text = g_strdup_printf ("%g °F", fahrenheit[i]);
      double value = NAN;

      g_assert_true (gb_quantity_parse (text, GB_DIM_TEMPERATURE, GB_UNITS_METRIC, &value, NULL));
      g_assert_cmpfloat_with_epsilon (value, reference ("degree_F", "degree_C", fahrenheit[i]), 1e-12);
    }
}

/* The units that are shown, in which a bare number is taken. */
static void
test_shown_units (void)
{
  static const struct
  {
    GbDimension dim;
    GbUnits units;
    const char *shown, *si;
  } cases[] = {
    { GB_DIM_LENGTH, GB_UNITS_METRIC, "millimeter", "meter" },
    { GB_DIM_LENGTH, GB_UNITS_FEET, "inch", "meter" },
    { GB_DIM_AREA, GB_UNITS_METRIC, "meter^2", "meter^2" },
    { GB_DIM_AREA, GB_UNITS_FEET, "foot^2", "meter^2" },
    { GB_DIM_VOLUME, GB_UNITS_METRIC, "liter", "meter^3" },
    { GB_DIM_VOLUME, GB_UNITS_FEET, "231 inch^3", "meter^3" },
    { GB_DIM_MASS, GB_UNITS_METRIC, "kilogram", "kilogram" },
    { GB_DIM_MASS, GB_UNITS_FEET, "avoirdupois_pound", "kilogram" },
    { GB_DIM_DENSITY, GB_UNITS_METRIC, "kilogram/meter^3", "kilogram/meter^3" },
    { GB_DIM_DENSITY, GB_UNITS_FEET, "avoirdupois_pound/foot^3", "kilogram/meter^3" },
    { GB_DIM_AREAL, GB_UNITS_METRIC, "gram/meter^2", "kilogram/meter^2" },
    { GB_DIM_AREAL, GB_UNITS_FEET, "0.0625 avoirdupois_pound/yard^2", "kilogram/meter^2" },
    { GB_DIM_LINEAR, GB_UNITS_METRIC, "gram/meter", "kilogram/meter" },
    { GB_DIM_LINEAR, GB_UNITS_FEET, "avoirdupois_pound/foot", "kilogram/meter" },
    { GB_DIM_COVERAGE, GB_UNITS_METRIC, "meter^2/liter", "meter^-1" },
    { GB_DIM_COVERAGE, GB_UNITS_FEET, "foot^2/(231 inch^3)", "meter^-1" },
    { GB_DIM_ANGLE, GB_UNITS_METRIC, "arc_degree", "radian" },
    { GB_DIM_RATIO, GB_UNITS_FEET, "percent", "1" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double expected = reference (cases[i].shown, cases[i].si, 1);
      g_autofree char *text = g_strdup_printf ("1 %s", gb_quantity_unit (cases[i].dim, cases[i].units));
      double value = NAN;

      assert_near (cases[i].shown, gb_quantity_factor (cases[i].dim, cases[i].units), expected, 1e-14);
      g_assert_true (gb_quantity_parse ("1", cases[i].dim, cases[i].units, &value, NULL));
      assert_near (cases[i].shown, value, expected, 1e-14);
      g_assert_true (gb_quantity_parse (text, cases[i].dim, GB_UNITS_METRIC, &value, NULL));
      assert_near (text, value, expected, 1e-14);
    }
}

/* As printed there: seven figures, fewer where a factor is exact. */
static void
test_nist_sp_811 (void)
{
  static const struct
  {
    const char *entry;
    GbDimension dim;
    double si;
  } cases[] = {
    { "1 in", GB_DIM_LENGTH, 2.54e-2 },
    { "1 ft", GB_DIM_LENGTH, 3.048e-1 },
    { "1 yd", GB_DIM_LENGTH, 9.144e-1 },
    { "1 micron", GB_DIM_LENGTH, 1.0e-6 },
    { "1 sq in", GB_DIM_AREA, 6.4516e-4 },
    { "1 sq ft", GB_DIM_AREA, 9.290304e-2 },
    { "1 sq yd", GB_DIM_AREA, 8.361274e-1 },
    { "1 cu in", GB_DIM_VOLUME, 1.638706e-5 },
    { "1 cu ft", GB_DIM_VOLUME, 2.831685e-2 },
    { "1 US gal", GB_DIM_VOLUME, 3.785412e-3 },
    { "1 imp gal", GB_DIM_VOLUME, 4.54609e-3 },
    { "1 US pint", GB_DIM_VOLUME, 4.731765e-4 },
    { "1 US quart", GB_DIM_VOLUME, 9.463529e-4 },
    { "1 US fl oz", GB_DIM_VOLUME, 2.957353e-5 },
    { "1 imp fl oz", GB_DIM_VOLUME, 2.841306e-5 },
    { "1 lb", GB_DIM_MASS, 4.535924e-1 },
    { "1 oz", GB_DIM_MASS, 2.834952e-2 },
    { "1 lb/ft3", GB_DIM_DENSITY, 1.601846e1 },
    { "1 lb/in3", GB_DIM_DENSITY, 2.767990e4 },
    { "1 lb/ft2", GB_DIM_AREAL, 4.882428 },
    { "1 oz/ft2", GB_DIM_AREAL, 3.051517e-1 },
    { "1 oz/yd2", GB_DIM_AREAL, 3.390575e-2 },
    { "1 lb/ft", GB_DIM_LINEAR, 1.488164 },
    { "1 deg", GB_DIM_ANGLE, 1.745329e-2 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double value = NAN;

      g_assert_true (gb_quantity_parse (cases[i].entry, cases[i].dim, GB_UNITS_METRIC, &value, NULL));
      assert_near (cases[i].entry, value, cases[i].si, 4e-7);
    }
}

int
main (int argc, char *argv[])
{
  int failed;

  g_test_init (&argc, &argv, NULL);
  ut_set_error_message_handler (ut_ignore);
  unit_system = ut_read_xml (NULL);
  g_assert_nonnull (unit_system);
  g_test_add_func ("/published/units/every-unit", test_every_unit);
  g_test_add_func ("/published/units/temperatures", test_temperatures);
  g_test_add_func ("/published/units/shown-units", test_shown_units);
  g_test_add_func ("/published/units/nist-sp-811", test_nist_sp_811);
  failed = g_test_run ();
  ut_free_system (unit_system);
  return failed;
}
