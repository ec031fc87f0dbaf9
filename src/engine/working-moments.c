/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-working"

/* Tables of masses, arms and moments: arms in metres and moments in kg m, or in inches and lb in: the units
 * of hand calculations, not those of a drawing. */

#include "working-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const char *
arm_unit (GbUnits units)
{
  return units == GB_UNITS_FEET ? "in" : "m";
}

const char *
gb_moment_unit (GbUnits units)
{
  return units == GB_UNITS_FEET ? "lb in" : "kg m";
}

GbMomentTable
gb_moment_table (const GbHand *hand, double mass, double arm)
{
  double kilo = gb_quantity_factor (GB_DIM_MASS, hand->units),
         metre = hand->units == GB_UNITS_FEET ? 0.0254 : 1;

  return (GbMomentTable){ gb_column_format (mass, kilo), gb_column_format (arm, metre),
                          gb_column_format (mass * arm, kilo * metre) };
}

void
gb_moment_columns (GbHand *hand)
{
  g_autofree char *mass = gb_hand_heading (_ ("Mass"), gb_quantity_unit (GB_DIM_MASS, hand->units));
  g_autofree char *x = gb_hand_heading (_ ("x"), arm_unit (hand->units)),
                  *y = gb_hand_heading (_ ("y"), arm_unit (hand->units));
  g_autofree char *z = gb_hand_heading (_ ("z"), arm_unit (hand->units));
  g_autofree char *moment = gb_hand_heading (_ ("Moment"), gb_moment_unit (hand->units));

  gb_hand_columns (hand, _ ("Name"), mass, x, moment, y, moment, z, moment, NULL);
}

void
gb_moment_row (GbHand *hand, const GbMomentTable *table, char *take_name, double mass, const double centre[3])
{
  gb_hand_row (hand, take_name, gb_column_show (table->mass, mass), gb_column_show (table->arm, centre[0]),
               gb_column_show (table->moment, mass * centre[0]), gb_column_show (table->arm, centre[1]),
               gb_column_show (table->moment, mass * centre[1]), gb_column_show (table->arm, centre[2]),
               gb_column_show (table->moment, mass * centre[2]), NULL);
}

char *
gb_hand_place (const GbHand *hand, const double centre[3])
{
  g_autofree char *x = gb_hand_show (hand, centre[0], GB_DIM_LENGTH),
                  *y = gb_hand_show (hand, centre[1], GB_DIM_LENGTH);
  g_autofree char *z = gb_hand_show (hand, centre[2], GB_DIM_LENGTH);

  /* Translators: a place along the three axes, each with its unit. */
  return g_strdup_printf (_ ("x %s, y %s, z %s"), x, y, z);
}
