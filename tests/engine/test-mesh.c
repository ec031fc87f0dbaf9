/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Meshes and the plane that cuts them: closed forms, the cases where the plane meets corners, edges and
 * faces, and properties that hold for any body. */

#include "engine/mesh-cut.h"
#include "mesh-fixture.h"

#include <string.h>

static const GbVec3 up = { 0, 0, 1 };

static void
test_box_by_closed_form (void)
{
  g_autoptr (GbMesh) box = new_box ((GbVec3){ 1, -2, 3 }, (GbVec3){ 7, 4, 5 });
  GbCut whole = gb_mesh_whole (box);
  GbCut cut = gb_mesh_cut (box, up, 3.5);

  g_assert_true (gb_mesh_is_closed (box));
  assert_near (whole.volume, 72, 1e-12);
  assert_vec3 (whole.centre, (GbVec3){ 4, 1, 4 }, 1e-12);
  assert_near (whole.area, 2 * (36 + 12 + 12), 1e-12);
  assert_near (whole.waterplane, 0, 0);

  assert_near (cut.volume, 18, 1e-12);
  assert_vec3 (cut.centre, (GbVec3){ 4, 1, 3.25 }, 1e-12);
  assert_near (cut.area, 36 + 24 * 0.5, 1e-12);
  assert_near (cut.waterplane, 36, 1e-12);
  assert_near (cut.plane_x, 4, 1e-12);
  assert_near (cut.plane_y, 1, 1e-12);
  assert_near (cut.plane_ixx, 6 * 6 * 6 * 6 / 12.0, 1e-10);
  assert_near (cut.plane_iyy, 6 * 6 * 6 * 6 / 12.0, 1e-10);
  assert_near (cut.plane_ixy, 0, 1e-10);
  assert_near (cut.girth, 24, 1e-12);
}

/* Similar bodies: the volume cut off the apex goes with the cube of the height. */
static void
test_tetrahedron_by_closed_form (void)
{
  g_autoptr (GbMesh) body
      = new_tetrahedron ((GbVec3){ 0, 0, 0 }, (GbVec3){ 2, 0, 1 }, (GbVec3){ 0, 3, 1 }, (GbVec3){ 0, 0, 1 });

  g_assert_true (gb_mesh_is_closed (body));
  assert_near (gb_mesh_whole (body).volume, 1, 1e-14);
  for (double h = 0.1; h < 1; h += 0.1)
    {
      GbCut cut = gb_mesh_cut (body, up, h);

      assert_near (cut.volume, h * h * h, 1e-14);
      assert_vec3 (cut.centre, (GbVec3){ 2 * h / 4, 3 * h / 4, 3 * h / 4 }, 1e-14);
      assert_near (cut.waterplane, 3 * h * h, 1e-14);
      assert_near (cut.plane_x, 2 * h / 3, 1e-14);
      assert_near (cut.plane_y, h, 1e-14);
      /* A right-angled triangle b by h: h^3 b/36, b^3 h/36 and, with both legs on the axes, -b^2 h^2/72. */
      assert_near (cut.plane_ixx, 27 * 2 / 36.0 * pow (h, 4), 1e-14);
      assert_near (cut.plane_iyy, 8 * 3 / 36.0 * pow (h, 4), 1e-14);
      assert_near (cut.plane_ixy, -4 * 9 / 72.0 * pow (h, 4), 1e-14);
    }
}

/* A box that heels: the cut is wider by 1/cos, and its frame lies in the plane. */
static void
test_plane_at_an_angle (void)
{
  g_autoptr (GbMesh) box = new_box ((GbVec3){ 0, -1, -1 }, (GbVec3){ 5, 1, 1 });

  for (int degrees = -40; degrees <= 40; degrees += 10)
    {
      double a = degrees * G_PI / 180;
      GbCut cut = gb_mesh_cut (box, (GbVec3){ 0, sin (a), cos (a) }, 0);
      double width = 2 / cos (a);

      assert_near (cut.volume, 10, 1e-12);
      /* Wall-sided: the wedge's moments, over half the volume. */
      assert_vec3 (cut.centre, (GbVec3){ 2.5, -tan (a) / 3, -0.5 + tan (a) * tan (a) / 6 }, 1e-12);
      assert_near (cut.waterplane, 5 * width, 1e-12);
      assert_near (cut.plane_x, 2.5, 1e-12);
      assert_near (cut.plane_y, 0, 1e-12);
      assert_near (cut.plane_ixx, 5 * width * width * width / 12, 1e-11);
      assert_near (cut.plane_iyy, 125 * width / 12, 1e-11);
    }
}

