/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

/* Where the crew may sit: the least freeboard, heel and trim for every place of one load. */

#include "boat-centres.h"
#include "boat/quantity.h"
#include "crew-scene.h"
#include "floating-words.h"
#include "words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const char *
edge_name (const GbCrew *crew, int line)
{
  return line >= 0 && (guint)line < crew->edges->len ? g_ptr_array_index (crew->edges, line) : NULL;
}

/* Less is not seen. */
#define UPRIGHT (0.05 * G_PI / 180)

static char *
heel_words (double heel)
{
  g_autofree char *angle = gb_angle_words (heel, 1);

  if (fabs (heel) < UPRIGHT)
    return g_strdup (_ ("upright"));
  return g_strdup_printf (heel > 0 ? _ ("%s to starboard") : _ ("%s to port"), angle);
}

static char *
trim_words (double trim)
{
  g_autofree char *angle = gb_angle_words (trim, 1);

  if (fabs (trim) < UPRIGHT)
    return g_strdup (_ ("level"));
  return g_strdup_printf (trim > 0 ? _ ("%s by the bow") : _ ("%s by the stern"), angle);
}

static char *
attitude_words (const GbCrewPlace *place)
{
  g_autofree char *heel = heel_words (place->heel);
  g_autofree char *trim = trim_words (place->trim);

  return g_strdup_printf ("%s, %s", heel, trim);
}

/* What a place does, in words. */
static char *
tell_of (const GbCrew *crew, const GbCrewPlace *place)
{
  const char *edge = edge_name (crew, place->line);
  g_autofree char *attitude = attitude_words (place);
  g_autofree char *height = gb_length_format (fabs (place->freeboard), crew->units);

  switch (place->state)
    {
    case GB_AFLOAT_OVER:
      return g_strdup (_ ("she goes over"));
    case GB_AFLOAT_FILLS:
      return g_strdup_printf (_ ("%s is %s under water, %s"), edge != NULL ? edge : _ ("an edge"), height,
                              attitude);
    case GB_AFLOAT_FLOATS:
      if (!isfinite (place->freeboard))
        return g_strdup (attitude);
      if (edge == NULL)
        return g_strdup_printf (_ ("least freeboard %s, %s"), height, attitude);
      /* Translators: a length, the name of an edge, and how she lies */
      return g_strdup_printf (_ ("least freeboard %s at %s, %s"), height, edge, attitude);
    default:
      return g_strdup (_ ("not known"));
    }
}

static char *
place_words (const GbCrew *crew, double x, double y)
{
  g_autofree char *along = gb_length_format (x, crew->units);
  g_autofree char *across = gb_length_format (y, crew->units);

  return g_strdup_printf ("x %s, y %s", along, across);
}

static char *
now_words (const GbCrew *crew)
{
  const GbCrewPlace *place = &crew->here;
  g_autofree char *at = NULL;
  g_autofree char *height = NULL;

  if (!isfinite (crew->now.x) || !isfinite (crew->now.y))
    return NULL;
  at = place_words (crew, crew->now.x, crew->now.y);
  if (place->state != GB_AFLOAT_FLOATS || !isfinite (place->freeboard))
    return g_steal_pointer (&at);
  height = gb_length_format (place->freeboard, crew->units);
  return g_strdup_printf (_ ("%s: freeboard %s"), at, height);
}

/* "Main hull, aft, to port" */
static char *
lowest_words (const GbCrew *crew)
{
  const char *edge = edge_name (crew, crew->here.line);

  if (edge == NULL || !isfinite (crew->lowest.x) || !isfinite (crew->lowest.y))
    return g_strdup (edge);
  return g_strdup_printf ("%s, %s", edge, gb_where_along (crew->scene->lo, crew->scene->hi, crew->lowest));
}

static char *
best_words (const GbCrew *crew)
{
  g_autofree char *at = place_words (crew, crew->map->best.x, crew->map->best.y);
  g_autofree char *height = gb_length_format (crew->map->best_freeboard, crew->units);

  if (!isfinite (crew->map->best.x) || !isfinite (crew->map->best.y) || !isfinite (crew->map->best_freeboard))
    return NULL;
  return g_strdup_printf (_ ("%s: freeboard %s"), at, height);
}

