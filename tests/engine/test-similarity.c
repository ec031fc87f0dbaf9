/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The model in the tub beside the boat, what would explain the difference, and what the model must weigh; and
 * that a boat and her model float alike. */

#include "floating-fixture.h"

#include "engine/righting.h"
#include "engine/similarity.h"

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (GbTubbed, gb_tubbed_clear)

#define SCALE 8.0

/* A box 4 x 1.2 x 0.5 m of 480 kg with a person of 96 kg: 576 kg, 0.12 m deep. Her model 1:8 weighs 1.125 kg.
 */
typedef struct
{
  Floating f;
  GbCondition *condition;
  GbTub *tub;
  GbAfloat afloat;
} Trial;

static void
trial_clear (Trial *trial)
{
  floating_clear (&trial->f);
  gb_afloat_clear (&trial->afloat);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Trial, trial_clear)

static Trial
new_trial (void)
{
  Trial trial = { new_floating () };
  GbTub *tub;

  add_block (trial.f.boat, 4, 1.2, 0.5);
  add_lump (trial.f.boat, 0, 480, 2, 0, 0.2);
  trial.condition = add_condition (&trial.f);
  add_load (&trial.f, trial.condition, GB_LOAD_PERSON, 96, 2, 0, 0.5);
  trial.tub = tub = add_record (trial.f.boat, GB_RECORD_TUB, 0);
  tub->condition = trial.condition->rec.id;
  tub->scale = SCALE;
  tub->water_density = FRESH;
  tub->mass = 1.125;
  tub->x = 2 / SCALE;
  tub->z = 0.25 / SCALE;
  tub->fore_draught = tub->aft_draught = 0.12 / SCALE;
  return trial;
}

static void
find_tubbed (Trial *trial, GbTubbed *tubbed)
{
  g_autoptr (GbCase) case_ = NULL;

  find_floating (&trial->f);
  case_ = floating_case (&trial->f, trial->condition->rec.id);
  gb_afloat_find (&trial->afloat, case_, NULL);
  gb_tubbed_find (tubbed, trial->f.boat, trial->tub, case_, &trial->afloat);
}

static const GbExplanation *
explanation (const GbTubbed *tubbed, guint i)
{
  g_assert_cmpuint (i, <, tubbed->explanations->len);
  return tubbed->explanations->pdata[i];
}

static void
test_agrees (void)
{
  g_auto (Trial) trial = new_trial ();
  g_auto (GbTubbed) tubbed = { 0 };

  find_tubbed (&trial, &tubbed);
  g_assert_null (tubbed.trouble);
  assert_near (tubbed.model_mass, 1.125, 1e-12);
  assert_near (tubbed.mass, 576, 1e-9);
  assert_near (tubbed.centre.x, 2, 1e-12);
  assert_near (tubbed.centre.y, 0, 0);
  assert_near (tubbed.centre.z, 0.25, 1e-12);
  assert_near (tubbed.fore_x, 4, 1e-12);
  assert_near (tubbed.aft_x, 0, 1e-12);
  assert_near (tubbed.draught_fore, 0.12, 1e-12);
  assert_near (tubbed.trim, 0, 1e-12);
  assert_near (tubbed.computed_fore, 0.12, 1e-9);
  assert_near (tubbed.computed_aft, 0.12, 1e-9);
  assert_near (tubbed.own_fore, 0.12, 1e-9);
  assert_near (tubbed.own_aft, 0.12, 1e-9);
  g_assert_cmpuint (tubbed.explanations->len, ==, 2);
  g_assert_cmpstr (explanation (&tubbed, 0)->words, ==,
                   "Each 1 mm misread on the model is 8 mm on the boat.");
  g_assert_true (isnan (explanation (&tubbed, 0)->fore));
  g_assert_cmpstr (explanation (&tubbed, 1)->words, ==, "What is left is no more than that.");
}

