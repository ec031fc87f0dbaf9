/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-water"

#include "water.h"

#include <math.h>

/* @coefficients[0] + @coefficients[1] t + ... by Horner's scheme. */
static double
polynomial (const double *coefficients, guint n, double t)
{
  double sum = 0;

  while (n > 0)
    sum = sum * t + coefficients[--n];
  return sum;
}

double
gb_water_density_eos80 (double salinity, double temperature)
{
  /* rho (S, t, 0) = sum a t^i + (sum b t^i) S + (sum c t^i) S^1.5 + d S^2; t on the temperature scale of
   * 1968. */
  static const double a[] = { 999.842594, 6.793952e-2, -9.095290e-3, 1.001685e-4, -1.120083e-6, 6.536332e-9 };
  static const double b[] = { 8.24493e-1, -4.0899e-3, 7.6438e-5, -8.2467e-7, 5.3875e-9 };
  static const double c[] = { -5.72466e-3, 1.0227e-4, -1.6546e-6 };
  static const double d = 4.8314e-4;

  return polynomial (a, G_N_ELEMENTS (a), temperature)
         + polynomial (b, G_N_ELEMENTS (b), temperature) * salinity
         + polynomial (c, G_N_ELEMENTS (c), temperature) * salinity * sqrt (salinity)
         + d * salinity * salinity;
}

/* What the builder left open is as a new build has it. */
static double
or_start (double value, const char *field)
{
  return isnan (value) ? gb_field (GB_RECORD_BUILD, field)->start : value;
}

double
gb_build_water_density (const GbBuild *build)
{
  double temperature = or_start (build->temperature, "temperature");

  switch ((GbWater) build->water)
    {
    case GB_WATER_FRESH:
      return gb_water_density_eos80 (0, temperature);
    case GB_WATER_SALT:
      return gb_water_density_eos80 (or_start (build->salinity, "salinity"), temperature);
    case GB_WATER_GIVEN:
    default:
      return build->water_density;
    }
}
