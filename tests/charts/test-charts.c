/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Each chart of each sample: that it draws at any size, says what it shows, keeps its words apart, and finds what is under the pointer. */

#include "charts/boat-layout.h"
#include "sample.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

static const GbChartStyle styles[] = { GB_CHART_LIGHT, GB_CHART_DARK, GB_CHART_PRINT };

static const double sizes[][2] = {
  { 480, 300 }, { 640, 300 }, { 600, 420 }, { 320, 480 }, { 900, 600 }, { 1280, 360 }, { 1600, 1000 },
};

typedef void (*Check) (GbChart *chart, GbChartKind kind, SampleKind sample, gconstpointer data);

static void
for_each_chart (Check check, gconstpointer data)
{
  for (guint s = 0; s < N_SAMPLES; s++)
    {
      g_autoptr (Sample) sample = sample_new ((SampleKind) s);

      for (guint c = 0; c < GB_N_CHARTS; c++)
        {
          g_autoptr (GbChart) chart = sample_chart (sample, (GbChartKind) c);

          check (chart, (GbChartKind) c, (SampleKind) s, data);
        }
    }
}

/* The chart of one sample alone. */
static GbChart *
chart_of (SampleKind kind, GbChartKind chart)
{
  g_autoptr (Sample) sample = sample_new (kind);

  return sample_chart (sample, chart);
}

/* Drawing ----------------------------------------------------------------------------------------------------------- */

static void
assert_draws (GbChart *chart, double width, double height, GbChartStyle style)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 64, 64);
  cairo_t *cr = cairo_create (surface);

  gb_chart_draw (chart, cr, width, height, style);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
check_draws (GbChart *chart, GbChartKind kind, SampleKind sample, gconstpointer data)
{
  for (guint s = 0; s < G_N_ELEMENTS (styles); s++)
    for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
      assert_draws (chart, sizes[i][0], sizes[i][1], styles[s]);
}

static void
test_draws_at_any_size (void)
{
  for_each_chart (check_draws, NULL);
}

static void
check_absurd_sizes (GbChart *chart, GbChartKind kind, SampleKind sample, gconstpointer data)
{
  static const double absurd[][2] = { { 0, 0 },    { -5, 100 }, { NAN, 100 }, { 100, INFINITY }, { 1, 1 },      { 20, 500 },
                                      { 500, 20 }, { 60, 60 },  { 200, 90 },  { 90, 200 },       { 200, 20000 }, { 20000, 200 } };

  for (guint i = 0; i < G_N_ELEMENTS (absurd); i++)
    {
      g_autofree char *tip = NULL;

      assert_draws (chart, absurd[i][0], absurd[i][1], GB_CHART_LIGHT);
      tip = gb_chart_tooltip (chart, absurd[i][0], absurd[i][1], 10, 10);
      gb_chart_pick (chart, absurd[i][0], absurd[i][1], NAN, 10);
    }
}

static void
test_absurd_sizes (void)
{
  for_each_chart (check_absurd_sizes, NULL);
}

/* No words over others, and none cut by the edge. */
static void
assert_words_are_apart (const GbCanvas *canvas, const char *what)
{
  const double slack = 0.75;

  for (guint i = 0; i < canvas->words->len; i++)
    {
      GbBox box = gb_box_inset (g_array_index (canvas->words, GbBox, i), slack, slack, slack, slack);

      if (box.x < -slack || box.y < -slack || box.x + box.width > canvas->width || box.y + box.height > canvas->height)
        g_error ("%s: words at %.1f, %.1f (%.1f x %.1f) leave the picture of %.0f x %.0f", what, box.x, box.y, box.width, box.height,
                 canvas->width, canvas->height);
      for (guint k = 0; k < i; k++)
        if (gb_box_overlaps (box, g_array_index (canvas->words, GbBox, k)))
          g_error ("%s: words overlap at %.1f, %.1f in the picture of %.0f x %.0f", what, box.x, box.y, canvas->width, canvas->height);
    }
}

