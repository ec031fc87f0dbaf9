/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-safe-text"

#include "safe-text.h"

#include <string.h>

/* TRUE for what acts as a formula once the apostrophes and spaces before it are gone, which some programs
 * take off. So do the wide forms of the signs, in some countries. */
static gboolean
acts (const char *text)
{
  const char *start = text + strspn (text, "'");

  if (*start != '\0' && strchr ("\t\r\n", *start) != NULL)
    return TRUE;
  while (*start == '\'' || g_unichar_isspace (g_utf8_get_char (start)))
    start = g_utf8_next_char (start);
  return *start != '\0' && g_utf8_strchr ("=+-@＝＋－＠", -1, g_utf8_get_char (start)) != NULL;
}

char *
gb_text_make_safe (const char *text)
{
  return acts (text) ? g_strconcat ("'", text, NULL) : g_strdup (text);
}

const char *
gb_text_unmake_safe (const char *text)
{
  return *text == '\'' && acts (text) ? text + 1 : text;
}
