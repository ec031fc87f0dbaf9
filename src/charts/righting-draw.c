/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

/* The curve of righting levers on paper. */

#include "righting-draw.h"

#include "boat/deviation.h"
#include "boat/quantity.h"
#include "plot.h"
#include "words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define DEGREE (G_PI / 180)

static double
at_heel (const GbPlot *plot, double heel)
{
  return gb_axis_at (&plot->x, heel);
}

static double
at_lever (const GbPlot *plot, double lever)
{
  return gb_axis_at (&plot->y, lever);
}

/* Lines ------------------------------------------------------------ */

static double
lever_of (const GbRightingPoint *point, gboolean solid)
{
  return solid ? point->solid : point->lever;
}

/* From @from to @to. */
static void
trace_curve (const GbRightingCurve *curve,
             GbCanvas *canvas,
             const GbPlot *plot,
             gboolean solid,
             double from,
             double to)
{
  cairo_new_path (canvas->cr);
  for (guint i = 0; i < GB_N_LEVERS; i++)
    {
      const GbRightingPoint *point = &curve->points[i];
      double lever = lever_of (point, solid);

      if (!isfinite (lever) || !(point->heel >= from && point->heel <= to))
        cairo_new_sub_path (canvas->cr);
      else
        cairo_line_to (canvas->cr, at_heel (plot, point->heel), at_lever (plot, lever));
    }
}

static void
mark_points (const GbRightingCurve *curve, GbCanvas *canvas, const GbPlot *plot)
{
  for (guint i = 0; i < GB_N_LEVERS; i++)
    {
      const GbRightingPoint *point = &curve->points[i];
      double x = at_heel (plot, point->heel), half = gb_axis_length (&plot->x, DEGREE) / 2;

      if (!isfinite (point->lever) || !isfinite (point->heel))
        continue;
      gb_canvas_mark (canvas, gb_box_around (x, at_lever (plot, point->lever), canvas->em * 0.12));
      gb_canvas_hit (canvas, (GbBox){ x - half, plot->field.y, 2 * half, plot->field.height }, i);
    }
}

/* Thin where she has filled. */
static void
draw_curves (const GbRightingCurve *curve, GbCanvas *canvas, const GbPlot *plot)
{
  const double dash[] = { canvas->em * 0.5, canvas->em * 0.35 };
  double from = curve->port.fills ? -curve->port.end : -INFINITY,
         to = curve->starboard.fills ? curve->starboard.end : INFINITY;

  if (curve->has_solid)
    {
      trace_curve (curve, canvas, plot, TRUE, -INFINITY, INFINITY);
      cairo_set_dash (canvas->cr, dash, G_N_ELEMENTS (dash), 0);
      gb_canvas_stroke (canvas, GB_ROLE_LINE, 1.4);
      cairo_set_dash (canvas->cr, NULL, 0, 0);
    }
  trace_curve (curve, canvas, plot, FALSE, -INFINITY, INFINITY);
  gb_canvas_stroke (canvas, GB_ROLE_COURSE, 1);
  trace_curve (curve, canvas, plot, FALSE, from, to);
  gb_canvas_stroke (canvas, GB_ROLE_COURSE, 2.6);
  mark_points (curve, canvas, plot);
}

/* Between the curve and the axis, from rest to @end. @sign: 1 to starboard, -1 to port. */
static void
fill_to (
    const GbRightingCurve *curve, GbCanvas *canvas, const GbPlot *plot, double end, int sign, double share)
{
  double from = curve->rest, to = sign * (isfinite (end) ? end : G_PI), last = 0;

  if (!((to - from) * sign > 0))
    return;
  cairo_new_path (canvas->cr);
  cairo_move_to (canvas->cr, at_heel (plot, from), at_lever (plot, 0));
  for (guint k = 0; k < GB_N_LEVERS; k++)
    {
      const GbRightingPoint *point = &curve->points[sign > 0 ? k : GB_N_LEVERS - 1 - k];

      if (!isfinite (point->lever) || !((point->heel - from) * sign > 0) || !((to - point->heel) * sign > 0))
        continue;
      cairo_line_to (canvas->cr, at_heel (plot, point->heel), at_lever (plot, point->lever));
      last = point->lever;
    }
  cairo_line_to (canvas->cr, at_heel (plot, to), at_lever (plot, last));
  cairo_line_to (canvas->cr, at_heel (plot, to), at_lever (plot, 0));
  cairo_close_path (canvas->cr);
  gb_canvas_tint (canvas, GB_ROLE_COURSE, share);
  cairo_fill (canvas->cr);
}

