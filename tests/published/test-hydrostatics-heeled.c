/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Bodies with closed forms, cut at any heel and trim. All of it is mathematics and needs no source, but for
 * Wigley's hull, whose figures are standard in texts of ship hydrodynamics.
 *
 * Round bodies are given by polygons whose error falls with the square of their number of sides: so two of
 * them, one twice as fine, tell the limit. */

#include "ship-fixture.h"

#include <math.h>

static GbImmersion
immersed (const GbMesh *mesh, GbAttitude at)
{
  g_autoptr (GbBody) body = gb_body_new (mesh);
  GbImmersion in = { .volume = 0 };

  gb_body_immerse (body, FALSE, at.up, at.height, &in);
  return in;
}

static double
between (const GbTensor *t, GbVec3 p, GbVec3 q)
{
  return t->xx * p.x * q.x + t->yy * p.y * q.y + t->zz * p.z * q.z + t->xy * (p.x * q.y + p.y * q.x)
         + t->yz * (p.y * q.z + p.z * q.y) + t->zx * (p.z * q.x + p.x * q.z);
}

/* Second moment of the waterplane about its own axis across which @along points. */
static double
own_second (const GbImmersion *in, GbVec3 along)
{
  double first = vec3_dot (in->plane_moment, along);

  return between (&in->plane_second, along, along) - first * first / in->plane;
}

/* What is asked of each body. */
typedef struct
{
  double volume, plane;
  GbVec3 centre;
  double second; /* of the waterplane, about its own axis along the boat, level */
} Figures;

static Figures
figures_of (GbMesh *take_mesh, GbAttitude at)
{
  g_autoptr (GbMesh) mesh = take_mesh;
  GbImmersion in = immersed (mesh, at);
  GbVec3 across = vec3_cross (at.up, (GbVec3){ 1, 0, 0 });

  return (Figures){ in.volume, in.plane, vec3_scale (in.moment, 1 / in.volume),
                    own_second (&in, vec3_scale (across, 1 / vec3_length (across))) };
}

/* Two results, the second twice as fine. */
static Figures
limit_of (Figures coarse, Figures fine)
{
  return (Figures){ (4 * fine.volume - coarse.volume) / 3, (4 * fine.plane - coarse.plane) / 3,
                    vec3_scale (vec3_sub (vec3_scale (fine.centre, 4), coarse.centre), 1 / 3.0),
                    (4 * fine.second - coarse.second) / 3 };
}

static void
assert_figures (Figures got, Figures expected, double share)
{
  assert_near (got.volume, expected.volume, share * expected.volume);
  assert_near (got.plane, expected.plane, share * expected.plane);
  assert_vec3 (got.centre, expected.centre, share);
  assert_near (got.second, expected.second, share * expected.second);
}

/* L x B at draught d: volume LBd, KB d/2, BM B2/(12 d), along it L2/(12 d); heeled, exact until an edge is
 * wetted: the centre moves BM tan to the low side and BM tan2/2 up; trimmed the same way, and both at once.
 */
static void
test_box (void)
{
  const double l = 4, b = 1.5, d = 0.6;
  g_autoptr (GbMesh) box = new_box ((GbVec3){ -l / 2, -b / 2, 0 }, (GbVec3){ l / 2, b / 2, 1.6 });
  double bm = b * b / (12 * d), bm_long = l * l / (12 * d);

  for (double heel = -0.6; heel < 0.7; heel += 0.2)
    for (double trim = -0.15; trim < 0.2; trim += 0.05)
      {
        GbAttitude at = gb_attitude (heel, trim, 0);
        /* Rise of the water to starboard and by the bow, over the level. */
        double across = -at.up.y / at.up.z, along = -at.up.x / at.up.z;
        GbImmersion in;

        if (fabs (across) * b / 2 + fabs (along) * l / 2 > d)
          continue;
        at.height = d * at.up.z;
        in = immersed (box, at);
        assert_near (in.volume, l * b * d, 1e-12);
        assert_vec3 (vec3_scale (in.moment, 1 / in.volume),
                     (GbVec3){ bm_long * along, bm * across,
                               d / 2 + (bm * across * across + bm_long * along * along) / 2 },
                     1e-12);
        assert_near (in.plane, l * b / at.up.z, 1e-12);
        /* As seen from above it is the box's own rectangle. */
        assert_near (in.plane_second.yy * at.up.z, l * b * b * b / 12, 1e-12);
        assert_near (in.plane_second.xx * at.up.z, b * l * l * l / 12, 1e-12);
        assert_near (in.plane_second.xy, 0, 1e-12);
      }
}

