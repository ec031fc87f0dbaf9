/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-strip"

#include "strip.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "boat/deviation.h"
#include "boat/money.h"
#include "boat/quantity.h"
#include "engine/working.h"
#include "gauge.h"

struct _GbStrip
{
  GtkWidget parent_instance;

  GbProject *project;
  gulong changed_id;

  GbGauge *weight;
  GbGauge *afloat;
  GbGauge *centre;
  GbGauge *money;
  GbGauge *to_buy;
};

G_DEFINE_FINAL_TYPE (GbStrip, gb_strip, GTK_TYPE_WIDGET)

/* A limit is near when less than this share of it is left. */
#define NEAR_SHARE 0.05

static GbGaugeState
judge (double value, double limit)
{
  if (isnan (value) || isnan (limit))
    return GB_GAUGE_UNKNOWN;
  if (value > limit)
    return GB_GAUGE_PASSED;
  return value > limit * (1 - NEAR_SHARE) ? GB_GAUGE_NEAR : GB_GAUGE_WITHIN;
}

/* Appends what is not known, so that no sum looks whole that is not; the tooltip says it in full. */
static void
append_unknown (GString *words, GString *tooltip, guint n, const char *sentence)
{
  if (n == 0)
    return;
  /* Translators: short, behind a figure: so many parts are not in it. */
  g_string_append_printf (words, _ (", %u unknown"), n);
  g_string_append_c (tooltip, '\n');
  g_string_append_printf (tooltip, sentence, n);
}

static void
show_weight (GbStrip *self, const GbBuild *build, const GbFindings *f)
{
  const GbMass *boat = &f->rollup.boat;
  double total = boat->mass + f->rollup.margin.total;
  g_autofree char *mass = gb_quantity_format_with_sd (total, boat->mass_sd, GB_DIM_MASS, build->units);
  g_autofree char *target = gb_quantity_format (build->target_mass, GB_DIM_MASS, build->units);
  g_autofree char *margin = gb_quantity_format (f->rollup.margin.total, GB_DIM_MASS, build->units);
  g_autoptr (GString) tooltip = g_string_new (NULL);
  g_autoptr (GString) words = g_string_new (NULL);
  GbGaugeReading reading = { judge (total, build->target_mass), boat->mass, f->rollup.margin.total, boat->mass_sd, build->target_mass };

  if (boat->n_parts == 0)
    g_string_append (words, _ ("no parts yet"));
  else if (isnan (build->target_mass))
    g_string_append_printf (words, _ ("%s, no target"), mass);
  else if (reading.state == GB_GAUGE_PASSED)
    /* Translators: a mass with its deviation, and the target. */
    g_string_append_printf (words, _ ("%s, over %s"), mass, target);
  else
    g_string_append_printf (words, _ ("%s of %s"), mass, target);

  /* Translators: the margin, and the target. */
  g_string_append_printf (tooltip, _ ("Light craft with a margin of %s for what is not listed yet, against a target of %s"), margin, target);
  append_unknown (words, tooltip, boat->n_no_mass, ngettext ("%u part has no mass yet", "%u parts have no mass yet", boat->n_no_mass));
  gb_gauge_set (self->weight, &reading, words->str, tooltip->str);
}

static void
show_centre (GbStrip *self, const GbBuild *build, const GbFindings *f)
{
  const GbMass *boat = &f->rollup.boat;
  g_autofree char *x = gb_length_format (boat->x, build->units);
  g_autofree char *y = gb_length_format (boat->y, build->units);
  g_autofree char *z = gb_length_format (boat->z, build->units);
  g_autoptr (GString) words = g_string_new (NULL);
  g_autoptr (GString) tooltip = g_string_new (
      _ ("Centre of gravity of the light craft: x forward of the aft end of the baseline, y to port, z above the baseline"));
  GbGaugeReading reading = { isnan (boat->x) ? GB_GAUGE_UNKNOWN : GB_GAUGE_WITHIN, NAN, NAN, NAN, NAN };

  if (isnan (boat->x))
    g_string_append (words, _ ("not known yet"));
  else
    /* Translators: the centre of gravity: forward, to port, up. */
    g_string_append_printf (words, _ ("x %s, y %s, z %s"), x, y, z);
  if (boat->n_no_place > 0)
    reading.state = GB_GAUGE_NEAR;
  append_unknown (words, tooltip, boat->n_no_place,
                  ngettext ("%u part has no place yet", "%u parts have no place yet", boat->n_no_place));
  gb_gauge_set (self->centre, &reading, words->str, tooltip->str);
}

/* Afloat: the worst condition ------------------------------------------------------------------------------------------ */

