/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "floating-words.h"
#include "boat-centres.h"
#include "boat/quantity.h"
#include "words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Less is level, or upright: nobody sees it. */
#define LEVEL 0.0005                /* m, between the ends */
#define UPRIGHT (0.25 * G_PI / 180) /* of heel */

const char *
gb_where_along (GbVec3 lo, GbVec3 hi, GbVec3 p)
{
  static const char *const words[3][3] = {
    { N_ ("aft, to starboard"), N_ ("aft"), N_ ("aft, to port") },
    { N_ ("amidships, to starboard"), N_ ("amidships"), N_ ("amidships, to port") },
    { N_ ("forward, to starboard"), N_ ("forward"), N_ ("forward, to port") },
  };
  double along = (p.x - lo.x) / (hi.x - lo.x) * 3, across = p.y / (hi.y - lo.y);

  return _ (words[!(along >= 1) ? 0 : along < 2 ? 1 : 2][across < -0.05 ? 0 : across > 0.05 ? 2 : 1]);
}

void
gb_say_state (GString *title, const GbAfloat *afloat)
{
  const char *sentence = afloat->sentence;

  if (sentence == NULL)
    sentence = afloat->state == GB_AFLOAT_SINKS  ? _ ("She sinks")
               : afloat->state == GB_AFLOAT_OVER ? _ ("She has gone over")
                                                 : _ ("Water comes over an edge");
  g_string_append (title, sentence);
  if (g_str_has_suffix (title->str, "."))
    g_string_truncate (title, title->len - 1);
}

void
gb_say_condition (GString *text, const GbChartSource *source, double total)
{
  const GbCondition *condition = gb_source_condition (source);
  g_autofree char *name
      = condition != NULL ? gb_record_dup_title (&condition->rec) : g_strdup (_ ("Nobody aboard"));
  g_autofree char *mass
      = gb_quantity_format (total, GB_DIM_MASS, (GbUnits)gb_boat_build (source->boat)->units);

  if (isfinite (total))
    gb_say (text, "%s, %s.", name, mass);
  else
    gb_say (text, "%s.", name);
}

char *
gb_lies_words (const GbAfloat *afloat)
{
  if (!(fabs (afloat->heel) <= G_PI && fabs (afloat->trim) <= G_PI))
    return NULL;
  return gb_afloat_attitude_text (afloat);
}

/* "She floats 6 mm by the stern", and the heel. */
static char *
attitude_words (const GbAfloat *afloat, GbUnits units)
{
  double by_bow = afloat->draught_fore - afloat->draught_aft;
  g_autofree char *difference = gb_length_format (fabs (by_bow), units);
  g_autofree char *heel = gb_quantity_format (fabs (afloat->heel), GB_DIM_ANGLE, units);
  g_autofree char *floats = NULL;

  if (!(fabs (by_bow) >= LEVEL))
    floats = g_strdup (_ ("She floats level"));
  else
    floats = g_strdup_printf (by_bow > 0 ? _ ("She floats %s by the bow") : _ ("She floats %s by the stern"),
                              difference);
  if (!(fabs (afloat->heel) >= UPRIGHT))
    return g_steal_pointer (&floats);
  return g_strdup_printf (afloat->heel > 0 ? _ ("%s, heeled %s to starboard") : _ ("%s, heeled %s to port"),
                          floats, heel);
}

static void
say_title (GString *title, const GbFloating *floating, const GbAfloat *afloat, double accepted)
{
  const GbMeasured *least = &floating->measured[GB_FREEBOARD_LEAST];
  GbUnits units = floating->scene->units;
  g_autofree char *attitude = attitude_words (afloat, units);
  g_autofree char *wanted = gb_length_format (accepted, units);
  g_autofree char *where = isfinite (least->value) ? gb_floating_where_least (floating) : NULL;

  if (afloat->state != GB_AFLOAT_FLOATS)
    gb_say_state (title, afloat);
  else if (!isfinite (least->value))
    g_string_append (title, attitude);
  else if (least->value < accepted)
    /* Translators: "She floats 6 mm by the stern, with only 142 mm of freeboard aft, to port; 180 mm is the
     * least accepted" */
    g_string_append_printf (title, _ ("%s, with only %s of freeboard %s; %s is the least accepted"), attitude,
                            least->words, where, wanted);
  else
    g_string_append_printf (title, _ ("%s, with %s of freeboard %s"), attitude, least->words, where);
}

static void
say_subtitle (GString *text, const GbFloating *floating, const GbChartSource *source, const GbAfloat *afloat)
{
  guint no_place = afloat->n_no_place;

  gb_say_condition (text, source, afloat->total);
  gb_say (text, "%s",
          floating->has_water ? _ ("To scale, in the water as she sits; numbers count from the water.")
                              : _ ("To scale, under water."));
  if (afloat->n_no_mass > 0)
    gb_say (text, ngettext ("%u load has no mass yet.", "%u loads have no mass yet.", afloat->n_no_mass),
            afloat->n_no_mass);
  if (no_place > 0)
    gb_say (text, ngettext ("%u load has no place yet.", "%u loads have no place yet.", no_place), no_place);
}

static void
describe_loads (GString *text, const GbScene *scene)
{
  for (guint i = 0; i < scene->dots->len; i++)
    {
      const GbSceneDot *dot = &g_array_index (scene->dots, GbSceneDot, i);
      const GbSceneItem *item = &g_array_index (scene->items, GbSceneItem, dot->item);
      g_autofree char *tell = gb_scene_tell_item (item, scene->units);
      g_autofree char *place = gb_place_words (gb_scene_from (scene, dot->at), scene->units);

      if (item->kind == GB_SCENE_LOAD)
        gb_say (text, "%s, %s.", tell, place);
    }
}

void
gb_floating_say (GbChartWords *words,
                 const GbFloating *floating,
                 const GbChartSource *source,
                 const GbAfloat *afloat)
{
  say_title (words->title, floating, afloat, gb_boat_build (source->boat)->freeboard);
  say_subtitle (words->subtitle, floating, source, afloat);
  for (guint i = 0; i < floating->key->len; i++)
    {
      const GbKeyRow *row = &g_array_index (floating->key, GbKeyRow, i);

      gb_say (words->description, "%s: %s.", row->name, row->figures);
    }
  for (guint i = GB_FREEBOARD_PORT; i < GB_N_MEASURED; i++)
    if (isfinite (floating->measured[i].value))
      gb_say (words->description, "%s.", floating->measured[i].tell);
  describe_loads (words->description, floating->scene);
}