/* Apex down, B broad at draught d: LBd/2, 2d/3, B2/(6 d). Heeled, the water cuts off it another triangle with
 * the apex, whose sides y = -+ k z meet the water y sin + z cos = h at distances h/(cos +- k sin). */
static void
test_triangular_prism (void)
{
  const double l = 3, k = 0.8, h = 0.5;
  static const GbVec3 yz[] = { { 0, 0, 0 }, { 0, 0.8 * 2, 2 }, { 0, -0.8 * 2, 2 } };

  for (double heel = -0.6; heel < 0.65; heel += 0.1)
    {
      GbAttitude at = gb_attitude (heel, 0, h);
      double z_port = h / (cos (heel) + k * sin (heel)), z_starboard = h / (cos (heel) - k * sin (heel));
      GbVec3 port = { 0, k * z_port, z_port }, starboard = { 0, -k * z_starboard, z_starboard };
      double breadth = vec3_length (vec3_sub (port, starboard)), area = breadth * h / 2;
      Figures got = figures_of (new_prism (l, yz, 3), at);

      assert_figures (got,
                      (Figures){ l * area, l * breadth, vec3_scale (vec3_add (port, starboard), 1 / 3.0),
                                 l * pow (breadth, 3) / 12 },
                      1e-12);
      if (fabs (heel) < 1e-9)
        {
          double full = 2 * k * h;

          assert_near (got.volume, l * full * h / 2, 1e-12);
          assert_near (got.centre.z, 2 * h / 3, 1e-12);
          assert_near (got.second / got.volume, full * full / (6 * h), 1e-12);
        }
    }
}

/* Half under, of radius r: L pi r2/2, KB r - 4r/(3 pi), BM 4r/(3 pi): KM is r at any heel. At other depths
 * the segment under a chord a under the axis. */
static void
test_cylinder (void)
{
  const double l = 4, r = 0.3;

  for (double heel = -3; heel < 3.1; heel += 0.5)
    for (double a = 0; a < 0.8 * r; a += 0.3 * r)
      {
        GbAttitude at = gb_attitude (heel, 0, r * cos (heel) - a);
        double half = sqrt (r * r - a * a), area = r * r * acos (a / r) - a * half,
               down = 2 * half * half * half / (3 * area);
        GbVec3 centre = vec3_sub ((GbVec3){ 0, 0, r }, vec3_scale (at.up, down));
        Figures got = limit_of (figures_of (new_cylinder (l, r, r, 360), at),
                                figures_of (new_cylinder (l, r, r, 720), at));
        double b_to_axis;

        assert_figures (got, (Figures){ l * area, l * 2 * half, centre, l * pow (2 * half, 3) / 12 }, 1e-4);
        /* B lies straight under the axis, and BM leads up to it. */
        b_to_axis = vec3_length (vec3_sub (got.centre, (GbVec3){ 0, 0, r }));
        assert_near (got.second / got.volume, b_to_axis, 1e-4 * r);
        if (a == 0)
          assert_near (b_to_axis, 4 * r / (3 * G_PI), 1e-5 * r);
      }
}

/* A body of revolution about the z axis, from z = 0 to @top, as ribbons between circles at n + 1 heights that
 * lie closer together at the bottom. Its polygons have the circles' areas. */
