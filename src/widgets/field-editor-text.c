/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-field-editor"

#include "field-editor-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "boat/part-size.h"
#include "boat/quantity.h"

static char *
entry_text (GbFieldEditor *self, const GbRecord *record)
{
  char *text;

  if (!gb_field_has_choices (self->field))
    return gb_field_edit_text (self->field, record, gb_project_get_build (self->project));
  text = gb_field_is_unknown (self->field, record) ? NULL
                                                   : gb_project_display (self->project, self->field, record);
  return text != NULL ? text : g_strdup ("");
}

static void
set_shown (GbFieldEditor *self, char *text)
{
  g_free (self->shown);
  self->shown = text;
}

static char *
text_of_view (GbFieldEditor *self)
{
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (self->input));
  GtkTextIter start, end;

  gtk_text_buffer_get_bounds (buffer, &start, &end);
  return gtk_text_buffer_get_text (buffer, &start, &end, FALSE);
}

static char *
typed_text (GbFieldEditor *self)
{
  return GTK_IS_TEXT_VIEW (self->input) ? text_of_view (self)
                                        : g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->input)));
}

static void
put_text (GbFieldEditor *self, const char *text)
{
  self->busy = TRUE;
  if (GTK_IS_TEXT_VIEW (self->input))
    gtk_text_buffer_set_text (gtk_text_view_get_buffer (GTK_TEXT_VIEW (self->input)), text, -1);
  else
    gtk_editable_set_text (GTK_EDITABLE (self->input), text);
  self->busy = FALSE;
  gb_field_editor_complain (self, NULL);
}

gboolean
gb_field_editor_is_half_typed (GbFieldEditor *self)
{
  g_autofree char *typed = self->shown != NULL ? typed_text (self) : NULL;

  return self->shown != NULL && strcmp (typed, self->shown) != 0;
}

/* What a part has from its stock where it says nothing itself; NULL: nothing. */
static char *
inherited_text (GbFieldEditor *self, const GbRecord *record)
{
  const GbBoat *boat = gb_project_get_boat (self->project);
  g_autoptr (GbRecord) filled = NULL;
  GbPart *part;
  GbPartSize size;

  if (record->kind != GB_RECORD_PART || ((const GbPart *) record)->stock == 0
      || !gb_field_is_unknown (self->field, record))
    return NULL;
  size = gb_part_size (boat, (const GbPart *) record);
  filled = gb_record_copy (record);
  part = (GbPart *) filled;
  part->material = size.material;
  part->width = size.width;
  part->thickness = size.thickness;
  part->diameter = size.diameter;
  part->wall = size.wall;
  part->linear_mass = size.linear_mass;
  part->unit_mass = size.unit_mass;
  return gb_field_is_unknown (self->field, filled) ? NULL
                                                   : gb_project_display (self->project, self->field, filled);
}

void
gb_field_editor_show_text (GbFieldEditor *self)
{
  const GbRecord *record = gb_field_editor_first (self);
  gboolean mixed = gb_field_editor_is_mixed (self);
  g_autofree char *text = record != NULL && !mixed ? entry_text (self, record) : NULL;
  g_autofree char *inherited = record != NULL && !mixed ? inherited_text (self, record) : NULL;

  if (!GTK_IS_TEXT_VIEW (self->input))
    gtk_entry_set_placeholder_text (GTK_ENTRY (self->input), mixed ? _ ("various") : inherited);
  set_shown (self, text != NULL ? g_steal_pointer (&text) : g_strdup (""));
  put_text (self, self->shown);
}

gboolean
gb_field_editor_keep (GbFieldEditor *self, const char *text)
{
  g_autoptr (GError) error = NULL;
  gboolean kept;

  self->busy = TRUE;
  kept = gb_project_enter (self->project, self->field->kind, (const gint64 *) (gpointer) self->ids->data,
                           self->ids->len, self->field, text, &error);
  self->busy = FALSE;
  if (!kept)
    gb_field_editor_complain (self, error->message);
  return kept;
}

gboolean
gb_field_editor_commit (GbFieldEditor *self)
{
  g_autofree char *text = NULL;

  if (self->busy || self->project == NULL || self->ids->len == 0
      || !gb_field_editor_is_half_typed (self))
    return TRUE;
  text = typed_text (self);
  if (!gb_field_editor_keep (self, text))
    return FALSE;
  gb_field_editor_show_text (self);
  return TRUE;
}

