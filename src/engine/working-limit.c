/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-working"

/* How the flotation limit came about, slice by slice, and how the boat with its loads stands against it. */

#include "engine/water.h"
#include "working-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define N_SLICES 10

void
gb_hand_water (GbHand *hand)
{
  const GbBuild *build = gb_boat_build (hand->boat);
  g_autofree char *salinity
      = gb_hand_show (hand, build->water == GB_WATER_SALT ? build->salinity : 0, GB_DIM_SALINITY);
  g_autofree char *temperature = gb_hand_show (hand, build->temperature, GB_DIM_TEMPERATURE), *words = NULL;
  char *density = gb_hand_show (hand, hand->findings->flotation.water_density, GB_DIM_DENSITY);

  if (build->water == GB_WATER_GIVEN)
    {
      gb_hand_step (hand, _ ("Density of the water, as given"), density, NULL);
      return;
    }
  /* Translators: a salinity and a temperature, each with its unit. */
  words = g_strdup_printf (_ ("Density of the water with %s of salt, at %s"), salinity, temperature);
  gb_hand_step (hand, words, density, _ ("EOS-80: UNESCO Technical Papers in Marine Science 44 (1983)"));
}

static void
show_height (GbHand *hand)
{
  const GbFlotation *flotation = &hand->findings->flotation;
  double freeboard = gb_boat_build (hand->boat)->freeboard;
  GbTerm terms[]
      = { { NULL, flotation->lowest_edge, GB_DIM_LENGTH }, { GB_MINUS, freeboard, GB_DIM_LENGTH } };

  gb_hand_step (hand, _ ("Highest water allowed, above the baseline: lowest edge − least freeboard"),
                gb_hand_sum (hand, terms, 2, flotation->lowest_edge - freeboard, GB_DIM_LENGTH), NULL);
}

/* The hulls cut into slices of one thickness, from the keel to the water. */
static void
show_slices (GbHand *hand)
{
  const GbFlotation *flotation = &hand->findings->flotation;
  double height = flotation->limit.z - flotation->keel;
  GbColumnFormat mass
      = gb_column_format (flotation->limit.displacement, gb_quantity_factor (GB_DIM_MASS, hand->units));
  GbColumnFormat volume
      = gb_column_format (flotation->limit.volume, gb_quantity_factor (GB_DIM_VOLUME, hand->units));
  g_autofree char *slice_heading
      = gb_hand_heading (_ ("Slice"), gb_quantity_unit (GB_DIM_VOLUME, hand->units));
  g_autofree char *volume_heading
      = gb_hand_heading (_ ("Under water"), gb_quantity_unit (GB_DIM_VOLUME, hand->units));
  g_autofree char *mass_heading
      = gb_hand_heading (_ ("Displacement"), gb_quantity_unit (GB_DIM_MASS, hand->units));
  double below = 0;

  gb_hand_columns (hand, _ ("Draught"), slice_heading, volume_heading, mass_heading, NULL);
  for (guint i = 1; i <= N_SLICES; i++)
    {
      GbHydrostatics at = gb_hydrostatics_at (&hand->findings->hulls, flotation->water_density,
                                              flotation->keel + height * i / N_SLICES);

      gb_hand_row (hand, gb_hand_show (hand, at.draught, GB_DIM_LENGTH),
                   gb_column_show (volume, at.volume - below), gb_column_show (volume, at.volume),
                   gb_column_show (mass, at.displacement), NULL);
      below = at.volume;
    }
}

static void
show_limit (GbHand *hand)
{
  const GbFlotation *flotation = &hand->findings->flotation;
  GbTerm terms[] = { { NULL, flotation->limit.volume, GB_DIM_VOLUME },
                     { GB_TIMES, flotation->water_density, GB_DIM_DENSITY } };

  gb_hand_step (hand, _ ("Volume under water up to there, cut from the shapes of all hulls"),
                gb_hand_show (hand, flotation->limit.volume, GB_DIM_VOLUME), NULL);
  gb_hand_step (hand, _ ("Flotation limit: volume × density of the water"),
                gb_hand_sum (hand, terms, 2, flotation->limit.displacement, GB_DIM_MASS), NULL);
}

