/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/rollup.h"

G_BEGIN_DECLS

/* Money: budget, spent, still to buy, forecast, by budget head and in all. Minor units of the build's currency.
 *
 * Need of stock: the amounts of the parts that name it (m2 of sheet, m of length, m3 of block, m3 of what is in tins, pieces), times 1 +
 * cutting allowance for sheets, lengths and blocks; less what is on hand and what receipts bought; rounded up to whole packs.
 * A part that names no stock is bought as such at its planned price, until a receipt's line names it or its state says that it is there.
 */

typedef struct
{
  double need;     /* in pieces of stock, cutting allowance included */
  double on_hand;  /* pieces that were there at the start */
  double bought;   /* pieces, from receipts, returns taken off */
  double to_buy;   /* whole packs */
  gint64 cost;     /* of those; GB_MONEY_UNKNOWN without a price */
  gint64 spent;    /* on this stock, from receipts */
  guint n_parts;   /* that name it */
  guint n_unknown; /* of those, whose amount is unknown */
} GbStockNeed;

typedef struct
{
  gint64 planned; /* for all of it, at the stock's price by amount, or as planned; GB_MONEY_UNKNOWN */
  gint64 bought;  /* by lines that name it */
  gint64 to_buy;  /* as such; 0 where stock covers it */
} GbPartCost;

typedef struct
{
  gint64 category; /* id; 0: under no head */
  gint64 budget, spent, to_buy, forecast;
} GbHead;

typedef struct
{
  gint64 date; /* 0: no date on the receipt */
  gint64 spent; /* up to and with that day */
} GbSpendPoint;

typedef struct
{
  GbStockNeed *stock; /* by index */
  guint n_stock;
  GbPartCost *parts; /* by index; of a group: the sum */
  guint n_parts;
  GbHead *heads; /* by index of the category, and one more at the end for what is under none */
  guint n_heads;
  gint64 budget; /* sum of the heads; GB_MONEY_UNKNOWN if none has one */
  gint64 spent, to_buy, allowance, forecast;
  GbSpendPoint *course; /* by date, one a day */
  guint n_course;
  guint n_no_price;    /* still to buy, without a price */
  guint n_future;      /* receipts with a date after today */
  /* Still to buy, counted for the strip. */
  guint sheets, lengths, blocks, tins, pieces, others;
} GbCosts;

/* @today: a Julian day, for what lies in the future. */
void gb_costs_find (GbCosts *costs, const GbBoat *boat, const GbRollup *rollup, gint64 today);
void gb_costs_clear (GbCosts *costs);

/* What a line costs, discount off: rounded once. */
gint64 gb_line_total (const GbLine *line);
/* The head that a line falls under: its own, the stock's or the part's (or its group's, upward); 0 for none. */
gint64 gb_line_category (const GbBoat *boat, const GbLine *line);
gint64 gb_part_category (const GbBoat *boat, const GbPart *part);

G_END_DECLS
