/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-working"

/* What carries her when she is full of water: the volume of what she is made of, part by part. */

#include "working-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define N_NAMED 12 /* parts that have a row of their own, the largest */

typedef struct
{
  const GbPart *part;
  double mass, volume;
} Piece;

static gint
larger_first (gconstpointer a, gconstpointer b)
{
  double left = ((const Piece *) a)->volume, right = ((const Piece *) b)->volume;

  return (left < right) - (left > right);
}

/* Of all that there are of it, in all of its groups, and as heavy as a scale said. */
static Piece
piece_of (const GbHand *hand, const GbPart *part)
{
  const GbRollup *rollup = &hand->findings->rollup;
  const GbMass *mass = gb_rollup_part (rollup, part);
  double times = mass->scale * gb_part_times (hand->boat, part);

  return (Piece){ part, mass->mass * times, gb_part_volume (hand->boat, rollup, part) * times };
}

/* (element-type Piece), the largest first. */
static GArray *
pieces (const GbHand *hand)
{
  const GPtrArray *parts = gb_boat_all (hand->boat, GB_RECORD_PART);
  GArray *all = g_array_new (FALSE, FALSE, sizeof (Piece));

  for (guint i = 0; i < parts->len; i++)
    {
      Piece piece = piece_of (hand, parts->pdata[i]);

      if (piece.volume > 0)
        g_array_append_val (all, piece);
    }
  g_array_sort (all, larger_first);
  return all;
}

static void
add_row (GbHand *hand, char *take_name, double mass, double volume)
{
  double water = hand->findings->flotation.water_density;

  gb_hand_row (hand, take_name, gb_hand_show (hand, mass, GB_DIM_MASS),
               gb_hand_show (hand, volume, GB_DIM_VOLUME), gb_hand_show (hand, volume * water, GB_DIM_MASS),
               NULL);
}

static void
add_to (Piece *sum, const Piece *piece)
{
  sum->mass += piece->mass;
  sum->volume += piece->volume;
}

static void
show_pieces (GbHand *hand)
{
  g_autoptr (GArray) all = pieces (hand);
  Piece rest = { NULL, 0, 0 }, sum = { NULL, 0, 0 };

  gb_hand_columns (hand, _ ("Part"), _ ("Mass"), _ ("Volume"), _ ("Carries"), NULL);
  for (guint i = 0; i < all->len; i++)
    {
      const Piece *piece = &g_array_index (all, Piece, i);

      add_to (&sum, piece);
      if (i < N_NAMED)
        add_row (hand, gb_record_dup_title (&piece->part->rec), piece->mass, piece->volume);
      else
        add_to (&rest, piece);
    }
  if (rest.volume > 0)
    add_row (hand, g_strdup (_ ("All others")), rest.mass, rest.volume);
  add_row (hand, g_strdup (_ ("Sum")), sum.mass, sum.volume);
}

static void
show_volumes (GbHand *hand, const GbSwamped *swamped)
{
  GbTerm terms[] = { { NULL, swamped->parts_volume, GB_DIM_VOLUME },
                     { GB_PLUS, swamped->hulls_volume, GB_DIM_VOLUME } };
  GbTerm carries[] = { { NULL, swamped->parts_volume + swamped->hulls_volume, GB_DIM_VOLUME },
                       { GB_TIMES, hand->findings->flotation.water_density, GB_DIM_DENSITY } };

  gb_hand_step (hand, _ ("What carries: volume of the parts, mass ÷ density, + closed hulls and air spaces"),
                gb_hand_sum (hand, terms, 2, swamped->parts_volume + swamped->hulls_volume, GB_DIM_VOLUME),
                _ ("Archimedes"));
  gb_hand_step (hand, _ ("With all of that under water: volume × density of the water"),
                gb_hand_sum (hand, carries, 2, swamped->aboard.most, GB_DIM_MASS), _ ("Archimedes"));
  if (swamped->n_no_volume > 0)
    gb_hand_step (hand, _ ("Parts whose density is not known carry nothing"),
                  gb_hand_show (hand, swamped->no_volume_mass, GB_DIM_MASS), NULL);
}

