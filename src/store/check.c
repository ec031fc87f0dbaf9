/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-check"

/* Distrust of a file: of its first bytes before anything else, of its pages if they are few, and of all of it when asked. */

#include "store-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* The header ------------------------------------------------------------------------------------------------------- */

/* Offsets in the header of a SQLite database: https://www.sqlite.org/fileformat.html, section 1.3 */
#define HEADER_SIZE 100
#define USER_VERSION_AT 60
#define APPLICATION_ID_AT 68

static guint32
big_endian (const guint8 *bytes)
{
  return (guint32) bytes[0] << 24 | (guint32) bytes[1] << 16 | (guint32) bytes[2] << 8 | bytes[3];
}

/* Through the connection's own handle: to open and close the file once more would drop the locks that this process has on it. */
static gboolean
read_header (GbStore *store, guint8 *header)
{
  sqlite3_file *file = NULL;

  sqlite3_file_control (store->db, "main", SQLITE_FCNTL_FILE_POINTER, &file);
  return file != NULL && file->pMethods != NULL && file->pMethods->xRead (file, header, HEADER_SIZE, 0) == SQLITE_OK
         && memcmp (header, "SQLite format 3", 16) == 0;
}

static gboolean
is_ours (const guint8 *header)
{
  return big_endian (header + APPLICATION_ID_AT) == GB_STORE_APPLICATION_ID;
}

/* If the power went in the middle of a write, the first page may be rubbish or promise what never came to be, and the journal knows what
 * it was. SQLite plays it back at the first read. */
static void
recover (GbStore *store)
{
  g_autofree char *journal = g_strconcat (sqlite3_db_filename (store->db, "main"), "-journal", NULL);

  if (g_file_test (journal, G_FILE_TEST_IS_REGULAR))
    sqlite3_exec (store->db, "SELECT 1 FROM sqlite_schema", NULL, NULL, NULL);
}

gboolean
gb_check_header (GbStore *store, gint64 *version, GError **error)
{
  guint8 header[HEADER_SIZE];

  /* Another's database is left alone. */
  if (!read_header (store, header) || is_ours (header))
    recover (store);
  if (!read_header (store, header) || !is_ours (header))
    return gb_store_fail (error, GB_STORE_ERROR_FOREIGN, _ ("“%s” is not a build that Garboard made."), store->path);
  *version = (gint32) big_endian (header + USER_VERSION_AT);
  return TRUE;
}

/* The pages -------------------------------------------------------------------------------------------------------- */

/* A build of a few hundred parts takes 2 ms to look through. A large file is not looked through at opening; its rows are checked as
 * they are read, a damaged page stops any statement that meets it, and gb_store_check() looks at the whole. */
#define QUICK_CHECK_MAX_PAGES 256

gboolean
gb_check_pages (GbStore *store, GError **error)
{
  g_autoptr (sqlite3_stmt) stmt = NULL;
  g_autoptr (GbBoat) boat = NULL;
  g_autoptr (GError) local = NULL;
  gint64 n_pages;

  if (!gb_sql_integer (store, "PRAGMA page_count", &n_pages, error))
    return FALSE;
  if (n_pages > QUICK_CHECK_MAX_PAGES)
    return TRUE;
  stmt = gb_sql_prepare (store, FALSE, "PRAGMA quick_check (1)", error);
  if (stmt == NULL)
    return FALSE;
  if (gb_sql_next (store, stmt, &local) && g_strcmp0 ((const char *) sqlite3_column_text (stmt, 0), "ok") == 0)
    return TRUE;
  /* Perhaps it is a value, and reading finds out which. */
  if (local == NULL)
    boat = gb_store_load (store, &local);
  if (local == NULL)
    gb_store_fail (&local, GB_STORE_ERROR_DAMAGED, _ ("“%s” is damaged and cannot be read in full."), store->path);
  g_propagate_error (error, g_steal_pointer (&local));
  return FALSE;
}

/* The whole file --------------------------------------------------------------------------------------------------- */

static void
add_error (GPtrArray *faults, const GError *error)
{
  g_ptr_array_add (faults, g_strdup (error->message));
}

/* What SQLite itself finds, in its own words: they help whoever mends the file. */
static void
check_integrity (GbStore *store, GPtrArray *faults)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (sqlite3_stmt) stmt = gb_sql_prepare (store, FALSE, "PRAGMA integrity_check (20)", &error);

  while (stmt != NULL && gb_sql_next (store, stmt, &error))
    {
      const char *found = (const char *) sqlite3_column_text (stmt, 0);
      g_autofree char *valid = g_utf8_make_valid (found != NULL ? found : "?", -1);

      if (strcmp (valid, "ok") != 0)
        g_ptr_array_add (faults, g_strdup_printf (_ ("“%s” is damaged: %s"), store->path, valid));
    }
  if (error != NULL)
    add_error (faults, error);
}

static void
check_foreign_keys (GbStore *store, GPtrArray *faults)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (sqlite3_stmt) stmt = gb_sql_prepare (store, FALSE, "PRAGMA foreign_key_check", &error);

  while (stmt != NULL && gb_sql_next (store, stmt, &error))
    g_ptr_array_add (faults, gb_links_describe (store, stmt));
  if (error != NULL)
    add_error (faults, error);
}

/* Every row that no record can be made of. */
static void
check_rows (GbStore *store, GbRecordKind kind, GPtrArray *faults)
{
  g_autofree char *columns = gb_rows_columns (kind);
  g_autofree char *sql = g_strdup_printf ("SELECT %s FROM \"%s\"", columns, gb_record_type (kind)->name);
  g_autoptr (GError) error = NULL;
  g_autoptr (sqlite3_stmt) stmt = gb_sql_prepare (store, FALSE, sql, &error);

  while (stmt != NULL && gb_sql_next (store, stmt, &error))
    {
      g_autoptr (GError) local = NULL;
      g_autoptr (GbRecord) record = gb_rows_read (store, stmt, kind, &local);

      if (record == NULL)
        add_error (faults, local);
    }
  if (error != NULL)
    add_error (faults, error);
}

/* That of a newer Garboard is not known. */
static void
check_schema (GbStore *store, GPtrArray *faults)
{
  g_autoptr (GError) error = NULL;
  gint64 version;

  if (!gb_sql_integer (store, "PRAGMA user_version", &version, &error)
      || (version <= GB_STORE_SCHEMA_VERSION && !gb_schema_compare (store, faults, &error)))
    add_error (faults, error);
}

GPtrArray *
gb_store_check (GbStore *store)
{
  GPtrArray *faults = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GError) error = NULL;
  gboolean mine;

  if (!gb_sql_begin_read (store, &mine, &error))
    {
      add_error (faults, error);
      return faults;
    }
  check_schema (store, faults);
  check_integrity (store, faults);
  check_foreign_keys (store, faults);
  for (guint k = 0; k < GB_N_RECORDS; k++)
    check_rows (store, k, faults);
  if (faults->len == 0)
    {
      g_autoptr (GbBoat) boat = gb_store_load (store, &error);

      if (boat == NULL)
        add_error (faults, error);
    }
  gb_sql_end_read (store, mine);
  return faults;
}
