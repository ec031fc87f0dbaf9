/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Parts, groups, materials and weighings for tests, written in a few lines. Settle the boat when all are in.
 */

#include "hull-fixture.h"

static inline GbMaterial *
add_material (GbBoat *boat, GbMeasure measure, double figure)
{
  GbMaterial *material = add_record (boat, GB_RECORD_MATERIAL, 0);

  material->name = g_strdup ("material");
  material->measure = measure;
  if (measure == GB_MEASURE_AREAL)
    material->areal_mass = figure;
  else if (measure == GB_MEASURE_LINEAR)
    material->linear_mass = figure;
  else
    material->density = figure;
  return material;
}

static inline GbPart *
add_part (GbBoat *boat, gint64 owner, GbTakeoff takeoff, double x, double y, double z)
{
  GbPart *part = add_record (boat, GB_RECORD_PART, owner);

  part->name = g_strdup ("part");
  part->takeoff = takeoff;
  part->x = x;
  part->y = y;
  part->z = z;
  return part;
}

static inline GbPart *
add_group (GbBoat *boat, gint64 owner, double x, double y, double z)
{
  GbPart *group = add_part (boat, owner, GB_TAKEOFF_LUMP, x, y, z);

  group->kind = GB_KIND_GROUP;
  return group;
}

static inline GbPart *
add_lump (GbBoat *boat, gint64 owner, double mass, double x, double y, double z)
{
  GbPart *part = add_part (boat, owner, GB_TAKEOFF_LUMP, x, y, z);

  part->mass = mass;
  return part;
}

static inline GbPart *
add_box (
    GbBoat *boat, gint64 owner, const GbMaterial *material, double length, double width, double thickness)
{
  GbPart *part = add_part (boat, owner, GB_TAKEOFF_BLOCK, 0, 0, 0);

  part->material = material->rec.id;
  part->length = length;
  part->width = width;
  part->thickness = thickness;
  return part;
}

static inline GbWeighing *
add_weighing (GbBoat *boat, gint64 part, gint64 date, GbOnScale on_scale)
{
  GbWeighing *weighing = add_record (boat, GB_RECORD_WEIGHING, 0);

  weighing->part = part;
  weighing->date = date;
  weighing->on_scale = on_scale;
  return weighing;
}

static inline void
add_reading (GbBoat *boat, const GbWeighing *weighing, double mass, double x, double y)
{
  GbReading *reading = add_record (boat, GB_RECORD_READING, weighing->rec.id);

  reading->mass = mass;
  reading->x = x;
  reading->y = y;
}

/* Weighed on one scale, all of them together. */
static inline GbWeighing *
weigh (GbBoat *boat, gint64 part, gint64 date, double mass)
{
  GbWeighing *weighing = add_weighing (boat, part, date, GB_ON_SCALE_ALL);

  add_reading (boat, weighing, mass, NAN, NAN);
  return weighing;
}
