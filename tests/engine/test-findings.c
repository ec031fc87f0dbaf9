/* SPDX-License-Identifier: GPL-3.0-or-later */

/* All findings together: each is fed by those before it, and hulls are kept where an edit cannot have touched
 * them. */

#include "parts-fixture.h"

#include "engine/findings.h"
#include "generate.h"

#define TODAY 738000

/* A punt of plywood: a block for a hull, a skin, a bottom board in stock, a crew. */
typedef struct
{
  GbBoat *boat;
  GbHull *hull;
  GbPart *skin;
  GbStock *plywood;
} Punt;

static Punt
new_punt (void)
{
  Punt punt = { .boat = gb_boat_new () };
  GbBuild *build = (GbBuild *) gb_boat_get (punt.boat, GB_RECORD_BUILD, 1);
  GbMaterial *wood = add_material (punt.boat, GB_MEASURE_DENSITY, 500);
  GbCondition *condition = add_record (punt.boat, GB_RECORD_CONDITION, 0);
  GbLoad *crew = add_record (punt.boat, GB_RECORD_LOAD, condition->rec.id);

  build->water = GB_WATER_GIVEN;
  build->water_density = 1000;
  build->freeboard = 0.2;
  build->margin_calculated = 0.1;
  build->cutting_allowance = 0;
  punt.hull = add_block (punt.boat, 4, 1, 0.5);
  punt.plywood = add_record (punt.boat, GB_RECORD_STOCK, 0);
  punt.plywood->material = wood->rec.id;
  punt.plywood->length = 2.5;
  punt.plywood->width = 1.2;
  punt.plywood->thickness = 0.01;
  punt.plywood->price = 5000;
  punt.skin = add_part (punt.boat, 0, GB_TAKEOFF_SKIN, NAN, NAN, NAN);
  punt.skin->hull = punt.hull->rec.id;
  punt.skin->stock = punt.plywood->rec.id;
  crew->kind = GB_LOAD_PERSON;
  crew->quantity = 2;
  crew->mass = 80;
  gb_boat_settle (punt.boat);
  return punt;
}

static void
test_each_feeds_the_next (void)
{
  Punt punt = new_punt ();
  g_autoptr (GbBoat) boat = punt.boat;
  g_autoptr (GbFindings) findings = gb_findings_new ();

  gb_findings_find (findings, boat, GB_TOUCHED_ALL, TODAY);
  /* Bottom 4, sides 4, ends 1 m2; open on top. 9 x 0.01 x 500 = 45 kg, and a tenth for margin. */
  assert_near (gb_rollup_part (&findings->rollup, punt.skin)->amount, 9, 1e-12);
  assert_near (findings->rollup.boat.mass, 45, 1e-10);
  assert_near (findings->flotation.margin, 4.5, 1e-10);
  assert_near (findings->flotation.limit.displacement, 1200, 1e-9);
  assert_near (findings->flotation.total, 45 + 4.5 + 160, 1e-9);
  assert_near (findings->flotation.afloat.draught, 0.2095 / 4, 1e-9);
  /* Nine square metres out of sheets of three. */
  g_assert_cmpuint (findings->costs.sheets, ==, 3);
  g_assert_cmpint (findings->costs.forecast, ==, 15000);
}

static void
test_hulls_are_kept_unless_touched (void)
{
  Punt punt = new_punt ();
  g_autoptr (GbBoat) boat = punt.boat;
  g_autoptr (GbFindings) findings = gb_findings_new ();
  const GbMesh *mesh;

  /* The first time they are found whatever was touched. */
  gb_findings_find (findings, boat, 0, TODAY);
  g_assert_cmpuint (findings->hulls.n_hulls, ==, 1);
  mesh = findings->hulls.hulls[0].mesh;
  punt.plywood->thickness = 0.02;
  gb_findings_find (findings, boat, GB_TOUCHED_WEIGHTS, TODAY);
  g_assert_true (findings->hulls.hulls[0].mesh == mesh);
  assert_near (findings->rollup.boat.mass, 90, 1e-10);

  punt.hull->length = 5;
  gb_findings_find (findings, boat, GB_TOUCHED_HULLS, TODAY);
  assert_near (findings->flotation.limit.displacement, 1500, 1e-9);
  assert_near (findings->rollup.boat.mass, (5 + 5 + 1) * 0.02 * 500, 1e-10);
}

