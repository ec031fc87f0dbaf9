/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A disk that is full or fails, at the first, the second, the third call and so on, once and for good: there is a sentence, nothing is
 * lost, and when the disk is well again the work goes on. */

#include "fault-vfs.h"
#include "older.h"

#include <sqlite3.h>
#include <string.h>

static GbRecord *
new_part (gint64 id, const char *name)
{
  GbRecord *part = gb_record_new (GB_RECORD_PART);

  part->id = id;
  part->position = (double) id;
  gb_field_set_text (gb_field (GB_RECORD_PART, "name"), part, name);
  return part;
}

/* A build of some parts, so that an edit writes several pages. */
static GbBoat *
some_boat (void)
{
  GbBoat *boat = gb_boat_new ();

  for (gint64 i = 1; i <= 200; i++)
    gb_boat_take (boat, new_part (i, "Bottom"));
  gb_boat_settle (boat);
  return boat;
}

/* What is tried while the disk fails. */
typedef gboolean (*Trial) (GbStore *store, GError **error);

static gboolean
edit (GbStore *store, GError **error)
{
  gint64 id = gb_store_next_id (store, GB_RECORD_PART);
  g_autoptr (GbRecord) part = new_part (id, "Side");

  if (!gb_store_begin (store, "edit", NULL, error))
    return FALSE;
  if (gb_store_put (store, NULL, part, error) && gb_store_delete (store, GB_RECORD_PART, id - 200, error)
      && gb_store_commit (store, NULL, error))
    return TRUE;
  gb_store_rollback (store);
  return FALSE;
}

static gboolean
undo (GbStore *store, GError **error)
{
  return gb_store_undo (store, NULL, NULL, error);
}

static void
assert_sentence (const GError *error, const char *path)
{
  g_assert_nonnull (error);
  g_assert_true (error->domain == GB_STORE_ERROR);
  g_assert_nonnull (strstr (error->message, path));
  g_assert_cmpint (error->code, !=, GB_STORE_ERROR_DAMAGED);
}

static void
assert_sound (GbStore *store, const GbBoat *expected)
{
  g_autoptr (GbBoat) boat = scratch_load (store);
  g_autoptr (GPtrArray) faults = gb_store_check (store);

  scratch_assert_equal (boat, expected);
  if (faults->len > 0)
    g_error ("%s", (char *) faults->pdata[0]);
}

/* A fault at the n-th call. FALSE if so many were not made. */
static gboolean
try_once (Scratch *scratch, Trial trial, guint n, int code, gboolean lasting)
{
  g_autoptr (GbStore) store = scratch_open (scratch->path);
  g_autoptr (GbBoat) before = NULL;
  g_autoptr (GError) error = NULL;
  gboolean done, fired;

  g_assert_true (edit (store, NULL));
  before = scratch_load (store);
  fault_set (FAULT_WRITES, n, code, lasting);
  done = trial (store, &error);
  fired = fault_clear ();
  if (!done)
    {
      g_assert_true (fired);
      assert_sentence (error, scratch->path);
      assert_sound (store, before);
      g_clear_error (&error);
      g_assert_true (trial (store, &error));
      g_assert_no_error (error);
    }
  return fired;
}

static void
try_all (Trial trial)
{
  const int codes[] = { SQLITE_FULL, SQLITE_IOERR_WRITE };
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbBoat) boat = some_boat ();

  gb_store_close (scratch_store (scratch, boat));
  for (guint i = 0; i < G_N_ELEMENTS (codes); i++)
    for (int lasting = 0; lasting < 2; lasting++)
      {
        guint n = 1;

        while (try_once (scratch, trial, n, codes[i], lasting))
          n++;
        g_test_message ("%u calls", n - 1);
        g_assert_cmpuint (n, >, 8);
      }
}

static void
test_an_edit (void)
{
  try_all (edit);
}

static void
test_undo (void)
{
  try_all (undo);
}

static void
test_a_full_disk_is_called_full (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbStore) store = scratch_store (scratch, NULL);
  g_autoptr (GError) error = NULL;

  fault_set (FAULT_WRITES, 2, SQLITE_FULL, TRUE); /* the first opens the journal */
  g_assert_false (edit (store, &error));
  g_assert_true (fault_clear ());
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_FULL);
  g_assert_nonnull (strstr (error->message, "full"));
  g_assert_true (edit (store, NULL));
}

/* A new file is there whole or not at all, and nothing is left beside it (which scratch_free() looks for). */
static gboolean
create (const char *path, GbStore *store, GError **error)
{
  g_autoptr (GbBoat) boat = some_boat ();

  return gb_store_create (path, boat, TRUE, error);
}

