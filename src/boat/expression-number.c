/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-expression"

#include "expression-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* A vulgar fraction sign at @p, such as ¾; 0 if there is none. Its decomposition is digits round a fraction
 * slash. */
static double
vulgar_fraction (const char *p, const char **end)
{
  gunichar parts[8];
  gunichar c = g_utf8_get_char (p);
  gsize n;
  double over = 0, under = 0;
  gboolean slash = FALSE;

  if (c < 0xbc || (c > 0xbe && c < 0x2150) || c > 0x215e)
    return 0;
  n = g_unichar_fully_decompose (c, TRUE, parts, G_N_ELEMENTS (parts));
  for (gsize i = 0; i < n; i++)
    if (parts[i] == 0x2044)
      slash = TRUE;
    else if (slash)
      under = 10 * under + g_unichar_digit_value (parts[i]);
    else
      over = 10 * over + g_unichar_digit_value (parts[i]);
  *end = g_utf8_next_char (p);
  return under > 0 ? over / under : 0;
}

gboolean
gb_starts_number (const char *p)
{
  const char *end;

  return g_ascii_isdigit (*p) || (*p == '.' && g_ascii_isdigit (p[1])) || vulgar_fraction (p, &end) > 0;
}

double
gb_slash_fraction (const char *p, const char **end)
{
  const char *slash = p + strspn (p, "0123456789");
  const char *stop;

  if (slash == p || *slash != '/')
    return -1;
  stop = slash + 1 + strspn (slash + 1, "0123456789");
  if (stop == slash + 1)
    return -1;
  *end = stop;
  return g_ascii_strtod (p, NULL) / g_ascii_strtod (slash + 1, NULL);
}

/* Digits, point and exponent. */
static double
read_decimal (GbReader *reader, gboolean *is_whole)
{
  const char *start = reader->at;
  const char *p = start + strspn (start, "0123456789");
  g_autofree char *digits = NULL;

  *is_whole = TRUE;
  if (*p == '.')
    {
      *is_whole = FALSE;
      p += 1 + strspn (p + 1, "0123456789");
    }
  if (*p == 'e' || *p == 'E')
    {
      const char *exponent = p + 1 + (p[1] == '+' || p[1] == '-');

      if (g_ascii_isdigit (*exponent))
        {
          *is_whole = FALSE;
          p = exponent + strspn (exponent, "0123456789");
        }
    }
  digits = g_strndup (start, (gsize) (p - start));
  reader->at = p;
  return g_ascii_strtod (digits, NULL);
}

gboolean
gb_reader_number (GbReader *reader, gboolean fractions, double *v)
{
  const char *end;
  double fraction = vulgar_fraction (reader->at, &end);
  gboolean is_whole;

  reader->n_numbers++;
  *v = 0;
  if (fraction == 0 && fractions && (fraction = gb_slash_fraction (reader->at, &end)) < 0)
    fraction = 0;
  if (fraction == 0)
    {
      *v = read_decimal (reader, &is_whole);
      if (*reader->at == '.')
        return gb_reader_fail (
            reader, GB_QUANTITY_ERROR_SYNTAX,
            _ ("A number has one decimal sign; leave out the marks between thousands, as in 1220.5."));
      if (is_whole && (fraction = vulgar_fraction (reader->at, &end)) == 0 && *reader->at == ' ')
        fraction = gb_slash_fraction (reader->at + 1, &end);
    }
  if (fraction > 0 && (fraction < 1 || *v == 0))
    {
      *v += fraction;
      reader->at = end;
      reader->has_fraction = TRUE;
    }
  return TRUE;
}
