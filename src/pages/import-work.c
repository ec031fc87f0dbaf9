/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-import-work"

#include "import-work.h"

/* What stays within 50 ms on a slow machine. */
#define MOST_BYTES_AT_ONCE (32 * 1024)
#define MOST_CELLS_AT_ONCE 10000

static void
wish_clear (gpointer wish)
{
  g_free ((char *) ((GbImportWish *) wish)->unit);
}

GbImportWork *
gb_import_work_new (void)
{
  GbImportWork *work = g_new0 (GbImportWork, 1);

  work->wishes = g_array_new (FALSE, FALSE, sizeof (GbImportWish));
  g_array_set_clear_func (work->wishes, wish_clear);
  return work;
}

void
gb_import_work_free (GbImportWork *work)
{
  g_clear_pointer (&work->bytes, g_bytes_unref);
  g_clear_pointer (&work->boat, gb_boat_free);
  g_clear_pointer (&work->import, gb_import_free);
  g_clear_pointer (&work->edit, gb_edit_free);
  g_array_unref (work->wishes);
  g_free (work);
}

void
gb_import_work_wish (GbImportWork *work, GbImportWish wish)
{
  wish.unit = g_strdup (wish.unit);
  g_array_append_val (work->wishes, wish);
}

gboolean
gb_import_work_do (GbImportWork *work, GError **error)
{
  gsize length;
  const char *text;

  if (work->import == NULL)
    {
      text = g_bytes_get_data (work->bytes, &length);
      work->import = gb_import_new (work->kind, text != NULL ? text : "", (gssize) length, work->boat, error);
    }
  if (work->import == NULL)
    return FALSE;
  for (guint i = 0; i < work->wishes->len; i++)
    {
      const GbImportWish *wish = &g_array_index (work->wishes, GbImportWish, i);

      if (wish->sets_field)
        gb_import_set_field (work->import, wish->column, wish->field);
      if (wish->sets_unit)
        gb_import_set_unit (work->import, wish->column, wish->unit);
    }
  if (work->wants_edit)
    work->edit = gb_import_to_edit (work->import, work->owner);
  return TRUE;
}

gboolean
gb_import_work_is_long (const GbImportWork *work)
{
  if (work->import != NULL)
    return (gsize) gb_import_n_rows (work->import) * gb_import_n_columns (work->import) > MOST_CELLS_AT_ONCE;
  /* Names of parts are looked up among all parts of the boat. */
  return g_bytes_get_size (work->bytes) > MOST_BYTES_AT_ONCE || gb_boat_n (work->boat, GB_RECORD_PART) > MOST_CELLS_AT_ONCE;
}
