/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Files that Garboard did not write, or that somebody has been at since: each is refused with a sentence, or does no harm. */

#include "random-boat.h"
#include "scratch.h"

#include <glib/gstdio.h>
#include <string.h>

static void
make_file (Scratch *scratch)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);
  g_autoptr (GbBoat) boat = random_boat (rand, 150);

  gb_store_close (scratch_store (scratch, boat));
}

/* Not even to read, and with this in the sentence. */
static void
refuse (const char *path, int code, const char *part)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GbStore) store = gb_store_open (path, TRUE, &error);

  if (store != NULL)
    g_error ("opened although it should have been refused for '%s'", part);
  g_assert_error (error, GB_STORE_ERROR, code);
  if (strstr (error->message, part) == NULL)
    g_error ("'%s' is not in '%s'", part, error->message);
}

/* What is no build at all ------------------------------------------------------------------------------------------- */

static void
test_other_files_are_refused (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  const char *const contents[] = { "", "x", "SQLite format 3", "{\"garboard\": 1}", NULL };
  g_autofree char *none = g_build_filename (scratch->folder, "none.garboard", NULL);
  g_autofree char *zeros = g_malloc0 (8192);

  refuse (none, GB_STORE_ERROR_NOT_FOUND, "no file");
  refuse (scratch->folder, GB_STORE_ERROR_FOREIGN, "not a file");
  refuse ("/dev/null", GB_STORE_ERROR_FOREIGN, "not a file");
  for (guint i = 0; contents[i] != NULL; i++)
    {
      g_assert_true (g_file_set_contents (scratch->path, contents[i], -1, NULL));
      refuse (scratch->path, GB_STORE_ERROR_FOREIGN, "not a build");
    }
  g_assert_true (g_file_set_contents (scratch->path, zeros, 8192, NULL));
  refuse (scratch->path, GB_STORE_ERROR_FOREIGN, "not a build");
}

static void
test_other_databases_are_refused (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();

  scratch_sql (scratch->path, "CREATE TABLE part (id INTEGER PRIMARY KEY)");
  refuse (scratch->path, GB_STORE_ERROR_FOREIGN, "not a build");
  scratch_sql (scratch->path, "PRAGMA application_id = 1197633377; PRAGMA user_version = 1"); /* 0x47626f61 */
  refuse (scratch->path, GB_STORE_ERROR_DAMAGED, "build.garboard");
}

/* A name that looks like a URI with options is a name. */
static void
test_names_are_not_uris (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autofree char *here = g_get_current_dir ();
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_autoptr (GbStore) store = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (g_chdir (scratch->folder), ==, 0);
  g_assert_true (gb_store_create ("file:a?mode=memory&x=.garboard", boat, FALSE, &error));
  g_assert_true (g_file_test ("file:a?mode=memory&x=.garboard", G_FILE_TEST_IS_REGULAR));
  store = scratch_open ("file:a?mode=memory&x=.garboard");
  g_assert_cmpint (g_chdir (here), ==, 0);
}

/* Versions --------------------------------------------------------------------------------------------------------- */

static void
test_versions_that_never_were_are_refused (void)
{
  const char *const versions[] = { "PRAGMA user_version = 0", "PRAGMA user_version = -1", "PRAGMA user_version = -2147483648" };

  for (guint i = 0; i < G_N_ELEMENTS (versions); i++)
    {
      g_autoptr (Scratch) scratch = scratch_new ();

      make_file (scratch);
      scratch_sql (scratch->path, versions[i]);
      refuse (scratch->path, GB_STORE_ERROR_FOREIGN, "never was");
    }
}

#define NEWER "PRAGMA user_version = 1000000;"