static void
show_total (GbHand *hand)
{
  const GbFlotation *flotation = &hand->findings->flotation;
  GbTerm terms[] = { { NULL, flotation->light, GB_DIM_MASS },
                     { GB_PLUS, flotation->margin, GB_DIM_MASS },
                     { GB_PLUS, flotation->load_mass, GB_DIM_MASS } };
  g_autofree char *total = gb_hand_show (hand, flotation->total, GB_DIM_MASS),
                  *sd = gb_hand_show (hand, flotation->total_sd, GB_DIM_MASS);

  gb_hand_step (hand, _ ("Light craft + margin + loads"),
                gb_hand_sum (hand, terms, 3, flotation->total, GB_DIM_MASS), NULL);
  if (!isnan (flotation->total_sd))
    gb_hand_step (hand, _ ("Standard deviation, of the boat and of the loads"),
                  g_strdup_printf ("%s ± %s", total, sd), NULL);
}

static void
show_left (GbHand *hand)
{
  const GbFlotation *flotation = &hand->findings->flotation;
  GbTerm terms[]
      = { { NULL, flotation->limit.displacement, GB_DIM_MASS }, { GB_MINUS, flotation->total, GB_DIM_MASS } };
  g_autofree char *left = gb_hand_show (hand, flotation->left, GB_DIM_MASS),
                  *sd = gb_hand_show (hand, flotation->total_sd, GB_DIM_MASS);
  g_autofree char *deviations = gb_hand_show (hand, flotation->left / flotation->total_sd, GB_DIM_COUNT);
  g_autofree char *chance = gb_hand_show (hand, flotation->chance, GB_DIM_RATIO);

  gb_hand_step (hand, _ ("Left: limit − that"), gb_hand_sum (hand, terms, 2, flotation->left, GB_DIM_MASS),
                NULL);
  if (!isnan (flotation->chance) && flotation->total_sd > 0)
    /* Translators: a mass over its standard deviation gives so many of them, and a chance in per cent. */
    gb_hand_step (hand, _ ("Chance of coming out over the limit, by the normal distribution"),
                  g_strdup_printf (_ ("%s ÷ %s = %s standard deviations: %s"), left, sd, deviations, chance),
                  NULL);
}

static void
show_afloat (GbHand *hand)
{
  const GbFlotation *flotation = &hand->findings->flotation;
  g_autofree char *draught = gb_hand_show (hand, flotation->afloat.draught, GB_DIM_LENGTH);
  g_autofree char *freeboard = gb_hand_show (hand, flotation->afloat.freeboard, GB_DIM_LENGTH);

  if (flotation->sinks)
    gb_hand_step (hand, _ ("That is more than the hulls can carry: she sinks"), NULL, NULL);
  else if (!isnan (flotation->afloat.draught))
    /* Translators: two lengths. */
    gb_hand_step (hand, _ ("Afloat with that, level"),
                  g_strdup_printf (_ ("draught %s, freeboard %s"), draught, freeboard), NULL);
}

GbWorking *
gb_working_limit (const GbBoat *boat, const GbFindings *findings)
{
  const GbFlotation *flotation = &findings->flotation;
  GbHand hand = gb_hand_start (boat, findings, g_strdup (_ ("Flotation limit")));

  hand.working->caution = g_strdup (gb_caution_afloat ());
  gb_hand_water (&hand);
  if (isnan (flotation->limit.displacement))
    {
      gb_hand_step (&hand,
                    flotation->n_hulls == 0 ? _ ("No hull has a shape yet, and so there is no limit")
                                            : _ ("There is no limit, because something above is not known"),
                    NULL, NULL);
      show_total (&hand);
      return hand.working;
    }
  show_height (&hand);
  show_limit (&hand);
  show_total (&hand);
  if (isnan (flotation->total))
    return hand.working;
  show_left (&hand);
  show_afloat (&hand);
  if (flotation->limit.volume > 0)
    show_slices (&hand);
  return hand.working;
}
