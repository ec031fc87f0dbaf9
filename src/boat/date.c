/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-date"

#include "quantity.h"

#include "expression.h"

#include <glib/gi18n-lib.h>
#include <langinfo.h>
#include <stdlib.h>
#include <string.h>

#define FIRST_YEAR 1900
#define LAST_YEAR 2199

char *
gb_date_format (gint64 julian)
{
  GDate date;

  if (julian <= 0 || julian > G_MAXUINT32 || !g_date_valid_julian ((guint32) julian))
    return g_strdup ("");
  g_date_clear (&date, 1);
  g_date_set_julian (&date, (guint32) julian);
  return g_strdup_printf ("%04d-%02d-%02d", g_date_get_year (&date), g_date_get_month (&date),
                          g_date_get_day (&date));
}

/* Three numbers with the same sign between them: a dash, a point, a stroke or spaces. */
static gboolean
split (const char *text, long numbers[3], char *sign)
{
  const char *p = text;

  *sign = '\0';
  for (int i = 0; i < 3; i++)
    {
      char *end;

      if (i > 0)
        {
          if (strchr ("-./ ", *p) == NULL || *p == '\0' || (*sign != '\0' && *p != *sign))
            return FALSE;
          *sign = *p;
          p += 1 + strspn (p + 1, " ");
        }
      if (!g_ascii_isdigit (*p) || strspn (p, "0123456789") > 4)
        return FALSE;
      numbers[i] = strtol (p, &end, 10);
      p = end;
    }
  return *p == '\0';
}

static gboolean
set_date (long year, long month, long day, gint64 *julian)
{
  GDate date;

  if (year < 100)
    year += 2000;
  if (year < FIRST_YEAR || year > LAST_YEAR || month < 1 || month > 12 || day < 1 || day > 31
      || !g_date_valid_dmy ((GDateDay) day, (GDateMonth) month, (GDateYear) year))
    return FALSE;
  g_date_clear (&date, 1);
  g_date_set_dmy (&date, (GDateDay) day, (GDateMonth) month, (GDateYear) year);
  *julian = g_date_get_julian (&date);
  return TRUE;
}

/* TRUE where the month is written before the day, as in the United States. */
static gboolean
month_first (void)
{
  const char *format = nl_langinfo (D_FMT);
  const char *month = strpbrk (format, "mbBhD");
  const char *day = strpbrk (format, "deF");

  return month != NULL && (day == NULL || month < day);
}

gboolean
gb_date_parse (const char *text, gint64 *julian, GError **error)
{
  g_autofree char *stripped = NULL;
  g_autofree char *quote = NULL;
  long n[3];
  char sign;

  if (!g_utf8_validate (text, -1, NULL))
    {
      g_set_error_literal (error, GB_QUANTITY_ERROR, GB_QUANTITY_ERROR_SYNTAX,
                           _ ("This text is not UTF-8; plain text is expected."));
      return FALSE;
    }
  stripped = g_strstrip (g_strdup (text));
  if (split (stripped, n, &sign))
    {
      if (strspn (stripped, "0123456789") == 4)
        {
          if (set_date (n[0], n[1], n[2], julian))
            return TRUE;
        }
      /* Points put the day first wherever they are used. A date that makes sense in one order only is taken
       * so. */
      else if (sign != '.' && month_first ())
        {
          if (set_date (n[2], n[0], n[1], julian) || set_date (n[2], n[1], n[0], julian))
            return TRUE;
        }
      else if (set_date (n[2], n[1], n[0], julian) || (sign != '.' && set_date (n[2], n[0], n[1], julian)))
        return TRUE;
    }
  quote = gb_entry_quote (stripped);
  g_set_error (error, GB_QUANTITY_ERROR, GB_QUANTITY_ERROR_SYNTAX,
               _ ("“%s” is no date from 1900 to 2199; enter year, month and day, as in 2025-03-31."), quote);
  return FALSE;
}
