/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-choices"

#include "choices.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "boat/catalogue.h"
#include "boat/money.h"
#include "boat/quantity.h"
#include "engine/density.h"

GbChoiceItem *
gb_choice_item_new (const char *text, const char *note, GbRecordKind kind, gint64 id)
{
  GbChoiceItem *item = g_new0 (GbChoiceItem, 1);

  item->text = g_strdup (text);
  item->note = g_strdup (note);
  item->kind = kind;
  item->id = id;
  return item;
}

void
gb_choice_item_free (GbChoiceItem *item)
{
  if (item == NULL)
    return;
  g_free (item->text);
  g_free (item->note);
  g_free (item);
}

gboolean
gb_field_has_choices (const GbField *field)
{
  return field->dim == GB_DIM_CHOICE || field->dim == GB_DIM_REF;
}

/* The figure that a material is known by: "450 kg/m³". NULL if it has none. */
static char *
material_note (const GbMaterial *material, GbUnits units)
{
  GbMaterialFigures figures = gb_material_figures (material);

  if (material->measure == GB_MEASURE_AREAL && !isnan (figures.areal_mass))
    return gb_quantity_format (figures.areal_mass, GB_DIM_AREAL, units);
  if (material->measure == GB_MEASURE_LINEAR && !isnan (figures.linear_mass))
    return gb_quantity_format (figures.linear_mass, GB_DIM_LINEAR, units);
  if (!isnan (figures.density))
    return gb_quantity_format (figures.density, GB_DIM_DENSITY, units);
  return NULL;
}

static char *
record_note (GbProject *project, const GbRecord *record)
{
  const GbBuild *build = gb_project_get_build (project);

  switch (record->kind)
    {
    case GB_RECORD_MATERIAL:
      return material_note ((const GbMaterial *) record, build->units);
    case GB_RECORD_STOCK:
      if (((const GbStock *) record)->price == GB_MONEY_UNKNOWN)
        return NULL;
      return gb_money_format_full (((const GbStock *) record)->price, build->currency);
    case GB_RECORD_PART:
      {
        const GbPart *group = gb_boat_part (gb_project_get_boat (project), record->owner);

        return group != NULL ? g_strdup (group->name) : NULL;
      }
    default:
      return NULL;
    }
}

void
gb_choices_add_records (GPtrArray *choices, GbProject *project, GbRecordKind kind)
{
  const GPtrArray *records = gb_boat_all (gb_project_get_boat (project), kind);

  for (guint i = 0; i < records->len; i++)
    {
      const GbRecord *record = records->pdata[i];
      g_autofree char *title = gb_record_dup_title (record);
      g_autofree char *note = record_note (project, record);

      g_ptr_array_add (choices, gb_choice_item_new (title, note, kind, record->id));
    }
}

/* The catalogue's materials, but for those whose name is in the build already. */
static void
add_catalogue (GPtrArray *choices, GbProject *project)
{
  const GPtrArray *catalogue = gb_catalogue_get ();
  g_autoptr (GHashTable) there = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < choices->len; i++)
    g_hash_table_add (there, g_utf8_casefold (((const GbChoiceItem *) choices->pdata[i])->text, -1));
  for (guint i = 0; i < catalogue->len; i++)
    {
      const GbMaterial *material = catalogue->pdata[i];
      g_autofree char *folded = g_utf8_casefold (material->name, -1);
      g_autofree char *figure = NULL;
      g_autofree char *note = NULL;

      if (g_hash_table_contains (there, folded))
        continue;
      figure = material_note (material, gb_project_get_build (project)->units);
      /* Translators: beside a material that is not in the build yet; %s is its density, or an en dash. */
      note = g_strdup_printf (_ ("%s, from the table"), figure != NULL ? figure : "–");
      g_ptr_array_add (choices, gb_choice_item_new (material->name, note, GB_RECORD_MATERIAL, 0));
    }
}

GPtrArray *
gb_choices_for_field (GbProject *project, const GbField *field)
{
  GPtrArray *choices = g_ptr_array_new_with_free_func ((GDestroyNotify) gb_choice_item_free);

  if (field->dim == GB_DIM_CHOICE)
    for (guint i = 0; i < gb_field_n_choices (field); i++)
      g_ptr_array_add (choices, gb_choice_item_new (_ (field->choices[i].label), NULL, GB_N_RECORDS, i));
  else if (field->dim == GB_DIM_REF)
    {
      gb_choices_add_records (choices, project, field->refers_to);
      if (field->refers_to == GB_RECORD_MATERIAL)
        add_catalogue (choices, project);
    }
  return choices;
}

typedef enum
{
  FITS_START,
  FITS_WORD,
  FITS_SOMEWHERE,
  FITS_NOT
} Fit;

/* How well @text holds @typed; both folded. */
static Fit
how_it_fits (const char *text, const char *typed)
{
  const char *found = strstr (text, typed);
  Fit fit = FITS_NOT;

  for (; found != NULL; found = strstr (found + 1, typed))
    {
      if (found == text)
        return FITS_START;
      if (!g_unichar_isalnum (g_utf8_get_char (g_utf8_prev_char (found))))
        return FITS_WORD;
      fit = FITS_SOMEWHERE;
    }
  return fit;
}

GPtrArray *
gb_choices_match (const GPtrArray *choices, const char *typed)
{
  g_autofree char *stripped = g_strstrip (g_strdup (typed));
  g_autofree char *folded = g_utf8_casefold (stripped, -1);
  GPtrArray *matches = g_ptr_array_new ();
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < choices->len; i++)
    g_ptr_array_add (texts, g_utf8_casefold (((const GbChoiceItem *) choices->pdata[i])->text, -1));
  for (Fit fit = FITS_START; fit < FITS_NOT; fit++)
    for (guint i = 0; i < choices->len; i++)
      if (how_it_fits (texts->pdata[i], folded) == fit)
        g_ptr_array_add (matches, choices->pdata[i]);
  return matches;
}

const GbChoiceItem *
gb_choices_find (const GPtrArray *choices, const char *typed)
{
  g_autofree char *stripped = g_strstrip (g_strdup (typed));
  g_autofree char *folded = g_utf8_casefold (stripped, -1);
  const GbChoiceItem *found = NULL;

  for (guint i = 0; i < choices->len; i++)
    {
      const GbChoiceItem *item = choices->pdata[i];
      g_autofree char *text = g_utf8_casefold (item->text, -1);

      if (strcmp (text, folded) != 0)
        continue;
      if (found != NULL)
        return NULL;
      found = item;
    }
  return found;
}
