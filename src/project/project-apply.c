/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-project"

/* Edits, undo and redo on their way into the file. */

#include "project/buying.h"
#include "project/project-private.h"
#include "project/siblings.h"
#include "project/stocking.h"

#include <glib/gi18n-lib.h>

static gboolean
refuse_read_only (GbProject *self, GError **error)
{
  const char *reason = gb_store_read_only_reason (self->store);

  if (reason == NULL)
    return FALSE;
  g_set_error_literal (error, GB_STORE_ERROR, GB_STORE_ERROR_READ_ONLY, reason);
  return TRUE;
}

/* An edit that was put together from rows which another program has changed since would undo those changes.
 */
static gboolean
refuse_stale (GbProject *self, GError **error)
{
  if (!gb_project_look_elsewhere (self))
    return FALSE;
  g_set_error_literal (
    error, GB_STORE_ERROR, GB_STORE_ERROR_REFUSED,
    _ ("Another program has just changed this build. It has been read afresh; please do that once more."));
  return TRUE;
}

static gint64
next_id (GbRecordKind kind, gpointer store)
{
  return gb_store_next_id (store, kind);
}

static gboolean
write_records (GbProject *self, GbEdit *edit, GError **error)
{
  const GPtrArray *puts = gb_edit_puts (edit);
  const GArray *deletions = gb_edit_deletions (edit);

  for (guint i = 0; i < puts->len; i++)
    {
      const GbRecord *record = puts->pdata[i];

      if (!gb_store_put (self->store, gb_boat_get (self->boat, record->kind, record->id), record, error))
        return FALSE;
    }
  for (guint i = 0; i < deletions->len; i++)
    {
      const GbRecordKey *key = &g_array_index (deletions, GbRecordKey, i);

      if (gb_boat_get (self->boat, key->kind, key->id) != NULL
          && !gb_store_delete (self->store, key->kind, key->id, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
write_edit (GbProject *self, GbEdit *edit, GbChanges **changes, GError **error)
{
  const GbPlace *place;

  /* Ids are handed out first: the place that the history keeps may be a new record. */
  gb_edit_assign_ids (edit, next_id, self->store);
  place = gb_edit_place (edit);
  if (!gb_store_begin (self->store, gb_edit_words (edit), place, error))
    return FALSE;
  if (!write_records (self, edit, error))
    {
      gb_store_rollback (self->store);
      return FALSE;
    }
  return gb_store_commit (self->store, changes, error);
}

static void
mark_kept (GbProject *self)
{
  g_clear_pointer (&self->kept_at, g_date_time_unref);
  self->kept_at = g_date_time_new_now_local ();
}

gboolean
gb_project_apply_keep (GbProject *self, GbEdit *edit, GError **error)
{
  g_autoptr (GbChanges) changes = NULL;

  if (refuse_read_only (self, error) || refuse_stale (self, error))
    return FALSE;
  gb_stocking_complete (edit, self->boat);
  gb_buying_complete (edit, self->boat, self->findings);
  gb_siblings_place_new (edit, self->boat);
  gb_edit_drop_unchanged (edit, self->boat);
  if (gb_edit_n_puts (edit) == 0 && gb_edit_deletions (edit)->len == 0)
    return TRUE;
  if (!gb_edit_check (edit, self->boat, error) || !write_edit (self, edit, &changes, error))
    return FALSE;
  mark_kept (self);
  return gb_project_come_home (self, changes, error);
}

gboolean
gb_project_apply (GbProject *self, GbEdit *edit, GError **error)
{
  g_autoptr (GbEdit) consumed = edit;

  g_return_val_if_fail (GB_IS_PROJECT (self), FALSE);
  return gb_project_apply_keep (self, consumed, error);
}

typedef gboolean (*Step) (GbStore *store, GbChanges **changes, GbPlace *place, GError **error);

static gboolean
step_history (GbProject *self, Step step, GError **error)
{
  g_autoptr (GbProject) held G_GNUC_UNUSED = g_object_ref (self); /* a handler may close it */
  g_autoptr (GbChanges) changes = NULL;
  GbPlace place = { 0 };

  if (refuse_read_only (self, error))
    return FALSE;
  gb_project_look_elsewhere (self);
  if (!step (self->store, &changes, &place, error))
    return FALSE;
  mark_kept (self);
  if (!gb_project_come_home (self, changes, error))
    return FALSE;
  g_signal_emit_by_name (self, "place", &place);
  return TRUE;
}

gboolean
gb_project_undo (GbProject *self, GError **error)
{
  return step_history (self, gb_store_undo, error);
}

gboolean
gb_project_redo (GbProject *self, GError **error)
{
  return step_history (self, gb_store_redo, error);
}
