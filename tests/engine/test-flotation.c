/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Level flotation: draught for a mass, the limit, several hulls, loads, and the chance of passing the limit.
 */

#include "hull-fixture.h"

#include "engine/flotation.h"

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (GbHullSet, gb_hull_set_clear)
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (GbFlotation, gb_flotation_clear)

/* A boat in water of 1000 kg/m3 with the least freeboard given. */
static GbBoat *
new_boat (double freeboard)
{
  GbBoat *boat = gb_boat_new ();
  GbBuild *build = (GbBuild *)gb_boat_get (boat, GB_RECORD_BUILD, 1);

  build->water = GB_WATER_GIVEN;
  build->water_density = 1000;
  build->freeboard = freeboard;
  return boat;
}

static GbBuild *
build_of (GbBoat *boat)
{
  return (GbBuild *)gb_boat_get (boat, GB_RECORD_BUILD, 1);
}

static GbLoad *
add_load (GbBoat *boat, gint64 condition, GbLoadKind kind, double quantity, double mass)
{
  GbLoad *load = add_record (boat, GB_RECORD_LOAD, condition);

  load->kind = kind;
  load->quantity = quantity;
  load->mass = mass;
  return load;
}

/* A light craft as the roll-up would give it. */
static GbRollup
light_craft (double mass, double sd, double margin)
{
  return (GbRollup){
    .boat = { .mass = mass, .mass_sd = sd, .x = 2, .y = 0, .z = 0.3 },
    .margin = { .total = margin },
  };
}

static void
find (GbFlotation *flotation, GbHullSet *hulls, GbBoat *boat, GbRollup rollup)
{
  GbEdgeSet edges = { 0 };

  find_hulls (hulls, boat);
  gb_edge_set_find (&edges, boat, hulls);
  gb_flotation_find (flotation, boat, hulls, &edges, &rollup);
  gb_edge_set_clear (&edges);
}

static void
test_box (void)
{
  g_autoptr (GbBoat) boat = new_boat (0.15);
  g_auto (GbHullSet) hulls = { NULL, 0 };
  g_auto (GbFlotation) flotation = { 0 };
  GbHull *hull = add_block (boat, 4, 1, 0.5);
  GbHydrostatics at;

  hull->x = 1;
  hull->z = 0.1;
  find (&flotation, &hulls, boat, light_craft (100, 5, 10));

  g_assert_cmpuint (flotation.n_hulls, ==, 1);
  g_assert_cmpuint (flotation.n_bad_hulls, ==, 0);
  assert_near (flotation.keel, 0.1, 1e-15);
  assert_near (flotation.lowest_edge, 0.6, 1e-15);
  assert_near (flotation.brim, 2000, 1e-9);

  at = gb_hydrostatics_at (&hulls, 1000, 0.3);
  assert_near (at.draught, 0.2, 1e-15);
  assert_near (at.volume, 0.8, 1e-14);
  assert_near (at.displacement, 800, 1e-11);
  assert_near (at.waterplane, 4, 1e-14);
  assert_near (at.per_cm, 40, 1e-12);
  assert_near (at.lcb, 3, 1e-14);
  assert_near (at.tcb, 0, 1e-14);
  assert_near (at.vcb, 0.2, 1e-14);
  assert_near (at.lcf, 3, 1e-14);
  assert_near (at.freeboard, 0.3, 1e-14);

  assert_near (flotation.limit.z, 0.45, 1e-15);
  assert_near (flotation.limit.freeboard, 0.15, 1e-15);
  assert_near (flotation.limit.displacement, 1400, 1e-9);
  assert_near (flotation.total, 110, 1e-12);
  assert_near (flotation.left, 1290, 1e-9);
  assert_near (flotation.afloat.draught, 0.0275, 1e-12);
  assert_near (flotation.afloat.displacement, 110, 1e-9);
  g_assert_false (flotation.sinks);

  /* The curve runs evenly from keel to edge, where the deck is awash. */
  g_assert_cmpuint (flotation.n_curve, ==, 41);
  assert_near (flotation.curve[0].displacement, 0, 0);
  g_assert_true (isnan (flotation.curve[0].vcb));
  assert_near (flotation.curve[10].draught, 0.125, 1e-14);
  assert_near (flotation.curve[10].displacement, 500, 1e-9);
  assert_near (flotation.curve[40].displacement, 2000, 1e-9);
  assert_near (flotation.curve[40].waterplane, 4, 1e-12);
  assert_near (flotation.curve[40].freeboard, 0, 1e-15);
}

