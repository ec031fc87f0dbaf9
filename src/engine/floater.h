/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/attitude.h"
#include "engine/body.h"

G_BEGIN_DECLS

/* What floats, and where it comes to rest.
 *
 * All is one potential energy, divided by gravity (so in kg m), of the attitude (up n, height d of the water):
 *
 *   E = m (n . G - d) + rho (d V - n . M)          weight, and the water pushed away: V the volume under
 *                                              water, M its moment
 *       + the same for balls                       see GbBall
 *       + sum of liquids' mass x n . centre        each lies level in its tank, as low as it can
 *       + sum of pulls, - moment x heel            what ropes and winds would give or take
 *
 * In d it is convex, its slope rho V - m; its slope in n is m G - rho M; its curvature is the waterplane's
 * area and moments, less what the tanks' free surfaces take off. Rest is where it is least: so Newton's method
 * with these exact derivatives, a step taken only if the energy falls, comes to rest from any start, and what
 * it finds is stable. */

typedef struct
{
  GbBody *body; /* a reference */
  gboolean mirrored;
} GbFloatHull;

/* Buoyancy of a thing without a shape: a ball about a point. The cap under water has the volume pi h2 (3 r
 * - h) / 3. */
typedef struct
{
  GbVec3 at;
  double radius;
} GbBall;

/* A box along the axes with a liquid in it. Only 'centre' may be changed later, which moves it. */
typedef struct
{
  GbVec3 centre, size;
  double density, mass; /* of the liquid; mass of one tank */
  double times;         /* so many tanks in this place */
  GbBody *body;         /* the box about its own middle; a reference */
} GbTank;

/* A force towards 'bearing' (level; a unit vector in the boat's axes, z 0), said as the mass that weighs as
 * much, at a point; the water holds against it at 'against'. Its part straight down is weight and belongs
 * in mass and moment. Where she is turned so far that the bearing points straight up or down, the pull
 * fades. */
typedef struct
{
  double mass;
  GbVec3 at, against, bearing;
} GbPull;

typedef struct
{
  double density; /* of the water, kg/m3 */
  GArray *hulls;  /* of GbFloatHull */
  GArray *balls;  /* of GbBall */
  GArray *tanks;  /* of GbTank */
  GArray *pulls;  /* of GbPull */
  double mass;    /* of all but what is in tanks, kg */
  GbVec3 moment;  /* of that: mass x place, kg m */
  double heeling_moment; /* steady, to starboard, kg m */
} GbFloater;

GbFloater *gb_floater_new (double water_density);
GbFloater *gb_floater_copy (const GbFloater *floater);
void gb_floater_free (GbFloater *floater);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbFloater, gb_floater_free)

/* takes a reference of its own */
void gb_floater_add_hull (GbFloater *floater, GbBody *body, gboolean mirrored);
void gb_floater_add_mass (GbFloater *floater, double mass, GbVec3 at);
/* A box of @size about @centre that holds @mass of a liquid of @density, @times over. More than the box
 * holds is solid in it: its centre is the box's. So is a liquid in a box that cannot be, or without a
 * density. */
void gb_floater_add_tank (GbFloater *floater, GbVec3 centre, GbVec3 size, double density, double mass,
                          double times);

/* In kg m; INFINITY is never given. */
double gb_floater_energy (const GbFloater *floater, GbAttitude attitude);

/* All that is under water and all that weighs, as she lies. */
typedef struct
{
  GbImmersion hulls;      /* hulls and balls together */
  double mass;            /* with liquids */
  GbVec3 gravity;         /* centre of all weight, liquids where they have run to */
  GbTensor free_surfaces; /* of liquids: sum of density x second moment of the surface about its own centre,
                             in the boat's axes; kg m */
} GbFloatSums;
void gb_floater_sums (const GbFloater *floater, GbAttitude attitude, GbFloatSums *sums);

typedef enum
{
  GB_HOLD_NOTHING, /* sinkage, trim and heel find their rest */
  GB_HOLD_HEEL,    /* heel is as it is at the start; trim stays within 89 degrees, where heel has a meaning */
  GB_HOLD_BOTH,    /* heel and trim are: sinkage alone */
} GbHold;

typedef enum
{
  GB_REST_FOUND,
  GB_REST_SINKS, /* weight is more than all of it carries */
  GB_REST_NONE,  /* nothing to float, no weight, no density, something not finite; or a heeling moment that
                    rolls her over and over */
} GbRestKind;

typedef struct
{
  GbRestKind kind;
  GbAttitude attitude;
  double energy;
  guint n_steps; /* accepted ones */
} GbRest;

/* Where it comes to rest from @start (whose height matters little). Unless it is found, the attitude is the
 * start's and the energy NAN. From where she is balanced on an edge, as a boat upright that is not stiff,
 * she goes to starboard. @step_cb, which may be NULL, is called at the start and at each accepted step. */
typedef void (*GbStepFunc) (GbAttitude attitude, double energy, gpointer data);
GbRest gb_floater_rest (const GbFloater *floater, GbAttitude start, GbHold hold, GbStepFunc step_cb,
                        gpointer data);

/* The lever that would bring her upright, at an attitude that holds the heel (GB_HOLD_HEEL): the slope of
 * the energy in heel over mass; m. Positive: it turns her to port, which brings her upright when heeled to
 * starboard. Heeling moment and pulls are left out. */
double gb_floater_lever (const GbFloater *floater, GbAttitude attitude);

G_END_DECLS
