/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "chart-private.h"

G_BEGIN_DECLS

/* The curve of righting levers, apart from any paper. Angles in radians, starboard positive; levers are
 * positive where they turn her to port. */

typedef struct
{
  double heel, lever, solid, freeboard;
} GbRightingPoint;

typedef struct
{
  char *name;
  double heel;
} GbImmersionMark;

/* One side, and how far it can be counted on. */
typedef struct
{
  GbRightingSide found;
  gboolean fills;               /* before the lever vanishes */
  double end;                   /* where she fills, or else where the lever vanishes; NAN: neither */
  double greatest, greatest_at; /* lever, up to there */
} GbRightingReach;

#define GB_MOST_IMMERSIONS 12u
#define GB_MOST_BALANCES 16u

typedef struct
{
  GbUnits units;
  GbRightingPoint points[GB_N_LEVERS];
  guint n_known;
  double most;        /* lever, either way */
  gboolean has_solid; /* liquids make a difference */
  double gm, rest;
  double arm; /* of the heeling moment over her weight; NAN: none */
  GbRightingReach starboard, port;
  GbImmersionMark immersions[GB_MOST_IMMERSIONS]; /* nearest to upright first */
  guint n_immersions;
  GbBalance balances[GB_MOST_BALANCES];
  guint n_balances;
} GbRightingCurve;

/* Hits are numbered as the points. */
void gb_righting_draw (const GbRightingCurve *curve, GbCanvas *canvas, GbBox box);

G_END_DECLS
