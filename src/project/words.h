/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/boat.h"

G_BEGIN_DECLS

/* The words that follow "Undo: ". All translated; free them. */

/* "3 parts" */
char *gb_words_count (GbRecordKind kind, guint n);

/* A record's title, cut if it is long. */
char *gb_words_title (const GbRecord *record);
/* The title of one; of several, all of one kind, their count. */
char *gb_words_records (const GPtrArray *records);

char *gb_words_set (const GbField *field, const GPtrArray *records); /* thickness of Side panel */
char *gb_words_add (const GbRecord *draft);                          /* new part Bottom */
char *gb_words_remove (const GPtrArray *records);                    /* deletion of 3 parts */
char *gb_words_move (const GPtrArray *records);                      /* move of Frame 2 */
char *gb_words_copy (const GPtrArray *records);                      /* copy of Frame 2 */
char *gb_words_paste (const GPtrArray *records);                     /* paste of 3 parts */

G_END_DECLS
