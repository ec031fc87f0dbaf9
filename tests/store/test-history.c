/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Undo and redo: words and places, random walks, bounds, and what another program may do in between. */

#include "random-boat.h"
#include "scratch.h"

#include <string.h>

/* One part whose notes are so long, as an edit of its own. */
static void
add_part (GbStore *store, const char *words, gsize length)
{
  g_autoptr (GbRecord) part = gb_record_new (GB_RECORD_PART);
  g_autofree char *notes = g_strnfill (length, 'n');
  g_autoptr (GError) error = NULL;
  gboolean added = gb_store_begin (store, words, NULL, &error);

  part->id = gb_store_next_id (store, GB_RECORD_PART);
  part->position = (double) part->id;
  gb_field_set_text (gb_field (GB_RECORD_PART, "notes"), part, notes);
  added = added && gb_store_put (store, NULL, part, &error) && gb_store_commit (store, NULL, &error);
  g_assert_no_error (error);
  g_assert_true (added);
}

static gboolean
undo (GbStore *store)
{
  g_autoptr (GError) error = NULL;
  gboolean done = gb_store_undo (store, NULL, NULL, &error);

  g_assert_no_error (error);
  return done;
}

static gboolean
redo (GbStore *store)
{
  g_autoptr (GError) error = NULL;
  gboolean done = gb_store_redo (store, NULL, NULL, &error);

  g_assert_no_error (error);
  return done;
}

static void
test_words_follow_undo_and_redo (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbStore) store = scratch_store (scratch, NULL);

  g_assert_null (gb_store_undo_words (store));
  g_assert_null (gb_store_redo_words (store));
  add_part (store, "first", 1);
  add_part (store, "second “木”", 1);
  g_assert_cmpstr (gb_store_undo_words (store), ==, "second “木”");
  g_assert_null (gb_store_redo_words (store));
  g_assert_true (undo (store));
  g_assert_cmpstr (gb_store_undo_words (store), ==, "first");
  g_assert_cmpstr (gb_store_redo_words (store), ==, "second “木”");

  /* After a restart they are the same. */
  gb_store_close (store);
  store = scratch_open (scratch->path);
  g_assert_cmpstr (gb_store_undo_words (store), ==, "first");
  g_assert_cmpstr (gb_store_redo_words (store), ==, "second “木”");
  g_assert_true (undo (store));
  g_assert_null (gb_store_undo_words (store));
  g_assert_cmpstr (gb_store_redo_words (store), ==, "first");
  g_assert_true (redo (store));
  g_assert_true (redo (store));
  g_assert_null (gb_store_redo_words (store));

  /* A new edit lets the undone ones go. */
  g_assert_true (undo (store));
  add_part (store, "third", 1);
  g_assert_null (gb_store_redo_words (store));
  g_assert_true (undo (store));
  g_assert_cmpstr (gb_store_undo_words (store), ==, "first");
}

static void
test_endless_words_are_cut (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbStore) store = scratch_store (scratch, NULL);
  g_autofree char *endless = g_strnfill (20000, 'w');

  add_part (store, endless, 1);
  g_assert_cmpuint (strlen (gb_store_undo_words (store)), ==, 1000);
}

