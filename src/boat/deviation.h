/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "quantity.h"

G_BEGIN_DECLS

/* Figures that say how far they can be trusted. */

/* "31.4 kg ± 1.2": @value as it is shown, and its standard deviation in the same unit, rounded to the last place of the value, but never to
 * nothing. Without a deviation (NAN or 0) the value alone. Free the result. */
char *gb_quantity_format_with_sd (double value, double sd, GbDimension dim, GbUnits units);

/* How far @whole is off: the size of @off, rounded to the last place that @whole is shown with. Free the result. */
char *gb_quantity_format_off (double off, double whole, GbDimension dim, GbUnits units);

/* A computed place or draught: what is less than half a tenth of a millimetre is 0, since a computed figure says nothing there. Free the result. */
char *gb_length_format (double length, GbUnits units);

G_END_DECLS
