/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat-layout.h"

G_BEGIN_DECLS

/* The centres of gravity and of buoyancy: their marks in a view, and the key that names them and writes their
 * places out. */

void gb_boat_draw_centres (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view);

/* The size that the key needs. */
GbBox gb_boat_measure_key (const GbScene *scene, GbCanvas *canvas);
void gb_boat_draw_key (const GbScene *scene, GbCanvas *canvas, GbBox box);

G_END_DECLS
