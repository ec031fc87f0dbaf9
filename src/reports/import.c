/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-import"

/* An import: the table (import-table.c), what its columns mean (import-columns.c), and for each row whether
 * it may come in (import-rows.c). Whenever a column's meaning changes, all rows are judged again. */

#include "import.h"

#include "import-columns.h"
#include "import-private.h"
#include "part-path.h"
#include "safe-text.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define LOOKED_AT_FOR_HEADINGS 10 /* rows: there may be a title above the table */

G_DEFINE_QUARK (gb-import-error-quark, gb_import_error)

static void
free_column (gpointer data)
{
  GbImportColumn *column = data;

  g_free (column->heading);
  g_free (column->unit);
  g_free (column);
}

/* Headings ---------------------------------------------------------------------------------------------------------- */

static guint
count_matches (GbRecordKind kind, const GbImportRow *row)
{
  guint n = 0;

  for (guint c = 0; c < row->cells->len; c++)
    {
      g_autofree char *unit = NULL;

      n += gb_import_match_heading (kind, row->cells->pdata[c], &unit) != NULL;
    }
  return n;
}

/* The row that means the most as headings; the number of rows if there are none. */
static guint
find_headings (GbRecordKind kind, const GPtrArray *rows)
{
  guint best = rows->len, most = 0;

  for (guint r = 0; r < MIN (rows->len, LOOKED_AT_FOR_HEADINGS); r++)
    {
      guint n = count_matches (kind, rows->pdata[r]);

      if (n > most)
        {
          most = n;
          best = r;
        }
    }
  return best;
}

/* Headings in words that nobody knows: two or more texts, none of which begins as a number does. */
static gboolean
looks_like_headings (const GbImportRow *row)
{
  for (guint c = 0; c < row->cells->len; c++)
    {
      const char *cell = row->cells->pdata[c];

      if (g_ascii_isdigit (*cell) || strspn (cell, "+-.,") > 0)
        return FALSE;
    }
  return row->cells->len > 1;
}

static void
add_column (GbImport *import, char *heading)
{
  GbImportColumn *column = g_new0 (GbImportColumn, 1);
  g_autofree char *unit = NULL;
  const GbField *field = gb_import_match_heading (import->kind, heading, &unit);

  column->heading = heading;
  g_ptr_array_add (import->columns, column);
  for (guint c = 0; field != NULL && c + 1 < import->columns->len; c++)
    if (gb_import_get_field (import, c) == field)
      return; /* the first one has it */
  column->field = field;
  column->unit = g_steal_pointer (&unit);
}

static void
take_headings (GbImport *import, guint at)
{
  const GbImportRow *row = import->rows->pdata[at];

  for (guint c = 0; c < row->cells->len; c++)
    add_column (import, g_strstrip (g_strdup (row->cells->pdata[c])));
  g_ptr_array_remove_range (import->rows, 0, at + 1);
}

/* A list without headings: its first column is taken for the names. */
static void
make_headings (GbImport *import)
{
  const GbRecordKind kind = import->kind;
  guint width = 0;

  for (guint r = 0; r < import->rows->len; r++)
    width = MAX (width, ((GbImportRow *) import->rows->pdata[r])->cells->len);
  for (guint c = 0; c < width; c++)
    /* Translators: a column of a table that has no headings. */
    add_column (import, g_strdup_printf (_ ("Column %u"), c + 1));
  ((GbImportColumn *) import->columns->pdata[0])->field
      = gb_field (kind, kind == GB_RECORD_PART ? "name" : "what");
}

/* Judging rows ------------------------------------------------------------------------------------------------------ */

const char *
gb_import_says (const GbImport *import, guint row, const GbField *field)
{
  for (guint c = 0; c < import->columns->len; c++)
    if (gb_import_get_field (import, c) == field)
      return gb_import_cell (import, row, c);
  return "";
}

/* The path that the row's part will have. */
static char *
row_path (const GbImport *import, guint row)
{
  const char *group = gb_text_unmake_safe (gb_import_says (import, row, gb_import_group_field ()));
  const char *cell = gb_text_unmake_safe (gb_import_says (import, row, gb_field (GB_RECORD_PART, "name")));
  g_autofree char *name = g_strstrip (g_strdup (cell));
  g_auto (GStrv) groups = gb_path_split (group);
  g_autofree char *path = gb_path_of (groups);

  return gb_path_join (path, name);
}

static void
gather_paths (GbImport *import)
{
  g_hash_table_remove_all (import->own_paths);
  for (guint r = 0; r < import->rows->len; r++)
    if (import->refusals->pdata[r] == NULL)
      g_hash_table_insert (import->own_paths, row_path (import, r), GUINT_TO_POINTER (r + 1));
}