/* To where the lever vanishes, fuller as far as it can be counted on. */
static void
fill_area (
    const GbRightingCurve *curve, GbCanvas *canvas, const GbPlot *plot, const GbRightingReach *side, int sign)
{
  if (!(side->greatest > 0))
    return;
  fill_to (curve, canvas, plot, side->found.vanishing, sign, side->fills ? 0.07 : 0.18);
  if (side->fills)
    fill_to (curve, canvas, plot, side->end, sign, 0.22);
}

/* The usual construction: the tangent at rest is as high as GM one radian further on. Cut off where it leaves
 * the field. */
static void
draw_tangent (const GbRightingCurve *curve, GbCanvas *canvas, const GbPlot *plot)
{
  double share = fmin (1, plot->y.to / curve->gm), heel = curve->rest + share, x, y;
  g_autofree char *gm = gb_length_format (curve->gm, curve->units);
  g_autofree char *words = g_strdup_printf (_ ("GM %s"), gm);

  if (!(curve->gm > 0))
    return;
  x = at_heel (plot, heel);
  y = at_lever (plot, share * curve->gm);
  gb_canvas_dashed (canvas, GB_ROLE_LINE, 1.4, at_heel (plot, curve->rest), at_lever (plot, 0), x, y);
  if (share == 1)
    gb_canvas_dashed (canvas, GB_ROLE_LINE, 1, x, y, x, at_lever (plot, 0));
  if (!gb_text_if_free (canvas, GB_TEXT_PLAIN, GB_ROLE_TEXT, x + canvas->em * 0.4, y + canvas->em * 0.1,
                        GB_AT_LEFT | GB_AT_TOP, words))
    gb_text_beside (canvas, GB_TEXT_PLAIN, GB_ROLE_TEXT, x, y, canvas->em * 0.4, words);
}

/* Marks ------------------------------------------------------------ */

static void
draw_greatest (
    const GbRightingCurve *curve, GbCanvas *canvas, const GbPlot *plot, const GbRightingReach *side, int sign)
{
  double x = at_heel (plot, sign * side->greatest_at), y = at_lever (plot, sign * side->greatest);
  g_autofree char *lever = gb_length_format (side->greatest, curve->units);
  g_autofree char *angle = gb_angle_words (side->greatest_at, 0);
  /* Translators: a lever, and the heel at which it is so long */
  g_autofree char *words = g_strdup_printf (_ ("%s at %s"), lever, angle);

  if (!(side->greatest > 0) || !isfinite (x))
    return;
  gb_canvas_dot (canvas, GB_ROLE_COURSE, x, y, canvas->em * 0.3);
  if (!gb_text_if_free (canvas, GB_TEXT_STRONG, GB_ROLE_COURSE, x, y - sign * canvas->em * 0.5,
                        GB_AT_CENTRE | (sign > 0 ? GB_AT_BOTTOM : GB_AT_TOP), words))
    gb_text_beside (canvas, GB_TEXT_STRONG, GB_ROLE_COURSE, x, y, canvas->em * 0.5, words);
}

/* A bold stroke across the axis, and words away from the curve. */
static void
draw_end (GbCanvas *canvas, const GbPlot *plot, double heel, int sign, gboolean limit, const char *words)
{
  double x = at_heel (plot, sign * heel), y = at_lever (plot, 0), reach = canvas->em * (limit ? 1 : 0.5);
  GbRole role = limit ? GB_ROLE_LIMIT : GB_ROLE_QUIET;

  if (!isfinite (x))
    return;
  gb_canvas_line (canvas, role, limit ? 3.5 : 1.5, x, y - reach, x, y + reach);
  gb_canvas_mark (canvas, gb_box_around (x, y, canvas->em * 0.6));
  for (guint k = 0; k < 4; k++)
    if (gb_text_if_free (canvas, limit ? GB_TEXT_STRONG : GB_TEXT_PLAIN, role, x + sign * canvas->em * 0.5,
                         y - sign * canvas->em * (0.3 + k * 1.3),
                         sign > 0 ? GB_AT_LEFT | GB_AT_BOTTOM : GB_AT_RIGHT | GB_AT_TOP, words))
      return;
  gb_text_beside (canvas, limit ? GB_TEXT_STRONG : GB_TEXT_PLAIN, role, x, y, canvas->em * 1.2, words);
}

