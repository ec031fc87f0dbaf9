/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-working-popover"

#include "working-popover.h"

#include <glib/gi18n-lib.h>

/* Rows of a table that are shown; the rest is in the copied text. */
#define MAX_ROWS 200
/* Wider than this it scrolls. */
#define MOST_WIDTH 760

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
  return grid;
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

/* Everything that is said, one below the other. */
static GtkWidget *
make_content (const GbWorking *working)
{
  GtkWidget *content = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  add_label (GTK_BOX (content), working->title, "heading");
  for (guint i = 0; i < working->steps->len; i++)
    add_step (GTK_BOX (content), working->steps->pdata[i]);
  if (working->columns != NULL && working->rows != NULL && working->rows->len > 0)
    gtk_box_append (GTK_BOX (content), make_table (working));
  if (working->caution != NULL)
    add_label (GTK_BOX (content), working->caution, "caption");
  return content;
}

/* Scrolling --------------------------------------------------------------------------------------------- */

/* The toolkit scrolls by pages without a modifier; a reader's hand is on the other keys. */
static void
add_scroll_keys (GtkWidget *scroller)
{
  static const struct
  {
    guint key;
    GtkScrollType by;
  } keys[] = { { GDK_KEY_Up, GTK_SCROLL_STEP_UP },
               { GDK_KEY_Down, GTK_SCROLL_STEP_DOWN },
               { GDK_KEY_Left, GTK_SCROLL_STEP_LEFT },
               { GDK_KEY_Right, GTK_SCROLL_STEP_RIGHT },
               { GDK_KEY_Home, GTK_SCROLL_START },
               { GDK_KEY_End, GTK_SCROLL_END } };
  GtkEventController *controller = gtk_shortcut_controller_new ();

  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    {
      gboolean across = keys[i].by == GTK_SCROLL_STEP_LEFT || keys[i].by == GTK_SCROLL_STEP_RIGHT;

      gtk_shortcut_controller_add_shortcut (
          GTK_SHORTCUT_CONTROLLER (controller),
          gtk_shortcut_new_with_arguments (gtk_keyval_trigger_new (keys[i].key, 0),
                                           gtk_signal_action_new ("scroll-child"), "(ib)", keys[i].by,
                                           across));
    }
  gtk_widget_add_controller (scroller, controller);
}

static GtkWidget *
make_scroller (GtkWidget *content)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();

  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), content);
  /* A bar in sight tells that there is more, where the edge happens to fall between two lines. */
  gtk_scrolled_window_set_overlay_scrolling (GTK_SCROLLED_WINDOW (scroller), FALSE);
  gtk_widget_set_focusable (scroller, TRUE);
  gtk_widget_set_vexpand (scroller, TRUE);
  add_scroll_keys (scroller);
  return scroller;
}

static int
natural_size (GtkWidget *widget, GtkOrientation orientation, int for_size)
{
  int natural;

  gtk_widget_measure (widget, orientation, for_size, NULL, &natural, NULL, NULL);
  return natural;
}

/* What of the popover is not the scroller: its button, its frame, its arrow, the bar; and some air. */
#define AROUND 112
#define ASIDE 84
#define BAR 26
#define LEAST_HEIGHT 96

/* As large as its content, but not larger than the window has room for on the roomiest side of @relative_to:
 * beside it where the width will do, for there the whole height is free. */
static void
fit (GtkPopover *popover, GtkWidget *relative_to, GtkScrolledWindow *scroller, GtkWidget *content)
{
  GtkWidget *window = GTK_WIDGET (gtk_widget_get_root (relative_to));
  int width = MIN (natural_size (content, GTK_ORIENTATION_HORIZONTAL, -1), MOST_WIDTH);
  graphene_rect_t at;
  double left, right, above, below, high;

  if (window == NULL || !gtk_widget_compute_bounds (relative_to, window, &at))
    return;
  left = at.origin.x;
  right = gtk_widget_get_width (window) - left - at.size.width;
  above = at.origin.y;
  below = gtk_widget_get_height (window) - above - at.size.height;
  high = MAX (above, below);
  if (MAX (left, right) >= width + ASIDE)
    {
      gtk_popover_set_position (popover, left >= right ? GTK_POS_LEFT : GTK_POS_RIGHT);
      high = gtk_widget_get_height (window);
    }
  else
    gtk_popover_set_position (popover, below >= above ? GTK_POS_BOTTOM : GTK_POS_TOP);
  width = MIN (width, gtk_widget_get_width (window) - ASIDE);
  gtk_scrolled_window_set_min_content_width (scroller, width + BAR);
  gtk_scrolled_window_set_min_content_height (
      scroller, (int) CLAMP (high - AROUND, LEAST_HEIGHT,
                             MAX (natural_size (content, GTK_ORIENTATION_VERTICAL, width), LEAST_HEIGHT)));
}

void
gb_working_popover_show (GtkWidget *relative_to, GbWorking *take_working)
{
  g_autoptr (GbWorking) working = take_working;
  GtkWidget *popover = gtk_popover_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *content = make_content (working);
  GtkWidget *scroller = make_scroller (content);

  g_return_if_fail (GTK_IS_WIDGET (relative_to));

  gtk_box_append (GTK_BOX (box), scroller);
  gtk_box_append (GTK_BOX (box), make_copy_button (working));
  gtk_popover_set_child (GTK_POPOVER (popover), box);
  gtk_widget_add_css_class (popover, "working");
  gtk_widget_set_parent (popover, relative_to);
  g_signal_connect (popover, "closed", G_CALLBACK (closed_cb), NULL);
  g_signal_connect_object (relative_to, "destroy", G_CALLBACK (parent_destroyed_cb), popover, 0);
  fit (GTK_POPOVER (popover), relative_to, GTK_SCROLLED_WINDOW (scroller), content);
  gtk_popover_popup (GTK_POPOVER (popover));
  gtk_widget_grab_focus (scroller);
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