static void
check_words (GbChart *chart, GbChartKind kind, SampleKind sample, gconstpointer data)
{
  g_autofree char *what = g_strdup_printf ("%s of %s", gb_chart_kind_name (kind), sample_name (sample));

  for (guint s = 0; s < G_N_ELEMENTS (styles); s++)
    for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
      {
        cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 1, 1);
        cairo_t *cr = cairo_create (surface);
        g_auto (GbCanvas) canvas = { 0 };

        gb_canvas_init (&canvas, cr, sizes[i][0], sizes[i][1], styles[s]);
        gb_chart_render (chart, &canvas, s == 2);
        assert_words_are_apart (&canvas, what);
        cairo_destroy (cr);
        cairo_surface_destroy (surface);
      }
}

static void
test_words_are_apart (void)
{
  for_each_chart (check_words, NULL);
}

static gpointer
draw_in_thread (gpointer data)
{
  for (guint i = 0; i < 5; i++)
    {
      g_autofree char *tip = NULL;

      assert_draws (data, 640, 300, GB_CHART_DARK);
      tip = gb_chart_tooltip (data, 640, 300, 320, 150);
    }
  return NULL;
}

static void
test_draws_on_threads (void)
{
  g_autoptr (GbChart) chart = chart_of (SAMPLE_PRAM, GB_CHART_BOAT);
  GThread *threads[3];

  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    threads[i] = g_thread_new ("draw", draw_in_thread, chart);
  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    g_thread_join (threads[i]);
}

/* Words ------------------------------------------------------------------------------------------------------------- */

static void
check_sentences (GbChart *chart, GbChartKind kind, SampleKind sample, gconstpointer data)
{
  const char *texts[] = { gb_chart_title (chart), gb_chart_subtitle (chart), gb_chart_description (chart) };

  g_assert_cmpuint (strlen (texts[0]), >, 0);
  g_assert_true (g_str_has_prefix (texts[2], texts[0]));
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_assert_true (g_utf8_validate (texts[i], -1, NULL));
      g_assert_null (strstr (texts[i], "nan"));
      g_assert_null (strstr (texts[i], "inf"));
      g_assert_null (strstr (texts[i], "  "));
      g_assert_null (strstr (texts[i], ".."));
    }
}

static void
test_sentences (void)
{
  for_each_chart (check_sentences, NULL);
}

static void
assert_title (SampleKind sample, GbChartKind kind, const char *title)
{
  g_autoptr (GbChart) chart = chart_of (sample, kind);

  g_assert_cmpstr (gb_chart_title (chart), ==, title);
}

static void
test_titles_are_findings (void)
{
  assert_title (SAMPLE_PRAM, GB_CHART_LIMIT, "42 kg may still come aboard, and the boat is 3.2 kg under its target");
  assert_title (SAMPLE_OVER, GB_CHART_LIMIT, "All up 129 lb over the flotation limit, and the boat is 6.2 lb over its target");
  assert_title (SAMPLE_PRAM, GB_CHART_GROUPS, "Hull makes up 65 % of the weight; 17 % of the whole is still estimated");
  assert_title (SAMPLE_PRAM, GB_CHART_HISTORY, "Weighing has lowered the forecast by 0.8 kg; 51 % is weighed");
  assert_title (SAMPLE_OVER, GB_CHART_HISTORY, "Weighing has raised the forecast by 7.5 lb; 51 % is weighed");
  assert_title (SAMPLE_PRAM, GB_CHART_BOAT, "All up, the weight lies 80 mm aft of the buoyancy: the stern will go down");
  assert_title (SAMPLE_PRAM, GB_CHART_DRAUGHT, "All up the boat floats 203 mm deep, with 217 mm of freeboard");
  assert_title (SAMPLE_LARGE, GB_CHART_DRAUGHT, "All up 1061302 kg is more than the hulls can carry");
  assert_title (SAMPLE_PRAM, GB_CHART_COURSE, "€\u00a0302.00 spent, and €\u00a017.20 of the budget will be left if all goes as planned");
  assert_title (SAMPLE_OVER, GB_CHART_COURSE, "€\u00a0401.00 spent, and the plan goes €\u00a081.80 over the budget");
  assert_title (SAMPLE_PRAM, GB_CHART_HEADS, "Every head keeps within its budget");
  assert_title (SAMPLE_OVER, GB_CHART_HEADS, "Timber goes €\u00a092.40 over its budget");
}

