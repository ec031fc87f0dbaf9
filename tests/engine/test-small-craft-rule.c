/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The small-craft method for whole boats: what is under the edge and what above, motors, weighed boats, and
 * where it does not apply. */

#include "floating-fixture.h"

#include "engine/small-craft-rule.h"

#define FOAM_DENSITY (GB_RULE_FOAM * GB_POUND / GB_CUBIC_FOOT)

static GbMaterial *
add_named (Floating *f, GbFamily family, const char *name, double density)
{
  GbMaterial *material = add_material (f->boat, GB_MEASURE_DENSITY, density);

  g_free (material->name);
  material->name = g_strdup (name);
  material->family = family;
  return material;
}

/* A block of @mass kg of the material, its centre at the height @z. */
static GbPart *
add_block_of (Floating *f, const GbMaterial *material, double mass, double z)
{
  GbPart *part = add_box (f->boat, 0, material, 1, 1, mass / material->density);

  part->x = 2;
  part->z = z;
  return part;
}

/* An open box 4 x 1.2 x 0.5 m, 54 kg of plywood. */
static Floating
new_skiff (void)
{
  Floating f = new_floating ();

  add_block (f.boat, 4, 1.2, 0.5);
  add_block_of (&f, add_named (&f, GB_FAMILY_PLYWOOD, "Okoume plywood", 450), 54, 0.2);
  return f;
}

static GbHull *
hull_of (Floating *f)
{
  gb_boat_settle (f->boat);
  return gb_boat_all (f->boat, GB_RECORD_HULL)->pdata[0];
}

static GbRule *
find_rule (Floating *f, gint64 condition)
{
  find_floating (f);
  return gb_rule_find (f->boat, &f->hulls, &f->edges, &f->rollup, &f->flotation, condition);
}

static const GbRuleLine *
line_of (const GbRule *rule, const char *material)
{
  for (guint i = 0; i < rule->lines->len; i++)
    {
      const GbRuleLine *line = &g_array_index (rule->lines, GbRuleLine, i);

      if (g_strcmp0 (line->material, material) == 0)
        return line;
    }
  g_error ("no line for %s", material);
}

static void
test_by_hand (void)
{
  g_auto (Floating) f = new_skiff ();
  g_autoptr (GbRule) rule = NULL;
  double most = 2.4 * GB_RULE_DENSITY, capacity = 0.3 * (most - 60);

  add_block_of (&f, add_named (&f, GB_FAMILY_METAL, "Steel, structural", 7850), 2, 0.3);
  add_block_of (&f, add_named (&f, GB_FAMILY_WOOD, "Sitka spruce", 400), 4, 0.6);
  rule = find_rule (&f, 0);
  g_assert_null (rule->trouble);
  g_assert_cmpint (rule->kind, ==, GB_RULE_BY_HAND);
  g_assert_true (rule->applies);
  assert_near (rule->max_displacement, most, 1e-9);
  assert_near (rule->boat_weight, 60, 1e-9);
  assert_near (rule->motor_weight, 0, 0);
  assert_near (rule->weight_capacity, capacity, 1e-9);
  assert_near (rule->persons_capacity, 0.9 * capacity, 1e-9);
  g_assert_cmpuint (rule->persons, ==, 10); /* (32 + 1392)/141 = 10.1 */
  g_assert_true (isnan (rule->horsepower));

  g_assert_cmpuint (rule->lines->len, ==, 2);
  g_assert_true (line_of (rule, "Okoume plywood")->from_table);
  assert_near (line_of (rule, "Okoume plywood")->factor, -0.81, 1e-12);
  assert_near (line_of (rule, "Steel, structural")->submerged, 2 * 0.88, 1e-12);
  assert_near (rule->submerged, 54 * -0.81 + 2 * 0.88, 1e-9);
  assert_near (rule->deck, 4, 1e-12);
  assert_near (rule->unknown_mass, 0, 0);
  assert_near (rule->boat_foam, (54 * -0.81 + 2 * 0.88 + 4) / FOAM_DENSITY, 1e-12);
  assert_near (rule->motor_foam, 0, 0);
  assert_near (rule->persons_foam, 0.25 * capacity / FOAM_DENSITY, 1e-12);
  assert_near (rule->law_persons_foam, (2 / 15.0 * 0.9 + 0.25 * 0.1) * capacity / FOAM_DENSITY, 1e-12);
  assert_near (rule->foam, rule->boat_foam + rule->persons_foam, 1e-15);
}

