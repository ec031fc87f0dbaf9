/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What workers find of floating: asked once, told by a signal, forgotten by a change; an answer to an old
 * question never lands. */

#include "fixture.h"
#include "project/project-study.h"

#include <math.h>

#define TWO_UP 1
#define CREW 1
#define DOG 2

/* What was heard of "study-found". */
typedef struct
{
  GbProject *project;
  guint n;
  gint64 condition; /* the last */
  guint rows;       /* of the crew map, when last heard */
  gboolean rows_fell;
  gint64 load; /* whose map is looked at; 0: none */
} Heard;

static void
found_cb (GbProject *project, gint64 condition, gpointer data)
{
  Heard *heard = data;
  const GbCrewMap *map = heard->load != 0 ? gb_project_get_crew_map (project, condition, heard->load) : NULL;

  heard->n++;
  heard->condition = condition;
  if (map == NULL)
    return;
  g_assert_cmpint (map->load, ==, heard->load);
  heard->rows_fell = heard->rows_fell || map->n_rows_found < heard->rows;
  heard->rows = map->n_rows_found;
}

static gboolean
too_long_cb (gpointer what)
{
  g_error ("waited too long for %s", (const char *) what);
  return G_SOURCE_REMOVE;
}

#define wait_until(condition)                                                                                \
  do                                                                                                         \
    {                                                                                                        \
      guint watchdog = g_timeout_add_seconds (60, too_long_cb, (gpointer) #condition);                       \
      while (!(condition))                                                                                   \
        g_main_context_iteration (NULL, TRUE);                                                               \
      g_source_remove (watchdog);                                                                            \
    }                                                                                                        \
  while (0)

/* Long enough for a worker that goes on when it should not. */
static void
wait_a_while (void)
{
  for (guint i = 0; i < 100; i++)
    {
      while (g_main_context_iteration (NULL, FALSE))
        ;
      g_usleep (2000);
    }
}

static Heard
listen (GbProject *project)
{
  return (Heard){ .project = project };
}

static void
set_mast (GbProject *project, double mass)
{
  GbValue value = { .storage = GB_STORAGE_REAL, .real = mass };
  g_autoptr (GError) error = NULL;

  gb_project_set (project, GB_RECORD_PART, MAST, fixture_field ("mass"), &value, &error);
  g_assert_no_error (error);
}

/* The fixture's build, with a dog in the same condition. */
static GbProject *
open_with_dog (Scratch *scratch)
{
  g_autoptr (GbBoat) boat = fixture_boat ();
  g_autofree char *path = g_build_filename (scratch->folder, "dog.garboard", NULL);
  GbLoad *dog = (GbLoad *) gb_record_copy (gb_boat_get (boat, GB_RECORD_LOAD, CREW));
  g_autoptr (GError) error = NULL;
  GbProject *project;

  dog->rec.id = dog->rec.position = DOG;
  dog->kind = GB_LOAD_CARGO;
  dog->mass = 20;
  gb_boat_take (boat, &dog->rec);
  gb_boat_settle (boat);
  project = gb_project_create (path, boat, &error);
  g_assert_no_error (error);
  return project;
}

static double
total (GbProject *project)
{
  return gb_findings_afloat (gb_project_get_findings (project), TWO_UP)->total;
}

static void
test_study (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch);
  Heard heard = listen (project);
  const GbStudy *study;

  g_signal_connect (project, "study-found", G_CALLBACK (found_cb), &heard);
  g_assert_null (gb_project_get_study (project, TWO_UP));
  g_assert_null (gb_project_get_study (project, TWO_UP)); /* asked for already */
  g_assert_null (gb_project_get_study (project, 77));     /* there is none */
  wait_until (heard.n > 0);
  g_assert_cmpint (heard.condition, ==, TWO_UP);
  study = gb_project_get_study (project, TWO_UP);
  g_assert_nonnull (study);
  g_assert_true (gb_project_get_study (project, TWO_UP) == study);
  g_assert_nonnull (study->righting);
  g_assert_nonnull (study->swamped);
  g_assert_nonnull (study->rule);
  g_assert_cmpfloat_with_epsilon (study->righting->total, total (project), 1e-9);
  wait_a_while ();
  g_assert_cmpuint (heard.n, ==, 1);
  g_assert_finalize_object (project);
}

static void
test_changes_forget (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch);
  Heard heard = listen (project);

  g_signal_connect (project, "study-found", G_CALLBACK (found_cb), &heard);
  g_assert_null (gb_project_get_study (project, TWO_UP));
  wait_until (heard.n == 1);
  /* At every stage of the way: not begun, copying, on a worker. */
  for (guint i = 0; i < 20; i++)
    {
      set_mast (project, 4 + i);
      g_assert_null (gb_project_get_study (project, TWO_UP));
      for (guint step = 0; step < i; step++)
        g_main_context_iteration (NULL, FALSE);
    }
  wait_until (gb_project_get_study (project, TWO_UP) != NULL);
  g_assert_cmpfloat_with_epsilon (gb_project_get_study (project, TWO_UP)->righting->total, total (project),
                                  1e-9);
  set_mast (project, 40);
  g_assert_null (gb_project_get_study (project, TWO_UP));
  wait_until (gb_project_get_study (project, TWO_UP) != NULL);
  g_assert_cmpfloat_with_epsilon (gb_project_get_study (project, TWO_UP)->righting->total, total (project),
                                  1e-9);
  g_assert_finalize_object (project);
}

