/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What an edit costs, from the verb to fresh findings: on the disk, in a folder that lives in memory (all but
 * the waiting for the disk), and the findings alone. Opening to findings, structure, undo, list models,
 * memory. Figures, no judgement. */

#include "generate.h"
#include "project/record-list.h"

#include <glib/gstdio.h>
#include <malloc.h>
#include <stdio.h>
#include <unistd.h>

#define REPEATS 20

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

/* What is resident, in MiB. */
static double
resident (void)
{
  g_autofree char *text = NULL;
  long pages = 0;

  malloc_trim (0);
  if (g_file_get_contents ("/proc/self/statm", &text, NULL, NULL))
    sscanf (text, "%*d %ld", &pages);
  return (double) pages * (double) sysconf (_SC_PAGESIZE) / (1024 * 1024);
}

static const GbPart *
some_leaf (const GbBoat *boat)
{
  const GPtrArray *all = gb_boat_all (boat, GB_RECORD_PART);

  for (guint i = all->len / 2; i < all->len; i++)
    if (((const GbPart *) all->pdata[i])->kind == GB_KIND_PART)
      return all->pdata[i];
  return all->pdata[0];
}

static double
time_findings (GbProject *project, GbTouched touched)
{
  g_autoptr (GbFindings) findings = gb_findings_new ();
  gint64 start;

  gb_findings_find (findings, gb_project_get_boat (project), GB_TOUCHED_ALL, gb_today ());
  start = g_get_monotonic_time ();
  for (guint i = 0; i < REPEATS; i++)
    gb_findings_find (findings, gb_project_get_boat (project), touched, gb_today ());
  return milliseconds_since (start) / REPEATS;
}

static double
time_setting (GbProject *project)
{
  gint64 id = some_leaf (gb_project_get_boat (project))->rec.id;
  gint64 start = g_get_monotonic_time ();

  for (guint i = 0; i < REPEATS; i++)
    {
      GbValue value = GB_VALUE_REAL (0.001 * (i + 1));
      g_autoptr (GError) error = NULL;

      must (
        gb_project_set (project, GB_RECORD_PART, id, gb_field (GB_RECORD_PART, "thickness"), &value, &error),
        error);
    }
  return milliseconds_since (start) / REPEATS;
}

static double
time_adding (GbProject *project)
{
  const GbPart *leaf = some_leaf (gb_project_get_boat (project));
  gint64 owner = leaf->rec.owner, after = leaf->rec.id;
  gint64 start = g_get_monotonic_time ();

  for (guint i = 0; i < REPEATS; i++)
    {
      g_autoptr (GError) error = NULL;

      must (gb_project_add_part (project, "new", GB_KIND_PART, owner, after, &error) != 0, error);
    }
  return milliseconds_since (start) / REPEATS;
}

static double
time_undo (GbProject *project, guint n)
{
  gint64 start = g_get_monotonic_time ();

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (GError) error = NULL;

      must (gb_project_undo (project, &error), error);
    }
  return milliseconds_since (start) / n;
}

/* An edit while a list of all parts and an item for each are alive, as when a tree is sorted by mass. */
static double
time_with_lists (GbProject *project)
{
  GbRecordList *list = gb_record_list_new_all (project, GB_RECORD_PART);
  g_autoptr (GPtrArray) items = g_ptr_array_new_with_free_func (g_object_unref);
  double time;

  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (list)); i++)
    g_ptr_array_add (items, g_list_model_get_item (G_LIST_MODEL (list), i));
  time = time_adding (project);
  g_object_unref (list);
  return time;
}

static void
print (const char *what, double milliseconds)
{
  g_print ("  %-52s %10.3f ms\n", what, milliseconds);
}

static void
measure_in (const char *folder, const char *where, const GbBoat *boat)
{
  g_autofree char *path = g_strdup_printf ("%s/garboard-bench-%d.garboard", folder, (int) getpid ());
  g_autoptr (GError) error = NULL;
  GbProject *project = gb_project_create (path, boat, &error);
  double before, set, add, undo;
  gint64 start;

  must (project != NULL, error);
  g_object_unref (project);
  before = resident ();
  start = g_get_monotonic_time ();
  project = gb_project_open (path, FALSE, &error);
  must (project != NULL, error);
  g_print (" in %s (%s)\n", folder, where);
  print ("open to findings", milliseconds_since (start));
  g_print ("  %-52s %10.1f MiB\n", "memory of the open project", resident () - before);
  set = time_setting (project);
  undo = time_undo (project, REPEATS);
  add = time_adding (project);
  print ("set a thickness, to findings", set);
  print ("undo it, to findings", undo);
  print ("add a part, to findings", add);
  print ("undo that", time_undo (project, REPEATS));
  print ("add a part, with a list and items of all parts", time_with_lists (project));
  print ("findings alone, hulls kept", time_findings (project, GB_TOUCHED_ALL & ~GB_TOUCHED_HULLS));
  print ("findings alone, weights kept as well", time_findings (project, 0));
  print ("findings alone, all", time_findings (project, GB_TOUCHED_ALL));
  g_object_unref (project);
  g_unlink (path);
}

int
main (void)
{
  static const guint sizes[] = { 100, 10000, 100000 };

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      g_autoptr (GbBoat) boat = generate_boat (sizes[i], 1);

      g_print ("%u parts\n", sizes[i]);
      measure_in (g_get_tmp_dir (), "with the disk", boat);
      if (g_access ("/dev/shm", W_OK) == 0)
        measure_in ("/dev/shm", "in memory: no waiting for a disk", boat);
    }
  return 0;
}