/* Where she fills, and where the lever vanishes. */
static void
draw_ends (GbCanvas *canvas, const GbPlot *plot, const GbRightingReach *side, int sign)
{
  g_autofree char *filling = gb_angle_words (side->found.filling, 0);
  g_autofree char *vanishing = gb_angle_words (side->found.vanishing, 0);
  g_autofree char *fills_words = g_strdup_printf (_ ("fills at %s"), filling);
  g_autofree char *vanishes_words = g_strdup_printf (_ ("vanishes at %s"), vanishing);

  if (side->fills)
    draw_end (canvas, plot, side->end, sign, TRUE, fills_words);
  draw_end (canvas, plot, side->found.vanishing, sign, !side->fills, vanishes_words);
}

/* As near as there is room, with a thin line back to it. */
static void
name_immersion (GbCanvas *canvas, double x, double y, int sign, const char *words)
{
  const GbAnchor across[]
      = { GB_AT_CENTRE, sign > 0 ? GB_AT_LEFT : GB_AT_RIGHT, sign > 0 ? GB_AT_RIGHT : GB_AT_LEFT };
  double em = canvas->em, aside[] = { 0, -sign * em * 0.4, sign * em * 0.4 };

  for (guint k = 0; k < 12; k++)
    for (guint a = 0; a < G_N_ELEMENTS (across); a++)
      {
        double to = y + sign * em * (0.2 + k * 1.3);

        if (!gb_text_if_free (canvas, GB_TEXT_PLAIN, GB_ROLE_TEXT, x + aside[a], to,
                              across[a] | (sign > 0 ? GB_AT_TOP : GB_AT_BOTTOM), words))
          continue;
        gb_canvas_line (canvas, GB_ROLE_LINE, 0.8, x, y, x, to);
        return;
      }
}

/* A small wedge at the axis, and the name on the far side of it from the curve. */
static void
draw_immersion (GbCanvas *canvas, const GbPlot *plot, const GbImmersionMark *mark)
{
  int sign = mark->heel < 0 ? -1 : 1;
  double x = at_heel (plot, mark->heel), y = at_lever (plot, 0), em = canvas->em, away = sign * em * 0.7;
  g_autofree char *angle = gb_angle_words (mark->heel, 0);
  g_autofree char *words = g_strdup_printf (_ ("%s under at %s"), mark->name, angle);

  cairo_move_to (canvas->cr, x, y);
  cairo_line_to (canvas->cr, x - em * 0.35, y + away);
  cairo_line_to (canvas->cr, x + em * 0.35, y + away);
  cairo_close_path (canvas->cr);
  gb_canvas_colour (canvas, GB_ROLE_UNDER);
  cairo_fill (canvas->cr);
  gb_canvas_mark (canvas, (GbBox){ x - em * 0.35, fmin (y, y + away), em * 0.7, em * 0.7 });
  name_immersion (canvas, x, y + away, sign, words);
}

static void
draw_balances (const GbRightingCurve *curve, GbCanvas *canvas, const GbPlot *plot)
{
  double y = at_lever (plot, 0), r = canvas->em * 0.35;

  for (guint i = 0; i < curve->n_balances; i++)
    {
      const GbBalance *balance = &curve->balances[i];
      double x = at_heel (plot, balance->heel);

      gb_canvas_dot (canvas, balance->stable ? GB_ROLE_TEXT : GB_ROLE_BACKGROUND, x, y, r);
      cairo_new_sub_path (canvas->cr);
      cairo_arc (canvas->cr, x, y, r, 0, 2 * G_PI);
      gb_canvas_stroke (canvas, GB_ROLE_TEXT, 1.4);
      gb_canvas_mark (canvas, gb_box_around (x, y, r));
    }
  for (guint i = 0; i < curve->n_balances; i++)
    gb_text_beside (canvas, GB_TEXT_PLAIN, GB_ROLE_QUIET, at_heel (plot, curve->balances[i].heel), y,
                    r + canvas->em * 0.2, curve->balances[i].stable ? _ ("stable") : _ ("unstable"));
}

