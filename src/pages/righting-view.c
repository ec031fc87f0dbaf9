/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-righting-view"

#include "righting-view.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "boat/deviation.h"
#include "boat/quantity.h"
#include "engine/working.h"
#include "pages/fact-list.h"
#include "project/project-study.h"

typedef enum
{
  FACT_GM,
  FACT_SOLID,
  FACT_GREATEST,
  FACT_GREATEST_AT,
  FACT_FILLING,
  FACT_VANISHING,
  FACT_AREA,
  FACT_STEADY,
  FACT_RESTS,
  N_FACTS
} Fact;

struct _GbRightingView
{
  GtkBox parent_instance;

  GbProject *project; /* borrowed */
  gint64 condition;
  GbChartArea *area;
  GbFactRow *facts[N_FACTS];
  AdwPreferencesGroup *edges;
  GPtrArray *edge_rows; /* (element-type GtkWidget), borrowed */
};

G_DEFINE_FINAL_TYPE (GbRightingView, gb_righting_view, GTK_TYPE_BOX)

static const GbRighting *
find_righting (GbRightingView *self)
{
  const GbStudy *study = self->project != NULL ? gb_project_get_study (self->project, self->condition) : NULL;

  return study != NULL ? study->righting : NULL;
}

static GbWorking *
ask_working (gpointer data)
{
  GbRightingView *self = data;

  return gb_working_righting (gb_project_get_boat (self->project), gb_project_get_findings (self->project),
                              find_righting (self));
}

static const GbFactSpec specs[N_FACTS] = {
  [FACT_GM] = { N_ ("Stiffness at rest: GM"), ask_working },
  [FACT_SOLID] = { N_ ("GM with liquids frozen"), ask_working },
  [FACT_GREATEST] = { N_ ("Greatest lever"), ask_working },
  [FACT_GREATEST_AT] = { N_ ("Where that is"), NULL },
  [FACT_FILLING] = { N_ ("Water comes in from"), ask_working },
  [FACT_VANISHING] = { N_ ("Closed, would go over beyond"), ask_working },
  [FACT_AREA] = { N_ ("Area before she fills or goes over"), ask_working },
  [FACT_STEADY] = { N_ ("Heel under the heeling moment"), ask_working },
  [FACT_RESTS] = { N_ ("Comes to rest at"), ask_working },
};

/* Words ------------------------------------------------------------------------------------------------- */

static char *
degrees (double angle)
{
  return gb_quantity_format (angle, GB_DIM_ANGLE, GB_UNITS_METRIC);
}

/* One word where both sides have the same. */
static char *
both_sides (char *take_starboard, char *take_port)
{
  g_autofree char *starboard = take_starboard;
  g_autofree char *port = take_port;

  if (strcmp (starboard, port) == 0)
    return g_steal_pointer (&starboard);
  /* Translators: a figure to starboard, and the same to port, on two lines. */
  return g_strdup_printf (_ ("%s to starboard,\n%s to port"), starboard, port);
}

/* The area is a length times an angle: its work over her weight. */
static char *
area_words (double area)
{
  return isnan (area) ? g_strdup ("–") : g_strdup_printf (_ ("%.3f m rad"), area);
}

/* Only where she stays: an upright one and those that she may be knocked into. */
static char *
rest_words (const GArray *balances)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < balances->len; i++)
    {
      const GbBalance *balance = &g_array_index (balances, GbBalance, i);
      g_autofree char *angle = degrees (balance->heel);

      if (balance->stable)
        g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", angle);
    }
  return g_strdup (text->len > 0 ? text->str : "–");
}

/* "23° to starboard, 23° to port, 8° by the bow, never by the stern", the nevers left out. */
static char *
immersion_words (const GbEdgeImmersion *edge)
{
  const struct
  {
    double angle;
    const char *words;
  } ways[] = {
    { edge->starboard, _ ("%s to starboard") },
    { edge->port, _ ("%s to port") },
    { edge->bow, _ ("%s by the bow") },
    { edge->stern, _ ("%s by the stern") },
  };
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (ways); i++)
    {
      g_autofree char *angle = degrees (ways[i].angle);

      if (isnan (ways[i].angle))
        continue;
      if (text->len > 0)
        g_string_append (text, ", ");
      g_string_append_printf (text, ways[i].words, angle);
    }
  return g_strdup (text->len > 0 ? text->str : _ ("never"));
}

/* Showing ----------------------------------------------------------------------------------------------- */

static void
set_pair (GbRightingView *self, Fact fact, char *starboard, char *port)
{
  gb_fact_list_set (self->facts[fact], both_sides (starboard, port), FALSE);
}

