/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Files of older versions: nothing that was said in them is lost, and they are then like any file of today. */

#include "older.h"

#include "store/store-private.h"

#include <string.h>

static char *
aside_name (Scratch *scratch, const char *version)
{
  g_autofree char *name = g_strdup_printf ("build.%s.garboard", version);

  return g_build_filename (scratch->folder, name, NULL);
}

static void
assert_is_old_boat (GbStore *store)
{
  g_autoptr (GbBoat) boat = scratch_load (store);
  g_autoptr (GbBoat) expected = older_boat ();
  g_autoptr (GPtrArray) faults = gb_store_check (store);

  scratch_assert_equal (boat, expected);
  if (faults->len > 0)
    g_error ("%s", (char *) faults->pdata[0]);
}

static void
test_all_that_was_said_is_kept (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autofree char *aside = aside_name (scratch, "v1");
  g_autoptr (GbStore) store = NULL;

  older_make (scratch->path);
  store = scratch_open (scratch->path);
  assert_is_old_boat (store);
  g_assert_cmpint (scratch_integer (scratch->path, "PRAGMA user_version"), ==, GB_STORE_SCHEMA_VERSION);
  g_assert_cmpint (scratch_integer (scratch->path, "SELECT count (*) FROM pragma_foreign_key_check"), ==, 0);
  g_assert_cmpint (scratch_integer (scratch->path, "SELECT posture = 'centre' FROM load WHERE id = 5"), ==, 1);
  g_assert_cmpint (scratch_integer (scratch->path, "SELECT count (*) FROM sqlite_schema WHERE name LIKE 'old%'"), ==, 0);

  /* The copy is the file as it was, history and all. */
  g_assert_cmpint (scratch_integer (aside, "PRAGMA user_version"), ==, 1);
  g_assert_cmpint (scratch_integer (aside, "SELECT count (*) FROM history"), ==, 1);
  g_assert_cmpint (scratch_integer (aside, "SELECT count (*) FROM load"), ==, 2);
  g_assert_cmpint (scratch_integer (aside, "SELECT count (*) FROM sqlite_schema WHERE name = 'tub'"), ==, 0);
}

/* Opened once more, it is as any other. */
static void
test_it_happens_once (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autofree char *second = aside_name (scratch, "v1-2");
  g_autofree char *third = aside_name (scratch, "v2");
  g_autoptr (GbStore) store = NULL;

  older_make (scratch->path);
  gb_store_close (scratch_open (scratch->path));
  store = scratch_open (scratch->path);
  assert_is_old_boat (store);
  g_assert_false (g_file_test (second, G_FILE_TEST_EXISTS));
  g_assert_false (g_file_test (third, G_FILE_TEST_EXISTS));
}

static void
test_what_was_put_aside_before_stays (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autofree char *first = aside_name (scratch, "v1");
  g_autofree char *second = aside_name (scratch, "v1-2");

  older_make (scratch->path);
  older_make (first);
  scratch_sql (first, "UPDATE build SET name = 'Another'");
  gb_store_close (scratch_open (scratch->path));
  g_assert_cmpint (scratch_integer (first, "SELECT name = 'Another' FROM build"), ==, 1);
  g_assert_cmpint (scratch_integer (second, "SELECT name = 'Old boat' FROM build"), ==, 1);
}

/* Adds a load and gives its number. */
static gint64
add_load (GbStore *store)
{
  g_autoptr (GbRecord) load = gb_record_new (GB_RECORD_LOAD);
  g_autoptr (GError) error = NULL;

  g_assert_true (gb_store_begin (store, "new load", NULL, NULL));
  load->id = gb_store_next_id (store, GB_RECORD_LOAD);
  load->owner = 2;
  gb_store_put (store, NULL, load, &error);
  g_assert_no_error (error);
  gb_store_commit (store, NULL, &error);
  g_assert_no_error (error);
  return load->id;
}

static void
remove_hull (GbStore *store, gint64 id)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (gb_store_begin (store, "deletion of Float", NULL, NULL));
  gb_store_delete (store, GB_RECORD_HULL, id, &error);
  g_assert_no_error (error);
  gb_store_commit (store, NULL, &error);
  g_assert_no_error (error);
}

/* Other tables still refer to those that were made anew: a reference goes with what it meant, and comes back. */
static void
test_edits_and_undo_go_on (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbStore) store = NULL;

  older_make (scratch->path);
  store = scratch_open (scratch->path);
  g_assert_null (gb_store_undo_words (store));
  g_assert_null (gb_store_redo_words (store));
  g_assert_cmpint (add_load (store), ==, OLDER_LAST_LOAD + 1);
  remove_hull (store, 4);
  g_assert_cmpint (scratch_integer (scratch->path, "SELECT hull IS NULL FROM part WHERE id = 8"), ==, 1);
  remove_hull (store, 3);
  g_assert_cmpint (scratch_integer (scratch->path, "SELECT count (*) FROM offset"), ==, 0);
  for (guint i = 0; i < 3; i++)
    g_assert_true (gb_store_undo (store, NULL, NULL, NULL));
  assert_is_old_boat (store);
  g_assert_cmpint (add_load (store), ==, OLDER_LAST_LOAD + 2);
}

