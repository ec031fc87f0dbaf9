/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-findings"

#include "findings.h"

#include <math.h>

GbFindings *
gb_findings_new (void)
{
  return g_new0 (GbFindings, 1);
}

static void
clear_afloat (GbAfloat *afloat, guint n)
{
  for (guint i = 0; i < n; i++)
    gb_afloat_clear (&afloat[i]);
  g_free (afloat);
}

static void
clear_tests (GbFindings *findings)
{
  for (guint i = 0; i < findings->n_inclined; i++)
    gb_inclined_clear (&findings->inclined[i]);
  g_clear_pointer (&findings->inclined, g_free);
  findings->n_inclined = 0;
  for (guint i = 0; i < findings->n_tubbed; i++)
    gb_tubbed_clear (&findings->tubbed[i]);
  g_clear_pointer (&findings->tubbed, g_free);
  findings->n_tubbed = 0;
}

void
gb_findings_free (GbFindings *findings)
{
  if (findings == NULL)
    return;
  clear_tests (findings);
  clear_afloat (findings->afloat, findings->n_afloat);
  gb_edge_set_clear (&findings->edges);
  gb_hull_set_clear (&findings->hulls);
  gb_rollup_clear (&findings->rollup);
  gb_flotation_clear (&findings->flotation);
  gb_costs_clear (&findings->costs);
  g_free (findings);
}

const GbAfloat *
gb_findings_afloat (const GbFindings *findings, gint64 condition)
{
  for (guint i = 0; i < findings->n_afloat; i++)
    if (findings->afloat[i].condition == condition)
      return &findings->afloat[i];
  return NULL;
}

/* Afloat ------------------------------------------------------------------------------------------------ */

/* Leaning more than this, she could lie in a rest that she would not come to from upright; what is found
 * must follow from the boat alone, and not from the way that the edits took. */
#define NEAR_UPRIGHT (5 * G_PI / 180)

/* The last answer is near the next one. NULL where it would lead astray. */
static const GbAttitude *
good_start (const GbAfloat *last)
{
  if (last == NULL || !(last->gm > 0) || !(fabs (last->heel) < NEAR_UPRIGHT)
      || !(fabs (last->trim) < NEAR_UPRIGHT))
    return NULL;
  return &last->attitude;
}

static GbCase *
case_of (const GbFindings *findings, const GbBoat *boat, gint64 condition)
{
  return gb_case_new (boat, &findings->hulls, &findings->edges, &findings->rollup, &findings->flotation,
                      condition);
}

static void
find_condition (
    GbFindings *findings, const GbBoat *boat, gint64 condition, const GbAfloat *last, GbAfloat *afloat)
{
  g_autoptr (GbCase) self = case_of (findings, boat, condition);

  gb_afloat_find (afloat, self, good_start (last));
}

static void
find_afloat (GbFindings *findings, const GbBoat *boat, gboolean from_last)
{
  const GPtrArray *conditions = gb_boat_all (boat, GB_RECORD_CONDITION);
  guint n = MAX (conditions->len, 1);
  GbAfloat *afloat = g_new0 (GbAfloat, n);

  findings->worst = 0;
  for (guint i = 0; i < n; i++)
    {
      gint64 id = conditions->len > 0 ? ((const GbRecord *)conditions->pdata[i])->id : 0;

      find_condition (findings, boat, id, from_last ? gb_findings_afloat (findings, id) : NULL, &afloat[i]);
      if (gb_afloat_is_worse (&afloat[i], &afloat[findings->worst]))
        findings->worst = i;
    }
  clear_afloat (findings->afloat, findings->n_afloat);
  findings->afloat = afloat;
  findings->n_afloat = n;
}

static void
find_tests (GbFindings *findings, const GbBoat *boat)
{
  const GPtrArray *inclinings = gb_boat_all (boat, GB_RECORD_INCLINING);
  const GPtrArray *tubs = gb_boat_all (boat, GB_RECORD_TUB);

  clear_tests (findings);
  findings->inclined = g_new0 (GbInclined, inclinings->len);
  findings->n_inclined = inclinings->len;
  for (guint i = 0; i < inclinings->len; i++)
    {
      const GbInclining *test = inclinings->pdata[i];

      gb_inclined_find (&findings->inclined[i], boat, test, gb_findings_afloat (findings, test->condition));
    }
  findings->tubbed = g_new0 (GbTubbed, tubs->len);
  findings->n_tubbed = tubs->len;
  for (guint i = 0; i < tubs->len; i++)
    {
      const GbTub *tub = tubs->pdata[i];
      const GbAfloat *afloat = gb_findings_afloat (findings, tub->condition);
      g_autoptr (GbCase) self = afloat != NULL ? case_of (findings, boat, tub->condition) : NULL;

      gb_tubbed_find (&findings->tubbed[i], boat, tub, self, afloat);
    }
}

/* All
 * -------------------------------------------------------------------------------------------------------- */

static gboolean
same (double a, double b)
{
  return a == b || (isnan (a) && isnan (b));
}

/* What floats reads no more of the roll-up than this. */
static gboolean
same_light_craft (const GbRollup *rollup, const GbMass *boat, double margin)
{
  const GbMass *now = &rollup->boat;

  return same (now->mass, boat->mass) && same (now->mass_sd, boat->mass_sd) && same (now->x, boat->x)
         && same (now->y, boat->y) && same (now->z, boat->z) && same (rollup->margin.total, margin);
}

void
gb_findings_find (GbFindings *findings, const GbBoat *boat, GbTouched touched, gint64 today)
{
  GbMass light = findings->rollup.boat;
  double margin = findings->rollup.margin.total;
  /* None yet, or none there: then there is nothing to keep. */
  gboolean hulls = touched & GB_TOUCHED_HULLS || findings->hulls.hulls == NULL;
  gboolean afloat = touched & (GB_TOUCHED_HULLS | GB_TOUCHED_AFLOAT) || findings->afloat == NULL;

  if (hulls)
    gb_hull_set_find (&findings->hulls, boat);
  if (touched & (GB_TOUCHED_HULLS | GB_TOUCHED_WEIGHTS) || findings->rollup.work == NULL)
    gb_rollup_find (&findings->rollup, boat, &findings->hulls, G_MAXINT64);
  if (afloat)
    gb_edge_set_find (&findings->edges, boat, &findings->hulls);
  /* A part's price or name changes no weight. */
  if (afloat || !same_light_craft (&findings->rollup, &light, margin))
    {
      gb_flotation_find (&findings->flotation, boat, &findings->hulls, &findings->edges, &findings->rollup);
      find_afloat (findings, boat, touched != GB_TOUCHED_ALL);
      find_tests (findings, boat);
    }
  gb_costs_find (&findings->costs, boat, &findings->rollup, today);
}