static void
test_a_newer_file_is_opened_to_read (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbStore) store = NULL;
  g_autoptr (GbBoat) boat = NULL;
  g_autoptr (GError) error = NULL;

  make_file (scratch);
  scratch_sql (scratch->path, NEWER "ALTER TABLE part ADD COLUMN wings INTEGER; CREATE TABLE wing (id INTEGER)");
  g_assert_null (gb_store_open (scratch->path, FALSE, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_NEWER);
  g_clear_error (&error);

  store = gb_store_open (scratch->path, TRUE, &error);
  g_assert_no_error (error);
  g_assert_nonnull (strstr (gb_store_read_only_reason (store), "newer"));
  boat = scratch_load (store);
  g_assert_cmpuint (gb_boat_n (boat, GB_RECORD_PART), >, 0);
  g_assert_false (gb_store_begin (store, "no", NULL, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_READ_ONLY);
  g_clear_error (&error);
  g_assert_false (gb_store_undo (store, NULL, NULL, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_READ_ONLY);
}

static void
test_a_newer_file_that_cannot_be_read_is_refused (void)
{
  const char *const changes[] = { "ALTER TABLE part RENAME COLUMN thickness TO depth", "DROP TABLE sample",
                                  "CREATE TRIGGER t AFTER UPDATE ON part BEGIN DELETE FROM part; END",
                                  "CREATE VIRTUAL TABLE v USING fts5 (x)", "CREATE VIEW v AS SELECT 1" };

  for (guint i = 0; i < G_N_ELEMENTS (changes); i++)
    {
      g_autoptr (Scratch) scratch = scratch_new ();

      make_file (scratch);
      scratch_sql (scratch->path, NEWER);
      scratch_sql (scratch->path, changes[i]);
      refuse (scratch->path, GB_STORE_ERROR_NEWER, "newer");
    }
}

/* Schemas ---------------------------------------------------------------------------------------------------------- */

static void
test_foreign_schemas_are_refused (void)
{
  const struct
  {
    const char *sql, *part;
  } cases[] = {
    { "CREATE TRIGGER evil AFTER UPDATE ON part BEGIN DELETE FROM part; END", "trigger evil" },
    { "CREATE VIEW evil AS SELECT * FROM part", "view evil" },
    { "CREATE VIRTUAL TABLE evil USING fts5 (x)", "evil" },
    { "CREATE TABLE evil (x)", "table evil" },
    { "CREATE INDEX evil ON part (name)", "index evil" },
    { "ALTER TABLE part ADD COLUMN evil REAL AS (abs (x)) VIRTUAL", "table part" },
    { "ALTER TABLE part ADD COLUMN evil TEXT DEFAULT 'x'", "table part" },
    { "ALTER TABLE sample RENAME TO specimen", "sample" },
    { "ALTER TABLE load RENAME COLUMN mass TO weight", "table load" },
    { "DROP INDEX part_owner", "index part_owner" },
    { "DROP TABLE history", "table history" },
    { "DROP TABLE line; CREATE TABLE line (id INTEGER PRIMARY KEY, owner, position, typed, kind, what, stock, part, quantity,"
      " price, discount, category)",
      "line" },
    { "DROP TABLE line; CREATE VIEW line AS SELECT 1 AS id, 1 AS owner", "line" },
    { "PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = replace (sql, '<= 100)', '<= 1e9)') WHERE name = 'part'",
      "table part" },
    { "PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = replace (sql, ' STRICT', '') WHERE name = 'part'", "table part" },
    { "PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = replace (sql, 'ON DELETE CASCADE', '') WHERE name = 'part'",
      "table part" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (Scratch) scratch = scratch_new ();

      make_file (scratch);
      scratch_sql (scratch->path, cases[i].sql);
      refuse (scratch->path, GB_STORE_ERROR_DAMAGED, cases[i].part);
    }
}

/* Rows ------------------------------------------------------------------------------------------------------------- */

/* A file that is too large to be looked through at opening: its rows are looked at when they are read. */
static void
make_large_file (Scratch *scratch)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_autofree char *notes = g_strnfill (99000, 'n');

  for (gint64 i = 1; i <= 20; i++)
    {
      GbRecord *part = gb_record_new (GB_RECORD_PART);

      part->id = i;
      part->position = (double) i;
      gb_field_set_text (gb_field (GB_RECORD_PART, "notes"), part, notes);
      gb_field_set_text (gb_field (GB_RECORD_PART, "name"), part, i == 1 ? "Bottom" : "Side");
      gb_boat_take (boat, part);
    }
  gb_boat_settle (boat);
  gb_store_close (scratch_store (scratch, boat));
}

#define LOOSELY "PRAGMA ignore_check_constraints = ON; PRAGMA foreign_keys = OFF; "
#define NOT_STRICT                                                                                                     \
  "PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = replace (sql, ' STRICT', '') WHERE name = 'part';"      \
  "PRAGMA writable_schema = RESET; "
#define STRICT_AGAIN                                                                                                   \
  "; PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = sql || ' STRICT' WHERE name = 'part'"

static const struct
{
  const char *sql, *part;
} bad_rows[] = {
  { LOOSELY "UPDATE part SET thickness = -1 WHERE id = 1", "Thickness" },
  { LOOSELY "UPDATE part SET thickness = 9e999 WHERE id = 1", "Thickness" },
  { LOOSELY "UPDATE part SET quantity = 1e300 WHERE id = 1", "Quantity" },
  { LOOSELY "UPDATE part SET kind = 'wing' WHERE id = 1", "Kind" },
  { LOOSELY "UPDATE part SET pair = 7 WHERE id = 1", "Pair" },
  { LOOSELY "UPDATE part SET price = -5 WHERE id = 1", "Planned price" },
  { LOOSELY "UPDATE part SET name = CAST (x'c328ff' AS TEXT) WHERE id = 1", "UTF-8" },
  { LOOSELY "UPDATE part SET name = 'a' || char (0) || 'b' WHERE id = 1", "Name" },
  { LOOSELY "UPDATE part SET name = 'a' || char (7) WHERE id = 1", "control character" },
  { LOOSELY "UPDATE part SET name = printf ('%.*c', 1001, 'x') WHERE id = 1", "too long" },
  { LOOSELY "UPDATE part SET notes = printf ('%.*c', 3000000, 'x') WHERE id = 1", "too long" },
  { LOOSELY "UPDATE part SET outline = printf ('%.*c', 1000001, '1') WHERE id = 1", "Outline" },
  { LOOSELY "UPDATE part SET typed = CAST (x'ff' AS TEXT) WHERE id = 1", "typed" },
  { LOOSELY "UPDATE part SET position = 9e999 WHERE id = 1", "place in the list" },
  { LOOSELY "UPDATE part SET id = -4 WHERE id = 1", "place in the list" },
  { LOOSELY "UPDATE part SET material = -4 WHERE id = 1", "no such thing" },
  { NOT_STRICT LOOSELY "UPDATE part SET thickness = 'six' WHERE id = 1" STRICT_AGAIN, "Thickness" },
  { NOT_STRICT LOOSELY "UPDATE part SET thickness = x'00ff' WHERE id = 1" STRICT_AGAIN, "Thickness" },
  { NOT_STRICT LOOSELY "UPDATE part SET name = x'00ff' WHERE id = 1" STRICT_AGAIN, "Name" },
  { NOT_STRICT LOOSELY "UPDATE part SET kind = 3.5 WHERE id = 1" STRICT_AGAIN, "Kind" },
  { NOT_STRICT LOOSELY "UPDATE part SET pair = 'yes' WHERE id = 1" STRICT_AGAIN, "Pair" },
  { LOOSELY "UPDATE part SET owner = 1 WHERE id = 1", "lies in itself" },
  { LOOSELY "UPDATE part SET owner = 3 - id WHERE id IN (1, 2)", "lies in itself" },
  { LOOSELY "UPDATE part SET owner = 77 WHERE id = 1", "not there" },
  { LOOSELY "UPDATE part SET material = 77 WHERE id = 1", "not there" },
  { LOOSELY "UPDATE part SET surface_of = 77 WHERE id = 1", "not there" },
  { LOOSELY "INSERT INTO sample (id, owner, position) VALUES (1, 77, 1)", "not there" },
};

static void
test_bad_rows_are_named_when_they_are_read (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (bad_rows); i++)
    {
      g_autoptr (Scratch) scratch = scratch_new ();
      g_autoptr (GbStore) store = NULL;
      g_autoptr (GbBoat) boat = NULL;
      g_autoptr (GPtrArray) faults = NULL;
      g_autoptr (GError) error = NULL;

      make_large_file (scratch);
      scratch_sql (scratch->path, bad_rows[i].sql);
      store = scratch_open (scratch->path);
      boat = gb_store_load (store, &error);
      if (boat != NULL)
        g_error ("read in spite of: %s", bad_rows[i].sql);
      g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_DAMAGED);
      if (strstr (error->message, bad_rows[i].part) == NULL || strstr (error->message, scratch->path) == NULL)
        g_error ("'%s' is not in '%s'", bad_rows[i].part, error->message);
      faults = gb_store_check (store);
      g_assert_cmpuint (faults->len, >, 0);
    }
}

