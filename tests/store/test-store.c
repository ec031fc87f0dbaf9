/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A file's life: made, opened, read, edited, copied; and what is refused on the way. */

#include "random-boat.h"
#include "scratch.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

static GbRecord *
new_part (gint64 id, gint64 owner, const char *name)
{
  GbRecord *record = gb_record_new (GB_RECORD_PART);

  record->id = id;
  record->owner = owner;
  record->position = (double) id;
  gb_field_set_text (gb_field (GB_RECORD_PART, "name"), record, name);
  return record;
}

static void
begin (GbStore *store, const char *words)
{
  g_autoptr (GError) error = NULL;

  gb_store_begin (store, words, NULL, &error);
  g_assert_no_error (error);
}

static void
put (GbStore *store, const GbRecord *old, const GbRecord *record)
{
  g_autoptr (GError) error = NULL;

  gb_store_put (store, old, record, &error);
  g_assert_no_error (error);
}

static GbChanges *
commit (GbStore *store)
{
  g_autoptr (GError) error = NULL;
  GbChanges *changes = NULL;

  gb_store_commit (store, &changes, &error);
  g_assert_no_error (error);
  g_assert_nonnull (changes);
  return changes;
}

static void
commit_refused (GbStore *store, const char *part)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (gb_store_commit (store, NULL, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, part));
}

/* Way there and back ----------------------------------------------------------------------------------------------- */

static void
test_every_kind_and_field_comes_back (void)
{
  g_autoptr (GRand) rand = random_seeded ();

  for (guint i = 0; i < 8; i++)
    {
      g_autoptr (Scratch) scratch = scratch_new ();
      g_autoptr (GbBoat) boat = random_boat (rand, 400);
      g_autoptr (GbStore) store = scratch_store (scratch, boat);
      g_autoptr (GbBoat) loaded = scratch_load (store);
      g_autoptr (GPtrArray) faults = gb_store_check (store);

      for (guint k = 0; k < GB_N_RECORDS; k++)
        g_assert_cmpuint (gb_boat_n (loaded, k), >, 0);
      scratch_assert_equal (boat, loaded);
      if (faults->len > 0)
        g_error ("%s", (char *) faults->pdata[0]);
    }
}

static void
test_an_empty_build_comes_back (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbBoat) empty = gb_boat_new ();
  g_autoptr (GbStore) store = scratch_store (scratch, NULL);
  g_autoptr (GbBoat) loaded = scratch_load (store);

  scratch_assert_equal (empty, loaded);
  g_assert_cmpstr (gb_store_path (store), ==, scratch->path);
  g_assert_cmpint (scratch_integer (scratch->path, "PRAGMA application_id"), ==, GB_STORE_APPLICATION_ID);
  g_assert_cmpint (scratch_integer (scratch->path, "PRAGMA user_version"), ==, GB_STORE_SCHEMA_VERSION);
}

/* What was typed and positions between two others are kept to the letter. */
static void
test_typed_text_and_positions_are_kept (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_autoptr (GbStore) store = NULL;
  g_autoptr (GbBoat) loaded = NULL;
  GbRecord *part = gb_boat_take (boat, new_part (7, 0, "Bottom"));

  gb_typed_set (part, "thickness", "1/4\"");
  gb_typed_set (part, "length", "2*1220-45");
  part->position = 1.0 / 3.0;
  gb_boat_settle (boat);
  store = scratch_store (scratch, boat);
  loaded = scratch_load (store);
  scratch_assert_equal (boat, loaded);
}

/* Creating --------------------------------------------------------------------------------------------------------- */

static void
test_create_does_not_replace_unasked (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GRand) rand = random_seeded ();
  g_autoptr (GbBoat) first = random_boat (rand, 50);
  g_autoptr (GbBoat) second = random_boat (rand, 50);
  g_autoptr (GbStore) store = scratch_store (scratch, first);
  g_autoptr (GbBoat) loaded = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_false (gb_store_create (scratch->path, second, FALSE, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_EXISTS);
  loaded = scratch_load (store);
  scratch_assert_equal (first, loaded);
}

