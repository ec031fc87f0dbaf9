/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Each take-off against figures worked by hand, which stand beside it; and what is missing, told as trouble.
 */

#include "engine/takeoff.h"
#include "parts-fixture.h"

typedef struct
{
  GbBoat *boat;
  GbHullSet hulls;
  GbBook *book;
} Bench;

static void
bench_clear (Bench *bench)
{
  gb_boat_free (bench->boat);
  gb_hull_set_clear (&bench->hulls);
  gb_book_free (bench->book);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Bench, bench_clear)

static Bench
new_bench (void)
{
  return (Bench){ .boat = gb_boat_new (), .book = gb_book_new () };
}

static GbTakenOff
take_off_on (Bench *bench, const GbPart *part, double coated)
{
  GbTakenOff taken;

  gb_boat_settle (bench->boat);
  gb_hull_set_find (&bench->hulls, bench->boat);
  gb_book_open (bench->book, bench->boat, &bench->hulls);
  gb_take_off (bench->book, part, coated, &taken);
  return taken;
}

static GbTakenOff
take_off (Bench *bench, const GbPart *part)
{
  return take_off_on (bench, part, NAN);
}

static GbPart *
new_part_of (Bench *bench, GbTakeoff takeoff, GbMeasure measure, double figure)
{
  GbPart *part = add_part (bench->boat, 0, takeoff, 0, 0, 0);

  part->material = add_material (bench->boat, measure, figure)->rec.id;
  return part;
}

static void
test_sheet_by_its_sides (void)
{
  g_auto (Bench) bench = new_bench ();
  GbPart *part = new_part_of (&bench, GB_TAKEOFF_SHEET, GB_MEASURE_DENSITY, 500);
  GbTakenOff taken;

  part->length = 1.2;
  part->width = 0.5;
  part->thickness = 0.006;
  taken = take_off (&bench, part);
  g_assert_cmpint (taken.trouble, ==, GB_TROUBLE_NONE);
  assert_near (taken.amount, 0.6, 1e-15);
  assert_near (taken.mass, 1.8, 1e-14);       /* 0.6 x 0.006 x 500 */
  assert_near (taken.surface, 1.2204, 1e-14); /* 2 x 0.6 + 2 x 1.7 x 0.006 */
  assert_near (taken.extent.xx, 0.12, 1e-15); /* 1.44 / 12 */
  assert_near (taken.extent.yy, 0.25 / 12, 1e-15);
}

static void
test_sheet_by_its_outline (void)
{
  g_auto (Bench) bench = new_bench ();
  GbPart *part = new_part_of (&bench, GB_TAKEOFF_SHEET, GB_MEASURE_DENSITY, 600);
  GbTakenOff taken;

  /* A trapezium 1.2 x (0.4 + 0.3)/2 = 0.42 less a triangle 0.1 x 0.1/2 = 0.005. */
  part->outline = g_strdup ("0 0, 1.2 0, 1.2 0.4, 0 0.3; 0.2 0.1, 0.3 0.1, 0.25 0.2");
  part->thickness = 0.004;
  part->area = 99; /* what is drawn goes before what is given */
  taken = take_off (&bench, part);
  g_assert_cmpint (taken.trouble, ==, GB_TROUBLE_NONE);
  assert_near (taken.amount, 0.415, 1e-12);
  assert_near (taken.mass, 0.996, 1e-12);

  g_free (part->outline);
  part->outline = g_strdup ("0 0, 1 0, 1 0.5, 0 0.5");
  taken = take_off (&bench, part);
  assert_near (taken.surface, 1 + 3 * 0.004, 1e-12);
  assert_near (taken.extent.xx, 1.0 / 12, 1e-12);
  assert_near (taken.extent.yy, 0.25 / 12, 1e-12);
  assert_near (taken.extent.xy, 0, 1e-12);

  g_free (part->outline);
  part->outline = g_strdup ("0 0, 1 1, 1 0, 0 1");
  g_assert_cmpint (take_off (&bench, part).trouble, ==, GB_TROUBLE_BAD_OUTLINE);
}

static void
test_sheet_by_area_and_by_areal_mass (void)
{
  g_auto (Bench) bench = new_bench ();
  GbPart *part = new_part_of (&bench, GB_TAKEOFF_SHEET, GB_MEASURE_DENSITY, 450);
  GbPart *cloth = new_part_of (&bench, GB_TAKEOFF_SHEET, GB_MEASURE_AREAL, 0.3);

  part->area = 0.71;
  part->thickness = 0.006;
  assert_near (take_off (&bench, part).mass, 1.917, 1e-14); /* 0.71 x 0.006 x 450 */
  assert_near (take_off (&bench, part).surface, 1.42, 1e-14);

  cloth->length = 2.5;
  cloth->width = 2;
  assert_near (take_off (&bench, cloth).mass, 1.5, 1e-14);
  g_assert_cmpint (take_off (&bench, cloth).by, ==, GB_BY_AREAL);
}

