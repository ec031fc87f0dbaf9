/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "words.h"
#include "boat/money.h"
#include "boat/quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>

void
gb_say (GString *text, const char *format, ...)
{
  va_list args;

  if (text->len > 0)
    g_string_append_c (text, ' ');
  va_start (args, format);
  g_string_append_vprintf (text, format, args);
  va_end (args);
}

void
gb_say_no_mass (GString *text, guint n)
{
  if (n > 0)
    gb_say (text,
            ngettext ("%u part has no mass yet and is not counted.",
                      "%u parts have no mass yet and are not counted.", n),
            n);
}

void
gb_say_no_price (GString *text, guint n)
{
  if (n > 0)
    gb_say (text,
            ngettext ("%u thing still to buy has no price and is not counted.",
                      "%u things still to buy have no price and are not counted.", n),
            n);
}

double
gb_money_value (gint64 amount)
{
  return amount == GB_MONEY_UNKNOWN ? NAN : (double)amount;
}

char *
gb_money_words (double value, const char *currency)
{
  return gb_money_format_full (isfinite (value) ? llround (value) : GB_MONEY_UNKNOWN, currency);
}

char *
gb_percent_words (double share)
{
  double percent = round (share * 100);

  if (!isfinite (share))
    return g_strdup ("–");
  if (share > 0 && percent < 1)
    return g_strdup (_ ("under 1 %"));
  if (share < 1 && percent > 99)
    return g_strdup (_ ("over 99 %"));
  /* Translators: a share in per cent */
  return g_strdup_printf (_ ("%.0f %%"), percent);
}

/* Radians beyond which there is no angle. */
#define MOST_ANGLE 100.0

char *
gb_angle_words (double angle, int decimals)
{
  if (!(fabs (angle) <= MOST_ANGLE))
    return g_strdup ("–");
  /* Translators: an angle in degrees */
  return g_strdup_printf (_ ("%.*f°"), decimals, fabs (angle) * 180 / G_PI);
}
