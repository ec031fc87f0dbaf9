/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "afloat-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "boat/deviation.h"
#include "boat/quantity.h"

/* What a level gauge would call nothing. */
#define SLIGHT (0.05 * G_PI / 180)
/* Beside the centreline by less than this is on it. */
#define NEAR 0.005

/* Upright she has the same freeboard on both sides. */
static gboolean
has_side (const GbAfloat *afloat)
{
  return fabs (afloat->least.at.y) >= NEAR && fabs (afloat->heel) >= SLIGHT;
}

static char *
free_words (const GbAfloat *afloat, const GbBuild *build, gboolean *passed)
{
  g_autofree char *free_board = gb_length_format (afloat->least.freeboard, build->units);

  if (isnan (afloat->least.freeboard))
    return g_strdup (_ ("floats"));
  *passed = afloat->least.freeboard < build->freeboard;
  /* Translators: the least freeboard. */
  return g_strdup_printf (*passed ? _ ("only %s free") : _ ("floats, %s free"), free_board);
}

char *
gb_afloat_state_words (const GbAfloat *afloat, const GbBuild *build, gboolean *passed)
{
  gboolean ignored;

  if (passed == NULL)
    passed = &ignored;
  *passed = afloat->state == GB_AFLOAT_FILLS || afloat->state == GB_AFLOAT_OVER
            || afloat->state == GB_AFLOAT_SINKS;
  switch (afloat->state)
    {
    case GB_AFLOAT_FLOATS:
      return free_words (afloat, build, passed);
    case GB_AFLOAT_FILLS:
      return g_strdup (_ ("water comes in"));
    case GB_AFLOAT_OVER:
      return g_strdup (_ ("goes over"));
    case GB_AFLOAT_SINKS:
      return g_strdup (_ ("sinks"));
    case GB_AFLOAT_UNKNOWN:
    default:
      return g_strdup (_ ("not known yet"));
    }
}

char *
gb_afloat_edge_words (const GbAfloat *afloat, const GbEdgeSet *edges, GbUnits units)
{
  const GbLeastFreeboard *least = &afloat->least;
  g_autofree char *x = gb_length_format (least->at.x, units);
  const GbEdgeLine *line;

  if (isnan (least->freeboard) || least->line < 0 || (guint)least->line >= edges->lines->len)
    return g_strdup ("–");
  line = edges->lines->pdata[least->line];
  if (!has_side (afloat))
    /* Translators: the name of a hull or an opening, and how far forward. */
    return g_strdup_printf (_ ("%s, at x %s"), line->name, x);
  return g_strdup_printf (least->at.y > 0 ? _ ("%s, at x %s, to port") : _ ("%s, at x %s, to starboard"),
                          line->name, x);
}

/* Lengths side by side share one unit, said after the last; feet and inches each have their own. */
static char *
bare_length (double length, GbUnits units)
{
  return units == GB_UNITS_FEET ? gb_length_format (length, units)
                                : gb_quantity_format_bare (length, GB_DIM_LENGTH, units);
}

static char *
with_unit (char *take_words, GbUnits units)
{
  g_autofree char *words = take_words;

  if (units == GB_UNITS_FEET)
    return g_steal_pointer (&words);
  return g_strdup_printf ("%s %s", words, gb_quantity_unit (GB_DIM_LENGTH, units));
}

char *
gb_afloat_lengths_words (double a, double b, double c, GbUnits units)
{
  g_autofree char *first = bare_length (a, units);
  g_autofree char *second = bare_length (b, units);
  g_autofree char *third = bare_length (c, units);

  if (isnan (a) && isnan (b) && isnan (c))
    return g_strdup ("–");
  return with_unit (g_strdup_printf ("%s, %s, %s", first, second, third), units);
}

char *
gb_afloat_place_words (double x, double y, GbUnits units)
{
  g_autofree char *along = bare_length (x, units);
  g_autofree char *across = bare_length (y, units);

  if (isnan (x) || isnan (y))
    return g_strdup ("–");
  /* Translators: a place in the boat; its unit follows. */
  return with_unit (g_strdup_printf (_ ("x %s, y %s"), along, across), units);
}

char *
gb_afloat_point_words (GbVec3 p, GbUnits units)
{
  g_autofree char *x = bare_length (p.x, units);
  g_autofree char *y = bare_length (p.y, units);
  g_autofree char *z = bare_length (p.z, units);

  if (isnan (p.x) || isnan (p.y) || isnan (p.z))
    return gb_afloat_place_words (p.x, p.y, units);
  /* Translators: a place in the boat; its unit follows. */
  return with_unit (g_strdup_printf (_ ("x %s, y %s, z %s"), x, y, z), units);
}

/* With its side as a word, where the number alone would need a sign. */
static char *
angle_words (double angle, const char *none, const char *positive, const char *negative)
{
  g_autofree char *size = gb_quantity_format (fabs (angle), GB_DIM_ANGLE, GB_UNITS_METRIC);

  if (isnan (angle))
    return g_strdup ("–");
  if (fabs (angle) < SLIGHT)
    return g_strdup (none);
  return g_strdup_printf (angle > 0 ? positive : negative, size);
}

char *
gb_afloat_trim_words (double angle)
{
  return angle_words (angle, _ ("level"), _ ("%s by the bow"), _ ("%s by the stern"));
}

char *
gb_afloat_heel_words (double angle)
{
  return angle_words (angle, _ ("upright"), _ ("%s to starboard"), _ ("%s to port"));
}

char *
gb_afloat_chance_words (double chance)
{
  if (isnan (chance))
    return g_strdup ("–");
  if (chance < 0.001)
    return g_strdup (_ ("under 0.1 %"));
  if (chance > 0.999)
    return g_strdup (_ ("over 99.9 %"));
  return g_strdup_printf (_ ("%.1f %%"), 100 * chance);
}
