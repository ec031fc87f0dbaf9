/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-grid-clipboard"

/* Rows on the clipboard come in two coats: for Garboard a small build in text form, so that nothing is lost
 * on the way to another window; for spreadsheets tab-separated rows. */

#include "grid-private.h"

#include <string.h>

#include "project/verbs-paste.h"

#define PRIVATE_TYPE "application/x-garboard-parts+json"

/* Copying ------------------------------------------------------------------------------------------------ */

/* The columns that are shown, as they are shown. */
static char *
shown_as_text (GbGrid *self, const gint64 *ids, guint n_ids)
{
  g_autoptr (GArray) shown = gb_grid_shown_columns (self);
  GString *text = g_string_new (NULL);

  for (guint c = 0; c < shown->len; c++)
    {
      GbColumn *column = gb_grid_column (self, g_array_index (shown, guint, c));

      g_string_append_printf (text, "%s%s", c > 0 ? "\t" : "",
                              gtk_column_view_column_get_title (column->view_column));
    }
  g_string_append_c (text, '\n');
  for (guint i = 0; i < n_ids; i++)
    {
      g_autoptr (GbGridRow) row = NULL;
      guint position;

      if (!gb_grid_rows_find (self->rows, self->type->kind, ids[i], &position))
        continue;
      row = gb_grid_dup_row (self, position);
      for (guint c = 0; c < shown->len; c++)
        {
          g_auto (GbCellLook) look = { NULL };

          gb_grid_look (self, gb_grid_column (self, g_array_index (shown, guint, c)), row, &look);
          g_string_append_printf (text, "%s%s", c > 0 ? "\t" : "",
                                  look.text != NULL ? g_strdelimit (look.text, "\t\n", ' ') : "");
        }
      g_string_append_c (text, '\n');
    }
  return g_string_free (text, FALSE);
}

char *
gb_grid_rows_as_text (GbGrid *self, const gint64 *ids, guint n_ids)
{
  return self->type->write_rows != NULL ? self->type->write_rows (self->project, ids, n_ids)
                                        : shown_as_text (self, ids, n_ids);
}

void
gb_grid_copy (GbGrid *self)
{
  g_autofree gint64 *ids = NULL;
  g_autofree char *text = NULL;
  g_autoptr (GdkContentProvider) content = NULL;
  GdkContentProvider *coats[2];
  guint n, n_coats = 0;

  if (self->project == NULL || !gb_grid_commit (self))
    return;
  ids = gb_grid_dup_selected_tops (self, &n);
  if (n == 0)
    return;
  if (self->type->kind == GB_RECORD_PART)
    {
      char *form = gb_project_copy (self->project, ids, n);
      g_autoptr (GBytes) bytes = g_bytes_new_take (form, strlen (form));

      coats[n_coats++] = gdk_content_provider_new_for_bytes (PRIVATE_TYPE, bytes);
    }
  text = gb_grid_rows_as_text (self, ids, n);
  coats[n_coats++] = gdk_content_provider_new_typed (G_TYPE_STRING, text);
  content = gdk_content_provider_new_union (coats, n_coats);
  gdk_clipboard_set_content (gtk_widget_get_clipboard (GTK_WIDGET (self)), content);
}

void
gb_grid_cut (GbGrid *self)
{
  gb_grid_copy (self);
  gb_grid_remove (self);
}

/* Pasting ------------------------------------------------------------------------------------------------ */

/* Where the rows go is settled when they are asked for; they come a moment later. */
typedef struct
{
  GbGrid *grid;
  GbProject *project;
  GbGridSpot spot;
  guint position, column; /* of the cell at hand, for a single word */
} Paste;

