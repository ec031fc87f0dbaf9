/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/edges.h"
#include "engine/floater.h"
#include "engine/flotation.h"
#include "engine/rollup.h"

G_BEGIN_DECLS

/* How she floats in one condition: in sinkage, trim and heel together. */

/* What is dear asks now and then whether it is still wanted. */
typedef gboolean (*GbCancelFunc) (gpointer data);

/* All that a condition's answers follow from, taken out of the boat and the findings once, so that a worker
 * needs no boat. A case is the caller's own. */
typedef struct _GbCase GbCase;

/* @condition: id, 0: nobody aboard. NULL if there is none of that id. A load without a mass is left out; one
 * without a place is taken to lie at the light craft's own centre. */
GbCase *gb_case_new (const GbBoat *boat, const GbHullSet *hulls, const GbEdgeSet *edges,
                     const GbRollup *rollup, const GbFlotation *flotation, gint64 condition);
GbCase *gb_case_copy (const GbCase *self);
void gb_case_free (GbCase *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbCase, gb_case_free)

/* Puts the load's centre (of a tank its middle, of a pull its point) at @to; what the records say stays.
 * FALSE if it is not in this condition. */
gboolean gb_case_move (GbCase *self, gint64 load, GbVec3 to);
gint64 gb_case_condition (const GbCase *self);
/* Borrowed. The floater holds hulls that are not inside others, all weights, tanks, pulls; its heeling moment
 * is 0. */
const GbFloater *gb_case_floater (const GbCase *self);
const GbEdgeSet *gb_case_edges (const GbCase *self);
double gb_case_heeling_moment (const GbCase *self); /* NAN: none given */
double gb_case_freeboard (const GbCase *self);      /* least accepted */
/* Where a load's centre is in it. */
GbVec3 gb_case_load_centre (const GbCase *self, gint64 load);

typedef enum
{
  GB_AFLOAT_UNKNOWN, /* no hull, no mass, no water: the sentence says which */
  GB_AFLOAT_FLOATS,
  GB_AFLOAT_FILLS, /* rests with an edge under that must stay dry */
  GB_AFLOAT_OVER,  /* rests at more than 90 degrees: she has gone over */
  GB_AFLOAT_SINKS,
} GbAfloatState;

typedef struct
{
  gint64 condition; /* id; 0: nobody aboard */
  GbAfloatState state;
  char *sentence; /* why not, with figures; NULL where she floats */
  GPtrArray *troubles; /* (element-type utf8): a load outside the boat, a person of 5000 kg, a tank that
                          holds less than is in it, a load without mass or place; never NULL */

  double light, margin, load_mass, total, total_sd; /* kg, as in GbFlotation */
  GbVec3 gravity;           /* liquids where they have run to; NAN */
  guint n_no_mass, n_no_place; /* loads */

  double most;   /* what floats her: displacement at the brim, or of all hulls that have no edge if that is
                    more; kg */
  double limit;  /* flotation limit: level, at the least freeboard accepted; kg */
  double left;   /* limit - total */
  double chance; /* of passing the limit */
  double room;   /* mass that may still come aboard, kg: max (left, 0) */
  GbVec3 room_at; /* where it brings her level: x and y; NAN where there is no room, or the place is outside
                     the hulls */

  /* NAN from here on unless she comes to rest */
  GbAttitude attitude;
  double heel, trim; /* radians */
  double fore_x, aft_x; /* where the draughts are taken: the ends of the hulls */
  double draught_fore, draught_mid, draught_aft; /* from the line of the keel (the lowest point of the
                                                    hulls), along z, on the centreline */
  GbLeastFreeboard least;

  double volume, waterplane, per_cm; /* m3, m2, kg for one centimetre (TPC in the trade, there in tonnes) */
  double trim_moment;  /* kg m for one centimetre of change between the draughts' places (MCT 1 cm) */
  double heel_moment;  /* kg m for one degree: total x GM x sin 1 degree */
  GbVec3 buoyancy, flotation; /* centres of the volume under water and of the waterplane: LCB is buoyancy.x,
                                 LCF flotation.x */
  double keel;         /* z of the lowest point of the hulls */
  double kb, kg, bm, gm, bm_long, gm_long; /* m, along the way up of the water; free surfaces are taken off
                                              both GMs */
  double free_surface; /* loss of GM by liquids, m */
  double reserve;      /* volume above water that would still carry, up to the brim (for a level boat): most
                          / density - volume; m3 */
} GbAfloat;

/* Fills @afloat anew; it starts as zeroes. @start: an attitude near the answer, or NULL for upright. */
void gb_afloat_find (GbAfloat *afloat, const GbCase *self, const GbAttitude *start);
void gb_afloat_clear (GbAfloat *afloat);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (GbAfloat, gb_afloat_clear)

/* "1.2° by the bow, 3.0° to starboard": translated, for titles and strips; the sentence where she comes to no
 * rest. Free it. */
char *gb_afloat_attitude_text (const GbAfloat *afloat);
/* TRUE if @a is worse than @b: by state, then by what is left of the accepted freeboard. Unknown ones are
 * never worse than known ones. */
gboolean gb_afloat_is_worse (const GbAfloat *a, const GbAfloat *b);

G_END_DECLS
