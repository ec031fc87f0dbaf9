/* SPDX-License-Identifier: GPL-3.0-or-later */

/* How sure the roll-up is: against closed forms, and against a simulation in which everything uncertain is
 * drawn at random many times and the roll-up's plain sums are taken each time. */

#include "rollup-fixture.h"

static void
certain_otherwise (Case *c)
{
  build_of (c)->spread_estimated = build_of (c)->spread_calculated = build_of (c)->place_spread = 0;
}

static GbMaterial *
spread_material (Case *c, double density, double spread)
{
  GbMaterial *material = add_material (c->boat, GB_MEASURE_DENSITY, density);

  material->spread = spread;
  return material;
}

/* Of 1 kg at a density of 1000. */
static GbPart *
add_kilo (Case *c, gint64 owner, const GbMaterial *material, double x)
{
  GbPart *part = add_box (c->boat, owner, material, 0.1, 0.1, 0.1);

  part->x = x;
  return part;
}

static void
test_one_material_adds_linearly (void)
{
  g_auto (Case) c = new_case ();
  const GbMaterial *wood = spread_material (&c, 1000, 0.1);
  GbPart *part;

  certain_otherwise (&c);
  part = add_kilo (&c, 0, wood, 0);
  add_kilo (&c, 0, wood, 2)->quantity = 3;
  roll_up (&c);
  assert_near (mass_of (&c, part)->mass_sd, 0.1, 1e-15);
  assert_near (c.rollup.boat.mass_sd, 0.4, 1e-15);
  assert_near (c.rollup.boat.x_sd, 0, 1e-9); /* all heavier alike: the centre stays */
}

static void
test_two_materials_add_in_quadrature (void)
{
  g_auto (Case) c = new_case ();

  certain_otherwise (&c);
  add_kilo (&c, 0, spread_material (&c, 1000, 0.1), 0);
  add_kilo (&c, 0, spread_material (&c, 1000, 0.1), 2)->quantity = 3;
  roll_up (&c);
  assert_near (c.rollup.boat.mass_sd, sqrt (0.01 + 0.09), 1e-15);
  /* x = L m2/(m1 + m2): sd2 = L2 (m1 s2)2 + (m2 s1)2 over M4. */
  assert_near (c.rollup.boat.x_sd, 2 * sqrt (0.3 * 0.3 + 0.3 * 0.3) / 16, 1e-14);
}

static void
test_amounts_err_apart_and_copies_together (void)
{
  g_auto (Case) c = new_case ();
  const GbMaterial *wood = spread_material (&c, 1000, 0);
  GbPart *pair;

  certain_otherwise (&c);
  add_kilo (&c, 0, wood, 0)->spread = 0.1;
  add_kilo (&c, 0, wood, 1)->spread = 0.1;
  assert_near (roll_up (&c)->mass_sd, sqrt (0.02), 1e-15);
  pair = add_kilo (&c, 0, wood, 1);
  pair->spread = 0.1;
  pair->pair = 1;
  assert_near (roll_up (&c)->mass_sd, sqrt (0.02 + 0.04), 1e-15);
}

static void
test_spread_by_basis (void)
{
  g_auto (Case) c = new_case ();
  GbPart *part = add_lump (c.boat, 0, 10, 0, 0, 0);

  build_of (&c)->spread_estimated = 0.2;
  build_of (&c)->spread_calculated = 0.05;
  assert_near (roll_up (&c)->mass_sd, 2, 1e-14);
  part->basis = GB_BASIS_CALCULATED;
  assert_near (roll_up (&c)->mass_sd, 0.5, 1e-14);
  part->basis = GB_BASIS_WEIGHED;
  assert_near (roll_up (&c)->mass_sd, 0.05, 1e-14); /* 0.5 %: common practice, no source */
  part->spread = 0.3;
  assert_near (roll_up (&c)->mass_sd, 3, 1e-14);
  part->spread = NAN;
  part->basis = GB_BASIS_ESTIMATED;
  build_of (&c)->spread_estimated = NAN;
  assert_near (roll_up (&c)->mass_sd, 1.5, 1e-14); /* as a new build has it */
}

