/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The workings of floating, on a box that is worked by hand.
 *
 * A box of 2 m x 1 m x 0.4 m in water of 1000 kg/m3: 10 kg of boat at z 0.2 and 90 kg of cargo at z 0.3, both
 * amidships. 100 kg: 0.1 m3, 50 mm deep. KB 25 mm; BM = 1 m x 1 m / (12 x 0.05 m) = 1.667 m; KG (10 x 0.2 +
 * 90 x 0.3) / 100 = 290 mm; GM 1402 mm. Along: BM 2 m x 2 m / (12 x 0.05 m) = 6.667 m, GM 6402 mm. 2 m2: 20
 * kg a centimetre; MCT 100 x 6.402 x 0.01 / 2 = 3.2 kg m; a degree 100 x 1.402 x sin 1 = 2.45 kg m. The
 * limit, 150 mm free, is 2 x 0.25 x 1000 = 500 kg. */

#include "working-fixture.h"

#include "engine/study.h"

typedef struct
{
  Desk desk;
  GbCondition *condition;
  GbLoad *load;
  GbPart *plank;
  GbHull *hull;
} Box;

static Box
new_box (void)
{
  Box box = { .desk = new_desk () };
  GbBuild *build = (GbBuild *) gb_boat_get (box.desk.boat, GB_RECORD_BUILD, 1);
  GbHull *hull = add_block (box.desk.boat, 2, 1, 0.4);
  GbPart *part = add_lump (box.desk.boat, 0, 10, 1, 0, 0.2);

  build->water = GB_WATER_GIVEN;
  build->water_density = 1000;
  build->margin_estimated = 0;
  hull->x = hull->y = hull->z = 0;
  set_name (&hull->name, "Shell");
  set_name (&part->name, "Planks");
  part->material = add_material (box.desk.boat, GB_MEASURE_DENSITY, 500)->rec.id;
  box.condition = add_record (box.desk.boat, GB_RECORD_CONDITION, 0);
  set_name (&box.condition->name, "Bricks");
  box.load = add_record (box.desk.boat, GB_RECORD_LOAD, box.condition->rec.id);
  set_name (&box.load->name, "Pallet");
  box.load->kind = GB_LOAD_CARGO;
  box.load->mass = 90;
  box.load->x = 1;
  box.load->y = 0;
  box.load->z = 0.3;
  box.hull = hull;
  box.plank = part;
  find (&box.desk);
  return box;
}

static void
box_clear (Box *box)
{
  desk_clear (&box->desk);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Box, box_clear)

static GbWorking *
work_afloat (const Box *box)
{
  return gb_working_afloat (box->desk.boat, box->desk.findings, box->condition->rec.id);
}

static void
test_afloat (void)
{
  g_auto (Box) box = new_box ();

  assert_says (work_afloat (&box), "Afloat: Bricks", "10 kg + 0 kg + 90 kg = 100 kg",
               "100 kg ÷ 1000 kg/m³ = 100 l", "50 mm forward, 50 mm amidships, 50 mm aft",
               "the lowest point of Shell", "350 mm at x ", "25 mm + 1667 mm − 290 mm − 0 mm = 1402 mm",
               "25 mm + 6667 mm − 290 mm − 0 mm = 6402 mm", "2 m² × 10 mm × 1000 kg/m³ = 20 kg",
               "100 kg × 6402 mm × 10 mm ÷ 2000 mm = 3.2 kg·m", "= 2.45 kg·m", "500 kg − 100 kg = 400 kg",
               "common practice of naval architecture", "Pallet", "Sum, and its centre", gb_caution_afloat (),
               NULL);
}

static void
test_afloat_that_is_not (void)
{
  g_auto (Box) box = new_box ();

  box.load->mass = 900;
  find (&box.desk);
  assert_says (work_afloat (&box), "She sinks: 910 kg all up, 800 kg floats her.", "Pallet", NULL);
  box.load->mass = NAN;
  find (&box.desk);
  assert_says (work_afloat (&box), "has no mass yet", NULL);
  gb_boat_remove (box.desk.boat, GB_RECORD_HULL, box.hull->rec.id);
  find (&box.desk);
  assert_says (work_afloat (&box), "There is no hull yet that could float.", NULL);
  assert_says (gb_working_afloat (box.desk.boat, box.desk.findings, 77), "no longer there", NULL);
}

static void
test_in_feet (void)
{
  g_auto (Box) box = new_box ();

  ((GbBuild *) gb_boat_get (box.desk.boat, GB_RECORD_BUILD, 1))->units = GB_UNITS_FEET;
  find (&box.desk);
  /* 100 kg are 220.5 lb; the second moment 1 x 1 x 1 x 2 / 12 m4 = 0.16667 m4 is 19.31 ft4. */
  assert_says (work_afloat (&box), "220 lb", "19.31 ft⁴", "lb·ft", NULL);
}

static GbCase *
case_of (const Box *box)
{
  const GbFindings *f = box->desk.findings;

  return gb_case_new (box->desk.boat, &f->hulls, &f->edges, &f->rollup, &f->flotation,
                      box->condition->rec.id);
}

