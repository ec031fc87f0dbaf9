/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Things that float, for tests. */

#include "engine/floater-private.h"
#include "mesh-fixture.h"

#define DEGREE (G_PI / 180)

static inline void
float_mesh (GbFloater *floater, GbMesh *take_mesh, gboolean mirrored)
{
  g_autoptr (GbMesh) mesh = take_mesh;
  g_autoptr (GbBody) body = gb_body_new (mesh);

  gb_floater_add_hull (floater, body, mirrored);
}

/* A box that stands on z = 0, its middle at x = y = 0, in water of 1000 kg/m3; its weight at height @kg. */
static inline GbFloater *
floating_box (double length, double width, double height, double mass, double kg)
{
  GbFloater *floater = gb_floater_new (1000);

  float_mesh (floater,
              new_box ((GbVec3){ -length / 2, -width / 2, 0 }, (GbVec3){ length / 2, width / 2, height }),
              FALSE);
  gb_floater_add_mass (floater, mass, (GbVec3){ 0, 0, kg });
  return floater;
}

static inline GbRest
rest_from (const GbFloater *floater, double heel, double trim, double height, GbHold hold)
{
  return gb_floater_rest (floater, gb_attitude (heel, trim, height), hold, NULL, NULL);
}

static inline GbAttitude
attitude_found (GbRest rest)
{
  g_assert_cmpint (rest.kind, ==, GB_REST_FOUND);
  return rest.attitude;
}

/* What hangs on her beside her weight is left out: forces and moments as far as they do not cancel, over
 * weight and weight times size. */
static inline double
unrest_of (const GbFloater *floater, GbAttitude at)
{
  GbFloatSums sums;
  GbVec3 turn;
  double size;

  gb_floater_most (floater, &size);
  gb_floater_sums (floater, at, &sums);
  turn = vec3_sub (vec3_scale (sums.gravity, sums.mass), vec3_scale (sums.hulls.moment, floater->density));
  return fmax (fabs (floater->density * sums.hulls.volume - sums.mass) / sums.mass,
               vec3_length (vec3_cross (at.up, turn)) / (sums.mass * size));
}
