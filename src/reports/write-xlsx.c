/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-write-xlsx"

/* A report as a workbook: a first sheet with title, facts, remarks, cautions and notes, and a sheet for each
 * table with a frozen header. Texts are written as strings, whatever they begin with, and never as formulas
 * or links; numbers are numbers in the units of the build, dates are dates. The same report gives the same
 * bytes on the same day. */

#include "writers.h"

#include "boat/money.h"
#include "report.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <locale.h>
#include <math.h>
#include <xlsxwriter.h>

#define MOST_CHARACTERS 32767 /* in a cell: ECMA-376 leaves it open, spreadsheets agree on this */
#define LEAST_WIDTH 9
#define MOST_WIDTH 48
#define TEXT_WIDTH 90

typedef struct
{
  const char *number; /* static; NULL: general */
  gboolean bold, above, wrap, head;
  guint indent;
} Style;

typedef struct
{
  Style style;
  lxw_format *format;
} KeptFormat;

typedef struct
{
  const GbDocument *document;
  lxw_workbook *workbook;
  GArray *formats; /* of KeptFormat */
} Book;

/* Formats ----------------------------------------------------------------------------------------------------------- */

static lxw_format *
make_format (Book *book, const Style *style)
{
  lxw_format *format = workbook_add_format (book->workbook);

  if (style->number != NULL)
    format_set_num_format (format, style->number);
  if (style->bold || style->head)
    format_set_bold (format);
  if (style->above)
    format_set_top (format, LXW_BORDER_THIN);
  if (style->head)
    format_set_bottom (format, LXW_BORDER_THIN);
  if (style->wrap || style->head)
    format_set_text_wrap (format);
  if (style->indent > 0)
    format_set_indent (format, (uint8_t) MIN (style->indent, 15));
  format_set_align (format, style->head ? LXW_ALIGN_VERTICAL_BOTTOM : LXW_ALIGN_VERTICAL_TOP);
  return format;
}

static lxw_format *
get_format (Book *book, Style style)
{
  for (guint i = 0; i < book->formats->len; i++)
    {
      const KeptFormat *kept = &g_array_index (book->formats, KeptFormat, i);

      if (g_strcmp0 (kept->style.number, style.number) == 0 && kept->style.bold == style.bold
          && kept->style.above == style.above && kept->style.wrap == style.wrap
          && kept->style.head == style.head && kept->style.indent == style.indent)
        return kept->format;
    }
  g_array_append_val (book->formats, ((KeptFormat){ style, make_format (book, &style) }));
  return g_array_index (book->formats, KeptFormat, book->formats->len - 1).format;
}

static const char *
quantity_format (GbDimension dim, GbUnits units)
{
  switch (dim)
    {
    case GB_DIM_LENGTH:
      return units == GB_UNITS_FEET ? "0.00" : "0";
    case GB_DIM_DENSITY:
      return "0.0";
    case GB_DIM_RATIO:
      return "0.0";
    case GB_DIM_COUNT:
    case GB_DIM_SALINITY:
      return NULL;
    default:
      return "0.000";
    }
}

static const char *
money_format (const char *currency)
{
  switch (gb_currency_exponent (currency))
    {
    case 0:
      return "#,##0";
    case 3:
      return "#,##0.000";
    default:
      return "#,##0.00";
    }
}

static const char *
number_format (const GbDocument *document, const GbColumn *column)
{
  switch (column->kind)
    {
    case GB_CELL_QUANTITY:
      return quantity_format (column->dim, document->units);
    case GB_CELL_MOMENT:
      return "0.000";
    case GB_CELL_MONEY:
      return money_format (document->currency);
    case GB_CELL_DATE:
      return "yyyy-mm-dd";
    case GB_CELL_TEXT:
    default:
      return NULL;
    }
}

/* Cells ------------------------------------------------------------------------------------------------------------- */

static void
write_text (lxw_worksheet *sheet, lxw_row_t row, lxw_col_t column, const char *text, lxw_format *format)
{
  g_autofree char *cut = NULL;

  if (g_utf8_strlen (text, -1) > MOST_CHARACTERS)
    {
      g_autofree char *start = g_utf8_substring (text, 0, MOST_CHARACTERS - 1);

      text = cut = g_strconcat (start, "…", NULL);
    }
  worksheet_write_string (sheet, row, column, text, format);
}

