/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The demo builds: each packs, comes back as it was, and holds a boat that could be: bounds that a look at
 * the sizes gives. */

#include "fixture.h"

#include "store/text-form.h"

#include <math.h>
#include <string.h>

typedef struct
{
  const char *name;
  double light_min, light_max;         /* kg, without margin */
  double length, beam;                 /* m, of all of it: the centre lies within */
  double freeboard_min, freeboard_max; /* m, with the loads aboard */
  guint parts_min, parts_max;
  guint n_no_mass, n_no_place;
  guint n_conditions, n_inclined, n_tubbed;
  gboolean over_limit, over_target, over_budget;
} Demo;

static const Demo demos[] = {
  { "plover", 30, 40, 2.44, 1.23, 0.2, 0.3, 38, 48, 1, 1, 4, 0, 1, FALSE, FALSE, FALSE },
  { "reedling", 20, 26, 4.88, 0.84, 0.152, 0.2, 22, 32, 0, 0, 3, 0, 1, FALSE, FALSE, FALSE },
  { "petrel", 70, 100, 5.2, 4.0, 0.2, 0.28, 35, 48, 0, 0, 4, 1, 0, TRUE, TRUE, TRUE },
};

static char *
read_text (const Demo *demo)
{
  g_autofree char *path
    = g_strdup_printf ("%s/../demo-projects/%s.json", g_getenv ("G_TEST_SRCDIR"), demo->name);
  g_autoptr (GError) error = NULL;
  char *text = NULL;

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  return text;
}

static GbBoat *
read_demo (const Demo *demo)
{
  g_autofree char *text = read_text (demo);
  g_autoptr (GError) error = NULL;
  GbBoat *boat = gb_text_form_read (text, -1, &error);

  g_assert_no_error (error);
  return boat;
}

static void
test_there_and_back (gconstpointer data)
{
  g_autoptr (GbBoat) boat = read_demo (data);
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbStore) store = scratch_store (scratch, boat);
  g_autoptr (GbBoat) loaded = scratch_load (store);
  g_autofree char *first = gb_text_form_write (boat);
  g_autofree char *second = gb_text_form_write (loaded);
  g_autoptr (GbBoat) again = gb_text_form_read (second, -1, NULL);
  g_autoptr (GPtrArray) faults = gb_store_check (store);

  scratch_assert_equal (boat, loaded);
  scratch_assert_equal (boat, again);
  g_assert_cmpstr (first, ==, second);
  g_assert_cmpuint (faults->len, ==, 0);
}

static void
assert_mass (const Demo *demo, const GbMass *mass)
{
  g_assert_cmpfloat (mass->mass, >, demo->light_min);
  g_assert_cmpfloat (mass->mass, <, demo->light_max);
  g_assert_cmpfloat (mass->mass_sd, >, 0);
  g_assert_cmpfloat (mass->mass_sd, <, mass->mass * 0.1);
  g_assert_cmpfloat (mass->x, >, 0.3 * demo->length);
  g_assert_cmpfloat (mass->x, <, 0.7 * demo->length);
  g_assert_cmpfloat (fabs (mass->y), <, demo->beam / 4);
  g_assert_cmpfloat (mass->z, >, 0);
  g_assert_cmpfloat (mass->z, <, 1);
  g_assert_cmpuint (mass->n_parts, >=, demo->parts_min);
  g_assert_cmpuint (mass->n_parts, <=, demo->parts_max);
  g_assert_cmpuint (mass->n_no_mass, ==, demo->n_no_mass);
  g_assert_cmpuint (mass->n_no_place, ==, demo->n_no_place);
}

static void
assert_afloat (const Demo *demo, const GbFlotation *flotation)
{
  g_assert_cmpuint (flotation->n_bad_hulls, ==, 0);
  g_assert_false (flotation->sinks);
  g_assert_cmpfloat (flotation->afloat.freeboard, >, demo->freeboard_min);
  g_assert_cmpfloat (flotation->afloat.freeboard, <, demo->freeboard_max);
  g_assert_cmpint (flotation->left < 0, ==, demo->over_limit);
  if (!demo->over_limit)
    g_assert_cmpfloat (flotation->chance, <, 0.05);
}

