/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <sqlite3.h>

#include "store.h"

G_BEGIN_DECLS

/* What the store's files share in talking to SQLite. Every failure goes through gb_sql_fail(), which turns SQLite's code into a
 * sentence for the builder. */

G_DEFINE_AUTOPTR_CLEANUP_FUNC (sqlite3_stmt, sqlite3_finalize)

/* Sets @error from the last failure of @db; @path is the file as the builder knows it. Always FALSE, so that it can be returned. */
gboolean gb_sql_fail (sqlite3 *db, const char *path, GError **error);

/* Like g_set_error() in the store's domain. Always FALSE. */
gboolean gb_store_fail (GError **error, GbStoreError code, const char *format, ...) G_GNUC_PRINTF (3, 4);

/* Runs statements that give no rows. */
gboolean gb_sql_exec (GbStore *store, const char *sql, GError **error);

/* A statement; with @keep, one that lives long. NULL and @error if it cannot be had. */
sqlite3_stmt *gb_sql_prepare (GbStore *store, gboolean keep, const char *sql, GError **error);

/* Runs a prepared statement to its end and makes it ready to run again. */
gboolean gb_sql_run (GbStore *store, sqlite3_stmt *stmt, GError **error);

/* TRUE if a row is there. At the end FALSE without @error; on failure FALSE with it. */
gboolean gb_sql_next (GbStore *store, sqlite3_stmt *stmt, GError **error);

/* The first column of the first row; 0 where there is no row. */
gboolean gb_sql_integer (GbStore *store, const char *sql, gint64 *value, GError **error);

/* A read transaction, unless one is open already; the end must be given what the beginning gave in @mine. */
gboolean gb_sql_begin_read (GbStore *store, gboolean *mine, GError **error);
void gb_sql_end_read (GbStore *store, gboolean mine);

/* Ends the open transaction, if there is one, as if nothing had happened. */
void gb_sql_rollback (GbStore *store);

G_END_DECLS
