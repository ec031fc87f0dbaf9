/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The process is killed, or the power goes, at any moment of an edit: afterwards the file holds every edit that was acknowledged, at most
 * one more, and each of them whole. */

#include "fault-vfs.h"
#include "older.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

/* An edit adds two parts and puts a number on the build's notes: all of that is there, or nothing. */
static gboolean
add_two (GbStore *store, GbBoat *boat)
{
  g_autoptr (GbRecord) build = gb_record_copy (&gb_boat_build (boat)->rec);
  g_autoptr (GbChanges) changes = NULL;
  g_autofree char *notes = NULL;
  gboolean done = gb_store_begin (store, "two parts", NULL, NULL);

  for (int i = 0; i < 2 && done; i++)
    {
      g_autoptr (GbRecord) part = gb_record_new (GB_RECORD_PART);

      part->id = gb_store_next_id (store, GB_RECORD_PART);
      part->position = (double) part->id;
      done = gb_store_put (store, NULL, part, NULL);
    }
  notes = g_strdup_printf ("%u", gb_boat_n (boat, GB_RECORD_PART) / 2 + 1);
  gb_field_set_text (gb_field (GB_RECORD_BUILD, "notes"), build, notes);
  return done && gb_store_put (store, &gb_boat_build (boat)->rec, build, NULL) && gb_store_commit (store, &changes, NULL)
         && gb_store_refresh (store, changes, boat, NULL);
}

/* How many whole edits are in the file. Whatever is half done has been taken back, and it can be worked with. */
static guint
count_edits (Scratch *scratch)
{
  g_autoptr (GbStore) store = scratch_open (scratch->path);
  g_autoptr (GbBoat) boat = scratch_load (store);
  g_autoptr (GPtrArray) faults = gb_store_check (store);
  guint n = gb_boat_n (boat, GB_RECORD_PART);
  const char *notes = gb_boat_build (boat)->notes;

  if (faults->len > 0)
    g_error ("%s", (char *) faults->pdata[0]);
  g_assert_cmpuint (n % 2, ==, 0);
  g_assert_cmpuint (notes != NULL ? (guint) g_ascii_strtoull (notes, NULL, 10) : 0, ==, n / 2);
  return n / 2;
}

/* In the child: edit after edit, each acknowledged by a byte once it is on the disk. */
G_GNUC_NORETURN
static void
work (Scratch *scratch, int ready, guint n_edits)
{
  GbStore *store = gb_store_open (scratch->path, FALSE, NULL);
  GbBoat *boat = store != NULL ? gb_store_load (store, NULL) : NULL;

  if (boat == NULL)
    _exit (1);
  for (guint i = 0; i < n_edits; i++)
    if (!add_two (store, boat) || write (ready, "+", 1) != 1)
      _exit (1);
  _exit (0);
}

static guint
count_bytes (int fd)
{
  guint n = 0;
  char byte;
  gssize got;

  while ((got = read (fd, &byte, 1)) == 1 || (got < 0 && errno == EINTR))
    n += got == 1;
  return n;
}

/* The child's way to its end: how many edits it acknowledged, and how it went. */
static guint
await (pid_t child, int acknowledged, int *status)
{
  guint n = count_bytes (acknowledged);

  close (acknowledged);
  g_assert_cmpint (waitpid (child, status, 0), ==, child);
  return n;
}

static void
test_killed_at_any_moment (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GRand) rand = g_rand_new_with_seed ((guint32) g_test_rand_int ());
  g_autoptr (GbStore) store = NULL;
  g_autoptr (GbBoat) boat = NULL;
  gint32 longest = 20000; /* microseconds; more where the machine is slow and nothing was done in time */
  guint before = 0;

  gb_store_close (scratch_store (scratch, NULL));
  for (guint i = 0; i < 100; i++)
    {
      int ends[2], status;
      pid_t child;
      guint acknowledged, found;

      g_assert_cmpint (pipe (ends), ==, 0);
      child = fork ();
      if (child == 0)
        work (scratch, ends[1], G_MAXUINT);
      close (ends[1]);
      g_usleep ((gulong) g_rand_int_range (rand, 0, longest));
      kill (child, SIGKILL);
      acknowledged = await (child, ends[0], &status);
      longest += acknowledged == 0 ? 5000 : 0;
      g_assert_true (WIFSIGNALED (status));
      found = count_edits (scratch);
      g_assert_cmpuint (found, >=, before + acknowledged);
      g_assert_cmpuint (found, <=, before + acknowledged + 1);
      before = found;
    }
  g_test_message ("%u edits", before);
  g_assert_cmpuint (before, >, 0);

  /* The journal of the last one killed may lie there still, with nothing in it; the next edit clears it away. */
  store = scratch_open (scratch->path);
  boat = scratch_load (store);
  g_assert_true (add_two (store, boat));
}

