/* SPDX-License-Identifier: GPL-3.0-or-later */

/* How the forecast went from day to day of weighing. */

#include "engine/history.h"
#include "rollup-fixture.h"

#define DAY 740000

static void
test_days_of_weighing (void)
{
  g_auto (Case) c = new_case ();
  GbPart *one = add_lump (c.boat, 0, 10, 0, 0, 0), *two = add_lump (c.boat, 0, 20, 0, 0, 0);
  g_autoptr (GbHistory) history = NULL;

  weigh (c.boat, two->rec.id, DAY + 9, 24);
  weigh (c.boat, one->rec.id, DAY, 12);
  weigh (c.boat, one->rec.id, DAY + 9, 11);
  weigh (c.boat, one->rec.id, DAY, 13); /* the later one of that day */
  gb_boat_settle (c.boat);
  history = gb_history_find (c.boat, NULL, NULL);
  g_assert_cmpuint (history->n_points, ==, 3);

  g_assert_cmpint (history->points[0].date, ==, 0);
  assert_near (history->points[0].mass, 30 * 1.15, 1e-13); /* with 15 % margin on what is estimated */
  assert_near (history->points[0].mass_sd, 0.15 * sqrt (500), 1e-13);
  assert_near (history->points[0].weighed_share, 0, 0);

  g_assert_cmpint (history->points[1].date, ==, DAY);
  assert_near (history->points[1].mass, 13 + 20 * 1.15, 1e-13);
  assert_near (history->points[1].weighed_share, 13.0 / 33, 1e-15);

  g_assert_cmpint (history->points[2].date, ==, DAY + 9);
  assert_near (history->points[2].mass, 35, 1e-13);
  assert_near (history->points[2].weighed_share, 1, 1e-15);
  g_assert_cmpfloat (history->points[2].mass_sd, <, 0.2);
}

static void
test_weighings_without_a_date (void)
{
  g_auto (Case) c = new_case ();
  GbPart *one = add_lump (c.boat, 0, 10, 0, 0, 0), *two = add_lump (c.boat, 0, 20, 0, 0, 0);
  g_autoptr (GbHistory) history = NULL;

  weigh (c.boat, one->rec.id, 0, 12);
  weigh (c.boat, two->rec.id, DAY, 20);
  gb_boat_settle (c.boat);
  history = gb_history_find (c.boat, NULL, NULL);
  g_assert_cmpuint (history->n_points, ==, 2);
  assert_near (history->points[0].mass, 34.5, 1e-13);
  assert_near (history->points[1].mass, 32, 1e-13);
}

static void
test_nothing_weighed_and_nothing_listed (void)
{
  g_auto (Case) c = new_case ();
  g_autoptr (GbHistory) history = gb_history_find (c.boat, NULL, NULL);

  g_assert_cmpuint (history->n_points, ==, 1);
  assert_near (history->points[0].mass, 0, 0);
  assert_near (history->points[0].weighed_share, 0, 0);
}

static gboolean
cancelled_after_two_cb (gpointer data)
{
  return ++*(guint *) data > 2;
}

static void
test_it_ends_early_where_it_is_cancelled (void)
{
  g_auto (Case) c = new_case ();
  GbPart *part = add_lump (c.boat, 0, 10, 0, 0, 0);
  g_autoptr (GbHistory) history = NULL;
  guint asked = 0;

  for (guint i = 0; i < 10; i++)
    weigh (c.boat, part->rec.id, DAY + i, 10 + i);
  gb_boat_settle (c.boat);
  history = gb_history_find (c.boat, cancelled_after_two_cb, &asked);
  g_assert_cmpuint (history->n_points, ==, 2);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/history/days-of-weighing", test_days_of_weighing);
  g_test_add_func ("/history/without-a-date", test_weighings_without_a_date);
  g_test_add_func ("/history/nothing", test_nothing_weighed_and_nothing_listed);
  g_test_add_func ("/history/cancelled", test_it_ends_early_where_it_is_cancelled);
  return g_test_run ();
}
