/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "axis.h"

#include <math.h>

double
gb_round_step (double least)
{
  double power = pow (10, floor (log10 (least)));
  static const double digits[] = { 1, 2, 5 };

  for (guint i = 0; i < G_N_ELEMENTS (digits); i++)
    if (digits[i] * power >= least * (1 - 1e-9))
      return digits[i] * power;
  return 10 * power;
}

static double
next_step (double step)
{
  return gb_round_step (step * 1.5);
}

/* Numbers from here on are written with a power of ten: no scale of a small boat needs them, but a mistyped
 * one shall not run over. */
#define HUGE_NUMBER 1e10

/* "1 200" with a narrow space between thousands, a true minus, and the locale's decimal sign. */
static void
format_tick (char *text, gsize size, double number, int decimals)
{
  g_autofree char *digits = g_strdup_printf ("%.*f", decimals, fabs (number));
  g_autoptr (GString) out = g_string_new (number < 0 && strtod (digits, NULL) != 0 ? "−" : "");
  gsize whole = strspn (digits, "0123456789");

  if (fabs (number) >= HUGE_NUMBER)
    {
      g_snprintf (text, size, "%.3g", number);
      return;
    }
  for (gsize i = 0; digits[i] != '\0'; i++)
    {
      if (i > 0 && i < whole && (whole - i) % 3 == 0 && whole > 3)
        g_string_append (out, "\u202f");
      g_string_append_c (out, digits[i]);
    }
  g_strlcpy (text, out->str, size);
}

/* Ticks at @step times @first and the whole numbers after it. */
static void
fill_ticks (GbAxis *axis, double first, double n, double step, double factor)
{
  int decimals = (int)CLAMP (ceil (-log10 (step) - 1e-9), 0, 9);

  axis->n_ticks = (guint)CLAMP (n, 0, GB_MOST_TICKS);
  for (guint i = 0; i < axis->n_ticks; i++)
    {
      axis->ticks[i].value = (first + i) * step * factor;
      format_tick (axis->ticks[i].text, sizeof axis->ticks[i].text, (first + i) * step, decimals);
    }
}

guint
gb_axis_most_ticks (double length, double each)
{
  return (guint)CLAMP (length / each, 2, GB_MOST_TICKS);
}

void
gb_axis_linear (GbAxis *axis, double lo, double hi, double factor, guint most)
{
  double step, first, last;

  if (!isfinite (lo) || !isfinite (hi) || !isfinite (factor) || factor <= 0)
    lo = 0, hi = factor = 1;
  /* From below nothing to above it there is nothing between: two would never do. */
  most = CLAMP (most, lo < 0 && hi > 0 ? 3 : 2, GB_MOST_TICKS);
  if (hi - lo <= fabs (hi) * 1e-9)
    hi = lo + fmax (fabs (lo), factor) * 0.1;
  lo /= factor;
  hi /= factor;
  for (step = gb_round_step ((hi - lo) / (most - 1));; step = next_step (step))
    {
      first = floor (lo / step + 1e-9);
      last = ceil (hi / step - 1e-9);
      if (last - first + 1 <= most)
        break;
    }
  fill_ticks (axis, first, last - first + 1, step, factor);
  axis->from = axis->ticks[0].value;
  axis->to = axis->ticks[axis->n_ticks - 1].value;
}

void
gb_axis_within (GbAxis *axis, double lo, double hi, double factor, double step)
{
  double first = ceil (lo / factor / step - 1e-9), last = floor (hi / factor / step + 1e-9);

  axis->from = lo;
  axis->to = hi;
  fill_ticks (axis, first, last - first + 1, step, factor);
}

/* The ways to go through a calendar, from close to wide. A step of months starts at the year's beginning. */
static const struct
{
  guint days, months; /* one of the two */
  const char *format, *with_year;
} calendar[] = {
  { 1, 0, "%e %b", "%e %b %Y" }, { 7, 0, "%e %b", "%e %b %Y" }, { 14, 0, "%e %b", "%e %b %Y" },
  { 0, 1, "%b", "%b %Y" },       { 0, 3, "%b", "%b %Y" },       { 0, 6, "%b %Y", "%b %Y" },
  { 0, 12, "%Y", "%Y" },         { 0, 24, "%Y", "%Y" },         { 0, 60, "%Y", "%Y" },
  { 0, 120, "%Y", "%Y" },        { 0, 1200, "%Y", "%Y" },
};

static void
go_on (GDate *date, guint days, guint months)
{
  if (days > 0)
    g_date_add_days (date, days);
  else
    g_date_add_months (date, months);
}

/* The last start of a step on or before @day. */
static GDate
start_of_step (gint64 day, guint days, guint months)
{
  GDate date;

  g_date_clear (&date, 1);
  g_date_set_julian (&date, (guint32)day);
  if (days > 1)
    g_date_subtract_days (&date, g_date_get_weekday (&date) - 1);
  else if (months > 0)
    {
      guint since = g_date_get_year (&date) * 12 + g_date_get_month (&date) - 1;

      since = MAX (since - since % months, 12);
      g_date_set_dmy (&date, 1, (GDateMonth)(since % 12 + 1), (GDateYear)(since / 12));
    }
  return date;
}