static void
test_cloth_and_its_resin (void)
{
  g_auto (Case) c = new_case ();
  GbMaterial *cloth = add_material (c.boat, GB_MEASURE_AREAL, 0.2);
  GbMaterial *resin = spread_material (&c, 1150, 0.2);
  GbPart *part = add_part (c.boat, 0, GB_TAKEOFF_COATING, 0, 0, 0);

  certain_otherwise (&c);
  cloth->spread = 0.1;
  part->coating = GB_COATING_CLOTH;
  part->area = 10;
  part->material = cloth->rec.id;
  part->resin = resin->rec.id;
  part->resin_ratio = 1;
  assert_near (roll_up (&c)->mass_sd, sqrt (0.2 * 0.2 + 0.4 * 0.4), 1e-14); /* 2 kg each */
  assert_near (mass_of (&c, part)->mass_sd, c.rollup.boat.mass_sd, 1e-14);
  part->resin = cloth->rec.id;
  assert_near (roll_up (&c)->mass_sd, 0.4, 1e-14);
  assert_near (mass_of (&c, part)->mass_sd, 0.4, 1e-14);
}

static void
test_places (void)
{
  g_auto (Case) c = new_case ();
  GbPart *group = add_group (c.boat, 0, 0, 0, 0);
  GbPart *one = add_lump (c.boat, group->rec.id, 1, 0, 0, 0);

  certain_otherwise (&c);
  build_of (&c)->place_spread = 0.02;
  one->quantity = 2; /* both copies lie where the one does */
  assert_near (roll_up (&c)->x_sd, 0.02, 1e-15);
  add_lump (c.boat, group->rec.id, 2, 0, 0, 0)->place_spread = 0.04;
  assert_near (roll_up (&c)->x_sd, sqrt (0.02 * 0.02 + 0.04 * 0.04) / 2, 1e-15);
  group->place_spread = 0.1; /* moves all of it */
  assert_near (roll_up (&c)->z_sd, sqrt (0.01 + (0.0004 + 0.0016) / 4), 1e-15);
}

/* Everything uncertain in a case. */
typedef struct
{
  double *value, start, sd;
} Knob;

typedef struct
{
  Case c;
  GArray *knobs; /* of Knob */
  GRand *rand;
} Simulation;

static void
add_knob (Simulation *s, double *value, double sd)
{
  Knob knob = { value, *value, sd };

  g_array_append_val (s->knobs, knob);
}

/* Box and Muller 1958. */
static double
draw_normal (GRand *rand)
{
  double u = 1 - g_rand_double (rand), v = g_rand_double (rand);

  return sqrt (-2 * log (u)) * cos (2 * G_PI * v);
}

static void
draw (Simulation *s)
{
  for (guint i = 0; i < s->knobs->len; i++)
    {
      const Knob *knob = &g_array_index (s->knobs, Knob, i);

      *knob->value = knob->start + knob->sd * draw_normal (s->rand);
    }
}

static void
put_back (Simulation *s)
{
  for (guint i = 0; i < s->knobs->len; i++)
    *g_array_index (s->knobs, Knob, i).value = g_array_index (s->knobs, Knob, i).start;
}

#define N_DRAWS 40000

/* The standard deviation found in N draws is itself off by 1/sqrt (2 N), 0.35 % here; and the roll-up's is of
 * first order. */
#define TOLERANCE 0.02

static void
assert_sd (double told, double sum, double sum_of_squares, const char *what)
{
  double mean = sum / N_DRAWS, found = sqrt (sum_of_squares / N_DRAWS - mean * mean);

  g_test_message ("%s: told %.6g, found %.6g", what, told, found);
  if (!(fabs (told - found) <= TOLERANCE * found + 1e-9))
    g_error ("%s: told %.6g, found %.6g", what, told, found);
}

