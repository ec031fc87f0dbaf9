/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/floater.h"
#include "engine/mesh-private.h"

G_BEGIN_DECLS

static inline void
gb_tensor_add (GbTensor *to, const GbTensor *from, double times)
{
  to->xx += times * from->xx;
  to->yy += times * from->yy;
  to->zz += times * from->zz;
  to->xy += times * from->xy;
  to->yz += times * from->yz;
  to->zx += times * from->zx;
}

/* Adds @times the matrix p qT + q pT. */
static inline void
gb_tensor_add_pair (GbTensor *to, GbVec3 p, GbVec3 q, double times)
{
  GbTensor pair = { 2 * p.x * q.x,         2 * p.y * q.y,         2 * p.z * q.z,
                    p.x * q.y + p.y * q.x, p.y * q.z + p.z * q.y, p.z * q.x + p.x * q.z };

  gb_tensor_add (to, &pair, times);
}

static inline double
gb_tensor_between (const GbTensor *tensor, GbVec3 p, GbVec3 q)
{
  return tensor->xx * p.x * q.x + tensor->yy * p.y * q.y + tensor->zz * p.z * q.z
         + tensor->xy * (p.x * q.y + p.y * q.x) + tensor->yz * (p.y * q.z + p.z * q.y)
         + tensor->zx * (p.z * q.x + p.x * q.z);
}

/* The liquid of one tank, as it lies level. */
typedef struct
{
  GbVec3 centre;
  GbTensor surface; /* second moment of its surface about its own centre, m4 */
} GbLiquid;
void gb_tank_settle (const GbTank *tank, GbVec3 up, GbLiquid *liquid);

/* Adds what is under water of one ball. */
void gb_ball_immerse (const GbBall *ball, GbVec3 up, double height, GbImmersion *sum);

/* The energy at one attitude, with its first and second slopes in the height d of the water and in 'up' n,
 * whose three numbers are taken as free of its unit length; gb_float_frame() puts that right. */
typedef struct
{
  GbAttitude at;
  double heel; /* not wrapped at half a turn: it goes on from what it was before */
  double mass;
  GbVec3 gravity;
  double energy;
  double sink;         /* in d */
  GbVec3 turn;         /* in n */
  double plane;        /* in d and d */
  GbVec3 plane_moment; /* minus that in d and n */
  GbTensor bend;       /* in n and n */
} GbFloatPoint;
void gb_float_point_find (GbFloatPoint *point, const GbFloater *floater, GbAttitude at, double heel_before);

/* The same along the sphere that n lies on, the water turning about a pivot in it: the centre of the
 * waterplane, so that turning and sinking do not disturb each other. */
typedef struct
{
  GbVec3 pivot;
  GbVec3 along[2]; /* unit tangents of n: trim by the bow, heel to starboard */
  double slopes[2];
  double bends[2]; /* in one and the same */
  double cross;    /* in both */
} GbFloatFrame;
void gb_float_frame (const GbFloatPoint *point, GbFloatFrame *frame);

/* Directions in which turning is not coupled, the less stiff one first. */
typedef struct
{
  double bends[2];
  double ways[2][2]; /* by rank: share of trim, of heel */
} GbFloatModes;
void gb_float_modes (const GbFloatFrame *frame, guint n_turns, GbFloatModes *modes);

/* The turn that lowers the second-order model most, no further than @radius. Slopes of @noise or less are
 * taken as none: balanced on an edge, she stays there until all else is at rest. @n_turns: 0, 1 (trim
 * alone) or 2. */
void gb_float_turn (const GbFloatFrame *frame, guint n_turns, double radius, double noise, double turn[2]);

/* Where @at goes when it is turned by @turn about the frame's pivot and sinks by @sink. */
GbAttitude gb_float_turned (GbAttitude at, const GbFloatFrame *frame, const double turn[2], double sink);

/* The least and greatest height along @up of all that carries. */
void gb_floater_extent (const GbFloater *floater, GbVec3 up, double *least, double *greatest);
/* All that it could carry, kg; and the size by which moments are judged: that of its volume and how far its
 * weight and its bodies lie apart. */
double gb_floater_most (const GbFloater *floater, double *size);

G_END_DECLS