static void
test_wanted (void)
{
  g_auto (Trial) trial = new_trial ();
  g_auto (GbTubbed) tubbed = { 0 };

  /* A bare model of 0.9 kg that balances a little aft: 0.225 kg bring it to where it should be. */
  trial.tub->mass = 0.9;
  trial.tub->x = 0.24;
  trial.tub->z = 0.03;
  find_tubbed (&trial, &tubbed);
  assert_near (tubbed.wanted_mass, 1.125, 1e-12);
  assert_near (tubbed.wanted_centre.x, 0.25, 1e-12);
  assert_near (tubbed.wanted_centre.z, 0.25 / SCALE, 1e-12);
  assert_near (tubbed.ballast, 0.225, 1e-12);
  assert_near (tubbed.ballast_centre.x, (1.125 * 0.25 - 0.9 * 0.24) / 0.225, 1e-12);
  assert_near (tubbed.ballast_centre.y, 0, 1e-12);
  assert_near (tubbed.ballast_centre.z, (1.125 * 0.25 / SCALE - 0.9 * 0.03) / 0.225, 1e-12);
  assert_near (tubbed.time_factor, sqrt (8), 1e-12);
  assert_near (tubbed.speed_factor, sqrt (8), 1e-12);

  trial.tub->mass = 1.3;
  find_tubbed (&trial, &tubbed);
  assert_near (tubbed.ballast, -0.175, 1e-12);
  g_assert_true (isnan (tubbed.ballast_centre.x));
}

static void
test_too_heavy (void)
{
  g_auto (Trial) trial = new_trial ();
  g_auto (GbTubbed) tubbed = { 0 };
  GbTubLoad *load = add_record (trial.f.boat, GB_RECORD_TUB_LOAD, trial.tub->rec.id);

  /* 0.1 kg in the middle of the model are 51.2 kg in the boat: 51.2/4800 m deeper. */
  load->mass = 0.1;
  load->x = 0.25;
  load->z = 0.25 / SCALE;
  trial.tub->fore_draught = trial.tub->aft_draught = 0.12 / SCALE + 51.2 / 4800 / SCALE;
  find_tubbed (&trial, &tubbed);
  g_assert_null (tubbed.trouble);
  assert_near (tubbed.mass, 627.2, 1e-9);
  assert_near (tubbed.own_fore, 0.12 + 51.2 / 4800, 1e-9);
  g_assert_cmpuint (tubbed.explanations->len, ==, 3);
  assert_near (explanation (&tubbed, 0)->fore, 51.2 / 4800, 1e-9);
  assert_near (explanation (&tubbed, 0)->aft, 51.2 / 4800, 1e-9);
  g_assert_cmpstr (explanation (&tubbed, 0)->words, ==,
                   "In the boat's size the model is 51.2 kg too heavy for this condition: 11 mm deeper.");
  assert_near (explanation (&tubbed, 2)->fore, 0, 1e-9);
}

static void
test_too_light (void)
{
  g_auto (Trial) trial = new_trial ();
  g_auto (GbTubbed) tubbed = { 0 };

  trial.tub->mass = 1.0;
  find_tubbed (&trial, &tubbed);
  g_assert_cmpstr (explanation (&tubbed, 0)->words, ==,
                   "In the boat's size the model is 64 kg too light for this condition: 13 mm less deep.");
}

static void
test_place_along (void)
{
  g_auto (Trial) trial = new_trial ();
  g_auto (GbTubbed) tubbed = { 0 };
  /* KB 0.06, BM lengthwise 16/(12 x 0.12), KG 0.25 m. */
  double gm = 0.06 + 16 / (12 * 0.12) - 0.25, end = 2 * 0.04 / gm;

  trial.tub->x = 2.04 / SCALE;
  find_tubbed (&trial, &tubbed);
  assert_near (explanation (&tubbed, 0)->fore, end, 1e-5);
  assert_near (explanation (&tubbed, 0)->aft, -end, 1e-5);
  assert_near (tubbed.own_fore, 0.12 + end, 1e-5);
  g_assert_cmpstr (
      explanation (&tubbed, 0)->words, ==,
      "In the boat's size the model's weight lies 40 mm further forward: 7.3 mm deeper forward, 7.3 mm less "
      "deep aft.");
}

