/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-document"

#include "document.h"

#include "boat/money.h"
#include "boat/quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define FIGURE_SPACE "\342\200\207" /* U+2007, as wide as a digit */
#define POINT_SPACE "\342\200\210"  /* U+2008, as wide as a point */
#define METRES_IN_A_FOOT 0.3048     /* exact: NIST SP 811 (2008), appendix B */

static void
clear_cell (gpointer data)
{
  g_free (((GbCell *) data)->text);
}

static void
free_row (gpointer data)
{
  GbRow *row = data;

  g_array_unref (row->cells);
  g_free (row);
}

static void
free_table (gpointer data)
{
  GbTable *table = data;

  g_ptr_array_unref (table->rows);
  g_free (table);
}

static void
free_fact (gpointer data)
{
  GbFact *fact = data;

  clear_cell (&fact->cell);
  g_free (fact->shown);
  g_free (fact);
}

static char *
clean_text (const char *text)
{
  char *clean = g_utf8_make_valid (text, -1);

  /* All control characters that UTF-8 writes as one byte; the C1 ones show as nothing and do no harm. */
  for (char *p = clean; *p != '\0'; p++)
    if (g_ascii_iscntrl (*p) && *p != '\n')
      *p = ' ';
  return clean;
}

GbDocument *
gb_document_new (const char *kind, const char *title, const GbBuild *build, gint64 date)
{
  GbDocument *document = g_new0 (GbDocument, 1);

  document->kind = kind;
  document->title = g_strdup (title);
  document->name = clean_text (build->name != NULL ? build->name : "");
  document->currency = g_strdup (build->currency);
  document->units = (GbUnits) build->units;
  document->date = date;
  document->facts = g_ptr_array_new_with_free_func (free_fact);
  document->warnings = g_ptr_array_new_with_free_func (g_free);
  document->paragraphs = g_ptr_array_new_with_free_func (g_free);
  document->tables = g_ptr_array_new_with_free_func (free_table);
  document->notes = g_ptr_array_new_with_free_func (g_free);
  document->cautions = g_ptr_array_new_with_free_func (g_free);
  return document;
}

void
gb_document_free (GbDocument *document)
{
  if (document == NULL)
    return;
  g_free (document->title);
  g_free (document->name);
  g_free (document->currency);
  g_ptr_array_unref (document->facts);
  g_ptr_array_unref (document->warnings);
  g_ptr_array_unref (document->paragraphs);
  g_ptr_array_unref (document->tables);
  g_ptr_array_unref (document->notes);
  g_ptr_array_unref (document->cautions);
  g_free (document);
}

/* Filling ----------------------------------------------------------------------------------------------------------- */

static void
take_text (GPtrArray *texts, char *text)
{
  g_ptr_array_add (texts, clean_text (text));
  g_free (text);
}

void
gb_document_warn (GbDocument *document, char *warning)
{
  take_text (document->warnings, warning);
}

void
gb_document_say (GbDocument *document, char *paragraph)
{
  take_text (document->paragraphs, paragraph);
}

void
gb_document_note (GbDocument *document, char *note)
{
  take_text (document->notes, note);
}

void
gb_document_caution (GbDocument *document, const char *caution)
{
  g_ptr_array_add (document->cautions, g_strdup (caution));
}

static GbFact *
add_fact (GbDocument *document, GbColumn column, GbCell cell)
{
  GbFact *fact = g_new0 (GbFact, 1);

  fact->column = column;
  fact->cell = cell;
  g_ptr_array_add (document->facts, fact);
  return fact;
}

void
gb_document_fact (GbDocument *document,
                  const char *key,
                  const char *label,
                  GbDimension dim,
                  double value,
                  char *shown)
{
  GbColumn column = { key, label, GB_CELL_QUANTITY, dim, 0 };

  add_fact (document, column, (GbCell){ .value = value })->shown = shown;
}

void
gb_document_fact_money (GbDocument *document, const char *key, const char *label, gint64 amount)
{
  add_fact (document, (GbColumn){ key, label, GB_CELL_MONEY, GB_DIM_MONEY, 0 }, (GbCell){ .amount = amount });
}

void
gb_document_fact_text (GbDocument *document, const char *key, const char *label, char *text)
{
  add_fact (document, (GbColumn){ key, label, GB_CELL_TEXT, GB_DIM_TEXT, 0 }, (GbCell){ .text = text });
}

