/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "reports/import.h"

G_BEGIN_DECLS

/* The head of one column of an import's preview: its heading in the file, the field that it goes into, and where that has a dimension the unit of
 * its bare numbers. As wide as it is told to be, whatever stands in it.
 *
 * Signals: "field-chosen" (const GbField *field)   NULL: the column is left out
 *          "unit-chosen" (const char *unit) */
#define GB_TYPE_IMPORT_HEAD (gb_import_head_get_type ())
G_DECLARE_FINAL_TYPE (GbImportHead, gb_import_head, GB, IMPORT_HEAD, GtkWidget)

/* With @fields NULL it is a heading alone. @names: what the drop-down shows, "left out" first and then each of @fields; one for all heads. */
GtkWidget *gb_import_head_new (const char *heading, int width, const GPtrArray *fields, GListModel *names);

/* Shows what the column goes into. @field and @unit may be NULL. */
void gb_import_head_show (GbImportHead *self, const GbField *field, const char *unit, const GbBuild *build);

/* The drop-downs. For tests. */
GtkDropDown *gb_import_head_get_field_input (GbImportHead *self);
GtkDropDown *gb_import_head_get_unit_input (GbImportHead *self);

G_END_DECLS
