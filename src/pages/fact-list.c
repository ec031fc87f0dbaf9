/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fact-list.h"

#include <glib/gi18n-lib.h>

GtkWidget *
gb_fact_list_new (const char *heading, const GbFactSpec *specs, guint n, gpointer data, GbFactRow **rows)
{
  GtkWidget *group = adw_preferences_group_new ();

  if (heading != NULL)
    adw_preferences_group_set_title (ADW_PREFERENCES_GROUP (group), heading);
  gtk_widget_add_css_class (group, "gb-facts");
  for (guint i = 0; i < n; i++)
    {
      rows[i] = specs[i].ask != NULL ? gb_fact_row_new_asking (_ (specs[i].title), specs[i].ask, data)
                                     : gb_fact_row_new (_ (specs[i].title), NULL);
      adw_preferences_group_add (ADW_PREFERENCES_GROUP (group), GTK_WIDGET (rows[i]));
    }
  return group;
}

void
gb_fact_list_set (GbFactRow *row, char *take_value, gboolean passed)
{
  g_autofree char *value = take_value;

  gb_fact_row_set_value (row, value, passed);
}

GtkWidget *
gb_fact_lists_new (GtkWidget *first, ...)
{
  GtkWidget *flow = gtk_flow_box_new ();
  va_list args;

  gtk_flow_box_set_selection_mode (GTK_FLOW_BOX (flow), GTK_SELECTION_NONE);
  gtk_flow_box_set_max_children_per_line (GTK_FLOW_BOX (flow), 2);
  gtk_flow_box_set_homogeneous (GTK_FLOW_BOX (flow), TRUE);
  gtk_flow_box_set_column_spacing (GTK_FLOW_BOX (flow), 6);
  va_start (args, first);
  for (GtkWidget *list = first; list != NULL; list = va_arg (args, GtkWidget *))
    {
      GtkWidget *child = gtk_flow_box_child_new ();

      gtk_widget_set_valign (list, GTK_ALIGN_START);
      gtk_flow_box_child_set_child (GTK_FLOW_BOX_CHILD (child), list);
      gtk_widget_set_focusable (child, FALSE);
      gtk_widget_set_size_request (child, 260, -1);
      gtk_flow_box_append (GTK_FLOW_BOX (flow), child);
    }
  va_end (args);
  return flow;
}

GtkWidget *
gb_beside_facts (GtkWidget *chart, GtkWidget *facts)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkWidget *scroller = gtk_scrolled_window_new ();

  gtk_widget_set_hexpand (chart, TRUE);
  gtk_widget_set_vexpand (chart, TRUE);
  gtk_widget_set_size_request (chart, 260, 150);
  gtk_widget_add_css_class (facts, "gb-facts-beside");
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), facts);
  gtk_widget_set_size_request (scroller, 280, -1);
  gtk_box_append (GTK_BOX (box), chart);
  gtk_box_append (GTK_BOX (box), scroller);
  return box;
}

GtkWidget *
gb_quiet_label_new (const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_natural_wrap_mode (GTK_LABEL (label), GTK_NATURAL_WRAP_NONE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, "caption");
  gtk_widget_add_css_class (label, "dim-label");
  return label;
}
