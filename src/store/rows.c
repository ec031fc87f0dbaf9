/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-rows"

/* Rows to structs and back, by the field table alone: a table's columns are "id", "owner" where the kind lives in something,
 * "position", "typed", and then the fields in the table's order. NULL is unknown. Choices are kept by name. */

#include "store-private.h"

#include "boat/expression.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>
#include <math.h>
#include <string.h>

#define TYPED_MAX 100000
#define POSITION_MAX 1e15

/* Columns as a set: a bit for each. No table has as many as 64. */
#define ALL_COLUMNS G_MAXUINT64

gboolean
gb_rows_has_owner (GbRecordKind kind)
{
  return gb_record_type (kind)->owner != GB_N_RECORDS;
}

/* How many columns stand before the fields. */
static int
n_leading (GbRecordKind kind)
{
  return gb_rows_has_owner (kind) ? 4 : 3;
}

int
gb_rows_n_columns (GbRecordKind kind)
{
  return n_leading (kind) + (int) gb_record_type (kind)->n_fields;
}

static const char *
column_name (GbRecordKind kind, int column)
{
  static const char *const leading[] = { "id", "owner", "position", "typed" };

  if (column >= n_leading (kind))
    return gb_record_type (kind)->fields[column - n_leading (kind)].name;
  return leading[column > 0 && !gb_rows_has_owner (kind) ? column + 1 : column];
}

char *
gb_rows_columns (GbRecordKind kind)
{
  GString *sql = g_string_new (NULL);

  for (int i = 0; i < gb_rows_n_columns (kind); i++)
    g_string_append_printf (sql, "%s\"%s\"", i > 0 ? ", " : "", column_name (kind, i));
  return g_string_free (sql, FALSE);
}

/* Reading ---------------------------------------------------------------------------------------------------------- */

static gboolean
wrong_type (const GbField *field, GError **error)
{
  g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE, _ ("%s: this is not of the right sort."), _ (field->label));
  return FALSE;
}

static gboolean
read_real (sqlite3_stmt *stmt, int column, const GbField *field, GbRecord *record, GError **error)
{
  GbValue value = GB_VALUE_REAL (NAN);

  switch (sqlite3_column_type (stmt, column))
    {
    case SQLITE_NULL:
      gb_field_set_real (field, record, NAN);
      return TRUE;
    case SQLITE_FLOAT:
    case SQLITE_INTEGER:
      value.real = sqlite3_column_double (stmt, column);
      gb_field_set_real (field, record, value.real);
      return gb_field_check (field, &value, error);
    default:
      return wrong_type (field, error);
    }
}

/* A text of the row, checked to be whole: no NUL within. NULL for NULL, and for what is no such text. */
static const char *
read_string (sqlite3_stmt *stmt, int column)
{
  const char *text;

  if (sqlite3_column_type (stmt, column) != SQLITE_TEXT)
    return NULL;
  text = (const char *) sqlite3_column_text (stmt, column);
  if (text == NULL || strlen (text) != (gsize) sqlite3_column_bytes (stmt, column))
    return NULL;
  return text;
}

/* An outline is taken as it is: whether its rings cross takes long to find, and what depends on it says so where it is shown. */
static gboolean
read_text (sqlite3_stmt *stmt, int column, const GbField *field, GbRecord *record, GError **error)
{
  GbValue value = { .storage = GB_STORAGE_TEXT };

  if (sqlite3_column_type (stmt, column) == SQLITE_NULL)
    return TRUE;
  value.text = (char *) read_string (stmt, column);
  if (value.text == NULL)
    return wrong_type (field, error);
  if (*value.text == '\0')
    return TRUE;
  gb_field_set_text (field, record, value.text);
  if (field->dim == GB_DIM_OUTLINE)
    return (strlen (value.text) <= field->max && g_utf8_validate (value.text, -1, NULL)) || wrong_type (field, error);
  return gb_field_check (field, &value, error);
}

