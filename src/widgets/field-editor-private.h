/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "field-editor.h"

#include "complaint.h"
#include "completion.h"

G_BEGIN_DECLS

/* What the files of the field editor share: field-editor.c is the widget, field-editor-text.c edits what is
 * typed, field-editor-choice.c what is picked, ticked or drawn. */

struct _GbFieldEditor
{
  GtkWidget parent_instance;
  const GbField *field;
  GtkWidget *input;   /* entry, drop-down, check button, text view or button */
  GtkWidget *outside; /* child that holds it: itself, or a frame with scrollbars */
  GbCompletion *completion;
  GbComplaint *complaint;

  GbProject *project;
  GArray *ids;   /* of gint64 */
  char *shown;   /* the text as it was shown, so that only a change is kept */
  gboolean busy; /* the input is being filled, or its entry kept */
};

/* field-editor.c */
/* The first of the records, NULL if there are none. */
const GbRecord *gb_field_editor_first (GbFieldEditor *self);
/* TRUE if the records do not all hold the same. */
gboolean gb_field_editor_is_mixed (GbFieldEditor *self);
void gb_field_editor_complain (GbFieldEditor *self, const char *sentence);

/* field-editor-text.c */
void gb_field_editor_make_text (GbFieldEditor *self);
void gb_field_editor_show_text (GbFieldEditor *self);
gboolean gb_field_editor_is_half_typed (GbFieldEditor *self); /* FALSE too where nothing is typed */
/* Enters @text into the records. FALSE if it is refused. */
gboolean gb_field_editor_keep (GbFieldEditor *self, const char *text);

/* field-editor-choice.c */
void gb_field_editor_make_choice (GbFieldEditor *self); /* for choices, flags and outlines */
void gb_field_editor_show_choice (GbFieldEditor *self);

G_END_DECLS