/* Loads and money change no weight of the boat herself, and are found all the same. */
static void
test_weights_are_kept_unless_touched (void)
{
  Punt punt = new_punt ();
  g_autoptr (GbBoat) boat = punt.boat;
  g_autoptr (GbFindings) findings = gb_findings_new ();
  GbLoad *crew = gb_boat_all (boat, GB_RECORD_LOAD)->pdata[0];

  gb_findings_find (findings, boat, 0, TODAY);
  assert_near (findings->rollup.boat.mass, 45, 1e-10);
  findings->rollup.parts[punt.skin->rec.index].unit_mass = 1; /* a mark that finding anew would wipe out */
  crew->quantity = 3;
  gb_findings_find (findings, boat, GB_TOUCHED_AFLOAT, TODAY);
  g_assert_cmpfloat (gb_rollup_part (&findings->rollup, punt.skin)->unit_mass, ==, 1);
  assert_near (findings->flotation.total, 45 + 4.5 + 240, 1e-9);
  g_assert_cmpint (findings->costs.forecast, ==, 15000);

  gb_findings_find (findings, boat, GB_TOUCHED_WEIGHTS, TODAY);
  assert_near (gb_rollup_part (&findings->rollup, punt.skin)->unit_mass, 45, 1e-10);
}

/* Afloat ------------------------------------------------------------------------------------------------ */

/* A mark that finding anew would wipe out. */
#define MARK 12345.0

static gboolean
is_kept (GbFindings *findings, GbBoat *boat, GbTouched touched)
{
  findings->afloat[0].per_cm = MARK;
  gb_findings_find (findings, boat, touched, TODAY);
  return findings->afloat[0].per_cm == MARK;
}

static void
test_afloat_is_kept_unless_it_follows (void)
{
  Punt punt = new_punt ();
  g_autoptr (GbBoat) boat = punt.boat;
  g_autoptr (GbFindings) findings = gb_findings_new ();
  GbLoad *crew = gb_boat_all (boat, GB_RECORD_LOAD)->pdata[0];

  gb_findings_find (findings, boat, 0, TODAY);
  g_assert_cmpuint (findings->n_afloat, ==, 1);
  /* A receipt. */
  g_assert_true (is_kept (findings, boat, 0));
  /* A price, a name, a note: what it weighs is the same. */
  punt.skin->price = 100;
  g_assert_true (is_kept (findings, boat, GB_TOUCHED_WEIGHTS));
  punt.plywood->thickness = 0.012;
  g_assert_false (is_kept (findings, boat, GB_TOUCHED_WEIGHTS));
  assert_near (findings->afloat[0].light, 54, 1e-9);
  ((GbBuild *) gb_boat_get (boat, GB_RECORD_BUILD, 1))->margin_calculated = 0.2;
  g_assert_false (is_kept (findings, boat, GB_TOUCHED_WEIGHTS));
  crew->mass = 90;
  g_assert_false (is_kept (findings, boat, GB_TOUCHED_AFLOAT));
  assert_near (findings->afloat[0].load_mass, 180, 1e-9);
  punt.hull->width = 1.1;
  g_assert_false (is_kept (findings, boat, GB_TOUCHED_HULLS));
}

