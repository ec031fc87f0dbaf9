/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat-key.h"
#include "boat-scene.h"

G_BEGIN_DECLS

/* The boat in the water, as she sits: the scene, and what is measured on it. All places are in the axes of
 * the water. */

/* An edge that must stay dry. */
typedef struct
{
  char *name;
  char *opening;     /* its own name; NULL: a hull's edge */
  gboolean mirrored; /* the other one of a pair */
  GArray *points; /* of GbVec3 */
} GbFloatingEdge;

/* A length between two points, written at it. */
typedef struct
{
  GbVec3 from, to;
  double value; /* NAN: not known, and not drawn */
  char *words;  /* at it */
  char *tell;   /* of it: a sentence */
} GbMeasured;

enum
{
  GB_DRAUGHT_AFT,
  GB_DRAUGHT_MID,
  GB_DRAUGHT_FORE,
  GB_N_DRAUGHTS,
  GB_FREEBOARD_LEAST = GB_N_DRAUGHTS,
  GB_FREEBOARD_PORT, /* the least of each side */
  GB_FREEBOARD_STARBOARD,
  GB_N_MEASURED
};

/* A place that is marked and named. */
typedef struct
{
  GbMark mark;
  const char *name; /* static */
  GbVec3 at;
} GbMarkedPlace;

#define GB_MOST_MARKED 2u

typedef struct
{
  GbScene *scene;
  GbVec3 lo, hi;        /* of the hulls, in the boat's axes */
  gboolean has_water;   /* FALSE: she sinks, all is under */
  GPtrArray *edges;     /* of GbFloatingEdge */
  GPtrArray *waterline; /* of GArray of GbVec3: where the water cuts the hulls */
  GbMeasured measured[GB_N_MEASURED];
  GbMarkedPlace marked[GB_MOST_MARKED];
  guint n_marked;
  const char *least_opening; /* that the least freeboard is at; NULL: a hull's edge */
  double keel_fore_x, keel_aft_x, keel; /* the line that draughts are taken from, in the boat's axes; NAN */
  GArray *key;                          /* of GbKeyRow */
} GbFloating;

/* With the hulls, loads, edges and their freeboards; @attitude NULL: all under water, upright. */
GbFloating *gb_floating_new (const GbChartSource *source, const GbAttitude *attitude, guint views);
/* Draughts, centres and the words of the key. */
void gb_floating_take (GbFloating *floating, const GbAfloat *afloat);
void gb_floating_free (GbFloating *floating);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbFloating, gb_floating_free)

/* Where along the boat, and at which side, a point in the boat's axes is: "aft, to port". Static. */
const char *gb_floating_where (const GbFloating *floating, GbVec3 p);

char *gb_floating_where_least (const GbFloating *floating); /* of the freeboard; free it */

void gb_floating_draw (const GbFloating *floating, GbCanvas *canvas, GbBox box);
gboolean gb_floating_locate (const GbFloating *floating,
                             GbCanvas *canvas,
                             GbBox box,
                             double x,
                             double y,
                             guint what,
                             GbChartSpot *spot);
/* Of hits: those of the scene's items, and after them of what is measured. */
char *gb_floating_tell (const GbFloating *floating, guint what);
const GbSceneItem *gb_floating_item (const GbFloating *floating, guint what); /* NULL: none */

/* The method's, for charts whose data are a GbFloating. */
gint64 gb_floating_part (gconstpointer data, guint what);
gint64 gb_floating_load (gconstpointer data, guint what);

G_END_DECLS
