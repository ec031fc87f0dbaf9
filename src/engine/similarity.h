/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/afloat.h"

G_BEGIN_DECLS

/* Froude's similarity between a model and the boat. From model to boat a quantity goes with the scale (boat's
 * length over model's) to a power; what has mass in it goes with the waters' densities as well. */
typedef enum
{
  GB_LIKE_LENGTH,
  GB_LIKE_AREA,
  GB_LIKE_VOLUME,
  GB_LIKE_TIME,
  GB_LIKE_SPEED,
  GB_LIKE_ANGLE,
  GB_LIKE_MASS,
  GB_LIKE_FORCE,
  GB_LIKE_MOMENT,
  GB_LIKE_INERTIA, /* second moment of mass */
  GB_LIKE_PRESSURE,
  GB_LIKE_POWER,
} GbLike;

double gb_similarity_power (GbLike like); /* 1, 2, 3, 1/2 ... */
/* The factor from the model to the boat. @density_ratio: boat's water over model's. */
double gb_similarity_factor (GbLike like, double scale, double density_ratio);

/* What would explain part of the difference; amounts in boat size. */
typedef struct
{
  char *words;     /* translated: "The model is 3.2 kg too heavy for this condition: 4 mm deeper" */
  double fore, aft; /* what it makes of the draughts, m; NAN: only said */
} GbExplanation;

typedef struct
{
  gint64 tub;      /* id */
  char *trouble;   /* no scale, no condition ...; what can be known is known all the same; or NULL */
  double scale, density_ratio, model_density;
  double model_mass;  /* bare and loads, model size */
  double mass;        /* that in boat size */
  GbVec3 centre;      /* of the model with its loads, in boat size; NAN */
  double fore_x, aft_x; /* of the marks, in boat size */
  double draught_fore, draught_aft, heel, trim; /* as read, in boat size; NAN: not read */
  double computed_fore, computed_aft, computed_heel, computed_trim; /* for the condition, at the marks */
  double own_fore, own_aft; /* computed for the model's own mass and centre: what is left against these is
                               reading or shape */
  GPtrArray *explanations; /* (element-type GbExplanation), never NULL */

  /* The other way round: what the model must be to stand for the condition, in model size. */
  double wanted_mass;
  GbVec3 wanted_centre;
  double ballast;        /* to be added to the bare model, kg; negative: it is too heavy already */
  GbVec3 ballast_centre; /* where it must lie; NAN */
  double time_factor, speed_factor; /* one second, one m/s of the model */
} GbTubbed;

/* @case_: of the test's condition; NULL: none. @afloat: how that floats; NULL with it. @tubbed starts as
 * zeroes. */
void gb_tubbed_find (GbTubbed *tubbed, const GbBoat *boat, const GbTub *tub, const GbCase *case_,
                     const GbAfloat *afloat);
void gb_tubbed_clear (GbTubbed *tubbed);

G_END_DECLS