static gboolean
fill_dates (GbAxis *axis, guint way, guint most)
{
  GDate date = start_of_step ((gint64)axis->from, calendar[way].days, calendar[way].months);
  GDateYear year = 0;

  for (axis->n_ticks = 0; g_date_get_julian (&date) <= axis->to;
       go_on (&date, calendar[way].days, calendar[way].months))
    {
      GbTick *tick = &axis->ticks[axis->n_ticks];

      if (g_date_get_julian (&date) < axis->from)
        continue;
      if (axis->n_ticks == most)
        return FALSE;
      tick->value = g_date_get_julian (&date);
      g_date_strftime (tick->text, sizeof tick->text,
                       g_date_get_year (&date) == year ? calendar[way].format : calendar[way].with_year,
                       &date);
      g_strchug (tick->text);
      year = g_date_get_year (&date);
      axis->n_ticks++;
    }
  return TRUE;
}

void
gb_axis_dates (GbAxis *axis, gint64 lo, gint64 hi, guint most)
{
  /* The years 2 to 9999: what GDate can step through without falling off its end. */
  lo = CLAMP (lo, 366, 3652059 - 40000);
  hi = CLAMP (hi, lo + 1, 3652059 - 40000 + 1);
  most = CLAMP (most, 2, GB_MOST_TICKS);
  axis->from = (double)lo;
  axis->to = (double)hi;
  for (guint way = 0; way < G_N_ELEMENTS (calendar); way++)
    if (fill_dates (axis, way, most))
      return;
}

void
gb_axis_say_unit (GbAxis *axis, const char *unit)
{
  GbTick *last = &axis->ticks[axis->n_ticks - 1];

  if (axis->n_ticks == 0 || unit[0] == '\0')
    return;
  g_strlcat (last->text, "\u00a0", sizeof last->text);
  g_strlcat (last->text, unit, sizeof last->text);
}

/* Beyond this many times its own length off an axis, one place is as good as another; what is absurd does not
 * reach the paper. */
#define FAR_OFF 3.0

double
gb_axis_at (const GbAxis *axis, double value)
{
  return axis->start + gb_axis_length (axis, value - axis->from);
}

double
gb_axis_length (const GbAxis *axis, double difference)
{
  return CLAMP (difference / (axis->to - axis->from), -FAR_OFF, FAR_OFF) * (axis->end - axis->start);
}

double
gb_axis_value (const GbAxis *axis, double place)
{
  return axis->from + (place - axis->start) / (axis->end - axis->start) * (axis->to - axis->from);
}

double
gb_axis_widest (const GbAxis *axis, GbCanvas *canvas)
{
  double widest = 0;

  for (guint i = 0; i < axis->n_ticks; i++)
    widest = fmax (widest, gb_text_width (canvas, GB_TEXT_PLAIN, axis->ticks[i].text));
  return widest;
}

/* Where a label stands so that it leaves neither the picture nor, at the left, the field: the other axis's
 * numbers stand there. */
static double
keep_inside (const GbAxis *axis, GbCanvas *canvas, double x, double width)
{
  double least = axis->start - canvas->em * 0.4 + width / 2,
         most = canvas->width - canvas->em * 0.4 - width / 2;

  return fmax (fmin (x, most), least);
}

void
gb_axis_draw_lines (const GbAxis *axis, GbCanvas *canvas, double y, double top)
{
  for (guint i = 0; i < axis->n_ticks; i++)
    {
      double x = gb_axis_at (axis, axis->ticks[i].value);

      gb_canvas_line (canvas, GB_ROLE_GRID, 1, x, y, x, top);
    }
}

void
gb_axis_draw_below (const GbAxis *axis, GbCanvas *canvas, double y, double top)
{
  double taken = -G_MAXDOUBLE, em = canvas->em;

  gb_axis_draw_lines (axis, canvas, y, top);
  for (guint i = 0; i < axis->n_ticks; i++)
    {
      const GbTick *tick = &axis->ticks[i];
      double width = gb_text_width (canvas, GB_TEXT_PLAIN, tick->text);
      double x = gb_axis_at (axis, tick->value), centre = keep_inside (axis, canvas, x, width);

      if (centre - width / 2 < taken + em * 0.5)
        continue;
      gb_text_draw (canvas, GB_TEXT_PLAIN, GB_ROLE_QUIET, centre, y + em * 0.25, GB_AT_CENTRE | GB_AT_TOP,
                    GB_ANY_WIDTH, tick->text);
      taken = centre + width / 2;
    }
  gb_canvas_line (canvas, GB_ROLE_LINE, 1, axis->start, y, axis->end, y);
}

void
gb_axis_draw_left (const GbAxis *axis, GbCanvas *canvas, double x, double right)
{
  for (guint i = 0; i < axis->n_ticks; i++)
    {
      double y = gb_axis_at (axis, axis->ticks[i].value);

      gb_canvas_line (canvas, GB_ROLE_GRID, 1, x, y, right, y);
      gb_text_draw (canvas, GB_TEXT_PLAIN, GB_ROLE_QUIET, x - canvas->em * 0.5, y, GB_AT_RIGHT | GB_AT_MIDDLE,
                    GB_ANY_WIDTH, axis->ticks[i].text);
    }
}
