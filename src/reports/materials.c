/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-report-materials"

/* The materials in use: what each is taken to weigh, how far that may be off, where the figure comes from,
 * and how much of the boat is made of it. */

#include "report-private.h"

#include "boat/part-size.h"
#include "engine/density.h"

#include <glib/gi18n-lib.h>
#include <math.h>

typedef struct
{
  double mass;
  guint n_parts;
  guint n_unknown; /* of those, without a mass */
} Use;

static void
add_use (Use *use, gboolean unknown, double mass)
{
  use->n_parts++;
  if (unknown)
    use->n_unknown++;
  else
    use->mass += mass;
}

static Use *
use_of (GArray *uses, const GbBoat *boat, gint64 material)
{
  const GbMaterial *found = gb_boat_material (boat, material);

  /* The last one stands for what has no material. */
  return &g_array_index (uses, Use, found != NULL ? found->rec.index : uses->len - 1);
}

static gboolean
is_found_by_material (const GbPart *part)
{
  return part->takeoff != GB_TAKEOFF_COUNT && part->takeoff != GB_TAKEOFF_LUMP;
}

/* Adds the part's mass to its material; that of cloth with resin is split by their ratio. */
static void
count_part (GArray *uses, const GbBoat *boat, const GbMass *mass, const GbPart *part)
{
  gint64 material = is_found_by_material (part) ? gb_part_size (boat, part).material : 0;
  double share = mass->mass * mass->scale * gb_part_times (boat, part);
  gboolean unknown = mass->n_no_mass > 0;
  gboolean wetted = part->takeoff == GB_TAKEOFF_COATING && part->coating == GB_COATING_CLOTH
                    && part->resin != 0 && part->resin_ratio > 0;

  if (wetted)
    {
      add_use (use_of (uses, boat, material), unknown, share / (1 + part->resin_ratio));
      add_use (use_of (uses, boat, part->resin), unknown,
               share * part->resin_ratio / (1 + part->resin_ratio));
    }
  else
    add_use (use_of (uses, boat, material), unknown, share);
}

static GArray *
count_uses (const GbBoat *boat, const GbRollup *rollup)
{
  const GPtrArray *parts = gb_boat_all (boat, GB_RECORD_PART);
  GArray *uses = g_array_new (FALSE, TRUE, sizeof (Use));

  g_array_set_size (uses, gb_boat_n (boat, GB_RECORD_MATERIAL) + 1);
  for (guint i = 0; i < parts->len; i++)
    {
      const GbPart *part = parts->pdata[i];

      if (part->kind == GB_KIND_PART)
        count_part (uses, boat, gb_rollup_part (rollup, part), part);
    }
  return uses;
}

static const GbColumn columns[] = {
  { "name", N_ ("Material"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "family", N_ ("Family"), GB_CELL_TEXT, 0, GB_COLUMN_DATA },
  { "measure", N_ ("Known by"), GB_CELL_TEXT, 0, GB_COLUMN_DATA },
  { "density", N_ ("Density"), GB_CELL_QUANTITY, GB_DIM_DENSITY, 0 },
  { "areal_mass", N_ ("Mass per area"), GB_CELL_QUANTITY, GB_DIM_AREAL, 0 },
  { "linear_mass", N_ ("Mass per length"), GB_CELL_QUANTITY, GB_DIM_LINEAR, 0 },
  { "basic_gravity", N_ ("Basic specific gravity"), GB_CELL_QUANTITY, GB_DIM_COUNT, GB_COLUMN_DATA },
  { "moisture", N_ ("Moisture content"), GB_CELL_QUANTITY, GB_DIM_RATIO, GB_COLUMN_DATA },
  { "spread", N_ ("Spread"), GB_CELL_QUANTITY, GB_DIM_RATIO, 0 },
  { "samples", N_ ("Samples weighed"), GB_CELL_QUANTITY, GB_DIM_COUNT, 0 },
  { "source", N_ ("Source"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "parts", N_ ("Parts"), GB_CELL_QUANTITY, GB_DIM_COUNT, 0 },
  { "mass", N_ ("Mass in all"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
};

/* A figure that the material is known by, or has beside that; blank where it means nothing for it. */
static void
add_figure (GbTable *table, double figure, gboolean known_by)
{
  if (isnan (figure) && !known_by)
    gb_table_skip (table, 1);
  else
    gb_table_number (table, figure);
}

static void
add_mass (GbTable *table, const Use *use)
{
  gb_table_number (table, use->n_parts);
  gb_table_number (table, use->n_unknown == use->n_parts ? NAN : use->mass);
}

static void
add_material (GbTable *table, const GbMaterial *material, const Use *use)
{
  GbMaterialFigures figures = gb_material_figures (material);
  gboolean wood = material->measure == GB_MEASURE_WOOD;

  gb_table_row (table, GB_ROW_NORMAL, 0);
  gb_table_text (table, material->name);
  gb_table_choice (table, gb_field (GB_RECORD_MATERIAL, "family"), material->family);
  gb_table_choice (table, gb_field (GB_RECORD_MATERIAL, "measure"), material->measure);
  add_figure (table, figures.density, material->measure == GB_MEASURE_DENSITY || wood);
  add_figure (table, figures.areal_mass, material->measure == GB_MEASURE_AREAL);
  add_figure (table, figures.linear_mass, material->measure == GB_MEASURE_LINEAR);
  add_figure (table, wood ? material->basic_gravity : NAN, wood);
  add_figure (table, wood ? material->moisture : NAN, wood);
  gb_table_number (table, figures.spread);
  gb_table_number (table, figures.n_samples);
  gb_table_text (table, material->source != NULL ? material->source : _ ("no source"));
  add_mass (table, use);
}

static void
add_sum (GbTable *table, GbRowKind kind, const char *name, const char *code, const Use *use)
{
  gb_table_row (table, kind, 0);
  gb_table_coded (table, name, code);
  gb_table_skip (table, 10);
  add_mass (table, use);
}

static void
add_rows (GbTable *table, const GbBoat *boat, const GArray *uses, guint n_parts)
{
  const GPtrArray *materials = gb_boat_all (boat, GB_RECORD_MATERIAL);
  const Use *none = &g_array_index (uses, Use, materials->len);
  Use total = { none->mass, n_parts, none->n_unknown };

  for (guint i = 0; i < materials->len; i++)
    {
      const Use *use = &g_array_index (uses, Use, i);

      if (use->n_parts == 0)
        continue;
      add_material (table, materials->pdata[i], use);
      total.mass += use->mass;
      total.n_unknown += use->n_unknown;
    }
  if (none->n_parts > 0)
    add_sum (table, GB_ROW_NORMAL, _ ("By no material: pieces, lumps and what names none"), "none", none);
  add_sum (table, GB_ROW_TOTAL, _ ("Total"), "total", &total);
}

GbDocument *
gb_materials_document (const GbBoat *boat, const GbFindings *findings, gint64 today)
{
  GbDocument *document = gb_document_new ("materials", _ ("Materials"), gb_boat_build (boat), today);
  GbTable *table
      = gb_document_table (document, "materials", N_ ("Materials in use"), columns, G_N_ELEMENTS (columns));
  g_autoptr (GArray) uses = count_uses (boat, &findings->rollup);

  document->landscape = TRUE;
  gb_say_unknown_parts (document, boat, &findings->rollup);
  add_rows (table, boat, uses, findings->rollup.boat.n_parts);
  gb_document_note (
      document,
      g_strdup (_ (
          "Spread is one standard deviation from piece to piece, as a share of the figure. All that is made of "
          "one material errs together. Cloth with resin counts under both, each with its mass.")));
  return document;
}
