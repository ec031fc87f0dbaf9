/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Entries as builders type them, what is said about those that mean nothing, and display. */

#include "boat/quantity.h"
#include "boat/units.h"

#include <locale.h>
#include <math.h>
#include <string.h>

#define METRIC GB_UNITS_METRIC
#define FEET GB_UNITS_FEET

static void
assert_near (const char *text, double got, double expected)
{
  double difference = fabs (got - expected);

  if (!(difference <= 1e-12 * fabs (expected)))
    g_error ("%s: got %.17g, expected %.17g, difference %g", text, got, expected, difference);
}

static void
test_entries (void)
{
  /* The inch is 25.4 mm, the pound 0.45359237 kg, the US gallon 231 cubic inches: exact by definition (NIST SP 811, B.8). */
  static const struct
  {
    const char *text;
    GbDimension dim;
    GbUnits units;
    double value;
  } cases[] = {
    { "38 mm", GB_DIM_LENGTH, METRIC, 0.038 },
    { "38 mm", GB_DIM_LENGTH, FEET, 0.038 },
    { "38", GB_DIM_LENGTH, METRIC, 0.038 },
    { "38", GB_DIM_LENGTH, FEET, 0.9652 },
    { "1 1/2\"", GB_DIM_LENGTH, METRIC, 0.0381 },
    { "1/4 in", GB_DIM_LENGTH, METRIC, 0.00635 },
    { "3/8", GB_DIM_LENGTH, FEET, 0.009525 },
    { "5' 6 3/8\"", GB_DIM_LENGTH, METRIC, 66.375 * 0.0254 },
    { "5'6\"", GB_DIM_LENGTH, METRIC, 66 * 0.0254 },
    { "5' 6", GB_DIM_LENGTH, METRIC, 66 * 0.0254 },
    { "-5' 6\"", GB_DIM_LENGTH, METRIC, -66 * 0.0254 },
    { "5 ft 6 in", GB_DIM_LENGTH, METRIC, 66 * 0.0254 },
    { "5ft6in", GB_DIM_LENGTH, METRIC, 66 * 0.0254 },
    { "2 yd 1 ft 3 in", GB_DIM_LENGTH, METRIC, 87 * 0.0254 },
    { "5 FEET 6 Inches", GB_DIM_LENGTH, METRIC, 66 * 0.0254 },
    { "5 ft. 6 in.", GB_DIM_LENGTH, METRIC, 66 * 0.0254 },
    { "6''", GB_DIM_LENGTH, METRIC, 6 * 0.0254 },
    { "1½\"", GB_DIM_LENGTH, METRIC, 0.0381 },
    { "¾ in", GB_DIM_LENGTH, METRIC, 0.01905 },
    { "5′ 6⅛″", GB_DIM_LENGTH, METRIC, 66.125 * 0.0254 },
    { "1⁄2″", GB_DIM_LENGTH, METRIC, 0.0127 },
    { "2 m 5 cm", GB_DIM_LENGTH, METRIC, 2.05 },
    { "1,5 m", GB_DIM_LENGTH, METRIC, 1.5 },
    { "1.5 m", GB_DIM_LENGTH, METRIC, 1.5 },
    { ".5 m", GB_DIM_LENGTH, METRIC, 0.5 },
    { "1 220 mm", GB_DIM_LENGTH, METRIC, 1.22 },
    { "1\302\240220 mm", GB_DIM_LENGTH, METRIC, 1.22 },
    { "300 µm", GB_DIM_LENGTH, METRIC, 0.0003 },
    { "300 μm", GB_DIM_LENGTH, METRIC, 0.0003 },
    { "2e3", GB_DIM_LENGTH, METRIC, 2 },
    { " \t7\n", GB_DIM_LENGTH, METRIC, 0.007 },
    { "−3 mm", GB_DIM_LENGTH, METRIC, -0.003 },
    { "2*1220-45", GB_DIM_LENGTH, METRIC, 2.395 },
    { "2×1220−45", GB_DIM_LENGTH, METRIC, 2.395 },
    { "(1220-45)/2", GB_DIM_LENGTH, METRIC, 0.5875 },
    { "(1220-45)/2 mm", GB_DIM_LENGTH, FEET, 0.5875 },
    { "(1220-45) mm/2", GB_DIM_LENGTH, FEET, 0.5875 },
    { "1220 mm - 45", GB_DIM_LENGTH, METRIC, 1.175 },
    { "4' - 45 mm", GB_DIM_LENGTH, METRIC, 1.2192 - 0.045 },
    { "1 m + 2", GB_DIM_LENGTH, FEET, 1.0508 },
    { "2 m/8", GB_DIM_LENGTH, METRIC, 0.25 },
    { "48 m/6/2", GB_DIM_LENGTH, METRIC, 4 },
    { "24/6/2", GB_DIM_LENGTH, METRIC, 0.002 },
    { "2+3*4", GB_DIM_LENGTH, METRIC, 0.014 },
    { "-(2+3)*-4", GB_DIM_LENGTH, METRIC, 0.02 },
    { "1 1/2 - 1/4", GB_DIM_LENGTH, FEET, 1.25 * 0.0254 },
    { "1220 * 50 %", GB_DIM_LENGTH, METRIC, 0.61 },
    { "0.71 m2", GB_DIM_AREA, METRIC, 0.71 },
    { "0,71 m²", GB_DIM_AREA, METRIC, 0.71 },
    { "710 cm^2", GB_DIM_AREA, METRIC, 0.071 },
    { "1.2*0.6", GB_DIM_AREA, METRIC, 0.72 },
    { "1220 mm * 610 mm", GB_DIM_AREA, METRIC, 0.7442 },
    { "2 sq. ft.", GB_DIM_AREA, METRIC, 0.18580608 },
    { "2 sq ft", GB_DIM_AREA, METRIC, 0.18580608 },
    { "2 ft²", GB_DIM_AREA, METRIC, 0.18580608 },
    { "0.75 l", GB_DIM_VOLUME, METRIC, 0.00075 },
    { "750 ml", GB_DIM_VOLUME, METRIC, 0.00075 },
    { "0.75", GB_DIM_VOLUME, METRIC, 0.00075 },
    { "1 US gal", GB_DIM_VOLUME, METRIC, 0.003785411784 },
    { "1", GB_DIM_VOLUME, FEET, 0.003785411784 },
    { "1 imp gal", GB_DIM_VOLUME, METRIC, 0.00454609 },
    { "4 US quarts", GB_DIM_VOLUME, METRIC, 0.003785411784 },
    { "2 cu ft", GB_DIM_VOLUME, METRIC, 2 * 0.028316846592 },
    { "1 m * 1 m * 2 mm", GB_DIM_VOLUME, METRIC, 0.002 },
    { "12 lb 4 oz", GB_DIM_MASS, METRIC, 12.25 * 0.45359237 },
    { "12 lb 4", GB_DIM_MASS, METRIC, 12.25 * 0.45359237 },
    { "11 st 4", GB_DIM_MASS, METRIC, 158 * 0.45359237 },
    { "350 g", GB_DIM_MASS, METRIC, 0.35 },
    { "0.2 t", GB_DIM_MASS, METRIC, 200 },
    { "2", GB_DIM_MASS, FEET, 2 * 0.45359237 },
    { "450", GB_DIM_DENSITY, METRIC, 450 },
    { "0.45 g/cm3", GB_DIM_DENSITY, METRIC, 450 },
    { "28 lb/ft3", GB_DIM_DENSITY, METRIC, 28 * 0.45359237 / 0.028316846592 },
    { "28", GB_DIM_DENSITY, FEET, 28 * 0.45359237 / 0.028316846592 },
    { "9 kg / 0.02 m3", GB_DIM_DENSITY, METRIC, 450 },
    { "200", GB_DIM_AREAL, METRIC, 0.2 },
    { "0.2 kg/m²", GB_DIM_AREAL, METRIC, 0.2 },
    { "6 oz/yd2", GB_DIM_AREAL, METRIC, 6 * 0.028349523125 / 0.83612736 },
    { "1 oz/ft2", GB_DIM_AREAL, METRIC, 0.028349523125 / 0.09290304 },
    { "1 lb/ft2", GB_DIM_AREAL, METRIC, 0.45359237 / 0.09290304 },
    { "85 g/m", GB_DIM_LINEAR, METRIC, 0.085 },
    { "0.06 lb/ft", GB_DIM_LINEAR, METRIC, 0.06 * 0.45359237 / 0.3048 },
    { "12 m2/l", GB_DIM_COVERAGE, METRIC, 12000 },
    { "12 m²/l", GB_DIM_COVERAGE, FEET, 12000 },
    { "12", GB_DIM_COVERAGE, METRIC, 12000 },
    { "400 ft2/gal", GB_DIM_COVERAGE, METRIC, 400 * 0.09290304 / 0.003785411784 },
    { "28 kg m", GB_DIM_MOMENT, METRIC, 28 },
    { "28 kg*m", GB_DIM_MOMENT, FEET, 28 },
    { "28 kg·m", GB_DIM_MOMENT, METRIC, 28 },
    { "28 kg.m", GB_DIM_MOMENT, METRIC, 28 },
    { "28", GB_DIM_MOMENT, METRIC, 28 },
    { "-3.5 m kg", GB_DIM_MOMENT, METRIC, -3.5 },
    { "20 kg * 2 m", GB_DIM_MOMENT, METRIC, 40 },
    { "2 m × 20 kg", GB_DIM_MOMENT, METRIC, 40 },
    { "(20 + 8) kg m", GB_DIM_MOMENT, METRIC, 28 },
    { "3 * 28 kg m", GB_DIM_MOMENT, METRIC, 84 },
    { "1/2 kg m", GB_DIM_MOMENT, METRIC, 0.5 },
    { "20 kg m + 8", GB_DIM_MOMENT, METRIC, 28 },
    { "56 kg m / 2", GB_DIM_MOMENT, METRIC, 28 },
    { "200 lb ft", GB_DIM_MOMENT, METRIC, 200 * 0.45359237 * 0.3048 },
    { "200 ft lb", GB_DIM_MOMENT, METRIC, 200 * 0.45359237 * 0.3048 },
    { "200 lb·ft", GB_DIM_MOMENT, METRIC, 200 * 0.45359237 * 0.3048 },
    { "200", GB_DIM_MOMENT, FEET, 200 * 0.45359237 * 0.3048 },
    { "12 lb 4 oz * 6 in", GB_DIM_MOMENT, METRIC, 12.25 * 0.45359237 * 0.1524 },
    { "12 %", GB_DIM_RATIO, METRIC, 0.12 },
    { "12", GB_DIM_RATIO, FEET, 0.12 },
    { "2*6 %", GB_DIM_RATIO, METRIC, 0.12 },
    { "1 kg/2 kg", GB_DIM_RATIO, METRIC, 0.5 },
    { "90 deg", GB_DIM_ANGLE, METRIC, G_PI / 2 },
    { "90°", GB_DIM_ANGLE, METRIC, G_PI / 2 },
    { "90", GB_DIM_ANGLE, FEET, G_PI / 2 },
    { "0.5 rad", GB_DIM_ANGLE, METRIC, 0.5 },
    { "59 F", GB_DIM_TEMPERATURE, METRIC, 15 },
    { "59", GB_DIM_TEMPERATURE, FEET, 15 },
    { "-4 °F", GB_DIM_TEMPERATURE, METRIC, -20 },
    { "15 °C", GB_DIM_TEMPERATURE, FEET, 15 },
    { "35", GB_DIM_SALINITY, METRIC, 35 },
    { "35 g/kg", GB_DIM_SALINITY, METRIC, 35 },
    { "3.5 %", GB_DIM_SALINITY, METRIC, 35 },
    { "30 + 5 g/kg", GB_DIM_SALINITY, METRIC, 35 },
    { "3", GB_DIM_COUNT, METRIC, 3 },
    { "2440 mm / 305 mm", GB_DIM_COUNT, METRIC, 8 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      double value = NAN;

      if (!gb_quantity_parse (cases[i].text, cases[i].dim, cases[i].units, &value, &error))
        g_error ("%s: %s", cases[i].text, error->message);
      assert_near (cases[i].text, value, cases[i].value);
    }
}

/* Every name, in both cases, is found as a whole; what begins none is no unit. */
static void
test_names_of_units (void)
{
  gsize length;

  for (const GbUnit *unit = gb_units_all (); unit->names[0] != NULL; unit++)
    for (const char *const *name = unit->names; *name != NULL; name++)
      {
        g_autofree char *upper = g_ascii_strup (*name, -1);

        g_assert_true (gb_unit_match (*name, &length) == unit);
        g_assert_cmpuint (length, ==, strlen (*name));
        g_assert_true (gb_unit_match (upper, &length) == unit);
      }
  g_assert_null (gb_unit_match ("", &length));
  g_assert_cmpuint (length, ==, 0);
  g_assert_null (gb_unit_match ("0.4", &length));
  g_assert_null (gb_unit_match ("mast", &length));
}

static void
test_exact_entries (void)
{
  double value;

  /* These are the very doubles that a program would write, so that a build goes to text and back unchanged. */
  g_assert_true (gb_quantity_parse ("38 mm", GB_DIM_LENGTH, METRIC, &value, NULL) && value == 0.038);
  g_assert_true (gb_quantity_parse ("1 1/2\"", GB_DIM_LENGTH, METRIC, &value, NULL) && value == 0.0381);
  g_assert_true (gb_quantity_parse ("5' 6\"", GB_DIM_LENGTH, METRIC, &value, NULL) && value == 1.6764);
  g_assert_true (gb_quantity_parse ("200 g/m2", GB_DIM_AREAL, METRIC, &value, NULL) && value == 0.2);
  g_assert_true (gb_quantity_parse ("12 %", GB_DIM_RATIO, METRIC, &value, NULL) && value == 0.12);
}

static void
test_refusals (void)
{
  static const struct
  {
    const char *text;
    GbDimension dim;
    GbQuantityError code;
    const char *says; /* part of the sentence */
  } cases[] = {
    { "3 kg", GB_DIM_LENGTH, GB_QUANTITY_ERROR_DIMENSION, "“3 kg” is a mass; a length is expected, such as 38 mm." },
    { "38 mm + 3 kg", GB_DIM_LENGTH, GB_QUANTITY_ERROR_DIMENSION, "“3 kg” is a mass" },
    { "3 kg + 38 mm", GB_DIM_LENGTH, GB_QUANTITY_ERROR_DIMENSION, "“3 kg” is a mass" },
    { "1220 mm * 610", GB_DIM_AREA, GB_QUANTITY_ERROR_DIMENSION, "is a length; an area is expected" },
    { "2 kg * 3 kg", GB_DIM_MASS, GB_QUANTITY_ERROR_DIMENSION, "is not a mass" },
    { "28 kg", GB_DIM_MOMENT, GB_QUANTITY_ERROR_DIMENSION, "“28 kg” is a mass; a moment is expected, such as 28 kg m." },
    { "28 kg m2", GB_DIM_MOMENT, GB_QUANTITY_ERROR_DIMENSION, "is not a moment; enter it as in 28 kg m." },
    { "28 kg ** m", GB_DIM_MOMENT, GB_QUANTITY_ERROR_SYNTAX, "A number is missing" },
    { "28 kg m m", GB_DIM_MOMENT, GB_QUANTITY_ERROR_UNIT, "“m”" },
    { "kg m", GB_DIM_MOMENT, GB_QUANTITY_ERROR_SYNTAX, "A number is missing before “kg m”" },
    { "38 mm kg", GB_DIM_LENGTH, GB_QUANTITY_ERROR_DIMENSION, "“38 mm kg” is a moment; a length is expected" },
    { "50 %", GB_DIM_LENGTH, GB_QUANTITY_ERROR_DIMENSION, "is a number" },
    { "15 °C", GB_DIM_LENGTH, GB_QUANTITY_ERROR_DIMENSION, "is a temperature" },
    { "3 fathoms", GB_DIM_LENGTH, GB_QUANTITY_ERROR_UNIT, "“fathoms” is no unit that is known here" },
    { "2 sq lb", GB_DIM_MASS, GB_QUANTITY_ERROR_UNIT, "“lb” is no unit" },
    { "3 mast", GB_DIM_LENGTH, GB_QUANTITY_ERROR_UNIT, "“mast”" },
    { "abc", GB_DIM_LENGTH, GB_QUANTITY_ERROR_UNIT, "“abc”" },
    { "mm", GB_DIM_LENGTH, GB_QUANTITY_ERROR_SYNTAX, "A number is missing before “mm”" },
    { "", GB_DIM_LENGTH, GB_QUANTITY_ERROR_SYNTAX, "A number is missing" },
    { "2+", GB_DIM_LENGTH, GB_QUANTITY_ERROR_SYNTAX, "A number is missing" },
    { "*2", GB_DIM_LENGTH, GB_QUANTITY_ERROR_SYNTAX, "A number is missing" },
    { "(2+3", GB_DIM_LENGTH, GB_QUANTITY_ERROR_SYNTAX, "is not closed" },
    { "2+3)", GB_DIM_LENGTH, GB_QUANTITY_ERROR_SYNTAX, "was not opened" },
    { "2 3", GB_DIM_LENGTH, GB_QUANTITY_ERROR_SYNTAX, "Two numbers follow one another" },
    { "1 5/4", GB_DIM_LENGTH, GB_QUANTITY_ERROR_SYNTAX, "Two numbers follow one another" },
    { "5 m 6", GB_DIM_LENGTH, GB_QUANTITY_ERROR_SYNTAX, "Two numbers follow one another" },
    { "5' 14\"", GB_DIM_LENGTH, GB_QUANTITY_ERROR_SYNTAX, "must be less than one of it" },
    { "5 mm 2 mm", GB_DIM_LENGTH, GB_QUANTITY_ERROR_SYNTAX, "must be less than one of it" },
    { "1.220,5", GB_DIM_LENGTH, GB_QUANTITY_ERROR_SYNTAX, "one decimal sign" },
    { "5'-6\"", GB_DIM_LENGTH, GB_QUANTITY_ERROR_SYNTAX, "can be read in two ways" },
    { "1-1/2\"", GB_DIM_LENGTH, GB_QUANTITY_ERROR_SYNTAX, "can be read in two ways" },
    { "1;2", GB_DIM_LENGTH, GB_QUANTITY_ERROR_SYNTAX, "“;” has no meaning here" },
    { "1\0012", GB_DIM_LENGTH, GB_QUANTITY_ERROR_SYNTAX, "has no meaning here" },
    { "\xff\xfe", GB_DIM_LENGTH, GB_QUANTITY_ERROR_SYNTAX, "not UTF-8" },
    { "59 F + 2", GB_DIM_TEMPERATURE, GB_QUANTITY_ERROR_SYNTAX, "one number" },
    { "2 * 15 C", GB_DIM_TEMPERATURE, GB_QUANTITY_ERROR_SYNTAX, "one number" },
    { "1/0", GB_DIM_LENGTH, GB_QUANTITY_ERROR_RANGE, "divided by zero" },
    { "1e400", GB_DIM_LENGTH, GB_QUANTITY_ERROR_RANGE, "too large" },
    { "1e200 * 1e200", GB_DIM_LENGTH, GB_QUANTITY_ERROR_RANGE, "too large" },
    { "inf", GB_DIM_LENGTH, GB_QUANTITY_ERROR_UNIT, "“inf”" },
    { "nan", GB_DIM_LENGTH, GB_QUANTITY_ERROR_UNIT, "“nan”" },
    { "0x10", GB_DIM_LENGTH, GB_QUANTITY_ERROR_UNIT, "“x”" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      double value;

      if (gb_quantity_parse (cases[i].text, cases[i].dim, METRIC, &value, &error))
        g_error ("“%s” was read as %g", cases[i].text, value);
      g_assert_error (error, GB_QUANTITY_ERROR, (int) cases[i].code);
      if (strstr (error->message, cases[i].says) == NULL)
        g_error ("“%s” says: %s", cases[i].text, error->message);
      g_assert_true (g_utf8_validate (error->message, -1, NULL));
    }
}

static void
test_long_and_deep_entries_are_refused (void)
{
  g_autofree char *ones = g_strnfill (2000, '1');
  g_autofree char *open = g_strnfill (900, '(');
  g_autofree char *minus = g_strnfill (900, '-');
  g_autofree char *signs = g_strconcat (minus, "1", NULL);
  g_autoptr (GError) too_long = NULL;
  g_autoptr (GError) too_deep = NULL;
  double value;

  g_assert_false (gb_quantity_parse (ones, GB_DIM_LENGTH, METRIC, &value, &too_long));
  g_assert_nonnull (strstr (too_long->message, "too long"));
  g_assert_false (gb_quantity_parse (open, GB_DIM_LENGTH, METRIC, &value, &too_deep));
  g_assert_nonnull (strstr (too_deep->message, "Too many parentheses"));
  g_assert_true (gb_quantity_parse (signs, GB_DIM_LENGTH, METRIC, &value, NULL));
  assert_near ("signs", value, 0.001);
}

static void
test_display (void)
{
  static const struct
  {
    double value;
    GbDimension dim;
    GbUnits units;
    const char *text, *bare;
  } cases[] = {
    { 1.22, GB_DIM_LENGTH, METRIC, "1220 mm", "1220" },
    { 1.2204, GB_DIM_LENGTH, METRIC, "1220 mm", "1220" },
    { -0.45, GB_DIM_LENGTH, METRIC, "-450 mm", "-450" },
    { 0.0065, GB_DIM_LENGTH, METRIC, "6.5 mm", "6.5" },
    { 0.00635, GB_DIM_LENGTH, METRIC, "6.4 mm", "6.4" },
    { 0.006, GB_DIM_LENGTH, METRIC, "6 mm", "6" },
    { 0.00005, GB_DIM_LENGTH, METRIC, "0.05 mm", "0.05" },
    { 0, GB_DIM_LENGTH, METRIC, "0 mm", "0" },
    { -0.0, GB_DIM_LENGTH, METRIC, "0 mm", "0" },
    /* What rounding leaves of moments that cancel; and a length that is small, but one. */
    { 1e-15, GB_DIM_LENGTH, METRIC, "0 mm", "0" },
    { -1e-15, GB_DIM_LENGTH, FEET, "0\"", "0" },
    { 1e-9, GB_DIM_LENGTH, METRIC, "0.000001 mm", "0.000001" },
    { 66.375 * 0.0254, GB_DIM_LENGTH, FEET, "5' 6 3/8\"", "66 3/8" },
    { -66.375 * 0.0254, GB_DIM_LENGTH, FEET, "-5' 6 3/8\"", "-66 3/8" },
    { 0.3048, GB_DIM_LENGTH, FEET, "1'", "12" },
    { 0.009525, GB_DIM_LENGTH, FEET, "3/8\"", "3/8" },
    { 0.006, GB_DIM_LENGTH, FEET, "1/4\"", "1/4" },
    { 11.99 * 0.0254, GB_DIM_LENGTH, FEET, "1'", "12" },
    { 0, GB_DIM_LENGTH, FEET, "0\"", "0" },
    { 0.0002, GB_DIM_LENGTH, FEET, "0.0079\"", "0.0079" },
    { 31.42, GB_DIM_MASS, METRIC, "31.4 kg", "31.4" },
    { 0.9, GB_DIM_MASS, METRIC, "0.9 kg", "0.9" },
    { 0.0352, GB_DIM_MASS, METRIC, "35.2 g", "0.0352" },
    { 214.4, GB_DIM_MASS, METRIC, "214 kg", "214" },
    { 1234.4, GB_DIM_MASS, METRIC, "1234 kg", "1234" },
    { 0, GB_DIM_MASS, METRIC, "0 kg", "0" },
    { 4.5359237, GB_DIM_MASS, FEET, "10 lb", "10" },
    { 0.1, GB_DIM_MASS, FEET, "3.53 oz", "0.22" },
    { 0.7123, GB_DIM_AREA, METRIC, "0.712 m²", "0.712" },
    { 0.09290304, GB_DIM_AREA, FEET, "1 ft²", "1" },
    { 0.00075, GB_DIM_VOLUME, METRIC, "0.75 l", "0.75" },
    { 0.00002, GB_DIM_VOLUME, METRIC, "20 ml", "0.02" },
    { 0.003785411784, GB_DIM_VOLUME, FEET, "1 gal", "1" },
    { 449.6, GB_DIM_DENSITY, METRIC, "450 kg/m³", "450" },
    { 448.51697447, GB_DIM_DENSITY, FEET, "28 lb/ft³", "28" },
    { 0.2, GB_DIM_AREAL, METRIC, "200 g/m²", "200" },
    { 0.085, GB_DIM_LINEAR, METRIC, "85 g/m", "85" },
    { 12000, GB_DIM_COVERAGE, METRIC, "12 m²/l", "12" },
    { 28, GB_DIM_MOMENT, METRIC, "28 kg·m", "28" },
    { -0.0512, GB_DIM_MOMENT, METRIC, "-0.0512 kg·m", "-0.0512" },
    { 1.38254954376, GB_DIM_MOMENT, FEET, "10 lb·ft", "10" },
    { 0.1234, GB_DIM_RATIO, METRIC, "12.3 %", "12.3" },
    { G_PI / 2, GB_DIM_ANGLE, METRIC, "90°", "90" },
    { 15, GB_DIM_TEMPERATURE, METRIC, "15 °C", "15" },
    { 15, GB_DIM_TEMPERATURE, FEET, "59 °F", "59" },
    { 35, GB_DIM_SALINITY, METRIC, "35 g/kg", "35" },
    { 2.5, GB_DIM_COUNT, METRIC, "2.5", "2.5" },
    { NAN, GB_DIM_MASS, METRIC, "–", "–" },
    /* Beyond any number, in itself or in the shown unit. */
    { INFINITY, GB_DIM_MASS, METRIC, "–", "–" },
    { 1.7e308, GB_DIM_LENGTH, METRIC, "–", "–" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = gb_quantity_format (cases[i].value, cases[i].dim, cases[i].units);
      g_autofree char *bare = gb_quantity_format_bare (cases[i].value, cases[i].dim, cases[i].units);

      g_assert_cmpstr (text, ==, cases[i].text);
      g_assert_cmpstr (bare, ==, cases[i].bare);
    }
}

static void
test_units_shown (void)
{
  g_assert_cmpstr (gb_quantity_unit (GB_DIM_LENGTH, METRIC), ==, "mm");
  g_assert_cmpstr (gb_quantity_unit (GB_DIM_LENGTH, FEET), ==, "in");
  g_assert_cmpstr (gb_quantity_unit (GB_DIM_COUNT, METRIC), ==, "");
  g_assert_cmpfloat (gb_quantity_factor (GB_DIM_LENGTH, METRIC), ==, 0.001);
  g_assert_cmpfloat (gb_quantity_factor (GB_DIM_MASS, FEET), ==, 0.45359237);
  g_assert_cmpfloat (gb_quantity_factor (GB_DIM_COUNT, FEET), ==, 1);
}

static void
test_exact_display (void)
{
  static const struct
  {
    double value;
    GbDimension dim;
    GbUnits units;
    const char *text;
  } cases[] = {
    { 0.5875, GB_DIM_LENGTH, METRIC, "587.5 mm" },
    { 66.375 * 0.0254, GB_DIM_LENGTH, FEET, "5' 6 3/8\"" },
    { 66.015625 * 0.0254, GB_DIM_LENGTH, FEET, "5' 6 1/64\"" },
    { 5.55650653250000, GB_DIM_MASS, FEET, "12.25 lb" },
    { 0.0352, GB_DIM_MASS, METRIC, "0.0352 kg" },
    { 0.12, GB_DIM_RATIO, METRIC, "12 %" },
    { NAN, GB_DIM_RATIO, METRIC, "" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = gb_quantity_format_exact (cases[i].value, cases[i].dim, cases[i].units);

      g_assert_cmpstr (text, ==, cases[i].text);
    }
}

/* A value of any size and either sign. */
static double
random_value (void)
{
  double size = pow (10, g_test_rand_double_range (-9, 9));

  return g_test_rand_bit () ? size : -size;
}

static void
test_exact_display_is_read_back (void)
{
  for (int i = 0; i < 20000; i++)
    {
      GbDimension dim = (GbDimension) g_test_rand_int_range (GB_DIM_COUNT, GB_N_DIMS);
      GbUnits units = g_test_rand_bit () ? FEET : METRIC;
      double value = random_value ();
      g_autofree char *text = gb_quantity_format_exact (value, dim, units);
      g_autoptr (GError) error = NULL;
      double back;
      /* A shift of scale costs what it shifts by. */
      double scale = dim == GB_DIM_TEMPERATURE ? fabs (value) + 32 : fabs (value);

      if (!gb_quantity_parse (text, dim, units, &back, &error))
        g_error ("%s: %s", text, error->message);
      if (!(fabs (back - value) <= 1e-12 * scale))
        g_error ("%s: got %.17g, expected %.17g", text, back, value);
    }
}

/* What is shown can be typed again, and then means what was shown. */
static void
test_display_is_an_entry (void)
{
  for (int i = 0; i < 20000; i++)
    {
      GbDimension dim = (GbDimension) g_test_rand_int_range (GB_DIM_COUNT, GB_N_DIMS);
      GbUnits units = g_test_rand_bit () ? FEET : METRIC;
      g_autofree char *shown = gb_quantity_format (random_value (), dim, units);
      g_autofree char *again = NULL;
      g_autoptr (GError) error = NULL;
      double back;

      if (!gb_quantity_parse (shown, dim, units, &back, &error))
        g_error ("%s: %s", shown, error->message);
      again = gb_quantity_format (back, dim, units);
      g_assert_cmpstr (again, ==, shown);
    }
}

static void
test_garbage_never_harms (void)
{
  static const char *const pieces[]
      = { "1", "23", ".", ",", " ", "+", "-", "*", "/", "(", ")", "'", "\"", "mm", "kg", "ft", "lb", "oz", "m", "m2", "%", "°",
          "F", "e", "9", "sq ", "²", "½", "–", "\302\240", "\xff", "\001", "µ", "gal", "imp ", "st", "1/2" };

  for (int i = 0; i < 50000; i++)
    {
      g_autoptr (GString) text = g_string_new (NULL);
      g_autoptr (GError) error = NULL;
      int n = g_test_rand_int_range (0, 12);
      double value = NAN;
      GbDimension dim = (GbDimension) g_test_rand_int_range (GB_DIM_COUNT, GB_N_DIMS);

      for (int j = 0; j < n; j++)
        if (g_test_rand_int_range (0, 10) == 0)
          g_string_append_c (text, (char) g_test_rand_int_range (1, 256));
        else
          g_string_append (text, pieces[g_test_rand_int_range (0, G_N_ELEMENTS (pieces))]);
      if (gb_quantity_parse (text->str, dim, g_test_rand_bit () ? FEET : METRIC, &value, &error))
        g_assert_true (isfinite (value));
      else
        g_assert_true (error != NULL && g_utf8_validate (error->message, -1, NULL));
    }
}

/* Where such a locale is installed. */
static void
test_decimal_sign_of_the_locale (void)
{
  g_autofree char *text = NULL;
  double back;

  if (setlocale (LC_NUMERIC, "de_DE.UTF-8") == NULL)
    {
      g_test_skip ("de_DE.UTF-8 is not installed");
      return;
    }
  text = gb_quantity_format (2.5, GB_DIM_MASS, METRIC);
  g_assert_cmpstr (text, ==, "2,5 kg");
  g_assert_true (gb_quantity_parse (text, GB_DIM_MASS, METRIC, &back, NULL));
  g_assert_cmpfloat (back, ==, 2.5);
  setlocale (LC_NUMERIC, "C");
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/quantity/entries", test_entries);
  g_test_add_func ("/quantity/names-of-units", test_names_of_units);
  g_test_add_func ("/quantity/exact-entries", test_exact_entries);
  g_test_add_func ("/quantity/refusals", test_refusals);
  g_test_add_func ("/quantity/long-and-deep-entries-are-refused", test_long_and_deep_entries_are_refused);
  g_test_add_func ("/quantity/display", test_display);
  g_test_add_func ("/quantity/units-shown", test_units_shown);
  g_test_add_func ("/quantity/exact-display", test_exact_display);
  g_test_add_func ("/quantity/exact-display-is-read-back", test_exact_display_is_read_back);
  g_test_add_func ("/quantity/display-is-an-entry", test_display_is_an_entry);
  g_test_add_func ("/quantity/garbage-never-harms", test_garbage_never_harms);
  g_test_add_func ("/quantity/decimal-sign-of-the-locale", test_decimal_sign_of_the_locale);
  return g_test_run ();
}
