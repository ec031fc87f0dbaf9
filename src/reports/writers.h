/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "document.h"
#include "report.h"

G_BEGIN_DECLS

/* One writer for each format: the bytes of a file. How each format shows the document stands at the top of
 * its write-*.c. */
GBytes *gb_write_text (const GbDocument *document);
GBytes *gb_write_csv (const GbDocument *document);
GBytes *gb_write_json (const GbDocument *document);
/* NULL with a sentence if there is no room for the temporary file that the workbook is put together in. */
GBytes *gb_write_xlsx (const GbDocument *document, GError **error);
GBytes *gb_write_pdf (const GbDocument *document, GError **error);

/* The same pages as in the PDF file. */
GbReportPages *gb_write_pages (const GbDocument *document);

G_END_DECLS
