/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-findings"

#include "findings.h"

#include <glib/gi18n-lib.h>

char *
gb_condition_dup_name (const GbBoat *boat, gint64 condition)
{
  const GbRecord *record = gb_boat_get (boat, GB_RECORD_CONDITION, condition);

  return record != NULL ? gb_record_dup_title (record) : g_strdup (_ ("Nobody aboard"));
}
