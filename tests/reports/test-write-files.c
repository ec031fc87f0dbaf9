/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The JSON and workbook forms of a document. A workbook is opened with unzip and read with xmllint, which
 * know nothing of Garboard. */

#include "reports/writers.h"
#include "sample-document.h"

#include <glib/gstdio.h>
#include <json-glib/json-glib.h>
#include <math.h>
#include <string.h>

/* JSON -------------------------------------------------------------------------------------------------------------- */

static JsonNode *
write_json (GbUnits units)
{
  g_autoptr (GbDocument) document = sample_document (units);
  g_autoptr (GBytes) bytes = gb_write_json (document);
  g_autoptr (GError) error = NULL;
  g_autofree char *text = g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
  JsonNode *root = json_from_string (text, &error);

  g_assert_no_error (error);
  return root;
}

static void
test_json_has_its_keys (void)
{
  g_autoptr (JsonNode) root = write_json (GB_UNITS_METRIC);
  JsonObject *object = json_node_get_object (root);
  JsonObject *facts = json_object_get_object_member (object, "facts");

  g_assert_cmpint (json_object_get_int_member (object, "garboard_report"), ==, 1);
  g_assert_cmpstr (json_object_get_string_member (object, "kind"), ==, "parts");
  g_assert_cmpstr (json_object_get_string_member (object, "build"), ==, "Wren");
  g_assert_cmpstr (json_object_get_string_member (object, "date"), ==, "2026-03-12");
  g_assert_cmpstr (json_object_get_string_member (object, "currency"), ==, "EUR");
  g_assert_cmpfloat (json_object_get_double_member (facts, "mass_kg"), ==, 10.8);
  g_assert_true (json_object_get_null_member (facts, "freeboard_m"));
  g_assert_cmpint (json_object_get_int_member (facts, "spent_minor"), ==, 12345);
  g_assert_cmpstr (json_object_get_string_member (facts, "water"), ==, "fresh");
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (object, "cautions")), ==, 1);
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (object, "remarks")), ==, 1);
}

static void
test_json_rows (void)
{
  g_autoptr (JsonNode) root = write_json (GB_UNITS_METRIC);
  JsonArray *parts = json_object_get_array_member (json_node_get_object (root), "parts");
  JsonObject *bottom = json_array_get_object_element (parts, 1);
  JsonObject *tiller = json_array_get_object_element (parts, 2);
  JsonObject *total = json_array_get_object_element (parts, 3);

  g_assert_cmpuint (json_array_get_length (parts), ==, 4);
  g_assert_cmpstr (json_object_get_string_member (json_array_get_object_element (parts, 0), "row"), ==,
                   "group");
  g_assert_cmpstr (json_object_get_string_member (bottom, "row"), ==, "normal");
  g_assert_cmpint (json_object_get_int_member (bottom, "depth"), ==, 1);
  g_assert_cmpfloat (json_object_get_double_member (bottom, "mass_kg"), ==, 4.8);
  g_assert_cmpfloat (json_object_get_double_member (bottom, "x_m"), ==, 1.2);
  g_assert_cmpfloat (json_object_get_double_member (bottom, "moment_x_kg_m"), ==, 4.8 * 1.2);
  g_assert_cmpstr (json_object_get_string_member (bottom, "bought"), ==, "2026-03-12");
  g_assert_cmpint (json_object_get_int_member (bottom, "cost_minor"), ==, 12345);
  g_assert_true (json_object_get_null_member (tiller, "mass_kg"));
  g_assert_true (json_object_get_null_member (tiller, "bought"));
  g_assert_true (json_object_get_null_member (tiller, "cost_minor"));
  g_assert_cmpstr (json_object_get_string_member (total, "row"), ==, "total");
  g_assert_cmpstr (json_object_get_string_member (total, "name"), ==, "total");
}

