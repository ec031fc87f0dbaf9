/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-import"

/* The rows that may come in, as one edit. New parts get provisional ids by their row, so that what is coated
 * can be named before it is put; new groups get those below. */

#include "import-private.h"
#include "part-path.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  const GbImport *import;
  GbEdit *edit;
  gint64 owner;
  gint64 last_id;       /* the lowest provisional id so far */
  GHashTable *groups;   /* path -> id of the group that has it, owned gint64 */
  GHashTable *receipts; /* date and supplier -> id of the purchase, owned gint64 */
} Putting;

static gint64
row_id (guint row)
{
  return -1 - (gint64) row;
}

static void
remember (GHashTable *ids, char *key, gint64 id)
{
  g_hash_table_replace (ids, key, g_memdup2 (&id, sizeof id));
}

/* Groups ------------------------------------------------------------------------------------------------------------ */

/* The group of the build that is called @name and lies in @owner; 0 if there is none. */
static gint64
find_group (const GbBoat *boat, gint64 owner, const char *name)
{
  const GbRecord *in = gb_boat_get (boat, GB_RECORD_PART, owner);
  const GPtrArray *siblings
      = owner == 0 ? gb_boat_roots (boat, GB_RECORD_PART) : (in != NULL ? gb_record_children (in) : NULL);

  for (guint i = 0; siblings != NULL && i < siblings->len; i++)
    {
      const GbPart *part = siblings->pdata[i];

      if (part->kind == GB_KIND_GROUP && g_strcmp0 (part->name, name) == 0)
        return part->rec.id;
    }
  return 0;
}

static gint64
make_group (Putting *putting, gint64 owner, const char *name)
{
  GbPart *group = (GbPart *) gb_record_new (GB_RECORD_PART);

  group->rec.id = --putting->last_id;
  group->rec.owner = owner;
  group->kind = GB_KIND_GROUP;
  group->name = g_strdup (name);
  return gb_edit_put (putting->edit, &group->rec);
}

/* The group at @path, made as far as it is not there. */
static gint64
get_group (Putting *putting, const char *path)
{
  g_auto (GStrv) names = gb_path_split (path);
  g_autofree char *so_far = g_strdup ("");
  gint64 id = putting->owner;

  for (guint i = 0; names[i] != NULL; i++)
    {
      char *longer = gb_path_join (so_far, names[i]);
      const gint64 *known = g_hash_table_lookup (putting->groups, longer);
      gint64 found = known != NULL ? *known : find_group (putting->import->boat, id, names[i]);

      if (found == 0)
        found = make_group (putting, id, names[i]);
      id = found;
      remember (putting->groups, g_strdup (longer), id);
      g_free (so_far);
      so_far = longer;
    }
  return id;
}

/* Rows -------------------------------------------------------------------------------------------------------------- */

static void
put_part (Putting *putting, guint row, GbImportDraft *draft)
{
  GbPart *part = (GbPart *) g_steal_pointer (&draft->record);
  gpointer coated = draft->surface_of != NULL
                        ? g_hash_table_lookup (putting->import->own_paths, draft->surface_of)
                        : NULL;

  part->rec.id = row_id (row);
  part->rec.owner = get_group (putting, draft->group);
  if (coated != NULL)
    part->surface_of = row_id (GPOINTER_TO_UINT (coated) - 1);
  /* What follows with its path is in this group, even where the build has one of that name. */
  if (part->kind == GB_KIND_GROUP)
    remember (putting->groups, gb_path_join (draft->group, part->name), part->rec.id);
  gb_edit_put (putting->edit, &part->rec);
}

static void
put_line (Putting *putting, GbImportDraft *draft)
{
  GbLine *line = (GbLine *) g_steal_pointer (&draft->record);
  GbPurchase *purchase = draft->purchase;
  g_autofree char *key = g_strdup_printf ("%" G_GINT64_FORMAT " %s", purchase->date,
                                          purchase->supplier != NULL ? purchase->supplier : "");
  const gint64 *known = g_hash_table_lookup (putting->receipts, key);

  if (known != NULL)
    line->rec.owner = *known;
  else
    {
      line->rec.owner = gb_edit_put (putting->edit, gb_record_copy (&purchase->rec));
      remember (putting->receipts, g_steal_pointer (&key), line->rec.owner);
    }
  gb_edit_put (putting->edit, &line->rec);
}

static void
put_rows (Putting *putting)
{
  const GbImport *import = putting->import;
  g_auto (GbImportNames) names = { 0 };

  gb_import_names_init (&names, import, putting->edit);
  for (guint r = 0; r < import->rows->len; r++)
    {
      g_autoptr (GbImportDraft) draft = NULL;

      if (gb_import_refusal (import, r) != NULL)
        continue;
      draft = gb_import_draft_row (import, r, &names, NULL);
      if (draft == NULL)
        continue;
      if (import->kind == GB_RECORD_PART)
        put_part (putting, r, draft);
      else
        put_line (putting, draft);
    }
}

static char *
say_what (const GbImport *import, guint n)
{
  if (import->kind == GB_RECORD_PART)
    /* Translators: what Undo says that it undoes. */
    return g_strdup_printf (ngettext ("import of %u part", "import of %u parts", n), n);
  return g_strdup_printf (ngettext ("import of %u line of receipts", "import of %u lines of receipts", n), n);
}

GbEdit *
gb_import_to_edit (const GbImport *import, gint64 owner)
{
  Putting putting = { .import = import, .owner = owner, .last_id = row_id (import->rows->len) };
  g_autofree char *words = NULL;
  guint n = 0;

  for (guint r = 0; r < import->rows->len; r++)
    n += gb_import_refusal (import, r) == NULL;
  if (n == 0)
    return NULL;
  words = say_what (import, n);
  putting.edit = gb_edit_new (words, import->kind, 0, NULL);
  putting.groups = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  putting.receipts = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  put_rows (&putting);
  g_hash_table_unref (putting.groups);
  g_hash_table_unref (putting.receipts);
  return putting.edit;
}
