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

/* Two columns from this width on. */
#define TWO_COLUMNS 620
#define GAP 8

/* Children in two columns of the same width where they are wide enough, else one below the other. */
static void
measure_columns (GtkWidget *widget,
                 GtkOrientation orientation,
                 int for_size,
                 int *minimum,
                 int *natural,
                 int *above,
                 int *below)
{
  gboolean beside = orientation == GTK_ORIENTATION_VERTICAL && for_size >= TWO_COLUMNS;
  int width = beside ? (for_size - GAP) / 2 : for_size;

  *minimum = *natural = 0;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      int least, wished;

      gtk_widget_measure (child, orientation, orientation == GTK_ORIENTATION_VERTICAL ? width : -1, &least,
                          &wished, NULL, NULL);
      if (beside || orientation == GTK_ORIENTATION_HORIZONTAL)
        {
          *minimum = MAX (*minimum, least);
          *natural = MAX (*natural, wished);
        }
      else
        {
          *minimum += least + (*minimum > 0 ? GAP : 0);
          *natural += wished + (*natural > 0 ? GAP : 0);
        }
    }
}

static void
allocate_columns (GtkWidget *widget, int width, int height, int baseline)
{
  gboolean beside = width >= TWO_COLUMNS;
  int column = beside ? (width - GAP) / 2 : width;
  int x = 0, y = 0;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      int wished;

      gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, column, NULL, &wished, NULL, NULL);
      gtk_widget_size_allocate (child, &(GtkAllocation){ x, y, column, wished }, -1);
      if (beside)
        x += column + GAP;
      else
        y += wished + GAP;
    }
}

static GtkSizeRequestMode
height_for_width (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

GtkWidget *
gb_fact_lists_new (GtkWidget *first, GtkWidget *second)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_widget_set_layout_manager (box,
                                 gtk_custom_layout_new (height_for_width, measure_columns, allocate_columns));
  gtk_widget_set_margin_start (box, 6);
  gtk_widget_set_margin_end (box, 6);
  gtk_widget_set_margin_bottom (box, 6);
  gtk_box_append (GTK_BOX (box), first);
  gtk_box_append (GTK_BOX (box), second);
  return box;
}

/* Of the width that a chart and its facts share: so much the facts need to be read; the chart has the rest. */
#define LEAST_FACTS 270
#define MOST_FACTS 320
#define LEAST_CHART 230

static int
facts_width (int width)
{
  return CLAMP (43 * width / 100, LEAST_FACTS, MOST_FACTS);
}

static void
measure_beside (GtkWidget *widget,
                GtkOrientation orientation,
                int for_size,
                int *minimum,
                int *natural,
                int *above,
                int *below)
{
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? LEAST_CHART + LEAST_FACTS : 120;
}

static void
allocate_beside (GtkWidget *widget, int width, int height, int baseline)
{
  int facts = facts_width (width);

  gtk_widget_size_allocate (gtk_widget_get_first_child (widget),
                            &(GtkAllocation){ 0, 0, width - facts, height }, baseline);
  gtk_widget_size_allocate (gtk_widget_get_last_child (widget),
                            &(GtkAllocation){ width - facts, 0, facts, height }, baseline);
}

static GtkSizeRequestMode
constant_size (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_CONSTANT_SIZE;
}

GtkWidget *
gb_beside_facts (GtkWidget *chart, GtkWidget *facts)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkWidget *scroller = gtk_scrolled_window_new ();

  gtk_widget_set_layout_manager (box, gtk_custom_layout_new (constant_size, measure_beside, allocate_beside));
  gtk_widget_set_hexpand (box, TRUE);
  gtk_widget_set_vexpand (box, TRUE);
  gtk_widget_add_css_class (facts, "gb-facts-beside");
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), facts);
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