/* A limit that is passed in mass or in height. */
static GbGaugeState
judge_afloat (const GbAfloat *afloat, double accepted)
{
  GbGaugeState by_mass = judge (afloat->total, afloat->limit);

  if (afloat->state == GB_AFLOAT_UNKNOWN)
    return GB_GAUGE_UNKNOWN;
  if (afloat->state != GB_AFLOAT_FLOATS || afloat->least.freeboard < accepted || by_mass == GB_GAUGE_PASSED)
    return GB_GAUGE_PASSED;
  return afloat->least.freeboard < accepted * (1 + NEAR_SHARE) ? GB_GAUGE_NEAR : by_mass;
}

/* Why there is no figure, in short. */
static const char *
unknown_words (const GbFindings *f)
{
  if (f->flotation.n_hulls == 0)
    return _ ("no hull yet");
  return isnan (f->flotation.total) ? _ ("no mass yet") : _ ("not known yet");
}

static char *
freeboard_words (const GbAfloat *afloat, const GbBuild *build, GbGaugeState state)
{
  g_autofree char *freeboard = gb_length_format (afloat->least.freeboard, build->units);
  g_autofree char *accepted = gb_length_format (build->freeboard, build->units);
  g_autofree char *total = gb_quantity_format (afloat->total, GB_DIM_MASS, build->units);
  g_autofree char *limit = gb_quantity_format (afloat->limit, GB_DIM_MASS, build->units);

  if (isnan (afloat->least.freeboard))
    return g_strdup_printf (_ ("%s of %s"), total, limit);
  if (afloat->least.freeboard < build->freeboard)
    /* Translators: the least freeboard, and the least that is accepted. */
    return g_strdup_printf (_ ("%s free, under %s"), freeboard, accepted);
  if (state == GB_GAUGE_PASSED)
    /* Translators: mass afloat, flotation limit, least freeboard. */
    return g_strdup_printf (_ ("%s, over %s, %s free"), total, limit, freeboard);
  return g_strdup_printf (_ ("%s of %s, %s free"), total, limit, freeboard);
}

static char *
afloat_words (const GbFindings *f, const GbAfloat *afloat, const GbBuild *build, GbGaugeState state)
{
  switch (afloat->state)
    {
    case GB_AFLOAT_SINKS:
      return g_strdup (_ ("she sinks"));
    case GB_AFLOAT_OVER:
      return g_strdup (_ ("she has gone over"));
    case GB_AFLOAT_FILLS:
      return g_strdup (_ ("she fills"));
    case GB_AFLOAT_FLOATS:
      return freeboard_words (afloat, build, state);
    case GB_AFLOAT_UNKNOWN:
    default:
      return g_strdup (unknown_words (f));
    }
}

/* What the words leave out. */
static char *
afloat_tooltip (const GbFindings *f, const GbAfloat *afloat, const char *name)
{
  g_autoptr (GString) tooltip = g_string_new (NULL);

  if (f->n_afloat > 1)
    /* Translators: the name of a set of loads. */
    g_string_append_printf (tooltip, _ ("The worst condition: %s"), name);
  else
    g_string_append (tooltip, name);
  if (afloat->sentence != NULL)
    g_string_append_printf (tooltip, "\n%s", afloat->sentence);
  else
    {
      g_autofree char *attitude = gb_afloat_attitude_text (afloat);

      g_string_append_printf (tooltip, "\n%s", attitude);
    }
  g_string_append_printf (tooltip, "\n%s", gb_caution_afloat ());
  return g_string_free (g_steal_pointer (&tooltip), FALSE);
}

static void
show_afloat (GbStrip *self, const GbBuild *build, const GbFindings *f)
{
  const GbAfloat *worst = &f->afloat[f->worst];
  GbGaugeReading reading = { judge_afloat (worst, build->freeboard), worst->total - worst->margin, worst->margin, worst->total_sd,
                             worst->limit };
  g_autofree char *name = gb_condition_dup_name (gb_project_get_boat (self->project), worst->condition);
  g_autofree char *words = afloat_words (f, worst, build, reading.state), *tooltip = afloat_tooltip (f, worst, name);
  /* The figure first: where the strip is narrow, the end of the name goes. */
  g_autofree char *whole = worst->state == GB_AFLOAT_UNKNOWN ? g_strdup (words) : g_strdup_printf ("%s · %s", words, name);

  gb_gauge_set (self->afloat, &reading, whole, tooltip);
}

/* Money ---------------------------------------------------------------------------------------------------------------- */

static double
amount (gint64 money)
{
  return money == GB_MONEY_UNKNOWN ? NAN : (double) money;
}

