/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

/* The crew map on paper. */

#include "boat-draw.h"
#include "boat/deviation.h"
#include "crew-scene.h"
#include "pattern.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define FAINTEST 0.06 /* tints of the bands, from the accepted freeboard to the best */
#define STRONGEST 0.5
#define MOST_LINES 60

/* Marks ------------------------------------------------------------ */

void
gb_mark_best (GbCanvas *canvas, double x, double y)
{
  double r = canvas->em * 0.6;

  cairo_new_path (canvas->cr);
  for (guint i = 0; i < 10; i++)
    {
      double angle = i * G_PI / 5 - G_PI / 2, reach = i % 2 == 0 ? r : r * 0.42;

      cairo_line_to (canvas->cr, x + reach * cos (angle), y + reach * sin (angle));
    }
  cairo_close_path (canvas->cr);
  gb_canvas_colour (canvas, GB_ROLE_BACKGROUND);
  cairo_fill_preserve (canvas->cr);
  gb_canvas_stroke (canvas, GB_ROLE_TEXT, 1.6);
}

void
gb_mark_now (GbCanvas *canvas, double x, double y)
{
  gb_canvas_dot (canvas, GB_ROLE_PICKED, x, y, canvas->em * 0.4);
}

void
gb_mark_furthest (GbCanvas *canvas, double x, double y)
{
  gb_canvas_line (canvas, GB_ROLE_LIMIT, 3.5, x - canvas->em * 0.6, y, x + canvas->em * 0.6, y);
}

/* Fields ------------------------------------------------------------ */

static void
trace_corners (GbCanvas *canvas, const GbBoatView *view, const GbVec3 *corners, guint n)
{
  cairo_new_sub_path (canvas->cr);
  for (guint k = 0; k < n; k++)
    {
      double x, y;

      gb_boat_view_at (view, corners[k], &x, &y);
      cairo_line_to (canvas->cr, x, y);
    }
  cairo_close_path (canvas->cr);
}

/* The square whose lowest corner is @i, with all of it between @lo and @hi. */
static gboolean
is_within (const GbCrew *crew, guint i, double lo, double hi)
{
  const double corners[] = { crew->freeboard[i], crew->freeboard[i + 1], crew->freeboard[i + GB_MAP_COLUMNS],
                             crew->freeboard[i + GB_MAP_COLUMNS + 1] };

  for (guint k = 0; k < G_N_ELEMENTS (corners); k++)
    if (!(corners[k] >= lo && corners[k] <= hi))
      return FALSE;
  return TRUE;
}

/* All that lies between @lo and @hi. Squares beside one another that do so wholly are one box: paths of fewer
 * corners are drawn much faster. */
static void
trace_part (const GbCrew *crew, GbCanvas *canvas, const GbBoatView *view, double lo, double hi)
{
  GbNet net = gb_crew_net (crew, crew->freeboard);
  GbVec3 corners[GB_MOST_CORNERS];

  for (guint row = 0; row + 1 < GB_MAP_ROWS; row++)
    for (guint column = 0; column + 1 < GB_MAP_COLUMNS; column++)
      {
        guint i = row * GB_MAP_COLUMNS + column, end = i, t = 2 * (row * (GB_MAP_COLUMNS - 1) + column);

        while (end - row * GB_MAP_COLUMNS + 1 < GB_MAP_COLUMNS && is_within (crew, end, lo, hi))
          end++;
        if (end > i)
          {
            const GbVec3 box[] = { crew->points[i], crew->points[end], crew->points[end + GB_MAP_COLUMNS],
                                   crew->points[i + GB_MAP_COLUMNS] };

            trace_corners (canvas, view, box, G_N_ELEMENTS (box));
            column += end - i - 1;
            continue;
          }
        for (guint half = 0; half < 2; half++)
          {
            guint n = gb_level_part (&net, t + half, lo, hi, corners);

            if (n >= 3)
              trace_corners (canvas, view, corners, n);
          }
      }
}

/* The higher the darker. Each band lies over those under it, so that no seams show. */
static void
fill_bands (const GbCrew *crew, GbCanvas *canvas, const GbBoatView *view)
{
  double first = isfinite (crew->band) ? floor (fmax (crew->lo, crew->accepted) / crew->band) : NAN, from;
  guint n = isfinite (first) ? (guint)CLAMP (ceil (crew->hi / crew->band) - first, 1, MOST_LINES) : 0;

  cairo_new_path (canvas->cr);
  for (guint i = 0; i < n; i++)
    {
      from = fmax ((first + i) * crew->band, crew->accepted);
      trace_part (crew, canvas, view, from, INFINITY);
      gb_canvas_tint (canvas, GB_ROLE_COURSE, FAINTEST + (STRONGEST - FAINTEST) * (i + 1) / n);
      cairo_fill (canvas->cr);
    }
}

