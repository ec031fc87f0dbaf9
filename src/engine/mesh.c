/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-mesh"

/* What a closed mesh encloses, and what a plane cuts off it.
 *
 * Volume and its moments are sums over tetrahedra that stand on the triangles and share one apex. The apex is
 * put on the cutting plane: then the cut face, whatever its shape, makes tetrahedra without volume, and need
 * not be known. The figures of that face come from its edges alone, by Green's theorem; several loops and
 * holes add up by their turning. */

#include "mesh-cut.h"

void
gb_mesh_free (GbMesh *mesh)
{
  if (mesh == NULL)
    return;
  g_free (mesh->points);
  g_free (mesh->triangles);
  g_free (mesh);
}

static int
compare_edges (gconstpointer a, gconstpointer b)
{
  guint64 e = *(const guint64 *)a, f = *(const guint64 *)b;

  return e < f ? -1 : e > f;
}

gboolean
gb_mesh_is_closed (const GbMesh *mesh)
{
  gsize n = (gsize)mesh->n_triangles * 3;
  g_autofree guint64 *edges = g_new (guint64, n + 1);

  for (gsize e = 0; e < n; e++)
    {
      const guint *corners = mesh->triangles[e / 3];

      edges[e] = (guint64)corners[e % 3] << 32 | corners[(e + 1) % 3];
    }
  qsort (edges, n, sizeof *edges, compare_edges);
  for (gsize e = 0; e < n; e++)
    {
      guint64 reverse = edges[e] << 32 | edges[e] >> 32;

      if (reverse == edges[e] || (e > 0 && edges[e] == edges[e - 1])
          || bsearch (&reverse, edges, n, sizeof *edges, compare_edges) == NULL)
        return FALSE;
    }
  return n > 0;
}

/* All places in the sums are reckoned from 'origin'. */
typedef struct
{
  GbVec3 origin;
  GbSolid solid;
  GbFace face;
} Sums;

/* The height of @p over the plane; below 0 is wet. */
static inline double
height (GbVec3 p, GbVec3 n, double d)
{
  return vec3_dot (n, p) - d;
}

/* The corners of a triangle, from @origin. */
static void
triangle_at (const GbMesh *mesh, guint t, GbVec3 origin, GbVec3 corners[3])
{
  for (guint i = 0; i < 3; i++)
    corners[i] = vec3_sub (mesh->points[mesh->triangles[t][i]], origin);
}

/* Returns how many of the corners are wet. */
static guint
heights_at (const GbMesh *mesh, guint t, GbVec3 n, double d, double heights[3])
{
  guint n_wet = 0;

  for (guint i = 0; i < 3; i++)
    {
      heights[i] = height (mesh->points[mesh->triangles[t][i]], n, d);
      n_wet += heights[i] < 0;
    }
  return n_wet;
}

static void
add_wet_triangles (Sums *sums, const GbMesh *mesh, GbVec3 n, double d)
{
  for (guint t = 0; t < mesh->n_triangles; t++)
    {
      GbVec3 corners[3];
      double heights[3];
      guint n_wet = heights_at (mesh, t, n, d, heights);

      if (n_wet == 0)
        continue;
      triangle_at (mesh, t, sums->origin, corners);
      if (n_wet == 3)
        gb_solid_add (&sums->solid, corners, gb_piece (corners));
      else
        {
          GbTip tip = gb_tip (corners, heights, n_wet);

          gb_solid_add_wet (&sums->solid, corners, gb_piece (corners), &tip);
          gb_face_add_cut (&sums->face, &tip);
        }
    }
}

static GbVec3
centre_of (GbVec3 origin, GbVec3 moment, double amount)
{
  return amount > 0 ? vec3_add (origin, vec3_scale (moment, 1 / amount)) : (GbVec3){ NAN, NAN, NAN };
}

static GbCut
cut_from_sums (const Sums *sums)
{
  const GbSolid *solid = &sums->solid;
  const GbFace *face = &sums->face;
  GbCut cut = {
    .volume = solid->volume,
    .centre = centre_of (sums->origin, solid->moment, solid->volume),
    .area = solid->area,
    .plane_x = NAN,
    .plane_y = NAN,
    .girth = face->girth,
  };

  if (face->area > 0)
    {
      double x = face->x / face->area, y = face->y / face->area;

      cut.waterplane = face->area;
      cut.plane_x = vec3_dot (sums->origin, face->u) + x;
      cut.plane_y = vec3_dot (sums->origin, face->v) + y;
      cut.plane_ixx = face->yy - face->area * y * y;
      cut.plane_iyy = face->xx - face->area * x * x;
      cut.plane_ixy = face->xy - face->area * x * y;
    }
  return cut;
}

