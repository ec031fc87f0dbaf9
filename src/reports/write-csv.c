/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-write-csv"

/* A report as CSV, by RFC 4180: commas, lines that end in CR LF, quotes where they are needed. UTF-8 with a
 * byte order mark, without which spreadsheets take it for something else and spoil every m². Headings carry
 * the unit; numbers are plain, with a point, to 15 figures, in the units of the build; money in major units;
 * dates YYYY-MM-DD; unknown is an empty field.
 *
 * A report of one table is that table alone, without its sums, so that the file can be read again. Where
 * there are several, each stands under a line with its title, and the facts, what the reader must know and
 * the cautions stand before them; all lines have the same number of fields, as the RFC asks.
 *
 * No text acts as a formula (see safe-text.h). Numbers are not texts and keep their minus sign. */

#include "safe-text.h"
#include "writers.h"

#include "boat/money.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

typedef struct
{
  GString *out;
  guint width; /* fields in a line */
  guint used;
} Csv;

/* A field that is not a text from the build: a number, a date, or nothing. */
static void
put_plain (Csv *csv, const char *field)
{
  if (csv->used++ > 0)
    g_string_append_c (csv->out, ',');
  g_string_append (csv->out, field);
}

static void
put_text (Csv *csv, const char *text)
{
  g_autofree char *safe = gb_text_make_safe (text);
  g_autoptr (GString) quoted = NULL;

  if (strpbrk (safe, ",\"\r\n") == NULL)
    {
      put_plain (csv, safe);
      return;
    }
  quoted = g_string_new (safe);
  g_string_replace (quoted, "\"", "\"\"", 0);
  g_string_prepend_c (quoted, '"');
  g_string_append_c (quoted, '"');
  put_plain (csv, quoted->str);
}

static void
end_line (Csv *csv)
{
  while (csv->used < csv->width)
    put_plain (csv, "");
  g_string_append (csv->out, "\r\n");
  csv->used = 0;
}

static void
put_cell (Csv *csv, const GbDocument *document, const GbColumn *column, const GbCell *cell)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  g_autofree char *text = NULL;

  if (cell->blank || gb_cell_is_unknown (column, cell))
    {
      put_plain (csv, "");
      return;
    }
  switch (column->kind)
    {
    case GB_CELL_QUANTITY:
    case GB_CELL_MOMENT:
      put_plain (csv,
                 g_ascii_formatd (digits, sizeof digits, "%.15g", gb_cell_number (document, column, cell)));
      break;
    case GB_CELL_MONEY:
      text = gb_money_format_plain (cell->amount, document->currency);
      put_plain (csv, text);
      break;
    case GB_CELL_DATE:
      text = gb_cell_show (document, column, cell);
      put_plain (csv, text);
      break;
    case GB_CELL_TEXT:
    default:
      put_text (csv, cell->text != NULL ? cell->text : "");
      break;
    }
}

static void
put_heading (Csv *csv, const GbDocument *document, const GbTable *table)
{
  for (guint c = 0; c < table->n_columns; c++)
    {
      g_autofree char *heading = gb_column_heading (document, &table->columns[c]);

      put_text (csv, heading);
    }
  end_line (csv);
}

static void
put_row (Csv *csv, const GbDocument *document, const GbTable *table, const GbRow *row)
{
  for (guint c = 0; c < table->n_columns; c++)
    put_cell (csv, document, &table->columns[c], gb_row_cell (row, c));
  end_line (csv);
}

/* The table without sums, which are no records. */
static void
put_records (Csv *csv, const GbDocument *document, const GbTable *table)
{
  put_heading (csv, document, table);
  for (guint r = 0; r < table->rows->len; r++)
    {
      const GbRow *row = table->rows->pdata[r];

      if (row->kind == GB_ROW_NORMAL || row->kind == GB_ROW_GROUP)
        put_row (csv, document, table, row);
    }
}

static void
put_line (Csv *csv, const char *text)
{
  put_text (csv, text);
  end_line (csv);
}

static void
put_texts (Csv *csv, const GPtrArray *texts)
{
  for (guint i = 0; i < texts->len; i++)
    put_line (csv, texts->pdata[i]);
}

/* Label, with the unit, and value. */
static void
put_facts (Csv *csv, const GbDocument *document)
{
  for (guint i = 0; i < document->facts->len; i++)
    {
      const GbFact *fact = document->facts->pdata[i];
      g_autofree char *label = gb_column_heading (document, &fact->column);

      put_text (csv, label);
      put_cell (csv, document, &fact->column, &fact->cell);
      end_line (csv);
    }
}

static void
put_sections (Csv *csv, const GbDocument *document)
{
  put_text (csv, document->title);
  put_text (csv, document->name);
  end_line (csv);
  put_facts (csv, document);
  put_texts (csv, document->warnings);
  put_texts (csv, document->cautions);
  put_texts (csv, document->paragraphs);
  for (guint i = 0; i < document->tables->len; i++)
    {
      const GbTable *table = document->tables->pdata[i];

      end_line (csv);
      put_line (csv, _ (table->title));
      put_heading (csv, document, table);
      for (guint r = 0; r < table->rows->len; r++)
        put_row (csv, document, table, table->rows->pdata[r]);
    }
  put_texts (csv, document->notes);
}

GBytes *
gb_write_csv (const GbDocument *document)
{
  Csv csv = { g_string_new ("\xef\xbb\xbf"), 2, 0 };

  if (document->tables->len == 1)
    {
      const GbTable *table = document->tables->pdata[0];

      csv.width = table->n_columns;
      put_records (&csv, document, table);
      return g_string_free_to_bytes (csv.out);
    }
  for (guint i = 0; i < document->tables->len; i++)
    csv.width = MAX (csv.width, ((GbTable *) document->tables->pdata[i])->n_columns);
  put_sections (&csv, document);
  return g_string_free_to_bytes (csv.out);
}
