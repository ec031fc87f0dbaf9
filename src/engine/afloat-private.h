/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "afloat.h"

G_BEGIN_DECLS

/* One load of a case. */
typedef struct
{
  gint64 id;
  gint64 kind; /* GbLoadKind */
  char *name;
  double each;    /* mass of one; NAN */
  double weight;  /* of all, downwards; NAN: left out */
  double holds;   /* what its tank holds; NAN: has none */
  GbVec3 centre;  /* NAN: no place */
  GbVec3 at;      /* where the floater has its weight: without a place, the light craft's centre */
  int tank, pull; /* index in the floater; -1: none */
} GbCaseLoad;

struct _GbCase
{
  gint64 condition;
  GbUnits units;
  const char *trouble; /* why nothing can be said of it: a translated sentence, static; or NULL */
  GbFloater *floater;
  GbEdgeSet edges;
  GArray *loads; /* of GbCaseLoad */
  double heeling_moment, freeboard;

  double light, margin, load_mass, load_sd, total, total_sd;
  GbVec3 light_at; /* centre of light craft and margin */

  /* Of the hulls that are not inside others; NAN where there are none. */
  GbVec3 least, most; /* corners of the box round them */
  double carries;     /* see GbAfloat.most */
  double limit;
  GbVec3 limit_at; /* centre of buoyancy, level at the limit */
};

/* Draught at @x: from the line of the keel, whose z is @keel, up to the water on the centreline. NAN:
 * standing on end, or upside down, she has none. */
double gb_draught_at (GbAttitude attitude, double keel, double x);

/* NULL if it is not there. */
GbCaseLoad *gb_case_find_load (const GbCase *self, gint64 load);

/* With her least freeboard; NAN where there is no edge. */
GbAfloatState gb_afloat_state_at_rest (GbAttitude attitude, double freeboard);

/* What is odd about the loads, one sentence each. */
void gb_case_add_troubles (const GbCase *self, GPtrArray *troubles);

/* Why she does not simply float, in the state that @afloat has. NULL where she does. */
char *gb_afloat_sentence (const GbCase *self, const GbAfloat *afloat);

G_END_DECLS
