/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-mesh-build"

#include "mesh-private.h"

void
gb_mesh_builder_init (GbMeshBuilder *builder)
{
  builder->points = g_array_new (FALSE, FALSE, sizeof (GbVec3));
  builder->triangles = g_array_new (FALSE, FALSE, sizeof (guint[3]));
}

void
gb_mesh_builder_clear (GbMeshBuilder *builder)
{
  g_clear_pointer (&builder->points, g_array_unref);
  g_clear_pointer (&builder->triangles, g_array_unref);
}

guint
gb_mesh_builder_add_point (GbMeshBuilder *builder, double x, double y, double z)
{
  GbVec3 point = { x, y, z };

  g_array_append_val (builder->points, point);
  return builder->points->len - 1;
}

GbVec3
gb_mesh_builder_point (const GbMeshBuilder *builder, guint i)
{
  return g_array_index (builder->points, GbVec3, i);
}

void
gb_mesh_builder_add_triangle (GbMeshBuilder *builder, guint i, guint j, guint k)
{
  guint corners[3] = { i, j, k };

  if (i != j && j != k && k != i)
    g_array_append_val (builder->triangles, corners);
}

GbMesh *
gb_mesh_builder_finish (GbMeshBuilder *builder, guint n_lid)
{
  GbMesh *mesh = g_new0 (GbMesh, 1);

  mesh->n_points = builder->points->len;
  mesh->n_triangles = builder->triangles->len;
  mesh->n_lid = n_lid;
  mesh->points = (GbVec3 *) g_array_free (g_steal_pointer (&builder->points), FALSE);
  mesh->triangles = (guint (*)[3]) g_array_free (g_steal_pointer (&builder->triangles), FALSE);
  return mesh;
}

/* A corner of a polygon that is being filled, in the polygon's own plane. */
typedef struct
{
  double u, v;
  guint corner;
  guint before, after;
} Node;

static double
turn_at (const Node *a, const Node *b, const Node *c)
{
  return (b->u - a->u) * (c->v - a->v) - (c->u - a->u) * (b->v - a->v);
}

static gboolean
same_place (const Node *a, const Node *b)
{
  return a->u == b->u && a->v == b->v;
}

/* TRUE if another corner lies in the triangle that would be cut off at @b, or on its edge. */
static gboolean
holds_another (const Node *nodes, const Node *b)
{
  const Node *a = &nodes[b->before], *c = &nodes[b->after];

  for (const Node *p = &nodes[c->after]; p != a; p = &nodes[p->after])
    if (turn_at (a, b, p) >= 0 && turn_at (b, c, p) >= 0 && turn_at (c, a, p) >= 0 && !same_place (p, a)
        && !same_place (p, b) && !same_place (p, c))
      return TRUE;
  return FALSE;
}

/* A corner to cut off: a real ear if there is one, else one that lies in a line with its neighbours, else
 * any. A polygon that does not cross itself always has one of the first two. */
static guint
find_ear (const Node *nodes, guint start, guint n_left, double flat_turn)
{
  guint flat = G_MAXUINT;
  guint i = start;

  for (guint tried = 0; tried < n_left; tried++, i = nodes[i].after)
    {
      double turn = turn_at (&nodes[nodes[i].before], &nodes[i], &nodes[nodes[i].after]);

      if (turn > flat_turn && !holds_another (nodes, &nodes[i]))
        return i;
      if (flat == G_MAXUINT && fabs (turn) <= flat_turn)
        flat = i;
    }
  return flat != G_MAXUINT ? flat : start;
}

/* Newell's normal: twice the area of a flat polygon, along its normal. */
static GbVec3
polygon_normal (const GbMeshBuilder *builder, const guint *corners, guint n)
{
  GbVec3 origin = gb_mesh_builder_point (builder, corners[0]);
  GbVec3 normal = { 0, 0, 0 };

  for (guint i = 1; i + 1 < n; i++)
    {
      GbVec3 a = vec3_sub (gb_mesh_builder_point (builder, corners[i]), origin);
      GbVec3 b = vec3_sub (gb_mesh_builder_point (builder, corners[i + 1]), origin);

      normal = vec3_add (normal, vec3_cross (a, b));
    }
  return normal;
}

/* The polygon as seen along the axis that it faces most, so that it turns anticlockwise. */
static Node *
project (const GbMeshBuilder *builder, const guint *corners, guint n, GbVec3 normal)
{
  Node *nodes = g_new (Node, n);
  double x = fabs (normal.x), y = fabs (normal.y), z = fabs (normal.z);

  for (guint i = 0; i < n; i++)
    {
      GbVec3 p = gb_mesh_builder_point (builder, corners[i]);
      double facing = normal.z;

      nodes[i] = (Node){ p.x, p.y, corners[i], (i + n - 1) % n, (i + 1) % n };
      if (x >= y && x >= z)
        nodes[i].u = p.y, nodes[i].v = p.z, facing = normal.x;
      else if (y >= z)
        nodes[i].u = p.z, nodes[i].v = p.x, facing = normal.y;
      if (facing < 0)
        nodes[i].u = -nodes[i].u;
    }
  return nodes;
}

void
gb_mesh_builder_add_face (GbMeshBuilder *builder, const guint *corners, guint n)
{
  g_autofree Node *nodes = NULL;
  GbVec3 normal;
  double flat_turn;
  guint at = 0;

  if (n < 3)
    return;
  normal = polygon_normal (builder, corners, n);
  flat_turn = 1e-12 * vec3_length (normal);
  nodes = project (builder, corners, n, normal);
  for (guint n_left = n; n_left > 2; n_left--)
    {
      Node *ear;

      at = find_ear (nodes, at, n_left, flat_turn);
      ear = &nodes[at];
      gb_mesh_builder_add_triangle (builder, nodes[ear->before].corner, ear->corner,
                                    nodes[ear->after].corner);
      nodes[ear->before].after = ear->after;
      nodes[ear->after].before = ear->before;
      at = ear->after;
    }
}
