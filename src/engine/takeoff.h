/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/outline.h"
#include "boat/part-size.h"
#include "engine/density.h"
#include "engine/rollup-axes.h"
#include "engine/rollup.h"

G_BEGIN_DECLS

/* Take-offs: how much one of a part is, and the mass that follows. Every one is
 *
 *   mass = amount x per x figure, and for cloth as much again times the resin ratio
 *
 * with 'amount' in m2, m, m3 or pieces, 'per' the thickness, the area of the section, the coats or 1, and
 * 'figure' the material's density, mass per area or mass per length, or a mass that the part or its stock
 * gives. */

typedef enum
{
  GB_BY_MASS, /* the figure is the mass of one */
  GB_BY_DENSITY,
  GB_BY_AREAL,
  GB_BY_LINEAR,
} GbFigureKind;

#define GB_NO_MATERIAL G_MAXUINT

typedef struct
{
  GbTrouble trouble;
  GbPartSize size;
  GbFigureKind by;
  double amount; /* NAN where unknown, as all that follows */
  double per;
  double figure;
  double mass; /* of one, resin included */
  double resin_mass;
  guint material; /* index of the one that the figure is of; GB_NO_MATERIAL where it is the part's own or the
                     stock's */
  guint resin;    /* index; GB_NO_MATERIAL */
  double surface; /* both faces and edges */
  double centre[3]; /* of a skin, in the boat's axes; else NAN */
  GbMoments extent; /* second moments about its centre over its mass (m2), in its own axes, of a skin in the
                       boat's; m is 1, or 0 for a point */
} GbTakenOff;

/* What take-offs look up: the materials' figures, stock, drawn outlines, hulls. */
typedef struct _GbBook GbBook;

GbBook *gb_book_new (void);
void gb_book_free (GbBook *book);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbBook, gb_book_free)

/* Makes it ready for @boat, which must then stay as it is; @hulls may be NULL. */
void gb_book_open (GbBook *book, const GbBoat *boat, const GbHullSet *hulls);
/* Lets go of what this boat did not ask for. */
void gb_book_close (GbBook *book);

/* By index. */
const GbMaterialFigures *gb_book_figures (const GbBook *book, guint material);

/* @coated: for a coating that gives no area of its own, the surface that it lies on; NAN otherwise. */
void gb_take_off (GbBook *book, const GbPart *part, double coated, GbTakenOff *taken);

/* TRUE for a coating whose area is the surface of other parts. */
gboolean gb_part_coats_others (const GbPart *part);

G_END_DECLS
