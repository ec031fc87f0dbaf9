/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/mesh.h"

G_BEGIN_DECLS

/* A closed mesh made ready for being cut by many planes. Its triangles stand in a tree of boxes, each with
 * the sums over what is in it: a cut looks only at the triangles near the water, so it takes about the square
 * root of their number. The sums run in an order that depends on the mesh alone. A body never changes; it may
 * be used from several threads. */
typedef struct _GbBody GbBody;

/* @mesh is copied as far as it is needed. */
GbBody *gb_body_new (const GbMesh *mesh);
GbBody *gb_body_ref (GbBody *body);
void gb_body_unref (GbBody *body);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbBody, gb_body_unref)

double gb_body_volume (const GbBody *body); /* of all of it, m3 */
GbVec3 gb_body_centre (const GbBody *body);
/* The least and the greatest height of the body along @up. */
void gb_body_extent (const GbBody *body, GbVec3 up, double *least, double *greatest);
/* TRUE if @p is inside, by the winding number. */
gboolean gb_body_contains (const GbBody *body, GbVec3 p);

/* The symmetric matrix of the integrals of x2, y2, z2, xy, yz, zx. */
typedef struct
{
  double xx, yy, zz, xy, yz, zx;
} GbTensor;

/* What is under water, all reckoned from the origin of the boat's axes. */
typedef struct
{
  double volume;       /* m3 */
  GbVec3 moment;       /* integral of p over the volume, m4 */
  double plane;        /* area of the waterplane, m2 */
  GbVec3 plane_moment; /* integral of p over it, m3 */
  GbTensor plane_second; /* integral of p pT over it, m4 */
  double wetted;       /* area of the surface under water, m2 */
  double girth;        /* length of the waterline, m */
} GbImmersion;

/* Adds to @sum what lies under the plane up . p = height (@up a unit vector). Exact for the polyhedron: the
 * divergence theorem over the wet triangles and the cut, Green's theorem along the cut's edges. With
 * @mirrored, that of the mirror image in y = 0. */
void gb_body_immerse (const GbBody *body, gboolean mirrored, GbVec3 up, double height, GbImmersion *sum);

G_END_DECLS
