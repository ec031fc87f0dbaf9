/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/mesh.h"

G_BEGIN_DECLS

/* A number at each point of a net of triangles, and where it has a given value: the waterline of a hull,
 * where the number is the height, or the contour of a map. */
typedef struct
{
  const GbVec3 *points;
  const double *values; /* by point; a triangle with one that is not finite is left out */
  const guint (*triangles)[3];
  guint n_triangles;
} GbNet;

/* The lines at @level, each from end to end, a closed one back to its first point. Points that triangles
 * share must be one. (element-type GArray of GbVec3)
 */
GPtrArray *gb_level_lines (const GbNet *net, double level);

/* The corners of the part of triangle @t that lies between @lo and @hi: up to five; the number of them. */
#define GB_MOST_CORNERS 5u
guint gb_level_part (const GbNet *net, guint t, double lo, double hi, GbVec3 corners[GB_MOST_CORNERS]);

G_END_DECLS
