/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-working-popover"

#include "working-popover.h"

#include <glib/gi18n-lib.h>

/* Rows of a table that are shown; the rest is in the copied text. */
#define MAX_ROWS 200

static GtkWidget *
add_label (GtkBox *box, const char *text, const char *style)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 60);
  gtk_label_set_selectable (GTK_LABEL (label), TRUE);
  gtk_widget_set_can_focus (label, FALSE);
  if (style != NULL)
    gtk_widget_add_css_class (label, style);
  gtk_box_append (box, label);
  return label;
}

static void
add_step (GtkBox *box, const GbWorkingStep *step)
{
  if (step->words != NULL)
    add_label (box, step->words, "dim-label");
  if (step->numbers != NULL)
    add_label (box, step->numbers, "figure");
  if (step->source != NULL)
    {
      GtkWidget *source = add_label (box, step->source, "caption");

      gtk_widget_add_css_class (source, "dim-label");
    }
}

static void
attach_cell (GtkGrid *grid, const char *text, int column, int row, const char *style)
{
  GtkWidget *label = gtk_label_new (text);

  /* The first column names, the others are figures. */
  gtk_label_set_xalign (GTK_LABEL (label), column == 0 ? 0 : 1);
  gtk_widget_set_hexpand (label, column == 0);
  gtk_widget_add_css_class (label, "figure");
  if (style != NULL)
    gtk_widget_add_css_class (label, style);
  gtk_grid_attach (grid, label, column, row, 1, 1);
}

static GtkWidget *
make_table (const GbWorking *working)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *grid = gtk_grid_new ();
  guint n_rows = MIN (working->rows->len, MAX_ROWS);

  gtk_grid_set_column_spacing (GTK_GRID (grid), 12);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 2);
  for (guint c = 0; c < working->columns->len; c++)
    attach_cell (GTK_GRID (grid), working->columns->pdata[c], (int) c, 0, "caption-heading");
  for (guint r = 0; r < n_rows; r++)
    {
      /* The total closes the table even where rows are left out. */
      guint from = r + 1 == n_rows ? working->rows->len - 1 : r;
      char **cells = working->rows->pdata[from];

      for (int c = 0; cells[c] != NULL; c++)
        attach_cell (GTK_GRID (grid), cells[c], c, (int) r + 1, r + 1 == n_rows ? "heading" : NULL);
    }
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), grid);
  gtk_scrolled_window_set_propagate_natural_width (GTK_SCROLLED_WINDOW (scroller), TRUE);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scroller), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scroller), 260);
  gtk_scrolled_window_set_max_content_width (GTK_SCROLLED_WINDOW (scroller), 760);
  return scroller;
}

static void
copy_clicked_cb (GtkButton *button, gpointer data)
{
  gdk_clipboard_set_text (gtk_widget_get_clipboard (GTK_WIDGET (button)), g_object_get_data (G_OBJECT (button), "text"));
}

static GtkWidget *
make_copy_button (const GbWorking *working)
{
  GtkWidget *button = gtk_button_new_with_mnemonic (_ ("_Copy"));

  g_object_set_data_full (G_OBJECT (button), "text", gb_working_to_text (working), g_free);
  g_signal_connect (button, "clicked", G_CALLBACK (copy_clicked_cb), NULL);
  gtk_widget_set_halign (button, GTK_ALIGN_END);
  return button;
}

static gboolean
unparent_cb (gpointer popover)
{
  gtk_widget_unparent (popover);
  return G_SOURCE_REMOVE;
}

static void
closed_cb (GtkPopover *popover, gpointer data)
{
  /* Not within its own signal. */
  g_idle_add_full (G_PRIORITY_DEFAULT, unparent_cb, g_object_ref (popover), g_object_unref);
}

/* What it points at may go first; a popover does not go with it by itself. */
static void
parent_destroyed_cb (GtkWidget *parent, GtkWidget *popover)
{
  gtk_widget_unparent (popover);
}

void
gb_working_popover_show (GtkWidget *relative_to, GbWorking *take_working)
{
  g_autoptr (GbWorking) working = take_working;
  GtkWidget *popover = gtk_popover_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  g_return_if_fail (GTK_IS_WIDGET (relative_to));

  add_label (GTK_BOX (box), working->title, "heading");
  for (guint i = 0; i < working->steps->len; i++)
    add_step (GTK_BOX (box), working->steps->pdata[i]);
  if (working->columns != NULL && working->rows != NULL && working->rows->len > 0)
    gtk_box_append (GTK_BOX (box), make_table (working));
  if (working->caution != NULL)
    add_label (GTK_BOX (box), working->caution, "caption");
  gtk_box_append (GTK_BOX (box), make_copy_button (working));

  gtk_popover_set_child (GTK_POPOVER (popover), box);
  gtk_widget_add_css_class (popover, "working");
  gtk_widget_set_parent (popover, relative_to);
  g_signal_connect (popover, "closed", G_CALLBACK (closed_cb), NULL);
  g_signal_connect_object (relative_to, "destroy", G_CALLBACK (parent_destroyed_cb), popover, 0);
  gtk_popover_popup (GTK_POPOVER (popover));
}

GtkWidget *
gb_how_button_new (void)
{
  GtkWidget *button = gtk_button_new_with_label (_ ("how?"));

  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_set_tooltip_text (button, _ ("How this figure came about"));
  return button;
}