static void
test_needs_no_foam (void)
{
  g_auto (Floating) f = new_floating ();
  g_autoptr (GbRule) rule = NULL;

  /* Block foam lifts by 1 - 1/SG = -30.2 times its weight. */
  add_block (f.boat, 3, 1, 0.3);
  add_block_of (&f, add_named (&f, GB_FAMILY_FOAM, "XPS", 32), 20, 0.1);
  rule = find_rule (&f, 0);
  g_assert_false (line_of (rule, "XPS")->from_table);
  assert_near (line_of (rule, "XPS")->factor, 1 - GB_RULE_DENSITY / 32, 1e-12);
  g_assert_cmpfloat (rule->boat_foam, <, 0);
  assert_near (rule->foam, 0, 0);
}

static void
test_two_horsepower (void)
{
  g_auto (Floating) f = new_skiff ();
  g_autoptr (GbRule) rule = NULL;
  GbCondition *condition = add_condition (&f);
  double capacity = 0.3 * (2.4 * GB_RULE_DENSITY - 54);

  add_load (&f, condition, GB_LOAD_PERSON, 80, 1, 0, 0.3);
  add_load (&f, condition, GB_LOAD_MOTOR, NAN, 0, 0, 0.5)->horsepower = 2;
  rule = find_rule (&f, condition->rec.id);
  g_assert_cmpint (rule->kind, ==, GB_RULE_TWO_HP);
  assert_near (rule->motor_weight, 32 * GB_POUND, 1e-9);
  assert_near (rule->swamped_motor, 27 * GB_POUND, 1e-9);
  assert_near (rule->persons_capacity, 0.9 * capacity - 25 * GB_POUND, 1e-9);
  assert_near (rule->motor_foam, 27 / GB_RULE_FOAM * GB_CUBIC_FOOT, 1e-12);
  /* 13.12 x 3.94 ft come to a factor of 52. */
  assert_near (rule->horsepower, 15, 0);
}

static void
test_outboard (void)
{
  g_auto (Floating) f = new_skiff ();
  g_autoptr (GbRule) rule = NULL;
  GbCondition *condition = add_condition (&f);
  GbLoad *motor = add_load (&f, condition, GB_LOAD_MOTOR, NAN, 0, 0, 0.5);
  double capacity = 0.2 * (2.4 * GB_RULE_DENSITY - 54) / GB_POUND;

  motor->horsepower = 8;
  rule = find_rule (&f, condition->rec.id);
  g_assert_cmpint (rule->kind, ==, GB_RULE_OUTBOARD);
  assert_near (rule->weight_capacity / GB_POUND, capacity, 1e-9);
  assert_near (rule->motor_weight / GB_POUND, 185, 1e-9);
  assert_near (rule->swamped_motor / GB_POUND, 94 + 5 + 11, 1e-9);
  assert_near (rule->persons_capacity / GB_POUND, capacity - 185, 1e-9);
  /* Over 550 lb the rest counts an eighth. */
  assert_near (rule->persons_foam / GB_CUBIC_FOOT * GB_RULE_FOAM,
               0.5 * fmin (capacity - 185, 550) + 0.125 * fmax (capacity - 185 - 550, 0), 1e-9);
  g_assert_true (isnan (rule->law_persons_foam));
}

static void
test_motors_own_mass (void)
{
  g_auto (Floating) f = new_skiff ();
  GbCondition *condition = add_condition (&f);
  GbLoad *motor = add_load (&f, condition, GB_LOAD_MOTOR, 84 * GB_POUND, 0, 0, 0.5);
  GbRule *rule;

  /* Twice as heavy as the row for 2.1 to 3.9 hp, and so in the row of up to 10.9 hp where nothing else is
   * known. */
  motor->horsepower = 3;
  rule = find_rule (&f, condition->rec.id);
  assert_near (rule->motor_weight / GB_POUND, 88, 1e-9);
  assert_near (rule->swamped_motor / GB_POUND, 74, 1e-9);
  gb_rule_free (rule);

  motor->horsepower = NAN;
  rule = find_rule (&f, condition->rec.id);
  g_assert_cmpint (rule->kind, ==, GB_RULE_OUTBOARD);
  assert_near (rule->motor_weight / GB_POUND, 84 * 110 / 105.0 + 5 + 20 + 50, 1e-9);
  gb_rule_free (rule);

  /* A pair of them. */
  motor->horsepower = 1.5;
  motor->quantity = 2;
  rule = find_rule (&f, condition->rec.id);
  g_assert_cmpint (rule->kind, ==, GB_RULE_OUTBOARD);
  assert_near (rule->swamped_motor / GB_POUND, 2 * 84 * 27 / 30.0, 1e-9);
  gb_rule_free (rule);

  /* Over the table: by its own mass, with the last row's battery and tank. */
  motor->horsepower = 400;
  motor->quantity = 1;
  rule = find_rule (&f, condition->rec.id);
  assert_near (rule->motor_weight / GB_POUND, 84 * 928 / 884.0 + 44 + 45 + 100, 1e-9);
  gb_rule_free (rule);
}

