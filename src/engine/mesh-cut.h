/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "mesh-private.h"

G_BEGIN_DECLS

/* The sums of which every cut is made, and the cutting of one triangle; for the mesh, which goes through all
 * of its triangles, and for the body, which goes through few. Inline, for nothing else is done as often.
 *
 * A height over the plane below 0 is wet. */

/* What a plane cuts off a triangle that it goes through: the tip with the one corner that is alone on its
 * side. The rest is the triangle less its tip. A point where the plane meets an edge is always reckoned from
 * the edge's wet end to its dry end: so two triangles that share the edge find the same point to the last
 * bit, and the edges of the cut close. */
typedef struct
{
  gboolean wet;
  GbVec3 corners[3]; /* the lone one first; they turn as the triangle does */
  double share;      /* of the triangle's area */
} GbTip;

static inline GbVec3
gb_crossing (GbVec3 wet, double h_wet, GbVec3 dry, double h_dry, double *along)
{
  *along = h_wet / (h_wet - h_dry);
  return h_dry == 0 ? dry : vec3_add (wet, vec3_scale (vec3_sub (dry, wet), *along));
}

/* @n_wet: how many of the corners are: 1 or 2. */
static inline GbTip
gb_tip (const GbVec3 corners[3], const double heights[3], guint n_wet)
{
  gboolean wet = n_wet == 1;
  guint i = (heights[0] < 0) == wet ? 0 : 1 + ((heights[1] < 0) != wet);
  guint j = (i + 1) % 3, k = (i + 2) % 3;
  GbTip tip = { .wet = wet, .corners = { corners[i] } };
  double after, before;

  if (wet)
    {
      tip.corners[1] = gb_crossing (corners[i], heights[i], corners[j], heights[j], &after);
      tip.corners[2] = gb_crossing (corners[i], heights[i], corners[k], heights[k], &before);
      tip.share = after * before;
    }
  else
    {
      tip.corners[1] = gb_crossing (corners[j], heights[j], corners[i], heights[i], &after);
      tip.corners[2] = gb_crossing (corners[k], heights[k], corners[i], heights[i], &before);
      tip.share = (1 - after) * (1 - before);
    }
  return tip;
}

/* Tetrahedra that stand on triangles and share one apex, from which all places are reckoned. */
typedef struct
{
  double volume;
  GbVec3 moment; /* of the volume */
  double area;   /* of the triangles */
} GbSolid;

static inline GbSolid
gb_solid_sum (GbSolid a, GbSolid b)
{
  return (GbSolid){ a.volume + b.volume, vec3_add (a.moment, b.moment), a.area + b.area };
}

static inline GbVec3
gb_normal (const GbVec3 corners[3])
{
  return vec3_cross (vec3_sub (corners[1], corners[0]), vec3_sub (corners[2], corners[0]));
}

static inline GbVec3
gb_corner_sum (const GbVec3 corners[3])
{
  return vec3_add (vec3_add (corners[0], corners[1]), corners[2]);
}

/* The tetrahedron on one triangle. */
typedef struct
{
  double volume, area;
} GbPiece;

static inline GbPiece
gb_piece (const GbVec3 corners[3])
{
  GbVec3 normal = gb_normal (corners);

  return (GbPiece){ vec3_dot (corners[0], normal) * (1.0 / 6), vec3_length (normal) * 0.5 };
}

static inline void
gb_solid_add (GbSolid *solid, const GbVec3 corners[3], GbPiece piece)
{
  solid->volume += piece.volume;
  solid->moment = vec3_add (solid->moment, vec3_scale (gb_corner_sum (corners), piece.volume * 0.25));
  solid->area += piece.area;
}

/* The wet part alone. All of the triangle is as far from the apex: the tip has its share of the volume too.
 */
static inline void
gb_solid_add_wet (GbSolid *solid, const GbVec3 corners[3], GbPiece piece, const GbTip *tip)
{
  double of_all = tip->wet ? 0 : 1, of_tip = tip->wet ? tip->share : -tip->share;
  GbVec3 sum = vec3_add (vec3_scale (gb_corner_sum (corners), of_all),
                         vec3_scale (gb_corner_sum (tip->corners), of_tip));

  solid->volume += piece.volume * (of_all + of_tip);
  solid->moment = vec3_add (solid->moment, vec3_scale (sum, piece.volume * 0.25));
  solid->area += piece.area * (of_all + of_tip);
}

/* The face that a plane cuts, from its edges alone, by Green's theorem: several loops and holes add up by
 * their turning. u and v span the plane. */
typedef struct
{
  GbVec3 u, v;
  double area, x, y, xx, yy, xy; /* integrals over the face */
  double girth;
} GbFace;

/* An empty face of a plane that @n stands on: u points as far forward as the plane lets it, v to port of it.
 */
static inline GbFace
gb_face (GbVec3 n)
{
  GbVec3 forward = fabs (n.x) < 0.9 ? (GbVec3){ 1, 0, 0 } : (GbVec3){ 0, 1, 0 };
  GbVec3 u = vec3_sub (forward, vec3_scale (n, vec3_dot (n, forward)));

  u = vec3_scale (u, 1 / vec3_length (u));
  return (GbFace){ .u = u, .v = vec3_cross (n, u) };
}

/* One edge of the face, which lies to its left. */
static inline void
gb_face_add (GbFace *face, GbVec3 from, GbVec3 to)
{
  double x1 = vec3_dot (from, face->u), y1 = vec3_dot (from, face->v);
  double x2 = vec3_dot (to, face->u), y2 = vec3_dot (to, face->v);
  double turn = x1 * y2 - x2 * y1, sixth = turn * (1.0 / 6), twelfth = turn * (1.0 / 12);

  face->area += turn * 0.5;
  face->x += sixth * (x1 + x2);
  face->y += sixth * (y1 + y2);
  face->xx += twelfth * (x1 * x1 + x1 * x2 + x2 * x2);
  face->yy += twelfth * (y1 * y1 + y1 * y2 + y2 * y2);
  face->xy += twelfth * (x1 * y1 + x2 * y2 + 0.5 * (x1 * y2 + x2 * y1));
  face->girth += vec3_length (vec3_sub (to, from));
}

/* The edge along which a triangle was cut. */
static inline void
gb_face_add_cut (GbFace *face, const GbTip *tip)
{
  gb_face_add (face, tip->corners[tip->wet ? 2 : 1], tip->corners[tip->wet ? 1 : 2]);
}

G_END_DECLS
