/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "boat-scene.h"
#include "engine/rollup-axes.h"

#include <math.h>

/* More dots than this are a smear; the heaviest are kept. */
#define MOST_ITEMS 500u
/* Copies of one part by pairs within pairs. */
#define MOST_PLACES 8u

gboolean
gb_vec3_is_known (GbVec3 p)
{
  return isfinite (p.x) && isfinite (p.y) && isfinite (p.z);
}

/* Hulls ------------------------------------------------------------ */

static void
scene_hull_clear (GbSceneHull *hull)
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
  return g_ptr_array_new_with_free_func ((GDestroyNotify) g_array_unref);
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
  GbSceneHull hull = { .edges = polylines_new (), .sections = polylines_new () };
  const GPtrArray *stations = gb_record_children (&record->rec);

  hull.mesh = (GbMesh){ g_memdup2 (mesh->points, mesh->n_points * sizeof *mesh->points), mesh->n_points,
                        g_memdup2 (mesh->triangles, mesh->n_triangles * sizeof *mesh->triangles),
                        mesh->n_triangles };
  gb_hull_lines (mesh, hull.lines);
  for (guint i = 0; edges != NULL && i < edges->len; i++)
    g_ptr_array_add (hull.edges, g_array_copy (g_ptr_array_index (edges, i)));
  if (record->form == GB_HULL_STATIONS)
    for (guint i = 0; i < stations->len; i++)
      g_ptr_array_add (hull.sections, station_line (record, g_ptr_array_index (stations, i), side));
  g_array_append_val (scene->hulls, hull);
}

static void
add_hulls (GbScene *scene, const GbBoat *boat, const GbHullSet *hulls)
{
  for (guint i = 0; i < hulls->n_hulls; i++)
    {
      const GbHullShape *shape = &hulls->hulls[i];
      const GbHull *record = gb_boat_hull (boat, shape->id);

      if (shape->mesh == NULL || shape->mesh->n_triangles == 0 || record == NULL)
        continue;
      add_hull (scene, shape->mesh, record, shape->edges, 1);
      if (shape->mirrored != NULL)
        add_hull (scene, shape->mirrored, record, NULL, -1);
    }
}

/* Parts and loads ------------------------------------------------------------ */

static void
scene_item_clear (GbSceneItem *item)
{
  g_free (item->name);
}

static void
scene_name_clear (GbSceneName *name)
{
  g_free (name->text);
}

static void
mirror_places (GbVec3 *places, guint *n)
{
  guint before = *n;

  for (guint i = 0; i < before && *n < MOST_PLACES; i++)
    places[(*n)++] = (GbVec3){ places[i].x, -places[i].y, places[i].z };
}

/* Where the copies of @part are that pairs make of it. The roll-up knows the centre of them all; only with
 * pairs is more to be found. */
static guint
find_places (const GbBoat *boat, const GbPart *part, const GbMass *mass, GbVec3 *places)
{
  gboolean paired = part->pair != 0;
  guint n = 1;

  places[0] = (GbVec3){ part->x, part->y, part->z };
  if (part->pair)
    mirror_places (places, &n);
  for (const GbPart *group = gb_boat_part (boat, part->rec.owner); group != NULL;
       group = gb_boat_part (boat, group->rec.owner))
    {
      GbAxes axes;

      gb_axes_of_group (group, &axes);
      for (guint i = 0; i < n; i++)
        {
          double p[3] = { places[i].x, places[i].y, places[i].z };

          gb_axes_outward (&axes, p);
          places[i] = (GbVec3){ p[0], p[1], p[2] };
        }
      if (group->pair)
        mirror_places (places, &n);
      paired = paired || group->pair;
    }
  if (paired && gb_vec3_is_known (places[0]))
    return n;
  places[0] = (GbVec3){ mass->x, mass->y, mass->z };
  return 1;
}

/* The picked part or something in it. */
static gboolean
is_picked (const GbBoat *boat, gint64 id, const gint64 *selected)
{
  for (guint i = 0; selected != NULL && selected[i] != 0; i++)
    if (gb_boat_is_below (boat, id, selected[i]))
      return TRUE;
  return FALSE;
}

typedef struct
{
  const GbPart *part;
  const GbMass *mass;
  double kg; /* beside the pointer, as sorting looks at it again and again */
  guint index;
  gboolean picked;
} Candidate;

