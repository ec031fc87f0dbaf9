/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-outline-editor"

#include "outline-editor.h"

#include <glib/gi18n-lib.h>

#include "boat/quantity.h"
#include "outline-view.h"

struct _GbOutlineEditor
{
  AdwWindow parent_instance;
  GbUnits units;

  GtkTextBuffer *buffer;
  GtkTextView *lines;
  GtkWidget *drawing_frame;
  GtkWidget *drawing;
  GtkLabel *unit_label;
  GtkLabel *words; /* what is wrong, or the area */
  GtkImage *words_icon;
  GtkWidget *keep_button;
  gboolean busy; /* one view is being filled from the other */
};

enum
{
  DONE,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (GbOutlineEditor, gb_outline_editor, ADW_TYPE_WINDOW)

static void
say (GbOutlineEditor *self, const char *sentence, gboolean sound)
{
  gtk_label_set_text (self->words, sentence);
  gtk_widget_set_visible (GTK_WIDGET (self->words_icon), !sound);
  gtk_widget_set_sensitive (self->keep_button, sound);
}

/* Says what the outline comes to, or why it cannot be kept. Without any points it is kept as none. */
static void
judge (GbOutlineEditor *self)
{
  g_autofree char *text = gb_shape_to_text (gb_outline_view_get_shape (GB_OUTLINE_VIEW (self->drawing)));
  g_autoptr (GError) error = NULL;
  g_autoptr (GbOutline) outline = NULL;
  g_autofree char *area = NULL;
  g_autofree char *edge = NULL;
  g_autofree char *sentence = NULL;
  GbOutlineProperties properties;

  if (*text == '\0')
    {
      say (self, _ ("Click where the corners are, or type them."), TRUE);
      return;
    }
  outline = gb_outline_parse (text, &error);
  if (outline == NULL)
    {
      say (self, error->message, FALSE);
      return;
    }
  properties = gb_outline_properties (outline);
  area = gb_quantity_format (properties.area, GB_DIM_AREA, self->units);
  edge = gb_quantity_format (properties.perimeter, GB_DIM_LENGTH, self->units);
  /* Translators: %1$s is an area, %2$s the length of the edges. */
  sentence = g_strdup_printf (_ ("%1$s, edges %2$s"), area, edge);
  say (self, sentence, TRUE);
}

static void
lines_changed_cb (GbOutlineEditor *self)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;
  GtkTextIter start, end;
  GbShape *shape;

  if (self->busy)
    return;
  gtk_text_buffer_get_bounds (self->buffer, &start, &end);
  text = gtk_text_buffer_get_text (self->buffer, &start, &end, FALSE);
  shape = gb_shape_from_lines (text, self->units, &error);
  if (shape == NULL)
    {
      say (self, error->message, FALSE);
      return;
    }
  gb_outline_view_set_shape (GB_OUTLINE_VIEW (self->drawing), shape);
  judge (self);
}

static void
drawing_edited_cb (GbOutlineEditor *self)
{
  g_autofree char *lines
    = gb_shape_to_lines (gb_outline_view_get_shape (GB_OUTLINE_VIEW (self->drawing)), self->units);

  self->busy = TRUE;
  gtk_text_buffer_set_text (self->buffer, lines, -1);
  self->busy = FALSE;
  judge (self);
}

static void
keep_cb (GbOutlineEditor *self)
{
  g_autofree char *text = gb_shape_to_text (gb_outline_view_get_shape (GB_OUTLINE_VIEW (self->drawing)));

  g_signal_emit (self, signals[DONE], 0, text);
  gtk_window_close (GTK_WINDOW (self));
}

static void
gb_outline_editor_class_init (GbOutlineEditorClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  signals[DONE] = g_signal_new ("done", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 1, G_TYPE_STRING);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/garboard/Garboard/outline-editor.ui");
  gtk_widget_class_bind_template_child (widget_class, GbOutlineEditor, lines);
  gtk_widget_class_bind_template_child (widget_class, GbOutlineEditor, drawing_frame);
  gtk_widget_class_bind_template_child (widget_class, GbOutlineEditor, unit_label);
  gtk_widget_class_bind_template_child (widget_class, GbOutlineEditor, words);
  gtk_widget_class_bind_template_child (widget_class, GbOutlineEditor, words_icon);
  gtk_widget_class_bind_template_child (widget_class, GbOutlineEditor, keep_button);
  gtk_widget_class_bind_template_callback (widget_class, keep_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
gb_outline_editor_init (GbOutlineEditor *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->buffer = gtk_text_view_get_buffer (self->lines);
  gtk_window_set_focus (GTK_WINDOW (self), GTK_WIDGET (self->lines));
}

GtkWidget *
gb_outline_editor_new (GtkWindow *parent, GbUnits units, const char *text)
{
  GbOutlineEditor *self = g_object_new (GB_TYPE_OUTLINE_EDITOR, "transient-for", parent, NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (GbOutline) outline = NULL;
  g_autofree char *words
    = g_strdup_printf (_ ("Corners, x y in %s"), gb_quantity_unit (GB_DIM_LENGTH, units));

  self->units = units;
  self->drawing = gb_outline_view_new (units);
  gtk_frame_set_child (GTK_FRAME (self->drawing_frame), self->drawing);
  gtk_label_set_text (self->unit_label, words);
  g_signal_connect_swapped (self->drawing, "edited", G_CALLBACK (drawing_edited_cb), self);
  g_signal_connect_swapped (self->buffer, "changed", G_CALLBACK (lines_changed_cb), self);

  outline = text != NULL ? gb_outline_parse (text, &error) : NULL;
  gb_outline_view_set_shape (GB_OUTLINE_VIEW (self->drawing), gb_shape_new (outline));
  drawing_edited_cb (self);
  if (error != NULL)
    say (self, error->message, FALSE);
  return GTK_WIDGET (self);
}

GtkTextBuffer *
gb_outline_editor_get_buffer (GbOutlineEditor *self)
{
  return self->buffer;
}

GtkWidget *
gb_outline_editor_get_drawing (GbOutlineEditor *self)
{
  return self->drawing;
}
