/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-catalogue"

#include "catalogue.h"

#include "fields.h"
#include "quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define FILE_NAME "materials.tsv"

/* One table that is being read. */
typedef struct
{
  GPtrArray *materials;
  GHashTable *names;     /* folded names of those */
  GPtrArray *columns;    /* (element-type GbField), NULL until the line that names them */
  GPtrArray *complaints; /* (element-type utf8): a sentence for each line that was left out */
} Reader;

/* Reading ------------------------------------------------------------------------------------------------ */

/* A bare number is in SI here, unlike in an entry. */
static gboolean
read_real (const char *text, GbDimension dim, double *v, GError **error)
{
  char *end;

  *v = g_ascii_strtod (text, &end);
  if (end != text && *end == '\0' && isfinite (*v))
    return TRUE;
  return gb_quantity_parse (text, dim, GB_UNITS_METRIC, v, error);
}

static gboolean
read_cell (const GbField *field, const char *text, GbRecord *record, GError **error)
{
  g_auto (GbValue) value = gb_field_unknown (field);
  int choice;

  switch (value.storage)
    {
    case GB_STORAGE_TEXT:
      value.text = g_strdup (text);
      break;
    case GB_STORAGE_REAL:
      if (!read_real (text, field->dim, &value.real, error))
        {
          g_prefix_error (error, "%s: ", field->name);
          return FALSE;
        }
      break;
    case GB_STORAGE_INTEGER: /* a material has choices only */
      choice = gb_field_choice (field, text);
      if (choice < 0)
        {
          g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE, _ ("%s: “%s” is not among the choices."),
                       field->name, text);
          return FALSE;
        }
      value.integer = choice;
      break;
    }
  if (!gb_field_check (field, &value, error))
    return FALSE;
  gb_field_set (field, record, &value);
  return TRUE;
}

static GbRecord *
read_material (const Reader *reader, const char *line, GError **error)
{
  g_auto (GStrv) cells = g_strsplit (line, "\t", -1);
  g_autoptr (GbRecord) record = gb_record_new (GB_RECORD_MATERIAL);
  const char *name;

  for (guint i = 0; cells[i] != NULL; i++)
    {
      g_strstrip (cells[i]);
      if (*cells[i] == '\0')
        continue;
      if (i >= reader->columns->len)
        {
          g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE,
                       _ ("more cells than the %u columns that the heading names."), reader->columns->len);
          return NULL;
        }
      if (!read_cell (reader->columns->pdata[i], cells[i], record, error))
        return NULL;
    }
  name = ((GbMaterial *) record)->name;
  if (name == NULL)
    {
      g_set_error_literal (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE, _ ("a material without a name."));
      return NULL;
    }
  return g_steal_pointer (&record);
}

static gboolean
add_material (Reader *reader, const char *line, GError **error)
{
  g_autoptr (GbRecord) record = read_material (reader, line, error);
  g_autofree char *folded = NULL;
  const char *name;

  if (record == NULL)
    return FALSE;
  name = ((GbMaterial *) record)->name;
  folded = g_utf8_casefold (name, -1);
  if (!g_hash_table_add (reader->names, g_steal_pointer (&folded)))
    {
      g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE, _ ("“%s” is there twice."), name);
      return FALSE;
    }
  g_ptr_array_add (reader->materials, g_steal_pointer (&record));
  return TRUE;
}

static gboolean
read_heading (Reader *reader, const char *line, GError **error)
{
  g_auto (GStrv) names = g_strsplit (line, "\t", -1);
  g_autoptr (GPtrArray) columns = g_ptr_array_new ();

  for (char **name = names; *name != NULL; name++)
    {
      const GbField *field = gb_field_find (GB_RECORD_MATERIAL, g_strstrip (*name));

      if (field == NULL || g_ptr_array_find (columns, field, NULL))
        {
          g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE,
                       field == NULL ? _ ("a material has no “%s”.") : _ ("the column “%s” is there twice."),
                       *name);
          return FALSE;
        }
      g_ptr_array_add (columns, (gpointer) field);
    }
  reader->columns = g_steal_pointer (&columns);
  return TRUE;
}

static gboolean
read_line (Reader *reader, const char *line, GError **error)
{
  if (!g_utf8_validate (line, -1, NULL))
    {
      g_set_error_literal (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE,
                           _ ("this line is not UTF-8; plain text is expected."));
      return FALSE;
    }
  return reader->columns == NULL ? read_heading (reader, line, error) : add_material (reader, line, error);
}

