/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-import-table"

#include "import-table.h"

#include "import.h"

#include <csv.h>
#include <glib/gi18n-lib.h>
#include <string.h>

/* A parts list is far below these; a film of the wrong sort of file is far above. */
#define MOST_BYTES (64 * 1024 * 1024)
#define MOST_ROWS 100000
#define MOST_CELLS 4000000

#define LOOKED_AT 65536 /* bytes in which the separator is looked for */

void
gb_import_row_free (GbImportRow *row)
{
  g_ptr_array_unref (row->cells);
  g_free (row);
}

/* Characters -------------------------------------------------------------------------------------------------------- */

/* In place: every end of line becomes LF, and NUL, which no text holds, a space. Gives the new length. */
static gsize
tidy_lines (char *text, gsize length)
{
  gsize out = 0;

  for (gsize i = 0; i < length; i++)
    {
      if (text[i] == '\r' && i + 1 < length && text[i + 1] == '\n')
        continue;
      text[out++] = text[i] == '\r' ? '\n' : (text[i] == '\0' ? ' ' : text[i]);
    }
  text[out] = '\0';
  return out;
}

static gboolean
starts_with (const char *text, gsize length, const char *mark)
{
  return length >= strlen (mark) && memcmp (text, mark, strlen (mark)) == 0;
}

/* UTF-8 without a mark and with LF at the end of lines, whatever it was; any bytes are Latin-1, but for those
 * with a NUL among them, which are a workbook, a picture and the like: NULL. Free it. */
static char *
to_utf8 (const char *text, gsize length, gsize *utf8_length)
{
  gboolean has_nul = memchr (text, '\0', length) != NULL;
  char *bytes = NULL, *latin;
  gsize converted;

  if (starts_with (text, length, "\xff\xfe") || starts_with (text, length, "\xfe\xff"))
    bytes = g_convert (text, (gssize) length, "UTF-8", "UTF-16", NULL, &converted, NULL);
  else if (starts_with (text, length, "\xef\xbb\xbf"))
    {
      text += 3;
      length -= 3;
    }
  if (bytes != NULL)
    length = converted;
  else
    {
      bytes = g_malloc (length + 1);
      memcpy (bytes, text, length);
    }
  *utf8_length = tidy_lines (bytes, length);
  if (g_utf8_validate_len (bytes, *utf8_length, NULL))
    return bytes;
  latin = has_nul ? NULL
                  : g_convert (bytes, (gssize) *utf8_length, "UTF-8", "ISO-8859-1", NULL, utf8_length, NULL);
  g_free (bytes);
  return latin;
}

/* Cells ------------------------------------------------------------------------------------------------------------- */

typedef struct
{
  GPtrArray *rows;   /* (element-type GbImportRow) */
  GPtrArray *cells;  /* of the row that is being read */
  guint line;        /* that it begins on */
  guint line_breaks; /* within its cells */
  gsize n_cells;
  gboolean too_many;
  gboolean at_end; /* all is read; what comes now was left open */
  gboolean left_open;
} Reading;

static void
cell_cb (void *bytes, size_t length, void *data)
{
  Reading *reading = data;
  char *cell = g_strndup (bytes != NULL ? bytes : "", length);

  for (const char *p = cell; *p != '\0'; p++)
    reading->line_breaks += *p == '\n';
  g_ptr_array_add (reading->cells, cell);
  reading->left_open |= reading->at_end;
}

static gboolean
is_empty (const GPtrArray *cells)
{
  for (guint i = 0; i < cells->len; i++)
    if (strspn (cells->pdata[i], " \t\n") != strlen (cells->pdata[i]))
      return FALSE;
  return TRUE;
}

static void
row_cb (int end, void *data)
{
  Reading *reading = data;
  GbImportRow *row;

  if (is_empty (reading->cells))
    g_ptr_array_set_size (reading->cells, 0);
  else if (reading->rows->len > MOST_ROWS || reading->n_cells > MOST_CELLS)
    {
      /* (One more than that, for the headings.) */
      reading->too_many = TRUE;
      g_ptr_array_set_size (reading->cells, 0);
    }
  else
    {
      row = g_new (GbImportRow, 1);
      row->line = reading->line;
      row->cells = g_steal_pointer (&reading->cells);
      reading->n_cells += row->cells->len;
      g_ptr_array_add (reading->rows, row);
      reading->cells = g_ptr_array_new_with_free_func (g_free);
    }
  reading->line += reading->line_breaks + 1;
  reading->line_breaks = 0;
}

