/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat.h"

G_BEGIN_DECLS

/* A part's material and sizes once the stock that it is cut from has filled in what the part leaves open.
 * What the part says itself stands first: a mast that is turned round from a square length is round. Stock
 * never gives the length, nor the width of what is cut from a sheet or a block: those are the shop's sizes,
 * not the part's. */
typedef struct
{
  gint64 material; /* id; 0: none */
  double length, width, thickness;
  GbSection section; /* of a length */
  double diameter, wall, linear_mass;
  double unit_mass; /* of one piece, for a count */
} GbPartSize;

GbPartSize gb_part_size (const GbBoat *boat, const GbPart *part);
/* The same for whoever has looked the stock up already; NULL for none. */
GbPartSize gb_part_size_from (const GbPart *part, const GbStock *stock);

G_END_DECLS
