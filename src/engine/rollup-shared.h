/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "rollup-axes.h"

G_BEGIN_DECLS

/* Errors that parts of one material share.
 *
 * If the material's figure is off by a share e, then the mass and first moments of a group are off by e times
 * what of them is of that material. So each open group keeps one entry a material: those four numbers, and
 * the mass without a place. They add as they are; only at the end is each squared and multiplied by the
 * material's variance.
 *
 * The entries of all open groups lie on one stack, the innermost group's on top. 'where' knows the topmost
 * entry of each material, and each entry the one that it covers, so finding and closing take no search. */
typedef struct
{
  guint material; /* index */
  guint covers;   /* place on the stack, or GB_NO_ENTRY */
  GbFirst first;
  double loose; /* mass without a place */
} GbSharedError;

#define GB_NO_ENTRY G_MAXUINT

typedef struct
{
  GArray *stack; /* of GbSharedError */
  GArray *where; /* of guint, by index of the material */
} GbSharedErrors;

/* Makes it empty, for @n_materials. The struct may be zero, or used before. */
void gb_shared_errors_start (GbSharedErrors *errors, guint n_materials);
void gb_shared_errors_clear (GbSharedErrors *errors);

/* @bottom: where the group's entries begin, which is what the stack held when it was opened. */
void gb_shared_errors_add (
    GbSharedErrors *errors, guint bottom, guint material, const GbFirst *first, double loose);
/* Hands the entries of the group that began at @bottom to the one around it, which began at @outer. */
void gb_shared_errors_close (GbSharedErrors *errors, guint outer, guint bottom);
/* Forgets them. */
void gb_shared_errors_drop (GbSharedErrors *errors, guint bottom);

G_END_DECLS
