/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-working"

/* How she floats in one condition, as it would be worked by hand once the place of rest is known. */

#include "loads.h"
#include "working-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* All formulas here stand in every handbook of naval architecture. */
static const char *
trade (void)
{
  return _ ("common practice of naval architecture");
}

#define CENTIMETRE 0.01
#define DEGREE (G_PI / 180)

/* Weights ------------------------------------------------------------------------------------------------ */

static void
show_displacement (GbHand *hand, const GbAfloat *a)
{
  GbTerm terms[] = { { NULL, a->light, GB_DIM_MASS },
                     { GB_PLUS, a->margin, GB_DIM_MASS },
                     { GB_PLUS, a->load_mass, GB_DIM_MASS } };

  gb_hand_step (hand, _ ("Displacement: light craft + margin + loads"),
                gb_hand_sum (hand, terms, 3, a->total, GB_DIM_MASS), NULL);
}

static double
larger (double a, double b)
{
  return isnan (b) ? a : fmax (a, fabs (b));
}

static void
add_load_rows (GbHand *hand, const GbMomentTable *table, const GPtrArray *loads)
{
  for (guint i = 0; i < loads->len; i++)
    {
      GbVec3 at = gb_load_centre (loads->pdata[i]);

      gb_moment_row (hand, table, gb_record_dup_title (loads->pdata[i]), gb_load_weight (loads->pdata[i]),
                     (const double[]){ at.x, at.y, at.z });
    }
}

static void
show_weights (GbHand *hand, const GbAfloat *a)
{
  const GbMass *light = &hand->findings->rollup.boat;
  const GbRecord *condition = gb_boat_get (hand->boat, GB_RECORD_CONDITION, a->condition);
  const GPtrArray *loads = condition != NULL ? gb_record_children (condition) : NULL;
  const double centre[3] = { light->x, light->y, light->z },
               sum[3] = { a->gravity.x, a->gravity.y, a->gravity.z };
  double arm = larger (larger (larger (larger (1, light->x), light->z), sum[0]), sum[2]);
  GbMomentTable table = gb_moment_table (hand, a->total, arm);

  gb_moment_columns (hand);
  gb_moment_row (hand, &table, g_strdup (_ ("Light craft")), a->light, centre);
  if (a->margin > 0)
    gb_moment_row (hand, &table, g_strdup (_ ("Margin")), a->margin, centre);
  if (loads != NULL)
    add_load_rows (hand, &table, loads);
  gb_moment_row (hand, &table, g_strdup (_ ("Sum, and its centre")), a->total, sum);
}

/* At rest ------------------------------------------------------------------------------------------------ */

static void
show_rest (GbHand *hand, const GbAfloat *a)
{
  double water = hand->findings->flotation.water_density;
  GbTerm terms[] = { { NULL, a->total, GB_DIM_MASS }, { GB_DIVIDED, water, GB_DIM_DENSITY } };
  const double gravity[3] = { a->gravity.x, a->gravity.y, a->gravity.z };
  const double buoyancy[3] = { a->buoyancy.x, a->buoyancy.y, a->buoyancy.z };
  g_autofree char *g = gb_hand_place (hand, gravity), *b = gb_hand_place (hand, buoyancy);
  g_autofree char *attitude = gb_afloat_attitude_text (a);

  gb_hand_step (hand, _ ("Volume under water: displacement ÷ density of the water"),
                gb_hand_sum (hand, terms, 2, a->volume, GB_DIM_VOLUME), trade ());
  gb_hand_step (hand, _ ("Centre of gravity, in the boat's axes; liquids where they have run to"),
                g_steal_pointer (&g), NULL);
  gb_hand_step (hand, _ ("Centre of buoyancy of that volume, cut from the shapes of all hulls"),
                g_steal_pointer (&b), NULL);
  gb_hand_step (hand, _ ("She turns and sinks until buoyancy stands plumb under weight, and as large"),
                g_steal_pointer (&attitude), trade ());
}

