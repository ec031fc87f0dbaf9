/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-schema"

/* What a file may be made of: data/schema.sql and nothing else. A file's own schema is compared as text with what that script
 * makes, remarks and spacing aside, so that no trigger, view, virtual table, generated column or changed CHECK can hide in it. */

#include "store-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* One statement of SQL without remarks, and with single spaces. What stands in quotes stays as it is. */
static char *
normalise (const char *sql)
{
  GString *plain = g_string_new (NULL);
  const char *p = sql;

  while (*p != '\0')
    {
      const char *end = NULL;

      if (*p == '\'' || *p == '"' || *p == '`')
        end = strchr (p + 1, *p);
      else if (*p == '[')
        end = strchr (p + 1, ']');
      if (end != NULL)
        {
          g_string_append_len (plain, p, end + 1 - p);
          p = end + 1;
          continue;
        }
      if (strncmp (p, "--", 2) == 0)
        p = strchrnul (p, '\n');
      else if (strncmp (p, "/*", 2) == 0)
        {
          end = strstr (p + 2, "*/");
          p = end != NULL ? end + 2 : p + strlen (p);
        }
      else if (g_ascii_isspace (*p))
        p++;
      else
        {
          g_string_append_c (plain, *p++);
          continue;
        }
      if (plain->len > 0 && plain->str[plain->len - 1] != ' ')
        g_string_append_c (plain, ' ');
    }
  return g_string_free (plain, FALSE);
}

/* Every object of the schema: "table part" -> its normalised SQL. */
static GHashTable *
read_schema (GbStore *store, GError **error)
{
  g_autoptr (GHashTable) schema = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_autoptr (sqlite3_stmt) stmt = NULL;
  g_autoptr (GError) local = NULL;

  stmt = gb_sql_prepare (store, FALSE, "SELECT type, name, coalesce(sql, '') FROM sqlite_schema", error);
  if (stmt == NULL)
    return NULL;
  while (gb_sql_next (store, stmt, &local))
    {
      const char *type = (const char *) sqlite3_column_text (stmt, 0);
      const char *name = (const char *) sqlite3_column_text (stmt, 1);
      const char *sql = (const char *) sqlite3_column_text (stmt, 2);
      g_autofree char *key = g_strdup_printf ("%s %s", type != NULL ? type : "?", name != NULL ? name : "?");

      g_hash_table_insert (schema, g_utf8_make_valid (key, -1), normalise (sql != NULL ? sql : ""));
    }
  if (local == NULL)
    return g_steal_pointer (&schema);
  g_propagate_error (error, g_steal_pointer (&local));
  return NULL;
}

/* What data/schema.sql makes. Read once. */
static GHashTable *
known_schema (void)
{
  static GHashTable *known;

  if (g_once_init_enter (&known))
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (GbStore) memory = gb_store_connect (":memory:", ":memory:", &error);
      GHashTable *schema = NULL;

      if (memory != NULL && gb_sql_exec (memory, gb_schema_sql, &error))
        schema = read_schema (memory, &error);
      if (schema == NULL)
        g_error ("the schema that is compiled in cannot be used: %s", error->message);
      g_once_init_leave (&known, schema);
    }
  return known;
}

/* Translators: file; a technical name, like "trigger evil" */
#define STRANGE N_ ("“%s” holds something that Garboard never puts there (%s).")

static void
add_fault (GPtrArray *faults, const char *format, const char *path, const char *what)
{
  g_ptr_array_add (faults, g_strdup_printf (format, path, what));
}

