/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <glib.h>

#include "boat/boat.h"
#include "engine/findings.h"
#include "engine/history.h"
#include "engine/study.h"

G_BEGIN_DECLS

/* What leaves the program. A report is made from the boat and the findings as a document of tables and
 * paragraphs (document.h), and one writer for each format turns that into bytes. */

typedef enum
{
  GB_REPORT_PARTS,
  GB_REPORT_WEIGHTS, /* weight statement */
  GB_REPORT_MATERIALS,
  GB_REPORT_PURCHASES,
  GB_REPORT_MONEY,
  GB_REPORT_AFLOAT, /* how she floats in every condition, what turns her over, and swamped */
  GB_N_REPORTS
} GbReportKind;

typedef enum
{
  GB_FORMAT_TEXT,
  GB_FORMAT_CSV,
  GB_FORMAT_JSON,
  GB_FORMAT_XLSX,
  GB_FORMAT_PDF,
  GB_N_FORMATS
} GbReportFormat;

#define GB_REPORT_ERROR (gb_report_error_quark ())
GQuark gb_report_error_quark (void);

const char *gb_report_kind_name (GbReportKind kind);  /* "parts", "weights", ... */
const char *gb_report_kind_label (GbReportKind kind); /* translated */
int gb_report_kind_by_name (const char *name);        /* -1: none */
const char *gb_report_format_name (
    GbReportFormat format); /* "text", "csv", ...; also the file's ending, but "txt" for text */
int gb_report_format_by_name (const char *name);
const char *gb_report_format_ending (GbReportFormat format);
const char *gb_report_format_type (GbReportFormat format); /* MIME type */

/* TRUE if it tells more where the studies (gb_studies_find()) are there; the others have no use for them. */
gboolean gb_report_takes_studies (GbReportKind kind);

/* The report's bytes. @studies (element-type GbStudy) may be NULL: nothing that is dear is told then. @today is a Julian day, for
 * the footer. */
GBytes *gb_report_make (GbReportKind kind,
                        GbReportFormat format,
                        const GbBoat *boat,
                        const GbFindings *findings,
                        const GPtrArray *studies,
                        gint64 today,
                        GError **error);

/* A report as pages to draw: what the PDF file holds, for a printer. */
typedef struct _GbReportPages GbReportPages;

GbReportPages *gb_report_pages_new (GbReportKind kind,
                                    const GbBoat *boat,
                                    const GbFindings *findings,
                                    const GPtrArray *studies,
                                    gint64 today);
void gb_report_pages_free (GbReportPages *pages);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbReportPages, gb_report_pages_free)

guint gb_report_pages_n (const GbReportPages *pages);
/* Of the paper, in points (1/72 inch); the margins are within. */
void gb_report_pages_get_size (const GbReportPages *pages, double *width, double *height);
/* Draws the page @index (from 0) on @cr, whose unit is the point and whose origin is the corner of the paper. */
void gb_report_pages_draw (GbReportPages *pages, guint index, cairo_t *cr);

G_END_DECLS