static void
test_makes_sense (gconstpointer data)
{
  const Demo *demo = data;
  g_autoptr (GbBoat) boat = read_demo (demo);
  g_autoptr (GbFindings) findings = gb_findings_new ();
  g_autoptr (GPtrArray) verdicts = NULL;
  guint n_passed = 0;

  gb_findings_find (findings, boat, GB_TOUCHED_ALL, gb_today ());
  assert_mass (demo, &findings->rollup.boat);
  assert_afloat (demo, &findings->flotation);
  g_assert_cmpint (findings->rollup.boat.mass + findings->rollup.margin.total
                     > gb_boat_build (boat)->target_mass,
                   ==, demo->over_target);
  g_assert_cmpint (findings->costs.forecast > findings->costs.budget, ==, demo->over_budget);
  g_assert_cmpuint (findings->costs.n_future, ==, 0);
  g_assert_cmpint (findings->costs.spent, >, 0);

  verdicts = gb_findings_verdicts (boat, findings);
  for (guint i = 0; i < verdicts->len; i++)
    n_passed += ((const GbVerdict *) verdicts->pdata[i])->kind == GB_VERDICT_PASSED;
  g_assert_cmpint (n_passed > 0, ==, demo->over_limit);
}

static void
assert_rests (const GbAfloat *afloat)
{
  g_assert_cmpint (afloat->state, ==, GB_AFLOAT_FLOATS);
  g_assert_cmpuint (afloat->troubles->len, ==, 0);
  g_assert_cmpfloat (afloat->gm, >, 0.05);
  g_assert_cmpfloat (fabs (afloat->heel), <, 6 * G_PI / 180);
  g_assert_cmpfloat (fabs (afloat->trim), <, 4 * G_PI / 180);
  g_assert_cmpfloat (afloat->least.freeboard, >, 0.15);
}

/* The weights that were moved say the same height of the centre as the list of parts, within what the readings are good for. */
static void
assert_inclined (const GbInclined *inclined)
{
  g_assert_null (inclined->trouble);
  g_assert_cmpuint (inclined->n, >=, 3);
  g_assert_cmpfloat (fabs (inclined->gm - inclined->computed_gm), <, 2 * inclined->gm_sd);
}

/* And the model lies as the boat is found to, within a millimetre on the model. */
static void
assert_tubbed (const GbTubbed *tubbed)
{
  double read = 0.0011 * tubbed->scale;

  g_assert_null (tubbed->trouble);
  g_assert_cmpfloat (fabs (tubbed->draught_fore - tubbed->own_fore), <, read);
  g_assert_cmpfloat (fabs (tubbed->draught_aft - tubbed->own_aft), <, read);
}

/* In each condition she floats as one that could be used. */
static void
test_floats_sensibly (gconstpointer data)
{
  const Demo *demo = data;
  g_autoptr (GbBoat) boat = read_demo (demo);
  g_autoptr (GbFindings) findings = gb_findings_new ();

  gb_findings_find (findings, boat, GB_TOUCHED_ALL, gb_today ());
  g_assert_cmpuint (findings->edges.troubles->len, ==, 0);
  g_assert_cmpuint (findings->n_afloat, ==, demo->n_conditions);
  g_assert_cmpuint (findings->n_inclined, ==, demo->n_inclined);
  g_assert_cmpuint (findings->n_tubbed, ==, demo->n_tubbed);
  for (guint i = 0; i < findings->n_afloat; i++)
    assert_rests (&findings->afloat[i]);
  for (guint i = 0; i < findings->n_inclined; i++)
    assert_inclined (&findings->inclined[i]);
  for (guint i = 0; i < findings->n_tubbed; i++)
    assert_tubbed (&findings->tubbed[i]);
}

/* A group on the scale says much the same as its list: a slip of the pen in a demo would show here. */
static void
test_scale_and_list_agree (gconstpointer data)
{
  g_autoptr (GbBoat) boat = read_demo (data);
  g_autoptr (GbFindings) findings = gb_findings_new ();

  gb_findings_find (findings, boat, GB_TOUCHED_ALL, gb_today ());
  g_assert_cmpuint (findings->rollup.n_weighings, >, 0);
  for (guint i = 0; i < findings->rollup.n_weighings; i++)
    {
      const GbWeighed *weighed = &findings->rollup.weighings[i];

      g_assert_cmpfloat (weighed->mass / weighed->listed, >, 0.8);
      g_assert_cmpfloat (weighed->mass / weighed->listed, <, 1.6);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (demos); i++)
    {
      g_autofree char *back = g_strdup_printf ("/project/demos/%s/there-and-back", demos[i].name);
      g_autofree char *sense = g_strdup_printf ("/project/demos/%s/makes-sense", demos[i].name);
      g_autofree char *floats = g_strdup_printf ("/project/demos/%s/floats-sensibly", demos[i].name);
      g_autofree char *scale = g_strdup_printf ("/project/demos/%s/scale", demos[i].name);

      g_test_add_data_func (back, &demos[i], test_there_and_back);
      g_test_add_data_func (sense, &demos[i], test_makes_sense);
      g_test_add_data_func (floats, &demos[i], test_floats_sensibly);
      g_test_add_data_func (scale, &demos[i], test_scale_and_list_agree);
    }
  return g_test_run ();
}
