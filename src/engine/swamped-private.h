/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/afloat-private.h"
#include "engine/floater-private.h"
#include "engine/swamped.h"

G_BEGIN_DECLS

/* A hull that carries when she is full of water, with the box round it. */
typedef struct
{
  gint64 hull;
  GbBody *body;
  gboolean mirrored;
  GbVec3 least, most;
} GbCarrier;

/* Hulls that water does not get into: closed ones without openings, and those inside others, unless they
 * lie in one of the first. They go into @floater too. (element-type GbCarrier) */
GArray *gb_carriers_find (const GbBoat *boat, const GbHullSet *hulls, GbFloater *floater);
gboolean gb_carriers_contain (const GArray *carriers, GbVec3 p);

/* Puts the volumes of all parts into @floater as balls, and counts them in @swamped. FALSE if cancelled. */
gboolean gb_swamped_add_parts (GbSwamped *swamped,
                               GbFloater *floater,
                               const GArray *carriers,
                               const GbBoat *boat,
                               const GbRollup *rollup,
                               GbCancelFunc is_cancelled,
                               gpointer data);

/* What the foam is reckoned from. */
typedef struct
{
  const GbFloater *floater; /* crew in the water, holding on */
  const GbCase *self;
  const GArray *carriers; /* of GbCarrier */
  double edge;            /* z of her lowest edge; NAN */
} GbFoamCase;
void gb_swamped_find_foam (GbSwamped *swamped, const GbFoamCase *with);

G_END_DECLS
