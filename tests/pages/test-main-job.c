/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The whole way of a builder: from an empty build, by clicks and keys alone, to a weight, a flotation limit and a sum of money. */

#include "pages/hulls-page.h"
#include "pages/parts-page.h"
#include "widgets/inspector.h"
#include "widgets/gauge.h"
#include "window-private.h"
#include "window-support.h"

#include <math.h>
#include <string.h>

static GtkWidget *
find_button (GtkWidget *top, const char *label)
{
  GtkWidget *button;

  for (guint i = 0; (button = window_support_nth (top, GTK_TYPE_BUTTON, i)) != NULL; i++)
    if (g_strcmp0 (gtk_button_get_label (GTK_BUTTON (button)), label) == 0)
      return button;
  g_error ("there is no button “%s”", label);
}

static void
click_button (WindowSupport *self, GtkWidget *top, const char *label)
{
  support_click (&self->input, find_button (top, label), 0.5, 0.5, 1);
}

static guint
count (WindowSupport *self, GbRecordKind kind)
{
  return gb_boat_n (gb_project_get_boat (gb_window_get_project (self->window)), kind);
}

/* Types into a field of the details beside a table, and leaves it by Enter. */
static void
fill (WindowSupport *self, GtkWidget *page, const char *field, const char *text)
{
  GbInspector *inspector = GB_INSPECTOR (support_find (page, GB_TYPE_INSPECTOR));
  GtkWidget *editor = gb_inspector_find (inspector, field);

  g_assert_nonnull (editor);
  gtk_widget_child_focus (editor, GTK_DIR_TAB_FORWARD);
  support_keys (&self->input, "ctrl+a");
  support_type (&self->input, text);
  support_keys (&self->input, "Return");
}

static const char *
strip_words (WindowSupport *self, const char *gauge)
{
  return gb_gauge_get_words (window_support_child (self->window->strip, gauge));
}

static void
add_parts (WindowSupport *self)
{
  GtkWidget *page = window_support_page (self, "parts", NULL);
  gint64 id;

  click_button (self, page, "_Add the First Part");
  support_type (&self->input, "Bottom");
  support_keys (&self->input, "Return");
  support_until ((id = support_part (&self->input, "Bottom")) != 0);
  /* The amount, then the material, out of the catalogue. */
  support_type (&self->input, "2 m x 1 m x 6 mm");
  support_keys (&self->input, "Return");
  support_until (gb_boat_part (gb_project_get_boat (self->input.project), id)->thickness == 0.006);
  support_type (&self->input, "okoume plywood");
  support_keys (&self->input, "Return");
  support_until (count (self, GB_RECORD_MATERIAL) == 1);
  gb_parts_page_show_part (GB_PARTS_PAGE (page), id);
  support_settle ();
  fill (self, page, "x", "1 m");
  fill (self, page, "z", "0.1 m");
}

static void
add_hull (WindowSupport *self)
{
  GtkWidget *page = window_support_page (self, "hulls", "hulls");

  click_button (self, page, "_Add a Hull");
  support_type (&self->input, "Box");
  support_keys (&self->input, "Return");
  support_until (count (self, GB_RECORD_HULL) == 1);
}

/* A drop-down is opened and moved in as anybody would; undo takes it back. */
static void
close_and_open (WindowSupport *self, const GbHull *hull)
{
  GtkWidget *page = gb_window_get_page (self->window, "hulls");
  GbProject *project = gb_window_get_project (self->window);
  const gint64 id = hull->rec.id;
  GtkWidget *edge = gb_inspector_find (GB_INSPECTOR (support_find (page, GB_TYPE_INSPECTOR)), "edge");
  g_autoptr (GError) error = NULL;

  g_assert_nonnull (edge);
  gtk_widget_child_focus (edge, GTK_DIR_TAB_FORWARD);
  support_keys (&self->input, "space Down Return");
  support_until (gb_boat_hull (gb_project_get_boat (project), id)->edge == GB_EDGE_CLOSED);
  gb_project_undo (project, &error);
  g_assert_no_error (error);
  g_assert_cmpint (gb_boat_hull (gb_project_get_boat (project), id)->edge, ==, GB_EDGE_OPEN);
  support_settle ();
}

/* The first hull is a box from the start. */
static void
give_the_box_its_sides (WindowSupport *self)
{
  GtkWidget *page = gb_window_get_page (self->window, "hulls");
  GbProject *project = gb_window_get_project (self->window);
  const GbHull *hull = gb_boat_roots (gb_project_get_boat (project), GB_RECORD_HULL)->pdata[0];

  g_assert_cmpint (hull->form, ==, GB_HULL_BLOCK);
  close_and_open (self, hull);
  fill (self, page, "length", "2 m");
  fill (self, page, "width", "1 m");
  fill (self, page, "height", "0.4 m");
  support_until (!isnan (gb_project_get_findings (project)->flotation.limit.displacement));
}

static void
add_load (WindowSupport *self)
{
  GtkWidget *page = window_support_page (self, "afloat", NULL);

  click_button (self, page, "_Add a Load");
  support_type (&self->input, "Helm");
  support_keys (&self->input, "Return");
  support_until (count (self, GB_RECORD_LOAD) == 1);
}

static void
add_receipt (WindowSupport *self)
{
  GtkWidget *page = window_support_page (self, "purchases", NULL);

  click_button (self, page, "_Enter a Receipt");
  support_type (&self->input, "Timber yard");
  support_keys (&self->input, "Return");
  support_until (count (self, GB_RECORD_PURCHASE) == 1);
}

static void
test_main_job (void)
{
  WindowSupport self;
  g_autofree char *path = g_build_filename (window_support_home (), "Dipper.garboard", NULL);

  window_support_open (&self, NULL, 1280, 800);
  g_assert_true (gb_window_start_build (self.window, path));
  self.input.project = gb_window_get_project (self.window);
  support_settle ();
  add_parts (&self);
  g_assert_nonnull (strstr (strip_words (&self, "weight"), "kg"));
  g_assert_nonnull (strstr (strip_words (&self, "centre"), "x 1000 mm"));
  add_hull (&self);
  give_the_box_its_sides (&self);
  g_assert_nonnull (strstr (strip_words (&self, "afloat"), "free"));
  add_load (&self);
  add_receipt (&self);
  g_assert_nonnull (strstr (strip_words (&self, "money"), "spent"));
  support_picture (&self.input, "window-main-job");
  window_support_close (&self);

  /* The next day all is there. */
  window_support_open (&self, path, 1280, 800);
  g_assert_cmpuint (count (&self, GB_RECORD_PART), ==, 1);
  g_assert_cmpuint (count (&self, GB_RECORD_HULL), ==, 1);
  g_assert_cmpuint (count (&self, GB_RECORD_LOAD), ==, 1);
  g_assert_cmpuint (count (&self, GB_RECORD_PURCHASE), ==, 1);
  window_support_close (&self);
}

int
main (int argc, char **argv)
{
  window_support_init (&argc, &argv);
  g_test_add_func ("/main-job", test_main_job);
  return window_support_run ();
}
