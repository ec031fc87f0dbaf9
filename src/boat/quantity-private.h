/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* @plain with the locale's decimal sign for each point before a digit. */
char *gb_with_decimal_sign (const char *plain);

/* The sum in @text: tidied, without the currency's sign or code. */
char *gb_money_strip (const char *text, const char *currency);
