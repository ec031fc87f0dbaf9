/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sql.h"

G_BEGIN_DECLS

/* The statements for the rows of one kind, made when they are first needed. */
typedef struct
{
  sqlite3_stmt *insert;
  sqlite3_stmt *find;
  sqlite3_stmt *update;
  guint64 update_mask; /* which columns 'update' writes */
  sqlite3_stmt *remove;
} GbRowStatements;

struct _GbStore
{
  sqlite3 *db;
  char *path;      /* as the builder knows it */
  char *read_only; /* the sentence; NULL: may be written */
  gint64 data_version;
  GbRowStatements rows[GB_N_RECORDS];

  /* While EDITING. */
  struct sqlite3_session *session;
  char *words;
  GbPlace place;
  gboolean failed; /* a write was refused: the edit can only be rolled back */
  gint64 last_id[GB_N_RECORDS];

  /* What can be undone and redone, as far as it has been asked for. */
  gboolean words_known;
  char *undo_words;
  char *redo_words;
};

/* store.c ---------------------------------------------------------------------------------------------------------- */

/* Connects to @file, which the builder knows as @path, with every safety on. Nothing of it has been read yet. */
GbStore *gb_store_connect (const char *path, const char *file, GError **error);
/* FALSE with the sentence if the store may only be read. */
gboolean gb_store_may_write (GbStore *store, GError **error);
/* Makes @to hold what @from holds, page by page. */
gboolean gb_store_copy_pages (GbStore *from, GbStore *to, GError **error);

/* file.c ----------------------------------------------------------------------------------------------------------- */

/* A new file's way onto the disk: made beside its place under another name, synced, and renamed. */
char *gb_file_beside (const char *path, GError **error);
gboolean gb_file_put_in_place (const char *temporary, const char *path, gboolean replace, GError **error);

/* schema.c --------------------------------------------------------------------------------------------------------- */

extern const char gb_schema_sql[];

/* The file holds the known schema and nothing else; if not, a sentence for each difference is added to @faults. */
gboolean gb_schema_compare (GbStore *store, GPtrArray *faults, GError **error);
/* For a file of a newer Garboard: tables and indexes only, and all of the columns that this one reads. */
gboolean gb_schema_is_readable (GbStore *store, GError **error);
/* The same, with the first difference as the error. */
gboolean gb_schema_check (GbStore *store, GError **error);
/* For a file of an older Garboard, before anything is done to it: tables and indexes only, by names that are known. */
gboolean gb_schema_is_plain (GbStore *store, GError **error);
/* Makes the "table" called @table, or each "index" on it, as data/schema.sql has it, remarks and all. */
gboolean gb_schema_make (GbStore *store, const char *type, const char *table, GError **error);

/* migrate.c -------------------------------------------------------------------------------------------------------- */

/* Copies a file of the older @version aside and brings it up to today's, all or nothing. */
gboolean gb_migrate (GbStore *store, gint64 version, GError **error);
/* The same in a copy in memory, for a file that cannot be written. */
GbStore *gb_migrate_copy (GbStore *store, gint64 version, GError **error);

/* rows.c ----------------------------------------------------------------------------------------------------------- */

/* The columns of @kind, quoted, in the order of the file: "id", "owner" (if it lives in something), "position", "typed", fields. */
char *gb_rows_columns (GbRecordKind kind);
int gb_rows_n_columns (GbRecordKind kind);
gboolean gb_rows_has_owner (GbRecordKind kind);

/* The row that @stmt stands at, whose columns are gb_rows_columns(). NULL with a sentence if it holds what no record can. */
GbRecord *gb_rows_read (GbStore *store, sqlite3_stmt *stmt, GbRecordKind kind, GError **error);
/* *@record is NULL if there is no such row. */
gboolean gb_rows_find (GbStore *store, GbRecordKind kind, gint64 id, GbRecord **record, GError **error);
gboolean gb_rows_insert (GbStore *store, const GbRecord *record, GError **error);
/* Writes the columns in which @record differs from @old. */
gboolean gb_rows_update (GbStore *store, const GbRecord *old, const GbRecord *record, GError **error);
/* Deletes the row and, by the foreign keys, what lives in it. */
gboolean gb_rows_remove (GbStore *store, GbRecordKind kind, gint64 id, GError **error);
/* Inserts every row of the table @old, which an older Garboard made for @kind; a column that it lacks gets what a new record holds. */
gboolean gb_rows_take_over (GbStore *store, GbRecordKind kind, const char *old, GError **error);
void gb_rows_finalize (GbRowStatements *rows);

/* history.c -------------------------------------------------------------------------------------------------------- */

/* So much is remembered; beyond either, the oldest edits are let go. */
#define GB_HISTORY_MAX_EDITS 1000
#define GB_HISTORY_MAX_BYTES (64 * 1024 * 1024)

/* Within an edit's transaction: remembers its changeset. */
gboolean gb_history_add (GbStore *store, const void *changeset, gsize size, GError **error);
void gb_history_forget_words (GbStore *store);

/* changeset.c ------------------------------------------------------------------------------------------------------ */

/* What a changeset changes, or its inversion; NULL if it is not one of ours from end to end. */
GbChanges *gb_changeset_read (GbStore *store, const void *changeset, gsize size, gboolean invert, GError **error);

/* check.c ---------------------------------------------------------------------------------------------------------- */

/* The file's first bytes: is it a database, and Garboard's? Nothing else is looked at before this. */
gboolean gb_check_header (GbStore *store, gint64 *version, GError **error);
/* Of a small file: its pages hang together, and its rows keep the CHECKs. */
gboolean gb_check_pages (GbStore *store, GError **error);

/* links.c ---------------------------------------------------------------------------------------------------------- */

/* No part among those added or moved lies in itself. */
gboolean gb_links_check_cycles (GbStore *store, const GbChanges *changes, GError **error);
/* What was written refers to nothing that is not there, and nothing refers to what was removed. */
gboolean gb_links_check (GbStore *store, const GbChanges *changes, GError **error);
/* Owners and references of a whole boat just read. */
gboolean gb_links_check_boat (GbStore *store, const GbBoat *boat, GError **error);
/* Commits. If a foreign key refuses, the sentence says what needs what, and the transaction is still open. */
gboolean gb_links_commit (GbStore *store, GError **error);
/* The sentence for the row of PRAGMA foreign_key_check that @stmt stands at. */
char *gb_links_describe (GbStore *store, sqlite3_stmt *stmt);

G_END_DECLS
