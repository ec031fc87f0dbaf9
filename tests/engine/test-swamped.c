/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Full of water: what carries, and how she lies, by hand. */

#include "swamped-fixture.h"

static gboolean
at_once (gpointer data)
{
  return TRUE;
}

static void
test_volumes (void)
{
  g_auto (Floating) f = new_floating ();
  const GbMaterial *plywood = add_plywood_box (&f);
  GbPart *steel = add_weight (&f, add_material (f.boat, GB_MEASURE_DENSITY, 7850), 15.7, 2, 0, 0.1);
  GbPart *unknown = add_weight (&f, NULL, 3, 2, 0, 0.1);
  GbPart *nowhere = add_weight (&f, plywood, 6, NAN, NAN, NAN);
  g_autoptr (GbSwamped) swamped = find (&f, 0);

  assert_near (gb_part_volume (f.boat, &f.rollup, steel), 0.002, 1e-12);
  g_assert_true (isnan (gb_part_volume (f.boat, &f.rollup, unknown)));
  assert_near (gb_part_volume (f.boat, &f.rollup, nowhere), 0.01, 1e-12);
  assert_near (swamped->parts_volume, 0.08 + 0.002 + 0.01, 1e-12);
  assert_near (swamped->hulls_volume, 0, 0);
  g_assert_cmpuint (swamped->n_no_volume, ==, 1);
  assert_near (swamped->no_volume_mass, 3, 0);
  g_assert_false (swamped->guesswork);
  g_assert_cmpuint (swamped->n_no_place, ==, 1);
  assert_near (swamped->holding, 2.0 / 15, 0);
  assert_near (swamped->aboard.weight, 48 + 15.7 + 3 + 6, 1e-9);
  assert_near (swamped->aboard.most, 92, 1e-9);
}

/* A tin says 480 kg/m3 stay on of it; the film does not float all the same. */
static void
test_volume_of_paint (void)
{
  g_auto (Floating) f = new_floating ();
  GbMaterial *paint = add_material (f.boat, GB_MEASURE_DENSITY, 480);
  GbPart *part = add_weight (&f, paint, 2, 2, 0, 0.1);

  paint->family = GB_FAMILY_PAINT;
  find_floating (&f);
  assert_near (gb_part_volume (f.boat, &f.rollup, part), 0.002, 1e-12);
}

/* Cloth and its resin: of 3 kg with as much again of resin, 3/2500 and 3/1200 m3. */
static void
test_volume_of_laminate (void)
{
  g_auto (Floating) f = new_floating ();
  GbMaterial *cloth = add_material (f.boat, GB_MEASURE_AREAL, 0.3);
  const GbMaterial *resin = add_material (f.boat, GB_MEASURE_DENSITY, 1200);
  GbPart *part = add_part (f.boat, 0, GB_TAKEOFF_COATING, 0, 0, 0);

  cloth->density = 2500;
  part->material = cloth->rec.id;
  part->coating = GB_COATING_CLOTH;
  part->area = 10;
  part->coats = 1;
  part->resin = resin->rec.id;
  part->resin_ratio = 1;
  find_floating (&f);
  assert_near (gb_rollup_part (&f.rollup, part)->mass, 6, 1e-12);
  assert_near (gb_part_volume (f.boat, &f.rollup, part), 3 / 2500.0 + 3 / 1200.0, 1e-12);
}

/* Wood alone floats her level; the weight is carried by what is under water. */
static void
test_wood_floats_level (void)
{
  g_auto (Floating) f = new_floating ();
  g_autoptr (GbSwamped) swamped = NULL;

  add_plywood_box (&f);
  swamped = find (&f, 0);
  g_assert_cmpint (swamped->aboard.kind, ==, GB_REST_FOUND);
  assert_near (swamped->aboard.heel, 0, 1e-9);
  assert_near (swamped->aboard.trim, 0, 1e-9);
  g_assert_cmpfloat (swamped->aboard.gm, >, 0);
  /* Six tenths of the wood are under: the bottom, which is six tenths of it, and just so her sides are not.
   */
  g_assert_cmpfloat (swamped->aboard.edge, >, 0.1);
  g_assert_cmpfloat (swamped->aboard.edge, <, 0.4);
  assert_near (swamped->foam_volume, 0, 0);
  g_assert_null (swamped->foam_trouble);
}

