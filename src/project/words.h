/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/boat.h"

G_BEGIN_DECLS

/* The words that follow "Undo: ". All translated; free them. */

/* "3 parts" */
char *gb_words_count (GbRecordKind kind, guint n);

/* The record's title; where there are several, their count. A long title is cut. */
char *gb_words_records (const GbBoat *boat, GbRecordKind kind, const gint64 *ids, guint n);
char *gb_words_title (const GbRecord *record);

char *gb_words_set (const GbBoat *boat, const GbField *field, const gint64 *ids, guint n); /* thickness of Side panel */
char *gb_words_add (const GbRecord *draft);                                               /* new part Bottom */
char *gb_words_remove (const GbBoat *boat, GbRecordKind kind, const gint64 *ids, guint n); /* deletion of 3 parts */
char *gb_words_move (const GbBoat *boat, GbRecordKind kind, const gint64 *ids, guint n);   /* move of Frame 2 */
char *gb_words_copy (const GbBoat *boat, GbRecordKind kind, const gint64 *ids, guint n);   /* copy of Frame 2 */

G_END_DECLS