/* Judges the rows that are not refused yet; TRUE if one is refused now. */
static gboolean
judge_once (GbImport *import)
{
  g_autoptr (GbEdit) scratch = gb_edit_new ("", import->kind, 0, NULL);
  g_auto (GbImportNames) names = { 0 };
  gboolean refused = FALSE;

  gb_import_names_init (&names, import, scratch);
  for (guint r = 0; r < import->rows->len; r++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (GbImportDraft) draft = NULL;

      if (import->refusals->pdata[r] != NULL)
        continue;
      draft = gb_import_draft_row (import, r, &names, &error);
      if (draft != NULL)
        continue;
      import->refusals->pdata[r] = g_strdup (error->message);
      refused = TRUE;
    }
  return refused;
}

/* A coating may come in with what it coats. Where that is refused, so is the coating, so rows are judged
 * until no more fall. */
static void
judge (GbImport *import)
{
  const GbField *coated = gb_field (GB_RECORD_PART, "surface_of");
  gboolean has_coatings = FALSE;

  g_ptr_array_set_size (import->refusals, 0);
  g_ptr_array_set_size (import->refusals, (int) import->rows->len);
  for (guint c = 0; c < import->columns->len; c++)
    has_coatings |= gb_import_get_field (import, c) == coated;
  do
    if (has_coatings)
      gather_paths (import);
  while (judge_once (import) && has_coatings);
}

/* The door ---------------------------------------------------------------------------------------------------------- */

GbImport *
gb_import_new (GbRecordKind kind, const char *text, gssize length, const GbBoat *boat, GError **error)
{
  GPtrArray *rows;
  GbImport *import;
  guint at;

  g_return_val_if_fail (kind == GB_RECORD_PART || kind == GB_RECORD_LINE, NULL);

  rows = gb_import_read_table (text, length, error);
  if (rows == NULL)
    return NULL;
  import = g_new0 (GbImport, 1);
  import->kind = kind;
  import->boat = gb_boat_copy (boat);
  import->rows = rows;
  import->columns = g_ptr_array_new_with_free_func (free_column);
  import->refusals = g_ptr_array_new_with_free_func (g_free);
  import->own_paths = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  at = find_headings (kind, rows);
  if (at < rows->len)
    take_headings (import, at);
  else if (looks_like_headings (rows->pdata[0]))
    take_headings (import, 0);
  else
    make_headings (import);
  judge (import);
  return import;
}

void
gb_import_free (GbImport *import)
{
  if (import == NULL)
    return;
  g_ptr_array_unref (import->columns);
  g_ptr_array_unref (import->rows);
  g_ptr_array_unref (import->refusals);
  g_hash_table_unref (import->own_paths);
  gb_boat_free (import->boat);
  g_free (import);
}

guint
gb_import_n_columns (const GbImport *import)
{
  return import->columns->len;
}

static GbImportColumn *
get_column (const GbImport *import, guint column)
{
  g_return_val_if_fail (column < import->columns->len, NULL);
  return import->columns->pdata[column];
}

const char *
gb_import_heading (const GbImport *import, guint column)
{
  return get_column (import, column)->heading;
}

const GbField *
gb_import_get_field (const GbImport *import, guint column)
{
  return get_column (import, column)->field;
}

void
gb_import_set_field (GbImport *import, guint column, const GbField *field)
{
  GbImportColumn *set = get_column (import, column);

  if (set->field == field)
    return;
  for (guint c = 0; field != NULL && c < import->columns->len; c++)
    if (gb_import_get_field (import, c) == field)
      get_column (import, c)->field = NULL;
  set->field = field;
  if (set->unit != NULL && (field == NULL || !gb_import_unit_fits (field, set->unit)))
    g_clear_pointer (&set->unit, g_free);
  judge (import);
}

const char *
gb_import_get_unit (const GbImport *import, guint column)
{
  return get_column (import, column)->unit;
}

void
gb_import_set_unit (GbImport *import, guint column, const char *unit)
{
  GbImportColumn *set = get_column (import, column);

  if (g_strcmp0 (set->unit, unit) == 0)
    return;
  g_free (set->unit);
  set->unit = unit != NULL && *unit != '\0' ? g_strdup (unit) : NULL;
  judge (import);
}

const GPtrArray *
gb_import_fields (const GbImport *import)
{
  return gb_import_fields_of (import->kind);
}

guint
gb_import_n_rows (const GbImport *import)
{
  return import->rows->len;
}

const char *
gb_import_cell (const GbImport *import, guint row, guint column)
{
  const GbImportRow *cells;

  g_return_val_if_fail (row < import->rows->len, "");
  cells = import->rows->pdata[row];
  return column < cells->cells->len ? cells->cells->pdata[column] : "";
}

guint
gb_import_line (const GbImport *import, guint row)
{
  g_return_val_if_fail (row < import->rows->len, 0);
  return ((GbImportRow *) import->rows->pdata[row])->line;
}

const char *
gb_import_refusal (const GbImport *import, guint row)
{
  g_return_val_if_fail (row < import->rows->len, NULL);
  return import->refusals->pdata[row];
}