static void
simulate (Simulation *s)
{
  double sums[4] = { 0 }, squares[4] = { 0 };
  GbRollup drawn = { 0 };
  const GbMass *told = roll_up (&s->c);

  for (guint n = 0; n < N_DRAWS; n++)
    {
      draw (s);
      gb_rollup_find (&drawn, s->c.boat, &s->c.hulls, G_MAXINT64);
      for (guint i = 0; i < 4; i++)
        {
          /* Far less spread about nothing than about what is told: no digits are lost in the squares. */
          double v = ((const double[]){ drawn.boat.mass - told->mass, drawn.boat.x - told->x,
                                        drawn.boat.y - told->y, drawn.boat.z - told->z })[i];

          sums[i] += v;
          squares[i] += v * v;
        }
    }
  gb_rollup_clear (&drawn);
  put_back (s);
  assert_sd (told->mass_sd, sums[0], squares[0], "mass");
  assert_sd (told->x_sd, sums[1], squares[1], "x");
  assert_sd (told->y_sd, sums[2], squares[2], "y");
  assert_sd (told->z_sd, sums[3], squares[3], "z");
}

/* A box whose length and place are uncertain. */
static GbPart *
add_uncertain (
    Simulation *s, gint64 owner, const GbMaterial *material, double mass, double x, double y, double z)
{
  GbPart *part = add_box (s->c.boat, owner, material, mass * 100 / material->density, 0.1, 0.1);

  part->x = x;
  part->y = y;
  part->z = z;
  part->spread = 0.04;
  part->place_spread = 0.015;
  add_knob (s, &part->length, part->spread * part->length);
  add_knob (s, &part->x, part->place_spread);
  add_knob (s, &part->y, part->place_spread);
  add_knob (s, &part->z, part->place_spread);
  return part;
}

static GbMaterial *
add_uncertain_material (Simulation *s, double density, double spread)
{
  GbMaterial *material = spread_material (&s->c, density, spread);

  add_knob (s, &material->density, density * spread);
  return material;
}

static Simulation
new_simulation (guint32 seed)
{
  Simulation s = { .c = new_case (),
                   .knobs = g_array_new (FALSE, FALSE, sizeof (Knob)),
                   .rand = g_rand_new_with_seed (seed) };

  return s;
}

static void
simulation_clear (Simulation *s)
{
  case_clear (&s->c);
  g_array_unref (s->knobs);
  g_rand_free (s->rand);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Simulation, simulation_clear)

/* Pairs, turned and nested groups, quantities, three materials, a part without a place. Gives the inner
 * group. */
static GbPart *
fill (Simulation *s)
{
  GbBoat *boat = s->c.boat;
  const GbMaterial *ply = add_uncertain_material (s, 500, 0.06),
                   *spruce = add_uncertain_material (s, 420, 0.08);
  const GbMaterial *foam = add_uncertain_material (s, 60, 0.05);
  GbPart *outer = add_group (boat, 0, 1, 0.2, 0.1), *inner = add_group (boat, outer->rec.id, 0.5, 0.4, 0.2);
  GbPart *wing = add_group (boat, 0, 2, 0.3, 0);

  outer->turn_z = 0.6;
  outer->turn_x = -0.2;
  inner->turn_y = 0.9;
  inner->pair = 1;
  inner->quantity = 2;
  wing->pair = 1;
  wing->turn_x = 0.3;
  add_uncertain (s, outer->rec.id, ply, 3, 0, 0, 0);
  add_uncertain (s, outer->rec.id, spruce, 2, 1, -0.5, 0.3)->quantity = 3;
  add_uncertain (s, inner->rec.id, ply, 1, 0.3, 0.2, 0.1);
  add_uncertain (s, inner->rec.id, foam, 0.5, -0.4, 0.1, 0)->pair = 1;
  add_uncertain (s, wing->rec.id, spruce, 1.5, 0.7, 0.8, 0.2);
  add_uncertain (s, wing->rec.id, foam, 0.7, 0.1, 0.9, 0.4);
  add_uncertain (s, 0, ply, 2, 3, -0.3, 0.5);
  return inner;
}

static void
test_simulated (void)
{
  g_auto (Simulation) s = new_simulation (20240601);

  fill (&s);
  simulate (&s);
}

