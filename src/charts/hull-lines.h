/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/mesh.h"

G_BEGIN_DECLS

/* A closed mesh as a drawing of lines, from the three sides that a boat is drawn from. */
typedef enum
{
  GB_VIEW_SIDE, /* from starboard: forward to the right, up */
  GB_VIEW_PLAN, /* from above: forward to the right, port up */
  GB_VIEW_END,  /* from aft: port to the left, up */
  GB_N_VIEWS
} GbView;

/* Where a point stands in a view: to the right, and up. */
void gb_view_place (GbView view, GbVec3 p, double *right, double *up);

/* Points in one place become one: the halves of a hull meet along the keel with points of their own. Gives
 * for each point the first that is in its place; free it. */
guint *gb_weld_points (const GbMesh *mesh);

typedef struct
{
  GbVec3 a, b;
} GbSegment;

/* The lines that a draughtsman would draw of the mesh in each view: where its surface bends sharply, and
 * where it turns away from the eye. Makes the arrays. (element-type GbSegment) */
void gb_hull_lines (const GbMesh *mesh, GArray *lines[GB_N_VIEWS]);

G_END_DECLS
