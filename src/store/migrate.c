/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-migrate"

/* An older file becomes one of today.
 *
 * A file's schema must be data/schema.sql to the letter (schema.c), and ALTER TABLE writes letters of its own. So each table that has
 * changed since is made anew from that script and takes over the rows of the old one, which goes; ids, and the highest id that there
 * ever was, stay. A column that is new gets what a new record holds, so that what was said stays true. Should the meaning of a kept column
 * ever change, its step belongs between those two.
 *
 * The old edits cannot be undone any more: their changesets count the columns of the old tables. The history is therefore emptied;
 * the copy that is put aside before keeps it.
 *
 * All of it, and the look at what came of it, is one transaction: it is done whole, or the file is as it was. */

#include "store-private.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>

/* By version: the kinds whose tables came or changed after it. */
static const GbRecordKind changed_after[GB_STORE_SCHEMA_VERSION][GB_N_RECORDS + 1] = {
  [0] = { GB_N_RECORDS }, /* there was no version before the first */
  [1] = { GB_RECORD_HULL, GB_RECORD_OPENING, GB_RECORD_CORNER, GB_RECORD_CONDITION, GB_RECORD_LOAD, GB_RECORD_INCLINING, GB_RECORD_SHIFT,
          GB_RECORD_TUB, GB_RECORD_TUB_LOAD, GB_N_RECORDS },
};

/* Tables ----------------------------------------------------------------------------------------------------------- */

static gboolean
run_for_table (GbStore *store, const char *format, const char *table, GError **error)
{
  g_autoptr (GString) sql = g_string_new (format);

  g_string_replace (sql, "TABLE_NAME", table, 0);
  return gb_sql_exec (store, sql->str, error);
}

static gboolean
has_table (GbStore *store, const char *table, gboolean *has, GError **error)
{
  g_autofree char *sql = g_strdup_printf ("SELECT count (*) FROM sqlite_schema WHERE type = 'table' AND name = '%s'", table);
  gint64 n;

  if (!gb_sql_integer (store, sql, &n, error))
    return FALSE;
  *has = n > 0;
  return TRUE;
}

/* Foreign keys are off and renaming is the old way, so that other tables go on referring to the name. The index goes with the old
 * table, and its name is free only then. */
static gboolean
rebuild (GbStore *store, GbRecordKind kind, GError **error)
{
  const char *table = gb_record_type (kind)->name;
  g_autofree char *old = g_strconcat ("old_", table, NULL);
  gboolean has;

  if (!has_table (store, table, &has, error))
    return FALSE;
  if (!has)
    return gb_schema_make (store, "table", table, error) && gb_schema_make (store, "index", table, error);
  return run_for_table (store, "ALTER TABLE \"TABLE_NAME\" RENAME TO \"old_TABLE_NAME\"", table, error)
         && gb_schema_make (store, "table", table, error) && gb_rows_take_over (store, kind, old, error)
         && run_for_table (store,
                           "DELETE FROM sqlite_sequence WHERE name = 'TABLE_NAME';"
                           "UPDATE sqlite_sequence SET name = 'TABLE_NAME' WHERE name = 'old_TABLE_NAME';"
                           "DROP TABLE \"old_TABLE_NAME\"",
                           table, error)
         && gb_schema_make (store, "index", table, error);
}

static gboolean
rebuild_changed (GbStore *store, gint64 version, GError **error)
{
  gboolean changed[GB_N_RECORDS] = { FALSE };

  for (; version < GB_STORE_SCHEMA_VERSION; version++)
    for (const GbRecordKind *kind = changed_after[version]; *kind != GB_N_RECORDS; kind++)
      changed[*kind] = TRUE;
  for (guint k = 0; k < GB_N_RECORDS; k++)
    if (changed[k] && !rebuild (store, k, error))
      return FALSE;
  return TRUE;
}

/* Within the transaction. */
static gboolean
bring_up (GbStore *store, gint64 version, GError **error)
{
  return gb_schema_is_plain (store, error) && rebuild_changed (store, version, error) && gb_schema_check (store, error)
         && gb_sql_exec (store,
                         "DELETE FROM history; UPDATE history_mark SET done = 0;"
                         "PRAGMA user_version = " G_STRINGIFY (GB_STORE_SCHEMA_VERSION),
                         error)
         && gb_check_pages (store, error);
}

