/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "document.h"

#include <pango/pangocairo.h>

G_BEGIN_DECLS

/* The page that is being filled, from top to bottom. Lengths are points (1/72 inch). All pages are gone
 * through twice: once to count them, without a cairo_t, and once to draw. */

typedef enum
{
  GB_PDF_TITLE,
  GB_PDF_HEADING,
  GB_PDF_BODY,
  GB_PDF_BOLD,
  GB_PDF_SMALL,
  GB_PDF_FIGURE, /* a fact's value */
  GB_N_PDF_FONTS
} GbPdfFont;

/* Greys, from 0, black, to 1. The quiet one has a contrast of 6.5 : 1 against white. */
#define GB_PDF_DARK 0.1
#define GB_PDF_QUIET 0.38
#define GB_PDF_HAIR 0.8

typedef struct _GbPdfTable GbPdfTable;

typedef struct
{
  const GbDocument *document;
  cairo_t *cr;         /* NULL while the pages are counted */
  GPtrArray *recordings; /* (element-type cairo_surface_t) a page each is drawn into these; NULL: onto cr */
  PangoLayout *layout; /* used again for every text */
  PangoFontDescription *fonts[GB_N_PDF_FONTS];
  double width, height; /* of the paper */
  double left, right;   /* of the text */
  double top, bottom;   /* of the text on this page */
  double y;             /* where the next thing goes */
  guint page, n_pages;  /* from 1 */
  GPtrArray *tables;    /* (element-type GbPdfTable) as the document's */
} GbPdfFlow;

/* Goes on to the next page unless @height is still free on this one. */
void gb_pdf_need (GbPdfFlow *flow, double height);
void gb_pdf_new_page (GbPdfFlow *flow);

/* Sets the flow's layout up: @text in @font, wrapped to @width (below 0: one line). Gives its height. What is
 * higher than a whole page ends in an ellipsis. */
double gb_pdf_text (GbPdfFlow *flow, GbPdfFont font, const char *text, double width, PangoAlignment align);
/* Shows what was set up with its upper left corner there, in a grey from 0, black, to 1. */
void gb_pdf_show (GbPdfFlow *flow, double x, double y, double grey);
void gb_pdf_rule (GbPdfFlow *flow, double x, double y, double width, double thickness, double grey);

/* Measures @table for the width of the flow: its columns, and the height of each row. */
GbPdfTable *gb_pdf_table_new (GbPdfFlow *flow, const GbTable *table);
void gb_pdf_table_free (GbPdfTable *table);
void gb_pdf_table_draw (const GbPdfTable *table);

G_END_DECLS
