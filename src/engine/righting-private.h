/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "righting.h"

G_BEGIN_DECLS

#define GB_DEGREE (G_PI / 180)

/* A curve in the making. */
typedef struct
{
  GbRighting *righting;
  const GbCase *self;
  const GbFloater *floater;
  GbAttitude rest; /* nearest upright */
  double rest_heel;
  double mass, gm, gm_solid;
  GbVec3 frozen; /* centre of gravity with liquids as they lie there */
  GbCancelFunc is_cancelled;
  gpointer data;
} GbRightingWork;

gboolean gb_righting_cancelled (const GbRightingWork *work);

/* The lever at @heel, found from the attitude of one nearby. Its lever is NAN if she finds no rest there. */
GbLever gb_righting_lever_at (const GbRightingWork *work, double heel, GbAttitude nearby);
/* The lever of the curve that is nearest to @heel. */
const GbLever *gb_righting_nearest (const GbRighting *righting, double heel);

void gb_righting_find_balances (GbRightingWork *work);
/* After the balances. @sign: 1 for starboard, -1 for port. */
void gb_righting_find_side (GbRightingWork *work, int sign, GbRightingSide *side);
void gb_righting_find_immersions (GbRightingWork *work);
/* After the immersions. */
void gb_righting_find_filling (GbRightingWork *work, int sign, GbRightingSide *side);

G_END_DECLS
