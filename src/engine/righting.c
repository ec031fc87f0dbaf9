/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-righting"

/* The curve itself: each degree is found from its neighbour, from the rest nearest upright outward. */

#include "righting-private.h"

#include "mesh-private.h"

gboolean
gb_righting_cancelled (const GbRightingWork *work)
{
  return work->is_cancelled != NULL && work->is_cancelled (work->data);
}

/* What the lever is more with liquids frozen: their centre does not move to the lower side. */
static double
gain_by_freezing (const GbRightingWork *work, GbAttitude attitude)
{
  GbFloatSums sums;
  GbVec3 by;

  if (work->floater->tanks->len == 0)
    return 0;
  gb_floater_sums (work->floater, attitude, &sums);
  by = vec3_sub (work->frozen, sums.gravity);
  return by.y * attitude.up.z - by.z * attitude.up.y;
}

GbLever
gb_righting_lever_at (const GbRightingWork *work, double heel, GbAttitude nearby)
{
  GbAttitude start = gb_attitude (heel, gb_attitude_trim (nearby), nearby.height);
  GbRest rest = gb_floater_rest (work->floater, start, GB_HOLD_HEEL, NULL, NULL);
  GbLever lever = { heel, NAN, NAN, NAN, NAN, rest.attitude };

  if (rest.kind != GB_REST_FOUND)
    return lever;
  lever.lever = gb_floater_lever (work->floater, rest.attitude);
  lever.solid = lever.lever + gain_by_freezing (work, rest.attitude);
  lever.trim = gb_attitude_trim (rest.attitude);
  lever.freeboard = gb_edge_set_least (gb_case_edges (work->self), rest.attitude).freeboard;
  return lever;
}

const GbLever *
gb_righting_nearest (const GbRighting *righting, double heel)
{
  return &righting->levers[CLAMP ((int)lround (heel / GB_DEGREE) + GB_UPRIGHT, 0, GB_N_LEVERS - 1)];
}

/* Fills the curve from the lever at @from on to its end, by @step. FALSE if cancelled. */
static gboolean
follow (GbRightingWork *work, int from, int step)
{
  GbAttitude nearby = work->rest;

  for (int i = from; i >= 0 && i < GB_N_LEVERS; i += step)
    {
      GbLever *lever = &work->righting->levers[i];

      if (i % 8 == 0 && gb_righting_cancelled (work))
        return FALSE;
      *lever = gb_righting_lever_at (work, (i - GB_UPRIGHT) * GB_DEGREE, nearby);
      if (!isnan (lever->lever))
        nearby = lever->attitude;
    }
  return TRUE;
}

/* FALSE if cancelled. */
static gboolean
find_all (GbRightingWork *work)
{
  int middle = (int)lround (work->rest_heel / GB_DEGREE) + GB_UPRIGHT;

  if (!follow (work, middle, 1) || !follow (work, middle - 1, -1))
    return FALSE;
  gb_righting_find_balances (work);
  gb_righting_find_side (work, 1, &work->righting->starboard);
  gb_righting_find_side (work, -1, &work->righting->port);
  if (gb_righting_cancelled (work))
    return FALSE;
  gb_righting_find_immersions (work);
  gb_righting_find_filling (work, 1, &work->righting->starboard);
  gb_righting_find_filling (work, -1, &work->righting->port);
  return !gb_righting_cancelled (work);
}

/* FALSE if she does not float. */
static gboolean
find_rest (GbRightingWork *work)
{
  g_auto (GbAfloat) afloat = { 0 };
  GbFloatSums sums;

  gb_afloat_find (&afloat, work->self, NULL);
  if (isnan (afloat.heel))
    return FALSE;
  work->rest = afloat.attitude;
  work->rest_heel = afloat.heel;
  work->gm = afloat.gm;
  work->gm_solid = afloat.gm + afloat.free_surface;
  gb_floater_sums (work->floater, work->rest, &sums);
  work->mass = sums.mass;
  work->frozen = sums.gravity;
  return TRUE;
}

GbRighting *
gb_righting_find (const GbCase *self, GbCancelFunc is_cancelled, gpointer data)
{
  g_autoptr (GbRighting) righting = NULL;
  GbRightingWork work
      = { .self = self, .floater = gb_case_floater (self), .is_cancelled = is_cancelled, .data = data };

  if (!find_rest (&work))
    return NULL;
  righting = g_new0 (GbRighting, 1);
  righting->condition = gb_case_condition (self);
  righting->moment = gb_case_heeling_moment (self);
  righting->total = work.mass;
  righting->gm = work.gm;
  righting->gm_solid = work.gm_solid;
  righting->immersions = g_array_new (FALSE, FALSE, sizeof (GbEdgeImmersion));
  righting->balances = g_array_new (FALSE, FALSE, sizeof (GbBalance));
  work.righting = righting;
  return find_all (&work) ? g_steal_pointer (&righting) : NULL;
}

void
gb_righting_free (GbRighting *righting)
{
  if (righting == NULL)
    return;
  g_array_unref (righting->immersions);
  g_array_unref (righting->balances);
  g_free (righting);
}
