/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Money: rounding, the number of decimals by currency, entry and display. */

#include "boat/money.h"
#include "boat/quantity.h"

#include <math.h>
#include <string.h>

#define NBSP "\302\240"

static void
test_times (void)
{
  static const struct
  {
    gint64 amount;
    double factor;
    gint64 product;
  } cases[] = {
    { 100, 1.005, 101 }, /* half a cent is rounded up, although the double 1.005 is a hair less */
    { 100, -1.005, -101 },
    { 1, 0.5, 1 },
    { -1, 0.5, -1 },
    { 1, 0.49, 0 },
    { 335, 3, 1005 },
    { 1250, 2.5, 3125 },
    { 999, 1.0 / 3, 333 },
    { 0, 1e300, 0 },
    { G_MAXINT64, 1, G_MAXINT64 },
    { G_MAXINT64, -1, -G_MAXINT64 },
    { G_MAXINT64, 2, GB_MONEY_UNKNOWN },
    { 1000, 1e30, GB_MONEY_UNKNOWN },
    { 1000, NAN, GB_MONEY_UNKNOWN },
    { 1000, INFINITY, GB_MONEY_UNKNOWN },
    { GB_MONEY_UNKNOWN, 2, GB_MONEY_UNKNOWN },
    { GB_MONEY_UNKNOWN, 0, GB_MONEY_UNKNOWN },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    g_assert_cmpint (gb_money_times (cases[i].amount, cases[i].factor), ==, cases[i].product);
}

static void
test_add (void)
{
  g_assert_cmpint (gb_money_add (150, -50), ==, 100);
  g_assert_cmpint (gb_money_add (150, GB_MONEY_UNKNOWN), ==, GB_MONEY_UNKNOWN);
  g_assert_cmpint (gb_money_add (GB_MONEY_UNKNOWN, 1), ==, GB_MONEY_UNKNOWN);
  g_assert_cmpint (gb_money_add (G_MAXINT64, 1), ==, GB_MONEY_UNKNOWN);
}

static void
test_currencies (void)
{
  /* ISO 4217, list one: minor units. */
  g_assert_cmpint (gb_currency_exponent ("EUR"), ==, 2);
  g_assert_cmpint (gb_currency_exponent ("JPY"), ==, 0);
  g_assert_cmpint (gb_currency_exponent ("ISK"), ==, 0);
  g_assert_cmpint (gb_currency_exponent ("KWD"), ==, 3);
  g_assert_cmpint (gb_currency_exponent ("TND"), ==, 3);
  g_assert_cmpint (gb_currency_exponent ("CLF"), ==, 4);
  g_assert_cmpint (gb_currency_exponent ("XQX"), ==, 2);
  g_assert_cmpint (gb_currency_exponent (NULL), ==, 2);

  g_assert_true (gb_currency_is_valid ("NZD"));
  g_assert_false (gb_currency_is_valid ("nzd"));
  g_assert_false (gb_currency_is_valid ("NZ"));
  g_assert_false (gb_currency_is_valid ("EURO"));
  g_assert_false (gb_currency_is_valid (""));
  g_assert_false (gb_currency_is_valid (NULL));
}

static void
test_display (void)
{
  static const struct
  {
    gint64 amount;
    const char *currency, *shown, *full, *plain;
  } cases[] = {
    { 123450, "EUR", "1" NBSP "234.50", "€" NBSP "1" NBSP "234.50", "1234.50" },
    { 5, "EUR", "0.05", "€" NBSP "0.05", "0.05" },
    { -5, "CHF", "-0.05", "-0.05" NBSP "CHF", "-0.05" },
    { 0, "GBP", "0.00", "£" NBSP "0.00", "0.00" },
    { -123456789, "USD", "-1" NBSP "234" NBSP "567.89", "$" NBSP "-1" NBSP "234" NBSP "567.89", "-1234567.89" },
    { 1234, "JPY", "1" NBSP "234", "¥" NBSP "1" NBSP "234", "1234" },
    { 123456, "KWD", "123.456", "123.456" NBSP "KWD", "123.456" },
    { 999, NULL, "9.99", "9.99", "9.99" },
    { GB_MONEY_UNKNOWN, "EUR", "–", "–", "" },
    { G_MAXINT64, "JPY", "9" NBSP "223" NBSP "372" NBSP "036" NBSP "854" NBSP "775" NBSP "807",
      "¥" NBSP "9" NBSP "223" NBSP "372" NBSP "036" NBSP "854" NBSP "775" NBSP "807", "9223372036854775807" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *shown = gb_money_format (cases[i].amount, cases[i].currency);
      g_autofree char *full = gb_money_format_full (cases[i].amount, cases[i].currency);
      g_autofree char *plain = gb_money_format_plain (cases[i].amount, cases[i].currency);

      g_assert_cmpstr (shown, ==, cases[i].shown);
      g_assert_cmpstr (full, ==, cases[i].full);
      g_assert_cmpstr (plain, ==, cases[i].plain);
    }
}

static void
test_entries (void)
{
  static const struct
  {
    const char *text, *currency;
    gint64 amount;
  } cases[] = {
    { "12", "EUR", 1200 },       { "12.50", "EUR", 1250 },     { "12,50", "EUR", 1250 },      { "€ 12.50", "EUR", 1250 },
    { "12.50 €", "EUR", 1250 },  { "€12", "EUR", 1200 },       { "12.50 EUR", "EUR", 1250 },  { "eur 12.50", "EUR", 1250 },
    { "2*12.50", "EUR", 2500 },  { "100/3", "EUR", 3333 },     { "2*12.50-5", "EUR", 2000 },  { "1 234.50", "EUR", 123450 },
    { "-4.99", "EUR", -499 },    { "1234", "JPY", 1234 },      { "1.5", "JPY", 2 },           { "1.2345", "KWD", 1235 },
    { "0", "EUR", 0 },           { "$ 3", "USD", 300 },        { "12.345", "EUR", 1235 },     { "12.50", NULL, 1250 },
    { "1 234,50 CHF", "CHF", 123450 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      gint64 amount = 0;

      if (!gb_money_parse (cases[i].text, cases[i].currency, &amount, &error))
        g_error ("%s", error->message);
      g_assert_cmpint (amount, ==, cases[i].amount);
    }
}

static void
test_refusals (void)
{
  static const char *const texts[] = { "",      "abc",   "12 USD", "$12",    "3 kg",     "12.50.1", "1e300", "99999999999999999999",
                                       "1/0",   "2+",    "EUR",    "€",      "\xff",     "50 mm",   "(",     "12 EUR EUR" };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (GError) error = NULL;
      gint64 amount;

      if (gb_money_parse (texts[i], "EUR", &amount, &error))
        g_error ("“%s” was read as %" G_GINT64_FORMAT, texts[i], amount);
      g_assert_true (error->domain == GB_QUANTITY_ERROR && g_utf8_validate (error->message, -1, NULL));
    }
}

static void
test_display_is_read_back (void)
{
  static const char *const currencies[] = { "EUR", "CHF", "JPY", "KWD", "CLF", NULL };

  for (int i = 0; i < 5000; i++)
    {
      const char *currency = currencies[g_test_rand_int_range (0, G_N_ELEMENTS (currencies))];
      gint64 amount = (gint64) g_test_rand_double_range (-1e12, 1e12);
      g_autofree char *full = gb_money_format_full (amount, currency);
      gint64 back = 0;

      g_assert_true (gb_money_parse (full, currency, &back, NULL));
      g_assert_cmpint (back, ==, amount);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/money/times", test_times);
  g_test_add_func ("/money/add", test_add);
  g_test_add_func ("/money/currencies", test_currencies);
  g_test_add_func ("/money/display", test_display);
  g_test_add_func ("/money/entries", test_entries);
  g_test_add_func ("/money/refusals", test_refusals);
  g_test_add_func ("/money/display-is-read-back", test_display_is_read_back);
  return g_test_run ();
}
