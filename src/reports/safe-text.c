/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-safe-text"

#include "safe-text.h"

#include <string.h>

/* TRUE for what acts as a formula once the apostrophes before it are gone. */
static gboolean
acts (const char *text)
{
  const char *start = text + strspn (text, "'");

  return *start != '\0' && strchr ("=+-@\t\r", *start) != NULL;
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
