/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-project"

/* The mass history is dear in a large build, so a worker thread finds it, from a copy of the boat.
 *
 *             get_history          the worker is done
 *   NOTHING ---------------> ASKED ------------------> KNOWN
 *      ^                       |                         |
 *      +-----------------------+-------------------------+
 *                  any change: forget (and cancel the worker)
 *
 * Each question has a GCancellable of its own. An answer whose question is no longer the project's is an old
 * one, and dropped. The worker holds no reference to the project, which may be closed at any time. */

#include "project/project-private.h"

typedef struct
{
  GbBoat *boat;
  GWeakRef project;
} Question;

static void
question_free (gpointer data)
{
  Question *question = data;

  gb_boat_free (question->boat);
  g_weak_ref_clear (&question->project);
  g_free (question);
}

static gboolean
is_cancelled (gpointer cancellable)
{
  return g_cancellable_is_cancelled (cancellable);
}

static void
find_on_worker (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Question *question = data;

  g_task_return_pointer (task, gb_history_find (question->boat, is_cancelled, cancellable),
                         (GDestroyNotify) gb_history_free);
}

static void
found_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  GTask *task = G_TASK (result);
  Question *question = g_task_get_task_data (task);
  g_autoptr (GbProject) self = g_weak_ref_get (&question->project);
  g_autoptr (GbHistory) history = g_task_propagate_pointer (task, NULL);

  if (self == NULL || self->history_cancel != g_task_get_cancellable (task) || history == NULL)
    return;
  g_clear_object (&self->history_cancel);
  self->history = g_steal_pointer (&history);
  g_signal_emit_by_name (self, "history-found");
}

static void
ask (GbProject *self)
{
  g_autoptr (GTask) task = NULL;
  Question *question = g_new0 (Question, 1);

  question->boat = gb_boat_copy (self->boat);
  g_weak_ref_init (&question->project, self);
  self->history_cancel = g_cancellable_new ();
  task = g_task_new (NULL, self->history_cancel, found_cb, NULL);
  g_task_set_source_tag (task, ask);
  g_task_set_task_data (task, question, question_free);
  g_task_run_in_thread (task, find_on_worker);
}

const GbHistory *
gb_project_get_history (GbProject *self)
{
  g_return_val_if_fail (GB_IS_PROJECT (self), NULL);

  if (self->history == NULL && self->history_cancel == NULL)
    ask (self);
  return self->history;
}

void
gb_project_forget_history (GbProject *self)
{
  if (self->history_cancel != NULL)
    g_cancellable_cancel (self->history_cancel);
  g_clear_object (&self->history_cancel);
  g_clear_pointer (&self->history, gb_history_free);
}
