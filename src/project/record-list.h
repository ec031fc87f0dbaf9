/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/project.h"

G_BEGIN_DECLS

/* The records of a project as list models.
 *
 *   GbProject ---> GbRecordList (a GListModel) ---> GbRecordItem ---> gb_record_item_get_children() ...
 *
 * There is one GbRecordItem for a record, however many lists show it, and it stays the same while anyone
 * holds it: through edits, moves, and a deletion that is undone. Rows that come, go or move are told by the
 * smallest "items-changed" (a row that moves goes and comes; very many scattered changes are told as one).
 * Values that changed are told by notify::version of the items. First all lists are brought up to date, then
 * versions are notified, then the project's "changed" is emitted.
 *
 * A tree: gtk_tree_list_model_new() on the children of the boat's item, with gb_record_item_get_children() as
 * its create function (with a new reference). A part that becomes a group, or the other way round, is told as
 * removed and added, so that the tree asks again. */

#define GB_TYPE_RECORD_ITEM (gb_record_item_get_type ())
G_DECLARE_FINAL_TYPE (GbRecordItem, gb_record_item, GB, RECORD_ITEM, GObject)

/* The item of a record (transfer full). For the boat: GB_RECORD_BUILD, 1. */
GbRecordItem *gb_record_item_get (GbProject *project, GbRecordKind kind, gint64 id);

GbProject *gb_record_item_get_project (GbRecordItem *self);
GbRecordKind gb_record_item_get_kind (GbRecordItem *self);
gint64 gb_record_item_get_id (GbRecordItem *self);

/* As the boat holds it now: borrowed until the project's next "changed". NULL once the record is gone. */
const GbRecord *gb_record_item_get_record (GbRecordItem *self);

/* Property "version" (read-only): counts up whenever anything that is shown of the record may have changed:
 * its own fields, the name of something that it refers to, what is found of it (mass, cost). */
guint gb_record_item_get_version (GbRecordItem *self);

/* What lives in the record, made at the first call, borrowed: parts of a group and of the boat, samples of a
 * material, stations of a hull, offsets, readings, loads, lines. NULL where nothing can: a part that is no
 * group, stock, ... */
GListModel *gb_record_item_get_children (GbRecordItem *self);

#define GB_TYPE_RECORD_LIST (gb_record_list_get_type ())
G_DECLARE_FINAL_TYPE (GbRecordList, gb_record_list, GB, RECORD_LIST, GObject)

/* Those of @kind that live in the record @owner; for 0 those that live in nothing. In the builder's order. If
 * the owner goes, the list is empty. */
GbRecordList *gb_record_list_new (GbProject *project, GbRecordKind kind, gint64 owner);
/* All of @kind, whatever they live in; parts depth first. */
GbRecordList *gb_record_list_new_all (GbProject *project, GbRecordKind kind);

/* FALSE if @id is not in it. @position may be NULL. */
gboolean gb_record_list_find (GbRecordList *self, gint64 id, guint *position);
/* The id of the row at @position; 0 past the end. Makes no item. */
gint64 gb_record_list_get_id (GbRecordList *self, guint position);

G_END_DECLS
