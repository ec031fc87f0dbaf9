/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-working"

/* What was measured: the inclining test, and the model in the tub. */

#include "working-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static char *
with_sd (const GbHand *hand, double value, double sd)
{
  g_autofree char *shown = gb_hand_show (hand, value, GB_DIM_LENGTH),
                  *spread = gb_hand_show (hand, sd, GB_DIM_LENGTH);

  return isnan (sd) ? g_steal_pointer (&shown) : g_strdup_printf ("%s ± %s", shown, spread);
}

/* The inclining test ------------------------------------------------------------------------------------- */

static void
show_readings (GbHand *hand, const GbInclining *test, const GbInclined *inclined)
{
  const GPtrArray *shifts = gb_record_children (&test->rec);
  g_autofree char *gm = with_sd (hand, inclined->gm, inclined->gm_sd);

  gb_hand_columns (hand, _ ("Weight"), _ ("To starboard"), _ ("Moment"), _ ("Tangent of the heel"),
                   _ ("GM of this one"), NULL);
  for (guint i = 0; i < shifts->len; i++)
    {
      const GbShift *shift = shifts->pdata[i];
      double moment = shift->mass * shift->distance, tangent = gb_shift_tangent (shift, test->pendulum);

      gb_hand_row (
          hand, gb_hand_show (hand, shift->mass, GB_DIM_MASS),
          gb_hand_show (hand, shift->distance, GB_DIM_LENGTH), gb_hand_show (hand, moment, GB_DIM_MOMENT),
          isnan (tangent) ? g_strdup ("–") : g_strdup_printf ("%.4f", tangent),
          gb_hand_show (hand, tangent != 0 ? moment / inclined->mass / tangent : NAN, GB_DIM_LENGTH), NULL);
    }
  gb_hand_row (hand, g_strdup (_ ("All together")), g_strdup (""), g_strdup (""), g_strdup (""),
               g_steal_pointer (&gm), NULL);
}

static void
show_gravity (GbHand *hand, const GbInclined *inclined)
{
  g_autofree char *kg = with_sd (hand, inclined->kg, inclined->kg_sd),
                  *km = gb_hand_show (hand, inclined->km, GB_DIM_LENGTH);
  g_autofree char *gm = gb_hand_show (hand, inclined->gm, GB_DIM_LENGTH);

  gb_hand_step (hand,
                _ ("Height of the centre of gravity over the keel: KM, computed for that displacement, − GM; "
                   "what liquids took off put back"),
                g_strdup_printf ("%s − %s → %s", km, gm, kg), _ ("common practice of naval architecture"));
  gb_hand_step (hand, _ ("Above the baseline"), with_sd (hand, inclined->z, inclined->z_sd), NULL);
  if (!isnan (inclined->computed_z))
    gb_hand_step (hand, _ ("The same from the weights of the parts and loads"),
                  gb_hand_show (hand, inclined->computed_z, GB_DIM_LENGTH), NULL);
}

GbWorking *
gb_working_inclined (const GbBoat *boat, const GbFindings *findings, gint64 inclining)
{
  const GbInclining *test = (const GbInclining *) gb_boat_get (boat, GB_RECORD_INCLINING, inclining);
  const GbInclined *inclined;
  GbHand hand;

  if (test == NULL || test->rec.index >= findings->n_inclined)
    return gb_hand_of_nothing (boat);
  inclined = &findings->inclined[test->rec.index];
  hand = gb_hand_start (boat, findings, g_strdup (_ ("Inclining test")));
  hand.working->caution = g_strdup (gb_caution_afloat ());
  gb_hand_say (&hand, inclined->trouble);
  gb_hand_step (&hand, _ ("Displacement at the test"), gb_hand_show (&hand, inclined->mass, GB_DIM_MASS),
                NULL);
  if (!isnan (inclined->gm))
    {
      gb_hand_step (&hand,
                    _ ("GM: weight moved × distance ÷ (displacement × tangent of the heel), as the best line "
                       "through all readings"),
                    with_sd (&hand, inclined->gm, inclined->gm_sd),
                    _ ("common practice of naval architecture"));
      if (!isnan (inclined->computed_gm))
        gb_hand_step (&hand, _ ("The same from the shapes and the weights"),
                      gb_hand_show (&hand, inclined->computed_gm, GB_DIM_LENGTH), NULL);
    }
  if (!isnan (inclined->kg))
    show_gravity (&hand, inclined);
  show_readings (&hand, test, inclined);
  return hand.working;
}

/* The model in the tub ----------------------------------------------------------------------------------- */

static const char *
froude (void)
{
  return _ ("Froude's law of similarity");
}

static void
show_waters (GbHand *hand, const GbTubbed *tubbed)
{
  double ratio = tubbed->density_ratio;
  g_autofree char *density = gb_hand_show (hand, tubbed->model_density, GB_DIM_DENSITY);

  /* Translators: a density, and a ratio. */
  gb_hand_step (hand, _ ("Water of the tub, and the boat's water over it"),
                g_strdup_printf (_ ("%s; %.4g"), density, ratio), NULL);
  gb_hand_step (hand, _ ("Masses and forces: scale³ × ratio of the waters"),
                g_strdup_printf ("%g³ × %.4g = %.6g", tubbed->scale, ratio,
                                 gb_similarity_factor (GB_LIKE_MASS, tubbed->scale, ratio)),
                froude ());
}

