/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

/* What was spent by date, against the budget, and from the last receipt on to the forecast. Money goes in
 * steps: a receipt a step. */

#include "boat/money.h"
#include "boat/quantity.h"
#include "chart-private.h"
#include "pattern.h"
#include "plot.h"
#include "words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* A screen reader says the latest; nobody listens to more. */
#define MOST_DESCRIBED 24u

typedef struct
{
  char *currency;
  double undated; /* spent on receipts without a date */
  GbSpendPoint *points;
  guint n_points;
  gint64 spent, to_buy, allowance, forecast, budget;
} Course;

static void
course_free (gpointer data)
{
  Course *course = data;

  g_free (course->currency);
  g_free (course->points);
  g_free (course);
}

static void
say_title (GString *title, const Course *course)
{
  g_autofree char *spent = gb_money_format_full (course->spent, course->currency);
  g_autofree char *forecast = gb_money_format_full (course->forecast, course->currency);
  double left = gb_money_value (course->budget) - gb_money_value (course->forecast);
  g_autofree char *off = gb_money_words (fabs (left), course->currency);

  if (!isfinite (left))
    g_string_append_printf (title, _ ("%s spent, %s forecast; there is no budget yet"), spent, forecast);
  else if (left >= 0)
    g_string_append_printf (title, _ ("%s spent, and %s of the budget will be left if all goes as planned"),
                            spent, off);
  else
    g_string_append_printf (title, _ ("%s spent, and the plan goes %s over the budget"), spent, off);
}

static void
say_subtitle (GString *text, const Course *course, const GbCosts *costs)
{
  gb_say (text, "%s", _ ("Receipts by date, and what is still to buy."));
  if (course->undated > 0)
    {
      g_autofree char *undated = gb_money_words (course->undated, course->currency);

      gb_say (text, _ ("%s is on receipts without a date."), undated);
    }
  if (costs->n_future > 0)
    gb_say (
        text,
        ngettext ("%u receipt is dated after today.", "%u receipts are dated after today.", costs->n_future),
        costs->n_future);
  gb_say_no_price (text, costs->n_no_price);
}

static char *
tell_point (const Course *course, guint i)
{
  g_autofree char *date = gb_date_format (course->points[i].date);
  g_autofree char *spent = gb_money_format_full (course->points[i].spent, course->currency);

  return g_strdup_printf (_ ("%s: %s spent so far."), date, spent);
}

static char *
tell_forecast (const Course *course)
{
  g_autofree char *to_buy = gb_money_format_full (course->to_buy, course->currency);
  g_autofree char *allowance = gb_money_format_full (course->allowance, course->currency);
  g_autofree char *forecast = gb_money_format_full (course->forecast, course->currency);

  return g_strdup_printf (_ ("Still to buy %s, allowance %s, forecast %s."), to_buy, allowance, forecast);
}

static Course *
take_course (const GbCosts *costs, const char *currency)
{
  Course *course = g_new0 (Course, 1);

  course->currency = g_strdup (currency);
  course->spent = costs->spent;
  course->to_buy = costs->to_buy;
  course->allowance = costs->allowance;
  course->forecast = costs->forecast;
  course->budget = costs->budget;
  course->points = g_new0 (GbSpendPoint, costs->n_course);
  for (guint i = 0; i < costs->n_course; i++)
    {
      const GbSpendPoint *point = &costs->course[i];

      if (point->spent == GB_MONEY_UNKNOWN)
        continue;
      if (point->date > 0)
        course->points[course->n_points++] = *point;
      else
        course->undated = (double) point->spent;
    }
  return course;
}

static gpointer
make (const GbChartSource *source, GbChartWords *words)
{
  const GbCosts *costs = &source->findings->costs;
  Course *course = take_course (costs, gb_boat_build (source->boat)->currency);
  g_autofree char *forecast = tell_forecast (course);

  if (course->n_points == 0)
    {
      g_string_append (words->title,
                       _ ("What is spent by date stands here, once there is a receipt with a date"));
      course_free (course);
      return NULL;
    }
  say_title (words->title, course);
  say_subtitle (words->subtitle, course, costs);
  for (guint i = course->n_points - MIN (course->n_points, MOST_DESCRIBED); i < course->n_points; i++)
    {
      g_autofree char *text = tell_point (course, i);

      gb_say (words->description, "%s", text);
    }
  gb_say (words->description, "%s", forecast);
  if (course->budget != GB_MONEY_UNKNOWN)
    {
      g_autofree char *budget = gb_money_format_full (course->budget, course->currency);

      gb_say (words->description, _ ("Budget %s."), budget);
    }
  return course;
}

