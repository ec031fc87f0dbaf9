/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/edit-private.h"
#include "project/project.h"
#include "project/record-hub.h"
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

  /* The mass history: known, or asked for, or neither. See project-history.c. */
  GbHistory *history;
  GCancellable *history_cancel;

  GbRecordHub *hub; /* NULL until a list or an item is wanted */
};

/* As gb_project_apply(), but the edit stays the caller's: its new records have their real ids then. */
gboolean gb_project_apply_keep (GbProject *self, GbEdit *edit, GError **error);

/* The road home that every change takes: the rows that changed are read into the boat, findings are found
 * anew, "changed" is emitted. */
gboolean gb_project_come_home (GbProject *self, const GbChanges *changes, GError **error);

GbRecordHub *gb_project_get_hub (GbProject *self);

void gb_project_forget_history (GbProject *self);

G_END_DECLS
