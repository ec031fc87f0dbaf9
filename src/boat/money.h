/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "records.h"

G_BEGIN_DECLS

/* Money is a whole number of minor units (cents) of a currency; how many of those make one is the currency's exponent, from
 * ISO 4217: 2 for most, 0 for JPY and a few more, 3 for KWD and a few more.
 *
 * Rounding happens in gb_money_times() alone: to the nearest minor unit, halves away from zero, as a shop rounds:
 * 3 x 0.335 -> 1.005 -> 1.01; -0.5 cent -> -1 cent. Unknown times anything is unknown. A sum too large for the whole number is
 * unknown too. */
gint64 gb_money_times (gint64 amount, double factor);

/* Adds, keeping unknown; sums that overflow are unknown. */
gint64 gb_money_add (gint64 a, gint64 b);

/* TRUE for three capital letters. */
gboolean gb_currency_is_valid (const char *currency);
int gb_currency_exponent (const char *currency); /* 2 where unknown or NULL */

/* "1 234.50" with the locale's decimal sign and spaces that do not break, no currency; unknown gives an en dash. Free the result. */
char *gb_money_format (gint64 amount, const char *currency);
/* The same with the currency's sign or code: "€ 12.50", "12.50 CHF". */
char *gb_money_format_full (gint64 amount, const char *currency);
/* Plain digits with a point, for files: "1234.50". */
char *gb_money_format_plain (gint64 amount, const char *currency);

/* Reads "12", "12.50", "12,50", "€ 12.50", "12.50 EUR", "2*12.50". Error domain GB_QUANTITY_ERROR, a sentence. */
gboolean gb_money_parse (const char *text, const char *currency, gint64 *amount, GError **error);

G_END_DECLS
