/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Files and folders that may not be written, or not even be read. Nothing binds root, so that each case runs in a process of its own
 * which first becomes nobody. */

#include "older.h"

#include <glib/gstdio.h>
#include <grp.h>
#include <string.h>
#include <sys/prctl.h>
#include <unistd.h>

#define NOBODY 65534

static void
become_nobody (void)
{
  if (geteuid () != 0)
    return;
  g_assert_cmpint (setgroups (0, NULL), ==, 0);
  g_assert_cmpint (setresgid (NOBODY, NOBODY, NOBODY), ==, 0);
  g_assert_cmpint (setresuid (NOBODY, NOBODY, NOBODY), ==, 0);
  /* Or the leak sanitizer may not look into its own process any more. */
  g_assert_cmpint (prctl (PR_SET_DUMPABLE, 1), ==, 0);
}

/* A folder with a build in it, both with these rights. */
static void
set_rights (Scratch *scratch, gboolean older, int file, int folder)
{
  if (older)
    older_make (scratch->path);
  else
    gb_store_close (scratch_store (scratch, NULL));
  g_assert_cmpint (g_chmod (scratch->path, file), ==, 0);
  g_assert_cmpint (g_chmod (scratch->folder, folder), ==, 0);
}

/* It opens to read, says why, and everything but writing can be done. */
static void
expect_read_only (Scratch *scratch, const char *part)
{
  g_autoptr (GbStore) store = NULL;
  g_autoptr (GbBoat) boat = NULL;
  g_autoptr (GPtrArray) faults = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_null (gb_store_open (scratch->path, FALSE, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_READ_ONLY);
  g_clear_error (&error);

  store = gb_store_open (scratch->path, TRUE, &error);
  g_assert_no_error (error);
  g_assert_nonnull (strstr (gb_store_read_only_reason (store), part));
  g_assert_nonnull (strstr (gb_store_read_only_reason (store), scratch->path));
  boat = scratch_load (store);
  faults = gb_store_check (store);
  g_assert_cmpuint (faults->len, ==, 0);
  g_assert_false (gb_store_begin (store, "no", NULL, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_READ_ONLY);
}

#define FOLDER "GARBOARD_TEST_FOLDER"

/* The build is made here, and cleared away here; it is looked at by nobody. */
static void
run_case (void (*check) (Scratch *scratch), gboolean older, int file, int folder)
{
  g_autoptr (Scratch) scratch = NULL;

  if (g_test_subprocess ())
    {
      g_autofree char *path = g_build_filename (g_getenv (FOLDER), "build.garboard", NULL);
      Scratch given = { (char *) g_getenv (FOLDER), path };

      become_nobody ();
      check (&given);
      return;
    }
  scratch = scratch_new ();
  set_rights (scratch, older, file, folder);
  g_setenv (FOLDER, scratch->folder, TRUE);
  g_test_trap_subprocess (NULL, 0, G_TEST_SUBPROCESS_DEFAULT);
  g_test_trap_assert_passed ();
  g_assert_cmpint (g_chmod (scratch->folder, 0700), ==, 0);
}

static void
check_file (Scratch *scratch)
{
  expect_read_only (scratch, "write-protected");
}

static void
test_a_file_that_may_only_be_read (void)
{
  run_case (check_file, FALSE, 0444, 0777);
}

static void
check_folder (Scratch *scratch)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *other = g_build_filename (scratch->folder, "other.garboard", NULL);

  expect_read_only (scratch, "folder");
  g_assert_false (gb_store_create (other, boat, FALSE, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_READ_ONLY);
  g_assert_nonnull (strstr (error->message, other));
}

static void
test_a_folder_that_may_only_be_read (void)
{
  run_case (check_folder, FALSE, 0666, 0555);
}

static void
check_closed (Scratch *scratch)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (gb_store_open (scratch->path, TRUE, &error));
  g_assert_nonnull (error);
  g_assert_nonnull (strstr (error->message, scratch->path));
}

static void
test_a_file_that_may_not_be_read (void)
{
  run_case (check_closed, FALSE, 0000, 0777);
}

/* It is read from a copy in memory that was brought up to date; itself it stays as it is. */
static void
expect_older (Scratch *scratch, const char *part)
{
  g_autofree char *aside = g_build_filename (scratch->folder, "build.v1.garboard", NULL);
  g_autoptr (GbBoat) expected = older_boat ();
  g_autoptr (GbStore) store = NULL;
  g_autoptr (GbBoat) boat = NULL;

  expect_read_only (scratch, part);
  store = gb_store_open (scratch->path, TRUE, NULL);
  boat = scratch_load (store);
  scratch_assert_equal (boat, expected);
  g_assert_null (gb_store_undo_words (store));
  g_assert_false (g_file_test (aside, G_FILE_TEST_EXISTS));
}

static void
check_older_file (Scratch *scratch)
{
  expect_older (scratch, "write-protected");
}

static void
test_an_older_file_that_may_only_be_read (void)
{
  run_case (check_older_file, TRUE, 0444, 0777);
}

static void
check_older_in_folder (Scratch *scratch)
{
  expect_older (scratch, "folder");
}

static void
test_an_older_file_in_a_folder_that_may_only_be_read (void)
{
  run_case (check_older_in_folder, TRUE, 0666, 0555);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/rights/a-file-that-may-only-be-read", test_a_file_that_may_only_be_read);
  g_test_add_func ("/rights/a-folder-that-may-only-be-read", test_a_folder_that_may_only_be_read);
  g_test_add_func ("/rights/a-file-that-may-not-be-read", test_a_file_that_may_not_be_read);
  g_test_add_func ("/rights/an-older-file-that-may-only-be-read", test_an_older_file_that_may_only_be_read);
  g_test_add_func ("/rights/an-older-file-in-such-a-folder", test_an_older_file_in_a_folder_that_may_only_be_read);
  return g_test_run ();
}
