/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-test-log"

#include "test-log.h"

#include <glib/gi18n-lib.h>

struct _GbTestLog
{
  GtkBox parent_instance;

  const GbTestLogType *type;
  GbProject *project;
  GbGridPane *tests;
  GbGridPane *readings;
  GtkWidget *result;
};

G_DEFINE_FINAL_TYPE (GbTestLog, gb_test_log, GTK_TYPE_BOX)

enum
{
  SHOWN,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* Nothing lives in this id: a table of it is empty. */
#define NOBODY -1

const GbRecord *
gb_test_log_get_record (GbTestLog *self)
{
  const GPtrArray *tests;
  g_autofree gint64 *ids = NULL;
  guint n;

  g_return_val_if_fail (GB_IS_TEST_LOG (self), NULL);
  if (self->project == NULL)
    return NULL;
  ids = gb_grid_dup_selected (gb_grid_pane_get_grid (self->tests), &n);
  tests = gb_boat_roots (gb_project_get_boat (self->project), self->type->tests->kind);
  if (n == 0 && tests->len > 0)
    return tests->pdata[tests->len - 1];
  return n == 1 ? gb_boat_get (gb_project_get_boat (self->project), self->type->tests->kind, ids[0]) : NULL;
}

gint64
gb_test_log_at_hand (GbTestLog *self)
{
  const GbRecord *test = gb_test_log_get_record (self);

  return test != NULL ? test->id : 0;
}

static void
show_readings (GbTestLog *self)
{
  gint64 test = gb_test_log_at_hand (self);
  GbGrid *grid = gb_grid_pane_get_grid (self->readings);

  gtk_widget_set_visible (GTK_WIDGET (self->readings), test != 0);
  gtk_widget_set_visible (self->result, test != 0);
  if (gb_grid_get_owner (grid) != (test != 0 ? test : NOBODY))
    gb_grid_set_owner (grid, test != 0 ? test : NOBODY);
  g_signal_emit (self, signals[SHOWN], 0);
}

void
gb_test_log_go_to (GbTestLog *self, const GbPlace *place)
{
  GbGrid *tests = gb_grid_pane_get_grid (self->tests);
  const GbRecord *record;

  g_return_if_fail (GB_IS_TEST_LOG (self));
  record = self->project != NULL ? gb_boat_get (gb_project_get_boat (self->project), place->kind, place->id)
                                 : NULL;
  if (record == NULL)
    return;
  if (place->kind == self->type->tests->kind)
    {
      gb_grid_go_to (tests, place->kind, place->id, place->field, FALSE);
      return;
    }
  gb_grid_go_to (tests, self->type->tests->kind, record->owner, NULL, FALSE);
  gb_grid_go_to (gb_grid_pane_get_grid (self->readings), place->kind, place->id, place->field, FALSE);
}

GbGrid *
gb_test_log_get_grid (GbTestLog *self)
{
  g_return_val_if_fail (GB_IS_TEST_LOG (self), NULL);
  return gb_grid_pane_get_grid (self->tests);
}

void
gb_test_log_set_project (GbTestLog *self, GbProject *project)
{
  g_return_if_fail (GB_IS_TEST_LOG (self));
  if (self->project != NULL)
    g_signal_handlers_disconnect_by_data (self->project, self);
  g_set_object (&self->project, project);
  gb_grid_pane_set_project (self->tests, project);
  gb_grid_pane_set_project (self->readings, project);
  if (project != NULL)
    {
      g_signal_connect_object (project, "changed", G_CALLBACK (show_readings), self, G_CONNECT_SWAPPED);
      gb_grid_pane_select_first (self->tests,
                                 gb_boat_roots (gb_project_get_boat (project), self->type->tests->kind));
    }
  show_readings (self);
}

GbProject *
gb_test_log_get_project (GbTestLog *self)
{
  g_return_val_if_fail (GB_IS_TEST_LOG (self), NULL);
  return self->project;
}

static void
gb_test_log_dispose (GObject *object)
{
  GbTestLog *self = GB_TEST_LOG (object);

  if (self->project != NULL)
    g_signal_handlers_disconnect_by_data (self->project, self);
  g_clear_object (&self->project);
  G_OBJECT_CLASS (gb_test_log_parent_class)->dispose (object);
}

static void
gb_test_log_class_init (GbTestLogClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = gb_test_log_dispose;
  signals[SHOWN] = g_signal_new ("shown", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 0);
}

static void
gb_test_log_init (GbTestLog *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
}

static GtkWidget *
make_scroller (GtkWidget *result)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();

  gtk_widget_add_css_class (result, "gb-facts-beside");
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), result);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (scroller), 64);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scroller), 220);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scroller), TRUE);
  return scroller;
}

GbTestLog *
gb_test_log_new (const GbTestLogType *type, GtkWidget *result)
{
  GbTestLog *self = g_object_new (GB_TYPE_TEST_LOG, NULL);
  GtkWidget *tables = gtk_paned_new (GTK_ORIENTATION_HORIZONTAL);

  self->type = type;
  self->tests = gb_grid_pane_new (type->tests, _ (type->heading), NULL);
  self->readings = gb_grid_pane_new (type->readings, _ (type->readings_heading), NULL);
  gb_grid_pane_set_nothing (self->tests, _ (type->nothing), _ (type->sentence), _ ("_Add a Test"), NULL);
  gb_grid_set_owner (gb_grid_pane_get_grid (self->readings), NOBODY);
  g_signal_connect_object (gb_grid_pane_get_grid (self->tests), "selection-changed",
                           G_CALLBACK (show_readings), self, G_CONNECT_SWAPPED);

  gtk_paned_set_start_child (GTK_PANED (tables), GTK_WIDGET (self->tests));
  gtk_paned_set_end_child (GTK_PANED (tables), GTK_WIDGET (self->readings));
  gtk_paned_set_shrink_start_child (GTK_PANED (tables), FALSE);
  gtk_paned_set_shrink_end_child (GTK_PANED (tables), FALSE);
  gtk_widget_set_size_request (GTK_WIDGET (self->tests), 200, 128);
  gtk_widget_set_size_request (GTK_WIDGET (self->readings), 200, 128);
  gtk_widget_set_vexpand (tables, TRUE);
  gtk_widget_set_hexpand (tables, TRUE);
  gtk_box_append (GTK_BOX (self), tables);
  self->result = make_scroller (result);
  gtk_box_append (GTK_BOX (self), self->result);
  show_readings (self);
  return self;
}
