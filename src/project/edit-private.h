/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/edit.h"

G_BEGIN_DECLS

typedef struct
{
  GbRecordKind kind;
  gint64 id;
} GbRecordKey;

/* Records to write, in the order of writing (element-type GbRecord), and to delete (of GbRecordKey).
 * Borrowed. */
const GPtrArray *gb_edit_puts (const GbEdit *edit);
const GArray *gb_edit_deletions (const GbEdit *edit);

/* The record as the edit will write it, or NULL where it does not. The caller may change its fields, not its
 * id. */
GbRecord *gb_edit_get (const GbEdit *edit, GbRecordKind kind, gint64 id);
/* As gb_edit_get(); a record of @boat that the edit does not write yet is copied into it first. NULL if there
 * is none. */
GbRecord *gb_edit_touch (GbEdit *edit, const GbBoat *boat, GbRecordKind kind, gint64 id);

/* A record as it will stand after the edit: what the edit writes, else what @boat holds and the edit does not
 * delete. */
const GbRecord *gb_edit_after (const GbEdit *edit, const GbBoat *boat, GbRecordKind kind, gint64 id);

/* Forgets puts that would write what @boat holds already. */
void gb_edit_drop_unchanged (GbEdit *edit, const GbBoat *boat);

/* Hands out real ids to new records, and to every owner, reference and place that means one of them. */
void gb_edit_assign_ids (GbEdit *edit, gint64 (*next_id) (GbRecordKind kind, gpointer data), gpointer data);

/* FALSE with a sentence if the edit would break a rule: a value out of range, an owner or a reference that
 * will not be there, a group in itself, a part that is no group but has parts in it. */
gboolean gb_edit_check (const GbEdit *edit, const GbBoat *boat, GError **error);

G_END_DECLS
