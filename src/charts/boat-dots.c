/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

/* Parts and loads in a view, and their names. */

#include "boat-draw.h"

#include <math.h>

/* The area goes with the mass. The heaviest is as large as the boat allows. */
static double
dot_radius (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view, const GbSceneItem *item)
{
  double em = canvas->em, most = CLAMP (0.05 * sqrt (view->box.width * view->box.height), em * 0.4, em * 1.1);

  if (item->kind == GB_SCENE_LOAD)
    return most * 0.5;
  return fmax (em * 0.2, most * sqrt (item->mass / scene->heaviest));
}

/* A head over shoulders, about the person's centre. */
static void
trace_person (cairo_t *cr, double x, double y, double r)
{
  cairo_arc (cr, x, y - 0.65 * r, 0.5 * r, 0, 2 * G_PI);
  cairo_new_sub_path (cr);
  cairo_arc (cr, x, y + r, r, G_PI, 2 * G_PI);
  cairo_close_path (cr);
}

/* Parts are round, as large as their mass; people are small figures, other loads square. */
static void
draw_dot (GbCanvas *canvas, const GbSceneItem *item, double x, double y, double r)
{
  cairo_t *cr = canvas->cr;
  GbRole role = item->picked ? GB_ROLE_PICKED : item->kind == GB_SCENE_LOAD ? GB_ROLE_LOADS : GB_ROLE_PART;
  GbColour colour = gb_role_colour (role, canvas->style);

  cairo_new_sub_path (cr);
  if (item->person)
    trace_person (cr, x, y, r);
  else if (item->kind == GB_SCENE_LOAD)
    cairo_rectangle (cr, x - r, y - r, 2 * r, 2 * r);
  else
    cairo_arc (cr, x, y, r, 0, 2 * G_PI);
  cairo_set_source_rgba (cr, colour.r, colour.g, colour.b, item->picked ? 0.9 : 0.3);
  cairo_fill_preserve (cr);
  gb_canvas_stroke (canvas, item->picked ? GB_ROLE_TEXT : role, item->picked ? 1.6 : 1);
}

void
gb_boat_draw_dots (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view, gboolean picked)
{
  for (guint i = 0; i < scene->dots->len; i++)
    {
      const GbSceneDot *dot = &g_array_index (scene->dots, GbSceneDot, i);
      const GbSceneItem *item = &g_array_index (scene->items, GbSceneItem, dot->item);
      double r = dot_radius (scene, canvas, view, item), reach = fmax (r, canvas->em * 0.4), x, y;

      gb_boat_view_at (view, dot->at, &x, &y);
      if (item->picked != picked || !gb_box_holds (view->box, x, y))
        continue;
      draw_dot (canvas, item, x, y, r);
      gb_canvas_mark (canvas, gb_box_around (x, y, r));
      gb_canvas_hit (canvas, gb_box_around (x, y, reach), dot->item);
    }
}

#define MOST_PICKED_NAMES 8u

void
gb_boat_name_items (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view, gboolean picked)
{
  guint n = 0;

  for (guint i = 0; i < scene->dots->len && n < MOST_PICKED_NAMES; i++)
    {
      const GbSceneDot *dot = &g_array_index (scene->dots, GbSceneDot, i);
      const GbSceneItem *item = &g_array_index (scene->items, GbSceneItem, dot->item);
      double x, y;

      if (picked != item->picked || (!picked && item->kind != GB_SCENE_LOAD))
        continue;
      n++;
      gb_boat_view_at (view, dot->at, &x, &y);
      if (gb_box_holds (view->box, x, y))
        gb_text_beside (canvas, picked ? GB_TEXT_STRONG : GB_TEXT_PLAIN, GB_ROLE_TEXT, x, y,
                        dot_radius (scene, canvas, view, item) + canvas->em * 0.2, item->name);
    }
}

void
gb_boat_name_groups (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view)
{
  for (guint i = 0; i < scene->names->len; i++)
    {
      const GbSceneName *name = &g_array_index (scene->names, GbSceneName, i);
      double x, y;

      gb_boat_view_at (view, name->at, &x, &y);
      if (gb_box_holds (view->box, x, y))
        gb_text_beside (canvas, GB_TEXT_PLAIN, GB_ROLE_QUIET, x, y, canvas->em * 0.6, name->text);
    }
}
