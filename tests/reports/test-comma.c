/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Every format in a country that writes 4,8 for 4.8: what people read has the comma, files have the point. The locale is made for the test,
 * by localedef and what it compiles from; without those the test is skipped. */

#include "reports/import.h"
#include "reports/writers.h"
#include "sample-document.h"
#include "small-build.h"

#include <glib/gstdio.h>
#include <locale.h>
#include <string.h>

static void
enter_comma_country (void)
{
  g_autofree char *folder = g_test_build_filename (G_TEST_BUILT, "reports", "locales", NULL);
  g_autofree char *target = g_build_filename (folder, "de_DE.UTF-8", NULL);
  const char *argv[] = { "localedef", "--no-archive", "-c", "-i", "de_DE", "-f", "UTF-8", target, NULL };

  g_mkdir_with_parents (folder, 0755);
  g_spawn_sync (NULL, (char **) argv, NULL,
                G_SPAWN_SEARCH_PATH | G_SPAWN_STDOUT_TO_DEV_NULL | G_SPAWN_STDERR_TO_DEV_NULL, NULL, NULL, NULL,
                NULL, NULL, NULL);
  g_setenv ("LOCPATH", folder, TRUE);
  g_setenv ("LC_ALL", "de_DE.UTF-8", TRUE);
  setlocale (LC_ALL, "de_DE.UTF-8");
  /* The C library loses the path that it makes of this each time it is asked for a locale. */
  g_unsetenv ("LOCPATH");
}

static gboolean
skip_without_locale (void)
{
  if (strcmp (localeconv ()->decimal_point, ",") == 0)
    return FALSE;
  g_test_skip ("the locale de_DE.UTF-8 cannot be made here");
  return TRUE;
}

static char *
to_string (GBytes *bytes)
{
  g_autoptr (GBytes) owned = bytes;

  return g_strndup (g_bytes_get_data (owned, NULL), g_bytes_get_size (owned));
}

static void
test_text_has_commas (void)
{
  g_autoptr (GbDocument) document = sample_document (GB_UNITS_METRIC);
  g_autofree char *text = NULL;

  if (skip_without_locale ())
    return;
  text = to_string (gb_write_text (document));
  g_assert_nonnull (strstr (text, "4,8  1200"));
  g_assert_nonnull (strstr (text, "123,45"));
}

static void
test_csv_and_json_have_points (void)
{
  g_autoptr (GbDocument) document = sample_document (GB_UNITS_METRIC);
  g_autofree char *csv = NULL, *json = NULL;

  if (skip_without_locale ())
    return;
  csv = to_string (gb_write_csv (document));
  json = to_string (gb_write_json (document));
  g_assert_nonnull (strstr (csv, "Bottom,Hull,4.8,1200,5.76,2026-03-12,123.45"));
  g_assert_nonnull (strstr (json, "\"mass_kg\" : 4.7"));
}

static void
test_workbook_has_points (void)
{
  g_autoptr (GbDocument) document = sample_document (GB_UNITS_METRIC);
  g_autofree char *path = g_test_build_filename (G_TEST_BUILT, "reports", "comma.xlsx", NULL);
  const char *argv[] = { "unzip", "-p", path, "xl/worksheets/sheet2.xml", NULL };
  g_autofree char *xml = NULL;
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GError) error = NULL;

  if (skip_without_locale ())
    return;
  bytes = gb_write_xlsx (document, &error);
  g_assert_no_error (error);
  g_file_set_contents (path, g_bytes_get_data (bytes, NULL), (gssize) g_bytes_get_size (bytes), &error);
  g_assert_no_error (error);
  g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &xml, NULL, NULL, &error);
  g_assert_no_error (error);
  g_assert_nonnull (strstr (xml, "<v>4.8"));
  g_assert_null (strstr (xml, "<v>4,8"));
  /* And we are where we were. */
  g_assert_cmpstr (localeconv ()->decimal_point, ==, ",");
}

/* Rows that a spreadsheet of that country takes and gives. */
static void
test_rows_come_back (void)
{
  g_autoptr (GbBoat) boat = NULL;
  g_autofree char *rows = NULL;
  g_autoptr (GbImport) import = NULL;
  const gint64 ids[] = { 1, 4, 7 };

  if (skip_without_locale ())
    return;
  boat = small_build_new ();
  rows = gb_export_rows (boat, ids, G_N_ELEMENTS (ids));
  g_assert_nonnull (strstr (rows, "\t0,5\t"));
  import = gb_import_new (GB_RECORD_PART, rows, -1, boat, NULL);
  g_assert_cmpuint (gb_import_n_rows (import), ==, gb_boat_n (boat, GB_RECORD_PART));
  for (guint r = 0; r < gb_import_n_rows (import); r++)
    g_assert_cmpstr (gb_import_refusal (import, r), ==, NULL);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  enter_comma_country ();
  g_test_add_func ("/comma/text-has-commas", test_text_has_commas);
  g_test_add_func ("/comma/csv-and-json-have-points", test_csv_and_json_have_points);
  g_test_add_func ("/comma/workbook-has-points", test_workbook_has_points);
  g_test_add_func ("/comma/rows-come-back", test_rows_come_back);
  return g_test_run ();
}
