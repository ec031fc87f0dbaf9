/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-body-build"

/* The tree of a body: its triangles are halved by their middles along the longer side of the box about these,
 * until few are left. The order of all depends on the mesh alone. */

#include "body-private.h"

/* A triangle while it is put in order. */
typedef struct
{
  GbVec3 middle; /* three times */
  guint number;
} Item;

typedef struct
{
  GbBody *body;
  const GbMesh *mesh;
  Item *items;
} Builder;

static double
along (GbVec3 p, guint axis)
{
  return axis == 0 ? p.x : axis == 1 ? p.y : p.z;
}

/* Equal ones go by their number. */
static gboolean
is_before (const Item *a, const Item *b, guint axis)
{
  double p = along (a->middle, axis), q = along (b->middle, axis);

  return p < q || (p == q && a->number < b->number);
}

/* Hoare's selection: in [low, high], what comes before the item that belongs at @k is put before it, the
 * others behind. */
static void
divide (Item *items, guint low, guint high, guint k, guint axis)
{
  while (low < high)
    {
      Item pivot = items[low + (high - low) / 2];
      guint i = low, j = high;

      for (;;)
        {
          Item item;

          while (is_before (&items[i], &pivot, axis))
            i++;
          while (is_before (&pivot, &items[j], axis))
            j--;
          if (i >= j)
            break;
          item = items[i];
          items[i++] = items[j];
          items[j--] = item;
        }
      if (k <= j)
        high = j;
      else
        low = j + 1;
    }
}

typedef struct
{
  GbVec3 low, high;
} Box;

static const Box nowhere = { { INFINITY, INFINITY, INFINITY }, { -INFINITY, -INFINITY, -INFINITY } };

static void
widen (Box *box, GbVec3 p)
{
  box->low = (GbVec3){ MIN (box->low.x, p.x), MIN (box->low.y, p.y), MIN (box->low.z, p.z) };
  box->high = (GbVec3){ MAX (box->high.x, p.x), MAX (box->high.y, p.y), MAX (box->high.z, p.z) };
}

static guint
longest_axis (const Item *items, guint n)
{
  Box box = nowhere;
  GbVec3 size;

  for (guint i = 0; i < n; i++)
    widen (&box, items[i].middle);
  size = vec3_sub (box.high, box.low);
  return size.x >= size.y && size.x >= size.z ? 0 : size.y >= size.z ? 1 : 2;
}

/* The place of one of the mesh's points among those that the leaf has, @met in their order. */
static guint8
take_point (const Builder *builder, GbBodyNode *leaf, guint met[], guint number)
{
  GbBody *body = builder->body;

  for (guint8 i = 0; i < leaf->n_points; i++)
    if (met[i] == number)
      return i;
  met[leaf->n_points] = number;
  body->points[body->n_points++] = vec3_sub (builder->mesh->points[number], body->origin);
  return leaf->n_points++;
}

/* The items from @first on are its triangles. */
static Box
fill_leaf (const Builder *builder, GbBodyNode *leaf, guint first, guint n)
{
  GbBody *body = builder->body;
  guint met[3 * GB_BODY_LEAF];
  Box box = nowhere;

  leaf->first_point = body->n_points;
  leaf->first_triangle = first;
  leaf->n_triangles = (guint8)n;
  for (guint t = 0; t < n; t++)
    {
      const guint *numbers = builder->mesh->triangles[builder->items[first + t].number];
      GbVec3 corners[3];

      for (guint k = 0; k < 3; k++)
        body->triangles[first + t][k] = take_point (builder, leaf, met, numbers[k]);
      gb_body_corners (body, leaf, t, corners);
      body->pieces[first + t] = gb_piece (corners);
      gb_solid_add (&leaf->sums, corners, body->pieces[first + t]);
    }
  for (guint i = 0; i < leaf->n_points; i++)
    widen (&box, body->points[leaf->first_point + i]);
  return box;
}

static void
set_box (GbBodyNode *node, Box box, double rounding)
{
  GbVec3 size = vec3_sub (box.high, box.low);

  node->middle = vec3_scale (vec3_add (box.low, box.high), 0.5);
  node->half = (GbVec3){ size.x / 2 + rounding, size.y / 2 + rounding, size.z / 2 + rounding };
}

/* The node of the items from @first on, and all that is below it. */
static Box
add_node (const Builder *builder, guint first, guint n)
{
  GbBody *body = builder->body;
  guint here = body->n_nodes++;
  GbBodyNode *node = &body->nodes[here];
  Box box, other;

  *node = (GbBodyNode){ .right = 0 };
  if (n <= GB_BODY_LEAF)
    box = fill_leaf (builder, node, first, n);
  else
    {
      guint half = n / 2;

      divide (builder->items, first, first + n - 1, first + half, longest_axis (builder->items + first, n));
      box = add_node (builder, first, half);
      node->right = body->n_nodes;
      other = add_node (builder, first + half, n - half);
      widen (&box, other.low);
      widen (&box, other.high);
      node->sums = gb_solid_sum (node[1].sums, body->nodes[node->right].sums);
    }
  set_box (node, box, 1e-15 * body->reach);
  return box;
}

static void
find_origin (GbBody *body, const GbMesh *mesh)
{
  Box box = nowhere;

  for (guint t = 0; t < mesh->n_triangles; t++)
    for (guint k = 0; k < 3; k++)
      widen (&box, mesh->points[mesh->triangles[t][k]]);
  body->origin = vec3_scale (vec3_add (box.low, box.high), 0.5);
  body->reach = vec3_length (vec3_sub (box.high, body->origin));
}

static Item *
list_items (const GbMesh *mesh)
{
  Item *items = g_new (Item, mesh->n_triangles);

  for (guint t = 0; t < mesh->n_triangles; t++)
    {
      const guint *corners = mesh->triangles[t];
      GbVec3 ends = vec3_add (mesh->points[corners[0]], mesh->points[corners[1]]);

      items[t] = (Item){ vec3_add (ends, mesh->points[corners[2]]), t };
    }
  return items;
}

GbBody *
gb_body_new (const GbMesh *mesh)
{
  GbBody *body = g_new0 (GbBody, 1);
  g_autofree Item *items = NULL;

  g_atomic_ref_count_init (&body->refs);
  if (mesh->n_triangles == 0)
    return body;
  items = list_items (mesh);
  find_origin (body, mesh);
  body->n_triangles = mesh->n_triangles;
  body->triangles = g_malloc_n (mesh->n_triangles, sizeof *body->triangles);
  body->pieces = g_new (GbPiece, mesh->n_triangles);
  body->points = g_new (GbVec3, 3 * (gsize)mesh->n_triangles);
  /* A half has at least half a leaf's triangles: there are no more nodes than triangles. */
  body->nodes = g_new (GbBodyNode, mesh->n_triangles);
  add_node (&(Builder){ body, mesh, items }, 0, mesh->n_triangles);
  body->points = g_renew (GbVec3, body->points, body->n_points);
  body->nodes = g_renew (GbBodyNode, body->nodes, body->n_nodes);
  return body;
}
