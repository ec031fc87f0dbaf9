/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Coatings that lie on other parts, and skins that lie where their hull does. */

#include "rollup-fixture.h"

#define COVERAGE 10000 /* 10 m2 a litre */

/* Paint of 1 kg for 10 m2. */
static GbPart *
add_paint (Case *c, gint64 owner, gint64 surface_of)
{
  GbPart *paint = add_part (c->boat, owner, GB_TAKEOFF_COATING, 9, 9, 9);

  paint->material = add_material (c->boat, GB_MEASURE_DENSITY, 1000)->rec.id;
  paint->coverage = COVERAGE;
  paint->surface_of = surface_of;
  return paint;
}

/* A cube of 1 m, 6 m2. */
static GbPart *
add_cube (Case *c, gint64 owner, double x, double y, double z)
{
  GbPart *cube = add_box (c->boat, owner, add_material (c->boat, GB_MEASURE_DENSITY, 100), 1, 1, 1);

  cube->x = x;
  cube->y = y;
  cube->z = z;
  return cube;
}

static void
test_of_a_part_and_its_copies (void)
{
  g_auto (Case) c = new_case ();
  GbPart *cube = add_cube (&c, 0, 2, 1, 0.5);
  GbPart *paint = add_paint (&c, 0, cube->rec.id);

  roll_up (&c);
  assert_near (mass_of (&c, paint)->amount, 6, 1e-14);
  assert_near (mass_of (&c, paint)->mass, 0.6, 1e-14);
  assert_centre (mass_of (&c, paint), 2, 1, 0.5, 1e-14);
  cube->pair = 1;
  cube->quantity = 2;
  roll_up (&c);
  assert_near (mass_of (&c, paint)->amount, 24, 1e-13);
  assert_centre (mass_of (&c, paint), 2, 0, 0.5, 1e-14);
  paint->coats = 3;
  roll_up (&c);
  assert_near (mass_of (&c, paint)->mass, 7.2, 1e-13);
}

/* What coats a group lies in it or beside it, and before its parts or after them. */
static void
test_of_a_group (void)
{
  g_auto (Case) c = new_case ();
  GbPart *before = add_paint (&c, 0, 0);
  GbPart *outer = add_group (c.boat, 0, 10, 0, 0);
  GbPart *inside = add_paint (&c, outer->rec.id, outer->rec.id);
  GbPart *inner = add_group (c.boat, outer->rec.id, 1, 1, 0);
  GbPart *after;

  add_cube (&c, outer->rec.id, 0, 0, 0);
  add_cube (&c, inner->rec.id, 0, 0, 2);
  outer->quantity = 2;
  inner->pair = 1;
  inner->turn_z = 0.7;
  after = add_paint (&c, outer->rec.id, inner->rec.id);
  before->surface_of = outer->rec.id;
  roll_up (&c);
  assert_near (mass_of (&c, inside)->amount, 18, 1e-13);
  assert_centre (mass_of (&c, inside), 10 + 12.0 / 18, 0, 24.0 / 18, 1e-14);
  assert_near (mass_of (&c, after)->amount, 12, 1e-13);
  assert_centre (mass_of (&c, after), 11, 0, 2, 1e-14);
  assert_near (mass_of (&c, before)->amount, 36, 1e-13); /* two of the group stand beside it */
  assert_centre (mass_of (&c, before), 10 + 12.0 / 18, 0, 24.0 / 18, 1e-14);
  /* Spread out as the surfaces are: two of 6 m2 a metre to either side, and their own. */
  g_assert_cmpfloat (mass_of (&c, after)->inertia.xx, >, 1.2);
}

/* The coating stands in another branch, whose axes are turned; it lies on the wood all the same. */
static void
test_of_a_part_in_another_branch (void)
{
  g_auto (Case) c = new_case ();
  GbPart *hull = add_group (c.boat, 0, 1, 2, 3), *finish = add_group (c.boat, 0, -5, 1, 2);
  GbPart *cube = add_cube (&c, hull->rec.id, 1, 0, 0);
  GbPart *paint = add_paint (&c, finish->rec.id, cube->rec.id);

  hull->turn_z = G_PI_2;
  finish->turn_x = 0.4;
  finish->turn_y = -1;
  roll_up (&c);
  assert_centre (mass_of (&c, paint), 1, 3, 3, 1e-14);
  assert_centre (mass_of (&c, paint), mass_of (&c, cube)->x, mass_of (&c, cube)->y, mass_of (&c, cube)->z,
                 1e-14);
}