static void
test_json_is_si_in_any_units (void)
{
  g_autoptr (JsonNode) metric = write_json (GB_UNITS_METRIC);
  g_autoptr (JsonNode) feet = write_json (GB_UNITS_FEET);
  g_autofree char *a = json_to_string (metric, FALSE);
  g_autofree char *b = json_to_string (feet, FALSE);

  g_assert_cmpstr (a, ==, b);
}

/* Workbook ---------------------------------------------------------------------------------------------------------- */

/* What @command prints; its arguments are in order. */
static char *
run (const char *program, ...)
{
  g_autoptr (GPtrArray) argv = g_ptr_array_new ();
  g_autoptr (GError) error = NULL;
  char *out = NULL;
  int status;
  va_list args;

  va_start (args, program);
  for (const char *arg = program; arg != NULL; arg = va_arg (args, const char *))
    g_ptr_array_add (argv, (gpointer) arg);
  va_end (args);
  g_ptr_array_add (argv, NULL);
  g_spawn_sync (NULL, (char **) argv->pdata, NULL, G_SPAWN_SEARCH_PATH | G_SPAWN_STDERR_TO_DEV_NULL, NULL,
                NULL, &out, NULL, &status, &error);
  g_assert_no_error (error);
  return out;
}

static char *
save_xlsx (GbUnits units)
{
  g_autoptr (GbDocument) document = sample_document (units);
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = gb_write_xlsx (document, &error);
  char *path = g_build_filename (g_get_tmp_dir (), "garboard-test-XXXXXX", NULL);
  int fd = g_mkstemp (path);

  g_assert_no_error (error);
  g_assert_cmpint (fd, >=, 0);
  g_close (fd, NULL);
  g_file_set_contents (path, g_bytes_get_data (bytes, NULL), (gssize) g_bytes_get_size (bytes), &error);
  g_assert_no_error (error);
  return path;
}

/* What the XPath expression gives for one file in the workbook. */
static char *
query (const char *xlsx, const char *file, const char *xpath)
{
  g_autofree char *xml = run ("unzip", "-p", xlsx, file, NULL);
  g_autofree char *path = g_strconcat (xlsx, ".xml", NULL);
  char *answer;

  g_assert_true (g_file_set_contents (path, xml, -1, NULL));
  answer = run ("xmllint", "--xpath", xpath, path, NULL);
  g_unlink (path);
  return g_strchomp (answer);
}

#define SHEET(n) "xl/worksheets/sheet" #n ".xml"
#define CELL(ref) "//*[local-name()='c'][@r='" ref "']"

static void
assert_query (const char *xlsx, const char *file, const char *xpath, const char *expected)
{
  g_autofree char *answer = query (xlsx, file, xpath);

  g_assert_cmpstr (answer, ==, expected);
}

static void
test_xlsx_numbers_are_numbers (void)
{
  g_autofree char *xlsx = save_xlsx (GB_UNITS_METRIC);

  /* B is the group; C3 and D3 are mass and x of the bottom, G3 its cost. */
  assert_query (xlsx, SHEET (2), "string(" CELL ("C3") "/*[local-name()='v'])", "4.8");
  assert_query (xlsx, SHEET (2), "count(" CELL ("C3") "/@t)", "0");
  assert_query (xlsx, SHEET (2), "string(" CELL ("D3") "/*[local-name()='v'])", "1200");
  assert_query (xlsx, SHEET (2), "string(" CELL ("G3") "/*[local-name()='v'])", "123.45");
  /* 12 March 2026 is day 46093 of spreadsheets: 46093 days after 30 December 1899. */
  assert_query (xlsx, SHEET (2), "string(" CELL ("F3") "/*[local-name()='v'])", "46093");
  /* Unknown is empty. */
  assert_query (xlsx, SHEET (2), "count(" CELL ("C4") "/*)", "0");
  g_unlink (xlsx);
}

