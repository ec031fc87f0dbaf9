/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Each chart of each sample: that it draws at any size and on any thread, keeps its words apart, and finds
 * what is under the pointer. */

#include "sample.h"

#include <math.h>

static const GbChartStyle styles[] = { GB_CHART_LIGHT, GB_CHART_DARK, GB_CHART_PRINT };

static const double sizes[][2] = {
  { 320, 200 }, { 480, 300 }, { 640, 300 },  { 600, 420 },
  { 320, 480 }, { 900, 600 }, { 1280, 360 }, { 1600, 1000 },
};

static void
check_draws (GbChart *chart, GbChartKind kind, SampleKind sample)
{
  for (guint s = 0; s < G_N_ELEMENTS (styles); s++)
    for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
      sample_assert_draws (chart, sizes[i][0], sizes[i][1], styles[s]);
}

static void
test_draws_at_any_size (void)
{
  sample_for_each_chart (check_draws);
}

static void
check_absurd_sizes (GbChart *chart, GbChartKind kind, SampleKind sample)
{
  static const double absurd[][2]
      = { { 0, 0 },    { -5, 100 }, { NAN, 100 }, { 100, INFINITY }, { 1, 1 },       { 20, 500 },
          { 500, 20 }, { 60, 60 },  { 200, 90 },  { 90, 200 },       { 200, 20000 }, { 20000, 200 } };

  for (guint i = 0; i < G_N_ELEMENTS (absurd); i++)
    {
      g_autofree char *tip = NULL;

      sample_assert_draws (chart, absurd[i][0], absurd[i][1], GB_CHART_LIGHT);
      tip = gb_chart_tooltip (chart, absurd[i][0], absurd[i][1], 10, 10);
      gb_chart_pick (chart, absurd[i][0], absurd[i][1], NAN, 10);
    }
}

static void
test_absurd_sizes (void)
{
  sample_for_each_chart (check_absurd_sizes);
}

static void
check_words (GbChart *chart, GbChartKind kind, SampleKind sample)
{
  g_autofree char *what = g_strdup_printf ("%s of %s", gb_chart_kind_name (kind), sample_name (sample));

  for (guint s = 0; s < G_N_ELEMENTS (styles); s++)
    for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
      /* The charts of weight and money are never shown so low. */
      if (kind >= GB_CHART_FLOATING || sizes[i][1] >= 300)
        sample_assert_words_apart (chart, what, sizes[i][0], sizes[i][1], styles[s]);
}

static void
test_words_are_apart (void)
{
  sample_for_each_chart (check_words);
}

static gpointer
draw_in_thread (gpointer data)
{
  for (guint i = 0; i < 5; i++)
    {
      g_autofree char *tip = NULL;

      sample_assert_draws (data, 640, 300, GB_CHART_DARK);
      tip = gb_chart_tooltip (data, 640, 300, 320, 150);
    }
  return NULL;
}

static void
test_draws_on_threads (void)
{
  g_autoptr (GbChart) chart = sample_chart_alone (SAMPLE_PRAM, GB_CHART_BOAT);
  GThread *threads[3];

  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    threads[i] = g_thread_new ("draw", draw_in_thread, chart);
  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    g_thread_join (threads[i]);
}

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
    { GB_CHART_LIMIT, "All up: 177 kg" },
    { GB_CHART_LIMIT, "Light craft: 28.8 kg" },
    { GB_CHART_GROUPS, "Rig: 4.5 kg" },
    { GB_CHART_HISTORY, "2025-04-27: forecast 27.6 kg" },
    { GB_CHART_BOAT, "Mast: 3.1 kg" },
    { GB_CHART_BOAT, "Crew: 64 kg" },
    { GB_CHART_DRAUGHT, "200 mm deep: carries" },
    { GB_CHART_COURSE, "2025-03-22: €\u00a0210.00" },
    { GB_CHART_COURSE, "Still to buy" },
    { GB_CHART_HEADS, "Timber: Spent" },
  };

  /* Nothing was drawn before. */
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GbChart) chart = sample_chart_alone (SAMPLE_PRAM, cases[i].kind);
      double x, y;

      if (!find_tooltip (chart, 640, 300, cases[i].begin, &x, &y))
        g_error ("no tooltip begins \"%s\"", cases[i].begin);
    }
}

static void
test_pick (void)
{
  g_autoptr (GbChart) boat = sample_chart_alone (SAMPLE_PRAM, GB_CHART_BOAT);
  g_autoptr (GbChart) groups = sample_chart_alone (SAMPLE_PRAM, GB_CHART_GROUPS);
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

static void
test_references (void)
{
  GbChart *chart = sample_chart_alone (SAMPLE_PRAM, GB_CHART_BOAT);

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
  g_test_add_func ("/charts/tooltips", test_tooltips);
  g_test_add_func ("/charts/pick", test_pick);
  g_test_add_func ("/charts/references", test_references);
  return g_test_run ();
}
