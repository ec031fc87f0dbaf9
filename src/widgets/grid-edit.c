/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-grid-edit"

/* One entry at a time. It starts in a cell, and ends by being kept, refused (the editor stays and the cell
 * says why), or let go:
 *
 *   none --start--> open --commit--> kept: none
 *                    ^  `--commit--> refused: open, with a complaint
 *                    `-- typing takes the complaint back
 *                   open --cancel, or its row goes--> none
 */

#include "grid-private.h"

#include <string.h>

#include "boat/quantity.h"

gboolean
gb_grid_is_editing (GbGrid *self)
{
  return self->edit_cell != NULL && gb_cell_is_editing (self->edit_cell);
}

static void
forget_edit (GbGrid *self)
{
  GbCell *cell = self->edit_cell;

  g_clear_weak_pointer (&self->edit_cell);
  g_clear_object (&self->edit_row);
  g_clear_pointer (&self->edit_start, g_free);
  self->edit_column = NULL;
  if (cell != NULL)
    gb_cell_stop (cell);
}

static void
drop_draft (GbGrid *self)
{
  if (self->rows != NULL)
    gb_grid_rows_clear_draft (self->rows);
}

void
gb_grid_cancel_edit (GbGrid *self)
{
  gboolean was_draft = self->edit_row != NULL && gb_grid_row_is_draft (self->edit_row);

  forget_edit (self);
  if (was_draft)
    drop_draft (self);
}

/* Starting ----------------------------------------------------------------------------------------------- */

static char *
start_text (GbGrid *self, const GbColumn *column, const GbRecord *record)
{
  const GbField *field;

  if (record == NULL)
    return g_strdup ("");
  if (column->spec != NULL && column->spec->edit_text != NULL)
    return column->spec->edit_text (self, record);
  field = gb_grid_cell_field (self, column, record);
  if (gb_field_has_choices (field))
    {
      char *text
        = gb_field_is_unknown (field, record) ? NULL : gb_project_display (self->project, field, record);

      return text != NULL ? text : g_strdup ("");
    }
  return gb_field_edit_text (field, record, gb_project_get_build (self->project));
}

static GPtrArray *
choices (GbGrid *self, const GbColumn *column, const GbRecord *record, gboolean *strict)
{
  const GbField *field;

  *strict = FALSE;
  if (record == NULL)
    return self->type->add_choices != NULL ? self->type->add_choices (self) : NULL;
  if (column->spec != NULL && column->spec->choices != NULL)
    return column->spec->choices (self, record);
  field = gb_grid_cell_field (self, column, record);
  if (field == NULL || !gb_field_has_choices (field))
    return NULL;
  *strict = field->dim == GB_DIM_CHOICE;
  return gb_choices_for_field (self->project, field);
}

gboolean
gb_grid_start_edit (GbGrid *self, guint position, guint column_index, const char *initial)
{
  g_autoptr (GbGridRow) row = gb_grid_dup_row (self, position);
  GbColumn *column = gb_grid_column (self, column_index);
  const GbRecord *record;
  g_autofree char *text = NULL;
  GPtrArray *offered;
  gboolean strict;
  GbCell *cell;

  if (!gb_grid_commit (self))
    {
      gtk_widget_grab_focus (gb_cell_get_editor (self->edit_cell));
      return FALSE;
    }
  if (row == NULL || column == NULL || !gb_grid_can_edit (self, column, row))
    return FALSE;
  gb_grid_scroll_to (self, position, column_index);
  cell = gb_grid_cell_at (self, position, column_index);
  if (cell == NULL)
    return FALSE;

  record = gb_grid_row_get_record (row);
  text = start_text (self, column, record);
  offered = choices (self, column, record, &strict);
  g_set_weak_pointer (&self->edit_cell, cell);
  self->edit_row = g_object_ref (row);
  self->edit_column = column;
  self->edit_start = initial == NULL ? g_strdup (text) : NULL;
  gb_grid_set_cursor (self, cell);
  gb_cell_edit (cell, initial != NULL ? initial : text, offered, strict);
  if (initial == NULL && strict)
    gb_cell_open_choices (cell);
  return TRUE;
}

/* Ending ------------------------------------------------------------------------------------------------- */

/* The records that the entry goes to: all selected ones that have the field, if the edited one is among them.
 */
