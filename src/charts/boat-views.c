/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

/* The boat on paper: three views to one scale, and a key. */

#include "boat-centres.h"
#include "boat-draw.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Hulls and water ------------------------------------------------------------ */

void
gb_boat_trace (GbCanvas *canvas, const GbBoatView *view, const GArray *points)
{
  cairo_new_sub_path (canvas->cr);
  for (guint i = 0; i < points->len; i++)
    {
      double x, y;

      gb_boat_view_at (view, g_array_index (points, GbVec3, i), &x, &y);
      cairo_line_to (canvas->cr, x, y);
    }
}

/* All triangles that turn to the eye, as one path that turns one way: their union is the silhouette. */
static void
trace_silhouette (GbCanvas *canvas, const GbBoatView *view, const GbMesh *mesh)
{
  for (guint t = 0; t < mesh->n_triangles; t++)
    {
      double x[3], y[3];

      for (guint k = 0; k < 3; k++)
        gb_boat_view_at (view, mesh->points[mesh->triangles[t][k]], &x[k], &y[k]);
      if ((x[1] - x[0]) * (y[2] - y[0]) - (x[2] - x[0]) * (y[1] - y[0]) >= 0)
        continue;
      cairo_move_to (canvas->cr, x[0], y[0]);
      cairo_line_to (canvas->cr, x[1], y[1]);
      cairo_line_to (canvas->cr, x[2], y[2]);
      cairo_close_path (canvas->cr);
    }
}

/* The body of the hulls, and what of it is under water. */
void
gb_boat_fill_hulls (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view)
{
  cairo_t *cr = canvas->cr;

  for (guint h = 0; h < scene->hulls->len; h++)
    trace_silhouette (canvas, view, &g_array_index (scene->hulls, GbSceneHull, h).mesh);
  gb_canvas_tint (canvas, GB_ROLE_LINE, 0.08);
  if (!isfinite (scene->water) || view->view == GB_VIEW_PLAN)
    {
      cairo_fill (cr);
      return;
    }
  cairo_fill_preserve (cr);
  cairo_save (cr);
  cairo_clip (cr);
  cairo_rectangle (cr, view->box.x, gb_axis_at (&view->up, scene->water), view->box.width, view->box.height);
  gb_canvas_tint (canvas, GB_ROLE_WATER, 0.28);
  cairo_fill (cr);
  cairo_restore (cr);
}

void
gb_boat_draw_hulls (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view)
{
  for (guint h = 0; h < scene->hulls->len; h++)
    {
      const GbSceneHull *hull = &g_array_index (scene->hulls, GbSceneHull, h);

      for (guint i = 0; view->view == GB_VIEW_END && i < hull->sections->len; i++)
        gb_boat_trace (canvas, view, g_ptr_array_index (hull->sections, i));
      gb_canvas_stroke (canvas, GB_ROLE_LINE, 0.6);
      for (guint i = 0; i < hull->lines[view->view]->len; i++)
        {
          const GbSegment *line = &g_array_index (hull->lines[view->view], GbSegment, i);
          double x, y;

          gb_boat_view_at (view, line->a, &x, &y);
          cairo_move_to (canvas->cr, x, y);
          gb_boat_view_at (view, line->b, &x, &y);
          cairo_line_to (canvas->cr, x, y);
        }
      gb_canvas_stroke (canvas, GB_ROLE_LINE, 1);
      for (guint i = 0; i < hull->edges->len; i++)
        gb_boat_trace (canvas, view, g_ptr_array_index (hull->edges, i));
      gb_canvas_stroke (canvas, GB_ROLE_TEXT, 1.3);
    }
}

/* The limit first, as it lies higher where all is well. */
typedef struct
{
  double z;
  GbRole role;
  double weight;
  const char *words;
} Waterline;

#define N_WATERLINES 2u

