/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/boat.h"

G_BEGIN_DECLS

/* Density in kg/m3 of sea water at the surface: @salinity in g/kg (practical salinity), @temperature in degrees Celsius.
 * EOS-80: UNESCO Technical Papers in Marine Science 44 (Fofonoff and Millard 1983), eq. 13 and 14. Salinity 0 gives fresh water. */
double gb_water_density_eos80 (double salinity, double temperature);

/* The water of the build. NAN if it is given but not said. */
double gb_build_water_density (const GbBuild *build);

/* Standard gravity, m/s2 (exact: 3rd CGPM, 1901). */
#define GB_GRAVITY 9.80665

G_END_DECLS
