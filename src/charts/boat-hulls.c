/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

/* The hulls of the drawing of the boat. */

#include "boat-scene-private.h"

void
gb_scene_hull_clear (GbSceneHull *hull)
{
  g_free (hull->mesh.points);
  g_free (hull->mesh.triangles);
  for (guint v = 0; v < GB_N_VIEWS; v++)
    g_array_unref (hull->lines[v]);
  g_ptr_array_unref (hull->edges);
  g_ptr_array_unref (hull->sections);
}

static GPtrArray *
polylines_new (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);
}

static void
place_points (const GbScene *scene, GbVec3 *points, guint n)
{
  for (guint i = 0; i < n; i++)
    points[i] = gb_scene_place (scene, points[i]);
}

static void
place_lines (const GbScene *scene, const GPtrArray *lines)
{
  for (guint i = 0; i < lines->len; i++)
    {
      GArray *line = g_ptr_array_index (lines, i);

      place_points (scene, (GbVec3 *)line->data, line->len);
    }
}

/* One station as a line from sheer to keel to sheer, @side +1 as entered or -1 for the other of a pair. */
static GArray *
station_line (const GbHull *hull, const GbStation *station, int side)
{
  const GPtrArray *offsets = gb_record_children (&station->rec);
  GArray *line = g_array_new (FALSE, FALSE, sizeof (GbVec3));

  for (guint k = 0; k < 2 * offsets->len; k++)
    {
      gboolean port = k < offsets->len;
      const GbOffset *offset = g_ptr_array_index (offsets, port ? offsets->len - 1 - k : k - offsets->len);
      double y = port ? offset->y : -offset->y;
      GbVec3 p = { hull->x + station->x, side * (hull->y + y), hull->z + offset->z };

      if (gb_vec3_is_known (p))
        g_array_append_val (line, p);
    }
  return line;
}

static void
add_hull (GbScene *scene, const GbMesh *mesh, const GbHull *record, const GPtrArray *edges, int side)
{
  GbSceneHull hull
      = { .edges = polylines_new (), .sections = polylines_new (), .inside = record->inside != 0 };
  const GPtrArray *stations = gb_record_children (&record->rec);

  hull.mesh = (GbMesh){ g_memdup2 (mesh->points, mesh->n_points * sizeof *mesh->points), mesh->n_points,
                        g_memdup2 (mesh->triangles, mesh->n_triangles * sizeof *mesh->triangles),
                        mesh->n_triangles };
  place_points (scene, hull.mesh.points, hull.mesh.n_points);
  gb_hull_lines (&hull.mesh, hull.lines);
  for (guint i = 0; edges != NULL && i < edges->len; i++)
    g_ptr_array_add (hull.edges, g_array_copy (g_ptr_array_index (edges, i)));
  if (record->form == GB_HULL_STATIONS)
    for (guint i = 0; i < stations->len; i++)
      g_ptr_array_add (hull.sections, station_line (record, g_ptr_array_index (stations, i), side));
  place_lines (scene, hull.edges);
  place_lines (scene, hull.sections);
  g_array_append_val (scene->hulls, hull);
}

void
gb_scene_add_hulls (GbScene *scene, const GbBoat *boat, const GbHullSet *hulls, gboolean with_edges)
{
  for (guint i = 0; i < hulls->n_hulls; i++)
    {
      const GbHullShape *shape = &hulls->hulls[i];
      const GbHull *record = gb_boat_hull (boat, shape->id);

      if (shape->mesh == NULL || shape->mesh->n_triangles == 0 || record == NULL)
        continue;
      add_hull (scene, shape->mesh, record, with_edges ? shape->edges : NULL, 1);
      if (shape->mirrored != NULL)
        add_hull (scene, shape->mirrored, record, NULL, -1);
    }
}
