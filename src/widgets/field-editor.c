/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-field-editor"

#include "field-editor-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

G_DEFINE_FINAL_TYPE (GbFieldEditor, gb_field_editor, GTK_TYPE_WIDGET)

const GbRecord *
gb_field_editor_first (GbFieldEditor *self)
{
  if (self->project == NULL || self->ids->len == 0)
    return NULL;
  return gb_boat_get (gb_project_get_boat (self->project), self->field->kind,
                      g_array_index (self->ids, gint64, 0));
}

static gboolean
same_value (const GbField *field, const GbRecord *a, const GbRecord *b)
{
  g_auto (GbValue) u = gb_field_get (field, a);
  g_auto (GbValue) v = gb_field_get (field, b);

  if (g_strcmp0 (u.typed, v.typed) != 0)
    return FALSE;
  if (u.storage == GB_STORAGE_TEXT)
    return g_strcmp0 (u.text, v.text) == 0;
  if (u.storage == GB_STORAGE_INTEGER)
    return u.integer == v.integer;
  return u.real == v.real || (isnan (u.real) && isnan (v.real));
}

gboolean
gb_field_editor_is_mixed (GbFieldEditor *self)
{
  const GbRecord *first = gb_field_editor_first (self);

  for (guint i = 1; first != NULL && i < self->ids->len; i++)
    {
      const GbRecord *other = gb_boat_get (gb_project_get_boat (self->project), self->field->kind,
                                           g_array_index (self->ids, gint64, i));

      if (other != NULL && !same_value (self->field, first, other))
        return TRUE;
    }
  return FALSE;
}

/* Saying what is wrong ----------------------------------------------------------------------------------- */

void
gb_field_editor_complain (GbFieldEditor *self, const char *sentence)
{
  if (sentence == NULL && self->complaint == NULL)
    return;
  if (self->completion != NULL)
    gb_completion_close (self->completion);
  if (self->complaint == NULL)
    self->complaint = gb_complaint_new (GTK_WIDGET (self));
  gb_complaint_say (self->complaint, sentence);
  if (sentence != NULL)
    gtk_widget_add_css_class (self->input, "error");
  else
    gtk_widget_remove_css_class (self->input, "error");
}

const char *
gb_field_editor_get_complaint (GbFieldEditor *self)
{
  return self->complaint != NULL ? gb_complaint_get_sentence (self->complaint) : NULL;
}

/* The widget --------------------------------------------------------------------------------------------- */

/* TRUE if it is typed, FALSE if it is picked, ticked or drawn. */
static gboolean
is_typed (GbFieldEditor *self)
{
  return self->field->dim != GB_DIM_CHOICE && self->field->dim != GB_DIM_FLAG
         && self->field->dim != GB_DIM_OUTLINE;
}

static void
make_input (GbFieldEditor *self)
{
  if (is_typed (self))
    gb_field_editor_make_text (self);
  else
    gb_field_editor_make_choice (self);
  if (self->outside == NULL)
    self->outside = self->input;
  gtk_widget_set_hexpand (self->outside, TRUE);
  gtk_widget_set_tooltip_text (self->input, _ (self->field->help));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->input), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ (self->field->label), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  _ (self->field->help), -1);
  gtk_widget_set_parent (self->outside, GTK_WIDGET (self));
}

static void
gb_field_editor_dispose (GObject *object)
{
  GbFieldEditor *self = GB_FIELD_EDITOR (object);

  if (self->completion != NULL)
    gtk_widget_unparent (GTK_WIDGET (g_steal_pointer (&self->completion)));
  if (self->complaint != NULL)
    gtk_widget_unparent (GTK_WIDGET (g_steal_pointer (&self->complaint)));
  g_clear_pointer (&self->outside, gtk_widget_unparent);
  self->input = NULL;
  g_clear_object (&self->project);
  G_OBJECT_CLASS (gb_field_editor_parent_class)->dispose (object);
}

static void
gb_field_editor_finalize (GObject *object)
{
  GbFieldEditor *self = GB_FIELD_EDITOR (object);

  g_array_unref (self->ids);
  g_free (self->shown);
  G_OBJECT_CLASS (gb_field_editor_parent_class)->finalize (object);
}

static void
gb_field_editor_class_init (GbFieldEditorClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gb_field_editor_dispose;
  G_OBJECT_CLASS (klass)->finalize = gb_field_editor_finalize;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "gb-field");
}

static void
gb_field_editor_init (GbFieldEditor *self)
{
  self->ids = g_array_new (FALSE, FALSE, sizeof (gint64));
}

GtkWidget *
gb_field_editor_new (const GbField *field)
{
  GbFieldEditor *self = g_object_new (GB_TYPE_FIELD_EDITOR, NULL);

  self->field = field;
  make_input (self);
  return GTK_WIDGET (self);
}

const GbField *
gb_field_editor_get_field (GbFieldEditor *self)
{
  return self->field;
}

GtkWidget *
gb_field_editor_get_input (GbFieldEditor *self)
{
  return self->input;
}

static gboolean
same_ids (GbFieldEditor *self, GbProject *project, const gint64 *ids, guint n_ids)
{
  return self->project == project && self->ids->len == n_ids
         && (n_ids == 0 || memcmp (self->ids->data, ids, n_ids * sizeof *ids) == 0);
}

void
gb_field_editor_show (GbFieldEditor *self, GbProject *project, const gint64 *ids, guint n_ids)
{
  gboolean typed = is_typed (self);

  if (same_ids (self, project, ids, n_ids) && (self->busy || (typed && gb_field_editor_is_half_typed (self))))
    return;
  g_set_object (&self->project, project);
  g_array_set_size (self->ids, 0);
  g_array_append_vals (self->ids, ids, n_ids);
  if (project != NULL)
    gtk_widget_set_sensitive (self->input, gb_project_get_read_only_reason (project) == NULL);
  if (typed)
    gb_field_editor_show_text (self);
  else
    gb_field_editor_show_choice (self);
}
