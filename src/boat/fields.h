/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "records.h"

G_BEGIN_DECLS

/* The field table: each field of each record, said once. Editing cells, unit entry and display, validation, CSV columns,
 * the text form, import mapping, the store's reading and writing, and undo's words all read it. */

typedef enum
{
  /* kept as text */
  GB_DIM_TEXT,    /* one line */
  GB_DIM_NOTE,    /* several lines */
  GB_DIM_OUTLINE, /* rings of points, see outline.h */
  /* kept as a whole number */
  GB_DIM_CHOICE,
  GB_DIM_FLAG,
  GB_DIM_REF, /* the id of another record */
  GB_DIM_DATE,
  GB_DIM_MONEY,
  /* kept as a real number, in SI */
  GB_DIM_COUNT,
  GB_DIM_RATIO,
  GB_DIM_LENGTH,
  GB_DIM_AREA,
  GB_DIM_VOLUME,
  GB_DIM_MASS,
  GB_DIM_DENSITY,
  GB_DIM_AREAL,  /* kg/m2 */
  GB_DIM_LINEAR, /* kg/m */
  GB_DIM_COVERAGE, /* m2 per m3 */
  GB_DIM_MOMENT,   /* kg m: a mass on an arm */
  GB_DIM_ANGLE,
  GB_DIM_TEMPERATURE, /* degrees Celsius */
  GB_DIM_SALINITY,    /* grams in a kilogram, as a plain number */
  GB_N_DIMS
} GbDimension;

typedef enum
{
  GB_STORAGE_TEXT,
  GB_STORAGE_INTEGER,
  GB_STORAGE_REAL,
} GbStorage;

typedef struct
{
  const char *name;  /* in the file and the text form */
  const char *label; /* untranslated; pass through _() */
} GbChoice;

typedef enum
{
  GB_FIELD_REQUIRED = 1 << 0,  /* a record without it is refused */
  GB_FIELD_ABOVE_MIN = 1 << 1, /* 'min' itself is not allowed */
} GbFieldFlags;

typedef struct
{
  GbRecordKind kind;
  const char *name; /* the key in the text form, the CSV heading's key and the column in the file */
  GbDimension dim;
  gsize offset; /* into the record's struct */
  const char *label;
  const char *help; /* one sentence: what to enter */
  double min, max;  /* in SI; money in minor units, dates in Julian days */
  double start;     /* what a new record holds; NAN: unknown */
  guint flags;
  const GbChoice *choices; /* ends with a NULL name */
  GbRecordKind refers_to;  /* for GB_DIM_REF */
  guint when;              /* bit mask over the values of the kind's 'switcher' field; 0: always shown */
} GbField;

typedef struct
{
  GbRecordKind kind;
  const char *name;   /* table in the file; key of the list in the text form */
  const char *label;  /* one of them, untranslated */
  const char *plural; /* several, untranslated */
  gsize size;         /* of the struct */
  GbRecordKind owner; /* the kind that it lives in; GB_N_RECORDS: none */
  const GbField *fields;
  guint n_fields;
  const char *switcher; /* name of the choice field that decides which others matter; NULL: none */
} GbRecordType;

/* Never NULL for a valid kind. */
const GbRecordType *gb_record_type (GbRecordKind kind);

/* The type whose table is called @name, or NULL. */
const GbRecordType *gb_record_type_by_name (const char *name);

/* The field called @name, or NULL. */
const GbField *gb_field_find (GbRecordKind kind, const char *name);

/* As gb_field_find(), for a name that is known to exist: aborts where it does not. */
const GbField *gb_field (GbRecordKind kind, const char *name);

GbStorage gb_field_storage (const GbField *field);

/* TRUE if @field matters for @record as its take-off or form stands. */
gboolean gb_field_applies (const GbField *field, const GbRecord *record);

/* The index of the choice called @name, or -1. */
int gb_field_choice (const GbField *field, const char *name);
guint gb_field_n_choices (const GbField *field);

/* The value in the record. The getter must fit the field's storage. */
double gb_field_get_real (const GbField *field, const GbRecord *record);
gint64 gb_field_get_integer (const GbField *field, const GbRecord *record);
const char *gb_field_get_text (const GbField *field, const GbRecord *record);

/* TRUE if the value is unknown (NAN, GB_MONEY_UNKNOWN, no date, no reference, no text). Choices and flags never are. */
gboolean gb_field_is_unknown (const GbField *field, const GbRecord *record);

/* These write into the struct only; the way of one edit is gb_project_set(). The text is copied; "" becomes NULL. */
void gb_field_set_real (const GbField *field, GbRecord *record, double value);
void gb_field_set_integer (const GbField *field, GbRecord *record, gint64 value);
void gb_field_set_text (const GbField *field, GbRecord *record, const char *value);

/* A value outside any record; what a field holds, or shall hold. */
typedef struct
{
  GbStorage storage;
  double real;
  gint64 integer;
  char *text;  /* owned */
  char *typed; /* owned; what was typed, where it is to be kept (NULL: not) */
} GbValue;

#define GB_VALUE_REAL(v) ((GbValue){ .storage = GB_STORAGE_REAL, .real = (v) })
#define GB_VALUE_INTEGER(v) ((GbValue){ .storage = GB_STORAGE_INTEGER, .integer = (v) })
#define GB_VALUE_TEXT(v) ((GbValue){ .storage = GB_STORAGE_TEXT, .text = g_strdup (v) })

void gb_value_clear (GbValue *value);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (GbValue, gb_value_clear)

/* TRUE if both records hold the same value (NAN equals NAN). */
gboolean gb_field_equal (const GbField *field, const GbRecord *a, const GbRecord *b);

/* Copies the value, with what was typed for it. Clear the result. */
GbValue gb_field_get (const GbField *field, const GbRecord *record);
/* Writes the value and what was typed for it into the struct. */
void gb_field_set (const GbField *field, GbRecord *record, const GbValue *value);
/* What stands for unknown in this field. */
GbValue gb_field_unknown (const GbField *field);

/* Refuses what @field cannot hold (not finite, out of range, no such choice, control characters, not UTF-8, too long)
 * with a sentence that names the field and says what is expected. References are only checked for sign. */
typedef enum
{
  GB_FIELD_ERROR_VALUE,
} GbFieldError;
#define GB_FIELD_ERROR (gb_field_error_quark ())
GQuark gb_field_error_quark (void);
gboolean gb_field_check (const GbField *field, const GbValue *value, GError **error);

/* A new record of @kind with every field at its start value; free with gb_record_free(). */
GbRecord *gb_record_new (GbRecordKind kind);
/* A deep copy; 'children' is not copied. */
GbRecord *gb_record_copy (const GbRecord *record);
/* Makes @to hold what @from holds (id, owner, position, all fields), leaving what GbBoat keeps in @to alone. */
void gb_record_assign (GbRecord *to, const GbRecord *from);
/* TRUE if id, owner, position, typed and all fields are the same (NAN equals NAN). */
gboolean gb_record_equal (const GbRecord *a, const GbRecord *b);
void gb_record_free (GbRecord *record);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbRecord, gb_record_free)

/* The record's name as a person would call it: its name, what a line is for, else the kind's label. Translated where it
 * is a label. Free it. */
char *gb_record_dup_title (const GbRecord *record);

/* What was typed for one field of a record, kept only where it says more than the number: its unit, a sum, a fraction.
 * The pieces of GbRecord.typed are lines "field=text", sorted. NULL if nothing is kept. Free the result. */
char *gb_typed_get (const GbRecord *record, const char *field);
void gb_typed_set (GbRecord *record, const char *field, const char *text);

G_END_DECLS
