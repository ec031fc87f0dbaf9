/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Bodies: what lies under a plane, against the plain way through all triangles, against closed forms, and by
 * what holds for any body. */

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
  GbVec3 plane_moment
      = vec3_scale (vec3_add (vec3_add (vec3_scale (frame.u, x), vec3_scale (frame.v, y)), vec3_scale (n, d)),
                    cut.waterplane);

  assert_near (in->volume, cut.volume, tolerance);
  if (cut.volume > 0)
    assert_vec3 (in->moment, vec3_scale (cut.centre, cut.volume), tolerance);
  assert_near (in->wetted, cut.area, tolerance);
  assert_near (in->girth, cut.girth, tolerance);
  assert_near (in->plane, cut.waterplane, tolerance);
  assert_vec3 (in->plane_moment, plane_moment, tolerance);
  assert_near (vec3_dot (frame.u, times (in->plane_second, frame.u)), cut.plane_iyy + cut.waterplane * x * x,
               tolerance);
  assert_near (vec3_dot (frame.v, times (in->plane_second, frame.v)), cut.plane_ixx + cut.waterplane * y * y,
               tolerance);
  assert_near (vec3_dot (frame.u, times (in->plane_second, frame.v)), cut.plane_ixy + cut.waterplane * x * y,
               tolerance);
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

/* Many triangles, so that the tree is deep, at a few planes. */
static void
test_large_meshes (void)
{
  for (guint i = 0; i < 6; i++)
    {
      g_autoptr (GbMesh) mesh = new_star (random_place (3), 120, 60, i & 1 ? near_one : far_from_one);
      g_autoptr (GbBody) body = gb_body_new (mesh);

      for (guint k = 0; k < 20; k++)
        {
          GbVec3 n = k == 0 ? up : random_direction ();
          double d = vec3_dot (n, gb_body_centre (body)) + g_test_rand_double_range (-1, 1);
          GbImmersion in = immersed (body, FALSE, n, d);

          assert_same_as_cut (&in, gb_mesh_cut (mesh, n, d), n, d, 1e-9);
        }
    }
}

static GbMesh *
mirror_image (const GbMesh *mesh)
{
  g_auto (GbMeshBuilder) builder = { NULL, NULL };

  gb_mesh_builder_init (&builder);
  for (guint i = 0; i < mesh->n_points; i++)
    gb_mesh_builder_add_point (&builder, mesh->points[i].x, -mesh->points[i].y, mesh->points[i].z);
  for (guint t = 0; t < mesh->n_triangles; t++)
    gb_mesh_builder_add_triangle (&builder, mesh->triangles[t][0], mesh->triangles[t][2],
                                  mesh->triangles[t][1]);
  return gb_mesh_builder_finish (&builder, 0);
}

static void
test_mirror_image (void)
{
  for (guint i = 0; i < 300; i++)
    {
      g_autoptr (GbMesh) mesh = random_body (i), image = mirror_image (mesh);
      g_autoptr (GbBody) body = gb_body_new (mesh);
      GbVec3 n = random_direction ();
      double d = vec3_dot (n, image->points[0]) + g_test_rand_double_range (-0.5, 0.5);
      GbImmersion in = immersed (body, TRUE, n, d);

      assert_same_as_cut (&in, gb_mesh_cut (image, n, d), n, d, 1e-10);
    }
}

