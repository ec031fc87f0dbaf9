/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/rollup.h"

G_BEGIN_DECLS

/* How the forecast of the light craft's mass went: the parts as they are listed now, weighed as far as they were on each day.
 * Dear in large builds (one roll-up a day of weighing): runs on a worker. */
typedef struct
{
  gint64 date;
  double mass, mass_sd; /* light craft with margin */
  double weighed_share; /* 0 to 1 of the mass without margin */
} GbHistoryPoint;

typedef struct
{
  GbHistoryPoint *points; /* by date; the first, with date 0, is before anything was weighed */
  guint n_points;
} GbHistory;

/* @cancelled is asked between days and may be NULL; where it says TRUE the history ends early. */
GbHistory *gb_history_find (const GbBoat *boat, gboolean (*cancelled) (gpointer data), gpointer data);
void gb_history_free (GbHistory *history);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbHistory, gb_history_free)

G_END_DECLS