/* "310 mm to port" */
static char *
off_words (double y, GbUnits units)
{
  g_autofree char *text = gb_length_format (fabs (y), units);

  return g_strdup_printf (y < 0 ? _ ("%s to starboard") : _ ("%s to port"), text);
}

/* Both may be on one side. */
static char *
furthest_words (const GbCrew *crew)
{
  g_autofree char *port = off_words (crew->map->furthest_port, crew->units);
  g_autofree char *starboard = off_words (crew->map->furthest_starboard, crew->units);

  if (!isfinite (crew->map->furthest_port) || !isfinite (crew->map->furthest_starboard))
    return NULL;
  /* Translators: two places across the boat: "310 mm to starboard … 290 mm to port" */
  return g_strdup_printf (_ ("%s … %s"), starboard, port);
}

static void
fill_key (GbCrew *crew)
{
  g_autofree char *heel = isfinite (crew->heel_step)
                              ? g_strdup_printf (_ ("heel each %g°"), crew->heel_step * 180 / G_PI)
                              : NULL;
  g_autofree char *trim = isfinite (crew->trim_step)
                              ? g_strdup_printf (_ ("trim each %g°, dashed"), crew->trim_step * 180 / G_PI)
                              : NULL;

  /* Translators: the name of a load */
  g_autofree char *now = g_strdup_printf (_ ("%s, now"), crew->load);

  gb_key_add (crew->key, gb_mark_now, now, now_words (crew));
  gb_key_add (crew->key, gb_mark_best, _ ("Best place"), best_words (crew));
  gb_key_add (crew->key, gb_mark_furthest, _ ("How far out, there where it is"), furthest_words (crew));
  gb_key_add (crew->key, NULL, _ ("Lowest edge now"), lowest_words (crew));
  if (heel != NULL && trim != NULL)
    gb_key_add (crew->key, NULL, _ ("Thin lines"), g_strdup_printf ("%s; %s", heel, trim));
}

static void
say_title (GString *title, const GbCrew *crew)
{
  g_autofree char *best = gb_length_format (crew->map->best_freeboard, crew->units);
  g_autofree char *accepted = gb_length_format (crew->accepted, crew->units);
  g_autofree char *x = gb_length_format (crew->map->best.x, crew->units);
  g_autofree char *y = gb_length_format (fabs (crew->map->best.y), crew->units);
  double off = crew->map->best.y;
  gboolean aside = fabs (off) > 0.01;

  if (!isfinite (crew->map->best_freeboard) || !isfinite (crew->map->best.x) || !isfinite (off))
    g_string_append_printf (title,
                            gb_crew_is_whole (crew) ? _ ("There is no place for “%s” where she floats")
                                                    : _ ("Each place for “%s” is being worked out"),
                            crew->load);
  else if (crew->map->best_freeboard < crew->accepted)
    g_string_append_printf (
        title, _ ("Wherever “%s” is, no more than %s of freeboard is left; %s is the least accepted"),
        crew->load, best, accepted);
  else if (!aside)
    g_string_append_printf (title, _ ("“%s” is best at x %s, in the middle: that leaves %s of freeboard"),
                            crew->load, x, best);
  else
    g_string_append_printf (title,
                            off > 0
                                ? _ ("“%s” is best at x %s, %s to port: that leaves %s of freeboard")
                                : _ ("“%s” is best at x %s, %s to starboard: that leaves %s of freeboard"),
                            crew->load, x, y, best);
}

static void
say_subtitle (GString *text, const GbCrew *crew, const GbChartSource *source)
{
  const GbAfloat *afloat = gb_source_afloat (source);
  g_autofree char *accepted = gb_length_format (crew->accepted, crew->units);

  gb_say_condition (text, source, afloat != NULL ? afloat->total : NAN);
  gb_say (text, "%s", _ ("Least freeboard for each place of it: the fuller the shade, the higher;"));
  if (crew->has_accepted)
    gb_say (text, _ ("hatched where it is under the accepted %s."), accepted);
  else
    gb_say (text, "%s", _ ("hatched where an edge goes under."));
}