static void
test_nothing_to_undo_is_said (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbStore) store = scratch_store (scratch, NULL);
  g_autoptr (GError) error = NULL;

  g_assert_false (gb_store_undo (store, NULL, NULL, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_false (gb_store_redo (store, NULL, NULL, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_REFUSED);
}

static void
test_the_place_comes_back (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbStore) store = scratch_store (scratch, NULL);
  g_autoptr (GbRecord) material = gb_record_new (GB_RECORD_MATERIAL);
  const GbPlace place = { GB_RECORD_MATERIAL, 1, gb_field (GB_RECORD_MATERIAL, "density")->name };
  GbPlace found = { 0 };
  g_autoptr (GbChanges) changes = NULL;
  g_autoptr (GError) error = NULL;

  material->id = 1;
  g_assert_true (gb_store_begin (store, "density of oak", &place, &error) && gb_store_put (store, NULL, material, &error)
                 && gb_store_commit (store, NULL, &error));
  gb_store_close (store);
  store = scratch_open (scratch->path);
  g_assert_true (gb_store_undo (store, &changes, &found, &error));
  g_assert_cmpint (found.kind, ==, place.kind);
  g_assert_cmpint (found.id, ==, 1);
  g_assert_true (found.field == place.field);
  g_assert_cmpuint (changes->changes->len, ==, 1);
  g_assert_cmpint (g_array_index (changes->changes, GbChange, 0).op, ==, GB_CHANGE_REMOVED);

  found = (GbPlace){ 0 };
  g_clear_pointer (&changes, gb_changes_free);
  g_assert_true (gb_store_redo (store, &changes, &found, &error));
  g_assert_cmpint (found.id, ==, 1);
  g_assert_cmpint (g_array_index (changes->changes, GbChange, 0).op, ==, GB_CHANGE_ADDED);
}

/* Random walks ----------------------------------------------------------------------------------------------------- */

/* A part may not be put into itself; everything else may go anywhere. */
static gboolean
may_move (const GbBoat *boat, const GbRecord *record)
{
  return record->kind != GB_RECORD_PART || record->owner == 0 || !gb_boat_is_below (boat, record->owner, record->id);
}

static const GbRecord *
random_of (GRand *rand, const GbBoat *boat, GbRecordKind kind)
{
  const GPtrArray *all = gb_boat_all (boat, kind);

  return all->len > 0 ? all->pdata[g_rand_int_range (rand, 0, (gint32) all->len)] : NULL;
}

/* One row: added, changed in one field or all over, moved, or deleted with all that lives in it. */
static gboolean
random_write (GRand *rand, GbStore *store, const GbBoat *boat, GHashTable *touched, GError **error)
{
  GbRecordKind kind = (GbRecordKind) g_rand_int_range (rand, 0, GB_N_RECORDS);
  const GbRecord *old = random_of (rand, boat, kind);
  const GbRecordType *type = gb_record_type (kind);
  g_autoptr (GbRecord) record = NULL;
  int choice = g_rand_int_range (rand, 0, 10);

  if (old == NULL || (choice < 4 && kind != GB_RECORD_BUILD))
    {
      record = random_record (rand, boat, kind, gb_store_next_id (store, kind));
      return record == NULL || gb_store_put (store, NULL, record, error);
    }
  /* What was written to in this edit is not as the boat has it any more. */
  if (!g_hash_table_add (touched, (gpointer) old))
    return TRUE;
  if (choice < 6 && kind != GB_RECORD_BUILD)
    return gb_store_delete (store, kind, old->id, error);
  record = choice < 8 ? random_record (rand, boat, kind, old->id) : gb_record_copy (old);
  if (choice >= 8)
    random_field (rand, boat, &type->fields[g_rand_int_range (rand, 0, (gint32) type->n_fields)], record);
  return !may_move (boat, record) || gb_store_put (store, old, record, error);
}

/* FALSE if the edit broke a rule, as random ones may: two parts put into each other, or one into a group that was just deleted. */
static gboolean
random_edit (GRand *rand, GbStore *store, GbBoat *boat, GbChanges **changes)
{
  g_autoptr (GHashTable) touched = g_hash_table_new (NULL, NULL);
  g_autoptr (GError) error = NULL;
  gboolean written = gb_store_begin (store, "walk", NULL, &error);

  g_assert_no_error (error);
  for (int n = g_rand_int_range (rand, 1, 6); n > 0 && written; n--)
    written = random_write (rand, store, boat, touched, &error);
  if (written && gb_store_commit (store, changes, &error))
    return TRUE;
  gb_store_rollback (store);
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_REFUSED);
  return FALSE;
}

static gboolean
random_step (GRand *rand, GbStore *store, GbBoat *boat, GbChanges **changes)
{
  int choice = g_rand_int_range (rand, 0, 10);

  if (choice < 3 && gb_store_undo_words (store) != NULL)
    return gb_store_undo (store, changes, NULL, NULL);
  if (choice < 6 && gb_store_redo_words (store) != NULL)
    return gb_store_redo (store, changes, NULL, NULL);
  return random_edit (rand, store, boat, changes);
}

static void
assert_order_is_the_same (const GbBoat *a, const GbBoat *b)
{
  for (guint k = 0; k < GB_N_RECORDS; k++)
    for (guint i = 0; i < gb_boat_n (a, k); i++)
      g_assert_cmpint (((GbRecord *) gb_boat_all (a, k)->pdata[i])->id, ==, ((GbRecord *) gb_boat_all (b, k)->pdata[i])->id);
}

