/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-report-purchases"

/* The receipts with their lines. What was taken back is a line with a negative quantity; it is summed on its
 * own as well. */

#include "report-private.h"

#include "boat/money.h"
#include "engine/costs.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  gint64 total, returns;
  guint n_unknown; /* lines without a price */
} Sum;

static void
add_to_sum (Sum *sum, const GbLine *line)
{
  gint64 total = gb_line_total (line);

  if (total == GB_MONEY_UNKNOWN)
    {
      sum->n_unknown++;
      return;
    }
  sum->total = gb_money_add (sum->total, total);
  if (line->quantity < 0)
    sum->returns = gb_money_add (sum->returns, total);
}

static Sum
sum_lines (const GPtrArray *lines)
{
  Sum sum = { 0 };

  for (guint i = 0; i < lines->len; i++)
    add_to_sum (&sum, lines->pdata[i]);
  return sum;
}

static const GbColumn columns[] = {
  { "what", N_ ("What"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "date", N_ ("Date"), GB_CELL_DATE, 0, 0 },
  { "supplier", N_ ("Supplier"), GB_CELL_TEXT, 0, GB_COLUMN_DATA },
  { "kind", N_ ("Kind"), GB_CELL_TEXT, 0, 0 },
  { "for", N_ ("Stock or part"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "head", N_ ("Budget head"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "quantity", N_ ("Quantity"), GB_CELL_QUANTITY, GB_DIM_COUNT, 0 },
  { "price", N_ ("Price"), GB_CELL_MONEY, 0, 0 },
  { "discount", N_ ("Discount"), GB_CELL_QUANTITY, GB_DIM_RATIO, 0 },
  { "total", N_ ("Total"), GB_CELL_MONEY, 0, 0 },
};

/* The stock or the part that a line is for; NULL for none. */
static const char *
line_for (const GbBoat *boat, const GbLine *line)
{
  const GbStock *stock = gb_boat_stock (boat, line->stock);
  const GbPart *part = gb_boat_part (boat, line->part);

  if (line->kind == GB_LINE_STOCK && stock != NULL)
    return stock->name;
  if (line->kind == GB_LINE_PART && part != NULL)
    return part->name;
  return NULL;
}

static void
add_line (GbTable *table, const GbBoat *boat, const GbPurchase *purchase, const GbLine *line)
{
  const char *bought_for = line_for (boat, line);

  gb_table_row (table, GB_ROW_NORMAL, 1);
  gb_table_text (table, line->what != NULL ? line->what : bought_for);
  gb_table_date (table, purchase->date);
  gb_table_text (table, purchase->supplier);
  gb_table_choice (table, gb_field (GB_RECORD_LINE, "kind"), line->kind);
  gb_table_text (table, bought_for);
  gb_table_text (table, gb_head_name (boat, gb_line_category (boat, line)));
  gb_table_number (table, line->quantity);
  gb_table_money (table, line->price);
  gb_table_number (table, line->discount);
  gb_table_money (table, gb_line_total (line));
}

static void
add_purchase (GbTable *table, const GbBoat *boat, const GbPurchase *purchase)
{
  const GPtrArray *lines = gb_record_children (&purchase->rec);

  gb_table_row (table, GB_ROW_GROUP, 0);
  gb_table_text (table, purchase->supplier != NULL ? purchase->supplier : _ ("Supplier not known"));
  gb_table_date (table, purchase->date);
  gb_table_text (table, purchase->supplier);
  gb_table_coded (table, _ ("Receipt"), "receipt");
  gb_table_skip (table, 5);
  gb_table_money (table, sum_lines (lines).total);
  for (guint i = 0; i < lines->len; i++)
    add_line (table, boat, purchase, lines->pdata[i]);
}

static void
add_sum (GbTable *table, GbRowKind kind, const char *name, const char *code, gint64 amount)
{
  gb_table_row (table, kind, 0);
  gb_table_coded (table, name, code);
  gb_table_skip (table, 8);
  gb_table_money (table, amount);
}

static int
compare_dates (gconstpointer a, gconstpointer b)
{
  const GbPurchase *p = *(const GbPurchase *const *) a, *q = *(const GbPurchase *const *) b;

  if (p->date != q->date)
    return p->date < q->date ? -1 : 1;
  return p->rec.index < q->rec.index ? -1 : p->rec.index > q->rec.index;
}

GbDocument *
gb_purchases_document (const GbBoat *boat, const GbFindings *findings, gint64 today)
{
  GbDocument *document = gb_document_new ("purchases", _ ("Purchases"), gb_boat_build (boat), today);
  GbTable *table
      = gb_document_table (document, "purchases", N_ ("Receipts"), columns, G_N_ELEMENTS (columns));
  g_autoptr (GPtrArray) purchases
      = g_ptr_array_copy ((GPtrArray *) gb_boat_all (boat, GB_RECORD_PURCHASE), NULL, NULL);
  Sum sum = sum_lines (gb_boat_all (boat, GB_RECORD_LINE));

  document->landscape = TRUE;
  gb_document_fact (document, "n_purchases", N_ ("Receipts"), GB_DIM_COUNT, purchases->len, NULL);
  gb_document_fact_money (document, "spent", N_ ("Spent, returns taken off"), sum.total);
  gb_document_fact_money (document, "returns", N_ ("Returned"), sum.returns);
  if (sum.n_unknown > 0)
    gb_document_say (document,
                     g_strdup_printf (ngettext ("%u line has no price and is in no sum.",
                                                "%u lines have no price and are in no sum.", sum.n_unknown),
                                      sum.n_unknown));
  if (findings->costs.n_future > 0)
    gb_document_say (document, g_strdup_printf (ngettext ("%u receipt has a date that lies in the future.",
                                                          "%u receipts have a date that lies in the future.",
                                                          findings->costs.n_future),
                                                findings->costs.n_future));
  g_ptr_array_sort (purchases, compare_dates);
  for (guint i = 0; i < purchases->len; i++)
    add_purchase (table, boat, purchases->pdata[i]);
  if (sum.returns != 0)
    add_sum (table, GB_ROW_SUBTOTAL, _ ("Of that, returned"), "returns", sum.returns);
  add_sum (table, GB_ROW_TOTAL, _ ("Spent"), "total", sum.total);
  return document;
}
