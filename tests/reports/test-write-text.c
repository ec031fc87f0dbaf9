/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The text and CSV forms of a document. */

#include "reports/safe-text.h"
#include "reports/writers.h"
#include "sample-document.h"

#include <csv.h>
#include <math.h>
#include <string.h>

static char *
to_string (GBytes *bytes)
{
  g_autoptr (GBytes) owned = bytes;

  return g_strndup (g_bytes_get_data (owned, NULL), g_bytes_get_size (owned));
}

static char *
write_text (GbUnits units)
{
  g_autoptr (GbDocument) document = sample_document (units);

  return to_string (gb_write_text (document));
}

static void
test_text_is_as_ever (void)
{
  g_autofree char *text = write_text (GB_UNITS_METRIC);
  const char *expected
      = "Parts list: Wren\n"
        "2026-03-12\n"
        "====================================================================================================\n"
        "Mass       10.8 kg ± 0.4 kg\n"
        "Freeboard  –\n"
        "Spent      €\302\240123.45\n"
        "Water      fresh\n"
        "\n"
        "Test in sheltered shallow water.\n"
        "\n"
        "1 part has no mass yet and is in no sum: Tiller.\n"
        "\n"
        "Parts\n"
        "\n"
        "Name      Mass     x  Mass\302\240×\302\240x  Bought        Cost\n"
        "          (kg)  (mm)    (kg·m)               (EUR)\n"
        "--------------------------------------------------\n"
        "Hull       7.8  1250      9.75  –             –\n"
        "  Bottom   4.8  1200      5.76  2026-03-12  123.45\n";

  g_test_message ("%s", text);
  g_assert_true (g_str_has_prefix (text, expected));
}

static void
test_text_keeps_to_its_width (void)
{
  g_autoptr (GbDocument) document = sample_long_document (30);
  g_autofree char *text = NULL;
  g_auto (GStrv) lines = NULL;

  gb_document_say (document, g_strnfill (350, 'w'));
  text = to_string (gb_write_text (document));
  lines = g_strsplit (text, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++)
    {
      g_assert_cmpint (g_utf8_strlen (lines[i], -1), <=, 100);
      g_assert_false (g_str_has_suffix (lines[i], " "));
    }
}

static void
test_text_is_harmless (void)
{
  g_autofree char *text = write_text (GB_UNITS_METRIC);

  g_assert_true (g_utf8_validate (text, -1, NULL));
  for (const char *p = text; *p != '\0'; p++)
    g_assert_true (*p == '\n' || !g_ascii_iscntrl (*p));
}

/* CSV, read back by libcsv ------------------------------------------------------------------------------------------ */

typedef struct
{
  GPtrArray *rows; /* of GPtrArray of utf8 */
  GPtrArray *row;
} Parsed;

static void
cell_cb (void *data, size_t length, void *user)
{
  Parsed *parsed = user;

  g_ptr_array_add (parsed->row, g_strndup (data != NULL ? data : "", length));
}

static void
row_cb (int end, void *user)
{
  Parsed *parsed = user;

  g_ptr_array_add (parsed->rows, parsed->row);
  parsed->row = g_ptr_array_new_with_free_func (g_free);
}

static GPtrArray *
parse_csv (const char *csv)
{
  struct csv_parser parser;
  Parsed parsed = { g_ptr_array_new_with_free_func ((GDestroyNotify) g_ptr_array_unref),
                    g_ptr_array_new_with_free_func (g_free) };

  g_assert_true (g_str_has_prefix (csv, "\xef\xbb\xbf"));
  csv += 3;
  g_assert_cmpint (csv_init (&parser, CSV_STRICT | CSV_STRICT_FINI | CSV_APPEND_NULL), ==, 0);
  g_assert_cmpuint (csv_parse (&parser, csv, strlen (csv), cell_cb, row_cb, &parsed), ==, strlen (csv));
  g_assert_cmpint (csv_fini (&parser, cell_cb, row_cb, &parsed), ==, 0);
  csv_free (&parser);
  g_ptr_array_unref (parsed.row);
  return parsed.rows;
}

static const char *
cell_at (const GPtrArray *rows, guint row, guint column)
{
  const GPtrArray *cells = rows->pdata[row];

  g_assert_cmpuint (column, <, cells->len);
  return cells->pdata[column];
}

/* The row that begins with @first. */
static guint
find_row (const GPtrArray *rows, const char *first)
{
  for (guint r = 0; r < rows->len; r++)
    if (strcmp (cell_at (rows, r, 0), first) == 0)
      return r;
  g_error ("no row begins with '%s'", first);
}

static void
test_csv_of_one_table_is_that_table (void)
{
  g_autoptr (GbDocument) document = sample_long_document (3);
  g_autofree char *csv = to_string (gb_write_csv (document));
  g_autoptr (GPtrArray) rows = parse_csv (csv);

  /* The headings and three rows; sums are no records. */
  g_assert_cmpuint (rows->len, ==, 4);
  g_assert_cmpstr (cell_at (rows, 0, 0), ==, "Name");
  g_assert_cmpstr (cell_at (rows, 0, 2), ==, "Mass (kg)");
  g_assert_cmpstr (cell_at (rows, 0, 3), ==, "x (mm)");
  g_assert_cmpstr (cell_at (rows, 0, 6), ==, "Cost (EUR)");
  g_assert_cmpstr (cell_at (rows, 2, 2), ==, "0.1");
  g_assert_cmpstr (cell_at (rows, 2, 3), ==, "10");
  g_assert_cmpstr (cell_at (rows, 2, 5), ==, "2026-03-12");
  g_assert_cmpstr (cell_at (rows, 2, 6), ==, "1.00");
}