/* After any walk, the boat that was refreshed from the changes equals one read afresh; and so it does after a restart. */
static void
test_random_walk_equals_a_fresh_load (void)
{
  g_autoptr (GRand) rand = random_seeded ();
  guint undone_or_done = 0;

  for (guint round = 0; round < 6; round++)
    {
      g_autoptr (Scratch) scratch = scratch_new ();
      g_autoptr (GbBoat) start = random_boat (rand, 80);
      g_autoptr (GbStore) store = scratch_store (scratch, start);
      g_autoptr (GbBoat) boat = scratch_load (store);

      for (guint i = 0; i < 80; i++)
        {
          g_autoptr (GbChanges) changes = NULL;
          g_autoptr (GError) error = NULL;

          if (random_step (rand, store, boat, &changes))
            {
              g_assert_true (gb_store_refresh (store, changes, boat, &error));
              undone_or_done++;
            }
          if (i % 8 == 7)
            {
              g_autoptr (GbBoat) fresh = NULL;

              if (i % 24 == 7)
                {
                  gb_store_close (store);
                  store = scratch_open (scratch->path);
                }
              fresh = scratch_load (store);
              scratch_assert_equal (boat, fresh);
              assert_order_is_the_same (boat, fresh);
            }
        }
    }
  g_assert_cmpuint (undone_or_done, >, 200);
}

/* Undone to its beginning, a walk gives the build that it started from; redone to its end, the one that it led to. */
static void
test_a_walk_can_be_undone_and_redone_whole (void)
{
  g_autoptr (GRand) rand = random_seeded ();
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbBoat) start = random_boat (rand, 150);
  g_autoptr (GbStore) store = scratch_store (scratch, start);
  g_autoptr (GbBoat) boat = scratch_load (store);
  g_autoptr (GPtrArray) states = g_ptr_array_new_with_free_func ((GDestroyNotify) gb_boat_free);
  g_autoptr (GPtrArray) faults = NULL;

  g_ptr_array_add (states, gb_boat_copy (boat));
  for (guint i = 0; i < 60; i++)
    {
      g_autoptr (GbChanges) changes = NULL;

      if (!random_edit (rand, store, boat, &changes) || changes->changes->len == 0)
        continue;
      g_assert_true (gb_store_refresh (store, changes, boat, NULL));
      g_ptr_array_add (states, gb_boat_copy (boat));
    }
  for (guint i = states->len - 1; i > 0; i--)
    {
      g_autoptr (GbBoat) back = NULL;

      g_assert_true (undo (store));
      back = scratch_load (store);
      scratch_assert_equal (back, states->pdata[i - 1]);
    }
  g_assert_null (gb_store_undo_words (store));
  for (guint i = 1; i < states->len; i++)
    {
      g_autoptr (GbBoat) forth = NULL;

      g_assert_true (redo (store));
      forth = scratch_load (store);
      scratch_assert_equal (forth, states->pdata[i]);
    }
  g_assert_null (gb_store_redo_words (store));
  faults = gb_store_check (store);
  g_assert_cmpuint (faults->len, ==, 0);
}

/* Bounds ----------------------------------------------------------------------------------------------------------- */

#define MAX_EDITS 1000
#define MAX_BYTES (64 * 1024 * 1024)

/* The history is filled up by hand: as many commits take a while on a slow disk. */
static void
test_only_so_many_edits_are_remembered (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbStore) store = scratch_store (scratch, NULL);
  const char *fill = "WITH RECURSIVE n (i) AS (VALUES (2) UNION ALL SELECT i + 1 FROM n WHERE i < " G_STRINGIFY (MAX_EDITS) ")"
                     " INSERT INTO history SELECT i, at, words, NULL, NULL, NULL, changeset FROM n, history WHERE history.id = 1;"
                     "UPDATE history_mark SET done = " G_STRINGIFY (MAX_EDITS);

  add_part (store, "first", 1);
  scratch_sql (scratch->path, fill);
  add_part (store, "second", 1);
  add_part (store, "third", 1);
  g_assert_cmpint (scratch_integer (scratch->path, "SELECT count(*) FROM history"), ==, MAX_EDITS);
  g_assert_cmpint (scratch_integer (scratch->path, "SELECT min(id) FROM history"), ==, 3);
  g_assert_true (undo (store));
  g_assert_cmpstr (gb_store_undo_words (store), ==, "second");
  g_assert_true (redo (store));
}

