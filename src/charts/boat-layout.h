/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "axis.h"
#include "boat-scene.h"

G_BEGIN_DECLS

/* Where the three views and the key stand. All views have one scale, the same along and up. */

/* Room around what is drawn, in em: for the numbers at its left, and between it and its caption, which half a
 * number reaches into. */
#define GB_VIEW_LEFT 2.6
#define GB_VIEW_TOP 0.7

typedef struct
{
  GbView view;
  GbBox box; /* of what is drawn, in the picture */
  GbAxis right, up;
  gboolean numbered; /* along, beneath it */
} GbBoatView;

/* Room in the picture between the boat and the edges of her view, for words there. */
typedef struct
{
  double left, top, right, bottom;
} GbPads;

typedef struct
{
  double scale; /* of the picture over the boat */
  guint shown;  /* bits: the views that there is room for */
  GbBoatView views[GB_N_VIEWS];
  GbPads pads[GB_N_VIEWS];
  GbBox key; /* no width where there is no room for it */
} GbBoatLayout;

/* What the words need. */
typedef struct
{
  GbBox key;                   /* its size */
  double captions[GB_N_VIEWS]; /* widths of the views' captions */
  GbPads pads[GB_N_VIEWS];     /* given way where there is no room for them, to @tight, and to none */
  GbPads tight[GB_N_VIEWS];
  gboolean numbers_give_way;   /* those along; the ones that count up stay */
  double waterlines;           /* width of what is said of the waterlines, at the right of the side view */
} GbBoatWords;

GbBoatLayout gb_boat_layout (const GbScene *scene, GbCanvas *canvas, GbBox box, const GbBoatWords *words);

/* The view under a point of the picture, or NULL. */
const GbBoatView *gb_boat_view_under (const GbBoatLayout *layout, double x, double y);

/* What a point of the picture means in the boat: fills view and place of @spot, see gb_chart_locate(). @held,
 * in the boat's axes: what is kept along the line of sight. */
gboolean gb_boat_locate (
    const GbScene *scene, const GbBoatLayout *layout, double x, double y, GbVec3 held, GbChartSpot *spot);

/* Where a point of the scene stands in the picture. */
void gb_boat_view_at (const GbBoatView *view, GbVec3 p, double *x, double *y);

/* What one shown unit of the views' scales is worth: a metre or a foot. */
double gb_boat_unit (GbUnits units);

G_END_DECLS