/* Both of a pair, and another, in one sum. */
static void
test_sums_go_on (void)
{
  g_autoptr (GbMesh) box = new_box ((GbVec3){ 0, 1, 0 }, (GbVec3){ 4, 2, 1 });
  g_autoptr (GbMesh) middle = new_box ((GbVec3){ 1, -0.5, 0 }, (GbVec3){ 3, 0.5, 2 });
  g_autoptr (GbBody) pair = gb_body_new (box), body = gb_body_new (middle);
  GbImmersion sum = { 0 };

  gb_body_immerse (pair, FALSE, up, 0.5, &sum);
  gb_body_immerse (pair, TRUE, up, 0.5, &sum);
  gb_body_immerse (body, FALSE, up, 0.5, &sum);
  assert_near (sum.volume, 2 + 2 + 1, 1e-14);
  assert_vec3 (sum.moment, (GbVec3){ 10, 0, 1.25 }, 1e-13);
  assert_near (sum.plane, 10, 1e-13);
  assert_vec3 (sum.plane_moment, (GbVec3){ 20, 0, 5 }, 1e-13);
  /* Across: two strips of 4 by 1 at 1.5 from the middle, and one of 2 by 1. */
  assert_near (sum.plane_second.yy, 2 * (4 / 12.0 + 4 * 2.25) + 2 / 12.0, 1e-12);
  assert_near (sum.plane_second.xx, 2 * (64 / 12.0 + 16) + 8 / 12.0 + 8, 1e-12);
  assert_near (sum.plane_second.zz, 2.5, 1e-13);
  assert_near (sum.plane_second.xy, 0, 1e-13);
  assert_near (sum.plane_second.zx, 10, 1e-13);
  assert_near (sum.girth, 10 + 10 + 6, 1e-13);
  assert_near (sum.wetted, 2 * (4 + 5) + 2 + 3, 1e-13);
}

/* Each triangle by its edges' middles in four: the same solid, so the same sums. */
static GbMesh *
subdivided (const GbMesh *mesh)
{
  g_auto (GbMeshBuilder) builder = { NULL, NULL };

  gb_mesh_builder_init (&builder);
  for (guint t = 0; t < mesh->n_triangles; t++)
    {
      guint first = builder.points->len;

      for (guint k = 0; k < 3; k++)
        {
          GbVec3 p = mesh->points[mesh->triangles[t][k]], q = mesh->points[mesh->triangles[t][(k + 1) % 3]];

          gb_mesh_builder_add_point (&builder, p.x, p.y, p.z);
          gb_mesh_builder_add_point (&builder, (p.x + q.x) / 2, (p.y + q.y) / 2, (p.z + q.z) / 2);
        }
      for (guint k = 0; k < 3; k++)
        gb_mesh_builder_add_triangle (&builder, first + 2 * k, first + 2 * k + 1, first + (2 * k + 5) % 6);
      gb_mesh_builder_add_triangle (&builder, first + 1, first + 3, first + 5);
    }
  return gb_mesh_builder_finish (&builder, 0);
}

static void
assert_same (const GbImmersion *a, const GbImmersion *b, double tolerance)
{
  assert_near (a->volume, b->volume, tolerance);
  assert_vec3 (a->moment, b->moment, tolerance);
  assert_near (a->plane, b->plane, tolerance);
  assert_vec3 (a->plane_moment, b->plane_moment, tolerance);
  assert_near (a->plane_second.xx, b->plane_second.xx, tolerance);
  assert_near (a->plane_second.yy, b->plane_second.yy, tolerance);
  assert_near (a->plane_second.zz, b->plane_second.zz, tolerance);
  assert_near (a->plane_second.xy, b->plane_second.xy, tolerance);
  assert_near (a->plane_second.yz, b->plane_second.yz, tolerance);
  assert_near (a->plane_second.zx, b->plane_second.zx, tolerance);
  assert_near (a->wetted, b->wetted, tolerance);
  assert_near (a->girth, b->girth, tolerance);
}

static void
test_subdivision_changes_nothing (void)
{
  for (guint i = 0; i < 100; i++)
    {
      g_autoptr (GbMesh) mesh = random_body (i), fine = subdivided (mesh), finest = subdivided (fine);
      g_autoptr (GbBody) body = gb_body_new (mesh), fine_body = gb_body_new (fine),
                         finest_body = gb_body_new (finest);
      GbVec3 n = random_direction ();
      double d = vec3_dot (n, gb_body_centre (body)) + g_test_rand_double_range (-0.5, 0.5);
      GbImmersion in = immersed (body, FALSE, n, d);
      GbImmersion fine_in = immersed (fine_body, FALSE, n, d),
                  finest_in = immersed (finest_body, FALSE, n, d);

      assert_near (gb_body_volume (finest_body), gb_body_volume (body), 1e-12 * gb_body_volume (body));
      assert_same (&fine_in, &in, 1e-11);
      assert_same (&finest_in, &in, 1e-11);
    }
}

