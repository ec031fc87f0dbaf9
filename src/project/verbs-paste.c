/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-project"

#include "project/verbs-paste.h"

#include "project/copying.h"
#include "project/project-private.h"
#include "project/siblings.h"
#include "project/words.h"
#include "store/text-form.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* A coating may coat a part that is not copied. Such parts come along at the top of the small build, as bare
 * records, to be found by id and name where it is pasted; its notes list them after this mark, so that they
 * are not pasted themselves. */
#define ONLY_NAMED "only referred to:"

/* Copying ------------------------------------------------------------------------------------------------ */

static GbRecord *
carry (GbBoat *clip, const GbRecord *record, gint64 owner, double position)
{
  GbRecord *copy = gb_record_copy (record);

  copy->owner = owner;
  copy->position = position;
  return gb_boat_take (clip, copy);
}

/* Takes what @record refers to into @clip; the parts only by name. */
static void
carry_references (GbBoat *clip, const GbBoat *boat, const GbRecord *record, GString *named)
{
  const GbRecordType *type = gb_record_type (record->kind);

  for (guint i = 0; i < type->n_fields; i++)
    {
      const GbField *field = &type->fields[i];
      gint64 id = field->dim == GB_DIM_REF ? gb_field_get_integer (field, record) : 0;
      const GbRecord *meant = gb_boat_get (boat, field->dim == GB_DIM_REF ? field->refers_to : 0, id);

      if (meant == NULL || gb_boat_get (clip, meant->kind, id) != NULL)
        continue;
      carry (clip, meant, 0, G_MAXINT32);
      if (meant->kind == GB_RECORD_PART)
        g_string_append_printf (named, " %" G_GINT64_FORMAT, id);
      else
        carry_references (clip, boat, meant, named);
      for (guint j = 0; meant->kind == GB_RECORD_MATERIAL && j < gb_record_children (meant)->len; j++)
        carry (clip, gb_record_children (meant)->pdata[j], id, j + 1);
    }
}

char *
gb_project_copy (GbProject *self, const gint64 *ids, guint n_ids)
{
  g_autoptr (GbBoat) clip = gb_boat_new ();
  g_autoptr (GPtrArray) tops = gb_tops (self->boat, GB_RECORD_PART, ids, n_ids);
  const GPtrArray *all = gb_boat_all (self->boat, GB_RECORD_PART);
  g_autoptr (GPtrArray) carried = g_ptr_array_new ();
  g_autoptr (GString) named = g_string_new (ONLY_NAMED);
  GbBuild *build = (GbBuild *) gb_record_copy (&gb_boat_build (self->boat)->rec);

  for (guint i = 0; i < tops->len; i++)
    {
      const GbPart *top = tops->pdata[i];

      g_ptr_array_add (carried, carry (clip, &top->rec, 0, i + 1));
      for (guint j = 1; j <= top->n_below; j++)
        {
          const GbRecord *below = all->pdata[top->rec.index + j];

          g_ptr_array_add (carried, carry (clip, below, below->owner, below->position));
        }
    }
  for (guint i = 0; i < carried->len; i++)
    carry_references (clip, self->boat, carried->pdata[i], named);

  gb_field_set_text (gb_field (GB_RECORD_BUILD, "notes"), &build->rec, named->str);
  gb_boat_take (clip, &build->rec);
  gb_boat_settle (clip);
  return gb_text_form_write (clip);
}

/* Pasting ------------------------------------------------------------------------------------------------ */

gboolean
gb_project_paste_from (GbProject *self, const GbBoat *from, const gint64 *ids, guint n_ids, gint64 owner,
                       gint64 before, GArray **copies, GError **error)
{
  g_autoptr (GPtrArray) tops = gb_tops (from, GB_RECORD_PART, ids, n_ids);
  g_autofree char *words = gb_words_paste (tops);
  g_autoptr (GbEdit) edit = gb_edit_new (words, GB_RECORD_PART, 0, NULL);
  g_autoptr (GPtrArray) made = g_ptr_array_new ();
  g_autoptr (GbCopying) copying = NULL;

  g_return_val_if_fail (GB_IS_PROJECT (self), FALSE);

  copying = gb_copying_new (edit, from, self->boat);
  for (guint i = 0; i < tops->len; i++)
    g_ptr_array_add (made, gb_copying_add (copying, tops->pdata[i]));
  gb_copying_finish (copying);
  gb_siblings_place (edit, self->boat, made, owner, before);
  if (!gb_project_apply_keep (self, edit, error))
    return FALSE;
  gb_copying_hand_out (made, copies);
  return TRUE;
}

/* TRUE if the notes of a small build list @id as only referred to. */
static gboolean
is_only_named (const char *notes, gint64 id)
{
  const char *rest = notes != NULL && g_str_has_prefix (notes, ONLY_NAMED) ? notes + strlen (ONLY_NAMED) : "";

  while (*rest == ' ')
    {
      char *end;

      if (g_ascii_strtoll (rest, &end, 10) == id)
        return TRUE;
      if (end == rest)
        break;
      rest = end;
    }
  return FALSE;
}

gboolean
gb_project_paste (GbProject *self, const char *text, gint64 owner, gint64 before, GArray **copies,
                  GError **error)
{
  g_autoptr (GbBoat) from = gb_text_form_read (text, -1, error);
  g_autoptr (GArray) ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  const GPtrArray *roots;

  if (from == NULL)
    return FALSE;
  roots = gb_boat_roots (from, GB_RECORD_PART);
  for (guint i = 0; i < roots->len; i++)
    {
      const GbRecord *root = roots->pdata[i];

      if (!is_only_named (gb_boat_build (from)->notes, root->id))
        g_array_append_val (ids, root->id);
    }
  if (ids->len == 0)
    {
      g_set_error_literal (error, GB_STORE_ERROR, GB_STORE_ERROR_REFUSED,
                           _ ("There are no parts on the clipboard."));
      return FALSE;
    }
  return gb_project_paste_from (self, from, (const gint64 *) (gpointer) ids->data, ids->len, owner, before,
                                copies, error);
}
