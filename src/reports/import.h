/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#include "boat/boat.h"
#include "project/edit.h"

G_BEGIN_DECLS

/* Rows that come in: a CSV file, or rows pasted from a spreadsheet. The table is read (separator , ; or tab
 * found by itself, quotes, UTF-8 with or without mark, or Latin-1), columns are matched with fields by their
 * headings in English or the user's language ("Thickness (mm)" gives field and unit), and each row becomes a
 * draft record or a refusal with a sentence. */

typedef struct _GbImport GbImport;

#define GB_IMPORT_ERROR (gb_import_error_quark ())
GQuark gb_import_error_quark (void);

/* @kind: GB_RECORD_PART or GB_RECORD_LINE (receipts: rows with the same date and supplier share a purchase;
 * for lines the columns "date" and "supplier" are those of the purchase). NULL with a sentence if there is no
 * table in it. */
GbImport *
gb_import_new (GbRecordKind kind, const char *text, gssize length, const GbBoat *boat, GError **error);
void gb_import_free (GbImport *import);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbImport, gb_import_free)

guint gb_import_n_columns (const GbImport *import);
const char *gb_import_heading (const GbImport *import, guint column);
/* The field that a column goes into; NULL: left out. The setter matches again. */
const GbField *gb_import_get_field (const GbImport *import, guint column);
void gb_import_set_field (GbImport *import, guint column, const GbField *field);
/* Unit of the bare numbers in a column, as the heading says it or as set: "mm"; NULL: as the build's units
 * have it. */
const char *gb_import_get_unit (const GbImport *import, guint column);
void gb_import_set_unit (GbImport *import, guint column, const char *unit);
/* Fields that a column may go into: (element-type GbField) borrowed. */
const GPtrArray *gb_import_fields (const GbImport *import);

guint gb_import_n_rows (const GbImport *import);
const char *
gb_import_cell (const GbImport *import, guint row, guint column); /* as it stands in the file; never NULL */
guint gb_import_line (const GbImport *import, guint row);         /* line in the file, from 1 */
const char *gb_import_refusal (const GbImport *import,
                               guint row); /* a sentence, or NULL if the row comes in */
/* What the row becomes, in a line: "Sheet, 1 × 2100 × 860 × 6 mm"; "" if it is refused. Free it. */
char *gb_import_outcome (const GbImport *import, guint row);

/* All accepted rows as one edit ("import of 12 parts"); parts go to the end of group @owner (0: top). A
 * column of group names ("Hull/Frames") makes groups that are not there. Materials, stock and heads that are
 * only named are looked up in the build and the catalogue; a material that is in neither is made, without a
 * density. NULL if no row is accepted. */
GbEdit *gb_import_to_edit (const GbImport *import, gint64 owner);

/* Parts as rows for a spreadsheet: tab-separated, with headings, and back by gb_import_new(). @ids: parts and
 * groups, with what is below. */
char *gb_export_rows (const GbBoat *boat, const gint64 *ids, guint n_ids);

G_END_DECLS