/* Body, plane and all that comes of it turn together. */
static void
test_turning_changes_nothing (void)
{
  for (guint i = 0; i < 300; i++)
    {
      g_autoptr (GbMesh) mesh = random_body (i);
      g_autoptr (GbBody) body = gb_body_new (mesh), after = NULL;
      GbVec3 axis = random_direction (), n = random_direction (), m, a, b;
      double angle = g_test_rand_double_range (-4, 4);
      double d = vec3_dot (n, gb_body_centre (body)) + g_test_rand_double_range (-0.5, 0.5);
      GbImmersion in = immersed (body, FALSE, n, d), turned_in;

      for (guint k = 0; k < mesh->n_points; k++)
        mesh->points[k] = turned (mesh->points[k], axis, angle);
      after = gb_body_new (mesh);
      turned_in = immersed (after, FALSE, turned (n, axis, angle), d);
      assert_near (gb_body_volume (after), gb_body_volume (body), 1e-12);
      assert_vec3 (gb_body_centre (after), turned (gb_body_centre (body), axis, angle), 1e-12);
      assert_near (turned_in.volume, in.volume, 1e-12);
      assert_vec3 (turned_in.moment, turned (in.moment, axis, angle), 1e-11);
      assert_near (turned_in.plane, in.plane, 1e-11);
      assert_vec3 (turned_in.plane_moment, turned (in.plane_moment, axis, angle), 1e-11);
      m = random_direction ();
      a = turned (times (in.plane_second, m), axis, angle);
      b = times (turned_in.plane_second, turned (m, axis, angle));
      assert_vec3 (b, a, 1e-10);
      assert_near (turned_in.wetted, in.wetted, 1e-11);
      assert_near (turned_in.girth, in.girth, 1e-11);
    }
}

/* What floating goes by: the slopes of volume and moment are the waterplane's moments. By central
 * differences. */
static void
test_slopes (void)
{
  const double step = 1e-5;

  for (guint i = 0; i < 200; i++)
    {
      g_autoptr (GbMesh) mesh = random_body (i);
      g_autoptr (GbBody) body = gb_body_new (mesh);
      GbVec3 n = random_direction (), side = vec3_cross (n, random_direction ());
      double d = vec3_dot (n, gb_body_centre (body)) + g_test_rand_double_range (-0.3, 0.3);
      GbImmersion in = immersed (body, FALSE, n, d);
      GbImmersion above = immersed (body, FALSE, n, d + step), below = immersed (body, FALSE, n, d - step);
      GbVec3 more = vec3_add (n, vec3_scale (side, step)), less = vec3_sub (n, vec3_scale (side, step));
      double length = vec3_length (more);
      GbVec3 slope;

      assert_near ((above.volume - below.volume) / (2 * step), in.plane, 1e-3);
      slope = vec3_scale (vec3_sub (above.moment, below.moment), 1 / (2 * step));
      assert_vec3 (slope, in.plane_moment, 1e-3);
      /* Turning the plane about the place d n: what it gains is what lies to the other side. */
      above = immersed (body, FALSE, vec3_scale (more, 1 / length), d / length);
      below = immersed (body, FALSE, vec3_scale (less, 1 / length), d / length);
      assert_near ((above.volume - below.volume) / (2 * step), -vec3_dot (side, in.plane_moment), 1e-3);
      slope = vec3_scale (vec3_sub (above.moment, below.moment), 1 / (2 * step));
      assert_vec3 (slope, vec3_scale (times (in.plane_second, side), -1), 1e-3);
    }
}

static void
test_extent (void)
{
  for (guint i = 0; i < 300; i++)
    {
      g_autoptr (GbMesh) mesh = random_body (i);
      g_autoptr (GbBody) body = gb_body_new (mesh);
      GbVec3 n = random_direction ();
      double least, greatest, low = INFINITY, high = -INFINITY;

      for (guint k = 0; k < mesh->n_points; k++)
        {
          low = fmin (low, vec3_dot (n, mesh->points[k]));
          high = fmax (high, vec3_dot (n, mesh->points[k]));
        }
      gb_body_extent (body, n, &least, &greatest);
      assert_near (least, low, 1e-14 * 10);
      assert_near (greatest, high, 1e-14 * 10);
    }
}

