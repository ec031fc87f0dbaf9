/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/boat.h"

G_BEGIN_DECLS

/* The text form: a whole build as one JSON document that a person can read, diff and write by hand. The man page garboard(1)
 * documents it. Field names are those of the field table; a field that is at its start value is left out.
 *
 *   { "garboard": 1,
 *     "build": { "name": "Plover", "currency": "EUR", "freeboard": "150 mm" },
 *     "material": [ { "id": 1, "name": "okoume ply", "density": 450 } ],
 *     "part": [ { "id": 1, "name": "Hull", "kind": "group", "part": [ { "id": 2, "name": "Bottom", "material": 1, ... } ] } ],
 *     "purchase": [ { "date": "2026-03-14", "line": [ { "what": "6 mm sheet", "quantity": 2, "price": "28.40" } ] } ] }
 *
 * What lives in a record stands in it under its kind's name ("part" in "part", "station" and "opening" in "hull", "line" in "purchase"). Order is the order
 * of the list. Ids may be left out where nothing refers to the record; a reference is an id or the name of the record, where only one has it.
 * A quantity is an SI number or a text with a unit; money a text or number in major units; a date "YYYY-MM-DD"; a flag true or false.
 * A text is what may be typed into a cell, as long as it leaves no unit open: "1/4 in", "(2*1220-45) mm", but not "2*1220-45 mm".
 * Unknown is null where leaving the field out would mean its start value. A record's "position" is 1, 2, 3 and so on in its list
 * unless it says another, which must not be less than the one before. Groups may be nested a thousand deep.
 *
 * There and back gives the same build: ids, order, every value to the last bit (17 digits), what was typed. */

typedef enum
{
  GB_TEXT_FORM_ERROR_SYNTAX,
  GB_TEXT_FORM_ERROR_FIELD,
  GB_TEXT_FORM_ERROR_REFERENCE,
  GB_TEXT_FORM_ERROR_NEWER,
} GbTextFormError;
#define GB_TEXT_FORM_ERROR (gb_text_form_error_quark ())
GQuark gb_text_form_error_quark (void);

char *gb_text_form_write (const GbBoat *boat);

/* NULL with a sentence that says the line, the field and what was expected. @text need not end in NUL. */
GbBoat *gb_text_form_read (const char *text, gssize length, GError **error);

G_END_DECLS
