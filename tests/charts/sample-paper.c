/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What the samples' charts are drawn on, and what every drawing keeps to. */

#include "sample.h"

static void
paper_init_on (Paper *paper, cairo_surface_t *surface, double width, double height, GbChartStyle style)
{
  paper->surface = surface;
  paper->cr = cairo_create (surface);
  gb_canvas_init (&paper->canvas, paper->cr, width, height, style);
}

void
paper_init (Paper *paper, double width, double height, GbChartStyle style)
{
  paper_init_on (paper, cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)width, (int)height), width,
                 height, style);
}

void
paper_init_blank (Paper *paper, double width, double height, GbChartStyle style)
{
  paper_init_on (paper, cairo_image_surface_create (CAIRO_FORMAT_A8, 1, 1), width, height, style);
}

void
paper_clear (Paper *paper)
{
  gb_canvas_clear (&paper->canvas);
  cairo_destroy (paper->cr);
  cairo_surface_destroy (paper->surface);
}

void
sample_assert_draws (GbChart *chart, double width, double height, GbChartStyle style)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 64, 64);
  cairo_t *cr = cairo_create (surface);

  gb_chart_draw (chart, cr, width, height, style);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
assert_words_are_apart (const GbCanvas *canvas, const char *what)
{
  const double slack = 0.75;

  for (guint i = 0; i < canvas->words->len; i++)
    {
      GbBox box = gb_box_inset (g_array_index (canvas->words, GbBox, i), slack, slack, slack, slack);

      if (box.x < -slack || box.y < -slack || box.x + box.width > canvas->width
          || box.y + box.height > canvas->height)
        g_error ("%s: words at %.1f, %.1f (%.1f x %.1f) leave the picture of %.0f x %.0f", what, box.x, box.y,
                 box.width, box.height, canvas->width, canvas->height);
      for (guint k = 0; k < i; k++)
        if (gb_box_overlaps (box, g_array_index (canvas->words, GbBox, k)))
          g_error ("%s: words overlap at %.1f, %.1f in the picture of %.0f x %.0f", what, box.x, box.y,
                   canvas->width, canvas->height);
    }
}

void
sample_assert_words_apart (GbChart *chart, const char *what, double width, double height, GbChartStyle style)
{
  g_auto (Paper) paper;

  paper_init_blank (&paper, width, height, style);
  gb_chart_render (chart, &paper.canvas, style == GB_CHART_PRINT);
  assert_words_are_apart (&paper.canvas, what);
}
