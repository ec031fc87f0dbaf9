/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-write-text"

/* A report for a terminal: UTF-8, at most 100 characters wide. Tables have aligned columns, numbers to the
 * right; where a table is too wide, the columns that may give way wrap within themselves. Nothing is cut off:
 * a table whose numbers alone are wider than the page is written as wide as it is. */

#include "writers.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define PAGE_WIDTH 100
#define GAP 2
#define INDENT 2
#define LEAST_WIDE 12 /* a column that gives way stays this wide */

static guint
char_width (gunichar c)
{
  if (g_unichar_iszerowidth (c))
    return 0;
  return g_unichar_iswide (c) ? 2 : 1;
}

static guint
text_width (const char *text)
{
  guint width = 0;

  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    width += char_width (g_utf8_get_char (p));
  return width;
}

/* Where to break @text so that what stands before fits into @width: behind a space if there is one, else
 * between two characters, but never before the first. */
static const char *
find_break (const char *text, guint width)
{
  const char *at_space = NULL, *p;
  guint used = 0;

  for (p = text; *p != '\0' && *p != '\n'; p = g_utf8_next_char (p))
    {
      used += char_width (g_utf8_get_char (p));
      if (*p == ' ' && used <= width + 1)
        at_space = p + 1;
      if (used > width)
        return at_space != NULL ? at_space : (p > text ? p : g_utf8_next_char (p));
    }
  return *p == '\n' ? p + 1 : p;
}

/* (element-type utf8) the lines of @text; at least one. */
static GPtrArray *
wrap (const char *text, guint width)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_free);

  do
    {
      const char *end = find_break (text, width);

      g_ptr_array_add (lines, g_strchomp (g_strndup (text, (gsize) (end - text))));
      text = end;
    }
  while (*text != '\0');
  return lines;
}

static void
append_spaces (GString *out, guint n)
{
  for (guint i = 0; i < n; i++)
    g_string_append_c (out, ' ');
}

static void
append_rule (GString *out, char sign, guint width)
{
  for (guint i = 0; i < width; i++)
    g_string_append_c (out, sign);
  g_string_append_c (out, '\n');
}

/* Ends a table's line: no spaces at its end, and those that line decimal signs up as plain as the others. */
static void
append_line (GString *out, GString *line)
{
  g_string_replace (line, "\342\200\207", " ", 0);
  g_string_replace (line, "\342\200\210", " ", 0);
  while (line->len > 0 && line->str[line->len - 1] == ' ')
    g_string_truncate (line, line->len - 1);
  g_string_append_printf (out, "%s\n", line->str);
}

/* @text wrapped to the page; @hang goes before the first line and its width before the others. */
static void
append_paragraph (GString *out, const char *text, const char *hang)
{
  guint indent = text_width (hang);
  g_autoptr (GPtrArray) lines = wrap (text, PAGE_WIDTH - indent);

  for (guint i = 0; i < lines->len; i++)
    {
      if (i == 0)
        g_string_append (out, hang);
      else
        append_spaces (out, indent);
      g_string_append_printf (out, "%s\n", (char *) lines->pdata[i]);
    }
}

/* Tables ------------------------------------------------------------------------------------------------------------ */

typedef struct
{
  const GbDocument *document;
  const GbTable *table;
  guint n;        /* columns that are printed */
  guint *columns; /* which they are */
  guint *widths;
  guint *tails; /* see gb_column_tail() */
} Layout;

static void
clear_layout (Layout *layout)
{
  g_free (layout->columns);
  g_free (layout->widths);
  g_free (layout->tails);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Layout, clear_layout)

static const GbColumn *
column_at (const Layout *layout, guint i)
{
  return &layout->table->columns[layout->columns[i]];
}

static char *
cell_text (const Layout *layout, const GbRow *row, guint i)
{
  return gb_cell_show_aligned (layout->document, column_at (layout, i), gb_row_cell (row, layout->columns[i]),
                               layout->tails[i]);
}

static guint
row_indent (const GbRow *row, guint i)
{
  return i == 0 ? row->depth * INDENT : 0;
}

static guint
longest_word (const char *text)
{
  g_auto (GStrv) words = g_strsplit (text, " ", -1);
  guint longest = 0;

  for (guint i = 0; words[i] != NULL; i++)
    longest = MAX (longest, text_width (words[i]));
  return longest;
}

/* A column is as wide as its widest cell; its heading wraps, unless the column is a wide one. */
static guint
natural_width (const Layout *layout, guint i)
{
  const GbColumn *column = column_at (layout, i);
  g_autofree char *heading = gb_column_heading (layout->document, column);
  guint width = longest_word (heading);

  for (guint r = 0; r < layout->table->rows->len; r++)
    {
      const GbRow *row = layout->table->rows->pdata[r];
      g_autofree char *text = cell_text (layout, row, i);

      width = MAX (width, text_width (text) + row_indent (row, i));
    }
  return width;
}

static guint
total_width (const Layout *layout)
{
  guint total = layout->n > 0 ? GAP * (layout->n - 1) : 0;

  for (guint i = 0; i < layout->n; i++)
    total += layout->widths[i];
  return total;
}

/* Takes what is over the page's width from the widest of the columns that may give way, one character at a
 * time. */
