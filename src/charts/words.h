/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/deviation.h"

G_BEGIN_DECLS

/* Sentences and figures that several charts say alike. */

/* Appends a sentence, parted by a space from what stands there. */
void gb_say (GString *text, const char *format, ...) G_GNUC_PRINTF (2, 3);

/* "3 parts have no mass yet and are not counted." Nothing for 0. */
void gb_say_no_mass (GString *text, guint n);

/* "2 things still to buy have no price and are not counted." Nothing for 0. */
void gb_say_no_price (GString *text, guint n);

/* Money as a number to draw; NAN where unknown. And back into words: "€ 12.50". */
double gb_money_value (gint64 amount);
char *gb_money_words (double value, const char *currency);

/* A share of the whole as whole per cent, but never 0 % or 100 % for what is only near. */
char *gb_percent_words (double share);

/* "48°", without its side. */
char *gb_angle_words (double angle, int decimals);

G_END_DECLS