static void
test_righting (void)
{
  g_auto (Box) box = new_box ();
  g_autoptr (GbCase) floating = NULL;
  g_autoptr (GbRighting) righting = NULL;

  box.condition->heeling_moment = 20;
  find (&box.desk);
  floating = case_of (&box);
  righting = gb_righting_find (floating, NULL, NULL);
  g_assert_nonnull (righting);
  assert_says (gb_working_righting (box.desk.boat, box.desk.findings, righting), "Righting levers", "1402 mm",
               "To starboard: greatest lever", "To port: greatest lever", "20 kg·m ÷ 100 kg = 200 mm",
               "She heels to where", "-180°", "180°", gb_caution_afloat (), NULL);
  assert_says (gb_working_righting (box.desk.boat, box.desk.findings, NULL), "There is no curve", NULL);
}

/* In the middle 350 mm are free all round; the pallet's centre is 300 mm up. */
static void
test_crew (void)
{
  g_auto (Box) box = new_box ();
  g_autoptr (GbCase) floating = case_of (&box);
  g_autoptr (GbCrewMap) map = gb_crew_map_find (floating, box.load->rec.id, NULL, NULL, NULL);

  assert_says (gb_working_crew (box.desk.boat, box.desk.findings, map), "60 × 40 places", "300 mm", "350 mm",
               "straight across to port", "Trim", gb_caution_afloat (), NULL);
  map->n_rows_found--;
  assert_says (gb_working_crew (box.desk.boat, box.desk.findings, map), "not found yet", NULL);
  assert_says (gb_working_crew (box.desk.boat, box.desk.findings, NULL), "not found yet", NULL);
}

/* The table's last row. */
static void
assert_sums_to (GbWorking *take_working, const char *volume)
{
  g_autoptr (GbWorking) working = take_working;
  const char *const *row = working->rows->pdata[working->rows->len - 1];

  g_assert_cmpstr (row[2], ==, volume);
}

static void
test_swamped (void)
{
  g_auto (Box) box = new_box ();
  GbPart *group;
  const GbFindings *f = box.desk.findings;
  g_autoptr (GbSwamped) swamped = gb_swamped_find (box.desk.boat, &f->hulls, &f->edges, &f->rollup,
                                                   &f->flotation, box.condition->rec.id, NULL, NULL);

  /* 10 kg of 500 kg/m3 are 20 l, which carry 20 kg of the 100 kg. */
  assert_says (gb_working_swamped (box.desk.boat, f, swamped), "Full of water", "20 l + 0 l = 20 l",
               "20 l × 1000 kg/m³ = 20 kg", "100 kg to carry, and all of her carries 20 kg: she sinks",
               "1000 kg/m³ − 32 kg/m³ = 968 kg/m³", "Planks", gb_caution_swamped (), NULL);
  assert_says (gb_working_swamped (box.desk.boat, f, NULL), "Not known yet", NULL);
  gb_swamped_free (g_steal_pointer (&swamped));

  /* Twice 4 kg in a group that is a pair, 8 l each time, are 36 l together, as the table says too. */
  group = add_group (box.desk.boat, 0, 1, 0.2, 0.2);
  group->pair = 1;
  add_lump (box.desk.boat, group->rec.id, 4, 0, 0, 0)->material = box.plank->material;
  find (&box.desk);
  swamped = gb_swamped_find (box.desk.boat, &f->hulls, &f->edges, &f->rollup, &f->flotation, box.condition->rec.id,
                             NULL, NULL);
  assert_near (swamped->parts_volume, 0.036, 1e-12);
  assert_sums_to (gb_working_swamped (box.desk.boat, f, swamped), "36 l");
}

static void
test_rule (void)
{
  g_auto (Box) box = new_box ();
  const GbFindings *f = box.desk.findings;
  g_autoptr (GbRule) rule =
      gb_rule_find (box.desk.boat, &f->hulls, &f->edges, &f->rollup, &f->flotation, box.condition->rec.id);

  /* Displacement at the edge: 0.8 m3 are 28.25 ft3, 1762.9 lb at 62.4; boat 22.0 lb; 3/10 of the difference
   * 522.3 lb; 9/10 of that 470.0 lb; (32 + 470) / 141 = 3.56, 4 persons. */
  assert_says (gb_working_rule (box.desk.boat, rule), "(1762.9 lb − 22.0 lb) × 3/10 = 522.3 lb",
               "0.9 × 522.3 lb = 470.0 lb", "= 3.56: 4", "1/4 × 522.3 lb ÷ 60.4 lb/ft³ = 2.16 ft³",
               "33 CFR part 183", gb_caution_swamped (), NULL);
  assert_says (gb_working_rule (box.desk.boat, NULL), "Not known yet", NULL);
}