static void
test_unknown_motor (void)
{
  g_auto (Floating) f = new_skiff ();
  g_autoptr (GbRule) rule = NULL;
  GbCondition *condition = add_condition (&f);

  add_load (&f, condition, GB_LOAD_MOTOR, NAN, 0, 0, 0.5);
  rule = find_rule (&f, condition->rec.id);
  g_assert_cmpstr (rule->trouble, ==, "The motor “load” needs its horsepower or its mass.");
}

static void
test_not_known (void)
{
  g_auto (Floating) f = new_skiff ();
  g_autoptr (GbRule) rule = NULL;

  add_lump (f.boat, 0, 3, 2, 0, 0.2);
  floating_build (&f)->margin_mass = 6;
  rule = find_rule (&f, 0);
  assert_near (rule->unknown_mass, 3, 1e-9);
  assert_near (line_of (rule, "Not known")->submerged, 3, 1e-9);
  g_assert_false (line_of (rule, "Not known")->known);
  g_assert_false (line_of (rule, "Growth margin")->known);
  g_assert_true (line_of (rule, "Okoume plywood")->known);
  assert_near (line_of (rule, "Growth margin")->submerged, 6, 1e-9);
  assert_near (rule->boat_weight, 54 + 3 + 6, 1e-9);
  assert_near (rule->submerged, 54 * -0.81 + 3 + 6, 1e-9);
}

static void
test_heavier_than_its_row (void)
{
  g_auto (Floating) f = new_skiff ();
  g_autoptr (GbRule) rule = NULL;

  add_block_of (&f, add_named (&f, GB_FAMILY_PLYWOOD, "Birch plywood", 680), 10, 0.2);
  add_block_of (&f, add_named (&f, GB_FAMILY_METAL, "Aluminium bronze", 8100), 1, 0.2);
  add_block_of (&f, add_named (&f, GB_FAMILY_PLYWOOD, "Sperrholz", 500), 10, 0.2);
  add_block_of (&f, add_named (&f, GB_FAMILY_PAINT, "Teak oil", 900), 1, 0.2);
  rule = find_rule (&f, 0);
  assert_near (line_of (rule, "Birch plywood")->factor, 1 - GB_RULE_DENSITY / 680, 1e-12);
  assert_near (line_of (rule, "Aluminium bronze")->factor, 1 - GB_RULE_DENSITY / 8100, 1e-12);
  assert_near (line_of (rule, "Sperrholz")->factor, -0.81, 1e-12);
  g_assert_true (line_of (rule, "Sperrholz")->from_table);
  /* Neither wood nor light enough to lift: paints dry to something no lighter than water, of 1000 kg/m3 (common
   * practice, no source). */
  assert_near (line_of (rule, "Teak oil")->factor, 1 - GB_RULE_DENSITY / 1000, 1e-12);
}

static void
test_groups (void)
{
  g_auto (Floating) f = new_skiff ();
  g_autoptr (GbRule) rule = NULL;
  GbPart *seats = add_group (f.boat, 0, 2, 0.3, 0.25), *frame = add_group (f.boat, seats->rec.id, 0, 0, 0.01);
  GbPart *board = add_block_of (&f, add_named (&f, GB_FAMILY_WOOD, "Western red cedar", 330), 1.5, 0);

  /* To port and to starboard, three frames in each, two boards on each. */
  seats->pair = 1;
  frame->quantity = 3;
  board->rec.owner = frame->rec.id;
  board->quantity = 2;
  board->x = 0;
  rule = find_rule (&f, 0);
  assert_near (rule->boat_weight, 54 + 18, 1e-9);
  assert_near (line_of (rule, "Western red cedar")->dry, 18, 1e-9);
  assert_near (rule->unknown_mass, 0, 1e-9);
  gb_rule_free (g_steal_pointer (&rule));

  /* The frames of one side on the scale: 10 kg where 9 were listed. */
  weigh (f.boat, frame->rec.id, 737001, 10)->on_scale = GB_ON_SCALE_ALL;
  rule = find_rule (&f, 0);
  assert_near (rule->boat_weight, 54 + 20, 1e-9);
  assert_near (line_of (rule, "Western red cedar")->dry, 20, 1e-9);
  assert_near (rule->unknown_mass, 0, 1e-9);
}

static void
test_weighed (void)
{
  g_auto (Floating) f = new_skiff ();
  g_autoptr (GbRule) rule = NULL;

  /* The scale says 60 kg where 54 were listed: the plywood's share is scaled with it. */
  weigh (f.boat, 0, 737000, 60);
  rule = find_rule (&f, 0);
  assert_near (rule->boat_weight, 60, 1e-9);
  assert_near (line_of (rule, "Okoume plywood")->dry, 60, 1e-9);
  assert_near (rule->unknown_mass, 0, 1e-9);
}

