/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "plot.h"

#include <math.h>

double
gb_plot_head (GbCanvas *canvas)
{
  return gb_text_height (canvas, GB_TEXT_PLAIN) * 1.5;
}

double
gb_plot_foot (GbCanvas *canvas, gboolean titled)
{
  return gb_text_height (canvas, GB_TEXT_PLAIN) * (titled ? 2 : 1) + canvas->em * 0.3;
}

guint
gb_plot_ticks (GbCanvas *canvas, double height)
{
  return MIN (gb_axis_most_ticks (height, canvas->em * 2.2), 8);
}

void
gb_plot_arrange (GbPlot *plot, GbBox outer, double left, double top, double right, double bottom)
{
  plot->outer = outer;
  plot->field = gb_box_inset (outer, left, top, right, bottom);
  plot->x.start = plot->field.x;
  plot->x.end = plot->field.x + plot->field.width;
  plot->y.start = plot->field.y + plot->field.height;
  plot->y.end = plot->field.y;
}

void
gb_plot_draw_left (const GbPlot *plot, GbCanvas *canvas, const char *title)
{
  double left = plot->outer.x, right = plot->field.x + plot->field.width;

  gb_axis_draw_left (&plot->y, canvas, plot->field.x, right);
  gb_text_draw (canvas, GB_TEXT_PLAIN, GB_ROLE_QUIET, left, plot->outer.y, GB_AT_LEFT | GB_AT_TOP,
                right - left, title);
}

void
gb_plot_draw_below (const GbPlot *plot, GbCanvas *canvas, const char *title)
{
  double bottom = plot->y.start, below = bottom + gb_text_height (canvas, GB_TEXT_PLAIN) + canvas->em * 0.25;

  gb_axis_draw_below (&plot->x, canvas, bottom, plot->field.y);
  if (title != NULL)
    gb_text_draw (canvas, GB_TEXT_PLAIN, GB_ROLE_QUIET, plot->x.end, below, GB_AT_RIGHT | GB_AT_TOP,
                  plot->x.end - plot->outer.x, title);
}

double
gb_end_labels_width (GbCanvas *canvas, const GbEndLabel *labels, guint n)
{
  double widest = 0;

  for (guint i = 0; i < n; i++)
    if (isfinite (labels[i].value))
      widest = fmax (widest, gb_text_width (canvas, GB_TEXT_STRONG, labels[i].text));
  return widest + canvas->em * 0.5;
}

void
gb_plot_end_labels (const GbPlot *plot, GbCanvas *canvas, const GbEndLabel *labels, guint n)
{
  const GbEndLabel *shown[GB_MOST_END_LABELS];
  double centres[GB_MOST_END_LABELS] = { 0 }, heights[GB_MOST_END_LABELS] = { 0 };
  double line = gb_text_height (canvas, GB_TEXT_STRONG), x = plot->x.end + canvas->em * 0.5;
  guint k = 0;

  g_return_if_fail (n <= GB_MOST_END_LABELS);

  /* From top to bottom. */
  for (guint i = 0; i < n; i++)
    {
      guint at = k;

      if (!isfinite (labels[i].value))
        continue;
      for (; at > 0 && shown[at - 1]->value < labels[i].value; at--)
        shown[at] = shown[at - 1];
      shown[at] = &labels[i];
      k++;
    }
  for (guint i = 0; i < k; i++)
    {
      centres[i] = gb_axis_at (&plot->y, shown[i]->value);
      heights[i] = line;
    }
  /* Not lower than the field: the numbers of the axis below may reach out there. */
  gb_spread (centres, heights, k, plot->outer.y, plot->field.y + plot->field.height + canvas->em * 0.2, 0);
  for (guint i = 0; i < k; i++)
    gb_text_draw (canvas, GB_TEXT_STRONG, shown[i]->role, x, centres[i], GB_AT_LEFT | GB_AT_MIDDLE,
                  plot->outer.x + plot->outer.width - x + 1, shown[i]->text);
}
