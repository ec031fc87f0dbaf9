/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

/* What several charts of floating take out of their source alike. */

#include "chart-private.h"
#include "engine/loads.h"

#include <math.h>

const GbAfloat *
gb_source_afloat (const GbChartSource *source)
{
  const GbFindings *findings = source->findings;

  if (source->afloat != NULL)
    return source->afloat;
  if (source->condition == 0)
    return findings->n_afloat > 0 ? &findings->afloat[0] : NULL;
  return gb_findings_afloat (findings, source->condition);
}

const GbCondition *
gb_source_condition (const GbChartSource *source)
{
  const GPtrArray *all = gb_boat_roots (source->boat, GB_RECORD_CONDITION);

  if (source->condition != 0)
    return (const GbCondition *)gb_boat_get (source->boat, GB_RECORD_CONDITION, source->condition);
  return all->len > 0 ? g_ptr_array_index (all, 0) : NULL;
}

GbVec3
gb_source_load_centre (const GbChartSource *source, const GbLoad *load)
{
  GbVec3 to = source->moved_to;
  gboolean is_moved = source->moved != 0 && source->moved == load->rec.id;

  return is_moved && isfinite (to.x) && isfinite (to.y) && isfinite (to.z) ? to : gb_load_centre (load);
}
