/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "reports/import.h"

G_BEGIN_DECLS

/* Work on an import that may last: it holds all that it needs, so that it can be done on any thread. */

/* A column as it shall be. */
typedef struct
{
  guint column;
  gboolean sets_field, sets_unit;
  const GbField *field;
  const char *unit;
} GbImportWish;

/* In this order: the table is read where there is no import yet; columns are set as is wished; the edit is made where it is wanted. */
typedef struct
{
  GbRecordKind kind;
  GBytes *bytes;
  GbBoat *boat;     /* of its own, for reading */
  GbImport *import; /* NULL: to be read */
  GArray *wishes;   /* of GbImportWish, with their units owned */
  gboolean wants_edit;
  gint64 owner; /* of the edit's parts */
  GbEdit *edit;
} GbImportWork;

GbImportWork *gb_import_work_new (void);
void gb_import_work_free (GbImportWork *work);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbImportWork, gb_import_work_free)

void gb_import_work_wish (GbImportWork *work, GbImportWish wish);

/* TRUE if it may last longer than a window should wait. */
gboolean gb_import_work_is_long (const GbImportWork *work);

/* FALSE with a sentence if there is no table to be read. */
gboolean gb_import_work_do (GbImportWork *work, GError **error);

G_END_DECLS
