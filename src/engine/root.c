/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-root"

#include "root.h"

#include <math.h>

#define MOST_STEPS 100
/* After so many the line between the ends is no help, as where f jumps: then the middle. */
#define MOST_LINES 12

/* Where the line between the ends is nothing, but not nearer to either than @near: so the last step closes in
 * from both sides. */
static double
next_place (double a, double fa, double b, double fb, double near)
{
  double low = fmin (a, b), high = fmax (a, b), c = b - fb * (b - a) / (fb - fa);

  if (!(c > low && c < high) || high - low <= 2 * near)
    return low + (high - low) / 2;
  return CLAMP (c, low + near, high - near);
}

double
gb_root (GbRootFunc f, gpointer data, double a, double fa, double b, double fb, double near)
{
  for (guint i = 0; i < MOST_STEPS && fabs (b - a) > near; i++)
    {
      double c = i < MOST_LINES ? next_place (a, fa, b, fb, near) : a + (b - a) / 2;
      double fc = f (c, data);

      if (fc == 0 || isnan (fc))
        return c;
      if (fb * fc < 0)
        {
          a = b;
          fa = fb;
        }
      else
        fa /= 2;
      b = c;
      fb = fc;
    }
  return b;
}
