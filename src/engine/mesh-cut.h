/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "mesh-private.h"

G_BEGIN_DECLS

/* The sums of which every cut is made, and the clipping of one triangle; for the mesh, which goes through all of its triangles, and for the body,
 * which goes through few. Inline, for nothing else is done as often. */

/* Tetrahedra that stand on triangles and share one apex, from which all places are reckoned. */
typedef struct
{
  double volume;
  GbVec3 moment; /* of the volume */
  double area;   /* of the triangles */
} GbSolid;

/* Returns the triangle's area. */
static inline double
gb_solid_add (GbSolid *solid, GbVec3 a, GbVec3 b, GbVec3 c)
{
  GbVec3 normal = vec3_cross (vec3_sub (b, a), vec3_sub (c, a));
  GbVec3 corners = vec3_add (vec3_add (a, b), c);
  double volume = vec3_dot (a, normal) / 6;
  double area = vec3_length (normal) / 2;

  solid->volume += volume;
  solid->moment = vec3_add (solid->moment, vec3_scale (corners, volume / 4));
  solid->area += area;
  return area;
}

static inline GbSolid
gb_solid_sum (GbSolid a, GbSolid b)
{
  return (GbSolid){ a.volume + b.volume, vec3_add (a.moment, b.moment), a.area + b.area };
}

/* The face that a plane cuts, from its edges alone, by Green's theorem: several loops and holes add up by their turning. u and v span the plane. */
typedef struct
{
  GbVec3 u, v;
  double area, x, y, xx, yy, xy; /* integrals over the face */
  double girth;
} GbFace;

/* An empty face of a plane that @n stands on: u points as far forward as the plane lets it, v to port of it. */
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
  double turn = x1 * y2 - x2 * y1;

  face->area += turn / 2;
  face->x += turn * (x1 + x2) / 6;
  face->y += turn * (y1 + y2) / 6;
  face->xx += turn * (x1 * x1 + x1 * x2 + x2 * x2) / 12;
  face->yy += turn * (y1 * y1 + y1 * y2 + y2 * y2) / 12;
  face->xy += turn * (x1 * y2 + 2 * x1 * y1 + 2 * x2 * y2 + x2 * y1) / 24;
  face->girth += vec3_length (vec3_sub (to, from));
}

/* Where an edge meets the plane. Always reckoned from its wet end to its dry end: so two triangles that share the edge find the same point to the
 * last bit, and the edges of the cut close. */
static inline GbVec3
gb_crossing (GbVec3 wet, double h_wet, GbVec3 dry, double h_dry)
{
  double t = h_wet / (h_wet - h_dry);

  return h_dry == 0 ? dry : vec3_add (wet, vec3_scale (vec3_sub (dry, wet), t));
}

/* Cuts a triangle that is partly wet; a height over the plane below 0 is wet. Returns how many corners the wet polygon has: 3 or 4; the cut runs
 * from edge[0] to edge[1] with the cut face to its left, seen from where the plane's normal points. */
static inline guint
gb_clip (const GbVec3 corners[3], const double heights[3], GbVec3 wet[4], GbVec3 edge[2])
{
  guint n = 0;

  for (guint i = 0; i < 3; i++)
    {
      guint j = (i + 1) % 3;

      if (heights[i] < 0)
        wet[n++] = corners[i];
      if (heights[i] < 0 && heights[j] >= 0)
        wet[n++] = edge[1] = gb_crossing (corners[i], heights[i], corners[j], heights[j]);
      else if (heights[i] >= 0 && heights[j] < 0)
        wet[n++] = edge[0] = gb_crossing (corners[j], heights[j], corners[i], heights[i]);
    }
  return n;
}

G_END_DECLS
