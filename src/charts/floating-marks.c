/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "floating-marks.h"
#include "boat/deviation.h"
#include "boat/quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Edges ------------------------------------------------------------ */

/* A stretch of an edge, dry or under. */
typedef struct
{
  double x1, y1, x2, y2;
} Stretch;

/* Short strokes that slant down from the line. */
static void
hatch_stretch (GbCanvas *canvas, Stretch s)
{
  double length = hypot (s.x2 - s.x1, s.y2 - s.y1), em = canvas->em;
  guint n = (guint)CLAMP (length / (em * 0.45), 1, 400);

  for (guint i = 0; i < n; i++)
    {
      double share = (i + 0.5) / n, x = s.x1 + share * (s.x2 - s.x1), y = s.y1 + share * (s.y2 - s.y1);

      cairo_move_to (canvas->cr, x, y);
      cairo_line_to (canvas->cr, x - em * 0.3, y + em * 0.5);
    }
  gb_canvas_stroke (canvas, GB_ROLE_UNDER, 1.2);
}

static void
draw_stretch (GbCanvas *canvas, const GbBoatView *view, GbVec3 a, GbVec3 b, gboolean under)
{
  Stretch s;

  gb_boat_view_at (view, a, &s.x1, &s.y1);
  gb_boat_view_at (view, b, &s.x2, &s.y2);
  gb_canvas_line (canvas, under ? GB_ROLE_UNDER : GB_ROLE_TEXT, under ? 2.6 : 1.3, s.x1, s.y1, s.x2, s.y2);
  if (under)
    hatch_stretch (canvas, s);
}

/* Parted where it goes into the water. */
static void
draw_edge_piece (GbCanvas *canvas, const GbBoatView *view, GbVec3 a, GbVec3 b)
{
  double share = a.z / (a.z - b.z);
  GbVec3 middle = { a.x + share * (b.x - a.x), a.y + share * (b.y - a.y), 0 };

  if ((a.z < 0) == (b.z < 0))
    {
      draw_stretch (canvas, view, a, b, a.z < 0);
      return;
    }
  draw_stretch (canvas, view, a, middle, a.z < 0);
  draw_stretch (canvas, view, middle, b, b.z < 0);
}

/* A hatch or a slot that is one point. */
static void
draw_edge_point (GbCanvas *canvas, const GbBoatView *view, GbVec3 p)
{
  double x, y;

  gb_boat_view_at (view, p, &x, &y);
  gb_canvas_dot (canvas, p.z < 0 ? GB_ROLE_UNDER : GB_ROLE_TEXT, x, y, canvas->em * 0.2);
}

void
gb_floating_draw_edges (const GbFloating *floating, GbCanvas *canvas, const GbBoatView *view)
{
  for (guint i = 0; i < floating->edges->len; i++)
    {
      const GArray *points = ((const GbFloatingEdge *)g_ptr_array_index (floating->edges, i))->points;

      if (points->len == 1)
        draw_edge_point (canvas, view, g_array_index (points, GbVec3, 0));
      for (guint k = 0; k + 1 < points->len; k++)
        draw_edge_piece (canvas, view, g_array_index (points, GbVec3, k),
                         g_array_index (points, GbVec3, k + 1));
    }
}

/* Lengths ------------------------------------------------------------ */

/* A draughtsman's length: a line with a slanting stroke at each end. */
static void
draw_length (GbCanvas *canvas, GbRole role, double x1, double y1, double x2, double y2)
{
  double reach = canvas->em * 0.25;

  gb_canvas_line (canvas, role, 1.4, x1, y1, x2, y2);
  gb_canvas_line (canvas, role, 1.8, x1 - reach, y1 + reach, x1 + reach, y1 - reach);
  gb_canvas_line (canvas, role, 1.8, x2 - reach, y2 + reach, x2 + reach, y2 - reach);
}

static gboolean
belongs (guint which, GbView view)
{
  switch (which)
    {
    case GB_FREEBOARD_LEAST:
      return view == GB_VIEW_SIDE;
    case GB_FREEBOARD_PORT:
    case GB_FREEBOARD_STARBOARD:
      return view == GB_VIEW_END;
    default:
      return view == GB_VIEW_SIDE;
    }
}