/* Picked ones, then the heaviest, then by the tree. */
static int
compare_candidates (gconstpointer a, gconstpointer b)
{
  const Candidate *first = a, *second = b;

  if (first->picked != second->picked)
    return first->picked ? -1 : 1;
  if (first->kg != second->kg)
    return first->kg > second->kg ? -1 : 1;
  return first->index < second->index ? -1 : 1;
}

static GArray *
find_candidates (GbScene *scene, const GbChartSource *source)
{
  const GPtrArray *parts = gb_boat_all (source->boat, GB_RECORD_PART);
  GArray *candidates = g_array_new (FALSE, FALSE, sizeof (Candidate));

  for (guint i = 0; i < parts->len; i++)
    {
      const GbPart *part = g_ptr_array_index (parts, i);
      const GbMass *mass = gb_rollup_part (&source->findings->rollup, part);
      Candidate candidate
          = { part, mass, mass->mass, i, is_picked (source->boat, part->rec.id, source->selected) };

      if (part->kind == GB_KIND_GROUP || part->n_below > 0 || !(mass->mass > 0))
        continue;
      if (isfinite (mass->x) && isfinite (mass->y) && isfinite (mass->z))
        g_array_append_val (candidates, candidate);
      else
        scene->n_unplaced++;
    }
  g_array_sort (candidates, compare_candidates);
  return candidates;
}

static void
add_item (GbScene *scene, GbSceneItem item, const GbVec3 *places, guint n)
{
  GbSceneDot dot = { .item = scene->items->len };

  item.mass /= n;
  if (item.kind == GB_SCENE_PART)
    scene->heaviest = fmax (scene->heaviest, item.mass);
  g_array_append_val (scene->items, item);
  for (guint i = 0; i < n; i++)
    {
      dot.at = places[i];
      g_array_append_val (scene->dots, dot);
    }
}

static void
add_parts (GbScene *scene, const GbChartSource *source)
{
  g_autoptr (GArray) candidates = find_candidates (scene, source);
  guint n = MIN (candidates->len, MOST_ITEMS);

  for (guint i = 0; i < n; i++)
    {
      const Candidate *candidate = &g_array_index (candidates, Candidate, i);
      GbVec3 places[MOST_PLACES];
      guint n_places = find_places (source->boat, candidate->part, candidate->mass, places);
      GbSceneItem item
          = { GB_SCENE_PART, candidate->part->rec.id, gb_record_dup_title (&candidate->part->rec),
              candidate->mass->mass, candidate->picked };

      add_item (scene, item, places, n_places);
    }
  scene->n_left_out = candidates->len - n;
}

static void
add_loads (GbScene *scene, const GbBoat *boat)
{
  const GPtrArray *conditions = gb_boat_roots (boat, GB_RECORD_CONDITION);
  const GPtrArray *loads
      = conditions->len > 0 ? gb_record_children (g_ptr_array_index (conditions, 0)) : NULL;

  for (guint i = 0; loads != NULL && i < loads->len; i++)
    {
      const GbLoad *load = g_ptr_array_index (loads, i);
      GbVec3 at = { load->x, load->y, load->z };
      GbSceneItem item = { .kind = GB_SCENE_LOAD, .mass = load->mass * load->quantity };

      if (!(item.mass > 0) || !gb_vec3_is_known (at))
        continue;
      item.name = gb_record_dup_title (&load->rec);
      add_item (scene, item, &at, 1);
    }
}

static void
add_names (GbScene *scene, const GbChartSource *source)
{
  const GPtrArray *roots = gb_boat_roots (source->boat, GB_RECORD_PART);

  for (guint i = 0; i < roots->len; i++)
    {
      const GbPart *part = g_ptr_array_index (roots, i);
      const GbMass *mass = gb_rollup_part (&source->findings->rollup, part);
      GbSceneName name = { .at = { mass->x, mass->y, mass->z } };

      if (part->kind != GB_KIND_GROUP || !gb_vec3_is_known (name.at))
        continue;
      name.text = gb_record_dup_title (&part->rec);
      g_array_append_val (scene->names, name);
    }
}

/* What is shown ------------------------------------------------------------ */

static void
take_in (GbScene *scene, GbVec3 p)
{
  scene->lo = (GbVec3){ fmin (scene->lo.x, p.x), fmin (scene->lo.y, p.y), fmin (scene->lo.z, p.z) };
  scene->hi = (GbVec3){ fmax (scene->hi.x, p.x), fmax (scene->hi.y, p.y), fmax (scene->hi.z, p.z) };
}

