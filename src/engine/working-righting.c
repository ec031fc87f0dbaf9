/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-working"

/* The curve of righting levers: how it is found, and what is read off it. */

#include "working-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define EVERY 15 /* degrees between two rows of the table */

static void
show_one_lever (GbHand *hand, const GbRighting *righting)
{
  const GbLever *lever = &righting->levers[GB_UPRIGHT + 20];
  GbTerm terms[] = { { NULL, lever->lever * righting->total, GB_DIM_MOMENT },
                     { GB_DIVIDED, righting->total, GB_DIM_MASS } };

  gb_hand_say (
      hand, _ ("At each angle of heel she is let go in sinkage and trim until buoyancy and weight balance"));
  gb_hand_step (
      hand,
      _ ("Righting lever, here at 20° to starboard: moment that would bring her upright ÷ displacement"),
      gb_hand_sum (hand, terms, 2, lever->lever, GB_DIM_LENGTH), _ ("common practice of naval architecture"));
}

static void
show_gm (GbHand *hand, const GbRighting *righting)
{
  gb_hand_step (
      hand,
      _ ("GM, as she rests: KB + BM − KG, less what liquids take off; for small angles lever = GM × sine of the "
         "heel"),
      gb_hand_show (hand, righting->gm, GB_DIM_LENGTH), _ ("common practice of naval architecture"));
  if (fabs (righting->gm_solid - righting->gm) > 1e-6)
    gb_hand_step (hand, _ ("The same if liquids could not run"),
                  gb_hand_show (hand, righting->gm_solid, GB_DIM_LENGTH), NULL);
}

static void
show_area (GbHand *hand, const GbRightingSide *side, double total)
{
  GbTerm terms[] = { { NULL, side->area * total, GB_DIM_MOMENT }, { GB_DIVIDED, total, GB_DIM_MASS } };

  gb_hand_step (hand, _ ("Area under the curve up to there, in radians: work to turn her over ÷ her weight"),
                gb_hand_sum (hand, terms, 2, side->area, GB_DIM_LENGTH),
                _ ("common practice of naval architecture"));
}

static void
show_side (GbHand *hand, const GbRighting *righting, const GbRightingSide *side, const char *name)
{
  g_autofree char *greatest = gb_hand_show (hand, side->greatest, GB_DIM_LENGTH),
                  *at = gb_hand_show (hand, side->greatest_at, GB_DIM_ANGLE);
  /* Translators: a side of the boat. */
  g_autofree char *title = g_strdup_printf (_ ("To %s: greatest lever"), name);

  /* Translators: a length, and an angle. */
  gb_hand_step (hand, title, g_strdup_printf (_ ("%s at %s"), greatest, at), NULL);
  if (!isnan (side->filling))
    gb_hand_step (hand, _ ("Where the first edge goes under and water comes in; from there on the curve is that of a boat closed there"),
                  gb_hand_show (hand, side->filling, GB_DIM_ANGLE), NULL);
  if (isnan (side->vanishing))
    gb_hand_say (hand, _ ("The lever does not vanish before 180°: she rights herself from any angle"));
  else
    gb_hand_step (hand, _ ("Where it vanishes, and she goes over"),
                  gb_hand_show (hand, side->vanishing, GB_DIM_ANGLE), NULL);
  if (!isnan (side->area))
    show_area (hand, side, righting->total);
}

/* A steady moment heels to one side only. */
static void
show_moment (GbHand *hand, const GbRighting *righting)
{
  GbTerm terms[] = { { NULL, righting->moment, GB_DIM_MOMENT },
                     { GB_DIVIDED, righting->total, GB_DIM_MASS } };
  double steady = righting->moment >= 0 ? righting->starboard.steady : righting->port.steady;

  if (isnan (righting->moment))
    return;
  gb_hand_step (hand, _ ("Lever of the steady heeling moment: moment ÷ displacement"),
                gb_hand_sum (hand, terms, 2, righting->moment / righting->total, GB_DIM_LENGTH), NULL);
  if (isnan (steady))
    gb_hand_say (hand, _ ("The curve nowhere holds that: under it she goes over"));
  else
    gb_hand_step (hand, _ ("She heels to where the curve first comes to that"),
                  gb_hand_show (hand, steady, GB_DIM_ANGLE), NULL);
}

static void
add_row (GbHand *hand, const GbLever *lever)
{
  gb_hand_row (
      hand, gb_hand_show (hand, lever->heel, GB_DIM_ANGLE), gb_hand_show (hand, lever->lever, GB_DIM_LENGTH),
      gb_hand_show (hand, lever->solid, GB_DIM_LENGTH), gb_hand_show (hand, lever->trim, GB_DIM_ANGLE),
      gb_hand_show (hand, lever->freeboard, GB_DIM_LENGTH), NULL);
}

static void
show_table (GbHand *hand, const GbRighting *righting)
{
  gb_hand_columns (hand, _ ("Heel"), _ ("Lever"), _ ("Liquids frozen"), _ ("Trim"), _ ("Least freeboard"),
                   NULL);
  for (guint i = 0; i < GB_N_LEVERS; i += EVERY)
    add_row (hand, &righting->levers[i]);
}

GbWorking *
gb_working_righting (const GbBoat *boat, const GbFindings *findings, const GbRighting *righting)
{
  GbHand hand = gb_hand_start (boat, findings, g_strdup (_ ("Righting levers")));

  hand.working->caution = g_strdup (gb_caution_afloat ());
  if (righting == NULL)
    {
      gb_hand_say (&hand, _ ("There is no curve: she does not float so, or it is not found yet"));
      return hand.working;
    }
  show_one_lever (&hand, righting);
  show_gm (&hand, righting);
  show_side (&hand, righting, &righting->starboard, _ ("starboard"));
  show_side (&hand, righting, &righting->port, _ ("port"));
  show_moment (&hand, righting);
  show_table (&hand, righting);
  return hand.working;
}
