/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-export-rows"

/* Parts as rows for a spreadsheet, tab-separated with headings. Only the columns that say something are
 * there. A number stands in the unit of its heading; what was typed another way stands as it was typed. */

#include "import-columns.h"
#include "import.h"
#include "part-path.h"
#include "safe-text.h"

#include "boat/quantity.h"
#include "project/siblings.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* SI, as an entry takes it. Plain numbers need none; shares have none, and may lose their last bit on the way
 * through per cent. */
static const char *const si_units[GB_N_DIMS] = {
  [GB_DIM_LENGTH] = "m",       [GB_DIM_AREA] = "m2",        [GB_DIM_VOLUME] = "m3",
  [GB_DIM_MASS] = "kg",        [GB_DIM_DENSITY] = "kg/m3",  [GB_DIM_AREAL] = "kg/m2",
  [GB_DIM_LINEAR] = "kg/m",    [GB_DIM_COVERAGE] = "m2/m3", [GB_DIM_ANGLE] = "rad",
  [GB_DIM_MOMENT] = "kg m",    [GB_DIM_TEMPERATURE] = "°C",
};

typedef struct
{
  const GbPart *part;
  const GbPart *top; /* of those that were asked for, the one that it lies below */
} Exported;

typedef struct
{
  const GbBoat *boat;
  GArray *parts;     /* of Exported, in the order of the tree */
  GHashTable *tops;  /* each of these parts -> its top */
  GPtrArray *fields; /* (element-type GbField) */
  GString *out;
} Export;

/* What is exported -------------------------------------------------------------------------------------------------- */

static void
gather_parts (Export *export, const gint64 *ids, guint n_ids)
{
  const GPtrArray *all = gb_boat_all (export->boat, GB_RECORD_PART);
  g_autoptr (GPtrArray) tops = gb_tops (export->boat, GB_RECORD_PART, ids, n_ids);

  for (guint t = 0; t < tops->len; t++)
    {
      const GbPart *top = tops->pdata[t];

      for (guint i = top->rec.index; i <= top->rec.index + top->n_below; i++)
        {
          g_array_append_val (export->parts, ((Exported){ all->pdata[i], top }));
          g_hash_table_insert (export->tops, all->pdata[i], (gpointer) top);
        }
    }
}

/* TRUE if any of the parts holds something else than a new one. */
static gboolean
is_used (const Export *export, const GbField *field)
{
  g_autoptr (GbRecord) fresh = gb_record_new (GB_RECORD_PART);
  g_auto (GbValue) start = gb_field_get (field, fresh);

  for (guint i = 0; i < export->parts->len; i++)
    {
      g_auto (GbValue) value = gb_field_get (field, &g_array_index (export->parts, Exported, i).part->rec);
      gboolean same_real = value.real == start.real || (isnan (value.real) && isnan (start.real));

      if (!same_real || value.integer != start.integer || g_strcmp0 (value.text, start.text) != 0
          || value.typed != NULL)
        return TRUE;
    }
  return FALSE;
}

/* These say what the others mean, so they stand there even where all are as in a new part. */
static gboolean
is_always_there (const GbField *field)
{
  static const char *const names[] = { "name", "quantity", "takeoff", "section", NULL };

  return g_strv_contains (names, field->name);
}

static void
gather_fields (Export *export)
{
  const GPtrArray *fields = gb_import_fields_of (GB_RECORD_PART);

  for (guint i = 0; i < fields->len; i++)
    {
      const GbField *field = fields->pdata[i];

      if (field == gb_import_group_field () || is_always_there (field) || is_used (export, field))
        g_ptr_array_add (export->fields, (gpointer) field);
    }
}

/* Cells ------------------------------------------------------------------------------------------------------------- */

static void
put_cell (Export *export, const char *text, gboolean first)
{
  g_autoptr (GString) quoted = NULL;

  if (!first)
    g_string_append_c (export->out, '\t');
  if (strpbrk (text, "\t\r\n") == NULL && *text != '"')
    {
      g_string_append (export->out, text);
      return;
    }
  quoted = g_string_new (text);
  g_string_replace (quoted, "\"", "\"\"", 0);
  g_string_append_printf (export->out, "\"%s\"", quoted->str);
}