static void
test_water_for_a_mass (void)
{
  g_autoptr (GbBoat) boat = new_boat (0.15);
  g_auto (GbHullSet) hulls = { NULL, 0 };
  /* Flat steps, where the waterplane jumps, make Newton's method overshoot. */
  GbHull *low = add_block (boat, 2, 1, 0.2), *high = add_block (boat, 6, 2, 0.1);
  GbHull *v = add_hull (boat, GB_HULL_STATIONS);

  low->edge = high->edge = GB_EDGE_CLOSED;
  high->z = 0.5;
  ADD_STATION (boat, v, 0, 0, 0, 0.3, 0.9);
  ADD_STATION (boat, v, 1, 0, 0.1, 0.2, 0.9);
  v->y = 5;
  find_hulls (&hulls, boat);
  for (double z = 0.001; z < 0.9; z += 0.0137)
    {
      GbHydrostatics at = gb_hydrostatics_at (&hulls, 1025, z);
      GbHydrostatics found = gb_hydrostatics_for (&hulls, 1025, at.displacement);

      assert_near (found.displacement, at.displacement, 1e-12 * at.displacement);
      assert_near (found.z, z, 1e-9);
      g_assert_cmpfloat (found.tcb, >, 0);
    }
  assert_near (gb_hydrostatics_for (&hulls, 1025, 0).z, 0, 0);
  assert_near (gb_hydrostatics_for (&hulls, 1025, gb_hydrostatics_at (&hulls, 1025, 0.9).displacement).z, 0.9,
               1e-9);
  g_assert_true (isnan (gb_hydrostatics_for (&hulls, 1025, 1e6).z));
  g_assert_true (isnan (gb_hydrostatics_for (&hulls, 1025, -1).z));
  g_assert_true (isnan (gb_hydrostatics_for (&hulls, 1025, NAN).volume));
  g_assert_true (isnan (gb_hydrostatics_for (&hulls, NAN, 100).z));
  g_assert_true (isnan (gb_hydrostatics_at (&hulls, 1025, NAN).volume));
}

static void
test_several_hulls_and_pairs (void)
{
  g_autoptr (GbBoat) boat = new_boat (0.1);
  g_auto (GbHullSet) hulls = { NULL, 0 };
  g_auto (GbFlotation) flotation = { 0 };
  GbHull *floats = add_hull (boat, GB_HULL_PIPE);
  GbHydrostatics at;
  double dry = 0, pipe = G_PI * 0.04 * 3;

  add_block (boat, 5, 0.6, 0.5);
  floats->pair = TRUE;
  floats->length = 3;
  floats->diameter = 0.4;
  floats->x = 1;
  floats->y = 1.2;
  floats->z = 0.1;
  find (&flotation, &hulls, boat, light_craft (500, 5, 0));

  /* The floats are closed: they may go under, and only the main hull's edge sets the limit. */
  assert_near (flotation.limit.z, 0.4, 1e-15);
  at = gb_hydrostatics_at (&hulls, 1000, 0.3);
  assert_near (at.volume, 5 * 0.6 * 0.3 + 2 * pipe / 2, 1e-12);
  assert_near (at.tcb, 0, 1e-14);
  assert_near (at.lcb, (0.9 * 2.5 + pipe * 2.5) / (0.9 + pipe), 1e-12);
  assert_near (at.waterplane, 3 + 2 * 3 * 0.4, 1e-3);
  at = gb_hydrostatics_at (&hulls, 1000, 0.51);
  assert_near (at.volume, 1.5 + 2 * pipe, 1e-12);

  /* One float to port alone draws the centre over. */
  floats->pair = FALSE;
  find (&flotation, &hulls, boat, light_craft (500, 5, 0));
  at = gb_hydrostatics_at (&hulls, 1000, 0.3);
  assert_near (at.tcb, 1.2 * (pipe / 2) / (0.9 + pipe / 2), 1e-12);

  /* All together is the sum of each alone. */
  for (guint i = 0; i < hulls.n_hulls; i++)
    {
      GbHullSet one = { &hulls.hulls[i], 1 };

      dry += gb_hydrostatics_at (&one, 1000, 0.3).volume;
    }
  assert_near (dry, at.volume, 1e-14);
}

