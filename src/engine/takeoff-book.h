/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/takeoff.h"

G_BEGIN_DECLS

/* Looking up for take-offs; within the engine's take-offs only. */

/* NULL where there is none. The last few that were asked for are remembered, so that a row of parts of one
 * material costs one search. */
const GbMaterial *gb_book_material (GbBook *book, gint64 id);
const GbStock *gb_book_stock (GbBook *book, gint64 id);

/* The hull's shape; NULL where there is none. */
const GbHullShape *gb_book_hull (GbBook *book, gint64 id);

/* Area, first and second moments of the skin that @part is, as if the area were mass, in the boat's axes;
 * both of a pair of hulls. Its hull must have a mesh. Measured once for all parts of the same skin: a skin
 * and its coats. */
GbMoments gb_book_skin (GbBook *book, const GbPart *part);

/* An outline's area and so on; NULL if it cannot be read. Outlines that were read for an earlier roll-up are
 * not read again. */
const GbOutlineProperties *gb_book_outline (GbBook *book, const char *text);

G_END_DECLS
