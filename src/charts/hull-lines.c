/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "hull-lines.h"

#include <math.h>

/* A bend of more than this between two triangles is a chine, not a curve given by few points. */
#define SHARP_BEND (24 * G_PI / 180)
/* A triangle is seen edge-on where its normal is within this of square to the eye. */
#define EDGE_ON 1e-9

void
gb_view_place (GbView view, GbVec3 p, double *right, double *up)
{
  *right = view == GB_VIEW_END ? -p.y : p.x;
  *up = view == GB_VIEW_PLAN ? p.y : p.z;
}

static GbVec3
direction_of (GbView view)
{
  static const GbVec3 to_the_eye[GB_N_VIEWS] = {
    [GB_VIEW_SIDE] = { 0, -1, 0 },
    [GB_VIEW_PLAN] = { 0, 0, 1 },
    [GB_VIEW_END] = { -1, 0, 0 },
  };

  return to_the_eye[view];
}

static double
dot (GbVec3 a, GbVec3 b)
{
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

/* Of length 1; (0, 0, 0) for a triangle without an area. */
static GbVec3
normal_of (const GbMesh *mesh, guint t)
{
  GbVec3 p = mesh->points[mesh->triangles[t][0]], q = mesh->points[mesh->triangles[t][1]], r = mesh->points[mesh->triangles[t][2]];
  GbVec3 a = { q.x - p.x, q.y - p.y, q.z - p.z }, b = { r.x - p.x, r.y - p.y, r.z - p.z };
  GbVec3 n = { a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x };
  double length = sqrt (dot (n, n));

  return length > 0 ? (GbVec3){ n.x / length, n.y / length, n.z / length } : (GbVec3){ 0, 0, 0 };
}

/* +1 towards the eye, -1 away, 0 edge-on. */
static int
facing (GbVec3 normal, GbVec3 eye)
{
  double d = dot (normal, eye);

  return d > EDGE_ON ? 1 : d < -EDGE_ON ? -1 : 0;
}

static gboolean
is_drawn (GbVec3 n1, GbVec3 n2, GbVec3 eye)
{
  if (dot (n1, n1) == 0 || dot (n2, n2) == 0)
    return FALSE;
  return dot (n1, n2) < cos (SHARP_BEND) || facing (n1, eye) != facing (n2, eye);
}

static guint64
edge_key (guint i, guint j)
{
  return i < j ? (guint64) i << 32 | j : (guint64) j << 32 | i;
}

GArray *
gb_hull_lines (const GbMesh *mesh, GbView view)
{
  GArray *lines = g_array_new (FALSE, FALSE, sizeof (GbSegment));
  g_autofree GbVec3 *normals = g_new (GbVec3, mesh->n_triangles + 1);
  /* Edges whose second triangle is not met yet: to the number of the first, plus one. */
  g_autoptr (GHashTable) waiting = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  GbVec3 eye = direction_of (view);

  for (guint t = 0; t < mesh->n_triangles; t++)
    {
      normals[t] = normal_of (mesh, t);
      for (guint k = 0; k < 3; k++)
        {
          guint i = mesh->triangles[t][k], j = mesh->triangles[t][(k + 1) % 3];
          guint64 key = edge_key (i, j);
          guint first = GPOINTER_TO_UINT (g_hash_table_lookup (waiting, &key));

          if (first == 0)
            g_hash_table_insert (waiting, g_memdup2 (&key, sizeof key), GUINT_TO_POINTER (t + 1));
          else if (is_drawn (normals[first - 1], normals[t], eye))
            {
              GbSegment line = { mesh->points[i], mesh->points[j] };

              g_array_append_val (lines, line);
            }
        }
    }
  return lines;
}