/* The parts of a limit's title, with each of its two limits known or not. */
static void
test_limit_with_one_limit (void)
{
  g_autoptr (Sample) sample = sample_new (SAMPLE_PRAM);
  g_autoptr (GbChart) no_target = NULL;
  g_autoptr (GbChart) no_limit = NULL;
  g_autoptr (GbChart) neither = NULL;
  GbBuild *build = (GbBuild *) gb_boat_build (sample->boat);

  build->target_mass = NAN;
  no_target = sample_chart (sample, GB_CHART_LIMIT);
  g_assert_cmpstr (gb_chart_title (no_target), ==, "42 kg may still come aboard");
  sample->findings.flotation.left = sample->findings.flotation.chance = sample->findings.flotation.limit.displacement = NAN;
  neither = sample_chart (sample, GB_CHART_LIMIT);
  g_assert_cmpstr (gb_chart_title (neither), ==, "All up 177 kg; no limit is known yet");
  build->target_mass = 26;
  build->freeboard = NAN;
  no_limit = sample_chart (sample, GB_CHART_LIMIT);
  g_assert_cmpstr (gb_chart_title (no_limit), ==, "2.8 kg over target");
  g_assert_nonnull (strstr (gb_chart_subtitle (no_limit), "accepted least freeboard"));
  assert_draws (neither, 640, 300, GB_CHART_LIGHT);
  assert_draws (no_limit, 640, 300, GB_CHART_LIGHT);
}

static void
assert_described (SampleKind sample, GbChartKind kind, const char *const *values)
{
  g_autoptr (GbChart) chart = chart_of (sample, kind);

  for (guint i = 0; values[i] != NULL; i++)
    if (strstr (gb_chart_description (chart), values[i]) == NULL)
      g_error ("\"%s\" is not in \"%s\"", values[i], gb_chart_description (chart));
}

static void
test_descriptions_hold_the_values (void)
{
  assert_described (SAMPLE_PRAM, GB_CHART_LIMIT, (const char *[]){ "26.9 kg", "1.9 kg", "148 kg", "218 kg", "32 kg", "177 kg", NULL });
  assert_described (SAMPLE_PRAM, GB_CHART_GROUPS,
                    (const char *[]){ "Hull: 17.5 kg", "Weighed 12.9 kg", "Rig: 4.5 kg", "Paint and glue: 1.2 kg", NULL });
  assert_described (SAMPLE_PRAM, GB_CHART_HISTORY,
                    (const char *[]){ "Before anything was weighed: forecast 27.9 kg", "2025-04-05", "38 % weighed", "Target 32 kg", NULL });
  assert_described (SAMPLE_PRAM, GB_CHART_BOAT,
                    (const char *[]){ "all up: x 1080 mm, y 40 mm, z 470 mm", "buoyancy: x 1160 mm", "Bottom: 6.2 kg", NULL });
  assert_described (SAMPLE_PRAM, GB_CHART_DRAUGHT, (const char *[]){ "218 kg: draught 240 mm", "177 kg: draught 203 mm", "440 kg", NULL });
  assert_described (SAMPLE_PRAM, GB_CHART_COURSE,
                    (const char *[]){ "2025-03-01: €\u00a0155.00", "Still to buy €\u00a0135.80", "Budget €\u00a0470.00", NULL });
  assert_described (SAMPLE_PRAM, GB_CHART_HEADS,
                    (const char *[]){ "Timber: Spent €\u00a0184.50. Still to buy €\u00a028.90.", "Budget €\u00a0220.00", NULL });
}