static void
test_simulated_with_a_part_without_a_place (void)
{
  g_auto (Simulation) s = new_simulation (20240602);
  const GbMaterial *ply;
  GbPart *part;

  fill (&s);
  gb_boat_settle (s.c.boat);
  ply = gb_boat_all (s.c.boat, GB_RECORD_MATERIAL)->pdata[0];
  part = add_box (s.c.boat, 0, ply, 0.8, 0.1, 0.1);
  part->z = NAN;
  part->spread = 0.05;
  add_knob (&s, &part->length, 0.04);
  simulate (&s);
}

/* A group on a scale, and then the boat on three supports. */
static void
test_simulated_with_scales (void)
{
  g_auto (Simulation) s = new_simulation (20240603);
  GbPart *inner = fill (&s);
  GbWeighing *weighing = weigh (s.c.boat, inner->rec.id, 740000, 9);
  GbReading *reading;

  gb_boat_settle (s.c.boat);
  weighing->mass_sd = 0.3;
  reading = gb_record_children (&weighing->rec)->pdata[0];
  add_knob (&s, &reading->mass, 0.3);
  simulate (&s);

  weighing = add_weighing (s.c.boat, 0, 740001, GB_ON_SCALE_ALL);
  weighing->mass_sd = 0.4;
  add_reading (s.c.boat, weighing, 10, 0.2, 0);
  add_reading (s.c.boat, weighing, 7, 3, 0.6);
  add_reading (s.c.boat, weighing, 6, 3, -0.6);
  gb_boat_settle (s.c.boat);
  for (guint i = 0; i < 3; i++)
    {
      reading = gb_record_children (&weighing->rec)->pdata[i];
      add_knob (&s, &reading->mass, 0.4);
    }
  simulate (&s);
}

/* A turned part of its own, and a group, on two supports, within a turned group. */
static void
test_simulated_with_supports (void)
{
  g_auto (Simulation) s = new_simulation (20240604);
  GbPart *inner = fill (&s);
  GbPart *outer = (GbPart *) gb_boat_get (s.c.boat, GB_RECORD_PART, inner->rec.owner);
  GbPart *spar = add_lump (s.c.boat, outer->rec.id, 3, 0.4, 0.1, 0.2);
  GbWeighing *weighings[2] = { add_weighing (s.c.boat, spar->rec.id, 740000, GB_ON_SCALE_ALL),
                               add_weighing (s.c.boat, inner->rec.id, 740000, GB_ON_SCALE_ONE) };

  spar->place_spread = 0.02;
  add_knob (&s, &spar->y, 0.02);
  add_knob (&s, &spar->z, 0.02);
  for (guint i = 0; i < 2; i++)
    {
      weighings[i]->mass_sd = 0.05;
      weighings[i]->tare = 0.2;
      add_reading (s.c.boat, weighings[i], 1.5, -1, NAN);
      add_reading (s.c.boat, weighings[i], 2, 1.5, NAN);
    }
  gb_boat_settle (s.c.boat);
  for (guint i = 0; i < 2; i++)
    for (guint k = 0; k < 2; k++)
      add_knob (&s, &((GbReading *) gb_record_children (&weighings[i]->rec)->pdata[k])->mass, 0.05);
  simulate (&s);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/rollup-errors/one-material", test_one_material_adds_linearly);
  g_test_add_func ("/rollup-errors/two-materials", test_two_materials_add_in_quadrature);
  g_test_add_func ("/rollup-errors/amounts", test_amounts_err_apart_and_copies_together);
  g_test_add_func ("/rollup-errors/by-basis", test_spread_by_basis);
  g_test_add_func ("/rollup-errors/cloth-and-resin", test_cloth_and_its_resin);
  g_test_add_func ("/rollup-errors/places", test_places);
  g_test_add_func ("/rollup-errors/simulated", test_simulated);
  g_test_add_func ("/rollup-errors/simulated-without-a-place", test_simulated_with_a_part_without_a_place);
  g_test_add_func ("/rollup-errors/simulated-with-scales", test_simulated_with_scales);
  g_test_add_func ("/rollup-errors/simulated-with-supports", test_simulated_with_supports);
  return g_test_run ();
}
