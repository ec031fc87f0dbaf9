/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

/* How the forecast of the light craft's mass went while parts were weighed, with one deviation either way,
 * and under it the share that is weighed. Between two days of weighing nothing is known to have changed:
 * lines are level there. */

#include "boat/quantity.h"
#include "chart-private.h"
#include "plot.h"
#include "words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* A screen reader says the latest; nobody listens to more. */
#define MOST_DESCRIBED 24u

typedef struct
{
  GbUnits units;
  GbHistoryPoint *points; /* the first is before any weighing, dated a little before the second to be drawn */
  guint n_points;
  double target; /* NAN: none */
} History;

static void
history_free (gpointer data)
{
  History *history = data;

  g_free (history->points);
  g_free (history);
}

static char *
tell_point (const History *history, guint i)
{
  const GbHistoryPoint *point = &history->points[i];
  g_autofree char *mass = gb_quantity_format_with_sd (point->mass, point->mass_sd, GB_DIM_MASS, history->units);
  g_autofree char *share = gb_percent_words (point->weighed_share);
  g_autofree char *date = NULL;

  if (i == 0)
    return g_strdup_printf (_ ("Before anything was weighed: forecast %s."), mass);
  date = gb_date_format (point->date);
  return g_strdup_printf (_ ("%s: forecast %s, %s weighed."), date, mass, share);
}

static void
say_title (GString *title, const History *history)
{
  const GbHistoryPoint *first = &history->points[0], *last = &history->points[history->n_points - 1];
  double change = last->mass - first->mass;
  g_autofree char *by = gb_quantity_format_off (change, last->mass, GB_DIM_MASS, history->units);
  g_autofree char *share = gb_percent_words (last->weighed_share);

  if (fabs (change) < 0.005 * fabs (first->mass))
    g_string_append_printf (title, _ ("Weighing has left the forecast where it was; %s is weighed"), share);
  else if (change > 0)
    g_string_append_printf (title, _ ("Weighing has raised the forecast by %s; %s is weighed"), by, share);
  else
    g_string_append_printf (title, _ ("Weighing has lowered the forecast by %s; %s is weighed"), by, share);
}

/* The points with a mass. A twelfth of the time stands for all that was before the first weighing. */
static History *
take_points (const GbHistory *from, const GbBuild *build)
{
  History *history = g_new0 (History, 1);

  history->units = (GbUnits) build->units;
  history->target = build->target_mass;
  history->points = g_new0 (GbHistoryPoint, from->n_points);
  for (guint i = 0; i < from->n_points; i++)
    if (isfinite (from->points[i].mass))
      history->points[history->n_points++] = from->points[i];
  if (history->n_points >= 2 && history->points[0].date <= 0)
    history->points[0].date
        = history->points[1].date
          - MAX ((history->points[history->n_points - 1].date - history->points[1].date) / 12, 1);
  return history;
}

static gpointer
make (const GbChartSource *source, GbChartWords *words)
{
  History *history;

  if (source->history == NULL)
    {
      g_string_append (words->title, _ ("How the forecast went is not worked out yet"));
      return NULL;
    }
  history = take_points (source->history, gb_boat_build (source->boat));
  if (history->n_points < 2)
    {
      g_string_append (words->title, _ ("How the forecast goes stands here, once a part is weighed"));
      history_free (history);
      return NULL;
    }
  say_title (words->title, history);
  gb_say (words->subtitle, "%s",
          _ ("The light craft with margin, as forecast on each day of weighing, with its deviation."));
  gb_say_no_mass (words->subtitle, source->findings->rollup.boat.n_no_mass);
  for (guint i = history->n_points - MIN (history->n_points, MOST_DESCRIBED); i < history->n_points; i++)
    {
      g_autofree char *text = tell_point (history, i);

      gb_say (words->description, "%s", text);
    }
  if (isfinite (history->target))
    {
      g_autofree char *target = gb_quantity_format (history->target, GB_DIM_MASS, history->units);

      gb_say (words->description, _ ("Target %s."), target);
    }
  return history;
}

