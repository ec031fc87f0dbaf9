/* SPDX-License-Identifier: GPL-3.0-or-later */

/* How she floats in a condition: box boats against closed forms, states with their sentences, loads of all kinds. */

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

/* States -------------------------------------------------------------------------------------------------- */

static void
test_sinks (void)
{
  g_auto (Craft) craft = new_craft (1000, 212, 2, 0.3);
  GbAfloat *afloat = &craft.afloat;

  /* A hull that carries 180 kg, and 212 kg. */
  add_block (craft.boat, 1.8, 0.5, 0.2);
  craft_find (&craft, 0);
  g_assert_cmpint (afloat->state, ==, GB_AFLOAT_SINKS);
  assert_says (afloat->sentence, "She sinks: 212 kg aboard, 180 kg floats her.");
  g_assert_true (isnan (afloat->heel) && isnan (afloat->draught_mid) && isnan (afloat->gm));
  assert_near (afloat->room, 0, 0);
  craft_build (&craft)->units = GB_UNITS_FEET;
  craft_find (&craft, 0);
  assert_says (afloat->sentence, "lb aboard");
}

static void
test_fills (void)
{
  g_auto (Craft) craft = new_craft (1000, 1000, 2, 0.2);
  gint64 condition = craft_condition (&craft);
  GbHull *hull = add_block (craft.boat, 4, 1, 0.5);

  hull->name = g_strdup ("Punt");
  craft_load (&craft, condition, GB_LOAD_GEAR, 400, (GbVec3){ 3.8, 0, 0.2 });
  craft_find (&craft, condition);
  g_assert_cmpint (craft.afloat.state, ==, GB_AFLOAT_FILLS);
  assert_says (craft.afloat.sentence, "She fills: the edge of “Punt” is ");
  g_assert_cmpfloat (craft.afloat.least.freeboard, <, 0);
  g_assert_false (isnan (craft.afloat.gm));
}

static void
test_over (void)
{
  g_auto (Craft) craft = new_craft (1000, 1000, 2, 0.2);
  gint64 condition = craft_condition (&craft);

  add_block (craft.boat, 4, 1, 0.5)->edge = GB_EDGE_CLOSED;
  craft_load (&craft, condition, GB_LOAD_GEAR, 100, (GbVec3){ 2, -0.2, 5 });
  craft_find (&craft, condition);
  g_assert_cmpint (craft.afloat.state, ==, GB_AFLOAT_OVER);
  assert_says (craft.afloat.sentence, "She has gone over");
  g_assert_cmpfloat (fabs (craft.afloat.heel), >, G_PI / 2);
}

static void
test_unknown (void)
{
  g_auto (Craft) craft = new_craft (1000, 100, 2, 0.2);
  GbAfloat *afloat = &craft.afloat;

  craft_find (&craft, 0);
  g_assert_cmpint (afloat->state, ==, GB_AFLOAT_UNKNOWN);
  assert_says (afloat->sentence, "no hull");
  g_assert_true (isnan (afloat->most) && isnan (afloat->limit) && isnan (afloat->room) && isnan (afloat->chance));

  add_block (craft.boat, 4, 1, 0.5);
  craft_build (&craft)->water_density = NAN;
  craft_find (&craft, 0);
  assert_says (afloat->sentence, "density");
  craft_build (&craft)->water_density = 1000;

  craft.rollup.boat.x = NAN;
  craft_find (&craft, 0);
  assert_says (afloat->sentence, "centre of gravity");
  assert_near (afloat->total, 100, 0);
  assert_near (afloat->left, 1500, 1e-9);
  craft.rollup.boat.mass = NAN;
  craft_find (&craft, 0);
  assert_says (afloat->sentence, "Nothing of the boat has a mass");
  g_assert_true (isnan (afloat->total));

  g_assert_null (gb_case_new (craft.boat, &craft.hulls, &craft.edges, &craft.rollup, &craft.flotation, 999999));
}

/* Loads --------------------------------------------------------------------------------------------------- */

