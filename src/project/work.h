/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/project.h"
#include "project/snapshot.h"

G_BEGIN_DECLS

/* A question about the boat as it stands that a worker thread answers.
 *
 *   gb_work_start ---> waits for the snapshot ---> on a worker ---> 'found'
 *         \                       \                    \
 *          +-----------------------+--------------------+--> gb_work_drop: nothing of it lands any more
 *
 * Who asks keeps the work until it is found or no longer wanted, and drops it at every change of the boat. So
 * what lands is never old. A worker holds no reference to the project, which may be closed at any time. */
typedef struct _GbWork GbWork;

typedef struct
{
  gboolean needs_snapshot;                            /* FALSE: all that it takes is in the question */
  gpointer (*find) (GbWork *work, gpointer question); /* on the worker; NULL where there is no answer */
  void (*progress) (GbProject *project, gpointer question, gpointer take_part); /* NULL: none is told */
  void (*found) (GbProject *project, gpointer question,
                 gpointer take_answer);      /* not called without an answer */
  GDestroyNotify free_question, free_answer; /* parts are freed as answers are */
} GbWorkType;

/* Takes @question. The result is the caller's, to be dropped. */
GbWork *gb_work_start (GbProject *project, const GbWorkType *type, gpointer question);
/* Cancels it. NULL is nothing. */
void gb_work_drop (GbWork *work);

/* On the worker: */
GbSnapshot *gb_work_snapshot (GbWork *work);   /* borrowed */
gboolean gb_work_is_cancelled (gpointer work); /* a GbCancelFunc */
/* Hands an answer that is not whole to 'progress'. One that has not been seen before the next comes is let
 * go. */
void gb_work_tell (GbWork *work, gpointer take_part);

/* Lets go of the works that wait for a snapshot, for the boat changes. */
void gb_project_forget_waiting (GbProject *self);

G_END_DECLS
