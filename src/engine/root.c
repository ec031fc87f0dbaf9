/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-root"

#include "root.h"

#include <math.h>

#define MOST_STEPS 100
/* After so many the line between the ends is no help, as where f jumps: then the middle. */
#define MOST_LINES 12

double
gb_root (GbRootFunc f, gpointer data, double a, double fa, double b, double fb, double near)
{
  for (guint i = 0; i < MOST_STEPS && fabs (b - a) > near; i++)
    {
      double c = i < MOST_LINES ? b - fb * (b - a) / (fb - fa) : a + (b - a) / 2;
      double fc;

      if (!(c > fmin (a, b) && c < fmax (a, b)))
        c = a + (b - a) / 2;
      fc = f (c, data);
      if (fc == 0 || isnan (fc))
        return c;
      if (fb * fc < 0)
        {
          a = b;
          fa = fb;
        }
      else
        fa /= 2;
      /* The ends may stay apart while one of them is there already. */
      if (fabs (c - b) <= near)
        return c;
      b = c;
      fb = fc;
    }
  return b;
}
