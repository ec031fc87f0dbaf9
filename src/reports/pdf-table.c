/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-pdf-table"

/* A table on paper. Columns are as wide as their widest cell; what is left of the page goes to those that may
 * give way, and what is missing is taken from them: their cells wrap. Numbers never wrap. Headings are
 * repeated on every page; a group's heading stays with its first row, and the total with the last one. */

#include "pdf-private.h"

#include <glib/gi18n-lib.h>

#define GAP 9       /* between columns */
#define ROW_PAD 2.2 /* above and below a cell's text */
#define INDENT 9
#define MOST_TOGETHER 8
#define ROOM_FOR_ROWS 60 /* below a table's headings, or they go to the next page */
#define LEAST_WIDE 48    /* a column that gives way stays this wide */
#define MOST_MORE 60     /* that a column gets of what is over, or half its width */

typedef struct
{
  const GbColumn *column;
  guint at;       /* in the table */
  guint tail;     /* see gb_column_tail() */
  double natural; /* width */
  double width;
  double x;
} Column;

struct _GbPdfTable
{
  GbPdfFlow *flow; /* what it is measured with and drawn on */
  const GbTable *table;
  GArray *columns; /* of Column: those that are printed */
  double *heights; /* of the rows */
  double head;     /* height of the headings */
};

static double
line_width (GbPdfFlow *flow, GbPdfFont font, const char *text)
{
  int width;

  gb_pdf_text (flow, font, text, -1, PANGO_ALIGN_LEFT);
  pango_layout_get_size (flow->layout, &width, NULL);
  return (double) width / PANGO_SCALE;
}

static char *
cell_text (const GbPdfTable *sheet, const Column *column, const GbRow *row)
{
  return gb_cell_show_aligned (sheet->flow->document, column->column, gb_row_cell (row, column->at),
                               column->tail);
}

static double
row_indent (const GbRow *row, const Column *column)
{
  return column->at == 0 ? INDENT * (double) row->depth : 0;
}

static GbPdfFont
row_font (const GbRow *row)
{
  return row->kind == GB_ROW_NORMAL ? GB_PDF_BODY : GB_PDF_BOLD;
}

/* "Mass" over "kg". */
static char *
heading_text (const GbPdfTable *sheet, const GbColumn *column)
{
  const char *unit = gb_column_unit (sheet->flow->document, column);

  return *unit != '\0' ? g_strdup_printf ("%s\n%s", _ (column->heading), unit)
                       : g_strdup (_ (column->heading));
}

/* Widths ------------------------------------------------------------------------------------------------------------ */

static double
natural_width (const GbPdfTable *sheet, const Column *column)
{
  g_autofree char *heading = heading_text (sheet, column->column);
  double width = line_width (sheet->flow, GB_PDF_SMALL, heading);

  for (guint r = 0; r < sheet->table->rows->len; r++)
    {
      const GbRow *row = sheet->table->rows->pdata[r];
      g_autofree char *text = cell_text (sheet, column, row);

      if (*text != '\0')
        width = MAX (width, line_width (sheet->flow, row_font (row), text) + row_indent (row, column));
    }
  return width + 1; /* so that rounding does not wrap it */
}

static gboolean
gives_way (const Column *column)
{
  return (column->column->flags & GB_COLUMN_WIDE) != 0;
}

/* Shares the page out. What is over goes to the first column that gives way, but not so much that the eye
 * loses the line; what is missing is taken from all of those, the widest first, down to one width for all
 * that are over it. */
static void
share_width (GbPdfTable *sheet)
{
  GArray *columns = sheet->columns;
  double free_width
      = sheet->flow->right - sheet->flow->left - GAP * (columns->len > 0 ? columns->len - 1 : 0);
  double limit;

  for (guint i = 0; i < columns->len; i++)
    {
      Column *column = &g_array_index (columns, Column, i);

      column->width = column->natural;
      free_width -= column->natural;
    }
  for (guint i = 0; i < columns->len && free_width > 0; i++)
    {
      Column *column = &g_array_index (columns, Column, i);

      if (gives_way (column))
        {
          column->width += MIN (free_width, MAX (MOST_MORE, column->natural / 2));
          return;
        }
    }
  for (limit = sheet->flow->right - sheet->flow->left; free_width < 0 && limit > LEAST_WIDE; limit -= 1)
    for (guint i = 0; i < columns->len && free_width < 0; i++)
      {
        Column *column = &g_array_index (columns, Column, i);

        if (gives_way (column) && column->width > limit)
          {
            free_width += column->width - limit;
            column->width = limit;
          }
      }
}