static void
narrow (Layout *layout)
{
  for (guint over = total_width (layout); over > PAGE_WIDTH; over--)
    {
      guint widest = layout->n;

      for (guint i = 0; i < layout->n; i++)
        if ((column_at (layout, i)->flags & GB_COLUMN_WIDE) != 0 && layout->widths[i] > LEAST_WIDE
            && (widest == layout->n || layout->widths[i] > layout->widths[widest]))
          widest = i;
      if (widest == layout->n)
        return;
      layout->widths[widest]--;
    }
}

static Layout
lay_out (const GbDocument *document, const GbTable *table)
{
  guint n = table->n_columns;
  Layout layout = { document, table, 0, g_new (guint, n), g_new (guint, n), g_new (guint, n) };

  for (guint c = 0; c < table->n_columns; c++)
    if ((table->columns[c].flags & GB_COLUMN_DATA) == 0)
      {
        layout.columns[layout.n] = c;
        layout.tails[layout.n] = gb_column_tail (document, table, c);
        layout.widths[layout.n] = natural_width (&layout, layout.n);
        layout.n++;
      }
  narrow (&layout);
  return layout;
}

/* One line of the table after the other, until the cell with the most of them is done. */
static void
append_cells (GString *out, const Layout *layout, char *const *texts, guint indent)
{
  g_autoptr (GPtrArray) cells = g_ptr_array_new_with_free_func ((GDestroyNotify) g_ptr_array_unref);
  guint n_lines = 0;

  for (guint i = 0; i < layout->n; i++)
    {
      GPtrArray *lines
          = wrap (texts[i], layout->widths[i] - MIN (i == 0 ? indent : 0, layout->widths[i] - 1));

      g_ptr_array_add (cells, lines);
      n_lines = MAX (n_lines, lines->len);
    }
  for (guint l = 0; l < n_lines; l++)
    {
      g_autoptr (GString) line = g_string_new (NULL);

      for (guint i = 0; i < layout->n; i++)
        {
          GPtrArray *lines = cells->pdata[i];
          const char *text = l < lines->len ? lines->pdata[l] : "";
          guint lead = i == 0 ? indent : 0;
          guint used = lead + text_width (text);
          guint rest = layout->widths[i] > used ? layout->widths[i] - used : 0;
          gboolean right = gb_column_is_number (column_at (layout, i));

          append_spaces (line, (i > 0 ? GAP : 0) + lead + (right ? rest : 0));
          g_string_append (line, text);
          append_spaces (line, right ? 0 : rest);
        }
      append_line (out, line);
    }
}

static void
append_row (GString *out, const Layout *layout, const GbRow *row)
{
  g_auto (GStrv) texts = g_new0 (char *, layout->n + 1);

  for (guint i = 0; i < layout->n; i++)
    texts[i] = cell_text (layout, row, i);
  if (row->kind == GB_ROW_TOTAL)
    append_rule (out, '-', total_width (layout));
  append_cells (out, layout, texts, row_indent (row, 0));
}

static void
append_table (GString *out, const GbDocument *document, const GbTable *table)
{
  g_auto (Layout) layout = lay_out (document, table);
  g_auto (GStrv) headings = g_new0 (char *, layout.n + 1);

  for (guint i = 0; i < layout.n; i++)
    headings[i] = gb_column_heading (document, column_at (&layout, i));
  g_string_append_printf (out, "\n%s\n\n", _ (table->title));
  append_cells (out, &layout, headings, 0);
  append_rule (out, '-', total_width (&layout));
  for (guint r = 0; r < table->rows->len; r++)
    append_row (out, &layout, table->rows->pdata[r]);
}

/* The whole --------------------------------------------------------------------------------------------------------- */

static void
append_head (GString *out, const GbDocument *document)
{
  g_autofree char *date
      = gb_cell_show (document, &(GbColumn){ .kind = GB_CELL_DATE }, &(GbCell){ .amount = document->date });
  g_autofree char *title = g_strdup_printf ("%s: %s", document->title, document->name);

  append_paragraph (out, title, "");
  g_string_append_printf (out, "%s\n", date);
  append_rule (out, '=', PAGE_WIDTH);
}

static void
append_facts (GString *out, const GbDocument *document)
{
  guint width = 0;

  for (guint i = 0; i < document->facts->len; i++)
    width = MAX (width, text_width (_ (((GbFact *) document->facts->pdata[i])->column.heading)));
  for (guint i = 0; i < document->facts->len; i++)
    {
      const GbFact *fact = document->facts->pdata[i];
      const char *label = _ (fact->column.heading);
      g_autofree char *value = gb_fact_show (document, fact);
      g_autoptr (GString) hang = g_string_new (label);

      append_spaces (hang, width - text_width (label) + GAP);
      append_paragraph (out, value, hang->str);
    }
}

static void
append_paragraphs (GString *out, const GPtrArray *paragraphs, const char *hang)
{
  for (guint i = 0; i < paragraphs->len; i++)
    {
      g_string_append_c (out, '\n');
      append_paragraph (out, paragraphs->pdata[i], hang);
    }
}

GBytes *
gb_write_text (const GbDocument *document)
{
  GString *out = g_string_new (NULL);

  append_head (out, document);
  append_facts (out, document);
  append_paragraphs (out, document->warnings, "! ");
  append_paragraphs (out, document->cautions, "");
  append_paragraphs (out, document->paragraphs, "");
  for (guint i = 0; i < document->tables->len; i++)
    append_table (out, document, document->tables->pdata[i]);
  append_paragraphs (out, document->notes, "");
  return g_string_free_to_bytes (out);
}