static gboolean
read_choice (sqlite3_stmt *stmt, int column, const GbField *field, GbRecord *record, GError **error)
{
  const char *name = read_string (stmt, column);
  int choice = name != NULL ? gb_field_choice (field, name) : -1;

  if (choice < 0)
    return wrong_type (field, error);
  gb_field_set_integer (field, record, choice);
  return TRUE;
}

static gboolean
read_integer (sqlite3_stmt *stmt, int column, const GbField *field, GbRecord *record, GError **error)
{
  GbValue value = GB_VALUE_INTEGER (0);

  switch (sqlite3_column_type (stmt, column))
    {
    case SQLITE_NULL:
      gb_field_set_integer (field, record, gb_field_unknown (field).integer);
      return field->dim != GB_DIM_FLAG || wrong_type (field, error);
    case SQLITE_INTEGER:
      value.integer = sqlite3_column_int64 (stmt, column);
      gb_field_set_integer (field, record, value.integer);
      return gb_field_check (field, &value, error);
    default:
      return wrong_type (field, error);
    }
}

static gboolean
read_field (sqlite3_stmt *stmt, int column, const GbField *field, GbRecord *record, GError **error)
{
  if (field->dim == GB_DIM_CHOICE)
    return read_choice (stmt, column, field, record, error);
  switch (gb_field_storage (field))
    {
    case GB_STORAGE_REAL:
      return read_real (stmt, column, field, record, error);
    case GB_STORAGE_TEXT:
      return read_text (stmt, column, field, record, error);
    case GB_STORAGE_INTEGER:
    default:
      return read_integer (stmt, column, field, record, error);
    }
}

static gboolean
typed_is_sound (const char *typed)
{
  return typed == NULL || (strlen (typed) <= TYPED_MAX && g_utf8_validate (typed, -1, NULL));
}

/* What every record has. */
static gboolean
read_leading (sqlite3_stmt *stmt, GbRecord *record, GError **error)
{
  int column = 0;

  record->id = sqlite3_column_int64 (stmt, column++);
  if (gb_rows_has_owner (record->kind))
    record->owner = sqlite3_column_int64 (stmt, column++);
  record->position = sqlite3_column_double (stmt, column++);
  if (sqlite3_column_type (stmt, column) != SQLITE_NULL)
    {
      const char *typed = read_string (stmt, column);

      if (typed == NULL || !typed_is_sound (typed))
        {
          g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE, _ ("What was typed is not plain text."));
          return FALSE;
        }
      record->typed = *typed != '\0' ? g_strdup (typed) : NULL;
    }
  if (record->id > 0 && record->owner >= 0 && fabs (record->position) <= POSITION_MAX)
    return TRUE;
  g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE, _ ("Its place in the list makes no sense."));
  return FALSE;
}

GbRecord *
gb_rows_read (GbStore *store, sqlite3_stmt *stmt, GbRecordKind kind, GError **error)
{
  const GbRecordType *type = gb_record_type (kind);
  /* Every field is about to be written, so that start values would be in vain. */
  g_autoptr (GbRecord) record = g_malloc0 (type->size);
  g_autoptr (GError) local = NULL;
  g_autofree char *title = NULL;
  g_autofree char *valid = NULL;
  g_autofree char *quote = NULL;
  int column = n_leading (kind);
  gboolean sound;

  record->kind = kind;
  sound = read_leading (stmt, record, &local);
  for (guint i = 0; sound && i < type->n_fields; i++)
    sound = read_field (stmt, column++, &type->fields[i], record, &local);
  if (sound)
    return g_steal_pointer (&record);

  title = gb_record_dup_title (record);
  valid = g_utf8_make_valid (title, -1);
  quote = gb_entry_quote (valid);
  /* Translators: file; kind of record; its name; number; a sentence that says what is wrong */
  gb_store_fail (error, GB_STORE_ERROR_DAMAGED, _ ("“%s”: %s “%s” (number %" PRId64 "): %s"), store->path,
                 _ (type->label), quote, record->id, local->message);
  return NULL;
}