/* Each spoils an old file in its own way: it is refused, it stays as it is, and nothing is left beside it. */
static void
test_what_is_not_right_is_refused (void)
{
  const struct
  {
    const char *sql, *part;
    int code;
  } cases[] = {
    { "CREATE TRIGGER evil AFTER INSERT ON load BEGIN DELETE FROM part; END", "trigger evil", GB_STORE_ERROR_DAMAGED },
    { "CREATE TABLE old_hull (x)", "table old_hull", GB_STORE_ERROR_DAMAGED },
    { "DROP TABLE hull; CREATE VIEW hull AS SELECT 1 AS id", "view hull", GB_STORE_ERROR_DAMAGED },
    { "ALTER TABLE part ADD COLUMN evil TEXT DEFAULT 'x'", "table part", GB_STORE_ERROR_DAMAGED },
    { "DROP TABLE sample", "sample", GB_STORE_ERROR_DAMAGED },
    { "PRAGMA ignore_check_constraints = ON; UPDATE load SET mass = -1 WHERE id = 5", "out of its range", GB_STORE_ERROR_REFUSED },
    { "PRAGMA user_version = 0", "never was", GB_STORE_ERROR_FOREIGN },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (Scratch) scratch = scratch_new ();
      g_autofree char *aside = aside_name (scratch, "v1");
      g_autoptr (GbStore) store = NULL;
      g_autoptr (GError) error = NULL;

      older_make (scratch->path);
      scratch_sql (scratch->path, cases[i].sql);
      store = gb_store_open (scratch->path, TRUE, &error);
      g_assert_null (store);
      g_assert_error (error, GB_STORE_ERROR, cases[i].code);
      if (strstr (error->message, cases[i].part) == NULL)
        g_error ("'%s' is not in '%s'", cases[i].part, error->message);
      g_assert_false (g_file_test (aside, G_FILE_TEST_EXISTS));
      g_assert_cmpint (scratch_integer (scratch->path, "PRAGMA user_version"), <, GB_STORE_SCHEMA_VERSION);
      g_assert_cmpint (scratch_integer (scratch->path, "SELECT count (*) FROM sqlite_schema WHERE name = 'tub'"), ==, 0);
    }
}

/* While another program writes, it is looked at in memory; its file is left alone. */
static void
test_one_in_use_is_read_from_a_copy (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autofree char *aside = aside_name (scratch, "v1");
  g_autofree char *copy = g_build_filename (scratch->folder, "copy.garboard", NULL);
  g_autoptr (GbStore) store = NULL;
  g_autoptr (GbStore) copied = NULL;
  g_autoptr (GError) error = NULL;
  sqlite3 *other;

  older_make (scratch->path);
  g_assert_cmpint (sqlite3_open (scratch->path, &other), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_exec (other, "BEGIN IMMEDIATE", NULL, NULL, NULL), ==, SQLITE_OK);
  g_assert_null (gb_store_open (scratch->path, FALSE, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_BUSY);
  g_clear_error (&error);

  store = gb_store_open (scratch->path, TRUE, &error);
  g_assert_no_error (error);
  g_assert_nonnull (strstr (gb_store_read_only_reason (store), "Another program"));
  g_assert_cmpstr (gb_store_path (store), ==, scratch->path);
  assert_is_old_boat (store);
  g_assert_false (gb_store_begin (store, "no", NULL, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_READ_ONLY);
  g_assert_false (g_file_test (aside, G_FILE_TEST_EXISTS));
  sqlite3_close (other);
  g_assert_cmpint (scratch_integer (scratch->path, "PRAGMA user_version"), ==, 1);

  g_assert_true (gb_store_save_copy (store, copy, NULL));
  copied = scratch_open (copy);
  assert_is_old_boat (copied);
}

/* Whatever sizes of pages SQLite once chose. */
static void
test_pages_of_another_size (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbStore) store = NULL;
  g_autoptr (GbStore) copy = NULL;
  g_autoptr (GError) error = NULL;

  older_make (scratch->path);
  scratch_sql (scratch->path, "PRAGMA page_size = 1024; VACUUM");
  store = gb_store_connect (scratch->path, scratch->path, &error);
  copy = gb_migrate_copy (store, 1, &error);
  g_assert_no_error (error);
  assert_is_old_boat (copy);
  gb_migrate (store, 1, &error);
  g_assert_no_error (error);
  assert_is_old_boat (store);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/migrate/all-that-was-said-is-kept", test_all_that_was_said_is_kept);
  g_test_add_func ("/migrate/it-happens-once", test_it_happens_once);
  g_test_add_func ("/migrate/what-was-put-aside-before-stays", test_what_was_put_aside_before_stays);
  g_test_add_func ("/migrate/edits-and-undo-go-on", test_edits_and_undo_go_on);
  g_test_add_func ("/migrate/what-is-not-right-is-refused", test_what_is_not_right_is_refused);
  g_test_add_func ("/migrate/one-in-use-is-read-from-a-copy", test_one_in_use_is_read_from_a_copy);
  g_test_add_func ("/migrate/pages-of-another-size", test_pages_of_another_size);
  return g_test_run ();
}