/* A line that cannot be read is complained about and left out. Without a heading nothing can be read. */
static void
read_table (Reader *reader, const char *text)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  for (guint i = 0; lines[i] != NULL; i++)
    {
      g_autoptr (GError) error = NULL;

      g_strchomp (lines[i]);
      if (*lines[i] == '\0' || *lines[i] == '#')
        continue;
      if (read_line (reader, lines[i], &error))
        continue;
      g_ptr_array_add (reader->complaints, g_strdup_printf (_ ("Line %u: %s"), i + 1, error->message));
      if (reader->columns == NULL)
        return;
    }
}

static void
reader_init (Reader *reader)
{
  reader->materials = g_ptr_array_new_with_free_func ((GDestroyNotify) gb_record_free);
  reader->names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  reader->columns = NULL;
  reader->complaints = g_ptr_array_new_with_free_func (g_free);
}

static void
reader_clear (Reader *reader)
{
  g_clear_pointer (&reader->materials, g_ptr_array_unref);
  g_clear_pointer (&reader->names, g_hash_table_unref);
  g_clear_pointer (&reader->columns, g_ptr_array_unref);
  g_clear_pointer (&reader->complaints, g_ptr_array_unref);
}

GPtrArray *
gb_catalogue_parse (const char *text, GError **error)
{
  Reader reader;
  GPtrArray *materials = NULL;

  reader_init (&reader);
  read_table (&reader, text);
  if (reader.complaints->len > 0)
    g_set_error_literal (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE, reader.complaints->pdata[0]);
  else
    materials = g_steal_pointer (&reader.materials);
  reader_clear (&reader);
  return materials;
}

/* The installed table ------------------------------------------------------------------------------------ */

typedef struct
{
  GPtrArray *materials;
  GHashTable *by_name; /* folded name -> GbMaterial */
} Catalogue;

static char *
find_installed (void)
{
  const char *folder = g_getenv ("GARBOARD_DATA_DIR");
  g_autoptr (GPtrArray) paths = g_ptr_array_new_with_free_func (g_free);

  if (folder != NULL)
    g_ptr_array_add (paths, g_build_filename (folder, FILE_NAME, NULL));
  g_ptr_array_add (paths, g_build_filename (GB_PKGDATADIR, FILE_NAME, NULL));
  for (const char *const *dir = g_get_system_data_dirs (); *dir != NULL; dir++)
    g_ptr_array_add (paths, g_build_filename (*dir, "garboard", FILE_NAME, NULL));

  for (guint i = 0; i < paths->len; i++)
    if (g_file_test (paths->pdata[i], G_FILE_TEST_IS_REGULAR))
      return g_strdup (paths->pdata[i]);
  return NULL;
}

/* Adds what the table at @path holds; a name that is there already stands. */
static void
add_table (Catalogue *catalogue, const char *path)
{
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  Reader reader;

  if (!g_file_get_contents (path, &text, NULL, &error))
    {
      g_message ("%s", error->message);
      return;
    }
  reader_init (&reader);
  read_table (&reader, text);
  for (guint i = 0; i < reader.complaints->len; i++)
    g_message ("%s: %s", path, (char *) reader.complaints->pdata[i]);
  while (reader.materials->len > 0)
    {
      GbMaterial *material = g_ptr_array_steal_index (reader.materials, 0);
      g_autofree char *folded = g_utf8_casefold (material->name, -1);

      if (g_hash_table_contains (catalogue->by_name, folded))
        {
          gb_record_free (&material->rec);
          continue;
        }
      g_ptr_array_add (catalogue->materials, material);
      g_hash_table_insert (catalogue->by_name, g_steal_pointer (&folded), material);
    }
  reader_clear (&reader);
}

static Catalogue *
load (void)
{
  Catalogue *catalogue = g_new0 (Catalogue, 1);
  g_autofree char *own = g_build_filename (g_get_user_data_dir (), "garboard", FILE_NAME, NULL);
  g_autofree char *installed = find_installed ();

  catalogue->materials = g_ptr_array_new_with_free_func ((GDestroyNotify) gb_record_free);
  catalogue->by_name = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  if (g_file_test (own, G_FILE_TEST_EXISTS))
    add_table (catalogue, own);
  if (installed != NULL)
    add_table (catalogue, installed);
  else
    g_message ("the table of materials is not installed");
  return catalogue;
}

static const Catalogue *
get (void)
{
  static Catalogue *catalogue;

  if (g_once_init_enter (&catalogue))
    g_once_init_leave (&catalogue, load ());
  return catalogue;
}

const GPtrArray *
gb_catalogue_get (void)
{
  return get ()->materials;
}

const GbMaterial *
gb_catalogue_find (const char *name)
{
  g_autofree char *folded = g_utf8_casefold (name, -1);

  return g_hash_table_lookup (get ()->by_name, folded);
}
