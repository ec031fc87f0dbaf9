/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "boat/boat.h"
#include "boat/changes.h"
#include "engine/findings.h"
#include "engine/history.h"
#include "project/edit.h"

G_BEGIN_DECLS

/* The living document: one file, the boat that it holds, and what is found of it. All edits go in by
 * gb_project_apply() (the named verbs build a GbEdit and call it), and all changes come out by the signal
 *
 *   "changed" (GbChanges *changes)   rows changed, the boat and the findings are fresh
 *
 * whoever made them: an edit here, undo, redo, or another program. Further signals:
 *
 *   "place" (const GbPlace *place)   after undo and redo: where the edit was
 *   "history-found" ()               the mass history is there, see gb_project_get_history()
 *   "study-found" (gint64 condition) there is more of a study or of the crew map, see project-study.h
 *
 * and properties: "can-undo", "can-redo", "undo-words", "redo-words", "title", "read-only".
 *
 * More verbs: verbs-weigh.h, verbs-buy.h, verbs-paste.h. As list models: record-list.h. */
#define GB_TYPE_PROJECT (gb_project_get_type ())
G_DECLARE_FINAL_TYPE (GbProject, gb_project, GB, PROJECT, GObject)

/* Opens a file; see gb_store_open(). */
GbProject *gb_project_open (const char *path, gboolean may_read_only, GError **error);
/* Creates @path holding @boat (or an empty build if NULL) and opens it. */
GbProject *gb_project_create (const char *path, const GbBoat *boat, GError **error);

const GbBoat *gb_project_get_boat (GbProject *self);
const GbBuild *gb_project_get_build (GbProject *self);
const GbFindings *gb_project_get_findings (GbProject *self);
const char *gb_project_get_path (GbProject *self);
const char *gb_project_get_title (GbProject *self);            /* the build's name */
const char *gb_project_get_read_only_reason (GbProject *self); /* NULL if it may be edited */
GDateTime *
gb_project_get_kept_at (GbProject *self); /* when the last edit was on disk; NULL before the first */

/* The mass history; NULL until the worker has found it for the boat as it stands. Asking starts the worker.
 */
const GbHistory *gb_project_get_history (GbProject *self);

/* One undoable change. FALSE with a sentence, and nothing happened. The edit is consumed.
 * Beside what the edit says: a line that buys moves what it buys for from planned to bought, see verbs-buy.h;
 * a part that is given other stock takes material, thickness or section from there, see stocking.h. An edit
 * that changes nothing is none: TRUE, and there is nothing to undo. */
gboolean gb_project_apply (GbProject *self, GbEdit *edit, GError **error);

/* Verbs. Each is one undo and makes its own words. */
gboolean gb_project_set (GbProject *self, GbRecordKind kind, gint64 id, const GbField *field,
                         const GbValue *value, GError **error);
/* The same value in several records. */
gboolean gb_project_set_all (GbProject *self, GbRecordKind kind, const gint64 *ids, guint n_ids,
                             const GbField *field, const GbValue *value, GError **error);
/* Reads @text as what was typed into a cell: unit entry, a choice's label, or for references the name of a
 * record, which for materials may also come from the catalogue and is then copied into the build within the
 * same undo; a budget head that is not there is made. Where two parts share a name, the group's name and a
 * slash before it tell them apart. Sets it in all @ids. */
gboolean gb_project_enter (GbProject *self, GbRecordKind kind, const gint64 *ids, guint n_ids,
                           const GbField *field, const char *text, GError **error);

/* Adds @draft (consumed) into @owner, before the sibling @before (0: last). Returns its id, or 0. */
gint64 gb_project_add (GbProject *self, GbRecord *draft, gint64 owner, gint64 before, GError **error);
/* A new part called @name after the sibling @after (0: last in @owner), which takes the material, take-off,
 * thickness and section of the part above as its start. */
gint64 gb_project_add_part (GbProject *self, const char *name, GbPartKind kind, gint64 owner, gint64 after,
                            GError **error);
gboolean gb_project_remove (GbProject *self, GbRecordKind kind, const gint64 *ids, guint n_ids,
                            GError **error);
/* Moves into @owner before the sibling @before (0: last), keeping their order. Refuses a group into itself.
 */
gboolean gb_project_move (GbProject *self, GbRecordKind kind, const gint64 *ids, guint n_ids, gint64 owner,
                          gint64 before, GError **error);
/* Copies with all that lives in them, each after its original; a copy of a part is planned, whatever the
 * state of its original. The ids of the copies go to @copies (may be NULL; g_array of gint64). */
gboolean gb_project_duplicate (GbProject *self, GbRecordKind kind, const gint64 *ids, guint n_ids,
                               GArray **copies, GError **error);

gboolean gb_project_undo (GbProject *self, GError **error);
gboolean gb_project_redo (GbProject *self, GError **error);
const char *gb_project_get_undo_words (GbProject *self); /* NULL: nothing to undo */
const char *gb_project_get_redo_words (GbProject *self);

gboolean gb_project_save_copy (GbProject *self, const char *path, GError **error);
/* (element-type utf8) (transfer full): see gb_store_check(). */
GPtrArray *gb_project_check (GbProject *self);

/* Looks whether another program has changed the file, and if so reads it afresh and emits "changed" for all.
 * Done every second while a main loop runs. TRUE if it had. */
gboolean gb_project_look_elsewhere (GbProject *self);

/* Shows a field as a page does: references by the name of what they mean. Free it. */
char *gb_project_display (GbProject *self, const GbField *field, const GbRecord *record);

/* Today as a Julian day, by the local clock. */
gint64 gb_today (void);

G_END_DECLS
