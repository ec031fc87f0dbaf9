/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The living document: opening, the way of one edit, signals and properties, other programs, the history on
 * its worker. */

#include "fixture.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>
#include <unistd.h>

/* What the project said, in order, as one line. */
typedef struct
{
  GString *said;
  GbChanges *changes; /* of the last "changed" */
} Heard;

static void
changed_cb (GbProject *project, const GbChanges *changes, gpointer data)
{
  Heard *heard = data;

  /* The findings are fresh when it is said. */
  g_assert_cmpuint (gb_project_get_findings (project)->rollup.n_parts, ==,
                    gb_boat_n (gb_project_get_boat (project), GB_RECORD_PART));
  g_string_append (heard->said, "changed ");
  g_clear_pointer (&heard->changes, gb_changes_free);
  heard->changes = gb_changes_new ();
  heard->changes->all = changes->all;
  for (guint i = 0; i < changes->changes->len; i++)
    {
      const GbChange *change = &g_array_index (changes->changes, GbChange, i);

      gb_changes_add (heard->changes, change->kind, change->op, change->id);
    }
}

static void
place_cb (GbProject *project, const GbPlace *place, gpointer data)
{
  g_string_append_printf (((Heard *) data)->said, "place:%s ", place->field != NULL ? place->field : "-");
}

static void
notify_cb (GbProject *project, GParamSpec *pspec, gpointer data)
{
  g_string_append_printf (((Heard *) data)->said, "%s ", pspec->name);
}

static Heard *
listen (GbProject *project)
{
  Heard *heard = g_new0 (Heard, 1);

  heard->said = g_string_new (NULL);
  g_signal_connect (project, "changed", G_CALLBACK (changed_cb), heard);
  g_signal_connect (project, "place", G_CALLBACK (place_cb), heard);
  g_signal_connect (project, "notify", G_CALLBACK (notify_cb), heard);
  return heard;
}

static void
heard_free (Heard *heard)
{
  g_string_free (heard->said, TRUE);
  g_clear_pointer (&heard->changes, gb_changes_free);
  g_free (heard);
}

static void
assert_heard (Heard *heard, const char *expected)
{
  g_assert_cmpstr (heard->said->str, ==, expected);
  g_string_truncate (heard->said, 0);
}

static void
set_thickness (GbProject *project, double thickness)
{
  GbValue value = GB_VALUE_REAL (thickness);
  g_autoptr (GError) error = NULL;

  g_assert_true (gb_project_set (project, GB_RECORD_PART, SIDE, fixture_field ("thickness"), &value, &error));
  g_assert_no_error (error);
}

static double
side_mass (GbProject *project)
{
  return gb_rollup_part (&gb_project_get_findings (project)->rollup, fixture_part (project, SIDE))->mass;
}

static void
test_create_and_open (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = gb_project_create (scratch->path, NULL, NULL);
  g_autoptr (GError) error = NULL;

  g_assert_cmpstr (gb_project_get_path (project), ==, scratch->path);
  g_assert_null (gb_project_get_title (project));
  g_assert_null (gb_project_get_read_only_reason (project));
  g_assert_cmpuint (gb_boat_n (gb_project_get_boat (project), GB_RECORD_PART), ==, 0);
  g_assert_null (gb_project_create (scratch->path, NULL, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_EXISTS);
  g_clear_error (&error);
  g_assert_finalize_object (project);
  g_assert_null (gb_project_open ("/nowhere/at/all.garboard", TRUE, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_NOT_FOUND);
}

/* 2 x 0.4 m2 x thickness x 450 kg/m3. */
static void
test_the_way_of_one_edit (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch);
  Heard *heard = listen (project);

  g_assert_cmpfloat_with_epsilon (side_mass (project), 2 * 0.4 * 0.006 * 450, 1e-12);
  set_thickness (project, 0.004);
  assert_heard (heard, "changed can-undo undo-words ");
  g_assert_cmpuint (heard->changes->changes->len, ==, 1);
  g_assert_cmpint (g_array_index (heard->changes->changes, GbChange, 0).op, ==, GB_CHANGE_FIELDS);
  g_assert_cmpint (g_array_index (heard->changes->changes, GbChange, 0).id, ==, SIDE);
  g_assert_cmpfloat_with_epsilon (side_mass (project), 2 * 0.4 * 0.004 * 450, 1e-12);
  g_assert_nonnull (gb_project_get_kept_at (project));
  fixture_assert_fresh (project);

  g_assert_true (gb_project_undo (project, NULL));
  assert_heard (heard, "changed can-redo redo-words can-undo undo-words place:thickness ");
  g_assert_true (gb_project_redo (project, NULL));
  assert_heard (heard, "changed can-redo redo-words can-undo undo-words place:thickness ");
  heard_free (heard);
  g_assert_finalize_object (project);
}

static void
test_properties (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch);
  Heard *heard = listen (project);
  g_autofree char *title = NULL, *undo = NULL, *redo = NULL;
  gboolean can_undo, can_redo, read_only;
  GbValue name = GB_VALUE_TEXT ("Dabchick");

  g_assert_true (
    gb_project_set (project, GB_RECORD_BUILD, 1, gb_field (GB_RECORD_BUILD, "name"), &name, NULL));
  gb_value_clear (&name);
  assert_heard (heard, "changed can-undo undo-words title ");
  g_object_get (project, "title", &title, "undo-words", &undo, "redo-words", &redo, "can-undo", &can_undo,
                "can-redo", &can_redo, "read-only", &read_only, NULL);
  g_assert_cmpstr (title, ==, "Dabchick");
  g_assert_cmpstr (undo, ==, "name of Plover");
  g_assert_null (redo);
  g_assert_true (can_undo && !can_redo && !read_only);
  heard_free (heard);
  g_assert_finalize_object (project);
}