/* The steps, as a line; @closed: down to the axis at both ends, as an area. */
static void
trace_steps (const Course *course, GbCanvas *canvas, const GbPlot *plot, gboolean closed)
{
  double bottom = gb_axis_at (&plot->y, 0), y = gb_axis_at (&plot->y, course->undated);

  if (closed)
    cairo_line_to (canvas->cr, plot->x.start, bottom);
  cairo_line_to (canvas->cr, plot->x.start, y);
  for (guint i = 0; i < course->n_points; i++)
    {
      double x = gb_axis_at (&plot->x, (double) course->points[i].date);

      cairo_line_to (canvas->cr, x, y);
      y = gb_axis_at (&plot->y, (double) course->points[i].spent);
      cairo_line_to (canvas->cr, x, y);
    }
  cairo_line_to (canvas->cr, plot->x.end, y);
  if (closed)
    {
      cairo_line_to (canvas->cr, plot->x.end, bottom);
      cairo_close_path (canvas->cr);
    }
}

/* What is still to come stands on what is spent, as a column after the last day: when it will be bought is
 * not known. */
static void
draw_to_come (const Course *course, GbCanvas *canvas, const GbPlot *plot, double x, double width)
{
  const double parts[] = { gb_money_value (course->spent), gb_money_value (course->to_buy),
                           gb_money_value (course->allowance) };
  static const GbRole roles[] = { GB_ROLE_SPENT, GB_ROLE_TO_BUY, GB_ROLE_ALLOWANCE };
  double sum = 0, y = gb_axis_at (&plot->y, 0);

  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    if (parts[i] > 0)
      {
        double top = gb_axis_at (&plot->y, sum += parts[i]);

        gb_pattern_fill (canvas, roles[i], (GbBox){ x, top, width, y - top });
        y = top;
      }
}

/* From nothing, or from less where more was returned than bought, to the most of all. */
static void
make_money_axis (const Course *course, GbAxis *axis, guint most_ticks)
{
  double least = fmin (course->undated, 0), most = fmax (course->undated, 0);

  for (guint i = 0; i < course->n_points; i++)
    {
      least = fmin (least, (double) course->points[i].spent);
      most = fmax (most, (double) course->points[i].spent);
    }
  /* fmax() passes over what is unknown. */
  most = fmax (fmax (most, gb_money_value (course->budget)), gb_money_value (course->forecast));
  gb_axis_linear (axis, least, most, pow (10, gb_currency_exponent (course->currency)), most_ticks);
}

static void
mark_hits (const Course *course, GbCanvas *canvas, const GbPlot *plot, double column)
{
  GbBox field = plot->field;

  for (guint i = 0; i < course->n_points; i++)
    {
      double from = gb_axis_at (&plot->x, (double) course->points[i].date);
      double to
          = i + 1 < course->n_points ? gb_axis_at (&plot->x, (double) course->points[i + 1].date) : column;

      gb_canvas_hit (canvas, (GbBox){ from, field.y, to - from, field.height }, i);
    }
  gb_canvas_hit (canvas, (GbBox){ column, field.y, field.x + field.width - column, field.height },
                 course->n_points);
}

/* A little after the last receipt, so that what it came to is seen. */
static gint64
end_of_time (const Course *course)
{
  gint64 last = course->points[course->n_points - 1].date;

  return last + MAX ((last - course->points[0].date) / 24, 1);
}

static void
draw_budget (const Course *course, GbCanvas *canvas, const GbPlot *plot)
{
  double y = gb_axis_at (&plot->y, gb_money_value (course->budget));

  if (isfinite (y))
    gb_canvas_line (canvas, GB_ROLE_LIMIT, 3.5, plot->field.x, y, plot->field.x + plot->field.width, y);
}

