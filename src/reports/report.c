/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-report"

#include "report.h"

#include "report-private.h"
#include "writers.h"

#include <glib/gi18n-lib.h>
#include <string.h>

G_DEFINE_QUARK (gb-report-error-quark, gb_report_error)

static const struct
{
  const char *name, *label;
  GbDocument *(*make) (const GbBoat *boat, const GbFindings *findings, gint64 today);
  GbDocument *(*make_with) (const GbBoat *boat, const GbFindings *findings, const GPtrArray *studies, gint64 today);
} kinds[GB_N_REPORTS] = {
  [GB_REPORT_PARTS] = { "parts", N_ ("Parts list"), gb_parts_document },
  [GB_REPORT_WEIGHTS] = { "weights", N_ ("Weight statement"), gb_weights_document },
  [GB_REPORT_MATERIALS] = { "materials", N_ ("Materials"), gb_materials_document },
  [GB_REPORT_PURCHASES] = { "purchases", N_ ("Purchases"), gb_purchases_document },
  [GB_REPORT_MONEY] = { "money", N_ ("Money"), gb_money_document },
  [GB_REPORT_AFLOAT] = { "afloat", N_ ("Afloat"), NULL, gb_afloat_document },
};

static const struct
{
  const char *name, *ending, *type;
} formats[GB_N_FORMATS] = {
  [GB_FORMAT_TEXT] = { "text", "txt", "text/plain" },
  [GB_FORMAT_CSV] = { "csv", "csv", "text/csv" },
  [GB_FORMAT_JSON] = { "json", "json", "application/json" },
  [GB_FORMAT_XLSX] = { "xlsx", "xlsx", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet" },
  [GB_FORMAT_PDF] = { "pdf", "pdf", "application/pdf" },
};

const char *
gb_report_kind_name (GbReportKind kind)
{
  g_return_val_if_fail (kind < GB_N_REPORTS, NULL);
  return kinds[kind].name;
}

const char *
gb_report_kind_label (GbReportKind kind)
{
  g_return_val_if_fail (kind < GB_N_REPORTS, NULL);
  return _ (kinds[kind].label);
}

int
gb_report_kind_by_name (const char *name)
{
  for (int i = 0; i < GB_N_REPORTS; i++)
    if (strcmp (kinds[i].name, name) == 0)
      return i;
  return -1;
}

const char *
gb_report_format_name (GbReportFormat format)
{
  g_return_val_if_fail (format < GB_N_FORMATS, NULL);
  return formats[format].name;
}

int
gb_report_format_by_name (const char *name)
{
  for (int i = 0; i < GB_N_FORMATS; i++)
    if (strcmp (formats[i].name, name) == 0)
      return i;
  return -1;
}

const char *
gb_report_format_ending (GbReportFormat format)
{
  g_return_val_if_fail (format < GB_N_FORMATS, NULL);
  return formats[format].ending;
}

const char *
gb_report_format_type (GbReportFormat format)
{
  g_return_val_if_fail (format < GB_N_FORMATS, NULL);
  return formats[format].type;
}

gboolean
gb_report_takes_studies (GbReportKind kind)
{
  g_return_val_if_fail (kind < GB_N_REPORTS, FALSE);
  return kinds[kind].make_with != NULL;
}

static GbDocument *
make_document (GbReportKind kind, const GbBoat *boat, const GbFindings *findings, const GPtrArray *studies, gint64 today)
{
  if (kinds[kind].make_with != NULL)
    return kinds[kind].make_with (boat, findings, studies, today);
  return kinds[kind].make (boat, findings, today);
}

GBytes *
gb_report_make (GbReportKind kind,
                GbReportFormat format,
                const GbBoat *boat,
                const GbFindings *findings,
                const GPtrArray *studies,
                gint64 today,
                GError **error)
{
  g_autoptr (GbDocument) document = NULL;

  g_return_val_if_fail (kind < GB_N_REPORTS && format < GB_N_FORMATS, NULL);

  document = make_document (kind, boat, findings, studies, today);
  switch (format)
    {
    case GB_FORMAT_CSV:
      return gb_write_csv (document);
    case GB_FORMAT_JSON:
      return gb_write_json (document);
    case GB_FORMAT_XLSX:
      return gb_write_xlsx (document, error);
    case GB_FORMAT_PDF:
      return gb_write_pdf (document, error);
    case GB_FORMAT_TEXT:
    default:
      return gb_write_text (document);
    }
}

GbReportPages *
gb_report_pages_new (GbReportKind kind,
                     const GbBoat *boat,
                     const GbFindings *findings,
                     const GPtrArray *studies,
                     gint64 today)
{
  g_autoptr (GbDocument) document = NULL;

  g_return_val_if_fail (kind < GB_N_REPORTS, NULL);
  document = make_document (kind, boat, findings, studies, today);
  return gb_write_pages (document);
}
