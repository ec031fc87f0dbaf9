/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Inclining tests: the line through the readings, a boat inclined by really floating her, and what is said
 * where something is amiss. */

#include "floating-fixture.h"

#include "engine/inclining.h"

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (GbInclined, gb_inclined_clear)

#define DEGREE (G_PI / 180)

static void
test_line_through_readings (void)
{
  /* Textbook regression through nothing: slope = sum xy / sum xx, s2 = (sum yy - (sum xy)2 / sum xx)/(n - 1).
   */
  static const double moments[] = { 10, 20, 30, -20 }, tangents[] = { 0.011, 0.019, 0.0305, -0.0208 };
  double xx = 100 + 400 + 900 + 400, xy = 0, yy = 0, slope, error, gm, gm_sd;

  for (guint i = 0; i < 4; i++)
    {
      xy += moments[i] * tangents[i];
      yy += tangents[i] * tangents[i];
    }
  slope = xy / xx;
  error = sqrt ((yy - xy * xy / xx) / 3 / xx);
  g_assert_true (gb_inclining_gm (moments, tangents, 4, 500, &gm, &gm_sd));
  assert_near (gm, 1 / (500 * slope), 1e-12);
  /* To the first order: half the width that the slope's error gives. */
  assert_near (gm_sd, (1 / (500 * (slope - error)) - 1 / (500 * (slope + error))) / 2, 1e-3 * gm_sd);

  /* Readings that agree leave no doubt; one alone says nothing of it. */
  g_assert_true (
      gb_inclining_gm ((const double[]){ 10, 20 }, (const double[]){ 0.01, 0.02 }, 2, 500, &gm, &gm_sd));
  assert_near (gm, 2, 1e-12);
  assert_near (gm_sd, 0, 1e-9);
  g_assert_true (gb_inclining_gm (moments, tangents, 1, 500, &gm, &gm_sd));
  g_assert_true (isnan (gm_sd));
}

static void
test_nothing_to_tell (void)
{
  double gm, gm_sd;

  g_assert_false (gb_inclining_gm (NULL, NULL, 0, 500, &gm, &gm_sd));
  g_assert_true (isnan (gm));
  g_assert_false (
      gb_inclining_gm ((const double[]){ 0, 0 }, (const double[]){ 0.1, 0 }, 2, 500, &gm, &gm_sd));
  g_assert_false (gb_inclining_gm ((const double[]){ 5, 9 }, (const double[]){ 0, 0 }, 2, 500, &gm, &gm_sd));
  g_assert_false (gb_inclining_gm ((const double[]){ 5 }, (const double[]){ 0.1 }, 1, 0, &gm, &gm_sd));
  g_assert_false (gb_inclining_gm ((const double[]){ 5 }, (const double[]){ 0.1 }, 1, NAN, &gm, &gm_sd));
  g_assert_false (gb_inclining_gm ((const double[]){ NAN }, (const double[]){ 0.1 }, 1, 500, &gm, &gm_sd));
  g_assert_true (isnan (gm) && isnan (gm_sd));
}

/* A box 4 x 1.2 x 0.5 m of 300 kg, with a weight of 10 kg that can be moved across. */
typedef struct
{
  Floating f;
  GbCondition *condition;
  GbLoad *weight;
  GbInclining *test;
} Trial;

static void
trial_clear (Trial *trial)
{
  floating_clear (&trial->f);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Trial, trial_clear)

static Trial
new_trial (void)
{
  Trial trial = { new_floating () };

  add_block (trial.f.boat, 4, 1.2, 0.5);
  add_lump (trial.f.boat, 0, 300, 2, 0, 0.35);
  trial.condition = add_condition (&trial.f);
  trial.weight = add_load (&trial.f, trial.condition, GB_LOAD_BALLAST, 10, 2, 0, 0.4);
  trial.test = add_record (trial.f.boat, GB_RECORD_INCLINING, 0);
  trial.test->condition = trial.condition->rec.id;
  return trial;
}

static GbShift *
add_shift (Trial *trial, double mass, double distance, double angle)
{
  GbShift *shift = add_record (trial->f.boat, GB_RECORD_SHIFT, trial->test->rec.id);

  shift->mass = mass;
  shift->distance = distance;
  shift->angle = angle;
  return shift;
}

static void
find_afloat (Trial *trial, GbAfloat *afloat)
{
  g_autoptr (GbCase) case_ = NULL;

  find_floating (&trial->f);
  case_ = floating_case (&trial->f, trial->condition->rec.id);
  gb_afloat_find (afloat, case_, NULL);
}