/* The rows of @text; NULL where a quotation mark is opened and never closed, or, with @too_many, where there
 * is no end of rows. */
static GPtrArray *
read_rows (const char *text, gsize length, char separator, gboolean *too_many)
{
  struct csv_parser parser;
  Reading reading = { .line = 1 };

  reading.rows = g_ptr_array_new_with_free_func ((GDestroyNotify) gb_import_row_free);
  reading.cells = g_ptr_array_new_with_free_func (g_free);
  csv_init (&parser, CSV_REPALL_NL);
  csv_set_delim (&parser, (unsigned char) separator);
  csv_set_realloc_func (&parser, g_realloc);
  csv_set_free_func (&parser, g_free);
  csv_parse (&parser, text, length, cell_cb, row_cb, &reading);
  /* A line break ends every row but one within quotes. */
  csv_parse (&parser, "\n", 1, cell_cb, row_cb, &reading);
  reading.at_end = TRUE;
  csv_fini (&parser, cell_cb, row_cb, &reading);
  csv_free (&parser);
  g_ptr_array_unref (reading.cells);
  *too_many = reading.too_many;
  if (!reading.left_open && !reading.too_many)
    return reading.rows;
  g_ptr_array_unref (reading.rows);
  return NULL;
}

/* Separator --------------------------------------------------------------------------------------------------------- */

/* How good a table @separator makes of the start of the text: the share of rows that are as wide as the first
 * wide one, and a little for width, which decides between separators that are both even. 0 if it separates
 * nothing. */
static double
judge_separator (const char *text, gsize length, char separator)
{
  gboolean too_many;
  g_autoptr (GPtrArray) rows = read_rows (text, length, separator, &too_many);
  guint width = 0, n_even = 0, n = 0;

  for (guint i = 0; rows != NULL && i < rows->len; i++)
    {
      const GbImportRow *row = rows->pdata[i];

      if (width == 0 && row->cells->len > 1)
        width = row->cells->len;
      if (width > 0)
        {
          n++;
          n_even += row->cells->len == width;
        }
    }
  return n > 0 ? (double) n_even / n + 0.01 * MIN (width, 50) : 0;
}

static char
find_separator (const char *text, gsize length)
{
  static const char separators[] = { '\t', ';', ',' };
  gsize looked_at = MIN (length, LOOKED_AT);
  char best = ',';
  double best_score = 0;

  /* Whole lines, so that the last row looks like the others. */
  while (looked_at < length && looked_at > 0 && text[looked_at - 1] != '\n')
    looked_at--;
  if (looked_at == 0)
    looked_at = length;
  for (gsize i = 0; i < G_N_ELEMENTS (separators); i++)
    {
      double score = judge_separator (text, looked_at, separators[i]);

      if (score > best_score)
        {
          best = separators[i];
          best_score = score;
        }
    }
  return best;
}

/* The whole --------------------------------------------------------------------------------------------------------- */

GPtrArray *
gb_import_read_table (const char *text, gssize length, GError **error)
{
  gsize n = length < 0 ? strlen (text) : (gsize) length;
  g_autofree char *utf8 = NULL;
  g_autoptr (GPtrArray) rows = NULL;
  gboolean too_many = FALSE;

  if (n > MOST_BYTES)
    {
      g_set_error_literal (error, GB_IMPORT_ERROR, 0,
                           _ ("This is too much for a parts list or receipts: over 64 megabytes."));
      return NULL;
    }
  utf8 = to_utf8 (text, n, &n);
  if (utf8 == NULL)
    {
      g_set_error_literal (
          error, GB_IMPORT_ERROR, 0,
          _ ("This is not text. Save the table as CSV, or copy its rows and paste them, and it can be read."));
      return NULL;
    }
  rows = read_rows (utf8, n, find_separator (utf8, n), &too_many);
  if (rows == NULL && too_many)
    g_set_error (error, GB_IMPORT_ERROR, 0, _ ("This table has more than %d rows; take it in pieces."),
                 MOST_ROWS);
  else if (rows == NULL)
    g_set_error_literal (
        error, GB_IMPORT_ERROR, 0,
        _ ("A quotation mark is opened and never closed, so the table cannot be told apart."));
  else if (rows->len == 0)
    g_set_error_literal (error, GB_IMPORT_ERROR, 0,
                         _ ("There is nothing in it; a table with headings is expected."));
  else
    return g_steal_pointer (&rows);
  return NULL;
}