static void
test_empty_charts_say_what_belongs_there (void)
{
  g_autoptr (Sample) sample = sample_new (SAMPLE_EMPTY);

  for (guint c = 0; c < GB_N_CHARTS; c++)
    {
      g_autoptr (GbChart) chart = sample_chart (sample, (GbChartKind) c);
      g_autofree char *tip = gb_chart_tooltip (chart, 640, 300, 320, 150);

      g_assert_true (gb_chart_is_empty (chart));
      g_assert_null (tip);
      g_assert_cmpint (gb_chart_pick (chart, 640, 300, 320, 150), ==, 0);
    }
}

/* What is unknown is counted in words, and nothing is made of it. */
static void
test_unknown_is_counted (void)
{
  g_autoptr (Sample) sample = sample_new (SAMPLE_UNKNOWN);
  static const GbChartKind counting[] = { GB_CHART_LIMIT, GB_CHART_GROUPS };

  for (guint c = 0; c < GB_N_CHARTS; c++)
    {
      g_autoptr (GbChart) chart = sample_chart (sample, (GbChartKind) c);

      g_assert_cmpint (gb_chart_is_empty (chart), ==, c != GB_CHART_BOAT && c != GB_CHART_HEADS);
      g_assert_null (strstr (gb_chart_description (chart), " 0 kg"));
      g_assert_null (strstr (gb_chart_description (chart), "0.00"));
    }
  for (guint i = 0; i < G_N_ELEMENTS (counting); i++)
    {
      g_autoptr (GbChart) chart = sample_chart (sample, counting[i]);

      g_assert_nonnull (strstr (gb_chart_subtitle (chart), "1 part has no mass yet"));
    }
}

static void
test_kinds_have_names (void)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint c = 0; c < GB_N_CHARTS; c++)
    {
      g_assert_cmpuint (strlen (gb_chart_kind_label ((GbChartKind) c)), >, 0);
      g_assert_true (g_hash_table_add (seen, (gpointer) gb_chart_kind_name ((GbChartKind) c)));
    }
}

/* Pointer ----------------------------------------------------------------------------------------------------------- */

/* Looks all over the picture for a tooltip that begins so. */
static gboolean
find_tooltip (GbChart *chart, double width, double height, const char *begin, double *x, double *y)
{
  for (*y = 0; *y < height; *y += 2)
    for (*x = 0; *x < width; *x += 2)
      {
        g_autofree char *tip = gb_chart_tooltip (chart, width, height, *x, *y);

        if (tip != NULL && g_str_has_prefix (tip, begin))
          return TRUE;
      }
  return FALSE;
}

static void
test_tooltips (void)
{
  static const struct
  {
    GbChartKind kind;
    const char *begin;
  } cases[] = {
    { GB_CHART_LIMIT, "All up: 177 kg" },        { GB_CHART_LIMIT, "Light craft: 28.8 kg" },
    { GB_CHART_GROUPS, "Rig: 4.5 kg" },          { GB_CHART_HISTORY, "2025-04-27: forecast 27.6 kg" },
    { GB_CHART_BOAT, "Mast: 3.1 kg" },           { GB_CHART_BOAT, "Crew: 64 kg" },
    { GB_CHART_DRAUGHT, "200 mm deep: carries" }, { GB_CHART_COURSE, "2025-03-22: €\u00a0210.00" },
    { GB_CHART_COURSE, "Still to buy" },         { GB_CHART_HEADS, "Timber: Spent" },
  };

  /* Nothing was drawn before. */
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GbChart) chart = chart_of (SAMPLE_PRAM, cases[i].kind);
      double x, y;

      if (!find_tooltip (chart, 640, 300, cases[i].begin, &x, &y))
        g_error ("no tooltip begins \"%s\"", cases[i].begin);
    }
}

