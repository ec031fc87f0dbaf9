/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Flotation and capacity against what was printed.
 *
 * CFR: 33 CFR part 183 as of 2026. Handbook: Boatbuilder's Handbook of the United States Coast Guard,
 * flotation and safe loading. Where an answer is not printed anywhere but computed from the formula, it says
 * so. */

#include "../engine/hull-fixture.h"

#include "engine/small-craft-rule.h"

static GbMaterial *
new_material (GbFamily family, const char *name)
{
  GbMaterial *material = (GbMaterial *) gb_record_new (GB_RECORD_MATERIAL);

  material->family = family;
  material->name = g_strdup (name);
  return material;
}

static double
factor_of (GbFamily family, const char *name, double density, gboolean *from_table)
{
  g_autoptr (GbRecord) record = &new_material (family, name)->rec;

  return gb_rule_factor ((const GbMaterial *) record, density, from_table);
}

static double
table_factor (GbFamily family, const char *name)
{
  gboolean from_table = FALSE;
  double factor = factor_of (family, name, NAN, &from_table);

  g_assert_true (from_table);
  return factor;
}

static void
test_whole_persons (void)
{
  /* Handbook, safe loading: (32 + 550)/141 = 4.12, 4 persons. */
  g_assert_cmpuint (gb_rule_persons (550), ==, 4);
  /* The same page: 547 lb give 4.10 and 546 lb 4.09, 4 persons each. They are what is left for persons. */
  g_assert_cmpuint (gb_rule_persons (gb_rule_persons_capacity (GB_RULE_OUTBOARD, 547 + 185, 185)), ==, 4);
  g_assert_cmpuint (gb_rule_persons (gb_rule_persons_capacity (GB_RULE_OUTBOARD, 546 + 185, 185)), ==, 4);
  /* 183.41(b): halves go up; (32 + 602.5)/141 = 4.5, computed. */
  g_assert_cmpuint (gb_rule_persons (602.5), ==, 5);
  g_assert_cmpuint (gb_rule_persons (602.4), ==, 4);
  g_assert_cmpuint (gb_rule_persons (0), ==, 0);
  g_assert_cmpuint (gb_rule_persons (NAN), ==, 0);
}

static void
test_capacity (void)
{
  /* CFR 183.35: a fifth of maximum displacement less boat weight; 183.41: less the motor's. Computed. */
  assert_near (gb_rule_weight_capacity (GB_RULE_OUTBOARD, 4000, 500), 700, 1e-9);
  assert_near (gb_rule_persons_capacity (GB_RULE_OUTBOARD, 700, 185), 515, 1e-9);
  /* 183.37: three tenths (the difference is from memory). 183.43: 0.90 W, and 25 lb less with a motor of 2
   * hp.
   */
  assert_near (gb_rule_weight_capacity (GB_RULE_BY_HAND, 1600, 200), 420, 1e-9);
  assert_near (gb_rule_weight_capacity (GB_RULE_TWO_HP, 1600, 200), 420, 1e-9);
  assert_near (gb_rule_persons_capacity (GB_RULE_BY_HAND, 420, 0), 378, 1e-9);
  assert_near (gb_rule_persons_capacity (GB_RULE_TWO_HP, 420, 32), 353, 1e-9);
  /* Nothing is left where the boat is heavier than what she displaces. */
  assert_near (gb_rule_weight_capacity (GB_RULE_BY_HAND, 200, 300), 0, 0);
  assert_near (gb_rule_persons_capacity (GB_RULE_TWO_HP, 20, 32), 0, 0);
  assert_near (gb_rule_persons_capacity (GB_RULE_OUTBOARD, 100, 185), 0, 0);
}

static void
test_horsepower (void)
{
  /* CFR 183.53, for factors up to 52. */
  static const struct
  {
    double factor, horsepower, flat;
  } rows[] = { { 0, 3, 3 },    { 35, 3, 3 },    { 36, 5, 3 },    { 39, 5, 3 },   { 40, 7.5, 5 },
               { 42, 7.5, 5 }, { 43, 10, 7.5 }, { 45, 10, 7.5 }, { 46, 15, 10 }, { 52, 15, 10 },
               { 35.4, 3, 3 }, { 35.5, 5, 3 },  { 52.4, 15, 10 } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      assert_near (gb_rule_horsepower (10, rows[i].factor / 10, FALSE), rows[i].horsepower, 0);
      assert_near (gb_rule_horsepower (10, rows[i].factor / 10, TRUE), rows[i].flat, 0);
    }
  g_assert_true (isnan (gb_rule_horsepower (14, 3.75, FALSE)));
  g_assert_true (isnan (gb_rule_horsepower (14, NAN, FALSE)));
  g_assert_true (isnan (gb_rule_horsepower (-1, 4, FALSE)));
}