static void
draw_steps (const Course *course, GbCanvas *canvas, const GbPlot *plot)
{
  trace_steps (course, canvas, plot, TRUE);
  gb_canvas_tint (canvas, GB_ROLE_SPENT, 0.2);
  cairo_fill (canvas->cr);
  trace_steps (course, canvas, plot, FALSE);
  gb_canvas_stroke (canvas, GB_ROLE_SPENT, 2);
}

/* What stands at the right: at the top of the column and of what is spent, in the middle of what is to come,
 * at the budget. */
typedef struct
{
  GbEndLabel labels[GB_MOST_END_LABELS];
  char *texts[GB_MOST_END_LABELS];
  guint n;
} Ends;

static void
add_end (Ends *ends, const char *format, gint64 money, double value, const char *currency, GbRole role)
{
  g_autofree char *words = gb_money_format_full (money, currency);

  if (money == GB_MONEY_UNKNOWN)
    return;
  ends->texts[ends->n] = g_strdup_printf (format, words);
  ends->labels[ends->n] = (GbEndLabel){ value, ends->texts[ends->n], role };
  ends->n++;
}

static void
find_ends (const Course *course, Ends *ends)
{
  double spent = gb_money_value (course->spent), to_buy = gb_money_value (course->to_buy);
  double allowance = gb_money_value (course->allowance);
  const char *currency = course->currency;

  ends->n = 0;
  add_end (ends, _ ("Budget %s"), course->budget, gb_money_value (course->budget), currency, GB_ROLE_LIMIT);
  add_end (ends, _ ("Forecast %s"), course->forecast, gb_money_value (course->forecast), currency,
           GB_ROLE_TEXT);
  if (allowance > 0)
    add_end (ends, _ ("Allowance %s"), course->allowance, spent + fmax (to_buy, 0) + allowance / 2, currency,
             GB_ROLE_QUIET);
  if (to_buy > 0)
    add_end (ends, _ ("Still to buy %s"), course->to_buy, spent + to_buy / 2, currency, GB_ROLE_QUIET);
  add_end (ends, _ ("Spent %s"), course->spent, spent, currency, GB_ROLE_TEXT);
}

static void
clear_ends (Ends *ends)
{
  for (guint i = 0; i < ends->n; i++)
    g_free (ends->texts[i]);
}

static void
draw (gconstpointer data, GbCanvas *canvas, GbBox box)
{
  const Course *course = data;
  double em = canvas->em, head = gb_plot_head (canvas), foot = gb_plot_foot (canvas, FALSE), column = em * 2,
         gap = em * 0.8;
  double left, right, field_end;
  GbPlot plot;
  Ends ends;

  find_ends (course, &ends);
  make_money_axis (course, &plot.y, gb_plot_ticks (canvas, box.height - head - foot));
  left = gb_axis_widest (&plot.y, canvas) + em * 0.5;
  right = gb_end_labels_width (canvas, ends.labels, ends.n);
  gb_axis_dates (&plot.x, course->points[0].date, end_of_time (course),
                 gb_axis_most_ticks (box.width - left - right, em * 5));
  gb_plot_arrange (&plot, box, left, head, right, foot);
  gb_plot_draw_left (&plot, canvas, course->currency != NULL ? course->currency : _ ("Money"));
  field_end = plot.x.end;
  plot.x.end -= column + gap;
  gb_plot_draw_below (&plot, canvas, NULL);
  draw_steps (course, canvas, &plot);
  draw_to_come (course, canvas, &plot, plot.x.end + gap, column);
  draw_budget (course, canvas, &plot);
  mark_hits (course, canvas, &plot, plot.x.end + gap / 2);
  plot.x.end = field_end;
  gb_plot_end_labels (&plot, canvas, ends.labels, ends.n);
  clear_ends (&ends);
}

static char *
tell (gconstpointer data, guint what)
{
  const Course *course = data;

  return what < course->n_points ? tell_point (course, what) : tell_forecast (course);
}

const GbChartMethod gb_chart_course = {
  .name = "course",
  .label = N_ ("Spending by date"),
  .make = make,
  .draw = draw,
  .tell = tell,
  .free = course_free,
};