static void
find_inclined (Trial *trial, GbInclined *inclined, const GbAfloat *afloat)
{
  gb_boat_settle (trial->f.boat);
  gb_inclined_find (inclined, trial->f.boat, trial->test, afloat);
}

/* Heel that she takes with the weight moved @distance to starboard. */
static double
heel_with (Trial *trial, double distance)
{
  g_autoptr (GbCase) case_ = floating_case (&trial->f, trial->condition->rec.id);
  g_auto (GbAfloat) afloat = { 0 };

  g_assert_true (
      gb_case_move (case_, trial->weight->rec.id, (GbVec3){ trial->weight->x, -distance, trial->weight->z }));
  gb_afloat_find (&afloat, case_, NULL);
  return afloat.heel;
}

/* What is read on a boat that is really inclined gives her stiffness, and where her weight is. */
static void
check_floating (Trial *trial, double tolerance)
{
  static const double distances[] = { 0.1, 0.3, -0.2, -0.4 };
  g_auto (GbAfloat) afloat = { 0 };
  g_auto (GbInclined) inclined = { 0 };

  find_afloat (trial, &afloat);
  g_assert_cmpint (afloat.state, ==, GB_AFLOAT_FLOATS);
  for (guint i = 0; i < G_N_ELEMENTS (distances); i++)
    add_shift (trial, 10, distances[i], heel_with (trial, distances[i]));
  find_inclined (trial, &inclined, &afloat);
  g_assert_null (inclined.trouble);
  g_assert_cmpuint (inclined.n, ==, 4);
  assert_near (inclined.mass, afloat.total, 1e-9);
  assert_near (inclined.km, afloat.kb + afloat.bm, 1e-12);
  assert_near (inclined.gm, afloat.gm, tolerance);
  assert_near (inclined.computed_gm, afloat.gm, 0);
  assert_near (inclined.z, afloat.gravity.z, tolerance);
  assert_near (inclined.kg, inclined.z - afloat.keel, 1e-12);
  assert_near (inclined.computed_z, afloat.gravity.z, 0);
  g_assert_cmpfloat (inclined.gm_sd, <, tolerance);
  assert_near (inclined.z_sd, inclined.gm_sd, 0);
  assert_near (inclined.kg_sd, inclined.gm_sd, 0);
}

static void
test_floating (void)
{
  g_auto (Trial) trial = new_trial ();

  check_floating (&trial, 1e-3);
}

static void
test_free_surface (void)
{
  g_auto (Trial) trial = new_trial ();
  GbLoad *water = add_load (&trial.f, trial.condition, GB_LOAD_WATER, 40, 2, 0, 0.3);

  /* 40 kg in a tank of 0.5 x 0.8 m: it takes 0.5 x 0.8^3/12 x 1000/350 = 0.061 m off GM. */
  water->tank_length = 0.5;
  water->tank_width = 0.8;
  water->tank_height = 0.2;
  check_floating (&trial, 3e-3);
}

static void
test_mass_apart (void)
{
  g_auto (Trial) trial = new_trial ();
  g_auto (GbAfloat) afloat = { 0 };
  g_auto (GbInclined) inclined = { 0 };

  trial.test->mass = 400;
  add_shift (&trial, 10, 0.5, 1 * DEGREE);
  find_afloat (&trial, &afloat);
  find_inclined (&trial, &inclined, &afloat);
  assert_near (inclined.mass, 400, 0);
  assert_near (inclined.gm, 5 / (400 * tan (DEGREE)), 1e-12);
  g_assert_nonnull (strstr (inclined.trouble, "400 kg at the test, and the condition comes to 310 kg"));
  g_assert_false (isnan (inclined.z));
}

static void
check_trouble (Trial *trial, const GbAfloat *afloat, const char *trouble)
{
  g_auto (GbInclined) inclined = { 0 };

  find_inclined (trial, &inclined, afloat);
  g_assert_cmpstr (inclined.trouble, ==, trouble);
}

static void
test_troubles (void)
{
  g_auto (Trial) trial = new_trial ();
  g_auto (GbAfloat) afloat = { 0 };
  GbShift *shift;

  find_afloat (&trial, &afloat);
  check_trouble (&trial, &afloat,
                 "There is no reading yet. Enter the weight that was moved, how far, and what was read.");
  shift = add_shift (&trial, 10, 0.5, NAN);
  check_trouble (&trial, &afloat, "A reading that lacks its weight, distance or heel is left out.");
  shift->deflection = 0.02;
  check_trouble (&trial, &afloat, "A deflection was read, but the length of the plumb line is not known.");
  trial.test->pendulum = 1.5;
  check_trouble (&trial, &afloat, NULL);
  shift->angle = 20 * DEGREE;
  check_trouble (&trial, &afloat, "She was heeled by more than 15°, which is too far for this method.");
  shift->angle = 0;
  check_trouble (&trial, &afloat,
                 "Nothing was moved, or nothing was read: a stiffness cannot be told from that.");
  shift->angle = -1 * DEGREE;
  check_trouble (&trial, &afloat,
                 "She heeled away from the weight. Check which side was taken as starboard.");
}

