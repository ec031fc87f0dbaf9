/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-flotation"

#include "flotation.h"

#include "body.h"
#include "loads.h"
#include "water.h"

#include <math.h>

/* Each point of the curve is a cut through each hull: for one of 5,000 triangles all of them together take half a
 * millisecond, at each edit. */
#define N_CURVE 41

static GbHydrostatics
no_hydrostatics (void)
{
  return (GbHydrostatics){ NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN };
}

/* A hull inside another carries nothing as long as that one is dry. */
static gboolean
carries (const GbHullShape *shape)
{
  return shape->body != NULL && !shape->inside;
}

/* Where all hulls together begin and end. NAN where there are none. */
typedef struct
{
  double keel;
  double edge; /* the lowest open edge; where none is open, the lowest top */
  double top;  /* the highest */
  gboolean open;
} Heights;

static Heights
heights_of (const GbHullSet *hulls)
{
  Heights heights = { NAN, NAN, NAN, FALSE };
  double lowest_top = NAN;

  for (guint i = 0; i < hulls->n_hulls; i++)
    {
      const GbHullShape *shape = &hulls->hulls[i];

      if (!carries (shape))
        continue;
      /* fmin and fmax pass over what is NAN. */
      heights.keel = fmin (heights.keel, shape->keel);
      heights.edge = fmin (heights.edge, shape->lowest_edge);
      heights.top = fmax (heights.top, shape->top);
      lowest_top = fmin (lowest_top, shape->top);
    }
  heights.open = !isnan (heights.edge);
  if (!heights.open)
    heights.edge = lowest_top;
  return heights;
}

/* Hulls' edges are among @edges, and openings with them. */
static void
take_openings (Heights *heights, const GbEdgeSet *edges)
{
  double lowest = gb_edge_set_least (edges, gb_attitude (0, 0, 0)).freeboard;

  if (isnan (lowest) || isnan (heights->keel))
    return;
  heights->edge = lowest;
  heights->open = TRUE;
}

static GbImmersion
immersed_at (const GbHullSet *hulls, double z)
{
  const GbVec3 up = { 0, 0, 1 };
  GbImmersion in = { .volume = 0 };

  for (guint i = 0; i < hulls->n_hulls; i++)
    {
      const GbHullShape *shape = &hulls->hulls[i];

      if (!carries (shape))
        continue;
      gb_body_immerse (shape->body, FALSE, up, z, &in);
      if (shape->mirrored != NULL)
        gb_body_immerse (shape->body, TRUE, up, z, &in);
    }
  return in;
}

GbHydrostatics
gb_hydrostatics_at (const GbHullSet *hulls, double water_density, double z)
{
  Heights heights = heights_of (hulls);
  GbImmersion in;

  if (isnan (heights.keel) || isnan (z))
    return no_hydrostatics ();
  in = immersed_at (hulls, z);
  /* Nothing over nothing is NAN, as it should be. */
  return (GbHydrostatics){
    .z = z,
    .draught = z - heights.keel,
    .volume = in.volume,
    .displacement = in.volume * water_density,
    .waterplane = in.plane,
    .per_cm = in.plane * water_density * 0.01,
    .lcb = in.moment.x / in.volume,
    .tcb = in.moment.y / in.volume,
    .vcb = in.moment.z / in.volume,
    .lcf = in.plane_moment.x / in.plane,
    .freeboard = heights.edge - z,
  };
}

GbHydrostatics
gb_hydrostatics_for (const GbHullSet *hulls, double water_density, double mass)
{
  Heights heights = heights_of (hulls);
  double low = heights.keel, high = heights.top, z;
  GbHydrostatics at = gb_hydrostatics_at (hulls, water_density, high);

  if (!(mass >= 0 && mass <= at.displacement))
    return no_hydrostatics ();
  z = low + (high - low) * mass / at.displacement;
  for (guint i = 0; i < 100; i++)
    {
      double error;

      at = gb_hydrostatics_at (hulls, water_density, z);
      error = at.displacement - mass;
      if (fabs (error) <= 1e-12 * mass)
        break;
      if (error > 0)
        high = z;
      else
        low = z;
      z -= error / (water_density * at.waterplane);
      if (!(z > low && z < high))
        z = low + (high - low) / 2;
    }
  return at;
}

/* The freeboard is that of the lowest of all edges. */
static GbHydrostatics
to_edge (GbHydrostatics at, const Heights *heights)
{
  at.freeboard = heights->edge - at.z;
  return at;
}

static void
find_limit (GbFlotation *flotation, const GbHullSet *hulls, const Heights *heights, double freeboard)
{
  double density = flotation->water_density;

  flotation->brim = gb_hydrostatics_at (hulls, density, heights->edge).displacement;
  flotation->limit = to_edge (gb_hydrostatics_at (hulls, density, heights->edge - freeboard), heights);
  if (flotation->limit.z < heights->keel)
    flotation->limit = to_edge (gb_hydrostatics_at (hulls, density, heights->keel), heights);
  if (isnan (heights->keel))
    return;
  flotation->n_curve = N_CURVE;
  for (guint i = 0; i < N_CURVE; i++)
    {
      double share = i / (N_CURVE - 1.0), z = (1 - share) * heights->keel + share * heights->edge;

      flotation->curve[i] = to_edge (gb_hydrostatics_at (hulls, density, z), heights);
    }
}