/* A small file is looked through before it is opened, and the sentence is as good. */
static void
test_bad_values_in_a_small_file_are_named_at_once (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();

  make_file (scratch);
  scratch_sql (scratch->path, LOOSELY "UPDATE build SET freeboard = 1e9");
  refuse (scratch->path, GB_STORE_ERROR_DAMAGED, "Least freeboard");
}

/* More than SQLite is allowed to hold in memory for one value. */
static void
test_a_giant_value_is_refused (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbStore) store = NULL;
  g_autoptr (GError) error = NULL;

  make_large_file (scratch);
  scratch_sql (scratch->path, LOOSELY "UPDATE part SET notes = CAST (zeroblob (140000000) AS TEXT) WHERE id = 1");
  store = scratch_open (scratch->path);
  g_assert_null (gb_store_load (store, &error));
  g_assert_nonnull (error);
}

/* A highest id at the end of the whole numbers: no new record can be put, and that is said. */
static void
test_a_spoiled_sequence_is_survived (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbStore) store = NULL;
  g_autoptr (GbRecord) part = gb_record_new (GB_RECORD_PART);
  g_autoptr (GError) error = NULL;

  make_large_file (scratch);
  scratch_sql (scratch->path, "UPDATE sqlite_sequence SET seq = 9223372036854775807");
  store = scratch_open (scratch->path);
  g_assert_true (gb_store_begin (store, "new part", NULL, &error));
  part->id = gb_store_next_id (store, GB_RECORD_PART);
  g_assert_cmpint (part->id, >, 0);
  g_assert_false (gb_store_put (store, NULL, part, &error));
  g_assert_error (error, GB_STORE_ERROR, GB_STORE_ERROR_REFUSED);
  gb_store_rollback (store);
}

