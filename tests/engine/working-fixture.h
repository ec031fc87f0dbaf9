/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* A boat and her findings to write workings of. */

#include "engine/working.h"
#include "parts-fixture.h"

#include <string.h>

#define TODAY 740000

typedef struct
{
  GbBoat *boat;
  GbFindings *findings;
} Desk;

static inline Desk
new_desk (void)
{
  return (Desk){ gb_boat_new (), gb_findings_new () };
}

static inline void
desk_clear (Desk *desk)
{
  gb_boat_free (desk->boat);
  gb_findings_free (desk->findings);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Desk, desk_clear)

static inline void
find (Desk *desk)
{
  gb_boat_settle (desk->boat);
  gb_findings_find (desk->findings, desk->boat, GB_TOUCHED_ALL, TODAY);
}

static inline void
set_name (char **name, const char *text)
{
  g_free (*name);
  *name = g_strdup (text);
}

static inline void
assert_says (GbWorking *take_working, const char *first, ...)
{
  g_autoptr (GbWorking) working = take_working;
  g_autofree char *text = gb_working_to_text (working);
  va_list rest;

  va_start (rest, first);
  for (const char *words = first; words != NULL; words = va_arg (rest, const char *))
    if (strstr (text, words) == NULL)
      g_error ("'%s' is not in:\n%s", words, text);
  va_end (rest);
}
