/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

/* Righting lever against heel: the arm at which weight and buoyancy turn her back. */

#include "righting-draw.h"

#include "boat-layout.h"
#include "boat/deviation.h"
#include "boat/quantity.h"
#include "floating-words.h"
#include "words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* m rad: more is no boat's. */
#define MOST_AREA 1000.0

static void
curve_free (gpointer data)
{
  GbRightingCurve *curve = data;

  for (guint i = 0; i < curve->n_immersions; i++)
    g_free (curve->immersions[i].name);
  g_free (curve);
}

/* Names of the edges that go under, with the heel at which they do; the nearest to upright first. */
static void
add_immersion (GbRightingCurve *curve, const char *name, double heel)
{
  guint at = curve->n_immersions;

  if (!isfinite (heel))
    return;
  for (guint i = 0; i < curve->n_immersions; i++)
    if (fabs (curve->immersions[i].heel - heel) < 1e-4 && g_strcmp0 (curve->immersions[i].name, name) == 0)
      return;
  if (curve->n_immersions == GB_MOST_IMMERSIONS)
    return;
  for (; at > 0 && fabs (curve->immersions[at - 1].heel) > fabs (heel); at--)
    curve->immersions[at] = curve->immersions[at - 1];
  curve->immersions[at] = (GbImmersionMark){ g_strdup (name), heel };
  curve->n_immersions++;
}

static void
take_immersions (GbRightingCurve *curve, const GbRighting *righting, const GbEdgeSet *edges)
{
  for (guint i = 0; righting->immersions != NULL && i < righting->immersions->len; i++)
    {
      const GbEdgeImmersion *immersion = &g_array_index (righting->immersions, GbEdgeImmersion, i);
      const GbEdgeLine *line
          = immersion->line >= 0 && edges->lines != NULL && (guint)immersion->line < edges->lines->len
                ? g_ptr_array_index (edges->lines, immersion->line)
                : NULL;

      if (line == NULL)
        continue;
      add_immersion (curve, line->name, immersion->starboard);
      add_immersion (curve, line->name, -immersion->port);
    }
}

static void
take_levers (GbRightingCurve *curve, const GbRighting *righting)
{
  for (guint i = 0; i < GB_N_LEVERS; i++)
    {
      const GbLever *lever = &righting->levers[i];

      curve->points[i] = (GbRightingPoint){ lever->heel, lever->lever, lever->solid, lever->freeboard };
      if (isfinite (lever->lever) && isfinite (lever->heel))
        {
          curve->n_known++;
          curve->most = fmax (curve->most, fabs (lever->lever));
        }
      curve->has_solid = curve->has_solid || fabs (lever->solid - lever->lever) > 0.0005;
    }
}

/* The stable balance nearest to upright; the way up where there is none. */
static double
find_rest (const GbRightingCurve *curve)
{
  double rest = NAN;

  for (guint i = 0; i < curve->n_balances; i++)
    if (curve->balances[i].stable && !(fabs (curve->balances[i].heel) >= fabs (rest)))
      rest = curve->balances[i].heel;
  return isfinite (rest) ? rest : 0;
}

static GbRightingReach
take_side (const GbRightingSide *side)
{
  gboolean fills = isfinite (side->filling) && !(side->vanishing <= side->filling);

  return (GbRightingReach){ *side, fills, fills ? side->filling : side->vanishing, side->dry_greatest,
                            side->dry_greatest_at };
}

static GbRightingCurve *
take_curve (const GbChartSource *source)
{
  const GbRighting *righting = source->righting;
  GbRightingCurve *curve = g_new0 (GbRightingCurve, 1);

  curve->units = (GbUnits)gb_boat_build (source->boat)->units;
  curve->gm = righting->gm;
  curve->arm = righting->moment / righting->total;
  take_levers (curve, righting);
  take_immersions (curve, righting, &source->findings->edges);
  for (guint i = 0; righting->balances != NULL && i < righting->balances->len && i < GB_MOST_BALANCES; i++)
    {
      const GbBalance *balance = &g_array_index (righting->balances, GbBalance, i);

      if (isfinite (balance->heel))
        curve->balances[curve->n_balances++] = *balance;
    }
  curve->rest = find_rest (curve);
  curve->starboard = take_side (&righting->starboard);
  curve->port = take_side (&righting->port);
  return curve;
}

/* Words ------------------------------------------------------------ */

static char *
whole_degrees (double angle)
{
  return gb_angle_words (angle, 0);
}

/* The side that gives way first. */
static const GbRightingReach *
weaker_side (const GbRightingCurve *curve)
{
  gboolean port = curve->port.end < curve->starboard.end
                  || (isfinite (curve->port.end) && !isfinite (curve->starboard.end));

  return port ? &curve->port : &curve->starboard;
}

static void
say_title (GString *title, const GbRightingCurve *curve)
{
  const GbRightingReach *side = weaker_side (curve);
  g_autofree char *end = whole_degrees (side->end);
  g_autofree char *greatest = gb_length_format (side->greatest, curve->units);
  g_autofree char *at = whole_degrees (side->greatest_at);
  g_autofree char *rest = whole_degrees (curve->rest);

  if (!(side->greatest > 0))
    g_string_append (title, _ ("Nothing brings her upright: she goes over by herself"));
  else if (!(curve->gm > 0))
    g_string_append_printf (title,
                            _ ("She does not stay upright: she lies over at %s; greatest lever %s at %s"),
                            rest, greatest, at);
  else if (!isfinite (side->end))
    g_string_append_printf (title, _ ("She comes back from any heel; greatest lever %s at %s"), greatest, at);
  else if (side->fills)
    g_string_append_printf (
        title, _ ("She comes back from up to %s, then she fills; greatest lever before that %s at %s"), end,
        greatest, at);
  else
    g_string_append_printf (title, _ ("She comes back from up to %s; greatest lever %s at %s"), end, greatest,
                            at);
}