gboolean
gb_schema_compare (GbStore *store, GPtrArray *faults, GError **error)
{
  GHashTable *known = known_schema ();
  g_autoptr (GHashTable) found = read_schema (store, error);
  GHashTableIter iter;
  gpointer key, value;

  if (found == NULL)
    return FALSE;
  g_hash_table_iter_init (&iter, found);
  while (g_hash_table_iter_next (&iter, &key, &value))
    {
      const char *expected = g_hash_table_lookup (known, key);

      if (expected == NULL)
        add_fault (faults, _ (STRANGE), store->path, key);
      else if (strcmp (expected, value) != 0)
        add_fault (faults, _ ("“%s” has been rebuilt by another program (%s)."), store->path, key);
    }
  g_hash_table_iter_init (&iter, known);
  while (g_hash_table_iter_next (&iter, &key, NULL))
    if (!g_hash_table_contains (found, key))
      add_fault (faults, _ ("“%s” lacks something that belongs there (%s)."), store->path, key);
  return TRUE;
}

gboolean
gb_schema_check (GbStore *store, GError **error)
{
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func (g_free);

  if (!gb_schema_compare (store, faults, error))
    return FALSE;
  if (faults->len == 0)
    return TRUE;
  return gb_store_fail (error, GB_STORE_ERROR_DAMAGED, "%s", (char *) faults->pdata[0]);
}

/* Tables and indexes only, and no table that runs another's code. */
static gboolean
is_plain (const char *key, const char *sql)
{
  return (g_str_has_prefix (key, "table ") || g_str_has_prefix (key, "index "))
         && g_ascii_strncasecmp (sql, "CREATE VIRTUAL", strlen ("CREATE VIRTUAL")) != 0;
}

gboolean
gb_schema_is_plain (GbStore *store, GError **error)
{
  GHashTable *known = known_schema ();
  g_autoptr (GHashTable) found = read_schema (store, error);
  GHashTableIter iter;
  gpointer key, value;

  if (found == NULL)
    return FALSE;
  g_hash_table_iter_init (&iter, found);
  while (g_hash_table_iter_next (&iter, &key, &value))
    if (!g_hash_table_contains (known, key) || !is_plain (key, value))
      return gb_store_fail (error, GB_STORE_ERROR_DAMAGED, _ (STRANGE), store->path, (const char *) key);
  return TRUE;
}

gboolean
gb_schema_is_readable (GbStore *store, GError **error)
{
  g_autoptr (GHashTable) found = read_schema (store, error);
  GHashTableIter iter;
  gpointer key, value;
  gboolean readable = found != NULL;

  if (found == NULL)
    return FALSE;
  g_hash_table_iter_init (&iter, found);
  while (g_hash_table_iter_next (&iter, &key, &value))
    readable &= is_plain (key, value);
  for (guint k = 0; k < GB_N_RECORDS && readable; k++)
    {
      g_autofree char *columns = gb_rows_columns (k);
      g_autofree char *sql = g_strdup_printf ("SELECT %s FROM \"%s\"", columns, gb_record_type (k)->name);
      g_autoptr (sqlite3_stmt) stmt = gb_sql_prepare (store, FALSE, sql, NULL);

      readable = stmt != NULL;
    }
  if (readable)
    return TRUE;
  return gb_store_fail (error, GB_STORE_ERROR_NEWER,
                        _ ("“%s” was made by a newer Garboard and cannot be read by this one."), store->path);
}

gboolean
gb_schema_make (GbStore *store, const char *type, const char *table, GError **error)
{
  g_autoptr (GbStore) memory = gb_store_connect (":memory:", ":memory:", error);
  g_autoptr (sqlite3_stmt) stmt = NULL;
  g_autoptr (GError) local = NULL;
  gboolean made = TRUE;

  if (memory == NULL || !gb_sql_exec (memory, gb_schema_sql, error))
    return FALSE;
  stmt = gb_sql_prepare (memory, FALSE, "SELECT sql FROM sqlite_schema WHERE type = ?1 AND tbl_name = ?2 AND sql IS NOT NULL", error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_text (stmt, 1, type, -1, SQLITE_STATIC);
  sqlite3_bind_text (stmt, 2, table, -1, SQLITE_STATIC);
  while (made && gb_sql_next (memory, stmt, &local))
    made = gb_sql_exec (store, (const char *) sqlite3_column_text (stmt, 0), error);
  if (local == NULL)
    return made;
  g_propagate_error (error, g_steal_pointer (&local));
  return FALSE;
}
