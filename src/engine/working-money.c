/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-working"

/* How the forecast came about: every line of every receipt, what is still to buy, and the allowance. */

#include "working-private.h"

#include <glib/gi18n-lib.h>

static char *
line_name (const GbHand *hand, const GbLine *line)
{
  const GbStock *stock = (const GbStock *) gb_boat_get (hand->boat, GB_RECORD_STOCK, line->stock);
  const GbPart *part = gb_boat_part (hand->boat, line->part);

  if (line->what == NULL && line->kind == GB_LINE_STOCK && stock != NULL)
    return gb_record_dup_title (&stock->rec);
  if (line->what == NULL && line->kind == GB_LINE_PART && part != NULL)
    return gb_record_dup_title (&part->rec);
  return gb_record_dup_title (&line->rec);
}

static void
add_row (GbHand *hand, char *take_name, char *take_when, char *take_how_many, gint64 amount)
{
  gb_hand_row (hand, take_name, take_when, take_how_many, gb_hand_money (hand, amount), NULL);
}

/* "Timber yard, 2024-05-01". */
static char *
receipt_text (const GbPurchase *purchase)
{
  g_autofree char *date = gb_date_format (purchase->date);

  if (purchase->supplier == NULL)
    return g_steal_pointer (&date);
  return purchase->date > 0 ? g_strdup_printf ("%s, %s", purchase->supplier, date)
                            : g_strdup (purchase->supplier);
}

static void
add_purchases (GbHand *hand)
{
  const GPtrArray *purchases = gb_boat_roots (hand->boat, GB_RECORD_PURCHASE);

  for (guint i = 0; i < purchases->len; i++)
    {
      const GPtrArray *lines = gb_record_children (purchases->pdata[i]);

      for (guint k = 0; k < lines->len; k++)
        {
          const GbLine *line = lines->pdata[k];

          add_row (hand, line_name (hand, line), receipt_text (purchases->pdata[i]),
                   gb_hand_show (hand, line->quantity, GB_DIM_COUNT), gb_line_total (line));
        }
    }
  add_row (hand, g_strdup (_ ("Spent")), g_strdup (""), g_strdup (""), hand->findings->costs.spent);
}

/* What is to be bought of a part as such; of a group the kit that it comes as, without what is in it besides.
 */
static gint64
own_to_buy (const GbHand *hand, const GbPart *part)
{
  const GbPartCost *costs = hand->findings->costs.parts;
  const GPtrArray *children = gb_record_children (&part->rec);
  gint64 amount = costs[part->rec.index].to_buy;

  if (children->len == 0 && part->kind != GB_KIND_GROUP)
    return amount;
  if (part->price == GB_MONEY_UNKNOWN || amount == GB_MONEY_UNKNOWN)
    return 0;
  for (guint i = 0; i < children->len; i++)
    {
      gint64 inside = costs[((const GbRecord *) children->pdata[i])->index].to_buy;

      amount -= inside != GB_MONEY_UNKNOWN ? inside : 0;
    }
  return amount;
}

static void
add_still_to_buy (GbHand *hand)
{
  const GbCosts *costs = &hand->findings->costs;
  const GPtrArray *stock = gb_boat_all (hand->boat, GB_RECORD_STOCK),
                  *parts = gb_boat_all (hand->boat, GB_RECORD_PART);

  for (guint i = 0; i < MIN (stock->len, costs->n_stock); i++)
    if (costs->stock[i].to_buy > 0)
      add_row (hand, gb_record_dup_title (stock->pdata[i]), g_strdup (_ ("to buy")),
               gb_hand_show (hand, costs->stock[i].to_buy, GB_DIM_COUNT), costs->stock[i].cost);
  for (guint i = 0; i < MIN (parts->len, costs->n_parts); i++)
    {
      gint64 amount = own_to_buy (hand, parts->pdata[i]);

      if (amount != 0)
        add_row (hand, gb_record_dup_title (parts->pdata[i]), g_strdup (_ ("to buy")), g_strdup (""), amount);
    }
  add_row (hand, g_strdup (_ ("Still to buy")), g_strdup (""), g_strdup (""), costs->to_buy);
}

/* @format holds one %u. */
static void
note_number (GbHand *hand, guint n, const char *format)
{
  g_autofree char *words = g_strdup_printf (format, n);

  if (n > 0)
    gb_hand_step (hand, words, NULL, NULL);
}

static void
show_forecast (GbHand *hand)
{
  const GbCosts *costs = &hand->findings->costs;
  g_autofree char *spent = gb_hand_money (hand, costs->spent), *to_buy = gb_hand_money (hand, costs->to_buy);
  g_autofree char *allowance = gb_hand_money (hand, costs->allowance),
                  *forecast = gb_hand_money (hand, costs->forecast);

  gb_hand_step (hand, _ ("Forecast: spent + still to buy + allowance"),
                g_strdup_printf ("%s + %s + %s = %s", spent, to_buy, allowance, forecast), NULL);
  note_number (hand, costs->n_no_price,
               ngettext ("%u thing still to buy has no price and is not in it",
                         "%u things still to buy have no price and are not in it", costs->n_no_price));
  note_number (hand, costs->n_no_price_lines,
               ngettext ("%u line of a receipt has no price and is not in it",
                         "%u lines of receipts have no price and are not in it", costs->n_no_price_lines));
}

static void
show_left (GbHand *hand)
{
  const GbCosts *costs = &hand->findings->costs;
  g_autofree char *budget = NULL, *forecast = NULL, *left = NULL;

  if (costs->budget == GB_MONEY_UNKNOWN || costs->forecast == GB_MONEY_UNKNOWN)
    return;
  budget = gb_hand_money (hand, costs->budget);
  forecast = gb_hand_money (hand, costs->forecast);
  left = gb_hand_money (hand, costs->budget - costs->forecast);
  gb_hand_step (hand, _ ("Left: budget, as the sum of its heads, − forecast"),
                g_strdup_printf ("%s − %s = %s", budget, forecast, left), NULL);
}

GbWorking *
gb_working_money (const GbBoat *boat, const GbFindings *findings)
{
  GbHand hand = gb_hand_start (boat, findings, g_strdup (_ ("Forecast of the cost")));

  show_forecast (&hand);
  show_left (&hand);
  gb_hand_step (&hand,
                _ ("Still to buy of stock: need with its cutting allowance − on hand − bought, rounded up to "
                   "whole packs"),
                NULL, NULL);
  gb_hand_columns (&hand, _ ("Item"), _ ("Receipt"), _ ("Quantity"), _ ("Cost"), NULL);
  add_purchases (&hand);
  add_still_to_buy (&hand);
  add_row (&hand, g_strdup (_ ("Allowance")), g_strdup (""), g_strdup (""), findings->costs.allowance);
  add_row (&hand, g_strdup (_ ("Forecast")), g_strdup (""), g_strdup (""), findings->costs.forecast);
  return hand.working;
}