static void
test_create_replaces_when_asked (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GRand) rand = random_seeded ();
  g_autoptr (GbBoat) first = random_boat (rand, 50);
  g_autoptr (GbBoat) second = random_boat (rand, 50);
  g_autoptr (GbStore) old = scratch_store (scratch, first);
  g_autoptr (GbRecord) part = new_part (1000, 0, "Late");
  g_autoptr (GbStore) store = NULL;
  g_autoptr (GbBoat) loaded = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_true (gb_store_create (scratch->path, second, TRUE, &error));
  g_assert_no_error (error);
  store = scratch_open (scratch->path);
  loaded = scratch_load (store);
  scratch_assert_equal (second, loaded);

  /* Whoever still has the old file open is told, instead of writing where nobody looks. */
  begin (old, "too late");
  g_assert_false (gb_store_put (old, NULL, part, &error) && gb_store_commit (old, NULL, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_READ_ONLY);
  gb_store_rollback (old);
}

static void
test_create_needs_a_folder (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_autofree char *path = g_build_filename (scratch->folder, "nowhere", "build.garboard", NULL);
  g_autoptr (GError) error = NULL;

  g_assert_false (gb_store_create (path, boat, FALSE, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_NOT_FOUND);
  g_assert_nonnull (strstr (error->message, path));
}

/* A journal of an earlier file with that name must not be played back into the new one. */
static void
test_create_removes_a_stale_journal (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autofree char *journal = g_strconcat (scratch->path, "-journal", NULL);
  g_autoptr (GbStore) store = NULL;

  g_assert_true (g_file_set_contents (journal, "\xd9\xd5\x05\xf9\x20\xa1\x63\xd7", 8, NULL));
  store = scratch_store (scratch, NULL);
  g_assert_false (g_file_test (journal, G_FILE_TEST_EXISTS));
}

/* All or nothing: a boat that breaks a rule leaves no file. */
static void
test_create_refuses_what_no_file_can_hold (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbPart *part = (GbPart *) gb_boat_take (boat, new_part (1, 0, "Bottom"));
  g_autoptr (GError) error = NULL;

  gb_boat_settle (boat);
  part->material = 12;
  g_assert_false (gb_store_create (scratch->path, boat, FALSE, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, "Bottom"));
  g_clear_error (&error);

  part->material = 0;
  part->thickness = INFINITY;
  g_assert_false (gb_store_create (scratch->path, boat, FALSE, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, "Thickness"));
  g_assert_false (g_file_test (scratch->path, G_FILE_TEST_EXISTS));
}

/* Editing ---------------------------------------------------------------------------------------------------------- */

static const GbChange *
only_change (const GbChanges *changes)
{
  g_assert_false (changes->all);
  g_assert_cmpuint (changes->changes->len, ==, 1);
  return &g_array_index (changes->changes, GbChange, 0);
}

static void
test_changes_say_what_happened (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbStore) store = scratch_store (scratch, NULL);
  g_autoptr (GbBoat) boat = scratch_load (store);
  g_autoptr (GbRecord) part = new_part (1, 0, "Bottom");
  g_autoptr (GbRecord) thicker = gb_record_copy (part);
  g_autoptr (GbRecord) moved = gb_record_copy (part);
  const struct
  {
    const GbRecord *old, *now;
    GbChangeOp op;
  } steps[] = { { NULL, part, GB_CHANGE_ADDED }, { part, thicker, GB_CHANGE_FIELDS }, { thicker, moved, GB_CHANGE_MOVED } };

  ((GbPart *) thicker)->thickness = 0.006;
  ((GbPart *) moved)->thickness = 0.009;
  moved->position = 5;
  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    {
      g_autoptr (GbChanges) changes = NULL;

      begin (store, "step");
      put (store, steps[i].old, steps[i].now);
      changes = commit (store);
      g_assert_cmpint (only_change (changes)->kind, ==, GB_RECORD_PART);
      g_assert_cmpint (only_change (changes)->op, ==, steps[i].op);
      g_assert_cmpint (only_change (changes)->id, ==, 1);
      gb_store_refresh (store, changes, boat, NULL);
      g_assert_true (gb_record_equal (gb_boat_get (boat, GB_RECORD_PART, 1), steps[i].now));
    }
}

