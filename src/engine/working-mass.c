/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-working"

/* How a mass came about: of a part by its take-off, of a group by the sum of what is in it, of either by the
 * scale. */

#include "rollup-private.h"
#include "working-private.h"

#include <glib/gi18n-lib.h>

/* Copies, scales and spread ----------------------------------------------------------------- */

static void
show_copies (GbHand *hand, const GbPart *part, double one, double all)
{
  GbTerm terms[3] = { { NULL, one, GB_DIM_MASS } };
  guint n = 1;

  if (isnan (all) || (part->quantity == 1 && !part->pair))
    return;
  if (part->quantity != 1)
    terms[n++] = (GbTerm){ GB_TIMES, part->quantity, GB_DIM_COUNT };
  if (part->pair)
    terms[n++] = (GbTerm){ GB_TIMES, 2, GB_DIM_COUNT };
  gb_hand_step (hand, part->pair ? _ ("All of them, to port and to starboard") : _ ("All of them"),
                gb_hand_sum (hand, terms, n, all, GB_DIM_MASS), NULL);
}

static char *
readings_text (const GbHand *hand, const GbWeighing *weighing, double total)
{
  const GPtrArray *readings = gb_record_children (&weighing->rec);
  g_autoptr (GArray) terms = g_array_new (FALSE, FALSE, sizeof (GbTerm));
  GbTerm tare = { GB_MINUS, weighing->tare, GB_DIM_MASS };

  for (guint i = 0; i < readings->len; i++)
    {
      GbTerm term = { GB_PLUS, ((const GbReading *) readings->pdata[i])->mass, GB_DIM_MASS };

      g_array_append_val (terms, term);
    }
  if (weighing->tare > 0)
    g_array_append_val (terms, tare);
  if (terms->len == 1)
    return gb_hand_show (hand, total, GB_DIM_MASS);
  return gb_hand_sum (hand, (const GbTerm *) (const void *) terms->data, terms->len, total, GB_DIM_MASS);
}

/* What lay on the scale; and what all of them weigh, where that was one. */
static void
show_scale (GbHand *hand, const GbPart *part, const GbMass *mass)
{
  const GbWeighing *weighing = gb_hand_weighing (hand, part != NULL ? part->rec.id : 0);
  gboolean one = part != NULL && weighing != NULL && weighing->on_scale == GB_ON_SCALE_ONE;
  g_autofree char *date = NULL, *words = NULL;

  if (weighing == NULL)
    return;
  date = weighing->date > 0 ? gb_date_format (weighing->date) : NULL;
  /* Translators: a date. */
  words
      = date != NULL ? g_strdup_printf (_ ("The scale says, on %s"), date) : g_strdup (_ ("The scale says"));
  gb_hand_step (hand, words, readings_text (hand, weighing, one ? mass->unit_mass : mass->mass), NULL);
  if (one)
    show_copies (hand, part, mass->unit_mass, mass->mass);
  gb_hand_step (hand, _ ("That stands instead of what was listed"),
                gb_hand_show (hand, mass->listed_mass, GB_DIM_MASS), NULL);
}

/* A weighed group above it says what its share is. */
static void
show_share (GbHand *hand, const GbMass *mass)
{
  GbTerm terms[] = { { NULL, mass->mass, GB_DIM_MASS }, { GB_TIMES, mass->scale, GB_DIM_RATIO } };

  if (mass->scale != 1 && mass->mass > 0)
    gb_hand_step (hand, _ ("Its share of what the scale says of the group that it is in"),
                  gb_hand_sum (hand, terms, 2, mass->mass * mass->scale, GB_DIM_MASS), NULL);
}

static void
show_spread (GbHand *hand, const char *words, double mass, double sd)
{
  g_autofree char *mass_text = gb_hand_show (hand, mass, GB_DIM_MASS),
                  *sd_text = gb_hand_show (hand, sd, GB_DIM_MASS);

  if (!isnan (mass) && !isnan (sd))
    gb_hand_step (hand, words, g_strdup_printf ("%s ± %s", mass_text, sd_text), NULL);
}

static void
show_part (GbHand *hand, const GbPart *part, const GbMass *mass)
{
  g_autoptr (GbBook) book = gb_book_new ();
  GbTakenOff taken;

  gb_book_open (book, hand->boat, &hand->findings->hulls);
  gb_take_off (book, part, gb_part_coats_others (part) ? mass->amount : NAN, &taken);
  gb_hand_take_off (hand, part, &taken);
  if (taken.trouble == GB_TROUBLE_NONE && mass->trouble != GB_TROUBLE_NONE)
    gb_hand_step (hand, gb_trouble_sentence (mass->trouble), NULL, NULL);
  show_copies (hand, part, taken.mass, mass->listed_mass);
  if (mass->weighed)
    show_scale (hand, part, mass);
  show_share (hand, mass);
  show_spread (hand,
               mass->weighed ? _ ("Standard deviation, from the scale")
                             : _ ("Standard deviation, from the spread of the amount and of the material"),
               mass->mass, mass->mass_sd);
}

/* Sums -------------------------------------------------------------------------------------- */

static char *
basis_text (const GbMass *mass)
{
  static const char *const words[GB_N_AS] = { N_ ("estimated"), N_ ("calculated"), N_ ("weighed") };
  guint n = 0, last = 0;

  for (guint i = 0; i < GB_N_AS; i++)
    if (mass->by_as[i] > 0)
      {
        n++;
        last = i;
      }
  if (n == 0)
    return g_strdup ("–");
  return g_strdup (n == 1 ? _ (words[last]) : _ ("mixed"));
}