/* Those that stand in the view, the middle one only if @all. */
static guint
draughts_within (const GbFloating *floating,
                 const GbBoatView *view,
                 gboolean all,
                 const GbMeasured *found[GB_N_DRAUGHTS],
                 double *centres)
{
  guint n = 0;

  for (guint which = 0; which < GB_N_DRAUGHTS; which++)
    {
      const GbMeasured *measured = &floating->measured[which];
      double x, y;

      if (!isfinite (measured->value) || (which == GB_DRAUGHT_MID && !all))
        continue;
      gb_boat_view_at (view, measured->from, &x, &y);
      if (!gb_box_holds (view->box, x, y))
        continue;
      found[n] = measured;
      centres[n++] = x;
    }
  return n;
}

/* In a row by the lower edge of the view. FALSE if there is no room for the whole of it. */
static gboolean
write_draught_row (
    const GbFloating *floating, GbCanvas *canvas, const GbBoatView *view, gboolean all, gboolean named)
{
  const GbMeasured *found[GB_N_DRAUGHTS];
  double centres[GB_N_DRAUGHTS], widths[GB_N_DRAUGHTS], em = canvas->em;
  double from = view->box.x + em * 0.2, to = view->box.x + view->box.width - em * 0.2;
  double y = view->box.y + view->box.height - em * 0.1;
  g_auto (GStrv) words = g_new0 (char *, GB_N_DRAUGHTS + 1);
  guint n = draughts_within (floating, view, all, found, centres);

  for (guint i = 0; i < n; i++)
    {
      words[i] = named ? g_strdup (found[i]->words)
                       : gb_length_format (found[i]->value, floating->scene->units);
      widths[i] = gb_text_width (canvas, GB_TEXT_PLAIN, words[i]);
    }
  if (!gb_spread (centres, widths, n, from, to, em * 0.8))
    return FALSE;
  for (guint i = 0; i < n; i++)
    if (!gb_text_is_free (canvas, GB_TEXT_PLAIN, centres[i], y, GB_AT_CENTRE | GB_AT_BOTTOM, words[i]))
      return FALSE;
  for (guint i = 0; i < n; i++)
    gb_text_if_free (canvas, GB_TEXT_PLAIN, GB_ROLE_TEXT, centres[i], y, GB_AT_CENTRE | GB_AT_BOTTOM,
                     words[i]);
  return TRUE;
}

/* Under the boat; with less to say where there is less room. */
static void
write_draughts (const GbFloating *floating, GbCanvas *canvas, const GbBoatView *view)
{
  if (view->view != GB_VIEW_SIDE)
    return;
  if (!write_draught_row (floating, canvas, view, TRUE, TRUE)
      && !write_draught_row (floating, canvas, view, FALSE, TRUE)
      && !write_draught_row (floating, canvas, view, TRUE, FALSE))
    write_draught_row (floating, canvas, view, FALSE, FALSE);
}

/* On the side that is away from the boat's middle, if it is free. */
static void
write_freeboard (GbCanvas *canvas, const GbBoatView *view, const GbMeasured *measured, double x, double y)
{
  gboolean left = x < view->box.x + view->box.width / 2;
  GbRole role = measured->value < 0 ? GB_ROLE_UNDER : GB_ROLE_TEXT;
  double off = canvas->em * 0.5;

  if (!gb_text_if_free (canvas, GB_TEXT_STRONG, role, left ? x - off : x + off, y,
                        GB_AT_MIDDLE | (left ? GB_AT_RIGHT : GB_AT_LEFT), measured->words))
    gb_text_beside (canvas, GB_TEXT_STRONG, role, x, y, off, measured->words);
}

void
gb_floating_draw_measured (const GbFloating *floating, GbCanvas *canvas, const GbBoatView *view)
{
  for (guint which = 0; which < GB_N_MEASURED; which++)
    {
      const GbMeasured *measured = &floating->measured[which];
      double x1, y1, x2, y2;

      if (!isfinite (measured->value) || !belongs (which, view->view))
        continue;
      gb_boat_view_at (view, measured->from, &x1, &y1);
      gb_boat_view_at (view, measured->to, &x2, &y2);
      if (!gb_box_holds (view->box, x1, y1) || !gb_box_holds (view->box, x2, y2))
        continue;
      draw_length (canvas, measured->value < 0 ? GB_ROLE_UNDER : GB_ROLE_TEXT, x1, y1, x2, y2);
      gb_canvas_hit (canvas,
                     (GbBox){ fmin (x1, x2) - canvas->em * 0.5, fmin (y1, y2) - canvas->em * 0.3, canvas->em,
                              fabs (y2 - y1) + canvas->em * 0.6 },
                     floating->scene->items->len + which);
      if (which >= GB_N_DRAUGHTS)
        write_freeboard (canvas, view, measured, (x1 + x2) / 2, (y1 + y2) / 2);
    }
  write_draughts (floating, canvas, view);
}

