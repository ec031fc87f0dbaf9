/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-import"

/* One row becomes one draft, or a sentence that says why not. An empty cell leaves the field at its start
 * value; a dash makes it unknown. */

#include "import-columns.h"
#include "import-private.h"
#include "part-path.h"
#include "safe-text.h"

#include "boat/quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define DEEPEST_GROUP 100
#define SHEET_RATIO 6 /* what is this much wider than thick was cut from a sheet */

void
gb_import_draft_free (GbImportDraft *draft)
{
  if (draft == NULL)
    return;
  gb_record_free (draft->record);
  gb_record_free ((GbRecord *) draft->purchase);
  g_free (draft->group);
  g_free (draft->surface_of);
  g_free (draft);
}

/* Cells ------------------------------------------------------------------------------------------------------------- */

/* TRUE for "12", "1,5", "1 1/2", "2*1220-45": all numbers, no unit and no currency. */
static gboolean
is_bare (const char *text)
{
  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);
      gboolean exponent = (c == 'e' || c == 'E') && p > text && g_ascii_isdigit (p[-1]);

      if ((g_unichar_isalpha (c) && !exponent) || g_unichar_type (c) == G_UNICODE_CURRENCY_SYMBOL
          || g_utf8_strchr ("'\"′″’”%‰°–", -1, c) != NULL)
        return FALSE;
    }
  return TRUE;
}

/* @text with the column's unit, where it has none of its own: "(2*1220-45) mm". Free it. */
static char *
with_unit (const char *text, const GbImportColumn *column)
{
  if (column->unit == NULL || !is_bare (text))
    return g_strdup (text);
  return g_strdup_printf (strpbrk (text + 1, "+-*(") != NULL ? "(%s) %s" : "%s %s", text, column->unit);
}

/* Sheets of ticks say x where others say yes. */
static gboolean
is_tick (const GbField *field, const char *text)
{
  return field->dim == GB_DIM_FLAG
         && (g_ascii_strcasecmp (text, "x") == 0 || g_str_equal (text, "✓") || g_str_equal (text, "✔"));
}

static gboolean
set_field (GbRecord *record,
           const GbImport *import,
           const GbImportColumn *column,
           const char *text,
           GError **error)
{
  const GbField *field = column->field;
  gboolean is_number = gb_field_storage (field) == GB_STORAGE_REAL || field->dim == GB_DIM_MONEY;
  g_autofree char *entry
      = is_number ? with_unit (text, column) : g_strdup (is_tick (field, text) ? "yes" : text);
  g_auto (GbValue) value = { 0 };

  if (!gb_field_parse (field, entry, gb_boat_build (import->boat), &value, error))
    return FALSE;
  gb_field_set (field, record, &value);
  return TRUE;
}

static gboolean
set_group (GbImportDraft *draft, const char *text, GError **error)
{
  const GbField *name = gb_field (GB_RECORD_PART, "name");
  g_auto (GStrv) groups = gb_path_split (text);

  if (g_strv_length (groups) > DEEPEST_GROUP)
    {
      g_set_error (error, GB_IMPORT_ERROR, 0, _ ("Group: there are more than %d groups inside each other."),
                   DEEPEST_GROUP);
      return FALSE;
    }
  for (guint i = 0; groups[i] != NULL; i++)
    {
      g_auto (GbValue) value = GB_VALUE_TEXT (groups[i]);

      if (!gb_field_check (name, &value, error))
        return FALSE;
    }
  g_free (draft->group);
  draft->group = gb_path_of (groups);
  return TRUE;
}

static gboolean
set_reference (GbImportDraft *draft,
               GbImportNames *names,
               const GbField *field,
               const char *text,
               GError **error)
{
  gint64 id;

  /* What comes in goes before what is there. */
  if (field->kind == GB_RECORD_PART && field->refers_to == GB_RECORD_PART
      && g_hash_table_contains (names->import->own_paths, text))
    {
      g_free (draft->surface_of);
      draft->surface_of = g_strdup (text);
      return TRUE;
    }
  if (!gb_import_names_get (names, field, text, &id, error))
    return FALSE;
  gb_field_set_integer (field, draft->record, id);
  return TRUE;
}

static gboolean
set_cell (GbImportDraft *draft,
          const GbImportColumn *column,
          GbImportNames *names,
          const char *text,
          GError **error)
{
  const GbField *field = column->field;

  if (field == gb_import_group_field ())
    return set_group (draft, text, error);
  if (field->dim == GB_DIM_REF)
    return set_reference (draft, names, field, text, error);
  return set_field (field->kind == GB_RECORD_PURCHASE ? &draft->purchase->rec : draft->record, names->import,
                    column, text, error);
}

/* What the row does not say ----------------------------------------------------------------------------------------- */

/* TRUE if the row leaves the field called @name to be guessed. */
static gboolean
is_open (const GbImport *import, guint row, const char *name)
{
  const char *cell = gb_import_says (import, row, gb_field (import->kind, name));

  return strspn (cell, " ") == strlen (cell);
}

static GbTakeoff
takeoff_of_form (GbForm form)
{
  static const GbTakeoff takeoffs[] = {
    [GB_FORM_SHEET] = GB_TAKEOFF_SHEET, [GB_FORM_LENGTH] = GB_TAKEOFF_LENGTH,
    [GB_FORM_BLOCK] = GB_TAKEOFF_BLOCK, [GB_FORM_TIN] = GB_TAKEOFF_COATING,
    [GB_FORM_PIECE] = GB_TAKEOFF_COUNT,
  };

  return takeoffs[form];
}

