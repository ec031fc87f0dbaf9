/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "reports/import.h"

G_BEGIN_DECLS

/* The table of an import as it would come in: at the head of each column what it goes into, and for each row its line in the file and what becomes of
 * it: what it will be, or why it is refused.
 *
 * Signals: "field-chosen" (guint column, const GbField *field)   NULL: the column is left out
 *          "unit-chosen" (guint column, const char *unit)
 *
 * Keys in the table: Up and Down from row to row, Left and Right scroll sideways, Tab and Shift+Tab leave it. */
#define GB_TYPE_IMPORT_PREVIEW (gb_import_preview_get_type ())
G_DECLARE_FINAL_TYPE (GbImportPreview, gb_import_preview, GB, IMPORT_PREVIEW, GtkWidget)

/* Shows @import, and what changed in it since the last call. NULL: not now, it is being worked on; what is shown stays and takes no input. Each call
 * is for the same table. @import and @build are borrowed until the next call. */
void gb_import_preview_show (GbImportPreview *self, const GbImport *import, const GbBuild *build);

void gb_import_preview_set_refused_only (GbImportPreview *self, gboolean refused_only);

/* How many columns of the table are not shown because there are too many. All that go into a field are. */
guint gb_import_preview_n_hidden (GbImportPreview *self);

/* The head of a column of the table, or NULL if it is not shown. For tests. */
GtkWidget *gb_import_preview_get_head (GbImportPreview *self, guint column);
GtkColumnView *gb_import_preview_get_view (GbImportPreview *self);

G_END_DECLS