static void
show_money (GbStrip *self, const GbBuild *build, const GbFindings *f)
{
  const GbCosts *costs = &f->costs;
  g_autofree char *spent = gb_money_format (costs->spent, build->currency);
  g_autofree char *budget = gb_money_format_full (costs->budget, build->currency);
  g_autofree char *forecast = gb_money_format (costs->forecast, build->currency);
  g_autofree char *words = NULL;
  GbGaugeReading reading = { judge (amount (costs->forecast), amount (costs->budget)), amount (costs->spent),
                             amount (costs->forecast) - amount (costs->spent), NAN, amount (costs->budget) };

  if (costs->budget == GB_MONEY_UNKNOWN)
    words = g_strdup_printf (_ ("spent %s, forecast %s, no budget"), spent, forecast);
  else if (reading.state == GB_GAUGE_PASSED)
    words = g_strdup_printf (_ ("spent %s, forecast %s, over %s"), spent, forecast, budget);
  else
    /* Translators: spent, budget, forecast. */
    words = g_strdup_printf (_ ("spent %s of %s, forecast %s"), spent, budget, forecast);
  gb_gauge_set (self->money, &reading, words,
                _ ("Solid: spent. Hatched: still to buy and the allowance. The stroke is the budget."));
}

static void
append_count (GString *words, guint n, const char *format)
{
  if (n == 0)
    return;
  if (words->len > 0)
    g_string_append (words, ", ");
  g_string_append_printf (words, format, n);
}

static void
show_to_buy (GbStrip *self, const GbBuild *build, const GbFindings *f)
{
  const GbCosts *costs = &f->costs;
  g_autofree char *cost = gb_money_format_full (costs->to_buy, build->currency);
  g_autofree char *tooltip = NULL;
  g_autoptr (GString) words = g_string_new (NULL);
  GbGaugeReading reading = { GB_GAUGE_WITHIN, NAN, NAN, NAN, NAN };

  append_count (words, costs->sheets, ngettext ("%u sheet", "%u sheets", costs->sheets));
  append_count (words, costs->lengths, ngettext ("%u length", "%u lengths", costs->lengths));
  append_count (words, costs->blocks, ngettext ("%u block", "%u blocks", costs->blocks));
  append_count (words, costs->tins, ngettext ("%u tin", "%u tins", costs->tins));
  append_count (words, costs->pieces, ngettext ("%u pack", "%u packs", costs->pieces));
  append_count (words, costs->others, ngettext ("%u part", "%u parts", costs->others));
  if (words->len == 0)
    g_string_append (words, _ ("nothing"));
  if (costs->n_no_price > 0)
    reading.state = GB_GAUGE_NEAR;
  append_count (words, costs->n_no_price, ngettext ("%u without a price", "%u without a price", costs->n_no_price));
  tooltip = g_strdup_printf (_ ("Still to buy, for %s"), cost);
  gb_gauge_set (self->to_buy, &reading, words->str, tooltip);
}

static void
update (GbStrip *self)
{
  const GbBuild *build = gb_project_get_build (self->project);
  const GbFindings *findings = gb_project_get_findings (self->project);

  show_weight (self, build, findings);
  show_afloat (self, build, findings);
  show_centre (self, build, findings);
  show_money (self, build, findings);
  show_to_buy (self, build, findings);
}

void
gb_strip_set_project (GbStrip *self, GbProject *project)
{
  g_return_if_fail (GB_IS_STRIP (self));

  if (self->project != NULL)
    g_clear_signal_handler (&self->changed_id, self->project);
  if (!g_set_object (&self->project, project) || project == NULL)
    return;
  self->changed_id = g_signal_connect_object (project, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  update (self);
}

static void
gb_strip_dispose (GObject *object)
{
  GbStrip *self = GB_STRIP (object);

  gb_strip_set_project (self, NULL);
  gtk_widget_dispose_template (GTK_WIDGET (self), GB_TYPE_STRIP);
  G_OBJECT_CLASS (gb_strip_parent_class)->dispose (object);
}

static void
gb_strip_class_init (GbStripClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gb_strip_dispose;
  g_type_ensure (GB_TYPE_GAUGE);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/garboard/Garboard/strip.ui");
  gtk_widget_class_bind_template_child (widget_class, GbStrip, weight);
  gtk_widget_class_bind_template_child (widget_class, GbStrip, afloat);
  gtk_widget_class_bind_template_child (widget_class, GbStrip, centre);
  gtk_widget_class_bind_template_child (widget_class, GbStrip, money);
  gtk_widget_class_bind_template_child (widget_class, GbStrip, to_buy);
  gtk_widget_class_set_css_name (widget_class, "strip");
}

static void
gb_strip_init (GbStrip *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
