/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-project"

#include "project/project-private.h"
#include "project/work.h"

/* How long the window may stand still for a piece of the snapshot. */
#define MICROSECONDS_AT_ONCE 2000

struct _GbWork
{
  gatomicrefcount count;
  const GbWorkType *type;
  gpointer question;
  GWeakRef project;
  GCancellable *cancellable;
  GMainContext *context; /* that it was asked in, and where its answer lands */
  GbSnapshot *snapshot;  /* NULL: not needed */
  gboolean is_found;     /* read and written where it was asked */

  GMutex lock;
  gpointer part; /* the latest that has not been seen; a source is under way to show it */
};

static GbWork *
work_ref (GbWork *self)
{
  g_atomic_ref_count_inc (&self->count);
  return self;
}

static void
work_unref (gpointer data)
{
  GbWork *self = data;

  if (!g_atomic_ref_count_dec (&self->count))
    return;
  if (self->part != NULL)
    self->type->free_answer (self->part);
  self->type->free_question (self->question);
  g_clear_pointer (&self->snapshot, gb_snapshot_unref);
  g_weak_ref_clear (&self->project);
  g_object_unref (self->cancellable);
  g_main_context_unref (self->context);
  g_mutex_clear (&self->lock);
  g_free (self);
}

gboolean
gb_work_is_cancelled (gpointer work)
{
  return g_cancellable_is_cancelled (((GbWork *) work)->cancellable);
}

GbSnapshot *
gb_work_snapshot (GbWork *work)
{
  return work->snapshot;
}

/* On the worker and back --------------------------------------------------------------------------------- */

/* Gives an answer, or a part of one, to the project if it is still wanted there. */
static void
land (GbWork *self, void (*show) (GbProject *project, gpointer question, gpointer take_answer),
      gpointer take_answer)
{
  g_autoptr (GbProject) project = g_weak_ref_get (&self->project);

  if (project == NULL || gb_work_is_cancelled (self))
    self->type->free_answer (take_answer);
  else
    show (project, self->question, take_answer);
}

static void
find_on_worker (GTask *task, gpointer source, gpointer work, GCancellable *cancellable)
{
  GbWork *self = work;
  gpointer answer = self->type->find (self, self->question);

  /* Here and not in the window, for a large one takes its time. */
  g_clear_pointer (&self->snapshot, gb_snapshot_unref);
  g_task_return_pointer (task, answer, self->type->free_answer);
}

static void
found_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  GbWork *self = g_task_get_task_data (G_TASK (result));
  gpointer answer = g_task_propagate_pointer (G_TASK (result), NULL);

  self->is_found = TRUE;
  if (answer != NULL)
    land (self, self->type->found, answer);
}

static gboolean
part_cb (gpointer work)
{
  GbWork *self = work;
  gpointer part;

  g_mutex_lock (&self->lock);
  part = g_steal_pointer (&self->part);
  g_mutex_unlock (&self->lock);
  if (self->is_found)
    self->type->free_answer (part);
  else
    land (self, self->type->progress, part);
  return G_SOURCE_REMOVE;
}

void
gb_work_tell (GbWork *self, gpointer take_part)
{
  g_autoptr (GSource) source = NULL;
  gpointer unseen;

  g_mutex_lock (&self->lock);
  unseen = self->part;
  self->part = take_part;
  g_mutex_unlock (&self->lock);
  if (unseen != NULL)
    {
      self->type->free_answer (unseen); /* the source that was to show it shows the new one */
      return;
    }
  source = g_idle_source_new ();
  g_source_set_priority (source, G_PRIORITY_DEFAULT);
  g_source_set_callback (source, part_cb, work_ref (self), work_unref);
  g_source_attach (source, self->context);
}

static void
run (GbWork *self)
{
  g_autoptr (GTask) task = g_task_new (NULL, self->cancellable, found_cb, NULL);

  g_task_set_source_tag (task, run);
  g_task_set_task_data (task, work_ref (self), work_unref);
  g_task_run_in_thread (task, find_on_worker);
}

/* Waiting for the snapshot ------------------------------------------------------------------------------- */

static void
run_waiting (GbProject *self)
{
  for (guint i = 0; i < self->waiting->len; i++)
    {
      GbWork *work = self->waiting->pdata[i];

      if (gb_work_is_cancelled (work))
        continue;
      work->snapshot = gb_snapshot_ref (self->snapshot);
      run (work);
    }
}

static gboolean
copy_cb (gpointer project)
{
  GbProject *self = project;

  if (!gb_snapshot_take_more (self->snapshot, self->boat, MICROSECONDS_AT_ONCE))
    return G_SOURCE_CONTINUE;
  run_waiting (self);
  self->snapshot_id = 0;
  gb_project_forget_waiting (self);
  return G_SOURCE_REMOVE;
}

static void
wait_for_snapshot (GbProject *self, GbWork *work)
{
  if (self->waiting == NULL)
    {
      self->waiting = g_ptr_array_new_with_free_func (work_unref);
      self->snapshot = gb_snapshot_new ();
      self->snapshot_id = g_idle_add (copy_cb, self);
    }
  g_ptr_array_add (self->waiting, work_ref (work));
}

static void
unref_on_worker (GTask *task, gpointer source, gpointer snapshot, GCancellable *cancellable)
{
  gb_snapshot_unref (snapshot);
}

void
gb_project_forget_waiting (GbProject *self)
{
  g_autoptr (GTask) task = NULL;

  if (self->waiting == NULL)
    return;
  g_clear_handle_id (&self->snapshot_id, g_source_remove);
  g_clear_pointer (&self->waiting, g_ptr_array_unref);
  task = g_task_new (NULL, NULL, NULL, NULL);
  g_task_set_source_tag (task, gb_project_forget_waiting);
  g_task_set_task_data (task, g_steal_pointer (&self->snapshot), NULL);
  g_task_run_in_thread (task, unref_on_worker);
}

GbWork *
gb_work_start (GbProject *project, const GbWorkType *type, gpointer question)
{
  GbWork *self = g_new0 (GbWork, 1);

  g_atomic_ref_count_init (&self->count);
  self->type = type;
  self->question = question;
  self->cancellable = g_cancellable_new ();
  self->context = g_main_context_ref_thread_default ();
  g_weak_ref_init (&self->project, project);
  g_mutex_init (&self->lock);
  if (type->needs_snapshot)
    wait_for_snapshot (project, self);
  else
    run (self);
  return self;
}

void
gb_work_drop (GbWork *work)
{
  if (work == NULL)
    return;
  g_cancellable_cancel (work->cancellable);
  work_unref (work);
}
