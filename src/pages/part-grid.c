/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-part-grid"

#include "part-grid.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "boat/money.h"
#include "boat/part-size.h"
#include "boat/part-text.h"
#include "boat/quantity.h"
#include "pages/amount-entry.h"
#include "reports/import.h"

static const GbFindings *
findings_of (GbGrid *grid)
{
  return gb_project_get_findings (gb_grid_get_project (grid));
}

/* What is found of a part, or of the boat in its own row. */
static const GbMass *
mass_of (GbGrid *grid, const GbRecord *record)
{
  const GbRollup *rollup = &findings_of (grid)->rollup;

  return record->kind == GB_RECORD_BUILD ? &rollup->boat : gb_rollup_part (rollup, (const GbPart *) record);
}

static char *
show (GbGrid *grid, double value, GbDimension dim)
{
  return gb_quantity_format (value, dim, gb_project_get_build (gb_grid_get_project (grid))->units);
}

/* Amount ------------------------------------------------------------------------------------------------- */

static void
look_amount (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  if (record->kind == GB_RECORD_PART)
    look->text
      = gb_part_amount_text (gb_project_get_boat (gb_grid_get_project (grid)), (const GbPart *) record);
}

static char *
edit_amount (GbGrid *grid, const GbRecord *record)
{
  return record->kind == GB_RECORD_PART
           ? gb_amount_edit_text (gb_grid_get_project (grid), (const GbPart *) record)
           : NULL;
}

static gboolean
enter_amount (GbGrid *grid, const gint64 *ids, guint n_ids, const char *text, const GbChoiceItem *chosen,
              GError **error)
{
  return gb_amount_enter (gb_grid_get_project (grid), ids, n_ids, text, error);
}

/* What the stock gives is shown as well, but quietly. */
static void
look_material (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  const GbBoat *boat = gb_project_get_boat (gb_grid_get_project (grid));
  const GbPart *part = (const GbPart *) record;
  const GbField *field = gb_field (GB_RECORD_PART, "material");
  const GbMaterial *material;

  if (record->kind != GB_RECORD_PART || !gb_field_applies (field, record))
    return;
  material = gb_boat_material (boat, gb_part_size (boat, part).material);
  look->text = g_strdup (material != NULL ? material->name : "–");
  if (material != NULL && part->material == 0)
    {
      look->flags = GB_CELL_DIM;
      look->note = g_strdup_printf (_ ("%s, from the stock that it is cut from"), material->name);
    }
}

/* Masses and places -------------------------------------------------------------------------------------- */

/* What is not known is counted beside the sum, never taken as nothing. */
static void
look_mass (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  const GbMass *mass = mass_of (grid, record);
  g_autofree char *sum = show (grid, mass->mass, GB_DIM_MASS);

  look->flags = record->kind == GB_RECORD_BUILD ? GB_CELL_STRONG : 0;
  if (mass->trouble != GB_TROUBLE_NONE && isnan (mass->mass))
    {
      look->flags |= GB_CELL_TROUBLE;
      look->note = g_strdup (gb_trouble_sentence (mass->trouble));
    }
  else if (mass->n_no_mass > 0 && mass->n_no_mass < mass->n_parts)
    {
      /* Translators: %s is a mass; the question mark stands for what is not known. */
      look->text = g_strdup_printf (_ ("%s + ?"), sum);
      look->note = g_strdup_printf (
        ngettext ("%u part has no mass yet.", "%u parts have no mass yet.", mass->n_no_mass),
        mass->n_no_mass);
      return;
    }
  look->text = g_steal_pointer (&sum);
}

static void
look_mass_sd (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  const GbMass *mass = mass_of (grid, record);
  g_autofree char *sd = show (grid, mass->mass_sd, GB_DIM_MASS);

  look->text = isnan (mass->mass_sd) ? g_steal_pointer (&sd) : g_strconcat ("± ", sd, NULL);
}

/* The trade's letters. */
static void
look_basis (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  static const char *const letters[GB_N_AS] = { NC_ ("basis", "E"), NC_ ("basis", "C"), NC_ ("basis", "A") };
  static const char *const words[GB_N_AS]
    = { N_ ("Estimated"), N_ ("Calculated"), N_ ("Actual: it was on the scale") };
  const GbMass *mass = mass_of (grid, record);
  gboolean leaf = record->kind == GB_RECORD_PART && ((const GbPart *) record)->kind == GB_KIND_PART;

  if (isnan (mass->mass) || !(leaf || mass->weighed))
    return;
  look->text = g_strdup (g_dpgettext2 (NULL, "basis", letters[mass->as]));
  look->note = g_strdup (_ (words[mass->as]));
}

