/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What the file costs: opening beside plain SELECTs over the same tables, one edit, undo, a great deletion. Figures, no judgement. */

#include "generate.h"
#include "store/store.h"
#include "store/text-form.h"

#include <glib/gstdio.h>
#include <sqlite3.h>
#include <stdlib.h>
#include <string.h>

#define REPEATS 5

static double
milliseconds_since (gint64 start)
{
  return (double) (g_get_monotonic_time () - start) / 1000;
}

static void
must (gboolean done, GError *error)
{
  if (!done)
    g_error ("%s", error != NULL ? error->message : "?");
}

/* Reads every column of every row of @db's record tables, and does nothing with them. */
static void
select_all (sqlite3 *db)
{
  for (guint k = 0; k < GB_N_RECORDS; k++)
    {
      g_autofree char *sql = g_strdup_printf ("SELECT * FROM \"%s\"", gb_record_type (k)->name);
      sqlite3_stmt *stmt;

      sqlite3_prepare_v2 (db, sql, -1, &stmt, NULL);
      while (sqlite3_step (stmt) == SQLITE_ROW)
        for (int i = 0; i < sqlite3_column_count (stmt); i++)
          switch (sqlite3_column_type (stmt, i))
            {
            case SQLITE_TEXT:
              sqlite3_column_text (stmt, i);
              break;
            case SQLITE_FLOAT:
              sqlite3_column_double (stmt, i);
              break;
            default:
              sqlite3_column_int64 (stmt, i);
            }
      sqlite3_finalize (stmt);
    }
}

/* The best of a few, each with a connection of its own: the file is in the system's cache, the pages are not in SQLite's. */
static double
time_select (const char *path)
{
  double best = G_MAXDOUBLE;

  for (guint i = 0; i < REPEATS; i++)
    {
      gint64 start = g_get_monotonic_time ();
      sqlite3 *db;

      sqlite3_open (path, &db);
      select_all (db);
      sqlite3_close (db);
      best = MIN (best, milliseconds_since (start));
    }
  return best;
}

static double
time_open (const char *path, double *open)
{
  double best = G_MAXDOUBLE;

  for (guint i = 0; i < REPEATS; i++)
    {
      gint64 start = g_get_monotonic_time ();
      g_autoptr (GError) error = NULL;
      g_autoptr (GbStore) store = gb_store_open (path, FALSE, &error);
      double opened = milliseconds_since (start);
      g_autoptr (GbBoat) boat = NULL;
      double loaded;

      must (store != NULL, error);
      boat = gb_store_load (store, &error);
      must (boat != NULL, error);
      loaded = milliseconds_since (start);
      *open = loaded < best ? opened : *open;
      best = MIN (best, loaded);
    }
  return best;
}

static const GbRecord *
some_part (const GbBoat *boat)
{
  const GPtrArray *all = gb_boat_all (boat, GB_RECORD_PART);

  return all->pdata[all->len / 2];
}

/* Gives another thickness to a part in the middle. With @commit the edit is kept, else rolled back. */
static double
time_edit (GbStore *store, GbBoat *boat, gboolean keep)
{
  const GbRecord *part = some_part (boat);
  double sum = 0;
  const guint n = 20;

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (GbRecord) changed = gb_record_copy (part);
      g_autoptr (GbChanges) changes = NULL;
      g_autoptr (GError) error = NULL;
      gint64 start = g_get_monotonic_time ();

      gb_field_set_real (gb_field (GB_RECORD_PART, "thickness"), changed, 0.001 * (i + 1));
      must (gb_store_begin (store, "thickness", NULL, &error) && gb_store_put (store, part, changed, &error), error);
      if (keep)
        must (gb_store_commit (store, &changes, &error) && gb_store_refresh (store, changes, boat, &error), error);
      else
        gb_store_rollback (store);
      sum += milliseconds_since (start);
    }
  return sum / n;
}