static char *
heading_text (const GbField *field, const GbBuild *build)
{
  const char *unit = gb_field_storage (field) == GB_STORAGE_REAL
                         ? gb_quantity_unit (field->dim, (GbUnits) build->units)
                         : "";
  g_autofree char *heading
      = *unit != '\0' ? g_strdup_printf ("%s (%s)", _ (field->label), unit) : g_strdup (_ (field->label));
  g_autofree char *matched = NULL;

  /* Two labels may be the same word in some language. */
  if (gb_import_match_heading (GB_RECORD_PART, heading, &matched) != field)
    return g_strdup (field->name);
  return g_steal_pointer (&heading);
}

static gboolean
gives_back (const GbField *field, const char *text, const GbBuild *build, double expected)
{
  g_auto (GbValue) value = { 0 };

  return gb_field_parse (field, text, build, &value, NULL) && value.real == expected;
}

/* Takes the heading's unit off a plain number, so that a spreadsheet sees one: "2350 mm" becomes "2350". */
static void
drop_unit (char *text, const char *unit)
{
  gsize digits = strspn (text, "-0123456789.,");

  if (digits > 0 && text[digits] == ' ' && g_str_equal (text + digits + 1, unit))
    text[digits] = '\0';
}

/* What an editor starts with; where that is not exact to the last bit, all digits. */
static char *
real_text (const GbField *field, const GbRecord *record, const GbBuild *build)
{
  double v = gb_field_get_real (field, record);
  const char *si = si_units[field->dim];
  g_autofree char *text = gb_field_edit_text (field, record, build);
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  if (isnan (v))
    return g_strdup (isnan (field->start) ? "" : "–");
  if (gives_back (field, text, build, v))
    {
      drop_unit (text, gb_quantity_unit (field->dim, (GbUnits) build->units));
      return g_steal_pointer (&text);
    }
  if (si != NULL)
    return g_strdup_printf ("%s %s", g_ascii_dtostr (digits, sizeof digits, v), si);
  return g_strdup (
      g_ascii_dtostr (digits, sizeof digits, v / gb_quantity_factor (field->dim, GB_UNITS_METRIC)));
}

/* A part by its path: within what is exported, as the import will see it. */
static char *
reference_text (const Export *export, const Exported *exported, const GbField *field)
{
  const GbRecord *meant
      = gb_boat_get (export->boat, field->refers_to, gb_field_get_integer (field, &exported->part->rec));
  g_autofree char *path = NULL;

  if (meant == NULL)
    return g_strdup ("");
  if (meant->kind != GB_RECORD_PART)
    return gb_record_dup_title (meant);
  path = gb_part_path (export->boat, (const GbPart *) meant, g_hash_table_lookup (export->tops, meant));
  return gb_path_join (path, ((const GbPart *) meant)->name);
}

static char *
cell_text (const Export *export, const Exported *exported, const GbField *field)
{
  const GbRecord *record = &exported->part->rec;
  const GbBuild *build = gb_boat_build (export->boat);
  g_autofree char *text = NULL;

  if (field == gb_import_group_field ())
    text = gb_part_path (export->boat, exported->part, exported->top);
  else if (field->dim == GB_DIM_REF)
    text = reference_text (export, exported, field);
  else if (gb_field_storage (field) == GB_STORAGE_REAL)
    return real_text (field, record, build);
  else
    text = gb_field_edit_text (field, record, build);
  return field->dim == GB_DIM_MONEY ? g_steal_pointer (&text) : gb_text_make_safe (text);
}

/* The whole --------------------------------------------------------------------------------------------------------- */

static void
put_rows (Export *export)
{
  for (guint f = 0; f < export->fields->len; f++)
    {
      g_autofree char *heading = heading_text (export->fields->pdata[f], gb_boat_build (export->boat));

      put_cell (export, heading, f == 0);
    }
  g_string_append_c (export->out, '\n');
  for (guint i = 0; i < export->parts->len; i++)
    {
      for (guint f = 0; f < export->fields->len; f++)
        {
          g_autofree char *text
              = cell_text (export, &g_array_index (export->parts, Exported, i), export->fields->pdata[f]);

          put_cell (export, text, f == 0);
        }
      g_string_append_c (export->out, '\n');
    }
}

char *
gb_export_rows (const GbBoat *boat, const gint64 *ids, guint n_ids)
{
  Export export = { boat, g_array_new (FALSE, FALSE, sizeof (Exported)), g_hash_table_new (NULL, NULL),
                    g_ptr_array_new (), g_string_new (NULL) };

  gather_parts (&export, ids, n_ids);
  gather_fields (&export);
  put_rows (&export);
  g_array_unref (export.parts);
  g_hash_table_unref (export.tops);
  g_ptr_array_unref (export.fields);
  return g_string_free (export.out, FALSE);
}
