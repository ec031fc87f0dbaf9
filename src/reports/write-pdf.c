/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-write-pdf"

/* A report for paper: A4, or Letter where the build is in feet and inches. The first page opens with title,
 * facts and caution; every page names the build and the report at its top, and the date, the page and again
 * the caution at its foot. Texts wrap, nothing is cut.
 *
 * The pages of a printer are the same ones, recorded.
 *
 * The pages are gone through twice, because "page 1 of 7" needs the 7 first. Dates in the file are the
 * report's, so that the same report gives the same bytes. */

#include "pdf-private.h"
#include "report.h"
#include "writers.h"

#include <cairo-pdf.h>
#include <glib/gi18n-lib.h>

#define MARGIN_SIDE 45
#define MARGIN_TOP 40
#define MARGIN_FOOT 34
#define LINE_GAP 3
#define BAR_INDENT 12

static const char *const font_names[GB_N_PDF_FONTS] = {
  [GB_PDF_TITLE] = "Sans Bold 19", [GB_PDF_HEADING] = "Sans Bold 11", [GB_PDF_BODY] = "Sans 8.5",
  [GB_PDF_BOLD] = "Sans Bold 8.5", [GB_PDF_SMALL] = "Sans 7.5",       [GB_PDF_FIGURE] = "Sans 10.5",
};

/* Drawing ----------------------------------------------------------------------------------------------------------- */

double
gb_pdf_text (GbPdfFlow *flow, GbPdfFont font, const char *text, double width, PangoAlignment align)
{
  int height;

  pango_layout_set_font_description (flow->layout, flow->fonts[font]);
  pango_layout_set_width (flow->layout, width < 0 ? -1 : (int) (width * PANGO_SCALE));
  pango_layout_set_height (flow->layout, (int) ((flow->bottom - flow->top) * PANGO_SCALE * 0.8));
  pango_layout_set_alignment (flow->layout, align);
  pango_layout_set_text (flow->layout, text, -1);
  pango_layout_get_size (flow->layout, NULL, &height);
  return (double) height / PANGO_SCALE;
}

void
gb_pdf_show (GbPdfFlow *flow, double x, double y, double grey)
{
  if (flow->cr == NULL)
    return;
  cairo_set_source_rgb (flow->cr, grey, grey, grey);
  cairo_move_to (flow->cr, x, y);
  pango_cairo_show_layout (flow->cr, flow->layout);
}

static void
fill_box (GbPdfFlow *flow, double x, double y, double width, double height, double grey)
{
  if (flow->cr == NULL)
    return;
  cairo_set_source_rgb (flow->cr, grey, grey, grey);
  cairo_rectangle (flow->cr, x, y, width, height);
  cairo_fill (flow->cr);
}

void
gb_pdf_rule (GbPdfFlow *flow, double x, double y, double width, double thickness, double grey)
{
  fill_box (flow, x, y - thickness / 2, width, thickness, grey);
}

/* Pages ------------------------------------------------------------------------------------------------------------- */

static double
text_width (const GbPdfFlow *flow)
{
  return flow->right - flow->left;
}

/* All cautions as one text; NULL if there are none. */
static char *
join_cautions (const GbDocument *document)
{
  g_autoptr (GString) all = g_string_new (NULL);

  for (guint i = 0; i < document->cautions->len; i++)
    g_string_append_printf (all, "%s%s", i > 0 ? " " : "", (char *) document->cautions->pdata[i]);
  return all->len > 0 ? g_string_free (g_steal_pointer (&all), FALSE) : NULL;
}

/* One line that holds @left and @right; the left one gives way with an ellipsis. */
static void
draw_line_of_two (GbPdfFlow *flow, GbPdfFont font, const char *left, const char *right, double y)
{
  int width;

  gb_pdf_text (flow, font, right, -1, PANGO_ALIGN_LEFT);
  pango_layout_get_size (flow->layout, &width, NULL);
  gb_pdf_show (flow, flow->right - (double) width / PANGO_SCALE, y, GB_PDF_QUIET);
  gb_pdf_text (flow, font, left, text_width (flow) - (double) width / PANGO_SCALE - 12, PANGO_ALIGN_LEFT);
  pango_layout_set_height (flow->layout, -1); /* one line */
  gb_pdf_show (flow, flow->left, y, GB_PDF_QUIET);
}

