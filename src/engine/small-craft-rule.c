/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-small-craft-rule"

/* The method for one boat: what she carries to her lowest edge, what her motors weigh, and what her parts
 * weigh under water. Inside it goes by the method's pounds and feet; what comes out is in SI. */

#include "small-craft-rule.h"

#include "loads.h"
#include "rollup-private.h"
#include "swamped.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define FOOT 0.3048
#define LONGEST 6.096 /* m, 20 ft: 183.201 and 183.301 */

/* Motors ------------------------------------------------------------------------------------------------- */

/* All of a condition's, in lb. */
typedef struct
{
  double horsepower;
  double weight;  /* running, with controls, battery and full tank */
  double swamped; /* with controls and battery under water */
} Motors;

/* The row that tells of @load, by its horsepower or else its mass. NULL where it has neither, or is above the
 * table without a mass. */
static const GbRuleMotor *
motor_row (const GbLoad *load)
{
  const GbRuleMotor *row = gb_rule_motor (load->horsepower);

  if (row == NULL && load->mass > 0)
    row = gb_rule_motor_by_weight (load->horsepower > 0 ? INFINITY : load->mass / GB_POUND);
  return row;
}

/* A mass that is given is that of the dry motor; what running and being under water make of it is as in the
 * table. */
static void
add_motor (Motors *motors, const GbLoad *load, const GbRuleMotor *row)
{
  double times = load->quantity >= 0 ? load->quantity : 1;
  double dry = load->mass > 0 ? load->mass / GB_POUND : row->dry;
  double running = dry * row->running / row->dry, swamped = dry * row->swamped / row->dry;

  motors->horsepower += times * (load->horsepower > 0 ? load->horsepower : row->most_hp);
  motors->weight += times * (running + row->controls + row->battery_dry + row->full_tank);
  motors->swamped += times * (swamped + row->controls + row->battery_submerged);
}

/* A sentence where one of them cannot be reckoned with, else NULL. */
static char *
find_motors (Motors *motors, const GbBoat *boat, gint64 condition)
{
  const GbRecord *record = gb_boat_get (boat, GB_RECORD_CONDITION, condition);
  const GPtrArray *loads = record != NULL ? gb_record_children (record) : NULL;

  for (guint i = 0; loads != NULL && i < loads->len; i++)
    {
      const GbLoad *load = loads->pdata[i];
      const GbRuleMotor *row = motor_row (load);

      if (load->kind != GB_LOAD_MOTOR || load->quantity == 0)
        continue;
      if (row == NULL)
        /* Translators: the name of a motor. */
        return g_strdup_printf (_ ("The motor “%s” needs its horsepower or its mass."),
                                load->name != NULL ? load->name : "");
      add_motor (motors, load, row);
    }
  return NULL;
}

static GbRuleKind
kind_for (const Motors *motors)
{
  if (motors->horsepower > 2)
    return GB_RULE_OUTBOARD;
  return motors->horsepower > 0 ? GB_RULE_TWO_HP : GB_RULE_BY_HAND;
}

/* The hull ------------------------------------------------------------------------------------------------
 */

/* The hull, where there is a single one; hulls inside others do not count. */
static const GbHullShape *
single_hull (const GbHullSet *hulls)
{
  const GbHullShape *single = NULL;

  for (guint i = 0; i < hulls->n_hulls; i++)
    {
      const GbHullShape *hull = &hulls->hulls[i];

      if (hull->mesh == NULL || hull->inside)
        continue;
      if (single != NULL || hull->mirrored != NULL)
        return NULL;
      single = hull;
    }
  return single;
}

static double
hull_length (const GbHullShape *hull)
{
  double least = INFINITY, greatest = -INFINITY;

  for (guint i = 0; i < hull->mesh->n_points; i++)
    {
      least = fmin (least, hull->mesh->points[i].x);
      greatest = fmax (greatest, hull->mesh->points[i].x);
    }
  return greatest - least;
}

/* Breadth of the open edge where it is farthest aft; NAN for a closed hull. */
static double
transom_width (const GbHullShape *hull)
{
  const double near = 1e-6;
  double aft = INFINITY, port = -INFINITY, starboard = INFINITY;

  for (guint pass = 0; pass < 2; pass++)
    for (guint i = 0; i < hull->edges->len; i++)
      {
        const GArray *line = hull->edges->pdata[i];

        for (guint k = 0; k < line->len; k++)
          {
            GbVec3 p = g_array_index (line, GbVec3, k);

            if (pass == 0)
              aft = fmin (aft, p.x);
            else if (p.x <= aft + near)
              {
                port = fmax (port, p.y);
                starboard = fmin (starboard, p.y);
              }
          }
      }
  return isfinite (aft) ? port - starboard : NAN;
}

