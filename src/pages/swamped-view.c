/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-swamped-view"

#include "swamped-view.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "boat/deviation.h"
#include "boat/quantity.h"
#include "engine/working.h"
#include "pages/afloat-words.h"
#include "pages/fact-list.h"
#include "project/project-study.h"

typedef enum
{
  BOTH_OURS,
  BOTH_RULE,
  N_BOTH
} Both;

typedef enum
{
  OURS_ABOARD,
  OURS_HOLDING,
  OURS_CARRIES,
  OURS_WEIGHT,
  OURS_EDGE,
  OURS_FOAM_AT,
  OURS_FOAM_APART,
  OURS_UNKNOWN,
  N_OURS
} Ours;

typedef enum
{
  RULE_KIND,
  RULE_CAPACITY,
  RULE_PERSONS,
  RULE_HORSEPOWER,
  RULE_SUBMERGED,
  RULE_BOAT_FOAM,
  RULE_MOTOR_FOAM,
  RULE_PERSONS_FOAM,
  RULE_LAW,
  N_RULE
} Rule;

struct _GbSwampedView
{
  GtkBox parent_instance;

  GbProject *project; /* borrowed */
  gint64 condition;
  GbChartArea *area;
  GtkLabel *notice;        /* what is not known, before all figures that suffer from it */
  GbFactRow *both[N_BOTH]; /* the foam of the one and of the other */
  GbFactRow *ours[N_OURS];
  GbFactRow *rule[N_RULE];
  GtkLabel *ours_note;
  GtkLabel *rule_note;
};

G_DEFINE_FINAL_TYPE (GbSwampedView, gb_swamped_view, GTK_TYPE_BOX)

static const GbStudy *
find_study (GbSwampedView *self)
{
  return self->project != NULL ? gb_project_get_study (self->project, self->condition) : NULL;
}

static GbWorking *
ask_ours (gpointer data)
{
  GbSwampedView *self = data;
  const GbStudy *study = find_study (self);

  return gb_working_swamped (gb_project_get_boat (self->project), gb_project_get_findings (self->project),
                             study != NULL ? study->swamped : NULL);
}

static GbWorking *
ask_rule (gpointer data)
{
  GbSwampedView *self = data;
  const GbStudy *study = find_study (self);

  return gb_working_rule (gb_project_get_boat (self->project), study != NULL ? study->rule : NULL);
}

static const GbFactSpec both_specs[N_BOTH] = {
  [BOTH_OURS] = { N_ ("Reckoned from the parts"), ask_ours },
  [BOTH_RULE] = { N_ ("By the published rule"), ask_rule },
};

static const GbFactSpec our_specs[N_OURS] = {
  [OURS_ABOARD] = { N_ ("Crew sitting in her"), ask_ours },
  [OURS_HOLDING] = { N_ ("Crew holding on"), ask_ours },
  [OURS_CARRIES] = { N_ ("All that carries"), ask_ours },
  [OURS_WEIGHT] = { N_ ("Weight, crew holding on"), ask_ours },
  [OURS_EDGE] = { N_ ("Lowest edge, crew holding on"), ask_ours },
  [OURS_FOAM_AT] = { N_ ("Middle of the foam, to float level"), ask_ours },
  [OURS_FOAM_APART] = { N_ ("Half and half, out to each side"), ask_ours },
  [OURS_UNKNOWN] = { N_ ("Carries nothing, density unknown"), NULL },
};

static const GbFactSpec rule_specs[N_RULE] = {
  [RULE_KIND] = { N_ ("Taken as a boat"), NULL },
  [RULE_CAPACITY] = { N_ ("Weight aboard, by the rule"), ask_rule },
  [RULE_PERSONS] = { N_ ("People"), ask_rule },
  [RULE_HORSEPOWER] = { N_ ("Horsepower at most"), ask_rule },
  [RULE_SUBMERGED] = { N_ ("Boat's weight under water"), ask_rule },
  [RULE_BOAT_FOAM] = { N_ ("Foam for the boat"), ask_rule },
  [RULE_MOTOR_FOAM] = { N_ ("Foam for the motor"), ask_rule },
  [RULE_PERSONS_FOAM] = { N_ ("Foam for the people"), ask_rule },
  [RULE_LAW] = { N_ ("For the people by the law alone"), ask_rule },
};

/* Words ------------------------------------------------------------------------------------------------- */

/* Where nothing carries at all there is no rest to be found, and she sinks like anything too heavy. */
static gboolean
sinks (const GbSwampedRest *rest)
{
  return rest->kind == GB_REST_SINKS || (rest->kind == GB_REST_NONE && rest->most < rest->weight);
}

static gboolean
is_lost (const GbSwampedRest *rest)
{
  return sinks (rest) || fabs (rest->heel) > G_PI / 2;
}

