/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct
{
  guint line;       /* in the file, from 1 */
  GPtrArray *cells; /* (element-type utf8) */
} GbImportRow;

void gb_import_row_free (GbImportRow *row);

/* Reads @text as a table, without knowing what it is of: UTF-8 with or without mark, UTF-16 with one, or
 * Latin-1; lines that end in any way; separated by commas, semicolons or tabs, whichever gives the most even
 * table; with quotes. Rows in which nothing stands are left out. (element-type GbImportRow), at least one;
 * NULL with a sentence if there is nothing in it or far too much. */
GPtrArray *gb_import_read_table (const char *text, gssize length, GError **error);

G_END_DECLS
