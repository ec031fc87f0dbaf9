/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/boat.h"

G_BEGIN_DECLS

/* Closed triangle meshes, the ground of everything afloat: a hull, however it is given, becomes one; cutting it by a plane gives
 * volume, centre, waterplane and its second moments exactly for that polyhedron. Triangles turn anticlockwise seen from outside.
 * The last 'n_lid' triangles close an open hull across its edge: they bound the volume, but there is no skin there. */

typedef struct
{
  double x, y, z;
} GbVec3;

typedef struct
{
  GbVec3 *points;
  guint n_points;
  guint (*triangles)[3];
  guint n_triangles;
  guint n_lid;
} GbMesh;

void gb_mesh_free (GbMesh *mesh);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbMesh, gb_mesh_free)

/* TRUE if each edge is used once each way (closed, and turned one way throughout). */
gboolean gb_mesh_is_closed (const GbMesh *mesh);

typedef struct
{
  double volume;
  GbVec3 centre; /* of the volume; NAN where there is none */
  double area;   /* of the surface, without the plane */
  double waterplane; /* area of the cut */
  double plane_x, plane_y; /* its centroid, in the mesh's axes */
  double plane_ixx, plane_iyy, plane_ixy; /* second moments of the cut about its centroid: of y2, x2, xy; m4 */
  double girth; /* length of the cut's edge */
} GbCut;

/* What lies on the far side of the plane n . p = d from the way that n points (n a unit vector): with n up, what is under water.
 * What lies in the plane itself counts as dry, so that a hull whose deck is just awash still has its waterplane.
 * Divergence theorem over the clipped triangles and the cut. The waterplane figures hold for n = (0, 0, 1); for another n they are in a
 * frame whose third axis is n. The polygons of the cut are not built: its integrals come from its edges (Green). */
GbCut gb_mesh_cut (const GbMesh *mesh, GbVec3 n, double d);

/* The whole body. */
GbCut gb_mesh_whole (const GbMesh *mesh);

/* Second moments of the surface's area about its area centre (for thin skins): m4; the part with z at or above @above and
 * below @below, -INFINITY and INFINITY for no bound. The lid of an open hull is left out. */
typedef struct
{
  double area;
  GbVec3 centre;
  double xx, yy, zz, xy, yz, zx; /* integrals of x2, y2, z2, xy, yz, zx about the centre */
} GbSurface;
GbSurface gb_mesh_surface (const GbMesh *mesh, double above, double below);

/* One hull, as the engine sees it. */
typedef struct
{
  gint64 id;
  GbMesh *mesh;      /* in the boat's axes; NULL if there is trouble. Of a pair: the one as entered */
  GbMesh *mirrored;  /* the other of a pair, or NULL */
  struct _GbBody *body; /* the mesh ready for cutting (body.h); its mirror serves for the other of a pair.
                           NULL without a mesh */
  gboolean inside;   /* in another hull: carries only when that is full of water, and has no part in
                        draught and limit */
  GPtrArray *edges;  /* (element-type GArray of GbVec3) lines of the open edge in the boat's axes, both of a pair, each all the way
                        round and back to its first point; none for a closed hull */
  double lowest_edge; /* least z of the open edge; NAN for a closed hull */
  double keel, top;   /* least and greatest z of the mesh; NAN without one */
  char *trouble;      /* a sentence, or NULL */
} GbHullShape;

typedef struct
{
  GbHullShape *hulls; /* by index of the hull */
  guint n_hulls;
} GbHullSet;

/* Makes the meshes of all hulls of @boat. Stations are taken in order of their x. A block, a pipe or a prism stands on its origin: its
 * lowest point is at the hull's z, and the after end of a block or a pipe at its x. A pipe has no open edge, whatever is said of it.
 * A hull that cannot be has a sentence instead: fewer than two stations, stations at the same x, a section with fewer than two points, that
 * crosses itself or goes back over the centreline, neighbours whose surface crosses itself, a body without a size, a pair that overlaps,
 * hulls that lie far away from the rest. A hull inside another has no open edge, whatever is said of it. */
void gb_hull_set_find (GbHullSet *set, const GbBoat *boat);
void gb_hull_set_clear (GbHullSet *set);

G_END_DECLS
