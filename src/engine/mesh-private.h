/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/mesh.h"

#include <math.h>

G_BEGIN_DECLS

static inline GbVec3
vec3_add (GbVec3 a, GbVec3 b)
{
  return (GbVec3){ a.x + b.x, a.y + b.y, a.z + b.z };
}

static inline GbVec3
vec3_sub (GbVec3 a, GbVec3 b)
{
  return (GbVec3){ a.x - b.x, a.y - b.y, a.z - b.z };
}

static inline GbVec3
vec3_scale (GbVec3 a, double factor)
{
  return (GbVec3){ a.x * factor, a.y * factor, a.z * factor };
}

static inline double
vec3_dot (GbVec3 a, GbVec3 b)
{
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

static inline GbVec3
vec3_cross (GbVec3 a, GbVec3 b)
{
  return (GbVec3){ a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x };
}

static inline double
vec3_length (GbVec3 a)
{
  return sqrt (vec3_dot (a, a));
}

/* A mesh as it grows: points and triangles are added, then taken as a GbMesh. */
typedef struct
{
  GArray *points;    /* of GbVec3 */
  GArray *triangles; /* of guint[3] */
} GbMeshBuilder;

void gb_mesh_builder_init (GbMeshBuilder *builder);
void gb_mesh_builder_clear (GbMeshBuilder *builder);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (GbMeshBuilder, gb_mesh_builder_clear)

guint gb_mesh_builder_add_point (GbMeshBuilder *builder, double x, double y, double z);
GbVec3 gb_mesh_builder_point (const GbMeshBuilder *builder, guint i);
/* Nothing is added where two corners are the same point: such a triangle bounds nothing. */
void gb_mesh_builder_add_triangle (GbMeshBuilder *builder, guint i, guint j, guint k);
/* Fills a flat polygon, anticlockwise seen from outside, of any shape that does not cross itself, by ear
 * clipping: each edge of the polygon is an edge of just one triangle, also where corners lie in one line or
 * coincide. */
void gb_mesh_builder_add_face (GbMeshBuilder *builder, const guint *corners, guint n);
/* Takes what was built and empties the builder. The last @n_lid triangles are a lid. */
GbMesh *gb_mesh_builder_finish (GbMeshBuilder *builder, guint n_lid);

G_END_DECLS