static void
test_pick (void)
{
  g_autoptr (GbChart) boat = chart_of (SAMPLE_PRAM, GB_CHART_BOAT);
  g_autoptr (GbChart) groups = chart_of (SAMPLE_PRAM, GB_CHART_GROUPS);
  double x, y;

  g_assert_true (find_tooltip (boat, 900, 600, "Mast", &x, &y));
  g_assert_cmpint (gb_chart_pick (boat, 900, 600, x, y), ==, 9);
  g_assert_true (find_tooltip (boat, 900, 600, "Helm", &x, &y));
  g_assert_cmpint (gb_chart_pick (boat, 900, 600, x, y), ==, 0);
  g_assert_cmpint (gb_chart_pick (boat, 900, 600, 1, 1), ==, 0);
  g_assert_true (find_tooltip (groups, 640, 300, "Rig", &x, &y));
  g_assert_cmpint (gb_chart_pick (groups, 640, 300, x, y), ==, 8);
  g_assert_true (find_tooltip (groups, 640, 300, "Light craft", &x, &y));
  g_assert_cmpint (gb_chart_pick (groups, 640, 300, x, y), ==, 0);
  g_assert_cmpint (gb_chart_pick (groups, 640, 300, 5000, 5000), ==, 0);
}

/* The boat ---------------------------------------------------------------------------------------------------------- */

static GbScene *
scene_of (const Sample *sample, const gint64 *selected)
{
  const GbChartSource source = { sample->boat, &sample->findings, NULL, selected };

  return gb_scene_new (&source);
}

/* One scale in all three views, along and up, at every size. */
static void
test_boat_is_to_scale (void)
{
  g_autoptr (Sample) sample = sample_new (SAMPLE_PRAM);
  g_autoptr (GbScene) scene = scene_of (sample, NULL);
  const GbBoatWords words = { .key = { 0, 0, 200, 110 }, .captions = { 140, 140, 140 }, .waterlines = 60 };

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 1, 1);
      cairo_t *cr = cairo_create (surface);
      g_auto (GbCanvas) canvas = { 0 };
      const GbBox box = { 12, 60, sizes[i][0] - 24, sizes[i][1] - 72 };
      GbBoatLayout layout;

      gb_canvas_init (&canvas, cr, sizes[i][0], sizes[i][1], GB_CHART_LIGHT);
      layout = gb_boat_layout (scene, &canvas, box, &words);
      g_assert_cmpfloat (layout.scale, >, 0);
      for (guint v = 0; v < GB_N_VIEWS; v++)
        {
          const GbBoatView *view = &layout.views[v];
          double along = (view->right.end - view->right.start) / (view->right.to - view->right.from);
          double up = (view->up.start - view->up.end) / (view->up.to - view->up.from);

          g_assert_cmpfloat_with_epsilon (along, layout.scale, layout.scale * 1e-9);
          g_assert_cmpfloat_with_epsilon (up, layout.scale, layout.scale * 1e-9);
          g_assert_cmpfloat (view->box.x, >=, box.x);
          g_assert_cmpfloat (view->box.x + view->box.width, <=, box.x + box.width);
          g_assert_cmpfloat (view->box.y + view->box.height, <=, box.y + box.height);
          for (guint w = 0; w < v; w++)
            g_assert_false (gb_box_overlaps (view->box, layout.views[w].box));
        }
      cairo_destroy (cr);
      cairo_surface_destroy (surface);
    }
}

static guint
places_of (const GbScene *scene, const char *name, GbVec3 *places, guint most)
{
  guint n = 0;

  for (guint i = 0; i < scene->dots->len; i++)
    {
      const GbSceneDot *dot = &g_array_index (scene->dots, GbSceneDot, i);

      if (g_strcmp0 (g_array_index (scene->items, GbSceneItem, dot->item).name, name) == 0 && n < most)
        places[n++] = dot->at;
    }
  return n;
}