gboolean
gb_rows_find (GbStore *store, GbRecordKind kind, gint64 id, GbRecord **record, GError **error)
{
  GbRowStatements *rows = &store->rows[kind];
  g_autoptr (GError) local = NULL;

  *record = NULL;
  if (rows->find == NULL)
    {
      g_autofree char *columns = gb_rows_columns (kind);
      g_autofree char *sql = g_strdup_printf ("SELECT %s FROM \"%s\" WHERE id = ?1", columns, gb_record_type (kind)->name);

      rows->find = gb_sql_prepare (store, TRUE, sql, error);
      if (rows->find == NULL)
        return FALSE;
    }
  sqlite3_bind_int64 (rows->find, 1, id);
  if (gb_sql_next (store, rows->find, &local))
    *record = gb_rows_read (store, rows->find, kind, &local);
  sqlite3_reset (rows->find);
  if (local == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&local));
  return FALSE;
}

/* Writing ---------------------------------------------------------------------------------------------------------- */

static void
bind_field (sqlite3_stmt *stmt, int at, const GbField *field, const GbRecord *record)
{
  if (gb_field_is_unknown (field, record))
    sqlite3_bind_null (stmt, at);
  else if (field->dim == GB_DIM_CHOICE)
    sqlite3_bind_text (stmt, at, field->choices[gb_field_get_integer (field, record)].name, -1, SQLITE_STATIC);
  else if (gb_field_storage (field) == GB_STORAGE_REAL)
    sqlite3_bind_double (stmt, at, gb_field_get_real (field, record));
  else if (gb_field_storage (field) == GB_STORAGE_INTEGER)
    sqlite3_bind_int64 (stmt, at, gb_field_get_integer (field, record));
  else
    sqlite3_bind_text (stmt, at, gb_field_get_text (field, record), -1, SQLITE_STATIC);
}

static void
bind_column (sqlite3_stmt *stmt, int at, int column, const GbRecord *record)
{
  const char *name = column_name (record->kind, column);

  if (column >= n_leading (record->kind))
    bind_field (stmt, at, &gb_record_type (record->kind)->fields[column - n_leading (record->kind)], record);
  else if (strcmp (name, "id") == 0)
    sqlite3_bind_int64 (stmt, at, record->id);
  else if (strcmp (name, "position") == 0)
    sqlite3_bind_double (stmt, at, record->position);
  else if (strcmp (name, "typed") == 0)
    sqlite3_bind_text (stmt, at, record->typed, -1, SQLITE_STATIC);
  else if (record->owner != 0)
    sqlite3_bind_int64 (stmt, at, record->owner);
  else
    sqlite3_bind_null (stmt, at);
}

static gboolean
check_field (const GbField *field, const GbRecord *record, GError **error)
{
  GbValue value = { .storage = gb_field_storage (field) };

  if (gb_field_is_unknown (field, record))
    return TRUE;
  if (value.storage == GB_STORAGE_REAL)
    value.real = gb_field_get_real (field, record);
  else if (value.storage == GB_STORAGE_INTEGER)
    value.integer = gb_field_get_integer (field, record);
  else
    value.text = (char *) gb_field_get_text (field, record);
  return gb_field_check (field, &value, error);
}

