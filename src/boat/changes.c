/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "changes.h"

GbChanges *
gb_changes_new (void)
{
  GbChanges *changes = g_new0 (GbChanges, 1);

  changes->changes = g_array_new (FALSE, FALSE, sizeof (GbChange));
  return changes;
}

void
gb_changes_add (GbChanges *changes, GbRecordKind kind, GbChangeOp op, gint64 id)
{
  GbChange change = { kind, op, id };

  g_array_append_val (changes->changes, change);
}

static gboolean
has (const GbChanges *changes, GbRecordKind kind, gboolean structure_only)
{
  if (changes->all)
    return TRUE;
  for (guint i = 0; i < changes->changes->len; i++)
    {
      const GbChange *change = &g_array_index (changes->changes, GbChange, i);

      if (change->kind == kind && !(structure_only && change->op == GB_CHANGE_FIELDS))
        return TRUE;
    }
  return FALSE;
}

gboolean
gb_changes_touch (const GbChanges *changes, GbRecordKind kind)
{
  return has (changes, kind, FALSE);
}

gboolean
gb_changes_restructure (const GbChanges *changes, GbRecordKind kind)
{
  return has (changes, kind, TRUE);
}

void
gb_changes_free (GbChanges *changes)
{
  if (changes == NULL)
    return;
  g_array_unref (changes->changes);
  g_free (changes);
}
