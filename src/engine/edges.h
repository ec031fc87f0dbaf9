/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/attitude.h"
#include "engine/mesh.h"

G_BEGIN_DECLS

/* The edges that must stay dry: the top edge of each open hull, and the openings that were entered. Straight
 * lines between points, so the least freeboard is always at one of them. */
typedef struct
{
  gint64 hull;
  gint64 opening; /* 0: the hull's own edge */
  char *name;     /* "Hull", or "Hull, hatch": the hull's name and the opening's */
  GArray *points; /* of GbVec3, in the boat's axes; of a ring the first is there again at the end */
  gboolean mirrored; /* the other one of a pair */
} GbEdgeLine;

typedef struct
{
  GPtrArray *lines; /* (element-type GbEdgeLine) */
  GPtrArray *troubles; /* (element-type utf8): sentences about openings that cannot be: no corner with a
                          place, far from their hull */
} GbEdgeSet;

void gb_edge_set_find (GbEdgeSet *set, const GbBoat *boat, const GbHullSet *hulls);
void gb_edge_set_clear (GbEdgeSet *set);
void gb_edge_set_copy (GbEdgeSet *to, const GbEdgeSet *from); /* @to starts as zeroes; without the troubles */

typedef struct
{
  double freeboard; /* NAN where there is no edge */
  GbVec3 at;
  int line;         /* index; -1: none */
} GbLeastFreeboard;
GbLeastFreeboard gb_edge_set_least (const GbEdgeSet *set, GbAttitude attitude);
/* Of one line. */
double gb_edge_line_least (const GbEdgeLine *line, GbAttitude attitude, GbVec3 *at);

G_END_DECLS
