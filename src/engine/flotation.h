/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/edges.h"
#include "engine/mesh.h"
#include "engine/rollup.h"

G_BEGIN_DECLS

/* Upright, level flotation: what the hulls carry at each draught, where the limit is, and how the boat with
 * its loads stands against it. Draught is measured from the lowest point of all hulls, freeboard to the
 * lowest open edge of all; closed hulls may go under. Where no hull is open, the freeboard is measured to the
 * top of the closed hull that goes under first. Hulls inside others have no part in any of it. */

typedef struct
{
  double z; /* of the water, in the boat's axes */
  double draught;
  double volume;
  double displacement; /* kg */
  double waterplane;   /* m2 */
  double per_cm;       /* kg for one centimetre of immersion */
  double lcb, tcb, vcb; /* centre of buoyancy in the boat's axes */
  double lcf;          /* centre of the waterplane */
  double freeboard;    /* from the water to the lowest edge; openings count in a GbFlotation's */
} GbHydrostatics;      /* centres are NAN where there is nothing to have one */

typedef struct
{
  guint n_hulls;       /* with a shape, and not inside another */
  guint n_bad_hulls;   /* without one; see GbHullShape.trouble */
  double water_density;
  double keel, lowest_edge; /* z */
  double brim;              /* displacement with the water at the lowest edge */
  GbHydrostatics limit;     /* at the accepted least freeboard; displacement is the flotation limit, 0 where
                               the hulls are not even as high as that. NAN where there is none */
  GbHydrostatics *curve;    /* from the keel to the lowest edge, evenly by draught */
  guint n_curve;

  double load_mass, load_sd; /* of the standard condition; those of one line are taken to err together */
  double load_x, load_y, load_z; /* centre of those that have a place */
  guint n_no_mass_loads;     /* loads without a mass */
  guint n_no_place_loads;    /* with a mass, without a place */

  double light;  /* light craft, margin not in it */
  double margin;
  double total;    /* light craft + margin + loads; what the limit is set against. NAN while nothing of the
                      light craft is known */
  double total_sd;
  double total_x, total_y, total_z; /* of what has a place; margin at the light craft's centre */
  double left;     /* limit - total */
  double chance;   /* of passing the limit: normal distribution of the total with total_sd; 0 to 1; NAN
                      without a limit */
  GbHydrostatics afloat; /* with that total aboard; volume etc. NAN if she sinks */
  gboolean sinks;        /* total is over what the hulls can carry: to the brim, or to the last top where
                            none is open */
} GbFlotation;

/* Fills @flotation anew; it starts as zeroes. The standard condition is the first one of the build. @edges:
 * all that must stay dry, openings with them. */
void gb_flotation_find (GbFlotation *flotation, const GbBoat *boat, const GbHullSet *hulls,
                        const GbEdgeSet *edges, const GbRollup *rollup);
void gb_flotation_clear (GbFlotation *flotation);

/* The chance that a normally distributed mass comes out over @limit. NAN if one of them is not known. */
double gb_chance_over (double limit, double mass, double sd);

/* All hulls together with the water at @z; those inside others are left out. */
GbHydrostatics gb_hydrostatics_at (const GbHullSet *hulls, double water_density, double z);
/* The water at which they displace @mass; z is NAN if they cannot. Newton's method with bisection as its
 * guard. */
GbHydrostatics gb_hydrostatics_for (const GbHullSet *hulls, double water_density, double mass);

G_END_DECLS
