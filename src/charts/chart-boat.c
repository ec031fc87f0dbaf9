/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

/* The boat to scale, in side, plan and end view. */

#include "boat-scene.h"
#include "boat/quantity.h"
#include "words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Nearer than this share of the boat's length, weight and buoyancy count as over one another. */
#define LEVEL 0.005

static void
say_title (GString *title, const GbScene *scene)
{
  GbVec3 centre = gb_vec3_is_known (scene->loaded) ? scene->loaded : scene->light;
  double aft = scene->buoyancy.x - scene->loaded.x;
  g_autofree char *x = gb_length_format (centre.x, scene->units);
  g_autofree char *z = gb_length_format (centre.z, scene->units);
  g_autofree char *off = gb_length_format (fabs (aft), scene->units);

  if (isfinite (aft) && fabs (aft) <= LEVEL * (scene->hi.x - scene->lo.x))
    g_string_append (title, _ ("All up, the weight lies over the buoyancy: the boat floats level"));
  else if (isfinite (aft))
    g_string_append_printf (
        title,
        aft > 0 ? _ ("All up, the weight lies %s aft of the buoyancy: the stern will go down")
                : _ ("All up, the weight lies %s forward of the buoyancy: the bow will go down"),
        off);
  else if (gb_vec3_is_known (centre))
    g_string_append_printf (title, _ ("The centre of gravity lies %s forward and %s up"), x, z);
  else
    g_string_append (title, _ ("The boat to scale; its centre of gravity is not known yet"));
}

static void
say_subtitle (GString *text, const GbScene *scene)
{
  gb_say (text, "%s",
          _ ("To scale. Dots are parts, as large as their mass; people are figures, other loads squares."));
  if (scene->n_unplaced > 0)
    gb_say (text,
            ngettext ("%u part has no place yet and is not drawn.",
                      "%u parts have no place yet and are not drawn.", scene->n_unplaced),
            scene->n_unplaced);
  if (scene->n_outside > 0)
    gb_say (text,
            ngettext ("%u part lies far outside the picture.", "%u parts lie far outside the picture.",
                      scene->n_outside),
            scene->n_outside);
  if (scene->n_left_out > 0)
    gb_say (text,
            ngettext ("The lightest part is not drawn.", "The %u lightest parts are not drawn.",
                      scene->n_left_out),
            scene->n_left_out);
}

static void
describe_place (GString *text, const char *format, GbVec3 at, GbUnits units)
{
  g_autofree char *x = gb_length_format (at.x, units);
  g_autofree char *y = gb_length_format (at.y, units);
  g_autofree char *z = gb_length_format (at.z, units);

  if (gb_vec3_is_known (at))
    gb_say (text, format, x, y, z);
}

#define MOST_DESCRIBED 12u

static void
describe (GString *text, const GbScene *scene)
{
  describe_place (text, _ ("Centre of gravity, light craft: x %s, y %s, z %s."), scene->light, scene->units);
  describe_place (text, _ ("Centre of gravity, all up: x %s, y %s, z %s."), scene->loaded, scene->units);
  describe_place (text, _ ("Centre of buoyancy: x %s, y %s, z %s."), scene->buoyancy, scene->units);
  for (guint i = 0; i < MIN (scene->items->len, MOST_DESCRIBED); i++)
    {
      g_autofree char *item
          = gb_scene_tell_item (&g_array_index (scene->items, GbSceneItem, i), scene->units);

      gb_say (text, "%s.", item);
    }
}

static gpointer
make (const GbChartSource *source, GbChartWords *words)
{
  g_autoptr (GbScene) scene = gb_scene_new (source);

  if (gb_scene_is_empty (scene))
    {
      g_string_append (words->title,
                       _ ("The boat is drawn here, once there is a hull or a part with a place"));
      if (scene->n_unplaced > 0)
        say_subtitle (words->subtitle, scene);
      return NULL;
    }
  say_title (words->title, scene);
  say_subtitle (words->subtitle, scene);
  describe (words->description, scene);
  return g_steal_pointer (&scene);
}

static void
draw (gconstpointer data, GbCanvas *canvas, GbBox box)
{
  gb_scene_draw (data, canvas, box);
}

static const GbSceneItem *
item_of (gconstpointer data, guint what)
{
  return &g_array_index (((const GbScene *)data)->items, GbSceneItem, what);
}

static char *
tell (gconstpointer data, guint what)
{
  return gb_scene_tell_item (item_of (data, what), ((const GbScene *)data)->units);
}

static gint64
part (gconstpointer data, guint what)
{
  const GbSceneItem *item = item_of (data, what);

  return item->kind == GB_SCENE_PART ? item->id : 0;
}

static void
free_scene (gpointer data)
{
  gb_scene_free (data);
}

const GbChartMethod gb_chart_boat = {
  .name = "boat",
  .label = N_ ("The boat to scale"),
  .caution = TRUE,
  .make = make,
  .draw = draw,
  .tell = tell,
  .part = part,
  .free = free_scene,
};