static void
show_factors (GbHand *hand, const GbTubbed *tubbed)
{
  gb_hand_step (hand, _ ("Scale: lengths and draughts of the boat over those of the model"),
                g_strdup_printf ("%g", tubbed->scale), froude ());
  if (!isnan (tubbed->density_ratio))
    show_waters (hand, tubbed);
  gb_hand_step (hand, _ ("Times and speeds: √scale"),
                g_strdup_printf ("√%g = %.4g", tubbed->scale, tubbed->time_factor), froude ());
}

static void
show_model_mass (GbHand *hand, const GbTubbed *tubbed)
{
  GbTerm terms[] = { { NULL, tubbed->model_mass, GB_DIM_MASS },
                     { GB_TIMES, gb_similarity_factor (GB_LIKE_MASS, tubbed->scale, tubbed->density_ratio),
                       GB_DIM_COUNT } };

  if (!isnan (tubbed->mass))
    gb_hand_step (hand, _ ("Model with its loads, in boat size"),
                  gb_hand_sum (hand, terms, 2, tubbed->mass, GB_DIM_MASS), NULL);
}

static void
show_explanations (GbHand *hand, const GbTubbed *tubbed)
{
  for (guint i = 0; i < tubbed->explanations->len; i++)
    gb_hand_step (hand, _ ("What would explain it"),
                  g_strdup (((const GbExplanation *) tubbed->explanations->pdata[i])->words), NULL);
}

static void
show_wanted (GbHand *hand, const GbTubbed *tubbed)
{
  const double centre[3] = { tubbed->wanted_centre.x, tubbed->wanted_centre.y, tubbed->wanted_centre.z };
  const double ballast[3] = { tubbed->ballast_centre.x, tubbed->ballast_centre.y, tubbed->ballast_centre.z };
  g_autofree char *mass = gb_hand_show (hand, tubbed->wanted_mass, GB_DIM_MASS),
                  *at = gb_hand_place (hand, centre);
  g_autofree char *add = gb_hand_show (hand, tubbed->ballast, GB_DIM_MASS),
                  *there = gb_hand_place (hand, ballast);

  if (isnan (tubbed->wanted_mass))
    return;
  /* Translators: a mass, and where its centre lies. */
  gb_hand_step (
      hand,
      _ ("To stand for the condition the model must weigh, in its own size: displacement ÷ factor of masses"),
      g_strdup_printf (_ ("%s, centre at %s"), mass, at), froude ());
  if (tubbed->ballast < 0)
    gb_hand_step (hand, _ ("The bare model is too heavy for that already, by"),
                  gb_hand_show (hand, -tubbed->ballast, GB_DIM_MASS), NULL);
  else if (!isnan (tubbed->ballast))
    gb_hand_step (hand, _ ("So the bare model wants that much weight, there"),
                  g_strdup_printf (_ ("%s, centre at %s"), add, there), NULL);
}

static void
add_row (GbHand *hand, const char *name, GbDimension dim, double read, double computed, double own)
{
  gb_hand_row (hand, g_strdup (name), gb_hand_show (hand, read, dim), gb_hand_show (hand, computed, dim),
               gb_hand_show (hand, own, dim), gb_hand_show (hand, read - computed, dim), NULL);
}

static void
show_comparison (GbHand *hand, const GbTubbed *tubbed)
{
  gb_hand_columns (hand, _ ("In boat size"), _ ("Read"), _ ("Computed"), _ ("For the model's own weight"),
                   _ ("Read − computed"), NULL);
  add_row (hand, _ ("Heel"), GB_DIM_ANGLE, tubbed->heel, tubbed->computed_heel, NAN);
  add_row (hand, _ ("Trim"), GB_DIM_ANGLE, tubbed->trim, tubbed->computed_trim, NAN);
  add_row (hand, _ ("Draught aft"), GB_DIM_LENGTH, tubbed->draught_aft, tubbed->computed_aft,
           tubbed->own_aft);
  add_row (hand, _ ("Draught forward"), GB_DIM_LENGTH, tubbed->draught_fore, tubbed->computed_fore,
           tubbed->own_fore);
}

GbWorking *
gb_working_tubbed (const GbBoat *boat, const GbFindings *findings, gint64 tub)
{
  const GbRecord *test = gb_boat_get (boat, GB_RECORD_TUB, tub);
  const GbTubbed *tubbed;
  g_autofree char *name = NULL;
  GbHand hand;

  if (test == NULL || test->index >= findings->n_tubbed)
    return gb_hand_of_nothing (boat);
  tubbed = &findings->tubbed[test->index];
  name = gb_record_dup_title (test);
  /* Translators: the name of a test. */
  hand = gb_hand_start (boat, findings, g_strdup_printf (_ ("The model in the tub: %s"), name));
  hand.working->caution = g_strdup (gb_caution_afloat ());
  gb_hand_say (&hand, tubbed->trouble);
  if (!(tubbed->scale > 0))
    return hand.working;
  show_factors (&hand, tubbed);
  show_model_mass (&hand, tubbed);
  show_explanations (&hand, tubbed);
  show_wanted (&hand, tubbed);
  show_comparison (&hand, tubbed);
  return hand.working;
}
