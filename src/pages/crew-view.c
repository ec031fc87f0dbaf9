/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-crew-view"

#include "crew-view.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "boat/deviation.h"
#include "engine/working.h"
#include "pages/afloat-words.h"
#include "pages/fact-list.h"
#include "project/project-study.h"

typedef enum
{
  FACT_BEST,
  FACT_BEST_FREE,
  FACT_PORT,
  FACT_STARBOARD,
  FACT_FIRST,
  N_FACTS
} Fact;

struct _GbCrewView
{
  GtkBox parent_instance;

  GbProject *project; /* borrowed */
  gint64 condition, load;
  GtkDropDown *mover;
  GtkStringList *names;
  GArray *loads; /* of gint64, as in the drop-down */
  gboolean filling;
  GbChartArea *area;
  GbFactRow *facts[N_FACTS];
};

G_DEFINE_FINAL_TYPE (GbCrewView, gb_crew_view, GTK_TYPE_BOX)

enum
{
  LOAD_CHOSEN,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

static const GbCrewMap *
find_map (GbCrewView *self)
{
  return self->project != NULL && self->load != 0
             ? gb_project_get_crew_map (self->project, self->condition, self->load)
             : NULL;
}

static GbWorking *
ask_working (gpointer data)
{
  GbCrewView *self = data;

  return gb_working_crew (gb_project_get_boat (self->project), gb_project_get_findings (self->project),
                          find_map (self));
}

static GbWorking *
ask_afloat (gpointer data)
{
  GbCrewView *self = data;

  return gb_working_afloat (gb_project_get_boat (self->project), gb_project_get_findings (self->project),
                            self->condition);
}

static const GbFactSpec specs[N_FACTS] = {
  [FACT_BEST] = { N_ ("Best place"), ask_working },
  [FACT_BEST_FREE] = { N_ ("Freeboard there"), ask_working },
  [FACT_PORT] = { N_ ("Across, to port as far as"), ask_working },
  [FACT_STARBOARD] = { N_ ("To starboard as far as"), ask_working },
  [FACT_FIRST] = { N_ ("Lowest edge now"), ask_afloat },
};

static void
chosen_cb (GtkDropDown *mover, GParamSpec *pspec, GbCrewView *self)
{
  guint at = gtk_drop_down_get_selected (mover);

  if (!self->filling && at < self->loads->len)
    g_signal_emit (self, signals[LOAD_CHOSEN], 0, g_array_index (self->loads, gint64, at));
}

static gboolean
same_loads (GbCrewView *self, const GPtrArray *loads)
{
  if (loads->len != self->loads->len)
    return FALSE;
  for (guint i = 0; i < loads->len; i++)
    {
      const GbRecord *load = loads->pdata[i];
      g_autofree char *title = gb_record_dup_title (load);

      if (load->id != g_array_index (self->loads, gint64, i)
          || strcmp (title, gtk_string_list_get_string (self->names, i)) != 0)
        return FALSE;
    }
  return TRUE;
}

static void
fill_mover (GbCrewView *self, const GPtrArray *loads, gint64 load)
{
  self->filling = TRUE;
  if (!same_loads (self, loads))
    {
      gtk_string_list_splice (self->names, 0, g_list_model_get_n_items (G_LIST_MODEL (self->names)), NULL);
      g_array_set_size (self->loads, 0);
      for (guint i = 0; i < loads->len; i++)
        {
          const GbRecord *record = loads->pdata[i];

          gtk_string_list_take (self->names, gb_record_dup_title (record));
          g_array_append_val (self->loads, record->id);
        }
    }
  for (guint i = 0; i < self->loads->len; i++)
    if (g_array_index (self->loads, gint64, i) == load)
      gtk_drop_down_set_selected (self->mover, i);
  self->filling = FALSE;
}

/* How far across it may be; @whole: the map is, so that it is known. */
static char *
reach_words (gboolean whole, double y, GbUnits units)
{
  g_autofree char *far = gb_length_format (fabs (y), units);

  if (!whole)
    return g_strdup ("–");
  if (isnan (y))
    return g_strdup (_ ("nowhere: too low"));
  if (fabs (y) < 0.0005)
    return g_strdup (_ ("the middle"));
  return g_strdup_printf (y > 0 ? _ ("%s to port") : _ ("%s to starboard"), far);
}

static void
show_facts (GbCrewView *self, const GbCrewMap *map, GbProject *project, gint64 condition)
{
  const GbBuild *build = gb_project_get_build (project);
  const GbFindings *findings = gb_project_get_findings (project);
  const GbAfloat *afloat = gb_findings_afloat (findings, condition);
  gboolean whole = map != NULL && map->n_rows_found == GB_MAP_ROWS;
  double best_free = whole ? map->best_freeboard : NAN;
  double port = whole ? map->furthest_port : NAN, starboard = whole ? map->furthest_starboard : NAN;

  gb_fact_list_set (
      self->facts[FACT_BEST],
      gb_afloat_place_words (whole ? map->best.x : NAN, whole ? map->best.y : NAN, build->units), FALSE);
  gb_fact_list_set (self->facts[FACT_BEST_FREE], gb_length_format (best_free, build->units),
                    best_free < build->freeboard);
  gb_fact_list_set (self->facts[FACT_PORT], reach_words (whole, port, build->units), whole && isnan (port));
  gb_fact_list_set (self->facts[FACT_STARBOARD], reach_words (whole, starboard, build->units),
                    whole && isnan (starboard));
  gb_fact_list_set (
      self->facts[FACT_FIRST],
      afloat != NULL ? gb_afloat_edge_words (afloat, &findings->edges, build->units) : g_strdup ("–"), FALSE);
}

void
gb_crew_view_show (GbCrewView *self, GbProject *project, gint64 condition, gint64 load)
{
  const GbRecord *record;

  g_return_if_fail (GB_IS_CREW_VIEW (self));
  self->project = project;
  self->condition = condition;
  self->load = load;
  record = gb_boat_get (gb_project_get_boat (project), GB_RECORD_CONDITION, condition);
  if (record != NULL)
    fill_mover (self, gb_record_children (record), load);
  gtk_widget_set_sensitive (GTK_WIDGET (self->mover), self->loads->len > 0);
  show_facts (self, find_map (self), project, condition);
}

GbChartArea *
gb_crew_view_get_area (GbCrewView *self)
{
  g_return_val_if_fail (GB_IS_CREW_VIEW (self), NULL);
  return self->area;
}

static void
gb_crew_view_finalize (GObject *object)
{
  GbCrewView *self = GB_CREW_VIEW (object);

  g_array_unref (self->loads);
  G_OBJECT_CLASS (gb_crew_view_parent_class)->finalize (object);
}

static void
gb_crew_view_class_init (GbCrewViewClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = gb_crew_view_finalize;
  signals[LOAD_CHOSEN] = g_signal_new ("load-chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                       NULL, NULL, G_TYPE_NONE, 1, G_TYPE_INT64);
}

static GtkWidget *
make_side (GbCrewView *self)
{
  GtkWidget *side = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *who = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *label = gtk_label_new_with_mnemonic (_ ("Who _moves"));

  self->names = gtk_string_list_new (NULL);
  self->mover = GTK_DROP_DOWN (gtk_drop_down_new (G_LIST_MODEL (self->names), NULL));
  gtk_widget_set_hexpand (GTK_WIDGET (self->mover), TRUE);
  gtk_label_set_mnemonic_widget (GTK_LABEL (label), GTK_WIDGET (self->mover));
  g_signal_connect_object (self->mover, "notify::selected", G_CALLBACK (chosen_cb), self, 0);
  gtk_box_append (GTK_BOX (who), label);
  gtk_box_append (GTK_BOX (who), GTK_WIDGET (self->mover));
  gtk_box_append (GTK_BOX (side), who);
  gtk_box_append (GTK_BOX (side), gb_fact_list_new (NULL, specs, N_FACTS, self, self->facts));
  gtk_box_append (GTK_BOX (side), gb_quiet_label_new (_ (
                                      "Drag the one who moves about in the map, or in the drawing above.")));
  gtk_box_append (GTK_BOX (side), gb_quiet_label_new (gb_caution_afloat ()));
  return side;
}

static void
gb_crew_view_init (GbCrewView *self)
{
  self->loads = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->area = GB_CHART_AREA (gb_chart_area_new ());
  gtk_box_append (GTK_BOX (self), gb_beside_facts (GTK_WIDGET (self->area), make_side (self)));
}
