/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "import-table.h"
#include "import.h"

G_BEGIN_DECLS

typedef struct
{
  char *heading;
  const GbField *field; /* NULL: left out */
  char *unit;           /* of bare numbers, or NULL */
} GbImportColumn;

struct _GbImport
{
  GbRecordKind kind;
  GbBoat *boat;          /* as it was when the import began */
  GPtrArray *columns;    /* (element-type GbImportColumn) */
  GPtrArray *rows;       /* (element-type GbImportRow), without the headings */
  GPtrArray *refusals;   /* (element-type utf8), one for each row; NULL: it comes in */
  GHashTable *own_paths; /* path of each row that comes in -> its index + 1: what is coated may come in with
                            its coating */
};

/* A row as records, before they have ids. */
typedef struct
{
  GbRecord *record;     /* a part or a line */
  char *group;          /* path of its group; "" */
  char *surface_of;     /* what it coats, where that comes in too: its path; or NULL */
  GbPurchase *purchase; /* of a line: date, supplier and notes */
} GbImportDraft;

void gb_import_draft_free (GbImportDraft *draft);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbImportDraft, gb_import_draft_free)

/* Looks up what rows refer to by name; what is not there and may be made is put into the edit. Names are
 * looked up once. */
typedef struct
{
  const GbImport *import;
  GbEdit *edit;
  GHashTable *found; /* field and name -> GbImportName, owned */
} GbImportNames;

void gb_import_names_init (GbImportNames *names, const GbImport *import, GbEdit *edit);
void gb_import_names_clear (GbImportNames *names);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (GbImportNames, gb_import_names_clear)
gboolean gb_import_names_get (GbImportNames *names,
                              const GbField *field,
                              const char *name,
                              gint64 *id,
                              GError **error);

/* What the row says for @field, as it stands; "" if it has no such column. */
const char *gb_import_says (const GbImport *import, guint row, const GbField *field);

/* NULL with a sentence for a row that cannot come in. */
GbImportDraft *gb_import_draft_row (const GbImport *import, guint row, GbImportNames *names, GError **error);

G_END_DECLS
