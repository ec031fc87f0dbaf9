/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* A boat and its roll-up, found anew at each asking. */

#include "engine/rollup.h"
#include "parts-fixture.h"

typedef struct
{
  GbBoat *boat;
  GbHullSet hulls;
  GbRollup rollup;
} Case;

static inline void
case_clear (Case *c)
{
  gb_boat_free (c->boat);
  gb_hull_set_clear (&c->hulls);
  gb_rollup_clear (&c->rollup);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Case, case_clear)

static inline Case
new_case (void)
{
  return (Case){ .boat = gb_boat_new () };
}

static inline GbBuild *
build_of (Case *c)
{
  return (GbBuild *) gb_boat_get (c->boat, GB_RECORD_BUILD, 1);
}

static inline const GbMass *
roll_up (Case *c)
{
  find_hulls (&c->hulls, c->boat);
  gb_rollup_find (&c->rollup, c->boat, &c->hulls, G_MAXINT64);
  return &c->rollup.boat;
}

static inline const GbMass *
mass_of (Case *c, const GbPart *part)
{
  return gb_rollup_part (&c->rollup, part);
}

static inline void
assert_centre (const GbMass *mass, double x, double y, double z, double tolerance)
{
  assert_near (mass->x, x, tolerance);
  assert_near (mass->y, y, tolerance);
  assert_near (mass->z, z, tolerance);
}
