/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Every chart of the demo builds, with the findings that the engine makes of them: each has something to
 * show, and its words stand apart. Leaves pictures of them, and of two samples, in the folder of the first
 * argument for a person to look at; the others are the demo builds. */

#include "sample.h"
#include "store/text-form.h"

#include <math.h>
#include <string.h>

static const double sizes[][2] = { { 480, 300 }, { 570, 170 }, { 640, 300 },  { 690, 310 },
                                    { 900, 600 }, { 1280, 800 }, { 1600, 1000 } };

/* A picture in each style is of so many sizes. */
static const struct
{
  GbChartStyle style;
  const char *name;
  guint first, end;
} styles[] = { { GB_CHART_LIGHT, "light", 1, 6 },
               { GB_CHART_DARK, "dark", 3, 6 },
               { GB_CHART_PRINT, "print", 4, 5 } };

static const char *folder;

/* As low as the pane of the page of floating gets, only its charts are drawn. */
static gboolean
is_drawn_at (GbChartKind kind, guint size)
{
  return sizes[size][1] >= 300 || (kind >= GB_CHART_FLOATING && kind <= GB_CHART_SWAMPED);
}

/* As on a page, without what is said on paper alone. */
static void
draw_on_page (GbChart *chart, const char *path, const double size[2], GbChartStyle style)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)size[0], (int)size[1]);
  cairo_t *cr = cairo_create (surface);

  gb_chart_draw (chart, cr, size[0], size[1], style);
  g_assert_cmpint (cairo_surface_write_to_png (surface, path), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
draw_chart (GbChart *chart, GbChartKind kind, const char *of)
{
  for (guint s = 0; s < G_N_ELEMENTS (styles); s++)
    for (guint i = styles[s].first; i < styles[s].end; i++)
      {
        g_autoptr (GError) error = NULL;
        g_autofree char *name = g_strdup_printf ("%s-%s-%s-%.0fx%.0f.png", of, gb_chart_kind_name (kind),
                                                 styles[s].name, sizes[i][0], sizes[i][1]);
        g_autofree char *path = g_build_filename (folder, name, NULL);

        if (sizes[i][1] < 600)
          {
            draw_on_page (chart, path, sizes[i], styles[s].style);
            continue;
          }
        g_assert_true (
            gb_chart_export (chart, path, "png", sizes[i][0], sizes[i][1], styles[s].style, &error));
        g_assert_no_error (error);
      }
}

static void
test_sample (gconstpointer data)
{
  SampleKind kind = (SampleKind)GPOINTER_TO_INT (data);
  g_autoptr (Sample) sample = sample_new (kind);

  for (guint c = 0; c < GB_N_CHARTS; c++)
    {
      g_autoptr (GbChart) chart = sample_chart (sample, (GbChartKind)c);

      draw_chart (chart, (GbChartKind)c, sample_name (kind));
    }
}

static GbBoat *
read_demo (const char *path)
{
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  GbBoat *boat;

  g_assert_true (g_file_get_contents (path, &text, NULL, &error));
  boat = gb_text_form_read (text, -1, &error);
  g_assert_no_error (error);
  return boat;
}

/* A demo build, and all that is found of it. */
typedef struct
{
  GbBoat *boat;
  GbFindings *findings;
  GbHistory *history;
  GbRighting *righting;
  GbCrewMap *map;
  GbSwamped *swamped;
  GbChartSource source;
} Demo;

static void
demo_init (Demo *demo, const char *path)
{
  const GbCondition *condition;
  const GbLoad *load;
  g_autoptr (GbCase) floats = NULL;
  GbFindings *findings = gb_findings_new ();

  demo->boat = read_demo (path);
  gb_findings_find (findings, demo->boat, GB_TOUCHED_ALL, G_MAXINT32);
  condition = g_ptr_array_index (gb_boat_roots (demo->boat, GB_RECORD_CONDITION), 0);
  load = g_ptr_array_index (gb_record_children (&condition->rec), 0);
  floats = gb_case_new (demo->boat, &findings->hulls, &findings->edges, &findings->rollup,
                        &findings->flotation, condition->rec.id);
  demo->findings = findings;
  demo->history = gb_history_find (demo->boat, NULL, NULL);
  demo->righting = gb_righting_find (floats, NULL, NULL);
  demo->map = gb_crew_map_find (floats, load->rec.id, NULL, NULL, NULL);
  demo->swamped = gb_swamped_find (demo->boat, &findings->hulls, &findings->edges, &findings->rollup,
                                   &findings->flotation, condition->rec.id, NULL, NULL);
  demo->source = (GbChartSource){ .boat = demo->boat,
                                  .findings = findings,
                                  .history = demo->history,
                                  .condition = condition->rec.id,
                                  .moved = load->rec.id,
                                  .moved_to = { NAN, NAN, NAN },
                                  .righting = demo->righting,
                                  .crew_map = demo->map,
                                  .swamped = demo->swamped };
}

static void
demo_clear (Demo *demo)
{
  gb_righting_free (demo->righting);
  gb_crew_map_free (demo->map);
  gb_swamped_free (demo->swamped);
  gb_history_free (demo->history);
  gb_findings_free (demo->findings);
  gb_boat_free (demo->boat);
}

static void
test_demo (gconstpointer data)
{
  g_autofree char *name = g_path_get_basename (data);
  Demo demo;

  demo_init (&demo, data);
  *strchr (name, '.') = '\0';
  for (guint c = 0; c < GB_N_CHARTS; c++)
    {
      g_autoptr (GbChart) chart = gb_chart_new ((GbChartKind) c, &demo.source);

      g_test_message ("%s: %s", gb_chart_kind_name ((GbChartKind) c), gb_chart_title (chart));
      draw_chart (chart, (GbChartKind) c, name);
      g_assert_false (gb_chart_is_empty (chart));
      for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
        for (guint s = 0; s < G_N_ELEMENTS (styles) && is_drawn_at ((GbChartKind)c, i); s++)
          sample_assert_words_apart (chart, gb_chart_title (chart), sizes[i][0], sizes[i][1],
                                     styles[s].style);
    }
  demo_clear (&demo);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_assert_cmpint (argc, >=, 2);
  folder = argv[1];
  g_test_add_data_func ("/charts/pictures/pram", GINT_TO_POINTER (SAMPLE_PRAM), test_sample);
  g_test_add_data_func ("/charts/pictures/over", GINT_TO_POINTER (SAMPLE_OVER), test_sample);
  for (int i = 2; i < argc; i++)
    {
      g_autofree char *name = g_path_get_basename (argv[i]);
      g_autofree char *path = g_strconcat ("/charts/pictures/", name, NULL);

      g_test_add_data_func (path, argv[i], test_demo);
    }
  return g_test_run ();
}