/* Only the columns that differ are written: what another program wrote into the others stays. */
static void
test_put_leaves_other_columns_alone (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbStore) store = scratch_store (scratch, NULL);
  g_autoptr (GbRecord) part = new_part (1, 0, "Bottom");
  g_autoptr (GbRecord) thicker = gb_record_copy (part);
  g_autoptr (GbChanges) added = NULL;
  g_autoptr (GbChanges) changed = NULL;
  g_autoptr (GbBoat) boat = NULL;

  begin (store, "new part");
  put (store, NULL, part);
  added = commit (store);
  g_assert_false (gb_store_changed_elsewhere (store));
  scratch_sql (scratch->path, "UPDATE part SET notes = 'mind the grain', width = 0.3");
  g_assert_true (gb_store_changed_elsewhere (store));
  g_assert_false (gb_store_changed_elsewhere (store));

  ((GbPart *) thicker)->thickness = 0.006;
  begin (store, "thickness of Bottom");
  put (store, part, thicker);
  changed = commit (store);
  boat = scratch_load (store);
  g_assert_cmpstr (gb_boat_part (boat, 1)->notes, ==, "mind the grain");
  g_assert_cmpfloat (gb_boat_part (boat, 1)->width, ==, 0.3);
  g_assert_cmpfloat (gb_boat_part (boat, 1)->thickness, ==, 0.006);
}

static void
test_an_edit_that_changes_nothing_leaves_no_history (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbStore) store = scratch_store (scratch, NULL);
  g_autoptr (GbRecord) part = new_part (1, 0, "Bottom");
  g_autoptr (GbChanges) none = NULL;
  g_autoptr (GbChanges) neither = NULL;

  begin (store, "nothing");
  none = commit (store);
  g_assert_cmpuint (none->changes->len, ==, 0);
  begin (store, "there and back");
  put (store, NULL, part);
  g_assert_true (gb_store_delete (store, GB_RECORD_PART, 1, NULL));
  neither = commit (store);
  g_assert_cmpuint (neither->changes->len, ==, 0);
  g_assert_null (gb_store_undo_words (store));
}

static void
test_rollback_is_as_if_nothing_had_happened (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GRand) rand = random_seeded ();
  g_autoptr (GbBoat) boat = random_boat (rand, 100);
  g_autoptr (GbStore) store = scratch_store (scratch, boat);
  g_autoptr (GbRecord) part = new_part (5000, 0, "Bottom");
  g_autoptr (GbBoat) loaded = NULL;

  begin (store, "never");
  put (store, NULL, part);
  g_assert_true (gb_store_delete (store, GB_RECORD_MATERIAL, 1, NULL));
  gb_store_rollback (store);
  loaded = scratch_load (store);
  scratch_assert_equal (boat, loaded);
  g_assert_null (gb_store_undo_words (store));
}

/* What lives in a record goes with it; what refers to it does not know any more. */
static void
test_deleting_cascades_and_unknows (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_autoptr (GbStore) store = NULL;
  g_autoptr (GbChanges) changes = NULL;
  g_autoptr (GbBoat) loaded = NULL;
  GbPart *coat;
  guint removed = 0, altered = 0;

  gb_boat_take (boat, new_part (1, 0, "Hull"));
  gb_boat_take (boat, new_part (2, 1, "Inside"));
  gb_boat_take (boat, new_part (3, 2, "Bottom"));
  coat = (GbPart *) gb_boat_take (boat, new_part (4, 0, "Paint"));
  coat->surface_of = 3;
  gb_boat_settle (boat);
  store = scratch_store (scratch, boat);

  begin (store, "delete Hull");
  g_assert_true (gb_store_delete (store, GB_RECORD_PART, 1, NULL));
  g_assert_true (gb_store_delete (store, GB_RECORD_PART, 3, NULL)); /* gone already */
  changes = commit (store);
  for (guint i = 0; i < changes->changes->len; i++)
    {
      removed += g_array_index (changes->changes, GbChange, i).op == GB_CHANGE_REMOVED;
      altered += g_array_index (changes->changes, GbChange, i).op == GB_CHANGE_FIELDS;
    }
  g_assert_cmpuint (removed, ==, 3);
  g_assert_cmpuint (altered, ==, 1);
  gb_store_refresh (store, changes, boat, NULL);
  g_assert_cmpuint (gb_boat_n (boat, GB_RECORD_PART), ==, 1);
  g_assert_cmpint (gb_boat_part (boat, 4)->surface_of, ==, 0);
  loaded = scratch_load (store);
  scratch_assert_equal (boat, loaded);
}

