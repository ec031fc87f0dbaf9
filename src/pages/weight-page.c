/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-weight-page"

#include "weight-page.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>
#include <math.h>

#include "boat/deviation.h"
#include "engine/working.h"
#include "pages/afloat-words.h"
#include "pages/weighing-log.h"
#include "project/project.h"
#include "widgets/chart-host.h"
#include "widgets/fact-row.h"

/* What the summary says, from top to bottom. */
typedef enum
{
  FACT_LIGHT,
  FACT_MARGIN,
  FACT_TARGET,
  FACT_CENTRE,
  FACT_GYRATION,
  FACT_KNOWN,
  FACT_UNKNOWN,
  FACT_LOADS,
  FACT_TOTAL,
  FACT_LIMIT,
  FACT_LEFT,
  FACT_CHANCE,
  FACT_DRAUGHT,
  FACT_ATTITUDE,
  FACT_FREEBOARD,
  FACT_GM,
  FACT_PER_CM,
  FACT_WORST,
  N_FACTS
} Fact;

struct _GbWeightPage
{
  GbPage parent_instance;

  GbProject *project; /* the page's own, borrowed */
  GbChartHost *charts;
  GbFactRow *facts[N_FACTS];

  GtkStack *views;
  GbChartArea *limit;
  GbChartArea *boat;
  GbChartArea *groups;
  GbChartArea *history;
  AdwPreferencesGroup *light;
  AdwPreferencesGroup *afloat;
  GtkLabel *caution;
  GbWeighingLog *log;
};

G_DEFINE_FINAL_TYPE (GbWeightPage, gb_weight_page, GB_TYPE_PAGE)

static GbWorking *
work_mass (const GbBoat *boat, const GbFindings *findings)
{
  return gb_working_mass (boat, findings, 0);
}

static GbWorking *
work_centre (const GbBoat *boat, const GbFindings *findings)
{
  return gb_working_centre (boat, findings, 0);
}

/* The usual load is that of the first condition. */
static GbWorking *
work_afloat (const GbBoat *boat, const GbFindings *findings)
{
  return gb_working_afloat (boat, findings, findings->afloat[0].condition);
}

static GbWorking *
work_worst (const GbBoat *boat, const GbFindings *findings)
{
  return gb_working_afloat (boat, findings, findings->afloat[findings->worst].condition);
}

static const struct
{
  const char *title;
  GbFactWorking working;
} rows[N_FACTS] = {
  [FACT_LIGHT] = { N_ ("Parts, as they are known"), work_mass },
  [FACT_MARGIN] = { N_ ("Margin for what is not listed"), NULL },
  [FACT_TARGET] = { N_ ("With margin, against the target"), NULL },
  [FACT_CENTRE] = { N_ ("Centre of gravity"), work_centre },
  [FACT_GYRATION] = { N_ ("Radii of gyration"), NULL },
  [FACT_KNOWN] = { N_ ("Estimated, calculated, weighed"), NULL },
  [FACT_UNKNOWN] = { N_ ("Not known yet"), NULL },
  [FACT_LOADS] = { N_ ("Loads"), NULL },
  [FACT_TOTAL] = { N_ ("In all"), NULL },
  [FACT_LIMIT] = { N_ ("Flotation limit"), gb_working_limit },
  [FACT_LEFT] = { N_ ("May still come aboard"), NULL },
  [FACT_CHANCE] = { N_ ("Chance of passing the limit"), NULL },
  [FACT_DRAUGHT] = { N_ ("Draughts"), work_afloat },
  [FACT_ATTITUDE] = { N_ ("Trim and heel"), work_afloat },
  [FACT_FREEBOARD] = { N_ ("Least freeboard"), work_afloat },
  [FACT_GM] = { N_ ("Stiffness, GM"), work_afloat },
  [FACT_PER_CM] = { N_ ("For one centimetre deeper"), work_afloat },
  [FACT_WORST] = { N_ ("Worst condition"), work_worst },
};

/* Writing the facts ------------------------------------------------------------------------------------------------- */

