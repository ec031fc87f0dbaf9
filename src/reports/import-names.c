/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-import"

#include "import-private.h"

#include "boat/catalogue.h"
#include "project/names.h"

typedef struct
{
  gint64 id;
  GError *error; /* or NULL */
} GbImportName;

static void
free_name (gpointer data)
{
  GbImportName *name = data;

  g_clear_error (&name->error);
  g_free (name);
}

void
gb_import_names_init (GbImportNames *names, const GbImport *import, GbEdit *edit)
{
  names->import = import;
  names->edit = edit;
  names->found = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, free_name);
}

void
gb_import_names_clear (GbImportNames *names)
{
  g_clear_pointer (&names->found, g_hash_table_unref);
}

static gboolean
is_nowhere (const GbBoat *boat, const char *material)
{
  g_autoptr (GPtrArray) found = gb_names_find (boat, GB_RECORD_MATERIAL, material);

  return found->len == 0 && gb_catalogue_find (material) == NULL;
}

/* A material that nobody knows comes in with its name alone: the parts then say that its density is missing.
 */
static gboolean
make_material (GbEdit *edit, const char *name, gint64 *id, GError **error)
{
  g_auto (GbValue) value = GB_VALUE_TEXT (name);
  GbRecord *material;

  if (!gb_field_check (gb_field (GB_RECORD_MATERIAL, "name"), &value, error))
    return FALSE;
  material = gb_record_new (GB_RECORD_MATERIAL);
  ((GbMaterial *) material)->name = g_strdup (name);
  *id = gb_edit_put (edit, material);
  return TRUE;
}

static GbImportName *
look_up (GbImportNames *names, const GbField *field, const char *text)
{
  const GbBoat *boat = names->import->boat;
  GbImportName *name = g_new0 (GbImportName, 1);

  if (field->refers_to == GB_RECORD_MATERIAL && is_nowhere (boat, text))
    make_material (names->edit, text, &name->id, &name->error);
  else
    gb_names_read (boat, field, text, names->edit, &name->id, &name->error);
  return name;
}

gboolean
gb_import_names_get (GbImportNames *names, const GbField *field, const char *text, gint64 *id, GError **error)
{
  /* Material and resin are the same thing: one key for each kind of record. Case is set aside, as it is in
   * looking up. */
  g_autofree char *folded = g_utf8_casefold (text, -1);
  g_autofree char *key = g_strdup_printf ("%d %s", field->refers_to, folded);
  GbImportName *name = g_hash_table_lookup (names->found, key);

  if (name == NULL)
    {
      name = look_up (names, field, text);
      g_hash_table_insert (names->found, g_steal_pointer (&key), name);
    }
  *id = name->id;
  if (name->error != NULL)
    g_propagate_error (error, g_error_copy (name->error));
  return name->error == NULL;
}
