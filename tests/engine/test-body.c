/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Bodies: what lies under a plane, against the plain way through all triangles, against closed forms, and by what holds
 * for any body. */

#include "engine/body.h"
#include "engine/mesh-cut.h"
#include "mesh-fixture.h"

static const GbVec3 up = { 0, 0, 1 };

static GbImmersion
immersed (const GbBody *body, gboolean mirrored, GbVec3 n, double d)
{
  GbImmersion sum = { 0 };

  gb_body_immerse (body, mirrored, n, d, &sum);
  return sum;
}

static GbVec3
times (GbTensor t, GbVec3 v)
{
  return (GbVec3){ t.xx * v.x + t.xy * v.y + t.zx * v.z, t.xy * v.x + t.yy * v.y + t.yz * v.z,
                   t.zx * v.x + t.yz * v.y + t.zz * v.z };
}

/* The cut is laid out in its plane: held against the body's sums in space, both from the origin. */
static void
assert_same_as_cut (const GbImmersion *in, GbCut cut, GbVec3 n, double d, double tolerance)
{
  GbFace frame = gb_face (n);
  double x = cut.waterplane > 0 ? cut.plane_x : 0, y = cut.waterplane > 0 ? cut.plane_y : 0;
  GbVec3 plane_moment = vec3_scale (
      vec3_add (vec3_add (vec3_scale (frame.u, x), vec3_scale (frame.v, y)), vec3_scale (n, d)), cut.waterplane);

  assert_near (in->volume, cut.volume, tolerance);
  if (cut.volume > 0)
    assert_vec3 (in->moment, vec3_scale (cut.centre, cut.volume), tolerance);
  assert_near (in->wetted, cut.area, tolerance);
  assert_near (in->girth, cut.girth, tolerance);
  assert_near (in->plane, cut.waterplane, tolerance);
  assert_vec3 (in->plane_moment, plane_moment, tolerance);
  assert_near (vec3_dot (frame.u, times (in->plane_second, frame.u)), cut.plane_iyy + cut.waterplane * x * x, tolerance);
  assert_near (vec3_dot (frame.v, times (in->plane_second, frame.v)), cut.plane_ixx + cut.waterplane * y * y, tolerance);
  assert_near (vec3_dot (frame.u, times (in->plane_second, frame.v)), cut.plane_ixy + cut.waterplane * x * y, tolerance);
  /* Out of the plane: what lies at d along n. */
  assert_vec3 (times (in->plane_second, n), vec3_scale (plane_moment, d), tolerance);
}

static void
test_same_as_through_all_triangles (void)
{
  for (guint i = 0; i < 2000; i++)
    {
      g_autoptr (GbMesh) mesh = random_body (i);
      g_autoptr (GbBody) body = gb_body_new (mesh);
      GbVec3 n = i % 7 == 0 ? up : random_direction ();
      double d = vec3_dot (n, mesh->points[i % mesh->n_points]) + g_test_rand_double_range (-1, 1) * (i % 3);
      GbImmersion in = immersed (body, FALSE, n, d);
      GbCut whole = gb_mesh_whole (mesh);

      assert_near (gb_body_volume (body), whole.volume, 1e-12 * whole.volume);
      assert_vec3 (gb_body_centre (body), whole.centre, 1e-12);
      assert_same_as_cut (&in, gb_mesh_cut (mesh, n, d), n, d, 1e-10);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/body/same-as-through-all-triangles", test_same_as_through_all_triangles);
  return g_test_run ();
}
