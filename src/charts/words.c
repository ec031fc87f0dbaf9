/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "words.h"
#include "boat/money.h"
#include "boat/quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>

void
gb_say (GString *text, const char *format, ...)
{
  va_list args;

  if (text->len > 0)
    g_string_append_c (text, ' ');
  va_start (args, format);
  g_string_append_vprintf (text, format, args);
  va_end (args);
}

/* @part to the third figure of @mass, as that is shown; but something is never made nothing of. */
static double
round_as (double part, double mass, double factor)
{
  double step, rounded;

  if (!(mass > 0))
    return part;
  step = pow (10, floor (log10 (mass / factor)) - 2) * factor;
  rounded = round (part / step) * step;
  return rounded > 0 ? rounded : part;
}

char *
gb_mass_words (double mass, double sd, GbUnits units)
{
  g_autofree char *mass_text = gb_quantity_format (mass, GB_DIM_MASS, units);
  g_autofree char *sd_text = NULL;

  if (!isfinite (mass) || !(sd > 0))
    return g_steal_pointer (&mass_text);
  sd = round_as (sd, mass, gb_quantity_factor (GB_DIM_MASS, units));
  /* In the same unit; small masses are shown in grams or ounces, and then both say theirs. */
  sd_text = g_str_has_suffix (mass_text, gb_quantity_unit (GB_DIM_MASS, units))
                ? gb_quantity_format_bare (sd, GB_DIM_MASS, units)
                : gb_quantity_format (sd, GB_DIM_MASS, units);
  /* Translators: a mass and its standard deviation, "31.4 kg ± 1.2" */
  return g_strdup_printf (C_ ("mass", "%s ± %s"), mass_text, sd_text);
}

char *
gb_mass_off_words (double off, double mass, GbUnits units)
{
  return gb_quantity_format (round_as (fabs (off), mass, gb_quantity_factor (GB_DIM_MASS, units)),
                             GB_DIM_MASS, units);
}

char *
gb_length_words (double length, GbUnits units)
{
  return gb_quantity_format (rint (length * 1e4) / 1e4 + 0.0, GB_DIM_LENGTH, units);
}

void
gb_say_no_mass (GString *text, guint n)
{
  if (n > 0)
    gb_say (text,
            ngettext ("%u part has no mass yet and is not counted.",
                      "%u parts have no mass yet and are not counted.", n),
            n);
}

void
gb_say_no_price (GString *text, guint n)
{
  if (n > 0)
    gb_say (text,
            ngettext ("%u thing still to buy has no price and is not counted.",
                      "%u things still to buy have no price and are not counted.", n),
            n);
}

double
gb_money_value (gint64 amount)
{
  return amount == GB_MONEY_UNKNOWN ? NAN : (double) amount;
}

char *
gb_money_words (double value, const char *currency)
{
  return gb_money_format_full (isfinite (value) ? llround (value) : GB_MONEY_UNKNOWN, currency);
}

char *
gb_percent_words (double share)
{
  double percent = round (share * 100);

  if (!isfinite (share))
    return g_strdup ("–");
  if (share > 0 && percent < 1)
    return g_strdup (_ ("under 1 %"));
  if (share < 1 && percent > 99)
    return g_strdup (_ ("over 99 %"));
  /* Translators: a share in per cent */
  return g_strdup_printf (_ ("%.0f %%"), percent);
}
