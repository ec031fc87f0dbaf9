/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/afloat.h"

G_BEGIN_DECLS

/* Full of water: open hulls carry nothing but what they are made of. What carries is the volume of every part
 * (mass over density) as far as it is under water, spread as its mass is: balls about its centre with its
 * radii of gyration; closed hulls without openings; and hulls inside others. A part that lies in a hull that
 * carries, or is its skin, adds nothing of its own: its volume is in the hull's. Loads and the growth margin
 * carry nothing. */

typedef struct
{
  GbRestKind kind;
  GbAttitude attitude;
  double heel, trim;
  double most;      /* what everything carries when all of it is under, kg */
  double weight;    /* of boat, margin and loads, with people's share, kg */
  double edge;      /* least freeboard of any edge, negative under water; NAN */
  double gm;        /* across, at rest; NAN */
} GbSwampedRest;

typedef struct
{
  gint64 condition;
  double holding;       /* share of people's weight */
  GbSwampedRest aboard; /* crew sitting in her */
  GbSwampedRest holding_on; /* crew in the water, holding on where they sat */
  double parts_volume, hulls_volume; /* what carries, m3 */
  guint n_no_volume;    /* parts with a mass whose density is not known: they carry nothing. What a scale
                           said of groups beyond their parts counts as one more */
  double no_volume_mass;
  gboolean guesswork; /* more than a tenth of the light craft: where she sinks it may be for want of a density
                       */
  guint n_no_place;     /* parts left out of the balance for want of a place; their volume is taken at the
                           light craft's centre */

  /* Foam that must be added for her to float level, crew holding on, her lowest edge at the water; or above
   * it, as foam_trouble says, where less foam would not bring her level. 0: none needed. NAN: it cannot be
   * said. */
  double foam_volume, foam_mass, foam_density;
  double foam_x, foam_y; /* its centre */
  double foam_apart;     /* half and half, this far to port and to starboard of that: the half breadth at the
                            edge, there; NAN */
  double foam_lowest;    /* not lower than this, or she would not stay upright: z; NAN */
  char *foam_trouble;    /* a sentence where no place for it will do, it cannot be said, or there is more to
                            say of it; or NULL */
} GbSwamped;

/* Density of the foam that is reckoned with: 2 lb/ft3, kg/m3. */
#define GB_FOAM_DENSITY 32.04

/* NULL if cancelled, or if there is no such condition. */
GbSwamped *gb_swamped_find (const GbBoat *boat, const GbHullSet *hulls, const GbEdgeSet *edges,
                            const GbRollup *rollup, const GbFlotation *flotation, gint64 condition,
                            GbCancelFunc is_cancelled, gpointer data);
void gb_swamped_free (GbSwamped *swamped);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbSwamped, gb_swamped_free)

/* Volume of the substance of a part, m3: GbMass.mass over the density of its material (of cloth, that of its
 * fibres and of its resin by their shares). As with that mass, its own copies are in it, those of the groups
 * around it are not. NAN: not known, or it is a group or has other parts in it. */
double gb_part_volume (const GbBoat *boat, const GbRollup *rollup, const GbPart *part);

G_END_DECLS
