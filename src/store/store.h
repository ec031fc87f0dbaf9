/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/boat.h"
#include "boat/changes.h"

G_BEGIN_DECLS

/* One build's file: a SQLite database that is written at every edit and read distrustfully.
 *
 *              create/open                    begin
 *   (no file) ------------> IDLE ---------------------------> EDITING
 *                            |  ^    commit (durable on disk,    | put, delete
 *                            |  |    changeset in the history)   |
 *                            |  +--------------------------------+
 *                            |  |    rollback (nothing happened) |
 *                            |  +--------------------------------+
 *                            |  ^
 *                            +--+ undo, redo (one transaction each: the changeset, inverted or not, and the history's mark)
 *
 *   A store that was opened to read stays IDLE; begin, undo and redo say why.
 *
 * Undo: each commit's changeset is kept in the table 'history' with its words and place; a mark says how many are done. An edit after
 * an undo lets the undone ones go. The history is bounded; the oldest go first.
 *
 * What changed is read from the changeset, after the commit, and handed out as GbChanges; gb_store_refresh() then reads those rows. */
typedef struct _GbStore GbStore;

typedef enum
{
  GB_STORE_ERROR_NOT_FOUND,
  GB_STORE_ERROR_EXISTS,
  GB_STORE_ERROR_BUSY,      /* another program has it open for writing */
  GB_STORE_ERROR_READ_ONLY, /* file or folder cannot be written, or it was opened to read */
  GB_STORE_ERROR_FULL,      /* no room on the disk */
  GB_STORE_ERROR_NEWER,     /* of a newer Garboard */
  GB_STORE_ERROR_FOREIGN,   /* not a Garboard file */
  GB_STORE_ERROR_DAMAGED,
  GB_STORE_ERROR_IO,
  GB_STORE_ERROR_REFUSED,   /* the edit breaks a rule: a group in itself, a reference to nothing */
} GbStoreError;
#define GB_STORE_ERROR (gb_store_error_quark ())
GQuark gb_store_error_quark (void);

#define GB_STORE_APPLICATION_ID 0x47626f61 /* "Gboa" */
#define GB_STORE_SCHEMA_VERSION 2
#define GB_STORE_MAX_ID G_GINT64_CONSTANT (1000000000000) /* ids are numbers from 1 to this */

/* Writes a new file at @path that holds @boat, all or nothing. Refuses a path that is taken unless @replace. */
gboolean gb_store_create (const char *path, const GbBoat *boat, gboolean replace, GError **error);

/* Opens @path. If it can be read but not written (rights, folder, a newer Garboard, in use elsewhere) and @may_read_only, it is opened
 * to read; gb_store_read_only_reason() then has the sentence. An older file is copied aside ("NAME.v1.garboard") and brought up to this
 * version, without its history; if it cannot be written, what is read is a copy in memory that was. */
GbStore *gb_store_open (const char *path, gboolean may_read_only, GError **error);
void gb_store_close (GbStore *store);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbStore, gb_store_close)

const char *gb_store_path (const GbStore *store);
const char *gb_store_read_only_reason (const GbStore *store); /* NULL if it may be written */

/* Reads everything. */
GbBoat *gb_store_load (GbStore *store, GError **error);

/* One edit. @words say what is done, as Undo will show it ("thickness of Side panel"), cut after 1000 letters;
 * @place where. Both are copied. */
gboolean gb_store_begin (GbStore *store, const char *words, const GbPlace *place, GError **error);
/* Inserts @record if @old is NULL, else updates the columns that differ. The record's id must be set, see gb_store_next_id(). */
gboolean gb_store_put (GbStore *store, const GbRecord *old, const GbRecord *record, GError **error);
/* Deletes a record and what lives in it; references to them become unknown. */
gboolean gb_store_delete (GbStore *store, GbRecordKind kind, gint64 id, GError **error);
/* On error the edit is rolled back. @changes may be NULL; an edit that changed nothing gives an empty list and leaves no history. */
gboolean gb_store_commit (GbStore *store, GbChanges **changes, GError **error);
void gb_store_rollback (GbStore *store);

/* An id that no record of @kind has had in this file while the history remembers. Counts up with each call within an edit. */
gint64 gb_store_next_id (GbStore *store, GbRecordKind kind);

/* NULL if there is nothing to undo or redo. Borrowed until the next edit. */
const char *gb_store_undo_words (GbStore *store);
const char *gb_store_redo_words (GbStore *store);
gboolean gb_store_undo (GbStore *store, GbChanges **changes, GbPlace *place, GError **error);
gboolean gb_store_redo (GbStore *store, GbChanges **changes, GbPlace *place, GError **error);

/* Reads the rows named in @changes into @boat and settles it. */
gboolean gb_store_refresh (GbStore *store, const GbChanges *changes, GbBoat *boat, GError **error);

/* TRUE if another program has changed the file since the last call (PRAGMA data_version). */
gboolean gb_store_changed_elsewhere (GbStore *store);

/* A copy as it stands, by SQLite's backup, with the history. */
gboolean gb_store_save_copy (GbStore *store, const char *path, GError **error);

/* Looks the whole file over: integrity, foreign keys, schema, values within the field table's ranges, cycles. (element-type utf8), one
 * sentence for each fault; empty: sound. (transfer full) */
GPtrArray *gb_store_check (GbStore *store);

G_END_DECLS