static void
test_csv_has_even_lines_that_end_in_crlf (void)
{
  g_autoptr (GbDocument) document = sample_document (GB_UNITS_METRIC);
  g_autofree char *csv = to_string (gb_write_csv (document));
  g_autoptr (GPtrArray) rows = parse_csv (csv);

  for (guint r = 0; r < rows->len; r++)
    g_assert_cmpuint (((GPtrArray *) rows->pdata[r])->len, ==, 7);
  for (const char *p = strchr (csv, '\r'); p != NULL; p = strchr (p + 1, '\r'))
    g_assert_cmpint (p[1], ==, '\n');
  g_assert_true (g_str_has_suffix (csv, "\r\n"));
}

static void
test_csv_numbers_stay_numbers (void)
{
  g_autoptr (GbDocument) document = sample_document (GB_UNITS_METRIC);
  g_autofree char *csv = to_string (gb_write_csv (document));
  g_autoptr (GPtrArray) rows = parse_csv (csv);
  guint first = find_row (rows, "Text") + 1;
  guint bottom = find_row (rows, "Bottom");

  g_assert_cmpstr (cell_at (rows, bottom, 2), ==, "4.8");
  g_assert_cmpstr (cell_at (rows, bottom, 3), ==, "1200");
  g_assert_cmpstr (cell_at (rows, bottom, 4), ==, "5.76");
  /* Unknown is nothing, and never zero. */
  g_assert_cmpstr (cell_at (rows, bottom + 1, 2), ==, "");
  g_assert_cmpstr (cell_at (rows, bottom + 1, 5), ==, "");
  g_assert_cmpstr (cell_at (rows, bottom + 1, 6), ==, "");
  for (guint i = 0; i < sample_n_hostile; i++)
    g_assert_cmpfloat (g_ascii_strtod (cell_at (rows, first + i, 1), NULL), ==, -1.0 - i);
}

static void
test_csv_text_never_acts (void)
{
  g_autoptr (GbDocument) document = sample_document (GB_UNITS_METRIC);
  g_autofree char *csv = to_string (gb_write_csv (document));
  g_autoptr (GPtrArray) rows = parse_csv (csv);
  guint first = find_row (rows, "Text") + 1;

  for (guint i = 0; i < sample_n_hostile; i++)
    {
      const char *cell = cell_at (rows, first + i, 0);

      g_assert_true (*cell == '\0' || strchr ("=+-@\t\r\n ", *cell) == NULL);
      if (g_utf8_validate (sample_hostile[i], -1, NULL) && strpbrk (sample_hostile[i], "\t\r\a") == NULL)
        g_assert_cmpstr (gb_text_unmake_safe (cell), ==, sample_hostile[i]);
    }
}

static void
test_csv_in_feet (void)
{
  g_autoptr (GbDocument) document = sample_document (GB_UNITS_FEET);
  g_autofree char *csv = to_string (gb_write_csv (document));
  g_autoptr (GPtrArray) rows = parse_csv (csv);
  guint bottom = find_row (rows, "Bottom");

  g_assert_cmpstr (cell_at (rows, find_row (rows, "Name"), 4), ==, "Mass\302\240×\302\240x (lb·ft)");
  /* 4.8/0.45359237, 1.2/0.0254, and their product over 12. */
  g_assert_cmpfloat_with_epsilon (g_ascii_strtod (cell_at (rows, bottom, 2), NULL), 10.582188, 1e-6);
  g_assert_cmpfloat_with_epsilon (g_ascii_strtod (cell_at (rows, bottom, 3), NULL), 47.244094, 1e-6);
  g_assert_cmpfloat_with_epsilon (g_ascii_strtod (cell_at (rows, bottom, 4), NULL), 41.662160, 1e-6);
}

static void
test_safe_text_comes_back (void)
{
  static const char *const texts[]
      = { "", "a", "=1", "'=1", "''=1", "'", "'a", "-", "+x", "@", "it's", " =1", "' +1", "＝1", "\n=1" };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autofree char *safe = gb_text_make_safe (texts[i]);

      g_assert_cmpstr (gb_text_unmake_safe (safe), ==, texts[i]);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/write/text/is-as-ever", test_text_is_as_ever);
  g_test_add_func ("/write/text/keeps-to-its-width", test_text_keeps_to_its_width);
  g_test_add_func ("/write/text/is-harmless", test_text_is_harmless);
  g_test_add_func ("/write/csv/of-one-table-is-that-table", test_csv_of_one_table_is_that_table);
  g_test_add_func ("/write/csv/has-even-lines-that-end-in-crlf", test_csv_has_even_lines_that_end_in_crlf);
  g_test_add_func ("/write/csv/numbers-stay-numbers", test_csv_numbers_stay_numbers);
  g_test_add_func ("/write/csv/text-never-acts", test_csv_text_never_acts);
  g_test_add_func ("/write/csv/in-feet", test_csv_in_feet);
  g_test_add_func ("/write/csv/safe-text-comes-back", test_safe_text_comes_back);
  return g_test_run ();
}
