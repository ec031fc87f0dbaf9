/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "project/project.h"

G_BEGIN_DECLS

/* What may be picked for a field: the labels of its choices, the records that it may refer to, and for
 * materials those of the catalogue that are not in the build yet. */

typedef struct
{
  char *text; /* what goes into the entry */
  char *note; /* a quiet word beside it, or NULL */
  gint64 id;  /* of the record, or the index of the choice; 0 for what is not in the build yet */
  GbRecordKind kind; /* of the record; GB_N_RECORDS for the choices of a field */
} GbChoiceItem;

GbChoiceItem *gb_choice_item_new (const char *text, const char *note, GbRecordKind kind, gint64 id);
void gb_choice_item_free (GbChoiceItem *item);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbChoiceItem, gb_choice_item_free)

/* TRUE if @field is picked from a list. */
gboolean gb_field_has_choices (const GbField *field);

/* (element-type GbChoiceItem) (transfer full): in the field's own order, records in the build's, then the
 * catalogue's. */
GPtrArray *gb_choices_for_field (GbProject *project, const GbField *field);
/* Appends the records of @kind to @choices. */
void gb_choices_add_records (GPtrArray *choices, GbProject *project, GbRecordKind kind);

/* Those of @choices that fit what was typed, best first: those that start with it, then those with a word
 * that starts with it, then those that hold it anywhere; whatever the case. All of them for an empty text.
 * Borrowed items in a new array. */
GPtrArray *gb_choices_match (const GPtrArray *choices, const char *typed);

/* The only one whose text is @typed, whatever the case; NULL if there is none, or several. Borrowed. */
const GbChoiceItem *gb_choices_find (const GPtrArray *choices, const char *typed);

G_END_DECLS
