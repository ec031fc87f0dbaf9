/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-floater"

#include "floater.h"
#include "mesh-private.h"

static void
clear_hull (gpointer hull)
{
  gb_body_unref (((GbFloatHull *) hull)->body);
}

static void
clear_tank (gpointer tank)
{
  gb_body_unref (((GbTank *) tank)->body);
}

GbFloater *
gb_floater_new (double water_density)
{
  GbFloater *floater = g_new (GbFloater, 1);

  *floater = (GbFloater){
    .density = water_density,
    .hulls = g_array_new (FALSE, FALSE, sizeof (GbFloatHull)),
    .balls = g_array_new (FALSE, FALSE, sizeof (GbBall)),
    .tanks = g_array_new (FALSE, FALSE, sizeof (GbTank)),
    .pulls = g_array_new (FALSE, FALSE, sizeof (GbPull)),
  };
  g_array_set_clear_func (floater->hulls, clear_hull);
  g_array_set_clear_func (floater->tanks, clear_tank);
  return floater;
}

/* The copy of an array has no clear function of its own. */
static GArray *
copy_bodies (const GArray *array, GDestroyNotify clear)
{
  GArray *copy = g_array_copy ((GArray *) array);

  g_array_set_clear_func (copy, clear);
  return copy;
}

GbFloater *
gb_floater_copy (const GbFloater *floater)
{
  GbFloater *copy = g_new (GbFloater, 1);

  *copy = *floater;
  copy->hulls = copy_bodies (floater->hulls, clear_hull);
  copy->tanks = copy_bodies (floater->tanks, clear_tank);
  copy->balls = g_array_copy (floater->balls);
  copy->pulls = g_array_copy (floater->pulls);
  for (guint i = 0; i < copy->hulls->len; i++)
    gb_body_ref (g_array_index (copy->hulls, GbFloatHull, i).body);
  for (guint i = 0; i < copy->tanks->len; i++)
    gb_body_ref (g_array_index (copy->tanks, GbTank, i).body);
  return copy;
}

void
gb_floater_free (GbFloater *floater)
{
  if (floater == NULL)
    return;
  g_array_unref (floater->hulls);
  g_array_unref (floater->balls);
  g_array_unref (floater->tanks);
  g_array_unref (floater->pulls);
  g_free (floater);
}

void
gb_floater_add_hull (GbFloater *floater, GbBody *body, gboolean mirrored)
{
  GbFloatHull hull = { gb_body_ref (body), mirrored };

  g_array_append_val (floater->hulls, hull);
}

void
gb_floater_add_mass (GbFloater *floater, double mass, GbVec3 at)
{
  floater->mass += mass;
  floater->moment = vec3_add (floater->moment, vec3_scale (at, mass));
}

static GbBody *
new_box (GbVec3 size)
{
  /* Corners by bits: 1 forward, 2 to port, 4 up. */
  static const guint faces[6][4]
      = { { 0, 2, 3, 1 }, { 4, 5, 7, 6 }, { 0, 1, 5, 4 }, { 2, 6, 7, 3 }, { 0, 4, 6, 2 }, { 1, 3, 7, 5 } };
  g_auto (GbMeshBuilder) builder = { NULL, NULL };
  g_autoptr (GbMesh) mesh = NULL;

  gb_mesh_builder_init (&builder);
  for (guint i = 0; i < 8; i++)
    gb_mesh_builder_add_point (&builder, i & 1 ? size.x / 2 : -size.x / 2, i & 2 ? size.y / 2 : -size.y / 2,
                               i & 4 ? size.z / 2 : -size.z / 2);
  for (guint f = 0; f < G_N_ELEMENTS (faces); f++)
    gb_mesh_builder_add_face (&builder, faces[f], 4);
  mesh = gb_mesh_builder_finish (&builder, 0);
  return gb_body_new (mesh);
}

void
gb_floater_add_tank (
    GbFloater *floater, GbVec3 centre, GbVec3 size, double density, double mass, double times)
{
  GbTank tank = { centre, size, density, mass, times, NULL };
  double volume = size.x * size.y * size.z;
  gboolean is_box = size.x > 0 && size.y > 0 && size.z > 0 && isfinite (volume) && volume > 0;

  if (!is_box || !(density > 0) || !isfinite (density) || !(mass > 0) || !(mass / density < volume))
    {
      gb_floater_add_mass (floater, mass * times, centre);
      return;
    }
  tank.body = new_box (size);
  g_array_append_val (floater->tanks, tank);
}
