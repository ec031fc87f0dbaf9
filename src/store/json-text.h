/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* JSON (RFC 8259) as a tree that knows the line of each value, so that whoever reads it can say where something is wrong. Strict: no
 * remarks, no commas too many, no numbers that JSON does not know. Keys are kept as they come, also one that comes twice. */
typedef enum
{
  GB_JSON_NULL,
  GB_JSON_FALSE,
  GB_JSON_TRUE,
  GB_JSON_NUMBER,
  GB_JSON_STRING,
  GB_JSON_ARRAY,
  GB_JSON_OBJECT,
} GbJsonType;

typedef struct
{
  GbJsonType type;
  guint line;       /* where it begins, counted from 1 */
  char *name;       /* its key, in an object */
  char *text;       /* what a string says, or a number as it is written */
  GPtrArray *items; /* of an array or an object */
} GbJson;

/* Deeper than this is refused: an array or object in another, and so on. */
#define GB_JSON_MAX_DEPTH 2002

/* NULL with GB_TEXT_FORM_ERROR_SYNTAX and a sentence that says the line. @text need not end in NUL. */
GbJson *gb_json_read (const char *text, gsize length, GError **error);
void gb_json_free (GbJson *json);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbJson, gb_json_free)

/* The first member called @name, or NULL. */
const GbJson *gb_json_find (const GbJson *object, const char *name);

/* @text as a JSON string, in quotes. */
void gb_json_append_string (GString *out, const char *text);
/* @value in as few digits as give it back to the last bit. */
void gb_json_append_number (GString *out, double value);

G_END_DECLS
