/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/boat.h"

G_BEGIN_DECLS

/* Which field a column of a table goes into, by its heading. */

/* The fields that a column may go into when records of @kind come in: their own, and for parts the path of
 * the group, for lines of receipts those of the purchase. (element-type GbField), borrowed, static. */
const GPtrArray *gb_import_fields_of (GbRecordKind kind);

/* The column that holds the path of the group. */
const GbField *gb_import_group_field (void);

/* The field that @heading names, by its name, its label in English or the user's language, or a common
 * synonym, with or without a unit: "Thickness (mm)", "mass, kg", "length / m", "width in mm", "qty". NULL if
 * none does. @unit: the unit of bare numbers, or NULL; free it. */
const GbField *gb_import_match_heading (GbRecordKind kind, const char *heading, char **unit);

/* TRUE if @unit makes sense for @field. A currency does for money, even another than the build's: the cells
 * then say what is wrong. */
gboolean gb_import_unit_fits (const GbField *field, const char *unit);

G_END_DECLS
