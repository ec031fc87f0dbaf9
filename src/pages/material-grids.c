/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "material-grids.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "boat/catalogue.h"
#include "boat/quantity.h"
#include "engine/density.h"
#include "pages/grid-pane.h"

static GbUnits
units_of (GbGrid *grid)
{
  return gb_project_get_build (gb_grid_get_project (grid))->units;
}

/* Materials --------------------------------------------------------------------------------------------------------- */

/* The one figure that the material is known by, weighed samples in it. */
static char *
show_figure (const GbMaterial *material, const GbMaterialFigures *figures, GbUnits units)
{
  switch ((GbMeasure) material->measure)
    {
    case GB_MEASURE_AREAL:
      return gb_quantity_format (figures->areal_mass, GB_DIM_AREAL, units);
    case GB_MEASURE_LINEAR:
      return gb_quantity_format (figures->linear_mass, GB_DIM_LINEAR, units);
    case GB_MEASURE_DENSITY:
    case GB_MEASURE_WOOD:
    default:
      return gb_quantity_format (figures->density, GB_DIM_DENSITY, units);
    }
}

static gboolean
has_figure (const GbMaterialFigures *figures)
{
  return !isnan (figures->density) || !isnan (figures->areal_mass) || !isnan (figures->linear_mass);
}

static void
look_figure (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  const GbMaterial *material = (const GbMaterial *) record;
  GbMaterialFigures figures = gb_material_figures (material);

  look->text = show_figure (material, &figures, units_of (grid));
  if (!has_figure (&figures))
    {
      look->flags = GB_CELL_TROUBLE;
      look->note = g_strdup (_ ("No figure yet: what is made of it has no mass."));
    }
  else if (figures.n_samples > 0)
    {
      look->flags = GB_CELL_STRONG;
      look->note = g_strdup_printf (ngettext ("From %u weighed sample.", "From %u weighed samples.", figures.n_samples),
                                    figures.n_samples);
    }
}

static void
look_spread (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  GbMaterialFigures figures = gb_material_figures ((const GbMaterial *) record);
  g_autofree char *spread = gb_quantity_format (figures.spread, GB_DIM_RATIO, units_of (grid));

  look->text = g_strdup_printf ("± %s", spread);
}

/* A name out of the table brings the table's figures and source along. */
static gint64
add_material (GbGrid *grid, const char *text, const GbChoiceItem *chosen, GbGridSpot spot, GbPartKind kind, GError **error)
{
  const GbMaterial *known = gb_catalogue_find (chosen != NULL ? chosen->text : text);

  if (known == NULL)
    return gb_grid_add_record (grid, "name", text, NULL, spot, error);
  return gb_grid_add_draft (grid, gb_record_copy (&known->rec), "name", known->name, NULL, spot, error);
}

/* The table, less what the build has already. */
static GPtrArray *
offer_catalogue (GbGrid *grid)
{
  const GPtrArray *here = gb_boat_all (gb_project_get_boat (gb_grid_get_project (grid)), GB_RECORD_MATERIAL);
  const GPtrArray *catalogue = gb_catalogue_get ();
  GPtrArray *choices = g_ptr_array_new_with_free_func ((GDestroyNotify) gb_choice_item_free);
  g_autoptr (GHashTable) taken = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < here->len; i++)
    g_hash_table_add (taken, ((const GbMaterial *) here->pdata[i])->name);
  for (guint i = 0; i < catalogue->len; i++)
    {
      const GbMaterial *material = catalogue->pdata[i];
      GbMaterialFigures figures = gb_material_figures (material);
      g_autofree char *note = show_figure (material, &figures, units_of (grid));

      if (!g_hash_table_contains (taken, material->name))
        g_ptr_array_add (choices, gb_choice_item_new (material->name, note, GB_RECORD_MATERIAL, 0));
    }
  return choices;
}