/* Archimedes: a block of half the water's density is under by half of its height, and boards on their edges
 * by their density's share; both as stiff as boxes, BM = I/V. */
static void
test_how_deep_solids_lie (void)
{
  g_auto (Floating) block = new_floating (), boards = new_floating ();
  g_autoptr (GbSwamped) lying = NULL, standing = NULL;
  double second;

  add_box_boat (&block);
  add_board (&block, 0, add_material (block.boat, GB_MEASURE_DENSITY, 500), (GbVec3){ 2, 0.8, 0.2 },
             (GbVec3){ 2, 0, 0.1 });
  lying = find (&block, 0);
  g_assert_cmpint (lying->aboard.kind, ==, GB_REST_FOUND);
  assert_near (lying->aboard.heel, 0, 1e-9);
  assert_near (lying->aboard.edge, 0.4 - 0.1, 0.005);
  assert_near (lying->aboard.gm, 0.8 * 0.8 / (12 * 0.1) - 0.05, 0.05);

  add_box_boat (&boards);
  add_board (&boards, 0, add_material (boards.boat, GB_MEASURE_DENSITY, 400), (GbVec3){ 3, 0.04, 0.3 },
             (GbVec3){ 2, 0.5, 0.15 })
      ->pair = 1;
  standing = find (&boards, 0);
  g_assert_cmpint (standing->aboard.kind, ==, GB_REST_FOUND);
  assert_near (standing->aboard.heel, 0, 1e-9);
  assert_near (standing->aboard.edge, 0.4 - 0.4 * 0.3, 0.005);
  second = 2 * 3 * 0.04 * (0.5 * 0.5 + 0.04 * 0.04 / 12);
  assert_near (standing->aboard.gm, second / (2 * 3 * 0.04 * 0.12) - 0.09, 0.15);
}

/* Blocks of foam on one side alone: she heels to the other. */
static void
test_foam_on_one_side (void)
{
  for (int side = -1; side <= 1; side += 2)
    {
      g_auto (Floating) f = new_floating ();
      const GbMaterial *foam = add_material (f.boat, GB_MEASURE_DENSITY, 30);
      g_autoptr (GbSwamped) swamped = NULL;

      add_plywood_box (&f);
      add_weight (&f, add_material (f.boat, GB_MEASURE_DENSITY, 7850), 60, 2, 0, 0.02);
      add_board (&f, 0, foam, (GbVec3){ 2, 0.2, 0.3 }, (GbVec3){ 2, side * 0.45, 0.2 });
      swamped = find (&f, 0);
      g_assert_cmpint (swamped->aboard.kind, ==, GB_REST_FOUND);
      /* Foam to port lifts port: heel to starboard is positive. */
      g_assert_cmpfloat (side * swamped->aboard.heel, >, 2 * DEGREE);
      assert_near (swamped->aboard.trim, 0, 1e-9);
    }
}

/* People: in her all of them, in the water their share, hanging on as high as her edge. */
static void
test_people (void)
{
  g_auto (Floating) f = new_floating ();
  GbCondition *two = add_condition (&f);
  g_autoptr (GbSwamped) swamped = NULL;

  add_plywood_box (&f);
  add_load (&f, two, GB_LOAD_PERSON, 75, 2, 0.3, 0.5);
  add_load (&f, two, GB_LOAD_PERSON, 75, 2, -0.3, 0.5);
  add_load (&f, two, GB_LOAD_GEAR, 5, 2, 0, 0.1);
  swamped = find (&f, two->rec.id);
  g_assert_cmpint (swamped->aboard.kind, ==, GB_REST_SINKS);
  assert_near (swamped->aboard.weight, 48 + 155, 1e-9);
  assert_near (swamped->holding_on.weight, 48 + 5 + 150 * 2 / 15.0, 1e-9);
  g_assert_cmpint (swamped->holding_on.kind, ==, GB_REST_FOUND);
  g_clear_pointer (&swamped, gb_swamped_free);

  two->holding = 0.5;
  swamped = find (&f, two->rec.id);
  assert_near (swamped->holding, 0.5, 0);
  assert_near (swamped->holding_on.weight, 48 + 5 + 75, 1e-9);
  g_assert_cmpint (swamped->holding_on.kind, ==, GB_REST_SINKS);
  /* At the edge all is under water: 80 kg are carried, and 48 are not. (The balls that the sides are made of
   * stand a little out of it.) */
  assert_near (swamped->foam_volume, 48 / (1000 - 32.04), 0.0005);
}

