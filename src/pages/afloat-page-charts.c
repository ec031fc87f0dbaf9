/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-afloat-page"

#include "afloat-page-private.h"

#include <glib/gi18n-lib.h>

#include "engine/working.h"
#include "pages/afloat-words.h"
#include "pages/fact-list.h"

/* Who moves in the crew map: what is selected, else the first person, else the first load. */
gint64
gb_afloat_page_mover (GbAfloatPage *self)
{
  const GbBoat *boat = gb_project_get_boat (self->project);
  const GbRecord *condition = gb_boat_get (boat, GB_RECORD_CONDITION, self->condition);
  const GPtrArray *loads = condition != NULL ? gb_record_children (condition) : NULL;

  if (self->load != 0 || loads == NULL || loads->len == 0)
    return self->load;
  for (guint i = 0; i < loads->len; i++)
    if (((const GbLoad *) loads->pdata[i])->kind == GB_LOAD_PERSON)
      return ((const GbRecord *) loads->pdata[i])->id;
  return ((const GbRecord *) loads->pdata[0])->id;
}

/* The view that is in sight. What it needs may be dear, so the others wait until they are. */
void
gb_afloat_page_show_view (GbAfloatPage *self)
{
  const char *view = gtk_stack_get_visible_child_name (self->views);

  if (self->project == NULL || view == NULL || !gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  if (g_str_equal (view, "figures") && !self->dragging)
    gb_afloat_facts_show (self->facts, self->project,
                          gb_findings_afloat (gb_project_get_findings (self->project), self->condition));
  else if (g_str_equal (view, "crew"))
    gb_crew_view_show (self->crew, self->project, self->condition, gb_afloat_page_mover (self));
  else if (g_str_equal (view, "righting"))
    gb_righting_view_show (self->righting, self->project, self->condition);
  else if (g_str_equal (view, "swamped"))
    gb_swamped_view_show (self->swamped, self->project, self->condition);
}

/* A load is dragged ------------------------------------------------------------------------------------- */

static void
picked_cb (GbAfloatDrag *drag, gint64 load, GbAfloatPage *self)
{
  gb_grid_go_to (gb_grid_pane_get_grid (self->loads), GB_RECORD_LOAD, load, NULL, FALSE);
}

/* The table and the details keep what is stored until it is let go, so its place is said above them. */
static void
show_place (GbAfloatPage *self, gint64 load, const GbVec3 *to)
{
  const GbRecord *record = gb_boat_get (gb_project_get_boat (self->project), GB_RECORD_LOAD, load);
  g_autofree char *title = record != NULL ? gb_record_dup_title (record) : g_strdup ("");
  g_autofree char *place
      = gb_afloat_place_words (to->x, to->y, gb_project_get_build (self->project)->units);
  /* Translators: a load that is being dragged, and where it is: "Anna at x 1400, y 250 mm". */
  g_autofree char *words = g_strdup_printf (_ ("%s at %s"), title, place);

  gtk_label_set_text (self->details_title, words);
}

static void
moved_cb (GbAfloatDrag *drag, gint64 load, const GbAfloat *afloat, const GbVec3 *to, GbAfloatPage *self)
{
  self->dragging = TRUE;
  gb_chart_host_set_moved (self->charts, afloat, *to);
  gb_afloat_facts_show (self->facts, self->project, afloat);
  show_place (self, load, to);
}

static void
ended_cb (GbAfloatDrag *drag, GbAfloatPage *self)
{
  self->dragging = FALSE;
  gb_chart_host_set_moved (self->charts, NULL, (GbVec3){ 0 });
  gb_afloat_page_show_details (self);
  gb_afloat_page_show_view (self);
}

static void
mover_chosen_cb (GbCrewView *crew, gint64 load, GbAfloatPage *self)
{
  picked_cb (NULL, load, self);
}

void
gb_afloat_page_make_charts (GbAfloatPage *self)
{
  self->charts = gb_chart_host_new ();
  gb_chart_host_add (self->charts, self->drawing, GB_CHART_FLOATING);
  gb_chart_host_add (self->charts, self->freeboard, GB_CHART_FREEBOARD);
  gtk_box_append (self->freeboard_view, gb_quiet_label_new (gb_caution_afloat ()));
  gb_chart_host_add (self->charts, gb_crew_view_get_area (self->crew), GB_CHART_CREW);
  gb_chart_host_add (self->charts, gb_righting_view_get_area (self->righting), GB_CHART_RIGHTING);
  gb_chart_host_add (self->charts, gb_swamped_view_get_area (self->swamped), GB_CHART_SWAMPED);

  self->drag = gb_afloat_drag_new ();
  gb_afloat_drag_attach (self->drag, self->drawing);
  gb_afloat_drag_attach (self->drag, gb_crew_view_get_area (self->crew));
  g_signal_connect_object (self->drag, "picked", G_CALLBACK (picked_cb), self, 0);
  g_signal_connect_object (self->drag, "moved", G_CALLBACK (moved_cb), self, 0);
  g_signal_connect_object (self->drag, "ended", G_CALLBACK (ended_cb), self, 0);
  g_signal_connect_object (self->crew, "load-chosen", G_CALLBACK (mover_chosen_cb), self, 0);
}
