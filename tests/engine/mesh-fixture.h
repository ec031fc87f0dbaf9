/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Meshes for tests: boxes, stars, random ones. */

#include "engine/mesh-private.h"
#include "near.h"

static inline void
assert_vec3 (GbVec3 value, GbVec3 expected, double tolerance)
{
  assert_near (value.x, expected.x, tolerance);
  assert_near (value.y, expected.y, tolerance);
  assert_near (value.z, expected.z, tolerance);
}

static inline void
add_quad (GbMeshBuilder *builder, guint a, guint b, guint c, guint d)
{
  gb_mesh_builder_add_face (builder, (guint[]){ a, b, c, d }, 4);
}

static inline void
add_box (GbMeshBuilder *builder, GbVec3 low, GbVec3 high)
{
  guint first = builder->points->len;
  /* Corners by bits: 1 forward, 2 to port, 4 up. */
  static const guint faces[6][4]
      = { { 0, 2, 3, 1 }, { 4, 5, 7, 6 }, { 0, 1, 5, 4 }, { 2, 6, 7, 3 }, { 0, 4, 6, 2 }, { 1, 3, 7, 5 } };

  for (guint i = 0; i < 8; i++)
    gb_mesh_builder_add_point (builder, i & 1 ? high.x : low.x, i & 2 ? high.y : low.y,
                               i & 4 ? high.z : low.z);
  for (guint f = 0; f < 6; f++)
    add_quad (builder, first + faces[f][0], first + faces[f][1], first + faces[f][2], first + faces[f][3]);
}

static inline GbMesh *
new_box (GbVec3 low, GbVec3 high)
{
  g_auto (GbMeshBuilder) builder = { NULL, NULL };

  gb_mesh_builder_init (&builder);
  add_box (&builder, low, high);
  return gb_mesh_builder_finish (&builder, 0);
}

static inline GbMesh *
new_tetrahedron (GbVec3 a, GbVec3 b, GbVec3 c, GbVec3 d)
{
  g_auto (GbMeshBuilder) builder = { NULL, NULL };
  GbVec3 corners[4] = { a, b, c, d };
  static const guint faces[4][3] = { { 0, 2, 1 }, { 0, 1, 3 }, { 1, 2, 3 }, { 2, 0, 3 } };

  gb_mesh_builder_init (&builder);
  for (guint i = 0; i < 4; i++)
    gb_mesh_builder_add_point (&builder, corners[i].x, corners[i].y, corners[i].z);
  for (guint f = 0; f < 4; f++)
    gb_mesh_builder_add_triangle (&builder, faces[f][0], faces[f][1], faces[f][2]);
  return gb_mesh_builder_finish (&builder, 0);
}

/* A closed body with @radius (longitude, latitude) seen from @centre: convex where the radii make it so, else
 * star-shaped. */
static inline GbMesh *
new_star (GbVec3 centre, guint n_round, guint n_bands, double (*radius) (void))
{
  g_auto (GbMeshBuilder) builder = { NULL, NULL };
  guint south, north;

  gb_mesh_builder_init (&builder);
  for (guint band = 1; band < n_bands; band++)
    for (guint i = 0; i < n_round; i++)
      {
        double latitude = G_PI * (band / (double)n_bands - 0.5), longitude = 2 * G_PI * i / n_round;
        double r = radius ();

        gb_mesh_builder_add_point (&builder, centre.x + r * cos (latitude) * cos (longitude),
                                   centre.y + r * cos (latitude) * sin (longitude),
                                   centre.z + r * sin (latitude));
      }
  south = gb_mesh_builder_add_point (&builder, centre.x, centre.y, centre.z - radius ());
  north = gb_mesh_builder_add_point (&builder, centre.x, centre.y, centre.z + radius ());
  for (guint i = 0; i < n_round; i++)
    {
      guint j = (i + 1) % n_round, top = (n_bands - 2) * n_round;

      gb_mesh_builder_add_triangle (&builder, south, j, i);
      gb_mesh_builder_add_triangle (&builder, north, top + i, top + j);
      for (guint band = 0; band + 2 < n_bands; band++)
        {
          guint low = band * n_round, high = low + n_round;

          gb_mesh_builder_add_triangle (&builder, low + i, low + j, high + j);
          gb_mesh_builder_add_triangle (&builder, low + i, high + j, high + i);
        }
    }
  return gb_mesh_builder_finish (&builder, 0);
}

static inline double
near_one (void)
{
  return g_test_rand_double_range (0.9, 1.1);
}

static inline double
far_from_one (void)
{
  return g_test_rand_double_range (0.2, 2);
}

static inline GbVec3
random_direction (void)
{
  GbVec3 v;

  do
    v = (GbVec3){ g_test_rand_double_range (-1, 1), g_test_rand_double_range (-1, 1),
                  g_test_rand_double_range (-1, 1) };
  while (vec3_length (v) < 0.1 || vec3_length (v) > 1);
  return vec3_scale (v, 1 / vec3_length (v));
}

static inline GbVec3
random_place (double reach)
{
  return (GbVec3){ g_test_rand_double_range (-reach, reach), g_test_rand_double_range (-reach, reach),
                   g_test_rand_double_range (-reach, reach) };
}

static inline GbMesh *
random_body (guint i)
{
  GbVec3 centre = random_place (3);

  switch (i % 3)
    {
    case 0:
      return new_box (centre, vec3_add (centre, (GbVec3){ near_one (), near_one (), near_one () }));
    case 1:
      return new_star (centre, 6, 4, near_one);
    default:
      return new_star (centre, 9, 7, far_from_one);
    }
}

/* Turns by @angle about @axis (Rodrigues). */
static inline GbVec3
turned (GbVec3 p, GbVec3 axis, double angle)
{
  GbVec3 a = vec3_scale (p, cos (angle));
  GbVec3 b = vec3_scale (vec3_cross (axis, p), sin (angle));
  GbVec3 c = vec3_scale (axis, vec3_dot (axis, p) * (1 - cos (angle)));

  return vec3_add (vec3_add (a, b), c);
}
