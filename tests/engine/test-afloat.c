/* SPDX-License-Identifier: GPL-3.0-or-later */

/* How she floats in a condition: box boats against closed forms, free surfaces, pulls, limits. */

#include "afloat-fixture.h"

/* Exact for a box: KB = d/2, BM = B2/(12 d), BM long = L2/(12 d). */
static void
test_box_upright (void)
{
  g_auto (Craft) craft = new_craft (1000, 1000, 2, 0.3);
  const GbAfloat *afloat = &craft.afloat;

  add_block (craft.boat, 4, 1, 0.5);
  craft_find (&craft, 0);
  g_assert_cmpint (afloat->state, ==, GB_AFLOAT_FLOATS);
  g_assert_null (afloat->sentence);
  g_assert_cmpuint (afloat->troubles->len, ==, 0);
  assert_near (afloat->heel, 0, 1e-12);
  assert_near (afloat->trim, 0, 1e-12);
  assert_near (afloat->draught_fore, 0.25, 1e-12);
  assert_near (afloat->draught_mid, 0.25, 1e-12);
  assert_near (afloat->draught_aft, 0.25, 1e-12);
  assert_near (afloat->fore_x, 4, 1e-12);
  assert_near (afloat->aft_x, 0, 1e-12);
  assert_near (afloat->least.freeboard, 0.25, 1e-12);
  assert_near (afloat->volume, 1, 1e-12);
  assert_near (afloat->waterplane, 4, 1e-12);
  assert_near (afloat->per_cm, 40, 1e-10);
  assert_near (afloat->buoyancy.x, 2, 1e-10);
  assert_near (afloat->flotation.x, 2, 1e-10);
  assert_near (afloat->kb, 0.125, 1e-10);
  assert_near (afloat->bm, 1 / (12 * 0.25), 1e-10);
  assert_near (afloat->bm_long, 16 / (12 * 0.25), 1e-9);
  assert_near (afloat->kg, 0.3, 1e-10);
  assert_near (afloat->gm, 0.125 + 1.0 / 3 - 0.3, 1e-9);
  assert_near (afloat->gm_long, 0.125 + 16.0 / 3 - 0.3, 1e-9);
  /* MCT 1 cm = W GM long / (100 L); a degree takes W GM sin 1. */
  assert_near (afloat->trim_moment, 1000 * (0.125 + 16.0 / 3 - 0.3) / 400, 1e-8);
  assert_near (afloat->heel_moment, 1000 * (0.125 + 1.0 / 3 - 0.3) * sin (DEGREE), 1e-8);
  assert_near (afloat->most, 2000, 1e-9);
  assert_near (afloat->reserve, 1, 1e-10);
  assert_near (afloat->limit, 1600, 1e-9);
  assert_near (afloat->left, 600, 1e-9);
  assert_near (afloat->room, 600, 1e-9);
  assert_near (afloat->room_at.x, 2, 1e-9);
  assert_near (afloat->room_at.y, 0, 1e-9);
  assert_near (afloat->chance, 0, 1e-12);
}

/* Box 65 x 12 x 8 m in salt water at 4 m, KG 4 m: W 3198 t, KB 2, BM 3, GM 1 m. Derrett and Barrass, Ship
 * Stability for Masters and Mates, 5th ed. (1999), p. 130. */
static void
test_box_of_the_handbook (void)
{
  g_auto (Craft) craft = new_craft (1025, 3198000, 32.5, 4);

  add_block (craft.boat, 65, 12, 8);
  craft_find (&craft, 0);
  assert_near (craft.afloat.draught_mid, 4, 1e-9);
  assert_near (craft.afloat.kb, 2, 1e-9);
  assert_near (craft.afloat.bm, 3, 1e-9);
  assert_near (craft.afloat.gm, 1, 1e-9);
}

/* Exact: a wall-sided box with a weight w moved by a forward trims by tan = w a / (W GM long), where for a box at large
 * angles w a / W = GM long tan + BM long tan3 / 2, sharing GZ = sin (GM + BM tan2 / 2) with heel. */
static void
test_trim_by_a_moved_weight (void)
{
  g_auto (Craft) craft = new_craft (1000, 900, 2, 0.25);
  gint64 condition = craft_condition (&craft);
  GbLoad *load = craft_load (&craft, condition, GB_LOAD_GEAR, 100, (GbVec3){ 2, 0, 0.25 });
  const GbAfloat *afloat = &craft.afloat;
  double tangent, bm = 16.0 / 3;

  add_block (craft.boat, 4, 1, 0.5);
  craft_find (&craft, condition);
  assert_near (afloat->trim, 0, 1e-12);
  load->x = 3;
  craft_find (&craft, condition);
  tangent = tan (afloat->trim);
  assert_near (tangent * (0.125 + bm - 0.25) + bm * pow (tangent, 3) / 2, 0.1, 1e-10);
  g_assert_cmpfloat (afloat->trim, >, 0);
  assert_near (afloat->draught_fore - afloat->draught_aft, 4 * tangent, 1e-10);
  assert_near (afloat->draught_mid, 0.25, 1e-10);
  assert_near (afloat->draught_fore, 0.25 + 2 * tangent, 1e-10);
  assert_near (afloat->least.freeboard, (0.25 - 2 * tangent) * cos (afloat->trim), 1e-10);
  /* What the moment to change trim foretells, to the first order. */
  assert_near (100 * tangent * 4, 100 / afloat->trim_moment, 0.05);
}

