/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

/* Charts as files. The same chart gives the same bytes each time: nothing of the clock or of the machine goes
 * in. A picture is made in memory and written at once, so that a full disk leaves the old file as it was. */

#include "chart-private.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

G_DEFINE_QUARK (gb - chart - error - quark, gb_chart_error)

#define PNG_SCALE 2
#define LARGEST 8192.0 /* points */

static cairo_status_t
append (void *bytes, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (bytes, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static void
draw_and_finish (GbChart *chart, cairo_surface_t *surface, double width, double height, GbChartStyle style)
{
  cairo_t *cr = cairo_create (surface);

  gb_chart_draw_alone (chart, cr, width, height, style, TRUE);
  cairo_show_page (cr);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
}

static cairo_status_t
make_png (GbChart *chart, GByteArray *bytes, double width, double height, GbChartStyle style)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) ceil (width * PNG_SCALE),
                                                         (int) ceil (height * PNG_SCALE));
  cairo_t *cr = cairo_create (surface);
  cairo_status_t status;

  cairo_scale (cr, PNG_SCALE, PNG_SCALE);
  gb_chart_draw_alone (chart, cr, width, height, style, TRUE);
  cairo_destroy (cr);
  status = cairo_surface_write_to_png_stream (surface, append, bytes);
  cairo_surface_destroy (surface);
  return status;
}

static cairo_status_t
make_pdf (GbChart *chart, GByteArray *bytes, double width, double height, GbChartStyle style)
{
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (append, bytes, width, height);
  cairo_status_t status;

  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, gb_chart_title (chart));
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_SUBJECT, gb_chart_description (chart));
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, "Garboard");
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, "");
  draw_and_finish (chart, surface, width, height, style);
  status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  return status;
}

/* cairo writes no title into an SVG: it goes in after the opening tag, where readers of every sort look for
 * it. And it numbers the picture by how many there were before it. */
static void
finish_svg (GbChart *chart, GByteArray *bytes)
{
  g_autoptr (GString) svg = g_string_new_len ((const char *) bytes->data, bytes->len);
  g_autofree char *words = g_markup_printf_escaped ("\n<title>%s</title>\n<desc>%s</desc>",
                                                    gb_chart_title (chart), gb_chart_description (chart));
  const char *number = strstr (svg->str, "id=\"surface"), *tag;

  if (number != NULL)
    {
      number += strlen ("id=\"surface");
      g_string_erase (svg, number - svg->str, (gssize) strspn (number, "0123456789"));
    }
  tag = strstr (svg->str, "<svg");
  tag = tag != NULL ? strchr (tag, '>') : NULL;
  if (tag != NULL)
    g_string_insert (svg, tag + 1 - svg->str, words);
  g_byte_array_set_size (bytes, 0);
  g_byte_array_append (bytes, (const guint8 *) svg->str, (guint) svg->len);
}

static cairo_status_t
make_svg (GbChart *chart, GByteArray *bytes, double width, double height, GbChartStyle style)
{
  cairo_surface_t *surface = cairo_svg_surface_create_for_stream (append, bytes, width, height);
  cairo_status_t status;

  draw_and_finish (chart, surface, width, height, style);
  status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    finish_svg (chart, bytes);
  return status;
}

static const struct
{
  const char *name;
  cairo_status_t (*make) (GbChart *chart, GByteArray *bytes, double width, double height, GbChartStyle style);
} formats[] = { { "png", make_png }, { "svg", make_svg }, { "pdf", make_pdf } };

gboolean
gb_chart_export (GbChart *chart,
                 const char *path,
                 const char *format,
                 double width,
                 double height,
                 GbChartStyle style,
                 GError **error)
{
  g_return_val_if_fail (chart != NULL && path != NULL && format != NULL, FALSE);

  if (!(width >= 1 && width <= LARGEST && height >= 1 && height <= LARGEST))
    {
      g_set_error (error, GB_CHART_ERROR, GB_CHART_ERROR_SIZE,
                   _ ("A picture may be 1 to %.0f points wide and high."), LARGEST);
      return FALSE;
    }
  for (guint i = 0; i < G_N_ELEMENTS (formats); i++)
    if (g_strcmp0 (formats[i].name, format) == 0)
      {
        g_autoptr (GByteArray) bytes = g_byte_array_new ();
        cairo_status_t status = formats[i].make (chart, bytes, width, height, style);

        if (status == CAIRO_STATUS_SUCCESS)
          return g_file_set_contents (path, (const char *) bytes->data, bytes->len, error);
        g_set_error (error, GB_CHART_ERROR, GB_CHART_ERROR_FAILED, _ ("The picture could not be made: %s."),
                     cairo_status_to_string (status));
        return FALSE;
      }
  g_set_error (error, GB_CHART_ERROR, GB_CHART_ERROR_FORMAT,
               _ ("“%s” is no picture format: use png, svg or pdf."), format);
  return FALSE;
}
