/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/money.h"
#include "boat/quantity.h"
#include "engine/takeoff.h"
#include "engine/working.h"

G_BEGIN_DECLS

/* Writing down a hand calculation. */
typedef struct
{
  GbWorking *working;
  const GbBoat *boat;
  const GbFindings *findings; /* NULL where none are needed */
  GbUnits units;
} GbHand;

GbHand gb_hand_start (const GbBoat *boat, const GbFindings *findings, char *take_title);

/* @words are copied; @source may be NULL. */
void gb_hand_step (GbHand *hand, const char *words, char *take_numbers, const char *source);

/* The working of something that is no longer there. */
GbWorking *gb_hand_of_nothing (const GbBoat *boat);
/* @format holds one %s, for the part's name. */
char *gb_hand_title (const char *format, const GbPart *part);
/* What a column holds, and its unit. */
char *gb_hand_heading (const char *label, const char *unit);

/* The weighing that stands for a part, or for the boat (0); NULL if none does. */
const GbWeighing *gb_hand_weighing (const GbHand *hand, gint64 part);

char *gb_hand_show (const GbHand *hand, double value, GbDimension dim);
char *gb_hand_money (const GbHand *hand, gint64 amount);

/* "0.71 m² × 6 mm × 450 kg/m³ = 1.92 kg": each term has the sign that stands before it; the first one's is
 * left out. */
typedef struct
{
  const char *sign;
  double value;
  GbDimension dim;
} GbTerm;
char *gb_hand_sum (const GbHand *hand, const GbTerm *terms, guint n_terms, double result, GbDimension dim);

#define GB_TIMES "×"
#define GB_DIVIDED "÷"
#define GB_PLUS "+"
#define GB_MINUS "−"

/* Headings, then rows of as many cells; each list ends with NULL. The headings are copied, the cells taken.
 */
void gb_hand_columns (GbHand *hand, const char *first, ...) G_GNUC_NULL_TERMINATED;
void gb_hand_row (GbHand *hand, char *take_first, ...) G_GNUC_NULL_TERMINATED;

/* A column of numbers that shall add up on paper: all with the same number of decimals, so that the largest
 * has five figures. */
typedef struct
{
  double factor; /* SI over the unit shown */
  int decimals;
} GbColumnFormat;
GbColumnFormat gb_column_format (double largest, double factor);
char *gb_column_show (GbColumnFormat format, double value); /* an en dash for NAN */

/* Masses, arms and moments; the last row is the sum, and its centre. */
typedef struct
{
  GbColumnFormat mass, arm, moment;
} GbMomentTable;
GbMomentTable gb_moment_table (const GbHand *hand, double largest_mass, double largest_arm);
void gb_moment_columns (GbHand *hand);
void gb_moment_row (GbHand *hand, const GbMomentTable *table, char *take_name, double mass,
                    const double centre[3]);
const char *gb_moment_unit (GbUnits units); /* that such tables are in */
char *gb_hand_place (const GbHand *hand, const double centre[3]); /* "x 1.2 m, y 0, z 0.3 m" */

/* What the water weighs, and where that figure comes from. */
void gb_hand_water (GbHand *hand);
/* A sentence alone, which is copied; nothing for NULL. */
void gb_hand_say (GbHand *hand, const char *sentence);
/* An array of them (element-type utf8). */
void gb_hand_say_all (GbHand *hand, const GPtrArray *sentences);

/* Name of a material, and where its figure comes from. */
char *gb_hand_source (const GbHand *hand, const GbMaterial *material);

/* The steps of a take-off, or what it lacks. */
void gb_hand_take_off (GbHand *hand, const GbPart *part, const GbTakenOff *taken);

G_END_DECLS
