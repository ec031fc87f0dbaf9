/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-verdicts"

/* The boat within its limits? What is passed comes first, then what is not known. */

#include "findings.h"

#include "rollup-private.h"
#include "swamped.h"

#include "boat/deviation.h"
#include "boat/money.h"
#include "boat/quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* A flotation limit that may well be passed is worth a word before it is. */
#define CHANCE_WORTH_A_WORD 0.05

typedef struct
{
  GPtrArray *verdicts;
  const GbBoat *boat;
  const GbFindings *findings;
  GbUnits units;
  GbVerdictSubject subject; /* of what is judged now */
} Judge;

static void
verdict_free (gpointer verdict)
{
  g_free (((GbVerdict *) verdict)->sentence);
  g_free (verdict);
}

static void
say (Judge *judge, GbVerdictKind kind, char *take_sentence)
{
  GbVerdict *verdict = g_new (GbVerdict, 1);

  *verdict = (GbVerdict){ kind, judge->subject, take_sentence };
  g_ptr_array_add (judge->verdicts, verdict);
}

static char *
mass_text (const Judge *judge, double mass)
{
  return gb_quantity_format (mass, GB_DIM_MASS, judge->units);
}

static char *
money_text (const Judge *judge, gint64 amount)
{
  return gb_money_format_full (amount, gb_boat_build (judge->boat)->currency);
}

static void
judge_sinking (Judge *judge)
{
  const GbFlotation *flotation = &judge->findings->flotation;
  g_autofree char *total = mass_text (judge, flotation->total), *brim = mass_text (judge, flotation->brim);

  /* Translators: two masses, with their units. */
  say (judge, GB_VERDICT_PASSED,
       g_strdup_printf (_ ("With margin and loads she comes to %s, and the hulls carry %s with their edge at "
                           "the water: she sinks."),
                        total, brim));
}

static void
judge_limit (Judge *judge)
{
  const GbFlotation *flotation = &judge->findings->flotation;
  g_autofree char *total = mass_text (judge, flotation->total), *over = mass_text (judge, -flotation->left);
  g_autofree char *limit = mass_text (judge, flotation->limit.displacement);

  /* Translators: three masses, with their units. */
  say (judge, GB_VERDICT_PASSED,
       g_strdup_printf (_ ("With margin and loads she comes to %s: %s over the flotation limit of %s."),
                        total, over, limit));
}

static void
judge_flotation (Judge *judge)
{
  const GbFlotation *flotation = &judge->findings->flotation;

  if (flotation->sinks)
    {
      judge_sinking (judge);
    }
  else if (flotation->left < 0)
    {
      judge_limit (judge);
    }
  else if (flotation->chance > CHANCE_WORTH_A_WORD)
    {
      g_autofree char *chance = gb_quantity_format (flotation->chance, GB_DIM_RATIO, judge->units);

      /* Translators: a chance in per cent, with its sign. */
      say (judge, GB_VERDICT_NOTE,
           g_strdup_printf (
               _ ("She is within the flotation limit, but the chance that she comes out over it is %s."),
               chance));
    }
}

/* Translators: the name of a set of loads, a hull or a test, and a sentence about it. */
static void
say_of (Judge *judge, GbVerdictKind kind, const char *name, const char *sentence)
{
  say (judge, kind, g_strdup_printf (_ ("%s: %s"), name, sentence));
}

/* The edge that is lowest: as she floats, or level if she does not; -1: there is none. */
static int
lowest_line (const Judge *judge, const GbAfloat *afloat)
{
  return afloat->least.line >= 0
             ? afloat->least.line
             : gb_edge_set_least (&judge->findings->edges, gb_attitude (0, 0, 0)).line;
}

/* A slot that is too low must be named, for the limit does not say what sets it. */
static gboolean
is_at_opening (const Judge *judge, const GbAfloat *afloat)
{
  int line = lowest_line (judge, afloat);

  return line >= 0 && ((const GbEdgeLine *) judge->findings->edges.lines->pdata[line])->opening != 0;
}

/* The first condition is the one that the flotation limit was judged for. */
static gboolean
is_judged (const Judge *judge, const GbAfloat *afloat)
{
  const GbFlotation *flotation = &judge->findings->flotation;

  if (afloat != &judge->findings->afloat[0] || is_at_opening (judge, afloat))
    return FALSE;
  return afloat->state == GB_AFLOAT_SINKS ? flotation->sinks
                                          : afloat->state == GB_AFLOAT_FLOATS && flotation->left < 0;
}