static void
test_plane_through_faces (void)
{
  g_autoptr (GbMesh) box = new_box ((GbVec3){ 0, 0, 0 }, (GbVec3){ 2, 3, 1 });
  GbCut awash = gb_mesh_cut (box, up, 1), above = gb_mesh_cut (box, up, 1.5);
  GbCut touching = gb_mesh_cut (box, up, 0), below = gb_mesh_cut (box, up, -0.5);

  /* What lies in the plane is dry: the deck is the waterplane still, and a bottom that just touches is not
   * under water. */
  assert_near (awash.volume, 6, 1e-13);
  assert_near (awash.waterplane, 6, 1e-13);
  assert_near (awash.area, 6 + 10, 1e-13);
  assert_near (above.volume, 6, 1e-13);
  assert_near (above.waterplane, 0, 0);
  assert_near (above.area, 22, 1e-13);
  g_assert_true (isnan (above.plane_x));
  assert_near (touching.volume, 0, 0);
  assert_near (touching.waterplane, 0, 0);
  assert_near (below.volume, 0, 0);
  g_assert_true (isnan (below.centre.x) && isnan (below.plane_y));
}

static void
test_plane_through_corners_and_edges (void)
{
  /* An octahedron: the level plane passes through four corners and four edges at once. */
  g_auto (GbMeshBuilder) builder = { NULL, NULL };
  g_autoptr (GbMesh) body = NULL;
  GbCut cut;

  gb_mesh_builder_init (&builder);
  for (guint i = 0; i < 4; i++)
    gb_mesh_builder_add_point (&builder, i == 0 ? 1 : i == 2 ? -1 : 0, i == 1 ? 1 : i == 3 ? -1 : 0, 0);
  gb_mesh_builder_add_point (&builder, 0, 0, -1);
  gb_mesh_builder_add_point (&builder, 0, 0, 1);
  for (guint i = 0; i < 4; i++)
    {
      gb_mesh_builder_add_triangle (&builder, (i + 1) % 4, i, 4);
      gb_mesh_builder_add_triangle (&builder, i, (i + 1) % 4, 5);
    }
  body = gb_mesh_builder_finish (&builder, 0);
  g_assert_true (gb_mesh_is_closed (body));

  cut = gb_mesh_cut (body, up, 0);
  assert_near (cut.volume, 2 / 3.0, 1e-15);
  assert_near (cut.waterplane, 2, 1e-15);
  assert_near (cut.plane_ixx, 1 / 3.0, 1e-15); /* a square on its corner: side^4/12 */
  assert_near (cut.girth, 4 * sqrt (2), 1e-15);

  /* Through two corners and along two edges, upright. */
  cut = gb_mesh_cut (body, (GbVec3){ 1, 0, 0 }, 0);
  assert_near (cut.volume, 2 / 3.0, 1e-15);
  assert_near (cut.waterplane, 2, 1e-15);

  /* Just touching a corner, from either side. */
  assert_near (gb_mesh_cut (body, up, -1).volume, 0, 0);
  cut = gb_mesh_cut (body, up, 1);
  assert_near (cut.volume, 4 / 3.0, 1e-15);
  assert_near (cut.waterplane, 0, 1e-15);
}

/* Two triangles on either side of an edge, entered from any corner on, put the end of their cuts at the same
 * place to the last bit. */
static void
test_neighbours_meet_exactly (void)
{
  for (guint i = 0; i < 10000; i++)
    {
      GbVec3 p = random_place (1), q = random_place (1), one[3], other[3], n = random_direction ();
      double d = vec3_dot (n, p) + g_test_rand_double () * vec3_dot (n, vec3_sub (q, p)), one_h[3],
             other_h[3];
      guint from = i % 3, at = (i / 3) % 3, n_one = 0, n_other = 0;
      GbTip a, b;
      gboolean met = FALSE;

      one[from] = other[(at + 1) % 3] = p;
      one[(from + 1) % 3] = other[at] = q;
      one[(from + 2) % 3] = random_place (1);
      other[(at + 2) % 3] = random_place (1);
      for (guint k = 0; k < 3; k++)
        {
          one_h[k] = vec3_dot (n, one[k]) - d;
          other_h[k] = vec3_dot (n, other[k]) - d;
          n_one += one_h[k] < 0;
          n_other += other_h[k] < 0;
        }
      if ((one_h[from] < 0) == (one_h[(from + 1) % 3] < 0))
        continue; /* rounding put the plane beside an end */
      a = gb_tip (one, one_h, n_one);
      b = gb_tip (other, other_h, n_other);
      for (guint k = 1; k < 3; k++)
        for (guint l = 1; l < 3; l++)
          met |= memcmp (&a.corners[k], &b.corners[l], sizeof (GbVec3)) == 0;
      g_assert_true (met);
    }
}

