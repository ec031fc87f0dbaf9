/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-report-parts"

/* The parts list: the tree of parts with take-off, material, mass, state and planned cost. Masses are what
 * the weight statement counts: where a weighed group's scale said something else than its parts' sum, each
 * part has its share of that. Mass and cost are of all that there are of the part in the boat. */

#include "part-path.h"
#include "report-private.h"

#include "boat/deviation.h"
#include "boat/part-size.h"
#include "boat/part-text.h"
#include "boat/quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const GbColumn columns[] = {
  { "name", N_ ("Name"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "group", N_ ("Group"), GB_CELL_TEXT, 0, GB_COLUMN_DATA },
  { "kind", N_ ("Kind"), GB_CELL_TEXT, 0, GB_COLUMN_DATA },
  { "quantity", N_ ("Quantity"), GB_CELL_QUANTITY, GB_DIM_COUNT, GB_COLUMN_DATA },
  { "in_all", N_ ("Number in the boat"), GB_CELL_QUANTITY, GB_DIM_COUNT, GB_COLUMN_DATA },
  { "pair", N_ ("Pair"), GB_CELL_TEXT, 0, GB_COLUMN_DATA },
  { "takeoff", N_ ("Take-off"), GB_CELL_TEXT, 0, GB_COLUMN_DATA },
  { "length", N_ ("Length"), GB_CELL_QUANTITY, GB_DIM_LENGTH, GB_COLUMN_DATA },
  { "width", N_ ("Width"), GB_CELL_QUANTITY, GB_DIM_LENGTH, GB_COLUMN_DATA },
  { "thickness", N_ ("Thickness"), GB_CELL_QUANTITY, GB_DIM_LENGTH, GB_COLUMN_DATA },
  { "amount", N_ ("Amount"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "material", N_ ("Material"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "stock", N_ ("Stock"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "mass_each", N_ ("Mass, each"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "mass", N_ ("Mass, in all"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "mass_sd", N_ ("Deviation"), GB_CELL_QUANTITY, GB_DIM_MASS, GB_COLUMN_DATA },
  { "basis", N_ ("E/C/A"), GB_CELL_TEXT, 0, 0 },
  { "state", N_ ("State"), GB_CELL_TEXT, 0, 0 },
  { "cost", N_ ("Planned cost"), GB_CELL_MONEY, 0, 0 },
  { "missing", N_ ("Missing"), GB_CELL_TEXT, 0, GB_COLUMN_DATA },
};

/* @times: how many of the row there are in the boat. */
static void
add_masses (GbTable *table, const GbMass *mass, double times)
{
  gb_table_number (table, mass->unit_mass * mass->scale);
  gb_table_number (table, mass->mass * mass->scale * times);
  gb_table_number (table, mass->mass_sd * mass->scale * times);
  gb_table_text (table, gb_basis_letters (mass));
}

static void
add_size (GbTable *table, const GbField *field, const GbPart *part, double size)
{
  if (gb_field_applies (field, &part->rec))
    gb_table_number (table, size);
  else
    gb_table_skip (table, 1);
}

static void
add_take_off (GbTable *table, const GbBoat *boat, const GbPart *part)
{
  GbPartSize size = gb_part_size (boat, part);
  const GbMaterial *material = gb_boat_material (boat, size.material);
  const GbStock *stock = gb_boat_stock (boat, part->stock);
  g_autofree char *amount = gb_part_amount_text (boat, part);

  gb_table_choice (table, gb_field (GB_RECORD_PART, "takeoff"), part->takeoff);
  add_size (table, gb_field (GB_RECORD_PART, "length"), part, size.length);
  add_size (table, gb_field (GB_RECORD_PART, "width"), part, size.width);
  add_size (table, gb_field (GB_RECORD_PART, "thickness"), part, size.thickness);
  gb_table_text (table, amount);
  gb_table_text (table, material != NULL ? material->name : NULL);
  gb_table_text (table, stock != NULL ? stock->name : NULL);
}

/* A part's or a group's row; what only parts have is blank for a group. */
static void
add_row (GbTable *table, const GbBoat *boat, const GbFindings *findings, const GbPart *part)
{
  const GbMass *mass = gb_rollup_part (&findings->rollup, part);
  gboolean is_group = part->kind == GB_KIND_GROUP;
  g_autofree char *path = gb_part_path (boat, part, NULL);
  g_autofree char *amount = is_group ? gb_part_amount_text (boat, part) : NULL;
  double times = gb_part_times (boat, part);

  gb_table_row (table, is_group ? GB_ROW_GROUP : GB_ROW_NORMAL, part->depth);
  gb_table_text (table, part->name);
  gb_table_text (table, path);
  gb_table_choice (table, gb_field (GB_RECORD_PART, "kind"), part->kind);
  gb_table_number (table, part->quantity);
  gb_table_number (table, part->quantity * (part->pair ? 2 : 1) * times);
  gb_table_coded (table, part->pair ? _ ("yes") : "", part->pair ? "yes" : "no");
  if (is_group)
    {
      gb_table_skip (table, 4);
      gb_table_text (table, amount);
      gb_table_skip (table, 2);
    }
  else
    add_take_off (table, boat, part);
  add_masses (table, mass, times);
  if (is_group)
    gb_table_skip (table, 1);
  else
    gb_table_choice (table, gb_field (GB_RECORD_PART, "state"), part->state);
  gb_table_money (table, findings->costs.parts[part->rec.index].planned);
  gb_table_text (table,
                 is_group || mass->trouble == GB_TROUBLE_NONE ? NULL : gb_trouble_sentence (mass->trouble));
}

static gint64
planned_in_all (const GbBoat *boat, const GbCosts *costs)
{
  const GPtrArray *roots = gb_boat_roots (boat, GB_RECORD_PART);
  gint64 sum = 0;

  for (guint i = 0; i < roots->len; i++)
    {
      gint64 planned = costs->parts[((GbRecord *) roots->pdata[i])->index].planned;

      if (planned != GB_MONEY_UNKNOWN)
        sum += planned;
    }
  return sum;
}

static void
add_total (GbTable *table, const GbBoat *boat, const GbFindings *findings)
{
  const GbMass *whole = &findings->rollup.boat;

  gb_table_row (table, GB_ROW_TOTAL, 0);
  gb_table_coded (table, _ ("All parts"), "total");
  gb_table_skip (table, 13);
  gb_table_number (table, whole->mass);
  gb_table_number (table, whole->mass_sd);
  gb_table_text (table, gb_basis_letters (whole));
  gb_table_skip (table, 1);
  gb_table_money (table, planned_in_all (boat, &findings->costs));
  gb_table_skip (table, 1);
}

/* TRUE if the part comes with a group that has a price of its own. */
static gboolean
is_in_kit (const GbBoat *boat, const GbPart *part)
{
  for (const GbPart *group = gb_boat_part (boat, part->rec.owner); group != NULL;
       group = gb_boat_part (boat, group->rec.owner))
    if (group->price != GB_MONEY_UNKNOWN)
      return TRUE;
  return FALSE;
}

static void
say_unknown_costs (GbDocument *document, const GbBoat *boat, const GbCosts *costs)
{
  const GPtrArray *parts = gb_boat_all (boat, GB_RECORD_PART);
  guint n = 0;

  for (guint i = 0; i < parts->len; i++)
    {
      const GbPart *part = parts->pdata[i];

      n += part->kind == GB_KIND_PART && costs->parts[i].planned == GB_MONEY_UNKNOWN
           && !is_in_kit (boat, part);
    }
  if (n > 0)
    gb_document_say (
        document,
        g_strdup_printf (ngettext ("%u part has no planned cost yet and is in no sum of money.",
                                   "%u parts have no planned cost yet and are in no sum of money.", n),
                         n));
}

/* Why parts have no mass, part by part. */
static void
add_troubles (GbDocument *document, const GbBoat *boat, const GbRollup *rollup)
{
  const GPtrArray *parts = gb_boat_all (boat, GB_RECORD_PART);

  for (guint i = 0; i < parts->len; i++)
    {
      const GbPart *part = parts->pdata[i];
      GbTrouble trouble = gb_rollup_part (rollup, part)->trouble;

      if (part->kind == GB_KIND_PART && trouble != GB_TROUBLE_NONE)
        /* Translators: the name of a part, and a sentence that says what is missing. */
        gb_document_note (document,
                          g_strdup_printf (_ ("%s: %s"), part->name, gb_trouble_sentence (trouble)));
    }
}

GbDocument *
gb_parts_document (const GbBoat *boat, const GbFindings *findings, gint64 today)
{
  const GbBuild *build = gb_boat_build (boat);
  const GbRollup *rollup = &findings->rollup;
  const GPtrArray *parts = gb_boat_all (boat, GB_RECORD_PART);
  GbDocument *document = gb_document_new ("parts", _ ("Parts list"), build, today);
  GbTable *table = gb_document_table (document, "parts", N_ ("Parts"), columns, G_N_ELEMENTS (columns));

  document->landscape = TRUE;
  gb_document_fact (document, "n_parts", N_ ("Parts"), GB_DIM_COUNT, rollup->boat.n_parts, NULL);
  gb_document_fact (document, "mass", N_ ("Mass of all parts"), GB_DIM_MASS, rollup->boat.mass,
                    gb_quantity_format_with_sd (rollup->boat.mass, rollup->boat.mass_sd, GB_DIM_MASS, (GbUnits) build->units));
  gb_document_fact_money (document, "cost", N_ ("Planned cost"), planned_in_all (boat, &findings->costs));
  gb_say_unknown_parts (document, boat, rollup);
  say_unknown_costs (document, boat, &findings->costs);
  for (guint i = 0; i < parts->len; i++)
    add_row (table, boat, findings, parts->pdata[i]);
  add_total (table, boat, findings);
  gb_document_note (document, g_strdup (gb_basis_note ()));
  add_troubles (document, boat, rollup);
  return document;
}
