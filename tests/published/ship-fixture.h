/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Ships of the books, as far as the books say what they are: a box with the length, breadth and draught
 * given, or where only the height KM of the metacentre is given, a cylinder about it, for its metacentre is
 * its axis at any heel. Their units are tonnes and metres; the keel lies at z = 0, the middle at x = y = 0.
 *
 * DB: Derrett and Barrass, Ship Stability for Masters and Mates, 5th edition (1999), by printed page; NS:
 * Nicholls's Seamanship and Nautical Knowledge, in long tons and feet. DB's sea water is 1.025 t/m3, NS's
 * fills 35 cubic feet with a ton. */

#include "../engine/mesh-fixture.h"

#include "engine/floater.h"

#define SEA 1.025
#define FRESH 1.0
#define NS_SEA (1 / 35.0)
#define DEGREE (G_PI / 180)

static inline GbFloater *
float_body (double water, GbMesh *take_mesh)
{
  g_autoptr (GbMesh) mesh = take_mesh;
  g_autoptr (GbBody) body = gb_body_new (mesh);
  GbFloater *floater = gb_floater_new (water);

  gb_floater_add_hull (floater, body, FALSE);
  return floater;
}

static inline GbFloater *
box_ship (double water, double length, double breadth, double depth)
{
  return float_body (
      water, new_box ((GbVec3){ -length / 2, -breadth / 2, 0 }, (GbVec3){ length / 2, breadth / 2, depth }));
}

/* A prism along x over the polygon @yz, which turns anticlockwise seen from ahead. */
static inline GbMesh *
new_prism (double length, const GbVec3 *yz, guint n)
{
  g_auto (GbMeshBuilder) builder = { NULL, NULL };
  g_autofree guint *fore = g_new (guint, n), *aft = g_new (guint, n);

  gb_mesh_builder_init (&builder);
  for (guint i = 0; i < n; i++)
    {
      aft[n - 1 - i] = gb_mesh_builder_add_point (&builder, -length / 2, yz[i].y, yz[i].z);
      fore[i] = gb_mesh_builder_add_point (&builder, length / 2, yz[i].y, yz[i].z);
    }
  for (guint i = 0; i < n; i++)
    {
      guint next = (i + 1) % n, corners[4] = { 2 * i, 2 * next, 2 * next + 1, 2 * i + 1 };

      gb_mesh_builder_add_face (&builder, corners, 4);
    }
  gb_mesh_builder_add_face (&builder, fore, n);
  gb_mesh_builder_add_face (&builder, aft, n);
  return gb_mesh_builder_finish (&builder, 0);
}

/* A cylinder along x; the circle is a polygon of the same area. */
static inline GbMesh *
new_cylinder (double length, double radius, double z, guint n)
{
  g_autofree GbVec3 *yz = g_new0 (GbVec3, n);
  double step = 2 * G_PI / n, corner = radius * sqrt (step / sin (step));

  for (guint i = 0; i < n; i++)
    yz[i] = (GbVec3){ 0, corner * sin (i * step), z - corner * cos (i * step) };
  return new_prism (length, yz, n);
}

/* Half under at @mass. */
static inline GbFloater *
round_ship (double water, double mass, double km)
{
  return float_body (water, new_cylinder (2 * mass / (water * G_PI * km * km), km, km, 1440));
}

static inline void
load_at (GbFloater *ship, double mass, double across, double kg)
{
  gb_floater_add_mass (ship, mass, (GbVec3){ 0, across, kg });
}

static inline double
kg_of (const GbFloater *ship)
{
  GbFloatSums sums;

  gb_floater_sums (ship, gb_attitude (0, 0, 0), &sums);
  return sums.gravity.z;
}

static inline GbAttitude
rest_of (const GbFloater *ship, double heel, GbHold hold)
{
  GbRest rest = gb_floater_rest (ship, gb_attitude (heel, 0, 1), hold, NULL, NULL);

  g_assert_cmpint (rest.kind, ==, GB_REST_FOUND);
  return rest.attitude;
}

/* In degrees, to starboard. */
static inline double
list_of (const GbFloater *ship)
{
  return gb_attitude_heel (rest_of (ship, 0, GB_HOLD_NOTHING)) / DEGREE;
}

static inline double
lever_at (const GbFloater *ship, double degrees)
{
  return gb_floater_lever (ship, rest_of (ship, degrees * DEGREE, GB_HOLD_HEEL));
}

/* The slope of the levers where she lies upright. */
static inline double
gm_of (const GbFloater *ship)
{
  double by = 0.01;

  return (lever_at (ship, by) - lever_at (ship, -by)) / (2 * by * DEGREE);
}