static void
test_several_loops_and_a_hole (void)
{
  g_auto (GbMeshBuilder) builder = { NULL, NULL };
  g_autoptr (GbMesh) mesh = NULL;
  GbCut cut;

  /* Two boxes side by side, and a well through a third: a square tube of 4 by 4 with a hole of 2 by 2. */
  gb_mesh_builder_init (&builder);
  add_box (&builder, (GbVec3){ 0, -3, 0 }, (GbVec3){ 1, -2, 1 });
  add_box (&builder, (GbVec3){ 0, 2, 0 }, (GbVec3){ 1, 3, 2 });
  for (guint ring = 0; ring < 4; ring++)
    for (guint i = 0; i < 4; i++)
      {
        double half = ring & 1 ? 1 : 2;

        gb_mesh_builder_add_point (&builder, 12 + half * (i == 0 || i == 3 ? -1 : 1), half * (i < 2 ? -1 : 1),
                                   ring & 2 ? 1 : 0);
      }
  for (guint i = 0; i < 4; i++)
    {
      guint low = 16 + i, next = 16 + (i + 1) % 4;

      add_quad (&builder, low, next, next + 8, low + 8);           /* outside */
      add_quad (&builder, next + 4, low + 4, low + 12, next + 12); /* the well */
      add_quad (&builder, next, low, low + 4, next + 4);           /* bottom */
      add_quad (&builder, low + 8, next + 8, next + 12, low + 12); /* top */
    }
  mesh = gb_mesh_builder_finish (&builder, 0);
  g_assert_true (gb_mesh_is_closed (mesh));

  cut = gb_mesh_cut (mesh, up, 0.5);
  assert_near (cut.volume, 0.5 + 0.5 + 6, 1e-12);
  assert_near (cut.waterplane, 1 + 1 + 12, 1e-12);
  assert_near (cut.plane_x, (0.5 + 0.5 + 12 * 12) / 14, 1e-12);
  assert_near (cut.plane_y, 0, 1e-12);
  assert_near (cut.plane_ixx, 2 * (1 / 12.0 + 6.25) + (256 - 16) / 12.0, 1e-11);
  assert_near (cut.girth, 4 + 4 + 16 + 8, 1e-12);
  cut = gb_mesh_cut (mesh, up, 1.5);
  assert_near (cut.volume, 1 + 1.5 + 12, 1e-12);
  assert_near (cut.waterplane, 1, 1e-12);
}

/* Body, plane and all that comes of it turn together. */
static void
test_turning_changes_nothing (void)
{
  for (guint i = 0; i < 300; i++)
    {
      g_autoptr (GbMesh) mesh = random_body (i);
      GbVec3 axis = random_direction (), n = random_direction ();
      double angle = g_test_rand_double_range (-4, 4);
      double d = vec3_dot (n, mesh->points[0]) + g_test_rand_double_range (-1, 1);
      GbCut whole = gb_mesh_whole (mesh), cut = gb_mesh_cut (mesh, n, d);
      GbCut whole_after, cut_after;

      for (guint k = 0; k < mesh->n_points; k++)
        mesh->points[k] = turned (mesh->points[k], axis, angle);
      whole_after = gb_mesh_whole (mesh);
      cut_after = gb_mesh_cut (mesh, turned (n, axis, angle), d);

      assert_near (whole_after.volume, whole.volume, 1e-12);
      assert_near (whole_after.area, whole.area, 1e-11);
      assert_vec3 (whole_after.centre, turned (whole.centre, axis, angle), 1e-11);
      assert_near (cut_after.volume, cut.volume, 1e-12);
      assert_near (cut_after.area, cut.area, 1e-11);
      assert_near (cut_after.waterplane, cut.waterplane, 1e-11);
      assert_near (cut_after.girth, cut.girth, 1e-11);
      assert_near (cut_after.plane_ixx + cut_after.plane_iyy, cut.plane_ixx + cut.plane_iyy, 1e-11);
      if (cut.volume > 1e-3)
        assert_vec3 (cut_after.centre, turned (cut.centre, axis, angle), 1e-10);
    }
}