static void
test_lengths (void)
{
  g_auto (Bench) bench = new_bench ();
  GbPart *gunwale = new_part_of (&bench, GB_TAKEOFF_LENGTH, GB_MEASURE_DENSITY, 400);
  GbPart *mast = new_part_of (&bench, GB_TAKEOFF_LENGTH, GB_MEASURE_DENSITY, 500);
  GbPart *tube = new_part_of (&bench, GB_TAKEOFF_LENGTH, GB_MEASURE_DENSITY, 2700);
  GbPart *rope = new_part_of (&bench, GB_TAKEOFF_LENGTH, GB_MEASURE_LINEAR, 0.05);
  GbPart *track = add_part (bench.boat, 0, GB_TAKEOFF_LENGTH, 0, 0, 0);

  gunwale->length = 2.35;
  gunwale->width = 0.025;
  gunwale->thickness = 0.018;
  assert_near (take_off (&bench, gunwale).mass, 0.423, 1e-14);    /* 2.35 x 0.025 x 0.018 x 400 */
  assert_near (take_off (&bench, gunwale).surface, 0.203, 1e-14); /* 2 x 0.043 x 2.35 + 2 x 0.00045 */

  mast->length = 3;
  mast->section = GB_SECTION_ROUND;
  mast->diameter = 0.04;
  assert_near (take_off (&bench, mast).mass, G_PI * 0.0016 / 4 * 3 * 500, 1e-13);

  tube->length = 2;
  tube->section = GB_SECTION_TUBE;
  tube->diameter = 0.038;
  tube->wall = 0.002;
  /* pi/4 (38^2 - 34^2) mm2 = 226.195 mm2 */
  assert_near (take_off (&bench, tube).mass, G_PI / 4 * (0.038 * 0.038 - 0.034 * 0.034) * 2 * 2700, 1e-13);
  tube->wall = 0.02;
  g_assert_cmpint (take_off (&bench, tube).trouble, ==, GB_TROUBLE_BAD_SIZE);

  rope->length = 12;
  assert_near (take_off (&bench, rope).mass, 0.6, 1e-14);
  rope->section = GB_SECTION_LINEAR;
  assert_near (take_off (&bench, rope).mass, 0.6, 1e-14);

  track->length = 1.5;
  track->section = GB_SECTION_LINEAR;
  track->linear_mass = 0.4;
  assert_near (take_off (&bench, track).mass, 0.6, 1e-14);
  g_assert_cmpuint (take_off (&bench, track).material, ==, GB_NO_MATERIAL);
}

static void
test_blocks (void)
{
  g_auto (Bench) bench = new_bench ();
  GbPart *part = new_part_of (&bench, GB_TAKEOFF_BLOCK, GB_MEASURE_DENSITY, 30);

  part->length = 0.5;
  part->width = 0.4;
  part->thickness = 0.1;
  assert_near (take_off (&bench, part).mass, 0.6, 1e-14);
  assert_near (take_off (&bench, part).surface, 0.58, 1e-14); /* 2 (0.2 + 0.04 + 0.05) */
  part->volume = 0.1;
  assert_near (take_off (&bench, part).mass, 3, 1e-14);
  g_assert_true (isnan (take_off (&bench, part).surface));
}

static void
test_skins (void)
{
  g_auto (Bench) bench = new_bench ();
  GbPart *part = new_part_of (&bench, GB_TAKEOFF_SKIN, GB_MEASURE_DENSITY, 500);
  GbHull *hull = add_block (bench.boat, 2, 1, 0.5);
  GbTakenOff taken;

  hull->edge = GB_EDGE_CLOSED;
  hull->x = 3;
  hull->y = hull->z = 0;
  part->hull = hull->rec.id;
  part->thickness = 0.004;
  taken = take_off (&bench, part);
  assert_near (taken.amount, 7, 1e-12); /* 2 (2 + 1 + 0.5) */
  assert_near (taken.mass, 14, 1e-12);  /* 7 x 0.004 x 500 */
  assert_near (taken.centre[0], 4, 1e-12);
  assert_near (taken.centre[2], 0.25, 1e-12);

  part->extent = GB_EXTENT_BELOW;
  g_assert_cmpint (take_off (&bench, part).trouble, ==, GB_TROUBLE_NO_SIZE);
  part->height = 0.1;
  assert_near (take_off (&bench, part).amount, 2.6, 1e-12); /* 2 + 6 x 0.1 */
  part->extent = GB_EXTENT_ABOVE;
  assert_near (take_off (&bench, part).amount, 4.4, 1e-12);

  /* An open hull has no skin over its opening. */
  part->extent = GB_EXTENT_ALL;
  hull->edge = GB_EDGE_OPEN;
  assert_near (take_off (&bench, part).amount, 5, 1e-12);

  part->thickness = NAN;
  part->areal_mass = 1.2;
  assert_near (take_off (&bench, part).mass, 6, 1e-12);
}