/* A reading with the wrong sign among others leaves no figure, and is named; so do readings that scatter more
 * than they say. */
static void
test_contrary_readings (void)
{
  g_auto (Trial) trial = new_trial ();
  g_auto (GbAfloat) afloat = { 0 };
  g_auto (GbInclined) inclined = { 0 };
  GbShift *second;

  find_afloat (&trial, &afloat);
  add_shift (&trial, 10, 0.5, 1 * DEGREE);
  second = add_shift (&trial, 10, 0.5, -1.0001 * DEGREE);
  check_trouble (&trial, &afloat, "Reading 2 heels the other way than its weight was moved.");
  find_inclined (&trial, &inclined, &afloat);
  g_assert_true (isnan (inclined.gm) && isnan (inclined.gm_sd) && isnan (inclined.kg) && isnan (inclined.z));
  add_shift (&trial, 10, -0.5, 1 * DEGREE);
  check_trouble (&trial, &afloat, "Readings 2, 3 heel the other way than their weights were moved.");
  ((GbShift *) gb_record_children (&trial.test->rec)->pdata[2])->angle = -1 * DEGREE;
  second->angle = 1 * DEGREE;
  check_trouble (&trial, &afloat, NULL);
}

static void
test_scattered_readings (void)
{
  g_auto (Trial) trial = new_trial ();
  g_auto (GbAfloat) afloat = { 0 };
  g_auto (GbInclined) inclined = { 0 };

  find_afloat (&trial, &afloat);
  add_shift (&trial, 10, 0.5, 0.05 * DEGREE);
  add_shift (&trial, 10, 0.05, 9 * DEGREE);
  check_trouble (&trial, &afloat,
                 "The readings do not agree: nothing can be told from them. Reading 2 is farthest off.");
  find_inclined (&trial, &inclined, &afloat);
  g_assert_true (isnan (inclined.gm) && isnan (inclined.gm_sd) && isnan (inclined.z));
}

static void
test_without_condition (void)
{
  g_auto (Trial) trial = new_trial ();
  g_auto (GbInclined) inclined = { 0 };

  add_shift (&trial, 10, 0.5, 1 * DEGREE);
  check_trouble (&trial, NULL,
                 "The displacement at the test is not known. Enter it, or choose a condition that floats. "
                 "Choose the condition that she was tested in, to learn the height of her weight.");
  /* A mass that was measured is enough for the stiffness. */
  trial.test->mass = 310;
  find_inclined (&trial, &inclined, NULL);
  assert_near (inclined.gm, 5 / (310 * tan (DEGREE)), 1e-12);
  g_assert_true (isnan (inclined.km) && isnan (inclined.z));
}

static void
test_sinking (void)
{
  g_auto (Trial) trial = new_trial ();
  g_auto (GbAfloat) afloat = { 0 };
  g_auto (GbInclined) inclined = { 0 };

  trial.weight->mass = 5000;
  add_shift (&trial, 10, 0.5, 1 * DEGREE);
  find_afloat (&trial, &afloat);
  g_assert_cmpint (afloat.state, ==, GB_AFLOAT_SINKS);
  find_inclined (&trial, &inclined, &afloat);
  g_assert_cmpstr (inclined.trouble, ==, afloat.sentence);
  g_assert_true (isnan (inclined.z));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/inclining/line-through-readings", test_line_through_readings);
  g_test_add_func ("/engine/inclining/nothing-to-tell", test_nothing_to_tell);
  g_test_add_func ("/engine/inclining/floating", test_floating);
  g_test_add_func ("/engine/inclining/free-surface", test_free_surface);
  g_test_add_func ("/engine/inclining/mass-apart", test_mass_apart);
  g_test_add_func ("/engine/inclining/troubles", test_troubles);
  g_test_add_func ("/engine/inclining/contrary-readings", test_contrary_readings);
  g_test_add_func ("/engine/inclining/scattered-readings", test_scattered_readings);
  g_test_add_func ("/engine/inclining/without-condition", test_without_condition);
  g_test_add_func ("/engine/inclining/sinking", test_sinking);
  return g_test_run ();
}