/* Loosely where less than the accepted freeboard is left, and densely where an edge is under. */
static void
hatch_bad (const GbCrew *crew, GbCanvas *canvas, const GbBoatView *view)
{
  if (crew->lo < crew->accepted)
    {
      trace_part (crew, canvas, view, 0, crew->accepted);
      gb_pattern_fill_pieces (canvas, GB_ROLE_UNDER, view->box, 2.5);
    }
  if (crew->lo < 0)
    {
      trace_part (crew, canvas, view, -INFINITY, 0);
      gb_pattern_fill_pieces (canvas, GB_ROLE_UNDER, view->box, 1);
    }
}

/* Lines ------------------------------------------------------------ */

/* One of the kinds of lines over the map. */
typedef struct
{
  GbRole role;
  double weight;
  gboolean dashed;
} Pen;

static void
stroke_line (GbCanvas *canvas, const GbBoatView *view, const GArray *line, Pen pen)
{
  const double dash[] = { canvas->em * 0.4, canvas->em * 0.3 };

  gb_boat_trace (canvas, view, line);
  if (pen.dashed)
    cairo_set_dash (canvas->cr, dash, G_N_ELEMENTS (dash), 0);
  gb_canvas_stroke (canvas, pen.role, pen.weight);
  cairo_set_dash (canvas->cr, NULL, 0, 0);
}

/* Where there is room, from the middle of the line outward. */
static void
write_on_line (GbCanvas *canvas, const GbBoatView *view, const GArray *line, GbRole role, const char *words)
{
  guint middle = line->len / 2;

  for (guint k = 0; k < line->len; k += 2)
    {
      guint i = k % 4 == 0 ? middle + k / 2 : middle - MIN (k / 2, middle);
      double x, y;

      if (i >= line->len)
        continue;
      gb_boat_view_at (view, g_array_index (line, GbVec3, i), &x, &y);
      if (gb_text_if_free (canvas, GB_TEXT_PLAIN, role, x, y, GB_AT_CENTRE | GB_AT_MIDDLE, words))
        return;
    }
}

/* All lines are drawn before the loads, and their words written after them: @write. */
static void
draw_level (const GbCrew *crew,
            GbCanvas *canvas,
            const GbBoatView *view,
            const double *values,
            double level,
            Pen pen,
            const char *words,
            gboolean write)
{
  GbNet net = gb_crew_net (crew, values);
  g_autoptr (GPtrArray) lines = gb_level_lines (&net, level);
  const GArray *longest = NULL;

  for (guint i = 0; i < lines->len; i++)
    {
      const GArray *line = g_ptr_array_index (lines, i);

      if (!write)
        stroke_line (canvas, view, line, pen);
      if (longest == NULL || line->len > longest->len)
        longest = line;
    }
  if (write && longest != NULL && words != NULL)
    write_on_line (canvas, view, longest, pen.role == GB_ROLE_LIMIT ? GB_ROLE_LIMIT : GB_ROLE_TEXT, words);
}

static void
draw_freeboards (const GbCrew *crew, GbCanvas *canvas, const GbBoatView *view, gboolean write)
{
  g_autofree char *accepted = gb_length_format (crew->accepted, crew->units);
  double first = isfinite (crew->band) ? ceil (fmax (crew->lo, 0) / crew->band) : NAN;

  draw_level (crew, canvas, view, crew->freeboard, crew->accepted, (Pen){ GB_ROLE_LIMIT, 3.5, FALSE },
              crew->has_accepted ? accepted : NULL, write);
  for (guint i = 0; isfinite (first) && i < MOST_LINES && (first + i) * crew->band < crew->hi; i++)
    {
      double level = (first + i) * crew->band;
      g_autofree char *words = gb_length_format (level, crew->units);

      if (level == crew->accepted)
        continue;
      draw_level (crew, canvas, view, crew->freeboard, level, (Pen){ GB_ROLE_COURSE, 1.6, FALSE }, words,
                  write);
    }
}

/* Heel, or trim. */
static void
draw_angles (const GbCrew *crew,
             GbCanvas *canvas,
             const GbBoatView *view,
             const double *values,
             double step,
             gboolean dashed,
             gboolean write)
{
  double lo = INFINITY, hi = -INFINITY;

  for (guint i = 0; i < GB_N_PLACES; i++)
    if (isfinite (values[i]))
      {
        lo = fmin (lo, values[i]);
        hi = fmax (hi, values[i]);
      }
  if (!isfinite (step) || !(hi > lo))
    return;
  for (double k = ceil (lo / step); k * step <= hi; k++)
    {
      g_autofree char *words = g_strdup_printf ("%g°", fabs (k * step) * 180 / G_PI);

      draw_level (crew, canvas, view, values, k * step, (Pen){ GB_ROLE_LINE, 0.9, dashed }, words, write);
    }
}

