/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/boat.h"
#include "engine/mesh.h"

G_BEGIN_DECLS

/* Hulls given by their cross-sections, in the hull's own axes. What is given of a section is its port half,
 * from the keel to the sheer; the other half is its mirror. Where the keel point is off the centreline the
 * bottom goes straight across, and so does the deck at the sheer. */

typedef struct
{
  double y, z;
} GbSectionPoint;

typedef struct
{
  double x;
  GbSectionPoint *points; /* owned */
  guint n;
} GbCrossSection;

GArray *gb_sections_new (void); /* (element-type GbCrossSection) */
/* Adds a section of @n points for the caller to fill in. */
GbSectionPoint *gb_sections_add (GArray *sections, double x, guint n);

/* Puts the sections in order of x. A sentence that says why they make no hull, or NULL if they do. */
char *gb_sections_check (GArray *sections, GbUnits units);

/* How two neighbours are joined, from keel to sheer: which points of @a and of @b face each other. Points are
 * joined by their number where both have as many, for then the builder meant lines that run along the hull;
 * else by their share of the girth. */
typedef struct
{
  guint a, b;
} GbJoin;
GArray *gb_section_joins (const GbCrossSection *a, const GbCrossSection *b); /* (element-type GbJoin) */

/* The closed hull through @sections, which are in order: ruled between neighbours, capped at the ends. @open:
 * its deck is a lid. */
GbMesh *gb_mesh_from_sections (const GArray *sections, gboolean open);
/* The edge of the deck, all the way round, back to its first point. (element-type GbVec3) */
GArray *gb_sections_edge (const GArray *sections);

/* The bodies. Each gives NULL with a sentence where a size is missing or cannot be. */
GArray *gb_block_sections (const GbHull *hull, char **trouble);
GArray *gb_pipe_sections (const GbHull *hull, char **trouble);
GbMesh *gb_prism_mesh (const GbHull *hull, gboolean open, GArray **edge, char **trouble);

/* Takes from @shape all that it has, and leaves @trouble, which it owns from then on. */
void gb_hull_shape_refuse (GbHullShape *shape, char *trouble);
/* Refuses what lies too far from the rest. */
void gb_hull_set_check_apart (GbHullSet *set);

G_END_DECLS