static void
test_place_across (void)
{
  g_auto (Trial) trial = new_trial ();
  g_auto (GbTubbed) tubbed = { 0 };
  GbTubLoad *load = add_record (trial.f.boat, GB_RECORD_TUB_LOAD, trial.tub->rec.id);
  /* BM 1.44/(12 x 0.12), of a box with upright sides: tan heel = shift / (GM + BM tan2/2). */
  double gm = 0.06 + 1 - 0.25, shift = 0.125 * 0.24 / 1.125, degrees = atan (shift / gm) * 180 / G_PI;
  g_autofree char *words = g_strdup_printf ("27 mm further to port: %.1f° more to port.", degrees);

  trial.tub->mass = 1.0;
  load->mass = 0.125;
  load->x = 0.25;
  load->y = 0.03;
  load->z = 0.25 / SCALE;
  find_tubbed (&trial, &tubbed);
  assert_near (tubbed.centre.y, shift, 1e-12);
  g_assert_nonnull (strstr (explanation (&tubbed, 0)->words, words));
}

static void
test_what_is_left (void)
{
  g_auto (Trial) trial = new_trial ();
  g_auto (GbTubbed) tubbed = { 0 };

  trial.tub->fore_draught += 0.003;
  find_tubbed (&trial, &tubbed);
  g_assert_cmpstr (
      explanation (&tubbed, 1)->words, ==,
      "What is left, 24 mm deeper forward, is the reading or the shape: measure the model against the boat's "
      "lines.");
  assert_near (explanation (&tubbed, 1)->fore, 0.024, 1e-9);
  assert_near (tubbed.trim, atan (0.024 / 4), 1e-12);

  /* Marks of the model's own, and inches. */
  trial.tub->fore_x = 3 / SCALE;
  trial.tub->aft_x = 1 / SCALE;
  floating_build (&trial.f)->units = GB_UNITS_FEET;
  find_tubbed (&trial, &tubbed);
  assert_near (tubbed.fore_x, 3, 1e-12);
  assert_near (tubbed.trim, atan (0.024 / 2), 1e-12);
  g_assert_cmpstr (explanation (&tubbed, 0)->words, ==,
                   "Each 1/16\" misread on the model is 1/2\" on the boat.");
}

static void
test_heel_is_left (void)
{
  g_auto (Trial) trial = new_trial ();
  g_auto (GbTubbed) tubbed = { 0 };

  trial.tub->heel = -2 * G_PI / 180;
  find_tubbed (&trial, &tubbed);
  assert_near (tubbed.heel, trial.tub->heel, 0);
  g_assert_nonnull (
      strstr (explanation (&tubbed, 1)->words, "What is left, 2° more to port, is the reading"));
}

static void
test_ropes_are_said (void)
{
  g_auto (Trial) trial = new_trial ();
  g_auto (GbTubbed) tubbed = { 0 };
  GbLoad *rope = add_load (&trial.f, trial.condition, GB_LOAD_PULL, 20, 4, 0, 0.5);

  /* A rope ahead, level, held up by the water below it, presses her bow down; the model's is not there to do
   * so. */
  rope->dip = 0;
  rope->bearing = 0;
  find_tubbed (&trial, &tubbed);
  g_assert_cmpfloat (tubbed.computed_fore, >, 0.121);
  g_assert_true (
      g_str_has_prefix (explanation (&tubbed, 0)->words, "What pulls the boat does not pull the model: "));
  assert_near (explanation (&tubbed, 0)->fore, 0.12 - tubbed.computed_fore, 1e-7);
  assert_near (tubbed.own_fore, 0.12, 1e-7);
}

static void
test_tanks_are_said (void)
{
  g_auto (Trial) trial = new_trial ();
  g_auto (GbTubbed) tubbed = { 0 };
  GbLoad *water = add_load (&trial.f, trial.condition, GB_LOAD_WATER, 20, 2, 0, 0.2);

  water->tank_length = water->tank_width = water->tank_height = 0.4;
  find_tubbed (&trial, &tubbed);
  g_assert_true (g_str_has_prefix (explanation (&tubbed, tubbed.explanations->len - 1)->words,
                                   "In the boat liquids run"));
}