/* Capacity ----------------------------------------------------------------------------------------------- */

/* The persons capacity is given back in lb. */
static double
find_capacity (GbRule *rule, const Motors *motors, const GbHullShape *hull)
{
  double weight
      = gb_rule_weight_capacity (rule->kind, rule->max_displacement / GB_POUND, rule->boat_weight / GB_POUND);
  double persons = gb_rule_persons_capacity (rule->kind, weight, motors->weight);

  rule->motor_weight = motors->weight * GB_POUND;
  rule->weight_capacity = weight * GB_POUND;
  rule->persons_capacity = persons * GB_POUND;
  rule->persons = gb_rule_persons (persons);
  if (rule->kind != GB_RULE_BY_HAND && hull != NULL)
    rule->horsepower = gb_rule_horsepower (hull_length (hull) / FOOT, transom_width (hull) / FOOT, FALSE);
  return persons;
}

/* Weight under water ------------------------------------------------------------------------------------- */

/* What the parts come to, kg. */
typedef struct
{
  const GbBoat *boat;
  const GbRollup *rollup;
  double edge; /* z */
  GbRule *rule;
  GArray *materials; /* of gint64: whose the lines are; 0: of no material */
  double mass;       /* of all parts so far */
} Tally;

static const char *
line_name (const GbMaterial *material, gboolean known)
{
  if (!known)
    return _ ("Not known");
  return material != NULL && material->name != NULL ? material->name : _ ("Without a material");
}

static GbRuleLine *
line_for (Tally *tally, const GbMaterial *material, gboolean from_table, gboolean known)
{
  gint64 id = known && material != NULL ? material->rec.id : 0;
  GbRuleLine line = { .from_table = from_table, .known = known };

  for (guint i = 0; i < tally->materials->len; i++)
    {
      GbRuleLine *there = &g_array_index (tally->rule->lines, GbRuleLine, i);

      if (g_array_index (tally->materials, gint64, i) == id && there->from_table == from_table
          && there->known == known)
        return there;
    }
  line.material = g_strdup (line_name (material, known));
  g_array_append_val (tally->materials, id);
  g_array_append_val (tally->rule->lines, line);
  return &g_array_index (tally->rule->lines, GbRuleLine, tally->rule->lines->len - 1);
}

/* @factor NAN: nobody knows, so it lifts nothing. */
static void
add_mass (Tally *tally, double mass, double z, const GbMaterial *material, double factor, gboolean from_table)
{
  gboolean known = !isnan (factor);
  GbRuleLine *line;

  tally->mass += mass;
  if (z > tally->edge)
    {
      tally->rule->deck += mass;
      return;
    }
  if (!known)
    tally->rule->unknown_mass += mass;
  line = line_for (tally, material, from_table, known);
  line->dry += mass;
  line->submerged += mass * (known ? factor : 1);
}

/* @times: how many there are of the groups that it is in. */
static void
add_part (Tally *tally, const GbPart *part, double times)
{
  const GbMass *mass = gb_rollup_part (tally->rollup, part);
  const GbMaterial *material = gb_boat_material (tally->boat, gb_part_size (tally->boat, part).material);
  double density = mass->mass / gb_part_volume (tally->boat, tally->rollup, part);
  double z = isnan (mass->z) ? tally->rollup->boat.z : mass->z;
  gboolean from_table = FALSE;
  double factor;

  if (!(mass->mass * times > 0))
    return;
  factor = gb_rule_factor (material, density, &from_table);
  add_mass (tally, mass->mass * mass->scale * times, z, material, factor, from_table);
}

/* A group that the walk down the tree is in. */
typedef struct
{
  guint end;    /* index after what is in it */
  double times; /* copies of it and of the groups around it */
} Span;

static void
add_parts (Tally *tally)
{
  const GPtrArray *parts = gb_boat_all (tally->boat, GB_RECORD_PART);
  g_autoptr (GArray) spans = g_array_new (FALSE, FALSE, sizeof (Span));
  const Span boat = { G_MAXUINT, 1 };

  g_array_append_val (spans, boat);
  for (guint i = 0; i < parts->len; i++)
    {
      const GbPart *part = parts->pdata[i];
      Span span;

      while (i >= g_array_index (spans, Span, spans->len - 1).end)
        g_array_set_size (spans, spans->len - 1);
      span = g_array_index (spans, Span, spans->len - 1);
      if (!gb_part_gathers (part))
        {
          add_part (tally, part, span.times);
          continue;
        }
      span = (Span){ i + 1 + part->n_below, span.times * gb_part_copies (part) };
      g_array_append_val (spans, span);
    }
}

