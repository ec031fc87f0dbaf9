/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

/* The boat in the water on paper. */

#include "boat-centres.h"
#include "floating-marks.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* All that is under the water's surface, boat or not, lightly. */
static void
fill_water (const GbFloating *floating, GbCanvas *canvas, const GbBoatView *view)
{
  double bottom = view->box.y + view->box.height;
  double top
      = floating->has_water ? gb_axis_at (&view->up, 0) : gb_axis_at (&view->up, floating->scene->water);

  top = CLAMP (top, view->box.y, bottom);
  cairo_rectangle (canvas->cr, view->box.x, top, view->box.width, bottom - top);
  gb_canvas_tint (canvas, GB_ROLE_WATER, 0.12);
  cairo_fill (canvas->cr);
}

/* From above: where the water cuts the hulls, and the floor that it makes there. */
static void
fill_waterplane (const GbFloating *floating, GbCanvas *canvas, const GbBoatView *view)
{
  for (guint i = 0; i < floating->waterline->len; i++)
    gb_boat_trace (canvas, view, g_ptr_array_index (floating->waterline, i));
  gb_canvas_tint (canvas, GB_ROLE_WATER, 0.28);
  cairo_fill (canvas->cr);
}

static void
draw_waterplane (const GbFloating *floating, GbCanvas *canvas, const GbBoatView *view)
{
  for (guint i = 0; i < floating->waterline->len; i++)
    gb_boat_trace (canvas, view, g_ptr_array_index (floating->waterline, i));
  gb_canvas_stroke (canvas, GB_ROLE_WATER, 1.8);
}

/* The surface, edge-on. */
static void
draw_surface (GbCanvas *canvas, const GbBoatView *view)
{
  double y = gb_axis_at (&view->up, 0);

  if (gb_box_holds (view->box, view->box.x, y))
    gb_canvas_line (canvas, GB_ROLE_WATER, 1.8, view->box.x, y, view->box.x + view->box.width, y);
}

/* Only a help: where the figures leave room. */
static void
name_water (GbCanvas *canvas, const GbBoatView *view)
{
  double y = gb_axis_at (&view->up, 0), em = canvas->em, right = view->box.x + view->box.width;

  if (view->view == GB_VIEW_PLAN || !gb_box_holds (view->box, view->box.x, y))
    return;
  gb_text_if_free (canvas, GB_TEXT_PLAIN, GB_ROLE_QUIET, right - em * 0.3, y + em * 0.15,
                   GB_AT_RIGHT | GB_AT_TOP, _ ("water"));
}

/* The line that draughts are taken from. */
static void
draw_keel_line (const GbFloating *floating, GbCanvas *canvas, const GbBoatView *view)
{
  double x1, y1, x2, y2;

  if (view->view != GB_VIEW_SIDE || !isfinite (floating->keel) || !isfinite (floating->keel_fore_x)
      || !isfinite (floating->keel_aft_x))
    return;
  gb_boat_view_at (
      view, gb_scene_place (floating->scene, (GbVec3){ floating->keel_aft_x, 0, floating->keel }), &x1, &y1);
  gb_boat_view_at (
      view, gb_scene_place (floating->scene, (GbVec3){ floating->keel_fore_x, 0, floating->keel }), &x2, &y2);
  gb_canvas_dashed (canvas, GB_ROLE_LINE, 1, x1, y1, x2, y2);
}

/* Names of loads where there is room for them: in plan, where they stand apart, or in a wide view from the
 * side. */
static gboolean
names_loads (GbCanvas *canvas, const GbBoatView *view)
{
  return view->view != GB_VIEW_END && view->box.width > 18 * canvas->em;
}

static void
draw_view (const GbFloating *floating, GbCanvas *canvas, const GbBoatView *view)
{
  const GbScene *scene = floating->scene;
  gboolean from_above = view->view == GB_VIEW_PLAN;

  gb_boat_begin_view (scene, canvas, view);
  cairo_save (canvas->cr);
  cairo_rectangle (canvas->cr, view->box.x, view->box.y, view->box.width, view->box.height);
  cairo_clip (canvas->cr);
  if (!from_above)
    fill_water (floating, canvas, view);
  gb_boat_fill_hulls (scene, canvas, view);
  if (from_above)
    fill_waterplane (floating, canvas, view);
  gb_boat_draw_hulls (scene, canvas, view);
  if (from_above)
    draw_waterplane (floating, canvas, view);
  else
    draw_surface (canvas, view);
  gb_floating_draw_edges (floating, canvas, view);
  draw_keel_line (floating, canvas, view);
  gb_boat_draw_dots (scene, canvas, view, FALSE);
  gb_boat_draw_dots (scene, canvas, view, TRUE);
  gb_boat_draw_centres (scene, canvas, view);
  gb_floating_draw_marked (floating, canvas, view);
  gb_floating_draw_measured (floating, canvas, view);
  name_water (canvas, view);
  gb_boat_name_items (scene, canvas, view, TRUE);
  gb_floating_name_openings (floating, canvas, view);
  if (names_loads (canvas, view))
    gb_boat_name_items (scene, canvas, view, FALSE);
  cairo_restore (canvas->cr);
  gb_boat_end_view (canvas);
}

