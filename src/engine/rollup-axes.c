/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-rollup"

#include "rollup-axes.h"

#include <math.h>

const GbAxes gb_axes_none = { .turn = { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } } };

static double
known_or_zero (double value)
{
  return isnan (value) ? 0 : value;
}

void
gb_turn_matrix (const GbPart *part, double turn[3][3])
{
  double a = known_or_zero (part->turn_x), b = known_or_zero (part->turn_y), c = known_or_zero (part->turn_z);
  double ca = cos (a), sa = sin (a), cb = cos (b), sb = sin (b), cc = cos (c), sc = sin (c);

  turn[0][0] = cc * cb, turn[0][1] = cc * sb * sa - sc * ca, turn[0][2] = cc * sb * ca + sc * sa;
  turn[1][0] = sc * cb, turn[1][1] = sc * sb * sa + cc * ca, turn[1][2] = sc * sb * ca - cc * sa;
  turn[2][0] = -sb, turn[2][1] = cb * sa, turn[2][2] = cb * ca;
}

void
gb_axes_of_group (const GbPart *group, GbAxes *axes)
{
  *axes = gb_axes_none;
  axes->origin[0] = known_or_zero (group->x);
  axes->origin[1] = known_or_zero (group->y);
  axes->origin[2] = known_or_zero (group->z);
  axes->turned = gb_part_is_turned (group);
  if (axes->turned)
    gb_turn_matrix (group, axes->turn);
}

GbAxes
gb_axes_inverse (const GbAxes *axes)
{
  GbAxes inverse = { .turned = axes->turned };

  /* The inverse of a turn is its transpose. */
  for (guint i = 0; i < 3; i++)
    for (guint j = 0; j < 3; j++)
      inverse.turn[i][j] = axes->turn[j][i];
  for (guint i = 0; i < 3; i++)
    inverse.origin[i] = -(inverse.turn[i][0] * axes->origin[0] + inverse.turn[i][1] * axes->origin[1]
                          + inverse.turn[i][2] * axes->origin[2]);
  return inverse;
}

void
gb_axes_compose (const GbAxes *outer, const GbAxes *inner, GbAxes *result)
{
  double origin[3] = { inner->origin[0], inner->origin[1], inner->origin[2] };
  GbAxes both = *inner;

  gb_axes_outward (outer, origin);
  for (guint i = 0; i < 3; i++)
    both.origin[i] = origin[i];
  both.turned = outer->turned || inner->turned;
  if (outer->turned)
    for (guint i = 0; i < 3; i++)
      for (guint j = 0; j < 3; j++)
        both.turn[i][j] = outer->turn[i][0] * inner->turn[0][j] + outer->turn[i][1] * inner->turn[1][j]
                          + outer->turn[i][2] * inner->turn[2][j];
  *result = both;
}

void
gb_first_move (GbFirst *first, const GbAxes *axes)
{
  double p[3] = { first->x, first->y, first->z };

  if (axes->turned)
    gb_turn_point (axes->turn, p);
  first->x = p[0] + axes->origin[0] * first->m;
  first->y = p[1] + axes->origin[1] * first->m;
  first->z = p[2] + axes->origin[2] * first->m;
}

void
gb_moments_turn (GbMoments *moments, const double turn[3][3])
{
  const double s[3][3] = { { moments->xx, moments->xy, moments->zx },
                           { moments->xy, moments->yy, moments->yz },
                           { moments->zx, moments->yz, moments->zz } };
  double half[3][3], full[3][3];

  for (guint i = 0; i < 3; i++)
    for (guint j = 0; j < 3; j++)
      half[i][j] = turn[i][0] * s[0][j] + turn[i][1] * s[1][j] + turn[i][2] * s[2][j];
  for (guint i = 0; i < 3; i++)
    for (guint j = i; j < 3; j++)
      full[i][j] = half[i][0] * turn[j][0] + half[i][1] * turn[j][1] + half[i][2] * turn[j][2];
  moments->xx = full[0][0], moments->yy = full[1][1], moments->zz = full[2][2];
  moments->xy = full[0][1], moments->yz = full[1][2], moments->zx = full[0][2];
}

static void
shift (GbMoments *moments, double dx, double dy, double dz)
{
  double m = moments->m, x = moments->x, y = moments->y, z = moments->z;

  moments->xx += dx * (2 * x + dx * m);
  moments->yy += dy * (2 * y + dy * m);
  moments->zz += dz * (2 * z + dz * m);
  moments->xy += dx * y + dy * x + dx * dy * m;
  moments->yz += dy * z + dz * y + dy * dz * m;
  moments->zx += dz * x + dx * z + dz * dx * m;
  moments->x += dx * m;
  moments->y += dy * m;
  moments->z += dz * m;
}

void
gb_moments_move (GbMoments *moments, const GbAxes *axes)
{
  if (axes->turned)
    {
      double p[3] = { moments->x, moments->y, moments->z };

      gb_turn_point (axes->turn, p);
      moments->x = p[0], moments->y = p[1], moments->z = p[2];
      gb_moments_turn (moments, axes->turn);
    }
  shift (moments, axes->origin[0], axes->origin[1], axes->origin[2]);
}

void
gb_moments_centre (GbMoments *moments)
{
  double m = moments->m;

  if (m != 0)
    shift (moments, -moments->x / m, -moments->y / m, -moments->z / m);
}
