/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-changeset"

/* What a changeset changes. It comes from a file that anybody may have written, so its bytes are gone through once before SQLite,
 * which takes them as they are, sees any of them. The format is that of sqlite3session.c:
 *
 *   changeset = { table { change } }
 *   table     = 'T' n-columns { 1 if part of the primary key, else 0 } name NUL
 *   change    = operation indirect record [record]         an update has two: what was, what is
 *   record    = { value }                                  one for each column
 *   value     = 0 | 1 integer | 2 real | 3 length text | 4 length blob | 5        undefined, of 8 bytes, with its length, NULL
 *
 * Lengths and the number of columns are varints: seven bits to a byte, the highest first, all but the last marked. */

#include "store-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

typedef struct
{
  const guint8 *at;
  const guint8 *end;
} Bytes;

static gsize
left (const Bytes *bytes)
{
  return (gsize) (bytes->end - bytes->at);
}

static gboolean
skip (Bytes *bytes, gsize n)
{
  if (left (bytes) < n)
    return FALSE;
  bytes->at += n;
  return TRUE;
}

/* No length that matters here has more than four bytes. */
static gboolean
read_length (Bytes *bytes, gsize *length)
{
  *length = 0;
  for (int i = 0; i < 4 && left (bytes) > 0; i++)
    {
      guint8 byte = *bytes->at++;

      *length = *length << 7 | (byte & 0x7f);
      if ((byte & 0x80) == 0)
        return TRUE;
    }
  return FALSE;
}

static gboolean
skip_value (Bytes *bytes)
{
  gsize length;

  if (left (bytes) == 0)
    return FALSE;
  switch (*bytes->at++)
    {
    case 0:
    case SQLITE_NULL:
      return TRUE;
    case SQLITE_INTEGER:
    case SQLITE_FLOAT:
      return skip (bytes, 8);
    case SQLITE_TEXT:
    case SQLITE_BLOB:
      return read_length (bytes, &length) && skip (bytes, length);
    default:
      return FALSE;
    }
}

static gboolean
skip_record (Bytes *bytes, int n_columns)
{
  for (int i = 0; i < n_columns; i++)
    if (!skip_value (bytes))
      return FALSE;
  return TRUE;
}

static gboolean
skip_change (Bytes *bytes, int n_columns)
{
  guint8 operation = *bytes->at;

  if (operation != SQLITE_INSERT && operation != SQLITE_DELETE && operation != SQLITE_UPDATE)
    return FALSE;
  return skip (bytes, 2) && skip_record (bytes, n_columns) && (operation != SQLITE_UPDATE || skip_record (bytes, n_columns));
}

/* The head of a table of ours: with as many columns as it has, the first of which is the key. */
static gboolean
skip_table (Bytes *bytes, int *n_columns)
{
  const GbRecordType *type;
  const guint8 *key;
  const guint8 *name;
  gsize n;

  if (!skip (bytes, 1) || !read_length (bytes, &n) || !skip (bytes, n))
    return FALSE;
  key = bytes->at - n;
  name = bytes->at;
  if (memchr (name, '\0', left (bytes)) == NULL)
    return FALSE;
  type = gb_record_type_by_name ((const char *) name);
  if (type == NULL || n != (gsize) gb_rows_n_columns (type->kind) || key[0] != 1)
    return FALSE;
  for (gsize i = 1; i < n; i++)
    if (key[i] != 0)
      return FALSE;
  *n_columns = (int) n;
  return skip (bytes, strlen ((const char *) name) + 1);
}

static gboolean
is_sound (const void *changeset, gsize size)
{
  Bytes bytes = { changeset, changeset };
  int n_columns = 0;

  if (size > 0)
    bytes.end += size;
  while (left (&bytes) > 0)
    if (*bytes.at == 'T' ? !skip_table (&bytes, &n_columns) : (n_columns == 0 || !skip_change (&bytes, n_columns)))
      return FALSE;
  return TRUE;
}

/* An update moves a record if it writes the owner or the position. */
static GbChangeOp
update_op (sqlite3_changeset_iter *iter, GbRecordKind kind)
{
  for (int column = 1; column <= (gb_rows_has_owner (kind) ? 2 : 1); column++)
    {
      sqlite3_value *value = NULL;

      if (sqlite3changeset_new (iter, column, &value) == SQLITE_OK && value != NULL)
        return GB_CHANGE_MOVED;
    }
  return GB_CHANGE_FIELDS;
}

static gboolean
read_change (sqlite3_changeset_iter *iter, GbChanges *changes)
{
  sqlite3_value *id = NULL;
  const char *table;
  GbRecordKind kind;
  int n_columns, op;

  if (sqlite3changeset_op (iter, &table, &n_columns, &op, NULL) != SQLITE_OK)
    return FALSE;
  kind = gb_record_type_by_name (table)->kind;
  if (op == SQLITE_INSERT)
    sqlite3changeset_new (iter, 0, &id);
  else
    sqlite3changeset_old (iter, 0, &id);
  if (id == NULL)
    return FALSE;
  gb_changes_add (changes, kind,
                  op == SQLITE_INSERT   ? GB_CHANGE_ADDED
                  : op == SQLITE_DELETE ? GB_CHANGE_REMOVED
                                        : update_op (iter, kind),
                  sqlite3_value_int64 (id));
  return TRUE;
}

GbChanges *
gb_changeset_read (GbStore *store, const void *changeset, gsize size, gboolean invert, GError **error)
{
  g_autoptr (GbChanges) changes = gb_changes_new ();
  sqlite3_changeset_iter *iter = NULL;
  gboolean sound = size <= G_MAXINT && is_sound (changeset, size)
                   && sqlite3changeset_start_v2 (&iter, (int) size, (void *) changeset, invert ? SQLITE_CHANGESETSTART_INVERT : 0)
                        == SQLITE_OK;

  while (sound && sqlite3changeset_next (iter) == SQLITE_ROW)
    sound = read_change (iter, changes);
  if (sqlite3changeset_finalize (iter) == SQLITE_OK && sound)
    return g_steal_pointer (&changes);
  gb_store_fail (error, GB_STORE_ERROR_DAMAGED, _ ("“%s” is damaged: its history cannot be read."), store->path);
  return NULL;
}
