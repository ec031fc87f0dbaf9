/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The weight page: its pictures leave as files and on paper, a part in the drawing leads to the tree, workings open and close by keyboard; and the
 * strip below it. */

#include "widgets/chart-area.h"
#include "widgets/gauge.h"
#include "window-private.h"
#include "window-support.h"

#include <glib/gstdio.h>
#include <string.h>

static void
open_demo (WindowSupport *self, const char *demo)
{
  g_autofree char *path = window_support_demo (demo);

  window_support_open (self, path, 1280, 800);
}

static GbChartArea *
show_drawing (WindowSupport *self)
{
  GtkWidget *page = window_support_page (self, "weight", "drawing");
  GbChartArea *area = window_support_child (page, "boat");

  support_until (gb_chart_area_get_chart (area) != NULL);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (self->window));
  return area;
}

static void
test_export (void)
{
  static const char *const formats[] = { "png", "svg", "pdf" };
  static const char *const starts[] = { "\x89PNG", "<?xml", "%PDF-" };
  WindowSupport self;
  GbChartArea *area;
  g_autofree char *printed = g_build_filename (window_support_home (), "drawing-printed.pdf", NULL);
  g_autoptr (GError) error = NULL;

  open_demo (&self, "plover");
  area = show_drawing (&self);
  for (guint i = 0; i < G_N_ELEMENTS (formats); i++)
    {
      g_autofree char *path = g_strdup_printf ("%s/drawing.%s", window_support_home (), formats[i]);
      g_autofree char *contents = NULL;

      g_assert_true (gb_chart_area_export (area, path, formats[i], &error));
      g_assert_no_error (error);
      g_assert_true (g_file_get_contents (path, &contents, NULL, NULL));
      g_assert_true (g_str_has_prefix (contents, starts[i]));
    }
  g_assert_true (gb_chart_area_print (area, GTK_PRINT_OPERATION_ACTION_EXPORT, printed, &error));
  g_assert_no_error (error);
  support_until (g_file_test (printed, G_FILE_TEST_EXISTS));
  window_support_close (&self);
}

/* A point of the drawing where a part is. */
static gint64
find_part (GbChartArea *area, GtkWidget *canvas, double *x, double *y)
{
  int width = gtk_widget_get_width (canvas), height = gtk_widget_get_height (canvas);

  for (*y = 40; *y < height; *y += 4)
    for (*x = 40; *x < width; *x += 4)
      {
        gint64 id = gb_chart_pick (gb_chart_area_get_chart (area), width, height, *x, *y);

        if (id != 0)
          return id;
      }
  g_assert_not_reached ();
}

static void
test_pick (void)
{
  WindowSupport self;
  GbChartArea *area;
  GtkWidget *canvas;
  gint64 id;
  double x, y;
  guint n;
  g_autofree gint64 *ids = NULL;

  open_demo (&self, "plover");
  area = show_drawing (&self);
  canvas = window_support_child (area, "area");
  id = find_part (area, canvas, &x, &y);
  support_click (&self.input, canvas, x / gtk_widget_get_width (canvas), y / gtk_widget_get_height (canvas), 2);
  support_until (g_strcmp0 (gtk_stack_get_visible_child_name (self.window->pages), "parts") == 0);
  ids = gb_grid_dup_selected (GB_GRID (support_find (gb_window_get_page (self.window, "parts"), GB_TYPE_GRID)), &n);
  g_assert_cmpuint (n, ==, 1);
  g_assert_cmpint (ids[0], ==, id);
  window_support_close (&self);
}

static void
test_working (void)
{
  WindowSupport self;
  GtkWidget *page, *how = NULL;

  open_demo (&self, "plover");
  page = window_support_page (&self, "weight", "summary");
  for (guint i = 0; (how = window_support_nth (page, GTK_TYPE_BUTTON, i)) != NULL; i++)
    if (g_strcmp0 (gtk_button_get_label (GTK_BUTTON (how)), "how?") == 0)
      break;
  g_assert_nonnull (how);
  gtk_widget_grab_focus (how);
  support_keys (&self.input, "Return");
  support_until (window_support_nth (how, GTK_TYPE_POPOVER, 0) != NULL);
  g_assert_true (window_support_says (how, "kg"));
  support_keys (&self.input, "Escape");
  support_until (window_support_nth (how, GTK_TYPE_POPOVER, 0) == NULL);
  window_support_close (&self);
}

