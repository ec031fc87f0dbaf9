/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What stock gives to the parts that are cut from it, and what it leaves alone. */

#include "boat/part-size.h"

#include <math.h>

static GbStock *
add_stock (GbBoat *boat, GbForm form)
{
  GbStock *stock = (GbStock *) gb_record_new (GB_RECORD_STOCK);

  stock->rec.id = 1;
  stock->name = g_strdup ("stock");
  stock->form = form;
  stock->material = 7;
  stock->length = 2.5;
  stock->width = 1.25;
  stock->thickness = 0.006;
  return (GbStock *) gb_boat_take (boat, &stock->rec);
}

static GbPart *
add_part (GbBoat *boat, GbTakeoff takeoff)
{
  GbPart *part = (GbPart *) gb_record_new (GB_RECORD_PART);

  part->rec.id = 1;
  part->name = g_strdup ("part");
  part->takeoff = takeoff;
  part->stock = 1;
  return (GbPart *) gb_boat_take (boat, &part->rec);
}

static void
test_sheet_gives_material_and_thickness_alone (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbPart *part = add_part (boat, GB_TAKEOFF_SHEET);
  GbPartSize size;

  add_stock (boat, GB_FORM_SHEET);
  size = gb_part_size (boat, part);
  g_assert_cmpint (size.material, ==, 7);
  g_assert_cmpfloat (size.thickness, ==, 0.006);
  g_assert_true (isnan (size.length));
  g_assert_true (isnan (size.width));
}

static void
test_what_the_part_says_stands_first (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbPart *part = add_part (boat, GB_TAKEOFF_SHEET);
  GbPartSize size;

  add_stock (boat, GB_FORM_SHEET);
  part->material = 3;
  part->thickness = 0.005;
  size = gb_part_size (boat, part);
  g_assert_cmpint (size.material, ==, 3);
  g_assert_cmpfloat (size.thickness, ==, 0.005);
}

static void
test_length_takes_the_section_of_its_stock (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbPart *part = add_part (boat, GB_TAKEOFF_LENGTH);
  GbStock *stock = add_stock (boat, GB_FORM_LENGTH);
  GbPartSize size;

  stock->section = GB_SECTION_TUBE;
  stock->diameter = 0.05;
  stock->wall = 0.002;
  size = gb_part_size (boat, part);
  g_assert_cmpint (size.section, ==, GB_SECTION_TUBE);
  g_assert_cmpfloat (size.diameter, ==, 0.05);
  g_assert_cmpfloat (size.wall, ==, 0.002);
  g_assert_true (isnan (size.length));
}

static void
test_round_mast_from_a_square_length_stays_round (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbPart *part = add_part (boat, GB_TAKEOFF_LENGTH);
  GbPartSize size;

  add_stock (boat, GB_FORM_LENGTH);
  part->section = GB_SECTION_ROUND;
  part->diameter = 0.06;
  size = gb_part_size (boat, part);
  g_assert_cmpint (size.section, ==, GB_SECTION_ROUND);
  g_assert_true (isnan (size.width));
}

static void
test_count_takes_the_mass_of_a_piece (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbPart *part = add_part (boat, GB_TAKEOFF_COUNT);
  GbStock *stock = add_stock (boat, GB_FORM_PIECE);

  stock->mass = 0.12;
  g_assert_cmpfloat (gb_part_size (boat, part).unit_mass, ==, 0.12);
}

static void
test_skin_with_a_mass_per_area_takes_no_thickness (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbPart *part = add_part (boat, GB_TAKEOFF_SKIN);

  add_stock (boat, GB_FORM_SHEET);
  g_assert_cmpfloat (gb_part_size (boat, part).thickness, ==, 0.006);
  part->areal_mass = 2.5;
  g_assert_true (isnan (gb_part_size (boat, part).thickness));
}

static void
test_without_stock_nothing_changes (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbPart *part = add_part (boat, GB_TAKEOFF_SHEET);
  GbPartSize size = gb_part_size (boat, part);

  g_assert_cmpint (size.material, ==, 0);
  g_assert_true (isnan (size.thickness));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/part-size/sheet-gives-material-and-thickness-alone",
                   test_sheet_gives_material_and_thickness_alone);
  g_test_add_func ("/part-size/what-the-part-says-stands-first", test_what_the_part_says_stands_first);
  g_test_add_func ("/part-size/length-takes-the-section-of-its-stock",
                   test_length_takes_the_section_of_its_stock);
  g_test_add_func ("/part-size/round-mast-from-a-square-length-stays-round",
                   test_round_mast_from_a_square_length_stays_round);
  g_test_add_func ("/part-size/count-takes-the-mass-of-a-piece", test_count_takes_the_mass_of_a_piece);
  g_test_add_func ("/part-size/skin-with-a-mass-per-area-takes-no-thickness",
                   test_skin_with_a_mass_per_area_takes_no_thickness);
  g_test_add_func ("/part-size/without-stock-nothing-changes", test_without_stock_nothing_changes);
  return g_test_run ();
}