/* Damage ----------------------------------------------------------------------------------------------------------- */

typedef struct
{
  char *bytes;
  gsize length;
  GbBoat *boat;
} Sound;

static void
sound_init (Sound *sound, Scratch *scratch)
{
  g_autoptr (GbStore) store = NULL;

  make_file (scratch);
  store = scratch_open (scratch->path);
  sound->boat = scratch_load (store);
  g_assert_true (gb_store_begin (store, "delete", NULL, NULL));
  for (gint64 id = 1; id < 40; id++)
    g_assert_true (gb_store_delete (store, GB_RECORD_PART, id, NULL));
  g_assert_true (gb_store_commit (store, NULL, NULL));
  g_assert_true (gb_store_undo (store, NULL, NULL, NULL));
  g_clear_pointer (&store, gb_store_close);
  g_assert_true (g_file_get_contents (scratch->path, &sound->bytes, &sound->length, NULL));
}

static void
sound_clear (Sound *sound)
{
  g_free (sound->bytes);
  gb_boat_free (sound->boat);
}

/* Without waiting for the disk. */
static void
put_bytes (Scratch *scratch, const char *bytes, gsize length)
{
  g_unlink (scratch->path);
  g_assert_true (g_file_set_contents_full (scratch->path, bytes, (gssize) length, G_FILE_SET_CONTENTS_NONE, 0666, NULL));
}

