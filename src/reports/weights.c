/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-report-weights"

/* The weight statement. First the balance: light craft, margin and loads against the flotation limit. Then
 * the moment table of all parts by group, the masses by basis with the margin on each, and what the scale
 * said. Centres are in the boat's axes. */

#include "part-path.h"
#include "report-private.h"

#include "boat/deviation.h"
#include "boat/part-text.h"
#include "boat/quantity.h"
#include "engine/loads.h"
#include "engine/working.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Facts ------------------------------------------------------------------------------------------------------------- */

static void
add_gyration (GbDocument *document, const GbMass *whole)
{
  double radii[3];

  gb_radii_of_gyration (whole, radii);
  gb_document_fact (document, "gyration_x", N_ ("Radius of gyration, roll"), GB_DIM_LENGTH, radii[0], NULL);
  gb_document_fact (document, "gyration_y", N_ ("Radius of gyration, pitch"), GB_DIM_LENGTH, radii[1], NULL);
  gb_document_fact (document, "gyration_z", N_ ("Radius of gyration, yaw"), GB_DIM_LENGTH, radii[2], NULL);
}

static void
add_flotation (GbDocument *document,
               const GbBuild *build,
               const GbFlotation *flotation,
               const GbAfloat *afloat)
{
  gb_document_fact (document, "total", N_ ("Total, loads aboard"), GB_DIM_MASS, flotation->total,
                    gb_quantity_format_with_sd (flotation->total, flotation->total_sd, GB_DIM_MASS, (GbUnits) build->units));
  gb_document_fact (document, "limit", N_ ("Flotation limit"), GB_DIM_MASS, flotation->limit.displacement,
                    NULL);
  gb_document_fact (document, "left", N_ ("Left to the limit"), GB_DIM_MASS, flotation->left, NULL);
  gb_document_fact (document, "chance", N_ ("Chance of passing it"), GB_DIM_RATIO, flotation->chance, NULL);
  gb_document_fact (document, "draught_fore", N_ ("Draught forward"), GB_DIM_LENGTH, afloat->draught_fore,
                    NULL);
  gb_document_fact (document, "draught_aft", N_ ("Draught aft"), GB_DIM_LENGTH, afloat->draught_aft, NULL);
  gb_document_fact (document, "freeboard", N_ ("Least freeboard, found"), GB_DIM_LENGTH,
                    afloat->least.freeboard, NULL);
  gb_document_fact (document, "freeboard_accepted", N_ ("Least freeboard, accepted"), GB_DIM_LENGTH,
                    build->freeboard, NULL);
  gb_document_fact (document, "water_density", N_ ("Water"), GB_DIM_DENSITY, flotation->water_density, NULL);
}

static void
add_facts (GbDocument *document, const GbBuild *build, const GbFindings *findings)
{
  const GbMass *whole = &findings->rollup.boat;
  const GbFlotation *flotation = &findings->flotation;

  gb_document_fact (document, "light", N_ ("Light craft, as listed"), GB_DIM_MASS, whole->mass,
                    gb_quantity_format_with_sd (whole->mass, whole->mass_sd, GB_DIM_MASS, (GbUnits) build->units));
  gb_document_fact (document, "light_with_margin", N_ ("Light craft with margin"), GB_DIM_MASS,
                    flotation->light + flotation->margin, NULL);
  gb_document_fact (document, "target", N_ ("Target mass"), GB_DIM_MASS, build->target_mass, NULL);
  gb_document_fact (document, "x", N_ ("Centre, x"), GB_DIM_LENGTH, whole->x, NULL);
  gb_document_fact (document, "y", N_ ("Centre, y"), GB_DIM_LENGTH, whole->y, NULL);
  gb_document_fact (document, "z", N_ ("Centre, z"), GB_DIM_LENGTH, whole->z, NULL);
  /* Of the first condition, as the limit is. */
  add_flotation (document, build, flotation, &findings->afloat[0]);
  add_gyration (document, whole);
}

/* The balance ------------------------------------------------------------------------------------------------------- */