/* A cut and its opposite make the whole. */
static void
test_both_sides_add_up (void)
{
  for (guint i = 0; i < 300; i++)
    {
      g_autoptr (GbMesh) mesh = random_body (i);
      GbVec3 n = random_direction ();
      double d = vec3_dot (n, mesh->points[0]) + g_test_rand_double_range (-1, 1);
      GbCut whole = gb_mesh_whole (mesh);
      GbCut near = gb_mesh_cut (mesh, n, d), far = gb_mesh_cut (mesh, vec3_scale (n, -1), -d);

      g_assert_true (gb_mesh_is_closed (mesh));
      g_assert_cmpfloat (whole.volume, >, 0);
      assert_near (near.volume + far.volume, whole.volume, 1e-12);
      assert_near (near.area + far.area, whole.area, 1e-11);
      assert_near (near.waterplane, far.waterplane, 1e-12);
      if (near.volume > 1e-3 && far.volume > 1e-3)
        assert_vec3 (vec3_add (vec3_scale (near.centre, near.volume), vec3_scale (far.centre, far.volume)),
                     vec3_scale (whole.centre, whole.volume), 1e-11);
    }
}

/* d volume/d height is the waterplane, at any turn: by central differences. */
static void
test_waterplane_is_the_slope_of_volume (void)
{
  for (guint i = 0; i < 200; i++)
    {
      g_autoptr (GbMesh) mesh = random_body (i);
      GbVec3 n = random_direction ();
      double d = vec3_dot (n, gb_mesh_whole (mesh).centre) + g_test_rand_double_range (-0.3, 0.3);
      double step = 1e-5;
      double slope
          = (gb_mesh_cut (mesh, n, d + step).volume - gb_mesh_cut (mesh, n, d - step).volume) / (2 * step);

      assert_near (slope, gb_mesh_cut (mesh, n, d).waterplane, 1e-3);
    }
}

static void
test_surface_of_a_box (void)
{
  g_autoptr (GbMesh) box = new_box ((GbVec3){ 10, 20, 30 }, (GbVec3){ 12, 23, 34 });
  GbSurface whole = gb_mesh_surface (box, -INFINITY, INFINITY);
  double a = 2, b = 3, c = 4;

  assert_near (whole.area, 2 * (a * b + b * c + c * a), 1e-12);
  assert_vec3 (whole.centre, (GbVec3){ 11, 21.5, 32 }, 1e-12);
  /* Two faces at a/2 from the middle, four that run through it: a^2 b c/2 + a^3 (b + c)/6. */
  assert_near (whole.xx, a * a * b * c / 2 + a * a * a * (b + c) / 6, 1e-11);
  assert_near (whole.yy, b * b * c * a / 2 + b * b * b * (c + a) / 6, 1e-11);
  assert_near (whole.zz, c * c * a * b / 2 + c * c * c * (a + b) / 6, 1e-11);
  assert_near (whole.xy, 0, 1e-11);
  assert_near (whole.yz, 0, 1e-11);
  assert_near (whole.zx, 0, 1e-11);

  /* What lies at a height belongs to what is above it. */
  assert_near (gb_mesh_surface (box, -INFINITY, 34).area, a * b + 2 * c * (a + b), 1e-12);
  assert_near (gb_mesh_surface (box, 34, INFINITY).area, a * b, 1e-12);
  assert_near (gb_mesh_surface (box, 30, 31).area, a * b + 2 * (a + b), 1e-12);
  assert_vec3 (gb_mesh_surface (box, 31, 33).centre, (GbVec3){ 11, 21.5, 32 }, 1e-12);
  assert_near (gb_mesh_surface (box, 33, 31).area, 0, 0);
  g_assert_true (isnan (gb_mesh_surface (box, 35, INFINITY).centre.x));

  /* The last triangles are a lid, and no skin: here all but the bottom, which was made first. */
  box->n_lid = 10;
  assert_near (gb_mesh_surface (box, -INFINITY, INFINITY).area, a * b, 1e-12);
}

static void
test_surfaces_add_up (void)
{
  for (guint i = 0; i < 100; i++)
    {
      g_autoptr (GbMesh) mesh = random_body (i);
      double z = mesh->points[0].z + g_test_rand_double_range (-1, 1);
      GbSurface whole = gb_mesh_surface (mesh, -INFINITY, INFINITY);
      GbSurface low = gb_mesh_surface (mesh, -INFINITY, z), high = gb_mesh_surface (mesh, z, INFINITY);
      GbCut cut = gb_mesh_cut (mesh, up, z);

      assert_near (low.area + high.area, whole.area, 1e-11);
      assert_near (low.area, cut.area, 1e-11);
      assert_near (whole.area, gb_mesh_whole (mesh).area, 1e-11);

      if (low.area > 0.01 && high.area > 0.01)
        {
          GbVec3 l = vec3_sub (low.centre, whole.centre), h = vec3_sub (high.centre, whole.centre);

          assert_near (low.xx + low.area * l.x * l.x + high.xx + high.area * h.x * h.x, whole.xx, 1e-10);
          assert_near (low.yz + low.area * l.y * l.z + high.yz + high.area * h.y * h.z, whole.yz, 1e-10);
        }
    }
}

