/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "reports/import.h"

G_BEGIN_DECLS

/* The cells of an import's preview. */

#define GB_IMPORT_CHARACTER_WIDTH 8     /* pixels, about */
#define GB_IMPORT_MOST_CHARACTERS 200 /* of a cell that are shown */

typedef struct
{
  GtkWidget *(*make) (void);
  /* Leaves alone what is so already: the toolkit does not look. */
  void (*fill) (GtkWidget *cell, const GbImport *import, guint row, guint column);
} GbImportCellType;

extern const GbImportCellType gb_import_line_cell;    /* the row's line in the file, with a mark whether it comes in */
extern const GbImportCellType gb_import_outcome_cell; /* what becomes of the row */
extern const GbImportCellType gb_import_text_cell;    /* what stands in a column of the table */

/* The text of what is in a cell, where there is no room for all of it; NULL if there is. Borrowed. */
const char *gb_import_cell_cut_text (GtkWidget *cell);

G_END_DECLS