/* A closed hull carries, and what lies in it or is its skin carries nothing of its own; with an opening,
 * water gets into it. */
static void
test_closed_hulls (void)
{
  g_auto (Floating) f = new_floating ();
  const GbMaterial *wood = add_material (f.boat, GB_MEASURE_DENSITY, 500);
  GbHull *floats = add_block (f.boat, 3, 0.3, 0.3);
  GbPart *skin = add_part (f.boat, 0, GB_TAKEOFF_SKIN, 0, 0, 0);
  GbOpening *hatch;
  g_autoptr (GbSwamped) swamped = NULL;

  add_box_boat (&f);
  floats->edge = GB_EDGE_CLOSED;
  floats->pair = 1;
  floats->y = 1;
  skin->material = wood->rec.id;
  skin->hull = floats->rec.id;
  skin->thickness = 0.006;
  add_weight (&f, wood, 5, 2, 0, 0.1);    /* in the open box */
  add_weight (&f, wood, 2, 1.5, 1, 0.15); /* in a float */
  add_board (&f, 0, wood, (GbVec3){ 1, 0.02, 0.02 }, (GbVec3){ 1.5, 1, 0.15 })->pair = 1; /* in both */
  add_weight (&f, NULL, 1, 1.5, -1, 0.15);                                                /* in the other */
  swamped = find (&f, 0);
  assert_near (swamped->hulls_volume, 2 * 3 * 0.3 * 0.3, 1e-9);
  assert_near (swamped->parts_volume, 0.01, 1e-12);
  g_assert_cmpuint (swamped->n_no_volume, ==, 0);
  g_assert_cmpint (swamped->aboard.kind, ==, GB_REST_FOUND);
  g_clear_pointer (&swamped, gb_swamped_free);

  hatch = add_record (f.boat, GB_RECORD_OPENING, floats->rec.id);
  hatch->name = g_strdup ("hatch");
  swamped = find (&f, 0);
  assert_near (swamped->hulls_volume, 0, 0);
  g_assert_cmpfloat (swamped->parts_volume, >, 0.01 + 0.004);
  g_assert_cmpuint (swamped->n_no_volume, ==, 1);
}

/* An air space in an open hull carries when she is full of water; one in a hull that carries anyway adds
 * nothing. */
static void
test_air_spaces (void)
{
  g_auto (Floating) f = new_floating ();
  GbHull *boat = add_box_boat (&f), *space = add_block (f.boat, 0.8, 1, 0.3);
  g_autoptr (GbSwamped) swamped = NULL;

  space->inside = 1;
  space->x = 0.1;
  space->z = 0.05;
  add_weight (&f, NULL, 50, 0.5, 0, 0.1);
  swamped = find (&f, 0);
  assert_near (swamped->hulls_volume, 0.24, 1e-9);
  g_assert_cmpint (swamped->aboard.kind, ==, GB_REST_FOUND);
  /* 50 kg on 0.8 m2: 62.5 mm of it are under. */
  assert_near (swamped->aboard.edge, 0.4 - 0.05 - 0.0625, 1e-9);
  assert_near (swamped->aboard.gm, 0.8 / 12 / 0.05 + 0.05 + 0.03125 - 0.1, 1e-9);
  g_clear_pointer (&swamped, gb_swamped_free);

  boat->edge = GB_EDGE_CLOSED;
  swamped = find (&f, 0);
  assert_near (swamped->hulls_volume, 4 * 1.2 * 0.4, 1e-9);
}

/* A group that is a pair has its parts twice, mirrored where it stands; copies count as often, and a scale
 * makes more of it. */
