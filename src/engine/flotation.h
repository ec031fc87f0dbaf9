/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/mesh.h"
#include "engine/rollup.h"

G_BEGIN_DECLS

/* Upright, level flotation: what the hulls carry at each draught, where the limit is, and how the boat with its loads stands
 * against it. Draught is measured from the lowest point of all hulls. */

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
  double freeboard;    /* from the water to the lowest open edge */
} GbHydrostatics;

typedef struct
{
  guint n_hulls;       /* with a shape */
  guint n_bad_hulls;   /* without one; see GbHullShape.trouble */
  double water_density;
  double keel, lowest_edge; /* z */
  double brim;              /* displacement with the water at the lowest edge */
  GbHydrostatics limit;     /* at the accepted least freeboard; displacement is the flotation limit. NAN where there is none */
  GbHydrostatics *curve;    /* from the keel to the lowest edge, evenly by draught */
  guint n_curve;

  double load_mass, load_sd; /* of the standard condition */
  double load_x, load_y, load_z;
  guint n_no_mass_loads;     /* loads without a mass */

  double light;  /* light craft, margin not in it */
  double margin;
  double total;    /* light craft + margin + loads; what the limit is set against */
  double total_sd;
  double total_x, total_y, total_z; /* margin at the light craft's centre */
  double left;     /* limit - total */
  double chance;   /* of passing the limit: normal distribution of the total with total_sd; 0 to 1; NAN without a limit */
  GbHydrostatics afloat; /* with that total aboard; volume etc. NAN if she sinks */
  gboolean sinks;        /* total is over what the hulls can carry */
} GbFlotation;

/* Fills @flotation anew. The standard condition is the first one of the build. */
void gb_flotation_find (GbFlotation *flotation, const GbBoat *boat, const GbHullSet *hulls, const GbRollup *rollup);
void gb_flotation_clear (GbFlotation *flotation);

/* All hulls together with the water at @z. */
GbHydrostatics gb_hydrostatics_at (const GbHullSet *hulls, double water_density, double z);
/* The water at which they displace @mass; z is NAN if they cannot. Newton's method with bisection as its guard. */
GbHydrostatics gb_hydrostatics_for (const GbHullSet *hulls, double water_density, double mass);

G_END_DECLS