static double
deviation (const GbHistoryPoint *point)
{
  return point->mass_sd > 0 && isfinite (point->mass_sd) ? point->mass_sd : 0;
}

/* A level line from each point to the next, @side deviations off; the last runs to the axis's end. */
static void
trace_mass (const History *history, GbCanvas *canvas, const GbPlot *plot, double side, gboolean backwards)
{
  for (guint k = 0; k < history->n_points; k++)
    {
      guint i = backwards ? history->n_points - 1 - k : k;
      const GbHistoryPoint *point = &history->points[i];
      double from = gb_axis_at (&plot->x, (double) point->date);
      double to = i + 1 < history->n_points ? gb_axis_at (&plot->x, (double) point[1].date) : plot->x.end;
      double y = gb_axis_at (&plot->y, point->mass + side * deviation (point));

      cairo_line_to (canvas->cr, backwards ? to : from, y);
      cairo_line_to (canvas->cr, backwards ? from : to, y);
    }
}

static void
draw_band (const History *history, GbCanvas *canvas, const GbPlot *plot)
{
  trace_mass (history, canvas, plot, 1, FALSE);
  trace_mass (history, canvas, plot, -1, TRUE);
  cairo_close_path (canvas->cr);
  gb_canvas_tint (canvas, GB_ROLE_COURSE, 0.2);
  cairo_fill (canvas->cr);
}

/* Holds all points with their deviations, and the target. */
static void
make_mass_axis (const History *history, GbAxis *axis, guint most)
{
  double lo = G_MAXDOUBLE, hi = -G_MAXDOUBLE;

  for (guint i = 0; i < history->n_points; i++)
    {
      lo = fmin (lo, history->points[i].mass - deviation (&history->points[i]));
      hi = fmax (hi, history->points[i].mass + deviation (&history->points[i]));
    }
  if (isfinite (history->target))
    {
      lo = fmin (lo, history->target);
      hi = fmax (hi, history->target);
    }
  gb_axis_linear (axis, lo, hi, gb_quantity_factor (GB_DIM_MASS, history->units), most);
}

static void
draw_mass (const History *history, GbCanvas *canvas, const GbPlot *plot)
{
  g_autofree char *title
      = g_strdup_printf (_ ("Forecast, %s"), gb_quantity_unit (GB_DIM_MASS, history->units));

  gb_plot_draw_left (plot, canvas, title);
  gb_axis_draw_lines (&plot->x, canvas, plot->y.start, plot->y.end);
  draw_band (history, canvas, plot);
  if (isfinite (history->target))
    {
      double y = gb_axis_at (&plot->y, history->target);

      gb_canvas_line (canvas, GB_ROLE_LIMIT, 3.5, plot->x.start, y, plot->x.end, y);
    }
  trace_mass (history, canvas, plot, 0, FALSE);
  gb_canvas_stroke (canvas, GB_ROLE_COURSE, 2);
  for (guint i = 1; i < history->n_points; i++)
    gb_canvas_dot (canvas, GB_ROLE_COURSE, gb_axis_at (&plot->x, (double) history->points[i].date),
                   gb_axis_at (&plot->y, history->points[i].mass), canvas->em * 0.3);
}

static void
draw_share (const History *history, GbCanvas *canvas, const GbPlot *plot)
{
  double bottom = plot->y.start, y = bottom;

  gb_plot_draw_left (plot, canvas, _ ("Weighed, %"));
  gb_plot_draw_below (plot, canvas, NULL);
  cairo_move_to (canvas->cr, plot->x.start, bottom);
  for (guint i = 0; i < history->n_points; i++)
    {
      double x = gb_axis_at (&plot->x, (double) history->points[i].date);

      cairo_line_to (canvas->cr, x, y);
      y = gb_axis_at (&plot->y, CLAMP (history->points[i].weighed_share, 0, 1));
      cairo_line_to (canvas->cr, x, y);
    }
  cairo_line_to (canvas->cr, plot->x.end, y);
  cairo_line_to (canvas->cr, plot->x.end, bottom);
  cairo_close_path (canvas->cr);
  gb_canvas_tint (canvas, GB_ROLE_WEIGHED, 0.2);
  cairo_fill_preserve (canvas->cr);
  gb_canvas_stroke (canvas, GB_ROLE_WEIGHED, 1.4);
}