static GArray *
targets (GbGrid *self)
{
  gint64 own = gb_grid_row_get_id (self->edit_row);
  GArray *ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  g_autofree gint64 *selected = NULL;
  gboolean among = FALSE;
  guint n;

  selected = gb_grid_dup_selected (self, &n);
  for (guint i = 0; i < n; i++)
    {
      const GbRecord *record
        = gb_boat_get (gb_project_get_boat (self->project), self->type->kind, selected[i]);
      const GbField *field = gb_grid_cell_field (self, self->edit_column, record);
      g_autofree char *text = NULL;

      if (field == NULL && self->edit_column->spec != NULL && self->edit_column->spec->enter != NULL)
        text = self->edit_column->spec->edit_text (self, record);
      if (field != NULL || text != NULL)
        g_array_append_val (ids, selected[i]);
      among = among || selected[i] == own;
    }
  if (!among)
    {
      g_array_set_size (ids, 0);
      g_array_append_val (ids, own);
    }
  return ids;
}

static gboolean
enter (GbGrid *self, const char *text, GError **error)
{
  const GbRecord *record = gb_grid_row_get_record (self->edit_row);
  const GbGridColumn *spec = self->edit_column->spec;
  g_autoptr (GArray) ids = NULL;

  if (record->kind == GB_RECORD_BUILD)
    return gb_project_enter (self->project, GB_RECORD_BUILD, &record->id, 1,
                             gb_field (GB_RECORD_BUILD, "name"), text, error);
  ids = targets (self);
  if (spec != NULL && spec->enter != NULL)
    return spec->enter (self, (const gint64 *) ids->data, ids->len, text,
                        gb_cell_get_chosen (self->edit_cell), error);
  return gb_project_enter (self->project, self->type->kind, (const gint64 *) ids->data, ids->len,
                           self->edit_column->field, text, error);
}

static gboolean
refuse (GbGrid *self, const GError *error)
{
  gb_cell_complain (self->edit_cell, error->message);
  return FALSE;
}

/* A blank or a draft becomes a record, which takes over the cursor. */
static gboolean
commit_new (GbGrid *self, const char *text)
{
  g_autofree char *name = g_strstrip (g_strdup (text));
  g_autoptr (GError) error = NULL;
  GbGridSpot spot = gb_grid_row_get_spot (self->edit_row);
  GbPartKind kind = gb_grid_row_get_part_kind (self->edit_row);
  gint64 id;

  if (*name == '\0')
    {
      gb_grid_cancel_edit (self);
      return TRUE;
    }
  id = self->type->add (self, name, gb_cell_get_chosen (self->edit_cell), spot, kind, &error);
  if (id == 0)
    return refuse (self, error);
  gb_grid_cancel_edit (self);
  gb_grid_go_to (self, self->type->kind, id, self->type->main_column, TRUE);
  return TRUE;
}

static gboolean
commit (GbGrid *self)
{
  g_autofree char *text = g_strdup (gb_cell_get_entry (self->edit_cell));
  g_autoptr (GError) error = NULL;

  if (gb_grid_row_is_blank (self->edit_row))
    return commit_new (self, text);
  if (gb_grid_row_get_record (self->edit_row) != NULL && g_strcmp0 (text, self->edit_start) != 0
      && !enter (self, text, &error))
    return refuse (self, error);
  forget_edit (self);
  return TRUE;
}

gboolean
gb_grid_commit (GbGrid *self)
{
  gboolean kept;

  if (!gb_grid_is_editing (self) || self->committing)
    return TRUE;
  self->committing = TRUE;
  kept = commit (self);
  self->committing = FALSE;
  return kept;
}

void
gb_grid_editor_left_cb (GbCell *cell, GbGrid *self)
{
  if (cell == self->edit_cell)
    gb_grid_commit (self);
}

/* A flag has no editor: it is on or off. */
static void
toggle_flag (GbGrid *self, guint position, guint column_index)
{
  g_autoptr (GbGridRow) row = gb_grid_dup_row (self, position);
  GbColumn *column = gb_grid_column (self, column_index);
  const GbRecord *record = row != NULL ? gb_grid_row_get_record (row) : NULL;
  g_autoptr (GArray) ids = NULL;
  g_autoptr (GError) error = NULL;
  GbValue value;

  if (record == NULL || !gb_grid_can_edit (self, column, row))
    return;
  value = GB_VALUE_INTEGER (gb_field_get_integer (column->field, record) == 0);
  self->edit_row = g_object_ref (row);
  self->edit_column = column;
  ids = targets (self);
  if (!gb_project_set_all (self->project, self->type->kind, (const gint64 *) ids->data, ids->len,
                           column->field, &value, &error))
    gb_grid_refuse (self, g_steal_pointer (&error));
  forget_edit (self);
}

void
gb_grid_open_cell (GbGrid *self, guint position, guint column_index)
{
  const GbField *field = gb_grid_column (self, column_index)->field;

  if (field != NULL && field->dim == GB_DIM_FLAG)
    toggle_flag (self, position, column_index);
  else
    gb_grid_start_edit (self, position, column_index, NULL);
}