static void
test_what_nobody_asks_is_not_found (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch);
  Heard heard = listen (project);

  g_signal_connect (project, "study-found", G_CALLBACK (found_cb), &heard);
  g_assert_null (gb_project_get_study (project, TWO_UP));
  g_assert_null (gb_project_get_crew_map (project, TWO_UP, CREW));
  set_mast (project, 4);
  wait_a_while ();
  g_assert_cmpuint (heard.n, ==, 0);
  g_assert_finalize_object (project);
}

static void
test_map_comes_in_rows (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch);
  Heard heard = listen (project);
  const GbCrewMap *map;
  guint n;

  heard.load = CREW;
  g_signal_connect (project, "study-found", G_CALLBACK (found_cb), &heard);
  g_assert_null (gb_project_get_crew_map (project, TWO_UP, CREW));
  g_assert_null (gb_project_get_crew_map (project, 77, CREW)); /* it is not in that condition */
  g_assert_null (gb_project_get_crew_map (project, TWO_UP, 77));
  g_assert_null (gb_project_get_crew_map (project, TWO_UP, CREW));
  wait_until (heard.rows == GB_MAP_ROWS);
  g_assert_false (heard.rows_fell);
  wait_until (!isnan (gb_project_get_crew_map (project, TWO_UP, CREW)->best_freeboard));
  map = gb_project_get_crew_map (project, TWO_UP, CREW);
  g_assert_cmpuint (map->n_rows_found, ==, GB_MAP_ROWS);
  /* Amidships is best in a box, and the same way out on either side. */
  g_assert_cmpfloat_with_epsilon (map->best.y, 0, 0.05);
  g_assert_cmpfloat_with_epsilon (fabs (map->furthest_starboard), fabs (map->furthest_port), 0.02);
  n = heard.n;
  wait_a_while ();
  g_assert_cmpuint (heard.n, ==, n); /* whole, and not asked for again */
  g_assert_true (gb_project_get_crew_map (project, TWO_UP, CREW) == map);
  g_assert_finalize_object (project);
}

static void
test_another_load_cancels (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = open_with_dog (scratch);
  Heard heard = listen (project);

  heard.load = CREW;
  g_signal_connect (project, "study-found", G_CALLBACK (found_cb), &heard);
  g_assert_null (gb_project_get_crew_map (project, TWO_UP, CREW));
  wait_until (heard.n > 0);
  heard.load = DOG; /* from now on a map of the crew would be a late answer */
  heard.rows = 0;
  g_assert_null (gb_project_get_crew_map (project, TWO_UP, DOG));
  wait_until (heard.rows == GB_MAP_ROWS);
  g_assert_false (heard.rows_fell);
  g_assert_finalize_object (project);
}

static void
test_edit_cancels_the_map (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch);
  Heard heard = listen (project);
  guint n;

  g_signal_connect (project, "study-found", G_CALLBACK (found_cb), &heard);
  g_assert_null (gb_project_get_crew_map (project, TWO_UP, CREW));
  wait_until (heard.n > 0);
  set_mast (project, 5);
  n = heard.n;
  wait_a_while ();
  g_assert_cmpuint (heard.n, ==, n);
  g_assert_null (gb_project_get_crew_map (project, TWO_UP, CREW));
  wait_until (heard.n > n);
  g_assert_nonnull (gb_project_get_crew_map (project, TWO_UP, CREW));
  g_assert_finalize_object (project);
}

static void
test_closing_while_workers_work (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();

  for (guint steps = 0; steps < 6; steps++)
    {
      g_autofree char *path = g_strdup_printf ("%s/closing-%u.garboard", scratch->folder, steps);
      g_autoptr (GbBoat) boat = fixture_boat ();
      GbProject *project = gb_project_create (path, boat, NULL);

      g_assert_null (gb_project_get_study (project, TWO_UP));
      g_assert_null (gb_project_get_history (project));
      g_assert_null (gb_project_get_crew_map (project, TWO_UP, CREW));
      for (guint i = 0; i < steps; i++)
        {
          g_main_context_iteration (NULL, FALSE);
          g_usleep (2000);
        }
      g_assert_finalize_object (project);
    }
  wait_a_while ();
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/project/study/study", test_study);
  g_test_add_func ("/project/study/changes-forget", test_changes_forget);
  g_test_add_func ("/project/study/nobody-asks", test_what_nobody_asks_is_not_found);
  g_test_add_func ("/project/study/map-in-rows", test_map_comes_in_rows);
  g_test_add_func ("/project/study/another-load", test_another_load_cancels);
  g_test_add_func ("/project/study/edit-cancels-map", test_edit_cancels_the_map);
  g_test_add_func ("/project/study/closing", test_closing_while_workers_work);
  return g_test_run ();
}