static void
close_cb (GbProject *project, const GbChanges *changes, gpointer data)
{
  g_clear_object ((GbProject **) data);
}

static void
test_a_handler_may_close_it (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch);

  set_thickness (project, 0.004);
  g_signal_connect (project, "changed", G_CALLBACK (close_cb), &project);
  g_assert_true (gb_project_undo (project, NULL));
  g_assert_null (project);
}

static void
test_nothing_to_undo (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch);
  g_autoptr (GError) error = NULL;

  g_assert_false (gb_project_undo (project, &error));
  g_assert_nonnull (error);
  g_clear_error (&error);
  g_assert_false (gb_project_redo (project, &error));
  g_assert_nonnull (error);
  g_assert_finalize_object (project);
}

static void
test_undo_survives_closing (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch);

  set_thickness (project, 0.004);
  g_assert_finalize_object (project);
  project = gb_project_open (scratch->path, FALSE, NULL);
  g_assert_cmpstr (gb_project_get_undo_words (project), ==, "thickness of Side panel");
  g_assert_cmpfloat (fixture_part (project, SIDE)->thickness, ==, 0.004);
  g_assert_true (gb_project_undo (project, NULL));
  g_assert_finalize_object (project);
}

/* Several records in one edit, referring to each other; its place is the first new one. */
static void
test_apply (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch);
  g_autoptr (GbBoat) before = gb_boat_copy (gb_project_get_boat (project));
  GbEdit *edit = gb_edit_new ("import of 2 parts", GB_RECORD_PART, 0, NULL);
  GbRecord *group = gb_record_new (GB_RECORD_PART), *part = gb_record_new (GB_RECORD_PART);
  g_autoptr (GError) error = NULL;
  const GbPart *last;

  ((GbPart *) group)->name = g_strdup ("Foils");
  ((GbPart *) group)->kind = GB_KIND_GROUP;
  part->owner = gb_edit_put (edit, group);
  ((GbPart *) part)->name = g_strdup ("Rudder");
  gb_edit_put (edit, part);
  g_assert_true (gb_project_apply (project, edit, &error));
  g_assert_no_error (error);
  last = gb_boat_roots (gb_project_get_boat (project), GB_RECORD_PART)->pdata[3];
  g_assert_cmpstr (last->name, ==, "Foils");
  g_assert_cmpuint (last->n_below, ==, 1);
  fixture_assert_undo (project, "import of 2 parts", before);
  g_assert_finalize_object (project);
}

static void
test_an_edit_that_breaks_a_rule_changes_nothing (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch);
  Heard *heard = listen (project);
  GbEdit *edit = gb_edit_new ("words", GB_RECORD_PART, 0, NULL);
  g_autoptr (GbBoat) before = gb_boat_copy (gb_project_get_boat (project));
  GbRecord *good = gb_record_new (GB_RECORD_PART), *bad = gb_record_new (GB_RECORD_PART);
  g_autoptr (GError) error = NULL;

  ((GbPart *) good)->name = g_strdup ("Good");
  ((GbPart *) bad)->name = g_strdup ("Bad");
  ((GbPart *) bad)->hull = 77;
  gb_edit_put (edit, good);
  gb_edit_put (edit, bad);
  g_assert_false (gb_project_apply (project, edit, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, "Hull: "));
  assert_heard (heard, "");
  scratch_assert_equal (gb_project_get_boat (project), before);
  fixture_assert_fresh (project);
  heard_free (heard);
  g_assert_finalize_object (project);
}

