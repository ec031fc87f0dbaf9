/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Workings: what stands on the paper, and that it leads to what was found. */

#include "generate.h"
#include "working-fixture.h"

static GbMaterial *
add_ply (Desk *desk)
{
  GbMaterial *ply = add_material (desk->boat, GB_MEASURE_DENSITY, 450);

  set_name (&ply->name, "Gaboon plywood");
  set_name (&ply->source, "A table");
  return ply;
}

static void
test_mass_of_a_sheet (void)
{
  g_auto (Desk) desk = new_desk ();
  GbPart *part = add_part (desk.boat, 0, GB_TAKEOFF_SHEET, 0, 0, 0);

  set_name (&part->name, "Side panel");
  part->material = add_ply (&desk)->rec.id;
  part->area = 0.71;
  part->thickness = 0.006;
  part->pair = 1;
  find (&desk);
  assert_says (gb_working_mass (desk.boat, desk.findings, part->rec.id), "Mass of Side panel",
               "Area × thickness × density", "0.71 m² × 6 mm × 450 kg/m³ = 1.92 kg",
               "Gaboon plywood: A table", "1.92 kg × 2 = 3.83 kg", "3.83 kg ± ", NULL);
  ((GbBuild *) gb_boat_get (desk.boat, GB_RECORD_BUILD, 1))->units = GB_UNITS_FEET;
  assert_says (gb_working_mass (desk.boat, desk.findings, part->rec.id),
               "7.64 ft² × 1/4\" × 28.1 lb/ft³ = 4.23 lb", NULL);
}

static void
test_mass_by_every_take_off (void)
{
  g_auto (Desk) desk = new_desk ();
  gint64 ply = add_ply (&desk)->rec.id, cloth = add_material (desk.boat, GB_MEASURE_AREAL, 0.2)->rec.id;
  GbPart *sheet = add_part (desk.boat, 0, GB_TAKEOFF_SHEET, 0, 0, 0),
         *rail = add_part (desk.boat, 0, GB_TAKEOFF_LENGTH, 0, 0, 0);
  GbPart *tube = add_part (desk.boat, 0, GB_TAKEOFF_LENGTH, 0, 0, 0),
         *block = add_part (desk.boat, 0, GB_TAKEOFF_BLOCK, 0, 0, 0);
  GbPart *paint = add_part (desk.boat, 0, GB_TAKEOFF_COATING, 0, 0, 0),
         *glass = add_part (desk.boat, 0, GB_TAKEOFF_COATING, 0, 0, 0);
  GbPart *bolts = add_part (desk.boat, 0, GB_TAKEOFF_COUNT, 0, 0, 0),
         *skin = add_part (desk.boat, 0, GB_TAKEOFF_SKIN, 0, 0, 0);
  GbHull *hull = add_block (desk.boat, 2, 1, 0.5);

  sheet->material = rail->material = tube->material = block->material = paint->material = skin->material
      = ply;
  glass->material = cloth;
  sheet->outline = g_strdup ("0 0, 1 0, 1 0.5");
  sheet->thickness = rail->thickness = skin->thickness = 0.01;
  rail->length = tube->length = 2;
  rail->width = 0.02;
  tube->section = GB_SECTION_TUBE;
  tube->diameter = 0.05;
  tube->wall = 0.002;
  block->volume = 0.02;
  paint->area = glass->area = 3;
  paint->coats = 2;
  paint->coverage = 10000;
  glass->coating = GB_COATING_CLOTH;
  bolts->unit_mass = 0.05;
  bolts->quantity = 12;
  set_name (&hull->name, "Shell");
  hull->x = hull->y = hull->z = 0;
  skin->hull = hull->rec.id;
  skin->extent = GB_EXTENT_BELOW;
  skin->height = 0.1;
  find (&desk);
  assert_says (gb_working_mass (desk.boat, desk.findings, sheet->rec.id),
               "Area of the outline, less its holes", "0.25 m²", NULL);
  assert_says (gb_working_mass (desk.boat, desk.findings, rail->rec.id), "20 mm × 10 mm = 0.0002 m²",
               "2000 mm × 0.0002 m² × 450 kg/m³ = 0.18 kg", NULL);
  assert_says (gb_working_mass (desk.boat, desk.findings, tube->rec.id),
               "π × (50 mm − 2 mm) × 2 mm = 0.000302 m²", NULL);
  assert_says (gb_working_mass (desk.boat, desk.findings, block->rec.id), "20 l × 450 kg/m³ = 9 kg", NULL);
  assert_says (gb_working_mass (desk.boat, desk.findings, paint->rec.id),
               "3 m² × 2 ÷ 10 m²/l × 450 kg/m³ = 0.27 kg", NULL);
  assert_says (gb_working_mass (desk.boat, desk.findings, glass->rec.id), "3 m² × 1 × 200 g/m² = 0.6 kg",
               "0.6 kg + 0.6 kg = 1.2 kg", NULL);
  assert_says (gb_working_mass (desk.boat, desk.findings, bolts->rec.id), "Mass of one piece",
               "50 g × 12 = 0.6 kg", NULL);
  assert_says (gb_working_mass (desk.boat, desk.findings, skin->rec.id), "Surface of Shell below 100 mm",
               "2.6 m²", NULL);
}