static void
test_no_open_hull (void)
{
  g_autoptr (GbBoat) boat = new_boat (0.1);
  g_auto (GbHullSet) hulls = { NULL, 0 };
  g_auto (GbFlotation) flotation = { 0 };
  GbHull *low = add_block (boat, 4, 1, 0.3), *high = add_block (boat, 4, 1, 0.5);

  /* A raft: the first top to go under stands for the edge; she sinks when the last does. */
  low->edge = high->edge = GB_EDGE_CLOSED;
  find (&flotation, &hulls, boat, light_craft (3000, 0, 0));
  assert_near (flotation.lowest_edge, 0.3, 1e-15);
  assert_near (flotation.limit.displacement, 2 * 800, 1e-9);
  assert_near (flotation.brim, 2400, 1e-9);
  g_assert_false (flotation.sinks);
  assert_near (flotation.afloat.z, 0.45, 1e-9);
  assert_near (flotation.chance, 1, 0);
  find (&flotation, &hulls, boat, light_craft (3300, 0, 0));
  g_assert_true (flotation.sinks);
  g_assert_true (isnan (flotation.afloat.draught));
}

/* A slot that is lower than the edge is where water comes in first: 4 x 1 m, its slot 0.4 m up. */
static void
test_opening (void)
{
  g_autoptr (GbBoat) boat = new_boat (0.1);
  g_auto (GbHullSet) hulls = { NULL, 0 };
  g_auto (GbFlotation) flotation = { 0 };
  GbHull *hull = add_block (boat, 4, 1, 0.5);
  GbOpening *slot = add_record (boat, GB_RECORD_OPENING, hull->rec.id);
  GbCorner *corner = add_record (boat, GB_RECORD_CORNER, slot->rec.id);

  corner->x = 2;
  corner->y = 0;
  corner->z = 0.4;
  gb_boat_settle (boat);
  find (&flotation, &hulls, boat, light_craft (400, 0, 0));
  assert_near (flotation.lowest_edge, 0.4, 1e-15);
  assert_near (flotation.brim, 1600, 1e-9);
  assert_near (flotation.limit.displacement, 1200, 1e-9);
  assert_near (flotation.limit.freeboard, 0.1, 1e-12);
  assert_near (flotation.afloat.freeboard, 0.3, 1e-12);

  /* Decked over, she goes under where the hatch lets water in, and not before. */
  hull->edge = GB_EDGE_CLOSED;
  corner->z = 0.5;
  find (&flotation, &hulls, boat, light_craft (400, 0, 0));
  assert_near (flotation.limit.displacement, 1600, 1e-9);
}

/* An air box inside carries nothing as long as she is dry: neither draught nor limit knows of it, even where
 * it is lower than she is. */
static void
test_hull_inside (void)
{
  g_autoptr (GbBoat) boat = new_boat (0.1);
  g_auto (GbHullSet) hulls = { NULL, 0 };
  g_auto (GbFlotation) flotation = { 0 };
  GbHull *box = NULL;

  add_block (boat, 4, 1, 0.5);
  box = add_block (boat, 1, 0.5, 0.3);
  box->z = -0.2;
  box->inside = TRUE;
  find (&flotation, &hulls, boat, light_craft (400, 0, 0));
  g_assert_cmpuint (flotation.n_hulls, ==, 1);
  g_assert_cmpuint (flotation.n_bad_hulls, ==, 0);
  assert_near (flotation.keel, 0, 0);
  assert_near (flotation.lowest_edge, 0.5, 0);
  assert_near (flotation.afloat.draught, 0.1, 1e-12);
  assert_near (flotation.brim, 2000, 1e-9);

  /* With nothing but air boxes there is no boat. */
  box->inside = FALSE;
  ((GbHull *)gb_boat_all (boat, GB_RECORD_HULL)->pdata[0])->inside = TRUE;
  find (&flotation, &hulls, boat, light_craft (100, 0, 0));
  assert_near (flotation.keel, -0.2, 1e-15);
  box->inside = TRUE;
  find (&flotation, &hulls, boat, light_craft (100, 0, 0));
  g_assert_cmpuint (flotation.n_hulls, ==, 0);
  g_assert_true (isnan (flotation.brim) && isnan (flotation.afloat.z));
}

