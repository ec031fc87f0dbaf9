/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What is said of a condition: states with their sentences, loads that are odd, moved or absurd, words and order. */

#include "afloat-fixture.h"

/* States ------------------------------------------------------------------------------------------------ */

static void
test_sinks (void)
{
  g_auto (Craft) craft = new_craft (1000, 212, 2, 0.3);
  GbAfloat *afloat = &craft.afloat;

  /* A hull that carries 180 kg, and 212 kg. */
  add_block (craft.boat, 1.8, 0.5, 0.2);
  craft_find (&craft, 0);
  g_assert_cmpint (afloat->state, ==, GB_AFLOAT_SINKS);
  assert_says (afloat->sentence, "She sinks: 212 kg all up, 180 kg floats her.");
  g_assert_true (isnan (afloat->heel) && isnan (afloat->draught_mid) && isnan (afloat->gm));
  assert_near (afloat->room, 0, 0);
  craft_build (&craft)->units = GB_UNITS_FEET;
  craft_find (&craft, 0);
  assert_says (afloat->sentence, "lb all up");
}

/* An opening that is under water with nobody aboard is named, for it is what is wrong. */
static void
test_sinks_through_an_opening (void)
{
  g_auto (Craft) craft = new_craft (1000, 212, 2, 0.3);
  GbHull *hull = add_block (craft.boat, 4, 1, 0.5);
  GbOpening *slot = add_record (craft.boat, GB_RECORD_OPENING, hull->rec.id);
  GbCorner *corner = add_record (craft.boat, GB_RECORD_CORNER, slot->rec.id);

  hull->name = g_strdup ("Punt");
  slot->name = g_strdup ("daggerboard slot");
  corner->x = 2;
  corner->y = 0;
  corner->z = 0;
  craft_find (&craft, 0);
  g_assert_cmpint (craft.afloat.state, ==, GB_AFLOAT_SINKS);
  assert_says (craft.afloat.sentence, "daggerboard slot” is under water however light she is.");
  /* 4 m2 of 25 mm. */
  corner->z = 0.025;
  craft_find (&craft, 0);
  g_assert_cmpint (craft.afloat.state, ==, GB_AFLOAT_SINKS);
  assert_says (craft.afloat.sentence, "She sinks: 212 kg all up, and from 100 kg on “");
  assert_says (craft.afloat.sentence, "daggerboard slot” is under water.");
  corner->z = 0.3;
  craft_find (&craft, 0);
  g_assert_cmpint (craft.afloat.state, ==, GB_AFLOAT_FLOATS);
}

/* A tank of 0.4 m3 holds 400 kg of water of 1000 kg/m3. */
static void
test_overfull_tank (void)
{
  g_auto (Craft) craft = new_craft (1000, 100, 2, 0.2);
  gint64 condition = craft_condition (&craft);
  GbLoad *tank = craft_load (&craft, condition, GB_LOAD_WATER, 500, (GbVec3){ 2, 0, 0.2 });

  add_block (craft.boat, 4, 1, 0.5);
  tank->tank_length = 1;
  tank->tank_width = 1;
  tank->tank_height = 0.4;
  craft_find (&craft, condition);
  g_assert_cmpuint (craft.afloat.troubles->len, ==, 1);
  g_assert_cmpstr (craft.afloat.troubles->pdata[0], ==, "“load”: 500 kg is more than the tank holds, 400 kg.");
  tank->mass = 400;
  craft_find (&craft, condition);
  g_assert_cmpuint (craft.afloat.troubles->len, ==, 0);
  /* Of something heavier it holds more; of two each holds its own. */
  tank->mass = 500;
  tank->liquid_density = 1300;
  tank->quantity = 2;
  craft_find (&craft, condition);
  g_assert_cmpuint (craft.afloat.troubles->len, ==, 0);
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

/* Loads ------------------------------------------------------------------------------------------------- */

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

/* A mast is higher than a boat is long; nothing else is. */
static void
test_pull_at_the_masthead (void)
{
  g_auto (Craft) craft = new_craft (1000, 100, 2, 0.2);
  gint64 condition = craft_condition (&craft);
  GbLoad *load;

  add_block (craft.boat, 4, 2, 0.5);
  load = craft_load (&craft, condition, GB_LOAD_PULL, 5, (GbVec3){ 2, 0, 6 });
  load->dip = 0;
  craft_find (&craft, condition);
  g_assert_cmpuint (craft.afloat.troubles->len, ==, 0);
  load->z = 60;
  craft_find (&craft, condition);
  g_assert_cmpuint (craft.afloat.troubles->len, ==, 1);
  load->z = 6;
  load->kind = GB_LOAD_GEAR;
  craft_find (&craft, condition);
  g_assert_cmpuint (craft.afloat.troubles->len, ==, 1);
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

/* Words and order --------------------------------------------------------------------------------------- */

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
  g_test_add_func ("/afloat-states/sinks", test_sinks);
  g_test_add_func ("/afloat-states/sinks-through-an-opening", test_sinks_through_an_opening);
  g_test_add_func ("/afloat-states/overfull-tank", test_overfull_tank);
  g_test_add_func ("/afloat-states/fills", test_fills);
  g_test_add_func ("/afloat-states/over", test_over);
  g_test_add_func ("/afloat-states/unknown", test_unknown);
  g_test_add_func ("/afloat-states/odd-loads", test_odd_loads);
  g_test_add_func ("/afloat-states/pull-at-the-masthead", test_pull_at_the_masthead);
  g_test_add_func ("/afloat-states/moving-loads", test_moving_loads);
  g_test_add_func ("/afloat-states/copies", test_copies);
  g_test_add_func ("/afloat-states/absurd-input", test_absurd_input);
  g_test_add_func ("/afloat-states/attitude-text", test_attitude_text);
  g_test_add_func ("/afloat-states/which-is-worse", test_which_is_worse);
  return g_test_run ();
}
