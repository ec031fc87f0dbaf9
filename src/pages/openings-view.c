/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-openings-view"

#include "openings-view.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "pages/grid-pane.h"
#include "pages/hull-grids.h"

struct _GbOpeningsView
{
  GtkBox parent_instance;

  GbProject *project;
  GbGridPane *hulls;
  GbGridPane *openings;
  GbGridPane *corners;
  GtkWidget *nothing; /* in their place while there is no hull */
  GtkLabel *trouble;
  GbChartArea *area;
};

G_DEFINE_FINAL_TYPE (GbOpeningsView, gb_openings_view, GTK_TYPE_BOX)

/* Nothing lives in this id: a table of it is empty. */
#define NOBODY -1

/* The one that is selected in @pane; with the blank row at hand the last one of @all, which has just been
 * added as a rule. */
static gint64
at_hand (GbGridPane *pane, const GPtrArray *all)
{
  guint n;
  g_autofree gint64 *ids = gb_grid_dup_selected (gb_grid_pane_get_grid (pane), &n);

  if (n == 0 && all->len > 0)
    return ((const GbRecord *) all->pdata[all->len - 1])->id;
  return n == 1 ? ids[0] : NOBODY;
}

static void
set_owner (GbGridPane *pane, gint64 owner)
{
  GbGrid *grid = gb_grid_pane_get_grid (pane);

  if (gb_grid_get_owner (grid) != owner)
    gb_grid_set_owner (grid, owner);
  gtk_widget_set_sensitive (GTK_WIDGET (pane), owner > 0);
}

/* What keeps an opening from being reckoned with is said over the drawing. */
static void
show_troubles (GbOpeningsView *self)
{
  const GPtrArray *troubles = gb_project_get_findings (self->project)->edges.troubles;
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; troubles != NULL && i < troubles->len; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? "\n" : "", (const char *) troubles->pdata[i]);
  gtk_label_set_text (self->trouble, text->str);
  gtk_widget_set_visible (GTK_WIDGET (self->trouble), text->len > 0);
}

/* Each table follows the row that is at hand in the one before it. */
static void
follow (GbOpeningsView *self)
{
  const GbBoat *boat;
  const GPtrArray *hulls;
  const GbRecord *hull, *opening = NULL;
  gint64 id;

  if (self->project == NULL)
    return;
  boat = gb_project_get_boat (self->project);
  hulls = gb_boat_roots (boat, GB_RECORD_HULL);
  id = at_hand (self->hulls, hulls);
  hull = gb_boat_get (boat, GB_RECORD_HULL, id);
  gtk_widget_set_visible (GTK_WIDGET (self->hulls), hulls->len > 1);
  gtk_widget_set_visible (GTK_WIDGET (self->openings), hulls->len > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->corners), hulls->len > 0);
  gtk_widget_set_visible (self->nothing, hulls->len == 0);
  set_owner (self->openings, hull != NULL ? id : NOBODY);
  if (hull != NULL)
    id = at_hand (self->openings, gb_record_children_of (hull, GB_RECORD_OPENING));
  if (hull != NULL)
    opening = gb_boat_get (boat, GB_RECORD_OPENING, id);
  set_owner (self->corners, opening != NULL ? id : NOBODY);
  show_troubles (self);
}

void
gb_openings_view_go_to (GbOpeningsView *self, const GbPlace *place)
{
  const GbBoat *boat;
  const GbRecord *record, *opening;

  g_return_if_fail (GB_IS_OPENINGS_VIEW (self));
  boat = gb_project_get_boat (self->project);
  record = gb_boat_get (boat, place->kind, place->id);
  opening = record != NULL && record->kind == GB_RECORD_CORNER
                ? gb_boat_get (boat, GB_RECORD_OPENING, record->owner)
                : record;
  if (opening == NULL)
    return;
  gb_grid_go_to (gb_grid_pane_get_grid (self->hulls), GB_RECORD_HULL, opening->owner, NULL, FALSE);
  gb_grid_go_to (gb_grid_pane_get_grid (self->openings), GB_RECORD_OPENING, opening->id,
                 record == opening ? place->field : NULL, FALSE);
  if (record != opening)
    gb_grid_go_to (gb_grid_pane_get_grid (self->corners), GB_RECORD_CORNER, record->id, place->field, FALSE);
}

GbChartArea *
gb_openings_view_get_area (GbOpeningsView *self)
{
  g_return_val_if_fail (GB_IS_OPENINGS_VIEW (self), NULL);
  return self->area;
}

