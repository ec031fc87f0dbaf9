/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-field-editor"

#include "field-editor-private.h"

#include <glib/gi18n-lib.h>

#include "boat/outline.h"
#include "boat/quantity.h"
#include "outline-editor.h"

static void
set_all (GbFieldEditor *self, gint64 value)
{
  GbValue whole = GB_VALUE_INTEGER (value);
  g_autoptr (GError) error = NULL;

  if (self->busy || self->project == NULL || self->ids->len == 0)
    return;
  if (!gb_project_set_all (self->project, self->field->kind, (const gint64 *) (gpointer) self->ids->data,
                           self->ids->len, self->field, &whole, &error))
    gb_field_editor_complain (self, error->message);
}

static void
selected_cb (GbFieldEditor *self)
{
  guint selected = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->input));

  if (selected != GTK_INVALID_LIST_POSITION)
    set_all (self, selected);
}

static void
choice_setup_cb (GtkListItemFactory *factory, GtkListItem *list_item)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_list_item_set_child (list_item, label);
}

static void
choice_bind_cb (GtkListItemFactory *factory, GtkListItem *list_item)
{
  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (list_item)),
                      gtk_string_object_get_string (gtk_list_item_get_item (list_item)));
}

/* A long choice must not widen all that it stands in. */
static void
let_shrink (GtkDropDown *drop_down)
{
  g_autoptr (GtkListItemFactory) factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", G_CALLBACK (choice_setup_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (choice_bind_cb), NULL);
  gtk_drop_down_set_factory (drop_down, factory);
}

static void
make_drop_down (GbFieldEditor *self)
{
  g_autoptr (GPtrArray) labels = g_ptr_array_new ();

  for (guint i = 0; i < gb_field_n_choices (self->field); i++)
    g_ptr_array_add (labels, (gpointer) _ (self->field->choices[i].label));
  g_ptr_array_add (labels, NULL);
  self->input = gtk_drop_down_new_from_strings ((const char *const *) labels->pdata);
  let_shrink (GTK_DROP_DOWN (self->input));
  g_signal_connect_swapped (self->input, "notify::selected", G_CALLBACK (selected_cb), self);
}

static void
toggled_cb (GbFieldEditor *self)
{
  if (self->busy)
    return;
  gtk_check_button_set_inconsistent (GTK_CHECK_BUTTON (self->input), FALSE);
  set_all (self, gtk_check_button_get_active (GTK_CHECK_BUTTON (self->input)));
}

static void
make_check (GbFieldEditor *self)
{
  self->input = gtk_check_button_new ();
  gtk_widget_set_halign (self->input, GTK_ALIGN_START);
  g_signal_connect_swapped (self->input, "toggled", G_CALLBACK (toggled_cb), self);
}

static void
show_in_choice (GbFieldEditor *self)
{
  const GbRecord *record = gb_field_editor_first (self);
  gboolean mixed = gb_field_editor_is_mixed (self);
  gint64 value = record != NULL ? gb_field_get_integer (self->field, record) : 0;

  self->busy = TRUE;
  if (GTK_IS_DROP_DOWN (self->input))
    gtk_drop_down_set_selected (GTK_DROP_DOWN (self->input),
                                record == NULL || mixed ? GTK_INVALID_LIST_POSITION : (guint) value);
  else
    {
      gtk_check_button_set_active (GTK_CHECK_BUTTON (self->input), value != 0 && !mixed);
      gtk_check_button_set_inconsistent (GTK_CHECK_BUTTON (self->input), mixed);
    }
  self->busy = FALSE;
}

/* Outlines ----------------------------------------------------------------------------------------------- */

static void
outline_done_cb (GbFieldEditor *self, const char *text)
{
  gb_field_editor_keep (self, text);
}

static void
draw_cb (GbFieldEditor *self)
{
  const GbRecord *record = gb_field_editor_first (self);
  GtkWidget *window;

  if (record == NULL)
    return;
  window = gb_outline_editor_new (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))),
                                  gb_project_get_build (self->project)->units,
                                  gb_field_get_text (self->field, record));
  g_signal_connect_object (window, "done", G_CALLBACK (outline_done_cb), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (window));
}

static void
show_outline (GbFieldEditor *self)
{
  const GbRecord *record = gb_field_editor_first (self);
  const char *text = record != NULL ? gb_field_get_text (self->field, record) : NULL;
  g_autoptr (GbOutline) outline = text != NULL ? gb_outline_parse (text, NULL) : NULL;
  g_autofree char *area = NULL;

  if (outline != NULL)
    area = gb_quantity_format (gb_outline_properties (outline).area, GB_DIM_AREA,
                               gb_project_get_build (self->project)->units);
  gtk_button_set_label (GTK_BUTTON (self->input), area != NULL   ? area
                                                  : text != NULL ? _ ("Mend…")
                                                                 : _ ("Draw…"));
  gtk_widget_set_sensitive (self->input, self->ids->len == 1);
}

static void
make_outline_button (GbFieldEditor *self)
{
  self->input = gtk_button_new ();
  g_signal_connect_swapped (self->input, "clicked", G_CALLBACK (draw_cb), self);
}

/* Which of them it is ------------------------------------------------------------------------------------ */

void
gb_field_editor_make_choice (GbFieldEditor *self)
{
  if (self->field->dim == GB_DIM_OUTLINE)
    make_outline_button (self);
  else if (self->field->dim == GB_DIM_FLAG)
    make_check (self);
  else
    make_drop_down (self);
}

void
gb_field_editor_show_choice (GbFieldEditor *self)
{
  if (self->field->dim == GB_DIM_OUTLINE)
    show_outline (self);
  else
    show_in_choice (self);
}
