/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The dear findings, condition by condition. */

#include "parts-fixture.h"

#include "engine/study.h"

static GbBoat *
new_punt (guint n_conditions)
{
  GbBoat *boat = gb_boat_new ();
  GbBuild *build = (GbBuild *) gb_boat_get (boat, GB_RECORD_BUILD, 1);
  GbPart *part = add_part (boat, 0, GB_TAKEOFF_LUMP, 2, 0, 0.2);

  build->water = GB_WATER_GIVEN;
  build->water_density = 1000;
  build->freeboard = 0.1;
  part->mass = 80;
  add_block (boat, 4, 1, 0.5);
  for (guint i = 0; i < n_conditions; i++)
    {
      GbCondition *condition = add_record (boat, GB_RECORD_CONDITION, 0);
      GbLoad *load = add_record (boat, GB_RECORD_LOAD, condition->rec.id);

      load->mass = 100 * (i + 1);
      load->x = 2;
      load->z = 0.3;
    }
  gb_boat_settle (boat);
  return boat;
}

static void
test_one_for_each_condition (void)
{
  g_autoptr (GbBoat) boat = new_punt (2);
  g_autoptr (GbFindings) findings = gb_findings_new ();
  g_autoptr (GPtrArray) studies = NULL;

  gb_findings_find (findings, boat, GB_TOUCHED_ALL, 738000);
  studies = gb_studies_find (boat, findings, NULL, NULL);
  g_assert_cmpuint (studies->len, ==, 2);
  for (guint i = 0; i < 2; i++)
    {
      const GbStudy *study = studies->pdata[i];

      g_assert_cmpint (study->condition, ==, findings->afloat[i].condition);
      assert_near (study->righting->total, findings->afloat[i].total, 1e-9);
      g_assert_cmpint (study->righting->condition, ==, study->condition);
      g_assert_cmpint (study->swamped->condition, ==, study->condition);
      g_assert_cmpint (study->rule->condition, ==, study->condition);
    }
}

static void
test_nobody_aboard (void)
{
  g_autoptr (GbBoat) boat = new_punt (0);
  g_autoptr (GbFindings) findings = gb_findings_new ();
  g_autoptr (GPtrArray) studies = NULL;
  g_autoptr (GbStudy) unknown = NULL;

  gb_findings_find (findings, boat, GB_TOUCHED_ALL, 738000);
  studies = gb_studies_find (boat, findings, NULL, NULL);
  g_assert_cmpuint (studies->len, ==, 1);
  assert_near (((const GbStudy *) studies->pdata[0])->righting->total, findings->afloat[0].total, 1e-9);

  /* A condition that is not there has no findings. */
  unknown = gb_study_find (boat, findings, 999999, NULL, NULL);
  g_assert_nonnull (unknown);
  g_assert_true (unknown->righting == NULL && unknown->swamped == NULL && unknown->rule == NULL);
}

static void
test_empty_build (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_autoptr (GbFindings) findings = gb_findings_new ();
  g_autoptr (GbStudy) study = NULL;

  gb_findings_find (findings, boat, GB_TOUCHED_ALL, 738000);
  study = gb_study_find (boat, findings, 0, NULL, NULL);
  g_assert_nonnull (study);
  g_assert_null (study->righting);
  gb_study_free (NULL);
}

static gboolean
count_down_cb (gpointer data)
{
  int *left = data;

  return --*left < 0;
}

/* Wherever it is cancelled, there is nothing, and nothing leaks. */
static void
test_cancel (void)
{
  g_autoptr (GbBoat) boat = new_punt (1);
  g_autoptr (GbFindings) findings = gb_findings_new ();
  gboolean done = FALSE;

  gb_findings_find (findings, boat, GB_TOUCHED_ALL, 738000);
  for (int n = 0; !done; n += 1 + n / 4)
    {
      int left = n;
      g_autoptr (GPtrArray) studies = gb_studies_find (boat, findings, count_down_cb, &left);

      done = studies != NULL;
      g_assert_true (done || left < 0);
      g_assert_cmpint (n, <, 100000);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/study/one-for-each-condition", test_one_for_each_condition);
  g_test_add_func ("/study/nobody-aboard", test_nobody_aboard);
  g_test_add_func ("/study/empty-build", test_empty_build);
  g_test_add_func ("/study/cancel", test_cancel);
  return g_test_run ();
}
