/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Each take-off in one line. */

#include "boat/part-text.h"

#include <math.h>

static GbPart *
add_part (GbBoat *boat, GbTakeoff takeoff)
{
  GbPart *part = (GbPart *) gb_record_new (GB_RECORD_PART);

  part->rec.id = 1;
  part->name = g_strdup ("part");
  part->takeoff = takeoff;
  return (GbPart *) gb_boat_take (boat, &part->rec);
}

static void
add_material (GbBoat *boat, GbMeasure measure)
{
  GbMaterial *material = (GbMaterial *) gb_record_new (GB_RECORD_MATERIAL);

  material->rec.id = 5;
  material->name = g_strdup ("material");
  material->measure = measure;
  gb_boat_take (boat, &material->rec);
}

static void
add_hull (GbBoat *boat)
{
  GbHull *hull = (GbHull *) gb_record_new (GB_RECORD_HULL);

  hull->rec.id = 2;
  hull->name = g_strdup ("Main hull");
  gb_boat_take (boat, &hull->rec);
}

static void
assert_text (const GbBoat *boat, const GbPart *part, const char *expected)
{
  g_autofree char *text = gb_part_amount_text (boat, part);

  g_assert_cmpstr (text, ==, expected);
}

static void
test_sheet (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbPart *part = add_part (boat, GB_TAKEOFF_SHEET);

  assert_text (boat, part, "1 × – × – × – mm");
  part->length = 2.1;
  part->width = 0.86;
  part->thickness = 0.006;
  assert_text (boat, part, "1 × 2100 × 860 × 6 mm");
  part->area = 0.71;
  assert_text (boat, part, "1 × 0.71 m² × 6 mm");
  part->pair = 1;
  assert_text (boat, part, "pair, 2 × 0.71 m² × 6 mm");
  /* A right-angled triangle of 2 m by 1 m. */
  gb_field_set_text (gb_field (GB_RECORD_PART, "outline"), &part->rec, "0 0, 2 0, 0 1");
  assert_text (boat, part, "pair, 2 × 1 m² × 6 mm");
}

static void
test_cloth_has_no_thickness (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbPart *part = add_part (boat, GB_TAKEOFF_SHEET);

  add_material (boat, GB_MEASURE_AREAL);
  part->material = 5;
  part->length = 3;
  part->width = 1;
  assert_text (boat, part, "1 × 3000 × 1000 mm");
  part->area = 2.5;
  assert_text (boat, part, "1 × 2.5 m²");
}

static void
test_length (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbPart *part = add_part (boat, GB_TAKEOFF_LENGTH);

  part->quantity = 2;
  part->length = 2.35;
  part->width = 0.025;
  part->thickness = 0.018;
  assert_text (boat, part, "2 × 2350 × 25 × 18 mm");
  part->section = GB_SECTION_ROUND;
  part->diameter = 0.04;
  assert_text (boat, part, "2 × 2350 × Ø 40 mm");
  part->section = GB_SECTION_TUBE;
  part->wall = 0.002;
  assert_text (boat, part, "2 × 2350 × Ø 40 × 2 mm");
  part->section = GB_SECTION_LINEAR;
  part->linear_mass = 0.085;
  assert_text (boat, part, "2 × 2350 mm × 85 g/m");
}

static void
test_rope_has_no_section (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbPart *part = add_part (boat, GB_TAKEOFF_LENGTH);

  add_material (boat, GB_MEASURE_LINEAR);
  part->material = 5;
  part->length = 6;
  assert_text (boat, part, "1 × 6000 mm");
  part->section = GB_SECTION_ROUND;
  assert_text (boat, part, "1 × 6000 mm");
  part->diameter = 0.008;
  assert_text (boat, part, "1 × 6000 × Ø 8 mm");
}

static void
test_block_and_lump (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbPart *part = add_part (boat, GB_TAKEOFF_BLOCK);

  part->length = part->width = part->thickness = 0.1;
  assert_text (boat, part, "1 × 100 × 100 × 100 mm");
  part->volume = 0.0125;
  assert_text (boat, part, "1 × 12.5 l");
  part->takeoff = GB_TAKEOFF_LUMP;
  part->mass = 3.4;
  assert_text (boat, part, "3.4 kg");
  part->quantity = 2;
  assert_text (boat, part, "2 × 3.4 kg");
  part->mass = NAN;
  assert_text (boat, part, "2 × –");
}

static void
test_skin (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbPart *part = add_part (boat, GB_TAKEOFF_SKIN);

  part->thickness = 0.006;
  assert_text (boat, part, "skin of – × 6 mm");
  add_hull (boat);
  part->hull = 2;
  assert_text (boat, part, "skin of Main hull × 6 mm");
  part->extent = GB_EXTENT_BELOW;
  part->height = 0.2;
  assert_text (boat, part, "skin of Main hull below 200 mm × 6 mm");
  part->extent = GB_EXTENT_ABOVE;
  part->thickness = NAN;
  part->areal_mass = 2.5;
  assert_text (boat, part, "skin of Main hull above 200 mm × 2500 g/m²");
}

static void
test_coating (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbPart *part = add_part (boat, GB_TAKEOFF_COATING);

  part->area = 3.2;
  assert_text (boat, part, "1 coat on 3.2 m²");
  part->coats = 3;
  assert_text (boat, part, "3 coats on 3.2 m²");
  part->area = NAN;
  part->surface_of = 1;
  part->coating = GB_COATING_CLOTH;
  part->coats = 1;
  assert_text (boat, part, "1 layer of cloth on part");
}

static void
test_count (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbPart *part = add_part (boat, GB_TAKEOFF_COUNT);

  assert_text (boat, part, "1 piece");
  part->quantity = 4;
  assert_text (boat, part, "4 pieces");
  part->pair = 1;
  assert_text (boat, part, "pair, 8 pieces");
}

static void
test_group (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbPart *part = add_part (boat, GB_TAKEOFF_SHEET);

  part->kind = GB_KIND_GROUP;
  assert_text (boat, part, "");
  part->quantity = 3;
  assert_text (boat, part, "3 off");
  part->quantity = 1;
  part->pair = 1;
  assert_text (boat, part, "pair, 2 off");
}

static void
test_feet (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbPart *part = add_part (boat, GB_TAKEOFF_LENGTH);

  ((GbBuild *) gb_boat_get (boat, GB_RECORD_BUILD, 1))->units = GB_UNITS_FEET;
  part->length = 92.5 * 0.0254;
  part->width = 0.0254;
  part->thickness = 0.75 * 0.0254;
  assert_text (boat, part, "1 × 92 1/2 × 1 × 3/4 in");
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/part-text/sheet", test_sheet);
  g_test_add_func ("/part-text/cloth-has-no-thickness", test_cloth_has_no_thickness);
  g_test_add_func ("/part-text/length", test_length);
  g_test_add_func ("/part-text/rope-has-no-section", test_rope_has_no_section);
  g_test_add_func ("/part-text/block-and-lump", test_block_and_lump);
  g_test_add_func ("/part-text/skin", test_skin);
  g_test_add_func ("/part-text/coating", test_coating);
  g_test_add_func ("/part-text/count", test_count);
  g_test_add_func ("/part-text/group", test_group);
  g_test_add_func ("/part-text/feet", test_feet);
  return g_test_run ();
}