static void
judge_freeboard (Judge *judge, const GbAfloat *afloat, const char *name)
{
  double accepted = gb_boat_build (judge->boat)->freeboard;
  const GbEdgeSet *edges = &judge->findings->edges;
  g_autofree char *least = gb_length_format (afloat->least.freeboard, judge->units),
                  *want = gb_length_format (accepted, judge->units);

  if (!(afloat->least.freeboard < accepted))
    return;
  /* Translators: the name of a set of loads, an edge, and two lengths. */
  say (judge, GB_VERDICT_PASSED,
       g_strdup_printf (
           _ ("%s: the edge of “%s” has a freeboard of %s, and %s is the least that is accepted."), name,
           ((const GbEdgeLine *) edges->lines->pdata[afloat->least.line])->name, least, want));
}

static void
judge_chance (Judge *judge, const GbAfloat *afloat, const char *name)
{
  g_autofree char *chance = gb_quantity_format (afloat->chance, GB_DIM_RATIO, judge->units);

  if (afloat->chance > CHANCE_WORTH_A_WORD && afloat->left >= 0 && afloat != &judge->findings->afloat[0])
    /* Translators: the name of a set of loads, and a chance in per cent, with its sign. */
    say (judge, GB_VERDICT_NOTE,
         g_strdup_printf (
             _ ("%s: she is within the flotation limit, but the chance that she comes out over it is %s."),
             name, chance));
}

static void
judge_condition (Judge *judge, const GbAfloat *afloat)
{
  g_autofree char *name = gb_condition_dup_name (judge->boat, afloat->condition);

  if (afloat->state == GB_AFLOAT_UNKNOWN || is_judged (judge, afloat))
    return;
  if (afloat->state == GB_AFLOAT_FLOATS)
    {
      judge_freeboard (judge, afloat, name);
      judge_chance (judge, afloat, name);
    }
  else
    say_of (judge, GB_VERDICT_PASSED, name, afloat->sentence);
}

static void
judge_conditions (Judge *judge)
{
  for (guint i = 0; i < judge->findings->n_afloat; i++)
    judge_condition (judge, &judge->findings->afloat[i]);
}

static void
judge_target (Judge *judge)
{
  const GbRollup *rollup = &judge->findings->rollup;
  double target = gb_boat_build (judge->boat)->target_mass, mass = rollup->boat.mass + rollup->margin.total;
  g_autofree char *mass_words = NULL, *over = NULL, *target_words = NULL;

  if (!(mass > target))
    return;
  mass_words = mass_text (judge, mass);
  over = mass_text (judge, mass - target);
  target_words = mass_text (judge, target);
  /* Translators: three masses, with their units. */
  say (judge, GB_VERDICT_PASSED,
       g_strdup_printf (_ ("The finished boat, with margin, comes to %s: %s over the target of %s."),
                        mass_words, over, target_words));
}

static void
judge_budget (Judge *judge)
{
  const GbCosts *costs = &judge->findings->costs;
  g_autofree char *forecast = NULL, *over = NULL, *budget = NULL;

  if (costs->budget == GB_MONEY_UNKNOWN || costs->forecast == GB_MONEY_UNKNOWN
      || costs->forecast <= costs->budget)
    return;
  forecast = money_text (judge, costs->forecast);
  over = money_text (judge, costs->forecast - costs->budget);
  budget = money_text (judge, costs->budget);
  /* Translators: three sums of money. */
  say (judge, GB_VERDICT_PASSED,
       g_strdup_printf (_ ("She is forecast to cost %s: %s over the budget of %s."), forecast, over, budget));
}

/* @format holds one %u. */
static void
note_number (Judge *judge, guint n, const char *format)
{
  if (n > 0)
    say (judge, GB_VERDICT_NOTE, g_strdup_printf (format, n));
}

static void
note_parts (Judge *judge)
{
  const GbMass *boat = &judge->findings->rollup.boat;

  note_number (judge, boat->n_no_mass,
               ngettext ("%u part without a mass.", "%u parts without a mass.", boat->n_no_mass));
  note_number (
      judge, boat->n_no_place,
      ngettext ("%u part without a place: it counts for the mass, and not for the centre of gravity.",
                "%u parts without a place: they count for the mass, and not for the centre of gravity.",
                boat->n_no_place));
}

static void
note_hulls (Judge *judge)
{
  const GbHullSet *hulls = &judge->findings->hulls;

  if (gb_boat_n (judge->boat, GB_RECORD_HULL) == 0)
    say (judge, GB_VERDICT_NOTE, g_strdup (_ ("There is no hull yet, and so no flotation limit.")));
  for (guint i = 0; i < hulls->n_hulls; i++)
    if (hulls->hulls[i].trouble != NULL)
      {
        const GbHull *hull = gb_boat_hull (judge->boat, hulls->hulls[i].id);
        g_autofree char *title = hull != NULL ? gb_record_dup_title (&hull->rec) : g_strdup (_ ("Hull"));

        say_of (judge, GB_VERDICT_NOTE, title, hulls->hulls[i].trouble);
      }
  if (isnan (judge->findings->flotation.water_density))
    say (judge, GB_VERDICT_NOTE,
         g_strdup (_ ("The density of the water is not known, and so no flotation limit.")));
}