static void
test_of_itself_or_of_nothing (void)
{
  g_auto (Case) c = new_case ();
  GbPart *group = add_group (c.boat, 0, 0, 0, 0);
  GbPart *paint = add_paint (&c, group->rec.id, group->rec.id);
  GbPart *second = add_paint (&c, group->rec.id, paint->rec.id);
  GbPart *itself = add_paint (&c, 0, 0), *lost = add_paint (&c, 0, 987654);

  itself->surface_of = itself->rec.id;
  roll_up (&c);
  g_assert_cmpint (mass_of (&c, paint)->trouble, ==,
                   GB_TROUBLE_NO_SURFACE); /* the group holds nothing but coats */
  g_assert_cmpint (mass_of (&c, second)->trouble, ==, GB_TROUBLE_NO_SURFACE);
  g_assert_cmpint (mass_of (&c, itself)->trouble, ==, GB_TROUBLE_NO_SURFACE);
  g_assert_cmpint (mass_of (&c, lost)->trouble, ==, GB_TROUBLE_NO_SURFACE);

  /* Two coats on one group lie on the same wood. */
  add_cube (&c, group->rec.id, 0, 0, 0);
  second->surface_of = group->rec.id;
  roll_up (&c);
  assert_near (mass_of (&c, paint)->amount, 6, 1e-14);
  assert_near (mass_of (&c, second)->amount, 6, 1e-14);
}

static void
test_surfaces_without_a_place (void)
{
  g_auto (Case) c = new_case ();
  GbPart *group = add_group (c.boat, 0, 0, 0, 0);
  GbPart *cube = add_cube (&c, group->rec.id, NAN, 0, 0);
  GbPart *paint = add_paint (&c, 0, group->rec.id);

  roll_up (&c);
  assert_near (mass_of (&c, paint)->mass, 0.6, 1e-14);
  g_assert_cmpuint (mass_of (&c, paint)->n_no_place, ==, 1);
  add_cube (&c, group->rec.id, 5, 0, 0);
  roll_up (&c);
  assert_near (mass_of (&c, paint)->mass, 1.2, 1e-14);
  assert_near (mass_of (&c, paint)->x, 5, 1e-14);
  cube->quantity = NAN;
  roll_up (&c);
  assert_near (mass_of (&c, paint)->mass, 0.6, 1e-14);
}

static void
test_a_skin_lies_where_its_hull_does (void)
{
  g_auto (Case) c = new_case ();
  GbHull *hull = add_block (c.boat, 2, 1, 0.5);
  GbPart *group = add_group (c.boat, 0, 3, 1, 2);
  GbPart *skin = add_part (c.boat, group->rec.id, GB_TAKEOFF_SKIN, 100, 100, 100);
  GbPart *paint = add_paint (&c, group->rec.id, skin->rec.id);

  hull->edge = GB_EDGE_CLOSED;
  hull->x = 1;
  hull->y = hull->z = 0;
  group->turn_z = 0.5;
  group->turn_y = 1;
  skin->hull = hull->rec.id;
  skin->areal_mass = 3;
  roll_up (&c);
  assert_near (mass_of (&c, skin)->mass, 21, 1e-12);
  assert_centre (mass_of (&c, skin), 2, 0, 0.25, 1e-12);
  assert_near (mass_of (&c, paint)->amount, 7, 1e-12);
  assert_centre (mass_of (&c, paint), 2, 0, 0.25, 1e-12);
  assert_near (mass_of (&c, skin)->inertia.xy, 0, 1e-12);
  /* Thin walls 2 x 1 x 0.5 about the x axis, by y2 + z2 over each pair of faces: ends 2 x 0.5 (1 + 0.25)/12,
   * sides 2 (0.25 + 0.25/12), top and bottom 4 (1/12 + 0.0625), each face its area times that. */
  assert_near (mass_of (&c, skin)->inertia.xx,
               3 * (2 * 0.5 * (1 + 0.25) / 12 + 2 * 1 * (0.25 + 0.25 / 12) + 2 * 2 * (1.0 / 12 + 0.0625)),
               1e-12);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/rollup-coating/part", test_of_a_part_and_its_copies);
  g_test_add_func ("/rollup-coating/group", test_of_a_group);
  g_test_add_func ("/rollup-coating/another-branch", test_of_a_part_in_another_branch);
  g_test_add_func ("/rollup-coating/itself-or-nothing", test_of_itself_or_of_nothing);
  g_test_add_func ("/rollup-coating/without-a-place", test_surfaces_without_a_place);
  g_test_add_func ("/rollup-coating/skin", test_a_skin_lies_where_its_hull_does);
  return g_test_run ();
}