/* The take-off that what the row gives belongs to. */
static GbTakeoff
guess_takeoff (const GbImport *import, const GbPart *part, gboolean coats_other)
{
  const GbStock *stock = gb_boat_stock (import->boat, part->stock);

  if (part->hull != 0)
    return GB_TAKEOFF_SKIN;
  if (!isnan (part->coverage) || part->resin != 0 || part->surface_of != 0 || coats_other)
    return GB_TAKEOFF_COATING;
  /* With a mass, and nothing that it is made of, no other take-off finds one. */
  if (!isnan (part->mass) && part->material == 0 && stock == NULL && isnan (part->linear_mass)
      && isnan (part->unit_mass))
    return GB_TAKEOFF_LUMP;
  if (!isnan (part->volume))
    return GB_TAKEOFF_BLOCK;
  if (!isnan (part->unit_mass))
    return GB_TAKEOFF_COUNT;
  if (part->outline != NULL || !isnan (part->area))
    return GB_TAKEOFF_SHEET;
  if (!isnan (part->diameter) || !isnan (part->wall) || !isnan (part->linear_mass))
    return GB_TAKEOFF_LENGTH;
  if (stock != NULL)
    return takeoff_of_form ((GbForm) stock->form);
  if (!isnan (part->length) && !isnan (part->width))
    return part->width <= SHEET_RATIO * part->thickness ? GB_TAKEOFF_LENGTH : GB_TAKEOFF_SHEET;
  if (!isnan (part->length))
    return GB_TAKEOFF_LENGTH;
  return isnan (part->mass) ? GB_TAKEOFF_SHEET : GB_TAKEOFF_LUMP;
}

static GbSection
guess_section (const GbPart *part)
{
  if (!isnan (part->linear_mass))
    return GB_SECTION_LINEAR;
  if (!isnan (part->wall))
    return GB_SECTION_TUBE;
  return isnan (part->diameter) ? GB_SECTION_RECTANGLE : GB_SECTION_ROUND;
}

static void
complete_part (const GbImport *import, guint row, GbPart *part, gboolean coats_other)
{
  if (part->kind == GB_KIND_GROUP)
    return;
  if (is_open (import, row, "takeoff"))
    part->takeoff = guess_takeoff (import, part, coats_other);
  if (is_open (import, row, "section"))
    part->section = guess_section (part);
}

static void
complete_line (const GbImport *import, guint row, GbLine *line)
{
  if (is_open (import, row, "kind"))
    line->kind = line->stock != 0 ? GB_LINE_STOCK : (line->part != 0 ? GB_LINE_PART : GB_LINE_OTHER);
}

/* A receipt often calls a thing as the stock is called. */
static void
find_stock (const GbImport *import, guint row, GbLine *line, GbImportNames *names)
{
  if (line->stock == 0 && line->part == 0 && line->what != NULL && is_open (import, row, "kind"))
    gb_import_names_get (names, gb_field (GB_RECORD_LINE, "stock"), line->what, &line->stock, NULL);
}

/* A row --------------------------------------------------------------------------------------------------------------- */

static gboolean
check_row (const GbImport *import, guint row, const GbImportDraft *draft, GError **error)
{
  const GbImportRow *cells = import->rows->pdata[row];
  const GbLine *line = (const GbLine *) draft->record;

  for (guint c = import->columns->len; c < cells->cells->len; c++)
    if (*(char *) cells->cells->pdata[c] != '\0')
      {
        g_set_error (
            error, GB_IMPORT_ERROR, 0,
            _ ("This row has %u cells, but there are %u headings. (A decimal comma in a table that is separated by "
               "commas needs quotation marks.)"),
            cells->cells->len, import->columns->len);
        return FALSE;
      }
  if (import->kind == GB_RECORD_PART && ((const GbPart *) draft->record)->name == NULL)
    {
      g_set_error_literal (error, GB_IMPORT_ERROR, 0, _ ("This row has no name."));
      return FALSE;
    }
  if (import->kind == GB_RECORD_LINE && line->what == NULL && line->stock == 0 && line->part == 0)
    {
      g_set_error_literal (error, GB_IMPORT_ERROR, 0, _ ("This row does not say what was bought."));
      return FALSE;
    }
  return TRUE;
}

static gboolean
fill_draft (const GbImport *import, guint row, GbImportDraft *draft, GbImportNames *names, GError **error)
{
  for (guint c = 0; c < import->columns->len; c++)
    {
      const GbImportColumn *column = import->columns->pdata[c];
      g_autofree char *text = g_strdup (gb_text_unmake_safe (gb_import_cell (import, row, c)));

      g_strstrip (text);
      if (column->field != NULL && *text != '\0' && !set_cell (draft, column, names, text, error))
        return FALSE;
    }
  return TRUE;
}

GbImportDraft *
gb_import_draft_row (const GbImport *import, guint row, GbImportNames *names, GError **error)
{
  g_autoptr (GbImportDraft) draft = g_new0 (GbImportDraft, 1);

  draft->record = gb_record_new (import->kind);
  draft->group = g_strdup ("");
  if (import->kind == GB_RECORD_LINE)
    draft->purchase = (GbPurchase *) gb_record_new (GB_RECORD_PURCHASE);
  if (!fill_draft (import, row, draft, names, error) || !check_row (import, row, draft, error))
    return NULL;
  if (import->kind == GB_RECORD_PART)
    complete_part (import, row, (GbPart *) draft->record, draft->surface_of != NULL);
  else
    {
      find_stock (import, row, (GbLine *) draft->record, names);
      complete_line (import, row, (GbLine *) draft->record);
    }
  return g_steal_pointer (&draft);
}
