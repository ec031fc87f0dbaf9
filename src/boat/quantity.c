/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-quantity"

#include "quantity.h"

#include "expression.h"
#include "quantity-private.h"

#include <float.h>
#include <langinfo.h>
#include <math.h>
#include <string.h>

#define DASH "–"
#define INCHES_IN_FOOT 12
#define SHOWN_FRACTION 16 /* of an inch */
#define FINEST_FRACTION 64

G_DEFINE_QUARK (gb-quantity-error-quark, gb_quantity_error)

gboolean
gb_quantity_parse (const char *text, GbDimension dim, GbUnits units, double *value, GError **error)
{
  g_auto (GbExpression) expression = { 0 };

  if (!gb_expression_read (text, dim, units, &expression, error))
    return FALSE;
  *value = expression.value;
  return TRUE;
}

const char *
gb_quantity_unit (GbDimension dim, GbUnits units)
{
  return gb_dimension_shown (dim, units)->symbol;
}

double
gb_quantity_factor (GbDimension dim, GbUnits units)
{
  const GbShownUnit *shown = gb_dimension_shown (dim, units);

  return shown->num / shown->den;
}

/* @value in the unit that it is shown in. */
static double
in_shown_unit (double value, const GbShownUnit *shown)
{
  return value * shown->den / shown->num + shown->zero;
}

/* Digits ------------------------------------------------------------------------------------------------- */

char *
gb_with_decimal_sign (const char *plain)
{
  const char *sign = nl_langinfo (RADIXCHAR);
  GString *text = g_string_new (NULL);

  for (const char *p = plain; *p != '\0'; p++)
    if (*p == '.' && g_ascii_isdigit (p[1]) && *sign != '\0')
      g_string_append (text, sign);
    else
      g_string_append_c (text, *p);
  return g_string_free (text, FALSE);
}

/* At most @decimals of them, with a point; "-0" is "0". A half to within the error of a product is rounded
 * up: 6.35 to 6.4. */
static char *
fixed (double v, int decimals)
{
  char format[16];
  char digits[G_ASCII_DTOSTR_BUF_SIZE + 320];

  if (fabs (v) >= 1e15)
    {
      g_ascii_formatd (digits, sizeof digits, "%.3g", v);
      return g_strdup (digits);
    }
  g_snprintf (format, sizeof format, "%%.%df", CLAMP (decimals, 0, 15));
  g_ascii_formatd (digits, sizeof digits, format, v * (1 + 4 * DBL_EPSILON));
  if (strchr (digits, '.') != NULL)
    {
      gsize n = strlen (digits);

      while (digits[n - 1] == '0')
        digits[--n] = '\0';
      if (digits[n - 1] == '.')
        digits[--n] = '\0';
    }
  return g_strdup (strcmp (digits, "-0") == 0 ? "0" : digits);
}

/* @figures significant ones, but never rounding away from a whole number. */
static char *
significant (double v, int figures)
{
  return fixed (v, v == 0 ? 0 : figures - 1 - (int) floor (log10 (fabs (v))));
}

/* Whole millimetres; tenths below ten, because plywood and screws come so; two figures below a tenth. */
static char *
millimetres (double mm)
{
  if (fabs (mm) < 0.1)
    return significant (mm, 2);
  return fixed (mm, fabs (mm) < 9.95 ? 1 : 0);
}

/* Inches to the nearest of @fraction: "66 3/8"; or NULL if that is nothing although @inches is not. */
static char *
inches_and_fraction (double inches, int fraction, gboolean with_feet, const char *mark)
{
  gint64 n = llround (fabs (inches) * fraction);
  gint64 whole = n / fraction;
  int over = (int) (n % fraction);
  GString *text;

  if (n == 0 && inches != 0)
    return NULL;
  text = g_string_new (inches < 0 ? "-" : NULL);
  if (with_feet && whole >= INCHES_IN_FOOT)
    {
      g_string_append_printf (text, "%" G_GINT64_FORMAT "'", whole / INCHES_IN_FOOT);
      whole %= INCHES_IN_FOOT;
      if (whole == 0 && over == 0)
        return g_string_free (text, FALSE);
      g_string_append_c (text, ' ');
    }
  if (whole != 0 || over == 0)
    g_string_append_printf (text, "%" G_GINT64_FORMAT, whole);
  for (; over != 0 && over % 2 == 0; over /= 2)
    fraction /= 2;
  if (over != 0)
    g_string_append_printf (text, whole != 0 ? " %d/%d" : "%d/%d", over, fraction);
  g_string_append (text, mark);
  return g_string_free (text, FALSE);
}

#define MANY_INCHES 1e9

static char *
feet_and_inches (double inches, gboolean bare)
{
  char *text = NULL;

  if (fabs (inches) < MANY_INCHES)
    text = inches_and_fraction (inches, SHOWN_FRACTION, !bare, bare ? "" : "\"");
  if (text == NULL)
    {
      g_autofree char *digits = significant (inches, 2);

      text = g_strconcat (digits, bare ? "" : "\"", NULL);
    }
  return text;
}

