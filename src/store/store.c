/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-store"

/* A file's life: made, opened with distrust, read whole, copied, closed.
 *
 * Opening asks, in this order, and stops at the first no:
 *   1. is it a SQLite database with Garboard's application id? (its first bytes, before anything else of it is looked at)
 *   2. is its version known, or newer but readable? An older one is brought up to today's (migrate.c).
 *   3. does its schema hold what Garboard makes, and nothing else?
 *   4. do its pages hang together? (a small file; a large one would take too long)
 *   5. may it be written, is the folder open for the journal, and does nobody else write just now? If not: to read.
 * Every row is then checked as it is read, and the whole boat for its owners and references. */

#include "store-private.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

#define BUSY_TIMEOUT_MS 250

/* Connecting ------------------------------------------------------------------------------------------------------- */

static void
set_safety (sqlite3 *db)
{
  static const struct
  {
    int option;
    int value;
  } switches[] = {
    { SQLITE_DBCONFIG_DEFENSIVE, 1 },      { SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0 }, { SQLITE_DBCONFIG_ENABLE_TRIGGER, 0 },
    { SQLITE_DBCONFIG_ENABLE_VIEW, 0 },    { SQLITE_DBCONFIG_DQS_DML, 0 },        { SQLITE_DBCONFIG_DQS_DDL, 0 },
    { SQLITE_DBCONFIG_WRITABLE_SCHEMA, 0 }, { SQLITE_DBCONFIG_ENABLE_FKEY, 1 },   { SQLITE_DBCONFIG_ENABLE_LOAD_EXTENSION, 0 },
  };
  /* Far above what a build needs, far below what would hurt. The longest thing kept is a changeset. */
  static const int limits[][2] = {
    { SQLITE_LIMIT_LENGTH, 2 * GB_HISTORY_MAX_BYTES }, { SQLITE_LIMIT_SQL_LENGTH, 1000000 }, { SQLITE_LIMIT_COLUMN, 200 },
    { SQLITE_LIMIT_EXPR_DEPTH, 200 },                  { SQLITE_LIMIT_COMPOUND_SELECT, 50 }, { SQLITE_LIMIT_FUNCTION_ARG, 8 },
    { SQLITE_LIMIT_ATTACHED, 0 },                      { SQLITE_LIMIT_LIKE_PATTERN_LENGTH, 100 },
    { SQLITE_LIMIT_VARIABLE_NUMBER, 200 },             { SQLITE_LIMIT_WORKER_THREADS, 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (switches); i++)
    sqlite3_db_config (db, switches[i].option, switches[i].value, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (limits); i++)
    sqlite3_limit (db, limits[i][0], limits[i][1]);
}

GbStore *
gb_store_connect (const char *path, const char *file, GError **error)
{
  g_autoptr (GbStore) store = g_new0 (GbStore, 1);
  /* An absolute name cannot be taken for a URI with options in it. */
  g_autofree char *name = strcmp (file, ":memory:") == 0 ? g_strdup (file) : g_canonicalize_filename (file, NULL);

  store->path = g_strdup (path);
  if (sqlite3_open_v2 (name, &store->db, SQLITE_OPEN_READWRITE | SQLITE_OPEN_NOMUTEX, NULL) != SQLITE_OK)
    {
      gb_sql_fail (store->db, path, error);
      return NULL;
    }
  sqlite3_extended_result_codes (store->db, 1);
  sqlite3_busy_timeout (store->db, BUSY_TIMEOUT_MS);
  set_safety (store->db);
  return g_steal_pointer (&store);
}

void
gb_store_close (GbStore *store)
{
  if (store == NULL)
    return;
  gb_store_rollback (store);
  for (guint k = 0; k < GB_N_RECORDS; k++)
    gb_rows_finalize (&store->rows[k]);
  gb_history_forget_words (store);
  sqlite3_close (store->db);
  g_free (store->read_only);
  g_free (store->path);
  g_free (store);
}

const char *
gb_store_path (const GbStore *store)
{
  return store->path;
}

/* Creating --------------------------------------------------------------------------------------------------------- */

static gboolean
write_rows (GbStore *store, const GbBoat *boat, GError **error)
{
  for (guint k = 0; k < GB_N_RECORDS; k++)
    {
      const GPtrArray *all = gb_boat_all (boat, k);

      for (guint i = 0; i < all->len; i++)
        if (!gb_rows_insert (store, all->pdata[i], error))
          return FALSE;
    }
  return TRUE;
}

/* Nobody sees the file yet and it is synced whole before it is renamed, so nothing is journalled or synced on the way. */
static gboolean
write_new (const char *path, const char *file, const GbBoat *boat, GError **error)
{
  g_autoptr (GbStore) store = gb_store_connect (path, file, error);
  g_autofree char *head = g_strdup_printf ("PRAGMA journal_mode = MEMORY; PRAGMA synchronous = OFF;"
                                           "PRAGMA application_id = %d; PRAGMA user_version = %d;"
                                           "BEGIN; PRAGMA defer_foreign_keys = ON",
                                           GB_STORE_APPLICATION_ID, GB_STORE_SCHEMA_VERSION);

  return store != NULL && gb_sql_exec (store, head, error) && gb_sql_exec (store, gb_schema_sql, error)
         && write_rows (store, boat, error) && gb_links_commit (store, error);
}

gboolean
gb_store_create (const char *path, const GbBoat *boat, gboolean replace, GError **error)
{
  g_autofree char *temporary = NULL;

  if (!replace && g_file_test (path, G_FILE_TEST_EXISTS))
    return gb_store_fail (error, GB_STORE_ERROR_EXISTS, _ ("There is a file called “%s” already."), path);
  temporary = gb_file_beside (path, error);
  if (temporary == NULL)
    return FALSE;
  if (write_new (path, temporary, boat, error) && gb_file_put_in_place (temporary, path, replace, error))
    return TRUE;
  g_unlink (temporary);
  return FALSE;
}

/* Opening ---------------------------------------------------------------------------------------------------------- */

static gboolean
check_path (const char *path, GError **error)
{
  if (!g_file_test (path, G_FILE_TEST_EXISTS))
    return gb_store_fail (error, GB_STORE_ERROR_NOT_FOUND, _ ("There is no file called “%s”."), path);
  if (!g_file_test (path, G_FILE_TEST_IS_REGULAR))
    return gb_store_fail (error, GB_STORE_ERROR_FOREIGN, _ ("“%s” is not a file that can hold a build."), path);
  return TRUE;
}

/* Why the file may not be written; NULL if it may. */
static char *
find_read_only_reason (GbStore *store, gint64 version, GbStoreError *code)
{
  g_autofree char *folder = g_path_get_dirname (store->path);
  g_autoptr (GError) error = NULL;

  *code = GB_STORE_ERROR_READ_ONLY;
  if (version > GB_STORE_SCHEMA_VERSION)
    {
      *code = GB_STORE_ERROR_NEWER;
      return g_strdup_printf (_ ("“%s” was made by a newer Garboard: it can be looked at, but not changed by this one."),
                              store->path);
    }
  if (sqlite3_db_readonly (store->db, "main") == 1)
    return g_strdup_printf (_ ("“%s” may only be read: it is write-protected."), store->path);
  if (g_access (folder, W_OK) != 0)
    return g_strdup_printf (_ ("“%s” may only be read: nothing can be written into its folder."), store->path);
  if (gb_sql_exec (store, "BEGIN IMMEDIATE; ROLLBACK", &error))
    return NULL;
  *code = error->code;
  return g_strdup (error->message);
}

static gboolean
settle_writing (GbStore *store, gint64 version, gboolean may_read_only, GError **error)
{
  GbStoreError code;

  if (store->read_only != NULL)
    return gb_sql_exec (store, "PRAGMA query_only = ON", error);
  store->read_only = find_read_only_reason (store, version, &code);
  if (store->read_only == NULL)
    /* EXTRA also syncs the folder when the journal goes: a commit that was acknowledged is on the disk. */
    return gb_sql_exec (store, "PRAGMA journal_mode = DELETE; PRAGMA synchronous = EXTRA", error);
  if (!may_read_only)
    return gb_store_fail (error, code, "%s", store->read_only);
  return gb_sql_exec (store, "PRAGMA query_only = ON", error);
}

/* It may still be read, if the builder is content with that. */
static gboolean
is_about_writing (GbStoreError code)
{
  return code == GB_STORE_ERROR_READ_ONLY || code == GB_STORE_ERROR_BUSY || code == GB_STORE_ERROR_FULL || code == GB_STORE_ERROR_IO;
}

/* An older file becomes one of today; if it cannot be written, a copy of it in memory takes its place, to read. */
static gboolean
bring_up_to_date (GbStore **store, gint64 version, gboolean may_read_only, GError **error)
{
  g_autofree char *reason = NULL;
  g_autoptr (GbStore) copy = NULL;
  g_autoptr (GError) local = NULL;
  GbStoreError code;

  reason = find_read_only_reason (*store, version, &code);
  if (reason == NULL)
    {
      if (gb_migrate (*store, version, &local))
        return TRUE;
      code = local->code;
      reason = g_strdup (local->message);
    }
  if (!may_read_only || !is_about_writing (code))
    return gb_store_fail (error, code, "%s", reason);
  copy = gb_migrate_copy (*store, version, error);
  if (copy == NULL)
    return FALSE;
  copy->read_only = g_steal_pointer (&reason);
  gb_store_close (*store);
  *store = g_steal_pointer (&copy);
  return TRUE;
}

GbStore *
gb_store_open (const char *path, gboolean may_read_only, GError **error)
{
  g_autoptr (GbStore) store = NULL;
  gint64 version;

  if (!check_path (path, error))
    return NULL;
  store = gb_store_connect (path, path, error);
  if (store == NULL || !gb_check_header (store, &version, error)
      || !gb_sql_exec (store, "PRAGMA cell_size_check = ON; PRAGMA temp_store = MEMORY", error))
    return NULL;
  if (version < GB_STORE_SCHEMA_VERSION && !bring_up_to_date (&store, version, may_read_only, error))
    return NULL;
  if (!(version > GB_STORE_SCHEMA_VERSION ? gb_schema_is_readable (store, error) : gb_schema_check (store, error)))
    return NULL;
  if (!gb_check_pages (store, error) || !settle_writing (store, version, may_read_only, error))
    return NULL;
  gb_store_changed_elsewhere (store);
  return g_steal_pointer (&store);
}

const char *
gb_store_read_only_reason (const GbStore *store)
{
  return store->read_only;
}

gboolean
gb_store_may_write (GbStore *store, GError **error)
{
  return store->read_only == NULL || gb_store_fail (error, GB_STORE_ERROR_READ_ONLY, "%s", store->read_only);
}

gboolean
gb_store_changed_elsewhere (GbStore *store)
{
  gint64 version;
  gboolean changed;

  if (!gb_sql_integer (store, "PRAGMA data_version", &version, NULL))
    return FALSE;
  changed = version != store->data_version;
  store->data_version = version;
  if (changed)
    gb_history_forget_words (store);
  return changed;
}

/* Reading ---------------------------------------------------------------------------------------------------------- */

static gboolean
load_kind (GbStore *store, GbRecordKind kind, GbBoat *boat, GError **error)
{
  g_autofree char *columns = gb_rows_columns (kind);
  g_autofree char *sql = g_strdup_printf ("SELECT %s FROM \"%s\"", columns, gb_record_type (kind)->name);
  g_autoptr (sqlite3_stmt) stmt = gb_sql_prepare (store, FALSE, sql, error);
  g_autoptr (GError) local = NULL;

  if (stmt == NULL)
    return FALSE;
  while (gb_sql_next (store, stmt, &local))
    {
      GbRecord *record = gb_rows_read (store, stmt, kind, &local);

      if (record == NULL)
        break;
      gb_boat_take (boat, record);
    }
  if (local == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&local));
  return FALSE;
}