/* The solid angle that a triangle takes up as seen from the origin (Van Oosterom and Strackee). */
static double
solid_angle (GbVec3 a, GbVec3 b, GbVec3 c)
{
  double la = vec3_length (a), lb = vec3_length (b), lc = vec3_length (c);

  return 2
         * atan2 (vec3_dot (a, vec3_cross (b, c)),
                  la * lb * lc + vec3_dot (a, b) * lc + vec3_dot (b, c) * la + vec3_dot (c, a) * lb);
}

static double
winding_number (const GbMesh *mesh, GbVec3 p)
{
  double sum = 0;

  for (guint t = 0; t < mesh->n_triangles; t++)
    {
      const guint *corners = mesh->triangles[t];

      sum += solid_angle (vec3_sub (mesh->points[corners[0]], p), vec3_sub (mesh->points[corners[1]], p),
                          vec3_sub (mesh->points[corners[2]], p));
    }
  return sum / (4 * G_PI);
}

static void
test_contains (void)
{
  for (guint i = 0; i < 300; i++)
    {
      g_autoptr (GbMesh) mesh = random_body (i);
      g_autoptr (GbBody) body = gb_body_new (mesh);
      GbVec3 centre = gb_body_centre (body);

      for (guint k = 0; k < 20; k++)
        {
          GbVec3 p = vec3_add (centre, random_place (1.5));
          const GbVec3 *corner = &mesh->points[g_test_rand_int_range (0, (gint32)mesh->n_points)];

          /* Straight under or over a corner, or in line with one; of a box that would be on its side. */
          if (i % 3 != 0 && k % 4 == 1)
            p.x = corner->x, p.y = corner->y;
          else if (i % 3 != 0 && k % 4 == 2)
            p.y = corner->y;
          else if (i % 3 != 0 && k % 4 == 3)
            p.x = corner->x;
          if (fabs (fabs (winding_number (mesh, p)) - 0.5) < 0.45)
            continue; /* on its surface, nearly */
          g_assert_cmpint (gb_body_contains (body, p), ==, winding_number (mesh, p) > 0.5);
        }
    }
}

/* In a box from @x0 to @x1, as broad and as high from @low to @high. */
static gboolean
is_between (GbVec3 p, double x0, double x1, double low, double high)
{
  return p.x > x0 && p.x < x1 && p.y > low && p.y < high && p.z > low && p.z < high;
}

static gboolean
is_on_side (GbVec3 p, double x0, double x1, double low, double high)
{
  const double hair = 1e-9;

  return is_between (p, x0 - hair, x1 + hair, low - hair, high + hair)
         && !is_between (p, x0 + hair, x1 - hair, low + hair, high - hair);
}

/* In line with corners and edges of boxes, and in the hollow of one. */
static void
test_contains_in_boxes (void)
{
  g_auto (GbMeshBuilder) builder = { NULL, NULL };
  g_autoptr (GbMesh) mesh = NULL;
  g_autoptr (GbBody) body = NULL;
  guint n;

  gb_mesh_builder_init (&builder);
  add_box (&builder, (GbVec3){ 0, 0, 0 }, (GbVec3){ 4, 4, 4 });
  add_box (&builder, (GbVec3){ 6, 0, 0 }, (GbVec3){ 8, 4, 4 });
  n = builder.triangles->len;
  add_box (&builder, (GbVec3){ 1, 1, 1 }, (GbVec3){ 3, 3, 3 });
  for (guint t = n; t < builder.triangles->len; t++)
    {
      guint *corners = (guint *)(gpointer)builder.triangles->data + (gsize)t * 3, swap = corners[1];

      corners[1] = corners[2];
      corners[2] = swap;
    }
  mesh = gb_mesh_builder_finish (&builder, 0);
  body = gb_body_new (mesh);
  assert_near (gb_body_volume (body), 64 - 8 + 32, 1e-12);
  for (int x = -1; x <= 17; x++)
    for (int y = -1; y <= 9; y++)
      for (int z = -1; z <= 9; z++)
        {
          /* In line with corners seen from above, but between them in height. */
          GbVec3 p = { x / 2.0, y / 2.0, z / 2.0 + 0.25 };
          gboolean in_one = is_between (p, 0, 4, 0, 4) || is_between (p, 6, 8, 0, 4);

          if (is_on_side (p, 0, 4, 0, 4) || is_on_side (p, 6, 8, 0, 4) || is_on_side (p, 1, 3, 1, 3))
            continue;
          g_assert_cmpint (gb_body_contains (body, p), ==, in_one && !is_between (p, 1, 3, 1, 3));
        }
}