/* An edit starts from the last answer; what it finds is what is found from nothing. */
static void
test_edits_find_what_a_fresh_look_finds (void)
{
  Punt punt = new_punt ();
  g_autoptr (GbBoat) boat = punt.boat;
  g_autoptr (GbFindings) findings = gb_findings_new ();
  GbLoad *crew = gb_boat_all (boat, GB_RECORD_LOAD)->pdata[0];

  crew->x = 2;
  crew->z = 0.3;
  gb_findings_find (findings, boat, GB_TOUCHED_ALL, TODAY);
  /* Out over the side and back: over, and upright again. */
  for (int i = -30; i <= 30; i++)
    {
      g_autoptr (GbFindings) fresh = gb_findings_new ();

      crew->y = 0.03 * i;
      crew->x = 2 + 0.02 * i;
      gb_findings_find (findings, boat, GB_TOUCHED_AFLOAT, TODAY);
      gb_findings_find (fresh, boat, GB_TOUCHED_ALL, TODAY);
      g_assert_cmpint (findings->afloat[0].state, ==, fresh->afloat[0].state);
      assert_near (findings->afloat[0].heel, fresh->afloat[0].heel, 1e-9);
      assert_near (findings->afloat[0].trim, fresh->afloat[0].trim, 1e-9);
      assert_near (findings->afloat[0].attitude.height, fresh->afloat[0].attitude.height, 1e-9);
    }
}

static void
test_worst_condition (void)
{
  Punt punt = new_punt ();
  g_autoptr (GbBoat) boat = punt.boat;
  g_autoptr (GbFindings) findings = gb_findings_new ();
  GbRecord *first = gb_boat_all (boat, GB_RECORD_CONDITION)->pdata[0];
  GbCondition *second = add_record (boat, GB_RECORD_CONDITION, 0);
  GbLoad *load = add_record (boat, GB_RECORD_LOAD, second->rec.id);

  load->mass = 600;
  gb_boat_settle (boat);
  gb_findings_find (findings, boat, GB_TOUCHED_ALL, TODAY);
  g_assert_cmpuint (findings->n_afloat, ==, 2);
  g_assert_cmpuint (findings->worst, ==, 1);
  g_assert_true (gb_findings_afloat (findings, second->rec.id) == &findings->afloat[1]);
  g_assert_true (gb_findings_afloat (findings, first->id) == &findings->afloat[0]);
  g_assert_null (gb_findings_afloat (findings, 0));
  load->mass = 1;
  gb_findings_find (findings, boat, GB_TOUCHED_AFLOAT, TODAY);
  g_assert_cmpuint (findings->worst, ==, 0);

  /* The condition goes; without any there is one with nobody aboard. */
  gb_boat_remove (boat, GB_RECORD_LOAD, load->rec.id);
  gb_boat_remove (boat, GB_RECORD_CONDITION, second->rec.id);
  gb_boat_settle (boat);
  gb_findings_find (findings, boat, GB_TOUCHED_AFLOAT, TODAY);
  g_assert_cmpuint (findings->n_afloat, ==, 1);
  gb_boat_remove (boat, GB_RECORD_CONDITION, first->id);
  gb_boat_settle (boat);
  gb_findings_find (findings, boat, GB_TOUCHED_AFLOAT, TODAY);
  g_assert_nonnull (gb_findings_afloat (findings, 0));
  assert_near (findings->afloat[0].total, 49.5, 1e-9);
}