GbBoat *
gb_store_load (GbStore *store, GError **error)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  gboolean mine;
  gboolean loaded;

  if (!gb_sql_begin_read (store, &mine, error))
    return NULL;
  loaded = TRUE;
  for (guint k = 0; k < GB_N_RECORDS && loaded; k++)
    loaded = load_kind (store, k, boat, error);
  gb_sql_end_read (store, mine);
  if (!loaded)
    return NULL;
  gb_boat_settle (boat);
  return gb_links_check_boat (store, boat, error) ? g_steal_pointer (&boat) : NULL;
}

/* Makes @boat hold just what @fresh holds; records that stay keep their pointers. */
static void
take_over (GbBoat *boat, const GbBoat *fresh)
{
  for (guint k = 0; k < GB_N_RECORDS; k++)
    {
      g_autoptr (GPtrArray) old = g_ptr_array_copy ((GPtrArray *) gb_boat_all (boat, k), NULL, NULL);
      const GPtrArray *all = gb_boat_all (fresh, k);

      for (guint i = 0; i < old->len; i++)
        if (gb_boat_get (fresh, k, ((GbRecord *) old->pdata[i])->id) == NULL)
          gb_boat_remove (boat, k, ((GbRecord *) old->pdata[i])->id);
      for (guint i = 0; i < all->len; i++)
        gb_boat_take (boat, gb_record_copy (all->pdata[i]));
    }
}

