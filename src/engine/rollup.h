/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/boat.h"
#include "engine/mesh.h"

G_BEGIN_DECLS

/* The roll-up: mass, centre, inertia and their spread for every part, every group and the boat.
 *
 * (The method stands at the top of rollup.c: each group gathers (mass, moments) in its own axes; copies, pairs, turns and shifts are one
 * linear map on those four numbers, so errors that copies share stay shared; errors of one material are gathered as one vector
 * per material and squared only at the end; the rest adds as variances.) */

typedef enum
{
  GB_TROUBLE_NONE,
  GB_TROUBLE_NO_MATERIAL,
  GB_TROUBLE_NO_DENSITY, /* the material has no figure of the sort that the take-off needs */
  GB_TROUBLE_NO_SIZE,    /* a size is missing */
  GB_TROUBLE_BAD_SIZE,   /* sizes that cannot be: a wall thicker than the tube */
  GB_TROUBLE_BAD_OUTLINE,
  GB_TROUBLE_NO_HULL,
  GB_TROUBLE_BAD_HULL, /* the hull's stations cross or do not close */
  GB_TROUBLE_NO_SURFACE, /* nothing to coat, or a coating of itself */
  GB_TROUBLE_NO_MASS,
} GbTrouble;

/* A sentence that says what is missing and where to enter it; "" for none. Translated, static. */
const char *gb_trouble_sentence (GbTrouble trouble);

typedef struct
{
  double xx, yy, zz, xy, yz, zx; /* integral of (y2+z2), (z2+x2), (x2+y2), and of xy, yz, zx; kg m2 */
} GbInertia;

typedef enum
{
  GB_AS_ESTIMATED,
  GB_AS_CALCULATED,
  GB_AS_WEIGHED,
  GB_N_AS
} GbAs;

typedef struct
{
  double mass;        /* of all of them: quantity and pair included; what a scale says where one said something. NAN: unknown */
  double unit_mass;   /* of one */
  double listed_mass; /* as mass, but from the take-off, or from the sum of the parts, even where weighed */
  double placed_mass; /* of the mass, what has a place: the centre is that of this */
  double scale;       /* what weighed groups above make of it: times mass gives its share in the statement; 1 where none is weighed */
  double by_as[GB_N_AS]; /* the mass, split */
  double x, y, z;     /* centre in the boat's axes; NAN: unknown. Of a pair: between the two */
  double mass_sd, x_sd, y_sd, z_sd;
  GbInertia inertia; /* about its own centre, the boat's directions; all of them together */
  double surface;    /* of one, both faces and edges, for coating; m2; NAN: unknown */
  double amount;     /* of one, as the take-off has it: m2 of sheet, skin or coating, m of length, m3 of block, pieces; NAN */
  guint n_parts;     /* leaves below, or 1; quantity does not count */
  guint n_no_mass;   /* of those, without a mass */
  guint n_no_place;  /* of those, with a mass but without a place */
  GbTrouble trouble; /* of a leaf */
  GbAs as;           /* of a leaf or a weighed group */
  gboolean weighed;
} GbMass;

typedef struct
{
  double estimated, calculated, weighed, fixed; /* kg */
  double total;
} GbMargin;

/* One weighing, worked out. */
typedef struct
{
  gint64 weighing; /* id */
  gint64 part;     /* 0: the boat */
  gint64 date;
  double mass; /* of all, tare off; NAN where it cannot be told */
  double mass_sd;
  double x, y; /* in the axes of the weighing; NAN where the supports do not tell */
  double x_sd, y_sd;
  double listed; /* what the take-off said, for comparison */
  gboolean stands; /* the latest of its part, which the roll-up uses */
} GbWeighed;

typedef struct _GbRollupWork GbRollupWork;

typedef struct
{
  GbMass *parts; /* by GbRecord.index */
  guint n_parts;
  GbMass boat; /* light craft without margin */
  GbMargin margin;
  GbWeighed *weighings; /* by index of the weighing */
  guint n_weighings;
  GbRollupWork *work; /* memory that is used again by the next roll-up */
} GbRollup;

/* Fills @rollup anew, using its memory again; a roll-up starts as zeroes. @hulls are the hulls' meshes in boat axes by index of the hull
 * (see mesh.h); NULL for none.
 * @until: weighings after this day are not looked at; G_MAXINT64 for all. */
void gb_rollup_find (GbRollup *rollup, const GbBoat *boat, const GbHullSet *hulls, gint64 until);
void gb_rollup_clear (GbRollup *rollup);

/* Never NULL; all unknown for a part that is not in the tree. */
const GbMass *gb_rollup_part (const GbRollup *rollup, const GbPart *part);
/* How many of @part's own row there are in the boat: the quantities and pairs of the groups that it is in. NAN if
 * that cannot be. */
double gb_part_times (const GbBoat *boat, const GbPart *part);

/* sqrt (I/m) about x, y and z; NAN without a mass. */
void gb_radii_of_gyration (const GbMass *mass, double radii[3]);

G_END_DECLS
