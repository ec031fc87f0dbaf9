/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

/* The boat to scale as she lies full of water, with the crew in the water and holding on. */

#include "boat/deviation.h"
#include "boat/quantity.h"
#include "floating-words.h"
#include "pattern.h"
#include "words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define VIEWS (1u << GB_VIEW_SIDE | 1u << GB_VIEW_END)

static void
mark_foam (GbCanvas *canvas, double x, double y)
{
  gb_pattern_fill (canvas, GB_ROLE_LOADS, gb_box_around (x, y, canvas->em * 0.55));
}

/* Words ------------------------------------------------------------ */

static char *
mass_words (double mass, GbUnits units)
{
  return isfinite (mass) ? gb_quantity_format (mass, GB_DIM_MASS, units) : NULL;
}

static char *
edge_words (const GbSwampedRest *rest, GbUnits units)
{
  g_autofree char *height = gb_length_format (fabs (rest->edge), units);

  if (rest->kind == GB_REST_SINKS)
    return g_strdup (_ ("she sinks"));
  if (rest->kind != GB_REST_FOUND || !isfinite (rest->edge))
    return NULL;
  return g_strdup_printf (
      rest->edge < 0 ? _ ("lowest edge %s under water") : _ ("lowest edge %s above water"), height);
}

static char *
lies_words (const GbSwampedRest *rest)
{
  const GbAfloat as_afloat = { .heel = rest->heel, .trim = rest->trim };

  return rest->kind == GB_REST_FOUND ? gb_lies_words (&as_afloat) : NULL;
}

static char *
foam_words (const GbSwamped *swamped, GbUnits units)
{
  g_autofree char *volume = gb_quantity_format (swamped->foam_volume, GB_DIM_VOLUME, units);
  g_autofree char *mass = gb_quantity_format (swamped->foam_mass, GB_DIM_MASS, units);

  if (!isfinite (swamped->foam_volume))
    return NULL;
  if (!(swamped->foam_volume > 0))
    return g_strdup (_ ("none needed"));
  /* Translators: a volume, and what it weighs */
  return g_strdup_printf (_ ("%s, %s"), volume, mass);
}

