/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "units.h"

G_BEGIN_DECLS

/* Reads an entry as a sum:
 *
 *   sum     = product { ("+" | "-") product }
 *   product = factor { "*" factor | "/" (factor | unit) | ["*"] unit }   the last only where it makes a moment: 28 kg m
 *   factor  = { "-" | "+" } ( "(" sum ")" [unit] | measure )
 *   measure = number [unit { number [unit] }]           5' 6 3/8"   12 lb 4 oz
 *   number  = digits ["." digits] | [digits] fraction   1.5   1,5   1 1/2   1½   2e3
 *
 * A number that meets no unit is bare: in a sum with something that has one, and at the end, it takes the unit that its
 * dimension is shown in. A unit behind a quotient of bare numbers goes for the quotient: 1/4 in, (1220-45)/2 mm. */
typedef struct
{
  double value;      /* as it is stored */
  char *text;        /* as typed, tidied, with the units added that were meant */
  gboolean is_plain; /* one number, perhaps with its unit: no sum, no fraction */
  gboolean is_sum;   /* more than a measure: something was added, multiplied or divided */
} GbExpression;

gboolean gb_expression_read (const char *text, GbDimension dim, GbUnits units, GbExpression *expression, GError **error);
void gb_expression_clear (GbExpression *expression);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (GbExpression, gb_expression_clear)

/* @text with one space for any run of white space, none at the ends, plain signs for their look-alikes (− × ÷ ′ ″ and so on), a
 * point for a decimal comma, and no thousands spaces. For text that is UTF-8. */
char *gb_entry_tidy (const char *text);

/* @text cut to what fits in a sentence, without control characters. */
char *gb_entry_quote (const char *text);

G_END_DECLS
