/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "records.h"

G_BEGIN_DECLS

/* Which rows an edit, an undo or another program changed. */

typedef enum
{
  GB_CHANGE_ADDED,
  GB_CHANGE_REMOVED,
  GB_CHANGE_MOVED,  /* owner or position; perhaps fields as well */
  GB_CHANGE_FIELDS, /* fields only */
} GbChangeOp;

typedef struct
{
  GbRecordKind kind;
  GbChangeOp op;
  gint64 id;
} GbChange;

typedef struct
{
  GArray *changes; /* of GbChange */
  gboolean all;    /* everything was read afresh: 'changes' is empty */
} GbChanges;

GbChanges *gb_changes_new (void);
void gb_changes_add (GbChanges *changes, GbRecordKind kind, GbChangeOp op, gint64 id);
/* TRUE if any row of @kind is among them, or all. */
gboolean gb_changes_touch (const GbChanges *changes, GbRecordKind kind);
/* TRUE if rows of @kind came, went or moved, or all. */
gboolean gb_changes_restructure (const GbChanges *changes, GbRecordKind kind);
void gb_changes_free (GbChanges *changes);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbChanges, gb_changes_free)

/* Where in the build an edit was, so that undo may go back there. */
typedef struct
{
  GbRecordKind kind;
  gint64 id;         /* 0: nowhere in particular */
  const char *field; /* name out of the field table, static; or NULL */
} GbPlace;

G_END_DECLS
