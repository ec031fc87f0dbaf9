/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-project"

/* The verbs that set a field, add and delete. */

#include "boat/quantity.h"
#include "project/names.h"
#include "project/project-private.h"
#include "project/siblings.h"
#include "project/words.h"

#include <glib/gi18n-lib.h>

/* Setting ------------------------------------------------------------------------------------------------ */

/* The records with these ids, or NULL with a sentence if one of them is gone. */
static GPtrArray *
find_all (GbProject *self, GbRecordKind kind, const gint64 *ids, guint n_ids, GError **error)
{
  g_autoptr (GPtrArray) records = g_ptr_array_new ();

  for (guint i = 0; i < n_ids; i++)
    {
      GbRecord *record = gb_boat_get (self->boat, kind, ids[i]);

      if (record == NULL)
        {
          g_set_error_literal (error, GB_STORE_ERROR, GB_STORE_ERROR_REFUSED,
                               _ ("What is to be changed is no longer in this build."));
          return NULL;
        }
      g_ptr_array_add (records, record);
    }
  return g_steal_pointer (&records);
}

static GbEdit *
new_setting (const GbField *field, const GPtrArray *records)
{
  g_autofree char *words = gb_words_set (field, records);

  return gb_edit_new (words, field->kind, records->len > 0 ? ((const GbRecord *) records->pdata[0])->id : 0,
                      field->name);
}

static gboolean
apply_setting (GbProject *self, GbEdit *edit, const GbField *field, const GPtrArray *records,
               const GbValue *value, GError **error)
{
  for (guint i = 0; i < records->len; i++)
    gb_field_set (field,
                  gb_edit_touch (edit, self->boat, field->kind, ((const GbRecord *) records->pdata[i])->id),
                  value);
  return gb_project_apply_keep (self, edit, error);
}

gboolean
gb_project_set_all (GbProject *self, GbRecordKind kind, const gint64 *ids, guint n_ids, const GbField *field,
                    const GbValue *value, GError **error)
{
  g_autoptr (GPtrArray) records = NULL;
  g_autoptr (GbEdit) edit = NULL;

  g_return_val_if_fail (GB_IS_PROJECT (self), FALSE);
  g_return_val_if_fail (field->kind == kind && value->storage == gb_field_storage (field), FALSE);

  records = find_all (self, kind, ids, n_ids, error);
  if (records == NULL)
    return FALSE;
  edit = new_setting (field, records);
  return apply_setting (self, edit, field, records, value, error);
}

gboolean
gb_project_set (GbProject *self, GbRecordKind kind, gint64 id, const GbField *field, const GbValue *value,
                GError **error)
{
  return gb_project_set_all (self, kind, &id, 1, field, value, error);
}

/* TRUE if @text is what an editor showed at its start for every record: then nothing was entered, and a
 * number is not rounded to what was shown of it, nor a name looked up that others share. */
static gboolean
is_as_shown (GbProject *self, const GbField *field, const GPtrArray *records, const char *text)
{
  for (guint i = 0; i < records->len; i++)
    {
      g_autofree char *shown = field->dim == GB_DIM_REF
                                 ? gb_project_display (self, field, records->pdata[i])
                                 : gb_field_edit_text (field, records->pdata[i], gb_boat_build (self->boat));

      if (g_strcmp0 (shown, text) != 0)
        return FALSE;
    }
  return TRUE;
}

gboolean
gb_project_enter (GbProject *self, GbRecordKind kind, const gint64 *ids, guint n_ids, const GbField *field,
                  const char *text, GError **error)
{
  g_autoptr (GPtrArray) records = NULL;
  g_autoptr (GbEdit) edit = NULL;
  g_auto (GbValue) value = gb_field_unknown (field);
  gboolean read;

  g_return_val_if_fail (GB_IS_PROJECT (self), FALSE);
  g_return_val_if_fail (field->kind == kind, FALSE);

  records = find_all (self, kind, ids, n_ids, error);
  if (records == NULL)
    return FALSE;
  if (is_as_shown (self, field, records, text))
    return TRUE;
  edit = new_setting (field, records);
  if (field->dim == GB_DIM_REF)
    read = gb_names_read (self->boat, field, text, edit, &value.integer, error);
  else
    read = gb_field_parse (field, text, gb_boat_build (self->boat), &value, error);
  return read && apply_setting (self, edit, field, records, &value, error);
}