/* Everything that can be done with a file is done with these bytes. No crash, and an error is always a sentence. TRUE if they can be
 * loaded, into what is then *@boat. */
static gboolean
try_bytes (Scratch *scratch, const char *bytes, gsize length, GbBoat **boat)
{
  g_autoptr (GbStore) store = NULL;
  g_autoptr (GPtrArray) faults = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *journal = g_strconcat (scratch->path, "-journal", NULL);

  g_unlink (journal);
  put_bytes (scratch, bytes, length);
  store = gb_store_open (scratch->path, FALSE, &error);
  if (store == NULL)
    {
      g_assert_true (error != NULL && error->domain == GB_STORE_ERROR && g_str_has_suffix (error->message, "."));
      return FALSE;
    }
  faults = gb_store_check (store);
  *boat = gb_store_load (store, &error);
  g_assert_true ((*boat == NULL) == (error != NULL));
  gb_store_undo_words (store);
  if (gb_store_redo (store, NULL, NULL, NULL))
    gb_store_undo (store, NULL, NULL, NULL);
  return *boat != NULL;
}

/* Cut off after each twentieth: what can still be read whole is the same, or nothing is read. */
static void
test_a_truncated_file (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  Sound sound;

  sound_init (&sound, scratch);
  for (gsize i = 0; i < 20; i++)
    {
      g_autoptr (GbBoat) boat = NULL;

      g_assert_false (try_bytes (scratch, sound.bytes, sound.length * i / 20, &boat));
    }
  sound_clear (&sound);
}

/* Each byte of the header, set to a few others. */
static void
test_a_spoiled_header (void)
{
  const guint8 values[] = { 0x00, 0x01, 0x7f, 0x80, 0xff };
  g_autoptr (Scratch) scratch = scratch_new ();
  Sound sound;

  sound_init (&sound, scratch);
  for (gsize at = 0; at < 108; at++)
    for (guint v = 0; v < G_N_ELEMENTS (values); v++)
      {
        g_autofree char *bytes = g_memdup2 (sound.bytes, sound.length);
        g_autoptr (GbBoat) boat = NULL;

        bytes[at] = (char) values[v];
        if (try_bytes (scratch, bytes, sound.length, &boat))
          scratch_assert_equal (boat, sound.boat);
      }
  sound_clear (&sound);
}

/* Bytes anywhere. Some lie in a number, and nobody can tell; the rest is found, and nothing crashes or hangs. */
static void
test_spoiled_pages (void)
{
  g_autoptr (GRand) rand = random_seeded ();
  g_autoptr (Scratch) scratch = scratch_new ();
  Sound sound;

  sound_init (&sound, scratch);
  for (guint i = 0; i < 400; i++)
    {
      g_autofree char *bytes = g_memdup2 (sound.bytes, sound.length);
      g_autoptr (GbBoat) boat = NULL;

      for (guint n = 0; n < 1 + i % 8; n++)
        bytes[g_rand_int_range (rand, 100, (gint32) sound.length)] = (char) g_rand_int (rand);
      try_bytes (scratch, bytes, sound.length, &boat);
    }
  sound_clear (&sound);
}

/* A changeset of somebody else's making must not get past its reader. */
static void
test_spoiled_history (void)
{
  g_autoptr (GRand) rand = random_seeded ();
  g_autoptr (Scratch) scratch = scratch_new ();
  Sound sound;

  sound_init (&sound, scratch);
  for (guint i = 0; i < 300; i++)
    {
      gint64 size = scratch_integer (scratch->path, "SELECT length(changeset) FROM history");
      gint64 at = g_rand_int_range (rand, 0, (gint32) MIN (size, i % 2 == 0 ? 80 : size));
      g_autofree char *sql
          = g_strdup_printf ("UPDATE history SET changeset = CAST (substr (changeset, 1, %d) || x'%02x' || substr (changeset, %d)"
                             " AS BLOB)",
                             (int) at, g_rand_int_range (rand, 0, 256), (int) at + (i % 3 == 0 ? 1 : 2));
      g_autoptr (GbStore) store = NULL;
      g_autoptr (GbBoat) boat = NULL;
      g_autoptr (GError) error = NULL;

      put_bytes (scratch, sound.bytes, sound.length);
      scratch_sql (scratch->path, sql);
      store = scratch_open (scratch->path);
      if (!gb_store_redo (store, NULL, NULL, &error))
        g_assert_nonnull (error);
      boat = scratch_load (store);
      if (error != NULL)
        scratch_assert_equal (boat, sound.boat);
    }
  sound_clear (&sound);
}

