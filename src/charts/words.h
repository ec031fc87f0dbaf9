/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/boat.h"
#include "boat/fields.h"

G_BEGIN_DECLS

/* Sentences and figures that several charts say alike. */

/* Appends a sentence, parted by a space from what stands there. */
void gb_say (GString *text, const char *format, ...) G_GNUC_PRINTF (2, 3);

/* "31.4 kg", or "31.4 kg ± 1.2" where the deviation is known and not zero. */
char *gb_mass_words (double mass, double sd, GbUnits units);

/* How far a mass of about @mass is from a limit, no finer than the mass itself is shown. Without a sign. */
char *gb_mass_off_words (double off, double mass, GbUnits units);

/* A place or a draught: to a tenth of a millimetre, below which a computed figure says nothing. */
char *gb_length_words (double length, GbUnits units);

/* "3 parts have no mass yet and are not counted." Nothing for 0. */
void gb_say_no_mass (GString *text, guint n);

/* "2 things still to buy have no price and are not counted." Nothing for 0. */
void gb_say_no_price (GString *text, guint n);

/* Money as a number to draw; NAN where unknown. And back into words: "€ 12.50". */
double gb_money_value (gint64 amount);
char *gb_money_words (double value, const char *currency);

/* A share of the whole as whole per cent, but never 0 % or 100 % for what is only near. */
char *gb_percent_words (double share);

G_END_DECLS