static lxw_datetime
to_datetime (gint64 julian)
{
  GDate date;

  g_date_clear (&date, 1);
  g_date_set_julian (&date, (guint32) julian);
  return (lxw_datetime){ .year = g_date_get_year (&date),
                         .month = (int) g_date_get_month (&date),
                         .day = g_date_get_day (&date) };
}

static void
write_cell (Book *book,
            lxw_worksheet *sheet,
            lxw_row_t row,
            lxw_col_t at,
            const GbColumn *column,
            const GbCell *cell,
            Style style)
{
  style.number = number_format (book->document, column);
  style.wrap = column->kind == GB_CELL_TEXT;
  if (cell->blank || gb_cell_is_unknown (column, cell)
      || (column->kind == GB_CELL_TEXT && cell->text == NULL))
    worksheet_write_blank (sheet, row, at, get_format (book, style));
  else if (column->kind == GB_CELL_TEXT)
    write_text (sheet, row, at, cell->text, get_format (book, style));
  else if (column->kind == GB_CELL_DATE)
    {
      lxw_datetime date = to_datetime (cell->amount);

      worksheet_write_datetime (sheet, row, at, &date, get_format (book, style));
    }
  else
    worksheet_write_number (sheet, row, at, gb_cell_number (book->document, column, cell),
                            get_format (book, style));
}

/* Tables ------------------------------------------------------------------------------------------------------------ */

static double
column_width (const GbDocument *document, const GbTable *table, guint c)
{
  glong width = LEAST_WIDTH;

  for (guint r = 0; r < table->rows->len; r++)
    {
      const GbRow *row = table->rows->pdata[r];
      g_autofree char *text = gb_cell_show (document, &table->columns[c], gb_row_cell (row, c));

      width = MAX (width, g_utf8_strlen (text, -1) + 1 + (c == 0 ? 2 * (glong) row->depth : 0));
    }
  return (double) MIN (width, MOST_WIDTH);
}

static void
write_header (Book *book, lxw_worksheet *sheet, const GbTable *table)
{
  for (guint c = 0; c < table->n_columns; c++)
    {
      g_autofree char *heading = gb_column_heading (book->document, &table->columns[c]);

      write_text (sheet, 0, (lxw_col_t) c, heading, get_format (book, (Style){ .head = TRUE }));
      worksheet_set_column (sheet, (lxw_col_t) c, (lxw_col_t) c, column_width (book->document, table, c),
                            NULL);
    }
  worksheet_freeze_panes (sheet, 1, 0);
}

static void
write_row (Book *book, lxw_worksheet *sheet, lxw_row_t at, const GbTable *table, const GbRow *row)
{
  for (guint c = 0; c < table->n_columns; c++)
    {
      Style style = { .bold = row->kind != GB_ROW_NORMAL,
                      .above = row->kind == GB_ROW_SUBTOTAL || row->kind == GB_ROW_TOTAL,
                      .indent = c == 0 ? row->depth : 0 };

      write_cell (book, sheet, at, (lxw_col_t) c, &table->columns[c], gb_row_cell (row, c), style);
    }
}

static void
set_up_page (Book *book, lxw_worksheet *sheet)
{
  worksheet_set_paper (sheet, book->document->units == GB_UNITS_FEET ? 1 : 9); /* Letter, A4 */
  worksheet_set_landscape (sheet);
  worksheet_fit_to_pages (sheet, 1, 0);
  worksheet_repeat_rows (sheet, 0, 0);
  worksheet_set_footer (sheet, "&L&D&R&P / &N");
}

/* A sheet's name has at most 31 characters, and none of []:*?/\ or an apostrophe at its ends. */
static char *
sheet_name (const char *title)
{
  g_autofree char *start = g_utf8_substring (title, 0, MIN (g_utf8_strlen (title, -1), 31));

  return g_strdelimit (g_steal_pointer (&start), "[]:*?/\\'", '-');
}

static void
write_table (Book *book, const GbTable *table)
{
  g_autofree char *name = sheet_name (_ (table->title));
  lxw_worksheet *sheet = workbook_add_worksheet (book->workbook, name);

  if (sheet == NULL) /* two titles that are the same once they are cut */
    sheet = workbook_add_worksheet (book->workbook, NULL);
  write_header (book, sheet, table);
  for (guint r = 0; r < table->rows->len; r++)
    write_row (book, sheet, r + 1, table, table->rows->pdata[r]);
  set_up_page (book, sheet);
}

/* The first sheet --------------------------------------------------------------------------------------------------- */