static void
note_all (Judge *judge, const char *name, const GPtrArray *sentences)
{
  for (guint i = 0; i < sentences->len; i++)
    say_of (judge, GB_VERDICT_NOTE, name, sentences->pdata[i]);
}

/* Why a condition is not known is the same in all of them, and may have been said of the hulls or the water.
 */
static void
note_unknown (Judge *judge)
{
  const GbFindings *findings = judge->findings;

  if (findings->n_afloat > 0 && findings->afloat[0].state == GB_AFLOAT_UNKNOWN && findings->hulls.n_hulls > 0
      && !isnan (findings->flotation.water_density))
    say (judge, GB_VERDICT_NOTE, g_strdup (findings->afloat[0].sentence));
}

static void
note_conditions (Judge *judge)
{
  const GbFindings *findings = judge->findings;

  note_unknown (judge);
  for (guint i = 0; i < findings->n_afloat; i++)
    {
      g_autofree char *name = gb_condition_dup_name (judge->boat, findings->afloat[i].condition);

      note_all (judge, name, findings->afloat[i].troubles);
    }
}

static void
note_edges (Judge *judge)
{
  const GPtrArray *troubles = judge->findings->edges.troubles;

  for (guint i = 0; troubles != NULL && i < troubles->len; i++)
    say (judge, GB_VERDICT_NOTE, g_strdup (troubles->pdata[i]));
}

static void
note_swamped (Judge *judge)
{
  const GPtrArray *parts = gb_boat_all (judge->boat, GB_RECORD_PART);
  const GbRollup *rollup = &judge->findings->rollup;
  guint n = 0;

  for (guint i = 0; i < parts->len; i++)
    {
      const GbPart *part = parts->pdata[i];

      n += !gb_part_gathers (part) && gb_rollup_part (rollup, part)->mass > 0
           && isnan (gb_part_volume (judge->boat, rollup, part));
    }
  note_number (
      judge, n,
      ngettext ("%u part with a mass is of no known density: swamped, it is taken to carry nothing.",
                "%u parts with a mass are of no known density: swamped, they are taken to carry nothing.",
                n));
}

static void
note_tests (Judge *judge)
{
  const GbFindings *findings = judge->findings;
  const GPtrArray *tubs = gb_boat_all (judge->boat, GB_RECORD_TUB);

  for (guint i = 0; i < findings->n_inclined; i++)
    if (findings->inclined[i].trouble != NULL)
      say_of (judge, GB_VERDICT_NOTE, _ ("Inclining test"), findings->inclined[i].trouble);
  for (guint i = 0; i < MIN (findings->n_tubbed, tubs->len); i++)
    if (findings->tubbed[i].trouble != NULL)
      {
        g_autofree char *name = gb_record_dup_title (tubs->pdata[i]);

        say_of (judge, GB_VERDICT_NOTE, name, findings->tubbed[i].trouble);
      }
}

static void
note_money (Judge *judge)
{
  const GbCosts *costs = &judge->findings->costs;

  note_number (judge, costs->n_no_price,
               ngettext ("%u thing still to buy is without a price.",
                         "%u things still to buy are without a price.", costs->n_no_price));
  note_number (judge, costs->n_no_price_lines,
               ngettext ("%u line of a receipt is without a price or a quantity.",
                         "%u lines of receipts are without a price or a quantity.", costs->n_no_price_lines));
  note_number (judge, costs->n_future,
               ngettext ("%u receipt is dated in the future.", "%u receipts are dated in the future.",
                         costs->n_future));
}

GPtrArray *
gb_findings_verdicts (const GbBoat *boat, const GbFindings *findings)
{
  Judge judge = { .verdicts = g_ptr_array_new_with_free_func (verdict_free),
                  .boat = boat,
                  .findings = findings,
                  .units = (GbUnits) gb_boat_build (boat)->units };

  judge_flotation (&judge);
  judge_conditions (&judge);
  judge_target (&judge);
  judge.subject = GB_VERDICT_ON_MONEY;
  judge_budget (&judge);
  judge.subject = GB_VERDICT_ON_WEIGHT;
  note_parts (&judge);
  note_hulls (&judge);
  note_edges (&judge);
  note_conditions (&judge);
  note_swamped (&judge);
  note_tests (&judge);
  judge.subject = GB_VERDICT_ON_MONEY;
  note_money (&judge);
  return judge.verdicts;
}