static void
look_centre (GbGrid *grid, double place, GbCellLook *look)
{
  look->text = show (grid, place, GB_DIM_LENGTH);
}

static void
look_cg_x (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  look_centre (grid, mass_of (grid, record)->x, look);
}

static void
look_cg_y (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  look_centre (grid, mass_of (grid, record)->y, look);
}

static void
look_cg_z (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  look_centre (grid, mass_of (grid, record)->z, look);
}

/* Money -------------------------------------------------------------------------------------------------- */

static void
look_money (GbGrid *grid, const GbRecord *record, gint64 amount, GbCellLook *look)
{
  if (record->kind == GB_RECORD_PART)
    look->text = gb_money_format (amount, gb_project_get_build (gb_grid_get_project (grid))->currency);
}

static const GbPartCost *
cost_of (GbGrid *grid, const GbRecord *record)
{
  static const GbPartCost unknown = { GB_MONEY_UNKNOWN, GB_MONEY_UNKNOWN, GB_MONEY_UNKNOWN };
  const GbCosts *costs = &findings_of (grid)->costs;

  return record->kind == GB_RECORD_PART && record->index < costs->n_parts ? &costs->parts[record->index]
                                                                          : &unknown;
}

static void
look_planned (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  look_money (grid, record, cost_of (grid, record)->planned, look);
}

static void
look_bought (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  look_money (grid, record, cost_of (grid, record)->bought, look);
}

/* Rows --------------------------------------------------------------------------------------------------- */

static gint64
add_part (GbGrid *grid, const char *text, const GbChoiceItem *chosen, GbGridSpot spot, GbPartKind kind,
          GError **error)
{
  return gb_project_add_part (gb_grid_get_project (grid), text, kind, spot.owner, spot.after, error);
}

static char *
write_parts (GbProject *project, const gint64 *ids, guint n_ids)
{
  return gb_export_rows (gb_project_get_boat (project), ids, n_ids);
}

static gboolean
read_parts (GbGrid *grid, const char *text, GbGridSpot spot, GError **error)
{
  GbProject *project = gb_grid_get_project (grid);
  g_autoptr (GbImport) import
    = gb_import_new (GB_RECORD_PART, text, -1, gb_project_get_boat (project), error);
  GbEdit *edit;

  if (import == NULL)
    return FALSE;
  edit = gb_import_to_edit (import, spot.owner);
  if (edit != NULL)
    return gb_project_apply (project, edit, error);
  g_set_error_literal (
    error, GB_IMPORT_ERROR, 0,
    _ ("None of these rows can become a part. The first row must name the columns, one of them “Name”."));
  return FALSE;
}

static const char *const sizes[]
  = { "length",      "width",  "thickness", "quantity", "area",    "outline", "diameter", "wall",
      "linear_mass", "volume", "coats",     "mass",     "takeoff", "section", NULL };

static const GbGridColumn columns[] = {
  { .name = "name", .width = 22 },
  { .name = "material", .width = 16, .look = look_material },
  { .name = "amount",
    .title = N_ ("Amount"),
    .width = 24,
    .look = look_amount,
    .edit_text = edit_amount,
    .enter = enter_amount,
    .stands_for = sizes },
  { .name = "total", .title = N_ ("Mass"), .width = 11, .is_number = TRUE, .look = look_mass },
  { .name = "total-sd", .title = N_ ("Mass ±"), .width = 10, .is_number = TRUE, .look = look_mass_sd },
  { .name = "basis", .width = 6, .look = look_basis },
  { .name = "cg-x", .title = N_ ("Centre x"), .width = 9, .is_number = TRUE, .look = look_cg_x },
  { .name = "cg-y", .title = N_ ("Centre y"), .width = 9, .is_number = TRUE, .look = look_cg_y },
  { .name = "cg-z", .title = N_ ("Centre z"), .width = 9, .is_number = TRUE, .look = look_cg_z },
  { .name = "planned", .title = N_ ("Planned cost"), .width = 10, .is_number = TRUE, .look = look_planned },
  { .name = "bought", .title = N_ ("Bought"), .width = 10, .is_number = TRUE, .look = look_bought },
  { NULL },
};
static const char *const shown[] = { "name", "amount", "material", "total", "basis", NULL };
/* The lump's mass is entered as its amount; the kind by making groups. */
static const char *const left_out[] = { "mass", "kind", NULL };

const GbGridType gb_part_grid_type = {
  .kind = GB_RECORD_PART,
  .shown = shown,
  .left_out = left_out,
  .main_column = "name",
  .settings_key = "parts-columns",
  .blank_text = N_ ("Type a name to add a part"),
  .blank_text_group = N_ ("Type a name to add a part to %s"),
  .columns = columns,
  .add = add_part,
  .write_rows = write_parts,
  .read_rows = read_parts,
};