/* At the first of its points; from the side the two of a pair stand behind one another. */
void
gb_floating_name_openings (const GbFloating *floating, GbCanvas *canvas, const GbBoatView *view)
{
  for (guint i = 0; view->view != GB_VIEW_END && i < floating->edges->len; i++)
    {
      const GbFloatingEdge *edge = g_ptr_array_index (floating->edges, i);
      double x, y;

      if (edge->opening == NULL || edge->points->len == 0
          || (edge->mirrored && view->view == GB_VIEW_SIDE))
        continue;
      gb_boat_view_at (view, g_array_index (edge->points, GbVec3, 0), &x, &y);
      gb_text_beside (canvas, GB_TEXT_PLAIN, GB_ROLE_TEXT, x, y, canvas->em * 0.6, edge->opening);
    }
}

void
gb_floating_draw_marked (const GbFloating *floating, GbCanvas *canvas, const GbBoatView *view)
{
  for (guint i = 0; i < floating->n_marked; i++)
    {
      const GbMarkedPlace *marked = &floating->marked[i];
      double x, y, before_x = INFINITY, before_y = INFINITY;

      if (i > 0)
        gb_boat_view_at (view, floating->marked[i - 1].at, &before_x, &before_y);
      gb_boat_view_at (view, marked->at, &x, &y);
      /* Behind one another they are one. */
      if (!gb_box_holds (view->box, x, y) || hypot (x - before_x, y - before_y) < canvas->em * 0.5)
        continue;
      marked->mark (canvas, x, y);
      gb_canvas_mark (canvas, gb_box_around (x, y, canvas->em * 0.6));
      gb_text_beside (canvas, GB_TEXT_STRONG, GB_ROLE_TEXT, x, y, canvas->em * 0.8, marked->name);
    }
}

/* The figures grow and shrink while a load is dragged: room for the usual ones, and in steps for more; em. */
#define USUAL_FIGURES 6
#define MORE_FIGURES 3

static double
words_width (const GbFloating *floating, GbCanvas *canvas, guint which)
{
  const GbMeasured *measured = &floating->measured[which];
  double step = MORE_FIGURES * canvas->em, width;

  if (!isfinite (measured->value))
    return 0;
  width = gb_text_width (canvas, GB_TEXT_STRONG, measured->words) + canvas->em * 0.6;
  return fmax (USUAL_FIGURES * canvas->em, ceil (width / step) * step);
}

GbPads
gb_floating_pads (const GbFloating *floating, GbCanvas *canvas, GbView view)
{
  double em = canvas->em, line = gb_text_height (canvas, GB_TEXT_PLAIN), side;

  switch (view)
    {
    case GB_VIEW_SIDE:
      return (GbPads){ em * 1.5, em * 0.5, em * 1.5, isfinite (floating->keel) ? line : em * 0.5 };
    case GB_VIEW_END:
      side = fmax (words_width (floating, canvas, GB_FREEBOARD_PORT),
                   words_width (floating, canvas, GB_FREEBOARD_STARBOARD));
      return (GbPads){ fmax (side, em), em * 0.5, fmax (side, em), em * 0.5 };
    default:
      return (GbPads){ em * 0.5, em * 0.3, em * 0.5, em * 0.3 };
    }
}

/* Beneath the side view stay the draughts, and beside the end view the freeboards. */
GbPads
gb_floating_tight_pads (const GbFloating *floating, GbCanvas *canvas, GbView view)
{
  GbPads pads = gb_floating_pads (floating, canvas, view);

  switch (view)
    {
    case GB_VIEW_SIDE:
      return (GbPads){ 0, 0, 0, isfinite (floating->keel) ? pads.bottom : 0 };
    case GB_VIEW_END:
      return (GbPads){ pads.left, 0, pads.right, 0 };
    default:
      return (GbPads){ 0, 0, 0, 0 };
    }
}