GbTable *
gb_document_table (GbDocument *document,
                   const char *key,
                   const char *title,
                   const GbColumn *columns,
                   guint n_columns)
{
  GbTable *table = g_new0 (GbTable, 1);

  table->key = key;
  table->title = title;
  table->columns = columns;
  table->n_columns = n_columns;
  table->rows = g_ptr_array_new_with_free_func (free_row);
  g_ptr_array_add (document->tables, table);
  return table;
}

void
gb_document_drop_empty_tables (GbDocument *document)
{
  for (guint i = document->tables->len; i > 0; i--)
    if (((const GbTable *) document->tables->pdata[i - 1])->rows->len == 0)
      g_ptr_array_remove_index (document->tables, i - 1);
}

void
gb_table_row (GbTable *table, GbRowKind kind, guint depth)
{
  GbRow *row = g_new0 (GbRow, 1);

  row->kind = kind;
  row->depth = depth;
  row->cells = g_array_sized_new (FALSE, TRUE, sizeof (GbCell), table->n_columns);
  g_array_set_clear_func (row->cells, clear_cell);
  g_ptr_array_add (table->rows, row);
}

static void
add_cell (GbTable *table, GbCell cell)
{
  GbRow *row = table->rows->pdata[table->rows->len - 1];

  g_assert (row->cells->len < table->n_columns);
  g_array_append_val (row->cells, cell);
}

void
gb_table_text (GbTable *table, const char *text)
{
  add_cell (table, (GbCell){ .text = text != NULL ? clean_text (text) : NULL });
}

void
gb_table_coded (GbTable *table, const char *text, const char *code)
{
  add_cell (table, (GbCell){ .text = g_strdup (text), .code = code });
}

void
gb_table_choice (GbTable *table, const GbField *field, gint64 choice)
{
  gb_table_coded (table, _ (field->choices[choice].label), field->choices[choice].name);
}

void
gb_table_number (GbTable *table, double value)
{
  add_cell (table, (GbCell){ .value = value });
}

void
gb_table_money (GbTable *table, gint64 amount)
{
  add_cell (table, (GbCell){ .amount = amount });
}

void
gb_table_date (GbTable *table, gint64 date)
{
  add_cell (table, (GbCell){ .amount = date });
}

void
gb_table_skip (GbTable *table, guint n)
{
  for (guint i = 0; i < n; i++)
    add_cell (table, (GbCell){ .blank = TRUE });
}

/* Reading ----------------------------------------------------------------------------------------------------------- */

const GbCell *
gb_row_cell (const GbRow *row, guint column)
{
  return &g_array_index (row->cells, GbCell, column);
}

gboolean
gb_column_is_number (const GbColumn *column)
{
  return column->kind == GB_CELL_QUANTITY || column->kind == GB_CELL_MOMENT || column->kind == GB_CELL_MONEY;
}

gboolean
gb_cell_is_unknown (const GbColumn *column, const GbCell *cell)
{
  if (cell->blank)
    return FALSE;
  switch (column->kind)
    {
    case GB_CELL_QUANTITY:
    case GB_CELL_MOMENT:
      return !isfinite (cell->value);
    case GB_CELL_MONEY:
      return cell->amount == GB_MONEY_UNKNOWN;
    case GB_CELL_DATE:
      return cell->amount == 0;
    case GB_CELL_TEXT:
    default:
      return FALSE;
    }
}

/* Moments are read in kg m, or in pounds times feet. */
static double
moment_factor (GbUnits units)
{
  return units == GB_UNITS_FEET ? gb_quantity_factor (GB_DIM_MASS, units) * METRES_IN_A_FOOT : 1;
}

const char *
gb_column_unit (const GbDocument *document, const GbColumn *column)
{
  switch (column->kind)
    {
    case GB_CELL_QUANTITY:
      return gb_quantity_unit (column->dim, document->units);
    case GB_CELL_MOMENT:
      return document->units == GB_UNITS_FEET ? "lb·ft" : "kg·m";
    case GB_CELL_MONEY:
      return document->currency != NULL ? document->currency : "";
    case GB_CELL_TEXT:
    case GB_CELL_DATE:
    default:
      return "";
    }
}

