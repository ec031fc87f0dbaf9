/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-money"

#include "money.h"

#include "expression.h"
#include "quantity-private.h"
#include "quantity.h"

#include <float.h>
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define DASH "–"
#define NO_BREAK_SPACE "\302\240"
/* Beyond this a double no longer holds every whole number. */
#define LARGEST_EXACT 9007199254740992.0

gint64
gb_money_times (gint64 amount, double factor)
{
  gint64 product;
  double p;

  if (amount == GB_MONEY_UNKNOWN || !isfinite (factor))
    return GB_MONEY_UNKNOWN;
  if (factor == rint (factor) && fabs (factor) < LARGEST_EXACT)
    return __builtin_mul_overflow (amount, (gint64) factor, &product) ? GB_MONEY_UNKNOWN : product;
  p = (double) amount * factor;
  if (fabs (p) >= LARGEST_EXACT)
    return GB_MONEY_UNKNOWN;
  /* 1.005 is a hair less than that as a double; what is a half to within the error of the product counts as
   * one. */
  return (gint64) round (p * (1 + 4 * DBL_EPSILON));
}

gint64
gb_money_add (gint64 a, gint64 b)
{
  gint64 sum;

  if (a == GB_MONEY_UNKNOWN || b == GB_MONEY_UNKNOWN || __builtin_add_overflow (a, b, &sum))
    return GB_MONEY_UNKNOWN;
  return sum;
}

gboolean
gb_currency_is_valid (const char *currency)
{
  return currency != NULL && strlen (currency) == 3 && strspn (currency, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") == 3;
}

/* ISO 4217, those that do not have two decimals. */
int
gb_currency_exponent (const char *currency)
{
  static const char *const none[] = { "BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW", "PYG",
                                      "RWF", "UGX", "UYI", "VND", "VUV", "XAF", "XOF", "XPF", NULL };
  static const char *const three[] = { "BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND", NULL };
  static const char *const four[] = { "CLF", "UYW", NULL };

  if (currency == NULL)
    return 2;
  if (g_strv_contains (none, currency))
    return 0;
  if (g_strv_contains (three, currency))
    return 3;
  return g_strv_contains (four, currency) ? 4 : 2;
}

static gint64
minor_in_major (const char *currency)
{
  gint64 n = 1;

  for (int i = gb_currency_exponent (currency); i > 0; i--)
    n *= 10;
  return n;
}

/* Signs that stand for one currency wherever they are seen. */
static const char *
currency_sign (const char *currency)
{
  static const struct
  {
    const char *code, *sign;
  } signs[]
      = { { "EUR", "€" }, { "GBP", "£" }, { "USD", "$" }, { "JPY", "¥" }, { "INR", "₹" }, { "KRW", "₩" } };

  for (gsize i = 0; i < G_N_ELEMENTS (signs); i++)
    if (g_strcmp0 (signs[i].code, currency) == 0)
      return signs[i].sign;
  return NULL;
}

char *
gb_money_format_plain (gint64 amount, const char *currency)
{
  guint64 minor = (guint64) minor_in_major (currency);
  guint64 size;

  if (amount == GB_MONEY_UNKNOWN)
    return g_strdup ("");
  size = amount < 0 ? (guint64) -amount : (guint64) amount;
  if (minor == 1)
    return g_strdup_printf ("%s%" G_GUINT64_FORMAT, amount < 0 ? "-" : "", size);
  return g_strdup_printf ("%s%" G_GUINT64_FORMAT ".%0*" G_GUINT64_FORMAT, amount < 0 ? "-" : "", size / minor,
                          gb_currency_exponent (currency), size % minor);
}

/* A space that does not break after each group of three digits before the point. */
static char *
with_thousands (const char *plain)
{
  GString *text = g_string_new (NULL);
  gsize whole = strcspn (plain, ".");

  for (gsize i = 0; plain[i] != '\0'; i++)
    {
      if (i > 0 && i < whole && g_ascii_isdigit (plain[i - 1]) && (whole - i) % 3 == 0)
        g_string_append (text, NO_BREAK_SPACE);
      g_string_append_c (text, plain[i]);
    }
  return g_string_free (text, FALSE);
}

char *
gb_money_format (gint64 amount, const char *currency)
{
  g_autofree char *plain = NULL;
  g_autofree char *grouped = NULL;

  if (amount == GB_MONEY_UNKNOWN)
    return g_strdup (DASH);
  plain = gb_money_format_plain (amount, currency);
  grouped = with_thousands (plain);
  return gb_with_decimal_sign (grouped);
}

char *
gb_money_format_full (gint64 amount, const char *currency)
{
  g_autofree char *number = gb_money_format (amount, currency);
  const char *sign = currency_sign (currency);

  if (amount == GB_MONEY_UNKNOWN || currency == NULL)
    return g_steal_pointer (&number);
  if (sign != NULL)
    return g_strconcat (sign, NO_BREAK_SPACE, number, NULL);
  return g_strconcat (number, NO_BREAK_SPACE, currency, NULL);
}

/* @text without @word at its begin or end, whatever the case. */
static void
strip_word (char *text, const char *word)
{
  gsize n = strlen (word);
  gsize length = strlen (text);

  if (length > n && g_ascii_strncasecmp (text, word, n) == 0)
    memmove (text, text + n, length - n + 1);
  else if (length > n && g_ascii_strcasecmp (text + length - n, word) == 0)
    text[length - n] = '\0';
  g_strstrip (text);
}

char *
gb_money_strip (const char *text, const char *currency)
{
  char *sum = gb_entry_tidy (text);

  if (currency != NULL)
    strip_word (sum, currency);
  if (currency_sign (currency) != NULL)
    strip_word (sum, currency_sign (currency));
  return sum;
}

static gboolean
fail_for_currency (const char *text, const char *currency, GError **error)
{
  g_autofree char *quote = gb_entry_quote (text);

  g_set_error (error, GB_QUANTITY_ERROR, GB_QUANTITY_ERROR_SYNTAX,
               /* Translators: the second is a currency, such as EUR */
               _ ("“%s” is no sum of money in %s; enter a number, such as 12.50 or 2*12.50."), quote,
               currency != NULL ? currency : _ ("the build's currency"));
  return FALSE;
}

gboolean
gb_money_parse (const char *text, const char *currency, gint64 *amount, GError **error)
{
  g_autofree char *sum = NULL;
  g_autoptr (GError) reason = NULL;
  double value;

  if (!g_utf8_validate (text, -1, NULL))
    {
      g_set_error_literal (error, GB_QUANTITY_ERROR, GB_QUANTITY_ERROR_SYNTAX,
                           _ ("This text is not UTF-8; plain text is expected."));
      return FALSE;
    }
  sum = gb_money_strip (text, currency);
  if (!gb_quantity_parse (sum, GB_DIM_COUNT, GB_UNITS_METRIC, &value, &reason))
    {
      if (reason->code == GB_QUANTITY_ERROR_UNIT || reason->code == GB_QUANTITY_ERROR_DIMENSION
          || strpbrk (sum, "0123456789") == NULL)
        return fail_for_currency (text, currency, error);
      g_propagate_error (error, g_steal_pointer (&reason));
      return FALSE;
    }
  *amount = gb_money_times (minor_in_major (currency), value);
  if (*amount == GB_MONEY_UNKNOWN)
    {
      g_set_error_literal (error, GB_QUANTITY_ERROR, GB_QUANTITY_ERROR_RANGE,
                           _ ("This sum is beyond any small boat."));
      return FALSE;
    }
  return TRUE;
}
