/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "document.h"

#include "engine/study.h"

G_BEGIN_DECLS

/* What the pieces of the report "afloat" are made from. */
typedef struct
{
  GbDocument *document;
  const GbBoat *boat;
  const GbFindings *findings;
  const GPtrArray *studies; /* (element-type GbStudy) (nullable) */
} GbAfloatReport;

/* Tables that tell of several conditions have a heading row for each, and its name again in a column for machines. These are their first two
 * columns. */
#define GB_GROUPED(heading) \
  { "name", heading, GB_CELL_TEXT, 0, GB_COLUMN_WIDE }, \
  { \
    "condition", N_ ("Condition"), GB_CELL_TEXT, 0, GB_COLUMN_DATA \
  }
void gb_afloat_heading (GbTable *table, const char *condition);
/* Begins a row below it. */
void gb_afloat_row (GbTable *table, const char *name, const char *code, const char *condition);

void gb_afloat_add_stability (const GbAfloatReport *self);
void gb_afloat_add_swamped (const GbAfloatReport *self);
void gb_afloat_add_tests (const GbAfloatReport *self);

G_END_DECLS
