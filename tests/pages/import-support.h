/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "pages/import-head.h"
#include "support.h"

G_BEGIN_DECLS

/* The import dialog as tests see it: opened on a table, read cell by cell, and its columns chosen. */

typedef struct
{
  Support *support;
  GtkWindow *dialog;
} ImportFixture;

/* Writes the table into the build's folder. */
GFile *import_write_file (Support *support, const char *name, const char *text, gssize length);

/* Opens the dialog on @text, and waits until it shows the table and has the keys. */
void import_open_dialog (ImportFixture *fixture, Support *support, GbRecordKind kind, const char *text);
GtkWindow *import_find_dialog (void); /* NULL: there is none */
/* TRUE if it shows a table that is not being worked on. */
gboolean import_shows_table (const ImportFixture *fixture);
/* Leaves pictures of it, as support_picture(). */
void import_picture (const ImportFixture *fixture, const char *name);

/* A widget of its template, and the text of a label among them. */
gpointer import_child (const ImportFixture *fixture, const char *name);
const char *import_words (const ImportFixture *fixture, const char *name);

/* The columns of the preview. */
enum
{
  IMPORT_LINE,
  IMPORT_OUTCOME,
  IMPORT_FIRST /* of the table's own columns */
};

GtkWidget *import_list (const ImportFixture *fixture);
guint import_n_rows (const ImportFixture *fixture);
/* The text of a cell in the @row that is shown as the nth from the top. */
const char *import_cell_text (const ImportFixture *fixture, guint row, guint column);
/* TRUE if the row is marked as refused. */
gboolean import_is_marked (const ImportFixture *fixture, guint row);

/* The head of the table's nth column, and what is chosen in it; the unit is NULL where there is none to choose. */
GbImportHead *import_head (const ImportFixture *fixture, guint column);
const char *import_field_of (const ImportFixture *fixture, guint column);
const char *import_unit_of (const ImportFixture *fixture, guint column);
/* Choose by label, and wait until the table shows it. */
void import_choose_field (const ImportFixture *fixture, guint column, const char *label);
void import_choose_unit (const ImportFixture *fixture, guint column, const char *unit);
/* Chooses, and does not wait. */
void import_choose (GtkDropDown *drop_down, const char *text);
/* Opens the list of the drop-down that has the focus, and waits until it takes the keys. */
void import_open_list (const ImportFixture *fixture, GtkDropDown *drop_down);
guint import_n_listed (GtkDropDown *drop_down);

G_END_DECLS