static void
test_list_by_a_moved_weight (void)
{
  g_auto (Craft) craft = new_craft (1000, 950, 2, 0.2);
  gint64 condition = craft_condition (&craft);
  const GbAfloat *afloat = &craft.afloat;
  double tangent;

  craft_load (&craft, condition, GB_LOAD_PERSON, 50, (GbVec3){ 2, -0.4, 0.2 });
  add_block (craft.boat, 4, 1, 0.5);
  craft_find (&craft, condition);
  tangent = tan (afloat->heel);
  g_assert_cmpfloat (tangent, >, 0);
  assert_near (tangent * (0.125 + 1.0 / 3 - 0.2) + tangent * tangent * tangent / 6, 0.02, 1e-10);
  assert_near (afloat->trim, 0, 1e-10);
  /* The lower corner of the edge is at starboard, half a metre out. */
  assert_near (afloat->least.freeboard, (0.25 - 0.5 * tangent) * cos (afloat->heel), 1e-10);
  assert_near (afloat->least.at.y, -0.5, 1e-12);
}

/* Exact: KG so high that GM < 0 gives loll, tan = sqrt (-2 GM / BM). */
static void
test_loll (void)
{
  g_auto (Craft) craft = new_craft (1000, 1000, 2, 0.5);

  add_block (craft.boat, 4, 1, 0.8)->edge = GB_EDGE_CLOSED;
  craft_find (&craft, 0);
  assert_near (fabs (tan (craft.afloat.heel)), sqrt (2 * (0.5 - 0.125 - 1.0 / 3) * 3), 1e-9);
}

/* Loss of GM = l b3 / 12 x density / W, as all handbooks have it. */
static void
test_free_surface (void)
{
  g_auto (Craft) craft = new_craft (1000, 900, 2, 0.2);
  gint64 condition = craft_condition (&craft);
  GbLoad *water = craft_load (&craft, condition, GB_LOAD_WATER, 50, (GbVec3){ 2, 0, 0.2 });
  double frozen;

  add_block (craft.boat, 4, 1, 0.5);
  water->quantity = 2;
  craft_find (&craft, condition);
  assert_near (craft.afloat.free_surface, 0, 0);
  frozen = craft.afloat.gm;

  /* Half full, so that its centre lies a quarter of its height lower. */
  water->tank_length = 0.5;
  water->tank_width = 0.5;
  water->tank_height = 0.4;
  craft_find (&craft, condition);
  assert_near (craft.afloat.total, 1000, 1e-12);
  assert_near (craft.afloat.free_surface, 2 * 1000 * 0.5 * 0.125 / 12 / 1000, 1e-10);
  assert_near (craft.afloat.gravity.z, 0.9 * 0.2 + 0.1 * 0.1, 1e-10);
  assert_near (craft.afloat.gm, frozen + 0.01 - craft.afloat.free_surface, 1e-9);

  /* Full: it cannot run. */
  water->mass = 100;
  water->quantity = 1;
  craft_find (&craft, condition);
  assert_near (craft.afloat.free_surface, 0, 0);
  /* Half as dense takes twice the room. */
  water->mass = 25;
  water->liquid_density = 500;
  craft_find (&craft, condition);
  assert_near (craft.afloat.free_surface, 500 * 0.5 * 0.125 / 12 / 925, 1e-10);
}

/* A level pull heels her about the middle of her draught; a push down is weight. */
static void
test_pulls (void)
{
  g_auto (Craft) craft = new_craft (1000, 1000, 2, 0.2);
  gint64 condition = craft_condition (&craft);
  GbLoad *pull = craft_load (&craft, condition, GB_LOAD_PULL, 20, (GbVec3){ 2, 0, 1.125 });
  GbAfloat *afloat = &craft.afloat;
  double tangent;

  add_block (craft.boat, 4, 1, 0.5);
  pull->dip = 0;
  pull->bearing = -G_PI / 2;
  craft_find (&craft, condition);
  assert_near (afloat->total, 1000, 1e-9);
  g_assert_cmpfloat (afloat->heel, >, 0);
  /* 20 kg on an arm of 1 m that shrinks with the cosine, against W GZ of the wall-sided box. */
  tangent = tan (afloat->heel);
  assert_near (1000 * sin (afloat->heel) * (0.125 + 1.0 / 3 - 0.2 + tangent * tangent / 6), 20 * cos (afloat->heel), 1e-6);

  pull->dip = G_PI / 2;
  pull->y = -0.3;
  craft_find (&craft, condition);
  assert_near (afloat->total, 1020, 1e-9);
  g_assert_cmpuint (gb_case_floater (craft.self)->pulls->len, ==, 0);
  g_assert_cmpfloat (afloat->heel, >, 0);

  /* A rope from above lifts. */
  pull->dip = -G_PI / 2;
  craft_find (&craft, condition);
  assert_near (afloat->total, 980, 1e-9);
  g_assert_cmpfloat (afloat->heel, <, 0);
  pull->mass = 1500;
  craft_find (&craft, condition);
  g_assert_cmpint (afloat->state, ==, GB_AFLOAT_UNKNOWN);
  assert_says (afloat->sentence, "lift more");
}

