/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-body"

/* A mesh made ready for being cut.
 *
 * Volume, its moment and area are sums over triangles and the tetrahedra that stand on them, with one apex
 * for all: the middle of the body's box, from which all places in here are reckoned. As the apex never moves,
 * each node of the tree knows the sums over all that is below it: a node that is all wet adds them, one that
 * is all dry adds nothing, and only where the water may go through one are its triangles looked at. The cut
 * face closes what is wet: a cone from the apex to it, whose volume and moment follow from the face's own
 * integrals, and those from its edges. */

#include "body-private.h"

GbBody *
gb_body_ref (GbBody *body)
{
  g_atomic_ref_count_inc (&body->refs);
  return body;
}

void
gb_body_unref (GbBody *body)
{
  if (body == NULL || !g_atomic_ref_count_dec (&body->refs))
    return;
  g_free (body->points);
  g_free (body->triangles);
  g_free (body->pieces);
  g_free (body->nodes);
  g_free (body);
}

double
gb_body_volume (const GbBody *body)
{
  return body->n_nodes > 0 ? body->nodes[0].sums.volume : 0;
}

GbVec3
gb_body_centre (const GbBody *body)
{
  double volume = gb_body_volume (body);

  return volume > 0 ? vec3_add (body->origin, vec3_scale (body->nodes[0].sums.moment, 1 / volume))
                    : (GbVec3){ NAN, NAN, NAN };
}

/* How far the box reaches along @up, over its middle. */
static inline double
box_reach (const GbBodyNode *node, GbVec3 up)
{
  return fabs (up.x) * node->half.x + fabs (up.y) * node->half.y + fabs (up.z) * node->half.z;
}

static double
highest_of (const GbBody *body, guint i, GbVec3 up, double highest)
{
  const GbBodyNode *node = &body->nodes[i];

  if (vec3_dot (up, node->middle) + box_reach (node, up) <= highest)
    return highest;
  if (node->right != 0)
    {
      const GbBodyNode *left = node + 1, *right = &body->nodes[node->right];
      gboolean right_first = vec3_dot (up, right->middle) > vec3_dot (up, left->middle);

      highest = highest_of (body, right_first ? node->right : i + 1, up, highest);
      return highest_of (body, right_first ? i + 1 : node->right, up, highest);
    }
  for (guint k = 0; k < node->n_points; k++)
    highest = fmax (highest, vec3_dot (up, body->points[node->first_point + k]));
  return highest;
}

void
gb_body_extent (const GbBody *body, GbVec3 up, double *least, double *greatest)
{
  double at = vec3_dot (up, body->origin);

  *least = *greatest = NAN;
  if (body->n_nodes == 0)
    return;
  *greatest = at + highest_of (body, 0, up, -INFINITY);
  *least = at - highest_of (body, 0, vec3_scale (up, -1), -INFINITY);
}

/* A cut as it goes on. All is reckoned from the body's origin, 'height' too. */
typedef struct
{
  const GbBody *body;
  GbVec3 up;
  double height;
  double margin; /* more than what rounding may do to a height */
  GbSolid solid;
  GbFace face;
} Cut;

static void
add_leaf (Cut *cut, const GbBodyNode *leaf)
{
  const GbBody *body = cut->body;
  const GbVec3 *points = body->points + leaf->first_point;
  double heights[3 * GB_BODY_LEAF];

  for (guint i = 0; i < leaf->n_points; i++)
    heights[i] = vec3_dot (cut->up, points[i]) - cut->height;
  for (guint t = 0; t < leaf->n_triangles; t++)
    {
      const guint8 *places = body->triangles[leaf->first_triangle + t];
      GbPiece piece = body->pieces[leaf->first_triangle + t];
      double h[3] = { heights[places[0]], heights[places[1]], heights[places[2]] };
      guint n_wet = (h[0] < 0) + (h[1] < 0) + (h[2] < 0);
      GbVec3 corners[3];
      GbTip tip;

      if (n_wet == 0)
        continue;
      gb_body_corners (body, leaf, t, corners);
      if (n_wet == 3)
        {
          gb_solid_add (&cut->solid, corners, piece);
          continue;
        }
      tip = gb_tip (corners, h, n_wet);
      gb_solid_add_wet (&cut->solid, corners, piece, &tip);
      gb_face_add_cut (&cut->face, &tip);
    }
}

/* Whether a node is wet or dry is said only where it is so beyond all rounding: a triangle takes part in the
 * cut or not by the very heights of its corners that its neighbours go by. */
static void
add_nodes (Cut *cut)
{
  const GbBodyNode *nodes = cut->body->nodes;
  guint waiting[GB_BODY_DEEPEST], n = 0;

  waiting[n++] = 0;
  while (n > 0)
    {
      guint i = waiting[--n];
      const GbBodyNode *node = &nodes[i];
      double height = vec3_dot (cut->up, node->middle) - cut->height,
             reach = box_reach (node, cut->up) + cut->margin;

      if (height > reach)
        continue;
      if (height < -reach)
        cut->solid = gb_solid_sum (cut->solid, node->sums);
      else if (node->right == 0)
        add_leaf (cut, node);
      else
        {
          waiting[n++] = node->right;
          waiting[n++] = i + 1;
        }
    }
}

/* The first and second moments of the cut face from the body's origin, in the body's axes; the face is
 * 'height' over it. */