/* A changeset that is sound but not ours: rows of other tables, a knot, a reference to nothing. */
static void
test_hostile_history (void)
{
  const struct
  {
    const char *sql;
    int code;
  } cases[] = {
    /* 'T', 1 column, key, "history", insert, direct, an integer */
    { "x'540101686973746f727900' || x'1200010000000000000001'", GB_STORE_ERROR_DAMAGED },
    /* "part" with one column only */
    { "x'5401017061727400' || x'1200010000000000000001'", GB_STORE_ERROR_DAMAGED },
    /* no table */
    { "x'1200010000000000000001'", GB_STORE_ERROR_DAMAGED },
    /* category: 5 columns; a row that is there already: id 1, position, NULLs */
    { "x'540501000000006361746567" "6f727900' || x'1200' || x'010000000000000001' || x'023ff0000000000000' || x'050505'",
      GB_STORE_ERROR_REFUSED },
    /* sample: 12 columns; lives in a material that is not there */
    { "x'540c010000000000000000000000' || x'73616d706c6500' || x'1200' || x'01000000000000000a' || x'01000000000000004d'"
      " || x'023ff0000000000000' || x'050505050505050505'",
      GB_STORE_ERROR_REFUSED },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (Scratch) scratch = scratch_new ();
      g_autofree char *sql = g_strdup_printf ("INSERT INTO category (id, position) VALUES (1, 1);"
                                              "INSERT INTO history VALUES (1, 0, 'evil', NULL, NULL, NULL, CAST (%s AS BLOB))",
                                              cases[i].sql);
      g_autoptr (GbStore) store = NULL;
      g_autoptr (GError) error = NULL;

      make_large_file (scratch);
      scratch_sql (scratch->path, sql);
      store = scratch_open (scratch->path);
      g_assert_cmpstr (gb_store_redo_words (store), ==, "evil");
      g_assert_false (gb_store_redo (store, NULL, NULL, &error));
      g_assert_error (error, GB_STORE_ERROR, cases[i].code);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/hostile/other-files", test_other_files_are_refused);
  g_test_add_func ("/hostile/other-databases", test_other_databases_are_refused);
  g_test_add_func ("/hostile/names-are-not-uris", test_names_are_not_uris);
  g_test_add_func ("/hostile/versions-that-never-were", test_versions_that_never_were_are_refused);
  g_test_add_func ("/hostile/a-newer-file-is-opened-to-read", test_a_newer_file_is_opened_to_read);
  g_test_add_func ("/hostile/a-newer-file-that-cannot-be-read", test_a_newer_file_that_cannot_be_read_is_refused);
  g_test_add_func ("/hostile/foreign-schemas", test_foreign_schemas_are_refused);
  g_test_add_func ("/hostile/bad-rows", test_bad_rows_are_named_when_they_are_read);
  g_test_add_func ("/hostile/bad-values-in-a-small-file", test_bad_values_in_a_small_file_are_named_at_once);
  g_test_add_func ("/hostile/a-giant-value", test_a_giant_value_is_refused);
  g_test_add_func ("/hostile/a-spoiled-sequence", test_a_spoiled_sequence_is_survived);
  g_test_add_func ("/hostile/a-truncated-file", test_a_truncated_file);
  g_test_add_func ("/hostile/a-spoiled-header", test_a_spoiled_header);
  g_test_add_func ("/hostile/spoiled-pages", test_spoiled_pages);
  g_test_add_func ("/hostile/spoiled-history", test_spoiled_history);
  g_test_add_func ("/hostile/hostile-history", test_hostile_history);
  return g_test_run ();
}