static void
test_factors (void)
{
  /* Handbook, factors for converting dry weight to submerged weight: specific gravity and K. Read: the K of
   * aluminium, fibreglass laminate, ABS and fir plywood; the others are from memory. */
  static const struct
  {
    GbFamily family;
    const char *name;
    double gravity, factor;
  } rows[] = {
    { GB_FAMILY_METAL, "Lead", 11.34, 0.91 },
    { GB_FAMILY_METAL, "Copper", 8.91, 0.89 },
    { GB_FAMILY_METAL, "Brass, rolled or drawn", 8.56, 0.88 },
    { GB_FAMILY_METAL, "Stainless steel 316", 7.85, 0.88 },
    { GB_FAMILY_METAL, "Aluminium 5083", 2.73, 0.63 },
    { GB_FAMILY_METAL, "ALUMINUM", 2.73, 0.63 },
    { GB_FAMILY_OTHER, "Window glass", 2.60, 0.62 },
    { GB_FAMILY_OTHER, "Concrete", 2.40, 0.58 },
    { GB_FAMILY_RUBBER, "Rubber", 1.51, 0.34 },
    { GB_FAMILY_PLASTIC, "Fibreglass laminate", 1.50, 0.33 },
    { GB_FAMILY_PLASTIC, "GRP laminate, woven roving", 1.50, 0.33 },
    { GB_FAMILY_PLASTIC, "Acrylic (Plexiglas)", 1.18, 0.15 },
    { GB_FAMILY_PLYWOOD, "Hardboard (Masonite)", 1.16, 0.14 },
    { GB_FAMILY_PLASTIC, "ABS plastic", 1.12, 0.11 },
    { GB_FAMILY_WOOD, "Teak", 0.82, -0.22 },
    { GB_FAMILY_WOOD, "Maple, hard", 0.70, -0.43 },
    { GB_FAMILY_WOOD, "Oak, white", 0.63, -0.59 },
    { GB_FAMILY_WOOD, "Yellow birch", 0.62, -0.61 },
    { GB_FAMILY_WOOD, "Western larch", 0.59, -0.69 },
    { GB_FAMILY_WOOD, "Mahogany, Philippine", 0.58, -0.72 },
    { GB_FAMILY_WOOD, "Ash", 0.56, -0.78 },
    { GB_FAMILY_WOOD, "Mahogany, Honduras", 0.56, -0.78 },
    { GB_FAMILY_PLYWOOD, "Fir plywood, marine", 0.55, -0.81 },
    { GB_FAMILY_WOOD, "Douglas fir, coast", 0.51, -0.95 },
    { GB_FAMILY_WOOD, "Bald cypress", 0.48, -1.08 },
    { GB_FAMILY_WOOD, "Sitka spruce", 0.43, -1.33 },
    { GB_FAMILY_WOOD, "Pine, white", 0.42, -1.38 },
    { GB_FAMILY_WOOD, "Western red cedar", 0.33, -2.03 },
    { GB_FAMILY_WOOD, "western redcedar", 0.33, -2.03 },
    { GB_FAMILY_FOAM, "Cork", 0.24, -3.17 },
    { GB_FAMILY_WOOD, "Balsa", 0.16, -5.24 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      gboolean from_table = TRUE;

      assert_near (table_factor (rows[i].family, rows[i].name), rows[i].factor, 0);
      /* K = 1 - 1/SG, as printed, to a hundredth. */
      assert_near (rows[i].factor, 1 - 1 / rows[i].gravity, 0.0115);
      /* A material that the table does not know goes by that formula. */
      assert_near (factor_of (GB_FAMILY_OTHER, "Nothing known", 1000 * rows[i].gravity, &from_table),
                   rows[i].factor, 0.014);
      g_assert_false (from_table);
    }
}

static void
test_motors (void)
{
  /* ABYC S-30 table 1A as CFR 183.75 takes it up: the last columns' sums, and weights under water. */
  static const struct
  {
    double from_hp, to_hp, total, swamped;
  } rows[] = { { 0.1, 2.0, 32, 27 },       { 2.1, 3.9, 44, 37 },       { 4.0, 6.9, 94, 59 },
               { 7.0, 10.9, 185, 94 },     { 11.0, 22.9, 234, 113 },   { 23.0, 34.9, 350, 167 },
               { 35.0, 64.9, 459, 255 },   { 65.0, 94.9, 628, 392 },   { 95.0, 104.9, 649, 409 },
               { 105, 144.9, 723, 469 },   { 145.0, 194.9, 762, 501 }, { 195.0, 209.9, 863, 582 },
               { 210.0, 300.0, 914, 624 }, { 300.1, 350.0, 1117, 789 } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const GbRuleMotor *motor = gb_rule_motor (rows[i].from_hp);

      g_assert_nonnull (motor);
      g_assert_true (motor == gb_rule_motor (rows[i].to_hp));
      assert_near (motor->running + motor->controls + motor->battery_dry + motor->full_tank, rows[i].total,
                   0);
      assert_near (motor->swamped, rows[i].swamped, 0);
      g_assert_cmpfloat (motor->swamped, <, motor->dry);
      g_assert_cmpfloat (motor->dry, <, motor->running);
      g_assert_true (gb_rule_motor_by_weight (motor->dry) == motor);
    }
  g_assert_null (gb_rule_motor (350.1));
  g_assert_null (gb_rule_motor (0));
  g_assert_null (gb_rule_motor (NAN));
  assert_near (gb_rule_motor_by_weight (5000)->most_hp, 350, 0);
}

static void
test_foam (void)
{
  double grp = table_factor (GB_FAMILY_PLASTIC, "Fibreglass laminate");
  double boat = gb_rule_boat_foam (1600 * grp, 200, GB_RULE_FOAM);
  double motor = gb_rule_boat_foam (352, 0, GB_RULE_FOAM);

  /* Handbook: foam of 2 lb/ft3 carries 60.4 lb. */
  assert_near (GB_RULE_FOAM, GB_RULE_WATER - 2, 1e-12);
  /* The same in kg/m3, computed: 967.5. */
  assert_near (GB_RULE_FOAM * GB_POUND / GB_CUBIC_FOOT, 967.5, 0.05);
  assert_near (GB_RULE_DENSITY, 999.55, 0.005);
  /* An owner's working by the handbook's formula: hull 1600 lb of GRP, 200 lb on deck: 728 lb, 12 ft3; motor,
   * battery and controls 352 lb under water: 5.82 ft3 (cut, not rounded); together 18 ft3. */
  assert_near (boat * GB_RULE_FOAM, 728, 1e-9);
  assert_near (boat, 12, 0.06);
  assert_near (motor, 5.82, 0.01);
  assert_near (boat + motor, 18, 0.15);
}

static void
test_sign_of_plywood (void)
{
  /* A page prints 600 lb GRP and 200 lb plywood as 600 x 0.33 + 200 x 0.81 = 360 lb, as if plywood sank. By K
   * = 1 - 1/SG it lifts: 36 lb, computed. */
  double grp = table_factor (GB_FAMILY_PLASTIC, "GRP"), plywood = table_factor (GB_FAMILY_PLYWOOD, "Plywood");

  assert_near (600 * grp + 200 * fabs (plywood), 360, 1e-9);
  assert_near (600 * grp + 200 * plywood, 36, 1e-9);
}

static void
test_persons_foam (void)
{
  double b = GB_RULE_FOAM;

  /* Handbook: the guideline takes a quarter of the capacity where the law has 2/15 ("about 0.133"). */
  assert_near (gb_rule_persons_foam (GB_RULE_BY_HAND, 360, 400, b) * b / 400, 0.25, 1e-12);
  g_assert_cmpfloat (0.25, >, 2.0 / 15);
  assert_near (2.0 / 15, 0.133, 0.0005);
  /* Level flotation by the printed formula, computed: half of the first 550 lb, an eighth of the rest, a
   * quarter of what the capacity has beside persons, which is never less than nothing. */
  assert_near (gb_rule_persons_foam (GB_RULE_OUTBOARD, 500, 500, b) * b, 250, 1e-9);
  assert_near (gb_rule_persons_foam (GB_RULE_OUTBOARD, 750, 950, b) * b, 275 + 25 + 50, 1e-9);
  assert_near (gb_rule_persons_foam (GB_RULE_OUTBOARD, 750, 600, b) * b, 275 + 25, 1e-9);
}

static void
test_by_hand (void)
{
  /* Computed, printed nowhere: plywood hull of 80 lb all under water, 5 lb of steel fittings, no deck,
   * capacity 400 lb: Fb = -1.000, Fc = 1.656, together 0.656 ft3 (0.0186 m3). */
  double submerged = 80 * table_factor (GB_FAMILY_PLYWOOD, "Okoume plywood")
                     + 5 * table_factor (GB_FAMILY_METAL, "Steel, structural");
  double boat = gb_rule_boat_foam (submerged, 0, GB_RULE_FOAM);
  double persons = gb_rule_persons_foam (GB_RULE_BY_HAND, 360, 400, GB_RULE_FOAM);

  assert_near (boat, -1.000, 1e-9);
  assert_near (persons, 1.656, 0.0005);
  assert_near (boat + persons, 0.656, 0.0005);
  assert_near ((boat + persons) * GB_CUBIC_FOOT, 0.0186, 0.00005);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/published/small-craft-rule/whole-persons", test_whole_persons);
  g_test_add_func ("/published/small-craft-rule/capacity", test_capacity);
  g_test_add_func ("/published/small-craft-rule/horsepower", test_horsepower);
  g_test_add_func ("/published/small-craft-rule/factors", test_factors);
  g_test_add_func ("/published/small-craft-rule/motors", test_motors);
  g_test_add_func ("/published/small-craft-rule/foam", test_foam);
  g_test_add_func ("/published/small-craft-rule/sign-of-plywood", test_sign_of_plywood);
  g_test_add_func ("/published/small-craft-rule/persons-foam", test_persons_foam);
  g_test_add_func ("/published/small-craft-rule/by-hand", test_by_hand);
  return g_test_run ();
}