static void
describe (GString *text, const GbCrew *crew)
{
  const GbCrewPlace *now = &crew->here;

  for (guint i = 0; i < crew->key->len; i++)
    {
      const GbKeyRow *row = &g_array_index (crew->key, GbKeyRow, i);

      gb_say (text, "%s: %s.", row->name, row->figures);
    }
  if (now->state != GB_AFLOAT_UNKNOWN)
    {
      g_autofree char *words = tell_of (crew, now);

      gb_say (text, _ ("Where it is now: %s."), words);
    }
}

static void
say_empty (const GbChartSource *source, GbChartWords *words)
{
  const GbAfloat *afloat = gb_source_afloat (source);
  gboolean floats = afloat != NULL && afloat->state != GB_AFLOAT_UNKNOWN && afloat->state != GB_AFLOAT_SINKS;

  if (afloat != NULL && afloat->state == GB_AFLOAT_SINKS)
    gb_say_state (words->title, afloat);
  else if (floats && source->moved != 0)
    g_string_append (words->title, _ ("What each place does is being worked out"));
  else if (floats)
    g_string_append (words->title,
                     _ ("Pick a person or another load: what each place of it does is shown here"));
  else
    g_string_append (words->title, _ ("What each place of a person does stands here, once she floats"));
}

static gpointer
make (const GbChartSource *source, GbChartWords *words)
{
  GbCrew *crew = source->crew_map != NULL ? gb_crew_new (source) : NULL;

  if (crew == NULL)
    {
      say_empty (source, words);
      return NULL;
    }
  fill_key (crew);
  say_title (words->title, crew);
  say_subtitle (words->subtitle, crew, source);
  describe (words->description, crew);
  return crew;
}

static void
draw (gconstpointer data, GbCanvas *canvas, GbBox box)
{
  gb_crew_draw (data, canvas, box);
}

static const GbSceneItem *
item_of (const GbCrew *crew, guint what)
{
  return what < crew->scene->items->len ? &g_array_index (crew->scene->items, GbSceneItem, what) : NULL;
}

static char *
tell (gconstpointer data, guint what)
{
  const GbSceneItem *item = item_of (data, what);

  return item != NULL ? gb_scene_tell_item (item, ((const GbCrew *)data)->units) : NULL;
}

static char *
tell_place (gconstpointer data, const GbChartSpot *spot)
{
  const GbCrew *crew = data;
  const GbCrewPlace *place = gb_crew_place_at (crew, spot->at.x, spot->at.y);
  g_autofree char *at = place_words (crew, spot->at.x, spot->at.y);
  g_autofree char *words = NULL;

  if (place == NULL)
    return NULL;
  words = tell_of (crew, place);
  return g_strdup_printf ("%s, %s: %s", crew->load, at, words);
}

static gint64
id_of (const GbSceneItem *item, GbSceneKind kind)
{
  return item != NULL && item->kind == kind ? item->id : 0;
}

static gint64
part (gconstpointer data, guint what)
{
  return id_of (item_of (data, what), GB_SCENE_PART);
}

static gint64
load (gconstpointer data, guint what)
{
  return id_of (item_of (data, what), GB_SCENE_LOAD);
}

static gboolean
locate (gconstpointer data, GbCanvas *canvas, GbBox box, double x, double y, guint what, GbChartSpot *spot)
{
  return gb_crew_locate (data, canvas, box, x, y, spot);
}

const GbChartMethod gb_chart_crew = {
  .name = "crew",
  .label = N_ ("Where the crew may sit"),
  .caution = TRUE,
  .steady = TRUE,
  .make = make,
  .draw = draw,
  .tell = tell,
  .part = part,
  .load = load,
  .locate = locate,
  .tell_place = tell_place,
  .free = gb_crew_free,
};
