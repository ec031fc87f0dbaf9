/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "body.h"
#include "mesh-cut.h"

G_BEGIN_DECLS

/* The tree is balanced: with 2^32 triangles it would not be this deep. */
#define GB_BODY_DEEPEST 40

/* Triangles in a leaf, at most. */
#define GB_BODY_LEAF 8

/* A leaf has its points for itself, one after the other, and its triangles know them by their place among
 * these: so their heights are found in one go. A point that several leaves have is the same number in each.
 */
typedef struct
{
  GbVec3 middle, half; /* of the box; a little larger than what is in it, for rounding */
  GbSolid sums;
  guint right; /* the second half; the first one follows its node at once. 0: a leaf */
  guint first_triangle, first_point;
  guint8 n_triangles, n_points; /* of a leaf */
} GbBodyNode;

struct _GbBody
{
  gatomicrefcount refs;
  GbVec3 origin; /* all places are reckoned from it */
  GbVec3 *points;
  guint8 (*triangles)[3];
  GbPiece *pieces; /* on the triangles */
  GbBodyNode *nodes;
  guint n_points, n_triangles, n_nodes;
  double reach; /* no place is farther than this from the origin */
};

/* The corners of triangle @t of @leaf. */
static inline void
gb_body_corners (const GbBody *body, const GbBodyNode *leaf, guint t, GbVec3 corners[3])
{
  const GbVec3 *points = body->points + leaf->first_point;
  const guint8 *places = body->triangles[leaf->first_triangle + t];

  for (guint k = 0; k < 3; k++)
    corners[k] = points[places[k]];
}

G_END_DECLS