static void
test_groups (void)
{
  g_auto (Floating) f = new_floating ();
  const GbMaterial *foam = add_material (f.boat, GB_MEASURE_DENSITY, 30);
  GbPart *group = add_group (f.boat, 0, 1, 0.5, 0.2), *inner = add_group (f.boat, group->rec.id, 0, 0, 0);
  g_autoptr (GbSwamped) swamped = NULL;

  add_box_boat (&f);
  group->pair = 1;
  inner->quantity = 3;
  add_board (&f, inner->rec.id, foam, (GbVec3){ 0.5, 0.1, 0.1 }, (GbVec3){ 1, 0, 0 });
  add_weight (&f, add_material (f.boat, GB_MEASURE_DENSITY, 7850), 15, 2, 0, 0.05);
  swamped = find (&f, 0);
  assert_near (swamped->parts_volume, 6 * 0.005 + 15 / 7850.0, 1e-12);
  assert_near (swamped->aboard.weight, 15 + 6 * 0.15, 1e-9);
  g_assert_cmpint (swamped->aboard.kind, ==, GB_REST_FOUND);
  assert_near (swamped->aboard.heel, 0, 1e-9);
  assert_near (swamped->aboard.trim, 0, 1e-9);
  g_assert_cmpfloat (swamped->aboard.gm, >, 0.1);
  g_clear_pointer (&swamped, gb_swamped_free);

  /* Twice as heavy on the scale: twice the volume. */
  weigh (f.boat, group->rec.id, 2460000, 1.8);
  swamped = find (&f, 0);
  assert_near (swamped->parts_volume, 2 * 6 * 0.005 + 15 / 7850.0, 1e-9);
}

/* A part that has others in it is but what gathers them. */
static void
test_part_of_parts (void)
{
  g_auto (Floating) f = new_floating ();
  const GbMaterial *wood = add_material (f.boat, GB_MEASURE_DENSITY, 500);
  GbPart *hatch = add_weight (&f, wood, 7, 2, 0, 0.1);
  g_autoptr (GbSwamped) swamped = NULL;

  add_box_boat (&f);
  add_board (&f, hatch->rec.id, wood, (GbVec3){ 0.5, 0.1, 0.1 }, (GbVec3){ 0, 0, 0 });
  swamped = find (&f, 0);
  assert_near (f.rollup.boat.mass, 2.5, 1e-12);
  g_assert_true (isnan (gb_part_volume (f.boat, &f.rollup, hatch)));
  assert_near (swamped->parts_volume, 0.005, 1e-12);
  g_assert_cmpuint (swamped->n_no_volume, ==, 0);
}

/* A scale tells what a group weighs of whose parts nothing is known: it carries nothing, and is counted. */
static void
test_weighed_unseen (void)
{
  g_auto (Floating) f = new_floating ();
  GbPart *group = add_group (f.boat, 0, 2, 0, 0.1);
  g_autoptr (GbSwamped) swamped = NULL;

  add_plywood_box (&f);
  add_lump (f.boat, group->rec.id, NAN, 0, 0, 0);
  weigh (f.boat, group->rec.id, 2460000, 5);
  swamped = find (&f, 0);
  assert_near (swamped->aboard.weight, 53, 1e-9);
  assert_near (swamped->parts_volume, 0.08, 1e-12);
  g_assert_cmpuint (swamped->n_no_volume, ==, 1);
  assert_near (swamped->no_volume_mass, 5, 1e-9);
}

/* Groups within groups, all pairs: the volume is all there, and even. */
static void
test_pairs_of_pairs (void)
{
  g_auto (Floating) f = new_floating ();
  const GbMaterial *wood = add_material (f.boat, GB_MEASURE_DENSITY, 500);
  g_autoptr (GbSwamped) swamped = NULL;
  gint64 owner = 0;

  add_box_boat (&f);
  for (guint i = 0; i < 7; i++)
    {
      GbPart *group = add_group (f.boat, owner, i == 0 ? 2 : 0, 0.02, 0.01);

      group->pair = 1;
      owner = group->rec.id;
    }
  add_board (&f, owner, wood, (GbVec3){ 0.1, 0.01, 0.01 }, (GbVec3){ 0, 0, 0 });
  swamped = find (&f, 0);
  assert_near (swamped->parts_volume, 128 * 1e-5, 1e-15);
  assert_near (swamped->aboard.weight, 128 * 0.005, 1e-12);
  g_assert_cmpint (swamped->aboard.kind, ==, GB_REST_FOUND);
}

