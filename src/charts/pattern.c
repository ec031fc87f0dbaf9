/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "pattern.h"

#include <math.h>

#define TINT 0.16 /* of the role's colour behind its pattern */

static double
first_multiple (double from, double step)
{
  return floor (from / step) * step;
}

static void
draw_hatch (cairo_t *cr, GbBox box, double step)
{
  /* Lines x + y = c. */
  for (double c = first_multiple (box.x + box.y, step); c <= box.x + box.width + box.y + box.height;
       c += step)
    {
      cairo_move_to (cr, c - box.y, box.y);
      cairo_line_to (cr, c - box.y - box.height, box.y + box.height);
    }
}

static void
draw_level (cairo_t *cr, GbBox box, double step)
{
  for (double y = box.y + step / 2; y <= box.y + box.height; y += step)
    {
      cairo_move_to (cr, box.x, y);
      cairo_line_to (cr, box.x + box.width, y);
    }
}

/* Every other row is shifted by half a step. */
static void
draw_dots (cairo_t *cr, GbBox box, double step, double radius)
{
  gboolean shifted = FALSE;

  for (double y = box.y + step / 2; y <= box.y + box.height + radius; y += step / 2)
    {
      double from = first_multiple (box.x, step) + (shifted ? step / 2 : 0);

      for (double x = from; x <= box.x + box.width + radius; x += step)
        {
          cairo_new_sub_path (cr);
          cairo_arc (cr, x, y, radius, 0, 2 * G_PI);
        }
      shifted = !shifted;
    }
}

static void
draw_pattern (GbCanvas *canvas, GbRole role, GbBox box, double apart)
{
  double em = canvas->em * apart, weight = 1 / sqrt (apart);

  switch (gb_role_pattern (role))
    {
    case GB_PATTERN_HATCH:
      draw_hatch (canvas->cr, box, em * 0.5);
      gb_canvas_stroke (canvas, role, 1.3 * weight);
      break;
    case GB_PATTERN_LEVEL:
      draw_level (canvas->cr, box, em * 0.3);
      gb_canvas_stroke (canvas, role, 1.1 * weight);
      break;
    case GB_PATTERN_DOTS:
      draw_dots (canvas->cr, box, em * 0.55, canvas->em * 0.09);
      gb_canvas_colour (canvas, role);
      cairo_fill (canvas->cr);
      break;
    case GB_PATTERN_SOLID:
    case GB_N_PATTERNS:
      break;
    }
}

void
gb_pattern_fill_pieces (GbCanvas *canvas, GbRole role, GbBox box, double apart)
{
  gboolean solid = gb_role_pattern (role) == GB_PATTERN_SOLID;

  gb_canvas_tint (canvas, role, solid ? 1 : TINT / apart);
  cairo_fill_preserve (canvas->cr);
  cairo_save (canvas->cr);
  cairo_clip (canvas->cr);
  if (!solid)
    draw_pattern (canvas, role, box, apart);
  cairo_restore (canvas->cr);
}

void
gb_pattern_fill_path (GbCanvas *canvas, GbRole role, GbBox box)
{
  cairo_path_t *path = cairo_copy_path (canvas->cr);

  gb_pattern_fill_pieces (canvas, role, box, 1);
  if (gb_role_pattern (role) != GB_PATTERN_SOLID)
    {
      cairo_append_path (canvas->cr, path);
      gb_canvas_stroke (canvas, role, 1.1);
    }
  cairo_path_destroy (path);
}

void
gb_pattern_fill (GbCanvas *canvas, GbRole role, GbBox box)
{
  double edge = gb_role_pattern (role) == GB_PATTERN_SOLID ? 0 : canvas->em / 24;

  /* The outline of a pattern stays within the box, so that every box is as large as it says. */
  if (box.width > 2 * edge && box.height > 2 * edge)
    box = gb_box_inset (box, edge, edge, edge, edge);
  if (!(box.width > 0 && box.height > 0))
    return;
  cairo_rectangle (canvas->cr, box.x, box.y, box.width, box.height);
  gb_pattern_fill_path (canvas, role, box);
}
