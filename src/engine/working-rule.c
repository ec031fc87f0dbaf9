/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-working"

/* The published small-craft method, step by step, in the pounds and cubic feet that it is worked in. */

#include "working-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const char *
part_183 (void)
{
  return _ ("33 CFR part 183");
}

static const char *
handbook (void)
{
  return _ ("Boatbuilder's Handbook, United States Coast Guard: flotation");
}

static char *
pounds (double mass)
{
  return g_strdup_printf ("%.1f lb", mass / GB_POUND);
}

static char *
cubic_feet (double volume)
{
  return g_strdup_printf ("%.2f ft³", volume / GB_CUBIC_FOOT);
}

/* What the rule says she may carry ----------------------------------------------------------------------- */

static void
show_weight_capacity (GbHand *hand, const GbRule *rule)
{
  g_autofree char *most = pounds (rule->max_displacement), *boat = pounds (rule->boat_weight);
  g_autofree char *capacity = pounds (rule->weight_capacity);
  gboolean outboard = rule->kind == GB_RULE_OUTBOARD;

  gb_hand_step (hand,
                outboard ? _ ("Weight capacity: (displacement at the lowest edge − boat) ÷ 5")
                         : _ ("Weight capacity: (displacement at the lowest edge − boat) × 3/10"),
                g_strdup_printf ("(%s − %s) %s = %s", most, boat, outboard ? "÷ 5" : "× 3/10", capacity),
                part_183 ());
}

static void
show_persons_capacity (GbHand *hand, const GbRule *rule)
{
  g_autofree char *capacity = pounds (rule->weight_capacity), *persons = pounds (rule->persons_capacity);
  g_autofree char *motor = pounds (rule->motor_weight);

  switch (rule->kind)
    {
    case GB_RULE_OUTBOARD:
      gb_hand_step (hand, _ ("Capacity for persons: weight capacity − motor with battery and tank"),
                    g_strdup_printf ("%s − %s = %s", capacity, motor, persons), part_183 ());
      if (rule->persons_capacity < 550 * GB_POUND)
        gb_hand_say (hand, _ ("Under 550 lb the rule also asks for a test afloat, with weights laid along her "
                              "side, and the lesser counts: that test is not in this figure"));
      break;
    case GB_RULE_TWO_HP:
      gb_hand_step (hand, _ ("Capacity for persons: 9/10 of the weight capacity − 25 lb"),
                    g_strdup_printf ("0.9 × %s − 25 lb = %s", capacity, persons), part_183 ());
      break;
    case GB_RULE_BY_HAND:
    default:
      gb_hand_step (hand, _ ("Capacity for persons: 9/10 of the weight capacity"),
                    g_strdup_printf ("0.9 × %s = %s", capacity, persons), part_183 ());
    }
  gb_hand_step (hand, _ ("Persons: (32 lb + capacity for persons) ÷ 141 lb, to the nearest whole one"),
                g_strdup_printf ("(32 lb + %s) ÷ 141 lb = %.2f: %u", persons,
                                 (32 + rule->persons_capacity / GB_POUND) / 141, rule->persons),
                part_183 ());
}

/* Foam --------------------------------------------------------------------------------------------------- */

static const char *
factor_source (const GbRuleLine *line)
{
  if (!line->known)
    return _ ("not known: counted in full");
  return line->from_table ? _ ("the table") : _ ("its density: 1 − 1/SG");
}

static void
show_lines (GbHand *hand, const GbRule *rule)
{
  gb_hand_columns (hand, _ ("Material"), _ ("Dry, lb"), _ ("Factor K"), _ ("Under water, lb"),
                   _ ("K is from"), NULL);
  for (guint i = 0; i < rule->lines->len; i++)
    {
      const GbRuleLine *line = &g_array_index (rule->lines, GbRuleLine, i);

      gb_hand_row (hand, g_strdup (line->material), g_strdup_printf ("%.1f", line->dry / GB_POUND),
                   g_strdup_printf ("%.2f", line->factor),
                   g_strdup_printf ("%.1f", line->submerged / GB_POUND), g_strdup (factor_source (line)),
                   NULL);
    }
  gb_hand_row (hand, g_strdup (_ ("Sum")), g_strdup (""), g_strdup (""),
               g_strdup_printf ("%.1f", rule->submerged / GB_POUND), g_strdup (""), NULL);
}