static void
test_waters (void)
{
  g_auto (Trial) trial = new_trial ();
  g_auto (GbTubbed) tubbed = { 0 };

  floating_build (&trial.f)->water_density = 1025;
  trial.tub->water_density = NAN;
  find_tubbed (&trial, &tubbed);
  /* Fresh water at 15 degrees: 999.10 kg/m3 (UNESCO 44, from memory). */
  assert_near (tubbed.model_density, 999.10, 0.005);
  assert_near (tubbed.density_ratio, 1025 / tubbed.model_density, 1e-12);
  assert_near (tubbed.mass, 1.125 * 512 * tubbed.density_ratio, 1e-9);
  assert_near (tubbed.wanted_mass, 576 / 512.0 / tubbed.density_ratio, 1e-12);
}

static void
check_trouble (Trial *trial, const char *part)
{
  g_auto (GbTubbed) tubbed = { 0 };

  find_tubbed (trial, &tubbed);
  g_assert_nonnull (tubbed.trouble);
  if (strstr (tubbed.trouble, part) == NULL)
    g_error ("“%s” is not in “%s”", part, tubbed.trouble);
}

static void
test_troubles (void)
{
  g_auto (Trial) trial = new_trial ();
  GbTub *tub = trial.tub;

  tub->fore_draught = tub->aft_draught = NAN;
  check_trouble (&trial, "No draught was read yet.");
  add_record (trial.f.boat, GB_RECORD_TUB_LOAD, tub->rec.id);
  check_trouble (&trial, "1 load of the model has no mass and is left out.");
  tub->x = NAN;
  check_trouble (&trial, "Where the model's weight lies along it is not known");
  tub->mass = 20;
  tub->x = 0.25;
  check_trouble (&trial, "With the model's own mass, in the boat's size, she would sink.");
  tub->mass = NAN;
  check_trouble (&trial, "The bare model's mass is not known");
  tub->scale = NAN;
  check_trouble (&trial, "The model has no scale yet.");
  tub->scale = 0;
  check_trouble (&trial, "The model has no scale yet.");
  tub->scale = INFINITY;
  check_trouble (&trial, "The model has no scale yet.");
}

static void
test_unknown_height (void)
{
  g_auto (Trial) trial = new_trial ();
  g_auto (GbTubbed) tubbed = { 0 };

  /* The height of the model's weight is seldom known; it is then taken as the condition has it. */
  trial.tub->z = NAN;
  find_tubbed (&trial, &tubbed);
  g_assert_null (tubbed.trouble);
  g_assert_true (isnan (tubbed.centre.z));
  assert_near (tubbed.own_fore, 0.12, 1e-9);
}

static void
test_no_condition (void)
{
  g_auto (Trial) trial = new_trial ();
  g_auto (GbTubbed) tubbed = { 0 };

  gb_boat_settle (trial.f.boat);
  gb_tubbed_find (&tubbed, trial.f.boat, trial.tub, NULL, NULL);
  g_assert_cmpstr (tubbed.trouble, ==, "Choose the condition that the model stands for.");
  assert_near (tubbed.mass, 576, 1e-9);
  assert_near (tubbed.draught_fore, 0.12, 1e-12);
  g_assert_true (isnan (tubbed.fore_x) && isnan (tubbed.trim) && isnan (tubbed.wanted_mass));
  g_assert_cmpuint (tubbed.explanations->len, ==, 0);
}

static void
test_sinking_condition (void)
{
  g_auto (Trial) trial = new_trial ();
  g_auto (GbTubbed) tubbed = { 0 };

  add_load (&trial.f, trial.condition, GB_LOAD_CARGO, 5000, 2, 0, 0.2);
  find_tubbed (&trial, &tubbed);
  g_assert_cmpstr (tubbed.trouble, ==, trial.afloat.sentence);
  g_assert_true (isnan (tubbed.computed_fore));
  assert_near (tubbed.wanted_mass, 5576 / 512.0, 1e-9);
}