static void
draw_header (GbPdfFlow *flow)
{
  flow->top = MARGIN_TOP;
  flow->bottom = flow->height - MARGIN_FOOT;
  draw_line_of_two (flow, GB_PDF_SMALL, flow->document->name, flow->document->title, MARGIN_TOP);
  flow->top = MARGIN_TOP + 16;
  gb_pdf_rule (flow, flow->left, flow->top, text_width (flow), 0.5, GB_PDF_QUIET);
  flow->top += 12;
}

/* From the foot upwards, so that the text ends above it. */
static void
draw_footer (GbPdfFlow *flow)
{
  g_autofree char *date = gb_cell_show (flow->document, &(GbColumn){ .kind = GB_CELL_DATE },
                                        &(GbCell){ .amount = flow->document->date });
  /* Translators: at the foot of a printed page: "page 2 of 7". */
  g_autofree char *page = g_strdup_printf (_ ("page %u of %u"), flow->page, flow->n_pages);
  g_autofree char *caution = join_cautions (flow->document);
  double line = flow->height - MARGIN_FOOT - 10;

  draw_line_of_two (flow, GB_PDF_SMALL, date, page, line);
  if (caution != NULL)
    {
      double height = gb_pdf_text (flow, GB_PDF_SMALL, caution, text_width (flow), PANGO_ALIGN_LEFT);

      line -= height + 2;
      gb_pdf_show (flow, flow->left, line, GB_PDF_QUIET);
    }
  line -= 6;
  gb_pdf_rule (flow, flow->left, line, text_width (flow), 0.5, GB_PDF_QUIET);
  flow->bottom = line - 10;
}

/* For a page that is drawn later, perhaps out of turn. */
static cairo_t *
start_recording (GbPdfFlow *flow)
{
  const cairo_rectangle_t paper = { 0, 0, flow->width, flow->height };
  cairo_surface_t *recording = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, &paper);

  g_ptr_array_add (flow->recordings, recording);
  return cairo_create (recording);
}

static void
begin_page (GbPdfFlow *flow)
{
  flow->page++;
  if (flow->recordings != NULL)
    flow->cr = start_recording (flow);
  draw_header (flow);
  draw_footer (flow);
  flow->y = flow->top;
}

static void
end_page (GbPdfFlow *flow)
{
  if (flow->recordings != NULL)
    g_clear_pointer (&flow->cr, cairo_destroy);
  else if (flow->cr != NULL)
    cairo_show_page (flow->cr);
}

void
gb_pdf_new_page (GbPdfFlow *flow)
{
  end_page (flow);
  begin_page (flow);
}

void
gb_pdf_need (GbPdfFlow *flow, double height)
{
  if (flow->y + height > flow->bottom && flow->y > flow->top)
    gb_pdf_new_page (flow);
}

/* The document's pieces --------------------------------------------------------------------------------------------- */

static void
draw_paragraph (GbPdfFlow *flow, GbPdfFont font, const char *text, double indent, double grey)
{
  double height = gb_pdf_text (flow, font, text, text_width (flow) - indent, PANGO_ALIGN_LEFT);

  gb_pdf_need (flow, height);
  /* The new page's header and footer used the layout. */
  gb_pdf_text (flow, font, text, text_width (flow) - indent, PANGO_ALIGN_LEFT);
  gb_pdf_show (flow, flow->left + indent, flow->y, grey);
  flow->y += height + LINE_GAP;
}

static void
draw_title (GbPdfFlow *flow)
{
  draw_paragraph (flow, GB_PDF_TITLE, flow->document->title, 0, GB_PDF_DARK);
  draw_paragraph (flow, GB_PDF_HEADING, flow->document->name, 0, GB_PDF_QUIET);
  flow->y += 10;
}

