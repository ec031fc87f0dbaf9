/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The PDF form of a document, read back by pdftotext and pdfinfo. The pages stay in the build folder to be
 * looked at. */

#include "reports/writers.h"
#include "sample-document.h"

#include <glib/gstdio.h>
#include <string.h>

static char *
run (const char *const *argv)
{
  g_autoptr (GError) error = NULL;
  char *out = NULL;
  int status = 0;

  g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &out, NULL, &status, &error);
  g_assert_no_error (error);
  g_assert_true (g_spawn_check_wait_status (status, NULL));
  return out;
}

static char *
save_pdf (GbDocument *document, const char *name)
{
  g_autoptr (GbDocument) owned = document;
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = gb_write_pdf (owned, &error);
  char *path = g_test_build_filename (G_TEST_BUILT, "reports", name, NULL);

  g_assert_no_error (error);
  g_file_set_contents (path, g_bytes_get_data (bytes, NULL), (gssize) g_bytes_get_size (bytes), &error);
  g_assert_no_error (error);
  return path;
}

static char *
read_pdf (const char *path)
{
  return run ((const char *[]){ "pdftotext", "-layout", "-enc", "UTF-8", path, "-", NULL });
}

static char *
pdf_info (const char *path)
{
  return run ((const char *[]){ "pdfinfo", "-isodates", path, NULL });
}

static guint
count_pages (const char *path)
{
  g_autofree char *info = pdf_info (path);
  const char *pages = strstr (info, "Pages:");

  g_assert_nonnull (pages);
  return (guint) g_ascii_strtoull (g_strchug ((char *) pages + strlen ("Pages:")), NULL, 10);
}

static guint
count_text (const char *text, const char *part)
{
  guint n = 0;

  for (const char *p = strstr (text, part); p != NULL; p = strstr (p + 1, part))
    n++;
  return n;
}

static void
test_contents (void)
{
  g_autofree char *path = save_pdf (sample_document (GB_UNITS_METRIC), "sample.pdf");
  g_autofree char *text = read_pdf (path);

  g_assert_cmpuint (count_pages (path), ==, 1);
  g_assert_nonnull (strstr (text, "Parts list"));
  g_assert_nonnull (strstr (text, "Wren"));
  g_assert_nonnull (strstr (text, "10.8 kg ± 0.4 kg"));
  g_assert_nonnull (strstr (text, "Bottom"));
  g_assert_nonnull (strstr (text, "123.45"));
  g_assert_nonnull (strstr (text, "Test in sheltered shallow water."));
  g_assert_nonnull (strstr (text, "1 part has no mass yet"));
  g_assert_nonnull (strstr (text, "=HYPERLINK"));
  g_assert_nonnull (strstr (text, "2026-03-12"));
  g_assert_nonnull (strstr (text, "page 1 of 1"));
}

static void
test_paper (void)
{
  g_autofree char *metric = save_pdf (sample_document (GB_UNITS_METRIC), "sample.pdf");
  g_autofree char *feet = save_pdf (sample_document (GB_UNITS_FEET), "sample-feet.pdf");
  g_autofree char *a4 = pdf_info (metric);
  g_autofree char *letter = pdf_info (feet);

  g_assert_nonnull (strstr (a4, "(A4)"));
  g_assert_nonnull (strstr (letter, "(letter)"));
  g_assert_nonnull (strstr (a4, "2026-03-12T00:00:00"));
}

/* Every row is there, every page has its headings, its number and the caution. */
static void
test_two_thousand_parts (void)
{
  g_autofree char *path = save_pdf (sample_long_document (2000), "sample-long.pdf");
  g_autofree char *text = read_pdf (path);
  guint n_pages = count_pages (path);
  g_autofree char *last = g_strdup_printf ("page %u of %u", n_pages, n_pages);

  g_test_message ("%u pages", n_pages);
  g_assert_cmpuint (n_pages, >, 30);
  g_assert_cmpuint (n_pages, <, 120);
  g_assert_nonnull (strstr (text, last));
  g_assert_cmpuint (count_text (text, "Bought"), ==, n_pages);
  /* On the first page beside the figures as well. */
  g_assert_cmpuint (count_text (text, "Test in sheltered shallow water."), >=, n_pages);
  for (guint i = 1; i <= 2000; i++)
    {
      g_autofree char *name = g_strdup_printf ("Part %u of", i);

      g_assert_cmpuint (count_text (text, name), ==, 1);
    }
}

static void
test_long_words_wrap (void)
{
  g_autoptr (GbDocument) document = sample_document (GB_UNITS_METRIC);
  g_autofree char *word = g_strnfill (1000, 'w');
  g_autofree char *path = NULL, *text = NULL;
  GbTable *table = document->tables->pdata[1];
  guint n = 0;

  gb_table_row (table, GB_ROW_NORMAL, 0);
  gb_table_text (table, word);
  gb_table_number (table, 7);
  path = save_pdf (g_steal_pointer (&document), "sample-word.pdf");
  text = read_pdf (path);
  for (const char *p = text; *p != '\0'; p++)
    n += *p == 'w';
  /* And the three in other words. */
  g_assert_cmpuint (n, >=, 1000);
}

static void
test_same_every_time (void)
{
  g_autoptr (GbDocument) document = sample_document (GB_UNITS_METRIC);
  g_autoptr (GBytes) a = gb_write_pdf (document, NULL);
  g_autoptr (GBytes) b = gb_write_pdf (document, NULL);

  g_assert_true (g_bytes_equal (a, b));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/write/pdf/contents", test_contents);
  g_test_add_func ("/write/pdf/paper", test_paper);
  g_test_add_func ("/write/pdf/two-thousand-parts", test_two_thousand_parts);
  g_test_add_func ("/write/pdf/long-words-wrap", test_long_words_wrap);
  g_test_add_func ("/write/pdf/same-every-time", test_same_every_time);
  return g_test_run ();
}