static char *
foam_place_words (const GbSwamped *swamped, GbUnits units)
{
  g_autofree char *x = gb_length_format (swamped->foam_x, units);
  g_autofree char *y = gb_length_format (swamped->foam_y, units);
  g_autofree char *apart = gb_length_format (swamped->foam_apart, units);
  g_autofree char *lowest = gb_length_format (swamped->foam_lowest, units);
  g_autoptr (GString) text = g_string_new (NULL);

  if (!(swamped->foam_volume > 0) || !isfinite (swamped->foam_x) || !isfinite (swamped->foam_y))
    return NULL;
  if (isfinite (swamped->foam_apart))
    g_string_append_printf (text, _ ("x %s, y %s, half of it %s to either side"), x, y, apart);
  else
    g_string_append_printf (text, "x %s, y %s", x, y);
  if (isfinite (swamped->foam_lowest))
    g_string_append_printf (text, _ (", not under z %s"), lowest);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static char *
unknown_words (const GbSwamped *swamped, GbUnits units)
{
  g_autofree char *mass = mass_words (swamped->no_volume_mass, units);

  if (swamped->n_no_volume == 0)
    return NULL;
  return g_strdup_printf (ngettext ("%u part, %s: it carries nothing here",
                                    "%u parts, %s: they carry nothing here", swamped->n_no_volume),
                          swamped->n_no_volume, mass != NULL ? mass : "–");
}

static void
fill_key (GbFloating *floating, const GbSwamped *swamped)
{
  GbUnits units = floating->scene->units;
  const GbSwampedRest *rest = &swamped->holding_on;
  GArray *key = floating->key;
  char *gm = isfinite (rest->gm) ? gb_length_format (rest->gm, units) : NULL;

  gb_key_add (key, NULL, _ ("All under water carries"), mass_words (rest->most, units));
  gb_key_add (key, NULL, _ ("To be carried, crew holding on"), mass_words (rest->weight, units));
  gb_key_add (key, NULL, _ ("Lies"), lies_words (rest));
  gb_key_add (key, NULL, _ ("Crew holding on"), edge_words (rest, units));
  gb_key_add (key, NULL, _ ("Crew sitting in her"), edge_words (&swamped->aboard, units));
  gb_key_add (key, NULL, _ ("GM, across"), gm);
  gb_key_add (key, NULL, _ ("Foam to add, to float level"), foam_words (swamped, units));
  gb_key_add (key, floating->n_marked > 0 ? mark_foam : NULL, _ ("Where the foam goes"),
              foam_place_words (swamped, units));
  gb_key_add (key, NULL, _ ("Density not known"), unknown_words (swamped, units));
}

static void
say_title (GString *title, const GbSwamped *swamped, GbUnits units)
{
  const GbSwampedRest *rest = &swamped->holding_on;
  g_autofree char *foam = gb_quantity_format (swamped->foam_volume, GB_DIM_VOLUME, units);
  g_autofree char *edge = gb_length_format (fabs (rest->edge), units);
  gboolean wants_foam = swamped->foam_volume > 0 && isfinite (swamped->foam_volume);

  if (rest->kind == GB_REST_SINKS && swamped->guesswork)
    g_string_append (title, _ ("As far as densities are known, she sinks when swamped"));
  else if (rest->kind == GB_REST_SINKS)
    g_string_append (title, _ ("She sinks when swamped"));
  else if (fabs (rest->heel) > G_PI / 2)
    g_string_append (title, _ ("Swamped, she turns over"));
  else if (!isfinite (rest->edge))
    g_string_append (title, _ ("Swamped, she floats"));
  else if (rest->edge < 0)
    g_string_append_printf (title, _ ("Swamped, she floats with her lowest edge %s under water"), edge);
  else
    g_string_append_printf (title, _ ("Swamped, she floats with her lowest edge %s above water"), edge);
  if (wants_foam)
    /* Translators: the end of a title: "She sinks when swamped: 14 l of foam needed for her to float level"
     */
    g_string_append_printf (title, _ (": %s of foam needed for her to float level"), foam);
}

static void
describe (GString *text, const GbFloating *floating, const GbSwamped *swamped)
{
  for (guint i = 0; i < floating->key->len; i++)
    {
      const GbKeyRow *row = &g_array_index (floating->key, GbKeyRow, i);

      gb_say (text, "%s: %s.", row->name, row->figures);
    }
  if (swamped->foam_trouble != NULL)
    gb_say (text, "%s", swamped->foam_trouble);
}

static void
say_subtitle (GString *text, const GbChartSource *source, const GbSwamped *swamped)
{
  g_autofree char *share = gb_percent_words (swamped->holding);

  gb_say_condition (text, source, NAN);
  gb_say (text, "%s", _ ("To scale, full of water; the crew is in the water and holds on."));
  if (isfinite (swamped->holding))
    /* Translators: a share in per cent */
    gb_say (text, _ ("She bears %s of their weight."), share);
  if (swamped->foam_trouble != NULL)
    gb_say (text, "%s", swamped->foam_trouble);
}

/* The chart ------------------------------------------------------------ */

/* Both halves, or all in one; at the water where no height is asked for. */
static void
mark_places (GbFloating *floating, const GbSwamped *swamped)
{
  double apart = isfinite (swamped->foam_apart) ? fabs (swamped->foam_apart) : 0;

  if (!(swamped->foam_volume > 0) || !isfinite (swamped->foam_x) || !isfinite (swamped->foam_y))
    return;
  for (int side = -1; side <= (apart > 0 ? 1 : -1); side += 2)
    {
      GbVec3 at = { swamped->foam_x, swamped->foam_y + side * apart, swamped->foam_lowest };
      gboolean given = isfinite (at.z);

      if (!given)
        at.z = 0;
      at = gb_scene_place (floating->scene, at);
      if (!given)
        at.z = 0;
      floating->marked[floating->n_marked++] = (GbMarkedPlace){ mark_foam, _ ("foam"), at };
    }
}

/* Nothing carries only because nobody has entered a density: that she sinks is no finding. */
static gboolean
is_all_unknown (const GbSwamped *swamped)
{
  return swamped->n_no_volume > 0 && !(swamped->parts_volume > 0) && !(swamped->hulls_volume > 0);
}

/* The true reason why nothing is drawn. */
static void
say_empty (const GbChartSource *source, GbChartWords *words)
{
  const GbAfloat *afloat = gb_source_afloat (source);
  gboolean unknown = afloat == NULL || afloat->state == GB_AFLOAT_UNKNOWN;

  if (unknown && afloat != NULL && afloat->sentence != NULL)
    gb_say_state (words->title, afloat);
  else if (unknown)
    g_string_append (words->title,
                     _ ("How she lies full of water is drawn here, once there is a hull and a weight"));
  else if (source->swamped == NULL)
    g_string_append (words->title, _ ("How she lies full of water is being worked out"));
  else if (is_all_unknown (source->swamped))
    g_string_append (words->title,
                     _ ("Whether she floats full of water is not known: no part has a known density"));
  else
    g_string_append (words->title, _ ("Full of water she comes to no rest that could be found"));
}

static gpointer
make (const GbChartSource *source, GbChartWords *words)
{
  const GbSwamped *swamped = source->swamped;
  const GbSwampedRest *rest = swamped != NULL ? &swamped->holding_on : NULL;
  gboolean lies = rest != NULL && rest->kind == GB_REST_FOUND && gb_vec3_is_known (rest->attitude.up)
                  && isfinite (rest->attitude.height);
  GbFloating *floating;

  if (rest == NULL || (!lies && (rest->kind != GB_REST_SINKS || is_all_unknown (swamped))))
    {
      say_empty (source, words);
      return NULL;
    }
  floating = gb_floating_new (source, lies ? &rest->attitude : NULL, VIEWS);
  mark_places (floating, swamped);
  fill_key (floating, swamped);
  say_title (words->title, swamped, floating->scene->units);
  say_subtitle (words->subtitle, source, swamped);
  describe (words->description, floating, swamped);
  return floating;
}

static void
draw (gconstpointer data, GbCanvas *canvas, GbBox box)
{
  gb_floating_draw (data, canvas, box);
}

static char *
tell (gconstpointer data, guint what)
{
  return gb_floating_tell (data, what);
}

static void
free_floating (gpointer data)
{
  gb_floating_free (data);
}

const GbChartMethod gb_chart_swamped = {
  .name = "swamped",
  .label = N_ ("Full of water"),
  .caution = TRUE,
  .make = make,
  .draw = draw,
  .tell = tell,
  .part = gb_floating_part,
  .load = gb_floating_load,
  .free = free_floating,
};