static gboolean
refresh_row (GbStore *store, const GbChange *change, GbBoat *boat, GError **error)
{
  GbRecord *record;

  if (!gb_rows_find (store, change->kind, change->id, &record, error))
    return FALSE;
  if (record != NULL)
    gb_boat_take (boat, record);
  else
    gb_boat_remove (boat, change->kind, change->id);
  return TRUE;
}

gboolean
gb_store_refresh (GbStore *store, const GbChanges *changes, GbBoat *boat, GError **error)
{
  gboolean refreshed = TRUE;

  if (changes->all)
    {
      g_autoptr (GbBoat) fresh = gb_store_load (store, error);

      refreshed = fresh != NULL;
      if (refreshed)
        take_over (boat, fresh);
    }
  else
    {
      gboolean mine;

      if (!gb_sql_begin_read (store, &mine, error))
        return FALSE;
      for (guint i = 0; i < changes->changes->len && refreshed; i++)
        refreshed = refresh_row (store, &g_array_index (changes->changes, GbChange, i), boat, error);
      gb_sql_end_read (store, mine);
    }
  gb_boat_settle (boat);
  return refreshed;
}

/* Copying ---------------------------------------------------------------------------------------------------------- */

gboolean
gb_store_copy_pages (GbStore *from, GbStore *to, GError **error)
{
  sqlite3_backup *backup = sqlite3_backup_init (to->db, "main", from->db, "main");
  int code;

  if (backup == NULL)
    return gb_sql_fail (to->db, to->path, error);
  sqlite3_backup_step (backup, -1);
  code = sqlite3_backup_finish (backup);
  return code == SQLITE_OK || gb_sql_fail (to->db, to->path, error);
}

static gboolean
copy_to_file (GbStore *store, const char *path, const char *file, GError **error)
{
  g_autoptr (GbStore) copy = gb_store_connect (path, file, error);

  return copy != NULL && gb_sql_exec (copy, "PRAGMA journal_mode = MEMORY; PRAGMA synchronous = OFF", error)
         && gb_store_copy_pages (store, copy, error);
}

static gboolean
is_same_file (const char *a, const char *b)
{
  GStatBuf s, t;

  return g_stat (a, &s) == 0 && g_stat (b, &t) == 0 && s.st_dev == t.st_dev && s.st_ino == t.st_ino;
}

gboolean
gb_store_save_copy (GbStore *store, const char *path, GError **error)
{
  g_autofree char *temporary = NULL;

  if (is_same_file (store->path, path))
    return gb_store_fail (error, GB_STORE_ERROR_EXISTS, _ ("“%s” is the file itself: a copy needs another name."), path);
  temporary = gb_file_beside (path, error);
  if (temporary == NULL)
    return FALSE;
  if (copy_to_file (store, path, temporary, error) && gb_file_put_in_place (temporary, path, TRUE, error))
    return TRUE;
  g_unlink (temporary);
  return FALSE;
}