/* One of a pair at each side, with half the mass each; a pair of groups with a pair in it makes four. */
static void
test_pairs_have_two_places (void)
{
  g_autoptr (Sample) sample = sample_new (SAMPLE_PRAM);
  g_autoptr (GbScene) scene = NULL;
  g_autoptr (GbScene) doubled = NULL;
  GbPart *hull = (GbPart *) gb_boat_part (sample->boat, 1);
  GbVec3 at[8];

  scene = scene_of (sample, NULL);
  g_assert_cmpuint (places_of (scene, "Side panel", at, 8), ==, 2);
  g_assert_cmpfloat_with_epsilon (at[0].y, 0.53, 1e-9);
  g_assert_cmpfloat_with_epsilon (at[1].y, -0.53, 1e-9);
  g_assert_cmpfloat_with_epsilon (at[1].x, 1.20, 1e-9);
  g_assert_cmpuint (places_of (scene, "Mast", at, 8), ==, 1);

  hull->pair = 1;
  hull->x = 0.1;
  hull->y = 2;
  doubled = scene_of (sample, NULL);
  g_assert_cmpuint (places_of (doubled, "Side panel", at, 8), ==, 4);
  g_assert_cmpfloat_with_epsilon (at[0].y, 2.53, 1e-9);
  g_assert_cmpfloat_with_epsilon (at[1].y, 1.47, 1e-9);
  g_assert_cmpfloat_with_epsilon (at[2].y, -2.53, 1e-9);
  g_assert_cmpfloat_with_epsilon (at[3].y, -1.47, 1e-9);
  g_assert_cmpfloat_with_epsilon (at[3].x, 1.30, 1e-9);
}

static void
test_picked_parts_light_up (void)
{
  g_autoptr (Sample) sample = sample_new (SAMPLE_PRAM);
  const gint64 selected[] = { 8, 12, 0 };
  g_autoptr (GbScene) scene = scene_of (sample, selected);
  g_autoptr (GString) picked = g_string_new (NULL);

  for (guint i = 0; i < scene->items->len; i++)
    {
      const GbSceneItem *item = &g_array_index (scene->items, GbSceneItem, i);

      if (item->picked)
        g_string_append_printf (picked, "%s|", item->name);
    }
  g_assert_cmpstr (picked->str, ==, "Mast|Rudder|Sail|");
}

static void
test_what_is_not_drawn_is_said (void)
{
  g_autoptr (Sample) sample = sample_new (SAMPLE_LARGE);
  g_autoptr (GbScene) scene = scene_of (sample, NULL);
  g_autoptr (GbChart) pram = chart_of (SAMPLE_PRAM, GB_CHART_BOAT);
  g_autoptr (GbChart) large = chart_of (SAMPLE_LARGE, GB_CHART_BOAT);

  g_assert_cmpfloat (scene->hi.x, <, 10);
  g_assert_cmpuint (scene->n_outside, >, 0);
  g_assert_nonnull (strstr (gb_chart_subtitle (large), "outside the picture"));
  g_assert_nonnull (strstr (gb_chart_subtitle (pram), "1 part has no place yet"));
}

/* Files ------------------------------------------------------------------------------------------------------------- */

static char *
temporary_folder (void)
{
  g_autoptr (GError) error = NULL;
  char *folder = g_dir_make_tmp ("charts-XXXXXX", &error);

  g_assert_no_error (error);
  return folder;
}

static GBytes *
export (GbChart *chart, const char *format, GbChartStyle style)
{
  g_autofree char *folder = temporary_folder ();
  g_autofree char *path = g_build_filename (folder, "chart", NULL);
  g_autoptr (GError) error = NULL;
  char *data;
  gsize length;

  g_assert_true (gb_chart_export (chart, path, format, 640, 300, style, &error));
  g_assert_no_error (error);
  g_assert_true (g_file_get_contents (path, &data, &length, &error));
  g_assert_cmpint (g_remove (path), ==, 0);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
  return g_bytes_new_take (data, length);
}

