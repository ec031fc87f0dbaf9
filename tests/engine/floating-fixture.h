/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* A whole boat afloat for tests: records, and all that is found of them, anew at each asking. */

#include "engine/afloat.h"
#include "parts-fixture.h"

#define FRESH 1000.0

typedef struct
{
  GbBoat *boat;
  GbHullSet hulls;
  GbEdgeSet edges;
  GbRollup rollup;
  GbFlotation flotation;
} Floating;

static inline void
floating_clear (Floating *f)
{
  gb_boat_free (f->boat);
  gb_hull_set_clear (&f->hulls);
  gb_edge_set_clear (&f->edges);
  gb_rollup_clear (&f->rollup);
  gb_flotation_clear (&f->flotation);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Floating, floating_clear)

static inline GbBuild *
floating_build (Floating *f)
{
  return (GbBuild *) gb_boat_get (f->boat, GB_RECORD_BUILD, 1);
}

/* In water of 1000 kg/m3, without margins. */
static inline Floating
new_floating (void)
{
  Floating f = { .boat = gb_boat_new () };
  GbBuild *build = floating_build (&f);

  build->water = GB_WATER_GIVEN;
  build->water_density = FRESH;
  build->freeboard = 0.1;
  build->margin_estimated = build->margin_calculated = build->margin_weighed = build->margin_mass = 0;
  return f;
}

static inline void
find_floating (Floating *f)
{
  find_hulls (&f->hulls, f->boat);
  gb_edge_set_find (&f->edges, f->boat, &f->hulls);
  gb_rollup_find (&f->rollup, f->boat, &f->hulls, G_MAXINT64);
  gb_flotation_find (&f->flotation, f->boat, &f->hulls, &f->edges, &f->rollup);
}

/* Of what was found last. */
static inline GbCase *
floating_case (const Floating *f, gint64 condition)
{
  return gb_case_new (f->boat, &f->hulls, &f->edges, &f->rollup, &f->flotation, condition);
}

static inline GbCondition *
add_condition (Floating *f)
{
  GbCondition *condition = add_record (f->boat, GB_RECORD_CONDITION, 0);

  condition->name = g_strdup ("condition");
  return condition;
}

static inline GbLoad *
add_load (
    Floating *f, const GbCondition *condition, GbLoadKind kind, double mass, double x, double y, double z)
{
  GbLoad *load = add_record (f->boat, GB_RECORD_LOAD, condition->rec.id);

  load->name = g_strdup ("load");
  load->kind = kind;
  load->mass = mass;
  load->x = x;
  load->y = y;
  load->z = z;
  return load;
}
