/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-hulls-page"

#include "hulls-page.h"

#include <glib/gi18n-lib.h>

#include "pages/grid-pane.h"
#include "pages/hull-grids.h"
#include "pages/openings-view.h"
#include "project/project.h"
#include "widgets/chart-host.h"
#include "widgets/inspector.h"

struct _GbHullsPage
{
  GbPage parent_instance;

  GbProject *project; /* the page's own, borrowed */
  GbChartHost *charts;
  GbGridPane *hulls;
  GbGridPane *stations;
  GbGridPane *offsets;
  GtkWidget *inspector;
  GtkWidget *details;

  GtkStack *views;
  GtkBox *tables;
  GtkLabel *trouble;
  GbChartArea *drawing;
  GbOpeningsView *openings;
  GbChartArea *draught;
};

G_DEFINE_FINAL_TYPE (GbHullsPage, gb_hulls_page, GB_TYPE_PAGE)

/* Nothing lives in this id: a table of it is empty. */
#define NOBODY -1

static gint64
only_selected (GbGridPane *pane)
{
  guint n;
  g_autofree gint64 *ids = gb_grid_dup_selected (gb_grid_pane_get_grid (pane), &n);

  return n == 1 ? ids[0] : NOBODY;
}

/* The one that is selected; with the blank row at hand the last one, which has just been added as a rule. */
static const GbHull *
hull_at_hand (GbHullsPage *self)
{
  const GPtrArray *hulls;
  g_autofree gint64 *ids = NULL;
  guint n;

  if (self->project == NULL)
    return NULL;
  ids = gb_grid_dup_selected (gb_grid_pane_get_grid (self->hulls), &n);
  hulls = gb_boat_roots (gb_project_get_boat (self->project), GB_RECORD_HULL);
  if (n == 0 && hulls->len > 0)
    return hulls->pdata[hulls->len - 1];
  return n == 1 ? gb_boat_hull (gb_project_get_boat (self->project), ids[0]) : NULL;
}

static void
show_trouble (GbHullsPage *self)
{
  const GbHull *hull = hull_at_hand (self);
  const GbHullSet *found = self->project != NULL ? &gb_project_get_findings (self->project)->hulls : NULL;
  const char *trouble = hull != NULL && hull->rec.index < found->n_hulls ? found->hulls[hull->rec.index].trouble : NULL;

  gtk_label_set_text (self->trouble, trouble != NULL ? trouble : "");
  gtk_widget_set_visible (GTK_WIDGET (self->trouble), trouble != NULL);
}

static void
station_selected_cb (GbGrid *grid, GbHullsPage *self)
{
  gint64 station = only_selected (self->stations);

  gb_grid_set_owner (gb_grid_pane_get_grid (self->offsets), station);
  gtk_widget_set_sensitive (GTK_WIDGET (self->offsets), station > 0);
}

/* The hull's fields, and its stations and offsets where it is given by those. */
static void
hull_selected_cb (GbGrid *grid, GbHullsPage *self)
{
  const GbHull *hull = hull_at_hand (self);
  gboolean by_stations = hull != NULL && hull->form == GB_HULL_STATIONS;
  const gint64 ids[] = { hull != NULL ? hull->rec.id : 0 };

  gb_grid_set_owner (gb_grid_pane_get_grid (self->stations), hull != NULL ? hull->rec.id : NOBODY);
  gtk_widget_set_sensitive (GTK_WIDGET (self->stations), hull != NULL);
  if (hull != NULL && only_selected (self->stations) == NOBODY)
    gb_grid_pane_select_first (self->stations, gb_record_children (&hull->rec));
  station_selected_cb (gb_grid_pane_get_grid (self->stations), self);
  gtk_widget_set_visible (self->details, hull != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->stations), by_stations);
  gtk_widget_set_visible (GTK_WIDGET (self->offsets), by_stations);
  gtk_widget_set_hexpand (GTK_WIDGET (self->hulls), hull == NULL);
  gb_inspector_show (GB_INSPECTOR (self->inspector), self->project, GB_RECORD_HULL, ids, hull != NULL ? 1 : 0);
  show_trouble (self);
}

static void
changed_cb (GbProject *project, GbChanges *changes, GbHullsPage *self)
{
  if (gb_changes_touch (changes, GB_RECORD_HULL))
    hull_selected_cb (gb_grid_pane_get_grid (self->hulls), self);
  show_trouble (self);
}

/* To the row of an edit that was undone, by way of the rows that it lives in. */
static void
go_to (GbHullsPage *self, const GbRecord *record, const char *field)
{
  const GbBoat *boat = gb_project_get_boat (self->project);
  GbGridPane *pane = self->hulls;

  if (record->kind == GB_RECORD_STATION || record->kind == GB_RECORD_OFFSET)
    {
      const GbRecord *owner = gb_boat_get (boat, gb_record_type (record->kind)->owner, record->owner);

      if (owner != NULL)
        go_to (self, owner, NULL);
      pane = record->kind == GB_RECORD_STATION ? self->stations : self->offsets;
    }
  gb_grid_go_to (gb_grid_pane_get_grid (pane), record->kind, record->id, field, FALSE);
}

static void
place_cb (GbProject *project, const GbPlace *place, GbHullsPage *self)
{
  const GbRecord *record = gb_boat_get (gb_project_get_boat (project), place->kind, place->id);

  if (place->kind == GB_RECORD_OPENING || place->kind == GB_RECORD_CORNER)
    {
      gtk_stack_set_visible_child_name (self->views, "openings");
      gb_openings_view_go_to (self->openings, place);
    }
  else if (place->kind == GB_RECORD_HULL || place->kind == GB_RECORD_STATION || place->kind == GB_RECORD_OFFSET)
    {
      gtk_stack_set_visible_child_name (self->views, "hulls");
      if (record != NULL)
        go_to (self, record, place->field);
    }
}

