/* SPDX-License-Identifier: GPL-3.0-or-later */

/* How the samples float: invented figures that hang together as far as a picture needs them. Only the edges
 * are the engine's own. */

#include "sample.h"

#include <math.h>

#define DEGREE (G_PI / 180)

static void
set_rest (
    GbAfloat *afloat, GbAfloatState state, double heel, double trim, double height, const GbEdgeSet *edges)
{
  afloat->state = state;
  afloat->heel = heel;
  afloat->trim = trim;
  afloat->attitude = gb_attitude (heel, trim, height);
  afloat->least = gb_edge_set_least (edges, afloat->attitude);
  afloat->keel = 0;
  afloat->aft_x = 0;
  afloat->fore_x = 2.4;
  afloat->draught_aft = height / afloat->attitude.up.z;
  afloat->draught_fore = (height - 2.4 * afloat->attitude.up.x) / afloat->attitude.up.z;
  afloat->draught_mid = (afloat->draught_aft + afloat->draught_fore) / 2;
  afloat->gravity = (GbVec3){ 1.08, 0.04, 0.47 };
  afloat->buoyancy = (GbVec3){ 1.07, 0.02, 0.11 };
  afloat->gm = 0.46;
}

static void
forget_rest (GbAfloat *afloat)
{
  afloat->attitude = gb_attitude (NAN, NAN, NAN);
  afloat->heel = afloat->trim = afloat->draught_aft = afloat->draught_mid = afloat->draught_fore = NAN;
  afloat->fore_x = afloat->aft_x = afloat->keel = afloat->gm = afloat->least.freeboard = NAN;
  afloat->least.line = -1;
  afloat->gravity = afloat->buoyancy = (GbVec3){ NAN, NAN, NAN };
}

static void
set_condition (Sample *sample, SampleKind kind)
{
  GbFindings *findings = &sample->findings;
  GbAfloat *afloat = g_new0 (GbAfloat, 1);

  findings->afloat = afloat;
  findings->n_afloat = 1;
  afloat->condition = gb_boat_n (sample->boat, GB_RECORD_CONDITION) > 0 ? 1 : 0;
  afloat->troubles = g_ptr_array_new_with_free_func (g_free);
  afloat->total = findings->flotation.total;
  afloat->limit = findings->flotation.limit.displacement;
  forget_rest (afloat);
  switch (kind)
    {
    case SAMPLE_PRAM:
      set_rest (afloat, GB_AFLOAT_FLOATS, 3 * DEGREE, -0.4 * DEGREE, 0.19, &findings->edges);
      break;
    case SAMPLE_OVER:
      set_rest (afloat, GB_AFLOAT_FILLS, 14 * DEGREE, 2 * DEGREE, 0.29, &findings->edges);
      afloat->sentence = g_strdup ("She fills: the edge of “Hull” is 1/2\" under water.");
      break;
    case SAMPLE_LARGE:
      afloat->state = GB_AFLOAT_SINKS;
      afloat->sentence = g_strdup ("She sinks: 1061 t aboard, 440 kg floats her.");
      break;
    default:
      afloat->state = GB_AFLOAT_UNKNOWN;
      afloat->sentence = g_strdup ("Nothing of her weight is known yet.");
    }
}

static void
set_lever (GbLever *lever, double heel, gboolean liquids)
{
  lever->heel = heel;
  lever->solid = 0.16 * sin (1.9 * heel) + 0.02 * sin (heel);
  lever->lever = lever->solid - (liquids ? 0.02 * sin (heel) : 0);
  lever->freeboard = 0.2 - 0.5 * fabs (sin (heel));
  lever->trim = 0;
  lever->attitude = gb_attitude (heel, 0, 0.2);
}

static GbRighting *
righting_new (const GbEdgeSet *edges, gboolean liquids)
{
  GbRighting *righting = g_new0 (GbRighting, 1);
  const GbRightingSide side = { .greatest = 0.162,
                                .greatest_at = 48 * DEGREE,
                                .vanishing = 96 * DEGREE,
                                .filling = liquids ? 24 * DEGREE : NAN,
                                .dry_greatest = liquids ? 0.1143 : 0.162,
                                .dry_greatest_at = (liquids ? 24 : 48) * DEGREE,
                                .area = 0.165,
                                .dry_area = liquids ? 0.025 : 0.165,
                                .steady = 8 * DEGREE };
  const GbEdgeImmersion immersion = { 0, 24 * DEGREE, 22 * DEGREE, 12 * DEGREE, NAN };
  const GbBalance balances[]
      = { { -96 * DEGREE, FALSE }, { 0, TRUE }, { 96 * DEGREE, FALSE }, { 180 * DEGREE, TRUE } };

  for (guint i = 0; i < GB_N_LEVERS; i++)
    set_lever (&righting->levers[i], ((double)i - 180) * DEGREE, liquids);
  righting->condition = 1;
  righting->gm = 0.31;
  righting->gm_solid = 0.33;
  righting->starboard = righting->port = side;
  righting->port.steady = NAN;
  righting->immersions = g_array_new (FALSE, FALSE, sizeof (GbEdgeImmersion));
  if (edges->lines->len > 0)
    g_array_append_val (righting->immersions, immersion);
  righting->balances = g_array_new (FALSE, FALSE, sizeof (GbBalance));
  g_array_append_vals (righting->balances, balances, G_N_ELEMENTS (balances));
  righting->moment = liquids ? 8 : NAN;
  righting->total = 177;
  return righting;
}

