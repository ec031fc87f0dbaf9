/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/crew-map.h"
#include "project/edit-private.h"
#include "project/project.h"
#include "project/record-hub.h"
#include "project/work.h"
#include "store/store.h"

G_BEGIN_DECLS

struct _GbProject
{
  GObject parent_instance;

  GbStore *store;
  GbBoat *boat;
  GbFindings *findings;
  GDateTime *kept_at;
  guint look_id; /* timeout that looks for changes by other programs */

  /* As last notified. */
  char *title;
  char *undo_words;
  char *redo_words;

  /* What workers find: known, or asked for, or neither. See work.h. */
  GPtrArray *waiting; /* (element-type GbWork) (nullable): for the snapshot */
  GbSnapshot *snapshot; /* that is being taken, while some wait */
  guint snapshot_id;
  GbHistory *history;
  GbWork *history_work;
  GHashTable *studies; /* by condition; see project-study.c */
  GbCrewMap *crew_map; /* as far as it is found */
  GbWork *map_work;    /* kept when it is whole: what it was asked for stands */
  gint64 map_condition, map_load;

  GbRecordHub *hub; /* NULL until a list or an item is wanted */
};

/* As gb_project_apply(), but the edit stays the caller's: its new records have their real ids then. */
gboolean gb_project_apply_keep (GbProject *self, GbEdit *edit, GError **error);

/* The road home that every change takes: the rows that changed are read into the boat, findings are found
 * anew, "changed" is emitted. */
gboolean gb_project_come_home (GbProject *self, const GbChanges *changes, GError **error);

GbRecordHub *gb_project_get_hub (GbProject *self);

void gb_project_forget_history (GbProject *self);
void gb_project_forget_studies (GbProject *self);

G_END_DECLS