static void
find_columns (GbPdfTable *sheet)
{
  double x = sheet->flow->left;

  for (guint c = 0; c < sheet->table->n_columns; c++)
    if ((sheet->table->columns[c].flags & GB_COLUMN_DATA) == 0)
      {
        Column column = { .column = &sheet->table->columns[c], .at = c };

        column.tail = gb_column_tail (sheet->flow->document, sheet->table, c);
        column.natural = natural_width (sheet, &column);
        g_array_append_val (sheet->columns, column);
      }
  share_width (sheet);
  for (guint i = 0; i < sheet->columns->len; i++)
    {
      Column *column = &g_array_index (sheet->columns, Column, i);

      column->x = x;
      x += column->width + GAP;
    }
}

static double
table_width (const GbPdfTable *sheet)
{
  const Column *last = &g_array_index (sheet->columns, Column, sheet->columns->len - 1);

  return last->x + last->width - sheet->flow->left;
}

/* Rows -------------------------------------------------------------------------------------------------------------- */

/* Sets the layout up for one cell; gives its height. */
static double
set_cell (const GbPdfTable *sheet, const Column *column, const GbRow *row, const char *text)
{
  gboolean number = gb_column_is_number (column->column);
  double indent = row_indent (row, column);

  return gb_pdf_text (sheet->flow, row_font (row), text,
                      indent > 0 ? MAX (column->width - indent, LEAST_WIDE / 2.0) : column->width,
                      number ? PANGO_ALIGN_RIGHT : PANGO_ALIGN_LEFT);
}

static double
row_height (const GbPdfTable *sheet, const GbRow *row)
{
  /* Numbers never wrap; one line is as high as another. */
  double highest = gb_pdf_text (sheet->flow, row_font (row), "0", -1, PANGO_ALIGN_LEFT);

  for (guint i = 0; i < sheet->columns->len; i++)
    {
      const Column *column = &g_array_index (sheet->columns, Column, i);
      g_autofree char *text = gb_column_is_number (column->column) ? NULL : cell_text (sheet, column, row);

      if (text != NULL && *text != '\0')
        highest = MAX (highest, set_cell (sheet, column, row, text));
    }
  return highest + 2 * ROW_PAD + (row->kind == GB_ROW_GROUP && row->depth == 0 ? 2 * ROW_PAD : 0);
}

static void
draw_row (const GbPdfTable *sheet, const GbRow *row, double height)
{
  GbPdfFlow *flow = sheet->flow;
  double y = flow->y + ROW_PAD + (row->kind == GB_ROW_GROUP && row->depth == 0 ? 2 * ROW_PAD : 0);

  if (row->kind == GB_ROW_TOTAL || row->kind == GB_ROW_SUBTOTAL)
    gb_pdf_rule (flow, flow->left, flow->y, table_width (sheet), row->kind == GB_ROW_TOTAL ? 0.8 : 0.5, GB_PDF_DARK);
  for (guint i = 0; i < sheet->columns->len; i++)
    {
      const Column *column = &g_array_index (sheet->columns, Column, i);
      g_autofree char *text = cell_text (sheet, column, row);

      if (*text == '\0')
        continue;
      set_cell (sheet, column, row, text);
      gb_pdf_show (flow, column->x + row_indent (row, column), y, GB_PDF_DARK);
    }
  flow->y += height;
  gb_pdf_rule (flow, flow->left, flow->y, table_width (sheet), 0.3, GB_PDF_HAIR);
}

static double
head_height (const GbPdfTable *sheet)
{
  double highest = 0;

  for (guint i = 0; i < sheet->columns->len; i++)
    {
      const Column *column = &g_array_index (sheet->columns, Column, i);
      g_autofree char *text = heading_text (sheet, column->column);

      highest = MAX (highest, gb_pdf_text (sheet->flow, GB_PDF_SMALL, text, column->width, PANGO_ALIGN_LEFT));
    }
  return highest + 2 * ROW_PAD + 2;
}

