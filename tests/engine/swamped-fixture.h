/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Boats full of water, for tests. */

#include "engine/swamped.h"
#include "floating-fixture.h"

#define DEGREE (G_PI / 180)

static inline GbSwamped *
find (Floating *f, gint64 condition)
{
  find_floating (f);
  return gb_swamped_find (f->boat, &f->hulls, &f->edges, &f->rollup, &f->flotation, condition, NULL, NULL);
}

/* An open box 4 x 1.2 x 0.4 m, its after end at x = 0, standing on z = 0. */
static inline GbHull *
add_box_boat (Floating *f)
{
  return add_block (f->boat, 4, 1.2, 0.4);
}

/* Of so many boards, in a place that is its centre; a board is a box of @size. */
static inline GbPart *
add_board (Floating *f, gint64 owner, const GbMaterial *material, GbVec3 size, GbVec3 at)
{
  GbPart *part = add_box (f->boat, owner, material, size.x, size.y, size.z);

  part->x = at.x;
  part->y = at.y;
  part->z = at.z;
  return part;
}

static inline GbPart *
add_weight (Floating *f, const GbMaterial *material, double mass, double x, double y, double z)
{
  GbPart *part = add_lump (f->boat, 0, mass, x, y, z);

  part->material = material != NULL ? material->rec.id : 0;
  return part;
}

/* Bottom and two sides of plywood, 10 mm, of density 600: 0.048 + 2 x 0.016 m3, 48 kg; they carry 80 kg. */
static inline const GbMaterial *
add_plywood_box (Floating *f)
{
  const GbMaterial *plywood = add_material (f->boat, GB_MEASURE_DENSITY, 600);

  add_box_boat (f);
  add_board (f, 0, plywood, (GbVec3){ 4, 1.2, 0.01 }, (GbVec3){ 2, 0, 0.005 });
  add_board (f, 0, plywood, (GbVec3){ 4, 0.01, 0.4 }, (GbVec3){ 2, 0.595, 0.2 })->pair = 1;
  return plywood;
}
