/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-history"

/* What has been done, in the file itself.
 *
 *   history.id   1  2  3  4  5  6          history_mark.done = 4
 *                |-- done --|  |undone|
 *
 * Undo applies the changeset of 'done' inverted and moves the mark down; redo applies the next one and moves it up; a new edit
 * lets those above the mark go and takes the next number. All in the transaction that changes the rows, so that history and
 * rows never disagree, whenever the power goes.
 *
 * A changeset already says what the foreign keys did: the rows that went by cascade and the references that became NULL. They are
 * therefore off while it is applied, or they would act twice. That it fits is certain as long as every edit was made
 * this way; since another program may have written too, any row that is not as the changeset remembers it stops the step, and owners,
 * references and cycles are checked before the commit. */

#include "store-private.h"

#include <glib/gi18n-lib.h>

/* The table -------------------------------------------------------------------------------------------------------- */

static gboolean
set_mark (GbStore *store, gint64 done, GError **error)
{
  g_autoptr (sqlite3_stmt) stmt = gb_sql_prepare (store, FALSE, "UPDATE history_mark SET done = ?1", error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, done);
  return gb_sql_run (store, stmt, error);
}

static gboolean
insert_edit (GbStore *store, gint64 id, const void *changeset, gsize size, GError **error)
{
  const GbPlace *place = &store->place;
  g_autoptr (sqlite3_stmt) stmt = gb_sql_prepare (store, FALSE, "INSERT INTO history VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)", error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, id);
  sqlite3_bind_int64 (stmt, 2, g_get_real_time () / G_USEC_PER_SEC);
  sqlite3_bind_text (stmt, 3, store->words, -1, SQLITE_STATIC);
  if (place->kind < GB_N_RECORDS)
    sqlite3_bind_text (stmt, 4, gb_record_type (place->kind)->name, -1, SQLITE_STATIC);
  if (place->id != 0)
    sqlite3_bind_int64 (stmt, 5, place->id);
  sqlite3_bind_text (stmt, 6, place->field, -1, SQLITE_STATIC);
  sqlite3_bind_blob64 (stmt, 7, changeset, size, SQLITE_STATIC);
  return gb_sql_run (store, stmt, error);
}

/* Lets go of what is beyond the bounds. Reads lengths only, newest first, so that it costs little. */
static gboolean
prune (GbStore *store, GError **error)
{
  g_autoptr (sqlite3_stmt) stmt = NULL;
  g_autoptr (GError) local = NULL;
  gint64 bytes = 0;
  guint n = 0;

  stmt = gb_sql_prepare (store, FALSE, "SELECT id, length(changeset) FROM history ORDER BY id DESC", error);
  if (stmt == NULL)
    return FALSE;
  while (gb_sql_next (store, stmt, &local))
    {
      bytes += sqlite3_column_int64 (stmt, 1);
      if (++n > GB_HISTORY_MAX_EDITS || bytes > GB_HISTORY_MAX_BYTES)
        {
          gint64 id = sqlite3_column_int64 (stmt, 0);
          g_autofree char *sql = g_strdup_printf ("DELETE FROM history WHERE id <= %" G_GINT64_FORMAT, id);

          sqlite3_reset (stmt);
          return gb_sql_exec (store, sql, error);
        }
    }
  if (local == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&local));
  return FALSE;
}

gboolean
gb_history_add (GbStore *store, const void *changeset, gsize size, GError **error)
{
  gint64 done;

  return gb_sql_exec (store, "DELETE FROM history WHERE id > (SELECT done FROM history_mark)", error)
         && gb_sql_integer (store, "SELECT done FROM history_mark", &done, error)
         && insert_edit (store, done + 1, changeset, size, error) && set_mark (store, done + 1, error) && prune (store, error);
}

/* Words ------------------------------------------------------------------------------------------------------------ */

static char *
read_words (GbStore *store, const char *sql)
{
  g_autoptr (sqlite3_stmt) stmt = gb_sql_prepare (store, FALSE, sql, NULL);
  const char *words;

  if (stmt == NULL || !gb_sql_next (store, stmt, NULL))
    return NULL;
  words = (const char *) sqlite3_column_text (stmt, 0);
  return g_utf8_make_valid (words != NULL ? words : "", -1);
}

#define UNDO_FROM " FROM history WHERE id = (SELECT done FROM history_mark)"
#define REDO_FROM " FROM history WHERE id = (SELECT min (id) FROM history WHERE id > (SELECT done FROM history_mark))"

static void
find_words (GbStore *store)
{
  if (store->words_known)
    return;
  gb_history_forget_words (store);
  store->undo_words = read_words (store, "SELECT words" UNDO_FROM);
  store->redo_words = read_words (store, "SELECT words" REDO_FROM);
  store->words_known = TRUE;
}

void
gb_history_forget_words (GbStore *store)
{
  g_clear_pointer (&store->undo_words, g_free);
  g_clear_pointer (&store->redo_words, g_free);
  store->words_known = FALSE;
}

const char *
gb_store_undo_words (GbStore *store)
{
  find_words (store);
  return store->undo_words;
}

const char *
gb_store_redo_words (GbStore *store)
{
  find_words (store);
  return store->redo_words;
}

/* Undo and redo ---------------------------------------------------------------------------------------------------- */