/* Label above value, in as many columns as the page is wide for; five go into one row anyway. */
static void
draw_facts (GbPdfFlow *flow)
{
  const GPtrArray *facts = flow->document->facts;
  guint n_columns = flow->document->landscape || facts->len == 5 ? 5 : 4;
  double cell = text_width (flow) / n_columns;

  for (guint i = 0; i < facts->len; i += n_columns)
    {
      double highest = 0;

      gb_pdf_need (flow, 40);
      gb_pdf_rule (flow, flow->left, flow->y, text_width (flow), 0.4, GB_PDF_HAIR);
      for (guint c = 0; c < n_columns && i + c < facts->len; c++)
        {
          const GbFact *fact = facts->pdata[i + c];
          g_autofree char *value = gb_fact_show (flow->document, fact);
          double x = flow->left + c * cell;
          double label
              = gb_pdf_text (flow, GB_PDF_SMALL, _ (fact->column.heading), cell - 8, PANGO_ALIGN_LEFT);

          gb_pdf_show (flow, x, flow->y + 5, GB_PDF_QUIET);
          highest
              = MAX (highest, label + gb_pdf_text (flow, GB_PDF_FIGURE, value, cell - 8, PANGO_ALIGN_LEFT));
          gb_pdf_show (flow, x, flow->y + 6 + label, GB_PDF_DARK);
        }
      flow->y += highest + 13;
    }
}

/* With a bar at its left that catches the eye. */
static void
draw_barred (GbPdfFlow *flow, GbPdfFont font, const char *text, double bar)
{
  double height = gb_pdf_text (flow, font, text, text_width (flow) - BAR_INDENT, PANGO_ALIGN_LEFT);

  gb_pdf_need (flow, height + 8);
  flow->y += 4;
  fill_box (flow, flow->left, flow->y, bar, height, GB_PDF_DARK);
  draw_paragraph (flow, font, text, BAR_INDENT, GB_PDF_DARK);
  flow->y += 4;
}

/* A limit that is passed. */
static void
draw_warning (GbPdfFlow *flow, const char *warning)
{
  draw_barred (flow, GB_PDF_BOLD, warning, 6);
}

/* Beside the figures. */
static void
draw_caution (GbPdfFlow *flow)
{
  g_autofree char *caution = join_cautions (flow->document);

  if (caution != NULL)
    draw_barred (flow, GB_PDF_BODY, caution, 2);
}

static void
draw_document (GbPdfFlow *flow)
{
  const GbDocument *document = flow->document;

  flow->page = 0;
  begin_page (flow);
  draw_title (flow);
  draw_facts (flow);
  for (guint i = 0; i < document->warnings->len; i++)
    draw_warning (flow, document->warnings->pdata[i]);
  draw_caution (flow);
  for (guint i = 0; i < document->paragraphs->len; i++)
    draw_paragraph (flow, GB_PDF_BODY, document->paragraphs->pdata[i], 0, GB_PDF_DARK);
  for (guint i = 0; i < flow->tables->len; i++)
    gb_pdf_table_draw (flow->tables->pdata[i]);
  flow->y += 10;
  for (guint i = 0; i < document->notes->len; i++)
    draw_paragraph (flow, GB_PDF_SMALL, document->notes->pdata[i], 0, GB_PDF_QUIET);
  end_page (flow);
}

/* The file ---------------------------------------------------------------------------------------------------------- */

static PangoLayout *
new_layout (void)
{
  PangoContext *context = pango_font_map_create_context (pango_cairo_font_map_get_default ());
  PangoLayout *layout = pango_layout_new (context);
  PangoAttrList *attributes = pango_attr_list_new ();
  cairo_font_options_t *options = cairo_font_options_create ();

  /* Letters keep their own widths at every size; digits stand in columns. */
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  pango_cairo_context_set_font_options (context, options);
  pango_cairo_context_set_resolution (context, 72);
  pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum=1"));
  pango_layout_set_attributes (layout, attributes);
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
  pango_attr_list_unref (attributes);
  cairo_font_options_destroy (options);
  g_object_unref (context);
  return layout;
}