static void
check_exports (GbChart *chart, GbChartKind kind, SampleKind sample, gconstpointer data)
{
  static const char *const formats[] = { "png", "svg", "pdf" };

  if (sample != SAMPLE_PRAM && sample != SAMPLE_EMPTY)
    return;
  for (guint i = 0; i < G_N_ELEMENTS (formats); i++)
    {
      g_autoptr (GBytes) first = export (chart, formats[i], GB_CHART_PRINT);
      g_autoptr (GBytes) second = export (chart, formats[i], GB_CHART_PRINT);

      g_assert_cmpuint (g_bytes_get_size (first), >, 500);
      g_assert_true (g_bytes_equal (first, second));
    }
}

/* The same chart made anew gives the same bytes. */
static void
test_exports_are_the_same_each_time (void)
{
  g_autoptr (GbChart) a = chart_of (SAMPLE_OVER, GB_CHART_BOAT);
  g_autoptr (GbChart) b = chart_of (SAMPLE_OVER, GB_CHART_BOAT);
  g_autoptr (GBytes) first = export (a, "pdf", GB_CHART_LIGHT);
  g_autoptr (GBytes) second = export (b, "pdf", GB_CHART_LIGHT);

  g_assert_true (g_bytes_equal (first, second));
  for_each_chart (check_exports, NULL);
}

static gboolean
bytes_contain (GBytes *bytes, const char *text)
{
  gsize length;
  const char *data = g_bytes_get_data (bytes, &length);

  return memmem (data, length, text, strlen (text)) != NULL;
}

static void
test_exports_carry_the_title (void)
{
  g_autoptr (GbChart) chart = chart_of (SAMPLE_PRAM, GB_CHART_HEADS);
  g_autoptr (GBytes) svg = export (chart, "svg", GB_CHART_LIGHT);
  g_autoptr (GBytes) pdf = export (chart, "pdf", GB_CHART_LIGHT);

  g_assert_true (bytes_contain (svg, "<title>Every head keeps within its budget</title>"));
  g_assert_true (bytes_contain (svg, "<desc>Every head keeps within its budget. "));
  g_assert_true (bytes_contain (pdf, "/Title (Every head keeps within its budget)"));
  g_assert_false (bytes_contain (pdf, "/CreationDate"));
}

/* A long text along the bottom edge. */
static gboolean
has_footnote (GbChart *chart, gboolean alone)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 1, 1);
  cairo_t *cr = cairo_create (surface);
  g_auto (GbCanvas) canvas = { 0 };
  gboolean found = FALSE;

  gb_canvas_init (&canvas, cr, 900, 600, GB_CHART_LIGHT);
  gb_chart_render (chart, &canvas, alone);
  for (guint i = 0; i < canvas.words->len; i++)
    {
      GbBox box = g_array_index (canvas.words, GbBox, i);

      found = found || (box.width > 450 && box.y + box.height > 600 - canvas.em - 1);
    }
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return found;
}

/* Where floating is shown, the caution goes with the picture; in the window it stands beside it. */
static void
test_exports_carry_the_caution (void)
{
  g_autoptr (Sample) sample = sample_new (SAMPLE_PRAM);

  for (guint c = 0; c < GB_N_CHARTS; c++)
    {
      g_autoptr (GbChart) chart = sample_chart (sample, (GbChartKind) c);

      g_assert_false (has_footnote (chart, FALSE));
      g_assert_cmpint (has_footnote (chart, TRUE), ==, c == GB_CHART_LIMIT || c == GB_CHART_DRAUGHT || c == GB_CHART_BOAT);
    }
}