static char *
mass_text (double mass, GbUnits units)
{
  return gb_quantity_format (mass, GB_DIM_MASS, units);
}

static char *
length_text (double length, GbUnits units)
{
  return gb_length_format (length, units);
}

static char *
mass_and_sd (double mass, double sd, GbUnits units)
{
  return gb_quantity_format_with_sd (mass, sd, GB_DIM_MASS, units);
}

static void
set_fact (GbWeightPage *self, Fact fact, char *take_value, gboolean passed)
{
  gb_fact_row_set_value (self->facts[fact], take_value, passed);
  g_free (take_value);
}

static char *
target_text (double total, double target, GbUnits units)
{
  g_autofree char *mass = mass_text (total, units);
  g_autofree char *aim = mass_text (target, units);

  if (isnan (total))
    return g_strdup ("–");
  if (isnan (target))
    return g_strdup_printf (_ ("%s, no target set"), mass);
  return g_strdup_printf (_ ("%s of %s"), mass, aim);
}

static char *
centre_text (const GbMass *boat, GbUnits units)
{
  g_autofree char *x = gb_quantity_format_with_sd (boat->x, boat->x_sd, GB_DIM_LENGTH, units);
  g_autofree char *y = length_text (boat->y, units);
  g_autofree char *z = gb_quantity_format_with_sd (boat->z, boat->z_sd, GB_DIM_LENGTH, units);

  if (isnan (boat->x))
    return g_strdup ("–");
  return g_strdup_printf (_ ("x %s, y %s, z %s"), x, y, z);
}

static char *
gyration_text (const GbMass *boat, GbUnits units)
{
  double radii[3];
  g_autofree char *x = NULL;
  g_autofree char *y = NULL;
  g_autofree char *z = NULL;

  gb_radii_of_gyration (boat, radii);
  if (isnan (radii[0]) && isnan (radii[1]) && isnan (radii[2]))
    return g_strdup ("–");
  x = length_text (radii[0], units);
  y = length_text (radii[1], units);
  z = length_text (radii[2], units);
  /* Translators: radii of gyration in roll, pitch and yaw. */
  return g_strdup_printf (_ ("roll %s, pitch %s, yaw %s"), x, y, z);
}

static char *
known_text (const GbMass *boat)
{
  double sum = boat->mass;

  if (!(sum > 0))
    return g_strdup ("–");
  return g_strdup_printf (_ ("%.0f %%, %.0f %%, %.0f %%"), 100 * boat->by_as[GB_AS_ESTIMATED] / sum,
                          100 * boat->by_as[GB_AS_CALCULATED] / sum, 100 * boat->by_as[GB_AS_WEIGHED] / sum);
}

static char *
unknown_text (const GbMass *boat)
{
  g_autofree char *mass = g_strdup_printf (ngettext ("%u part without a mass", "%u parts without a mass", boat->n_no_mass),
                                           boat->n_no_mass);
  g_autofree char *place = g_strdup_printf (ngettext ("%u part without a place", "%u parts without a place", boat->n_no_place),
                                            boat->n_no_place);

  if (boat->n_no_mass > 0 && boat->n_no_place > 0)
    return g_strdup_printf ("%s, %s", mass, place);
  if (boat->n_no_mass > 0)
    return g_steal_pointer (&mass);
  if (boat->n_no_place > 0)
    return g_steal_pointer (&place);
  return g_strdup (_ ("nothing"));
}

static void
show_light (GbWeightPage *self, const GbBuild *build, const GbFindings *f)
{
  const GbMass *boat = &f->rollup.boat;
  /* The mass of nothing is no figure. */
  double mass = boat->n_parts > 0 ? boat->mass : NAN;
  double total = mass + f->rollup.margin.total;
  gboolean over = total > build->target_mass;

  set_fact (self, FACT_LIGHT, mass_and_sd (mass, boat->mass_sd, build->units), FALSE);
  set_fact (self, FACT_MARGIN, mass_text (f->rollup.margin.total, build->units), FALSE);
  set_fact (self, FACT_TARGET, target_text (total, build->target_mass, build->units), over);
  set_fact (self, FACT_CENTRE, centre_text (boat, build->units), FALSE);
  set_fact (self, FACT_GYRATION, gyration_text (boat, build->units), FALSE);
  set_fact (self, FACT_KNOWN, known_text (boat), FALSE);
  set_fact (self, FACT_UNKNOWN, unknown_text (boat), boat->n_no_mass + boat->n_no_place > 0);
}

