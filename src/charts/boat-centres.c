/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "boat-centres.h"
#include "words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* The trade's mark of a centre of gravity: a circle with two opposite quarters black. That of a centre of
 * buoyancy is filled below, as the water stands. */
static void
draw_centre (GbCanvas *canvas, double x, double y, gboolean buoyancy)
{
  cairo_t *cr = canvas->cr;
  double r = canvas->em * 0.52;

  cairo_new_sub_path (cr);
  cairo_arc (cr, x, y, r, 0, 2 * G_PI);
  gb_canvas_colour (canvas, GB_ROLE_BACKGROUND);
  cairo_fill_preserve (cr);
  gb_canvas_stroke (canvas, GB_ROLE_TEXT, 1.2);
  if (buoyancy)
    {
      cairo_arc (cr, x, y, r, 0, G_PI);
      cairo_close_path (cr);
    }
  else
    for (guint quarter = 0; quarter < 2; quarter++)
      {
        double from = quarter * G_PI;

        cairo_move_to (cr, x, y);
        cairo_arc (cr, x, y, r, from - G_PI / 2, from);
        cairo_close_path (cr);
      }
  gb_canvas_colour (canvas, buoyancy ? GB_ROLE_COURSE : GB_ROLE_TEXT);
  cairo_fill (cr);
}

void
gb_mark_gravity (GbCanvas *canvas, double x, double y)
{
  draw_centre (canvas, x, y, FALSE);
}

void
gb_mark_buoyancy (GbCanvas *canvas, double x, double y)
{
  draw_centre (canvas, x, y, TRUE);
}

typedef struct
{
  const char *sign, *name;
  GbVec3 at;
  gboolean buoyancy;
} Centre;

#define MOST_CENTRES 3u

/* The ones that are known. With nothing aboard light craft and all are one. */
static guint
find_centres (const GbScene *scene, Centre centres[MOST_CENTRES])
{
  guint n = 0;
  gboolean loaded = gb_vec3_is_known (scene->loaded);
  gboolean apart = !gb_vec3_is_known (scene->light) || fabs (scene->loaded.x - scene->light.x) > 1e-6
                   || fabs (scene->loaded.y - scene->light.y) > 1e-6
                   || fabs (scene->loaded.z - scene->light.z) > 1e-6;

  if (loaded && apart)
    centres[n++] = (Centre){ C_ ("centre", "G"), _ ("Centre of gravity, all up"), scene->loaded, FALSE };
  if (gb_vec3_is_known (scene->light))
    centres[n++] = (Centre){ loaded && apart ? C_ ("centre", "G light") : C_ ("centre", "G"),
                             _ ("Centre of gravity, light craft"), scene->light, FALSE };
  if (gb_vec3_is_known (scene->buoyancy))
    centres[n++] = (Centre){ C_ ("centre", "B"), _ ("Centre of buoyancy"), scene->buoyancy, TRUE };
  return n;
}

void
gb_boat_draw_centres (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view)
{
  Centre centres[MOST_CENTRES];
  double x[MOST_CENTRES], y[MOST_CENTRES];
  guint n = find_centres (scene, centres);

  for (guint i = n; i-- > 0;)
    {
      gb_boat_view_at (view, centres[i].at, &x[i], &y[i]);
      if (!gb_box_holds (view->box, x[i], y[i]))
        continue;
      draw_centre (canvas, x[i], y[i], centres[i].buoyancy);
      gb_canvas_mark (canvas, gb_box_around (x[i], y[i], canvas->em * 0.5));
    }
  for (guint i = 0; i < n; i++)
    if (gb_box_holds (view->box, x[i], y[i]))
      gb_text_beside (canvas, GB_TEXT_STRONG, GB_ROLE_TEXT, x[i], y[i], canvas->em * 0.75, centres[i].sign);
}

char *
gb_place_words (GbVec3 at, GbUnits units)
{
  g_autofree char *x = gb_length_format (at.x, units);
  g_autofree char *y = gb_length_format (at.y, units);
  g_autofree char *z = gb_length_format (at.z, units);

  return g_strdup_printf ("x %s, y %s, z %s", x, y, z);
}

void
gb_boat_add_centres (const GbScene *scene, GArray *key)
{
  Centre centres[MOST_CENTRES];
  guint n = find_centres (scene, centres);

  for (guint i = 0; i < n; i++)
    gb_key_add (key, centres[i].buoyancy ? gb_mark_buoyancy : gb_mark_gravity, centres[i].name,
                gb_place_words (gb_scene_from (scene, centres[i].at), scene->units));
}