static void
test_read_only (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch);
  GbValue value = GB_VALUE_REAL (0.004);
  const gint64 id = SIDE;
  g_autoptr (GError) error = NULL;

  if (geteuid () == 0)
    {
      g_test_skip ("root may write everywhere");
      g_object_unref (project);
      return;
    }
  set_thickness (project, 0.005);
  g_object_unref (project);
  g_chmod (scratch->path, 0444);
  project = gb_project_open (scratch->path, TRUE, &error);
  g_assert_no_error (error);
  g_assert_nonnull (gb_project_get_read_only_reason (project));
  g_assert_false (
    gb_project_set (project, GB_RECORD_PART, SIDE, fixture_field ("thickness"), &value, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_READ_ONLY);
  g_assert_cmpstr (error->message, ==, gb_project_get_read_only_reason (project));
  g_clear_error (&error);
  g_assert_false (gb_project_remove (project, GB_RECORD_PART, &id, 1, &error));
  g_clear_error (&error);
  g_assert_false (gb_project_undo (project, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_READ_ONLY);
  g_object_unref (project);
  g_chmod (scratch->path, 0644);
}

/* A file of a newer Garboard can be looked at, whoever asks. */
static void
test_newer_is_read_only (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch);
  GbValue value = GB_VALUE_REAL (0.004);
  g_autoptr (GError) error = NULL;

  g_object_unref (project);
  scratch_sql (scratch->path, "PRAGMA user_version = 1000000");
  project = gb_project_open (scratch->path, TRUE, &error);
  g_assert_no_error (error);
  g_assert_false (
    gb_project_set (project, GB_RECORD_PART, SIDE, fixture_field ("thickness"), &value, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_READ_ONLY);
  g_clear_error (&error);
  g_assert_false (gb_project_redo (project, &error));
  g_assert_cmpstr (error->message, ==, gb_project_get_read_only_reason (project));
  g_assert_finalize_object (project);
}

static void
test_changes_elsewhere (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch), *other = gb_project_open (scratch->path, FALSE, NULL);
  Heard *heard = listen (project);
  const GbPart *side = fixture_part (project, SIDE);

  g_assert_false (gb_project_look_elsewhere (project));
  set_thickness (other, 0.009);
  g_assert_true (gb_project_look_elsewhere (project));
  assert_heard (heard, "changed can-undo undo-words ");
  g_assert_true (heard->changes->all);
  g_assert_cmpfloat (side->thickness, ==, 0.009); /* records stay where they are */
  g_assert_false (gb_project_look_elsewhere (project));
  /* The other one's edit is undone here, and seen there. */
  g_assert_true (gb_project_undo (project, NULL));
  g_assert_true (gb_project_look_elsewhere (other));
  g_assert_true (isnan (fixture_part (other, SIDE)->thickness));
  heard_free (heard);
  g_assert_finalize_object (other);
  g_assert_finalize_object (project);
}

/* An edit made from old rows would write them over the new ones: it is refused, once. */
static void
test_an_edit_does_not_run_over_another_programs (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch), *other = gb_project_open (scratch->path, FALSE, NULL);
  GbValue value = GB_VALUE_REAL (0.7);
  g_autoptr (GError) error = NULL;

  set_thickness (other, 0.009);
  g_assert_false (gb_project_set (project, GB_RECORD_PART, SIDE, fixture_field ("area"), &value, &error));
  g_assert_nonnull (strstr (error->message, "Another program"));
  g_assert_cmpfloat (fixture_part (project, SIDE)->thickness, ==, 0.009);
  g_assert_true (gb_project_set (project, GB_RECORD_PART, SIDE, fixture_field ("area"), &value, NULL));
  g_assert_cmpfloat (fixture_part (project, SIDE)->thickness, ==, 0.009);
  fixture_assert_fresh (project);
  g_object_unref (other);
  g_assert_finalize_object (project);
}

static gboolean
too_long_cb (gpointer what)
{
  g_error ("waited in vain for %s", (const char *) what);
  return G_SOURCE_REMOVE;
}

