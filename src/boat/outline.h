/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "records.h"

G_BEGIN_DECLS

/* A flat outline with holes, kept as text: points "x y" separated by commas, rings separated by semicolons, the first ring the edge
 * and the others holes; each ring closes by itself and either way round will do. Numbers are metres unless they carry a unit:
 *   "0 0, 1.2 0, 1.2 0.4, 0 0.3; 0.2 0.1, 0.3 0.1, 0.25 0.2"
 *   "0 0, 1200 mm 0, 1200 mm 400 mm" */
typedef struct
{
  double x, y;
} GbPoint;

typedef struct
{
  GbPoint *points;
  guint n;
} GbRing;

typedef struct
{
  GbRing *rings;
  guint n_rings;
} GbOutline;

/* NULL with a sentence (GB_QUANTITY_ERROR) for text that cannot be read, fewer than three points, a ring that crosses itself or
 * another, a hole outside the edge, or no area. */
GbOutline *gb_outline_parse (const char *text, GError **error);
char *gb_outline_format (const GbOutline *outline);
void gb_outline_free (GbOutline *outline);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbOutline, gb_outline_free)

/* Area less holes (m2), perimeter of all rings (m), centroid (m) and second moments about the centroid
 * (m4: about the centroid's x axis, y axis, and the product), by Green's theorem over the edges. */
typedef struct
{
  double area, perimeter;
  double x, y;
  double ixx, iyy, ixy;
} GbOutlineProperties;
GbOutlineProperties gb_outline_properties (const GbOutline *outline);

G_END_DECLS
