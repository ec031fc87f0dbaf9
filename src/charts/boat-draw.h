/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat-layout.h"

G_BEGIN_DECLS

/* What drawings of the boat are put together from, view by view. */

double gb_boat_caption_width (const GbScene *scene, GbCanvas *canvas, GbView view);

/* Caption, scales and light lines; words that can move then keep to the view until its end. */
void gb_boat_begin_view (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view);
void gb_boat_end_view (GbCanvas *canvas);

/* Adds a line to the path. */
void gb_boat_trace (GbCanvas *canvas, const GbBoatView *view, const GArray *points);
/* The body of the hulls, and what of it is under water. */
void gb_boat_fill_hulls (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view);
void gb_boat_draw_hulls (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view);

/* Parts and loads, those that are picked or the others; hits are numbered as the items. Names: of the picked
 * ones, or of loads. */
void gb_boat_draw_dots (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view, gboolean picked);
void gb_boat_name_items (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view, gboolean picked);
void gb_boat_name_groups (const GbScene *scene, GbCanvas *canvas, const GbBoatView *view);

G_END_DECLS