static void
test_mass_of_a_coated_group (void)
{
  g_auto (Desk) desk = new_desk ();
  GbMaterial *ply = add_ply (&desk);
  GbPart *group = add_group (desk.boat, 0, 0, 0, 0),
         *oil = add_part (desk.boat, 0, GB_TAKEOFF_COATING, 0, 0, 0);

  set_name (&group->name, "Deck");
  add_box (desk.boat, group->rec.id, ply, 1, 1, 1)->quantity = 2;
  oil->material = add_material (desk.boat, GB_MEASURE_AREAL, 0.05)->rec.id;
  oil->surface_of = group->rec.id;
  find (&desk);
  assert_says (gb_working_mass (desk.boat, desk.findings, oil->rec.id), "Surfaces of Deck",
               "12 m² × 1 × 50 g/m² = 0.6 kg", NULL);
  assert_says (gb_working_centre (desk.boat, desk.findings, oil->rec.id), "A coating lies on what it coats",
               NULL);
}

static void
test_mass_by_a_scale (void)
{
  g_auto (Desk) desk = new_desk ();
  GbPart *group = add_group (desk.boat, 0, 0, 0, 0);
  GbPart *part = add_lump (desk.boat, group->rec.id, 2, 0, 0, 0);
  GbWeighing *weighing = add_weighing (desk.boat, group->rec.id, 739000, GB_ON_SCALE_ONE);

  group->quantity = 2;
  add_reading (desk.boat, weighing, 2, 0, NAN);
  add_reading (desk.boat, weighing, 1.5, 1, NAN);
  weighing->tare = 0.5;
  find (&desk);
  assert_says (gb_working_mass (desk.boat, desk.findings, group->rec.id), "The scale says, on 2024-04-24",
               "2 kg + 1.5 kg − 0.5 kg = 3 kg", "3 kg × 2 = 6 kg", "stands instead of what was listed",
               "4 kg", NULL);
  assert_says (gb_working_mass (desk.boat, desk.findings, part->rec.id), "Its share of what the scale says",
               "2 kg × 150 % = 3 kg", NULL);
  assert_says (gb_working_centre (desk.boat, desk.findings, group->rec.id), "The supports say", NULL);
}

static void
test_what_is_missing_is_said (void)
{
  g_auto (Desk) desk = new_desk ();
  GbPart *part = add_part (desk.boat, 0, GB_TAKEOFF_BLOCK, 0, 0, 0);

  find (&desk);
  assert_says (gb_working_mass (desk.boat, desk.findings, part->rec.id),
               gb_trouble_sentence (GB_TROUBLE_NO_SIZE), NULL);
  assert_says (gb_working_mass (desk.boat, desk.findings, 0), "1 part without a mass is not in it", NULL);
  assert_says (gb_working_centre (desk.boat, desk.findings, 0), "1 part without a mass is left out", NULL);
  assert_says (gb_working_limit (desk.boat, desk.findings), "No hull has a shape yet", NULL);
  assert_says (gb_working_mass (desk.boat, desk.findings, 4711), "no longer there", NULL);
  assert_says (gb_working_centre (desk.boat, desk.findings, 4711), "no longer there", NULL);
  assert_says (gb_working_material (desk.boat, 4711), "no longer there", NULL);
}

static void
test_margin (void)
{
  g_auto (Desk) desk = new_desk ();

  add_lump (desk.boat, 0, 10, 0, 0, 0);
  ((GbBuild *) gb_boat_get (desk.boat, GB_RECORD_BUILD, 1))->margin_mass = 2;
  find (&desk);
  assert_says (gb_working_mass (desk.boat, desk.findings, 0), "10 kg × 15 % = 1.5 kg", "Margin, fixed",
               "10 kg + 3.5 kg = 13.5 kg", NULL);
}

static const char *
cell (const GbWorking *working, guint row, guint column)
{
  return ((char **) working->rows->pdata[row])[column];
}

