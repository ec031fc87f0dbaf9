/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-costs"

/* First what receipts say, then what the parts need, then what of that is still to buy. */

#include "costs-private.h"

#include <math.h>

gint64
gb_line_total (const GbLine *line)
{
  return gb_money_times (line->price, line->quantity * (1 - (isnan (line->discount) ? 0 : line->discount)));
}

static gboolean
is_category (const GbBoat *boat, gint64 id)
{
  return gb_boat_get (boat, GB_RECORD_CATEGORY, id) != NULL;
}

gint64
gb_part_category (const GbBoat *boat, const GbPart *part)
{
  /* What is not in the tree has no group to ask, and may be its own ancestor. */
  for (; part != NULL; part = part->rec.index != G_MAXUINT ? gb_boat_part (boat, part->rec.owner) : NULL)
    if (is_category (boat, part->category))
      return part->category;
  return 0;
}

gint64
gb_line_category (const GbBoat *boat, const GbLine *line)
{
  const GbStock *stock = line->kind == GB_LINE_STOCK ? gb_boat_stock (boat, line->stock) : NULL;

  if (is_category (boat, line->category))
    return line->category;
  if (line->kind == GB_LINE_PART)
    return gb_part_category (boat, gb_boat_part (boat, line->part));
  return stock != NULL && is_category (boat, stock->category) ? stock->category : 0;
}

void
gb_costs_add_known (gint64 *sum, gint64 amount)
{
  if (amount != GB_MONEY_UNKNOWN)
    *sum = *sum == GB_MONEY_UNKNOWN ? amount : gb_money_add (*sum, amount);
}

static GbHead *
head_of (const GbCosts *costs, const GbBoat *boat, gint64 category)
{
  const GbRecord *record = gb_boat_get (boat, GB_RECORD_CATEGORY, category);

  return &costs->heads[record != NULL ? record->index : costs->n_heads - 1];
}

/* Everything at its start: nothing spent, nothing needed. */
static void
start (GbCosts *costs, const GbBoat *boat)
{
  const GPtrArray *categories = gb_boat_all (boat, GB_RECORD_CATEGORY);
  GbCosts empty = {
    .n_stock = gb_boat_n (boat, GB_RECORD_STOCK),
    .n_parts = gb_boat_n (boat, GB_RECORD_PART),
    .n_heads = categories->len + 1,
    .budget = GB_MONEY_UNKNOWN,
  };

  empty.stock = g_renew (GbStockNeed, costs->stock, empty.n_stock);
  empty.parts = g_renew (GbPartCost, costs->parts, empty.n_parts);
  empty.heads = g_renew (GbHead, costs->heads, empty.n_heads);
  empty.course = g_renew (GbSpendPoint, costs->course, gb_boat_n (boat, GB_RECORD_PURCHASE));
  *costs = empty;
  for (guint i = 0; i < costs->n_stock; i++)
    costs->stock[i] = (GbStockNeed){ 0 };
  for (guint i = 0; i < costs->n_parts; i++)
    costs->parts[i] = (GbPartCost){ .planned = GB_MONEY_UNKNOWN, .to_buy = GB_MONEY_UNKNOWN };
  costs->heads[categories->len] = (GbHead){ .budget = GB_MONEY_UNKNOWN };
  for (guint i = 0; i < categories->len; i++)
    {
      const GbCategory *category = categories->pdata[i];

      costs->heads[i] = (GbHead){ .category = category->rec.id, .budget = category->budget };
      gb_costs_add_known (&costs->budget, category->budget);
    }
}

/* Enters one line of a receipt where it belongs. Returns what it cost. */
static gint64
enter_line (GbCosts *costs, const GbBoat *boat, const GbLine *line)
{
  gint64 total = gb_line_total (line);
  double quantity = isnan (line->quantity) ? 0 : line->quantity;
  const GbStock *stock = line->kind == GB_LINE_STOCK ? gb_boat_stock (boat, line->stock) : NULL;
  const GbPart *part = line->kind == GB_LINE_PART ? gb_boat_part (boat, line->part) : NULL;

  if (stock != NULL)
    {
      costs->stock[stock->rec.index].bought += quantity * gb_stock_pack (stock);
      gb_costs_add_known (&costs->stock[stock->rec.index].spent, total);
    }
  if (part != NULL && part->rec.index < costs->n_parts)
    {
      costs->parts[part->rec.index].n_bought += quantity;
      gb_costs_add_known (&costs->parts[part->rec.index].bought, total);
    }
  if (total == GB_MONEY_UNKNOWN)
    costs->n_no_price_lines++;
  gb_costs_add_known (&head_of (costs, boat, gb_line_category (boat, line))->spent, total);
  gb_costs_add_known (&costs->spent, total);
  return total;
}

