/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-fact-row"

#include "fact-row.h"

#include "working-popover.h"

struct _GbFactRow
{
  AdwActionRow parent_instance;

  GbFactWorking working;
  GbFactAsk ask; /* in its stead, with data of the page's own */
  gpointer data;
  GbProject *project; /* borrowed */
  GtkLabel *value;
  GtkImage *sign;
};

G_DEFINE_FINAL_TYPE (GbFactRow, gb_fact_row, ADW_TYPE_ACTION_ROW)

static void
how_clicked_cb (GtkButton *button, GbFactRow *self)
{
  if (self->ask != NULL)
    gb_working_popover_show (GTK_WIDGET (button), self->ask (self->data));
  else if (self->project != NULL)
    gb_working_popover_show (GTK_WIDGET (button),
                             self->working (gb_project_get_boat (self->project), gb_project_get_findings (self->project)));
}

void
gb_fact_row_set_project (GbFactRow *self, GbProject *project)
{
  g_return_if_fail (GB_IS_FACT_ROW (self));
  self->project = project;
}

void
gb_fact_row_set_value (GbFactRow *self, const char *value, gboolean passed)
{
  g_return_if_fail (GB_IS_FACT_ROW (self));

  gtk_label_set_text (self->value, value);
  gtk_widget_set_visible (GTK_WIDGET (self->sign), passed);
  if (passed)
    gtk_widget_add_css_class (GTK_WIDGET (self), "passed");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "passed");
}

static void
gb_fact_row_class_init (GbFactRowClass *klass)
{
}

static void
gb_fact_row_init (GbFactRow *self)
{
  self->sign = GTK_IMAGE (gtk_image_new_from_icon_name ("dialog-warning-symbolic"));
  self->value = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (self->value, 1);
  gtk_label_set_justify (self->value, GTK_JUSTIFY_RIGHT);
  gtk_label_set_wrap (self->value, TRUE);
  gtk_label_set_natural_wrap_mode (self->value, GTK_NATURAL_WRAP_NONE);
  gtk_label_set_selectable (self->value, TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (self->value), "figure");
  gtk_widget_add_css_class (GTK_WIDGET (self->value), "fact-value");
  gtk_widget_set_visible (GTK_WIDGET (self->sign), FALSE);
  adw_action_row_add_suffix (ADW_ACTION_ROW (self), GTK_WIDGET (self->sign));
  adw_action_row_add_suffix (ADW_ACTION_ROW (self), GTK_WIDGET (self->value));
}

static GbFactRow *
make_row (const char *title, GbFactWorking working, GbFactAsk ask, gpointer data)
{
  GbFactRow *self = g_object_new (GB_TYPE_FACT_ROW, "title", title, NULL);

  self->working = working;
  self->ask = ask;
  self->data = data;
  if (working != NULL || ask != NULL)
    {
      GtkWidget *how = gb_how_button_new ();

      g_signal_connect_object (how, "clicked", G_CALLBACK (how_clicked_cb), self, 0);
      adw_action_row_add_suffix (ADW_ACTION_ROW (self), how);
    }
  return self;
}

GbFactRow *
gb_fact_row_new (const char *title, GbFactWorking working)
{
  return make_row (title, working, NULL, NULL);
}

GbFactRow *
gb_fact_row_new_asking (const char *title, GbFactAsk ask, gpointer data)
{
  return make_row (title, NULL, ask, data);
}
