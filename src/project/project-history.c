/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-project"

/* The mass history is dear in a large build, so a worker thread finds it; see work.h. */

#include "project/project-private.h"

static gpointer
find_history (GbWork *work, gpointer question)
{
  return gb_history_find (gb_snapshot_boat (gb_work_snapshot (work)), gb_work_is_cancelled, work);
}

static void
history_found (GbProject *self, gpointer question, gpointer history)
{
  g_clear_pointer (&self->history_work, gb_work_drop);
  self->history = history;
  g_signal_emit_by_name (self, "history-found");
}

static const GbWorkType history_type = {
  .needs_snapshot = TRUE,
  .find = find_history,
  .found = history_found,
  .free_question = g_free,
  .free_answer = (GDestroyNotify) gb_history_free,
};

const GbHistory *
gb_project_get_history (GbProject *self)
{
  g_return_val_if_fail (GB_IS_PROJECT (self), NULL);

  if (self->history == NULL && self->history_work == NULL)
    self->history_work = gb_work_start (self, &history_type, NULL);
  return self->history;
}

void
gb_project_forget_history (GbProject *self)
{
  g_clear_pointer (&self->history_work, gb_work_drop);
  g_clear_pointer (&self->history, gb_history_free);
}
