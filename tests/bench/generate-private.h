/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "generate.h"

G_BEGIN_DECLS

/* What the two halves of the generator share: one makes the parts and all that is bought, the other what floats. */
typedef struct
{
  GRand *rand;
  GbBoat *boat;
  gint64 next[GB_N_RECORDS]; /* ids and positions both count up */
  GArray *groups;            /* of gint64: the open groups, outermost first */
  gint64 last_leaf;
} GenerateMaker;

/* A new record with the next id of its kind, and the way of it into the boat. */
gpointer generate_make (GenerateMaker *maker, GbRecordKind kind, gint64 owner);
gint64 generate_take (GenerateMaker *maker, gpointer record);

/* An open boat of nine stations with a slot in it, and a pair of pipes beside it. */
void generate_hulls (GenerateMaker *maker);
/* Conditions with every sort of load, an inclining test and a test of a model. */
void generate_conditions (GenerateMaker *maker);

G_END_DECLS
