/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The drawing kit: ticks, patterns, words and how they are set apart, the lines of hulls. */

#include "charts/axis.h"
#include "charts/boat-layout.h"
#include "charts/hull-lines.h"
#include "charts/pattern.h"
#include "charts/text.h"
#include "charts/words.h"
#include "sample.h"

#include <math.h>
#include <string.h>

/* Axes ------------------------------------------------------------ */

static void
assert_ticks (const GbAxis *axis, const char *expected)
{
  g_autoptr (GString) got = g_string_new (NULL);

  for (guint i = 0; i < axis->n_ticks; i++)
    g_string_append_printf (got, "%s%s", i > 0 ? "|" : "", axis->ticks[i].text);
  g_assert_cmpstr (got->str, ==, expected);
}

static void
test_linear_axis (void)
{
  static const struct
  {
    double lo, hi, factor;
    guint most;
    const char *ticks;
  } cases[] = {
    { 0, 260, 1, 7, "0|50|100|150|200|250|300" },
    { 0, 0.42, 0.001, 6, "0|100|200|300|400|500" },
    { 0, 0.42, 0.0254, 5, "0|5|10|15|20" },
    { -0.61, 0.61, 1, 5, "−1.0|−0.5|0.0|0.5|1.0" },
    { -0.6, 0.6, 1, 2, "−1|0|1" },
    { 25.6, 30.2, 1, 4, "25|30|35" },
    { 0, 123456, 1, 4, "0|50\u202f000|100\u202f000|150\u202f000" },
    { 0, 0.0034, 1, 5, "0.000|0.001|0.002|0.003|0.004" },
    { 7, 7, 1, 3, "7.0|7.5|8.0" },
    { 0, 0, 1, 3, "0.00|0.05|0.10" },
    { 0, 1e30, 1, 3, "0|5e+29|1e+30" },
    { NAN, 3, 1, 3, "0.0|0.5|1.0" },
    { 0, INFINITY, 1, 3, "0.0|0.5|1.0" },
    { 0, 1, NAN, 3, "0.0|0.5|1.0" },
    { 0, 1, 1, 0, "0|1" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      GbAxis axis;

      gb_axis_linear (&axis, cases[i].lo, cases[i].hi, cases[i].factor, cases[i].most);
      assert_ticks (&axis, cases[i].ticks);
      if (isfinite (cases[i].lo) && isfinite (cases[i].hi) && isfinite (cases[i].factor))
        {
          g_assert_cmpfloat (axis.from, <=, cases[i].lo + 1e-9);
          g_assert_cmpfloat (axis.to, >=, cases[i].hi * (1 - 1e-12));
        }
    }
}

static void
test_axis_places (void)
{
  GbAxis axis;

  gb_axis_linear (&axis, 0, 100, 1, 6);
  axis.start = 300;
  axis.end = 100;
  g_assert_cmpfloat_with_epsilon (gb_axis_at (&axis, 0), 300, 1e-9);
  g_assert_cmpfloat_with_epsilon (gb_axis_at (&axis, 75), 150, 1e-9);
  g_assert_cmpfloat_with_epsilon (gb_axis_value (&axis, 150), 75, 1e-9);
  g_assert_cmpfloat_with_epsilon (gb_axis_value (&axis, 320), -10, 1e-9);
  gb_axis_say_unit (&axis, "kg");
  g_assert_cmpstr (axis.ticks[axis.n_ticks - 1].text, ==, "100\u00a0kg");
}

static void
test_axis_within (void)
{
  GbAxis axis;

  gb_axis_within (&axis, -0.2, 2.6, 1, 0.5);
  assert_ticks (&axis, "0.0|0.5|1.0|1.5|2.0|2.5");
  g_assert_cmpfloat (axis.from, ==, -0.2);
  g_assert_cmpfloat (axis.to, ==, 2.6);
  gb_axis_within (&axis, 0.1, 0.2, 1, 0.5);
  g_assert_cmpuint (axis.n_ticks, ==, 0);
}

static const GbChartStyle styles[] = { GB_CHART_LIGHT, GB_CHART_DARK, GB_CHART_PRINT };

static gint64
julian (int year, int month, int day)
{
  GDate date;

  g_date_clear (&date, 1);
  g_date_set_dmy (&date, (GDateDay)day, (GDateMonth)month, (GDateYear)year);
  return g_date_get_julian (&date);
}

static void
test_date_axis (void)
{
  GbAxis axis;

  gb_axis_dates (&axis, julian (2025, 2, 8), julian (2025, 6, 21), 6);
  assert_ticks (&axis, "Mar 2025|Apr|May|Jun");
  gb_axis_dates (&axis, julian (2025, 12, 29), julian (2026, 1, 2), 6);
  assert_ticks (&axis, "29 Dec 2025|30 Dec|31 Dec|1 Jan 2026|2 Jan");
  /* Mondays. */
  gb_axis_dates (&axis, julian (2025, 6, 4), julian (2025, 6, 30), 5);
  assert_ticks (&axis, "9 Jun 2025|16 Jun|23 Jun|30 Jun");
  gb_axis_dates (&axis, julian (1999, 5, 1), julian (2023, 5, 1), 6);
  assert_ticks (&axis, "2000|2005|2010|2015|2020");
  /* One day, days that no calendar has, and the wrong way round: still an axis. */
  gb_axis_dates (&axis, julian (2025, 6, 4), julian (2025, 6, 4), 5);
  g_assert_cmpfloat (axis.to, >, axis.from);
  gb_axis_dates (&axis, G_MININT64, G_MAXINT64, 5);
  g_assert_cmpuint (axis.n_ticks, >, 0);
  gb_axis_dates (&axis, 800000, 700000, 5);
  g_assert_cmpfloat (axis.to, >, axis.from);
}

/* Words ------------------------------------------------------------ */

/* 9 pt are 12 logical pixels (CSS: 1 px is 1/96 inch); print is in points. */
static void
test_text_is_never_small (void)
{
  static const double sizes[][2]
      = { { 100, 60 }, { 480, 300 }, { 640, 300 }, { 1600, 1000 }, { 5000, 4000 } };

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (guint s = 0; s < G_N_ELEMENTS (styles); s++)
      {
        g_auto (Paper) paper;

        paper_init (&paper, sizes[i][0], sizes[i][1], styles[s]);
        g_assert_cmpfloat (paper.canvas.em, >=, styles[s] == GB_CHART_PRINT ? 9 : 12);
        g_assert_cmpfloat (paper.canvas.em, <=, 18);
      }
}

static void
test_text_is_cut_to_width (void)
{
  g_auto (Paper) paper;
  GbBox box;
  double width;

  paper_init (&paper, 400, 300, GB_CHART_LIGHT);
  width = gb_text_width (&paper.canvas, GB_TEXT_PLAIN, "a sentence of some length");
  g_assert_cmpfloat (width, >, 80);
  box = gb_text_draw (&paper.canvas, GB_TEXT_PLAIN, GB_ROLE_TEXT, 200, 100, GB_AT_CENTRE | GB_AT_MIDDLE,
                      GB_ANY_WIDTH, "a sentence of some length");
  g_assert_cmpfloat_with_epsilon (box.width, width, 0.01);
  g_assert_cmpfloat_with_epsilon (box.x + box.width / 2, 200, 0.01);
  g_assert_cmpfloat_with_epsilon (box.y + box.height / 2, 100, 0.01);
  box = gb_text_draw (&paper.canvas, GB_TEXT_PLAIN, GB_ROLE_TEXT, 0, 200, GB_AT_LEFT | GB_AT_TOP, 60,
                      "a sentence of some length");
  g_assert_cmpfloat (box.width, <=, 60);
}

static void
test_text_if_free (void)
{
  g_auto (Paper) paper;
  GbCanvas *canvas = &paper.canvas;
  GbBox mark = { 100, 200, 50, 50 };

  paper_init (&paper, 400, 300, GB_CHART_LIGHT);
  g_assert_true (
      gb_text_if_free (canvas, GB_TEXT_PLAIN, GB_ROLE_TEXT, 100, 100, GB_AT_LEFT | GB_AT_TOP, "first"));
  g_assert_false (
      gb_text_if_free (canvas, GB_TEXT_PLAIN, GB_ROLE_TEXT, 105, 104, GB_AT_LEFT | GB_AT_TOP, "second"));
  g_assert_true (
      gb_text_if_free (canvas, GB_TEXT_PLAIN, GB_ROLE_TEXT, 105, 140, GB_AT_LEFT | GB_AT_TOP, "second"));
  g_assert_false (gb_text_if_free (canvas, GB_TEXT_PLAIN, GB_ROLE_TEXT, 395, 200, GB_AT_LEFT | GB_AT_TOP,
                                   "over the edge"));
  gb_canvas_mark (canvas, mark);
  g_assert_false (
      gb_text_if_free (canvas, GB_TEXT_PLAIN, GB_ROLE_TEXT, 110, 210, GB_AT_LEFT | GB_AT_TOP, "on a mark"));
  canvas->room = (GbBox){ 0, 0, 100, 100 };
  g_assert_false (gb_text_if_free (canvas, GB_TEXT_PLAIN, GB_ROLE_TEXT, 200, 20, GB_AT_LEFT | GB_AT_TOP,
                                   "out of the room"));
  g_assert_cmpuint (canvas->words->len, ==, 2);
}

static void
assert_spread (const double *wanted,
               const double *sizes,
               guint n,
               double from,
               double to,
               double gap,
               const double *expected)
{
  g_autofree double *centres = g_memdup2 (wanted, n * sizeof *wanted);

  g_assert_true (gb_spread (centres, sizes, n, from, to, gap));
  for (guint i = 0; i < n; i++)
    g_assert_cmpfloat_with_epsilon (centres[i], expected[i], 1e-9);
}

static void
test_spread (void)
{
  static const double tens[] = { 10, 10, 10, 10 };
  double crowded[] = { 1, 2, 3, 4 };

  /* Free ones stay; two that touch part evenly; at the edge they are pushed in; a run meets another and joins
   * it. */
  assert_spread ((double[]){ 10, 50 }, tens, 2, 0, 100, 2, (double[]){ 10, 50 });
  assert_spread ((double[]){ 50, 50 }, tens, 2, 0, 100, 2, (double[]){ 44, 56 });
  assert_spread ((double[]){ 0, 1 }, tens, 2, 0, 100, 2, (double[]){ 5, 17 });
  assert_spread ((double[]){ 100, 100 }, tens, 2, 0, 100, 2, (double[]){ 83, 95 });
  assert_spread ((double[]){ 40, 41, 42, 60 }, tens, 4, 0, 100, 0, (double[]){ 30.75, 40.75, 50.75, 60.75 });
  g_assert_false (gb_spread (crowded, tens, 4, 0, 30, 0));
  g_assert_true (gb_spread (NULL, NULL, 0, 0, 30, 0));
}

/* Whatever they wanted, they end apart, in order and inside. */
static void
test_spread_at_random (void)
{
  for (guint round = 0; round < 500; round++)
    {
      guint n = (guint)g_test_rand_int_range (1, 8);
      double centres[8], sizes[8], x = 0;

      for (guint i = 0; i < n; i++)
        {
          centres[i] = x += g_test_rand_double_range (0, 20);
          sizes[i] = g_test_rand_double_range (1, 20);
        }
      g_assert_true (gb_spread (centres, sizes, n, 0, 200, 1));
      g_assert_cmpfloat (centres[0] - sizes[0] / 2, >=, -1e-9);
      g_assert_cmpfloat (centres[n - 1] + sizes[n - 1] / 2, <=, 200 + 1e-9);
      for (guint i = 1; i < n; i++)
        g_assert_cmpfloat (centres[i] - sizes[i] / 2 - centres[i - 1] - sizes[i - 1] / 2, >=, 1 - 1e-9);
    }
}

static void
test_figures_in_words (void)
{
  static const struct
  {
    double share;
    const char *words;
  } shares[] = { { 0, "0 %" },           { 0.004, "under 1 %" }, { 0.37, "37 %" },
                 { 0.996, "over 99 %" }, { 1, "100 %" },         { NAN, "–" } };
  static const struct
  {
    double mass, sd;
    const char *words;
  } masses[] = { { 31.42, 1.234, "31.4 kg ± 1.2" },
                 { 177, 7.44, "177 kg ± 7" },
                 { 31.4, 0, "31.4 kg" },
                 { 31.4, NAN, "31.4 kg" },
                 { NAN, 1, "–" },
                 { 177, 0.3, "177 kg ± 0.3" } };

  for (guint i = 0; i < G_N_ELEMENTS (shares); i++)
    {
      g_autofree char *words = gb_percent_words (shares[i].share);

      g_assert_cmpstr (words, ==, shares[i].words);
    }
  for (guint i = 0; i < G_N_ELEMENTS (masses); i++)
    {
      g_autofree char *words
          = gb_quantity_format_with_sd (masses[i].mass, masses[i].sd, GB_DIM_MASS, GB_UNITS_METRIC);

      g_assert_cmpstr (words, ==, masses[i].words);
    }
}

static void
test_mass_off_a_limit (void)
{
  static const struct
  {
    double off, mass;
    const char *words;
  } cases[] = { { 0.203, 34.8, "0.2 kg" },
                { -41.63, 177, "42 kg" },
                { 0.3, 177, "0.3 kg" },
                { 5, 0, "5 kg" },
                { NAN, 30, "–" } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *words
          = gb_quantity_format_off (cases[i].off, cases[i].mass, GB_DIM_MASS, GB_UNITS_METRIC);

      g_assert_cmpstr (words, ==, cases[i].words);
    }
}

static void
test_lengths_in_words (void)
{
  g_autofree char *nothing = gb_length_format (-1e-18, GB_UNITS_METRIC);
  g_autofree char *some = gb_length_format (1.1514, GB_UNITS_METRIC);
  g_autofree char *unknown = gb_length_format (NAN, GB_UNITS_METRIC);

  g_assert_cmpstr (nothing, ==, "0 mm");
  g_assert_cmpstr (some, ==, "1151 mm");
  g_assert_cmpstr (unknown, ==, "–");
}

/* Patterns ------------------------------------------------------------ */

/* The share of a filled box that is unlike the background's colour and how many of its rows and columns are
 * all alike. */
static void
test_patterns_differ (void)
{
  static const GbRole roles[] = { GB_ROLE_WEIGHED, GB_ROLE_CALCULATED, GB_ROLE_ESTIMATED, GB_ROLE_LOADS };
  g_autoptr (GPtrArray) seen = g_ptr_array_new_with_free_func ((GDestroyNotify)g_bytes_unref);

  /* All in print, where colour says nothing: the pictures differ by pattern alone. */
  for (guint i = 0; i < G_N_ELEMENTS (roles); i++)
    {
      g_auto (Paper) paper;
      GBytes *bytes;

      paper_init (&paper, 60, 40, GB_CHART_PRINT);
      gb_pattern_fill (&paper.canvas, roles[i], (GbBox){ 0, 0, 60, 40 });
      g_assert_cmpint (cairo_status (paper.cr), ==, CAIRO_STATUS_SUCCESS);
      cairo_surface_flush (paper.surface);
      bytes = g_bytes_new (cairo_image_surface_get_data (paper.surface),
                           (gsize)cairo_image_surface_get_stride (paper.surface) * 40);
      for (guint k = 0; k < seen->len; k++)
        g_assert_false (g_bytes_equal (bytes, g_ptr_array_index (seen, k)));
      g_ptr_array_add (seen, bytes);
    }
}

static void
test_pattern_of_nothing (void)
{
  g_auto (Paper) paper;

  paper_init (&paper, 60, 40, GB_CHART_LIGHT);
  gb_pattern_fill (&paper.canvas, GB_ROLE_MARGIN, (GbBox){ 10, 10, 0, 20 });
  gb_pattern_fill (&paper.canvas, GB_ROLE_MARGIN, (GbBox){ 10, 10, 0.01, 20 });
  gb_pattern_fill (&paper.canvas, GB_ROLE_MARGIN, (GbBox){ 10, 10, -5, 20 });
  g_assert_cmpint (cairo_status (paper.cr), ==, CAIRO_STATUS_SUCCESS);
}

/* Hull lines ------------------------------------------------------------ */

static GbMesh *
make_box (double length, double width, double height)
{
  GbMesh *mesh = g_new0 (GbMesh, 1);
  static const guint triangles[12][3]
      = { { 0, 2, 1 }, { 0, 3, 2 }, { 4, 5, 6 }, { 4, 6, 7 }, { 0, 1, 5 }, { 0, 5, 4 },
          { 1, 2, 6 }, { 1, 6, 5 }, { 2, 3, 7 }, { 2, 7, 6 }, { 3, 0, 4 }, { 3, 4, 7 } };

  mesh->points = g_new0 (GbVec3, 8);
  mesh->n_points = 8;
  for (guint i = 0; i < 8; i++)
    {
      guint corner = i % 4;

      mesh->points[i] = (GbVec3){ corner == 1 || corner == 2 ? length : 0,
                                  corner >= 2 ? width / 2 : -width / 2, i >= 4 ? height : 0 };
    }
  mesh->triangles = g_memdup2 (triangles, sizeof triangles);
  mesh->n_triangles = 12;
  return mesh;
}

/* A box has twelve edges, all sharp, and no diagonals are drawn. */
static void
test_lines_of_a_box (void)
{
  g_autoptr (GbMesh) box = make_box (2, 1, 0.5);
  GArray *lines[GB_N_VIEWS];

  g_assert_true (gb_mesh_is_closed (box));
  gb_hull_lines (box, lines);
  for (guint v = 0; v < GB_N_VIEWS; v++)
    {
      g_assert_cmpuint (lines[v]->len, ==, 12);
      g_array_unref (lines[v]);
    }
}

/* A long round prism of many sides has no sharp edge along it: what is drawn is the rim of both ends and the
 * two lines where it turns away. */
static void
test_lines_of_a_round_prism (void)
{
  enum
  {
    N = 40
  };
  GbMesh mesh = { g_new0 (GbVec3, 2 * N + 2), 2 * N + 2, g_malloc0 (4 * N * sizeof (guint[3])), 4 * N };
  GArray *lines[GB_N_VIEWS];
  guint n = 0;

  /* Turned a little, so that no face is seen just edge-on. */
  for (guint i = 0; i < N; i++)
    {
      double angle = 2 * G_PI * (i + 0.3) / N;

      mesh.points[i] = (GbVec3){ 0, 0.2 * cos (angle), 0.2 * sin (angle) };
      mesh.points[N + i] = (GbVec3){ 3, 0.2 * cos (angle), 0.2 * sin (angle) };
    }
  mesh.points[2 * N] = (GbVec3){ 0, 0, 0 };
  mesh.points[2 * N + 1] = (GbVec3){ 3, 0, 0 };
  for (guint i = 0; i < N; i++)
    {
      guint j = (i + 1) % N;
      const guint faces[4][3]
          = { { i, N + i, N + j }, { i, N + j, j }, { 2 * N, i, j }, { 2 * N + 1, N + j, N + i } };

      for (guint k = 0; k < 4; k++)
        memcpy (mesh.triangles[n++], faces[k], sizeof faces[k]);
    }
  gb_hull_lines (&mesh, lines);
  g_assert_cmpuint (lines[GB_VIEW_SIDE]->len, ==, 2 * N + 2);
  g_assert_cmpuint (lines[GB_VIEW_PLAN]->len, ==, 2 * N + 2);
  g_assert_cmpuint (lines[GB_VIEW_END]->len, ==, 2 * N);
  for (guint v = 0; v < GB_N_VIEWS; v++)
    g_array_unref (lines[v]);
  g_free (mesh.points);
  g_free (mesh.triangles);
}

/* Bow to the right in side and plan view, port up in plan and to the left from aft. */
static void
test_views (void)
{
  GbVec3 p = { 3, 1, 2 };
  double right, up;

  gb_view_place (GB_VIEW_SIDE, p, &right, &up);
  g_assert_cmpfloat (right, ==, 3);
  g_assert_cmpfloat (up, ==, 2);
  gb_view_place (GB_VIEW_PLAN, p, &right, &up);
  g_assert_cmpfloat (right, ==, 3);
  g_assert_cmpfloat (up, ==, 1);
  gb_view_place (GB_VIEW_END, p, &right, &up);
  g_assert_cmpfloat (right, ==, -1);
  g_assert_cmpfloat (up, ==, 2);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/charts/kit/linear-axis", test_linear_axis);
  g_test_add_func ("/charts/kit/axis-places", test_axis_places);
  g_test_add_func ("/charts/kit/axis-within", test_axis_within);
  g_test_add_func ("/charts/kit/date-axis", test_date_axis);
  g_test_add_func ("/charts/kit/text-is-never-small", test_text_is_never_small);
  g_test_add_func ("/charts/kit/text-is-cut-to-width", test_text_is_cut_to_width);
  g_test_add_func ("/charts/kit/text-if-free", test_text_if_free);
  g_test_add_func ("/charts/kit/spread", test_spread);
  g_test_add_func ("/charts/kit/spread-at-random", test_spread_at_random);
  g_test_add_func ("/charts/kit/figures-in-words", test_figures_in_words);
  g_test_add_func ("/charts/kit/mass-off-a-limit", test_mass_off_a_limit);
  g_test_add_func ("/charts/kit/lengths-in-words", test_lengths_in_words);
  g_test_add_func ("/charts/kit/patterns-differ", test_patterns_differ);
  g_test_add_func ("/charts/kit/pattern-of-nothing", test_pattern_of_nothing);
  g_test_add_func ("/charts/kit/lines-of-a-box", test_lines_of_a_box);
  g_test_add_func ("/charts/kit/lines-of-a-round-prism", test_lines_of_a_round_prism);
  g_test_add_func ("/charts/kit/views", test_views);
  return g_test_run ();
}