/* Similar boats float alike ---------------------------------------------------------------------------------
 */

/* A lopsided boat with a crew, water in a tank and a rope's pull, all in the size @size. Lengths go with it,
 * masses with its cube. */
static void
build_similar (Floating *f, double size, guint32 seed)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (seed);
  double mass = size * size * size;
  GbCondition *condition = add_condition (f);
  GbHull *hull = add_hull (f->boat, GB_HULL_STATIONS);
  GbLoad *load;

  floating_build (f)->freeboard = 0.05 * size;
  for (guint i = 0; i <= 4; i++)
    {
      double y = (0.5 + 0.3 * g_rand_double (random)) * size,
             z = (0.45 + 0.1 * g_rand_double (random)) * size;

      ADD_STATION (f->boat, hull, i * size, 0, 0, 0.6 * y, 0.05 * size, y, z);
    }
  add_lump (f->boat, 0, 120 * mass, 2.1 * size, 0, 0.25 * size);
  load = add_load (f, condition, GB_LOAD_PERSON, 80 * mass, g_rand_double_range (random, 1, 3) * size,
                   g_rand_double_range (random, -0.2, 0.2) * size, 0.2 * size);
  load->posture = GB_POSTURE_SITTING;
  load->above = 0.25 * size;
  load = add_load (f, condition, GB_LOAD_WATER, 15 * mass, 1.5 * size, 0, 0.15 * size);
  load->tank_length = 0.5 * size;
  load->tank_width = 0.4 * size;
  load->tank_height = 0.2 * size;
  load = add_load (f, condition, GB_LOAD_PULL, 3 * mass, 3.8 * size, 0, 0.5 * size);
  load->dip = 0.3;
  load->bearing = 0.4;
}

/* How she floats in the size @size, and what rights her. */
static void
find_similar (GbAfloat *afloat, GbRighting **righting, double size, guint32 seed)
{
  g_auto (Floating) f = new_floating ();
  g_autoptr (GbCase) case_ = NULL;

  build_similar (&f, size, seed);
  find_floating (&f);
  case_ = floating_case (&f, ((GbRecord *) gb_boat_roots (f.boat, GB_RECORD_CONDITION)->pdata[0])->id);
  gb_afloat_find (afloat, case_, NULL);
  if (righting != NULL)
    *righting = gb_righting_find (case_, NULL, NULL);
}

static void
assert_like (double boat, double model, GbLike like, double scale)
{
  double expected = model * gb_similarity_factor (like, scale, 1);

  assert_near (boat, expected, 1e-6 * fabs (expected) + 1e-7 * gb_similarity_factor (like, scale, 1));
}

static void
check_alike (const GbAfloat *boat, const GbAfloat *model, double scale)
{
  g_assert_cmpint (boat->state, ==, model->state);
  assert_like (boat->heel, model->heel, GB_LIKE_ANGLE, scale);
  assert_like (boat->trim, model->trim, GB_LIKE_ANGLE, scale);
  assert_like (boat->total, model->total, GB_LIKE_MASS, scale);
  assert_like (boat->limit, model->limit, GB_LIKE_MASS, scale);
  assert_like (boat->most, model->most, GB_LIKE_MASS, scale);
  assert_like (boat->volume, model->volume, GB_LIKE_VOLUME, scale);
  assert_like (boat->waterplane, model->waterplane, GB_LIKE_AREA, scale);
  assert_like (boat->draught_fore, model->draught_fore, GB_LIKE_LENGTH, scale);
  assert_like (boat->draught_aft, model->draught_aft, GB_LIKE_LENGTH, scale);
  assert_like (boat->least.freeboard, model->least.freeboard, GB_LIKE_LENGTH, scale);
  assert_like (boat->kb, model->kb, GB_LIKE_LENGTH, scale);
  assert_like (boat->bm, model->bm, GB_LIKE_LENGTH, scale);
  assert_like (boat->gm, model->gm, GB_LIKE_LENGTH, scale);
  assert_like (boat->gm_long, model->gm_long, GB_LIKE_LENGTH, scale);
  assert_like (boat->free_surface, model->free_surface, GB_LIKE_LENGTH, scale);
  assert_like (boat->heel_moment, model->heel_moment, GB_LIKE_MOMENT, scale);
  assert_like (boat->buoyancy.x, model->buoyancy.x, GB_LIKE_LENGTH, scale);
  assert_like (boat->flotation.x, model->flotation.x, GB_LIKE_LENGTH, scale);
}

