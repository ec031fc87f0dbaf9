/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Leaves a picture of each chart, of the samples and of the demo builds, in the folder that is named, for a
 * person to look at. */

#include "sample.h"
#include "store/text-form.h"

static const double sizes[][2] = { { 480, 300 }, { 640, 300 }, { 900, 600 }, { 1600, 1000 } };

static const struct
{
  GbChartStyle style;
  const char *name;
} styles[] = { { GB_CHART_LIGHT, "light" }, { GB_CHART_DARK, "dark" }, { GB_CHART_PRINT, "print" } };

static void
draw_chart (GbChart *chart, const char *folder, const char *kind, const char *of)
{
  for (guint s = 0; s < G_N_ELEMENTS (styles); s++)
    for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
      {
        g_autoptr (GError) error = NULL;
        g_autofree char *name
            = g_strdup_printf ("%s-%s-%s-%.0fx%.0f.png", of, kind, styles[s].name, sizes[i][0], sizes[i][1]);
        g_autofree char *path = g_build_filename (folder, name, NULL);

        if (!gb_chart_export (chart, path, "png", sizes[i][0], sizes[i][1], styles[s].style, &error))
          g_error ("%s", error->message);
      }
}

static void
draw_sample (SampleKind kind, const char *folder)
{
  g_autoptr (Sample) sample = sample_new (kind);

  for (guint c = 0; c < GB_N_CHARTS; c++)
    {
      g_autoptr (GbChart) chart = sample_chart (sample, (GbChartKind) c);

      draw_chart (chart, folder, gb_chart_kind_name ((GbChartKind) c), sample_name (kind));
    }
}

static void
draw_demo (const char *path, const char *folder)
{
  g_autofree char *text = NULL;
  g_autofree char *name = g_path_get_basename (path);
  g_autoptr (GError) error = NULL;
  g_autoptr (GbBoat) boat = NULL;
  g_autoptr (GbFindings) findings = gb_findings_new ();
  g_autoptr (GbHistory) history = NULL;

  if (!g_file_get_contents (path, &text, NULL, &error))
    g_error ("%s", error->message);
  boat = gb_text_form_read (text, -1, &error);
  if (boat == NULL)
    g_error ("%s", error->message);
  gb_findings_find (findings, boat, GB_TOUCHED_ALL, G_MAXINT32);
  history = gb_history_find (boat, NULL, NULL);
  *strchr (name, '.') = '\0';
  for (guint c = 0; c < GB_N_CHARTS; c++)
    {
      g_autoptr (GbChart) chart = gb_chart_new ((GbChartKind) c, boat, findings, history, NULL);

      g_print ("# %s %s: %s\n# %s\n", name, gb_chart_kind_name ((GbChartKind) c), gb_chart_title (chart),
               gb_chart_description (chart));
      draw_chart (chart, folder, gb_chart_kind_name ((GbChartKind) c), name);
    }
}

int
main (int argc, char **argv)
{
  const char *folder = argc > 1 ? argv[1] : ".";

  for (guint k = 0; k < N_SAMPLES; k++)
    draw_sample ((SampleKind) k, folder);
  for (int i = 2; i < argc; i++)
    draw_demo (argv[i], folder);
  return 0;
}
