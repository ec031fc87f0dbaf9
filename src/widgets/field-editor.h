/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "project/project.h"

G_BEGIN_DECLS

/* Edits one field of one or several records outside a table: an entry that takes what a cell takes, with a
 * list to pick from for references, a drop-down for choices, a check button for flags, a text for notes, a
 * button with the drawing for outlines. An entry is kept at Enter or when the focus goes elsewhere; one that
 * is refused stays, with what is wrong below it; Escape takes it back. */
#define GB_TYPE_FIELD_EDITOR (gb_field_editor_get_type ())
G_DECLARE_FINAL_TYPE (GbFieldEditor, gb_field_editor, GB, FIELD_EDITOR, GtkWidget)

GtkWidget *gb_field_editor_new (const GbField *field);
const GbField *gb_field_editor_get_field (GbFieldEditor *self);

/* Shows what the records hold; where they differ it says so and an entry sets them all. No records: shows
 * nothing. What is half typed stays, unless other records are shown. */
void gb_field_editor_show (GbFieldEditor *self, GbProject *project, const gint64 *ids, guint n_ids);

/* Keeps what is typed. FALSE if it is refused. */
gboolean gb_field_editor_commit (GbFieldEditor *self);
/* What is wrong with the entry; NULL: nothing. */
const char *gb_field_editor_get_complaint (GbFieldEditor *self);
/* The widget that takes the input. */
GtkWidget *gb_field_editor_get_input (GbFieldEditor *self);

G_END_DECLS
