/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-units"

/* Factors: NIST SP 811 (2008), appendix B.8; those of the inch, pound, gallon and litre are exact by definition. A pint, quart or
 * gallon is that of the United States unless it says 'imp'. */

#include "units.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define LENGTH { 1, 0, 0, 0 }
#define VOLUME { 3, 0, 0, 0 }
#define MASS { 0, 1, 0, 0 }
#define ANGLE { 0, 0, 1, 0 }
#define TEMPERATURE { 0, 0, 0, 1 }
#define NUMBER { 0, 0, 0, 0 }

static const GbUnit units_table[] = {
  { { "mm", "millimetre", "millimetres", "millimeter", "millimeters" }, LENGTH, 1, 1000, 0, NULL },
  { { "cm", "centimetre", "centimetres", "centimeter", "centimeters" }, LENGTH, 1, 100, 0, NULL },
  { { "m", "metre", "metres", "meter", "meters" }, LENGTH, 1, 1, 0, NULL },
  { { "µm", "um", "micron", "microns" }, LENGTH, 1, 1000000, 0, NULL },
  { { "in", "\"", "inch", "inches" }, LENGTH, 254, 10000, 0, NULL },
  { { "ft", "'", "foot", "feet" }, LENGTH, 3048, 10000, 0, "in" },
  { { "yd", "yard", "yards" }, LENGTH, 9144, 10000, 0, "ft" },
  { { "l", "litre", "litres", "liter", "liters" }, VOLUME, 1, 1000, 0, NULL },
  { { "ml", "millilitre", "millilitres", "milliliter", "milliliters" }, VOLUME, 1, 1000000, 0, NULL },
  { { "cc" }, VOLUME, 1, 1000000, 0, NULL },
  { { "gal", "gallon", "gallons", "US gal", "US gallon", "US gallons" }, VOLUME, 3785411784, 1e12, 0, NULL },
  { { "qt", "quart", "quarts", "US qt", "US quart", "US quarts" }, VOLUME, 946352946, 1e12, 0, NULL },
  { { "pt", "pint", "pints", "US pt", "US pint", "US pints" }, VOLUME, 473176473, 1e12, 0, NULL },
  { { "fl oz", "US fl oz" }, VOLUME, 29573529.5625, 1e12, 0, NULL },
  { { "imp gal", "imp gallon", "imp gallons" }, VOLUME, 454609, 1e8, 0, NULL },
  { { "imp qt", "imp quart", "imp quarts" }, VOLUME, 1136522.5, 1e9, 0, NULL },
  { { "imp pt", "imp pint", "imp pints" }, VOLUME, 568261.25, 1e9, 0, NULL },
  { { "imp fl oz" }, VOLUME, 28413062.5, 1e12, 0, NULL },
  { { "kg", "kilo", "kilos", "kilogram", "kilograms" }, MASS, 1, 1, 0, NULL },
  { { "g", "gram", "grams" }, MASS, 1, 1000, 0, NULL },
  { { "t", "tonne", "tonnes" }, MASS, 1000, 1, 0, NULL },
  { { "lb", "lbs", "pound", "pounds" }, MASS, 45359237, 1e8, 0, "oz" },
  { { "oz", "ounce", "ounces" }, MASS, 28349523125, 1e12, 0, NULL },
  { { "st", "stone" }, MASS, 635029318, 1e8, 0, "lb" },
  { { "deg", "°", "degree", "degrees" }, ANGLE, G_PI, 180, 0, NULL },
  { { "rad", "radian", "radians" }, ANGLE, 1, 1, 0, NULL },
  { { "°C", "C", "deg C" }, TEMPERATURE, 1, 1, 0, NULL },
  { { "°F", "F", "deg F" }, TEMPERATURE, 5, 9, 32, NULL },
  { { "%", "percent" }, NUMBER, 1, 100, 0, NULL },
  { { "‰", "ppt" }, NUMBER, 1, 1000, 0, NULL },
  { { NULL }, NUMBER, 0, 0, 0, NULL },
};

#define PLAIN(symbol, example) { symbol, symbol, example, 1, 1, 0 }