static void
test_png_is_twice_as_fine (void)
{
  g_autoptr (GbChart) chart = chart_of (SAMPLE_PRAM, GB_CHART_LIMIT);
  g_autofree char *folder = temporary_folder ();
  g_autofree char *path = g_build_filename (folder, "chart.png", NULL);
  g_autoptr (GError) error = NULL;
  cairo_surface_t *surface;

  g_assert_true (gb_chart_export (chart, path, "png", 640, 300, GB_CHART_LIGHT, &error));
  surface = cairo_image_surface_create_from_png (path);
  g_assert_cmpint (cairo_image_surface_get_width (surface), ==, 1280);
  g_assert_cmpint (cairo_image_surface_get_height (surface), ==, 600);
  cairo_surface_destroy (surface);
  g_assert_cmpint (g_remove (path), ==, 0);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

static void
test_exports_that_cannot_be (void)
{
  g_autoptr (GbChart) chart = chart_of (SAMPLE_PRAM, GB_CHART_LIMIT);
  g_autoptr (GError) format = NULL;
  g_autoptr (GError) size = NULL;
  g_autoptr (GError) folder = NULL;

  g_assert_false (gb_chart_export (chart, "/tmp/chart", "gif", 640, 300, GB_CHART_LIGHT, &format));
  g_assert_error (format, GB_CHART_ERROR, GB_CHART_ERROR_FORMAT);
  g_assert_false (gb_chart_export (chart, "/tmp/chart", "png", 1e6, 300, GB_CHART_LIGHT, &size));
  g_assert_error (size, GB_CHART_ERROR, GB_CHART_ERROR_SIZE);
  g_assert_false (gb_chart_export (chart, "/no/such/folder/chart.png", "png", 640, 300, GB_CHART_LIGHT, &folder));
  g_assert_error (folder, G_FILE_ERROR, G_FILE_ERROR_NOENT);
  g_assert_false (gb_chart_export (chart, "/tmp/chart", "png", NAN, 300, GB_CHART_LIGHT, NULL));
}

static void
test_references (void)
{
  GbChart *chart = chart_of (SAMPLE_PRAM, GB_CHART_BOAT);

  g_assert_true (gb_chart_ref (chart) == chart);
  gb_chart_unref (chart);
  g_assert_false (gb_chart_is_empty (chart));
  gb_chart_unref (chart);
  gb_chart_unref (NULL);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/charts/draws-at-any-size", test_draws_at_any_size);
  g_test_add_func ("/charts/absurd-sizes", test_absurd_sizes);
  g_test_add_func ("/charts/words-are-apart", test_words_are_apart);
  g_test_add_func ("/charts/draws-on-threads", test_draws_on_threads);
  g_test_add_func ("/charts/sentences", test_sentences);
  g_test_add_func ("/charts/titles-are-findings", test_titles_are_findings);
  g_test_add_func ("/charts/limit-with-one-limit", test_limit_with_one_limit);
  g_test_add_func ("/charts/descriptions-hold-the-values", test_descriptions_hold_the_values);
  g_test_add_func ("/charts/empty-charts-say-what-belongs-there", test_empty_charts_say_what_belongs_there);
  g_test_add_func ("/charts/unknown-is-counted", test_unknown_is_counted);
  g_test_add_func ("/charts/kinds-have-names", test_kinds_have_names);
  g_test_add_func ("/charts/tooltips", test_tooltips);
  g_test_add_func ("/charts/pick", test_pick);
  g_test_add_func ("/charts/boat-is-to-scale", test_boat_is_to_scale);
  g_test_add_func ("/charts/pairs-have-two-places", test_pairs_have_two_places);
  g_test_add_func ("/charts/picked-parts-light-up", test_picked_parts_light_up);
  g_test_add_func ("/charts/what-is-not-drawn-is-said", test_what_is_not_drawn_is_said);
  g_test_add_func ("/charts/exports-are-the-same-each-time", test_exports_are_the_same_each_time);
  g_test_add_func ("/charts/exports-carry-the-title", test_exports_carry_the_title);
  g_test_add_func ("/charts/exports-carry-the-caution", test_exports_carry_the_caution);
  g_test_add_func ("/charts/png-is-twice-as-fine", test_png_is_twice_as_fine);
  g_test_add_func ("/charts/exports-that-cannot-be", test_exports_that_cannot_be);
  g_test_add_func ("/charts/references", test_references);
  return g_test_run ();
}
