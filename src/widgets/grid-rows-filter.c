/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-grid-rows-filter"

#include "grid-rows-private.h"

#include <string.h>

static gboolean
holds (const char *text, const char *folded)
{
  g_autofree char *other = text != NULL ? g_utf8_casefold (text, -1) : NULL;

  return other != NULL && strstr (other, folded) != NULL;
}

/* TRUE if a text of @record, or the name of what it refers to, holds @folded. */
static gboolean
record_holds (const GbBoat *boat, const GbRecord *record, const char *folded)
{
  const GbRecordType *type = gb_record_type (record->kind);

  for (guint i = 0; i < type->n_fields; i++)
    {
      const GbField *field = &type->fields[i];

      if (field->dim == GB_DIM_TEXT || field->dim == GB_DIM_NOTE)
        {
          if (holds (gb_field_get_text (field, record), folded))
            return TRUE;
        }
      else if (field->dim == GB_DIM_REF && gb_field_applies (field, record))
        {
          const GbRecord *other = gb_boat_get (boat, field->refers_to, gb_field_get_integer (field, record));
          g_autofree char *title = other != NULL ? gb_record_dup_title (other) : NULL;

          if (holds (title, folded))
            return TRUE;
        }
    }
  return FALSE;
}

void
gb_grid_rows_apply_filter (GbGridRows *self)
{
  const GPtrArray *records = gb_grid_rows_records (self);
  g_autofree gboolean *shown = NULL;
  g_autofree char *folded = NULL;

  g_clear_pointer (&self->hidden, g_hash_table_unref);
  if (self->filter == NULL)
    return;

  self->hidden = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  folded = g_utf8_casefold (self->filter, -1);
  shown = g_new0 (gboolean, records->len);
  for (guint i = 0; i < records->len; i++)
    shown[i] = record_holds (gb_project_get_boat (self->project), records->pdata[i], folded);
  if (gb_grid_rows_is_tree (self))
    for (guint i = records->len; i > 0; i--) /* backwards, so that groups come after what is in them */
      {
        const GbRecord *record = records->pdata[i - 1];
        const GbRecord *group
          = gb_boat_get (gb_project_get_boat (self->project), GB_RECORD_PART, record->owner);

        if (shown[i - 1] && group != NULL)
          shown[group->index] = TRUE;
      }
  for (guint i = 0; i < records->len; i++)
    if (!shown[i])
      g_hash_table_add (self->hidden, gb_grid_rows_copy_key (((const GbRecord *) records->pdata[i])->id));
}