static GbCrewPlace
place_at (double x, double y)
{
  GbCrewPlace place = { GB_AFLOAT_FLOATS, 0.24 - 0.25 * fabs (y) - 0.06 * fabs (x - 1.1), 0, -30 * DEGREE * y,
                        2.5 * DEGREE * (x - 1.1) };

  if (place.freeboard < 0.11)
    place.state = GB_AFLOAT_OVER;
  return place;
}

static GbCrewMap *
crew_map_new (guint n_rows)
{
  GbCrewMap *map = g_new0 (GbCrewMap, 1);

  map->condition = map->load = 1;
  map->x0 = 0;
  map->x1 = 2.4;
  map->y0 = -0.6;
  map->y1 = 0.6;
  map->z = 0.52;
  map->n_rows_found = n_rows;
  for (guint row = 0; row < n_rows; row++)
    for (guint column = 0; column < GB_MAP_COLUMNS; column++)
      map->places[row][column]
          = place_at (2.4 * (column + 0.5) / GB_MAP_COLUMNS, -0.6 + 1.2 * (row + 0.5) / GB_MAP_ROWS);
  map->best = n_rows == GB_MAP_ROWS ? (GbVec3){ 1.1, 0, 0.52 } : (GbVec3){ NAN, NAN, NAN };
  map->best_freeboard = n_rows == GB_MAP_ROWS ? 0.24 : NAN;
  map->furthest_port = n_rows == GB_MAP_ROWS ? 0.16 : NAN;
  map->furthest_starboard = n_rows == GB_MAP_ROWS ? -0.16 : NAN;
  return map;
}

static GbSwamped *
swamped_new (gboolean sinks, const GbEdgeSet *edges)
{
  GbSwamped *swamped = g_new0 (GbSwamped, 1);
  GbSwampedRest *rest = &swamped->holding_on;

  swamped->condition = 1;
  swamped->holding = 2.0 / 15;
  *rest = (GbSwampedRest){
    GB_REST_FOUND, gb_attitude (4 * DEGREE, -3 * DEGREE, 0.41), 4 * DEGREE, -3 * DEGREE, 61, 48, NAN, 0.08
  };
  rest->edge = gb_edge_set_least (edges, rest->attitude).freeboard;
  if (sinks)
    *rest = (GbSwampedRest){ GB_REST_SINKS, gb_attitude (NAN, NAN, NAN), NAN, NAN, 31, 48, NAN, NAN };
  swamped->aboard = *rest;
  swamped->aboard.kind = GB_REST_SINKS;
  swamped->parts_volume = 0.04;
  swamped->n_no_volume = 2;
  swamped->no_volume_mass = 3.2;
  swamped->guesswork = sinks;
  swamped->foam_volume = sinks ? 0.0174 : 0;
  swamped->foam_mass = swamped->foam_volume * GB_FOAM_DENSITY;
  swamped->foam_density = GB_FOAM_DENSITY;
  swamped->foam_x = sinks ? 1.2 : NAN;
  swamped->foam_y = sinks ? 0 : NAN;
  swamped->foam_apart = sinks ? 0.5 : NAN;
  swamped->foam_lowest = sinks ? 0.25 : NAN;
  return swamped;
}

void
sample_set_afloat (Sample *sample, SampleKind kind)
{
  gb_edge_set_find (&sample->findings.edges, sample->boat, &sample->findings.hulls);
  set_condition (sample, kind);
  if (kind != SAMPLE_PRAM && kind != SAMPLE_OVER)
    return;
  sample->moved = 1;
  sample->righting = righting_new (&sample->findings.edges, kind == SAMPLE_OVER);
  sample->crew_map = crew_map_new (kind == SAMPLE_OVER ? 15 : GB_MAP_ROWS);
  sample->swamped = swamped_new (kind == SAMPLE_OVER, &sample->findings.edges);
}

void
sample_clear_afloat (Sample *sample)
{
  gb_edge_set_clear (&sample->findings.edges);
  for (guint i = 0; i < sample->findings.n_afloat; i++)
    gb_afloat_clear (&sample->findings.afloat[i]);
  g_free (sample->findings.afloat);
  g_clear_pointer (&sample->righting, gb_righting_free);
  g_clear_pointer (&sample->crew_map, gb_crew_map_free);
  g_clear_pointer (&sample->swamped, gb_swamped_free);
}