/* The headings stand on the rule under them. */
static void
draw_head (const GbPdfTable *sheet, double height)
{
  GbPdfFlow *flow = sheet->flow;

  gb_pdf_rule (flow, flow->left, flow->y, table_width (sheet), 1, GB_PDF_DARK);
  for (guint i = 0; i < sheet->columns->len; i++)
    {
      const Column *column = &g_array_index (sheet->columns, Column, i);
      g_autofree char *text = heading_text (sheet, column->column);
      gboolean number = gb_column_is_number (column->column);
      double own = gb_pdf_text (flow, GB_PDF_SMALL, text, column->width,
                                number ? PANGO_ALIGN_RIGHT : PANGO_ALIGN_LEFT);

      gb_pdf_show (flow, column->x, flow->y + height - ROW_PAD - own, GB_PDF_QUIET);
    }
  flow->y += height;
  gb_pdf_rule (flow, flow->left, flow->y, table_width (sheet), 0.5, GB_PDF_DARK);
}

/* TRUE if @row and the one after it belong on one page. */
static gboolean
holds_next (const GbTable *table, guint r)
{
  const GbRow *row = table->rows->pdata[r], *next;

  if (r + 1 >= table->rows->len)
    return FALSE;
  next = table->rows->pdata[r + 1];
  return row->kind == GB_ROW_GROUP || next->kind == GB_ROW_TOTAL || next->kind == GB_ROW_SUBTOTAL;
}

/* What has to be free for @r and the rows that belong with it. Groups may stand in groups; a page's worth of
 * headings need not stay together. */
static double
height_together (const GbPdfTable *sheet, guint r)
{
  double height = sheet->heights[r];

  for (guint next = r; holds_next (sheet->table, next) && next < r + MOST_TOGETHER; next++)
    height += sheet->heights[next + 1];
  return height;
}

static void
draw_rows (const GbPdfTable *sheet)
{
  GbPdfFlow *flow = sheet->flow;
  const GPtrArray *rows = sheet->table->rows;

  for (guint r = 0; r < rows->len; r++)
    {
      if (flow->y + height_together (sheet, r) > flow->bottom && flow->y > flow->top + sheet->head)
        {
          gb_pdf_new_page (flow);
          draw_head (sheet, sheet->head);
        }
      draw_row (sheet, rows->pdata[r], sheet->heights[r]);
    }
}

GbPdfTable *
gb_pdf_table_new (GbPdfFlow *flow, const GbTable *table)
{
  GbPdfTable *sheet = g_new0 (GbPdfTable, 1);

  sheet->flow = flow;
  sheet->table = table;
  sheet->columns = g_array_new (FALSE, FALSE, sizeof (Column));
  sheet->heights = g_new (double, table->rows->len);
  find_columns (sheet);
  sheet->head = head_height (sheet);
  for (guint r = 0; r < table->rows->len; r++)
    sheet->heights[r] = row_height (sheet, table->rows->pdata[r]);
  return sheet;
}

void
gb_pdf_table_free (GbPdfTable *sheet)
{
  g_array_unref (sheet->columns);
  g_free (sheet->heights);
  g_free (sheet);
}

void
gb_pdf_table_draw (const GbPdfTable *sheet)
{
  GbPdfFlow *flow = sheet->flow;
  double width = flow->right - flow->left;
  double title = gb_pdf_text (flow, GB_PDF_HEADING, _ (sheet->table->title), width, PANGO_ALIGN_LEFT);

  gb_pdf_need (flow, title + sheet->head + ROOM_FOR_ROWS);
  flow->y += 12;
  /* The new page's header and footer used the layout. */
  gb_pdf_text (flow, GB_PDF_HEADING, _ (sheet->table->title), width, PANGO_ALIGN_LEFT);
  gb_pdf_show (flow, flow->left, flow->y, GB_PDF_DARK);
  flow->y += title + 5;
  draw_head (sheet, sheet->head);
  draw_rows (sheet);
}
