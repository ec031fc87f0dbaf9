/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/edit.h"

G_BEGIN_DECLS

/* Order among siblings. Positions are real numbers, so that a record goes between two others without touching
 * them; where two have come too close for that, all siblings are numbered anew within the same edit. */

/* Those of @boat that live in @owner (0: in nothing), in order. Borrowed; NULL if there is no such owner. */
const GPtrArray *gb_siblings (const GbBoat *boat, GbRecordKind kind, gint64 owner);

/* The sibling after @record; 0 if it is the last. */
gint64 gb_sibling_after (const GbBoat *boat, const GbRecord *record);

/* The records with these ids in the order of the build, without those that lie below another of them.
 * (element-type GbRecord), borrowed records. (transfer container) */
GPtrArray *gb_tops (const GbBoat *boat, GbRecordKind kind, const gint64 *ids, guint n_ids);

/* Gives @records (of one kind, in the order wanted, all put into @edit already) owner and position, so that
 * they stand in @owner before the sibling @before (0: last). */
void gb_siblings_place (GbEdit *edit, const GbBoat *boat, const GPtrArray *records, gint64 owner,
                        gint64 before);

/* Places each copy right after its original. @copies: from the original in @boat to its copy, which was put
 * into @edit. */
void gb_siblings_place_copies (GbEdit *edit, const GbBoat *boat, GHashTable *copies);

/* Gives each new record of @edit whose position is 0 a place after its last sibling, in the order of the
 * edit. */
void gb_siblings_place_new (GbEdit *edit, const GbBoat *boat);

G_END_DECLS
