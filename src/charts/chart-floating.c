/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

/* The boat to scale in the water, as she sits in one condition. */

#include "floating-words.h"
#include "words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* The true reason why nothing is drawn, where it is known. */
static void
say_empty (GbChartWords *words, const GbAfloat *afloat)
{
  if (afloat != NULL && afloat->sentence != NULL)
    gb_say_state (words->title, afloat);
  else
    g_string_append (words->title, _ ("How she floats is drawn here, once there is a hull and a weight"));
}

/* While a load is dragged, the scale stays what it is with the load where the records have it. */
static void
hold_scale (GbFloating *floating, const GbChartSource *source)
{
  GbChartSource still = *source;
  const GbAfloat *afloat;
  g_autoptr (GbScene) base = NULL;

  if (!gb_vec3_is_known (source->moved_to))
    return;
  still.afloat = NULL;
  still.moved_to = (GbVec3){ NAN, NAN, NAN };
  afloat = gb_source_afloat (&still);
  if (afloat == NULL || !gb_vec3_is_known (afloat->attitude.up) || !isfinite (afloat->attitude.height))
    return;
  base = gb_scene_new_loads (&still, &afloat->attitude, GB_ALL_VIEWS);
  gb_scene_hold (floating->scene, base);
}

static gpointer
make (const GbChartSource *source, GbChartWords *words)
{
  const GbAfloat *afloat = gb_source_afloat (source);
  GbVec3 up = afloat != NULL ? afloat->attitude.up : (GbVec3){ 0, 0, 0 };
  gboolean rests = gb_vec3_is_known (up);
  GbFloating *floating;

  if (afloat == NULL || afloat->state == GB_AFLOAT_UNKNOWN || (afloat->state != GB_AFLOAT_SINKS && !rests))
    {
      say_empty (words, afloat);
      return NULL;
    }
  floating
      = gb_floating_new (source, afloat->state == GB_AFLOAT_SINKS ? NULL : &afloat->attitude, GB_ALL_VIEWS);
  hold_scale (floating, source);
  gb_floating_take (floating, afloat);
  gb_floating_say (words, floating, source, afloat);
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

static gboolean
locate (gconstpointer data, GbCanvas *canvas, GbBox box, double x, double y, guint what, GbChartSpot *spot)
{
  return gb_floating_locate (data, canvas, box, x, y, what, spot);
}

static void
free_floating (gpointer data)
{
  gb_floating_free (data);
}

const GbChartMethod gb_chart_floating = {
  .name = "floating",
  .label = N_ ("In the water as she sits"),
  .caution = TRUE,
  .steady = TRUE,
  .make = make,
  .draw = draw,
  .tell = tell,
  .part = gb_floating_part,
  .load = gb_floating_load,
  .locate = locate,
  .free = free_floating,
};