static void
test_moment_table (void)
{
  g_auto (Desk) desk = new_desk ();
  g_autoptr (GbWorking) working = NULL;

  set_name (&add_lump (desk.boat, 0, 10, 1, 0.5, -0.1)->name, "Aft");
  add_lump (desk.boat, 0, 30, 3, 0, 0.3);
  add_lump (desk.boat, 0, 99, NAN, 0, 0);
  find (&desk);
  working = gb_working_centre (desk.boat, desk.findings, 0);
  g_assert_cmpuint (working->columns->len, ==, 8);
  g_assert_cmpstr (working->columns->pdata[1], ==, "Mass, kg");
  g_assert_cmpstr (working->columns->pdata[3], ==, "Moment, kg m");
  g_assert_cmpuint (working->rows->len, ==, 4);
  g_assert_cmpstr (cell (working, 0, 0), ==, "Aft");
  g_assert_cmpstr (cell (working, 0, 5), ==, "5.00");
  g_assert_cmpstr (cell (working, 2, 2), ==, "–");
  g_assert_cmpstr (cell (working, 3, 1), ==, "40.000");
  g_assert_cmpstr (cell (working, 3, 2), ==, "2.500");
  g_assert_cmpstr (cell (working, 3, 3), ==, "100.00");
  g_assert_cmpstr (cell (working, 3, 7), ==, "8.00");
  assert_says (g_steal_pointer (&working), "x: 100.00 kg m ÷ 40.000 kg = 2500 mm",
               "1 part without a place is left out", "99 kg", NULL);
}

static void
test_the_way_out_through_the_groups (void)
{
  g_auto (Desk) desk = new_desk ();
  GbPart *outer = add_group (desk.boat, 0, 1, 0, 0), *inner = add_group (desk.boat, outer->rec.id, 0, 0, 0.5);
  GbPart *part = add_lump (desk.boat, inner->rec.id, 1, 0.3, 0.2, 0);

  set_name (&outer->name, "Rig");
  set_name (&inner->name, "Boom");
  outer->turn_z = G_PI_2;
  part->pair = 1;
  find (&desk);
  assert_says (gb_working_centre (desk.boat, desk.findings, part->rec.id), "as entered, in the axes of Boom",
               "x 300 mm, y 200 mm, z 0 mm", "Shifted by the origin of Boom, into the axes of Rig",
               "x 300 mm, y 0 mm, z 500 mm",
               "Turned with Rig, and shifted by its origin, into the axes of the boat",
               "x 1000 mm, y 300 mm, z 500 mm", NULL);
}

static void
test_limit (void)
{
  g_auto (Desk) desk = new_desk ();
  GbHull *hull = add_block (desk.boat, 2, 1, 0.4);
  g_autoptr (GbWorking) working = NULL;

  hull->x = hull->y = hull->z = 0;
  add_lump (desk.boat, 0, 100, 1, 0, 0.2);
  find (&desk);
  working = gb_working_limit (desk.boat, desk.findings);
  g_assert_cmpstr (working->caution, ==, gb_caution_afloat ());
  g_assert_cmpuint (working->rows->len, ==, 10);
  g_assert_cmpstr (cell (working, 9, 2), ==, "500.00");
  assert_says (g_steal_pointer (&working), "EOS-80", "400 mm − 150 mm = 250 mm", "500 l × 999 kg/m³ = 500 kg",
               "100 kg + 15 kg + 0 kg = 115 kg", "500 kg − 115 kg = 385 kg", "standard deviations: 0 %",
               "freeboard", gb_caution_afloat (), NULL);
  hull->height = 0.18;
  find (&desk);
  assert_says (gb_working_limit (desk.boat, desk.findings), "180 mm − 150 mm = 30 mm",
               "60 l × 999 kg/m³ = 59.9 kg", NULL);
}