/* A strip from each point to the next. */
static void
mark_hits (const History *history, GbCanvas *canvas, const GbAxis *x, GbBox box)
{
  for (guint i = 0; i < history->n_points; i++)
    {
      double from = gb_axis_at (x, (double) history->points[i].date);
      double to = i + 1 < history->n_points ? gb_axis_at (x, (double) history->points[i + 1].date) : x->end;

      gb_canvas_hit (canvas, (GbBox){ from, box.y, to - from, box.height }, i);
    }
}

/* Two fields over one another with one calendar below both. */
static void
draw (gconstpointer data, GbCanvas *canvas, GbBox box)
{
  const History *history = data;
  const GbHistoryPoint *first = &history->points[0], *last = &history->points[history->n_points - 1];
  g_autofree char *mass_words = gb_quantity_format (last->mass, GB_DIM_MASS, history->units);
  g_autofree char *target = gb_quantity_format (history->target, GB_DIM_MASS, history->units);
  g_autofree char *target_words = g_strdup_printf (_ ("Target %s"), target);
  g_autofree char *share_words = gb_percent_words (last->weighed_share);
  const GbEndLabel mass_ends[]
      = { { last->mass, mass_words, GB_ROLE_TEXT }, { history->target, target_words, GB_ROLE_LIMIT } };
  const GbEndLabel share_end = { CLAMP (last->weighed_share, 0, 1), share_words, GB_ROLE_TEXT };
  double head = gb_plot_head (canvas), foot = gb_plot_foot (canvas, FALSE), em = canvas->em, lower, left,
         right;
  gint64 span = last->date - first->date;
  GbPlot mass, share;

  lower = CLAMP (box.height * 0.25, em * 2, em * 7);
  make_mass_axis (history, &mass.y, gb_plot_ticks (canvas, box.height - lower - foot - 2 * head));
  gb_axis_linear (&share.y, 0, 1, 0.01, MIN (gb_axis_most_ticks (lower, em * 1.5), 3));
  left = fmax (gb_axis_widest (&mass.y, canvas), gb_axis_widest (&share.y, canvas)) + em * 0.5;
  right = fmax (gb_end_labels_width (canvas, mass_ends, 2), gb_end_labels_width (canvas, &share_end, 1));
  gb_axis_dates (&mass.x, first->date, last->date + MAX (span / 16, 1),
                 gb_axis_most_ticks (box.width - left - right, em * 5));
  share.x = mass.x;
  gb_plot_arrange (&mass, (GbBox){ box.x, box.y, box.width, box.height - lower - foot - head - em * 0.6 },
                   left, head, right, 0);
  gb_plot_arrange (&share,
                   (GbBox){ box.x, box.y + box.height - lower - foot - head, box.width, lower + foot + head },
                   left, head, right, foot);
  draw_mass (history, canvas, &mass);
  gb_plot_end_labels (&mass, canvas, mass_ends, G_N_ELEMENTS (mass_ends));
  draw_share (history, canvas, &share);
  gb_plot_end_labels (&share, canvas, &share_end, 1);
  mark_hits (history, canvas, &mass.x, box);
}

static char *
tell (gconstpointer data, guint what)
{
  return tell_point (data, what);
}

const GbChartMethod gb_chart_history = {
  .name = "history",
  .label = N_ ("Forecast and weighings"),
  .make = make,
  .draw = draw,
  .tell = tell,
  .free = history_free,
};
