/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-check"

/* Distrust: of a file's first bytes, of its rows' owners and references, and of an edit that would tie the parts into a knot. */

#include "store-private.h"

#include "boat/expression.h"

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

/* If the power went in the middle of a write, the first page may be rubbish, and the journal knows what it was. SQLite plays it back
 * at the first read. */
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
  gboolean is_database = read_header (store, header);

  if (!is_database)
    {
      recover (store);
      is_database = read_header (store, header);
    }
  if (!is_database || big_endian (header + APPLICATION_ID_AT) != GB_STORE_APPLICATION_ID)
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

/* Sentences about records ------------------------------------------------------------------------------------------ */

static char *
describe (const GbRecord *record)
{
  g_autofree char *title = gb_record_dup_title (record);
  g_autofree char *quote = gb_entry_quote (title);

  /* Translators: a kind of record, and the name of one: part “Bottom” */
  return g_strdup_printf (_ ("%s “%s”"), _ (gb_record_type (record->kind)->label), quote);
}

/* The same for a record that is looked up; its number where it cannot be read. */
static char *
describe_row (GbStore *store, GbRecordKind kind, gint64 id)
{
  g_autoptr (GbRecord) record = NULL;

  if (gb_rows_find (store, kind, id, &record, NULL) && record != NULL)
    return describe (record);
  return g_strdup_printf ("%s %" G_GINT64_FORMAT, _ (gb_record_type (kind)->label), id);
}

/* Cycles ----------------------------------------------------------------------------------------------------------- */

static gboolean
read_owner (GbStore *store, sqlite3_stmt *stmt, gint64 part, gint64 *owner, GError **error)
{
  g_autoptr (GError) local = NULL;

  sqlite3_bind_int64 (stmt, 1, part);
  *owner = gb_sql_next (store, stmt, &local) ? sqlite3_column_int64 (stmt, 0) : 0;
  sqlite3_reset (stmt);
  if (local == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&local));
  return FALSE;
}

/* Climbs from @part to the top. @climbed holds the parts that are known to lead there, and with the value of @part those on this way. */
static gboolean
climb (GbStore *store, sqlite3_stmt *stmt, gint64 part, GHashTable *climbed, GError **error)
{
  gint64 owner;

  for (gint64 at = part; at != 0; at = owner)
    {
      gint64 *way = g_hash_table_lookup (climbed, &at);

      if (way != NULL && *way == part)
        {
          g_autofree char *what = describe_row (store, GB_RECORD_PART, part);

          return gb_store_fail (error, GB_STORE_ERROR_REFUSED, _ ("%s cannot be put into itself, or into what lies in it."), what);
        }
      if (way != NULL)
        return TRUE;
      g_hash_table_insert (climbed, g_memdup2 (&at, sizeof at), g_memdup2 (&part, sizeof part));
      if (!read_owner (store, stmt, at, &owner, error))
        return FALSE;
    }
  return TRUE;
}

gboolean
gb_check_cycles (GbStore *store, const GbChanges *changes, GError **error)
{
  g_autoptr (GHashTable) climbed = NULL;
  g_autoptr (sqlite3_stmt) stmt = NULL;

  if (!gb_changes_restructure (changes, GB_RECORD_PART))
    return TRUE;
  climbed = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_free);
  stmt = gb_sql_prepare (store, FALSE, "SELECT owner FROM part WHERE id = ?1", error);
  if (stmt == NULL)
    return FALSE;
  for (guint i = 0; i < changes->changes->len; i++)
    {
      const GbChange *change = &g_array_index (changes->changes, GbChange, i);

      if (change->kind == GB_RECORD_PART && (change->op == GB_CHANGE_ADDED || change->op == GB_CHANGE_MOVED)
          && !climb (store, stmt, change->id, climbed, error))
        return FALSE;
    }
  return TRUE;
}

/* Links ------------------------------------------------------------------------------------------------------------ */

/* Calls for each column of any table that refers to records: the owner, and the references. */
typedef void (*LinkFunc) (GbRecordKind from, const char *column, GbRecordKind to, gpointer data);

static void
foreach_link (LinkFunc func, gpointer data)
{
  for (guint k = 0; k < GB_N_RECORDS; k++)
    {
      const GbRecordType *type = gb_record_type (k);

      if (type->owner != GB_N_RECORDS)
        func (k, "owner", type->owner, data);
      for (guint i = 0; i < type->n_fields; i++)
        if (type->fields[i].dim == GB_DIM_REF)
          func (k, type->fields[i].name, type->fields[i].refers_to, data);
    }
}

/* SQL that gives a row if the row ?1 of 'kind' refers to nothing, and SQL that gives one if something refers to it. */
typedef struct
{
  GbRecordKind kind;
  GString *dangling;
  GString *wanted;
} LinkSql;

static void
add_link_sql (GbRecordKind from, const char *column, GbRecordKind to, gpointer data)
{
  LinkSql *sql = data;
  const char *table = gb_record_type (from)->name;

  if (from == sql->kind)
    g_string_append_printf (sql->dangling,
                            " OR (\"%s\" IS NOT NULL AND NOT EXISTS (SELECT 1 FROM \"%s\" t WHERE t.id = r.\"%s\"))", column,
                            gb_record_type (to)->name, column);
  if (to == sql->kind)
    g_string_append_printf (sql->wanted, " OR EXISTS (SELECT 1 FROM \"%s\" WHERE \"%s\" = ?1)", table, column);
}

typedef struct
{
  sqlite3_stmt *dangling[GB_N_RECORDS];
  sqlite3_stmt *wanted[GB_N_RECORDS];
} LinkStatements;