/* What the file would refuse is refused here, where the field can be named. Looks at the columns in @mask. */
static gboolean
check_record (const GbRecord *record, guint64 mask, GError **error)
{
  const GbRecordType *type = gb_record_type (record->kind);
  g_autofree char *title = NULL;
  g_autoptr (GError) local = NULL;

  for (guint i = 0; i < type->n_fields && local == NULL; i++)
    if ((mask & ((guint64) 1 << (n_leading (record->kind) + (int) i))) != 0)
      check_field (&type->fields[i], record, &local);
  if (local == NULL && typed_is_sound (record->typed) && fabs (record->position) <= POSITION_MAX
      && (record->owner != 0 || record->kind == GB_RECORD_PART || !gb_rows_has_owner (record->kind)))
    return TRUE;

  title = gb_record_dup_title (record);
  if (local != NULL)
    return gb_store_fail (error, GB_STORE_ERROR_REFUSED, "%s: %s", title, local->message);
  return gb_store_fail (error, GB_STORE_ERROR_REFUSED, _ ("%s: it has no place that it could be put in."), title);
}

gboolean
gb_rows_insert (GbStore *store, const GbRecord *record, GError **error)
{
  GbRowStatements *rows = &store->rows[record->kind];
  int n = gb_rows_n_columns (record->kind);

  if (!check_record (record, ALL_COLUMNS, error))
    return FALSE;
  if (rows->insert == NULL)
    {
      g_autofree char *columns = gb_rows_columns (record->kind);
      g_autoptr (GString) sql = g_string_new (NULL);

      g_string_printf (sql, "INSERT INTO \"%s\" (%s) VALUES (?1", gb_record_type (record->kind)->name, columns);
      for (int i = 1; i < n; i++)
        g_string_append_printf (sql, ", ?%d", i + 1);
      g_string_append_c (sql, ')');
      rows->insert = gb_sql_prepare (store, TRUE, sql->str, error);
      if (rows->insert == NULL)
        return FALSE;
    }
  for (int i = 0; i < n; i++)
    bind_column (rows->insert, i + 1, i, record);
  return gb_sql_run (store, rows->insert, error);
}

/* The columns of @kind that @table has. */
static gboolean
find_columns (GbStore *store, GbRecordKind kind, const char *table, guint64 *mask, GError **error)
{
  g_autofree char *sql = g_strdup_printf ("SELECT name FROM pragma_table_info ('%s')", table);
  g_autoptr (sqlite3_stmt) stmt = gb_sql_prepare (store, FALSE, sql, error);
  g_autoptr (GError) local = NULL;

  *mask = 0;
  if (stmt == NULL)
    return FALSE;
  while (gb_sql_next (store, stmt, &local))
    for (int i = 0; i < gb_rows_n_columns (kind); i++)
      if (g_strcmp0 ((const char *) sqlite3_column_text (stmt, 0), column_name (kind, i)) == 0)
        *mask |= (guint64) 1 << i;
  if (local == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&local));
  return FALSE;
}

gboolean
gb_rows_take_over (GbStore *store, GbRecordKind kind, const char *old, GError **error)
{
  g_autofree char *columns = gb_rows_columns (kind);
  g_autoptr (GbRecord) fresh = gb_record_new (kind);
  g_autoptr (GString) sql = g_string_new (NULL);
  g_autoptr (sqlite3_stmt) stmt = NULL;
  guint64 mask;

  if (!find_columns (store, kind, old, &mask, error))
    return FALSE;
  g_string_printf (sql, "INSERT INTO \"%s\" (%s) SELECT ", gb_record_type (kind)->name, columns);
  for (int i = 0; i < gb_rows_n_columns (kind); i++)
    if ((mask & ((guint64) 1 << i)) != 0)
      g_string_append_printf (sql, "%s\"%s\"", i > 0 ? ", " : "", column_name (kind, i));
    else
      g_string_append_printf (sql, "%s?%d", i > 0 ? ", " : "", i + 1);
  g_string_append_printf (sql, " FROM \"%s\"", old);
  stmt = gb_sql_prepare (store, FALSE, sql->str, error);
  if (stmt == NULL)
    return FALSE;
  for (int i = 0; i < gb_rows_n_columns (kind); i++)
    if ((mask & ((guint64) 1 << i)) == 0)
      bind_column (stmt, i + 1, i, fresh);
  return gb_sql_run (store, stmt, error);
}

