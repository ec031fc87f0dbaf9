/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/rollup-axes.h"
#include "engine/rollup-shared.h"
#include "engine/takeoff.h"
#include "engine/weighing.h"

#include <math.h>

G_BEGIN_DECLS

/* What the files of the roll-up share; the method stands at the top of rollup.c. */

/* The surfaces of a group, as if area were mass: one of it, in its own axes. */
typedef struct
{
  GbMoments placed;
  double loose; /* area without a place */
} GbSurfaces;

/* An open group, gathering what is in it: in its own axes, and one of it. */
typedef struct
{
  const GbPart *group;          /* NULL: the boat */
  guint end;                    /* index after the last that is in it */
  guint weighing;               /* index of the one that stands for it, or GB_NOT_WEIGHED */
  GbAxes axes;                  /* its own in those around it */
  GbAxes to_boat;               /* its own in the boat's */
  guint shared;                 /* where its shared errors begin */
  GbMoments placed;             /* masses that have a place */
  GbMoments errors;             /* covariance of those, without what is shared */
  double loose, loose_variance; /* mass without a place */
  GbSurfaces surfaces;
  guint waiting; /* where the coatings begin that wait for all of its surfaces */
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

/* Where a group lies in the flattened tree. */
typedef struct
{
  guint index, end;
  guint weighing; /* index of the one that stands for it, or GB_NOT_WEIGHED */
} GbSpan;

/* A part that is met before it can be worked out. */
typedef struct
{
  const GbPart *part;
  guint weighing; /* index of the one that stands for it, or GB_NOT_WEIGHED */
} GbWaiting;

struct _GbRollupWork
{
  GbRollup *rollup;
  const GbBoat *boat;
  GbBook *book;
  double spread[GB_N_AS];
  double place_spread;
  GArray *open; /* of GbGathering, outermost first */
  GbSharedErrors shared;
  GArray *standing; /* of GbStanding */
  guint next_standing;
  GArray *spans;      /* of GbSpan: all groups, in the tree's order */
  GArray *shares;     /* of GbShares, by index of the weighing */
  gboolean scaled;    /* a group or the boat is weighed */
  GArray *surface_of; /* of guint, by index of the part: place in 'surfaces', from 1 */
  GArray *surfaces;   /* of GbSurfaces */
  GArray *waiting;    /* of GbWaiting: coatings of the open groups that they are in */
};

/* How many there are of it, the pair counted; NAN if that cannot be. */
static inline double
gb_part_copies (const GbPart *part)
{
  return part->quantity >= 0 && isfinite (part->quantity) ? part->quantity * (part->pair ? 2 : 1) : NAN;
}

/* From one of it to all of them, in the axes around it. */
static inline void
gb_part_copy_moments (const GbPart *part, double copies, GbMoments *moments)
{
  gb_moments_scale (moments, copies);
  if (part->pair)
    gb_moments_mirror (moments);
}

static inline void
gb_part_copy_errors (const GbPart *part, double copies, GbMoments *errors)
{
  gb_moments_scale (errors, copies * copies);
  if (part->pair)
    gb_errors_mirror (errors);
}

static inline GbFirst
gb_part_copy_first (const GbPart *part, double copies, const GbFirst *first)
{
  return (GbFirst){ copies * first->m, copies * first->x, part->pair ? 0 : copies * first->y,
                    copies * first->z };
}

static inline gboolean
gb_is_place (const double centre[3])
{
  return isfinite (centre[0]) && isfinite (centre[1]) && isfinite (centre[2]);
}

/* A group, or a part that has others in it. */
static inline gboolean
gb_part_gathers (const GbPart *part)
{
  return part->kind == GB_KIND_GROUP || part->n_below > 0;
}

/* @moments: second moments about the centre, in axes that lie so in the boat's. */
static inline GbInertia
gb_inertia_of (GbMoments *moments, const GbAxes *to_boat)
{
  if (to_boat->turned)
    gb_moments_turn (moments, to_boat->turn);
  return (GbInertia){ .xx = moments->yy + moments->zz,
                      .yy = moments->zz + moments->xx,
                      .zz = moments->xx + moments->yy,
                      .xy = moments->xy,
                      .yz = moments->yz,
                      .zx = moments->zx };
}

/* Calls a part that is a few ahead into the cache: the parts lie apart in memory, and waiting for each was a
 * tenth of a large roll-up. Always inlined, because a compiler takes a function that does nothing else for
 * one that does nothing. */
G_ALWAYS_INLINE static inline void
gb_fetch_ahead (const GPtrArray *parts, guint i)
{
  const char *ahead = parts->pdata[MIN (i + 4, parts->len - 1)];

  for (guint offset = 0; offset < sizeof (GbPart); offset += 64)
    __builtin_prefetch (ahead + offset);
}

static inline GbGathering *
gb_rollup_innermost (GbRollupWork *work)
{
  return &g_array_index (work->open, GbGathering, work->open->len - 1);
}

/* Centre of one in the axes of what it is in, from the part or from its skin; turns @taken's extent into
 * those axes. */
void gb_leaf_place (const GbPart *part, const GbAxes *to_boat, GbTakenOff *taken, double centre[3]);
/* What is known of one's surface, in the axes of the group that it is in. */
GbSurfaces gb_leaf_surfaces (const GbTakenOff *taken, const double centre[3]);
/* @weighing: index of the one that stands for it, or GB_NOT_WEIGHED; of a group too. */
void gb_rollup_add_leaf (GbRollupWork *work, const GbPart *part, guint weighing);

/* @group: NULL for the boat. */
void gb_rollup_open_group (GbRollupWork *work, const GbPart *group, guint end, guint weighing);
void gb_rollup_close_group (GbRollupWork *work);
/* The weighing that stands for the part at @index, or for GB_WHOLE_BOAT; parts are to be asked for in the
 * tree's order. */
guint gb_rollup_weighing_of (GbRollupWork *work, guint index);
/* Puts the scale's word in place of what @group gathered. */
void gb_rollup_stand_on_scale (GbRollupWork *work, GbGathering *group);
/* Finds GbMass.scale of all parts. */
void gb_rollup_share_out (GbRollupWork *work);

/* The surfaces that @coating lies on, in the axes of the innermost open group, which it is in. */
GbSurfaces gb_rollup_surfaces (GbRollupWork *work, const GbPart *coating);
/* Keeps what the surfaces of @group came to. */
void gb_rollup_keep_surfaces (GbRollupWork *work, const GbPart *group, const GbSurfaces *surfaces);
void gb_surfaces_add (GbSurfaces *to, const GbSurfaces *from);
/* From one of a part or group to all of them, a group's moved by @axes first; NULL for a part's. */
GbSurfaces gb_surfaces_copied (const GbPart *part, const GbAxes *axes, const GbSurfaces *one);

G_END_DECLS