static double
time_undo (GbStore *store, GbBoat *boat)
{
  double sum = 0;
  const guint n = 20;

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (GbChanges) changes = NULL;
      g_autoptr (GError) error = NULL;
      gint64 start = g_get_monotonic_time ();

      must (gb_store_undo (store, &changes, NULL, &error) && gb_store_refresh (store, changes, boat, &error), error);
      sum += milliseconds_since (start);
    }
  return sum / n;
}

/* Groups that fit in, and what lies in them, until about so many parts have gone. */
#define TO_DELETE 11000

static guint
delete_groups (GbStore *store, const GbBoat *boat, GError **error)
{
  const GPtrArray *all = gb_boat_all (boat, GB_RECORD_PART);
  guint n = 0;

  for (guint i = 0; i < all->len && n < TO_DELETE; i++)
    {
      const GbPart *part = all->pdata[i];

      if (part->n_below + 1 > TO_DELETE - n)
        continue;
      must (gb_store_delete (store, GB_RECORD_PART, part->rec.id, error), *error);
      n += part->n_below + 1;
      i += part->n_below;
    }
  return n;
}

static void
report_deletion (GbStore *store, const GbBoat *boat)
{
  g_autoptr (GError) error = NULL;
  gint64 start = g_get_monotonic_time ();
  double deleted, undone;
  guint n;

  must (gb_store_begin (store, "delete", NULL, &error), error);
  n = delete_groups (store, boat, &error);
  must (gb_store_commit (store, NULL, &error), error);
  deleted = milliseconds_since (start);
  start = g_get_monotonic_time ();
  must (gb_store_undo (store, NULL, NULL, &error), error);
  undone = milliseconds_since (start);
  g_print ("  deleting %u parts: %.1f ms; undoing that: %.1f ms\n", n, deleted, undone);
}

static void
report_text_form (const GbBoat *boat)
{
  gint64 start = g_get_monotonic_time ();
  g_autofree char *text = gb_text_form_write (boat);
  double written = milliseconds_since (start);
  g_autoptr (GError) error = NULL;
  g_autoptr (GbBoat) back = NULL;

  start = g_get_monotonic_time ();
  back = gb_text_form_read (text, -1, &error);
  must (back != NULL, error);
  g_print ("  text form of %.2f MB: written in %.1f ms, read in %.1f ms\n", (double) strlen (text) / 1e6, written,
           milliseconds_since (start));
}

static void
report (guint n_parts)
{
  g_autofree char *folder = g_dir_make_tmp ("garboard-bench-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "build.garboard", NULL);
  g_autoptr (GbBoat) boat = generate_boat (n_parts, 1);
  g_autoptr (GbStore) store = NULL;
  g_autoptr (GError) error = NULL;
  gint64 start = g_get_monotonic_time ();
  double select, open = 0, load, without, with;
  GStatBuf info;

  must (gb_store_create (path, boat, FALSE, &error), error);
  g_stat (path, &info);
  g_print ("%u parts: created in %.1f ms, file %.2f MB\n", n_parts, milliseconds_since (start), (double) info.st_size / 1e6);
  select = time_select (path);
  load = time_open (path, &open);
  g_print ("  plain SELECTs: %.2f ms; open and load: %.2f ms (%.2f of that the opening): ratio %.2f\n", select, load, open,
           load / select);
  store = gb_store_open (path, FALSE, &error);
  must (store != NULL, error);
  without = time_edit (store, boat, FALSE);
  with = time_edit (store, boat, TRUE);
  g_print ("  one edit: %.2f ms without the commit, %.2f ms with it and the refresh; undo: %.2f ms\n", without, with,
           time_undo (store, boat));
  report_deletion (store, boat);
  report_text_form (boat);
  g_unlink (path);
  g_rmdir (folder);
}

int
main (void)
{
  const guint sizes[] = { 100, 10000, 100000 };

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    report (sizes[i]);
  return EXIT_SUCCESS;
}
