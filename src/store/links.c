/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-links"

/* What lives in what and what refers to what, as the field table has it: no part lies in itself, and nothing leads to where nothing
 * is. Looked at for a whole boat that was read, and for the rows that an edit, an undo or a redo touches. */

#include "store-private.h"

#include "boat/expression.h"

#include <glib/gi18n-lib.h>

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
gb_links_check_cycles (GbStore *store, const GbChanges *changes, GError **error)
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
gb_links_check (GbStore *store, const GbChanges *changes, GError **error)
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
char *
gb_links_describe (GbStore *store, sqlite3_stmt *stmt)
{
  const GbRecordType *from = gb_record_type_by_name ((const char *) sqlite3_column_text (stmt, 0));
  const GbRecordType *to = gb_record_type_by_name ((const char *) sqlite3_column_text (stmt, 2));
  g_autofree char *what = from != NULL ? describe_row (store, from->kind, sqlite3_column_int64 (stmt, 1)) : g_strdup ("?");

  /* Translators: a record and its name; the kind of another */
  return g_strdup_printf (_ ("%s needs something that is not there (%s)."), what, to != NULL ? _ (to->label) : "?");
}

gboolean
gb_links_commit (GbStore *store, GError **error)
{
  g_autoptr (sqlite3_stmt) stmt = NULL;
  g_autofree char *sentence = NULL;

  if (sqlite3_exec (store->db, "COMMIT", NULL, NULL, NULL) == SQLITE_OK)
    return TRUE;
  if (sqlite3_extended_errcode (store->db) != SQLITE_CONSTRAINT_FOREIGNKEY)
    return gb_sql_fail (store->db, store->path, error);

  stmt = gb_sql_prepare (store, FALSE, "PRAGMA foreign_key_check", NULL);
  if (stmt != NULL && gb_sql_next (store, stmt, NULL))
    sentence = gb_links_describe (store, stmt);
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
gb_links_check_boat (GbStore *store, const GbBoat *boat, GError **error)
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
