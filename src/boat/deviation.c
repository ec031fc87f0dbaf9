/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "deviation.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* To the last of the three figures that @value is shown with; a deviation that is less than that keeps one figure. */
static double
round_deviation (double sd, double value, double factor)
{
  double step, rounded;

  if (value == 0)
    return sd;
  step = pow (10, floor (log10 (fabs (value) / factor)) - 2) * factor;
  rounded = round (sd / step) * step;
  if (rounded > 0)
    return rounded;
  step = pow (10, floor (log10 (sd / factor))) * factor;
  return round (sd / step) * step;
}

char *
gb_quantity_format_with_sd (double value, double sd, GbDimension dim, GbUnits units)
{
  g_autofree char *text = gb_quantity_format (value, dim, units);
  g_autofree char *sd_text = NULL;

  if (!isfinite (value) || !(sd > 0))
    return g_steal_pointer (&text);
  if (dim != GB_DIM_LENGTH)
    sd = round_deviation (sd, value, gb_quantity_factor (dim, units));
  /* In the same unit; small masses are shown in grams or ounces, and then both say theirs. */
  sd_text = g_str_has_suffix (text, gb_quantity_unit (dim, units)) ? gb_quantity_format_bare (sd, dim, units)
                                                                    : gb_quantity_format (sd, dim, units);
  /* Translators: a quantity and its standard deviation, "31.4 kg ± 1.2" */
  return g_strdup_printf (C_ ("quantity", "%s ± %s"), text, sd_text);
}

char *
gb_length_format (double length, GbUnits units)
{
  /* Adding zero makes a minus zero plain. */
  return gb_quantity_format (rint (length * 1e4) / 1e4 + 0.0, GB_DIM_LENGTH, units);
}