static GbMesh *
new_revolution (double (*radius) (double z), double top, guint n)
{
  g_auto (GbMeshBuilder) builder = { NULL, NULL };
  guint n_round = 2 * n, bottom, deck;
  double step = 2 * G_PI / n_round, out = sqrt (step / sin (step));

  gb_mesh_builder_init (&builder);
  bottom = gb_mesh_builder_add_point (&builder, 0, 0, 0);
  deck = gb_mesh_builder_add_point (&builder, 0, 0, top);
  for (guint band = 1; band <= n; band++)
    for (guint i = 0; i < n_round; i++)
      {
        double share = band / (double)n, z = top * share * share, r = radius (z) * out;

        gb_mesh_builder_add_point (&builder, r * cos (i * step), r * sin (i * step), z);
      }
  for (guint i = 0; i < n_round; i++)
    {
      guint j = (i + 1) % n_round, high = 2 + (n - 1) * n_round;

      gb_mesh_builder_add_triangle (&builder, bottom, 2 + j, 2 + i);
      gb_mesh_builder_add_triangle (&builder, deck, high + i, high + j);
      for (guint band = 0; band + 1 < n; band++)
        {
          guint low = 2 + band * n_round;

          gb_mesh_builder_add_triangle (&builder, low + i, low + j, low + n_round + j);
          gb_mesh_builder_add_triangle (&builder, low + i, low + n_round + j, low + n_round + i);
        }
    }
  return gb_mesh_builder_finish (&builder, 0);
}

static void
assert_revolution (double (*radius) (double z), double top, GbAttitude at, Figures expected, double share)
{
  Figures coarse = figures_of (new_revolution (radius, top, 60), at),
          fine = figures_of (new_revolution (radius, top, 120), at);

  assert_figures (limit_of (coarse, fine), expected, share);
}

/* As wide as it is high, half the angle at its apex being 45 degrees: sides r = z. */
static double
cone (double z)
{
  return z;
}

/* Upright, R at draught d: pi R2 d/3, KB 3d/4, BM 3 R2/(4 d). Heeled by t, whose tangent is T, with the water
 * at H on the axis and q = 1 - T2: an ellipse whose shadow from above has the half axes H/sqrt q and H/q and
 * the middle y = -T H/q; volume a third of its area times its distance from the apex, and the centre three
 * quarters of the way to its middle. */
static void
test_cone (void)
{
  for (double heel = -0.4; heel < 0.45; heel += 0.1)
    {
      const double h = 0.6;
      GbAttitude at = gb_attitude (heel, 0, h * cos (heel));
      double t = tan (heel), q = 1 - t * t, a = h / sqrt (q), b = h / q, y = -t * h / q;
      double plane = G_PI * a * b / cos (heel);
      Figures expected = {
        plane * at.height / 3, plane, { 0, 0.75 * y, 0.75 * (h - y * t) }, plane * pow (b / cos (heel), 2) / 4
      };

      if (fabs (heel) < 1e-9)
        {
          assert_near (expected.volume, G_PI * h * h * h / 3, 1e-12);
          assert_near (expected.centre.z, 3 * h / 4, 1e-12);
          assert_near (expected.second / expected.volume, 3 * h * h / (4 * h), 1e-12);
        }
      assert_revolution (cone, 2, at, expected, 1e-4);
    }
}

/* z = r2. */
static double
paraboloid (double z)
{
  return sqrt (z);
}

/* Upright, R at draught d: pi R2 d/2, KB 2d/3, BM R2/(2 d). Heeled, with the water at H on the axis: the
 * shadow of its face from above is a circle about y = -T/2 with the radius squared H + T2/4 = D, and along
 * the axis through that middle it is D deep: so it holds pi D2/2, and its centre is there, 2/3 of D up. */
static void
test_paraboloid (void)
{
  for (double heel = -0.4; heel < 0.45; heel += 0.1)
    {
      const double h = 0.4;
      GbAttitude at = gb_attitude (heel, 0, h * cos (heel));
      double t = tan (heel), d = h + t * t / 4, plane = G_PI * d / cos (heel);
      Figures expected = {
        G_PI * d * d / 2, plane, { 0, -t / 2, t * t / 4 + 2 * d / 3 }, plane * d / (4 * pow (cos (heel), 2))
      };

      if (fabs (heel) < 1e-9)
        assert_near (expected.second / expected.volume, h / (2 * h), 1e-12);
      assert_revolution (paraboloid, 1.2, at, expected, 2e-4);
    }
}

/* Of radius 1 about z = 1. */
static double
sphere (double z)
{
  return sqrt (fmax (z * (2 - z), 0));
}

/* The cap of height h: pi h2 (3 - h)/3, its centre 3 (2 - h)2/(4 (3 - h)) from the middle; its metacentre is
 * the sphere's middle whatever the heel. Cut under the deck, however it lies. */