GbCut
gb_mesh_whole (const GbMesh *mesh)
{
  Sums sums = { .origin = mesh->n_points > 0 ? mesh->points[0] : (GbVec3){ 0, 0, 0 } };

  for (guint t = 0; t < mesh->n_triangles; t++)
    {
      GbVec3 corners[3];

      triangle_at (mesh, t, sums.origin, corners);
      gb_solid_add (&sums.solid, corners, gb_piece (corners));
    }
  return cut_from_sums (&sums);
}

GbCut
gb_mesh_cut (const GbMesh *mesh, GbVec3 n, double d)
{
  Sums sums = { .origin = { 0, 0, 0 } };
  double lowest = INFINITY, highest = -INFINITY;

  for (guint i = 0; i < mesh->n_points; i++)
    {
      double h = height (mesh->points[i], n, d);

      lowest = MIN (lowest, h);
      highest = MAX (highest, h);
    }
  if (highest < 0)
    return gb_mesh_whole (mesh);
  if (lowest < 0)
    {
      GbVec3 near = mesh->points[0];

      sums.origin = vec3_sub (near, vec3_scale (n, height (near, n, d)));
      sums.face = gb_face (n);
      add_wet_triangles (&sums, mesh, n, d);
    }
  return cut_from_sums (&sums);
}

/* Adds @sign times the integrals over one triangle: exact for the quadratic ones. */
static void
add_surface (GbSurface *surface, const GbVec3 corners[3], double sign)
{
  GbVec3 a = corners[0], b = corners[1], c = corners[2], s = gb_corner_sum (corners);
  double area = sign * vec3_length (gb_normal (corners)) / 2;
  double w = area / 12;

  surface->area += area;
  surface->centre = vec3_add (surface->centre, vec3_scale (s, area / 3));
  surface->xx += w * (a.x * a.x + b.x * b.x + c.x * c.x + s.x * s.x);
  surface->yy += w * (a.y * a.y + b.y * b.y + c.y * c.y + s.y * s.y);
  surface->zz += w * (a.z * a.z + b.z * b.z + c.z * c.z + s.z * s.z);
  surface->xy += w * (a.x * a.y + b.x * b.y + c.x * c.y + s.x * s.y);
  surface->yz += w * (a.y * a.z + b.y * b.z + c.y * c.z + s.y * s.z);
  surface->zx += w * (a.z * a.x + b.z * b.x + c.z * c.x + s.z * s.x);
}

/* Places are from the mesh's first point. */
static void
add_surface_below (GbSurface *surface, const GbMesh *mesh, double z, double sign)
{
  for (guint t = 0; t < mesh->n_triangles - mesh->n_lid; t++)
    {
      GbVec3 corners[3];
      double heights[3];
      guint n_wet = heights_at (mesh, t, (GbVec3){ 0, 0, 1 }, z, heights);

      triangle_at (mesh, t, mesh->points[0], corners);
      if (n_wet == 1 || n_wet == 2)
        {
          GbTip tip = gb_tip (corners, heights, n_wet);

          add_surface (surface, tip.corners, tip.wet ? sign : -sign);
        }
      if (n_wet > 1)
        add_surface (surface, corners, sign);
    }
}

GbSurface
gb_mesh_surface (const GbMesh *mesh, double above, double below)
{
  GbSurface surface = { .area = 0 };
  GbVec3 c;

  /* What is below the one less what is below the other: so that the parts of a skin add up to the whole. */
  if (above < below)
    {
      add_surface_below (&surface, mesh, below, 1);
      if (above > -INFINITY)
        add_surface_below (&surface, mesh, above, -1);
    }
  if (!(surface.area > 0))
    return (GbSurface){ .centre = { NAN, NAN, NAN } };

  c = vec3_scale (surface.centre, 1 / surface.area);
  surface.xx -= surface.area * c.x * c.x;
  surface.yy -= surface.area * c.y * c.y;
  surface.zz -= surface.area * c.z * c.z;
  surface.xy -= surface.area * c.x * c.y;
  surface.yz -= surface.area * c.y * c.z;
  surface.zx -= surface.area * c.z * c.x;
  surface.centre = vec3_add (mesh->points[0], c);
  return surface;
}
