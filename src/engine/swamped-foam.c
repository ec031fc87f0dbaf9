/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-swamped"

/* Foam, all of it under water, that makes her float level with the water at the height z, which is that of
 * her lowest edge if that can be.
 *
 * With V and M the volume that is under water then and its moment, m and G the weight and its centre, rho the
 * density of the water and rhof that of the foam, l = rho - rhof is what a volume of foam lifts, and
 *
 *   its volume   Vf = (m - rho V)/l
 *   its centre   p = (m G - rho M)/(l Vf)        in x and in y
 *
 * Turning the water about the centre of the waterplane by small angles, the energy bends by its least bend b
 * without the foam, and by l Vf (h - z) more with it at the height h: so h must not be less than z - b/(l
 * Vf).
 *
 * Where that place is outside of her, or she carries her weight without foam but does not lie level, more
 * foam does it: the water is looked for that is highest, and so takes the least foam, where all of that fits.
 */

#include "swamped-private.h"

#include "boat/deviation.h"

#include <glib/gi18n-lib.h>

/* Less is rounding; m3. */
#define LEAST_FOAM 1e-9
/* Its middle is at least so far under water: a slab of foam twice as thick; m. */
#define LEAST_DEPTH 0.025
/* Not level any more. 33 CFR 183.235 lets a swamped boat heel so far. */
#define STEEP (10 * G_PI / 180)
/* Steps in looking for the water, and then halvings of the last one. */
#define N_STEPS 50
#define N_HALVINGS 12

typedef enum
{
  FITS,
  IS_OUTSIDE,
  HAS_NO_ROOM,
  TIPS, /* she would not stay upright */
} Fit;

/* The foam for one height of the water. */
typedef struct
{
  double water;
  double volume, x, y, lowest;
  double apart; /* as far as it may be to either side; NAN where it is outside */
  Fit fit;
} Foam;

/* How far the hulls' own edges reach to either side at @x; where there are none, how far the hulls do.
 * FALSE if nothing of them is there. */
static gboolean
breadth_at (const GbCase *self, double x, double *low, double *high)
{
  const GPtrArray *lines = self->edges.lines;
  gboolean has_edge = FALSE;

  *low = INFINITY;
  *high = -INFINITY;
  for (guint i = 0; i < lines->len; i++)
    {
      const GbEdgeLine *line = lines->pdata[i];

      has_edge |= line->opening == 0;
      for (guint k = 1; line->opening == 0 && k < line->points->len; k++)
        {
          GbVec3 a = g_array_index (line->points, GbVec3, k - 1), b = g_array_index (line->points, GbVec3, k);
          double y = a.x != b.x ? a.y + (x - a.x) / (b.x - a.x) * (b.y - a.y) : a.y;

          if (x < fmin (a.x, b.x) || x > fmax (a.x, b.x))
            continue;
          *low = fmin (*low, y);
          *high = fmax (*high, y);
        }
    }
  if (!has_edge && x >= self->least.x && x <= self->most.x)
    {
      *low = self->least.y;
      *high = self->most.y;
    }
  return *high >= *low;
}

/* What the hulls hold up to @water, less those that water does not get into. */
static double
room_under (const GbFoamCase *with, double water)
{
  const GbVec3 up = { 0, 0, 1 };
  const GbFloater *all = gb_case_floater (with->self);
  GbImmersion whole = { 0 }, tight = { 0 };

  for (guint i = 0; i < all->hulls->len; i++)
    gb_body_immerse (g_array_index (all->hulls, GbFloatHull, i).body, FALSE, up, water, &whole);
  for (guint i = 0; i < with->carriers->len; i++)
    gb_body_immerse (g_array_index (with->carriers, GbCarrier, i).body, FALSE, up, water, &tight);
  return whole.volume - tight.volume;
}

/* Even a slab that fills her from side to side and up to the water reaches so far fore and aft of its middle.
 */
static gboolean
reaches_out (const GbFoamCase *with, const Foam *foam, double breadth)
{
  double half = foam->volume / (breadth * (foam->water - with->self->least.z)) / 2, low, high;

  return !breadth_at (with->self, foam->x - half, &low, &high)
         || !breadth_at (with->self, foam->x + half, &low, &high);
}

static Fit
fit_of (const GbFoamCase *with, const Foam *foam, double breadth)
{
  if (isnan (foam->apart) || reaches_out (with, foam, breadth))
    return IS_OUTSIDE;
  if (foam->volume > room_under (with, foam->water))
    return HAS_NO_ROOM;
  return foam->lowest < foam->water - LEAST_DEPTH ? FITS : TIPS;
}