static lxw_row_t
write_lines (Book *book, lxw_worksheet *sheet, lxw_row_t at, const GPtrArray *lines)
{
  for (guint i = 0; i < lines->len; i++)
    {
      lxw_format *format = get_format (book, (Style){ .wrap = TRUE });

      worksheet_merge_range (sheet, at, 0, at, 1, "", format);
      write_text (sheet, at, 0, lines->pdata[i], format);
      /* A merged cell does not grow by itself. */
      worksheet_set_row (sheet, at, 15.0 * (1 + g_utf8_strlen (lines->pdata[i], -1) / TEXT_WIDTH), NULL);
      at++;
    }
  return at + (lines->len > 0 ? 1 : 0);
}

static void
write_front (Book *book)
{
  const GbDocument *document = book->document;
  g_autofree char *name = sheet_name (document->title);
  lxw_worksheet *sheet = workbook_add_worksheet (book->workbook, name);
  lxw_format *bold = get_format (book, (Style){ .bold = TRUE });
  const GbColumn date = { .kind = GB_CELL_DATE };
  lxw_row_t at = 0;

  worksheet_set_column (sheet, 0, 1, TEXT_WIDTH / 2.0, NULL);
  write_text (sheet, at, 0, document->title, bold);
  write_text (sheet, at++, 1, document->name, bold);
  write_cell (book, sheet, at, 1, &date, &(GbCell){ .amount = document->date }, (Style){ 0 });
  at += 2;
  for (guint i = 0; i < document->facts->len; i++)
    {
      const GbFact *fact = document->facts->pdata[i];
      g_autofree char *label = gb_column_heading (document, &fact->column);

      write_text (sheet, at, 0, label, get_format (book, (Style){ .wrap = TRUE }));
      write_cell (book, sheet, at++, 1, &fact->column, &fact->cell, (Style){ 0 });
    }
  at = write_lines (book, sheet, at + 1, document->warnings);
  at = write_lines (book, sheet, at, document->cautions);
  at = write_lines (book, sheet, at, document->paragraphs);
  write_lines (book, sheet, at, document->notes);
  set_up_page (book, sheet);
}

/* The file ---------------------------------------------------------------------------------------------------------- */

static lxw_error
write_file (const GbDocument *document, const char *folder, const char *path)
{
  lxw_workbook_options options = { .tmpdir = (char *) folder };
  Book book
      = { document, workbook_new_opt (path, &options), g_array_new (FALSE, FALSE, sizeof (KeptFormat)) };
  lxw_doc_properties properties = { .title = document->title, .subject = document->name, .created = 0 };
  lxw_error fault;

  properties.created = (time_t) (document->date - 719163) * 86400; /* Julian day 719163 is 1 January 1970 */
  workbook_set_properties (book.workbook, &properties);
  write_front (&book);
  for (guint i = 0; i < document->tables->len; i++)
    write_table (&book, document->tables->pdata[i]);
  fault = workbook_close (book.workbook);
  g_array_unref (book.formats);
  return fault;
}

/* The library prints numbers as the locale does, which makes a broken workbook where that is 4,8. For this thread and for numbers alone,
 * it is the C locale meanwhile. */
static lxw_error
write_file_with_points (const GbDocument *document, const char *folder, const char *path)
{
  locale_t here = uselocale ((locale_t) 0);
  locale_t base = duplocale (here);
  locale_t points = newlocale (LC_NUMERIC_MASK, "C", base);
  lxw_error fault;

  if (points == (locale_t) 0)
    {
      freelocale (base);
      return LXW_ERROR_MEMORY_MALLOC_FAILED;
    }
  uselocale (points);
  fault = write_file (document, folder, path);
  uselocale (here);
  freelocale (points);
  return fault;
}

GBytes *
gb_write_xlsx (const GbDocument *document, GError **error)
{
  g_autofree char *folder = g_dir_make_tmp ("garboard-XXXXXX", error);
  g_autofree char *path = NULL, *data = NULL;
  gsize length = 0;
  lxw_error fault;

  if (folder == NULL)
    return NULL;
  path = g_build_filename (folder, "report.xlsx", NULL);
  fault = write_file_with_points (document, folder, path);
  if (fault != LXW_NO_ERROR)
    g_set_error (error, GB_REPORT_ERROR, 0, _ ("The workbook could not be put together in “%s”: %s"), folder,
                 lxw_strerror (fault));
  else
    g_file_get_contents (path, &data, &length, error);
  g_unlink (path);
  g_rmdir (folder);
  return data != NULL ? g_bytes_new_take (g_steal_pointer (&data), length) : NULL;
}
