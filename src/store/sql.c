/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-sql"

#include "store-private.h"

#include <glib/gi18n-lib.h>

G_DEFINE_QUARK (gb-store-error-quark, gb_store_error)

gboolean
gb_store_fail (GError **error, GbStoreError code, const char *format, ...)
{
  va_list args;

  if (error == NULL)
    return FALSE;
  va_start (args, format);
  g_propagate_error (error, g_error_new_valist (GB_STORE_ERROR, code, format, args));
  va_end (args);
  return FALSE;
}

static gboolean
fail_read_only (int extended, const char *path, GError **error)
{
  if (extended == SQLITE_READONLY_DBMOVED)
    return gb_store_fail (error, GB_STORE_ERROR_READ_ONLY,
                          _ ("“%s” has been moved, replaced or deleted by another program. Open it again."), path);
  return gb_store_fail (error, GB_STORE_ERROR_READ_ONLY, _ ("“%s” can be read but not written here."), path);
}

gboolean
gb_sql_fail (sqlite3 *db, const char *path, GError **error)
{
  int extended = sqlite3_extended_errcode (db);
  /* A hostile file's words are quoted in it, with any bytes. */
  g_autofree char *message = g_strescape (sqlite3_errmsg (db), NULL);

  g_debug ("%s: %s (%d)", path, message, extended);
  switch (extended & 0xff)
    {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return gb_store_fail (error, GB_STORE_ERROR_BUSY,
                            _ ("Another program is using “%s” just now. Try again in a moment."), path);
    case SQLITE_READONLY:
    case SQLITE_PERM:
      return fail_read_only (extended, path, error);
    case SQLITE_FULL:
      return gb_store_fail (error, GB_STORE_ERROR_FULL,
                            _ ("The disk is full: “%s” could not be written. What was in it before is safe."), path);
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
      return gb_store_fail (error, GB_STORE_ERROR_DAMAGED, _ ("“%s” is damaged and cannot be read in full."), path);
    case SQLITE_CANTOPEN:
      return gb_store_fail (error, GB_STORE_ERROR_IO, _ ("“%s” cannot be opened, or its folder cannot be written."), path);
    case SQLITE_CONSTRAINT:
      return gb_store_fail (error, GB_STORE_ERROR_REFUSED,
                            _ ("“%s” cannot hold this: a value is out of its range, or a number is taken."),
                            path);
    case SQLITE_TOOBIG:
      return gb_store_fail (error, GB_STORE_ERROR_REFUSED, _ ("This is too long to be kept in “%s”."), path);
    default:
      return gb_store_fail (error, GB_STORE_ERROR_IO, _ ("“%s” could not be read or written: the disk failed, or was taken out."),
                            path);
    }
}

gboolean
gb_sql_exec (GbStore *store, const char *sql, GError **error)
{
  if (sqlite3_exec (store->db, sql, NULL, NULL, NULL) == SQLITE_OK)
    return TRUE;
  return gb_sql_fail (store->db, store->path, error);
}

sqlite3_stmt *
gb_sql_prepare (GbStore *store, gboolean keep, const char *sql, GError **error)
{
  sqlite3_stmt *stmt = NULL;

  if (sqlite3_prepare_v3 (store->db, sql, -1, keep ? SQLITE_PREPARE_PERSISTENT : 0, &stmt, NULL) != SQLITE_OK)
    gb_sql_fail (store->db, store->path, error);
  return stmt;
}

gboolean
gb_sql_run (GbStore *store, sqlite3_stmt *stmt, GError **error)
{
  int code;

  do
    code = sqlite3_step (stmt);
  while (code == SQLITE_ROW);
  if (code != SQLITE_DONE)
    gb_sql_fail (store->db, store->path, error);
  sqlite3_reset (stmt);
  sqlite3_clear_bindings (stmt);
  return code == SQLITE_DONE;
}

gboolean
gb_sql_next (GbStore *store, sqlite3_stmt *stmt, GError **error)
{
  switch (sqlite3_step (stmt))
    {
    case SQLITE_ROW:
      return TRUE;
    case SQLITE_DONE:
      return FALSE;
    default:
      return gb_sql_fail (store->db, store->path, error);
    }
}

gboolean
gb_sql_integer (GbStore *store, const char *sql, gint64 *value, GError **error)
{
  g_autoptr (sqlite3_stmt) stmt = gb_sql_prepare (store, FALSE, sql, error);
  g_autoptr (GError) local = NULL;

  if (stmt == NULL)
    return FALSE;
  *value = gb_sql_next (store, stmt, &local) ? sqlite3_column_int64 (stmt, 0) : 0;
  if (local == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&local));
  return FALSE;
}

gboolean
gb_sql_begin_read (GbStore *store, gboolean *mine, GError **error)
{
  *mine = sqlite3_get_autocommit (store->db) != 0;
  return !*mine || gb_sql_exec (store, "BEGIN", error);
}

void
gb_sql_end_read (GbStore *store, gboolean mine)
{
  if (mine)
    gb_sql_rollback (store);
}

void
gb_sql_rollback (GbStore *store)
{
  if (!sqlite3_get_autocommit (store->db))
    sqlite3_exec (store->db, "ROLLBACK", NULL, NULL, NULL);
}
