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

guint *
gb_weld_points (const GbMesh *mesh)
{
  g_autoptr (GHashTable) first_at
      = g_hash_table_new_full (g_bytes_hash, g_bytes_equal, (GDestroyNotify)g_bytes_unref, NULL);
  guint *first = g_new (guint, mesh->n_points + 1);

  for (guint i = 0; i < mesh->n_points; i++)
    {
      /* Adding zero makes -0 the same bytes as 0. */
      GbVec3 p = { mesh->points[i].x + 0.0, mesh->points[i].y + 0.0, mesh->points[i].z + 0.0 };
      GBytes *key = g_bytes_new (&p, sizeof p);
      gpointer known = g_hash_table_lookup (first_at, key);

      first[i] = known != NULL ? GPOINTER_TO_UINT (known) - 1 : i;
      if (known == NULL)
        g_hash_table_insert (first_at, key, GUINT_TO_POINTER (i + 1));
      else
        g_bytes_unref (key);
    }
  return first;
}

/* Of length 1; (0, 0, 0) for a triangle without an area. */
static GbVec3
normal_of (const GbMesh *mesh, const guint corners[3])
{
  GbVec3 p = mesh->points[corners[0]], q = mesh->points[corners[1]], r = mesh->points[corners[2]];
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
  return i < j ? (guint64)i << 32 | j : (guint64)j << 32 | i;
}

/* Edges whose second triangle is not met yet, by their ends: the normal of the first. */
typedef struct
{
  guint64 key;
  GbVec3 normal;
} Waiting;

static void
draw_edge (GbSegment line, GbVec3 n1, GbVec3 n2, GArray *lines[GB_N_VIEWS])
{
  for (guint v = 0; v < GB_N_VIEWS; v++)
    if (is_drawn (n1, n2, direction_of ((GbView)v)))
      g_array_append_val (lines[v], line);
}

static void
meet_edge (
    GHashTable *waiting, const GbMesh *mesh, guint i, guint j, GbVec3 normal, GArray *lines[GB_N_VIEWS])
{
  Waiting edge = { edge_key (i, j), normal };
  const Waiting *other = g_hash_table_lookup (waiting, &edge.key);

  if (other == NULL)
    {
      Waiting *kept = g_memdup2 (&edge, sizeof edge);

      g_hash_table_insert (waiting, &kept->key, kept);
    }
  else
    draw_edge ((GbSegment){ mesh->points[i], mesh->points[j] }, other->normal, normal, lines);
}

void
gb_hull_lines (const GbMesh *mesh, GArray *lines[GB_N_VIEWS])
{
  g_autoptr (GHashTable) waiting = g_hash_table_new_full (g_int64_hash, g_int64_equal, NULL, g_free);
  g_autofree guint *first = gb_weld_points (mesh);

  for (guint v = 0; v < GB_N_VIEWS; v++)
    lines[v] = g_array_new (FALSE, FALSE, sizeof (GbSegment));
  for (guint t = 0; t < mesh->n_triangles; t++)
    {
      guint corners[3];
      GbVec3 normal;

      for (guint k = 0; k < 3; k++)
        corners[k] = first[mesh->triangles[t][k]];
      if (corners[0] == corners[1] || corners[1] == corners[2] || corners[2] == corners[0])
        continue;
      normal = normal_of (mesh, corners);
      for (guint k = 0; k < 3; k++)
        meet_edge (waiting, mesh, corners[k], corners[(k + 1) % 3], normal, lines);
    }
}
