/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include <math.h>

static inline void
assert_near (double value, double expected, double tolerance)
{
  if (!(fabs (value - expected) <= tolerance))
    g_error ("%.17g is not within %g of %.17g", value, tolerance, expected);
}