static gboolean
save_copy (const char *path, GbStore *store, GError **error)
{
  return gb_store_save_copy (store, path, error);
}

static void
try_making (gboolean (*make) (const char *path, GbStore *store, GError **error))
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbBoat) boat = some_boat ();
  g_autoptr (GbStore) store = scratch_store (scratch, boat);
  g_autofree char *path = g_build_filename (scratch->folder, "other.garboard", NULL);
  g_autoptr (GbStore) made = NULL;
  gboolean fired = TRUE;

  for (guint n = 1; fired; n++)
    {
      g_autoptr (GError) error = NULL;
      gboolean done;

      fault_set (FAULT_WRITES, n, SQLITE_FULL, n % 2 == 0);
      done = make (path, store, &error);
      fired = fault_clear ();
      g_assert_true (done || fired);
      g_assert_cmpint (g_file_test (path, G_FILE_TEST_EXISTS), ==, done);
      if (!done)
        assert_sentence (error, path);
    }
  made = scratch_open (path);
  assert_sound (made, boat);
}

static void
test_creating (void)
{
  try_making (create);
}

static void
test_saving_a_copy (void)
{
  try_making (save_copy);
}

/* A fault at the n-th call while an older file is brought up to date: it is as it was, and what the disk took once it is well again is the
 * whole of it. FALSE if so many calls were not made. */
static gboolean
migrate_once (guint n, int code, gboolean lasting)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbBoat) expected = older_boat ();
  g_autoptr (GbStore) store = NULL;
  g_autoptr (GError) error = NULL;
  gboolean fired;

  older_make (scratch->path);
  fault_set (FAULT_WRITES, n, code, lasting);
  store = gb_store_open (scratch->path, FALSE, &error);
  fired = fault_clear ();
  if (store == NULL)
    {
      g_assert_true (fired);
      assert_sentence (error, scratch->folder);
      g_assert_cmpint (scratch_integer (scratch->path, "PRAGMA user_version"), ==, 1);
      store = scratch_open (scratch->path);
    }
  assert_sound (store, expected);
  return fired;
}

static void
test_bringing_an_older_file_up_to_date (void)
{
  for (int lasting = 0; lasting < 2; lasting++)
    {
      guint n = 1;

      while (migrate_once (n, n % 2 == 0 ? SQLITE_FULL : SQLITE_IOERR_WRITE, lasting))
        n++;
      g_test_message ("%u calls", n - 1);
      g_assert_cmpuint (n, >, 8);
    }
}

/* When there is no room for it, it can still be looked at. */
static void
test_an_older_file_on_a_full_disk (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbBoat) expected = older_boat ();
  g_autoptr (GbStore) store = NULL;
  g_autoptr (GError) error = NULL;

  older_make (scratch->path);
  fault_set (FAULT_WRITES, 3, SQLITE_FULL, TRUE);
  store = gb_store_open (scratch->path, TRUE, &error);
  g_assert_true (fault_clear ());
  g_assert_no_error (error);
  g_assert_nonnull (strstr (gb_store_read_only_reason (store), "full"));
  assert_sound (store, expected);
  g_assert_cmpint (scratch_integer (scratch->path, "PRAGMA user_version"), ==, 1);
}

/* A page that cannot be read: opening or reading says so, and later it goes on. */
static void
test_reading (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbBoat) boat = some_boat ();
  gboolean fired = TRUE;

  gb_store_close (scratch_store (scratch, boat));
  for (guint n = 1; fired; n++)
    {
      g_autoptr (GbStore) store = NULL;
      g_autoptr (GbBoat) loaded = NULL;
      g_autoptr (GError) error = NULL;

      fault_set (FAULT_READS, n, 0, FALSE);
      store = gb_store_open (scratch->path, FALSE, &error);
      if (store != NULL)
        loaded = gb_store_load (store, &error);
      fired = fault_clear ();
      if (fired && loaded == NULL)
        g_assert_true (error != NULL && error->domain == GB_STORE_ERROR);
      if (store != NULL)
        assert_sound (store, boat);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  fault_install ();
  g_test_add_func ("/disk/an-edit", test_an_edit);
  g_test_add_func ("/disk/undo", test_undo);
  g_test_add_func ("/disk/a-full-disk-is-called-full", test_a_full_disk_is_called_full);
  g_test_add_func ("/disk/creating", test_creating);
  g_test_add_func ("/disk/saving-a-copy", test_saving_a_copy);
  g_test_add_func ("/disk/an-older-file", test_bringing_an_older_file_up_to_date);
  g_test_add_func ("/disk/an-older-file-on-a-full-disk", test_an_older_file_on_a_full_disk);
  g_test_add_func ("/disk/reading", test_reading);
  return g_test_run ();
}
