/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/afloat.h"

G_BEGIN_DECLS

/* Righting lever against heel, trim and sinkage free. Water that would come in over an edge is not reckoned
 * with: from where the first edge goes under, the curve is that of a boat closed there, and she herself
 * fills. */

typedef struct
{
  double heel;      /* radians */
  double lever;     /* GZ, m; positive brings her upright when heeled to starboard */
  double solid;     /* the same with all liquids frozen where they lie at her rest */
  double trim;      /* she takes */
  double freeboard; /* least */
  GbAttitude attitude;
} GbLever;

/* One side, from the rest nearest upright on; a boat that lolls has one on either side. Angles in radians,
 * positive on either side; NAN: not before 180 degrees. */
typedef struct
{
  double greatest, greatest_at; /* lever and its angle */
  double vanishing; /* where the lever first goes to nothing after the rest, and she goes over */
  double filling;   /* where the first edge that must stay dry goes under; NAN: none does */
  double dry_greatest, dry_greatest_at; /* greatest lever up to where she fills, if that comes first */
  double area;      /* under the curve from rest to where it vanishes, m rad: work to turn her over, over her
                       weight */
  double dry_area;  /* the same up to where she fills, if that comes first */
  double steady;    /* heel under the condition's heeling moment, turned to this side; NAN: none given, or
                       she goes over under it */
} GbRightingSide;

/* Angle at which an edge first goes under: turned to either side with free trim, and by bow and stern with
 * the heel of her rest. NAN: never. */
typedef struct
{
  int line; /* of the case's edges */
  double starboard, port, bow, stern;
} GbEdgeImmersion;

typedef struct
{
  double heel;
  gboolean stable;
} GbBalance;

#define GB_N_LEVERS 361
#define GB_UPRIGHT 180 /* index of the lever without heel */
typedef struct
{
  gint64 condition;
  GbLever levers[GB_N_LEVERS]; /* from -180 to 180 degrees by one */
  double gm;                   /* GbAfloat.gm, at the rest nearest upright: liquids free */
  double gm_solid;             /* liquids frozen */
  GbRightingSide starboard, port;
  GArray *immersions; /* of GbEdgeImmersion */
  GArray *balances;   /* of GbBalance: upright, lolling, knocked down, upside down */
  double moment;      /* heeling moment that is laid over it, kg m; NAN: none */
  double total;       /* kg */
} GbRighting;

/* NULL if she does not float or @is_cancelled says so, now and then. */
GbRighting *gb_righting_find (const GbCase *self, GbCancelFunc is_cancelled, gpointer data);
void gb_righting_free (GbRighting *righting);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbRighting, gb_righting_free)

G_END_DECLS
