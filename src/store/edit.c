/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-edit"

/* One edit: a transaction under a session, which gathers what it changes. The session watches the tables of the records alone, so
 * that the history is not itself history. References are checked at the commit, so that an edit may write its rows in any order. */

#include "store-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* Letters; what is longer is cut. */
#define LONGEST_WORDS 1000

static gboolean
start_session (GbStore *store, GError **error)
{
  int code = sqlite3session_create (store->db, "main", &store->session);

  for (guint k = 0; k < GB_N_RECORDS && code == SQLITE_OK; k++)
    code = sqlite3session_attach (store->session, gb_record_type (k)->name);
  return code == SQLITE_OK || gb_sql_fail (store->db, store->path, error);
}

gboolean
gb_store_begin (GbStore *store, const char *words, const GbPlace *place, GError **error)
{
  g_return_val_if_fail (store->session == NULL, FALSE);
  g_return_val_if_fail (words != NULL, FALSE);

  if (!gb_store_may_write (store, error) || !gb_sql_exec (store, "BEGIN IMMEDIATE", error))
    return FALSE;
  if (!gb_sql_exec (store, "PRAGMA defer_foreign_keys = ON", error) || !start_session (store, error))
    {
      gb_store_rollback (store);
      return FALSE;
    }
  store->words = g_utf8_strlen (words, -1) > LONGEST_WORDS ? g_utf8_substring (words, 0, LONGEST_WORDS) : g_strdup (words);
  store->place = place != NULL ? *place : (GbPlace){ 0 };
  store->failed = FALSE;
  return TRUE;
}

/* After a write that failed there is nothing left to do but to roll back. */
static gboolean
may_go_on (GbStore *store, GError **error)
{
  return !store->failed
         || gb_store_fail (error, GB_STORE_ERROR_REFUSED, _ ("A part of this change could not be written, so nothing was changed."));
}

static gboolean
note (GbStore *store, gboolean written)
{
  store->failed |= !written;
  return written;
}

gboolean
gb_store_put (GbStore *store, const GbRecord *old, const GbRecord *record, GError **error)
{
  g_return_val_if_fail (store->session != NULL, FALSE);
  g_return_val_if_fail (record->id > 0, FALSE);

  if (!may_go_on (store, error))
    return FALSE;
  return note (store, old != NULL ? gb_rows_update (store, old, record, error) : gb_rows_insert (store, record, error));
}

/* A cascade may be so many levels deep (SQLITE_LIMIT_TRIGGER_DEPTH is 1000); a deeper tree is taken off piece by piece. */
#define CASCADE_DEPTH 500

static gboolean
remove_part (GbStore *store, gint64 id, GError **error)
{
  g_autoptr (GArray) tops = g_array_new (FALSE, FALSE, sizeof (gint64));
  g_autoptr (sqlite3_stmt) stmt = NULL;
  g_autoptr (GError) local = NULL;

  stmt = gb_sql_prepare (store, FALSE,
                         "WITH RECURSIVE below (id, level) AS (VALUES (?1, 0)"
                         " UNION ALL SELECT part.id, level + 1 FROM below JOIN part ON part.owner = below.id)"
                         " SELECT id FROM below WHERE level % " G_STRINGIFY (CASCADE_DEPTH) " = 0 ORDER BY level DESC",
                         error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, id);
  while (gb_sql_next (store, stmt, &local))
    {
      gint64 top = sqlite3_column_int64 (stmt, 0);

      g_array_append_val (tops, top);
    }
  if (local != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&local));
      return FALSE;
    }
  for (guint i = 0; i < tops->len; i++)
    if (!gb_rows_remove (store, GB_RECORD_PART, g_array_index (tops, gint64, i), error))
      return FALSE;
  return TRUE;
}

gboolean
gb_store_delete (GbStore *store, GbRecordKind kind, gint64 id, GError **error)
{
  g_return_val_if_fail (store->session != NULL, FALSE);
  g_return_val_if_fail (kind != GB_RECORD_BUILD, FALSE);

  if (!may_go_on (store, error))
    return FALSE;
  return note (store, kind == GB_RECORD_PART ? remove_part (store, id, error) : gb_rows_remove (store, kind, id, error));
}

static void
end_edit (GbStore *store)
{
  g_clear_pointer (&store->session, sqlite3session_delete);
  g_clear_pointer (&store->words, g_free);
  memset (store->last_id, 0, sizeof store->last_id);
  gb_history_forget_words (store);
}

void
gb_store_rollback (GbStore *store)
{
  end_edit (store);
  gb_sql_rollback (store);
}

/* The edit's changes, written to the history and committed. */
static GbChanges *
finish_edit (GbStore *store, GError **error)
{
  g_autoptr (GbChanges) changes = NULL;
  gpointer changeset = NULL;
  gboolean done;
  int size = 0;

  if (sqlite3session_changeset (store->session, &size, &changeset) != SQLITE_OK)
    {
      gb_sql_fail (store->db, store->path, error);
      return NULL;
    }
  changes = gb_changeset_read (store, changeset, (gsize) size, FALSE, error);
  done = changes != NULL;
  if (done && changes->changes->len > 0)
    done = gb_links_check_cycles (store, changes, error) && gb_history_add (store, changeset, (gsize) size, error)
           && gb_links_commit (store, error);
  sqlite3_free (changeset);
  return done ? g_steal_pointer (&changes) : NULL;
}

gboolean
gb_store_commit (GbStore *store, GbChanges **changes, GError **error)
{
  g_autoptr (GbChanges) finished = NULL;

  g_return_val_if_fail (store->session != NULL, FALSE);

  if (may_go_on (store, error))
    finished = finish_edit (store, error);
  gb_store_rollback (store);
  if (finished == NULL)
    return FALSE;
  if (changes != NULL)
    *changes = g_steal_pointer (&finished);
  return TRUE;
}

gint64
gb_store_next_id (GbStore *store, GbRecordKind kind)
{
  gint64 *last = &store->last_id[kind];

  if (*last == 0)
    {
      const char *table = gb_record_type (kind)->name;
      /* SQLite keeps the highest id that a table ever had in sqlite_sequence. */
      g_autofree char *sql = g_strdup_printf ("SELECT max (coalesce ((SELECT max (seq) FROM sqlite_sequence WHERE name = '%s'), 0),"
                                              " coalesce ((SELECT max (id) FROM \"%s\"), 0))",
                                              table, table);

      gb_sql_integer (store, sql, last, NULL);
      /* Whatever the file says; beyond the highest, the row will be refused. */
      *last = CLAMP (*last, 0, GB_STORE_MAX_ID);
    }
  return ++*last;
}
