/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat-key.h"
#include "boat-layout.h"

G_BEGIN_DECLS

/* The centres of gravity and of buoyancy: their marks in a view, and their rows in the key, which write their
 * places out in the boat's axes. */

void gb_mark_gravity (GbCanvas *canvas, double x, double y);
void gb_mark_buoyancy (GbCanvas *canvas, double x, double y);

void gb_boat_draw_centres (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view);
void gb_boat_add_centres (const GbScene *scene, GArray *key);

/* "x 1080 mm, y 0, z 470 mm"; free it. */
char *gb_place_words (GbVec3 at, GbUnits units);

G_END_DECLS
