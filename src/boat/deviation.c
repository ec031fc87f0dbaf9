/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "deviation.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* To one figure: what is left of a deviation that is smaller than the last place of its value. */
static double
round_to_one_figure (double value, double factor)
{
  double step = pow (10, floor (log10 (value / factor))) * factor;

  return round (value / step) * step;
}

/* @part to the third figure of @whole, as that is shown; but something is never made nothing of. */
static double
round_as (double part, double whole, double factor)
{
  double step, rounded;

  if (!(fabs (whole) > 0) || !(part > 0))
    return part;
  step = pow (10, floor (log10 (fabs (whole) / factor)) - 2) * factor;
  rounded = round (part / step) * step;
  return rounded > 0 ? rounded : round_to_one_figure (part, factor);
}

char *
gb_quantity_format_with_sd (double value, double sd, GbDimension dim, GbUnits units)
{
  g_autofree char *text = gb_quantity_format (value, dim, units);
  g_autofree char *sd_text = NULL;

  if (!isfinite (value) || !(sd > 0) || !isfinite (sd))
    return g_steal_pointer (&text);
  /* Lengths have their own last place: a millimetre, or a fraction of an inch. */
  if (dim != GB_DIM_LENGTH)
    sd = round_as (sd, value, gb_quantity_factor (dim, units));
  /* In the same unit; small masses are shown in grams or ounces, and then both say theirs. */
  sd_text = g_str_has_suffix (text, gb_quantity_unit (dim, units)) ? gb_quantity_format_bare (sd, dim, units)
                                                                    : gb_quantity_format (sd, dim, units);
  /* Translators: a quantity and its standard deviation, "31.4 kg ± 1.2" */
  return g_strdup_printf (C_ ("quantity", "%s ± %s"), text, sd_text);
}

char *
gb_quantity_format_off (double off, double whole, GbDimension dim, GbUnits units)
{
  return gb_quantity_format (round_as (fabs (off), whole, gb_quantity_factor (dim, units)), dim, units);
}

#define LEAST_LENGTH 0.00005

char *
gb_length_format (double length, GbUnits units)
{
  return gb_quantity_format (fabs (length) < LEAST_LENGTH ? 0 : length, GB_DIM_LENGTH, units);
}