static void
draw_lines (const GbCrew *crew, GbCanvas *canvas, const GbBoatView *view, gboolean write)
{
  draw_freeboards (crew, canvas, view, write);
  draw_angles (crew, canvas, view, crew->heel, crew->heel_step, FALSE, write);
  draw_angles (crew, canvas, view, crew->trim, crew->trim_step, TRUE, write);
}

/* What is not found yet. */
static void
draw_waiting (const GbCrew *crew, GbCanvas *canvas, const GbBoatView *view)
{
  const GbCrewMap *map = crew->map;
  double row = (map->n_rows_found + GB_MAP_ROWS) / 2.0, x, y;

  if (gb_crew_is_whole (crew))
    return;
  gb_boat_view_at (view,
                   (GbVec3){ (map->x0 + map->x1) / 2, map->y0 + (map->y1 - map->y0) * row / GB_MAP_ROWS, 0 },
                   &x, &y);
  gb_text_if_free (canvas, GB_TEXT_PLAIN, GB_ROLE_QUIET, x, y, GB_AT_CENTRE | GB_AT_MIDDLE,
                   _ ("being worked out"));
}

static void
draw_furthest (const GbCrew *crew, GbCanvas *canvas, const GbBoatView *view)
{
  const double out[2] = { crew->map->furthest_port, crew->map->furthest_starboard };

  for (guint side = 0; side < 2; side++)
    {
      double x, y;

      gb_boat_view_at (view, (GbVec3){ crew->now.x, out[side], 0 }, &x, &y);
      if (!gb_box_holds (view->box, x, y))
        continue;
      gb_mark_furthest (canvas, x, y);
      gb_canvas_mark (canvas, gb_box_around (x, y, canvas->em * 0.5));
    }
}

static void
draw_best (const GbCrew *crew, GbCanvas *canvas, const GbBoatView *view)
{
  double x, y;

  gb_boat_view_at (view, crew->map->best, &x, &y);
  if (!gb_box_holds (view->box, x, y))
    return;
  gb_mark_best (canvas, x, y);
  gb_canvas_mark (canvas, gb_box_around (x, y, canvas->em * 0.6));
}

static void
name_best (const GbCrew *crew, GbCanvas *canvas, const GbBoatView *view)
{
  double x, y;

  gb_boat_view_at (view, crew->map->best, &x, &y);
  if (gb_box_holds (view->box, x, y))
    gb_text_beside (canvas, GB_TEXT_STRONG, GB_ROLE_TEXT, x, y, canvas->em * 0.8, _ ("best"));
}

/* The whole ------------------------------------------------------------ */

static GbBoatLayout
lay_out (const GbCrew *crew, GbCanvas *canvas, GbBox box)
{
  GbBoatWords words = { .key = gb_key_measure (crew->key, canvas), .numbers_give_way = TRUE };

  words.captions[GB_VIEW_PLAN] = gb_boat_caption_width (crew->scene, canvas, GB_VIEW_PLAN);
  return gb_boat_layout (crew->scene, canvas, box, &words);
}

void
gb_crew_draw (const GbCrew *crew, GbCanvas *canvas, GbBox box)
{
  GbBoatLayout layout = lay_out (crew, canvas, box);
  const GbBoatView *view = &layout.views[GB_VIEW_PLAN];

  if (layout.shown == 0)
    return;
  gb_boat_begin_view (crew->scene, canvas, view);
  fill_bands (crew, canvas, view);
  hatch_bad (crew, canvas, view);
  gb_boat_draw_hulls (crew->scene, canvas, view);
  draw_lines (crew, canvas, view, FALSE);
  draw_furthest (crew, canvas, view);
  draw_best (crew, canvas, view);
  gb_boat_draw_dots (crew->scene, canvas, view, FALSE);
  gb_boat_draw_dots (crew->scene, canvas, view, TRUE);
  gb_boat_name_items (crew->scene, canvas, view, TRUE);
  name_best (crew, canvas, view);
  draw_lines (crew, canvas, view, TRUE);
  gb_boat_name_items (crew->scene, canvas, view, FALSE);
  draw_waiting (crew, canvas, view);
  gb_boat_end_view (canvas);
  if (layout.key.width > 0)
    gb_key_draw (crew->key, canvas, layout.key);
}

gboolean
gb_crew_locate (const GbCrew *crew, GbCanvas *canvas, GbBox box, double x, double y, GbChartSpot *spot)
{
  GbBoatLayout layout = lay_out (crew, canvas, box);

  return gb_boat_locate (crew->scene, &layout, x, y, crew->now, spot);
}