static void
find_waterlines (const GbScene *scene, Waterline lines[N_WATERLINES])
{
  guint limit = scene->water > scene->limit ? 1 : 0;

  lines[limit] = (Waterline){ scene->limit, GB_ROLE_LIMIT, 2.6, _ ("Limit") };
  lines[1 - limit] = (Waterline){ scene->water, GB_ROLE_WATER, 1.6, _ ("Waterline") };
}

static double
waterlines_width (const GbScene *scene, GbCanvas *canvas)
{
  Waterline lines[N_WATERLINES];
  double widest = 0;

  find_waterlines (scene, lines);
  for (guint i = 0; i < N_WATERLINES; i++)
    if (isfinite (lines[i].z))
      widest = fmax (widest, gb_text_width (canvas, GB_TEXT_STRONG, lines[i].words) + canvas->em * 0.4);
  return widest;
}

/* In the side view the words stand at the right ends, apart from one another. */
static void
draw_waterlines (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view)
{
  Waterline lines[N_WATERLINES];
  double centres[N_WATERLINES] = { 0 }, heights[N_WATERLINES] = { 0 }, right = view->box.x + view->box.width;
  guint n = 0, shown[N_WATERLINES];

  find_waterlines (scene, lines);
  for (guint i = 0; i < N_WATERLINES; i++)
    {
      double y = gb_axis_at (&view->up, lines[i].z);

      if (view->view == GB_VIEW_PLAN || !gb_box_holds (view->box, view->box.x, y))
        continue;
      gb_canvas_line (canvas, lines[i].role, lines[i].weight, view->box.x, y, right, y);
      centres[n] = y;
      heights[n] = gb_text_height (canvas, GB_TEXT_STRONG);
      shown[n++] = i;
    }
  gb_spread (centres, heights, n, view->box.y, view->box.y + view->box.height, 0);
  for (guint k = 0; view->view == GB_VIEW_SIDE && k < n; k++)
    gb_text_draw (
        canvas, GB_TEXT_STRONG, lines[shown[k]].role == GB_ROLE_LIMIT ? GB_ROLE_LIMIT : GB_ROLE_TEXT,
        right + canvas->em * 0.4, centres[k], GB_AT_LEFT | GB_AT_MIDDLE, GB_ANY_WIDTH, lines[shown[k]].words);
}

/* Views ------------------------------------------------------------ */

/* Where a view is small, names that are only a help give way. */
static gboolean
has_room_for_names (GbCanvas *canvas, const GbBoatView *view)
{
  return view->view == GB_VIEW_SIDE && view->box.width > 22 * canvas->em;
}

static const char *
view_name (GbView view)
{
  return view == GB_VIEW_SIDE ? _ ("Side") : view == GB_VIEW_PLAN ? _ ("Plan") : _ ("From aft");
}

static const char *
water_axes (GbView view, GbUnits units)
{
  if (units == GB_UNITS_FEET)
    return view == GB_VIEW_SIDE   ? _ ("forward, up from the water, ft")
           : view == GB_VIEW_PLAN ? _ ("forward, to port, ft")
                                  : _ ("to port, up from the water, ft");
  return view == GB_VIEW_SIDE   ? _ ("forward, up from the water, m")
         : view == GB_VIEW_PLAN ? _ ("forward, to port, m")
                                : _ ("to port, up from the water, m");
}

static const char *
view_axes (const GbScene *scene, GbView view)
{
  if (scene->afloat)
    return water_axes (view, scene->units);
  if (scene->units == GB_UNITS_FEET)
    return view == GB_VIEW_SIDE   ? _ ("x forward, z up, ft")
           : view == GB_VIEW_PLAN ? _ ("x forward, y port, ft")
                                  : _ ("y port, z up, ft");
  return view == GB_VIEW_SIDE   ? _ ("x forward, z up, m")
         : view == GB_VIEW_PLAN ? _ ("x forward, y port, m")
                                : _ ("y port, z up, m");
}

static const char *
unit_name (const GbScene *scene)
{
  return scene->units == GB_UNITS_FEET ? _ ("ft") : _ ("m");
}

