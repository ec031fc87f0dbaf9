/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A disk that fails when it is told to: a layer between SQLite and the system's files. Calls that change a file (write, truncate, sync,
 * delete, the making of a journal) are counted from when a fault is set; the n-th fails, or ends the process. */
typedef enum
{
  FAULT_WRITES, /* the calls that change a file */
  FAULT_READS,
} FaultCalls;

/* From now on SQLite's files in this process go through the layer. */
void fault_install (void);

/* The @n-th of @calls fails, with @code if it is a write; and all after it, if @lasting. A write that fails has written half. */
void fault_set (FaultCalls calls, guint n, int code, gboolean lasting);

/* At the @n-th call the power goes: of what was written since the last sync of each file, some is there, some is not, and some is
 * rubbish, as @seed decides; and the process ends with FAULT_EXIT. */
#define FAULT_EXIT 42
void fault_set_crash (guint n, guint32 seed);

/* No fault any more. TRUE if there was one since it was set. */
gboolean fault_clear (void);

G_END_DECLS