static Paste *
paste_new (GbGrid *self)
{
  Paste *paste = g_new0 (Paste, 1);
  GbCell *cell = gb_grid_focus_cell (self);

  paste->grid = g_object_ref (self);
  paste->project = g_object_ref (self->project);
  paste->spot = gb_grid_spot_at_hand (self);
  paste->position = cell != NULL ? gb_cell_get_position (cell) : GTK_INVALID_LIST_POSITION;
  paste->column = cell != NULL ? gb_cell_get_column (cell) : 0;
  return paste;
}

static void
paste_free (Paste *paste)
{
  g_object_unref (paste->grid);
  g_object_unref (paste->project);
  g_free (paste);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Paste, paste_free)

static gboolean
still_wanted (const Paste *paste)
{
  return paste->grid->project == paste->project;
}

static void
paste_parts (const Paste *paste, const char *form)
{
  g_autoptr (GArray) copies = NULL;
  g_autoptr (GError) error = NULL;

  if (gb_project_paste (paste->project, form, paste->spot.owner,
                        gb_grid_sibling_after (paste->grid, paste->spot), &copies, &error))
    gb_grid_go_to_all (paste->grid, (const gint64 *) (gpointer) copies->data, copies->len);
  else
    gb_grid_refuse (paste->grid, g_steal_pointer (&error));
}

static void
parts_spliced_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (Paste) paste = user_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = NULL;
  g_autofree char *form = NULL;

  if (g_output_stream_splice_finish (G_OUTPUT_STREAM (source), result, &error) < 0)
    {
      gb_grid_refuse (paste->grid, g_steal_pointer (&error));
      return;
    }
  bytes = g_memory_output_stream_steal_as_bytes (G_MEMORY_OUTPUT_STREAM (source));
  form = g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
  if (still_wanted (paste))
    paste_parts (paste, form);
}

static void
parts_read_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (Paste) paste = user_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GInputStream) stream = gdk_clipboard_read_finish (GDK_CLIPBOARD (source), result, NULL, &error);
  g_autoptr (GOutputStream) memory = NULL;

  if (stream == NULL)
    {
      gb_grid_refuse (paste->grid, g_steal_pointer (&error));
      return;
    }
  memory = g_memory_output_stream_new_resizable ();
  g_output_stream_splice_async (memory, stream,
                                G_OUTPUT_STREAM_SPLICE_CLOSE_SOURCE | G_OUTPUT_STREAM_SPLICE_CLOSE_TARGET,
                                G_PRIORITY_DEFAULT, NULL, parts_spliced_cb, g_steal_pointer (&paste));
}

/* A single word goes into the cell at hand; anything with tabs or several lines is rows. */
static void
text_read_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (Paste) paste = user_data;
  g_autoptr (GError) error = NULL;
  g_autofree char *text = gdk_clipboard_read_text_finish (GDK_CLIPBOARD (source), result, &error);
  GbGrid *self = paste->grid;

  if (text == NULL || !still_wanted (paste))
    return;
  g_strchomp (text);
  if (strpbrk (text, "\t\n") == NULL && paste->position != GTK_INVALID_LIST_POSITION)
    gb_grid_start_edit (self, paste->position, paste->column, text);
  else if (self->type->read_rows != NULL && !self->type->read_rows (self, text, paste->spot, &error))
    gb_grid_refuse (self, g_steal_pointer (&error));
}

void
gb_grid_paste (GbGrid *self)
{
  GdkClipboard *clipboard = gtk_widget_get_clipboard (GTK_WIDGET (self));
  const char *types[] = { PRIVATE_TYPE, NULL };

  if (self->project == NULL || gb_project_get_read_only_reason (self->project) != NULL
      || !gb_grid_commit (self))
    return;
  if (self->type->kind == GB_RECORD_PART
      && gdk_content_formats_contain_mime_type (gdk_clipboard_get_formats (clipboard), PRIVATE_TYPE))
    gdk_clipboard_read_async (clipboard, types, G_PRIORITY_DEFAULT, NULL, parts_read_cb, paste_new (self));
  else
    gdk_clipboard_read_text_async (clipboard, NULL, text_read_cb, paste_new (self));
}
