/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "axis.h"
#include "boat-scene.h"

G_BEGIN_DECLS

/* Where the three views and the key stand. All views have one scale, the same along and up. */

typedef struct
{
  GbView view;
  GbBox box;    /* of what is drawn, in the picture */
  GbAxis right, up;
} GbBoatView;

typedef struct
{
  double scale; /* of the picture over the boat */
  GbBoatView views[GB_N_VIEWS];
  GbBox key; /* no width where there is no room for it */
} GbBoatLayout;

/* @key: the size that the key would like to have; @captions: the widths of the views' captions. */
GbBoatLayout gb_boat_layout (const GbScene *scene, GbCanvas *canvas, GbBox box, GbBox key, const double captions[GB_N_VIEWS]);

/* Where a point of the boat stands in the picture. */
void gb_boat_view_at (const GbBoatView *view, GbVec3 p, double *x, double *y);

/* What one shown unit of the views' scales is worth: a metre or a foot. */
double gb_boat_unit (GbUnits units);

G_END_DECLS
