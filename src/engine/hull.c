/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-hull"

/* From the records of a hull to its closed mesh in the boat's axes. */

#include "body.h"
#include "hull-private.h"
#include "mesh-private.h"

#include <glib/gi18n-lib.h>

static void
clear_section (gpointer section)
{
  g_free (((GbCrossSection *)section)->points);
}

GArray *
gb_sections_new (void)
{
  GArray *sections = g_array_new (FALSE, FALSE, sizeof (GbCrossSection));

  g_array_set_clear_func (sections, clear_section);
  return sections;
}

GbSectionPoint *
gb_sections_add (GArray *sections, double x, guint n)
{
  GbCrossSection section = { .x = x, .points = g_new0 (GbSectionPoint, n), .n = n };

  g_array_append_val (sections, section);
  return section.points;
}

static GArray *
entered_sections (const GbHull *hull, GbUnits units, char **trouble)
{
  const GPtrArray *stations = gb_record_children (&hull->rec);
  g_autoptr (GArray) sections = gb_sections_new ();

  for (guint i = 0; i < stations->len; i++)
    {
      const GbStation *station = stations->pdata[i];
      const GPtrArray *offsets = gb_record_children (&station->rec);
      GbSectionPoint *points = gb_sections_add (sections, station->x, offsets->len);

      for (guint k = 0; k < offsets->len; k++)
        {
          const GbOffset *offset = offsets->pdata[k];

          points[k] = (GbSectionPoint){ offset->y, offset->z };
        }
    }
  *trouble = gb_sections_check (sections, units);
  return *trouble == NULL ? g_steal_pointer (&sections) : NULL;
}

/* The hull in its own axes, and its edge; or NULL with a sentence. */
static GbMesh *
make_mesh (const GbHull *hull, GbUnits units, gboolean open, GArray **edge, char **trouble)
{
  g_autoptr (GArray) sections = NULL;

  if (hull->form == GB_HULL_PRISM)
    return gb_prism_mesh (hull, open, edge, trouble);
  if (hull->form == GB_HULL_BLOCK)
    sections = gb_block_sections (hull, trouble);
  else if (hull->form == GB_HULL_PIPE)
    sections = gb_pipe_sections (hull, trouble);
  else
    sections = entered_sections (hull, units, trouble);
  if (sections == NULL)
    return NULL;
  *edge = gb_sections_edge (sections);
  return gb_mesh_from_sections (sections, open);
}

static void
move (GbVec3 *points, guint n, GbVec3 by)
{
  for (guint i = 0; i < n; i++)
    points[i] = vec3_add (points[i], by);
}

static GbMesh *
mirrored_mesh (const GbMesh *mesh)
{
  GbMesh *mirrored = g_new (GbMesh, 1);

  *mirrored = *mesh;
  mirrored->points = g_memdup2 (mesh->points, mesh->n_points * sizeof *mesh->points);
  mirrored->triangles = g_memdup2 (mesh->triangles, mesh->n_triangles * sizeof *mesh->triangles);
  for (guint i = 0; i < mesh->n_points; i++)
    mirrored->points[i].y = -mesh->points[i].y;
  for (guint t = 0; t < mesh->n_triangles; t++)
    {
      mirrored->triangles[t][1] = mesh->triangles[t][2];
      mirrored->triangles[t][2] = mesh->triangles[t][1];
    }
  return mirrored;
}

static void
take_edge (GbHullShape *shape, GArray *edge)
{
  for (guint i = 0; i < edge->len; i++)
    shape->lowest_edge = fmin (shape->lowest_edge, g_array_index (edge, GbVec3, i).z);
  g_ptr_array_add (shape->edges, g_array_ref (edge));
  if (shape->mirrored != NULL)
    {
      GArray *other = g_array_copy (edge);

      for (guint i = 0; i < other->len; i++)
        g_array_index (other, GbVec3, i).y *= -1;
      g_ptr_array_add (shape->edges, other);
    }
}

/* A body that reaches over the centreline has its middle in common with its mirror; one that keeps to its
 * side has nothing. */