static void
show_draughts (GbHand *hand, const GbAfloat *a)
{
  g_autofree char *fore = gb_hand_show (hand, a->draught_fore, GB_DIM_LENGTH),
                  *aft = gb_hand_show (hand, a->draught_aft, GB_DIM_LENGTH);
  g_autofree char *mid = gb_hand_show (hand, a->draught_mid, GB_DIM_LENGTH);
  g_autofree char *fore_x = gb_hand_show (hand, a->fore_x, GB_DIM_LENGTH),
                  *aft_x = gb_hand_show (hand, a->aft_x, GB_DIM_LENGTH);
  /* Translators: two places along the boat. */
  g_autofree char *words =
      g_strdup_printf (_ ("Draughts from the line of the keel, forward at %s and aft at %s"), fore_x, aft_x);

  /* Translators: three lengths. */
  gb_hand_step (hand, words, g_strdup_printf (_ ("%s forward, %s amidships, %s aft"), fore, mid, aft), NULL);
}

static void
show_freeboard (GbHand *hand, const GbAfloat *a)
{
  const GbEdgeSet *edges = &hand->findings->edges;
  g_autofree char *least = gb_hand_show (hand, a->least.freeboard, GB_DIM_LENGTH), *words = NULL,
                  *place = NULL;
  const double at[3] = { a->least.at.x, a->least.at.y, a->least.at.z };

  if (a->least.line < 0 || (guint) a->least.line >= edges->lines->len)
    {
      gb_hand_say (hand, _ ("No edge that must stay dry: there is no freeboard to measure"));
      return;
    }
  place = gb_hand_place (hand, at);
  /* Translators: the name of an edge. */
  words = g_strdup_printf (_ ("Least freeboard: height above the water of the lowest point of %s"),
                           ((const GbEdgeLine *) edges->lines->pdata[a->least.line])->name);
  /* Translators: a length, and the place where it is measured. */
  gb_hand_step (hand, words, g_strdup_printf (_ ("%s at %s"), least, place), NULL);
}

/* Stiffness ---------------------------------------------------------------------------------------------- */

/* "0.42 m⁴": the second moment of an area is no field's dimension. */
static char *
second_moment (const GbHand *hand, double value)
{
  const double foot = 0.3048;

  if (hand->units == GB_UNITS_FEET)
    return g_strdup_printf ("%.4g ft⁴", value / pow (foot, 4));
  return g_strdup_printf ("%.4g m⁴", value);
}

static void
show_radius (GbHand *hand, const char *words, double volume, double bm)
{
  g_autofree char *second = second_moment (hand, bm * volume),
                  *under = gb_hand_show (hand, volume, GB_DIM_VOLUME);
  g_autofree char *radius = gb_hand_show (hand, bm, GB_DIM_LENGTH);

  gb_hand_step (hand, words, g_strdup_printf ("%s ÷ %s = %s", second, under, radius), trade ());
}

static void
show_metacentre (GbHand *hand, const GbAfloat *a, const char *words, double bm, double gm)
{
  /* What liquids take off is what closes the sum. */
  double liquids = a->kb + bm - a->kg - gm;
  GbTerm terms[] = { { NULL, a->kb, GB_DIM_LENGTH },
                     { GB_PLUS, bm, GB_DIM_LENGTH },
                     { GB_MINUS, a->kg, GB_DIM_LENGTH },
                     { GB_MINUS, fabs (liquids) < 1e-9 ? 0 : liquids, GB_DIM_LENGTH } };

  gb_hand_step (hand, words, gb_hand_sum (hand, terms, 4, gm, GB_DIM_LENGTH), trade ());
}

static void
show_stiffness (GbHand *hand, const GbAfloat *a)
{
  show_radius (hand, _ ("BM across: second moment of the waterplane about its length ÷ volume"), a->volume,
               a->bm);
  show_metacentre (hand, a, _ ("GM across: KB + BM − KG − what liquids take off by running"), a->bm, a->gm);
  show_radius (hand, _ ("BM along: second moment of the waterplane about its breadth ÷ volume"), a->volume,
               a->bm_long);
  show_metacentre (hand, a, _ ("GM along: KB + BM − KG − what liquids take off by running"), a->bm_long,
                   a->gm_long);
}

