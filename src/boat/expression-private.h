/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "expression.h"
#include "quantity.h"

/* What the reader of an entry hands from one of its files to the other: expression-number.c reads numbers, expression-measure.c numbers
 * with their units, expression.c sums of those. The readers return FALSE with the reader's error set. */

/* A piece of text to be put into what was typed. */
typedef struct
{
  gsize at;
  const char *text;
} GbInsertion;

typedef struct
{
  const char *text; /* tidied */
  const char *at;   /* where reading has come to */
  GbDimension dim;
  GbUnits units;
  guint depth;
  guint n_numbers;
  gboolean has_fraction, has_sum;
  const GbUnit *unit; /* the last that was read */
  GArray *insertions;
  GError *error;
} GbReader;

typedef struct
{
  double v;
  GbPowers powers;
  gboolean bare;   /* waits for a unit */
  gboolean is_sum; /* of several terms, not in parentheses */
  gsize start, end;
} GbTerm;

/* Sets the error, unless there is one; FALSE. */
gboolean gb_reader_fail (GbReader *reader, GbQuantityError code, const char *format, ...) G_GNUC_PRINTF (3, 4);
const char *gb_reader_example (const GbReader *reader);
void gb_reader_skip_space (GbReader *reader);
gsize gb_reader_place (const GbReader *reader);

gboolean gb_starts_number (const char *p);
/* A fraction of whole digits at @p, such as 3/8, with @end behind it; -1 if there is none. */
double gb_slash_fraction (const char *p, const char **end);
/* @fractions: whether "3/8" is one number here; elsewhere that is a division and comes to the same. */
gboolean gb_reader_number (GbReader *reader, gboolean fractions, double *v);

/* TRUE if what comes can only be a unit. */
gboolean gb_reader_at_unit (const GbReader *reader);
/* Turns @term, a bare number, into one of the unit that comes. */
gboolean gb_reader_unit (GbReader *reader, GbTerm *term);
/* As gb_reader_unit() if a unit comes, with smaller units after it; else leaves @term as it is. */
gboolean gb_reader_measure (GbReader *reader, GbTerm *term);
gboolean gb_reader_fail_for_unit (GbReader *reader);
/* The dash in 5'-6" joins for some and takes away for others; so does that in 1-1/2. */
gboolean gb_reader_fail_for_dash (GbReader *reader);