typedef struct
{
  gint64 id;
  GbPlace place;
  GBytes *changeset;
} Edit;

static void
edit_clear (Edit *edit)
{
  g_clear_pointer (&edit->changeset, g_bytes_unref);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Edit, edit_clear)

static GbPlace
read_place (sqlite3_stmt *stmt)
{
  const char *table = (const char *) sqlite3_column_text (stmt, 1);
  const char *column = (const char *) sqlite3_column_text (stmt, 3);
  const GbRecordType *type = table != NULL ? gb_record_type_by_name (table) : NULL;
  const GbField *field = type != NULL && column != NULL ? gb_field_find (type->kind, column) : NULL;

  if (type == NULL)
    return (GbPlace){ 0 };
  return (GbPlace){ type->kind, sqlite3_column_int64 (stmt, 2), field != NULL ? field->name : NULL };
}

static gboolean
read_edit (GbStore *store, gboolean undo, Edit *edit, GError **error)
{
  g_autoptr (sqlite3_stmt) stmt = NULL;
  g_autoptr (GError) local = NULL;

  stmt = gb_sql_prepare (store, FALSE,
                         undo ? "SELECT id, place_kind, place_id, place_field, changeset" UNDO_FROM
                              : "SELECT id, place_kind, place_id, place_field, changeset" REDO_FROM,
                         error);
  if (stmt == NULL)
    return FALSE;
  if (gb_sql_next (store, stmt, &local))
    {
      edit->id = sqlite3_column_int64 (stmt, 0);
      edit->place = read_place (stmt);
      edit->changeset = g_bytes_new (sqlite3_column_blob (stmt, 4), (gsize) sqlite3_column_bytes (stmt, 4));
      return TRUE;
    }
  if (local != NULL)
    g_propagate_error (error, g_steal_pointer (&local));
  else
    gb_store_fail (error, GB_STORE_ERROR_REFUSED, undo ? _ ("There is nothing to undo.") : _ ("There is nothing to redo."));
  return FALSE;
}

static int
accept_table_cb (gpointer data, const char *table)
{
  return gb_record_type_by_name (table) != NULL;
}

static int
conflict_cb (gpointer data, int conflict, sqlite3_changeset_iter *iter)
{
  return SQLITE_CHANGESET_ABORT;
}

static gboolean
apply (GbStore *store, GBytes *changeset, gboolean invert, GError **error)
{
  gsize size;
  gconstpointer bytes = g_bytes_get_data (changeset, &size);
  int code = sqlite3changeset_apply_v2 (store->db, (int) size, (void *) bytes, accept_table_cb, conflict_cb, NULL, NULL, NULL,
                                        SQLITE_CHANGESETAPPLY_NOSAVEPOINT | (invert ? SQLITE_CHANGESETAPPLY_INVERT : 0));

  if (code == SQLITE_OK)
    return TRUE;
  if (code == SQLITE_ABORT)
    return gb_store_fail (error, GB_STORE_ERROR_REFUSED,
                          _ ("Another program has changed “%s” in between, so that this does not fit any more."), store->path);
  return gb_sql_fail (store->db, store->path, error);
}

/* Within the transaction. */
static GbChanges *
take_step (GbStore *store, gboolean undo, GbPlace *place, GError **error)
{
  g_auto (Edit) edit = { 0 };
  g_autoptr (GbChanges) changes = NULL;

  if (!read_edit (store, undo, &edit, error))
    return NULL;
  changes = gb_changeset_read (store, g_bytes_get_data (edit.changeset, NULL), g_bytes_get_size (edit.changeset), undo, error);
  if (changes == NULL || !apply (store, edit.changeset, undo, error) || !set_mark (store, undo ? edit.id - 1 : edit.id, error)
      || !gb_links_check (store, changes, error) || !gb_links_check_cycles (store, changes, error))
    return NULL;
  if (place != NULL)
    *place = edit.place;
  return g_steal_pointer (&changes);
}

static gboolean
step (GbStore *store, gboolean undo, GbChanges **changes, GbPlace *place, GError **error)
{
  g_autoptr (GbChanges) stepped = NULL;

  g_return_val_if_fail (store->session == NULL, FALSE);
  if (!gb_store_may_write (store, error))
    return FALSE;

  sqlite3_db_config (store->db, SQLITE_DBCONFIG_ENABLE_FKEY, 0, NULL);
  if (gb_sql_exec (store, "BEGIN IMMEDIATE", error))
    stepped = take_step (store, undo, place, error);
  if (stepped != NULL && !gb_sql_exec (store, "COMMIT", error))
    g_clear_pointer (&stepped, gb_changes_free);
  gb_sql_rollback (store);
  sqlite3_db_config (store->db, SQLITE_DBCONFIG_ENABLE_FKEY, 1, NULL);

  gb_history_forget_words (store);
  if (stepped == NULL)
    return FALSE;
  if (changes != NULL)
    *changes = g_steal_pointer (&stepped);
  return TRUE;
}

gboolean
gb_store_undo (GbStore *store, GbChanges **changes, GbPlace *place, GError **error)
{
  return step (store, TRUE, changes, place, error);
}

gboolean
gb_store_redo (GbStore *store, GbChanges **changes, GbPlace *place, GError **error)
{
  return step (store, FALSE, changes, place, error);
}