/* A sum of masses with their moments, as far as they have a place. */
typedef struct
{
  double placed, x, y, z;
} Moments;

static void
add_moments (Moments *moments, double mass, double x, double y, double z)
{
  if (!isfinite (mass * x) || !isfinite (mass * y) || !isfinite (mass * z))
    return;
  moments->placed += mass;
  moments->x += mass * x;
  moments->y += mass * y;
  moments->z += mass * z;
}

static Moments
find_loads (GbFlotation *flotation, const GbBoat *boat)
{
  const GPtrArray *conditions = gb_boat_roots (boat, GB_RECORD_CONDITION);
  /* No condition, no loads. */
  const GPtrArray *loads = conditions->len > 0 ? gb_record_children (conditions->pdata[0]) : conditions;
  Moments moments = { 0, 0, 0, 0 };
  double variance = 0;

  for (guint i = 0; i < loads->len; i++)
    {
      const GbLoad *load = loads->pdata[i];
      double mass = gb_load_weight (load), sd = mass * gb_load_spread (load);
      GbVec3 centre = gb_load_centre (load);

      if (isnan (mass))
        {
          flotation->n_no_mass_loads++;
          continue;
        }
      flotation->load_mass += mass;
      variance += sd * sd;
      if (mass != 0 && (isnan (centre.x) || isnan (centre.y) || isnan (centre.z)))
        flotation->n_no_place_loads++;
      add_moments (&moments, mass, centre.x, centre.y, centre.z);
    }
  flotation->load_sd = sqrt (variance);
  flotation->load_x = moments.x / moments.placed;
  flotation->load_y = moments.y / moments.placed;
  flotation->load_z = moments.z / moments.placed;
  return moments;
}

static void
find_total (GbFlotation *flotation, const GbRollup *rollup, Moments moments)
{
  const GbMass *light = &rollup->boat;

  flotation->light = light->mass > 0 ? light->mass : NAN;
  flotation->margin = rollup->margin.total;
  flotation->total = flotation->light + flotation->margin + flotation->load_mass;
  flotation->total_sd = hypot (light->mass_sd, flotation->load_sd);
  if (isnan (flotation->total))
    moments = (Moments){ 0, 0, 0, 0 };
  add_moments (&moments, flotation->light + flotation->margin, light->x, light->y, light->z);
  flotation->total_x = moments.x / moments.placed;
  flotation->total_y = moments.y / moments.placed;
  flotation->total_z = moments.z / moments.placed;
}

double
gb_chance_over (double limit, double mass, double sd)
{
  if (isnan (limit) || isnan (mass) || isnan (sd))
    return NAN;
  if (!(sd > 0))
    return mass > limit ? 1 : 0;
  return erfc ((limit - mass) / (sd * G_SQRT2)) / 2;
}

static void
find_afloat (GbFlotation *flotation, const GbHullSet *hulls, const Heights *heights)
{
  double most = heights->open
                    ? flotation->brim
                    : gb_hydrostatics_at (hulls, flotation->water_density, heights->top).displacement;

  flotation->left = flotation->limit.displacement - flotation->total;
  flotation->chance = gb_chance_over (flotation->limit.displacement, flotation->total, flotation->total_sd);
  flotation->sinks = flotation->total > most;
  flotation->afloat = flotation->sinks
                          ? no_hydrostatics ()
                          : to_edge (gb_hydrostatics_for (hulls, flotation->water_density, flotation->total), heights);
}

void
gb_flotation_find (GbFlotation *flotation,
                   const GbBoat *boat,
                   const GbHullSet *hulls,
                   const GbEdgeSet *edges,
                   const GbRollup *rollup)
{
  const GbBuild *build = gb_boat_build (boat);
  Heights heights = heights_of (hulls);
  GbHydrostatics *curve = flotation->curve != NULL ? flotation->curve : g_new (GbHydrostatics, N_CURVE);
  Moments moments;

  take_openings (&heights, edges);
  *flotation = (GbFlotation){
    .water_density = gb_build_water_density (build),
    .keel = heights.keel,
    .lowest_edge = heights.edge,
    .curve = curve,
  };
  for (guint i = 0; i < hulls->n_hulls; i++)
    {
      flotation->n_hulls += carries (&hulls->hulls[i]);
      flotation->n_bad_hulls += hulls->hulls[i].body == NULL;
    }
  find_limit (flotation, hulls, &heights, build->freeboard);
  moments = find_loads (flotation, boat);
  find_total (flotation, rollup, moments);
  find_afloat (flotation, hulls, &heights);
}

void
gb_flotation_clear (GbFlotation *flotation)
{
  g_clear_pointer (&flotation->curve, g_free);
  flotation->n_curve = 0;
}
