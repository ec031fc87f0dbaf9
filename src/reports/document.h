/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/fields.h"

G_BEGIN_DECLS

/* A report as a plain document, before it has a format: title, facts, paragraphs, tables, notes and cautions.
 * The reports (parts.c, weights.c, ...) fill it, the writers (write-*.c) turn it into bytes. Values stay SI
 * numbers until a writer shows them; all words in it are translated but for the keys, which the JSON form is
 * made of and which never change. What is not UTF-8, and control characters, are made harmless as they come
 * in, once for all formats. */

typedef enum
{
  GB_CELL_TEXT,
  GB_CELL_QUANTITY, /* SI, with a dimension */
  GB_CELL_MOMENT,   /* kg m: mass times arm, which is no field's dimension */
  GB_CELL_MONEY,    /* minor units */
  GB_CELL_DATE,     /* Julian day */
} GbCellKind;

typedef enum
{
  GB_COLUMN_DATA = 1 << 0,  /* for machines and spreadsheets; text and PDF leave it out */
  GB_COLUMN_WIDE = 1 << 1,  /* gives way, by wrapping, where a page is too narrow */
  GB_COLUMN_ROUGH = 1 << 2, /* print shows two figures: a deviation is not known better than that */
} GbColumnFlags;

typedef struct
{
  const char *key;     /* static; "mass": the unit is added where it is written */
  const char *heading; /* static, untranslated: N_() */
  GbCellKind kind;
  GbDimension dim; /* of a quantity */
  guint flags;
} GbColumn;

/* A text may carry a code: the untranslated word that stands for it in the JSON form. */
typedef struct
{
  char *text;       /* NULL: nothing to say */
  const char *code; /* static, or NULL */
  double value;
  gint64 amount;  /* money or date */
  gboolean blank; /* without a meaning in this row, which is not the same as unknown */
} GbCell;

typedef enum
{
  GB_ROW_NORMAL,
  GB_ROW_GROUP,    /* a heading of what follows, with its sum */
  GB_ROW_SUBTOTAL, /* a sum of what stands above */
  GB_ROW_TOTAL,
} GbRowKind;

typedef struct
{
  GbRowKind kind;
  guint depth;   /* how far the first cell is indented */
  GArray *cells; /* of GbCell, one for each column */
} GbRow;

typedef struct
{
  const char *key;   /* static */
  const char *title; /* static, untranslated: N_() */
  const GbColumn *columns;
  guint n_columns;
  GPtrArray *rows; /* (element-type GbRow) */
} GbTable;

/* One figure with a name. */
typedef struct
{
  GbColumn column; /* its heading is the label */
  GbCell cell;
  char *shown; /* what print says instead of the bare figure: "31.4 kg ± 1.2 kg"; or NULL */
} GbFact;

typedef struct
{
  const char *kind; /* static: "weights" */
  char *title;      /* "Weight statement" */
  char *name;       /* of the build */
  char *currency;
  GbUnits units;
  gint64 date; /* Julian day */
  gboolean landscape;
  GPtrArray *facts;      /* (element-type GbFact) */
  GPtrArray *warnings;   /* (element-type utf8) limits that are passed */
  GPtrArray *paragraphs; /* (element-type utf8) what else the reader must know first */
  GPtrArray *tables;     /* (element-type GbTable) */
  GPtrArray *notes;      /* (element-type utf8) explanations, after the tables */
  GPtrArray *cautions;   /* (element-type utf8) */
} GbDocument;

GbDocument *gb_document_new (const char *kind, const char *title, const GbBuild *build, gint64 date);
void gb_document_free (GbDocument *document);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbDocument, gb_document_free)

/* Each of these takes its text. */
void gb_document_warn (GbDocument *document, char *warning);
void gb_document_say (GbDocument *document, char *paragraph);
void gb_document_note (GbDocument *document, char *note);
/* The text is copied. */
void gb_document_caution (GbDocument *document, const char *caution);

/* Adds a fact. @shown is taken and may be NULL. */
void gb_document_fact (GbDocument *document,
                       const char *key,
                       const char *label,
                       GbDimension dim,
                       double value,
                       char *shown);
void gb_document_fact_money (GbDocument *document, const char *key, const char *label, gint64 amount);
/* @text is taken. */
void gb_document_fact_text (GbDocument *document, const char *key, const char *label, char *text);

/* Adds a table; @columns must outlive the document. The table stays the document's. */
GbTable *gb_document_table (GbDocument *document,
                            const char *key,
                            const char *title,
                            const GbColumn *columns,
                            guint n_columns);
/* For a report of which most may be missing. */
void gb_document_drop_empty_tables (GbDocument *document);

/* A row is begun, and then filled from the left by as many cells as there are columns. */
void gb_table_row (GbTable *table, GbRowKind kind, guint depth);
/* Copied; NULL: empty. */
void gb_table_text (GbTable *table, const char *text);
void gb_table_choice (GbTable *table, const GbField *field, gint64 choice);
void gb_table_coded (GbTable *table, const char *text, const char *code);
void gb_table_number (GbTable *table, double value); /* a quantity or a moment; NAN: unknown */
void gb_table_money (GbTable *table, gint64 amount); /* GB_MONEY_UNKNOWN: unknown */
void gb_table_date (GbTable *table, gint64 date);    /* 0: unknown */
/* Leaves the next @n cells blank. */
void gb_table_skip (GbTable *table, guint n);

const GbCell *gb_row_cell (const GbRow *row, guint column);
/* TRUE if it should hold something and that is not known; a text may be empty. */
gboolean gb_cell_is_unknown (const GbColumn *column, const GbCell *cell);
/* TRUE for what is aligned to the right. */
gboolean gb_column_is_number (const GbColumn *column);

/* The unit that print, CSV and workbook give the numbers in, as written on screen; "" where there is none.
 * Borrowed. */
const char *gb_column_unit (const GbDocument *document, const GbColumn *column);
/* The heading with that unit: "Mass (kg)". Free it. */
char *gb_column_heading (const GbDocument *document, const GbColumn *column);
/* As people read it, without the unit: an en dash where it is unknown, "" where it is blank. Free it. */
char *gb_cell_show (const GbDocument *document, const GbColumn *column, const GbCell *cell);
/* How many characters stand from the decimal sign on in that column's longest tail, so that decimal signs can
 * stand below each other. */
guint gb_column_tail (const GbDocument *document, const GbTable *table, guint column);
/* As gb_cell_show(), but a number whose tail is shorter gets spaces as wide as digits and points after it.
 * Free it. */
char *
gb_cell_show_aligned (const GbDocument *document, const GbColumn *column, const GbCell *cell, guint tail);
/* A fact with its unit. Free it. */
char *gb_fact_show (const GbDocument *document, const GbFact *fact);
/* The number in the heading's unit, for a file: NAN where there is none. Money in major units. */
double gb_cell_number (const GbDocument *document, const GbColumn *column, const GbCell *cell);

G_END_DECLS
