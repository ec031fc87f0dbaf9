/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Foam for a boat full of water: found, put in as parts, and found to be right. */

#include "swamped-fixture.h"

/* Steel sinks without foam. 80 kg of it, 80/7850 m3, and no people: it takes 1000 V = 80 + 32.04 Vf with V =
 * 80/7850 + Vf. */
static void
test_steel_sinks (void)
{
  g_auto (Floating) f = new_floating ();
  g_autoptr (GbSwamped) swamped = NULL;

  add_box_boat (&f);
  add_weight (&f, add_material (f.boat, GB_MEASURE_DENSITY, 7850), 80, 2, 0, 0.05);
  swamped = find (&f, 0);
  g_assert_cmpint (swamped->aboard.kind, ==, GB_REST_SINKS);
  g_assert_true (isnan (swamped->aboard.edge));
  assert_near (swamped->aboard.most, 80000 / 7850.0, 1e-9);
  assert_near (swamped->aboard.weight, 80, 1e-9);
  assert_near (swamped->foam_volume, (80 - 80000 / 7850.0) / (1000 - 32.04), 1e-12);
  assert_near (swamped->foam_mass, swamped->foam_volume * 32.04, 1e-12);
  assert_near (swamped->foam_x, 2, 1e-9);
  assert_near (swamped->foam_y, 0, 1e-9);
  assert_near (swamped->foam_apart, 0.6, 1e-9);
  /* Nothing of it reaches the water: the centre of the foam's lift must lie over that of the steel's weight.
   */
  assert_near (swamped->foam_lowest, 0.05, 1e-9);
}

/* Foam where it is said to belong, in two halves at the height @z, is parts of her: then she rests level.
 * Returns how high her lowest edge is then. */
static double
edge_with_foam (Floating *f, gint64 condition, double z)
{
  g_autoptr (GbSwamped) before = find (f, condition), after = NULL;
  const GbMaterial *foam = add_material (f->boat, GB_MEASURE_DENSITY, GB_FOAM_DENSITY);

  g_assert_cmpfloat (before->foam_volume, >, 0);
  assert_near (before->foam_mass, before->foam_volume * GB_FOAM_DENSITY, 1e-12);
  g_assert_cmpfloat (before->foam_lowest, <, z);
  for (int side = -1; side <= 1; side += 2)
    {
      GbPart *half = add_part (f->boat, 0, GB_TAKEOFF_BLOCK, before->foam_x,
                               before->foam_y + side * before->foam_apart, z);

      half->material = foam->rec.id;
      half->volume = before->foam_volume / 2;
    }
  after = find (f, condition);
  g_assert_cmpint (after->holding_on.kind, ==, GB_REST_FOUND);
  assert_near (after->holding_on.heel, 0, 1e-6);
  assert_near (after->holding_on.trim, 0, 1e-6);
  g_assert_cmpfloat (after->holding_on.gm, >, 0);
  assert_near (after->foam_volume, 0, 1e-9);
  return after->holding_on.edge;
}

static void
test_foam_answer (void)
{
  g_auto (Floating) f = new_floating ();
  GbCondition *condition = add_condition (&f);

  add_plywood_box (&f);
  add_weight (&f, add_material (f.boat, GB_MEASURE_DENSITY, 7850), 40, 1.5, 0.1, 0.05);
  add_load (&f, condition, GB_LOAD_PERSON, 75, 1.6, 0.2, 0.3);
  add_load (&f, condition, GB_LOAD_PERSON, 60, 2.6, -0.2, 0.3);
  add_load (&f, condition, GB_LOAD_GEAR, 10, 3, 0, 0.1);
  assert_near (edge_with_foam (&f, condition->rec.id, 0.25), 0, 1e-6);
}

/* Just so much foam as carries her would have to lie before her bow: more of it, farther aft, floats her
 * level and higher. */
static void
test_more_foam_brings_it_in (void)
{
  g_auto (Floating) f = new_floating ();
  g_autoptr (GbSwamped) swamped = NULL;
  double edge;

  add_plywood_box (&f);
  add_weight (&f, add_material (f.boat, GB_MEASURE_DENSITY, 7850), 65, 3, 0, 0.01);
  swamped = find (&f, 0);
  g_assert_cmpfloat (swamped->foam_x, <=, 4);
  g_assert_cmpfloat (swamped->foam_x, >, 3.9);
  g_assert_nonnull (swamped->foam_trouble);
  g_assert_cmpfloat (swamped->foam_volume, >, (48 + 65 - 80 - 65 / 7.85) / (1000 - 32.04));
  edge = edge_with_foam (&f, 0, 0.2);
  g_assert_cmpfloat (edge, >, 0.01);
  g_assert_cmpfloat (edge, <, 0.1);
}

/* Where it would have to lie outside of her, or more than she has room for. */
static void
test_foam_that_cannot_be (void)
{
  g_auto (Floating) far = new_floating ();
  g_auto (Floating) full = new_floating ();
  g_auto (Floating) high = new_floating ();
  g_autoptr (GbSwamped) outside = NULL, crammed = NULL, tippy = NULL;

  add_plywood_box (&far);
  add_weight (&far, add_material (far.boat, GB_MEASURE_DENSITY, 7850), 40, 9, 0, 0.05);
  outside = find (&far, 0);
  g_assert_cmpfloat (outside->foam_x, >, 4);
  g_assert_nonnull (outside->foam_trouble);
  g_assert_true (isnan (outside->foam_apart));

  add_box_boat (&full);
  add_weight (&full, add_material (full.boat, GB_MEASURE_DENSITY, 7850), 3000, 2, 0, 0.05);
  crammed = find (&full, 0);
  g_assert_cmpfloat (crammed->foam_volume, >, 4 * 1.2 * 0.4);
  g_assert_nonnull (crammed->foam_trouble);

  add_box_boat (&high);
  add_weight (&high, add_material (high.boat, GB_MEASURE_DENSITY, 7850), 100, 2, 0, 0.8);
  tippy = find (&high, 0);
  g_assert_cmpfloat (tippy->foam_lowest, >, 0.4);
  g_assert_nonnull (tippy->foam_trouble);
}

/* Wood that stands on its edge alone: it floats, and falls over. */
static void
test_floats_but_not_level (void)
{
  g_auto (Floating) f = new_floating ();
  const GbMaterial *wood = add_material (f.boat, GB_MEASURE_DENSITY, 500);
  g_autoptr (GbSwamped) swamped = NULL;

  add_box_boat (&f);
  add_board (&f, 0, wood, (GbVec3){ 4, 0.02, 0.3 }, (GbVec3){ 2, 0, 0.2 });
  swamped = find (&f, 0);
  g_assert_cmpint (swamped->holding_on.kind, ==, GB_REST_FOUND);
  assert_near (fabs (swamped->holding_on.heel), 90 * DEGREE, 5 * DEGREE);
  assert_near (swamped->foam_volume, 0, 0);
  g_assert_nonnull (swamped->foam_trouble);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/swamped/steel-sinks", test_steel_sinks);
  g_test_add_func ("/swamped/foam-answer", test_foam_answer);
  g_test_add_func ("/swamped/more-foam-brings-it-in", test_more_foam_brings_it_in);
  g_test_add_func ("/swamped/foam-that-cannot-be", test_foam_that_cannot_be);
  g_test_add_func ("/swamped/floats-but-not-level", test_floats_but_not_level);
  return g_test_run ();
}