static void
test_tests_are_found (void)
{
  Punt punt = new_punt ();
  g_autoptr (GbBoat) boat = punt.boat;
  g_autoptr (GbFindings) findings = gb_findings_new ();
  gint64 condition = ((GbRecord *) gb_boat_all (boat, GB_RECORD_CONDITION)->pdata[0])->id;
  GbInclining *inclining = add_record (boat, GB_RECORD_INCLINING, 0);
  GbShift *shift = add_record (boat, GB_RECORD_SHIFT, inclining->rec.id);
  GbTub *tub = add_record (boat, GB_RECORD_TUB, 0);

  inclining->condition = tub->condition = condition;
  shift->mass = 10;
  shift->distance = 0.4;
  shift->angle = 0.02;
  tub->scale = 10;
  add_record (boat, GB_RECORD_TUB, 0);
  add_record (boat, GB_RECORD_INCLINING, 0);
  gb_boat_settle (boat);
  gb_findings_find (findings, boat, GB_TOUCHED_ALL, TODAY);
  gb_findings_find (findings, boat, GB_TOUCHED_AFLOAT, TODAY);
  g_assert_cmpuint (findings->n_inclined, ==, 2);
  g_assert_cmpint (findings->inclined[0].inclining, ==, inclining->rec.id);
  assert_near (findings->inclined[0].gm, 4 / (209.5 * tan (0.02)), 1e-9);
  g_assert_nonnull (findings->inclined[1].trouble);
  g_assert_cmpuint (findings->n_tubbed, ==, 2);
  g_assert_cmpint (findings->tubbed[0].tub, ==, tub->rec.id);
  assert_near (findings->tubbed[0].scale, 10, 0);
  g_assert_nonnull (findings->tubbed[1].trouble);
}

/* Whatever is in a build, and whatever was found before, the same is found; each hull is closed or says why not. */
static void
test_generated_builds (void)
{
  g_autoptr (GbFindings) used = gb_findings_new ();

  for (guint32 seed = 1; seed <= 20; seed++)
    {
      g_autoptr (GbBoat) boat = generate_boat (seed * 20, seed);
      g_autoptr (GbFindings) fresh = gb_findings_new ();

      gb_findings_find (used, boat, GB_TOUCHED_ALL, TODAY);
      gb_findings_find (fresh, boat, GB_TOUCHED_ALL, TODAY);
      for (guint i = 0; i < fresh->hulls.n_hulls; i++)
        g_assert_true (fresh->hulls.hulls[i].trouble != NULL || gb_mesh_is_closed (fresh->hulls.hulls[i].mesh));
      g_assert_cmpuint (fresh->costs.n_parts, ==, gb_boat_n (boat, GB_RECORD_PART));
      g_assert_cmpint (fresh->costs.forecast, !=, GB_MONEY_UNKNOWN);
      g_assert_cmpint (used->costs.forecast, ==, fresh->costs.forecast);
      g_assert_cmpmem (used->costs.parts, used->costs.n_parts * sizeof (GbPartCost), fresh->costs.parts,
                       fresh->costs.n_parts * sizeof (GbPartCost));
      g_assert_cmpmem (&used->flotation.limit, sizeof (GbHydrostatics), &fresh->flotation.limit, sizeof (GbHydrostatics));
      g_assert_cmpmem (&used->flotation.afloat, sizeof (GbHydrostatics), &fresh->flotation.afloat, sizeof (GbHydrostatics));
    }
}

static void
test_an_empty_build_and_its_end (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_autoptr (GbFindings) findings = gb_findings_new ();

  gb_findings_find (findings, boat, GB_TOUCHED_ALL, TODAY);
  g_assert_true (isnan (findings->flotation.total));
  g_assert_true (isnan (findings->flotation.limit.displacement));
  g_assert_cmpint (findings->costs.forecast, ==, 0);
  gb_findings_free (NULL);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/findings/each-feeds-the-next", test_each_feeds_the_next);
  g_test_add_func ("/findings/hulls-are-kept-unless-touched", test_hulls_are_kept_unless_touched);
  g_test_add_func ("/findings/weights-are-kept-unless-touched", test_weights_are_kept_unless_touched);
  g_test_add_func ("/findings/afloat-is-kept-unless-it-follows", test_afloat_is_kept_unless_it_follows);
  g_test_add_func ("/findings/edits-find-what-a-fresh-look-finds", test_edits_find_what_a_fresh_look_finds);
  g_test_add_func ("/findings/worst-condition", test_worst_condition);
  g_test_add_func ("/findings/tests-are-found", test_tests_are_found);
  g_test_add_func ("/findings/generated-builds", test_generated_builds);
  g_test_add_func ("/findings/an-empty-build-and-its-end", test_an_empty_build_and_its_end);
  return g_test_run ();
}