static void
test_skin_of_a_pair_is_both (void)
{
  g_auto (Bench) bench = new_bench ();
  GbPart *part = new_part_of (&bench, GB_TAKEOFF_SKIN, GB_MEASURE_AREAL, 2);
  GbHull *hull = add_block (bench.boat, 2, 0.4, 0.5);
  GbTakenOff taken;

  hull->edge = GB_EDGE_CLOSED;
  hull->pair = 1;
  hull->x = hull->z = 0;
  hull->y = 1;
  part->hull = hull->rec.id;
  taken = take_off (&bench, part);
  assert_near (taken.amount, 2 * 2 * (0.8 + 0.2 + 1), 1e-12);
  assert_near (taken.mass, 16, 1e-12);
  assert_near (taken.centre[1], 0, 1e-12);
  g_assert_cmpfloat (taken.extent.yy, >, 1); /* they lie a metre out on either side */
}

static void
test_coatings (void)
{
  g_auto (Bench) bench = new_bench ();
  GbPart *paint = new_part_of (&bench, GB_TAKEOFF_COATING, GB_MEASURE_DENSITY, 1200);
  GbPart *oil = new_part_of (&bench, GB_TAKEOFF_COATING, GB_MEASURE_AREAL, 0.05);
  GbPart *cloth = new_part_of (&bench, GB_TAKEOFF_COATING, GB_MEASURE_AREAL, 0.2);
  const GbMaterial *resin = add_material (bench.boat, GB_MEASURE_DENSITY, 1150);
  GbTakenOff taken;

  paint->area = 4;
  paint->coats = 2;
  paint->coverage = 10000;                                  /* 10 m2 a litre */
  assert_near (take_off (&bench, paint).mass, 0.96, 1e-14); /* 4 x 2 / 10000 x 1200 */

  oil->surface_of = paint->rec.id;
  oil->coats = 3;
  assert_near (take_off_on (&bench, oil, 2).mass, 0.3, 1e-14);
  g_assert_cmpint (take_off (&bench, oil).trouble, ==, GB_TROUBLE_NO_SURFACE);

  cloth->coating = GB_COATING_CLOTH;
  cloth->area = 3;
  cloth->coats = 2;
  cloth->resin = resin->rec.id;
  cloth->resin_ratio = 1.5;
  taken = take_off (&bench, cloth);
  assert_near (taken.mass, 3, 1e-14);         /* 3 x 2 x 0.2 x 2.5 */
  assert_near (taken.resin_mass, 1.8, 1e-14); /* 3 x 2 x 0.2 x 1.5 */
  g_assert_cmpuint (taken.resin, ==, resin->rec.index);
}

static void
test_pieces_and_lumps (void)
{
  g_auto (Bench) bench = new_bench ();
  GbPart *bolt = add_part (bench.boat, 0, GB_TAKEOFF_COUNT, 0, 0, 0);
  GbPart *engine = add_lump (bench.boat, 0, 12, 0, 0, 0);
  GbStock *box = add_record (bench.boat, GB_RECORD_STOCK, 0);

  g_assert_cmpint (take_off (&bench, bolt).trouble, ==, GB_TROUBLE_NO_MASS);
  box->form = GB_FORM_PIECE;
  box->mass = 0.03;
  bolt->stock = box->rec.id;
  assert_near (take_off (&bench, bolt).mass, 0.03, 0);
  bolt->unit_mass = 0.05;
  assert_near (take_off (&bench, bolt).mass, 0.05, 0);
  assert_near (take_off (&bench, engine).mass, 12, 0);
  engine->mass = NAN;
  g_assert_cmpint (take_off (&bench, engine).trouble, ==, GB_TROUBLE_NO_MASS);
  engine->mass = -1;
  g_assert_cmpint (take_off (&bench, engine).trouble, ==, GB_TROUBLE_BAD_SIZE);
}

