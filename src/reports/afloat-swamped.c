/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-report-afloat"

/* Full of water: by the volumes of her parts, and beside it by the published small-craft method. */

#include "afloat-private.h"

#include "engine/working.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* As she lies -------------------------------------------------------------------------------------------- */

static const GbColumn swamped_columns[] = {
  GB_GROUPED (N_ ("Full of water, the crew")),
  { "state", N_ ("State"), GB_CELL_TEXT, 0, 0 },
  { "weight", N_ ("To carry"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "most", N_ ("All of her carries"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "heel", N_ ("Heel"), GB_CELL_QUANTITY, GB_DIM_ANGLE, 0 },
  { "trim", N_ ("Trim"), GB_CELL_QUANTITY, GB_DIM_ANGLE, 0 },
  { "edge", N_ ("Lowest edge above water"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "gm", N_ ("GM"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
};

static void
add_state (GbTable *table, const GbSwampedRest *rest, gboolean guesswork)
{
  /* What would carry her may be just what is not known. */
  GbRestKind kind = rest->kind == GB_REST_SINKS && guesswork ? GB_REST_NONE : rest->kind;

  static const struct
  {
    const char *text, *code;
  } kinds[] = { [GB_REST_FOUND] = { N_ ("floats"), "floats" },
                [GB_REST_SINKS] = { N_ ("sinks"), "sinks" },
                [GB_REST_NONE] = { N_ ("not known"), "unknown" } };

  if (rest->kind == GB_REST_FOUND && rest->attitude.up.z < 0)
    gb_table_coded (table, _ ("turns over"), "over");
  else
    gb_table_coded (table, _ (kinds[kind].text), kinds[kind].code);
}

static void
add_swamped_rest (GbTable *table, const GbSwamped *swamped, const GbSwampedRest *rest, const char *name,
                  const char *code, const char *condition)
{
  gb_afloat_row (table, name, code, condition);
  add_state (table, rest, swamped->guesswork);
  gb_table_number (table, rest->weight);
  gb_table_number (table, rest->most);
  gb_table_number (table, rest->heel);
  gb_table_number (table, rest->trim);
  gb_table_number (table, rest->edge);
  gb_table_number (table, rest->gm);
}

static void
add_swamped (GbTable *table, const GbSwamped *swamped, const char *condition)
{
  gb_afloat_heading (table, condition);
  add_swamped_rest (table, swamped, &swamped->aboard, _ ("sitting in her"), "aboard", condition);
  add_swamped_rest (table, swamped, &swamped->holding_on, _ ("in the water, holding on"), "holding_on",
                    condition);
}

/* Foam, both ways ---------------------------------------------------------------------------------------- */

static const GbColumn foam_columns[] = {
  GB_GROUPED (N_ ("Foam that is wanted")),
  { "volume", N_ ("Volume"), GB_CELL_QUANTITY, GB_DIM_VOLUME, 0 },
  { "mass", N_ ("Mass"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "x", N_ ("Centre x"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "y", N_ ("y"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "apart", N_ ("Half to each side, out by"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "lowest", N_ ("not lower than z"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
};

static void
add_own_foam (GbTable *table, const GbSwamped *swamped, const char *condition)
{
  gb_afloat_row (table, _ ("by her parts' volumes, to float level"), "own", condition);
  gb_table_number (table, swamped->foam_volume);
  gb_table_number (table, swamped->foam_mass);
  if (!(swamped->foam_volume > 0))
    {
      gb_table_skip (table, 4);
      return;
    }
  gb_table_number (table, swamped->foam_x);
  gb_table_number (table, swamped->foam_y);
  gb_table_number (table, swamped->foam_apart);
  gb_table_number (table, swamped->foam_lowest);
}

/* The rule says how much, and where only in words. */
static void
add_rule_foam (GbTable *table, const char *name, const char *code, double volume, const char *condition)
{
  gb_afloat_row (table, name, code, condition);
  gb_table_number (table, volume);
  gb_table_number (table, volume > 0 ? volume * GB_FOAM_DENSITY : 0);
  gb_table_skip (table, 4);
}

static void
add_foam (GbTable *table, const GbStudy *study, const char *condition)
{
  const GbRule *rule = study->rule;

  gb_afloat_heading (table, condition);
  if (study->swamped != NULL)
    add_own_foam (table, study->swamped, condition);
  if (rule == NULL || rule->trouble != NULL)
    return;
  add_rule_foam (table, _ ("by 33 CFR 183: boat"), "rule_boat", rule->boat_foam, condition);
  add_rule_foam (table, _ ("by 33 CFR 183: motor"), "rule_motor", rule->motor_foam, condition);
  add_rule_foam (table, _ ("by 33 CFR 183: persons"), "rule_persons", rule->persons_foam, condition);
  add_rule_foam (table, _ ("by 33 CFR 183: in all"), "rule", rule->foam, condition);
}

/* The rule's own figures --------------------------------------------------------------------------------- */

static const GbColumn capacity_columns[] = {
  { "condition", N_ ("By 33 CFR 183"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "kind", N_ ("As a boat"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "max_displacement", N_ ("Displacement at the lowest edge"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "boat_weight", N_ ("Boat"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "motor_weight", N_ ("Motor"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "weight_capacity", N_ ("Weight capacity"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "persons_capacity", N_ ("for persons"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "persons", N_ ("Persons"), GB_CELL_QUANTITY, GB_DIM_COUNT, 0 },
  { "horsepower", N_ ("Horsepower"), GB_CELL_QUANTITY, GB_DIM_COUNT, 0 },
  { "applies", N_ ("Made for her"), GB_CELL_TEXT, 0, 0 },
};

static const struct
{
  const char *text, *code;
} rule_kinds[] = { [GB_RULE_BY_HAND] = { N_ ("rowed or paddled"), "by_hand" },
                   [GB_RULE_TWO_HP] = { N_ ("with a motor of 2 hp or less"), "two_hp" },
                   [GB_RULE_OUTBOARD] = { N_ ("with an outboard"), "outboard" } };

static void
add_capacity (GbTable *table, const GbRule *rule, const char *condition)
{
  gb_table_row (table, GB_ROW_NORMAL, 0);
  gb_table_text (table, condition);
  gb_table_coded (table, _ (rule_kinds[rule->kind].text), rule_kinds[rule->kind].code);
  gb_table_number (table, rule->max_displacement);
  gb_table_number (table, rule->boat_weight);
  gb_table_number (table, rule->motor_weight);
  gb_table_number (table, rule->weight_capacity);
  gb_table_number (table, rule->persons_capacity);
  gb_table_number (table, rule->persons);
  if (isnan (rule->horsepower))
    gb_table_skip (table, 1);
  else
    gb_table_number (table, rule->horsepower);
  gb_table_coded (table, rule->applies ? _ ("yes") : _ ("no"), rule->applies ? "yes" : "no");
}

/* What she is made of is the same in every condition. */
static const GbColumn line_columns[] = {
  { "material", N_ ("Material"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "dry", N_ ("Dry"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "factor", N_ ("Factor"), GB_CELL_QUANTITY, GB_DIM_COUNT, 0 },
  { "submerged", N_ ("Under water"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "source", N_ ("Factor from"), GB_CELL_TEXT, 0, 0 },
};

static void
add_source (GbTable *table, const GbRuleLine *line)
{
  if (!line->known)
    gb_table_coded (table, _ ("not known: counted in full"), "unknown");
  else if (line->from_table)
    gb_table_coded (table, _ ("the table"), "table");
  else
    gb_table_coded (table, _ ("its density"), "density");
}

static void
add_sum (GbTable *table, const char *name, const char *code, double weight)
{
  gb_table_row (table, GB_ROW_TOTAL, 0);
  gb_table_coded (table, name, code);
  gb_table_skip (table, 2);
  gb_table_number (table, weight);
  gb_table_skip (table, 1);
}

static void
add_lines (GbTable *table, const GbRule *rule)
{
  for (guint i = 0; i < rule->lines->len; i++)
    {
      const GbRuleLine *line = &g_array_index (rule->lines, GbRuleLine, i);

      gb_table_row (table, GB_ROW_NORMAL, 0);
      gb_table_text (table, line->material);
      gb_table_number (table, line->dry);
      gb_table_number (table, line->factor);
      gb_table_number (table, line->submerged);
      add_source (table, line);
    }
  add_sum (table, _ ("Below the edge"), "submerged", rule->submerged);
  add_sum (table, _ ("Above it, dry"), "deck", rule->deck);
}

/* The whole ---------------------------------------------------------------------------------------------- */

static void
say_troubles (const GbAfloatReport *self, const GbStudy *study, const char *condition)
{
  if (study->swamped != NULL && study->swamped->foam_trouble != NULL)
    /* Translators: the name of a set of loads, and a sentence about it. */
    gb_document_say (self->document, g_strdup_printf (_ ("%s: %s"), condition, study->swamped->foam_trouble));
  /* What ails both is said once. */
  if (study->rule != NULL && study->rule->trouble != NULL
      && (study->swamped == NULL || g_strcmp0 (study->rule->trouble, study->swamped->foam_trouble) != 0))
    gb_document_say (self->document, g_strdup_printf (_ ("%s: %s"), condition, study->rule->trouble));
}

static void
add_notes (GbDocument *document)
{
  gb_document_caution (document, gb_caution_swamped ());
  gb_document_note (document,
                    g_strdup (_ ("By her parts' volumes: open hulls are full of water; each part carries "
                                 "with its volume, mass over density, as "
                                 "far as it is under water; closed hulls carry with all of theirs.")));
  gb_document_note (document,
                    g_strdup (_ ("By the published method: 33 CFR part 183 of the United States and its "
                                 "Boatbuilder's Handbook, in their factors "
                                 "of weight under water; the text of the rule itself is what counts.")));
}

void
gb_afloat_add_swamped (const GbAfloatReport *self)
{
  GbTable *swamped, *foam, *capacity, *lines;

  if (self->studies == NULL || self->findings->flotation.n_hulls == 0)
    return;
  swamped = gb_document_table (self->document, "swamped", N_ ("Full of water"), swamped_columns,
                               G_N_ELEMENTS (swamped_columns));
  foam = gb_document_table (self->document, "foam", N_ ("Foam, by physics and by the published rule"),
                            foam_columns, G_N_ELEMENTS (foam_columns));
  capacity = gb_document_table (self->document, "capacity", N_ ("Capacity by the published rule"),
                                capacity_columns, G_N_ELEMENTS (capacity_columns));
  lines = gb_document_table (self->document, "rule_lines", N_ ("The published rule: weights under water"),
                             line_columns, G_N_ELEMENTS (line_columns));
  for (guint i = 0; i < self->studies->len; i++)
    {
      const GbStudy *study = self->studies->pdata[i];
      g_autofree char *name = gb_condition_dup_name (self->boat, study->condition);

      say_troubles (self, study, name);
      if (study->swamped != NULL)
        add_swamped (swamped, study->swamped, name);
      add_foam (foam, study, name);
      if (study->rule != NULL && study->rule->trouble == NULL)
        {
          add_capacity (capacity, study->rule, name);
          if (lines->rows->len == 0)
            add_lines (lines, study->rule);
        }
    }
  add_notes (self->document);
}