/* Work to turn her over, over her weight: a lever times an angle. In three figures. */
static void
say_area (GString *text, double area, GbUnits units)
{
  double shown = area / gb_boat_unit (units);
  int decimals = fabs (shown) > 0 ? (int)CLAMP (2 - floor (log10 (fabs (shown))), 0, 4) : 0;

  if (units == GB_UNITS_FEET)
    /* Translators: feet times radians */
    gb_say (text, _ ("Area under the curve %.*f ft rad."), decimals, shown);
  else
    /* Translators: metres times radians */
    gb_say (text, _ ("Area under the curve %.*f m rad."), decimals, shown);
}

/* @turned: the heeling moment is to this side. */
static void
describe_side (
    GString *text, const GbRightingReach *side, const char *name, gboolean turned, GbUnits units)
{
  double area = side->fills ? side->found.dry_area : side->found.area;
  g_autofree char *greatest = gb_length_format (side->greatest, units);
  g_autofree char *at = whole_degrees (side->greatest_at);
  g_autofree char *filling = whole_degrees (side->found.filling);
  g_autofree char *vanishing = whole_degrees (side->found.vanishing);
  g_autofree char *steady = whole_degrees (side->found.steady);

  if (isfinite (side->greatest) && isfinite (side->greatest_at))
    gb_say (text, _ ("%s: greatest lever %s at %s."), name, greatest, at);
  if (side->fills)
    gb_say (text, _ ("She fills at %s."), filling);
  if (isfinite (side->found.vanishing))
    gb_say (text,
            side->fills ? _ ("Were she closed, the lever would vanish at %s.") : _ ("It vanishes at %s."),
            vanishing);
  if (fabs (area) < MOST_AREA)
    say_area (text, area, units);
  if (turned && isfinite (side->found.steady))
    gb_say (text, _ ("Under the heeling moment she heels to %s."), steady);
}

static void
describe (GString *text, const GbRightingCurve *curve)
{
  g_autofree char *gm = gb_length_format (curve->gm, curve->units);

  if (isfinite (curve->gm))
    gb_say (text, _ ("GM %s."), gm);
  describe_side (text, &curve->starboard, _ ("To starboard"), curve->arm >= 0, curve->units);
  describe_side (text, &curve->port, _ ("To port"), curve->arm < 0, curve->units);
  for (guint i = 0; i < curve->n_immersions; i++)
    {
      g_autofree char *heel = whole_degrees (curve->immersions[i].heel);

      gb_say (text,
              curve->immersions[i].heel < 0 ? _ ("%s goes under at %s to port.")
                                            : _ ("%s goes under at %s to starboard."),
              curve->immersions[i].name, heel);
    }
  for (guint i = 0; i < curve->n_balances; i++)
    {
      g_autofree char *heel = whole_degrees (curve->balances[i].heel);

      gb_say (text,
              curve->balances[i].stable ? _ ("She balances at %s and stays there.")
                                        : _ ("She balances at %s, but does not stay there."),
              heel);
    }
}

static void
say_empty (const GbChartSource *source, GbChartWords *words)
{
  const GbAfloat *afloat = gb_source_afloat (source);

  if (afloat != NULL && afloat->state == GB_AFLOAT_SINKS)
    gb_say_state (words->title, afloat);
  else if (afloat == NULL || afloat->state == GB_AFLOAT_UNKNOWN)
    g_string_append (words->title, _ ("The righting lever stands here, once she floats"));
  else
    g_string_append (words->title, _ ("The righting lever is being worked out"));
}

static gpointer
make (const GbChartSource *source, GbChartWords *words)
{
  GbRightingCurve *curve = source->righting != NULL ? take_curve (source) : NULL;

  if (curve == NULL || curve->n_known < 2)
    {
      say_empty (source, words);
      g_clear_pointer (&curve, curve_free);
      return NULL;
    }
  say_title (words->title, curve);
  gb_say_condition (words->subtitle, source, source->righting->total);
  gb_say (words->subtitle, "%s",
          curve->has_solid ? _ ("Trim and sinkage free; dashed: with all liquids frozen.")
                           : _ ("Trim and sinkage free."));
  if (curve->starboard.fills || curve->port.fills)
    gb_say (words->subtitle, "%s", _ ("Thin: beyond where water comes in, as if she were closed there."));
  describe (words->description, curve);
  return curve;
}

static void
draw (gconstpointer data, GbCanvas *canvas, GbBox box)
{
  gb_righting_draw (data, canvas, box);
}

static char *
tell (gconstpointer data, guint what)
{
  const GbRightingCurve *curve = data;
  const GbRightingPoint *point = &curve->points[what];
  g_autofree char *heel = whole_degrees (point->heel);
  g_autofree char *lever = gb_length_format (point->lever, curve->units);
  g_autofree char *freeboard = gb_length_format (point->freeboard, curve->units);

  return g_strdup_printf (point->heel < 0 ? _ ("Heeled %s to port: lever %s, least freeboard %s.")
                                          : _ ("Heeled %s to starboard: lever %s, least freeboard %s."),
                          heel, lever, freeboard);
}

const GbChartMethod gb_chart_righting = {
  .name = "righting",
  .label = N_ ("Righting lever"),
  .caution = TRUE,
  .make = make,
  .draw = draw,
  .tell = tell,
  .free = curve_free,
};
