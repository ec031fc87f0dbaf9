/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat-key.h"
#include "boat-scene.h"
#include "level-lines.h"

G_BEGIN_DECLS

/* The crew map, apart from any paper: the boat from above, and at each place of one load the least freeboard,
 * the heel and the trim. */

#define GB_N_PLACES (GB_MAP_ROWS * GB_MAP_COLUMNS)

typedef struct
{
  GbScene *scene; /* upright, in plan alone */
  GbUnits units;
  GbCrewMap *map;
  char *load;      /* name */
  GbVec3 now;      /* where its centre is; NAN */
  GbCrewPlace here; /* how she floats with it there: as found, and not read off the map */
  GbVec3 lowest;    /* where the lowest edge is then; on the centreline where both sides are alike; NAN */
  double accepted; /* least freeboard; 0: the water, where none is accepted */
  gboolean has_accepted;
  GPtrArray *edges; /* names by line */

  GbVec3 points[GB_N_PLACES]; /* by row, then by column */
  double freeboard[GB_N_PLACES], heel[GB_N_PLACES],
      trim[GB_N_PLACES]; /* NAN: blank. Gone over: a little under water */
  guint (*triangles)[3]; /* between them */
  guint n_triangles;
  double lo, hi;               /* of the freeboards that are known; NAN */
  double band;                 /* between contours */
  double heel_step, trim_step; /* radians; NAN: none */
  GArray *key;                 /* of GbKeyRow */
} GbCrew;

GbCrew *gb_crew_new (const GbChartSource *source);
void gb_crew_free (gpointer data);

GbNet gb_crew_net (const GbCrew *crew, const double *values);
/* What is found for the place where x and y are, or NULL outside the map. */
const GbCrewPlace *gb_crew_place_at (const GbCrew *crew, double x, double y);
gboolean gb_crew_is_whole (const GbCrew *crew);

/* Marks of the key, too. */
void gb_mark_best (GbCanvas *canvas, double x, double y);
void gb_mark_now (GbCanvas *canvas, double x, double y);
void gb_mark_furthest (GbCanvas *canvas, double x, double y);

void gb_crew_draw (const GbCrew *crew, GbCanvas *canvas, GbBox box);
gboolean
gb_crew_locate (const GbCrew *crew, GbCanvas *canvas, GbBox box, double x, double y, GbChartSpot *spot);

G_END_DECLS
