/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/boat.h"

G_BEGIN_DECLS

/* The axes of a group in those that it sits in, and what a change of axes does to moments. */

typedef struct
{
  double turn[3][3];
  double origin[3];
  gboolean turned; /* 'turn' is not the identity */
} GbAxes;

/* Mass and first moments; or any four numbers that change with the axes as those do. */
typedef struct
{
  double m, x, y, z;
} GbFirst;

/* The symmetric matrix that is the integral of p pT with p = (1, x, y, z): mass, first and second moments.
 * The covariance of (mass, first moments) changes with the axes in the same way, and is held in the same ten
 * numbers. */
typedef struct
{
  double m, x, y, z;
  double xx, yy, zz, xy, yz, zx;
} GbMoments;

extern const GbAxes gb_axes_none;

/* Turns about x, then y, then z of the enclosing axes, right-handed; unknown turns are none. */
void gb_turn_matrix (const GbPart *part, double turn[3][3]);

static inline gboolean
gb_part_is_turned (const GbPart *part)
{
  /* Not a number is neither less nor more than nothing. */
  return part->turn_x < 0 || part->turn_x > 0 || part->turn_y < 0 || part->turn_y > 0 || part->turn_z < 0
         || part->turn_z > 0;
}

/* An origin that is not said is that of the enclosing axes: a group may be no more than a heading. */
void gb_axes_of_group (const GbPart *group, GbAxes *axes);
/* @result takes @inner's points to where @outer takes what @inner gives. */
void gb_axes_compose (const GbAxes *outer, const GbAxes *inner, GbAxes *result);

GbAxes gb_axes_inverse (const GbAxes *axes);

void gb_first_move (GbFirst *first, const GbAxes *axes);
void gb_moments_move (GbMoments *moments, const GbAxes *axes);
/* Turns the second moments alone. */
void gb_moments_turn (GbMoments *moments, const double turn[3][3]);
/* About the centre: first moments become 0. Nothing happens where m is 0. */
void gb_moments_centre (GbMoments *moments);

static inline void
gb_turn_point (const double turn[3][3], double p[3])
{
  double x = p[0], y = p[1], z = p[2];

  for (guint i = 0; i < 3; i++)
    p[i] = turn[i][0] * x + turn[i][1] * y + turn[i][2] * z;
}

static inline void
gb_axes_outward (const GbAxes *axes, double p[3])
{
  if (axes->turned)
    gb_turn_point (axes->turn, p);
  for (guint i = 0; i < 3; i++)
    p[i] += axes->origin[i];
}

/* @mass at @centre, with its extent about that: second moments over the mass. */
static inline GbMoments
gb_moments_at (double mass, const double centre[3], const GbMoments *extent)
{
  double x = centre[0], y = centre[1], z = centre[2];

  return (GbMoments){ .m = mass,
                      .x = mass * x,
                      .y = mass * y,
                      .z = mass * z,
                      .xx = mass * (x * x + extent->xx),
                      .yy = mass * (y * y + extent->yy),
                      .zz = mass * (z * z + extent->zz),
                      .xy = mass * (x * y + extent->xy),
                      .yz = mass * (y * z + extent->yz),
                      .zx = mass * (z * x + extent->zx) };
}

static inline void
gb_moments_add (GbMoments *to, const GbMoments *from)
{
  to->m += from->m;
  to->x += from->x, to->y += from->y, to->z += from->z;
  to->xx += from->xx, to->yy += from->yy, to->zz += from->zz;
  to->xy += from->xy, to->yz += from->yz, to->zx += from->zx;
}

/* So many times over. */
static inline void
gb_moments_add_times (GbMoments *to, const GbMoments *from, double times)
{
  to->m += times * from->m;
  to->x += times * from->x, to->y += times * from->y, to->z += times * from->z;
  to->xx += times * from->xx, to->yy += times * from->yy, to->zz += times * from->zz;
  to->xy += times * from->xy, to->yz += times * from->yz, to->zx += times * from->zx;
}

static inline void
gb_moments_scale (GbMoments *moments, double factor)
{
  moments->m *= factor;
  moments->x *= factor, moments->y *= factor, moments->z *= factor;
  moments->xx *= factor, moments->yy *= factor, moments->zz *= factor;
  moments->xy *= factor, moments->yz *= factor, moments->zx *= factor;
}

/* Half of it on either side of the plane y = 0, as mirror images. */
static inline void
gb_moments_mirror (GbMoments *moments)
{
  moments->y = moments->xy = moments->yz = 0;
}

/* The errors of two mirror images are one error, and to opposite sides in y. */
static inline void
gb_errors_mirror (GbMoments *errors)
{
  errors->y = errors->yy = errors->xy = errors->yz = 0;
}

G_END_DECLS