static void
open_flow (GbPdfFlow *flow, const GbDocument *document)
{
  gboolean letter = document->units == GB_UNITS_FEET;
  double narrow = letter ? 612 : 595.276, wide = letter ? 792 : 841.89;

  flow->document = document;
  flow->width = document->landscape ? wide : narrow;
  flow->height = document->landscape ? narrow : wide;
  flow->left = MARGIN_SIDE;
  flow->right = flow->width - MARGIN_SIDE;
  flow->bottom = flow->height;
  flow->layout = new_layout ();
  for (guint i = 0; i < GB_N_PDF_FONTS; i++)
    flow->fonts[i] = pango_font_description_from_string (font_names[i]);
  flow->tables = g_ptr_array_new_with_free_func ((GDestroyNotify) gb_pdf_table_free);
  for (guint i = 0; i < document->tables->len; i++)
    g_ptr_array_add (flow->tables, gb_pdf_table_new (flow, document->tables->pdata[i]));
}

static void
close_flow (GbPdfFlow *flow)
{
  g_ptr_array_unref (flow->tables);
  for (guint i = 0; i < GB_N_PDF_FONTS; i++)
    pango_font_description_free (flow->fonts[i]);
  g_object_unref (flow->layout);
}

static void
set_metadata (cairo_surface_t *surface, const GbDocument *document)
{
  g_autofree char *day
      = gb_cell_show (document, &(GbColumn){ .kind = GB_CELL_DATE }, &(GbCell){ .amount = document->date });
  g_autofree char *stamp = g_strdup_printf ("%sT00:00:00Z", day);

  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, document->title);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_SUBJECT, document->name);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, "Garboard");
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, stamp);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_MOD_DATE, stamp);
}

static cairo_status_t
append_bytes (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

/* Draws everything into @bytes; FALSE if cairo fails. */
static gboolean
draw_pages (GbPdfFlow *flow, GByteArray *bytes)
{
  cairo_surface_t *surface
      = cairo_pdf_surface_create_for_stream (append_bytes, bytes, flow->width, flow->height);
  gboolean fine;

  set_metadata (surface, flow->document);
  flow->cr = cairo_create (surface);
  draw_document (flow);
  cairo_surface_finish (surface);
  fine = cairo_status (flow->cr) == CAIRO_STATUS_SUCCESS
         && cairo_surface_status (surface) == CAIRO_STATUS_SUCCESS;
  cairo_destroy (flow->cr);
  cairo_surface_destroy (surface);
  return fine;
}

GBytes *
gb_write_pdf (const GbDocument *document, GError **error)
{
  GByteArray *bytes = g_byte_array_new ();
  GbPdfFlow flow = { 0 };
  gboolean fine;

  open_flow (&flow, document);
  draw_document (&flow);
  flow.n_pages = flow.page;
  fine = draw_pages (&flow, bytes);
  close_flow (&flow);
  if (fine)
    return g_byte_array_free_to_bytes (bytes);
  g_byte_array_unref (bytes);
  g_set_error_literal (error, GB_REPORT_ERROR, 0,
                       _ ("The pages could not be drawn: there is too little memory."));
  return NULL;
}

/* For a printer ----------------------------------------------------------------------------------------------------- */

struct _GbReportPages
{
  GPtrArray *recordings; /* (element-type cairo_surface_t) */
  double width, height;
};

GbReportPages *
gb_write_pages (const GbDocument *document)
{
  GbReportPages *pages = g_new0 (GbReportPages, 1);
  GbPdfFlow flow = { 0 };

  pages->recordings = g_ptr_array_new_with_free_func ((GDestroyNotify) cairo_surface_destroy);
  open_flow (&flow, document);
  pages->width = flow.width;
  pages->height = flow.height;
  draw_document (&flow);
  flow.n_pages = flow.page;
  flow.recordings = pages->recordings;
  draw_document (&flow);
  close_flow (&flow);
  return pages;
}

void
gb_report_pages_free (GbReportPages *pages)
{
  g_ptr_array_unref (pages->recordings);
  g_free (pages);
}

guint
gb_report_pages_n (const GbReportPages *pages)
{
  return pages->recordings->len;
}

void
gb_report_pages_get_size (const GbReportPages *pages, double *width, double *height)
{
  *width = pages->width;
  *height = pages->height;
}

void
gb_report_pages_draw (GbReportPages *pages, guint index, cairo_t *cr)
{
  g_return_if_fail (index < pages->recordings->len);

  cairo_save (cr);
  cairo_set_source_surface (cr, pages->recordings->pdata[index], 0, 0);
  cairo_paint (cr);
  cairo_restore (cr);
}
