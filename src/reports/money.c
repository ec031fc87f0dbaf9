/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-report-money"

/* Money: each head of the budget with what is spent and still to buy, the shopping list by supplier, and how
 * spending went by the month. */

#include "report-private.h"

#include "boat/money.h"
#include "boat/quantity.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* @a less @b; unknown where either is. */
static gint64
less (gint64 a, gint64 b)
{
  return b == GB_MONEY_UNKNOWN ? GB_MONEY_UNKNOWN : gb_money_add (a, -b);
}

/* Heads ------------------------------------------------------------------------------------------------------------- */

static const GbColumn head_columns[] = {
  { "head", N_ ("Budget head"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "budget", N_ ("Budget"), GB_CELL_MONEY, 0, 0 },
  { "spent", N_ ("Spent"), GB_CELL_MONEY, 0, 0 },
  { "to_buy", N_ ("Still to buy"), GB_CELL_MONEY, 0, 0 },
  { "forecast", N_ ("Forecast"), GB_CELL_MONEY, 0, 0 },
  { "left", N_ ("Left of the budget"), GB_CELL_MONEY, 0, 0 },
};

static void
add_head (GbTable *table, GbRowKind kind, const char *name, const char *code, const GbHead *head)
{
  gb_table_row (table, kind, 0);
  gb_table_coded (table, name, code);
  gb_table_money (table, head->budget);
  gb_table_money (table, head->spent);
  gb_table_money (table, head->to_buy);
  gb_table_money (table, head->forecast);
  gb_table_money (table, less (head->budget, head->forecast));
}

static void
add_heads (GbDocument *document, const GbBoat *boat, const GbCosts *costs)
{
  GbTable *table
      = gb_document_table (document, "heads", N_ ("Budget heads"), head_columns, G_N_ELEMENTS (head_columns));
  const GbHead whole = { 0, costs->budget, costs->spent, costs->to_buy, costs->forecast };

  for (guint i = 0; i < costs->n_heads; i++)
    {
      const GbHead *head = &costs->heads[i];

      if (head->category != 0 || head->spent != 0 || head->to_buy != 0)
        add_head (table, GB_ROW_NORMAL, gb_head_name (boat, head->category),
                  head->category == 0 ? "none" : NULL, head);
    }
  gb_table_row (table, GB_ROW_NORMAL, 0);
  gb_table_coded (table, _ ("Allowance for what is not listed"), "allowance");
  gb_table_skip (table, 3);
  gb_table_money (table, costs->allowance);
  gb_table_skip (table, 1);
  add_head (table, GB_ROW_TOTAL, _ ("Total"), "total", &whole);
}

/* The shopping list ------------------------------------------------------------------------------------------------- */

static const GbColumn shopping_columns[] = {
  { "name", N_ ("What"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "supplier", N_ ("Supplier"), GB_CELL_TEXT, 0, GB_COLUMN_DATA },
  { "form", N_ ("Form"), GB_CELL_TEXT, 0, 0 },
  { "need", N_ ("Needed, pieces"), GB_CELL_QUANTITY, GB_DIM_COUNT, 0 },
  { "on_hand", N_ ("On hand"), GB_CELL_QUANTITY, GB_DIM_COUNT, 0 },
  { "bought", N_ ("Bought"), GB_CELL_QUANTITY, GB_DIM_COUNT, 0 },
  { "to_buy", N_ ("To buy, packs"), GB_CELL_QUANTITY, GB_DIM_COUNT, 0 },
  { "pack", N_ ("In a pack"), GB_CELL_QUANTITY, GB_DIM_COUNT, 0 },
  { "price", N_ ("Price"), GB_CELL_MONEY, 0, 0 },
  { "cost", N_ ("Cost"), GB_CELL_MONEY, 0, 0 },
};

static int
compare_suppliers (gconstpointer a, gconstpointer b)
{
  const GbStock *s = *(const GbStock *const *) a, *t = *(const GbStock *const *) b;
  int order;

  if ((s->supplier == NULL) != (t->supplier == NULL))
    return s->supplier == NULL ? 1 : -1;
  order = s->supplier != NULL ? g_utf8_collate (s->supplier, t->supplier) : 0;
  return order != 0 ? order : (int) s->rec.index - (int) t->rec.index;
}

/* (element-type GbStock) what is still to buy, by supplier. */
static GPtrArray *
list_stock (const GbBoat *boat, const GbCosts *costs)
{
  const GPtrArray *all = gb_boat_all (boat, GB_RECORD_STOCK);
  GPtrArray *wanted = g_ptr_array_new ();

  for (guint i = 0; i < all->len; i++)
    if (costs->stock[i].to_buy > 0)
      g_ptr_array_add (wanted, all->pdata[i]);
  g_ptr_array_sort (wanted, compare_suppliers);
  return wanted;
}

/* Adds @amount to @sum, leaving out what is unknown: that is counted and said elsewhere. */
static void
add_known (gint64 *sum, gint64 amount)
{
  if (amount != GB_MONEY_UNKNOWN)
    *sum = gb_money_add (*sum, amount);
}

static void
add_shop_heading (GbTable *table, const char *name, const char *supplier, gint64 cost)
{
  gb_table_row (table, GB_ROW_GROUP, 0);
  gb_table_text (table, name);
  gb_table_text (table, supplier);
  gb_table_skip (table, 7);
  gb_table_money (table, cost);
}

static void
add_stock (GbTable *table, const GbStock *stock, const GbStockNeed *need)
{
  gb_table_row (table, GB_ROW_NORMAL, 1);
  gb_table_text (table, stock->name);
  gb_table_text (table, stock->supplier);
  gb_table_choice (table, gb_field (GB_RECORD_STOCK, "form"), stock->form);
  gb_table_number (table, need->need);
  gb_table_number (table, need->on_hand);
  gb_table_number (table, need->bought);
  gb_table_number (table, need->to_buy);
  gb_table_number (table, stock->pack);
  gb_table_money (table, stock->price);
  gb_table_money (table, need->cost);
}

/* The stock of one supplier, which begins at @from; gives where the next one begins. */
static guint
add_supplier (GbTable *table, const GPtrArray *wanted, guint from, const GbCosts *costs)
{
  const char *supplier = ((GbStock *) wanted->pdata[from])->supplier;
  gint64 cost = 0;
  guint to;

  for (to = from; to < wanted->len; to++)
    {
      const GbStock *stock = wanted->pdata[to];

      if (g_strcmp0 (stock->supplier, supplier) != 0)
        break;
      add_known (&cost, costs->stock[stock->rec.index].cost);
    }
  add_shop_heading (table, supplier != NULL ? supplier : _ ("Supplier not known"), supplier, cost);
  for (guint i = from; i < to; i++)
    {
      const GbStock *stock = wanted->pdata[i];

      add_stock (table, stock, &costs->stock[stock->rec.index]);
    }
  return to;
}

static gboolean
is_bought_as_such (const GbPart *part, const GbPartCost *cost)
{
  return part->kind == GB_KIND_PART && (cost->to_buy > 0 || cost->to_buy == GB_MONEY_UNKNOWN);
}

/* Parts that are bought as such, at their planned price. */
static void
add_bought_parts (GbTable *table, const GbBoat *boat, const GbCosts *costs)
{
  const GPtrArray *parts = gb_boat_all (boat, GB_RECORD_PART);
  gint64 sum = 0;
  guint n = 0;

  for (guint i = 0; i < parts->len; i++)
    if (is_bought_as_such (parts->pdata[i], &costs->parts[i]))
      {
        add_known (&sum, costs->parts[i].to_buy);
        n++;
      }
  if (n == 0)
    return;
  add_shop_heading (table, _ ("Parts that are bought as such"), NULL, sum);
  for (guint i = 0; i < parts->len; i++)
    {
      const GbPart *part = parts->pdata[i];

      if (!is_bought_as_such (part, &costs->parts[i]))
        continue;
      gb_table_row (table, GB_ROW_NORMAL, 1);
      gb_table_text (table, part->name);
      gb_table_skip (table, 2);
      gb_table_number (table, part->quantity * (part->pair ? 2 : 1) * gb_part_times (boat, part));
      gb_table_skip (table, 4);
      gb_table_money (table, part->price);
      gb_table_money (table, costs->parts[i].to_buy);
    }
}

static void
add_shopping (GbDocument *document, const GbBoat *boat, const GbCosts *costs)
{
  GbTable *table = gb_document_table (document, "to_buy", N_ ("Still to buy"), shopping_columns,
                                      G_N_ELEMENTS (shopping_columns));
  g_autoptr (GPtrArray) wanted = list_stock (boat, costs);

  for (guint i = 0; i < wanted->len;)
    i = add_supplier (table, wanted, i, costs);
  add_bought_parts (table, boat, costs);
  gb_table_row (table, GB_ROW_TOTAL, 0);
  gb_table_coded (table, _ ("Total"), "total");
  gb_table_skip (table, 8);
  gb_table_money (table, costs->to_buy);
}

/* By the month ------------------------------------------------------------------------------------------------------ */

static const GbColumn month_columns[] = {
  { "month", N_ ("Month"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "spent", N_ ("Spent"), GB_CELL_MONEY, 0, 0 },
  { "so_far", N_ ("Spent so far"), GB_CELL_MONEY, 0, 0 },
};

/* "2026-03"; receipts without a date come first. */
static char *
month_of (gint64 date)
{
  g_autofree char *day = gb_date_format (date);

  return date != 0 ? g_strndup (day, strlen ("YYYY-MM")) : g_strdup (_ ("without a date"));
}

static void
add_month (GbTable *table, gint64 date, gint64 spent, gint64 so_far)
{
  g_autofree char *month = month_of (date);

  gb_table_row (table, GB_ROW_NORMAL, 0);
  gb_table_text (table, month);
  gb_table_money (table, spent);
  gb_table_money (table, so_far);
}

static void
add_course (GbDocument *document, const GbCosts *costs)
{
  GbTable *table;
  gint64 before = 0;

  if (costs->n_course == 0)
    return;
  table = gb_document_table (document, "course", N_ ("By the month"), month_columns,
                             G_N_ELEMENTS (month_columns));
  for (guint i = 0; i < costs->n_course; i++)
    {
      const GbSpendPoint *point = &costs->course[i];
      g_autofree char *month = month_of (point->date);
      g_autofree char *next = i + 1 < costs->n_course ? month_of (point[1].date) : NULL;

      if (g_strcmp0 (month, next) == 0)
        continue;
      add_month (table, point->date, less (point->spent, before), point->spent);
      before = point->spent;
    }
}

/* The whole --------------------------------------------------------------------------------------------------------- */

GbDocument *
gb_money_document (const GbBoat *boat, const GbFindings *findings, gint64 today)
{
  const GbCosts *costs = &findings->costs;
  GbDocument *document = gb_document_new ("money", _ ("Money"), gb_boat_build (boat), today);

  gb_document_fact_money (document, "budget", N_ ("Budget"), costs->budget);
  gb_document_fact_money (document, "spent", N_ ("Spent"), costs->spent);
  gb_document_fact_money (document, "to_buy", N_ ("Still to buy"), costs->to_buy);
  gb_document_fact_money (document, "allowance", N_ ("Allowance"), costs->allowance);
  gb_document_fact_money (document, "forecast", N_ ("Forecast at completion"), costs->forecast);
  gb_say_verdicts (document, boat, findings, GB_VERDICT_ON_MONEY);
  add_heads (document, boat, costs);
  add_shopping (document, boat, costs);
  add_course (document, costs);
  gb_document_note (
      document,
      g_strdup (
          _ ("Forecast is what is spent, what is still to buy, and the allowance. Stock is bought in whole "
             "packs, after a cutting allowance and less what is on hand and bought.")));
  return document;
}