char *
gb_column_heading (const GbDocument *document, const GbColumn *column)
{
  const char *unit = gb_column_unit (document, column);

  return *unit != '\0' ? g_strdup_printf ("%s (%s)", _ (column->heading), unit)
                       : g_strdup (_ (column->heading));
}

double
gb_cell_number (const GbDocument *document, const GbColumn *column, const GbCell *cell)
{
  if (cell->blank || gb_cell_is_unknown (column, cell))
    return NAN;
  switch (column->kind)
    {
    case GB_CELL_QUANTITY:
      return cell->value / gb_quantity_factor (column->dim, document->units);
    case GB_CELL_MOMENT:
      return cell->value / moment_factor (document->units);
    case GB_CELL_MONEY:
      return (double) cell->amount / pow (10, gb_currency_exponent (document->currency));
    case GB_CELL_TEXT:
    case GB_CELL_DATE:
    default:
      return NAN;
    }
}

/* To two figures: a deviation is not known better. */
static double
round_rough (double v)
{
  double step;

  if (v == 0 || !isfinite (v))
    return v;
  step = pow (10, floor (log10 (fabs (v))) - 1);
  return round (v / step) * step;
}

static char *
show_quantity (const GbDocument *document, const GbColumn *column, double v)
{
  double factor = gb_quantity_factor (column->dim, document->units);

  if ((column->flags & GB_COLUMN_ROUGH) != 0)
    v = round_rough (v / factor) * factor;
  return gb_quantity_format_bare (v, column->dim, document->units);
}

/* Two decimals; what rounds to nothing has no sign. */
static char *
show_moment (double v)
{
  return g_strdup_printf ("%.2f", fabs (v) < 0.005 ? 0 : v);
}

char *
gb_cell_show (const GbDocument *document, const GbColumn *column, const GbCell *cell)
{
  if (cell->blank)
    return g_strdup ("");
  if (gb_cell_is_unknown (column, cell))
    return g_strdup ("–");
  switch (column->kind)
    {
    case GB_CELL_QUANTITY:
      return show_quantity (document, column, cell->value);
    case GB_CELL_MOMENT:
      return show_moment (cell->value / moment_factor (document->units));
    case GB_CELL_MONEY:
      return gb_money_format (cell->amount, document->currency);
    case GB_CELL_DATE:
      return gb_date_format (cell->amount);
    case GB_CELL_TEXT:
    default:
      return g_strdup (cell->text != NULL ? cell->text : "");
    }
}

/* Characters from the decimal sign on; 0 where there is none, as in "1 1/2". */
static guint
tail_length (const char *shown)
{
  gsize whole = strspn (shown, "-0123456789\302\240");

  return shown[whole] == '.' || shown[whole] == ',' ? (guint) strlen (shown + whole) : 0;
}

guint
gb_column_tail (const GbDocument *document, const GbTable *table, guint column)
{
  guint longest = 0;

  if (!gb_column_is_number (&table->columns[column]))
    return 0;
  for (guint r = 0; r < table->rows->len; r++)
    {
      g_autofree char *shown
          = gb_cell_show (document, &table->columns[column], gb_row_cell (table->rows->pdata[r], column));

      longest = MAX (longest, tail_length (shown));
    }
  return longest;
}

char *
gb_cell_show_aligned (const GbDocument *document, const GbColumn *column, const GbCell *cell, guint tail)
{
  g_autofree char *shown = gb_cell_show (document, column, cell);
  guint own = tail_length (shown);
  GString *aligned;

  if (tail == 0 || cell->blank)
    return g_steal_pointer (&shown);
  aligned = g_string_new (shown);
  if (own == 0)
    g_string_append (aligned, POINT_SPACE);
  for (guint i = MAX (own, 1); i < tail; i++)
    g_string_append (aligned, FIGURE_SPACE);
  return g_string_free (aligned, FALSE);
}

char *
gb_fact_show (const GbDocument *document, const GbFact *fact)
{
  if (fact->shown != NULL)
    return g_strdup (fact->shown);
  if (fact->column.kind == GB_CELL_QUANTITY)
    return gb_quantity_format (fact->cell.value, fact->column.dim, document->units);
  if (fact->column.kind == GB_CELL_MONEY)
    return gb_money_format_full (fact->cell.amount, document->currency);
  return gb_cell_show (document, &fact->column, &fact->cell);
}