/* The moment over her weight, level on the side that it turns her to; and where she comes to rest under it.
 */
static void
draw_moment (
    const GbRightingCurve *curve, GbCanvas *canvas, const GbPlot *plot, const GbRightingReach *side, int sign)
{
  double y = at_lever (plot, sign * curve->arm), x = at_heel (plot, sign * side->found.steady);
  g_autofree char *angle = gb_angle_words (side->found.steady, 0);
  g_autofree char *words = g_strdup_printf (_ ("heels to %s"), angle);

  if (!isfinite (curve->arm) || curve->arm == 0 || !gb_box_holds (plot->field, plot->field.x, y))
    return;
  gb_canvas_dashed (canvas, GB_ROLE_MARGIN, 2, at_heel (plot, 0), y, at_heel (plot, sign * G_PI), y);
  gb_text_if_free (canvas, GB_TEXT_PLAIN, GB_ROLE_TEXT, at_heel (plot, sign * G_PI) - sign * canvas->em * 0.3,
                   y - sign * canvas->em * 0.2,
                   (sign > 0 ? GB_AT_RIGHT | GB_AT_BOTTOM : GB_AT_LEFT | GB_AT_TOP), _ ("heeling moment"));
  if (!isfinite (x))
    return;
  gb_canvas_dashed (canvas, GB_ROLE_MARGIN, 1.2, x, y, x, at_lever (plot, 0));
  gb_canvas_dot (canvas, GB_ROLE_MARGIN, x, y, canvas->em * 0.3);
  gb_text_beside (canvas, GB_TEXT_STRONG, GB_ROLE_TEXT, x, y, canvas->em * 0.5, words);
}

/* The whole ------------------------------------------------------------ */

static void
arrange (const GbRightingCurve *curve, GbCanvas *canvas, GbBox box, GbPlot *plot)
{
  double head = gb_plot_head (canvas), foot = gb_plot_foot (canvas, TRUE), em = canvas->em, left;
  double most = curve->most > 0 ? fmin (curve->most, 1e6) * 1.25 : 0.1;
  guint ticks = gb_axis_most_ticks (box.width, em * 4);

  gb_axis_linear (&plot->y, -most, most, gb_quantity_factor (GB_DIM_LENGTH, curve->units),
                  gb_plot_ticks (canvas, box.height - head - foot));
  left = gb_axis_widest (&plot->y, canvas) + em * 0.5;
  gb_axis_within (&plot->x, -G_PI, G_PI, DEGREE, ticks >= 13 ? 30 : ticks >= 9 ? 45 : 90);
  gb_plot_arrange (plot, box, left, head, em * 1.5, foot);
}

void
gb_righting_draw (const GbRightingCurve *curve, GbCanvas *canvas, GbBox box)
{
  GbPlot plot;
  double y;
  g_autofree char *y_title
      = g_strdup_printf (_ ("Lever that turns her back, %s"), gb_quantity_unit (GB_DIM_LENGTH, curve->units));

  arrange (curve, canvas, box, &plot);
  gb_plot_draw_left (&plot, canvas, y_title);
  gb_plot_draw_below (&plot, canvas, _ ("Heel, degrees: port negative, starboard positive"));
  canvas->room = plot.field;
  fill_area (curve, canvas, &plot, &curve->starboard, 1);
  fill_area (curve, canvas, &plot, &curve->port, -1);
  y = at_lever (&plot, 0);
  gb_canvas_line (canvas, GB_ROLE_LINE, 1.2, plot.x.start, y, plot.x.end, y);
  draw_curves (curve, canvas, &plot);
  draw_greatest (curve, canvas, &plot, &curve->starboard, 1);
  draw_greatest (curve, canvas, &plot, &curve->port, -1);
  draw_ends (canvas, &plot, &curve->starboard, 1);
  draw_ends (canvas, &plot, &curve->port, -1);
  draw_tangent (curve, canvas, &plot);
  draw_moment (curve, canvas, &plot, &curve->starboard, 1);
  draw_moment (curve, canvas, &plot, &curve->port, -1);
  for (guint i = 0; i < curve->n_immersions; i++)
    draw_immersion (canvas, &plot, &curve->immersions[i]);
  draw_balances (curve, canvas, &plot);
  canvas->room = (GbBox){ 0, 0, canvas->width, canvas->height };
}
