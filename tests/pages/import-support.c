/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "import-support.h"

#include "pages/import-dialog.h"
#include "pages/import-preview.h"

/* The dialog ------------------------------------------------------------------------------------------------------------ */

static GType
dialog_type (void)
{
  return g_type_from_name ("GbImportDialog");
}

GtkWindow *
import_find_dialog (void)
{
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; dialog_type () != 0 && i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (windows, i);

      if (G_TYPE_CHECK_INSTANCE_TYPE (window, dialog_type ()))
        return window;
    }
  return NULL;
}

gpointer
import_child (const ImportFixture *fixture, const char *name)
{
  return gtk_widget_get_template_child (GTK_WIDGET (fixture->dialog), dialog_type (), name);
}

GFile *
import_write_file (Support *support, const char *name, const char *text, gssize length)
{
  g_autofree char *path = g_build_filename (support->folder, name, NULL);
  g_autoptr (GError) error = NULL;

  g_file_set_contents (path, text, length, &error);
  g_assert_no_error (error);
  return g_file_new_for_path (path);
}

gboolean
import_shows_table (const ImportFixture *fixture)
{
  return g_str_equal (gtk_stack_get_visible_child_name (import_child (fixture, "stack")), "table")
         && !gtk_spinner_get_spinning (import_child (fixture, "spinner"));
}

void
import_open_dialog (ImportFixture *fixture, Support *support, GbRecordKind kind, const char *text)
{
  g_autoptr (GFile) file = import_write_file (support, "table.csv", text, -1);

  fixture->support = support;
  gb_import_dialog_present (support->window, support->project, kind, file);
  fixture->dialog = import_find_dialog ();
  g_assert_nonnull (fixture->dialog);
  support_until (import_shows_table (fixture));
  support_until (gtk_widget_get_mapped (GTK_WIDGET (fixture->dialog)));
  gtk_window_present (fixture->dialog);
  support_until (gtk_window_is_active (fixture->dialog));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (fixture->dialog));
}

void
import_picture (const ImportFixture *fixture, const char *name)
{
  GtkWindow *window = fixture->support->window;

  fixture->support->window = fixture->dialog;
  support_picture (fixture->support, name);
  fixture->support->window = window;
}

/* What is shown --------------------------------------------------------------------------------------------------------- */

const char *
import_words (const ImportFixture *fixture, const char *name)
{
  return gtk_label_get_text (import_child (fixture, name));
}

static GtkWidget *
nth_child (GtkWidget *widget, guint n)
{
  GtkWidget *found = gtk_widget_get_first_child (widget);

  for (; found != NULL && n > 0; n--)
    found = gtk_widget_get_next_sibling (found);
  g_assert_nonnull (found);
  return found;
}

GtkWidget *
import_list (const ImportFixture *fixture)
{
  return gtk_widget_get_last_child (GTK_WIDGET (gb_import_preview_get_view (import_child (fixture, "preview"))));
}

/* The text of a cell in the @row that is shown as the nth from the top. */
const char *
import_cell_text (const ImportFixture *fixture, guint row, guint column)
{
  GtkWidget *cell = gtk_widget_get_first_child (nth_child (nth_child (import_list (fixture), row), column));

  if (column >= IMPORT_FIRST)
    return gtk_inscription_get_text (GTK_INSCRIPTION (cell));
  return gtk_label_get_text (GTK_LABEL (column == IMPORT_LINE ? gtk_widget_get_last_child (cell) : cell));
}

gboolean
import_is_marked (const ImportFixture *fixture, guint row)
{
  GtkWidget *line = gtk_widget_get_first_child (nth_child (nth_child (import_list (fixture), row), IMPORT_LINE));
  GtkImage *image = GTK_IMAGE (gtk_widget_get_first_child (line));

  return gtk_widget_has_css_class (line, "refused") && g_str_equal (gtk_image_get_icon_name (image), "dialog-warning-symbolic");
}

guint
import_n_rows (const ImportFixture *fixture)
{
  return g_list_model_get_n_items (G_LIST_MODEL (gtk_column_view_get_model (gb_import_preview_get_view (import_child (fixture, "preview")))));
}

GbImportHead *
import_head (const ImportFixture *fixture, guint column)
{
  return GB_IMPORT_HEAD (gb_import_preview_get_head (import_child (fixture, "preview"), column));
}

static const char *
selected_text (GtkDropDown *drop_down)
{
  return gtk_string_object_get_string (gtk_drop_down_get_selected_item (drop_down));
}

const char *
import_field_of (const ImportFixture *fixture, guint column)
{
  return selected_text (gb_import_head_get_field_input (import_head (fixture, column)));
}

/* The unit of a column that has one to choose; NULL if not. */
const char *
import_unit_of (const ImportFixture *fixture, guint column)
{
  GtkDropDown *input = gb_import_head_get_unit_input (import_head (fixture, column));

  return gtk_widget_get_visible (GTK_WIDGET (input)) ? selected_text (input) : NULL;
}

void
import_choose (GtkDropDown *drop_down, const char *text)
{
  GListModel *model = gtk_drop_down_get_model (drop_down);

  for (guint i = 0; i < g_list_model_get_n_items (model); i++)
    {
      g_autoptr (GtkStringObject) item = g_list_model_get_item (model, i);

      if (g_str_equal (gtk_string_object_get_string (item), text))
        {
          gtk_drop_down_set_selected (drop_down, i);
          return;
        }
    }
  g_error ("there is no %s to choose", text);
}

void
import_choose_field (const ImportFixture *fixture, guint column, const char *label)
{
  import_choose (gb_import_head_get_field_input (import_head (fixture, column)), label);
  support_until (import_shows_table (fixture));
}

void
import_choose_unit (const ImportFixture *fixture, guint column, const char *unit)
{
  import_choose (gb_import_head_get_unit_input (import_head (fixture, column)), unit);
  support_until (import_shows_table (fixture));
}

/* Opens the list of the drop-down that has the focus, and waits until it takes the keys. */
void
import_open_list (const ImportFixture *fixture, GtkDropDown *drop_down)
{
  GtkWidget *list = support_find (GTK_WIDGET (drop_down), GTK_TYPE_POPOVER);

  support_keys (fixture->support, "space");
  support_until (gtk_widget_get_mapped (list));
  support_until (gtk_window_get_focus (fixture->dialog) != NULL
                 && gtk_widget_is_ancestor (gtk_window_get_focus (fixture->dialog), list));
}

guint
import_n_listed (GtkDropDown *drop_down)
{
  GtkListView *list = GTK_LIST_VIEW (support_find (GTK_WIDGET (drop_down), GTK_TYPE_LIST_VIEW));

  return g_list_model_get_n_items (G_LIST_MODEL (gtk_list_view_get_model (list)));
}
