/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What workers find of floating, as a window sees it: how long until it is there, and how long the main loop
 * stood still meanwhile at most. Figures, no judgement. */

#include "generate.h"
#include "project/project-study.h"

#include <glib/gstdio.h>

/* The longest time between two beats of the main loop. */
typedef struct
{
  gint64 last, longest;
} Beat;

static gboolean
beat_cb (gpointer data)
{
  Beat *beat = data;
  gint64 now = g_get_monotonic_time ();

  beat->longest = MAX (beat->longest, now - beat->last);
  beat->last = now;
  return G_SOURCE_CONTINUE;
}

static void
begin (Beat *beat)
{
  *beat = (Beat){ g_get_monotonic_time (), 0 };
}

static double
milliseconds (gint64 microseconds)
{
  return (double) microseconds / 1000;
}

static void
print_wait (const char *what, guint n_parts, gint64 start, const Beat *beat)
{
  g_print ("%7u parts  %-9s there after %7.1f ms, longest stop of the main loop %5.1f ms\n", n_parts, what,
           milliseconds (g_get_monotonic_time () - start), milliseconds (beat->longest));
}

static void
wait_for_study (GbProject *project, gint64 condition, guint n_parts, Beat *beat)
{
  gint64 start = g_get_monotonic_time ();

  begin (beat);
  while (gb_project_get_study (project, condition) == NULL)
    g_main_context_iteration (NULL, TRUE);
  print_wait ("study", n_parts, start, beat);
}

static void
wait_for_map (GbProject *project, gint64 condition, gint64 load, guint n_parts, Beat *beat)
{
  gint64 start = g_get_monotonic_time ();
  const GbCrewMap *map;

  begin (beat);
  for (map = NULL; map == NULL || map->n_rows_found < GB_MAP_ROWS;
       map = gb_project_get_crew_map (project, condition, load))
    g_main_context_iteration (NULL, TRUE);
  print_wait ("crew map", n_parts, start, beat);
}

static void
measure (const char *folder, guint n_parts)
{
  g_autoptr (GbBoat) boat = generate_boat (n_parts, 1);
  g_autofree char *path = g_build_filename (folder, "study.garboard", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (GbProject) project = gb_project_create (path, boat, &error);
  const GbRecord *condition = gb_boat_roots (boat, GB_RECORD_CONDITION)->pdata[0];
  const GbRecord *load = gb_record_children (condition)->pdata[0];
  Beat beat;
  guint beating = g_timeout_add (1, beat_cb, &beat);

  g_assert_no_error (error);
  wait_for_study (project, condition->id, n_parts, &beat);
  wait_for_map (project, condition->id, load->id, n_parts, &beat);
  g_source_remove (beating);
  g_unlink (path);
}

int
main (void)
{
  g_autofree char *folder = g_dir_make_tmp ("garboard-bench-XXXXXX", NULL);

  for (guint n = 100; n <= 100000; n *= 10)
    measure (folder, n);
  g_rmdir (folder);
  return 0;
}