static void
test_sinking_and_no_room (void)
{
  g_autoptr (GbBoat) boat = new_boat (0.8);
  g_auto (GbHullSet) hulls = { NULL, 0 };
  g_auto (GbFlotation) flotation = { 0 };

  add_block (boat, 4, 1, 0.5);
  /* Lower than the freeboard that is asked for: she may carry nothing. */
  find (&flotation, &hulls, boat, light_craft (1999, 10, 0));
  assert_near (flotation.limit.displacement, 0, 0);
  assert_near (flotation.limit.draught, 0, 0);
  assert_near (flotation.left, -1999, 1e-9);
  assert_near (flotation.chance, 1, 1e-15);
  g_assert_false (flotation.sinks);
  find (&flotation, &hulls, boat, light_craft (2001, 10, 0));
  g_assert_true (flotation.sinks);

  build_of (boat)->freeboard = NAN;
  find (&flotation, &hulls, boat, light_craft (100, 10, 0));
  g_assert_true (isnan (flotation.limit.displacement));
  g_assert_true (isnan (flotation.left) && isnan (flotation.chance));
  assert_near (flotation.afloat.draught, 0.025, 1e-12);
}

static void
test_no_hull_and_bad_hulls (void)
{
  g_autoptr (GbBoat) boat = new_boat (0.1);
  g_auto (GbHullSet) hulls = { NULL, 0 };
  g_auto (GbFlotation) flotation = { 0 };

  find (&flotation, &hulls, boat, light_craft (100, 10, 0));
  g_assert_cmpuint (flotation.n_hulls + flotation.n_bad_hulls + flotation.n_curve, ==, 0);
  g_assert_true (isnan (flotation.limit.displacement) && isnan (flotation.brim) && isnan (flotation.chance));
  g_assert_true (isnan (flotation.afloat.z));
  g_assert_false (flotation.sinks);
  assert_near (flotation.total, 100, 0);

  add_hull (boat, GB_HULL_STATIONS);
  add_block (boat, 4, 1, 0.5);
  find (&flotation, &hulls, boat, light_craft (100, 10, 0));
  g_assert_cmpuint (flotation.n_hulls, ==, 1);
  g_assert_cmpuint (flotation.n_bad_hulls, ==, 1);
  assert_near (flotation.limit.displacement, 1600, 1e-9);

  /* Water that is not said: volumes are known, masses are not. */
  build_of (boat)->water_density = NAN;
  find (&flotation, &hulls, boat, light_craft (100, 10, 0));
  assert_near (flotation.limit.volume, 1.6, 1e-12);
  g_assert_true (isnan (flotation.limit.displacement) && isnan (flotation.afloat.z));
}