static int
compare_days (gconstpointer a, gconstpointer b)
{
  gint64 d = ((const GbSpendPoint *) a)->date, e = ((const GbSpendPoint *) b)->date;

  return d < e ? -1 : d > e;
}

/* From what each receipt cost to what was spent up to each day. */
static void
order_course (GbCosts *costs)
{
  gint64 spent = 0;
  guint n = 0;

  if (costs->n_course > 1)
    qsort (costs->course, costs->n_course, sizeof *costs->course, compare_days);
  for (guint i = 0; i < costs->n_course; i++)
    {
      GbSpendPoint point = costs->course[i];

      gb_costs_add_known (&spent, point.spent);
      if (n > 0 && costs->course[n - 1].date == point.date)
        n--;
      costs->course[n++] = (GbSpendPoint){ point.date, spent };
    }
  costs->n_course = n;
}

static void
enter_receipts (GbCosts *costs, const GbBoat *boat, gint64 today)
{
  const GPtrArray *purchases = gb_boat_all (boat, GB_RECORD_PURCHASE);

  for (guint i = 0; i < purchases->len; i++)
    {
      const GbPurchase *purchase = purchases->pdata[i];
      const GPtrArray *lines = gb_record_children (&purchase->rec);
      GbSpendPoint point = { purchase->date, 0 };

      for (guint k = 0; k < lines->len; k++)
        gb_costs_add_known (&point.spent, enter_line (costs, boat, lines->pdata[k]));
      if (lines->len > 0)
        costs->course[costs->n_course++] = point;
      if (purchase->date > today)
        costs->n_future++;
    }
  order_course (costs);
}

/* Counts @packs of @stock for the strip. */
static void
count_to_buy (GbCosts *costs, const GbStock *stock, double packs)
{
  double whole = stock->form == GB_FORM_PIECE ? packs : ceil (packs * gb_stock_pack (stock));
  guint n = (guint) MIN (whole, G_MAXINT);

  switch ((GbForm) stock->form)
    {
    case GB_FORM_SHEET:
      costs->sheets += n;
      break;
    case GB_FORM_LENGTH:
      costs->lengths += n;
      break;
    case GB_FORM_BLOCK:
      costs->blocks += n;
      break;
    case GB_FORM_TIN:
      costs->tins += n;
      break;
    case GB_FORM_PIECE:
    default:
      costs->pieces += n;
      break;
    }
}

/* Whole packs of what is short. What is short by less than the sums may err is not short. */
static double
packs_short (const GbStockNeed *need, double pack)
{
  double there = need->on_hand + need->bought;
  double packs = ceil ((need->need - there - 1e-9 * (need->need + fabs (there))) / pack);

  return packs > 0 ? packs : 0;
}

static void
find_stock (GbCosts *costs, const GbBoat *boat)
{
  const GPtrArray *all = gb_boat_all (boat, GB_RECORD_STOCK);

  for (guint i = 0; i < all->len; i++)
    {
      const GbStock *stock = all->pdata[i];
      GbStockNeed *need = &costs->stock[i];

      need->on_hand = stock->on_hand > 0 ? stock->on_hand : 0;
      need->to_buy = packs_short (need, gb_stock_pack (stock));
      count_to_buy (costs, stock, need->to_buy);
      if (need->to_buy > 0 && stock->origin == GB_ORIGIN_SHOP)
        need->cost = gb_money_times (stock->price, need->to_buy);
      if (need->cost == GB_MONEY_UNKNOWN)
        costs->n_no_price++;
      gb_costs_add_known (&head_of (costs, boat, stock->category)->to_buy, need->cost);
    }
}

static void
forecast (GbCosts *costs, const GbBuild *build)
{
  costs->allowance = build->cost_allowance != GB_MONEY_UNKNOWN ? build->cost_allowance : 0;
  for (guint i = 0; i < costs->n_heads; i++)
    {
      GbHead *head = &costs->heads[i];

      head->forecast = gb_money_add (head->spent, head->to_buy);
      costs->to_buy = gb_money_add (costs->to_buy, head->to_buy);
    }
  costs->forecast = gb_money_add (gb_money_add (costs->spent, costs->to_buy), costs->allowance);
}

void
gb_costs_find (GbCosts *costs, const GbBoat *boat, const GbRollup *rollup, gint64 today)
{
  start (costs, boat);
  enter_receipts (costs, boat, today);
  gb_costs_find_parts (costs, boat, rollup);
  find_stock (costs, boat);
  forecast (costs, gb_boat_build (boat));
}

void
gb_costs_clear (GbCosts *costs)
{
  g_free (costs->stock);
  g_free (costs->parts);
  g_free (costs->heads);
  g_free (costs->course);
  *costs = (GbCosts){ 0 };
}