static char *
rest_text (const GbHand *hand, const GbSwampedRest *rest)
{
  g_autofree char *edge = gb_hand_show (hand, rest->edge, GB_DIM_LENGTH),
                  *heel = gb_hand_show (hand, rest->heel, GB_DIM_ANGLE);
  g_autofree char *trim = gb_hand_show (hand, rest->trim, GB_DIM_ANGLE),
                  *weight = gb_hand_show (hand, rest->weight, GB_DIM_MASS);
  g_autofree char *most = gb_hand_show (hand, rest->most, GB_DIM_MASS);

  if (rest->kind == GB_REST_FOUND)
    /* Translators: a mass, two angles, and a height over the water. */
    return g_strdup_printf (_ ("%s to carry: heel %s, trim %s, her lowest edge %s above water"), weight, heel,
                            trim, edge);
  if (rest->kind == GB_REST_SINKS)
    /* Translators: two masses. */
    return g_strdup_printf (_ ("%s to carry, and all of her carries %s: she sinks"), weight, most);
  return g_strdup (_ ("not known"));
}

static void
show_rests (GbHand *hand, const GbSwamped *swamped)
{
  g_autofree char *share = gb_hand_show (hand, swamped->holding, GB_DIM_RATIO);

  gb_hand_step (hand, _ ("Full of water, the crew sitting in her"), rest_text (hand, &swamped->aboard), NULL);
  gb_hand_step (hand, _ ("Share of their weight that people in the water hang on her"),
                g_steal_pointer (&share), swamped->holding == 2.0 / 15 ? _ ("33 CFR 183.105") : NULL);
  gb_hand_step (hand, _ ("Full of water, the crew in the water and holding on"),
                rest_text (hand, &swamped->holding_on), NULL);
}

static void
show_foam (GbHand *hand, const GbSwamped *swamped)
{
  double water = hand->findings->flotation.water_density;
  GbTerm lift[] = { { NULL, water, GB_DIM_DENSITY }, { GB_MINUS, swamped->foam_density, GB_DIM_DENSITY } };
  GbTerm mass[] = { { NULL, swamped->foam_volume, GB_DIM_VOLUME },
                    { GB_TIMES, swamped->foam_density, GB_DIM_DENSITY } };
  const double at[3] = { swamped->foam_x, swamped->foam_y, swamped->foam_lowest };

  gb_hand_say (hand, swamped->foam_trouble);
  if (isnan (swamped->foam_volume))
    return;
  if (swamped->foam_volume <= 0)
    {
      gb_hand_say (hand, _ ("No foam is wanted for her to float level with her lowest edge at the water"));
      return;
    }
  gb_hand_step (hand, _ ("What a volume of foam lifts: density of the water − density of the foam"),
                gb_hand_sum (hand, lift, 2, water - swamped->foam_density, GB_DIM_DENSITY), NULL);
  gb_hand_step (hand,
                _ ("Foam for her to float level, crew holding on, with her lowest edge at the water: what is "
                   "not carried ÷ that"),
                gb_hand_show (hand, swamped->foam_volume, GB_DIM_VOLUME), NULL);
  gb_hand_step (hand, _ ("Its mass: volume × density"),
                gb_hand_sum (hand, mass, 2, swamped->foam_mass, GB_DIM_MASS), NULL);
  if (!isnan (swamped->foam_x))
    gb_hand_step (hand,
                  _ ("Where its centre belongs so that moments balance, and how low it may lie at most"),
                  gb_hand_place (hand, at), NULL);
  if (!isnan (swamped->foam_apart))
    gb_hand_step (hand, _ ("Half of it to each side of that, so far out"),
                  gb_hand_show (hand, swamped->foam_apart, GB_DIM_LENGTH), NULL);
}

GbWorking *
gb_working_swamped (const GbBoat *boat, const GbFindings *findings, const GbSwamped *swamped)
{
  GbHand hand = gb_hand_start (boat, findings, g_strdup (_ ("Full of water")));

  hand.working->caution = g_strdup (gb_caution_swamped ());
  gb_hand_water (&hand);
  if (swamped == NULL)
    {
      gb_hand_say (&hand, _ ("Not known yet"));
      return hand.working;
    }
  show_volumes (&hand, swamped);
  show_rests (&hand, swamped);
  show_foam (&hand, swamped);
  show_pieces (&hand);
  return hand.working;
}