static char *
rest_words (const GbSwampedRest *rest)
{
  g_autofree char *trim = gb_afloat_trim_words (rest->trim);
  g_autofree char *heel = gb_afloat_heel_words (rest->heel);

  if (sinks (rest))
    return g_strdup (_ ("she sinks"));
  if (rest->kind != GB_REST_FOUND)
    return g_strdup (_ ("not known"));
  if (fabs (rest->heel) > G_PI / 2)
    /* Translators: how far the swamped boat has rolled over. */
    return g_strdup_printf (_ ("rolls over,\n%s"), heel);
  /* Translators: trim and heel of the swamped boat, each on a line of its own. */
  return g_strdup_printf (_ ("floats,\n%s,\n%s"), trim, heel);
}

/* What would carry her may be just what is not known. */
static char *
guess_words (const GbSwampedRest *rest)
{
  return sinks (rest) ? g_strdup (_ ("not known")) : rest_words (rest);
}

static char *
edge_words (double edge, GbUnits units)
{
  g_autofree char *size = gb_length_format (fabs (edge), units);

  if (isnan (edge))
    return g_strdup ("–");
  return g_strdup_printf (edge < 0 ? _ ("%s under water") : _ ("%s above water"), size);
}

static char *
foam_words (double volume, double mass, GbUnits units)
{
  g_autofree char *room = gb_quantity_format (volume, GB_DIM_VOLUME, units);
  g_autofree char *weight = gb_quantity_format (mass, GB_DIM_MASS, units);

  if (isnan (volume))
    return g_strdup ("–");
  if (volume == 0)
    return g_strdup (_ ("none"));
  return g_strdup_printf (_ ("%s, %s of it"), room, weight);
}

static char *
foam_place_words (const GbSwamped *s, GbUnits units)
{
  g_autofree char *place = gb_afloat_place_words (s->foam_x, s->foam_y, units);
  g_autofree char *lowest = gb_length_format (s->foam_lowest, units);

  if (!(s->foam_volume > 0) || isnan (s->foam_x))
    return g_strdup ("–");
  if (isnan (s->foam_lowest))
    return g_steal_pointer (&place);
  return g_strdup_printf (_ ("%s,\nnot below z %s"), place, lowest);
}

static char *
kind_words (const GbRule *rule)
{
  switch (rule->kind)
    {
    case GB_RULE_BY_HAND:
      return g_strdup (_ ("rowed or paddled"));
    case GB_RULE_TWO_HP:
      return g_strdup (_ ("with an outboard of 2 hp or less"));
    case GB_RULE_OUTBOARD:
    default:
      return g_strdup (_ ("with an outboard of more than 2 hp"));
    }
}

/* Showing ----------------------------------------------------------------------------------------------- */

static void
say (GtkLabel *label, const char *text)
{
  gtk_label_set_text (label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (label), text != NULL && *text != '\0');
}

/* Before all else: how much of her the figures leave out. */
static void
show_notice (GbSwampedView *self, const GbSwamped *s, GbUnits units)
{
  g_autofree char *mass = gb_quantity_format (s->no_volume_mass, GB_DIM_MASS, units);
  g_autofree char *words = g_strdup_printf (
      _ ("Not known: %s of her has no material or no known density, and counts as carrying nothing."), mass);

  say (self->notice, s->guesswork ? words : NULL);
}

static void
show_rests (GbSwampedView *self, const GbSwamped *s, GbUnits units)
{
  const GbSwampedRest *out = &s->holding_on;
  gboolean guess = s->guesswork;
  gboolean nothing = isnan (s->parts_volume) || (guess && out->most <= 0);

  gb_fact_list_set (self->ours[OURS_ABOARD], guess ? guess_words (&s->aboard) : rest_words (&s->aboard),
                    !(guess && sinks (&s->aboard)) && is_lost (&s->aboard));
  gb_fact_list_set (self->ours[OURS_HOLDING], guess ? guess_words (out) : rest_words (out),
                    !(guess && sinks (out)) && is_lost (out));
  gb_fact_list_set (self->ours[OURS_CARRIES],
                    nothing ? g_strdup (_ ("not known")) : gb_quantity_format (out->most, GB_DIM_MASS, units),
                    !nothing && out->most < out->weight);
  gb_fact_list_set (self->both[BOTH_OURS],
                    nothing ? g_strdup (_ ("not known")) : foam_words (s->foam_volume, s->foam_mass, units),
                    FALSE);
  gb_fact_list_set (self->ours[OURS_FOAM_AT], nothing ? g_strdup ("–") : foam_place_words (s, units), FALSE);
  gb_fact_list_set (self->ours[OURS_FOAM_APART],
                    gb_length_format (!nothing && s->foam_volume > 0 ? s->foam_apart : NAN, units), FALSE);
}

static void
show_ours (GbSwampedView *self, const GbSwamped *s, const GbBuild *build)
{
  GbUnits units = build->units;
  const GbSwampedRest *out = &s->holding_on;

  show_notice (self, s, units);
  show_rests (self, s, units);
  gb_fact_list_set (self->ours[OURS_WEIGHT], gb_quantity_format (out->weight, GB_DIM_MASS, units), FALSE);
  gb_fact_list_set (self->ours[OURS_EDGE], edge_words (out->edge, units), out->edge < 0);
  gb_fact_list_set (self->ours[OURS_UNKNOWN], gb_quantity_format (s->no_volume_mass, GB_DIM_MASS, units),
                    s->n_no_volume > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->ours[OURS_UNKNOWN]), s->n_no_volume > 0);
  say (self->ours_note, s->foam_trouble);
}

