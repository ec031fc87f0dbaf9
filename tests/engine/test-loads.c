/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Where a load's weight acts, and how much of it there is. */

#include "hull-fixture.h"

#include "engine/loads.h"

static GbLoad *
add_load (GbBoat *boat, GbLoadKind kind)
{
  GbCondition *condition = add_record (boat, GB_RECORD_CONDITION, 0);
  GbLoad *load = add_record (boat, GB_RECORD_LOAD, condition->rec.id);

  load->kind = kind;
  load->mass = 80;
  load->x = 1;
  load->y = -0.25;
  load->z = 0.5;
  return load;
}

static void
test_weight (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbLoad *load = add_load (boat, GB_LOAD_GEAR);

  assert_near (gb_load_weight (load), 80, 0);
  load->quantity = 2.5;
  assert_near (gb_load_weight (load), 200, 0);
  load->quantity = 0;
  assert_near (gb_load_weight (load), 0, 0);
  load->quantity = NAN;
  g_assert_true (isnan (gb_load_weight (load)));
  load->quantity = 1;
  load->mass = NAN;
  g_assert_true (isnan (gb_load_weight (load)));
  load->mass = -3;
  g_assert_true (isnan (gb_load_weight (load)));
  load->mass = INFINITY;
  g_assert_true (isnan (gb_load_weight (load)));
}

/* The part of a force straight down is its sine with the level: a half at 30 degrees. */
static void
test_weight_of_a_pull (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbLoad *pull = add_load (boat, GB_LOAD_PULL);

  assert_near (gb_load_weight (pull), 80, 0);
  pull->dip = G_PI / 6;
  assert_near (gb_load_weight (pull), 40, 1e-13);
  pull->dip = 0;
  assert_near (gb_load_weight (pull), 0, 0);
  pull->dip = -G_PI / 2;
  assert_near (gb_load_weight (pull), -80, 0);
  pull->dip = NAN;
  g_assert_true (isnan (gb_load_weight (pull)));
  /* What a rope does is a matter of pulls alone. */
  pull->kind = GB_LOAD_CARGO;
  assert_near (gb_load_weight (pull), 80, 0);
}

static void
test_centre_by_posture (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbLoad *person = add_load (boat, GB_LOAD_PERSON);

  assert_near (gb_load_centre (person).z, 0.5, 0);
  person->above = 0.3;
  assert_near (gb_load_centre (person).z, 0.5, 0);
  person->posture = GB_POSTURE_SITTING;
  assert_near (gb_load_centre (person).x, 1, 0);
  assert_near (gb_load_centre (person).y, -0.25, 0);
  assert_near (gb_load_centre (person).z, 0.8, 1e-15);
  person->above = NAN;
  assert_near (gb_load_centre (person).z, 0.75, 1e-15);
  person->posture = GB_POSTURE_STANDING;
  assert_near (gb_load_centre (person).z, 1.5, 1e-15);
  person->above = 0;
  assert_near (gb_load_centre (person).z, 0.5, 0);
  person->z = NAN;
  g_assert_true (isnan (gb_load_centre (person).z));
  /* A sack neither sits nor stands. */
  person->kind = GB_LOAD_GEAR;
  person->z = 0.5;
  person->above = 1;
  assert_near (gb_load_centre (person).z, 0.5, 0);
}

static void
test_tank (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbLoad *water = add_load (boat, GB_LOAD_WATER);

  g_assert_false (gb_load_has_tank (water));
  water->tank_length = water->tank_width = 0.4;
  g_assert_false (gb_load_has_tank (water));
  water->tank_height = 0.3;
  g_assert_true (gb_load_has_tank (water));
  water->tank_height = 0;
  g_assert_false (gb_load_has_tank (water));
  water->tank_height = INFINITY;
  g_assert_false (gb_load_has_tank (water));
  water->tank_height = 0.3;
  water->kind = GB_LOAD_CARGO;
  g_assert_false (gb_load_has_tank (water));
}

static void
test_spread (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbLoad *load = add_load (boat, GB_LOAD_PERSON);

  for (gint64 kind = GB_LOAD_PERSON; kind <= GB_LOAD_OTHER; kind++)
    {
      load->kind = kind;
      load->spread = NAN;
      g_assert_cmpfloat (gb_load_spread (load), >, 0);
      g_assert_cmpfloat (gb_load_spread (load), <=, 0.1);
      load->spread = 0;
      assert_near (gb_load_spread (load), 0, 0);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/loads/weight", test_weight);
  g_test_add_func ("/loads/weight-of-a-pull", test_weight_of_a_pull);
  g_test_add_func ("/loads/centre-by-posture", test_centre_by_posture);
  g_test_add_func ("/loads/tank", test_tank);
  g_test_add_func ("/loads/spread", test_spread);
  return g_test_run ();
}