static void
test_sphere (void)
{
  for (double heel = -0.5; heel < 0.6; heel += 0.25)
    for (double trim = -0.3; trim < 0.4; trim += 0.3)
      for (double h = 0.4; h < 1; h += 0.25)
        {
          GbAttitude at = gb_attitude (heel, trim, 0);
          double plane = G_PI * h * (2 - h), down = 3 * (2 - h) * (2 - h) / (4 * (3 - h));
          GbVec3 centre = vec3_sub ((GbVec3){ 0, 0, 1 }, vec3_scale (at.up, down));
          Figures expected = { G_PI * h * h * (3 - h) / 3, plane, centre, plane * h * (2 - h) / 4 };

          at.height = at.up.z - (1 - h);
          assert_near (expected.second / expected.volume, down, 1e-12);
          assert_revolution (sphere, 1.6, at, expected, 1e-3);
        }
}

/* Wigley's hull, y = (B/2) (1 - (2x/L)2) (1 - (z/T)2) with z down from the waterline: volume 4/9 LBT,
 * waterplane 2/3 LB, KB 5/8 T, BM 3/35 B2/T, along it 3/40 L2/T. With L 10, B 1, T 0.625 m: 2.77778
 * m3, 6.66667 m2, 0.390625, 0.137143 and 12.0 m. */
static GbMesh *
new_wigley (guint n)
{
  g_auto (GbMeshBuilder) builder = { NULL, NULL };
  const double l = 10, b = 1, t = 0.625;
  guint row = 2 * (n + 1);

  gb_mesh_builder_init (&builder);
  for (guint i = 0; i <= 2 * n; i++)
    for (guint k = 0; k <= n; k++)
      for (int side = 1; side >= -1; side -= 2)
        {
          double x = l * (i / (2.0 * n) - 0.5), z = t * k / n,
                 y = b / 2 * (1 - pow (2 * x / l, 2)) * (1 - pow (1 - z / t, 2));

          gb_mesh_builder_add_point (&builder, x, side * y, z);
        }
  for (guint i = 0; i < 2 * n; i++)
    {
      guint aft = i * row, fore = aft + row, top = row - 2;

      for (guint k = 0; k < n; k++)
        {
          guint p = aft + 2 * k, q = fore + 2 * k;

          gb_mesh_builder_add_face (&builder, (guint[]){ q, p, p + 2, q + 2 }, 4);
          gb_mesh_builder_add_face (&builder, (guint[]){ p + 1, q + 1, q + 3, p + 3 }, 4);
        }
      gb_mesh_builder_add_face (&builder, (guint[]){ aft, fore, fore + 1, aft + 1 }, 4); /* the keel */
      gb_mesh_builder_add_face (&builder, (guint[]){ aft + top, aft + top + 1, fore + top + 1, fore + top },
                                4);
    }
  return gb_mesh_builder_finish (&builder, 0);
}

static void
test_wigley (void)
{
  GbImmersion in[2];
  double volume, kb, across, along;

  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (GbMesh) mesh = new_wigley (20 << i);

      /* Its deck is awash. */
      in[i] = immersed (mesh, gb_attitude (0, 0, 0.625));
    }
  volume = (4 * in[1].volume - in[0].volume) / 3;
  kb = (4 * in[1].moment.z - in[0].moment.z) / 3 / volume;
  across = (4 * in[1].plane_second.yy - in[0].plane_second.yy) / 3;
  along = (4 * in[1].plane_second.xx - in[0].plane_second.xx) / 3;
  assert_near (volume, 2.77778, 1e-5);
  assert_near ((4 * in[1].plane - in[0].plane) / 3, 6.66667, 1e-5);
  assert_near (kb, 0.390625, 1e-5);
  assert_near (across / volume, 0.137143, 1e-5);
  assert_near (along / volume, 12.0, 1e-4);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/hydrostatics/heeled/box", test_box);
  g_test_add_func ("/hydrostatics/heeled/triangular-prism", test_triangular_prism);
  g_test_add_func ("/hydrostatics/heeled/cylinder", test_cylinder);
  g_test_add_func ("/hydrostatics/heeled/cone", test_cone);
  g_test_add_func ("/hydrostatics/heeled/paraboloid", test_paraboloid);
  g_test_add_func ("/hydrostatics/heeled/sphere", test_sphere);
  g_test_add_func ("/hydrostatics/heeled/wigley", test_wigley);
  return g_test_run ();
}
