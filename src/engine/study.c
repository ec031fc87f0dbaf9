/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-study"

#include "study.h"

GbStudy *
gb_study_find (const GbBoat *boat,
               const GbFindings *findings,
               gint64 condition,
               GbCancelFunc is_cancelled,
               gpointer data)
{
  g_autoptr (GbStudy) study = g_new0 (GbStudy, 1);
  g_autoptr (GbCase) self = gb_case_new (boat, &findings->hulls, &findings->edges, &findings->rollup,
                                         &findings->flotation, condition);

  study->condition = condition;
  if (self == NULL)
    return g_steal_pointer (&study);
  study->righting = gb_righting_find (self, is_cancelled, data);
  if (is_cancelled != NULL && is_cancelled (data))
    return NULL;
  study->swamped = gb_swamped_find (boat, &findings->hulls, &findings->edges, &findings->rollup,
                                    &findings->flotation, condition, is_cancelled, data);
  if (is_cancelled != NULL && is_cancelled (data))
    return NULL;
  study->rule = gb_rule_find (boat, &findings->hulls, &findings->edges, &findings->rollup,
                              &findings->flotation, condition);
  return g_steal_pointer (&study);
}

void
gb_study_free (GbStudy *study)
{
  if (study == NULL)
    return;
  gb_righting_free (study->righting);
  gb_swamped_free (study->swamped);
  gb_rule_free (study->rule);
  g_free (study);
}

GPtrArray *
gb_studies_find (const GbBoat *boat, const GbFindings *findings, GbCancelFunc is_cancelled, gpointer data)
{
  g_autoptr (GPtrArray) studies = g_ptr_array_new_with_free_func ((GDestroyNotify)gb_study_free);

  for (guint i = 0; i < findings->n_afloat; i++)
    {
      GbStudy *study = gb_study_find (boat, findings, findings->afloat[i].condition, is_cancelled, data);

      if (study == NULL)
        return NULL;
      g_ptr_array_add (studies, study);
    }
  return g_steal_pointer (&studies);
}
