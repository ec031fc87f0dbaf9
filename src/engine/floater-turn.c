/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-floater"

/* The energy's second-order model in trim and heel, and the turn that it asks for. */

#include "floater-private.h"

/* Trim and heel turn n along these, also where heel is only a name, standing on end. */
static void
set_tangents (GbVec3 n, GbVec3 along[2])
{
  double level = hypot (n.y, n.z), heel = atan2 (n.y, n.z);

  along[0] = (GbVec3){ -level, n.x * sin (heel), n.x * cos (heel) };
  along[1] = (GbVec3){ 0, cos (heel), -sin (heel) };
}

/* In p and q, the water turning about the pivot c: its height is then d = d' + n . c. */
static double
bend_between (const GbFloatPoint *point, GbVec3 c, GbVec3 p, GbVec3 q)
{
  double cp = vec3_dot (c, p), cq = vec3_dot (c, q);

  return gb_tensor_between (&point->bend, p, q) - vec3_dot (point->plane_moment, p) * cq
         - cp * vec3_dot (point->plane_moment, q) + point->plane * cp * cq;
}

void
gb_float_frame (const GbFloatPoint *point, GbFloatFrame *frame)
{
  GbVec3 n = point->at.up, turn;
  double inward;

  frame->pivot = point->plane > 0 ? vec3_scale (point->plane_moment, 1 / point->plane) : point->gravity;
  turn = vec3_add (point->turn, vec3_scale (frame->pivot, point->sink));
  set_tangents (n, frame->along);
  /* What n would gain by leaving the sphere, it loses by bending round with it. */
  inward = vec3_dot (turn, n);
  for (guint i = 0; i < 2; i++)
    {
      frame->slopes[i] = vec3_dot (turn, frame->along[i]);
      frame->bends[i] = bend_between (point, frame->pivot, frame->along[i], frame->along[i]) - inward;
    }
  frame->cross = bend_between (point, frame->pivot, frame->along[0], frame->along[1]);
}

/* One rotation of Jacobi's method; none where trim and heel are apart but for rounding, so that an upright
 * boat stays so. */
static void
find_rotation (const GbFloatFrame *frame, double *cosine, double *sine)
{
  double tau, tangent;

  *cosine = 1;
  *sine = 0;
  if (fabs (frame->cross) <= 1e-13 * (fabs (frame->bends[0]) + fabs (frame->bends[1])))
    return;
  tau = (frame->bends[1] - frame->bends[0]) / (2 * frame->cross);
  tangent = (tau < 0 ? -1 : 1) / (fabs (tau) + sqrt (1 + tau * tau));
  *cosine = 1 / sqrt (1 + tangent * tangent);
  *sine = tangent * *cosine;
}

void
gb_float_modes (const GbFloatFrame *frame, guint n_turns, GbFloatModes *modes)
{
  double c = 1, s = 0, bends[2];
  guint first;

  if (n_turns == 2)
    find_rotation (frame, &c, &s);
  bends[0] = frame->bends[0] - s / c * frame->cross;
  bends[1] = frame->bends[1] + s / c * frame->cross;
  first = n_turns == 2 && bends[1] < bends[0] ? 1 : 0;
  *modes = (GbFloatModes){ { bends[first], bends[!first] }, { { c, -s }, { s, c } } };
  if (first == 1)
    *modes = (GbFloatModes){ { bends[1], bends[0] }, { { s, c }, { c, -s } } };
}

/* How far each mode goes where all are made stiffer by @stiffer. Returns the whole way. */
static double
go (const GbFloatModes *modes, const double slopes[2], double stiffer, double way[2])
{
  for (guint i = 0; i < 2; i++)
    way[i] = slopes[i] == 0 ? 0 : -slopes[i] / (modes->bends[i] + stiffer);
  return hypot (way[0], way[1]);
}

/* The least of the model within a circle lies where it is made just so much stiffer that its least is on
 * the circle, and convex. */
static void
go_within (const GbFloatModes *modes, const double slopes[2], double radius, double way[2])
{
  double least = INFINITY, low, high;

  for (guint i = 0; i < 2; i++)
    if (slopes[i] != 0)
      least = fmin (least, modes->bends[i]);
  if (least > 0 && go (modes, slopes, 0, way) <= radius)
    return;
  low = fmax (0, -least);
  high = low + hypot (slopes[0], slopes[1]) / radius;
  for (guint i = 0; i < 60 && high - low > 1e-6 * high; i++)
    {
      double middle = (low + high) / 2;

      if (go (modes, slopes, middle, way) > radius)
        low = middle;
      else
        high = middle;
    }
  go (modes, slopes, high, way);
}

void
gb_float_turn (const GbFloatFrame *frame, guint n_turns, double radius, double noise, double turn[2])
{
  GbFloatModes modes;
  double slopes[2] = { 0, 0 }, way[2] = { 0, 0 };

  turn[0] = turn[1] = 0;
  if (n_turns == 0)
    return;
  gb_float_modes (frame, n_turns, &modes);
  for (guint i = 0; i < n_turns; i++)
    {
      double slope = modes.ways[i][0] * frame->slopes[0] + modes.ways[i][1] * frame->slopes[1];

      slopes[i] = fabs (slope) > noise ? slope : 0;
    }
  if (slopes[0] == 0 && slopes[1] == 0)
    return;
  go_within (&modes, slopes, radius, way);
  for (guint i = 0; i < n_turns; i++)
    for (guint k = 0; k < 2; k++)
      turn[k] += way[i] * modes.ways[i][k];
}

GbAttitude
gb_float_turned (GbAttitude at, const GbFloatFrame *frame, const double turn[2], double sink)
{
  double over = at.height - vec3_dot (at.up, frame->pivot) + sink;
  GbVec3 way = vec3_add (vec3_scale (frame->along[0], turn[0]), vec3_scale (frame->along[1], turn[1]));
  double angle = vec3_length (way);
  GbAttitude turned = at;

  if (angle > 0)
    {
      turned.up = vec3_add (vec3_scale (at.up, cos (angle)), vec3_scale (way, sin (angle) / angle));
      turned.up = vec3_scale (turned.up, 1 / vec3_length (turned.up));
    }
  turned.height = vec3_dot (turned.up, frame->pivot) + over;
  return turned;
}
