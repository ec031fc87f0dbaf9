/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "body.h"
#include "mesh-cut.h"

G_BEGIN_DECLS

/* The tree is balanced: with 2^32 triangles it would not be this deep. */
#define GB_BODY_DEEPEST 40

typedef struct
{
  GbVec3 middle, half; /* of the box; a little larger than what is in it, for rounding */
  GbSolid sums;
  guint first, n; /* triangles below */
  guint right;    /* the second half; the first one follows its node at once. 0: a leaf */
} GbBodyNode;

struct _GbBody
{
  gatomicrefcount refs;
  GbVec3 origin;  /* all places are reckoned from it */
  GbVec3 *points; /* in the order in which the tree meets them */
  guint (*triangles)[3];
  GbBodyNode *nodes;
  guint n_points, n_triangles, n_nodes;
  double reach; /* no place is farther than this from the origin */
};

G_END_DECLS