static void
show_facts (GbRightingView *self, const GbRighting *r, GbUnits units)
{
  const GbRightingSide *s = &r->starboard, *p = &r->port;

  gb_fact_list_set (self->facts[FACT_GM], gb_length_format (r->gm, units), r->gm < 0);
  gb_fact_list_set (self->facts[FACT_SOLID], gb_length_format (r->gm_solid, units), FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self->facts[FACT_SOLID]), fabs (r->gm_solid - r->gm) > 0.0005);
  set_pair (self, FACT_GREATEST, gb_length_format (s->dry_greatest, units),
            gb_length_format (p->dry_greatest, units));
  set_pair (self, FACT_GREATEST_AT, degrees (s->dry_greatest_at), degrees (p->dry_greatest_at));
  set_pair (self, FACT_FILLING, degrees (s->filling), degrees (p->filling));
  set_pair (self, FACT_VANISHING, degrees (s->vanishing), degrees (p->vanishing));
  set_pair (self, FACT_AREA, area_words (s->dry_area), area_words (p->dry_area));
  set_pair (self, FACT_STEADY, degrees (s->steady), degrees (p->steady));
  gtk_widget_set_visible (GTK_WIDGET (self->facts[FACT_STEADY]), !isnan (r->moment));
  gb_fact_list_set (self->facts[FACT_RESTS], rest_words (r->balances), FALSE);
}

static void
clear_edges (GbRightingView *self)
{
  for (guint i = 0; i < self->edge_rows->len; i++)
    adw_preferences_group_remove (self->edges, self->edge_rows->pdata[i]);
  g_ptr_array_set_size (self->edge_rows, 0);
}

static void
show_edges (GbRightingView *self, const GbRighting *righting)
{
  const GPtrArray *lines = gb_project_get_findings (self->project)->edges.lines;

  clear_edges (self);
  for (guint i = 0; i < righting->immersions->len; i++)
    {
      const GbEdgeImmersion *edge = &g_array_index (righting->immersions, GbEdgeImmersion, i);
      g_autofree char *words = immersion_words (edge);
      g_autofree char *title = NULL;
      GtkWidget *row;

      if (edge->line < 0 || (guint) edge->line >= lines->len)
        continue;
      /* A name is text, a title markup. */
      title = g_markup_escape_text (((const GbEdgeLine *) lines->pdata[edge->line])->name, -1);
      row = g_object_new (ADW_TYPE_ACTION_ROW, "title", title, "subtitle", words, NULL);
      adw_preferences_group_add (self->edges, row);
      g_ptr_array_add (self->edge_rows, row);
    }
}

void
gb_righting_view_show (GbRightingView *self, GbProject *project, gint64 condition)
{
  const GbRighting *righting;

  g_return_if_fail (GB_IS_RIGHTING_VIEW (self));
  self->project = project;
  self->condition = condition;
  righting = find_righting (self);
  gtk_widget_set_visible (GTK_WIDGET (self->edges), righting != NULL && righting->immersions->len > 0);
  if (righting != NULL)
    {
      show_facts (self, righting, gb_project_get_build (project)->units);
      show_edges (self, righting);
      return;
    }
  clear_edges (self);
  for (guint i = 0; i < N_FACTS; i++)
    gb_fact_row_set_value (self->facts[i], "–", FALSE);
}

GbChartArea *
gb_righting_view_get_area (GbRightingView *self)
{
  g_return_val_if_fail (GB_IS_RIGHTING_VIEW (self), NULL);
  return self->area;
}

static void
gb_righting_view_finalize (GObject *object)
{
  g_ptr_array_unref (GB_RIGHTING_VIEW (object)->edge_rows);
  G_OBJECT_CLASS (gb_righting_view_parent_class)->finalize (object);
}

static void
gb_righting_view_class_init (GbRightingViewClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = gb_righting_view_finalize;
}

static void
gb_righting_view_init (GbRightingView *self)
{
  GtkWidget *side = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);

  self->edge_rows = g_ptr_array_new ();
  self->area = GB_CHART_AREA (gb_chart_area_new ());
  self->edges = ADW_PREFERENCES_GROUP (
      gb_fact_list_new (_ ("First under water, heeled or trimmed"), NULL, 0, NULL, NULL));
  gtk_box_append (GTK_BOX (side), gb_fact_list_new (NULL, specs, N_FACTS, self, self->facts));
  gtk_box_append (GTK_BOX (side), GTK_WIDGET (self->edges));
  gtk_box_append (GTK_BOX (side), gb_quiet_label_new (gb_caution_afloat ()));
  gtk_box_append (GTK_BOX (self), gb_beside_facts (GTK_WIDGET (self->area), side));
}
