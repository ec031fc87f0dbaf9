/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/record-list.h"

G_BEGIN_DECLS

/* Where a project finds the items and lists that are alive, to tell them what changed. It holds none of them;
 * they come and go by themselves. Made when the first is. */
typedef struct _GbRecordHub GbRecordHub;

GbRecordHub *gb_record_hub_new (GbProject *project);
void gb_record_hub_free (GbRecordHub *hub);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbRecordHub, gb_record_hub_free)

/* Tells all lists, then all items. */
void gb_record_hub_tell (GbRecordHub *hub, const GbChanges *changes);

GbRecordItem *gb_record_hub_find (GbRecordHub *hub, GbRecordKind kind, gint64 id);
void gb_record_hub_add_item (GbRecordHub *hub, GbRecordItem *item);
void gb_record_hub_remove_item (GbRecordHub *hub, GbRecordItem *item);
void gb_record_hub_add_list (GbRecordHub *hub, GbRecordList *list);
void gb_record_hub_remove_list (GbRecordHub *hub, GbRecordList *list);

/* What an item and a list do when told. */
typedef struct
{
  gboolean restructured[GB_N_RECORDS]; /* rows of that kind came, went or moved */
  GHashTable *owners;                  /* what the parts live in that were changed (set of gint64) */
} GbNews;
void gb_record_item_tell (GbRecordItem *item);
void gb_record_list_tell (GbRecordList *list, const GbNews *news);

G_END_DECLS