/* The columns in which the two differ. */
static guint64
differing_columns (const GbRecord *old, const GbRecord *record)
{
  const GbRecordType *type = gb_record_type (record->kind);
  int column = 1;
  guint64 mask = 0;

  if (gb_rows_has_owner (record->kind))
    mask |= (guint64) (old->owner != record->owner) << column++;
  mask |= (guint64) (old->position != record->position) << column++;
  mask |= (guint64) (g_strcmp0 (old->typed, record->typed) != 0) << column++;
  for (guint i = 0; i < type->n_fields; i++)
    mask |= (guint64) !gb_field_equal (&type->fields[i], old, record) << column++;
  return mask;
}

/* The statement that writes the columns in @mask. The last one of each kind is kept, for edits of many rows alike. */
static sqlite3_stmt *
update_statement (GbStore *store, GbRecordKind kind, guint64 mask, GError **error)
{
  GbRowStatements *rows = &store->rows[kind];
  g_autoptr (GString) sql = NULL;
  int at = 2;

  if (rows->update != NULL && rows->update_mask == mask)
    return rows->update;

  g_clear_pointer (&rows->update, sqlite3_finalize);
  sql = g_string_new (NULL);
  g_string_printf (sql, "UPDATE \"%s\" SET ", gb_record_type (kind)->name);
  for (int i = 0; i < gb_rows_n_columns (kind); i++)
    if ((mask & ((guint64) 1 << i)) != 0)
      {
        g_string_append_printf (sql, "%s\"%s\" = ?%d", at > 2 ? ", " : "", column_name (kind, i), at);
        at++;
      }
  g_string_append (sql, " WHERE id = ?1");
  rows->update = gb_sql_prepare (store, TRUE, sql->str, error);
  rows->update_mask = mask;
  return rows->update;
}

gboolean
gb_rows_update (GbStore *store, const GbRecord *old, const GbRecord *record, GError **error)
{
  guint64 mask;
  sqlite3_stmt *update;
  int at = 2;

  g_return_val_if_fail (old->kind == record->kind && old->id == record->id, FALSE);
  mask = differing_columns (old, record);
  if (mask == 0)
    return TRUE;
  if (!check_record (record, mask, error))
    return FALSE;
  update = update_statement (store, record->kind, mask, error);
  if (update == NULL)
    return FALSE;
  sqlite3_bind_int64 (update, 1, record->id);
  for (int i = 0; i < gb_rows_n_columns (record->kind); i++)
    if ((mask & ((guint64) 1 << i)) != 0)
      bind_column (update, at++, i, record);
  if (!gb_sql_run (store, update, error))
    return FALSE;
  if (sqlite3_changes (store->db) == 1)
    return TRUE;
  return gb_store_fail (error, GB_STORE_ERROR_REFUSED, _ ("What was to be changed is no longer there."));
}

gboolean
gb_rows_remove (GbStore *store, GbRecordKind kind, gint64 id, GError **error)
{
  GbRowStatements *rows = &store->rows[kind];

  if (rows->remove == NULL)
    {
      g_autofree char *sql = g_strdup_printf ("DELETE FROM \"%s\" WHERE id = ?1", gb_record_type (kind)->name);

      rows->remove = gb_sql_prepare (store, TRUE, sql, error);
      if (rows->remove == NULL)
        return FALSE;
    }
  sqlite3_bind_int64 (rows->remove, 1, id);
  return gb_sql_run (store, rows->remove, error);
}

void
gb_rows_finalize (GbRowStatements *rows)
{
  g_clear_pointer (&rows->insert, sqlite3_finalize);
  g_clear_pointer (&rows->find, sqlite3_finalize);
  g_clear_pointer (&rows->update, sqlite3_finalize);
  g_clear_pointer (&rows->remove, sqlite3_finalize);
}
