/* SPDX-License-Identifier: GPL-3.0-or-later */

/* How long a roll-up takes, in milliseconds and against a memcpy of the bytes that it must at least read and
 * write: the parts' structs and the results. The first one makes its memory; the others use it again. */

#include "engine/rollup.h"
#include "generate.h"

#include <string.h>

#define N_RUNS 15

static double
fastest (double *times, guint n)
{
  double least = times[0];

  for (guint i = 1; i < n; i++)
    least = MIN (least, times[i]);
  return least;
}

/* The parts where they lie, and the results in a row. */
static double
time_memcpy (const GbBoat *boat)
{
  const GPtrArray *parts = gb_boat_all (boat, GB_RECORD_PART);
  gsize size = sizeof (GbPart), result = sizeof (GbMass);
  g_autofree char *from = g_malloc0 (parts->len * result + 1),
                  *to = g_malloc0 (parts->len * MAX (size, result) + 1);
  double times[N_RUNS];

  for (guint run = 0; run < N_RUNS; run++)
    {
      gint64 start = g_get_monotonic_time ();

      for (guint i = 0; i < parts->len; i++)
        memcpy (to + i * size, parts->pdata[i], size);
      memcpy (to, from, parts->len * result);
      times[run] = (double) (g_get_monotonic_time () - start) / 1000;
    }
  return fastest (times, N_RUNS);
}

static void
measure (guint n_parts)
{
  g_autoptr (GbBoat) boat = generate_boat (n_parts, 1);
  GbHullSet hulls = { 0 };
  GbRollup rollup = { 0 };
  double times[N_RUNS], first, copying;
  gint64 start;

  gb_hull_set_find (&hulls, boat);
  start = g_get_monotonic_time ();
  gb_rollup_find (&rollup, boat, &hulls, G_MAXINT64);
  first = (double) (g_get_monotonic_time () - start) / 1000;
  for (guint run = 0; run < N_RUNS; run++)
    {
      start = g_get_monotonic_time ();
      gb_rollup_find (&rollup, boat, &hulls, G_MAXINT64);
      times[run] = (double) (g_get_monotonic_time () - start) / 1000;
    }
  copying = time_memcpy (boat);
  g_print ("%7u parts: roll-up %8.3f ms (first %8.3f), memcpy of the same bytes %7.3f ms, ratio %5.1f, "
           "results %6.1f MB, parts "
           "%6.1f MB\n",
           n_parts, fastest (times, N_RUNS), first, copying, fastest (times, N_RUNS) / MAX (copying, 1e-3),
           (double) n_parts * sizeof (GbMass) / 1e6, (double) n_parts * sizeof (GbPart) / 1e6);
  gb_rollup_clear (&rollup);
  gb_hull_set_clear (&hulls);
}

int
main (void)
{
  measure (100);
  measure (10000);
  measure (100000);
  return 0;
}
