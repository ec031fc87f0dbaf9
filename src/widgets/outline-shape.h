/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/outline.h"

G_BEGIN_DECLS

/* An outline while it is being drawn: rings that may not be sound yet. Metres. */
typedef struct _GbShape GbShape;

GbShape *gb_shape_new (const GbOutline *outline); /* NULL: without rings */
void gb_shape_free (GbShape *shape);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbShape, gb_shape_free)

guint gb_shape_n_rings (const GbShape *shape);
guint gb_shape_n_points (const GbShape *shape, guint ring);
GbPoint gb_shape_point (const GbShape *shape, guint ring, guint index);
/* FALSE if there are no points at all. */
gboolean gb_shape_bounds (const GbShape *shape, GbPoint *least, GbPoint *most);

/* A point of a ring. */
typedef struct
{
  guint ring, index;
} GbShapeSpot;

/* The point nearest to @at, if one is within @reach. */
gboolean gb_shape_find (const GbShape *shape, GbPoint at, double reach, GbShapeSpot *spot);
/* Puts @at into the nearest edge; the first points make the first ring. */
GbShapeSpot gb_shape_insert (GbShape *shape, GbPoint at);
void gb_shape_move (GbShape *shape, GbShapeSpot spot, GbPoint to);
/* A ring that loses its last point goes too. */
void gb_shape_remove (GbShape *shape, GbShapeSpot spot);

/* As lines "x y" in millimetres or inches, an empty line between rings. Free it. */
char *gb_shape_to_lines (const GbShape *shape, GbUnits units);
/* NULL with a sentence that names the line. Each number may carry its unit. */
GbShape *gb_shape_from_lines (const char *lines, GbUnits units, GError **error);

/* As the text of outline.h; "" without points. What comes out may be refused by gb_outline_parse(). Free it.
 */
char *gb_shape_to_text (const GbShape *shape);

G_END_DECLS