static const GbColumn balance_columns[] = {
  { "name", N_ ("Item"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "mass", N_ ("Mass"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "mass_sd", N_ ("Deviation"), GB_CELL_QUANTITY, GB_DIM_MASS, GB_COLUMN_ROUGH },
  { "x", N_ ("x"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "y", N_ ("y"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "z", N_ ("z"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
};

static void
add_balance_row (GbTable *table,
                 GbRowKind kind,
                 const char *name,
                 const char *code,
                 double mass,
                 double sd,
                 const double *place)
{
  /* What is added up stands in from its sums. */
  gb_table_row (table, kind, kind == GB_ROW_NORMAL && place != NULL ? 1 : 0);
  gb_table_coded (table, name, code);
  gb_table_number (table, mass);
  if (isnan (sd))
    gb_table_skip (table, 1);
  else
    gb_table_number (table, sd);
  for (guint i = 0; i < 3; i++)
    if (place == NULL)
      gb_table_skip (table, 1);
    else
      gb_table_number (table, place[i]);
}

static void
add_margin (GbTable *table,
            const char *label,
            const char *code,
            double share,
            double mass,
            const double *place)
{
  g_autofree char *percent = gb_quantity_format (share, GB_DIM_RATIO, GB_UNITS_METRIC);
  g_autofree char *name = g_strdup_printf ("%s, %s", label, percent);

  if (mass > 0)
    add_balance_row (table, GB_ROW_NORMAL, name, code, mass, NAN, place);
}

static void
add_margins (GbTable *table, const GbBuild *build, const GbMargin *margin, const double *place)
{
  add_margin (table, _ ("Margin on estimated"), "margin_estimated", build->margin_estimated,
              margin->estimated, place);
  add_margin (table, _ ("Margin on calculated"), "margin_calculated", build->margin_calculated,
              margin->calculated, place);
  add_margin (table, _ ("Margin on weighed"), "margin_weighed", build->margin_weighed, margin->weighed,
              place);
  if (margin->fixed > 0)
    add_balance_row (table, GB_ROW_NORMAL, _ ("Margin, fixed"), "margin_fixed", margin->fixed, NAN, place);
}

static void
add_load (GbTable *table, const GbLoad *load)
{
  double mass = gb_load_weight (load);
  GbVec3 centre = gb_load_centre (load);
  g_autofree char *number = gb_quantity_format (load->quantity, GB_DIM_COUNT, GB_UNITS_METRIC);
  g_autofree char *name
      = load->quantity == 1 ? g_strdup (load->name) : g_strdup_printf ("%s × %s", number, load->name);

  add_balance_row (table, GB_ROW_NORMAL, name, NULL, mass, fabs (mass) * gb_load_spread (load),
                   (double[]){ centre.x, centre.y, centre.z });
}

static void
add_loads (GbTable *table, const GbBoat *boat, const GbFlotation *flotation)
{
  const GPtrArray *conditions = gb_boat_roots (boat, GB_RECORD_CONDITION);
  const GPtrArray *loads;
  g_autofree char *sum = NULL;

  if (conditions->len == 0)
    return;
  loads = gb_record_children (conditions->pdata[0]);
  for (guint i = 0; i < loads->len; i++)
    add_load (table, loads->pdata[i]);
  /* Translators: the name of a set of loads: "two up, with camping gear". */
  sum = g_strdup_printf (_ ("Loads: %s"), ((GbCondition *) conditions->pdata[0])->name);
  add_balance_row (table, GB_ROW_SUBTOTAL, sum, "loads", flotation->load_mass, flotation->load_sd,
                   (double[]){ flotation->load_x, flotation->load_y, flotation->load_z });
}

static void
add_balance (GbDocument *document, const GbBoat *boat, const GbFindings *findings)
{
  const GbMass *whole = &findings->rollup.boat;
  const GbFlotation *flotation = &findings->flotation;
  const double centre[3] = { whole->x, whole->y, whole->z };
  GbTable *table = gb_document_table (document, "balance", N_ ("Mass against the flotation limit"),
                                      balance_columns, G_N_ELEMENTS (balance_columns));

  add_balance_row (table, GB_ROW_NORMAL, _ ("Light craft, as listed and weighed"), "light", whole->mass,
                   whole->mass_sd, centre);
  add_margins (table, gb_boat_build (boat), &findings->rollup.margin, centre);
  add_balance_row (table, GB_ROW_SUBTOTAL, _ ("Light craft with margin"), "light_with_margin",
                   flotation->light + flotation->margin, NAN, centre);
  add_loads (table, boat, flotation);
  add_balance_row (table, GB_ROW_TOTAL, _ ("Total"), "total", flotation->total, flotation->total_sd,
                   (double[]){ flotation->total_x, flotation->total_y, flotation->total_z });
  add_balance_row (table, GB_ROW_NORMAL, _ ("Flotation limit"), "limit", flotation->limit.displacement, NAN,
                   NULL);
  add_balance_row (table, GB_ROW_TOTAL, _ ("Left to the limit"), "left", flotation->left, NAN, NULL);
}

/* Parts by group ---------------------------------------------------------------------------------------------------- */

static const GbColumn part_columns[] = {
  { "name", N_ ("Name"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "group", N_ ("Group"), GB_CELL_TEXT, 0, GB_COLUMN_DATA },
  { "times", N_ ("Times in the boat"), GB_CELL_QUANTITY, GB_DIM_COUNT, GB_COLUMN_DATA },
  { "basis", N_ ("E/C/A"), GB_CELL_TEXT, 0, 0 },
  { "mass", N_ ("Mass"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "mass_sd", N_ ("Deviation"), GB_CELL_QUANTITY, GB_DIM_MASS, GB_COLUMN_ROUGH },
  { "x", N_ ("x"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "y", N_ ("y"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "z", N_ ("z"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "moment_x", N_ ("Mass\302\240×\302\240x"), GB_CELL_MOMENT, 0, 0 },
  { "moment_y", N_ ("Mass\302\240×\302\240y"), GB_CELL_MOMENT, 0, 0 },
  { "moment_z", N_ ("Mass\302\240×\302\240z"), GB_CELL_MOMENT, 0, 0 },
  { "listed", N_ ("Listed"), GB_CELL_QUANTITY, GB_DIM_MASS, GB_COLUMN_DATA },
  { "ratio", N_ ("Scale to listed"), GB_CELL_QUANTITY, GB_DIM_RATIO, GB_COLUMN_DATA },
};

/* A moment is that of the mass that has a place, so that moments add up. */
static void
add_masses (GbTable *table, const GbMass *mass)
{
  double share = mass->mass * mass->scale;
  double placed = isnan (share) ? NAN : mass->placed_mass * mass->scale;

  gb_table_number (table, share);
  gb_table_number (table, mass->mass_sd * mass->scale);
  gb_table_number (table, mass->x);
  gb_table_number (table, mass->y);
  gb_table_number (table, mass->z);
  gb_table_number (table, placed * mass->x);
  gb_table_number (table, placed * mass->y);
  gb_table_number (table, placed * mass->z);
  if (mass->weighed || mass->scale != 1)
    {
      gb_table_number (table, mass->listed_mass);
      gb_table_number (table, share / mass->listed_mass);
    }
  else
    gb_table_skip (table, 2);
}

/* "Outrigger (pair, 2 off)": what is in it is listed once. */
static char *
row_name (const GbBoat *boat, const GbPart *part)
{
  g_autofree char *number = part->kind == GB_KIND_GROUP ? gb_part_amount_text (boat, part) : g_strdup ("");

  /* Translators: the name of a group of parts, and how many there are of it. */
  return *number != '\0' ? g_strdup_printf (_ ("%s (%s)"), part->name, number) : g_strdup (part->name);
}

static void
add_part (GbTable *table, const GbBoat *boat, const GbRollup *rollup, const GbPart *part)
{
  const GbMass *mass = gb_rollup_part (rollup, part);
  g_autofree char *name = row_name (boat, part);
  g_autofree char *path = gb_part_path (boat, part, NULL);

  gb_table_row (table, part->kind == GB_KIND_GROUP ? GB_ROW_GROUP : GB_ROW_NORMAL, part->depth);
  gb_table_text (table, name);
  gb_table_text (table, path);
  gb_table_number (table, gb_part_times (boat, part));
  gb_table_text (table, gb_basis_letters (mass));
  add_masses (table, mass);
}

static void
add_parts (GbDocument *document, const GbBoat *boat, const GbRollup *rollup)
{
  const GPtrArray *parts = gb_boat_all (boat, GB_RECORD_PART);
  GbTable *table = gb_document_table (document, "parts", N_ ("Masses and moments by group"), part_columns,
                                      G_N_ELEMENTS (part_columns));

  for (guint i = 0; i < parts->len; i++)
    add_part (table, boat, rollup, parts->pdata[i]);
  gb_table_row (table, GB_ROW_TOTAL, 0);
  gb_table_coded (table, _ ("Light craft, margin not in it"), "total");
  gb_table_skip (table, 2);
  gb_table_text (table, gb_basis_letters (&rollup->boat));
  add_masses (table, &rollup->boat);
}

/* By basis ---------------------------------------------------------------------------------------------------------- */

static const GbColumn basis_columns[] = {
  { "basis", N_ ("Basis"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "mass", N_ ("Mass"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "share", N_ ("Share"), GB_CELL_QUANTITY, GB_DIM_RATIO, 0 },
  { "margin_share", N_ ("Margin on it"), GB_CELL_QUANTITY, GB_DIM_RATIO, 0 },
  { "margin", N_ ("Margin"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
};

static void
add_basis_row (GbTable *table, GbBasis basis, double mass, double whole, double margin_share, double margin)
{
  gb_table_row (table, GB_ROW_NORMAL, 0);
  gb_table_choice (table, gb_field (GB_RECORD_PART, "basis"), basis);
  gb_table_number (table, mass);
  gb_table_number (table, mass / whole);
  gb_table_number (table, margin_share);
  gb_table_number (table, margin);
}

static void
add_bases (GbDocument *document, const GbBuild *build, const GbRollup *rollup)
{
  const double *by_as = rollup->boat.by_as;
  double whole = rollup->boat.mass;
  const GbMargin *margin = &rollup->margin;
  GbTable *table
      = gb_document_table (document, "basis", N_ ("By basis"), basis_columns, G_N_ELEMENTS (basis_columns));

  add_basis_row (table, GB_BASIS_ESTIMATED, by_as[GB_AS_ESTIMATED], whole, build->margin_estimated,
                 margin->estimated);
  add_basis_row (table, GB_BASIS_CALCULATED, by_as[GB_AS_CALCULATED], whole, build->margin_calculated,
                 margin->calculated);
  add_basis_row (table, GB_BASIS_WEIGHED, by_as[GB_AS_WEIGHED], whole, build->margin_weighed,
                 margin->weighed);
  gb_table_row (table, GB_ROW_NORMAL, 0);
  gb_table_coded (table, _ ("Fixed"), "fixed");
  gb_table_skip (table, 3);
  gb_table_number (table, margin->fixed);
  gb_table_row (table, GB_ROW_TOTAL, 0);
  gb_table_coded (table, _ ("Total"), "total");
  gb_table_number (table, whole);
  gb_table_number (table, whole > 0 ? 1 : NAN);
  gb_table_skip (table, 1);
  gb_table_number (table, margin->total);
}

/* Weighings --------------------------------------------------------------------------------------------------------- */

static const GbColumn weighing_columns[] = {
  { "what", N_ ("What"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "date", N_ ("Date"), GB_CELL_DATE, 0, 0 },
  { "mass", N_ ("Mass"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "mass_sd", N_ ("Deviation"), GB_CELL_QUANTITY, GB_DIM_MASS, GB_COLUMN_ROUGH },
  { "x", N_ ("x"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "y", N_ ("y"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "listed", N_ ("Listed"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "ratio", N_ ("Scale to listed"), GB_CELL_QUANTITY, GB_DIM_RATIO, 0 },
  { "stands", N_ ("Used"), GB_CELL_TEXT, 0, 0 },
};

static void
add_weighing (GbTable *table, const GbBoat *boat, const GbWeighed *weighed)
{
  const GbPart *part = gb_boat_part (boat, weighed->part);

  gb_table_row (table, GB_ROW_NORMAL, 0);
  gb_table_text (table, part != NULL ? part->name : _ ("The whole boat"));
  gb_table_date (table, weighed->date);
  gb_table_number (table, weighed->mass);
  gb_table_number (table, weighed->mass_sd);
  gb_table_number (table, weighed->x);
  gb_table_number (table, weighed->y);
  gb_table_number (table, weighed->listed);
  gb_table_number (table, weighed->mass / weighed->listed);
  gb_table_coded (table, weighed->stands ? _ ("yes") : _ ("no, an older one"),
                  weighed->stands ? "yes" : "no");
}

static void
add_weighings (GbDocument *document, const GbBoat *boat, const GbRollup *rollup)
{
  GbTable *table;

  if (rollup->n_weighings == 0)
    return;
  table = gb_document_table (document, "weighings", N_ ("On the scale"), weighing_columns,
                             G_N_ELEMENTS (weighing_columns));
  for (guint i = 0; i < rollup->n_weighings; i++)
    add_weighing (table, boat, &rollup->weighings[i]);
}

/* The whole --------------------------------------------------------------------------------------------------------- */

GbDocument *
gb_weights_document (const GbBoat *boat, const GbFindings *findings, gint64 today)
{
  const GbBuild *build = gb_boat_build (boat);
  GbDocument *document = gb_document_new ("weights", _ ("Weight statement"), build, today);

  add_facts (document, build, findings);
  gb_document_caution (document, gb_caution_afloat ());
  gb_say_verdicts (document, boat, findings, GB_VERDICT_ON_WEIGHT);
  add_balance (document, boat, findings);
  add_bases (document, build, &findings->rollup);
  add_weighings (document, boat, &findings->rollup);
  add_parts (document, boat, &findings->rollup);
  gb_document_note (document, g_strdup (gb_basis_note ()));
  gb_document_note (
      document,
      g_strdup (_ ("Places: x forward from the aft end of the baseline, y to port, z up from the baseline. "
                   "The margin is taken to lie at the light craft's centre.")));
  gb_document_note (
      document,
      g_strdup (_ (
          "A mass that was weighed stands instead of the listed one; what lies in a weighed group "
          "has its share of it. What is in a group of which there are several is listed once; the group counts "
          "them all.")));
  gb_document_note (
      document,
      g_strdup (_ ("The limit is the displacement at which the least accepted freeboard is reached, "
                   "upright and level. The chance of passing it takes the total's error as normal.")));
  return document;
}