/* SQLite's own limit of a cascade is 1000 levels. */
static void
test_a_deep_tree_can_be_deleted_and_undone (void)
{
  const gint64 depth = 2600;
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_autoptr (GbStore) store = NULL;
  g_autoptr (GbChanges) gone = NULL;
  g_autoptr (GbChanges) back = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GbBoat) loaded = NULL;

  for (gint64 i = 1; i <= depth; i++)
    gb_boat_take (boat, new_part (i, i - 1, "Box"));
  gb_boat_settle (boat);
  store = scratch_store (scratch, boat);
  begin (store, "delete Box");
  g_assert_true (gb_store_delete (store, GB_RECORD_PART, 1, &error));
  g_assert_no_error (error);
  gone = commit (store);
  g_assert_cmpuint (gone->changes->len, ==, (guint) depth);
  g_assert_true (gb_store_undo (store, &back, NULL, &error));
  loaded = scratch_load (store);
  scratch_assert_equal (boat, loaded);
}

static void
test_rules_are_kept_at_the_commit (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_autoptr (GbStore) store = NULL;
  g_autoptr (GbRecord) knot = new_part (1, 3, "Hull");
  g_autoptr (GbRecord) itself = new_part (1, 1, "Hull");
  g_autoptr (GbRecord) orphan = new_part (9, 77, "Lost");
  g_autoptr (GbRecord) unmade = new_part (9, 0, "Wing");
  g_autoptr (GbBoat) loaded = NULL;

  gb_boat_take (boat, new_part (1, 0, "Hull"));
  gb_boat_take (boat, new_part (2, 1, "Inside"));
  gb_boat_take (boat, new_part (3, 2, "Bottom"));
  gb_boat_settle (boat);
  store = scratch_store (scratch, boat);
  ((GbPart *) unmade)->material = 5;

  begin (store, "knot");
  put (store, gb_boat_get (boat, GB_RECORD_PART, 1), knot);
  commit_refused (store, "into itself");
  begin (store, "itself");
  put (store, gb_boat_get (boat, GB_RECORD_PART, 1), itself);
  commit_refused (store, "into itself");
  begin (store, "orphan");
  put (store, NULL, orphan);
  commit_refused (store, "Lost");
  begin (store, "of nothing");
  put (store, NULL, unmade);
  commit_refused (store, "Material");

  loaded = scratch_load (store);
  scratch_assert_equal (boat, loaded);
  g_assert_null (gb_store_undo_words (store));
}

/* Two groups may change places in one edit, whatever the order of the rows. */
static void
test_rows_of_an_edit_come_in_any_order (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_autoptr (GbStore) store = NULL;
  g_autoptr (GbRecord) outer = new_part (1, 2, "Outer");
  g_autoptr (GbRecord) inner = new_part (2, 0, "Inner");
  g_autoptr (GbRecord) child = new_part (4, 3, "Child");
  g_autoptr (GbRecord) group = new_part (3, 0, "Group");
  g_autoptr (GbChanges) changes = NULL;

  gb_boat_take (boat, new_part (1, 0, "Outer"));
  gb_boat_take (boat, new_part (2, 1, "Inner"));
  gb_boat_settle (boat);
  store = scratch_store (scratch, boat);
  begin (store, "swap");
  put (store, gb_boat_get (boat, GB_RECORD_PART, 1), outer);
  put (store, gb_boat_get (boat, GB_RECORD_PART, 2), inner);
  put (store, NULL, child);
  put (store, NULL, group);
  changes = commit (store);
  g_assert_true (gb_store_refresh (store, changes, boat, NULL));
  g_assert_cmpuint (gb_boat_n (boat, GB_RECORD_PART), ==, 4);
}