/* The quiet part says what the numbers count; in a narrow view only their unit. */
static void
draw_caption (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view)
{
  double y = view->box.y - canvas->em * GB_VIEW_TOP, x = view->box.x - canvas->em * GB_VIEW_LEFT;
  const char *axes = view_axes (scene, view->view);
  GbBox name = gb_text_draw (canvas, GB_TEXT_STRONG, GB_ROLE_TEXT, x, y, GB_AT_LEFT | GB_AT_BOTTOM,
                             GB_ANY_WIDTH, view_name (view->view));

  x += name.width + canvas->em * 0.5;
  if (x + gb_text_width (canvas, GB_TEXT_PLAIN, axes) > view->box.x + view->box.width + canvas->em * 0.2)
    axes = unit_name (scene);
  gb_text_draw (canvas, GB_TEXT_PLAIN, GB_ROLE_QUIET, x, y, GB_AT_LEFT | GB_AT_BOTTOM, GB_ANY_WIDTH, axes);
}

double
gb_boat_caption_width (const GbScene *scene, GbCanvas *canvas, GbView view)
{
  return gb_text_width (canvas, GB_TEXT_STRONG, view_name (view)) + canvas->em * 0.5
         + gb_text_width (canvas, GB_TEXT_PLAIN, unit_name (scene));
}

/* The baseline, or in plan the centreline, is the one line of the grid that is more than a help. */
static void
draw_scales (GbCanvas *canvas, const GbBoatView *view)
{
  GbBox box = view->box;
  double zero = gb_axis_at (&view->up, 0);

  gb_axis_draw_left (&view->up, canvas, box.x, box.x + box.width);
  if (view->numbered)
    gb_axis_draw_below (&view->right, canvas, box.y + box.height, box.y);
  else
    gb_axis_draw_lines (&view->right, canvas, box.y + box.height, box.y);
  if (zero >= box.y && zero <= box.y + box.height)
    gb_canvas_line (canvas, GB_ROLE_LINE, 1, box.x, zero, box.x + box.width, zero);
}

void
gb_boat_begin_view (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view)
{
  draw_caption (scene, canvas, view);
  draw_scales (canvas, view);
  canvas->room = view->box;
}

void
gb_boat_end_view (GbCanvas *canvas)
{
  canvas->room = (GbBox){ 0, 0, canvas->width, canvas->height };
}

static void
draw_view (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view)
{
  gb_boat_begin_view (scene, canvas, view);
  gb_boat_fill_hulls (scene, canvas, view);
  draw_waterlines (scene, canvas, view);
  gb_boat_draw_hulls (scene, canvas, view);
  gb_boat_draw_dots (scene, canvas, view, FALSE);
  gb_boat_draw_dots (scene, canvas, view, TRUE);
  gb_boat_draw_centres (scene, canvas, view);
  gb_boat_name_items (scene, canvas, view, TRUE);
  if (has_room_for_names (canvas, view))
    {
      gb_boat_name_items (scene, canvas, view, FALSE);
      gb_boat_name_groups (scene, canvas, view);
    }
  gb_boat_end_view (canvas);
}

void
gb_scene_draw (const GbScene *scene, GbCanvas *canvas, GbBox box)
{
  g_autoptr (GArray) key = gb_key_new ();
  GbBoatWords words = { .waterlines = waterlines_width (scene, canvas) };
  GbBoatLayout layout;

  gb_boat_add_centres (scene, key);
  words.key = gb_key_measure (key, canvas);
  for (guint v = 0; v < GB_N_VIEWS; v++)
    words.captions[v] = gb_boat_caption_width (scene, canvas, (GbView)v);
  layout = gb_boat_layout (scene, canvas, box, &words);
  for (guint v = 0; v < GB_N_VIEWS; v++)
    if ((layout.shown & 1u << v) != 0)
      draw_view (scene, canvas, &layout.views[v]);
  if (layout.key.width > 0)
    gb_key_draw (key, canvas, layout.key);
}
