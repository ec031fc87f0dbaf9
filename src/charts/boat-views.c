/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

/* The boat on paper: three views to one scale, and a key. */

#include "boat-centres.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Hulls and water ------------------------------------------------------------ */

static void
trace_points (GbCanvas *canvas, const GbBoatView *view, const GArray *points)
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
static void
fill_hulls (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view)
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

static void
draw_hulls (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view)
{
  for (guint h = 0; h < scene->hulls->len; h++)
    {
      const GbSceneHull *hull = &g_array_index (scene->hulls, GbSceneHull, h);

      for (guint i = 0; view->view == GB_VIEW_END && i < hull->sections->len; i++)
        trace_points (canvas, view, g_ptr_array_index (hull->sections, i));
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
        trace_points (canvas, view, g_ptr_array_index (hull->edges, i));
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

/* Parts and loads ------------------------------------------------------------ */

/* The area goes with the mass. The heaviest is as large as the boat allows. */
static double
dot_radius (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view, const GbSceneItem *item)
{
  double em = canvas->em, most = CLAMP (0.05 * sqrt (view->box.width * view->box.height), em * 0.4, em * 1.1);

  if (item->kind == GB_SCENE_LOAD)
    return most * 0.5;
  return fmax (em * 0.2, most * sqrt (item->mass / scene->heaviest));
}

/* Parts are round, as large as their mass; loads are square. */
static void
draw_dot (GbCanvas *canvas, const GbSceneItem *item, double x, double y, double r)
{
  cairo_t *cr = canvas->cr;
  GbRole role = item->picked ? GB_ROLE_PICKED : item->kind == GB_SCENE_LOAD ? GB_ROLE_LOADS : GB_ROLE_PART;
  GbColour colour = gb_role_colour (role, canvas->style);

  cairo_new_sub_path (cr);
  if (item->kind == GB_SCENE_LOAD)
    cairo_rectangle (cr, x - r, y - r, 2 * r, 2 * r);
  else
    cairo_arc (cr, x, y, r, 0, 2 * G_PI);
  cairo_set_source_rgba (cr, colour.r, colour.g, colour.b, item->picked ? 0.9 : 0.3);
  cairo_fill_preserve (cr);
  gb_canvas_stroke (canvas, item->picked ? GB_ROLE_TEXT : role, item->picked ? 1.6 : 1);
}

static void
draw_dots (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view, gboolean picked)
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

static void
name_items (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view, gboolean picked)
{
  guint n = 0;

  for (guint i = 0; i < scene->dots->len && n < MOST_PICKED_NAMES; i++)
    {
      const GbSceneDot *dot = &g_array_index (scene->dots, GbSceneDot, i);
      const GbSceneItem *item = &g_array_index (scene->items, GbSceneItem, dot->item);
      double x, y;

      if (picked ? !item->picked : item->kind != GB_SCENE_LOAD)
        continue;
      n++;
      gb_boat_view_at (view, dot->at, &x, &y);
      if (gb_box_holds (view->box, x, y))
        gb_text_beside (canvas, picked ? GB_TEXT_STRONG : GB_TEXT_PLAIN, GB_ROLE_TEXT, x, y,
                        dot_radius (scene, canvas, view, item) + canvas->em * 0.2, item->name);
    }
}

/* Where a view is small, names that are only a help give way. */
static gboolean
has_room_for_names (GbCanvas *canvas, const GbBoatView *view)
{
  return view->view == GB_VIEW_SIDE && view->box.width > 22 * canvas->em;
}

static void
name_groups (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view)
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

/* Views ------------------------------------------------------------ */

static const char *
view_name (GbView view)
{
  return view == GB_VIEW_SIDE ? _ ("Side") : view == GB_VIEW_PLAN ? _ ("Plan") : _ ("From aft");
}

static const char *
view_axes (GbView view, GbUnits units)
{
  if (units == GB_UNITS_FEET)
    return view == GB_VIEW_SIDE   ? _ ("x forward, z up, ft")
           : view == GB_VIEW_PLAN ? _ ("x forward, y port, ft")
                                  : _ ("y port, z up, ft");
  return view == GB_VIEW_SIDE   ? _ ("x forward, z up, m")
         : view == GB_VIEW_PLAN ? _ ("x forward, y port, m")
                                : _ ("y port, z up, m");
}

static void
draw_caption (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view)
{
  double y = view->box.y - canvas->em * GB_VIEW_TOP, x = view->box.x - canvas->em * GB_VIEW_LEFT;
  GbBox name = gb_text_draw (canvas, GB_TEXT_STRONG, GB_ROLE_TEXT, x, y, GB_AT_LEFT | GB_AT_BOTTOM,
                             GB_ANY_WIDTH, view_name (view->view));

  gb_text_draw (canvas, GB_TEXT_PLAIN, GB_ROLE_QUIET, x + name.width + canvas->em * 0.5, y,
                GB_AT_LEFT | GB_AT_BOTTOM, GB_ANY_WIDTH, view_axes (view->view, scene->units));
}

static double
caption_width (const GbScene *scene, GbCanvas *canvas, GbView view)
{
  return gb_text_width (canvas, GB_TEXT_STRONG, view_name (view)) + canvas->em * 0.5
         + gb_text_width (canvas, GB_TEXT_PLAIN, view_axes (view, scene->units));
}

/* The baseline, or in plan the centreline, is the one line of the grid that is more than a help. */
static void
draw_scales (GbCanvas *canvas, const GbBoatView *view)
{
  GbBox box = view->box;
  double zero = gb_axis_at (&view->up, 0);

  gb_axis_draw_left (&view->up, canvas, box.x, box.x + box.width);
  gb_axis_draw_below (&view->right, canvas, box.y + box.height, box.y);
  if (zero >= box.y && zero <= box.y + box.height)
    gb_canvas_line (canvas, GB_ROLE_LINE, 1, box.x, zero, box.x + box.width, zero);
}

static void
draw_view (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view)
{
  draw_caption (scene, canvas, view);
  draw_scales (canvas, view);
  canvas->room = view->box;
  fill_hulls (scene, canvas, view);
  draw_waterlines (scene, canvas, view);
  draw_hulls (scene, canvas, view);
  draw_dots (scene, canvas, view, FALSE);
  draw_dots (scene, canvas, view, TRUE);
  gb_boat_draw_centres (scene, canvas, view);
  name_items (scene, canvas, view, TRUE);
  if (has_room_for_names (canvas, view))
    {
      name_items (scene, canvas, view, FALSE);
      name_groups (scene, canvas, view);
    }
  canvas->room = (GbBox){ 0, 0, canvas->width, canvas->height };
}

void
gb_scene_draw (const GbScene *scene, GbCanvas *canvas, GbBox box)
{
  GbBoatWords words
      = { .key = gb_boat_measure_key (scene, canvas), .waterlines = waterlines_width (scene, canvas) };
  GbBoatLayout layout;

  for (guint v = 0; v < GB_N_VIEWS; v++)
    words.captions[v] = caption_width (scene, canvas, (GbView) v);
  layout = gb_boat_layout (scene, canvas, box, &words);
  for (guint v = 0; v < GB_N_VIEWS; v++)
    draw_view (scene, canvas, &layout.views[v]);
  if (layout.key.width > 0)
    gb_boat_draw_key (scene, canvas, layout.key);
}