/* Each edit writes a hundred notes of the greatest length: some ten megabytes. */
static void
test_only_so_much_is_remembered (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbStore) store = scratch_store (scratch, NULL);
  g_autofree char *notes = g_strnfill (100000, 'n');
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < 8; i++)
    {
      g_assert_true (gb_store_begin (store, "notes", NULL, &error));
      for (guint j = 0; j < 100; j++)
        {
          g_autoptr (GbRecord) part = gb_record_new (GB_RECORD_PART);

          part->id = gb_store_next_id (store, GB_RECORD_PART);
          gb_field_set_text (gb_field (GB_RECORD_PART, "notes"), part, notes);
          g_assert_true (gb_store_put (store, NULL, part, &error));
        }
      g_assert_true (gb_store_commit (store, NULL, &error));
    }
  g_assert_cmpint (scratch_integer (scratch->path, "SELECT sum(length(changeset)) FROM history"), <=, MAX_BYTES);
  g_assert_cmpint (scratch_integer (scratch->path, "SELECT count(*) FROM history"), ==, 6);
  g_assert_true (undo (store));
}

/* Other programs --------------------------------------------------------------------------------------------------- */

static void
assert_refused (GbStore *store, gboolean back)
{
  g_autoptr (GbBoat) before = scratch_load (store);
  g_autoptr (GbBoat) after = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_false (back ? gb_store_undo (store, NULL, NULL, &error) : gb_store_redo (store, NULL, NULL, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, "Another program"));
  after = scratch_load (store);
  scratch_assert_equal (before, after);
}

/* What another program wrote is not undone by the way, and nothing is left hanging by it. */
static void
test_undo_does_not_run_over_foreign_changes (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbStore) store = scratch_store (scratch, NULL);

  add_part (store, "add", 3);
  scratch_sql (scratch->path, "UPDATE part SET notes = 'theirs'");
  assert_refused (store, TRUE);
  scratch_sql (scratch->path, "UPDATE part SET notes = 'nnn'");
  g_assert_true (undo (store));
  scratch_sql (scratch->path, "INSERT INTO part (id, position, kind, pair, state, takeoff, section, extent, coating, basis)"
                              " VALUES (1, 1, 'part', 0, 'made', 'lump', 'round', 'all', 'paint', 'weighed')");
  assert_refused (store, FALSE);
}

static void
test_undo_leaves_nothing_hanging (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbStore) store = scratch_store (scratch, NULL);

  add_part (store, "group", 1);
  add_part (store, "weighed", 1);
  scratch_sql (scratch->path, "INSERT INTO weighing (id, position, part, on_scale) VALUES (1, 1, 2, 'all')");
  assert_refused (store, TRUE);
  scratch_sql (scratch->path, "DELETE FROM weighing");
  g_assert_true (undo (store));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/history/words-follow-undo-and-redo", test_words_follow_undo_and_redo);
  g_test_add_func ("/history/endless-words-are-cut", test_endless_words_are_cut);
  g_test_add_func ("/history/nothing-to-undo-is-said", test_nothing_to_undo_is_said);
  g_test_add_func ("/history/the-place-comes-back", test_the_place_comes_back);
  g_test_add_func ("/history/random-walk-equals-a-fresh-load", test_random_walk_equals_a_fresh_load);
  g_test_add_func ("/history/a-walk-can-be-undone-and-redone-whole", test_a_walk_can_be_undone_and_redone_whole);
  g_test_add_func ("/history/only-so-many-edits-are-remembered", test_only_so_many_edits_are_remembered);
  g_test_add_func ("/history/only-so-much-is-remembered", test_only_so_much_is_remembered);
  g_test_add_func ("/history/undo-does-not-run-over-foreign-changes", test_undo_does_not_run_over_foreign_changes);
  g_test_add_func ("/history/undo-leaves-nothing-hanging", test_undo_leaves_nothing_hanging);
  return g_test_run ();
}
