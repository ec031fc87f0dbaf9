/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-history"

#include "history.h"

static int
compare_dates (gconstpointer a, gconstpointer b)
{
  const gint64 *d = a, *e = b;

  return *d < *e ? -1 : *d > *e;
}

/* The days on which anything was weighed that has a date, in order, each once. */
static GArray *
weighing_days (const GbBoat *boat)
{
  const GPtrArray *weighings = gb_boat_all (boat, GB_RECORD_WEIGHING);
  GArray *days = g_array_new (FALSE, FALSE, sizeof (gint64));
  guint n = 0;

  for (guint i = 0; i < weighings->len; i++)
    {
      gint64 date = ((const GbWeighing *) weighings->pdata[i])->date;

      if (date > 0)
        g_array_append_val (days, date);
    }
  g_array_sort (days, compare_dates);
  for (guint i = 0; i < days->len; i++)
    if (n == 0 || g_array_index (days, gint64, i) != g_array_index (days, gint64, n - 1))
      g_array_index (days, gint64, n++) = g_array_index (days, gint64, i);
  g_array_set_size (days, n);
  return days;
}

static GbHistoryPoint
point_of (const GbRollup *rollup, gint64 date)
{
  const GbMass *boat = &rollup->boat;

  return (GbHistoryPoint){ .date = date,
                           .mass = boat->mass + rollup->margin.total,
                           .mass_sd = boat->mass_sd,
                           .weighed_share = boat->mass > 0 ? boat->by_as[GB_AS_WEIGHED] / boat->mass : 0 };
}

GbHistory *
gb_history_find (const GbBoat *boat, gboolean (*cancelled) (gpointer data), gpointer data)
{
  GbHistory *history = g_new0 (GbHistory, 1);
  g_autoptr (GArray) days = weighing_days (boat);
  GbHullSet hulls = { 0 };
  GbRollup rollup = { 0 };

  history->points = g_new (GbHistoryPoint, days->len + 1);
  gb_hull_set_find (&hulls, boat);
  for (guint i = 0; i <= days->len && (cancelled == NULL || !cancelled (data)); i++)
    {
      gint64 date = i > 0 ? g_array_index (days, gint64, i - 1) : 0;

      /* A weighing without a date has day 0; before anything was weighed it is not there either. */
      gb_rollup_find (&rollup, boat, &hulls, i > 0 ? date : -1);
      history->points[history->n_points++] = point_of (&rollup, date);
    }
  gb_rollup_clear (&rollup);
  gb_hull_set_clear (&hulls);
  return history;
}

void
gb_history_free (GbHistory *history)
{
  if (history == NULL)
    return;
  g_free (history->points);
  g_free (history);
}