/* What a scale said of a group whose parts do not tell where it is. */
static void
add_unlisted (Tally *tally)
{
  double all = tally->rollup->boat.mass, left = all - tally->mass;

  if (left > 1e-9 * all)
    add_mass (tally, left, tally->rollup->boat.z, NULL, NAN, FALSE);
}

static void
add_margin (GbRule *rule, double margin)
{
  GbRuleLine line = { g_strdup (_ ("Growth margin")), margin, 1, margin, FALSE, FALSE };

  g_array_append_val (rule->lines, line);
}

static void
find_submerged (GbRule *rule, const GbBoat *boat, const GbRollup *rollup, double edge)
{
  g_autoptr (GArray) materials = g_array_new (FALSE, FALSE, sizeof (gint64));
  Tally tally = { boat, rollup, edge, rule, materials, 0 };

  add_parts (&tally);
  add_unlisted (&tally);
  if (rollup->margin.total > 0)
    add_margin (rule, rollup->margin.total);
  for (guint i = 0; i < rule->lines->len; i++)
    {
      GbRuleLine *line = &g_array_index (rule->lines, GbRuleLine, i);

      line->factor = line->submerged / line->dry;
      rule->submerged += line->submerged;
    }
}

static void
find_foam (GbRule *rule, const Motors *motors, double persons)
{
  double capacity = rule->weight_capacity / GB_POUND;
  double left = rule->kind == GB_RULE_OUTBOARD ? capacity - motors->weight : capacity;
  double boat = gb_rule_boat_foam (rule->submerged / GB_POUND, rule->deck / GB_POUND, GB_RULE_FOAM);
  double for_persons = gb_rule_persons_foam (rule->kind, persons, left, GB_RULE_FOAM);
  double less = rule->kind == GB_RULE_OUTBOARD ? NAN : (0.25 - 2.0 / 15) * persons / GB_RULE_FOAM;

  rule->swamped_motor = motors->swamped * GB_POUND;
  rule->boat_foam = boat * GB_CUBIC_FOOT;
  rule->motor_foam = motors->swamped / GB_RULE_FOAM * GB_CUBIC_FOOT;
  rule->persons_foam = for_persons * GB_CUBIC_FOOT;
  rule->law_persons_foam = (for_persons - less) * GB_CUBIC_FOOT;
  rule->foam = fmax (rule->boat_foam + rule->motor_foam + rule->persons_foam, 0);
}

/* All of it ---------------------------------------------------------------------------------------------- */

static void
line_clear (gpointer line)
{
  g_free (((GbRuleLine *) line)->material);
}

static GbRule *
rule_new (gint64 condition)
{
  GbRule *rule = g_new0 (GbRule, 1);

  rule->condition = condition;
  rule->horsepower = NAN;
  rule->lines = g_array_new (FALSE, FALSE, sizeof (GbRuleLine));
  g_array_set_clear_func (rule->lines, line_clear);
  return rule;
}

GbRule *
gb_rule_find (const GbBoat *boat,
              const GbHullSet *hulls,
              const GbEdgeSet *edges,
              const GbRollup *rollup,
              const GbFlotation *flotation,
              gint64 condition)
{
  GbRule *rule = rule_new (condition);
  const GbHullShape *hull = single_hull (hulls);
  double edge = flotation->lowest_edge, persons;
  Motors motors = { 0 };

  if (isnan (edge))
    rule->trouble = g_strdup (_ ("There is no hull yet that could float."));
  else if (!(rollup->boat.mass > 0))
    rule->trouble = g_strdup (_ ("Nothing of the boat has a mass yet."));
  else
    rule->trouble = find_motors (&motors, boat, condition);
  if (rule->trouble != NULL)
    return rule;

  rule->kind = kind_for (&motors);
  rule->applies = hull != NULL && hull_length (hull) < LONGEST;
  rule->max_displacement = gb_hydrostatics_at (hulls, GB_RULE_DENSITY, edge).displacement;
  rule->boat_weight = rollup->boat.mass + rollup->margin.total;
  persons = find_capacity (rule, &motors, hull);
  find_submerged (rule, boat, rollup, edge);
  find_foam (rule, &motors, persons);
  return rule;
}

void
gb_rule_free (GbRule *rule)
{
  if (rule == NULL)
    return;
  g_free (rule->trouble);
  g_array_unref (rule->lines);
  g_free (rule);
}