static const GbDimensionInfo dimensions[GB_N_DIMS] = {
  [GB_DIM_COUNT] = { NUMBER, 1, N_ ("a number"), { PLAIN ("", "12"), PLAIN ("", "12") } },
  [GB_DIM_RATIO]
  = { NUMBER, 1, N_ ("a share"), { { "%", "%", "12 %", 1, 100, 0 }, { "%", "%", "12 %", 1, 100, 0 } } },
  [GB_DIM_LENGTH]
  = { LENGTH, 1, N_ ("a length"), { { "mm", "mm", "38 mm", 1, 1000, 0 }, { "in", "in", "5' 6 3/8\"", 254, 10000, 0 } } },
  [GB_DIM_AREA] = { { 2, 0, 0, 0 },
                    1,
                    N_ ("an area"),
                    { { "m²", "m2", "0.71 m2", 1, 1, 0 }, { "ft²", "ft2", "7.6 ft2", 9290304, 1e8, 0 } } },
  [GB_DIM_VOLUME]
  = { VOLUME, 1, N_ ("a volume"), { { "l", "l", "0.75 l", 1, 1000, 0 }, { "gal", "gal", "0.25 gal", 3785411784, 1e12, 0 } } },
  [GB_DIM_MASS] = { MASS, 1, N_ ("a mass"), { PLAIN ("kg", "2.5 kg"), { "lb", "lb", "12 lb 4 oz", 45359237, 1e8, 0 } } },
  [GB_DIM_DENSITY] = { { -3, 1, 0, 0 },
                       1,
                       N_ ("a density"),
                       { { "kg/m³", "kg/m3", "450 kg/m3", 1, 1, 0 },
                         { "lb/ft³", "lb/ft3", "28 lb/ft3", 453592370000, 28316846592, 0 } } },
  [GB_DIM_AREAL] = { { -2, 1, 0, 0 },
                     1,
                     N_ ("a mass per area"),
                     { { "g/m²", "g/m2", "200 g/m2", 1, 1000, 0 },
                       { "oz/yd²", "oz/yd2", "6 oz/yd2", 28349523125, 836127360000, 0 } } },
  [GB_DIM_LINEAR] = { { -1, 1, 0, 0 },
                      1,
                      N_ ("a mass per length"),
                      { { "g/m", "g/m", "85 g/m", 1, 1000, 0 }, { "lb/ft", "lb/ft", "0.06 lb/ft", 45359237, 30480000, 0 } } },
  [GB_DIM_COVERAGE] = { { -1, 0, 0, 0 },
                        1,
                        N_ ("a coverage"),
                        { { "m²/l", "m2/l", "12 m2/l", 1000, 1, 0 },
                          { "ft²/gal", "ft2/gal", "400 ft2/gal", 92903040000, 3785411784, 0 } } },
  [GB_DIM_MOMENT] = { { 1, 1, 0, 0 },
                      1,
                      N_ ("a moment"),
                      { { "kg·m", "kg m", "28 kg m", 1, 1, 0 },
                        { "lb·ft", "lb ft", "200 lb ft", 138254954376, 1e12, 0 } } },
  [GB_DIM_ANGLE] = { ANGLE, 1, N_ ("an angle"), { { "°", "°", "90°", G_PI, 180, 0 }, { "°", "°", "90°", G_PI, 180, 0 } } },
  [GB_DIM_TEMPERATURE]
  = { TEMPERATURE, 1, N_ ("a temperature"), { PLAIN ("°C", "15 °C"), { "°F", "°F", "59 °F", 5, 9, 32 } } },
  [GB_DIM_SALINITY]
  = { NUMBER, 1000, N_ ("a salinity"), { PLAIN ("g/kg", "35 g/kg"), PLAIN ("g/kg", "35 g/kg") } },
};

const GbUnit *
gb_units_all (void)
{
  return units_table;
}

/* TRUE if a word ends at @end, so that "m" is not found in "mast". */
static gboolean
ends_word (const char *start, const char *end)
{
  gunichar last = g_utf8_get_char (g_utf8_find_prev_char (start, end));

  return !g_unichar_isalpha (last) || !g_unichar_isalpha (g_utf8_get_char (end));
}

/* The bytes that names begin with, in both cases. */
static const gboolean *
first_bytes (void)
{
  static gboolean begins[256];
  static gsize once;

  if (g_once_init_enter (&once))
    {
      for (const GbUnit *unit = units_table; unit->names[0] != NULL; unit++)
        for (const char *const *name = unit->names; *name != NULL; name++)
          begins[(guchar) g_ascii_tolower (**name)] = begins[(guchar) g_ascii_toupper (**name)] = TRUE;
      g_once_init_leave (&once, 1);
    }
  return begins;
}

const GbUnit *
gb_unit_match (const char *text, gsize *length)
{
  const GbUnit *best = NULL;
  char first = g_ascii_tolower (*text);

  *length = 0;
  /* An outline asks this behind each of its numbers, and hardly ever is there a unit. */
  if (!first_bytes ()[(guchar) first])
    return NULL;
  for (const GbUnit *unit = units_table; unit->names[0] != NULL; unit++)
    for (const char *const *name = unit->names; *name != NULL; name++)
      {
        gsize n;

        if (g_ascii_tolower (**name) != first)
          continue;
        n = strlen (*name);
        if (n > *length && g_ascii_strncasecmp (text, *name, n) == 0 && ends_word (text, text + n))
          {
            best = unit;
            *length = n;
          }
      }
  return best;
}

const GbDimensionInfo *
gb_dimension_info (GbDimension dim)
{
  g_return_val_if_fail (dim >= GB_DIM_COUNT && dim < GB_N_DIMS, &dimensions[GB_DIM_COUNT]);
  return &dimensions[dim];
}

const GbShownUnit *
gb_dimension_shown (GbDimension dim, GbUnits units)
{
  return &gb_dimension_info (dim)->shown[units == GB_UNITS_FEET ? 1 : 0];
}

gboolean
gb_powers_equal (GbPowers a, GbPowers b)
{
  return a.length == b.length && a.mass == b.mass && a.angle == b.angle && a.temperature == b.temperature;
}

GbDimension
gb_powers_dimension (GbPowers powers)
{
  for (GbDimension dim = GB_DIM_COUNT; dim < GB_N_DIMS; dim++)
    if (gb_powers_equal (dimensions[dim].powers, powers))
      return dim;
  return GB_N_DIMS;
}