static void
show_rule (GbSwampedView *self, const GbRule *rule, const GbBuild *build)
{
  GbUnits units = build->units;
  const double foams[] = { rule->boat_foam, rule->motor_foam, rule->persons_foam, rule->law_persons_foam };

  gb_fact_list_set (self->rule[RULE_KIND], kind_words (rule), FALSE);
  gb_fact_list_set (self->rule[RULE_CAPACITY], gb_quantity_format (rule->weight_capacity, GB_DIM_MASS, units),
                    FALSE);
  gb_fact_list_set (self->rule[RULE_PERSONS], g_strdup_printf ("%u", rule->persons), FALSE);
  gb_fact_list_set (self->rule[RULE_HORSEPOWER], gb_quantity_format (rule->horsepower, GB_DIM_COUNT, units),
                    FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self->rule[RULE_HORSEPOWER]),
                          rule->kind != GB_RULE_BY_HAND && !isnan (rule->horsepower));
  gb_fact_list_set (self->rule[RULE_SUBMERGED],
                    gb_quantity_format (rule->submerged + rule->deck, GB_DIM_MASS, units), FALSE);
  gb_fact_list_set (self->both[BOTH_RULE],
                    foam_words (fmax (rule->foam, 0), fmax (rule->foam, 0) * GB_FOAM_DENSITY, units), FALSE);
  for (guint i = 0; i < G_N_ELEMENTS (foams); i++)
    gb_fact_list_set (self->rule[RULE_BOAT_FOAM + i], gb_quantity_format (foams[i], GB_DIM_VOLUME, units),
                      FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self->rule[RULE_MOTOR_FOAM]), rule->kind != GB_RULE_BY_HAND);
  gtk_widget_set_visible (GTK_WIDGET (self->rule[RULE_LAW]), !isnan (rule->law_persons_foam));
  say (self->rule_note, rule->applies ? NULL
                                      : _ ("The rule is for boats of one hull under 20 ft (6.1 m): for this "
                                           "one it is a yardstick alone."));
}

static void
clear_rows (GbFactRow *const *rows, guint n)
{
  for (guint i = 0; i < n; i++)
    gb_fact_row_set_value (rows[i], "–", FALSE);
}

void
gb_swamped_view_show (GbSwampedView *self, GbProject *project, gint64 condition)
{
  const GbStudy *study;
  const GbBuild *build;

  g_return_if_fail (GB_IS_SWAMPED_VIEW (self));
  self->project = project;
  self->condition = condition;
  study = find_study (self);
  build = gb_project_get_build (project);
  clear_rows (self->both, N_BOTH);
  clear_rows (self->ours, N_OURS);
  clear_rows (self->rule, N_RULE);
  say (self->notice, NULL);
  say (self->ours_note, NULL);
  say (self->rule_note, study != NULL && study->rule != NULL ? study->rule->trouble : NULL);
  if (study != NULL && study->swamped != NULL)
    show_ours (self, study->swamped, build);
  if (study != NULL && study->rule != NULL && study->rule->trouble == NULL)
    show_rule (self, study->rule, build);
}

GbChartArea *
gb_swamped_view_get_area (GbSwampedView *self)
{
  g_return_val_if_fail (GB_IS_SWAMPED_VIEW (self), NULL);
  return self->area;
}

static void
gb_swamped_view_class_init (GbSwampedViewClass *klass)
{
}

static void
gb_swamped_view_init (GbSwampedView *self)
{
  GtkWidget *side = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);

  self->area = GB_CHART_AREA (gb_chart_area_new ());
  self->notice = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_wrap (self->notice, TRUE);
  gtk_label_set_xalign (self->notice, 0);
  gtk_widget_add_css_class (GTK_WIDGET (self->notice), "notice");
  gtk_box_append (GTK_BOX (side), GTK_WIDGET (self->notice));
  self->ours_note = GTK_LABEL (gb_quiet_label_new (NULL));
  self->rule_note = GTK_LABEL (gb_quiet_label_new (NULL));
  gtk_box_append (GTK_BOX (side), gb_fact_list_new (_ ("Foam to add"), both_specs, N_BOTH, self, self->both));
  gtk_box_append (GTK_BOX (side),
                  gb_fact_list_new (_ ("Reckoned from the parts"), our_specs, N_OURS, self, self->ours));
  gtk_box_append (GTK_BOX (side), GTK_WIDGET (self->ours_note));
  gtk_box_append (GTK_BOX (side), gb_fact_list_new (_ ("By 33 CFR 183 and its handbook"), rule_specs, N_RULE,
                                                    self, self->rule));
  gtk_box_append (GTK_BOX (side), GTK_WIDGET (self->rule_note));
  gtk_box_append (GTK_BOX (side), gb_quiet_label_new (gb_caution_swamped ()));
  gtk_box_append (GTK_BOX (self), gb_beside_facts (GTK_WIDGET (self->area), side));
}