/* Actions ----------------------------------------------------------------------------------------------------------- */

static void
add_hull_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GbHullsPage *self = GB_HULLS_PAGE (widget);

  gtk_stack_set_visible_child_name (self->views, "hulls");
  gb_grid_pane_start (self->hulls);
}

/* Object ------------------------------------------------------------------------------------------------------------ */

static void
gb_hulls_page_show (GbPage *page, GbProject *project)
{
  GbHullsPage *self = GB_HULLS_PAGE (page);

  self->project = project;
  gb_chart_host_set_project (self->charts, project);
  gb_grid_pane_set_project (self->hulls, project);
  gb_grid_pane_set_project (self->stations, project);
  gb_grid_pane_set_project (self->offsets, project);
  gb_openings_view_set_project (self->openings, project);
  if (project != NULL)
    {
      g_signal_connect_object (project, "changed", G_CALLBACK (changed_cb), self, 0);
      g_signal_connect_object (project, "place", G_CALLBACK (place_cb), self, 0);
      gb_grid_pane_select_first (self->hulls, gb_boat_roots (gb_project_get_boat (project), GB_RECORD_HULL));
    }
  hull_selected_cb (gb_grid_pane_get_grid (self->hulls), self);
}

static void
gb_hulls_page_dispose (GObject *object)
{
  GbHullsPage *self = GB_HULLS_PAGE (object);

  gb_page_set_project (GB_PAGE (self), NULL);
  g_clear_object (&self->charts);
  gtk_widget_dispose_template (GTK_WIDGET (self), GB_TYPE_HULLS_PAGE);
  G_OBJECT_CLASS (gb_hulls_page_parent_class)->dispose (object);
}

static void
gb_hulls_page_class_init (GbHullsPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = gb_hulls_page_dispose;
  GB_PAGE_CLASS (klass)->show = gb_hulls_page_show;

  g_type_ensure (GB_TYPE_CHART_AREA);
  g_type_ensure (GB_TYPE_OPENINGS_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/garboard/Garboard/hulls-page.ui");
  gtk_widget_class_bind_template_child (widget_class, GbHullsPage, views);
  gtk_widget_class_bind_template_child (widget_class, GbHullsPage, tables);
  gtk_widget_class_bind_template_child (widget_class, GbHullsPage, trouble);
  gtk_widget_class_bind_template_child (widget_class, GbHullsPage, drawing);
  gtk_widget_class_bind_template_child (widget_class, GbHullsPage, openings);
  gtk_widget_class_bind_template_child (widget_class, GbHullsPage, draught);
  gtk_widget_class_install_action (widget_class, "hulls.add", NULL, add_hull_action);
}

static void
add_table (GbHullsPage *self, GtkWidget *table, int width, gboolean expand)
{
  if (gtk_widget_get_first_child (GTK_WIDGET (self->tables)) != NULL)
    gtk_widget_add_css_class (table, "gb-beside");
  gtk_widget_set_size_request (table, width, -1);
  gtk_widget_set_hexpand (table, expand);
  gtk_box_append (self->tables, table);
}

/* The details may be higher than the tables beside them. */
static GtkWidget *
make_scroller (GtkWidget *inspector)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), inspector);
  gtk_widget_set_margin_start (inspector, 12);
  gtk_widget_set_margin_end (inspector, 12);
  gtk_widget_set_margin_top (inspector, 12);
  gtk_widget_set_margin_bottom (inspector, 12);
  return scroller;
}

static void
make_tables (GbHullsPage *self)
{
  self->hulls = gb_grid_pane_new (&gb_hull_grid_type, _ ("Hulls"), NULL);
  self->stations = gb_grid_pane_new (&gb_station_grid_type, _ ("Stations"), NULL);
  self->offsets = gb_grid_pane_new (&gb_offset_grid_type, _ ("Points, keel to sheer"), NULL);
  self->inspector = gb_inspector_new ();

  gb_grid_pane_set_nothing (self->hulls, _ ("No hull yet"),
                            _ ("A hull tells how much the boat carries and how deep she floats. A box of three sides is enough to begin with; "
                               "stations and offsets can follow."),
                            _ ("_Add a Hull"), NULL);
  add_table (self, GTK_WIDGET (self->hulls), 140, FALSE);
  self->details = make_scroller (self->inspector);
  add_table (self, self->details, 260, TRUE);
  add_table (self, GTK_WIDGET (self->stations), 140, FALSE);
  add_table (self, GTK_WIDGET (self->offsets), 170, FALSE);

  g_signal_connect_object (gb_grid_pane_get_grid (self->hulls), "selection-changed", G_CALLBACK (hull_selected_cb), self, 0);
  g_signal_connect_object (gb_grid_pane_get_grid (self->stations), "selection-changed", G_CALLBACK (station_selected_cb), self, 0);
}

static void
gb_hulls_page_init (GbHullsPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  make_tables (self);

  self->charts = gb_chart_host_new ();
  gb_chart_host_add (self->charts, self->drawing, GB_CHART_BOAT);
  gb_chart_host_add (self->charts, gb_openings_view_get_area (self->openings), GB_CHART_FLOATING);
  gb_chart_host_add (self->charts, self->draught, GB_CHART_DRAUGHT);
}