static void
test_planes_through_faces (void)
{
  g_autoptr (GbMesh) box = new_box ((GbVec3){ 0, 0, 0 }, (GbVec3){ 2, 3, 1 });
  g_autoptr (GbBody) body = gb_body_new (box);
  GbImmersion awash = immersed (body, FALSE, up, 1), above = immersed (body, FALSE, up, 1.5);
  GbImmersion touching = immersed (body, FALSE, up, 0), below = immersed (body, FALSE, up, -0.5);

  /* As for the mesh: what lies in the plane is dry. */
  assert_near (awash.volume, 6, 1e-13);
  assert_near (awash.plane, 6, 1e-13);
  assert_near (awash.plane_second.zz, 6, 1e-13);
  assert_near (awash.wetted, 6 + 10, 1e-13);
  assert_near (above.volume, 6, 1e-13);
  assert_vec3 (above.moment, (GbVec3){ 6, 9, 3 }, 1e-13);
  assert_near (above.plane, 0, 0);
  assert_near (above.girth, 0, 0);
  assert_near (touching.volume, 0, 0);
  assert_near (touching.plane, 0, 0);
  assert_near (touching.wetted, 0, 0);
  assert_near (below.volume, 0, 0);
}

/* Planes through corners, along edges and through faces of bodies whose corners lie on a lattice, so that
 * they meet exactly. */
static void
test_planes_through_corners (void)
{
  for (guint i = 0; i < 500; i++)
    {
      g_autoptr (GbMesh) mesh = i % 2 == 0 ? new_star ((GbVec3){ 0, 0, 0 }, 8, 5, far_from_one)
                                           : new_box ((GbVec3){ -1, -1, -1 }, (GbVec3){ 1, 1, 1 });
      g_autoptr (GbBody) body = NULL;
      GbVec3 a, b, c, n;
      GbImmersion in;
      double d;

      for (guint k = 0; k < mesh->n_points; k++)
        mesh->points[k] = (GbVec3){ round (4 * mesh->points[k].x) / 4, round (4 * mesh->points[k].y) / 4,
                                    round (4 * mesh->points[k].z) / 4 };
      body = gb_body_new (mesh);
      a = mesh->points[g_test_rand_int_range (0, (gint32)mesh->n_points)];
      b = mesh->points[g_test_rand_int_range (0, (gint32)mesh->n_points)];
      c = mesh->points[g_test_rand_int_range (0, (gint32)mesh->n_points)];
      n = vec3_cross (vec3_sub (b, a), vec3_sub (c, a));
      if (i % 5 == 0)
        n = (GbVec3){ i % 3 == 0, i % 3 == 1, i % 3 == 2 };
      if (vec3_length (n) < 1e-9)
        continue;
      n = vec3_scale (n, 1 / vec3_length (n));
      d = vec3_dot (n, a);
      in = immersed (body, FALSE, n, d);
      /* Rounding may put a face that lies in the plane to either side, here and there: then area and girth of
       * the cut are another's, but what they close is not. */
      assert_near (in.volume, gb_mesh_cut (mesh, n, d).volume, 1e-12);
      if (in.volume > 1e-3)
        assert_vec3 (vec3_scale (in.moment, 1 / in.volume), gb_mesh_cut (mesh, n, d).centre, 1e-10);
    }
}

static void
test_nothing_to_cut (void)
{
  GbMesh empty = { 0 };
  g_autoptr (GbBody) none = gb_body_new (&empty);
  g_autoptr (GbMesh) box = new_box ((GbVec3){ 0, 0, 0 }, (GbVec3){ 1, 1, 1 });
  g_autoptr (GbBody) body = gb_body_new (box);
  GbImmersion in = immersed (none, FALSE, up, 1);
  double least, greatest;

  assert_near (in.volume, 0, 0);
  assert_near (gb_body_volume (none), 0, 0);
  g_assert_true (isnan (gb_body_centre (none).x));
  g_assert_false (gb_body_contains (none, (GbVec3){ 0, 0, 0 }));
  gb_body_extent (none, up, &least, &greatest);
  g_assert_true (isnan (least) && isnan (greatest));

  /* Far off, and nowhere. */
  assert_near (immersed (body, FALSE, up, 1e12).volume, 1, 1e-14);
  assert_near (immersed (body, FALSE, up, -1e12).volume, 0, 0);
  immersed (body, FALSE, up, INFINITY);
  immersed (body, FALSE, up, NAN);
  immersed (body, FALSE, (GbVec3){ NAN, 0, 1 }, 0.5);
  immersed (body, TRUE, (GbVec3){ 0, 0, 0 }, 0.5);
  g_assert_false (gb_body_contains (body, (GbVec3){ NAN, 0.5, 0.5 }));
}

