/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "scratch.h"

#include <glib/gstdio.h>
#include <sqlite3.h>

Scratch *
scratch_new (void)
{
  Scratch *scratch = g_new0 (Scratch, 1);
  g_autoptr (GError) error = NULL;

  scratch->folder = g_dir_make_tmp ("garboard-test-XXXXXX", &error);
  g_assert_no_error (error);
  scratch->path = g_build_filename (scratch->folder, "build.garboard", NULL);
  return scratch;
}

void
scratch_free (Scratch *scratch)
{
  g_autoptr (GDir) dir = g_dir_open (scratch->folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *file = g_build_filename (scratch->folder, name, NULL);

      if (!g_str_has_suffix (name, ".garboard"))
        g_error ("left behind: %s", name);
      g_unlink (file);
    }
  g_rmdir (scratch->folder);
  g_free (scratch->folder);
  g_free (scratch->path);
  g_free (scratch);
}

GbStore *
scratch_open (const char *path)
{
  g_autoptr (GError) error = NULL;
  GbStore *store = gb_store_open (path, FALSE, &error);

  g_assert_no_error (error);
  g_assert_nonnull (store);
  g_assert_null (gb_store_read_only_reason (store));
  return store;
}

GbStore *
scratch_store (Scratch *scratch, const GbBoat *boat)
{
  g_autoptr (GbBoat) empty = gb_boat_new ();
  g_autoptr (GError) error = NULL;
  gboolean created = gb_store_create (scratch->path, boat != NULL ? boat : empty, FALSE, &error);

  g_assert_no_error (error);
  g_assert_true (created);
  return scratch_open (scratch->path);
}

GbBoat *
scratch_load (GbStore *store)
{
  g_autoptr (GError) error = NULL;
  GbBoat *boat = gb_store_load (store, &error);

  g_assert_no_error (error);
  g_assert_nonnull (boat);
  return boat;
}

static sqlite3 *
open_plainly (const char *path)
{
  sqlite3 *db;

  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  sqlite3_db_config (db, SQLITE_DBCONFIG_DEFENSIVE, 0, NULL);
  return db;
}

void
scratch_sql (const char *path, const char *sql)
{
  sqlite3 *db = open_plainly (path);

  if (sqlite3_exec (db, sql, NULL, NULL, NULL) != SQLITE_OK)
    g_error ("%s: %s", sql, sqlite3_errmsg (db));
  sqlite3_close (db);
}

gint64
scratch_integer (const char *path, const char *sql)
{
  sqlite3 *db = open_plainly (path);
  sqlite3_stmt *stmt;
  gint64 value;

  g_assert_cmpint (sqlite3_prepare_v2 (db, sql, -1, &stmt, NULL), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_step (stmt), ==, SQLITE_ROW);
  value = sqlite3_column_int64 (stmt, 0);
  sqlite3_finalize (stmt);
  sqlite3_close (db);
  return value;
}

void
scratch_assert_equal (const GbBoat *a, const GbBoat *b)
{
  g_autofree char *difference = NULL;

  gb_boat_equal (a, b, &difference);
  g_assert_cmpstr (difference, ==, NULL);
}