static void
test_strip (void)
{
  WindowSupport self;
  g_autofree char *path = window_support_make ("strip.garboard", NULL);

  open_demo (&self, "petrel"); /* over its target, its limit and its budget */
  g_assert_cmpint (gb_gauge_get_state (window_support_child (self.window->strip, "weight")), ==, GB_GAUGE_PASSED);
  g_assert_cmpint (gb_gauge_get_state (window_support_child (self.window->strip, "afloat")), ==, GB_GAUGE_PASSED);
  g_assert_cmpint (gb_gauge_get_state (window_support_child (self.window->strip, "money")), ==, GB_GAUGE_PASSED);
  g_assert_nonnull (strstr (gb_gauge_get_words (window_support_child (self.window->strip, "weight")), "over"));
  support_click (&self.input, window_support_child (self.window->strip, "money"), 0.3, 0.5, 1);
  support_until (g_strcmp0 (gtk_stack_get_visible_child_name (self.window->pages), "money") == 0);
  window_support_close (&self);

  window_support_open (&self, path, 900, 600);
  g_assert_cmpint (gb_gauge_get_state (window_support_child (self.window->strip, "weight")), ==, GB_GAUGE_UNKNOWN);
  g_assert_cmpint (gb_gauge_get_state (window_support_child (self.window->strip, "afloat")), ==, GB_GAUGE_UNKNOWN);
  g_assert_nonnull (strstr (gb_gauge_get_words (window_support_child (self.window->strip, "afloat")), "no hull yet"));
  window_support_close (&self);
}

static void
make_heavy (GbProject *project, const GbRecord *condition)
{
  const GbRecord *load = gb_record_children (condition)->pdata[0];
  GbValue value = { .storage = GB_STORAGE_REAL, .real = 900 };
  g_autoptr (GError) error = NULL;

  gb_project_set (project, GB_RECORD_LOAD, load->id, gb_field (GB_RECORD_LOAD, "mass"), &value, &error);
  g_assert_no_error (error);
}

/* The strip and the page tell of the worst condition as soon as there is a worse one; its row leads to the page Afloat. */
static void
test_worst_condition (void)
{
  WindowSupport self;
  GbProject *project;
  const GPtrArray *conditions;
  GtkWidget *page;
  GbGauge *gauge;

  open_demo (&self, "plover");
  page = window_support_page (&self, "weight", "summary");
  gauge = window_support_child (self.window->strip, "afloat");
  project = gb_window_get_project (self.window);
  conditions = gb_boat_roots (gb_project_get_boat (project), GB_RECORD_CONDITION);
  g_assert_nonnull (strstr (gb_gauge_get_words (gauge), "208 mm free · Two up on the lake"));
  g_assert_true (window_support_says (page, "forward, "));
  g_assert_true (window_support_says (page, "Two up on the lake: floats, 208 mm free"));

  make_heavy (project, conditions->pdata[1]);
  g_assert_nonnull (strstr (gb_gauge_get_words (gauge), "she sinks · Rower alone"));
  g_assert_cmpint (gb_gauge_get_state (gauge), ==, GB_GAUGE_PASSED);
  g_assert_nonnull (strstr (gtk_widget_get_tooltip_text (window_support_child (gauge, "button")), "She sinks: "));
  g_assert_true (window_support_says (page, "Rower alone: sinks"));
  support_click (&self.input, window_support_child (self.window->strip, "afloat"), 0.3, 0.5, 1);
  support_until (g_strcmp0 (gtk_stack_get_visible_child_name (self.window->pages), "afloat") == 0);
  window_support_close (&self);
}

int
main (int argc, char **argv)
{
  window_support_init (&argc, &argv);
  g_test_add_func ("/weight/export", test_export);
  g_test_add_func ("/weight/pick", test_pick);
  g_test_add_func ("/weight/working", test_working);
  g_test_add_func ("/weight/strip", test_strip);
  g_test_add_func ("/weight/worst-condition", test_worst_condition);
  return window_support_run ();
}
