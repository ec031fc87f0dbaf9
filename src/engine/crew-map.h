/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/righting.h"

G_BEGIN_DECLS

/* One load at every place in plan view, at its own height: how she floats with it there. */

typedef struct
{
  GbAfloatState state; /* UNKNOWN: not found yet, or sinks wherever it is */
  double freeboard;    /* least */
  int line;            /* which edge */
  double heel, trim;
} GbCrewPlace;

#define GB_MAP_COLUMNS 60
#define GB_MAP_ROWS 40
typedef struct
{
  gint64 condition, load;
  double x0, x1, y0, y1; /* places lie at the middles of the grid's cells */
  double z;              /* height of the load's centre */
  GbCrewPlace places[GB_MAP_ROWS][GB_MAP_COLUMNS];
  guint n_rows_found;    /* of GB_MAP_ROWS, from y0 on; all when it is whole */
  GbVec3 best;           /* where the least freeboard is greatest, between the grid's places; on the
                            centreline, and there beside where the load is now, if that costs less than a
                            millimetre */
  double best_freeboard;
  double furthest_starboard, furthest_port; /* how far out it may be at its own x, y, before the accepted
                                               freeboard is passed; NAN */
  int first_under;       /* edge that is lowest at the place where it is now */
} GbCrewMap;

/* Rows are found from y0 on; @progress, which may be NULL, is called after each with the map so far. NULL if
 * cancelled or the load is not there. */
typedef void (*GbCrewMapProgress) (const GbCrewMap *map, gpointer data);
GbCrewMap *gb_crew_map_find (const GbCase *self, gint64 load, GbCrewMapProgress progress,
                             GbCancelFunc is_cancelled, gpointer data);
GbCrewMap *gb_crew_map_copy (const GbCrewMap *map);
void gb_crew_map_free (GbCrewMap *map);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbCrewMap, gb_crew_map_free)

G_END_DECLS