static void
test_stock_gives_material_thickness_and_section (void)
{
  g_auto (Bench) bench = new_bench ();
  const GbMaterial *wood = add_material (bench.boat, GB_MEASURE_DENSITY, 400);
  GbStock *sheet = add_record (bench.boat, GB_RECORD_STOCK, 0);
  GbStock *batten = add_record (bench.boat, GB_RECORD_STOCK, 0);
  GbPart *panel = add_part (bench.boat, 0, GB_TAKEOFF_SHEET, 0, 0, 0);
  GbPart *rail = add_part (bench.boat, 0, GB_TAKEOFF_LENGTH, 0, 0, 0);

  sheet->material = batten->material = wood->rec.id;
  sheet->length = 2.44;
  sheet->width = 1.22;
  sheet->thickness = 0.005;
  panel->stock = sheet->rec.id;
  panel->length = 2;
  panel->width = 0.5;
  assert_near (take_off (&bench, panel).mass, 2, 1e-14); /* 1 x 0.005 x 400 */

  batten->form = GB_FORM_LENGTH;
  batten->section = GB_SECTION_ROUND;
  batten->diameter = 0.02;
  batten->length = 4;
  rail->stock = batten->rec.id;
  rail->length = 1;
  assert_near (take_off (&bench, rail).mass, G_PI * 1e-4 * 400, 1e-14);
}

static void
test_troubles (void)
{
  g_auto (Bench) bench = new_bench ();
  GbPart *part = add_part (bench.boat, 0, GB_TAKEOFF_SHEET, 0, 0, 0);
  const GbMaterial *rope = add_material (bench.boat, GB_MEASURE_LINEAR, 0.1);
  const GbMaterial *bare = add_material (bench.boat, GB_MEASURE_DENSITY, NAN);

  g_assert_cmpint (take_off (&bench, part).trouble, ==, GB_TROUBLE_NO_SIZE);
  part->length = part->width = 1;
  part->thickness = 0.01;
  g_assert_cmpint (take_off (&bench, part).trouble, ==, GB_TROUBLE_NO_MATERIAL);
  assert_near (take_off (&bench, part).amount, 1, 0); /* how much there is of it is known all the same */
  part->material = rope->rec.id;
  g_assert_cmpint (take_off (&bench, part).trouble, ==, GB_TROUBLE_NO_DENSITY);
  part->material = bare->rec.id;
  g_assert_cmpint (take_off (&bench, part).trouble, ==, GB_TROUBLE_NO_DENSITY);
  part->length = 0;
  g_assert_cmpint (take_off (&bench, part).trouble, ==, GB_TROUBLE_BAD_SIZE);
  g_assert_true (isnan (take_off (&bench, part).mass));

  part->takeoff = GB_TAKEOFF_SKIN;
  g_assert_cmpint (take_off (&bench, part).trouble, ==, GB_TROUBLE_NO_HULL);
  part->hull = add_hull (bench.boat, GB_HULL_STATIONS)->rec.id;
  g_assert_cmpint (take_off (&bench, part).trouble, ==, GB_TROUBLE_BAD_HULL);

  for (int t = GB_TROUBLE_NONE + 1; t <= GB_TROUBLE_NO_MASS; t++)
    g_assert_cmpstr (gb_trouble_sentence (t), !=, "");
  g_assert_cmpstr (gb_trouble_sentence (GB_TROUBLE_NONE), ==, "");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/takeoff/sheet-by-its-sides", test_sheet_by_its_sides);
  g_test_add_func ("/takeoff/sheet-by-its-outline", test_sheet_by_its_outline);
  g_test_add_func ("/takeoff/sheet-by-area-and-by-areal-mass", test_sheet_by_area_and_by_areal_mass);
  g_test_add_func ("/takeoff/lengths", test_lengths);
  g_test_add_func ("/takeoff/blocks", test_blocks);
  g_test_add_func ("/takeoff/skins", test_skins);
  g_test_add_func ("/takeoff/skin-of-a-pair-is-both", test_skin_of_a_pair_is_both);
  g_test_add_func ("/takeoff/coatings", test_coatings);
  g_test_add_func ("/takeoff/pieces-and-lumps", test_pieces_and_lumps);
  g_test_add_func ("/takeoff/stock-gives-material-thickness-and-section",
                   test_stock_gives_material_thickness_and_section);
  g_test_add_func ("/takeoff/troubles", test_troubles);
  return g_test_run ();
}
