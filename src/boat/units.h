/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "fields.h"

G_BEGIN_DECLS

/* The units that an entry may carry, and those that each dimension is shown in. Factors are fractions of whole numbers, so
 * that "38 mm" is the very 0.038 and 1 1/2" the very 0.0381. */

/* What a unit measures, as powers: kg/m3 is length -3, mass 1. All zero: a plain number or a share. */
typedef struct
{
  int length, mass, angle, temperature;
} GbPowers;

typedef struct
{
  const char *names[8]; /* the first is the usual one; upper and lower case are the same */
  GbPowers powers;
  double num, den;     /* SI = (value - zero) * num / den */
  double zero;         /* for Fahrenheit */
  const char *smaller; /* what a bare number after it is in: inches after feet */
} GbUnit;

/* The unit whose name @text begins with, the longest there is; @length gets how many bytes that is. NULL if there is none. */
const GbUnit *gb_unit_match (const char *text, gsize *length);

/* For tests: all of them, ended by one without a name. */
const GbUnit *gb_units_all (void);

typedef struct
{
  const char *symbol;  /* as shown on screen */
  const char *entry;   /* as it may be typed */
  const char *example; /* of an entry */
  double num, den, zero;
} GbShownUnit;

typedef struct
{
  GbPowers powers;
  double parts; /* the stored number over a plain one: 1000 for grams in a kilogram */
  const char *label; /* "a length", untranslated */
  GbShownUnit shown[2]; /* by GbUnits */
} GbDimensionInfo;

/* For the dimensions that are kept as a real number. */
const GbDimensionInfo *gb_dimension_info (GbDimension dim);
const GbShownUnit *gb_dimension_shown (GbDimension dim, GbUnits units);

gboolean gb_powers_equal (GbPowers a, GbPowers b);
/* The first dimension with these powers; GB_N_DIMS if there is none. */
GbDimension gb_powers_dimension (GbPowers powers);

G_END_DECLS