static void
test_money (void)
{
  g_auto (Desk) desk = new_desk ();
  GbPurchase *purchase = add_record (desk.boat, GB_RECORD_PURCHASE, 0);
  GbLine *line = add_record (desk.boat, GB_RECORD_LINE, purchase->rec.id);
  GbPart *kit = add_group (desk.boat, 0, 0, 0, 0);
  g_autoptr (GbWorking) working = NULL;

  set_name (&((GbBuild *) gb_boat_get (desk.boat, GB_RECORD_BUILD, 1))->currency, "EUR");
  purchase->supplier = g_strdup ("The yard");
  purchase->date = 739000;
  line->kind = GB_LINE_TOOLS;
  line->what = g_strdup ("Clamps");
  line->price = 1990;
  line->quantity = 2;
  set_name (&kit->name, "Sail kit");
  kit->price = 10000;
  add_lump (desk.boat, kit->rec.id, 1, 0, 0, 0);
  add_lump (desk.boat, kit->rec.id, 1, 0, 0, 0)->price = 500;
  find (&desk);
  working = gb_working_money (desk.boat, desk.findings);
  g_assert_cmpuint (working->rows->len, ==, 7);
  g_assert_cmpstr (cell (working, 0, 1), ==, "The yard, 2024-04-24");
  g_assert_nonnull (strstr (cell (working, 1, 3), "39.80"));
  g_assert_cmpstr (cell (working, 2, 0), ==, "Sail kit");
  g_assert_nonnull (strstr (cell (working, 2, 3), "100.00"));
  g_assert_nonnull (strstr (cell (working, 3, 3), "5.00"));
  g_assert_nonnull (strstr (cell (working, 6, 3), "144.80"));
}

static void
test_material (void)
{
  g_auto (Desk) desk = new_desk ();
  GbMaterial *wood = add_material (desk.boat, GB_MEASURE_WOOD, NAN), *ply = add_ply (&desk);
  GbSample *sample = add_record (desk.boat, GB_RECORD_SAMPLE, ply->rec.id);

  wood->basic_gravity = 0.37;
  wood->moisture = 0.12;
  sample->mass = 9.8;
  sample->length = 2.44;
  sample->width = 1.22;
  sample->thickness = 0.006;
  find (&desk);
  assert_says (gb_working_material (desk.boat, wood->rec.id), "(30 % − 12 %) ÷ 30 % = 0.6",
               "0.37 ÷ (1 − 0.265 × 0.6 × 0.37) = 0.3931", "393 kg/m³ × 112 % = 440 kg/m³", NULL);
  assert_says (gb_working_material (desk.boat, ply->rec.id), "As given", "450 kg/m³", "A table",
               "Samples on the scale", "2440 mm × 1220 mm × 6 mm", "549 kg/m³", NULL);
}

/* Every working of a whole build can be written down, and its totals are what was found. */
static void
test_of_everything (void)
{
  g_auto (Desk) desk = { generate_boat (800, 6), gb_findings_new () };
  const GPtrArray *parts;

  find (&desk);
  parts = gb_boat_all (desk.boat, GB_RECORD_PART);
  for (guint i = 0; i <= parts->len; i++)
    {
      gint64 id = i < parts->len ? ((const GbRecord *) parts->pdata[i])->id : 0;
      g_autoptr (GbWorking) mass = gb_working_mass (desk.boat, desk.findings, id);
      g_autoptr (GbWorking) centre = gb_working_centre (desk.boat, desk.findings, id);
      g_autofree char *a = gb_working_to_text (mass), *b = gb_working_to_text (centre);

      g_assert_true (g_utf8_validate (a, -1, NULL));
      g_assert_true (g_utf8_validate (b, -1, NULL));
      g_assert_cmpuint (mass->steps->len, >, 0);
      g_assert_cmpuint (centre->steps->len, >, 0);
    }
  for (guint i = 0; i < gb_boat_n (desk.boat, GB_RECORD_MATERIAL); i++)
    gb_working_free (gb_working_material (
        desk.boat, ((const GbRecord *) gb_boat_all (desk.boat, GB_RECORD_MATERIAL)->pdata[i])->id));
  gb_working_free (gb_working_limit (desk.boat, desk.findings));
  gb_working_free (gb_working_money (desk.boat, desk.findings));
}

static void
test_cautions (void)
{
  g_assert_nonnull (strstr (gb_caution_afloat (), "buoyancy aid"));
  g_assert_nonnull (strstr (gb_caution_afloat (), "qualified person"));
  g_assert_nonnull (strstr (gb_caution_lifting (), "qualified person"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/working/sheet", test_mass_of_a_sheet);
  g_test_add_func ("/working/every-take-off", test_mass_by_every_take_off);
  g_test_add_func ("/working/coated-group", test_mass_of_a_coated_group);
  g_test_add_func ("/working/scale", test_mass_by_a_scale);
  g_test_add_func ("/working/missing", test_what_is_missing_is_said);
  g_test_add_func ("/working/margin", test_margin);
  g_test_add_func ("/working/moment-table", test_moment_table);
  g_test_add_func ("/working/way-out", test_the_way_out_through_the_groups);
  g_test_add_func ("/working/limit", test_limit);
  g_test_add_func ("/working/money", test_money);
  g_test_add_func ("/working/material", test_material);
  g_test_add_func ("/working/everything", test_of_everything);
  g_test_add_func ("/working/cautions", test_cautions);
  return g_test_run ();
}
