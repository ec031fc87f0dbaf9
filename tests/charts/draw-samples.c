/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Leaves a picture of each chart of each sample in the folder that is named, for a person to look at. */

#include "sample.h"

static void
draw_sample (SampleKind kind, const char *folder, double width, double height)
{
  static const struct
  {
    GbChartStyle style;
    const char *name;
  } styles[] = { { GB_CHART_LIGHT, "light" }, { GB_CHART_DARK, "dark" }, { GB_CHART_PRINT, "print" } };
  g_autoptr (Sample) sample = sample_new (kind);

  for (guint c = 0; c < GB_N_CHARTS; c++)
    for (guint s = 0; s < G_N_ELEMENTS (styles); s++)
      {
        g_autoptr (GbChart) chart = sample_chart (sample, (GbChartKind) c);
        g_autoptr (GError) error = NULL;
        g_autofree char *name = g_strdup_printf ("%s-%s-%s-%.0fx%.0f.png", gb_chart_kind_name ((GbChartKind) c), sample_name (kind),
                                                 styles[s].name, width, height);
        g_autofree char *path = g_build_filename (folder, name, NULL);

        if (!gb_chart_export (chart, path, "png", width, height, styles[s].style, &error))
          g_error ("%s", error->message);
      }
}

int
main (int argc, char **argv)
{
  static const double sizes[][2] = { { 480, 300 }, { 640, 300 }, { 1000, 600 } };
  const char *folder = argc > 1 ? argv[1] : ".";

  for (guint k = 0; k < N_SAMPLES; k++)
    for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
      draw_sample ((SampleKind) k, folder, sizes[i][0], sizes[i][1]);
  return 0;
}