/* What may still come aboard lies where it brings her level. */
static void
test_room (void)
{
  g_auto (Craft) craft = new_craft (1000, 200, 2, 0.2);
  gint64 condition = craft_condition (&craft);
  GbLoad *load = craft_load (&craft, condition, GB_LOAD_PERSON, 80, (GbVec3){ 3, -0.2, 0.4 });
  GbVec3 at;

  add_block (craft.boat, 4, 1, 0.5);
  craft_find (&craft, condition);
  at = craft.afloat.room_at;
  assert_near (craft.afloat.room, 1600 - 280, 1e-9);
  craft_load (&craft, condition, GB_LOAD_BALLAST, craft.afloat.room, (GbVec3){ at.x, at.y, 0.1 });
  craft_find (&craft, condition);
  assert_near (craft.afloat.heel, 0, 1e-9);
  assert_near (craft.afloat.trim, 0, 1e-9);
  assert_near (craft.afloat.least.freeboard, 0.1, 1e-9);
  g_assert_true (isnan (craft.afloat.room_at.x));

  /* Too far out for anything aboard to bring her level. */
  load->x = 3.9;
  load->mass = 1000;
  ((GbLoad *) gb_boat_all (craft.boat, GB_RECORD_LOAD)->pdata[1])->mass = 1e-3;
  craft_find (&craft, condition);
  g_assert_cmpfloat (craft.afloat.room, >, 0);
  g_assert_true (isnan (craft.afloat.room_at.x));
}

/* A low opening sets limit and brim; a coaming on a decked hull stands higher than the deck. */
static void
test_limit_by_openings (void)
{
  g_auto (Craft) craft = new_craft (1000, 200, 2, 0.2);
  GbHull *hull = add_block (craft.boat, 4, 1, 0.5);
  GbOpening *slot = add_record (craft.boat, GB_RECORD_OPENING, hull->rec.id);
  GbCorner *corner = add_record (craft.boat, GB_RECORD_CORNER, slot->rec.id);

  corner->x = 2;
  corner->y = 0;
  corner->z = 0.3;
  craft_find (&craft, 0);
  assert_near (craft.afloat.limit, 800, 1e-9);
  assert_near (craft.afloat.most, 1200, 1e-9);
  g_assert_cmpint (craft.afloat.least.line, ==, 1);
  hull->edge = GB_EDGE_CLOSED;
  corner->z = 0.55;
  craft_find (&craft, 0);
  assert_near (craft.afloat.limit, 1800, 1e-9);
  assert_near (craft.afloat.most, 2000, 1e-9);
}

/* Floats without an edge carry her on when the open hull between them is full. */
static void
test_tight_hulls_carry_on (void)
{
  g_auto (Craft) craft = new_craft (1000, 900, 2, 0.1);
  GbHull *floats = add_block (craft.boat, 4, 0.5, 0.5);

  floats->pair = TRUE;
  floats->y = 1;
  floats->edge = GB_EDGE_CLOSED;
  add_block (craft.boat, 4, 0.5, 0.1);
  craft_find (&craft, 0);
  assert_near (craft.afloat.most, 2000, 1e-9);
  g_assert_cmpint (craft.afloat.state, ==, GB_AFLOAT_FILLS);
  craft.rollup.boat.mass = 2100;
  craft_find (&craft, 0);
  g_assert_cmpint (craft.afloat.state, ==, GB_AFLOAT_SINKS);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/afloat/box-upright", test_box_upright);
  g_test_add_func ("/afloat/box-of-the-handbook", test_box_of_the_handbook);
  g_test_add_func ("/afloat/trim-by-a-moved-weight", test_trim_by_a_moved_weight);
  g_test_add_func ("/afloat/list-by-a-moved-weight", test_list_by_a_moved_weight);
  g_test_add_func ("/afloat/loll", test_loll);
  g_test_add_func ("/afloat/free-surface", test_free_surface);
  g_test_add_func ("/afloat/pulls", test_pulls);
  g_test_add_func ("/afloat/room", test_room);
  g_test_add_func ("/afloat/limit-by-openings", test_limit_by_openings);
  g_test_add_func ("/afloat/tight-hulls-carry-on", test_tight_hulls_carry_on);
  return g_test_run ();
}
