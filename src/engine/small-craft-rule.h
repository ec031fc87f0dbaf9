/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/afloat.h"

G_BEGIN_DECLS

/* Flotation and capacity by 33 CFR part 183 and the boatbuilder's handbook of the United States Coast Guard,
 * worked in its units: lb, ft3, 62.4 lb/ft3. For most boats built at home a yardstick and no duty; local
 * rules decide. Parts are sorted by height: under the lowest edge all is under water when she is swamped;
 * above it (deck and superstructure) all is dry weight. A part without a place is taken at the light craft's
 * centre. */

#define GB_POUND 0.45359237
#define GB_CUBIC_FOOT 0.028316846592
#define GB_RULE_WATER 62.4 /* lb/ft3 */
#define GB_RULE_DENSITY (GB_RULE_WATER * GB_POUND / GB_CUBIC_FOOT) /* the same in kg/m3; specific gravities
                                                                      are against it */
#define GB_RULE_FOAM 60.4  /* what a cubic foot of 2 lb/ft3 foam carries, lb */

/* The factor K by which dry weight becomes weight under water: of the handbook's table where @material is one
 * of its materials by name or family, else 1 - 1/SG by @density (kg/m3; NAN: that of the material). Negative
 * for what lifts. @from_table says which. What is more than a tenth heavier than its row goes by its density;
 * a paint never lifts. NAN where neither is known; @material may be NULL. */
double gb_rule_factor (const GbMaterial *material, double density, gboolean *from_table);

/* The motor table's row for @horsepower, masses in lb. NULL above the table. */
typedef struct
{
  double most_hp;
  double dry, running, swamped, controls, battery_dry, battery_submerged, full_tank;
} GbRuleMotor;
const GbRuleMotor *gb_rule_motor (double horsepower);
/* The row that a motor of this dry weight (lb) would stand in, where its horsepower is not known; never NULL.
 * */
const GbRuleMotor *gb_rule_motor_by_weight (double dry);

typedef enum
{
  GB_RULE_BY_HAND,  /* oars, paddles */
  GB_RULE_TWO_HP,   /* outboard of 2 hp or less */
  GB_RULE_OUTBOARD, /* of more */
} GbRuleKind;

/* Capacities, in lb, from the maximum displacement (lb), the boat's weight (lb), and for an outboard the
 * motor's whole weight. 0 where negative. */
double gb_rule_weight_capacity (GbRuleKind kind, double max_displacement, double boat_weight);
double gb_rule_persons_capacity (GbRuleKind kind, double weight_capacity, double motor_weight);
guint gb_rule_persons (double persons_capacity);               /* whole ones: (32 + capacity) / 141, rounded
                                                                  half up */
/* NAN above a factor of 52.5, which is not covered */
double gb_rule_horsepower (double length_ft, double transom_ft, gboolean flat_hard_chine);

/* Foam in ft3, for the boat and for persons. @capacity_left: the weight capacity less motor, battery and fuel
 * for level flotation, weight capacity else. */
double gb_rule_boat_foam (double sum_of_submerged, double deck_weight, double buoyancy);
double gb_rule_persons_foam (GbRuleKind kind, double persons_capacity, double capacity_left, double buoyancy);

/* One line of the working: a material, its dry weight below the edge, factor and weight under water. What is
 * not known, and the growth margin, have lines of their own with the factor 1. */
typedef struct
{
  char *material;
  double dry, factor, submerged; /* kg, -, kg */
  gboolean from_table;
  gboolean known; /* FALSE: the factor is not known, or it is the growth margin */
} GbRuleLine;

typedef struct
{
  gint64 condition;
  char *trouble; /* no hull, no mass, a motor of which nothing is known: nothing else is known then; or NULL
                    */
  GbRuleKind kind;
  gboolean applies; /* single hull under 20 ft (6.096 m) */
  double max_displacement, boat_weight, motor_weight; /* kg; the first in the rule's water, at the lowest
                                                         edge */
  double weight_capacity, persons_capacity;           /* kg */
  guint persons;
  double horsepower; /* NAN: none, or not covered */
  GArray *lines;     /* of GbRuleLine */
  double unknown_mass; /* of parts whose factor is not known: counted with K = 1 */
  double submerged, deck, swamped_motor; /* kg */
  double boat_foam, motor_foam, persons_foam, foam; /* m3; a negative boat_foam means that she lifts herself;
                                                       foam is 0 where none is needed */
  double law_persons_foam; /* by the law's 2/15 where the guideline takes 1/4, m3; NAN for an outboard's,
                              where it does not */
} GbRule;

/* Boat weight is light craft and margin. */
GbRule *gb_rule_find (const GbBoat *boat, const GbHullSet *hulls, const GbEdgeSet *edges,
                      const GbRollup *rollup, const GbFlotation *flotation, gint64 condition);
void gb_rule_free (GbRule *rule);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbRule, gb_rule_free)

G_END_DECLS