static void
test_closedness (void)
{
  g_autoptr (GbMesh) box = new_box ((GbVec3){ 0, 0, 0 }, (GbVec3){ 1, 1, 1 });
  guint corner = box->triangles[3][0];

  box->n_triangles--;
  g_assert_false (gb_mesh_is_closed (box));
  box->n_triangles++;
  g_assert_true (gb_mesh_is_closed (box));
  /* One turned over. */
  box->triangles[3][0] = box->triangles[3][1];
  box->triangles[3][1] = corner;
  g_assert_false (gb_mesh_is_closed (box));
  box->n_triangles = 0;
  g_assert_false (gb_mesh_is_closed (box));
}

/* Area and edges of a filled polygon. */
static void
assert_filled (const GbVec3 *points, guint n, double area)
{
  g_auto (GbMeshBuilder) builder = { NULL, NULL };
  g_autoptr (GbMesh) mesh = NULL;
  g_autofree guint *corners = g_new (guint, n);
  g_autofree guint *back = g_new (guint, n);

  /* The same from below closes it to a body without thickness. */
  gb_mesh_builder_init (&builder);
  for (guint i = 0; i < n; i++)
    corners[i] = back[n - 1 - i]
        = gb_mesh_builder_add_point (&builder, points[i].x, points[i].y, points[i].z);
  gb_mesh_builder_add_face (&builder, corners, n);
  g_assert_cmpuint (builder.triangles->len, ==, n - 2);
  gb_mesh_builder_add_face (&builder, back, n);
  mesh = gb_mesh_builder_finish (&builder, 0);

  assert_near (gb_mesh_whole (mesh).area, 2 * area, 1e-12);
}

static void
test_filling_a_polygon (void)
{
  /* An E, with corners that lie in one line. */
  const GbVec3 letter[]
      = { { 0, 0, 0 }, { 3, 0, 0 }, { 3, 1, 0 }, { 1, 1, 0 }, { 1, 2, 0 }, { 3, 2, 0 }, { 3, 3, 0 },
          { 1, 3, 0 }, { 1, 4, 0 }, { 3, 4, 0 }, { 3, 5, 0 }, { 0, 5, 0 }, { 0, 2, 0 } };
  /* A section upright across x, with a corner entered twice. */
  const GbVec3 section[]
      = { { 2, 0, 0 }, { 2, 1, 0.5 }, { 2, 1, 0.5 }, { 2, 0.5, 1 }, { 2, -0.5, 1 }, { 2, -1, 0.5 } };
  /* Nothing but a line: still filled, with triangles that have no area. */
  const GbVec3 line[] = { { 0, 0, 1 }, { 1, 0, 1 }, { 2, 0, 1 }, { 1, 0, 1 } };

  assert_filled (letter, G_N_ELEMENTS (letter), 11);
  assert_filled (section, G_N_ELEMENTS (section), 0.5 + 0.75);
  assert_filled (line, G_N_ELEMENTS (line), 0);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/mesh/box", test_box_by_closed_form);
  g_test_add_func ("/mesh/tetrahedron", test_tetrahedron_by_closed_form);
  g_test_add_func ("/mesh/plane-at-an-angle", test_plane_at_an_angle);
  g_test_add_func ("/mesh/plane-through-faces", test_plane_through_faces);
  g_test_add_func ("/mesh/plane-through-corners-and-edges", test_plane_through_corners_and_edges);
  g_test_add_func ("/mesh/neighbours-meet-exactly", test_neighbours_meet_exactly);
  g_test_add_func ("/mesh/several-loops-and-a-hole", test_several_loops_and_a_hole);
  g_test_add_func ("/mesh/turning-changes-nothing", test_turning_changes_nothing);
  g_test_add_func ("/mesh/both-sides-add-up", test_both_sides_add_up);
  g_test_add_func ("/mesh/waterplane-is-the-slope-of-volume", test_waterplane_is_the_slope_of_volume);
  g_test_add_func ("/mesh/surface-of-a-box", test_surface_of_a_box);
  g_test_add_func ("/mesh/surfaces-add-up", test_surfaces_add_up);
  g_test_add_func ("/mesh/closedness", test_closedness);
  g_test_add_func ("/mesh/filling-a-polygon", test_filling_a_polygon);
  return g_test_run ();
}