static const GbGridColumn material_columns[] = {
  { .name = "name", .width = 22 },
  { .name = "figure", .title = N_ ("Figure"), .width = 12, .is_number = TRUE, .look = look_figure },
  { .name = "spread", .title = N_ ("Spread"), .width = 9, .is_number = TRUE, .look = look_spread },
  { .name = "source", .width = 30 },
  { NULL },
};
static const char *const material_shown[] = { "name", "family", "figure", "spread", "source", NULL };
const GbGridType gb_material_grid_type = {
  .kind = GB_RECORD_MATERIAL,
  .shown = material_shown,
  .main_column = "name",
  .settings_key = "materials-columns",
  .blank_text = N_ ("Type a material"),
  .columns = material_columns,
  .add = add_material,
  .add_choices = offer_catalogue,
};

/* Samples ----------------------------------------------------------------------------------------------------------- */

static gint64
add_sample (GbGrid *grid, const char *text, const GbChoiceItem *chosen, GbGridSpot spot, GbPartKind kind, GError **error)
{
  GbRecord *draft = gb_record_new (GB_RECORD_SAMPLE);

  ((GbSample *) draft)->date = gb_today ();
  return gb_grid_add_draft (grid, draft, "mass", text, NULL, spot, error);
}

static const char *const sample_shown[] = { "mass", "length", "width", "thickness", "pieces", NULL };
const GbGridType gb_sample_grid_type = {
  .kind = GB_RECORD_SAMPLE,
  .shown = sample_shown,
  .main_column = "mass",
  .blank_text = N_ ("Type what the scale says"),
  .add = add_sample,
};

/* Stock ------------------------------------------------------------------------------------------------------------- */

static char *
show_sides (const double *sides, guint n, GbUnits units)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < n; i++)
    if (!isnan (sides[i]))
      {
        g_autofree char *side = i + 1 < n && units == GB_UNITS_METRIC ? gb_quantity_format_bare (sides[i], GB_DIM_LENGTH, units)
                                                                       : gb_quantity_format (sides[i], GB_DIM_LENGTH, units);

        g_string_append_printf (text, text->len > 0 ? " × %s" : "%s", side);
      }
  return text->len > 0 ? g_string_free (g_steal_pointer (&text), FALSE) : NULL;
}

static void
look_size (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  const GbStock *stock = (const GbStock *) record;
  const double sides[] = { stock->length, stock->width, stock->thickness };
  const double rod[] = { stock->length, stock->diameter };
  GbUnits units = units_of (grid);

  switch ((GbForm) stock->form)
    {
    case GB_FORM_TIN:
      if (!isnan (stock->volume))
        look->text = gb_quantity_format (stock->volume, GB_DIM_VOLUME, units);
      else
        look->text = gb_quantity_format (stock->mass, GB_DIM_MASS, units);
      break;
    case GB_FORM_PIECE:
      look->text = gb_quantity_format (stock->mass, GB_DIM_MASS, units);
      break;
    case GB_FORM_LENGTH:
      look->text = stock->section == GB_SECTION_RECTANGLE ? show_sides (sides, 3, units) : show_sides (rod, 2, units);
      break;
    case GB_FORM_SHEET:
    case GB_FORM_BLOCK:
    default:
      look->text = show_sides (sides, 3, units);
      break;
    }
  if (look->text == NULL)
    look->text = g_strdup ("–");
}

static gint64
add_stock (GbGrid *grid, const char *text, const GbChoiceItem *chosen, GbGridSpot spot, GbPartKind kind, GError **error)
{
  return gb_grid_add_record (grid, "name", text, NULL, spot, error);
}

static const GbGridColumn stock_columns[] = {
  { .name = "name", .width = 22 },
  { .name = "size", .title = N_ ("Size"), .width = 20, .look = look_size },
  { NULL },
};
static const char *const stock_shown[] = { "name", "form", "size", "material", "price", "pack", "supplier", "on_hand", "origin", NULL };
const GbGridType gb_stock_grid_type = {
  .kind = GB_RECORD_STOCK,
  .shown = stock_shown,
  .main_column = "name",
  .settings_key = "stock-columns",
  .blank_text = N_ ("Type a name"),
  .columns = stock_columns,
  .add = add_stock,
};