static void
test_a_running_loop_looks_elsewhere (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch), *other = gb_project_open (scratch->path, FALSE, NULL);
  Heard *heard = listen (project);
  guint watchdog = g_timeout_add_seconds (30, too_long_cb, (gpointer) "another program's change");

  set_thickness (other, 0.009);
  while (heard->said->len == 0)
    g_main_context_iteration (NULL, TRUE);
  g_source_remove (watchdog);
  g_assert_cmpfloat (fixture_part (project, SIDE)->thickness, ==, 0.009);
  heard_free (heard);
  g_assert_finalize_object (other);
  g_assert_finalize_object (project);
}

/* The history -------------------------------------------------------------------------------------------- */

static void
count_cb (GbProject *project, gpointer data)
{
  (*(guint *) data)++;
}

static void
wait_for (const guint *count, guint wanted)
{
  guint watchdog = g_timeout_add_seconds (30, too_long_cb, (gpointer) "the history");

  while (*count < wanted)
    g_main_context_iteration (NULL, TRUE);
  g_source_remove (watchdog);
}

static void
test_history (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch);
  const GbHistory *history;
  guint found = 0;

  g_signal_connect (project, "history-found", G_CALLBACK (count_cb), &found);
  g_assert_null (gb_project_get_history (project));
  g_assert_null (gb_project_get_history (project)); /* asked for already */
  wait_for (&found, 1);
  history = gb_project_get_history (project);
  g_assert_nonnull (history);
  g_assert_cmpuint (history->n_points, ==, 2); /* before anything was weighed, and the one day */

  /* An edit makes it unknown; what is asked meanwhile is dropped; one answer comes. */
  set_thickness (project, 0.004);
  g_assert_null (gb_project_get_history (project));
  set_thickness (project, 0.005);
  set_thickness (project, 0.003);
  g_assert_null (gb_project_get_history (project));
  wait_for (&found, 2);
  g_assert_nonnull (gb_project_get_history (project));
  g_assert_cmpfloat_with_epsilon (gb_project_get_history (project)->points[1].mass,
                                  gb_project_get_findings (project)->rollup.boat.mass
                                    + gb_project_get_findings (project)->rollup.margin.total,
                                  1e-9);
  g_assert_cmpuint (found, ==, 2);
  g_assert_finalize_object (project);
}

static void
test_closing_while_the_worker_works (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch);

  g_assert_null (gb_project_get_history (project));
  g_assert_finalize_object (project);
  for (guint i = 0; i < 50; i++)
    {
      g_main_context_iteration (NULL, FALSE);
      g_usleep (1000);
    }
}

static void
test_save_copy_and_check (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch);
  g_autofree char *path = g_build_filename (scratch->folder, "copy.garboard", NULL);
  g_autoptr (GPtrArray) faults = gb_project_check (project);
  GbProject *copy;
  g_autoptr (GError) error = NULL;

  g_assert_cmpuint (faults->len, ==, 0);
  set_thickness (project, 0.004);
  g_assert_true (gb_project_save_copy (project, path, &error));
  g_assert_no_error (error);
  copy = gb_project_open (path, FALSE, NULL);
  scratch_assert_equal (gb_project_get_boat (copy), gb_project_get_boat (project));
  g_assert_cmpstr (gb_project_get_undo_words (copy), ==, "thickness of Side panel");
  g_object_unref (copy);
  g_object_unref (project);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/project/project/create-open", test_create_and_open);
  g_test_add_func ("/project/project/one-edit", test_the_way_of_one_edit);
  g_test_add_func ("/project/project/properties", test_properties);
  g_test_add_func ("/project/project/closed-by-handler", test_a_handler_may_close_it);
  g_test_add_func ("/project/project/nothing-to-undo", test_nothing_to_undo);
  g_test_add_func ("/project/project/undo-survives", test_undo_survives_closing);
  g_test_add_func ("/project/project/apply", test_apply);
  g_test_add_func ("/project/project/refused", test_an_edit_that_breaks_a_rule_changes_nothing);
  g_test_add_func ("/project/project/read-only", test_read_only);
  g_test_add_func ("/project/project/newer", test_newer_is_read_only);
  g_test_add_func ("/project/project/elsewhere", test_changes_elsewhere);
  g_test_add_func ("/project/project/not-over-others", test_an_edit_does_not_run_over_another_programs);
  g_test_add_func ("/project/project/loop-looks", test_a_running_loop_looks_elsewhere);
  g_test_add_func ("/project/project/history", test_history);
  g_test_add_func ("/project/project/closing", test_closing_while_the_worker_works);
  g_test_add_func ("/project/project/copy-check", test_save_copy_and_check);
  return g_test_run ();
}
