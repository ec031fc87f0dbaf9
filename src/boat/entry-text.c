/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-entry"

#include "expression.h"

#include <string.h>

#define LONGEST_QUOTE 40

/* What is typed or pasted for the same sign. */
static const char *
plain_sign (gunichar c)
{
  switch (c)
    {
    case 0x2212: /* minus */
    case 0x2013: /* en dash */
    case 0x2011: /* hyphen that does not break */
      return "-";
    case 0x00d7: /* times */
    case 0x00b7: /* middle dot */
    case 0x22c5:
      return "*";
    case 0x00f7: /* divided by */
    case 0x2044: /* fraction slash */
    case 0x2215:
      return "/";
    case 0x2032: /* prime */
    case 0x2019: /* quotation mark */
    case 0x02b9:
      return "'";
    case 0x2033: /* double prime */
    case 0x201d: /* quotation mark */
    case 0x02ba:
      return "\"";
    case 0x03bc: /* Greek mu, for the micro sign */
      return "µ";
    case ',':
      return ".";
    default:
      return NULL;
    }
}

static void
append_tidy (GString *tidy, gunichar c)
{
  const char *plain = plain_sign (c);

  if (g_unichar_isspace (c))
    {
      if (tidy->len > 0 && tidy->str[tidy->len - 1] != ' ')
        g_string_append_c (tidy, ' ');
    }
  else if (plain != NULL)
    g_string_append (tidy, plain);
  else
    g_string_append_unichar (tidy, c);
}

/* TRUE for "234" in "1 234.50", but not in "1 234/500": exactly three digits that no fraction begins with. */
static gboolean
is_thousands_group (const char *p)
{
  return strspn (p, "0123456789") == 3 && p[3] != '/';
}

static void
join_thousands (GString *tidy)
{
  gsize out = 0;

  for (gsize i = 0; i < tidy->len; i++)
    if (!(tidy->str[i] == ' ' && i > 0 && g_ascii_isdigit (tidy->str[i - 1])
          && is_thousands_group (tidy->str + i + 1)))
      tidy->str[out++] = tidy->str[i];
  g_string_truncate (tidy, out);
}

char *
gb_entry_tidy (const char *text)
{
  GString *tidy = g_string_new (NULL);

  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    append_tidy (tidy, g_utf8_get_char (p));
  if (tidy->len > 0 && tidy->str[tidy->len - 1] == ' ')
    g_string_truncate (tidy, tidy->len - 1);
  g_string_replace (tidy, "''", "\"", 0);
  join_thousands (tidy);
  return g_string_free (tidy, FALSE);
}

char *
gb_entry_quote (const char *text)
{
  GString *quote = g_string_new (NULL);
  int n = 0;

  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p), n++)
    {
      gunichar c = g_utf8_get_char (p);

      if (n == LONGEST_QUOTE)
        {
          g_string_append (quote, "…");
          break;
        }
      g_string_append_unichar (quote, g_unichar_isprint (c) ? c : 0xfffd);
    }
  return g_string_free (quote, FALSE);
}