static void
test_odd_loads (void)
{
  g_auto (Craft) craft = new_craft (1000, 100, 2, 0.2);
  gint64 condition = craft_condition (&craft);
  GbAfloat *afloat = &craft.afloat;
  GbLoad *load;

  add_block (craft.boat, 4, 2, 0.5);
  craft_load (&craft, condition, GB_LOAD_GEAR, NAN, (GbVec3){ 2, 0, 0.1 });
  load = craft_load (&craft, condition, GB_LOAD_GEAR, 50, (GbVec3){ NAN, 0, 0.1 });
  craft_load (&craft, condition, GB_LOAD_GEAR, 1, (GbVec3){ 7, 0, 0.1 });
  craft_load (&craft, condition, GB_LOAD_PERSON, 0.5, (GbVec3){ 2, 0, 0.1 });
  craft_find (&craft, condition);
  g_assert_cmpuint (afloat->troubles->len, ==, 4);
  assert_says (afloat->troubles->pdata[0], "no mass");
  assert_says (afloat->troubles->pdata[1], "no place");
  assert_says (afloat->troubles->pdata[2], "outside the boat");
  assert_says (afloat->troubles->pdata[3], "a person of");
  g_assert_cmpuint (afloat->n_no_mass, ==, 1);
  g_assert_cmpuint (afloat->n_no_place, ==, 1);
  g_assert_cmpint (afloat->state, ==, GB_AFLOAT_FLOATS);
  assert_near (afloat->total, 151.5, 1e-12);
  assert_near (afloat->load_mass, 51.5, 1e-12);
  assert_near (afloat->volume, 0.1515, 1e-10);

  load->kind = GB_LOAD_PERSON;
  load->mass = 5000;
  craft_find (&craft, condition);
  assert_says (afloat->troubles->pdata[1], "a person of 5000 kg");
  g_assert_cmpint (afloat->state, ==, GB_AFLOAT_SINKS);
}

/* Moving it in the case is as entering it there. */
static void
assert_moves (GbLoad *load, Craft *craft, gint64 condition)
{
  GbVec3 to = { 1.4, 0.1, 0.3 };
  double heel, trim;

  craft_find (craft, condition);
  g_assert_true (gb_case_move (craft->self, load->rec.id, to));
  assert_near (gb_case_load_centre (craft->self, load->rec.id).x, to.x, 0);
  gb_afloat_find (&craft->afloat, craft->self, &craft->afloat.attitude);
  heel = craft->afloat.heel;
  trim = craft->afloat.trim;
  load->x = to.x;
  load->y = to.y;
  load->z = to.z;
  craft_find (craft, condition);
  assert_near (craft->afloat.heel, heel, 1e-10);
  assert_near (craft->afloat.trim, trim, 1e-10);
  g_assert_cmpuint (craft->afloat.n_no_place, ==, 0);
}

static void
test_moving_loads (void)
{
  g_auto (Craft) craft = new_craft (1000, 200, 2, 0.2);
  gint64 condition = craft_condition (&craft);
  GbLoad *person = craft_load (&craft, condition, GB_LOAD_PERSON, 80, (GbVec3){ 2, 0, 0.4 });
  GbLoad *unplaced = craft_load (&craft, condition, GB_LOAD_GEAR, 20, (GbVec3){ NAN, NAN, NAN });
  GbLoad *tank = craft_load (&craft, condition, GB_LOAD_WATER, 20, (GbVec3){ 1, 0, 0.2 });
  GbLoad *pull = craft_load (&craft, condition, GB_LOAD_PULL, 10, (GbVec3){ 1, 0, 0.5 });

  add_block (craft.boat, 4, 1, 0.5);
  tank->tank_length = tank->tank_width = tank->tank_height = 0.4;
  pull->dip = 0.3;
  pull->bearing = 2;
  assert_moves (unplaced, &craft, condition);
  assert_moves (person, &craft, condition);
  assert_moves (tank, &craft, condition);
  assert_moves (pull, &craft, condition);
  g_assert_false (gb_case_move (craft.self, 999999, (GbVec3){ 0, 0, 0 }));
  g_assert_false (gb_case_move (craft.self, person->rec.id, (GbVec3){ NAN, 0, 0 }));
  g_assert_true (isnan (gb_case_load_centre (craft.self, 999999).x));
}