static void
test_xlsx_has_no_formula_and_no_link (void)
{
  g_autofree char *xlsx = save_xlsx (GB_UNITS_METRIC);
  g_autofree char *files = run ("unzip", "-Z1", xlsx, NULL);

  for (guint n = 1; n <= 3; n++)
    {
      g_autofree char *sheet = g_strdup_printf ("xl/worksheets/sheet%u.xml", n);

      assert_query (xlsx, sheet, "count(//*[local-name()='f'])", "0");
      assert_query (xlsx, sheet, "count(//*[local-name()='hyperlink'])", "0");
    }
  g_assert_null (strstr (files, "externalLink"));
  g_assert_null (strstr (files, "vbaProject"));
  g_unlink (xlsx);
}

static void
test_xlsx_texts_are_strings (void)
{
  g_autofree char *xlsx = save_xlsx (GB_UNITS_METRIC);

  assert_query (xlsx, SHEET (3), "string(" CELL ("A2") "/@t)", "s");
  assert_query (xlsx, "xl/sharedStrings.xml", "count(//*[local-name()='t'][text()='=1+1'])", "1");
  assert_query (xlsx, "xl/sharedStrings.xml", "count(//*[local-name()='t'][text()='Bottom'])", "1");
  g_unlink (xlsx);
}

static void
test_xlsx_header_is_frozen (void)
{
  g_autofree char *xlsx = save_xlsx (GB_UNITS_METRIC);

  assert_query (xlsx, SHEET (2), "string(//*[local-name()='pane']/@state)", "frozen");
  assert_query (xlsx, SHEET (2), "string(//*[local-name()='pane']/@ySplit)", "1");
  assert_query (xlsx, "xl/workbook.xml", "string(//*[local-name()='sheet'][2]/@name)", "Parts");
  assert_query (xlsx, "docProps/core.xml", "string(//*[local-name()='created'])", "2026-03-12T00:00:00Z");
  g_unlink (xlsx);
}

static void
test_xlsx_is_the_same_every_time (void)
{
  g_autoptr (GbDocument) document = sample_document (GB_UNITS_METRIC);
  g_autoptr (GBytes) a = gb_write_xlsx (document, NULL);
  g_autoptr (GBytes) b = gb_write_xlsx (document, NULL);

  g_assert_true (g_bytes_equal (a, b));
}

static void
test_xlsx_takes_very_long_texts (void)
{
  static const GbColumn columns[] = { { "text", "Text", GB_CELL_TEXT, 0, GB_COLUMN_WIDE } };
  g_autoptr (GbDocument) document = sample_document (GB_UNITS_METRIC);
  GbTable *table = gb_document_table (document, "long", "A title that is much too long for [a sheet]: 'name'",
                                      columns, 1);
  g_autofree char *text = g_strnfill (40000, 'a');
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = NULL;

  gb_table_row (table, GB_ROW_NORMAL, 0);
  gb_table_text (table, text);
  bytes = gb_write_xlsx (document, &error);
  g_assert_no_error (error);
  g_assert_nonnull (bytes);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/write/json/has-its-keys", test_json_has_its_keys);
  g_test_add_func ("/write/json/rows", test_json_rows);
  g_test_add_func ("/write/json/is-si-in-any-units", test_json_is_si_in_any_units);
  g_test_add_func ("/write/xlsx/numbers-are-numbers", test_xlsx_numbers_are_numbers);
  g_test_add_func ("/write/xlsx/has-no-formula-and-no-link", test_xlsx_has_no_formula_and_no_link);
  g_test_add_func ("/write/xlsx/texts-are-strings", test_xlsx_texts_are_strings);
  g_test_add_func ("/write/xlsx/header-is-frozen", test_xlsx_header_is_frozen);
  g_test_add_func ("/write/xlsx/is-the-same-every-time", test_xlsx_is_the_same_every_time);
  g_test_add_func ("/write/xlsx/takes-very-long-texts", test_xlsx_takes_very_long_texts);
  return g_test_run ();
}
