/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

/* The parts and the loads in the drawing of the boat. */

#include "boat-scene-private.h"
#include "engine/rollup-axes.h"

#include <math.h>

/* More dots than this are a smear; the heaviest are kept. */
#define MOST_ITEMS 500u
/* Copies of one part by pairs within pairs. */
#define MOST_PLACES 8u

void
gb_scene_item_clear (GbSceneItem *item)
{
  g_free (item->name);
}

void
gb_scene_name_clear (GbSceneName *name)
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
      dot.at = gb_scene_place (scene, places[i]);
      g_array_append_val (scene->dots, dot);
    }
}

static void
add_part (GbScene *scene, const GbChartSource *source, const Candidate *candidate)
{
  GbVec3 places[MOST_PLACES];
  guint n_places = find_places (source->boat, candidate->part, candidate->mass, places);
  GbSceneItem item
      = { GB_SCENE_PART,         candidate->part->rec.id, gb_record_dup_title (&candidate->part->rec),
          candidate->mass->mass, candidate->picked,       FALSE };

  add_item (scene, item, places, n_places);
}

void
gb_scene_add_parts (GbScene *scene, const GbChartSource *source, gboolean picked_only)
{
  g_autoptr (GArray) candidates = find_candidates (scene, source);
  guint n = MIN (candidates->len, MOST_ITEMS);

  for (guint i = 0; i < n; i++)
    {
      const Candidate *candidate = &g_array_index (candidates, Candidate, i);

      if (picked_only && !candidate->picked)
        break;
      add_part (scene, source, candidate);
    }
  scene->n_left_out = candidates->len - n;
}

void
gb_scene_add_loads (GbScene *scene, const GbChartSource *source)
{
  const GbCondition *condition = gb_source_condition (source);
  const GPtrArray *loads = condition != NULL ? gb_record_children (&condition->rec) : NULL;

  for (guint i = 0; loads != NULL && i < loads->len; i++)
    {
      const GbLoad *load = g_ptr_array_index (loads, i);
      GbVec3 at = gb_source_load_centre (source, load);
      GbSceneItem item = { .kind = GB_SCENE_LOAD,
                           .id = load->rec.id,
                           .mass = load->mass * load->quantity,
                           .picked = source->moved == load->rec.id,
                           .person = load->kind == GB_LOAD_PERSON };

      if (!(item.mass > 0) || !gb_vec3_is_known (at))
        continue;
      item.name = gb_record_dup_title (&load->rec);
      add_item (scene, item, &at, 1);
    }
}

void
gb_scene_add_names (GbScene *scene, const GbChartSource *source)
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
