/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-command-line"

#include "command-line-private.h"

#include "charts/chart.h"
#include "project/project.h"
#include "reports/report.h"

#include <glib/gi18n-lib.h>
#include <string.h>
#include <unistd.h>

static const char *const chart_formats[] = { "text", "svg", "png", "pdf", NULL };

char *
gb_command_report_kinds (void)
{
  GString *kinds = g_string_new (NULL);

  for (guint i = 0; i < GB_N_REPORTS; i++)
    g_string_append_printf (kinds, "%s%s", i > 0 ? ", " : "", gb_report_kind_name (i));
  for (guint i = 0; i < GB_N_CHARTS; i++)
    g_string_append_printf (kinds, ", %s", gb_chart_kind_name (i));
  return g_string_free (kinds, FALSE);
}

/* What --format says, else the ending of --output, else "text" or, for a chart, "svg". Free it. */
static char *
wanted_format (GHashTable *options, gboolean is_chart)
{
  const char *format = g_hash_table_lookup (options, "format");
  const char *output = g_hash_table_lookup (options, "output");
  const char *dot = output != NULL ? strrchr (output, '.') : NULL;

  if (format != NULL)
    return g_strdup (format);
  if (dot != NULL && dot[1] != '\0' && strchr (dot, G_DIR_SEPARATOR) == NULL)
    return strcmp (dot, ".txt") == 0 ? g_strdup ("text") : g_ascii_strdown (dot + 1, -1);
  return g_strdup (is_chart ? "svg" : "text");
}

/* Bytes that are no text would upset a terminal. */
static gboolean
would_spoil_terminal (const char *format, const char *output)
{
  static const char *const binary[] = { "xlsx", "png", "pdf", NULL };

  return output == NULL && g_strv_contains (binary, format) && isatty (STDOUT_FILENO) != 0;
}

static GbExit
make_report (GbProject *project, GbReportKind kind, const char *format, GBytes **bytes)
{
  const GbBoat *boat = gb_project_get_boat (project);
  const GbFindings *findings = gb_project_get_findings (project);
  g_autoptr (GPtrArray) studies =
      gb_report_takes_studies (kind) ? gb_studies_find (boat, findings, NULL, NULL) : NULL;
  g_autoptr (GError) error = NULL;

  *bytes = gb_report_make (kind, (GbReportFormat) gb_report_format_by_name (format), boat, findings, studies,
                           gb_today (), &error);
  return *bytes != NULL ? GB_EXIT_DONE : gb_command_complain (GB_EXIT_FAULT, "%s", error->message);
}

/* --condition and --load belong to some charts. */
static gboolean
has_idle_option (const char *kind, int chart, GHashTable *options)
{
  static const char *const names[] = { "condition", "load" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    if (g_hash_table_contains (options, names[i]) && !gb_command_chart_takes (chart, names[i]))
      {
        gb_command_complain (GB_EXIT_USAGE, _ ("“%s” has no use for the option --%s; see garboard --help."),
                             kind, names[i]);
        return TRUE;
      }
  return FALSE;
}

GbExit
gb_command_report (GStrv words, GHashTable *options)
{
  int report = gb_report_kind_by_name (words[0]);
  int chart = gb_command_chart_by_name (words[0]);
  g_autofree char *format = wanted_format (options, chart >= 0);
  const char *output = g_hash_table_lookup (options, "output");
  g_autoptr (GbProject) project = NULL;
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GError) error = NULL;
  GbExit status;

  if (report < 0 && chart < 0)
    {
      g_autofree char *kinds = gb_command_report_kinds ();

      return gb_command_complain (GB_EXIT_USAGE, _ ("There is no report “%s”. There is: %s."), words[0],
                                  kinds);
    }
  if (report >= 0 ? gb_report_format_by_name (format) < 0 : !g_strv_contains (chart_formats, format))
    return gb_command_complain (GB_EXIT_USAGE, _ ("“%s” cannot be written as “%s”; see garboard --help."),
                                words[0], format);
  if (would_spoil_terminal (format, output))
    return gb_command_complain (
        GB_EXIT_USAGE, _ ("A file of the format “%s” is not for a terminal; say --output=FILE."), format);

  if (has_idle_option (words[0], chart, options))
    return GB_EXIT_USAGE;

  project = gb_project_open (words[1], TRUE, &error);
  if (project == NULL)
    return gb_command_complain (GB_EXIT_FAULT, "%s", error->message);
  status = report >= 0 ? make_report (project, (GbReportKind) report, format, &bytes)
                       : gb_command_chart (project, chart, format, options, &bytes);
  if (status == GB_EXIT_DONE && !gb_command_write (output, bytes))
    status = GB_EXIT_FAULT;
  return status;
}
