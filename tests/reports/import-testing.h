/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/edit.h"
#include "reports/import.h"

G_BEGIN_DECLS

/* An empty build in euros, and its build record. */
GbBoat *new_boat (void);
GbBuild *build_of (GbBoat *boat);
/* Adds a record of a kind that has names. */
void add_named (GbBoat *boat, GbRecordKind kind, gint64 id, const char *name);

/* Reads @text, which must be a table. */
GbImport *read_rows (GbRecordKind kind, const GbBoat *boat, const char *text);
/* Reads @text, all of whose rows must come in, into @boat. */
void import_all (GbBoat *boat, GbRecordKind kind, const char *text);

/* Applies @edit (consumed) to a boat in memory as the project would to its file: it is checked, its records
 * get ids and places. */
void apply_edit (GbBoat *boat, GbEdit *edit);

/* The only part that is called @name. */
const GbPart *part_called (const GbBoat *boat, const char *name);

G_END_DECLS
