/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-swamped"

/* Foam, all of it under water, that makes her float level with her lowest edge at the water.
 *
 * With V and M the volume that is under water then and its moment, m and G the weight and its centre, rho the
 * density of the water and rhof that of the foam, l = rho - rhof is what a volume of foam lifts, and
 *
 *   its volume   Vf = (m - rho V)/l
 *   its centre   p = (m G - rho M)/(l Vf)        in x and in y
 *
 * Turning the water about the centre of the waterplane by small angles, the energy bends by its least bend b
 * without the foam, and by l Vf (z - edge) more with it at the height z: so z must not be less than edge -
 * b/(l Vf). */

#include "swamped-private.h"

#include "boat/deviation.h"

#include <glib/gi18n-lib.h>

/* Less is rounding. */
#define LEAST_FOAM 1e-9
/* Not level any more. 33 CFR 183.235 lets a swamped boat heel so far. */
#define STEEP (10 * G_PI / 180)

/* How far the hulls' own edges reach to either side at @x; where there are none, how far the hulls do.
 * FALSE if nothing of them is there. */
static gboolean
breadth_at (const GbCase *self, double x, double *low, double *high)
{
  const GPtrArray *lines = self->edges.lines;

  *low = INFINITY;
  *high = -INFINITY;
  for (guint i = 0; i < lines->len; i++)
    {
      const GbEdgeLine *line = lines->pdata[i];

      for (guint k = 1; line->opening == 0 && k < line->points->len; k++)
        {
          GbVec3 a = g_array_index (line->points, GbVec3, k - 1), b = g_array_index (line->points, GbVec3, k);
          double t = a.x != b.x ? (x - a.x) / (b.x - a.x) : 0, y = a.y + t * (b.y - a.y);

          if (t < 0 || t > 1 || fmin (a.x, b.x) > x || fmax (a.x, b.x) < x)
            continue;
          *low = fmin (*low, y);
          *high = fmax (*high, y);
        }
    }
  if (*high < *low && x >= self->least.x && x <= self->most.x && lines->len == 0)
    {
      *low = self->least.y;
      *high = self->most.y;
    }
  return *high >= *low;
}

static char *
say_outside (const GbSwamped *swamped, const GbCase *self)
{
  g_autofree char *x = gb_length_format (swamped->foam_x, self->units);
  g_autofree char *y = gb_length_format (swamped->foam_y, self->units);

  /* Translators: two lengths, with their units: places along and across the boat. */
  return g_strdup_printf (
      _ ("Foam that keeps her level would have to lie at x %s and y %s, which is outside the hull. "
         "Shift weight, or people, to bring it in."),
      x, y);
}

/* She floats without foam: a sentence if she does not lie level. */
static char *
find_list (const GbSwampedRest *rest)
{
  if (rest->kind != GB_REST_FOUND || (fabs (rest->heel) <= STEEP && fabs (rest->trim) <= STEEP))
    return NULL;
  return g_strdup (
      _ ("She needs no foam to float, but she does not lie level. Foam along both sides, close to her edge, "
         "brings her upright."));
}

/* The first thing that is wrong with it. */
static char *
find_trouble (const GbSwamped *swamped, const GbFoamCase *with)
{
  double low, high;

  if (!breadth_at (with->self, swamped->foam_x, &low, &high) || swamped->foam_y < low
      || swamped->foam_y > high)
    return say_outside (swamped, with->self);
  if (swamped->foam_volume > with->room)
    return g_strdup (_ ("That is more foam than there is room for in her. She needs less weight, or hulls "
                        "that water does not get into."));
  if (!(swamped->foam_lowest < with->edge))
    return g_strdup (
        _ ("However high it lies under water, that foam does not keep her upright. Fix it along the sides so "
           "that some of it stands out of the water, or bring weight down."));
  return NULL;
}

static void
place_foam (GbSwamped *swamped, const GbFoamCase *with, const GbFloatPoint *point, double lift)
{
  GbFloatFrame frame;
  GbFloatModes modes;
  double low, high;

  /* The slopes in n are m G - rho M. */
  swamped->foam_x = point->turn.x / lift;
  swamped->foam_y = point->turn.y / lift;
  gb_float_frame (point, &frame);
  gb_float_modes (&frame, 2, &modes);
  swamped->foam_lowest = fmax (frame.pivot.z - modes.bends[0] / lift, with->self->least.z);
  if (breadth_at (with->self, swamped->foam_x, &low, &high) && swamped->foam_y >= low
      && swamped->foam_y <= high)
    swamped->foam_apart = fmin (high - swamped->foam_y, swamped->foam_y - low);
}

void
gb_swamped_find_foam (GbSwamped *swamped, const GbFoamCase *with)
{
  double lift = with->floater->density - GB_FOAM_DENSITY;
  GbFloatPoint point;

  if (with->self->trouble != NULL)
    swamped->foam_trouble = g_strdup (with->self->trouble);
  if (with->self->trouble != NULL || isnan (with->edge) || !(lift > 0))
    return;
  gb_float_point_find (&point, with->floater, gb_attitude (0, 0, with->edge), 0);
  swamped->foam_volume = fmax (-point.sink / lift, 0);
  if (!(swamped->foam_volume > LEAST_FOAM))
    swamped->foam_volume = isnan (point.sink) ? NAN : 0;
  swamped->foam_mass = swamped->foam_volume * GB_FOAM_DENSITY;
  if (swamped->foam_volume == 0)
    swamped->foam_trouble = find_list (&swamped->holding_on);
  if (!(swamped->foam_volume > 0))
    return;
  place_foam (swamped, with, &point, lift * swamped->foam_volume);
  swamped->foam_trouble = find_trouble (swamped, with);
}