/* Display ------------------------------------------------------------------------------------------------ */

/* Less than an atom of length is what rounding left of nothing: moments to port and to starboard that cancel. */
#define ROUNDING_LENGTH 1e-10

static double
without_rounding (double value, GbDimension dim)
{
  return dim == GB_DIM_LENGTH && fabs (value) < ROUNDING_LENGTH ? 0 : value;
}

static char *
shown_digits (double value, GbDimension dim, GbUnits units)
{
  double v = in_shown_unit (without_rounding (value, dim), gb_dimension_shown (dim, units));

  switch (dim)
    {
    case GB_DIM_LENGTH:
      return units == GB_UNITS_FEET ? feet_and_inches (v, TRUE) : millimetres (v);
    case GB_DIM_ANGLE:
    case GB_DIM_TEMPERATURE:
      return fixed (v, 1);
    case GB_DIM_COUNT:
      return significant (v, 4);
    default:
      return significant (v, 3);
    }
}

char *
gb_quantity_format_bare (double value, GbDimension dim, GbUnits units)
{
  g_autofree char *digits = NULL;

  /* Also where the shown unit is so small that a finite value overflows. */
  if (!isfinite (in_shown_unit (value, gb_dimension_shown (dim, units))))
    return g_strdup (DASH);
  digits = shown_digits (value, dim, units);
  return gb_with_decimal_sign (digits);
}

/* A smaller unit for what is small: grams, ounces and millilitres. What would be rounded up to one of the
 * larger is in that. */
static const GbShownUnit *
fitting_unit (double value, GbDimension dim, GbUnits units)
{
  static const GbShownUnit gram = { "g", "g", "", 1, 1000, 0 };
  static const GbShownUnit ounce = { "oz", "oz", "", 28349523125, 1e12, 0 };
  static const GbShownUnit millilitre = { "ml", "ml", "", 1, 1000000, 0 };
  const GbShownUnit *shown = gb_dimension_shown (dim, units);
  double v = fabs (in_shown_unit (value, shown));

  if (dim == GB_DIM_MASS && units == GB_UNITS_METRIC && v < 0.09995 && v > 0)
    return &gram;
  if (dim == GB_DIM_MASS && units == GB_UNITS_FEET && v < 15.95 / 16 && v > 0)
    return &ounce;
  if (dim == GB_DIM_VOLUME && units == GB_UNITS_METRIC && v < 0.09995 && v > 0)
    return &millilitre;
  return shown;
}

static char *
with_unit (const char *digits, const GbShownUnit *unit)
{
  g_autofree char *local = gb_with_decimal_sign (digits);
  gboolean close = *unit->symbol == '\0' || strcmp (unit->symbol, "°") == 0;

  return g_strconcat (local, close ? "" : " ", unit->symbol, NULL);
}

char *
gb_quantity_format (double value, GbDimension dim, GbUnits units)
{
  const GbShownUnit *unit = gb_dimension_shown (dim, units);
  const GbShownUnit *fitting;
  g_autofree char *digits = NULL;

  if (!isfinite (in_shown_unit (value, unit)))
    return g_strdup (DASH);
  if (dim == GB_DIM_LENGTH && units == GB_UNITS_FEET)
    {
      digits = feet_and_inches (in_shown_unit (without_rounding (value, dim), unit), FALSE);
      return gb_with_decimal_sign (digits);
    }
  fitting = fitting_unit (value, dim, units);
  if (fitting != unit)
    digits = significant (in_shown_unit (value, fitting), 3);
  else
    digits = shown_digits (value, dim, units);
  return with_unit (digits, fitting);
}

/* Fifteen digits where they give @value again but for its last bit, as they mostly do, else all of them; with
 * the unit. */
static char *
all_digits (double value, GbDimension dim, GbUnits units)
{
  const GbShownUnit *shown = gb_dimension_shown (dim, units);
  double v = in_shown_unit (value, shown);
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  g_autofree char *text = NULL;

  for (int figures = 15; figures <= 17; figures++)
    {
      char format[8];
      double back;

      g_snprintf (format, sizeof format, "%%.%dg", figures);
      g_ascii_formatd (digits, sizeof digits, format, v);
      g_free (text);
      text = with_unit (digits, shown);
      if (gb_quantity_parse (text, dim, units, &back, NULL)
          && fabs (back - value) <= 2 * DBL_EPSILON * fabs (value))
        break;
    }
  return g_steal_pointer (&text);
}

char *
gb_quantity_format_exact (double value, GbDimension dim, GbUnits units)
{
  double inches = in_shown_unit (value, gb_dimension_shown (dim, units));

  if (isnan (value))
    return g_strdup ("");
  if (dim == GB_DIM_LENGTH && units == GB_UNITS_FEET && fabs (inches) < MANY_INCHES)
    {
      double parts = inches * FINEST_FRACTION;

      if (fabs (parts - round (parts)) <= 1e-13 * fabs (parts))
        return inches_and_fraction (inches, FINEST_FRACTION, TRUE, "\"");
    }
  return all_digits (value, dim, units);
}