static void
face_moments (const Cut *cut, GbVec3 *moment, GbTensor *second)
{
  const GbFace *face = &cut->face;
  GbVec3 u = face->u, v = face->v, w = vec3_scale (cut->up, cut->height);
  /* What it has of u, of v, and of both with w. */
  GbVec3 across = vec3_add (vec3_scale (u, face->x), vec3_scale (v, face->y));
  GbVec3 du = vec3_add (vec3_scale (u, face->xx), vec3_scale (v, face->xy));
  GbVec3 dv = vec3_add (vec3_scale (u, face->xy), vec3_scale (v, face->yy));

  *moment = vec3_add (across, vec3_scale (w, face->area));
  *second = (GbTensor){
    .xx = du.x * u.x + dv.x * v.x + 2 * across.x * w.x + face->area * w.x * w.x,
    .yy = du.y * u.y + dv.y * v.y + 2 * across.y * w.y + face->area * w.y * w.y,
    .zz = du.z * u.z + dv.z * v.z + 2 * across.z * w.z + face->area * w.z * w.z,
    .xy = du.x * u.y + dv.x * v.y + across.x * w.y + across.y * w.x + face->area * w.x * w.y,
    .yz = du.y * u.z + dv.y * v.z + across.y * w.z + across.z * w.y + face->area * w.y * w.z,
    .zx = du.z * u.x + dv.z * v.x + across.z * w.x + across.x * w.z + face->area * w.z * w.x,
  };
}

/* From the body's origin at @o to that of the boat. */
static GbTensor
moved (GbTensor second, GbVec3 moment, double area, GbVec3 o)
{
  return (GbTensor){
    .xx = second.xx + 2 * moment.x * o.x + area * o.x * o.x,
    .yy = second.yy + 2 * moment.y * o.y + area * o.y * o.y,
    .zz = second.zz + 2 * moment.z * o.z + area * o.z * o.z,
    .xy = second.xy + moment.x * o.y + moment.y * o.x + area * o.x * o.y,
    .yz = second.yz + moment.y * o.z + moment.z * o.y + area * o.y * o.z,
    .zx = second.zx + moment.z * o.x + moment.x * o.z + area * o.z * o.x,
  };
}

/* Adds what was cut; @side is -1 for the mirror image. */
static void
add_immersion (GbImmersion *sum, const Cut *cut, double side)
{
  GbVec3 o = cut->body->origin, face_moment, moment;
  double volume = cut->solid.volume + cut->face.area * cut->height / 3;
  double area = cut->face.area;
  GbTensor second;

  face_moments (cut, &face_moment, &second);
  second = moved (second, face_moment, area, o);
  moment = vec3_add (cut->solid.moment, vec3_scale (face_moment, cut->height / 4));
  moment = vec3_add (moment, vec3_scale (o, volume));
  face_moment = vec3_add (face_moment, vec3_scale (o, area));

  sum->volume += volume;
  sum->moment = vec3_add (sum->moment, (GbVec3){ moment.x, side * moment.y, moment.z });
  sum->plane += area;
  sum->plane_moment
      = vec3_add (sum->plane_moment, (GbVec3){ face_moment.x, side * face_moment.y, face_moment.z });
  sum->plane_second.xx += second.xx;
  sum->plane_second.yy += second.yy;
  sum->plane_second.zz += second.zz;
  sum->plane_second.xy += side * second.xy;
  sum->plane_second.yz += side * second.yz;
  sum->plane_second.zx += second.zx;
  sum->wetted += cut->solid.area;
  sum->girth += cut->face.girth;
}

void
gb_body_immerse (const GbBody *body, gboolean mirrored, GbVec3 up, double height, GbImmersion *sum)
{
  double side = mirrored ? -1 : 1;
  Cut cut = { .body = body, .up = { up.x, side * up.y, up.z } };

  if (body->n_nodes == 0)
    return;
  cut.height = height - vec3_dot (cut.up, body->origin);
  cut.margin = 1e-14 * (body->reach + fabs (cut.height));
  cut.face = gb_face (cut.up);
  add_nodes (&cut);
  add_immersion (sum, &cut, side);
}

/* How often the triangle's outline, seen from above, turns about (@x, @y): 1, 0 or -1. An edge is on the left
 * or the right of the place by a sum that does not depend on its direction, and its lower end belongs to it
 * but its upper one does not: so neighbours share no place and leave none out. */
static int
turns_about (const GbVec3 corners[3], double x, double y)
{
  int turns = 0;

  for (guint k = 0; k < 3; k++)
    {
      GbVec3 from = corners[k], to = corners[(k + 1) % 3];
      gboolean is_up = from.y <= y && y < to.y, is_down = to.y <= y && y < from.y;
      GbVec3 low = is_up ? from : to, high = is_up ? to : from;

      if ((is_up || is_down) && (high.x - low.x) * (y - low.y) - (x - low.x) * (high.y - low.y) > 0)
        turns += is_up ? 1 : -1;
    }
  return turns;
}

/* What the triangles that a line straight up from @p goes through add to the winding number about it. */
static int
winding (const GbBody *body, guint i, GbVec3 p)
{
  const GbBodyNode *node = &body->nodes[i];
  int turns = 0;

  if (fabs (p.x - node->middle.x) > node->half.x || fabs (p.y - node->middle.y) > node->half.y
      || p.z - node->middle.z > node->half.z)
    return 0;
  if (node->right != 0)
    return winding (body, i + 1, p) + winding (body, node->right, p);
  for (guint t = 0; t < node->n_triangles; t++)
    {
      GbVec3 corners[3];
      int turn;

      gb_body_corners (body, node, t, corners);
      turn = turns_about (corners, p.x, p.y);
      /* Above @p if @p is behind a face that looks up, or before one that looks down. */
      if (turn * vec3_dot (gb_normal (corners), vec3_sub (p, corners[0])) < 0)
        turns += turn;
    }
  return turns;
}

gboolean
gb_body_contains (const GbBody *body, GbVec3 p)
{
  return body->n_nodes > 0 && winding (body, 0, vec3_sub (p, body->origin)) > 0;
}
