/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Charts as files. */

#include "sample.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

static char *
temporary_folder (void)
{
  g_autoptr (GError) error = NULL;
  char *folder = g_dir_make_tmp ("charts-XXXXXX", &error);

  g_assert_no_error (error);
  return folder;
}

static GBytes *
export_bytes (GbChart *chart, const char *format, GbChartStyle style)
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
check_exports (GbChart *chart, GbChartKind kind, SampleKind sample)
{
  static const char *const formats[] = { "png", "svg", "pdf" };

  if (sample != SAMPLE_PRAM && sample != SAMPLE_EMPTY)
    return;
  for (guint i = 0; i < G_N_ELEMENTS (formats); i++)
    {
      g_autoptr (GBytes) first = export_bytes (chart, formats[i], GB_CHART_PRINT);
      g_autoptr (GBytes) second = export_bytes (chart, formats[i], GB_CHART_PRINT);

      g_assert_cmpuint (g_bytes_get_size (first), >, 500);
      g_assert_true (g_bytes_equal (first, second));
    }
}

/* The same chart made anew gives the same bytes. */
static void
test_exports_are_the_same_each_time (void)
{
  g_autoptr (GbChart) a = sample_chart_alone (SAMPLE_OVER, GB_CHART_BOAT);
  g_autoptr (GbChart) b = sample_chart_alone (SAMPLE_OVER, GB_CHART_BOAT);
  g_autoptr (GBytes) first = export_bytes (a, "pdf", GB_CHART_LIGHT);
  g_autoptr (GBytes) second = export_bytes (b, "pdf", GB_CHART_LIGHT);

  g_assert_true (g_bytes_equal (first, second));
  sample_for_each_chart (check_exports);
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
  g_autoptr (GbChart) chart = sample_chart_alone (SAMPLE_PRAM, GB_CHART_HEADS);
  g_autoptr (GBytes) svg = export_bytes (chart, "svg", GB_CHART_LIGHT);
  g_autoptr (GBytes) pdf = export_bytes (chart, "pdf", GB_CHART_LIGHT);

  g_assert_true (bytes_contain (svg, "<title>Every head keeps within its budget</title>"));
  g_assert_true (bytes_contain (svg, "<desc>Every head keeps within its budget. "));
  g_assert_true (bytes_contain (pdf, "/Title (Every head keeps within its budget)"));
  g_assert_false (bytes_contain (pdf, "/CreationDate"));
}

/* A long text along the bottom edge. */
static gboolean
has_footnote (GbChart *chart, gboolean alone)
{
  g_auto (Paper) paper;
  gboolean found = FALSE;

  paper_init_blank (&paper, 900, 600, GB_CHART_LIGHT);
  gb_chart_render (chart, &paper.canvas, alone);
  for (guint i = 0; i < paper.canvas.words->len; i++)
    {
      GbBox box = g_array_index (paper.canvas.words, GbBox, i);

      found = found || (box.width > 450 && box.y + box.height > 600 - paper.canvas.em - 1);
    }
  return found;
}

/* Where floating is shown, the caution goes with the picture; in the window it stands beside it. */
static void
test_exports_carry_the_caution (void)
{
  g_autoptr (Sample) sample = sample_new (SAMPLE_PRAM);

  for (guint c = 0; c < GB_N_CHARTS; c++)
    {
      g_autoptr (GbChart) chart = sample_chart (sample, (GbChartKind)c);

      g_assert_false (has_footnote (chart, FALSE));
      g_assert_cmpint (has_footnote (chart, TRUE), ==,
                       c == GB_CHART_LIMIT || c == GB_CHART_DRAUGHT || c == GB_CHART_BOAT
                           || c >= GB_CHART_FLOATING);
    }
}

static void
test_png_is_twice_as_fine (void)
{
  g_autoptr (GbChart) chart = sample_chart_alone (SAMPLE_PRAM, GB_CHART_LIMIT);
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
  g_autoptr (GbChart) chart = sample_chart_alone (SAMPLE_PRAM, GB_CHART_LIMIT);
  g_autoptr (GError) format = NULL;
  g_autoptr (GError) size = NULL;
  g_autoptr (GError) folder = NULL;

  g_assert_false (gb_chart_export (chart, "/tmp/chart", "gif", 640, 300, GB_CHART_LIGHT, &format));
  g_assert_error (format, GB_CHART_ERROR, GB_CHART_ERROR_FORMAT);
  g_assert_false (gb_chart_export (chart, "/tmp/chart", "png", 1e6, 300, GB_CHART_LIGHT, &size));
  g_assert_error (size, GB_CHART_ERROR, GB_CHART_ERROR_SIZE);
  g_assert_false (
      gb_chart_export (chart, "/no/such/folder/chart.png", "png", 640, 300, GB_CHART_LIGHT, &folder));
  g_assert_error (folder, G_FILE_ERROR, G_FILE_ERROR_NOENT);
  g_assert_false (gb_chart_export (chart, "/tmp/chart", "png", NAN, 300, GB_CHART_LIGHT, NULL));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/charts/export/exports-are-the-same-each-time", test_exports_are_the_same_each_time);
  g_test_add_func ("/charts/export/exports-carry-the-title", test_exports_carry_the_title);
  g_test_add_func ("/charts/export/exports-carry-the-caution", test_exports_carry_the_caution);
  g_test_add_func ("/charts/export/png-is-twice-as-fine", test_png_is_twice_as_fine);
  g_test_add_func ("/charts/export/exports-that-cannot-be", test_exports_that_cannot_be);
  return g_test_run ();
}
