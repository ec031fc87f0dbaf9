/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "reports/document.h"

G_BEGIN_DECLS

/* A document by hand, for the writers: two groups with parts, unknown and blank cells, texts that would act
 * as formulas in a spreadsheet, money, dates and moments. 12 March 2026. */
GbDocument *sample_document (GbUnits units);

/* The same with one table alone that has @n_rows normal rows. */
GbDocument *sample_long_document (guint n_rows);

#define SAMPLE_DATE 739687 /* 12 March 2026: date -d 2026-03-12 +%s / 86400 + 719163 */

/* Texts that a spreadsheet would run, or that break a careless writer. */
extern const char *const sample_hostile[];
extern const guint sample_n_hostile;

G_END_DECLS