static void
test_a_bad_value_is_refused_and_nothing_remains (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbStore) store = scratch_store (scratch, NULL);
  g_autoptr (GbRecord) good = new_part (1, 0, "Bottom");
  g_autoptr (GbRecord) bad = new_part (2, 0, "Side");
  g_autoptr (GbRecord) nowhere = new_part (3, 0, "Nowhere");
  g_autoptr (GbRecord) sample = gb_record_new (GB_RECORD_SAMPLE);
  g_autoptr (GbBoat) loaded = NULL;
  g_autoptr (GError) error = NULL;

  ((GbPart *) bad)->thickness = -1;
  begin (store, "two parts");
  put (store, NULL, good);
  g_assert_false (gb_store_put (store, NULL, bad, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, "Side"));
  g_assert_nonnull (strstr (error->message, "Thickness"));
  g_clear_error (&error);
  g_assert_false (gb_store_put (store, NULL, good, &error)); /* only the roll back is left */
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_REFUSED);
  commit_refused (store, "nothing was changed");
  g_clear_error (&error);

  nowhere->position = NAN;
  begin (store, "no place");
  g_assert_false (gb_store_put (store, NULL, nowhere, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_REFUSED);
  g_clear_error (&error);
  gb_store_rollback (store);

  sample->id = 1;
  begin (store, "a sample of nothing");
  g_assert_false (gb_store_put (store, NULL, sample, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_REFUSED);
  gb_store_rollback (store);

  loaded = scratch_load (store);
  g_assert_cmpuint (gb_boat_n (loaded, GB_RECORD_PART), ==, 0);
}

static void
test_a_row_that_has_gone_cannot_be_changed (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbStore) store = scratch_store (scratch, NULL);
  g_autoptr (GbRecord) part = new_part (1, 0, "Bottom");
  g_autoptr (GbRecord) thicker = gb_record_copy (part);
  g_autoptr (GError) error = NULL;

  ((GbPart *) thicker)->thickness = 0.006;
  begin (store, "thickness of Bottom");
  g_assert_false (gb_store_put (store, part, thicker, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_REFUSED);
  gb_store_rollback (store);
}

/* Numbers of records ----------------------------------------------------------------------------------------------- */

static void
test_ids_are_never_used_again (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbStore) store = scratch_store (scratch, NULL);
  gint64 last = 0;

  for (guint i = 0; i < 5; i++)
    {
      gint64 id;
      g_autoptr (GbRecord) part = NULL;
      g_autoptr (GbChanges) added = NULL;

      begin (store, "add");
      id = gb_store_next_id (store, GB_RECORD_PART);
      g_assert_cmpint (id, >, last);
      g_assert_cmpint (gb_store_next_id (store, GB_RECORD_PART), ==, id + 1);
      part = new_part (last = id, 0, "Bottom");
      put (store, NULL, part);
      added = commit (store);
      if (i % 2 == 0)
        g_assert_true (gb_store_undo (store, NULL, NULL, NULL));
      else
        {
          g_autoptr (GbChanges) gone = NULL;

          begin (store, "delete");
          g_assert_true (gb_store_delete (store, GB_RECORD_PART, id, NULL));
          gone = commit (store);
        }
      gb_store_close (store);
      store = scratch_open (scratch->path);
    }
}

/* Refreshing ------------------------------------------------------------------------------------------------------- */

static void
test_refreshing_all_keeps_pointers (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_autoptr (GbStore) store = NULL;
  g_autoptr (GbChanges) all = gb_changes_new ();
  g_autoptr (GbBoat) fresh = NULL;
  const GbPart *kept;

  gb_boat_take (boat, new_part (1, 0, "Stays"));
  gb_boat_take (boat, new_part (2, 0, "Goes"));
  gb_boat_settle (boat);
  store = scratch_store (scratch, boat);
  kept = gb_boat_part (boat, 1);
  scratch_sql (scratch->path, "DELETE FROM part WHERE id = 2; UPDATE part SET thickness = 0.009;"
                              "INSERT INTO category (id, position, name) VALUES (3, 1, 'timber')");
  all->all = TRUE;
  g_assert_true (gb_store_refresh (store, all, boat, NULL));
  fresh = scratch_load (store);
  scratch_assert_equal (boat, fresh);
  g_assert_true (gb_boat_part (boat, 1) == kept);
  g_assert_cmpfloat (kept->thickness, ==, 0.009);
}

/* Two at once ------------------------------------------------------------------------------------------------------ */

