/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-swamped"

#include "swamped-private.h"

#include "rollup.h"

/* Share of their weight that people in the water hang on her, where the condition does not say: 33 CFR
 * 183.105(a)(1) loads the swamped boat with 2/15 of the persons capacity. */
#define HOLDING (2.0 / 15)

static const GbSwampedRest no_rest
    = { GB_REST_NONE, { { NAN, NAN, NAN }, NAN }, NAN, NAN, NAN, NAN, NAN, NAN };

static gboolean
is_wanted_no_more (GbCancelFunc is_cancelled, gpointer data)
{
  return is_cancelled != NULL && is_cancelled (data);
}

static double
holding_share (const GbBoat *boat, gint64 condition)
{
  const GbCondition *record = (const GbCondition *) gb_boat_get (boat, GB_RECORD_CONDITION, condition);

  return record != NULL && record->holding >= 0 && isfinite (record->holding) ? record->holding : HOLDING;
}

/* Level. Where nothing has an edge, the top of the hull that goes under first; NAN without any hull. */
static double
lowest_edge (const GbEdgeSet *edges, const GbHullSet *hulls)
{
  double edge = gb_edge_set_least (edges, gb_attitude (0, 0, 0)).freeboard, top = NAN;

  for (guint i = 0; i < hulls->n_hulls; i++)
    if (!hulls->hulls[i].inside)
      top = fmin (top, hulls->hulls[i].top);
  return isnan (edge) ? top : edge;
}

/* The weights of the case on what carries when she is full of water. */
static GbFloater *
without_hulls (const GbCase *self)
{
  GbFloater *floater = gb_floater_copy (gb_case_floater (self));

  g_array_set_size (floater->hulls, 0);
  return floater;
}

/* People let go of their seats and hold on, right where they sat, as high as her edge. */
static void
into_the_water (GbFloater *floater, const GbCase *self, double share, double edge)
{
  for (guint i = 0; i < self->loads->len; i++)
    {
      const GbCaseLoad *load = &g_array_index (self->loads, GbCaseLoad, i);
      GbVec3 hand = load->at;

      if (load->kind != GB_LOAD_PERSON || isnan (load->weight))
        continue;
      if (!isnan (edge))
        hand.z = edge;
      gb_floater_add_mass (floater, -load->weight, load->at);
      gb_floater_add_mass (floater, share * load->weight, hand);
    }
}

static GbSwampedRest
find_rest (const GbFloater *floater, const GbEdgeSet *edges, double edge)
{
  GbRest rest = gb_floater_rest (floater, gb_attitude (0, 0, edge), GB_HOLD_NOTHING, NULL, NULL);
  GbSwampedRest found = no_rest;
  GbFloatPoint point;
  GbFloatFrame frame;
  double size;

  found.kind = rest.kind;
  found.most = gb_floater_most (floater, &size);
  gb_float_point_find (&point, floater, rest.attitude, 0);
  found.weight = point.mass;
  /* Where nothing of her carries she goes down all the same. */
  if (rest.kind == GB_REST_NONE && found.most < found.weight)
    found.kind = GB_REST_SINKS;
  if (rest.kind != GB_REST_FOUND)
    return found;
  gb_float_frame (&point, &frame);
  found.attitude = rest.attitude;
  found.heel = gb_attitude_heel (rest.attitude);
  found.trim = gb_attitude_trim (rest.attitude);
  found.edge = gb_edge_set_least (edges, rest.attitude).freeboard;
  found.gm = frame.bends[1] / point.mass;
  return found;
}

static double
volume_of (const GArray *carriers)
{
  double volume = 0;

  for (guint i = 0; i < carriers->len; i++)
    volume += gb_body_volume (g_array_index (carriers, GbCarrier, i).body);
  return volume;
}

static GbSwamped *
swamped_new (gint64 condition, double holding)
{
  GbSwamped *swamped = g_new (GbSwamped, 1);

  *swamped = (GbSwamped){
    .condition = condition,
    .holding = holding,
    .aboard = no_rest,
    .holding_on = no_rest,
    .foam_volume = NAN,
    .foam_mass = NAN,
    .foam_density = GB_FOAM_DENSITY,
    .foam_x = NAN,
    .foam_y = NAN,
    .foam_apart = NAN,
    .foam_lowest = NAN,
  };
  return swamped;
}

/* With more than this share of her carrying nothing only because its density is not known, what sinks her
 * may be that. */
#define MUCH 0.1

GbSwamped *
gb_swamped_find (const GbBoat *boat,
                 const GbHullSet *hulls,
                 const GbEdgeSet *edges,
                 const GbRollup *rollup,
                 const GbFlotation *flotation,
                 gint64 condition,
                 GbCancelFunc is_cancelled,
                 gpointer data)
{
  g_autoptr (GbCase) self = gb_case_new (boat, hulls, edges, rollup, flotation, condition);
  g_autoptr (GbSwamped) swamped = swamped_new (condition, holding_share (boat, condition));
  g_autoptr (GbFloater) floater = NULL;
  g_autoptr (GArray) carriers = NULL;
  double edge = lowest_edge (edges, hulls);

  if (self == NULL)
    return NULL;
  floater = without_hulls (self);
  carriers = gb_carriers_find (boat, hulls, floater);
  swamped->hulls_volume = volume_of (carriers);
  if (!gb_swamped_add_parts (swamped, floater, carriers, boat, rollup, is_cancelled, data))
    return NULL;
  swamped->aboard = find_rest (floater, edges, edge);
  if (is_wanted_no_more (is_cancelled, data))
    return NULL;
  into_the_water (floater, self, swamped->holding, edge);
  swamped->holding_on = find_rest (floater, edges, edge);
  if (is_wanted_no_more (is_cancelled, data))
    return NULL;
  swamped->guesswork = swamped->n_no_volume > 0 && !(swamped->no_volume_mass <= MUCH * flotation->light);
  gb_swamped_find_foam (swamped, &(GbFoamCase){ floater, self, carriers, edge });
  return g_steal_pointer (&swamped);
}

void
gb_swamped_free (GbSwamped *swamped)
{
  if (swamped == NULL)
    return;
  g_free (swamped->foam_trouble);
  g_free (swamped);
}