void
gb_openings_view_set_project (GbOpeningsView *self, GbProject *project)
{
  g_return_if_fail (GB_IS_OPENINGS_VIEW (self));
  if (self->project != NULL)
    g_signal_handlers_disconnect_by_data (self->project, self);
  g_set_object (&self->project, project);
  gb_grid_pane_set_project (self->hulls, project);
  gb_grid_pane_set_project (self->openings, project);
  gb_grid_pane_set_project (self->corners, project);
  if (project == NULL)
    return;
  g_signal_connect_object (project, "changed", G_CALLBACK (follow), self, G_CONNECT_SWAPPED);
  gb_grid_pane_select_first (self->hulls, gb_boat_roots (gb_project_get_boat (project), GB_RECORD_HULL));
  follow (self);
}

static void
gb_openings_view_dispose (GObject *object)
{
  GbOpeningsView *self = GB_OPENINGS_VIEW (object);

  if (self->project != NULL)
    g_signal_handlers_disconnect_by_data (self->project, self);
  g_clear_object (&self->project);
  G_OBJECT_CLASS (gb_openings_view_parent_class)->dispose (object);
}

static void
gb_openings_view_class_init (GbOpeningsViewClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = gb_openings_view_dispose;
}

static GtkWidget *
make_nothing (void)
{
  GtkWidget *page = adw_status_page_new ();
  GtkWidget *start = gtk_button_new_with_mnemonic (_ ("_Add a Hull"));

  adw_status_page_set_title (ADW_STATUS_PAGE (page), _ ("No hull yet"));
  adw_status_page_set_description (ADW_STATUS_PAGE (page),
                                   _ ("Once there is a hull, its hatches and slots are entered here."));
  gtk_widget_set_halign (start, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (start, "pill");
  gtk_actionable_set_action_name (GTK_ACTIONABLE (start), "hulls.add");
  adw_status_page_set_child (ADW_STATUS_PAGE (page), start);
  gtk_widget_add_css_class (page, "compact");
  gtk_widget_set_vexpand (page, TRUE);
  gtk_widget_set_size_request (page, 320, -1);
  return page;
}

static GtkWidget *
make_tables (GbOpeningsView *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GbGridPane *const panes[] = { self->hulls, self->openings, self->corners };

  for (guint i = 0; i < G_N_ELEMENTS (panes); i++)
    {
      gtk_widget_set_size_request (GTK_WIDGET (panes[i]), 320, panes[i] == self->hulls ? 150 : 110);
      gtk_widget_set_vexpand (GTK_WIDGET (panes[i]), panes[i] != self->hulls);
      gtk_box_append (GTK_BOX (box), GTK_WIDGET (panes[i]));
      g_signal_connect_object (gb_grid_pane_get_grid (panes[i]), "selection-changed", G_CALLBACK (follow),
                               self, G_CONNECT_SWAPPED);
    }
  self->nothing = make_nothing ();
  gtk_box_append (GTK_BOX (box), self->nothing);
  gtk_widget_set_hexpand (box, FALSE);
  return box;
}

static GtkWidget *
make_picture (GbOpeningsView *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->trouble = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_wrap (self->trouble, TRUE);
  gtk_widget_set_visible (GTK_WIDGET (self->trouble), FALSE);
  gtk_widget_add_css_class (GTK_WIDGET (self->trouble), "notice");
  gtk_widget_set_vexpand (GTK_WIDGET (self->area), TRUE);
  gtk_widget_set_hexpand (box, TRUE);
  gtk_widget_set_size_request (GTK_WIDGET (self->area), 300, 200);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->trouble));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->area));
  return box;
}

static void
gb_openings_view_init (GbOpeningsView *self)
{
  self->hulls = gb_grid_pane_new (&gb_hull_choice_grid_type, _ ("Of the hull"), NULL);
  self->openings = gb_grid_pane_new (&gb_opening_grid_type, _ ("Openings"), NULL);
  self->corners = gb_grid_pane_new (&gb_corner_grid_type, _ ("Corners of the opening"), NULL);
  gb_grid_pane_set_hint (self->openings, _ ("What must stay above water beside the hull's own edge: a hatch, "
                                            "a daggerboard slot, a low coaming."));
  gb_grid_pane_set_hint (self->corners, _ ("One corner is a point; several are joined by straight lines."));
  self->area = GB_CHART_AREA (gb_chart_area_new ());

  gtk_box_append (GTK_BOX (self), make_tables (self));
  gtk_box_append (GTK_BOX (self), gtk_separator_new (GTK_ORIENTATION_VERTICAL));
  gtk_box_append (GTK_BOX (self), make_picture (self));
}