static Foam
find_foam (const GbFoamCase *with, double water)
{
  double lift = with->floater->density - GB_FOAM_DENSITY, low, high;
  Foam foam = { .water = water, .x = NAN, .y = NAN, .lowest = NAN, .apart = NAN, .fit = IS_OUTSIDE };
  GbFloatPoint point;
  GbFloatFrame frame;
  GbFloatModes modes;

  gb_float_point_find (&point, with->floater, gb_attitude (0, 0, water), 0);
  foam.volume = -point.sink / lift;
  if (!(foam.volume > LEAST_FOAM))
    return foam;
  lift *= foam.volume;
  /* The slopes in n are m G - rho M. */
  foam.x = point.turn.x / lift;
  foam.y = point.turn.y / lift;
  gb_float_frame (&point, &frame);
  gb_float_modes (&frame, 2, &modes);
  foam.lowest = fmax (frame.pivot.z - modes.bends[0] / lift, with->self->least.z);
  if (breadth_at (with->self, foam.x, &low, &high) && foam.y >= low && foam.y <= high)
    foam.apart = fmin (high - foam.y, foam.y - low);
  foam.fit = fit_of (with, &foam, high - low);
  return foam;
}

/* The highest water under @top where the foam fits; that at @top where there is none. */
static Foam
look_lower (const GbFoamCase *with, const Foam *top)
{
  double step = (top->water - with->self->least.z) / N_STEPS, over = top->water;

  for (guint i = 1; i < N_STEPS; i++)
    {
      Foam found = find_foam (with, top->water - i * step);

      for (guint k = 0; found.fit == FITS && k < N_HALVINGS; k++)
        {
          Foam between = find_foam (with, (found.water + over) / 2);

          if (between.fit == FITS)
            found = between;
          else
            over = between.water;
        }
      if (found.fit == FITS)
        return found;
      over = found.water;
    }
  return *top;
}

static char *
say_outside (const Foam *foam, GbUnits units)
{
  g_autofree char *x = gb_length_format (foam->x, units), *y = gb_length_format (foam->y, units);

  /* Translators: two lengths, with their units: places along and across the boat. */
  return g_strdup_printf (_ ("Foam that keeps her level would have its middle at x %s and y %s, and reach "
                             "out of the hull. Shift weight, or "
                             "people, to bring it in."),
                          x, y);
}

static char *
say_higher (double above, GbUnits units)
{
  g_autofree char *edge = gb_length_format (above, units);

  /* Translators: a length, with its unit. */
  return g_strdup_printf (
      _ ("With less foam she would float, but not level. With this she floats level, her lowest "
         "edge %s above the water."),
      edge);
}

/* What is to be said of it; NULL for nothing. */
static char *
say (const GbFoamCase *with, const Foam *foam)
{
  GbUnits units = with->self->units;

  switch (foam->fit)
    {
    case IS_OUTSIDE:
      return say_outside (foam, units);
    case HAS_NO_ROOM:
      return g_strdup (
          _ ("That is more foam than there is room for in her. She needs less weight, or hulls that water "
             "does not get into."));
    case TIPS:
      return g_strdup (
          _ ("However high it lies under water, that foam does not keep her upright. Fix it along the "
             "sides so that some of it stands out of the water, or bring weight down."));
    case FITS:
    default:
      return foam->water < with->edge ? say_higher (with->edge - foam->water, units) : NULL;
    }
}

static gboolean
is_level (const GbSwampedRest *rest)
{
  return rest->kind == GB_REST_FOUND && fabs (rest->heel) <= STEEP && fabs (rest->trim) <= STEEP;
}

static void
take_foam (GbSwamped *swamped, const GbFoamCase *with, const Foam *foam)
{
  swamped->foam_volume = foam->volume;
  swamped->foam_mass = foam->volume * GB_FOAM_DENSITY;
  swamped->foam_x = foam->x;
  swamped->foam_y = foam->y;
  swamped->foam_apart = foam->apart;
  swamped->foam_lowest = foam->lowest;
  swamped->foam_trouble = say (with, foam);
}

/* She carries her weight without foam, level at @water if she lay so; and if she does not, is there foam
 * that makes her? */
static void
level_her (GbSwamped *swamped, const GbFoamCase *with, double water)
{
  Foam none = { .water = water, .fit = IS_OUTSIDE }, found;

  swamped->foam_volume = swamped->foam_mass = 0;
  if (is_level (&swamped->holding_on))
    return;
  found = look_lower (with, &none);
  if (found.fit == FITS)
    take_foam (swamped, with, &found);
  else
    swamped->foam_trouble
        = g_strdup (_ ("She needs no foam to float, but she does not lie level, and no foam under water "
                       "makes her. Fix it along the sides, close to her edge, or bring weight down."));
}

void
gb_swamped_find_foam (GbSwamped *swamped, const GbFoamCase *with)
{
  Foam at_edge;
  GbRest level;

  if (with->self->trouble != NULL)
    swamped->foam_trouble = g_strdup (with->self->trouble);
  if (with->self->trouble != NULL || isnan (with->edge) || !(with->floater->density > GB_FOAM_DENSITY))
    return;
  at_edge = find_foam (with, with->edge);
  if (isnan (at_edge.volume))
    return;
  if (at_edge.volume > LEAST_FOAM)
    {
      Foam found = at_edge.fit == FITS ? at_edge : look_lower (with, &at_edge);

      take_foam (swamped, with, &found);
      return;
    }
  level = gb_floater_rest (with->floater, gb_attitude (0, 0, with->edge), GB_HOLD_BOTH, NULL, NULL);
  if (level.kind == GB_REST_FOUND)
    level_her (swamped, with, fmin (level.attitude.height, with->edge));
}