static void
test_two_windows_on_one_file (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbStore) one = scratch_store (scratch, NULL);
  g_autoptr (GbStore) two = scratch_open (scratch->path);
  g_autoptr (GbRecord) part = new_part (1, 0, "Bottom");
  g_autoptr (GbChanges) changes = NULL;
  g_autoptr (GbStore) reader = NULL;
  g_autoptr (GbBoat) boat = NULL;
  g_autoptr (GError) error = NULL;

  begin (one, "first");
  put (one, NULL, part);
  g_assert_false (gb_store_begin (two, "second", NULL, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_BUSY);
  g_clear_error (&error);

  /* While somebody writes, a third can open to read, and is told why. */
  g_assert_null (gb_store_open (scratch->path, FALSE, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_BUSY);
  reader = gb_store_open (scratch->path, TRUE, NULL);
  g_assert_nonnull (gb_store_read_only_reason (reader));

  changes = commit (one);
  g_assert_true (gb_store_changed_elsewhere (two));
  boat = scratch_load (two);
  g_assert_cmpuint (gb_boat_n (boat, GB_RECORD_PART), ==, 1);
  g_assert_cmpstr (gb_store_undo_words (two), ==, "first");
}

/* Copies ----------------------------------------------------------------------------------------------------------- */

static void
test_a_copy_has_the_history (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autofree char *path = g_build_filename (scratch->folder, "copy.garboard", NULL);
  g_autoptr (GbStore) store = scratch_store (scratch, NULL);
  g_autoptr (GbRecord) part = new_part (1, 0, "Bottom");
  g_autoptr (GbChanges) changes = NULL;
  g_autoptr (GbStore) copy = NULL;
  g_autoptr (GbBoat) a = NULL, b = NULL;
  g_autoptr (GError) error = NULL;

  begin (store, "new part");
  put (store, NULL, part);
  changes = commit (store);
  g_assert_true (gb_store_save_copy (store, path, &error));
  copy = scratch_open (path);
  a = scratch_load (store);
  b = scratch_load (copy);
  scratch_assert_equal (a, b);
  g_assert_cmpstr (gb_store_undo_words (copy), ==, "new part");

  g_assert_false (gb_store_save_copy (store, scratch->path, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_EXISTS);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/every-kind-and-field-comes-back", test_every_kind_and_field_comes_back);
  g_test_add_func ("/store/an-empty-build-comes-back", test_an_empty_build_comes_back);
  g_test_add_func ("/store/typed-text-and-positions-are-kept", test_typed_text_and_positions_are_kept);
  g_test_add_func ("/store/create-does-not-replace-unasked", test_create_does_not_replace_unasked);
  g_test_add_func ("/store/create-replaces-when-asked", test_create_replaces_when_asked);
  g_test_add_func ("/store/create-needs-a-folder", test_create_needs_a_folder);
  g_test_add_func ("/store/create-removes-a-stale-journal", test_create_removes_a_stale_journal);
  g_test_add_func ("/store/create-refuses-what-no-file-can-hold", test_create_refuses_what_no_file_can_hold);
  g_test_add_func ("/store/changes-say-what-happened", test_changes_say_what_happened);
  g_test_add_func ("/store/put-leaves-other-columns-alone", test_put_leaves_other_columns_alone);
  g_test_add_func ("/store/an-edit-that-changes-nothing", test_an_edit_that_changes_nothing_leaves_no_history);
  g_test_add_func ("/store/rollback", test_rollback_is_as_if_nothing_had_happened);
  g_test_add_func ("/store/deleting-cascades-and-unknows", test_deleting_cascades_and_unknows);
  g_test_add_func ("/store/a-deep-tree-can-be-deleted", test_a_deep_tree_can_be_deleted_and_undone);
  g_test_add_func ("/store/rules-are-kept-at-the-commit", test_rules_are_kept_at_the_commit);
  g_test_add_func ("/store/rows-come-in-any-order", test_rows_of_an_edit_come_in_any_order);
  g_test_add_func ("/store/a-bad-value-is-refused", test_a_bad_value_is_refused_and_nothing_remains);
  g_test_add_func ("/store/a-row-that-has-gone", test_a_row_that_has_gone_cannot_be_changed);
  g_test_add_func ("/store/ids-are-never-used-again", test_ids_are_never_used_again);
  g_test_add_func ("/store/refreshing-all-keeps-pointers", test_refreshing_all_keeps_pointers);
  g_test_add_func ("/store/two-windows-on-one-file", test_two_windows_on_one_file);
  g_test_add_func ("/store/a-copy-has-the-history", test_a_copy_has_the_history);
  return g_test_run ();
}