static void
test_float_alike (void)
{
  static const double scales[] = { 0.5, 2, 5, 8, 12.5 };

  for (guint32 seed = 1; seed <= 20; seed++)
    {
      g_auto (GbAfloat) model = { 0 };

      find_similar (&model, NULL, 1, seed);
      g_assert_false (isnan (model.gm));
      for (guint i = 0; i < G_N_ELEMENTS (scales); i++)
        {
          g_auto (GbAfloat) boat = { 0 };

          find_similar (&boat, NULL, scales[i], seed);
          check_alike (&boat, &model, scales[i]);
        }
    }
}

static void
check_side (const GbRightingSide *boat, const GbRightingSide *model, double scale)
{
  assert_like (boat->greatest, model->greatest, GB_LIKE_LENGTH, scale);
  assert_near (boat->greatest_at, model->greatest_at, 1e-4);
  if (isnan (model->vanishing))
    g_assert_true (isnan (boat->vanishing));
  else
    assert_near (boat->vanishing, model->vanishing, 1e-6);
}

static void
test_righted_alike (void)
{
  for (guint32 seed = 1; seed <= 3; seed++)
    {
      g_auto (GbAfloat) model = { 0 }, boat = { 0 };
      g_autoptr (GbRighting) models = NULL, boats = NULL;

      find_similar (&model, &models, 1, seed);
      find_similar (&boat, &boats, SCALE, seed);
      g_assert_nonnull (models);
      g_assert_nonnull (boats);
      assert_like (boats->gm, models->gm, GB_LIKE_LENGTH, SCALE);
      check_side (&boats->starboard, &models->starboard, SCALE);
      check_side (&boats->port, &models->port, SCALE);
      for (guint i = 90; i <= 270; i += 5)
        {
          assert_like (boats->levers[i].lever, models->levers[i].lever, GB_LIKE_LENGTH, SCALE);
          assert_like (boats->levers[i].trim, models->levers[i].trim, GB_LIKE_ANGLE, SCALE);
        }
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/similarity/agrees", test_agrees);
  g_test_add_func ("/engine/similarity/wanted", test_wanted);
  g_test_add_func ("/engine/similarity/too-heavy", test_too_heavy);
  g_test_add_func ("/engine/similarity/too-light", test_too_light);
  g_test_add_func ("/engine/similarity/place-along", test_place_along);
  g_test_add_func ("/engine/similarity/place-across", test_place_across);
  g_test_add_func ("/engine/similarity/what-is-left", test_what_is_left);
  g_test_add_func ("/engine/similarity/heel-is-left", test_heel_is_left);
  g_test_add_func ("/engine/similarity/ropes-are-said", test_ropes_are_said);
  g_test_add_func ("/engine/similarity/tanks-are-said", test_tanks_are_said);
  g_test_add_func ("/engine/similarity/waters", test_waters);
  g_test_add_func ("/engine/similarity/troubles", test_troubles);
  g_test_add_func ("/engine/similarity/unknown-height", test_unknown_height);
  g_test_add_func ("/engine/similarity/no-condition", test_no_condition);
  g_test_add_func ("/engine/similarity/sinking-condition", test_sinking_condition);
  g_test_add_func ("/engine/similarity/float-alike", test_float_alike);
  g_test_add_func ("/engine/similarity/righted-alike", test_righted_alike);
  return g_test_run ();
}