static void
show_sum (GbHand *hand, const GPtrArray *children, double total)
{
  GbColumnFormat format = gb_column_format (total, gb_quantity_factor (GB_DIM_MASS, hand->units));
  g_autofree char *mass_heading = gb_hand_heading (_ ("Mass"), gb_quantity_unit (GB_DIM_MASS, hand->units));
  g_autofree char *sd_heading
      = gb_hand_heading (_ ("Standard deviation"), gb_quantity_unit (GB_DIM_MASS, hand->units));

  gb_hand_columns (hand, _ ("Name"), mass_heading, sd_heading, _ ("Basis"), NULL);
  for (guint i = 0; i < children->len; i++)
    {
      const GbMass *mass = gb_rollup_part (&hand->findings->rollup, children->pdata[i]);

      gb_hand_row (hand, gb_record_dup_title (children->pdata[i]), gb_column_show (format, mass->mass),
                   gb_column_show (format, mass->mass_sd), basis_text (mass), NULL);
    }
  gb_hand_row (hand, g_strdup (_ ("Sum")), gb_column_show (format, total), g_strdup (""), g_strdup (""),
               NULL);
}

static void
show_unknown (GbHand *hand, const GbMass *mass)
{
  g_autofree char *words = NULL;

  if (mass->n_no_mass == 0)
    return;
  words = g_strdup_printf (ngettext ("%u part without a mass is not in it",
                                     "%u parts without a mass are not in it", mass->n_no_mass),
                           mass->n_no_mass);
  gb_hand_step (hand, words, NULL, NULL);
}

/* Of those that are known. */
static double
sum_of (const GbRollup *rollup, const GPtrArray *children)
{
  double sum = children->len > 0 ? NAN : 0;

  for (guint i = 0; i < children->len; i++)
    {
      double mass = gb_rollup_part (rollup, children->pdata[i])->mass;

      if (!isnan (mass))
        sum = isnan (sum) ? mass : sum + mass;
    }
  return sum;
}

/* @part: the group, or NULL for the boat. */
static void
show_group (GbHand *hand, const GbPart *part, const GPtrArray *children, const GbMass *mass)
{
  double sum = sum_of (&hand->findings->rollup, children);

  gb_hand_step (hand, _ ("Sum of what is in it, as in the table"), gb_hand_show (hand, sum, GB_DIM_MASS),
                NULL);
  show_unknown (hand, mass);
  if (mass->weighed)
    show_scale (hand, part, mass);
  else if (part != NULL)
    show_copies (hand, part, sum, mass->mass);
  if (part != NULL)
    show_share (hand, mass);
  show_spread (hand,
               mass->weighed
                   ? _ ("Standard deviation, from the scale")
                   : _ ("Standard deviation: amounts err each for itself, parts of one material together"),
               mass->mass, mass->mass_sd);
  show_sum (hand, children, sum);
}

static void
show_margin (GbHand *hand)
{
  const GbBuild *build = gb_boat_build (hand->boat);
  const GbRollup *rollup = &hand->findings->rollup;
  const GbMargin *margin = &rollup->margin;
  const double shares[GB_N_AS] = { build->margin_estimated, build->margin_calculated, build->margin_weighed };
  const double parts[GB_N_AS] = { margin->estimated, margin->calculated, margin->weighed };
  const char *words[GB_N_AS] = { _ ("Margin on what is estimated"), _ ("Margin on what is calculated"),
                                 _ ("Margin on what was weighed") };
  GbTerm sum[] = { { NULL, rollup->boat.mass, GB_DIM_MASS }, { GB_PLUS, margin->total, GB_DIM_MASS } };

  for (guint i = 0; i < GB_N_AS; i++)
    {
      GbTerm terms[]
          = { { NULL, rollup->boat.by_as[i], GB_DIM_MASS }, { GB_TIMES, shares[i], GB_DIM_RATIO } };

      if (parts[i] > 0)
        gb_hand_step (hand, words[i], gb_hand_sum (hand, terms, 2, parts[i], GB_DIM_MASS), NULL);
    }
  if (margin->fixed > 0)
    gb_hand_step (hand, _ ("Margin, fixed"), gb_hand_show (hand, margin->fixed, GB_DIM_MASS), NULL);
  gb_hand_step (hand, _ ("Light craft + margin"),
                gb_hand_sum (hand, sum, 2, rollup->boat.mass + margin->total, GB_DIM_MASS), NULL);
}

GbWorking *
gb_working_mass (const GbBoat *boat, const GbFindings *findings, gint64 part_id)
{
  const GbPart *part = gb_boat_part (boat, part_id);
  GbHand hand;

  if (part_id == 0)
    {
      hand = gb_hand_start (boat, findings, g_strdup (_ ("Mass of the boat")));
      show_group (&hand, NULL, gb_boat_roots (boat, GB_RECORD_PART), &findings->rollup.boat);
      show_margin (&hand);
      return hand.working;
    }
  if (part == NULL)
    return gb_hand_of_nothing (boat);
  /* Translators: the name of a part. */
  hand = gb_hand_start (boat, findings, gb_hand_title (_ ("Mass of %s"), part));
  if (gb_part_gathers (part))
    show_group (&hand, part, gb_record_children (&part->rec), gb_rollup_part (&findings->rollup, part));
  else
    show_part (&hand, part, gb_rollup_part (&findings->rollup, part));
  return hand.working;
}
