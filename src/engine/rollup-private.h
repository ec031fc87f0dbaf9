/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/rollup-axes.h"
#include "engine/rollup-shared.h"
#include "engine/takeoff.h"
#include "engine/weighing.h"

G_BEGIN_DECLS

/* What the files of the roll-up share; the method stands at the top of rollup.c. */

/* An open group, gathering what is in it: in its own axes, and one of it. */
typedef struct
{
  const GbPart *group; /* NULL: the boat */
  guint end;           /* index after the last that is in it */
  guint weighing;      /* index of the one that stands for it, or GB_NOT_WEIGHED */
  GbAxes axes;         /* its own in those around it */
  GbAxes to_boat;      /* its own in the boat's */
  guint shared;        /* where its shared errors begin */
  GbMoments placed;    /* masses that have a place */
  GbMoments errors;    /* covariance of those, without what is shared */
  double loose, loose_variance; /* mass without a place */
  double listed;
  double by_as[GB_N_AS];
  gboolean known; /* something in it has a mass */
  guint n_parts, n_no_mass, n_no_place;
} GbGathering;

#define GB_NOT_WEIGHED G_MAXUINT

/* What a weighed group's scale makes of what is in it. */
typedef struct
{
  double unweighed, weighed;
} GbShares;

struct _GbRollupWork
{
  GbRollup *rollup;
  const GbBoat *boat;
  GbBook *book;
  double spread[GB_N_AS];
  double place_spread;
  GArray *open; /* of GbGathering, outermost first */
  GbSharedErrors shared;
  GArray *standing;    /* of GbStanding */
  guint next_standing;
  GArray *shares;      /* of GbShares, by index of the weighing */
  gboolean scaled;     /* a group or the boat is weighed */
  GArray *surface_of;  /* of guint, by index of the part: place in 'surfaces', from 1; empty until one is asked for */
  GArray *surfaces;    /* of GbSurfaces */
};

/* The surfaces of a group, as if area were mass: one of it, in its own axes. */
typedef struct
{
  GbMoments placed;
  double loose; /* area without a place */
} GbSurfaces;

GbGathering *gb_rollup_innermost (GbRollupWork *work);

/* How many there are of it, the pair counted; NAN if that cannot be. */
double gb_part_copies (const GbPart *part);
/* From one of it to all of them, in the axes around it. */
void gb_part_copy_moments (const GbPart *part, GbMoments *moments);
void gb_part_copy_errors (const GbPart *part, GbMoments *errors);
void gb_part_copy_first (const GbPart *part, GbFirst *first);
/* @mass at @centre, with its extent about that. */
GbMoments gb_moments_at (double mass, const double centre[3], const GbMoments *extent);
gboolean gb_is_place (const double centre[3]);

/* A group, or a part that has others in it. */
gboolean gb_part_gathers (const GbPart *part);

/* Centre of one in the axes of what it is in, from the part or from its skin; turns @taken's extent into those axes. */
void gb_leaf_place (const GbPart *part, const GbAxes *to_boat, GbTakenOff *taken, double centre[3]);
void gb_rollup_add_leaf (GbRollupWork *work, const GbPart *part);

void gb_rollup_open_group (GbRollupWork *work, const GbPart *group, guint end);
void gb_rollup_close_group (GbRollupWork *work);
/* The weighing that stands for the part at @index, or for GB_WHOLE_BOAT; parts are to be asked for in the tree's order. */
guint gb_rollup_weighing_of (GbRollupWork *work, guint index);
/* Puts the scale's word in place of what @group gathered. */
void gb_rollup_stand_on_scale (GbRollupWork *work, GbGathering *group);
/* Finds GbMass.scale of all parts. */
void gb_rollup_share_out (GbRollupWork *work);

/* The surfaces that @coating lies on, in the axes of the innermost open group, which it is in. */
GbSurfaces gb_rollup_surfaces (GbRollupWork *work, const GbPart *coating);

/* @moments: second moments about the centre, in axes that lie so in the boat's. */
GbInertia gb_inertia_of (const GbMoments *moments, const GbAxes *to_boat);

G_END_DECLS