static void
test_weighed_unseen (void)
{
  g_auto (Floating) f = new_skiff ();
  g_autoptr (GbRule) rule = NULL;
  GbPart *group = add_group (f.boat, 0, 2, 0, 0.2);

  /* A scale tells what a group weighs of whose parts nothing is known. */
  add_lump (f.boat, group->rec.id, NAN, 0, 0, 0);
  weigh (f.boat, group->rec.id, 737001, 5);
  rule = find_rule (&f, 0);
  assert_near (rule->boat_weight, 59, 1e-9);
  assert_near (rule->unknown_mass, 5, 1e-9);
  assert_near (rule->submerged, 54 * -0.81 + 5, 1e-9);
}

static void
test_lowest_opening (void)
{
  g_auto (Floating) f = new_skiff ();
  g_autoptr (GbRule) rule = NULL;
  GbOpening *opening = add_record (f.boat, GB_RECORD_OPENING, hull_of (&f)->rec.id);
  GbCorner *corner = add_record (f.boat, GB_RECORD_CORNER, opening->rec.id);

  corner->x = 1;
  corner->y = 0;
  corner->z = 0.3;
  add_block_of (&f, add_named (&f, GB_FAMILY_WOOD, "Teak", 700), 7, 0.4);
  rule = find_rule (&f, 0);
  /* A slot at 0.3 m is where water comes in; what is above it is dry when she is swamped. */
  assert_near (rule->max_displacement, 4 * 1.2 * 0.3 * GB_RULE_DENSITY, 1e-9);
  assert_near (rule->deck, 7, 1e-9);
}

static void
test_where_it_applies (void)
{
  g_auto (Floating) f = new_skiff ();
  GbHull *second;
  GbRule *rule;

  /* A hull in another one is none of her hulls. */
  second = add_block (f.boat, 0.5, 1, 0.3);
  second->inside = 1;
  second->edge = GB_EDGE_CLOSED;
  rule = find_rule (&f, 0);
  g_assert_true (rule->applies);
  assert_near (rule->max_displacement, 2.4 * GB_RULE_DENSITY, 1e-9);
  gb_rule_free (rule);

  second->inside = 0;
  second->y = 3;
  rule = find_rule (&f, 0);
  g_assert_false (rule->applies);
  g_assert_null (rule->trouble);
  gb_rule_free (rule);

  gb_boat_remove (f.boat, GB_RECORD_HULL, second->rec.id);
  hull_of (&f)->length = 6.2;
  rule = find_rule (&f, 0);
  g_assert_false (rule->applies);
  gb_rule_free (rule);
}

static void
test_nothing_yet (void)
{
  g_auto (Floating) f = new_floating ();
  GbRule *rule = find_rule (&f, 0);

  g_assert_cmpstr (rule->trouble, ==, "There is no hull yet that could float.");
  g_assert_cmpuint (rule->lines->len, ==, 0);
  gb_rule_free (rule);
  add_block (f.boat, 4, 1, 0.5);
  rule = find_rule (&f, 12345);
  g_assert_cmpint (rule->condition, ==, 12345);
  g_assert_cmpstr (rule->trouble, ==, "Nothing of the boat has a mass yet.");
  gb_rule_free (rule);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/small-craft-rule/by-hand", test_by_hand);
  g_test_add_func ("/engine/small-craft-rule/needs-no-foam", test_needs_no_foam);
  g_test_add_func ("/engine/small-craft-rule/two-horsepower", test_two_horsepower);
  g_test_add_func ("/engine/small-craft-rule/outboard", test_outboard);
  g_test_add_func ("/engine/small-craft-rule/motors-own-mass", test_motors_own_mass);
  g_test_add_func ("/engine/small-craft-rule/unknown-motor", test_unknown_motor);
  g_test_add_func ("/engine/small-craft-rule/not-known", test_not_known);
  g_test_add_func ("/engine/small-craft-rule/heavier-than-its-row", test_heavier_than_its_row);
  g_test_add_func ("/engine/small-craft-rule/groups", test_groups);
  g_test_add_func ("/engine/small-craft-rule/weighed", test_weighed);
  g_test_add_func ("/engine/small-craft-rule/weighed-unseen", test_weighed_unseen);
  g_test_add_func ("/engine/small-craft-rule/lowest-opening", test_lowest_opening);
  g_test_add_func ("/engine/small-craft-rule/where-it-applies", test_where_it_applies);
  g_test_add_func ("/engine/small-craft-rule/nothing-yet", test_nothing_yet);
  return g_test_run ();
}
