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

/* The symmetric matrix that is the integral of p pT with p = (1, x, y, z): mass, first and second moments. The covariance of (mass,
 * first moments) changes with the axes in the same way, and is held in the same ten numbers. */
typedef struct
{
  double m, x, y, z;
  double xx, yy, zz, xy, yz, zx;
} GbMoments;

extern const GbAxes gb_axes_none;

/* Turns about x, then y, then z of the enclosing axes, right-handed. FALSE if nothing is turned; unknown turns are none. */
gboolean gb_turn_matrix (const GbPart *part, double turn[3][3]);
/* An origin that is not said is that of the enclosing axes: a group may be no more than a heading. */
void gb_axes_of_group (const GbPart *group, GbAxes *axes);
/* @result takes @inner's points to where @outer takes what @inner gives. */
void gb_axes_compose (const GbAxes *outer, const GbAxes *inner, GbAxes *result);

GbAxes gb_axes_inverse (const GbAxes *axes);

void gb_axes_outward (const GbAxes *axes, double p[3]);

void gb_first_move (GbFirst *first, const GbAxes *axes);
void gb_moments_move (GbMoments *moments, const GbAxes *axes);
/* Turns the second moments alone. */
void gb_moments_turn (GbMoments *moments, const double turn[3][3]);
void gb_moments_add (GbMoments *to, const GbMoments *from);
void gb_moments_scale (GbMoments *moments, double factor);
/* Adds the image in the plane y = 0: of masses, and of errors that both share. */
void gb_moments_pair (GbMoments *moments);
void gb_errors_pair (GbMoments *errors);

/* About the centre: first moments become 0. Nothing happens where m is 0. */
void gb_moments_centre (GbMoments *moments);

G_END_DECLS
