/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-project"

/* The verbs that move and duplicate. */

#include "project/copying.h"
#include "project/project-private.h"
#include "project/siblings.h"
#include "project/words.h"

#include <glib/gi18n-lib.h>

/* Moving ------------------------------------------------------------------------------------------------- */

/* TRUE if @records stand in @owner, side by side in this order, before @before (or before one of themselves):
 * then there is nothing to move. */
static gboolean
stand_there (GbProject *self, const GPtrArray *records, gint64 owner, gint64 before)
{
  const GbRecord *first = records->pdata[0];
  const GPtrArray *siblings = gb_siblings (self->boat, first->kind, owner);
  gboolean before_itself = FALSE;
  guint position;

  if (siblings == NULL || !g_ptr_array_find ((GPtrArray *) siblings, first, &position))
    return FALSE;
  for (guint i = 0; i < records->len; i++, position++)
    {
      if (position == siblings->len || siblings->pdata[position] != records->pdata[i])
        return FALSE;
      before_itself = before_itself || ((const GbRecord *) records->pdata[i])->id == before;
    }
  if (before == 0 || before_itself)
    return before_itself || position == siblings->len;
  return position < siblings->len && ((const GbRecord *) siblings->pdata[position])->id == before;
}

gboolean
gb_project_move (GbProject *self, GbRecordKind kind, const gint64 *ids, guint n_ids, gint64 owner,
                 gint64 before, GError **error)
{
  g_autoptr (GPtrArray) tops = gb_tops (self->boat, kind, ids, n_ids);
  g_autofree char *words = gb_words_move (tops);
  g_autoptr (GbEdit) edit = gb_edit_new (words, kind, 0, NULL);
  g_autoptr (GPtrArray) moved = g_ptr_array_new ();

  g_return_val_if_fail (GB_IS_PROJECT (self), FALSE);

  if (tops->len == 0 || stand_there (self, tops, owner, before))
    return TRUE;
  for (guint i = 0; i < tops->len; i++)
    g_ptr_array_add (moved, gb_edit_touch (edit, self->boat, kind, ((const GbRecord *) tops->pdata[i])->id));
  gb_siblings_place (edit, self->boat, moved, owner, before);
  return gb_project_apply_keep (self, edit, error);
}

/* Duplicating -------------------------------------------------------------------------------------------- */

gboolean
gb_project_duplicate (GbProject *self, GbRecordKind kind, const gint64 *ids, guint n_ids, GArray **copies,
                      GError **error)
{
  g_autoptr (GPtrArray) tops = gb_tops (self->boat, kind, ids, n_ids);
  g_autofree char *words = gb_words_copy (tops);
  g_autoptr (GbEdit) edit = gb_edit_new (words, kind, 0, NULL);
  g_autoptr (GbCopying) copying = gb_copying_new (edit, self->boat, self->boat);
  g_autoptr (GHashTable) copy_of = g_hash_table_new (NULL, NULL);
  g_autoptr (GPtrArray) made = g_ptr_array_new ();

  g_return_val_if_fail (GB_IS_PROJECT (self), FALSE);

  for (guint i = 0; i < tops->len; i++)
    {
      GbRecord *copy = gb_copying_add (copying, tops->pdata[i]);

      gb_copying_rename (copying, copy);
      g_hash_table_insert (copy_of, tops->pdata[i], copy);
      g_ptr_array_add (made, copy);
    }
  gb_copying_finish (copying);
  gb_siblings_place_copies (edit, self->boat, copy_of);
  if (!gb_project_apply_keep (self, edit, error))
    return FALSE;
  gb_copying_hand_out (made, copies);
  return TRUE;
}