static void
show_per_cm (GbHand *hand, const GbAfloat *a)
{
  GbTerm sink[] = { { NULL, a->waterplane, GB_DIM_AREA },
                    { GB_TIMES, CENTIMETRE, GB_DIM_LENGTH },
                    { GB_TIMES, hand->findings->flotation.water_density, GB_DIM_DENSITY } };
  GbTerm trim[] = { { NULL, a->total, GB_DIM_MASS },
                    { GB_TIMES, a->gm_long, GB_DIM_LENGTH },
                    { GB_TIMES, CENTIMETRE, GB_DIM_LENGTH },
                    { GB_DIVIDED, a->fore_x - a->aft_x, GB_DIM_LENGTH } };
  GbTerm heel[] = { { NULL, a->total, GB_DIM_MASS },
                    { GB_TIMES, a->gm, GB_DIM_LENGTH },
                    { GB_TIMES, sin (DEGREE), GB_DIM_COUNT } };

  gb_hand_step (hand, _ ("One centimetre deeper (TPC in the trade): waterplane × 1 cm × density"),
                gb_hand_sum (hand, sink, 3, a->per_cm, GB_DIM_MASS), trade ());
  gb_hand_step (
      hand,
      _ ("To change trim by one centimetre (MCT in the trade): displacement × GM along × 1 cm ÷ length"),
      gb_hand_sum (hand, trim, 4, a->trim_moment, GB_DIM_MOMENT), trade ());
  gb_hand_step (hand, _ ("To heel her by one degree: displacement × GM across × sin 1°"),
                gb_hand_sum (hand, heel, 3, a->heel_moment, GB_DIM_MOMENT), trade ());
}

/* Room ------------------------------------------------------------------------------------------------------
 */

static void
show_room (GbHand *hand, const GbAfloat *a)
{
  GbTerm left[] = { { NULL, a->limit, GB_DIM_MASS }, { GB_MINUS, a->total, GB_DIM_MASS } };
  GbTerm reserve[] = { { NULL, a->most, GB_DIM_MASS },
                       { GB_DIVIDED, hand->findings->flotation.water_density, GB_DIM_DENSITY },
                       { GB_MINUS, a->volume, GB_DIM_VOLUME } };
  g_autofree char *x = gb_hand_show (hand, a->room_at.x, GB_DIM_LENGTH),
                  *y = gb_hand_show (hand, a->room_at.y, GB_DIM_LENGTH);

  if (!isnan (a->limit))
    gb_hand_step (hand, _ ("May still come aboard: flotation limit, level, − displacement"),
                  gb_hand_sum (hand, left, 2, a->left, GB_DIM_MASS), NULL);
  if (!isnan (a->room_at.x))
    gb_hand_step (hand, _ ("Where that much brings her level"), g_strdup_printf (_ ("x %s, y %s"), x, y),
                  NULL);
  if (!isnan (a->chance))
    gb_hand_step (hand, _ ("Chance of coming out over the limit, by the normal distribution"),
                  gb_hand_show (hand, a->chance, GB_DIM_RATIO), NULL);
  if (!isnan (a->reserve))
    gb_hand_step (hand, _ ("Reserve of buoyancy: what floats her, level, ÷ density − volume under water"),
                  gb_hand_sum (hand, reserve, 3, a->reserve, GB_DIM_VOLUME), trade ());
}

GbWorking *
gb_working_afloat (const GbBoat *boat, const GbFindings *findings, gint64 condition)
{
  const GbAfloat *a = gb_findings_afloat (findings, condition);
  g_autofree char *name = NULL;
  GbHand hand;

  if (a == NULL)
    return gb_hand_of_nothing (boat);
  name = gb_condition_dup_name (boat, a->condition);
  /* Translators: the name of a set of loads. */
  hand = gb_hand_start (boat, findings, g_strdup_printf (_ ("Afloat: %s"), name));
  hand.working->caution = g_strdup (gb_caution_afloat ());
  gb_hand_water (&hand);
  gb_hand_say_all (&hand, a->troubles);
  show_displacement (&hand, a);
  gb_hand_say (&hand, a->sentence);
  if (!isnan (a->volume))
    {
      show_rest (&hand, a);
      show_draughts (&hand, a);
      show_freeboard (&hand, a);
      show_stiffness (&hand, a);
      show_per_cm (&hand, a);
    }
  show_room (&hand, a);
  show_weights (&hand, a);
  return hand.working;
}
