/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "boat-scene-private.h"
#include "boat/quantity.h"

#include <math.h>

/* Shares of the longest side: room around a boat with her loads, and the step in which a held extent
 * grows. */
#define LOADS_MARGIN 0.03
#define HELD_STEP 0.05

gboolean
gb_vec3_is_known (GbVec3 p)
{
  return isfinite (p.x) && isfinite (p.y) && isfinite (p.z);
}

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
widen (GbScene *scene, double share)
{
  double most = fmax (fmax (scene->hi.x - scene->lo.x, scene->hi.y - scene->lo.y), scene->hi.z - scene->lo.z);
  double by = most > 0 ? most * share : 0.5;

  scene->lo = (GbVec3){ scene->lo.x - by, scene->lo.y - by, scene->lo.z - by };
  scene->hi = (GbVec3){ scene->hi.x + by, scene->hi.y + by, scene->hi.z + by };
}

static GbScene *
scene_alloc (const GbChartSource *source)
{
  GbScene *scene = g_new0 (GbScene, 1);

  scene->units = (GbUnits)gb_boat_build (source->boat)->units;
  scene->views = GB_ALL_VIEWS;
  scene->hulls = g_array_new (FALSE, FALSE, sizeof (GbSceneHull));
  g_array_set_clear_func (scene->hulls, (GDestroyNotify)gb_scene_hull_clear);
  scene->items = g_array_new (FALSE, FALSE, sizeof (GbSceneItem));
  g_array_set_clear_func (scene->items, (GDestroyNotify)gb_scene_item_clear);
  scene->dots = g_array_new (FALSE, FALSE, sizeof (GbSceneDot));
  scene->names = g_array_new (FALSE, FALSE, sizeof (GbSceneName));
  g_array_set_clear_func (scene->names, (GDestroyNotify)gb_scene_name_clear);
  scene->lo = (GbVec3){ INFINITY, INFINITY, INFINITY };
  scene->hi = (GbVec3){ -INFINITY, -INFINITY, -INFINITY };
  scene->light = scene->loaded = scene->buoyancy = (GbVec3){ NAN, NAN, NAN };
  scene->water = scene->limit = NAN;
  scene->axes = gb_water_axes_upright ();
  return scene;
}

GbScene *
gb_scene_new (const GbChartSource *source)
{
  const GbFlotation *flotation = &source->findings->flotation;
  const GbMass *boat = &source->findings->rollup.boat;
  GbScene *scene = scene_alloc (source);

  scene->light = (GbVec3){ boat->x, boat->y, boat->z };
  scene->loaded = (GbVec3){ flotation->total_x, flotation->total_y, flotation->total_z };
  scene->buoyancy = (GbVec3){ flotation->afloat.lcb, flotation->afloat.tcb, flotation->afloat.vcb };
  scene->water = flotation->afloat.z;
  scene->limit = flotation->limit.z;
  gb_scene_add_hulls (scene, source->boat, &source->findings->hulls, TRUE);
  gb_scene_add_parts (scene, source, FALSE);
  gb_scene_add_loads (scene, source);
  gb_scene_add_names (scene, source);
  if (!gb_scene_is_empty (scene))
    {
      find_extent (scene);
      widen (scene, 0.03);
    }
  return scene;
}

GbScene *
gb_scene_new_loads (const GbChartSource *source, const GbAttitude *attitude, guint views)
{
  GbScene *scene = scene_alloc (source);

  scene->views = views;
  if (attitude != NULL)
    {
      scene->afloat = TRUE;
      scene->axes = gb_water_axes (*attitude);
      scene->water = 0;
    }
  gb_scene_add_hulls (scene, source->boat, &source->findings->hulls, FALSE);
  gb_scene_add_parts (scene, source, TRUE);
  gb_scene_add_loads (scene, source);
  if (!gb_scene_is_empty (scene))
    {
      find_extent (scene);
      widen (scene, LOADS_MARGIN);
    }
  return scene;
}

/* How far to go out for what is @over the edge; over by no more than @slack, it only stands nearer to it. */
static double
in_steps (double over, double slack, double step)
{
  return over > slack ? ceil ((over - slack) / step) * step : 0;
}

void
gb_scene_hold (GbScene *scene, const GbScene *base)
{
  GbVec3 lo = base->lo, hi = base->hi;
  double most = fmax (fmax (hi.x - lo.x, hi.y - lo.y), hi.z - lo.z), slack = most * LOADS_MARGIN * 0.8,
         step = most * HELD_STEP;

  if (!(most > 0) || gb_scene_is_empty (scene))
    return;
  lo.x -= in_steps (lo.x - scene->lo.x, slack, step);
  lo.y -= in_steps (lo.y - scene->lo.y, slack, step);
  lo.z -= in_steps (lo.z - scene->lo.z, slack, step);
  hi.x += in_steps (scene->hi.x - hi.x, slack, step);
  hi.y += in_steps (scene->hi.y - hi.y, slack, step);
  hi.z += in_steps (scene->hi.z - hi.z, slack, step);
  scene->lo = lo;
  scene->hi = hi;
}

GbVec3
gb_scene_place (const GbScene *scene, GbVec3 p)
{
  return scene->afloat ? gb_water_axes_to (&scene->axes, p) : p;
}

GbVec3
gb_scene_from (const GbScene *scene, GbVec3 p)
{
  return scene->afloat ? gb_water_axes_from (&scene->axes, p) : p;
}

char *
gb_scene_tell_item (const GbSceneItem *item, GbUnits units)
{
  g_autofree char *mass = gb_quantity_format (item->mass, GB_DIM_MASS, units);

  return g_strdup_printf ("%s: %s", item->name, mass);
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