static gboolean
reaches_over_centreline (const GbMesh *mesh)
{
  double least = INFINITY, most = -INFINITY;

  for (guint i = 0; i < mesh->n_points; i++)
    {
      least = MIN (least, mesh->points[i].y);
      most = MAX (most, mesh->points[i].y);
    }
  return least < -1e-9 && most > 1e-9;
}

static void
measure_heights (GbHullShape *shape, const GbMesh *mesh)
{
  for (guint i = 0; i < mesh->n_points; i++)
    {
      shape->keel = fmin (shape->keel, mesh->points[i].z);
      shape->top = fmax (shape->top, mesh->points[i].z);
    }
}

static char *
find_shape (GbHullShape *shape, const GbHull *hull, GbUnits units)
{
  gboolean open = hull->edge == GB_EDGE_OPEN && hull->form != GB_HULL_PIPE && !hull->inside;
  GbVec3 place = { hull->x, hull->y, hull->z };
  g_autoptr (GbMesh) mesh = NULL;
  g_autoptr (GArray) edge = NULL;
  char *trouble = NULL;
  double volume;

  if (!isfinite (hull->x) || !isfinite (hull->y) || !isfinite (hull->z))
    return g_strdup (_ ("This hull has no place yet. Enter its x, y and z."));
  mesh = make_mesh (hull, units, open, &edge, &trouble);
  if (mesh == NULL)
    return trouble;
  volume = gb_mesh_whole (mesh).volume;
  if (!isfinite (volume))
    return g_strdup (_ ("This hull is too large to reckon with. Check its sizes and their units."));
  if (volume <= 1e-9)
    return g_strdup (_ ("This hull encloses nothing: all of it lies in one plane."));
  move (mesh->points, mesh->n_points, place);
  move ((GbVec3 *)edge->data, edge->len, place);
  if (hull->pair && reaches_over_centreline (mesh))
    return g_strdup (_ ("This hull is one of a pair and reaches over the centreline: the two would overlap. "
                        "Move it out by its y."));

  measure_heights (shape, mesh);
  if (hull->pair)
    shape->mirrored = mirrored_mesh (mesh);
  if (open)
    take_edge (shape, edge);
  shape->body = gb_body_new (mesh);
  shape->mesh = g_steal_pointer (&mesh);
  return NULL;
}

static void
clear_shape (GbHullShape *shape)
{
  g_clear_pointer (&shape->mesh, gb_mesh_free);
  g_clear_pointer (&shape->mirrored, gb_mesh_free);
  g_clear_pointer (&shape->body, gb_body_unref);
  g_clear_pointer (&shape->edges, g_ptr_array_unref);
  g_clear_pointer (&shape->trouble, g_free);
}

static GbHullShape
empty_shape (gint64 id, gboolean inside)
{
  return (GbHullShape){
    .id = id,
    .inside = inside,
    .edges = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref),
    .lowest_edge = NAN,
    .keel = NAN,
    .top = NAN,
  };
}

void
gb_hull_shape_refuse (GbHullShape *shape, char *trouble)
{
  clear_shape (shape);
  *shape = empty_shape (shape->id, shape->inside);
  shape->trouble = trouble;
}

void
gb_hull_set_find (GbHullSet *set, const GbBoat *boat)
{
  const GPtrArray *hulls = gb_boat_all (boat, GB_RECORD_HULL);
  GbUnits units = (GbUnits)gb_boat_build (boat)->units;

  gb_hull_set_clear (set);
  set->hulls = g_new0 (GbHullShape, hulls->len);
  set->n_hulls = hulls->len;
  for (guint i = 0; i < hulls->len; i++)
    {
      const GbHull *hull = hulls->pdata[i];
      GbHullShape *shape = &set->hulls[i];

      *shape = empty_shape (hull->rec.id, hull->inside != 0);
      shape->trouble = find_shape (shape, hull, units);
    }
  gb_hull_set_check_apart (set);
}

void
gb_hull_set_clear (GbHullSet *set)
{
  for (guint i = 0; i < set->n_hulls; i++)
    clear_shape (&set->hulls[i]);
  g_clear_pointer (&set->hulls, g_free);
  set->n_hulls = 0;
}