/* One edit, and the power goes at its n-th call. FALSE if so many were not made. */
static gboolean
crash_once (Scratch *scratch, guint n, guint32 seed)
{
  guint before = count_edits (scratch);
  int ends[2], status;
  pid_t child;
  guint acknowledged, found;

  g_assert_cmpint (pipe (ends), ==, 0);
  child = fork ();
  if (child == 0)
    {
      fault_install ();
      fault_set_crash (n, seed);
      work (scratch, ends[1], 1);
    }
  close (ends[1]);
  acknowledged = await (child, ends[0], &status);
  g_assert_true (WIFEXITED (status));
  g_assert_cmpint (WEXITSTATUS (status), ==, acknowledged > 0 ? 0 : FAULT_EXIT);
  found = count_edits (scratch);
  g_assert_cmpuint (found, >=, before + acknowledged);
  g_assert_cmpuint (found, <=, before + 1);
  return acknowledged == 0;
}

static void
test_the_power_goes_at_every_call (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GRand) rand = g_rand_new_with_seed ((guint32) g_test_rand_int ());
  guint n = 1;
  gboolean crashed = TRUE;

  gb_store_close (scratch_store (scratch, NULL));
  for (; crashed; n++)
    for (guint i = 0; i < 8; i++)
      crashed = crash_once (scratch, n, g_rand_int (rand));
  g_test_message ("%u calls", n - 2);
  g_assert_cmpuint (n, >, 10);
}

/* An older file -------------------------------------------------------------------------------------------------- */

/* In the child: brings the file up to date. */
G_GNUC_NORETURN
static void
migrate (Scratch *scratch)
{
  GbStore *store = gb_store_open (scratch->path, FALSE, NULL);

  _exit (store != NULL ? 0 : 1);
}

/* What a new file is made under lies there still if its maker died. */
static void
clear_away_unfinished (Scratch *scratch)
{
  g_autoptr (GDir) dir = g_dir_open (scratch->folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_prefix (name, ".garboard-new-"))
      {
        g_autofree char *file = g_build_filename (scratch->folder, name, NULL);

        g_unlink (file);
      }
}

/* Whatever was half done has been taken back, and is done now. */
static void
assert_nothing_lost (Scratch *scratch)
{
  g_autoptr (GbStore) store = scratch_open (scratch->path);
  g_autoptr (GbBoat) boat = scratch_load (store);
  g_autoptr (GbBoat) expected = older_boat ();
  g_autoptr (GPtrArray) faults = gb_store_check (store);

  scratch_assert_equal (boat, expected);
  if (faults->len > 0)
    g_error ("%s", (char *) faults->pdata[0]);
  clear_away_unfinished (scratch);
}

static void
test_killed_while_an_older_file_is_brought_up (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed ((guint32) g_test_rand_int ());

  for (guint i = 0; i < 40; i++)
    {
      g_autoptr (Scratch) scratch = scratch_new ();
      int status;
      pid_t child;

      older_make (scratch->path);
      child = fork ();
      if (child == 0)
        migrate (scratch);
      g_usleep ((gulong) g_rand_int_range (rand, 0, 30000));
      kill (child, SIGKILL);
      g_assert_cmpint (waitpid (child, &status, 0), ==, child);
      assert_nothing_lost (scratch);
    }
}

/* The power goes at the n-th call. FALSE if so many were not made. */
static gboolean
crash_migration (guint n, guint32 seed)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  int status;
  pid_t child;

  older_make (scratch->path);
  child = fork ();
  if (child == 0)
    {
      fault_install ();
      fault_set_crash (n, seed);
      migrate (scratch);
    }
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  g_assert_true (WIFEXITED (status));
  g_assert_true (WEXITSTATUS (status) == 0 || WEXITSTATUS (status) == FAULT_EXIT);
  assert_nothing_lost (scratch);
  return WEXITSTATUS (status) != 0;
}

static void
test_the_power_goes_while_an_older_file_is_brought_up (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed ((guint32) g_test_rand_int ());
  guint n = 1;

  while (crash_migration (n, g_rand_int (rand)))
    n++;
  g_test_message ("%u calls", n - 1);
  g_assert_cmpuint (n, >, 10);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/crash/killed-at-any-moment", test_killed_at_any_moment);
  g_test_add_func ("/crash/the-power-goes-at-every-call", test_the_power_goes_at_every_call);
  g_test_add_func ("/crash/killed-while-an-older-file-is-brought-up", test_killed_while_an_older_file_is_brought_up);
  g_test_add_func ("/crash/the-power-goes-while-an-older-file-is-brought-up", test_the_power_goes_while_an_older_file_is_brought_up);
  return g_test_run ();
}
