/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/rollup.h"

G_BEGIN_DECLS

/* Money: budget, spent, still to buy, forecast, by budget head and in all. Minor units of the build's currency. Sums are of what is
 * known; what is not is counted.
 *
 * Need of stock: the amounts of the parts that name it (m2 of sheet, m of length, m3 of block, m3 or kg of what is in tins, pieces), times 1 +
 * cutting allowance for sheets, lengths and blocks; less what is on hand and what receipts bought; rounded up to whole packs. All parts
 * that name stock count, whatever their state: what they were made of was on hand or on a receipt. The resin of a cloth is taken from
 * the first tin of that material. Saved and found stock costs nothing.
 * A part that names no stock is bought as such at its planned price, until a receipt's line names it or its state says that it is there.
 * What holds for a group in that way holds for all that is in it, and a group's own planned price is that of a kit: what is in it needs none.
 * What a receipt names was bought ready, and takes nothing from its stock.
 */

typedef struct
{
  double need;     /* in pieces of stock, cutting allowance included */
  double on_hand;  /* pieces that were there at the start */
  double bought;   /* pieces, from receipts, returns taken off */
  double to_buy;   /* whole packs */
  gint64 cost;     /* of those; 0 for none, GB_MONEY_UNKNOWN without a price */
  gint64 spent;    /* on this stock, from receipts */
  guint n_parts;   /* that name it */
  guint n_unknown; /* of those, whose amount is unknown, or cannot be cut from it */
} GbStockNeed;

typedef struct
{
  gint64 planned;  /* for all of it, at the stock's price by amount, or as planned; GB_MONEY_UNKNOWN */
  gint64 bought;   /* by lines that name it */
  gint64 to_buy;   /* as such; 0 where stock covers it; GB_MONEY_UNKNOWN without a price */
  double n_bought; /* how many, by those lines, returns taken off; of a group: as such */
} GbPartCost;

typedef struct
{
  gint64 category; /* id; 0: under no head */
  gint64 budget; /* GB_MONEY_UNKNOWN for none */
  gint64 spent, to_buy;
  gint64 forecast; /* without the allowance, which belongs to no head */
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
  GbPartCost *parts; /* by index; of a group: the sum, GB_MONEY_UNKNOWN where nothing in it is known */
  guint n_parts;
  GbHead *heads; /* by index of the category, and one more at the end for what is under none */
  guint n_heads;
  gint64 budget; /* sum of the heads; GB_MONEY_UNKNOWN if none has one */
  gint64 spent, to_buy, allowance, forecast;
  GbSpendPoint *course; /* by date, one a day */
  guint n_course;
  guint n_no_price;       /* still to buy, without a price */
  guint n_no_price_lines; /* on receipts, without a price or a quantity */
  guint n_future;         /* receipts with a date after today */
  /* Still to buy, counted for the strip: pieces of stock, but whole packs of what comes by the piece; and parts bought as such. */
  guint sheets, lengths, blocks, tins, pieces, others;
} GbCosts;

/* Fills @costs anew, using its memory again; it starts as zeroes. @today: a Julian day, for what lies in the future. */
void gb_costs_find (GbCosts *costs, const GbBoat *boat, const GbRollup *rollup, gint64 today);
void gb_costs_clear (GbCosts *costs);

/* What a line costs, discount off: rounded once. GB_MONEY_UNKNOWN without a price or a quantity. */
gint64 gb_line_total (const GbLine *line);
/* The head that a line falls under: its own, the stock's or the part's (or its group's, upward); 0 for none. */
gint64 gb_line_category (const GbBoat *boat, const GbLine *line);
gint64 gb_part_category (const GbBoat *boat, const GbPart *part);

G_END_DECLS
