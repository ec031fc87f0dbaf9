/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-small-craft-rule"

/* The method's formulas, in its units. Each names its section of 33 CFR part 183; foam is by the handbook. */

#include "small-craft-rule.h"

#include <math.h>

/* 183.35 and 183.37: a fifth, or three tenths, of what she carries beside herself. */
double
gb_rule_weight_capacity (GbRuleKind kind, double max_displacement, double boat_weight)
{
  double share = kind == GB_RULE_OUTBOARD ? 0.2 : 0.3;

  return fmax (share * (max_displacement - boat_weight), 0);
}

/* 183.41 and 183.43. For an outboard the law has a second bound out of a test with weights along the side,
 * which no drawing can stand in for. */
double
gb_rule_persons_capacity (GbRuleKind kind, double weight_capacity, double motor_weight)
{
  switch (kind)
    {
    case GB_RULE_BY_HAND:
      return 0.9 * weight_capacity;
    case GB_RULE_TWO_HP:
      return fmax (0.9 * weight_capacity - 25, 0);
    case GB_RULE_OUTBOARD:
    default:
      return fmax (weight_capacity - motor_weight, 0);
    }
}

guint
gb_rule_persons (double persons_capacity)
{
  if (!(persons_capacity > 0))
    return 0;
  return (guint) fmin (floor ((32 + persons_capacity) / 141 + 0.5), G_MAXUINT);
}

/* 183.53, up to a factor of 52. A flat bottom with hard chines goes one step down; below the first there is
 * none. */
double
gb_rule_horsepower (double length_ft, double transom_ft, gboolean flat_hard_chine)
{
  static const struct
  {
    double most_factor, horsepower;
  } steps[] = { { 35, 3 }, { 39, 5 }, { 42, 7.5 }, { 45, 10 }, { 52, 15 } };
  double factor = floor (length_ft * transom_ft + 0.5);

  if (!(factor >= 0))
    return NAN;
  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    if (factor <= steps[i].most_factor)
      return steps[flat_hard_chine && i > 0 ? i - 1 : i].horsepower;
  return NAN;
}

double
gb_rule_boat_foam (double sum_of_submerged, double deck_weight, double buoyancy)
{
  return (sum_of_submerged + deck_weight) / buoyancy;
}

double
gb_rule_persons_foam (GbRuleKind kind, double persons_capacity, double capacity_left, double buoyancy)
{
  double first, rest, dead;

  if (kind != GB_RULE_OUTBOARD)
    return 0.25 * capacity_left / buoyancy;
  first = fmin (persons_capacity, 550);
  rest = persons_capacity - first;
  dead = fmax (capacity_left - persons_capacity, 0);
  return (0.5 * first + 0.125 * rest + 0.25 * dead) / buoyancy;
}