/* What is done to a copy leaves the case as it is. */
static void
test_copies (void)
{
  g_auto (Craft) craft = new_craft (1000, 200, 2, 0.2);
  gint64 condition = craft_condition (&craft);
  GbLoad *load = craft_load (&craft, condition, GB_LOAD_PERSON, 80, (GbVec3){ 2, 0, 0.4 });
  g_autoptr (GbCase) copy = NULL;
  g_auto (GbAfloat) afloat = { 0 };

  add_block (craft.boat, 4, 1, 0.5);
  ((GbCondition *) gb_boat_get (craft.boat, GB_RECORD_CONDITION, condition))->heeling_moment = 12;
  craft_find (&craft, condition);
  copy = gb_case_copy (craft.self);
  gb_case_move (copy, load->rec.id, (GbVec3){ 3, 0, 0.4 });
  gb_afloat_find (&afloat, craft.self, NULL);
  assert_near (afloat.trim, 0, 1e-12);
  craft_find (&craft, 0);
  gb_afloat_find (&afloat, copy, NULL);
  g_assert_cmpfloat (afloat.trim, >, 0);
  g_assert_cmpint (gb_case_condition (copy), ==, condition);
  assert_near (gb_case_heeling_moment (copy), 12, 0);
  assert_near (gb_case_freeboard (copy), 0.1, 0);
  g_assert_cmpuint (gb_case_edges (copy)->lines->len, ==, 1);
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

/* Whatever is entered, it ends with a state that says why, or with figures. */
static double
any_number (void)
{
  static const double odd[] = { NAN, 0, -1, 1e-9, 1e6, -1e6, 1e300, INFINITY, -INFINITY };
  guint i = (guint) g_test_rand_int_range (0, 3 * G_N_ELEMENTS (odd));

  return i < G_N_ELEMENTS (odd) ? odd[i] : g_test_rand_double_range (0, 5);
}

static void
add_any_load (Craft *craft, gint64 condition)
{
  GbVec3 at = { any_number (), any_number (), any_number () };
  GbLoad *load = craft_load (craft, condition, g_test_rand_int_range (0, GB_LOAD_OTHER + 1), 10 * any_number (), at);

  load->quantity = any_number ();
  load->spread = any_number ();
  load->posture = g_test_rand_int_range (0, 3);
  load->above = any_number ();
  load->tank_length = any_number ();
  load->tank_width = any_number ();
  load->tank_height = any_number ();
  load->liquid_density = g_test_rand_bit () ? NAN : any_number ();
  load->dip = any_number ();
  load->bearing = any_number ();
}

static void
test_absurd_input (void)
{
  for (guint round = 0; round < 400; round++)
    {
      g_auto (Craft) craft = new_craft (1000, 100, 2, 0.2);
      gint64 condition = craft_condition (&craft);
      GbHull *hull = add_block (craft.boat, 4, 1, 0.5);
      gint64 load;

      if (g_test_rand_int_range (0, 4) == 0)
        craft_build (&craft)->water_density = any_number ();
      if (g_test_rand_int_range (0, 4) == 0)
        craft_build (&craft)->freeboard = any_number ();
      if (g_test_rand_int_range (0, 4) == 0)
        craft.rollup.boat = (GbMass){ .mass = any_number (), .x = any_number (), .y = any_number (), .z = any_number () };
      if (g_test_rand_int_range (0, 4) == 0)
        hull->height = any_number ();
      hull->edge = g_test_rand_int_range (0, 2);
      for (guint i = 0; i < 2; i++)
        add_any_load (&craft, condition);
      craft_find (&craft, condition);
      load = ((GbRecord *) gb_boat_all (craft.boat, GB_RECORD_LOAD)->pdata[0])->id;
      gb_case_move (craft.self, load, (GbVec3){ any_number (), any_number (), any_number () });
      gb_afloat_find (&craft.afloat, craft.self, NULL);
      g_assert_true ((craft.afloat.sentence == NULL) == (craft.afloat.state == GB_AFLOAT_FLOATS));
      if (craft.afloat.state == GB_AFLOAT_FLOATS)
        g_assert_true (isfinite (craft.afloat.heel + craft.afloat.trim + craft.afloat.volume + craft.afloat.gm));
    }
}

/* Words and order ----------------------------------------------------------------------------------------- */

static void
assert_text (double trim, double heel, const char *expected)
{
  GbAfloat afloat = { .trim = trim * DEGREE, .heel = heel * DEGREE };
  g_autofree char *text = gb_afloat_attitude_text (&afloat);

  g_assert_cmpstr (text, ==, expected);
}

static void
test_attitude_text (void)
{
  GbAfloat sunk = { .trim = NAN, .heel = NAN, .sentence = (char *) "She sinks." };
  g_autofree char *text = gb_afloat_attitude_text (&sunk);

  g_assert_cmpstr (text, ==, "She sinks.");
  assert_text (1.2, 3, "1.2° by the bow, 3.0° to starboard");
  assert_text (-1.25, -0.06, "1.2° by the stern, 0.1° to port");
  assert_text (0.049, -0.049, "level, upright");
  assert_text (0, 90, "level, 90.0° to starboard");
}

static void
test_which_is_worse (void)
{
  GbAfloat unknown = { .state = GB_AFLOAT_UNKNOWN, .least = { NAN, { 0, 0, 0 }, -1 }, .left = NAN };
  GbAfloat dry = { .state = GB_AFLOAT_FLOATS, .least = { 0.3, { 0, 0, 0 }, 0 }, .left = 10 };
  GbAfloat wetter = { .state = GB_AFLOAT_FLOATS, .least = { 0.2, { 0, 0, 0 }, 0 }, .left = 20 };
  GbAfloat raft = { .state = GB_AFLOAT_FLOATS, .least = { NAN, { 0, 0, 0 }, -1 }, .left = 5 };
  GbAfloat fuller = { .state = GB_AFLOAT_FLOATS, .least = { NAN, { 0, 0, 0 }, -1 }, .left = 4 };
  GbAfloat fills = { .state = GB_AFLOAT_FILLS, .least = { -0.1, { 0, 0, 0 }, 0 }, .left = 1 };
  GbAfloat over = { .state = GB_AFLOAT_OVER, .least = { -0.05, { 0, 0, 0 }, 0 }, .left = 1 };
  GbAfloat sinks = { .state = GB_AFLOAT_SINKS, .least = { NAN, { 0, 0, 0 }, -1 }, .left = -3 };
  const GbAfloat *order[] = { &unknown, &raft, &fuller, &dry, &wetter, &fills, &over, &sinks };

  for (guint i = 0; i < G_N_ELEMENTS (order); i++)
    for (guint j = 0; j < G_N_ELEMENTS (order); j++)
      g_assert_cmpint (gb_afloat_is_worse (order[i], order[j]), ==, i > j);
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
  g_test_add_func ("/afloat/sinks", test_sinks);
  g_test_add_func ("/afloat/fills", test_fills);
  g_test_add_func ("/afloat/over", test_over);
  g_test_add_func ("/afloat/unknown", test_unknown);
  g_test_add_func ("/afloat/odd-loads", test_odd_loads);
  g_test_add_func ("/afloat/moving-loads", test_moving_loads);
  g_test_add_func ("/afloat/copies", test_copies);
  g_test_add_func ("/afloat/room", test_room);
  g_test_add_func ("/afloat/limit-by-openings", test_limit_by_openings);
  g_test_add_func ("/afloat/tight-hulls-carry-on", test_tight_hulls_carry_on);
  g_test_add_func ("/afloat/absurd-input", test_absurd_input);
  g_test_add_func ("/afloat/attitude-text", test_attitude_text);
  g_test_add_func ("/afloat/which-is-worse", test_which_is_worse);
  return g_test_run ();
}