/* Without an edge, without a hull, without anything: no crash, and no figure that is not known. */
static void
test_little_is_known (void)
{
  g_auto (Floating) empty = new_floating ();
  g_auto (Floating) raft = new_floating ();
  g_auto (Floating) lead = new_floating ();
  g_autoptr (GbSwamped) nothing = find (&empty, 0), closed = NULL, bare = NULL, heavy = NULL;

  g_assert_cmpint (nothing->aboard.kind, ==, GB_REST_NONE);
  g_assert_true (isnan (nothing->foam_volume));
  g_assert_nonnull (nothing->foam_trouble);

  /* Of no known density, so that nothing carries. */
  add_box_boat (&lead);
  add_weight (&lead, NULL, 20, 2, 0, 0.1);
  heavy = find (&lead, 0);
  g_assert_cmpint (heavy->aboard.kind, ==, GB_REST_SINKS);
  assert_near (heavy->aboard.most, 0, 0);
  g_assert_cmpuint (heavy->n_no_volume, ==, 1);
  g_assert_true (heavy->guesswork);

  add_weight (&raft, add_material (raft.boat, GB_MEASURE_DENSITY, 500), 20, 2, 0, 0.1);
  bare = find (&raft, 0);
  g_assert_cmpint (bare->aboard.kind, ==, GB_REST_FOUND);
  g_assert_true (isnan (bare->aboard.edge));
  g_assert_true (isnan (bare->foam_volume));

  add_box_boat (&raft)->edge = GB_EDGE_CLOSED;
  closed = find (&raft, 0);
  g_assert_cmpint (closed->aboard.kind, ==, GB_REST_FOUND);
  g_assert_true (isnan (closed->aboard.edge));
  assert_near (closed->foam_volume, 0, 0);
}

static void
test_cancelled (void)
{
  g_auto (Floating) f = new_floating ();

  add_plywood_box (&f);
  find_floating (&f);
  g_assert_null (gb_swamped_find (f.boat, &f.hulls, &f.edges, &f.rollup, &f.flotation, 0, at_once, NULL));
  g_assert_null (gb_swamped_find (f.boat, &f.hulls, &f.edges, &f.rollup, &f.flotation, 4711, NULL, NULL));
}

/* A boat of 100,000 parts is done in a moment. */
static void
test_many_parts (void)
{
  g_auto (Floating) f = new_floating ();
  const GbMaterial *wood = add_material (f.boat, GB_MEASURE_DENSITY, 500);
  g_autoptr (GbSwamped) swamped = NULL;
  gint64 start;

  add_box_boat (&f);
  for (guint i = 0; i < 100000; i++)
    add_board (&f, 0, wood, (GbVec3){ 0.3, 0.02, 0.01 },
               (GbVec3){ i % 400 / 100.0, (i % 7 - 3.0) / 6, i % 40 / 100.0 });
  find_floating (&f);
  start = g_get_monotonic_time ();
  swamped = gb_swamped_find (f.boat, &f.hulls, &f.edges, &f.rollup, &f.flotation, 0, NULL, NULL);
  g_test_message ("100,000 parts: %.0f ms", (g_get_monotonic_time () - start) / 1000.0);
  g_assert_cmpint (swamped->aboard.kind, ==, GB_REST_FOUND);
  assert_near (swamped->parts_volume, 6, 1e-6);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/swamped/volumes", test_volumes);
  g_test_add_func ("/swamped/volume-of-paint", test_volume_of_paint);
  g_test_add_func ("/swamped/volume-of-laminate", test_volume_of_laminate);
  g_test_add_func ("/swamped/wood-floats-level", test_wood_floats_level);
  g_test_add_func ("/swamped/how-deep-solids-lie", test_how_deep_solids_lie);
  g_test_add_func ("/swamped/foam-on-one-side", test_foam_on_one_side);
  g_test_add_func ("/swamped/people", test_people);
  g_test_add_func ("/swamped/closed-hulls", test_closed_hulls);
  g_test_add_func ("/swamped/air-spaces", test_air_spaces);
  g_test_add_func ("/swamped/groups", test_groups);
  g_test_add_func ("/swamped/part-of-parts", test_part_of_parts);
  g_test_add_func ("/swamped/weighed-unseen", test_weighed_unseen);
  g_test_add_func ("/swamped/pairs-of-pairs", test_pairs_of_pairs);
  g_test_add_func ("/swamped/little-is-known", test_little_is_known);
  g_test_add_func ("/swamped/cancelled", test_cancelled);
  g_test_add_func ("/swamped/many-parts", test_many_parts);
  return g_test_run ();
}