/* The switches cannot be thrown within a transaction. */
static void
set_rebuilding (GbStore *store, gboolean rebuilding)
{
  sqlite3_db_config (store->db, SQLITE_DBCONFIG_ENABLE_FKEY, !rebuilding, NULL);
  sqlite3_db_config (store->db, SQLITE_DBCONFIG_LEGACY_ALTER_TABLE, rebuilding, NULL);
}

/* @guard: the file must be as it was when that was last asked. */
static gboolean
transact (GbStore *store, gint64 version, gboolean guard, GError **error)
{
  gboolean done;

  set_rebuilding (store, TRUE);
  done = gb_sql_exec (store, "BEGIN IMMEDIATE", error);
  if (done && guard && gb_store_changed_elsewhere (store))
    done = gb_store_fail (error, GB_STORE_ERROR_BUSY, _ ("Another program is using “%s” just now. Try again in a moment."), store->path);
  done = done && bring_up (store, version, error) && gb_sql_exec (store, "COMMIT", error);
  gb_sql_rollback (store);
  set_rebuilding (store, FALSE);
  return done;
}

static gboolean
refuse_unknown_version (GbStore *store, gint64 version, GError **error)
{
  return (version >= 1 && version < GB_STORE_SCHEMA_VERSION)
         || gb_store_fail (error, GB_STORE_ERROR_FOREIGN, _ ("“%s” is of a version of Garboard that never was."), store->path);
}

/* In the file, and in a copy --------------------------------------------------------------------------------------- */

/* "NAME.v1.garboard" beside the file; "NAME.v1-2.garboard" if that is taken, since what was put aside before is somebody's only copy. */
static char *
name_aside (GbStore *store, gint64 version)
{
  static const char ending[] = ".garboard";
  gsize length = strlen (store->path) - (g_str_has_suffix (store->path, ending) ? strlen (ending) : 0);
  g_autofree char *stem = g_strndup (store->path, length);
  char *name = g_strdup_printf ("%s.v%" G_GINT64_FORMAT "%s", stem, version, ending);

  for (guint i = 2; g_file_test (name, G_FILE_TEST_EXISTS); i++)
    {
      g_free (name);
      name = g_strdup_printf ("%s.v%" G_GINT64_FORMAT "-%u%s", stem, version, i, ending);
    }
  return name;
}

/* The copy is not wanted if the file is still what it was. A commit that failed at its very end may have happened all the same. */
static void
remove_needless (GbStore *store, gint64 version, const char *aside)
{
  gint64 now;

  if (gb_sql_integer (store, "PRAGMA user_version", &now, NULL) && now == version)
    g_unlink (aside);
}

gboolean
gb_migrate (GbStore *store, gint64 version, GError **error)
{
  g_autofree char *aside = NULL;

  if (!refuse_unknown_version (store, version, error)
      || !gb_sql_exec (store, "PRAGMA journal_mode = DELETE; PRAGMA synchronous = EXTRA", error))
    return FALSE;
  gb_store_changed_elsewhere (store);
  aside = name_aside (store, version);
  if (!gb_store_save_copy (store, aside, error))
    {
      g_prefix_error (error, "%s ", _ ("A build of an older Garboard is copied aside before it is brought up to date."));
      return FALSE;
    }
  if (transact (store, version, TRUE, error))
    return TRUE;
  remove_needless (store, version, aside);
  return FALSE;
}

GbStore *
gb_migrate_copy (GbStore *store, gint64 version, GError **error)
{
  g_autoptr (GbStore) copy = NULL;

  if (!refuse_unknown_version (store, version, error))
    return NULL;
  copy = gb_store_connect (store->path, ":memory:", error);
  if (copy == NULL || !gb_store_copy_pages (store, copy, error) || !transact (copy, version, FALSE, error))
    return NULL;
  return g_steal_pointer (&copy);
}