/* A box that heels: the wedges of a wall-sided body; moments over half the volume. */
static void
test_box_at_heel (void)
{
  g_autoptr (GbMesh) box = new_box ((GbVec3){ 0, -1, -1 }, (GbVec3){ 5, 1, 1 });
  g_autoptr (GbBody) body = gb_body_new (box);

  for (int degrees = -40; degrees <= 40; degrees += 10)
    {
      double a = degrees * G_PI / 180, width = 2 / cos (a);
      GbVec3 n = { 0, sin (a), cos (a) }, across = { 0, cos (a), -sin (a) };
      GbImmersion in = immersed (body, FALSE, n, 0);

      assert_near (in.volume, 10, 1e-12);
      assert_vec3 (in.moment, (GbVec3){ 25, -10 * tan (a) / 3, -5 + 10 * tan (a) * tan (a) / 6 }, 1e-11);
      assert_near (in.plane, 5 * width, 1e-12);
      assert_vec3 (in.plane_moment, (GbVec3){ 2.5 * 5 * width, 0, 0 }, 1e-11);
      assert_near (vec3_dot (across, times (in.plane_second, across)), 5 * width * width * width / 12, 1e-11);
      assert_near (in.girth, 10 + 2 * width, 1e-12);
    }
}

/* The order of the sums is the mesh's own: the same bits each time, and from any thread. */
static gpointer
cut_many_times (gpointer data)
{
  GbBody *body = data;
  GbImmersion *sums = g_new0 (GbImmersion, 200);

  for (guint k = 0; k < 200; k++)
    {
      double a = k * 0.03;

      gb_body_immerse (body, k & 1, (GbVec3){ sin (a) * 0.6, sin (a) * 0.8, cos (a) }, 0.1, &sums[k]);
    }
  gb_body_unref (body);
  return sums;
}

static void
test_threads (void)
{
  g_autoptr (GbMesh) mesh = new_star ((GbVec3){ 0, 0, 0 }, 60, 30, near_one);
  g_autoptr (GbBody) body = gb_body_new (mesh), again = gb_body_new (mesh);
  g_autofree GbImmersion *expected = cut_many_times (gb_body_ref (again));
  GThread *threads[4];

  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    threads[i] = g_thread_new ("cut", cut_many_times, gb_body_ref (body));
  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    {
      g_autofree GbImmersion *sums = g_thread_join (threads[i]);

      g_assert_cmpmem (sums, 200 * sizeof *sums, expected, 200 * sizeof *expected);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/body/same-as-through-all-triangles", test_same_as_through_all_triangles);
  g_test_add_func ("/body/large-meshes", test_large_meshes);
  g_test_add_func ("/body/mirror-image", test_mirror_image);
  g_test_add_func ("/body/sums-go-on", test_sums_go_on);
  g_test_add_func ("/body/subdivision-changes-nothing", test_subdivision_changes_nothing);
  g_test_add_func ("/body/turning-changes-nothing", test_turning_changes_nothing);
  g_test_add_func ("/body/slopes", test_slopes);
  g_test_add_func ("/body/extent", test_extent);
  g_test_add_func ("/body/contains", test_contains);
  g_test_add_func ("/body/contains-in-boxes", test_contains_in_boxes);
  g_test_add_func ("/body/planes-through-faces", test_planes_through_faces);
  g_test_add_func ("/body/planes-through-corners", test_planes_through_corners);
  g_test_add_func ("/body/nothing-to-cut", test_nothing_to_cut);
  g_test_add_func ("/body/box-at-heel", test_box_at_heel);
  g_test_add_func ("/body/threads", test_threads);
  return g_test_run ();
}