static void
activate_cb (GbFieldEditor *self)
{
  if (gb_field_editor_commit (self))
    gtk_widget_child_focus (GTK_WIDGET (gtk_widget_get_root (GTK_WIDGET (self))), GTK_DIR_TAB_FORWARD);
}

/* Another window having the focus is not leaving. */
static void
focus_left_cb (GbFieldEditor *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  if (focus == NULL || !gtk_widget_is_ancestor (focus, GTK_WIDGET (self)))
    gb_field_editor_commit (self);
}

static void
text_changed_cb (GbFieldEditor *self)
{
  if (!self->busy)
    gb_field_editor_complain (self, NULL);
}

static gboolean
key_pressed_cb (GbFieldEditor *self, guint keyval, guint keycode, GdkModifierType state)
{
  if (self->completion != NULL && gb_completion_key (self->completion, keyval, state))
    return GDK_EVENT_STOP;
  if (keyval == GDK_KEY_Escape && gb_field_editor_is_half_typed (self))
    {
      put_text (self, self->shown);
      return GDK_EVENT_STOP;
    }
  return GDK_EVENT_PROPAGATE;
}

/* The list is made when it may be wanted: a large build has long ones. */
static void
fill_choices_cb (GbFieldEditor *self)
{
  if (self->project != NULL)
    gb_completion_set_choices (self->completion, gb_choices_for_field (self->project, self->field), FALSE);
}

static void
watch_text (GbFieldEditor *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  if (self->field->dim == GB_DIM_REF)
    g_signal_connect_swapped (focus, "enter", G_CALLBACK (fill_choices_cb), self);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (focus_left_cb), self);
  gtk_widget_add_controller (self->input, focus);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  gtk_widget_add_controller (self->input, keys);
}

static void
open_list_cb (GbFieldEditor *self)
{
  if (self->project == NULL)
    return;
  gtk_widget_grab_focus (self->input);
  gb_completion_open (self->completion);
}

static void
chosen_cb (GbFieldEditor *self)
{
  gb_field_editor_commit (self);
}

static void
make_entry (GbFieldEditor *self)
{
  self->input = gtk_entry_new ();
  gtk_editable_set_width_chars (GTK_EDITABLE (self->input), 6);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->input), 12);
  if (gb_field_storage (self->field) == GB_STORAGE_REAL || self->field->dim == GB_DIM_MONEY)
    gtk_widget_add_css_class (self->input, "numeric");
  g_signal_connect_swapped (self->input, "activate", G_CALLBACK (activate_cb), self);
  g_signal_connect_swapped (self->input, "changed", G_CALLBACK (text_changed_cb), self);
  watch_text (self);
  if (self->field->dim != GB_DIM_REF)
    return;
  gtk_entry_set_icon_from_icon_name (GTK_ENTRY (self->input), GTK_ENTRY_ICON_SECONDARY, "pan-down-symbolic");
  gtk_entry_set_icon_tooltip_text (GTK_ENTRY (self->input), GTK_ENTRY_ICON_SECONDARY, _ ("Show the list"));
  g_signal_connect_swapped (self->input, "icon-press", G_CALLBACK (open_list_cb), self);
  self->completion = gb_completion_new (GTK_WIDGET (self), GTK_EDITABLE (self->input));
  g_signal_connect_swapped (self->completion, "chosen", G_CALLBACK (chosen_cb), self);
}

static void
make_text_view (GbFieldEditor *self)
{
  self->input = gtk_text_view_new ();
  gtk_text_view_set_wrap_mode (GTK_TEXT_VIEW (self->input), GTK_WRAP_WORD_CHAR);
  gtk_text_view_set_accepts_tab (GTK_TEXT_VIEW (self->input), FALSE);
  g_object_set (self->input, "top-margin", 6, "bottom-margin", 6, "left-margin", 6, "right-margin", 6, NULL);
  self->outside = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (self->outside), 72);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->outside), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->outside), self->input);
  gtk_widget_add_css_class (self->outside, "gb-note");
  g_signal_connect_swapped (gtk_text_view_get_buffer (GTK_TEXT_VIEW (self->input)), "changed",
                            G_CALLBACK (text_changed_cb), self);
  watch_text (self);
}

void
gb_field_editor_make_text (GbFieldEditor *self)
{
  if (self->field->dim == GB_DIM_NOTE)
    make_text_view (self);
  else
    make_entry (self);
}