/* Adding ------------------------------------------------------------------------------------------------- */

gint64
gb_project_add (GbProject *self, GbRecord *draft, gint64 owner, gint64 before, GError **error)
{
  g_autofree char *words = gb_words_add (draft);
  g_autoptr (GbEdit) edit = gb_edit_new (words, draft->kind, 0, NULL);
  g_autoptr (GPtrArray) drafts = g_ptr_array_new ();

  g_return_val_if_fail (GB_IS_PROJECT (self), 0);

  draft->id = 0;
  gb_edit_put (edit, draft);
  g_ptr_array_add (drafts, draft);
  gb_siblings_place (edit, self->boat, drafts, owner, before);
  return gb_project_apply_keep (self, edit, error) ? draft->id : 0;
}

static void
take_fields (GbPart *part, const GbPart *above, const char *const *names)
{
  for (; *names != NULL; names++)
    {
      const GbField *field = gb_field (GB_RECORD_PART, *names);
      g_auto (GbValue) value = gb_field_get (field, &above->rec);

      gb_field_set (field, &part->rec, &value);
    }
}

/* What a new part takes from the one above it, by its take-off. */
static void
take_start (GbPart *part, const GbPart *above)
{
  static const char *const common[] = { "takeoff", "stock", "material", "thickness", "category", NULL };
  static const char *const of_length[] = { "section", "width", "diameter", "wall", "linear_mass", NULL };
  static const char *const of_coating[] = { "coating", "coats", "coverage", "resin", "resin_ratio", NULL };

  take_fields (part, above, common);
  if (above->takeoff == GB_TAKEOFF_LENGTH)
    take_fields (part, above, of_length);
  else if (above->takeoff == GB_TAKEOFF_COATING)
    take_fields (part, above, of_coating);
}

/* The part that a new one comes to stand under: @after, else the last in @owner. NULL if there is none, or if
 * it is a group. */
static const GbPart *
part_above (GbProject *self, gint64 owner, gint64 after)
{
  const GPtrArray *siblings = gb_siblings (self->boat, GB_RECORD_PART, owner);
  const GbPart *above = gb_boat_part (self->boat, after);

  if (above == NULL && siblings != NULL && siblings->len > 0)
    above = siblings->pdata[siblings->len - 1];
  return above != NULL && above->kind == GB_KIND_PART ? above : NULL;
}

gint64
gb_project_add_part (GbProject *self, const char *name, GbPartKind kind, gint64 owner, gint64 after,
                     GError **error)
{
  GbPart *part = (GbPart *) gb_record_new (GB_RECORD_PART);
  const GbRecord *sibling;
  const GbPart *above;

  g_return_val_if_fail (GB_IS_PROJECT (self), 0);

  sibling = gb_boat_get (self->boat, GB_RECORD_PART, after);
  above = part_above (self, owner, after);
  part->name = g_strstrip (g_strdup (name));
  part->kind = kind;
  if (kind == GB_KIND_GROUP)
    part->x = part->z = 0; /* the origin of its axes, which are the boat's until it is said otherwise */
  else if (above != NULL)
    take_start (part, above);
  return gb_project_add (self, &part->rec, owner,
                         sibling != NULL ? gb_sibling_after (self->boat, sibling) : 0, error);
}

/* Deleting ----------------------------------------------------------------------------------------------- */

gboolean
gb_project_remove (GbProject *self, GbRecordKind kind, const gint64 *ids, guint n_ids, GError **error)
{
  g_autoptr (GPtrArray) tops = gb_tops (self->boat, kind, ids, n_ids);
  g_autofree char *words = gb_words_remove (tops);
  g_autoptr (GbEdit) edit = gb_edit_new (words, kind, 0, NULL);

  g_return_val_if_fail (GB_IS_PROJECT (self), FALSE);

  for (guint i = 0; i < tops->len; i++)
    gb_edit_delete (edit, kind, ((const GbRecord *) tops->pdata[i])->id);
  return gb_project_apply_keep (self, edit, error);
}
