/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-findings"

#include "findings.h"

GbFindings *
gb_findings_new (void)
{
  return g_new0 (GbFindings, 1);
}

void
gb_findings_free (GbFindings *findings)
{
  if (findings == NULL)
    return;
  gb_hull_set_clear (&findings->hulls);
  gb_rollup_clear (&findings->rollup);
  gb_flotation_clear (&findings->flotation);
  gb_costs_clear (&findings->costs);
  g_free (findings);
}

void
gb_findings_find (GbFindings *findings, const GbBoat *boat, GbTouched touched, gint64 today)
{
  /* None yet, or none there: then there is nothing to keep. */
  if (touched & GB_TOUCHED_HULLS || findings->hulls.hulls == NULL)
    gb_hull_set_find (&findings->hulls, boat);
  if (touched & (GB_TOUCHED_HULLS | GB_TOUCHED_WEIGHTS) || findings->rollup.work == NULL)
    gb_rollup_find (&findings->rollup, boat, &findings->hulls, G_MAXINT64);
  gb_flotation_find (&findings->flotation, boat, &findings->hulls, &findings->rollup);
  gb_costs_find (&findings->costs, boat, &findings->rollup, today);
}