static void
test_loads (void)
{
  g_autoptr (GbBoat) boat = new_boat (0.1);
  g_auto (GbHullSet) hulls = { NULL, 0 };
  g_auto (GbFlotation) flotation = { 0 };
  GbCondition *standard = add_record (boat, GB_RECORD_CONDITION, 0),
              *other = add_record (boat, GB_RECORD_CONDITION, 0);
  GbLoad *crew = add_load (boat, standard->rec.id, GB_LOAD_PERSON, 2, 80);
  GbLoad *water = add_load (boat, standard->rec.id, GB_LOAD_WATER, 1, 20);
  GbLoad *unplaced = add_load (boat, standard->rec.id, GB_LOAD_GEAR, 1, 10);
  GbLoad *own = add_load (boat, standard->rec.id, GB_LOAD_OTHER, 1, 10);

  add_load (boat, standard->rec.id, GB_LOAD_GEAR, 1, NAN);
  add_load (boat, standard->rec.id, GB_LOAD_GEAR, NAN, 5);
  add_load (boat, other->rec.id, GB_LOAD_GEAR, 1, 1000);
  add_block (boat, 4, 1, 0.5);
  crew->x = 1.5;
  crew->z = 0.6;
  water->x = own->x = 3;
  water->y = own->y = 0.2;
  water->z = own->z = 0.1;
  own->spread = 0.5;
  unplaced->x = 1;
  find (&flotation, &hulls, boat, light_craft (100, 6, 20));

  assert_near (flotation.load_mass, 200, 1e-12);
  /* 5 % of 160 in one, 2 % of 20, 10 % of 10, 50 % of 10. */
  assert_near (flotation.load_sd, sqrt (8 * 8 + 0.4 * 0.4 + 1 + 25), 1e-12);
  g_assert_cmpuint (flotation.n_no_mass_loads, ==, 2);
  g_assert_cmpuint (flotation.n_no_place_loads, ==, 1);
  assert_near (flotation.load_x, (160 * 1.5 + 30 * 3) / 190, 1e-12);
  assert_near (flotation.load_y, 30 * 0.2 / 190, 1e-12);
  assert_near (flotation.load_z, (160 * 0.6 + 30 * 0.1) / 190, 1e-12);

  assert_near (flotation.light, 100, 0);
  assert_near (flotation.margin, 20, 0);
  assert_near (flotation.total, 320, 1e-12);
  assert_near (flotation.total_sd, hypot (6, flotation.load_sd), 1e-12);
  /* The margin lies at the light craft's centre. */
  assert_near (flotation.total_x, (120 * 2 + 160 * 1.5 + 30 * 3) / 310, 1e-12);
  assert_near (flotation.total_z, (120 * 0.3 + 160 * 0.6 + 30 * 0.1) / 310, 1e-12);

  /* While nothing of the boat itself is known, there is no total to be mistaken for one. */
  find (&flotation, &hulls, boat, light_craft (NAN, NAN, 0));
  g_assert_true (isnan (flotation.light) && isnan (flotation.total) && isnan (flotation.total_x));
  g_assert_true (isnan (flotation.left) && isnan (flotation.chance) && isnan (flotation.afloat.z));
  assert_near (flotation.load_mass, 200, 1e-12);
  find (&flotation, &hulls, boat, light_craft (0, 0, 0));
  g_assert_true (isnan (flotation.total));
}

/* A person sits over the seat that z is measured to; a pull counts by its part straight down, and may lift.
 */
static void
test_where_loads_act (void)
{
  g_autoptr (GbBoat) boat = new_boat (0.1);
  g_auto (GbHullSet) hulls = { NULL, 0 };
  g_auto (GbFlotation) flotation = { 0 };
  GbCondition *condition = add_record (boat, GB_RECORD_CONDITION, 0);
  GbLoad *sitting = add_load (boat, condition->rec.id, GB_LOAD_PERSON, 1, 80);
  GbLoad *lift = add_load (boat, condition->rec.id, GB_LOAD_PULL, 1, 40);

  add_block (boat, 4, 1, 0.5);
  sitting->posture = GB_POSTURE_SITTING;
  sitting->above = 0.2;
  sitting->x = sitting->y = lift->x = lift->y = lift->z = 0;
  sitting->z = 0.3;
  lift->dip = -G_PI / 6;
  find (&flotation, &hulls, boat, light_craft (100, 0, 0));
  assert_near (flotation.load_mass, 80 - 20, 1e-12);
  assert_near (flotation.load_z, 80 * 0.5 / 60, 1e-12);
  assert_near (flotation.load_sd, hypot (80 * 0.05, 20 * 0.1), 1e-12);
  assert_near (flotation.afloat.displacement, 160, 1e-9);
}