/* No further outside the hulls than they are long. */
static gboolean
is_near (const GbVec3 *lo, const GbVec3 *hi, GbVec3 p)
{
  double reach = fmax (fmax (hi->x - lo->x, hi->y - lo->y), hi->z - lo->z);

  return p.x >= lo->x - reach && p.x <= hi->x + reach && p.y >= lo->y - reach && p.y <= hi->y + reach
         && p.z >= lo->z - reach && p.z <= hi->z + reach;
}

/* The hulls, and what is near them; a part whose place was mistyped shall not shrink the boat to a speck. */
static void
find_extent (GbScene *scene)
{
  GbVec3 lo, hi;

  for (guint h = 0; h < scene->hulls->len; h++)
    {
      const GbMesh *mesh = &g_array_index (scene->hulls, GbSceneHull, h).mesh;

      for (guint i = 0; i < mesh->n_points; i++)
        take_in (scene, mesh->points[i]);
    }
  lo = scene->lo;
  hi = scene->hi;
  for (guint i = 0; i < scene->dots->len; i++)
    {
      GbVec3 at = g_array_index (scene->dots, GbSceneDot, i).at;

      if (scene->hulls->len == 0 || is_near (&lo, &hi, at))
        take_in (scene, at);
      else
        scene->n_outside++;
    }
  if (isfinite (scene->water) && scene->hulls->len > 0)
    take_in (scene, (GbVec3){ lo.x, lo.y, scene->water });
}

/* Room around all, so that nothing is drawn on the edge and no side is nothing. */
static void
widen (GbScene *scene)
{
  double most = fmax (fmax (scene->hi.x - scene->lo.x, scene->hi.y - scene->lo.y), scene->hi.z - scene->lo.z);
  double by = most > 0 ? most * 0.03 : 0.5;

  scene->lo = (GbVec3){ scene->lo.x - by, scene->lo.y - by, scene->lo.z - by };
  scene->hi = (GbVec3){ scene->hi.x + by, scene->hi.y + by, scene->hi.z + by };
}

GbScene *
gb_scene_new (const GbChartSource *source)
{
  const GbFlotation *flotation = &source->findings->flotation;
  const GbMass *boat = &source->findings->rollup.boat;
  GbScene *scene = g_new0 (GbScene, 1);

  scene->units = (GbUnits) gb_boat_build (source->boat)->units;
  scene->hulls = g_array_new (FALSE, FALSE, sizeof (GbSceneHull));
  g_array_set_clear_func (scene->hulls, (GDestroyNotify) scene_hull_clear);
  scene->items = g_array_new (FALSE, FALSE, sizeof (GbSceneItem));
  g_array_set_clear_func (scene->items, (GDestroyNotify) scene_item_clear);
  scene->dots = g_array_new (FALSE, FALSE, sizeof (GbSceneDot));
  scene->names = g_array_new (FALSE, FALSE, sizeof (GbSceneName));
  g_array_set_clear_func (scene->names, (GDestroyNotify) scene_name_clear);
  scene->lo = (GbVec3){ INFINITY, INFINITY, INFINITY };
  scene->hi = (GbVec3){ -INFINITY, -INFINITY, -INFINITY };
  scene->light = (GbVec3){ boat->x, boat->y, boat->z };
  scene->loaded = (GbVec3){ flotation->total_x, flotation->total_y, flotation->total_z };
  scene->buoyancy = (GbVec3){ flotation->afloat.lcb, flotation->afloat.tcb, flotation->afloat.vcb };
  scene->water = flotation->afloat.z;
  scene->limit = flotation->limit.z;
  add_hulls (scene, source->boat, &source->findings->hulls);
  add_parts (scene, source);
  add_loads (scene, source->boat);
  add_names (scene, source);
  if (!gb_scene_is_empty (scene))
    {
      find_extent (scene);
      widen (scene);
    }
  return scene;
}

gboolean
gb_scene_is_empty (const GbScene *scene)
{
  return scene->hulls->len == 0 && scene->dots->len == 0;
}

void
gb_scene_free (GbScene *scene)
{
  g_array_unref (scene->hulls);
  g_array_unref (scene->items);
  g_array_unref (scene->dots);
  g_array_unref (scene->names);
  g_free (scene);
}