/* Up to a multiple of @step, in em: figures that change do not change the layout. */
static double
whole_steps (GbCanvas *canvas, double width, double step)
{
  return ceil (width / (step * canvas->em)) * step * canvas->em;
}

static GbBoatLayout
lay_out (const GbFloating *floating, GbCanvas *canvas, GbBox box)
{
  GbBoatWords words = { .key = gb_key_measure (floating->key, canvas), .numbers_give_way = TRUE };

  words.key.width = whole_steps (canvas, words.key.width, 4);

  for (guint v = 0; v < GB_N_VIEWS; v++)
    {
      words.captions[v] = gb_boat_caption_width (floating->scene, canvas, (GbView)v);
      words.pads[v] = gb_floating_pads (floating, canvas, (GbView)v);
      words.tight[v] = gb_floating_tight_pads (floating, canvas, (GbView)v);
    }
  return gb_boat_layout (floating->scene, canvas, box, &words);
}

void
gb_floating_draw (const GbFloating *floating, GbCanvas *canvas, GbBox box)
{
  GbBoatLayout layout = lay_out (floating, canvas, box);

  for (guint v = 0; v < GB_N_VIEWS; v++)
    if ((layout.shown & 1u << v) != 0)
      draw_view (floating, canvas, &layout.views[v]);
  if (layout.key.width > 0)
    gb_key_draw (floating->key, canvas, layout.key);
}

/* What is held along the line of sight: where the load is that is picked, or else what is under the point;
 * nothing: the origin. */
static GbVec3
held_place (const GbFloating *floating, guint what)
{
  const GbScene *scene = floating->scene;
  GbVec3 held = { NAN, NAN, NAN };

  for (guint i = 0; i < scene->dots->len; i++)
    {
      const GbSceneDot *dot = &g_array_index (scene->dots, GbSceneDot, i);
      const GbSceneItem *item = &g_array_index (scene->items, GbSceneItem, dot->item);

      if (dot->item == what)
        return gb_scene_from (scene, dot->at);
      if (item->picked && item->kind == GB_SCENE_LOAD)
        held = gb_scene_from (scene, dot->at);
    }
  return held;
}

gboolean
gb_floating_locate (const GbFloating *floating,
                    GbCanvas *canvas,
                    GbBox box,
                    double x,
                    double y,
                    guint what,
                    GbChartSpot *spot)
{
  GbBoatLayout layout = lay_out (floating, canvas, box);

  /* In a drag, what happens to lie under the pointer is not what is dragged. */
  return gb_boat_locate (floating->scene, &layout, x, y,
                         held_place (floating, spot->view < 0 ? what : GB_NO_HIT), spot);
}

const GbSceneItem *
gb_floating_item (const GbFloating *floating, guint what)
{
  return what < floating->scene->items->len ? &g_array_index (floating->scene->items, GbSceneItem, what)
                                            : NULL;
}

char *
gb_floating_tell (const GbFloating *floating, guint what)
{
  guint measured = what - floating->scene->items->len;

  if (what < floating->scene->items->len)
    return gb_scene_tell_item (gb_floating_item (floating, what), floating->scene->units);
  return measured < GB_N_MEASURED ? g_strdup (floating->measured[measured].tell) : NULL;
}

static gint64
id_of (const GbFloating *floating, guint what, GbSceneKind kind)
{
  const GbSceneItem *item = gb_floating_item (floating, what);

  return item != NULL && item->kind == kind ? item->id : 0;
}

gint64
gb_floating_part (gconstpointer data, guint what)
{
  return id_of (data, what, GB_SCENE_PART);
}

gint64
gb_floating_load (gconstpointer data, guint what)
{
  return id_of (data, what, GB_SCENE_LOAD);
}