static char *
draught_text (const GbAfloat *a, GbUnits units)
{
  g_autofree char *fore = length_text (a->draught_fore, units);
  g_autofree char *aft = length_text (a->draught_aft, units);

  if (isnan (a->draught_fore))
    return g_strdup ("–");
  /* Translators: two draughts. */
  return g_strdup_printf (_ ("%s forward, %s aft"), fore, aft);
}

static char *
freeboard_text (const GbAfloat *a, const GbFindings *f, GbUnits units)
{
  g_autofree char *least = length_text (a->least.freeboard, units);
  g_autofree char *where = isnan (a->least.freeboard) ? NULL : gb_afloat_edge_words (a, &f->edges, units);

  /* Translators: a height, and where it is measured. */
  return where != NULL ? g_strdup_printf (_ ("%s, %s"), least, where) : g_strdup ("–");
}

static char *
worst_text (GbWeightPage *self, const GbAfloat *worst, const GbBuild *build, gboolean *passed)
{
  g_autofree char *name = gb_condition_dup_name (gb_project_get_boat (self->project), worst->condition);
  g_autofree char *state = gb_afloat_state_words (worst, build, passed);

  return g_strdup_printf (_ ("%s: %s"), name, state);
}

/* Against the limit, level: what the picture above shows. */
static void
show_limit (GbWeightPage *self, const GbBuild *build, const GbFlotation *a)
{
  set_fact (self, FACT_LOADS, mass_and_sd (a->load_mass, a->load_sd, build->units), FALSE);
  set_fact (self, FACT_TOTAL, mass_and_sd (a->total, a->total_sd, build->units), a->sinks);
  set_fact (self, FACT_LIMIT, mass_text (a->limit.displacement, build->units), FALSE);
  set_fact (self, FACT_LEFT, mass_text (a->left, build->units), a->left < 0);
  set_fact (self, FACT_CHANCE, gb_afloat_chance_words (a->chance), a->chance > GB_TOO_LIKELY);
}

/* As she comes to rest. */
static void
show_afloat (GbWeightPage *self, const GbBuild *build, const GbFindings *f)
{
  const GbAfloat *a = &f->afloat[0];
  gboolean floats = a->state == GB_AFLOAT_FLOATS, known = a->state != GB_AFLOAT_UNKNOWN, passed;
  char *worst = worst_text (self, &f->afloat[f->worst], build, &passed);

  set_fact (self, FACT_DRAUGHT, draught_text (a, build->units), FALSE);
  set_fact (self, FACT_ATTITUDE, isnan (a->heel) ? g_strdup ("–") : gb_afloat_attitude_text (a), a->state == GB_AFLOAT_OVER);
  set_fact (self, FACT_FREEBOARD, freeboard_text (a, f, build->units), (known && !floats) || a->least.freeboard < build->freeboard);
  set_fact (self, FACT_GM, length_text (a->gm, build->units), a->gm < 0);
  set_fact (self, FACT_PER_CM, mass_text (a->per_cm, build->units), FALSE);
  set_fact (self, FACT_WORST, worst, passed);
}

static void
update (GbWeightPage *self)
{
  const GbBuild *build = gb_project_get_build (self->project);
  const GbFindings *findings = gb_project_get_findings (self->project);

  show_light (self, build, findings);
  show_limit (self, build, &findings->flotation);
  show_afloat (self, build, findings);
}

/* Object ------------------------------------------------------------------------------------------------------------ */

void
gb_weight_page_set_selected (GbWeightPage *self, const gint64 *ids)
{
  g_return_if_fail (GB_IS_WEIGHT_PAGE (self));
  gb_chart_host_set_selected (self->charts, ids);
}