static gboolean
prepare_links (GbStore *store, LinkStatements *links, GbRecordKind kind, GError **error)
{
  LinkSql sql = { kind, g_string_new (NULL), g_string_new (NULL) };

  g_string_printf (sql.dangling, "SELECT 1 FROM \"%s\" r WHERE id = ?1 AND (0", gb_record_type (kind)->name);
  g_string_assign (sql.wanted, "SELECT 1 WHERE 0");
  foreach_link (add_link_sql, &sql);
  g_string_append_c (sql.dangling, ')');
  links->dangling[kind] = gb_sql_prepare (store, FALSE, sql.dangling->str, error);
  if (links->dangling[kind] != NULL)
    links->wanted[kind] = gb_sql_prepare (store, FALSE, sql.wanted->str, error);
  g_string_free (sql.dangling, TRUE);
  g_string_free (sql.wanted, TRUE);
  return links->wanted[kind] != NULL;
}

static gboolean
check_link (GbStore *store, LinkStatements *links, const GbChange *change, GError **error)
{
  gboolean removed = change->op == GB_CHANGE_REMOVED;
  g_autoptr (GError) local = NULL;
  sqlite3_stmt *stmt;
  gboolean broken;

  if (links->wanted[change->kind] == NULL && !prepare_links (store, links, change->kind, error))
    return FALSE;
  stmt = removed ? links->wanted[change->kind] : links->dangling[change->kind];
  sqlite3_bind_int64 (stmt, 1, change->id);
  broken = gb_sql_next (store, stmt, &local);
  sqlite3_reset (stmt);
  if (local != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&local));
      return FALSE;
    }
  return !broken
         || gb_store_fail (error, GB_STORE_ERROR_REFUSED,
                           _ ("Another program has changed “%s” in between, so that this does not fit any more."), store->path);
}

gboolean
gb_check_links (GbStore *store, const GbChanges *changes, GError **error)
{
  LinkStatements links = { 0 };
  gboolean sound = TRUE;

  for (guint i = 0; i < changes->changes->len && sound; i++)
    sound = check_link (store, &links, &g_array_index (changes->changes, GbChange, i), error);
  for (guint k = 0; k < GB_N_RECORDS; k++)
    {
      sqlite3_finalize (links.dangling[k]);
      sqlite3_finalize (links.wanted[k]);
    }
  return sound;
}

/* The first row of PRAGMA foreign_key_check: table, id, the table that it refers to. */
static char *
describe_dangling (GbStore *store, sqlite3_stmt *stmt)
{
  const GbRecordType *from = gb_record_type_by_name ((const char *) sqlite3_column_text (stmt, 0));
  const GbRecordType *to = gb_record_type_by_name ((const char *) sqlite3_column_text (stmt, 2));
  g_autofree char *what = from != NULL ? describe_row (store, from->kind, sqlite3_column_int64 (stmt, 1)) : g_strdup ("?");

  /* Translators: a record and its name; the kind of another */
  return g_strdup_printf (_ ("%s needs something that is not there (%s)."), what, to != NULL ? _ (to->label) : "?");
}

gboolean
gb_check_commit (GbStore *store, GError **error)
{
  g_autoptr (sqlite3_stmt) stmt = NULL;
  g_autofree char *sentence = NULL;

  if (sqlite3_exec (store->db, "COMMIT", NULL, NULL, NULL) == SQLITE_OK)
    return TRUE;
  if (sqlite3_extended_errcode (store->db) != SQLITE_CONSTRAINT_FOREIGNKEY)
    return gb_sql_fail (store->db, store->path, error);

  stmt = gb_sql_prepare (store, FALSE, "PRAGMA foreign_key_check", NULL);
  if (stmt != NULL && gb_sql_next (store, stmt, NULL))
    sentence = describe_dangling (store, stmt);
  return gb_store_fail (error, GB_STORE_ERROR_REFUSED, "%s",
                        sentence != NULL ? sentence : _ ("The change refers to something that is not there."));
}

/* A whole boat ----------------------------------------------------------------------------------------------------- */

static gboolean
fail_record (GbStore *store, const GbRecord *record, const char *format, GError **error)
{
  g_autofree char *what = describe (record);
  g_autofree char *sentence = g_strdup_printf (format, what);

  return gb_store_fail (error, GB_STORE_ERROR_DAMAGED, _ ("“%s” is damaged: %s"), store->path, sentence);
}

static gboolean
check_references (GbStore *store, const GbBoat *boat, const GbField *field, GError **error)
{
  const GPtrArray *all = gb_boat_all (boat, field->kind);

  for (guint i = 0; i < all->len; i++)
    {
      gint64 id = gb_field_get_integer (field, all->pdata[i]);

      if (id != 0 && gb_boat_get (boat, field->refers_to, id) == NULL)
        return fail_record (store, all->pdata[i], _ ("%s refers to something that is not there."), error);
    }
  return TRUE;
}

gboolean
gb_check_boat (GbStore *store, const GbBoat *boat, GError **error)
{
  for (guint k = 0; k < GB_N_RECORDS; k++)
    {
      const GbRecordType *type = gb_record_type (k);
      const GPtrArray *orphans = gb_boat_orphans (boat, k);

      if (orphans->len > 0)
        return fail_record (store, orphans->pdata[0], _ ("%s lies in itself, or in something that is not there."), error);
      for (guint i = 0; i < type->n_fields; i++)
        if (type->fields[i].dim == GB_DIM_REF && !check_references (store, boat, &type->fields[i], error))
          return FALSE;
    }
  return TRUE;
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
    g_ptr_array_add (faults, describe_dangling (store, stmt));
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
