/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* A boat with her light craft, conditions and loads for tests, and her case. */

#include "hull-fixture.h"

#include "engine/afloat.h"

#define DEGREE (G_PI / 180)

typedef struct
{
  GbBoat *boat;
  GbHullSet hulls;
  GbEdgeSet edges;
  GbRollup rollup;
  GbFlotation flotation;
  GbCase *self;
  GbAfloat afloat;
} Craft;

static inline void
craft_clear (Craft *craft)
{
  gb_afloat_clear (&craft->afloat);
  gb_case_free (craft->self);
  gb_flotation_clear (&craft->flotation);
  gb_edge_set_clear (&craft->edges);
  gb_hull_set_clear (&craft->hulls);
  gb_boat_free (craft->boat);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Craft, craft_clear)

static inline GbBuild *
craft_build (Craft *craft)
{
  return (GbBuild *) gb_boat_get (craft->boat, GB_RECORD_BUILD, 1);
}

/* In water of @density; the light craft has @mass at @x, 0, @z. */
static inline Craft
new_craft (double density, double mass, double x, double z)
{
  Craft craft = { .boat = gb_boat_new () };

  craft_build (&craft)->water = GB_WATER_GIVEN;
  craft_build (&craft)->water_density = density;
  craft_build (&craft)->freeboard = 0.1;
  craft.rollup.boat = (GbMass){ .mass = mass, .mass_sd = 0.01 * mass, .x = x, .y = 0, .z = z };
  return craft;
}

static inline gint64
craft_condition (Craft *craft)
{
  GbCondition *condition = add_record (craft->boat, GB_RECORD_CONDITION, 0);

  condition->name = g_strdup ("condition");
  return condition->rec.id;
}

static inline GbLoad *
craft_load (Craft *craft, gint64 condition, GbLoadKind kind, double mass, GbVec3 at)
{
  GbLoad *load = add_record (craft->boat, GB_RECORD_LOAD, condition);

  load->name = g_strdup ("load");
  load->kind = kind;
  load->mass = mass;
  load->x = at.x;
  load->y = at.y;
  load->z = at.z;
  return load;
}

/* Finds anew all that the boat's records say. */
static inline void
craft_find (Craft *craft, gint64 condition)
{
  find_hulls (&craft->hulls, craft->boat);
  gb_edge_set_find (&craft->edges, craft->boat, &craft->hulls);
  gb_flotation_find (&craft->flotation, craft->boat, &craft->hulls, &craft->edges, &craft->rollup);
  gb_case_free (craft->self);
  craft->self = gb_case_new (craft->boat, &craft->hulls, &craft->edges, &craft->rollup, &craft->flotation, condition);
  gb_afloat_find (&craft->afloat, craft->self, NULL);
}

static inline void
assert_says (const char *sentence, const char *part)
{
  if (sentence == NULL || strstr (sentence, part) == NULL)
    g_error ("“%s” does not say “%s”", sentence != NULL ? sentence : "(nothing)", part);
}
