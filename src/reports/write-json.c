/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-write-json"

/* A report for programs, whatever units and language the builder likes: SI numbers with the unit in the key
 * (mass_kg, x_m), money in minor units (cost_minor), dates YYYY-MM-DD, choices by the names that the text
 * form has, null for unknown.
 *
 *   { "garboard_report": 1, "kind": "parts", "build": "Plover", "date": "2026-03-14", "currency": "EUR",
 *     "facts": { "light_kg": 31.4 }, "warnings": [ ], "remarks": [ ], "cautions": [ ],
 *     "parts": [ { "row": "group", "depth": 0, "name": "Hull", "mass_kg": 22.9, ... }, ... ], ... }
 *
 * Each row says what it is (normal, group, subtotal, total) and how deep it lies in its groups. The number
 * after "garboard_report" goes up when a key goes or changes its meaning; new keys may come at any time. */

#include "writers.h"

#include <json-glib/json-glib.h>
#include <math.h>

static const char *const row_names[] = { [GB_ROW_NORMAL] = "normal",
                                         [GB_ROW_GROUP] = "group",
                                         [GB_ROW_SUBTOTAL] = "subtotal",
                                         [GB_ROW_TOTAL] = "total" };

static const char *
dimension_suffix (GbDimension dim)
{
  static const char *const suffixes[GB_N_DIMS] = {
    [GB_DIM_LENGTH] = "_m",          [GB_DIM_AREA] = "_m2",           [GB_DIM_VOLUME] = "_m3",
    [GB_DIM_MASS] = "_kg",           [GB_DIM_DENSITY] = "_kg_per_m3", [GB_DIM_AREAL] = "_kg_per_m2",
    [GB_DIM_LINEAR] = "_kg_per_m",   [GB_DIM_COVERAGE] = "_per_m",    [GB_DIM_ANGLE] = "_rad",
    [GB_DIM_MOMENT] = "_kg_m",       [GB_DIM_TEMPERATURE] = "_deg_c", [GB_DIM_SALINITY] = "_g_per_kg",
  };

  return suffixes[dim] != NULL ? suffixes[dim] : "";
}

static char *
cell_key (const GbColumn *column)
{
  switch (column->kind)
    {
    case GB_CELL_QUANTITY:
      return g_strconcat (column->key, dimension_suffix (column->dim), NULL);
    case GB_CELL_MOMENT:
      return g_strconcat (column->key, "_kg_m", NULL);
    case GB_CELL_MONEY:
      return g_strconcat (column->key, "_minor", NULL);
    case GB_CELL_TEXT:
    case GB_CELL_DATE:
    default:
      return g_strdup (column->key);
    }
}

static void
add_cell (JsonBuilder *json, const GbDocument *document, const GbColumn *column, const GbCell *cell)
{
  g_autofree char *key = cell_key (column);
  g_autofree char *text = NULL;

  json_builder_set_member_name (json, key);
  if (cell->blank || gb_cell_is_unknown (column, cell))
    {
      json_builder_add_null_value (json);
      return;
    }
  switch (column->kind)
    {
    case GB_CELL_QUANTITY:
    case GB_CELL_MOMENT:
      json_builder_add_double_value (json, cell->value);
      break;
    case GB_CELL_MONEY:
      json_builder_add_int_value (json, cell->amount);
      break;
    case GB_CELL_DATE:
      text = gb_cell_show (document, column, cell);
      json_builder_add_string_value (json, text);
      break;
    case GB_CELL_TEXT:
    default:
      /* A NULL here gives null. */
      json_builder_add_string_value (json, cell->code != NULL ? cell->code : cell->text);
      break;
    }
}

static void
add_text (JsonBuilder *json, const char *key, const char *text)
{
  json_builder_set_member_name (json, key);
  json_builder_add_string_value (json, text);
}

static void
add_texts (JsonBuilder *json, const char *key, const GPtrArray *texts)
{
  json_builder_set_member_name (json, key);
  json_builder_begin_array (json);
  for (guint i = 0; i < texts->len; i++)
    json_builder_add_string_value (json, texts->pdata[i]);
  json_builder_end_array (json);
}

static void
add_table (JsonBuilder *json, const GbDocument *document, const GbTable *table)
{
  json_builder_set_member_name (json, table->key);
  json_builder_begin_array (json);
  for (guint r = 0; r < table->rows->len; r++)
    {
      const GbRow *row = table->rows->pdata[r];

      json_builder_begin_object (json);
      add_text (json, "row", row_names[row->kind]);
      json_builder_set_member_name (json, "depth");
      json_builder_add_int_value (json, row->depth);
      for (guint c = 0; c < table->n_columns; c++)
        add_cell (json, document, &table->columns[c], gb_row_cell (row, c));
      json_builder_end_object (json);
    }
  json_builder_end_array (json);
}

static void
add_facts (JsonBuilder *json, const GbDocument *document)
{
  json_builder_set_member_name (json, "facts");
  json_builder_begin_object (json);
  for (guint i = 0; i < document->facts->len; i++)
    {
      const GbFact *fact = document->facts->pdata[i];

      add_cell (json, document, &fact->column, &fact->cell);
    }
  json_builder_end_object (json);
}

static void
add_document (JsonBuilder *json, const GbDocument *document)
{
  const GbColumn date = { .key = "date", .kind = GB_CELL_DATE };

  json_builder_begin_object (json);
  json_builder_set_member_name (json, "garboard_report");
  json_builder_add_int_value (json, 1);
  add_text (json, "kind", document->kind);
  add_text (json, "build", document->name);
  add_cell (json, document, &date, &(GbCell){ .amount = document->date });
  add_text (json, "currency", document->currency);
  add_facts (json, document);
  add_texts (json, "warnings", document->warnings);
  add_texts (json, "remarks", document->paragraphs);
  add_texts (json, "cautions", document->cautions);
  for (guint i = 0; i < document->tables->len; i++)
    add_table (json, document, document->tables->pdata[i]);
  add_texts (json, "notes", document->notes);
  json_builder_end_object (json);
}

GBytes *
gb_write_json (const GbDocument *document)
{
  g_autoptr (JsonBuilder) builder = json_builder_new ();
  g_autoptr (JsonGenerator) generator = json_generator_new ();
  g_autoptr (JsonNode) root = NULL;
  char *text;
  gsize length;

  add_document (builder, document);
  root = json_builder_get_root (builder);
  json_generator_set_root (generator, root);
  json_generator_set_pretty (generator, TRUE);
  text = json_generator_to_data (generator, &length);
  return g_bytes_new_take (text, length);
}