static void
test_rule_with_an_outboard (void)
{
  g_auto (Box) box = new_box ();
  const GbFindings *f = box.desk.findings;
  g_autoptr (GbRule) rule = NULL;

  box.load->kind = GB_LOAD_MOTOR;
  box.load->mass = NAN;
  box.load->horsepower = 5;
  find (&box.desk);
  rule = gb_rule_find (box.desk.boat, &f->hulls, &f->edges, &f->rollup, &f->flotation, box.condition->rec.id);
  /* A fifth of 1740.9 lb is 348.2; a motor of 5 hp with all that belongs to it 94 lb (33 CFR 183.75). */
  assert_says (gb_working_rule (box.desk.boat, rule), "(1762.9 lb − 22.0 lb) ÷ 5 = 348.2 lb",
               "348.2 lb − 94.0 lb = 254.2 lb", "a test afloat",
               "(1/2 × 254.2 lb + 1/8 × 0.0 lb + 1/4 × 0.0 lb) ÷ 60.4 lb/ft³ = 2.10 ft³", NULL);
}

/* What is not known is no figure. */
static void
assert_known (GbWorking *take_working)
{
  g_autoptr (GbWorking) working = take_working;
  g_autofree char *text = gb_working_to_text (working);

  g_assert_null (strstr (text, "nan"));
  g_assert_null (strstr (text, "inf"));
}

static void
test_inclined (void)
{
  g_auto (Box) box = new_box ();
  GbInclining *test = add_record (box.desk.boat, GB_RECORD_INCLINING, 0);
  GbShift *shift = add_record (box.desk.boat, GB_RECORD_SHIFT, test->rec.id);

  /* 5 kg moved by 0.4 m; 10 mm on a plumb line of 500 mm: GM = 5 x 0.4 / (100 x 0.02) = 1 m. KM is 25 + 1667
   * mm, so KG 692 mm. */
  test->condition = box.condition->rec.id;
  test->pendulum = 0.5;
  shift->mass = 5;
  shift->distance = 0.4;
  shift->deflection = 0.01;
  find (&box.desk);
  assert_says (gb_working_inclined (box.desk.boat, box.desk.findings, test->rec.id), "Inclining test",
               "1000 mm", "1692 mm − 1000 mm → 692 mm", "0.0200", "2 kg·m", "1402 mm",
               gb_caution_afloat (), NULL);
  test->pendulum = 0;
  find (&box.desk);
  assert_known (gb_working_inclined (box.desk.boat, box.desk.findings, test->rec.id));
  test->pendulum = 0.5;
  shift->mass = NAN;
  find (&box.desk);
  assert_says (gb_working_inclined (box.desk.boat, box.desk.findings, test->rec.id), "left out", NULL);
  assert_says (gb_working_inclined (box.desk.boat, box.desk.findings, 77), "no longer there", NULL);
}

static void
test_tubbed (void)
{
  g_auto (Box) box = new_box ();
  GbTub *tub = add_record (box.desk.boat, GB_RECORD_TUB, 0);

  /* At 1 to 10 in the same water 100 kg are 100 g, and 50 mm are 5 mm; 110 g stand for 110 kg. */
  set_name (&tub->name, "Bath");
  tub->condition = box.condition->rec.id;
  tub->scale = 10;
  tub->water_density = 1000;
  tub->mass = 0.110;
  tub->x = 0.1;
  tub->z = 0.029;
  tub->fore_draught = tub->aft_draught = 0.0055;
  find (&box.desk);
  assert_says (gb_working_tubbed (box.desk.boat, box.desk.findings, tub->rec.id),
               "The model in the tub: Bath", "Masses and forces", "10³ × 1 = 1000", "√10 = 3.162",
               "0.11 kg × 1000 = 110 kg", "55 mm", "Froude's law", "What would explain it", "0.1 kg, centre at", gb_caution_afloat (),
               NULL);
  ((GbBuild *) gb_boat_get (box.desk.boat, GB_RECORD_BUILD, 1))->water_density = NAN;
  find (&box.desk);
  assert_known (gb_working_tubbed (box.desk.boat, box.desk.findings, tub->rec.id));
  tub->scale = NAN;
  find (&box.desk);
  assert_says (gb_working_tubbed (box.desk.boat, box.desk.findings, tub->rec.id), "Bath", NULL);
  assert_says (gb_working_tubbed (box.desk.boat, box.desk.findings, 77), "no longer there", NULL);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/working-afloat/afloat", test_afloat);
  g_test_add_func ("/working-afloat/not-afloat", test_afloat_that_is_not);
  g_test_add_func ("/working-afloat/feet", test_in_feet);
  g_test_add_func ("/working-afloat/righting", test_righting);
  g_test_add_func ("/working-afloat/crew", test_crew);
  g_test_add_func ("/working-afloat/swamped", test_swamped);
  g_test_add_func ("/working-afloat/rule", test_rule);
  g_test_add_func ("/working-afloat/rule-with-an-outboard", test_rule_with_an_outboard);
  g_test_add_func ("/working-afloat/inclined", test_inclined);
  g_test_add_func ("/working-afloat/tubbed", test_tubbed);
  return g_test_run ();
}