static void
show_boat_foam (GbHand *hand, const GbRule *rule)
{
  g_autofree char *under = pounds (rule->submerged), *deck = pounds (rule->deck),
                  *foam = cubic_feet (rule->boat_foam);

  gb_hand_step (hand,
                _ ("1. For the boat: (sum of dry weight × K below the edge + dry weight above it) ÷ what a "
                   "cubic foot of foam carries"),
                g_strdup_printf ("(%s + %s) ÷ %.1f lb/ft³ = %s", under, deck, GB_RULE_FOAM, foam),
                handbook ());
  if (rule->boat_foam < 0)
    gb_hand_say (hand, _ ("That is less than nothing: what she is made of lifts her"));
  if (rule->unknown_mass > 0)
    gb_hand_step (hand, _ ("Counted as if all of it weighed under water, for want of a density"),
                  pounds (rule->unknown_mass), NULL);
}

static void
show_motor_foam (GbHand *hand, const GbRule *rule)
{
  g_autofree char *motor = pounds (rule->swamped_motor), *foam = cubic_feet (rule->motor_foam);

  if (rule->swamped_motor > 0)
    gb_hand_step (hand,
                  _ ("2. For the motor: its weight swamped, with controls and battery, ÷ what a cubic foot "
                     "of foam carries"),
                  g_strdup_printf ("%s ÷ %.1f lb/ft³ = %s", motor, GB_RULE_FOAM, foam), handbook ());
  else
    gb_hand_say (hand, _ ("2. For the motor: nothing"));
}

/* What the foam for persons must carry, in numbers. */
static char *
persons_sum (const GbRule *rule)
{
  double persons = rule->persons_capacity / GB_POUND;
  double left = fmax ((rule->weight_capacity - rule->motor_weight) / GB_POUND - persons, 0);
  g_autofree char *capacity = pounds (rule->weight_capacity), *foam = cubic_feet (rule->persons_foam);

  if (rule->kind == GB_RULE_OUTBOARD)
    return g_strdup_printf ("(1/2 × %.1f lb + 1/8 × %.1f lb + 1/4 × %.1f lb) ÷ %.1f lb/ft³ = %s",
                            fmin (persons, 550), fmax (persons - 550, 0), left, GB_RULE_FOAM, foam);
  return g_strdup_printf ("1/4 × %s ÷ %.1f lb/ft³ = %s", capacity, GB_RULE_FOAM, foam);
}

static void
show_persons_foam (GbHand *hand, const GbRule *rule)
{
  const char *words =
      rule->kind == GB_RULE_OUTBOARD
          ? _ ("3. For persons: (1/2 of the first 550 lb + 1/8 of the rest + 1/4 of what else she may carry) "
               "÷ what a cubic foot "
               "of foam carries")
          : _ ("3. For persons: 1/4 of the weight capacity ÷ what a cubic foot of foam carries");

  gb_hand_step (hand, words, persons_sum (rule), handbook ());
  if (rule->kind != GB_RULE_OUTBOARD && !isnan (rule->law_persons_foam))
    gb_hand_step (hand, _ ("By the law's own 2/15 that would be"), cubic_feet (rule->law_persons_foam),
                  part_183 ());
}

static void
show_foam (GbHand *hand, const GbRule *rule)
{
  g_autofree char *boat = cubic_feet (rule->boat_foam), *motor = cubic_feet (rule->motor_foam),
                  *persons = cubic_feet (rule->persons_foam);
  g_autofree char *sum = cubic_feet (rule->foam), *litres = gb_hand_show (hand, rule->foam, GB_DIM_VOLUME);

  show_boat_foam (hand, rule);
  show_motor_foam (hand, rule);
  show_persons_foam (hand, rule);
  gb_hand_step (hand, _ ("4. Foam in all, and not less than nothing"),
                g_strdup_printf ("%s + %s + %s → %s, %s", boat, motor, persons, sum, litres), handbook ());
}

GbWorking *
gb_working_rule (const GbBoat *boat, const GbRule *rule)
{
  GbHand hand = gb_hand_start (boat, NULL, g_strdup (_ ("Flotation and capacity by the published rule")));

  hand.working->caution = g_strdup (gb_caution_swamped ());
  if (rule == NULL || rule->trouble != NULL)
    {
      gb_hand_say (&hand, rule != NULL ? rule->trouble : _ ("Not known yet"));
      return hand.working;
    }
  if (!rule->applies)
    gb_hand_say (&hand, _ ("The rule is made for boats of one hull and less than 20 ft; for this one it is a "
                           "yardstick only"));
  show_weight_capacity (&hand, rule);
  show_persons_capacity (&hand, rule);
  if (!isnan (rule->horsepower))
    gb_hand_step (&hand, _ ("Greatest horsepower, by length × breadth of the transom"),
                  gb_hand_show (&hand, rule->horsepower, GB_DIM_COUNT), part_183 ());
  show_foam (&hand, rule);
  show_lines (&hand, rule);
  return hand.working;
}
