/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat-draw.h"
#include "floating-scene.h"

G_BEGIN_DECLS

/* What is written on the drawing of the boat in the water: edges, draughts, freeboards. */

/* Edges that must stay dry; what of them is under water is hatched, and says so. */
void gb_floating_draw_edges (const GbFloating *floating, GbCanvas *canvas, const GbBoatView *view);
/* Those lengths that belong in the view. */
void gb_floating_draw_measured (const GbFloating *floating, GbCanvas *canvas, const GbBoatView *view);
/* Places with a mark and a name of their own. */
void gb_floating_draw_marked (const GbFloating *floating, GbCanvas *canvas, const GbBoatView *view);
/* Of the openings, where there is room. */
void gb_floating_name_openings (const GbFloating *floating, GbCanvas *canvas, const GbBoatView *view);
/* Room that they want beside the boat; and the part of it that costs the drawing least. */
GbPads gb_floating_pads (const GbFloating *floating, GbCanvas *canvas, GbView view);
GbPads gb_floating_tight_pads (const GbFloating *floating, GbCanvas *canvas, GbView view);

G_END_DECLS