static void
test_chance_by_the_normal_table (void)
{
  /* Standard normal distribution, P (Z > z), as printed in any handbook's table; from memory. */
  static const struct
  {
    double z, p;
  } table[] = { { 0, 0.5 },      { 0.5, 0.3085 }, { 1, 0.1587 },  { 1.645, 0.05 }, { 1.96, 0.025 },
                { 2.326, 0.01 }, { 3, 0.00135 },  { -1, 0.8413 }, { -2, 0.9772 } };

  for (guint i = 0; i < G_N_ELEMENTS (table); i++)
    {
      g_autoptr (GbBoat) boat = new_boat (0.1);
      g_auto (GbHullSet) hulls = { NULL, 0 };
      g_auto (GbFlotation) flotation = { 0 };

      /* The limit is 1600 kg. */
      add_block (boat, 4, 1, 0.5);
      find (&flotation, &hulls, boat, light_craft (1600 - table[i].z * 40, 40, 0));
      assert_near (flotation.chance, table[i].p, 6e-5);
    }
}

static void
test_chance_without_spread (void)
{
  g_autoptr (GbBoat) boat = new_boat (0.1);
  g_auto (GbHullSet) hulls = { NULL, 0 };
  g_auto (GbFlotation) flotation = { 0 };

  add_block (boat, 4, 1, 0.5);
  find (&flotation, &hulls, boat, light_craft (1599, 0, 0));
  assert_near (flotation.chance, 0, 0);
  find (&flotation, &hulls, boat, light_craft (1601, 0, 0));
  assert_near (flotation.chance, 1, 0);
}

/* As the water rises nothing shrinks, and the volume is the integral of the waterplane. */
static void
test_curve_of_a_random_hull (void)
{
  for (guint round = 0; round < 20; round++)
    {
      g_autoptr (GbBoat) boat = new_boat (0.1);
      g_auto (GbHullSet) hulls = { NULL, 0 };
      g_auto (GbFlotation) flotation = { 0 };
      GbHull *hull = add_hull (boat, GB_HULL_STATIONS);

      for (guint i = 0; i < 5; i++)
        {
          double y = g_test_rand_double_range (0, 0.2), z = g_test_rand_double_range (0, 0.1);
          double yz[8];

          for (guint k = 0; k < 4;
               k++, y += g_test_rand_double_range (0, 0.2), z += g_test_rand_double_range (0.05, 0.2))
            {
              yz[2 * k] = y;
              yz[2 * k + 1] = z;
            }
          add_station (boat, hull, i + g_test_rand_double_range (0, 0.8), yz, 4);
        }
      find (&flotation, &hulls, boat, light_craft (10, 1, 0));
      if (hulls.hulls[0].trouble != NULL)
        g_error ("%s", hulls.hulls[0].trouble);
      for (guint i = 1; i < flotation.n_curve; i++)
        {
          const GbHydrostatics *below = &flotation.curve[i - 1], *at = &flotation.curve[i];
          double step = at->z - below->z;

          g_assert_cmpfloat (at->volume, >, below->volume);
          g_assert_cmpfloat (at->waterplane, >=, below->waterplane - 1e-12);
          g_assert_cmpfloat (at->volume - below->volume, <=, at->waterplane * step + 1e-12);
          g_assert_cmpfloat (at->volume - below->volume, >=, below->waterplane * step - 1e-12);
        }
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/flotation/box", test_box);
  g_test_add_func ("/flotation/water-for-a-mass", test_water_for_a_mass);
  g_test_add_func ("/flotation/several-hulls-and-pairs", test_several_hulls_and_pairs);
  g_test_add_func ("/flotation/opening", test_opening);
  g_test_add_func ("/flotation/hull-inside", test_hull_inside);
  g_test_add_func ("/flotation/where-loads-act", test_where_loads_act);
  g_test_add_func ("/flotation/no-open-hull", test_no_open_hull);
  g_test_add_func ("/flotation/sinking-and-no-room", test_sinking_and_no_room);
  g_test_add_func ("/flotation/no-hull-and-bad-hulls", test_no_hull_and_bad_hulls);
  g_test_add_func ("/flotation/loads", test_loads);
  g_test_add_func ("/flotation/chance-by-the-normal-table", test_chance_by_the_normal_table);
  g_test_add_func ("/flotation/chance-without-spread", test_chance_without_spread);
  g_test_add_func ("/flotation/curve-of-a-random-hull", test_curve_of_a_random_hull);
  return g_test_run ();
}
