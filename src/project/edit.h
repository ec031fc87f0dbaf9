/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/boat.h"
#include "boat/changes.h"

G_BEGIN_DECLS

/* A change that is being put together: records to write, records to delete, and the words that Undo will
 * show. A new record has id 0 or a provisional id below 0, by which other records of the same edit may refer
 * to it (owner and references); the real ids are handed out when the edit is applied. A new record whose
 * position is 0 goes last among its siblings. */
typedef struct _GbEdit GbEdit;

/* "Undo: @words". The words say the thing, not the verb alone: "thickness of Side panel". @kind, @id and
 * @field (may be NULL) say where the edit is; with @id 0 it is where its first record is. */
GbEdit *gb_edit_new (const char *words, GbRecordKind kind, gint64 id, const char *field);
void gb_edit_free (GbEdit *edit);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbEdit, gb_edit_free)

/* Takes ownership of @record. Returns the provisional id (below 0) of a new record, else its id. A record
 * that was put before is replaced. */
gint64 gb_edit_put (GbEdit *edit, GbRecord *record);
void gb_edit_delete (GbEdit *edit, GbRecordKind kind, gint64 id);

const char *gb_edit_words (const GbEdit *edit);
const GbPlace *gb_edit_place (const GbEdit *edit);
guint gb_edit_n_puts (const GbEdit *edit);

G_END_DECLS
