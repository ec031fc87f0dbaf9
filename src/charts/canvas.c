/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "canvas.h"

#include <math.h>

/* A logical pixel is 1/96 inch and print is in points, so these are 9 pt each. */
#define SMALLEST_ON_SCREEN 12.0
#define SMALLEST_IN_PRINT 9.0

/* Words grow a little on a large picture, but never as fast as the picture. */
static double
choose_em (double width, double height, GbChartStyle style)
{
  double room = fmin (width / 900, height / 560);

  return (style == GB_CHART_PRINT ? SMALLEST_IN_PRINT : SMALLEST_ON_SCREEN) * CLAMP (room, 1.0, 1.35);
}

/* Without hinting, words are as wide on every surface. */
static PangoContext *
create_pango (cairo_t *cr)
{
  PangoContext *pango = pango_cairo_create_context (cr);
  cairo_font_options_t *options = cairo_font_options_create ();

  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias (options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options (pango, options);
  cairo_font_options_destroy (options);
  pango_context_set_round_glyph_positions (pango, FALSE);
  return pango;
}

void
gb_canvas_init (GbCanvas *canvas, cairo_t *cr, double width, double height, GbChartStyle style)
{
  canvas->cr = cairo_reference (cr);
  canvas->width = width;
  canvas->height = height;
  canvas->em = choose_em (width, height, style);
  canvas->style = style;
  canvas->pango = create_pango (cr);
  canvas->words = g_array_new (FALSE, FALSE, sizeof (GbBox));
  canvas->marks = g_array_new (FALSE, FALSE, sizeof (GbBox));
  canvas->room = (GbBox){ 0, 0, width, height };
  canvas->hits = g_array_new (FALSE, FALSE, sizeof (GbHit));
  cairo_save (cr);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
}

void
gb_canvas_clear (GbCanvas *canvas)
{
  if (canvas->cr == NULL)
    return;
  cairo_restore (canvas->cr);
  g_clear_pointer (&canvas->cr, cairo_destroy);
  g_clear_object (&canvas->pango);
  g_clear_pointer (&canvas->words, g_array_unref);
  g_clear_pointer (&canvas->marks, g_array_unref);
  g_clear_pointer (&canvas->hits, g_array_unref);
}

void
gb_canvas_hit (GbCanvas *canvas, GbBox box, guint what)
{
  GbHit hit = { box, what };

  g_array_append_val (canvas->hits, hit);
}

void
gb_canvas_mark (GbCanvas *canvas, GbBox box)
{
  g_array_append_val (canvas->marks, box);
}

/* By small boxes along it. */
void
gb_canvas_mark_line (GbCanvas *canvas, double x1, double y1, double x2, double y2)
{
  double length = hypot (x2 - x1, y2 - y1), reach = canvas->em * 0.1;
  guint n = (guint)CLAMP (length / (canvas->em * 0.5), 1, 200);

  if (y1 == y2)
    {
      gb_canvas_mark (canvas, (GbBox){ fmin (x1, x2), y1 - reach, fabs (x2 - x1), 2 * reach });
      return;
    }
  for (guint i = 0; i <= n; i++)
    gb_canvas_mark (canvas, gb_box_around (x1 + (x2 - x1) * i / n, y1 + (y2 - y1) * i / n, reach));
}

const GbHit *
gb_hits_find (const GArray *hits, double x, double y)
{
  for (guint i = hits->len; i-- > 0;)
    {
      const GbHit *hit = &g_array_index (hits, GbHit, i);

      if (gb_box_holds (hit->box, x, y))
        return hit;
    }
  return NULL;
}

gboolean
gb_box_overlaps (GbBox a, GbBox b)
{
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

gboolean
gb_box_holds (GbBox box, double x, double y)
{
  return x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height;
}

GbBox
gb_box_around (double x, double y, double reach)
{
  return (GbBox){ x - reach, y - reach, 2 * reach, 2 * reach };
}

GbBox
gb_box_inset (GbBox box, double left, double top, double right, double bottom)
{
  return (GbBox){ box.x + left, box.y + top, box.width - left - right, box.height - top - bottom };
}

void
gb_canvas_colour (GbCanvas *canvas, GbRole role)
{
  gb_canvas_tint (canvas, role, 1);
}

void
gb_canvas_tint (GbCanvas *canvas, GbRole role, double share)
{
  GbColour colour = gb_colour_mix (gb_role_colour (role, canvas->style),
                                   gb_role_colour (GB_ROLE_BACKGROUND, canvas->style), share);

  cairo_set_source_rgb (canvas->cr, colour.r, colour.g, colour.b);
}

void
gb_canvas_stroke (GbCanvas *canvas, GbRole role, double weight)
{
  gb_canvas_colour (canvas, role);
  cairo_set_line_width (canvas->cr, weight * canvas->em / 12);
  cairo_stroke (canvas->cr);
}

void
gb_canvas_line (GbCanvas *canvas, GbRole role, double weight, double x1, double y1, double x2, double y2)
{
  cairo_move_to (canvas->cr, x1, y1);
  cairo_line_to (canvas->cr, x2, y2);
  gb_canvas_stroke (canvas, role, weight);
}

void
gb_canvas_dashed (GbCanvas *canvas, GbRole role, double weight, double x1, double y1, double x2, double y2)
{
  const double dash[] = { canvas->em * 0.4, canvas->em * 0.25 };

  cairo_set_dash (canvas->cr, dash, G_N_ELEMENTS (dash), 0);
  gb_canvas_line (canvas, role, weight, x1, y1, x2, y2);
  cairo_set_dash (canvas->cr, NULL, 0, 0);
}

void
gb_canvas_dot (GbCanvas *canvas, GbRole role, double x, double y, double radius)
{
  cairo_new_sub_path (canvas->cr);
  cairo_arc (canvas->cr, x, y, radius, 0, 2 * G_PI);
  gb_canvas_colour (canvas, role);
  cairo_fill (canvas->cr);
}

void
gb_canvas_whisker (GbCanvas *canvas, double x, double y, double half)
{
  double end = canvas->em * 0.3;

  cairo_move_to (canvas->cr, x - half, y);
  cairo_line_to (canvas->cr, x + half, y);
  for (int side = -1; side <= 1; side += 2)
    {
      cairo_move_to (canvas->cr, x + side * half, y - end);
      cairo_line_to (canvas->cr, x + side * half, y + end);
    }
  gb_canvas_stroke (canvas, GB_ROLE_TEXT, 1.5);
}