static void
part_picked_cb (GbChartArea *area, gint64 id, gpointer data)
{
  GbWeightPage *self = GB_WEIGHT_PAGE (gtk_widget_get_ancestor (GTK_WIDGET (area), GB_TYPE_WEIGHT_PAGE));
  const gint64 selected[] = { id, 0 };

  gb_weight_page_set_selected (self, selected);
}

static void
place_cb (GbProject *project, const GbPlace *place, GbWeightPage *self)
{
  if (place->kind != GB_RECORD_WEIGHING && place->kind != GB_RECORD_READING)
    return;
  gtk_stack_set_visible_child_name (self->views, "weighings");
  gb_weighing_log_go_to (self->log, place);
}

static void
gb_weight_page_show (GbPage *page, GbProject *project)
{
  GbWeightPage *self = GB_WEIGHT_PAGE (page);

  self->project = project;
  gb_chart_host_set_project (self->charts, project);
  gb_weighing_log_set_project (self->log, project);
  for (guint i = 0; i < N_FACTS; i++)
    gb_fact_row_set_project (self->facts[i], project);
  if (project == NULL)
    return;
  g_signal_connect_object (project, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (project, "place", G_CALLBACK (place_cb), self, 0);
  update (self);
}

static void
gb_weight_page_dispose (GObject *object)
{
  GbWeightPage *self = GB_WEIGHT_PAGE (object);

  gb_page_set_project (GB_PAGE (self), NULL);
  g_clear_object (&self->charts);
  gtk_widget_dispose_template (GTK_WIDGET (self), GB_TYPE_WEIGHT_PAGE);
  G_OBJECT_CLASS (gb_weight_page_parent_class)->dispose (object);
}

static void
gb_weight_page_class_init (GbWeightPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = gb_weight_page_dispose;
  GB_PAGE_CLASS (klass)->show = gb_weight_page_show;

  g_type_ensure (GB_TYPE_CHART_AREA);
  g_type_ensure (GB_TYPE_WEIGHING_LOG);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/garboard/Garboard/weight-page.ui");
  gtk_widget_class_bind_template_child (widget_class, GbWeightPage, views);
  gtk_widget_class_bind_template_child (widget_class, GbWeightPage, limit);
  gtk_widget_class_bind_template_child (widget_class, GbWeightPage, boat);
  gtk_widget_class_bind_template_child (widget_class, GbWeightPage, groups);
  gtk_widget_class_bind_template_child (widget_class, GbWeightPage, history);
  gtk_widget_class_bind_template_child (widget_class, GbWeightPage, light);
  gtk_widget_class_bind_template_child (widget_class, GbWeightPage, afloat);
  gtk_widget_class_bind_template_child (widget_class, GbWeightPage, caution);
  gtk_widget_class_bind_template_child (widget_class, GbWeightPage, log);
  gtk_widget_class_bind_template_callback (widget_class, part_picked_cb);
}

static void
gb_weight_page_init (GbWeightPage *self)
{
  g_autofree char *caution = NULL;

  gtk_widget_init_template (GTK_WIDGET (self));
  for (guint i = 0; i < N_FACTS; i++)
    {
      self->facts[i] = gb_fact_row_new (_ (rows[i].title), rows[i].working);
      adw_preferences_group_add (i < FACT_LOADS ? self->light : self->afloat, GTK_WIDGET (self->facts[i]));
    }
  /* There every condition is shown. */
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (self->facts[FACT_WORST]), TRUE);
  gtk_actionable_set_detailed_action_name (GTK_ACTIONABLE (self->facts[FACT_WORST]), "win.page::afloat");
  caution = g_strdup_printf ("%s\n%s", gb_caution_afloat (), gb_caution_lifting ());
  gtk_label_set_text (self->caution, caution);

  self->charts = gb_chart_host_new ();
  gb_chart_host_add (self->charts, self->limit, GB_CHART_LIMIT);
  gb_chart_host_add (self->charts, self->boat, GB_CHART_BOAT);
  gb_chart_host_add (self->charts, self->groups, GB_CHART_GROUPS);
  gb_chart_host_add (self->charts, self->history, GB_CHART_HISTORY);
}
