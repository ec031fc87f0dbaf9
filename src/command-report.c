/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-command-line"

#include "command-line-private.h"

#include "charts/chart.h"
#include "project/project.h"
#include "reports/report.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <math.h>
#include <string.h>
#include <unistd.h>

/* A chart's size, in points. */
#define CHART_WIDTH 800
#define CHART_HEIGHT 520

static const char *const chart_formats[] = { "text", "svg", "png", "pdf", NULL };

static int
chart_by_name (const char *name)
{
  for (guint i = 0; i < GB_N_CHARTS; i++)
    if (strcmp (gb_chart_kind_name (i), name) == 0)
      return (int) i;
  return -1;
}

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

static GBytes *
chart_text (GbChart *chart)
{
  char *text = g_strconcat (gb_chart_title (chart), "\n", gb_chart_subtitle (chart), "\n\n",
                            gb_chart_description (chart), "\n", NULL);

  return g_bytes_new_take (text, strlen (text));
}

/* The chart's file, which is made in the temporary folder and taken from there. */
static GBytes *
chart_file (GbChart *chart, const char *format, GError **error)
{
  g_autofree char *path = NULL;
  g_autofree char *contents = NULL;
  gboolean made;
  gsize length;
  int fd = g_file_open_tmp ("garboard-chart-XXXXXX", &path, error);

  if (fd < 0)
    return NULL;
  close (fd);
  made = gb_chart_export (chart, path, format, CHART_WIDTH, CHART_HEIGHT, GB_CHART_LIGHT, error)
         && g_file_get_contents (path, &contents, &length, error);
  g_unlink (path);
  return made ? g_bytes_new_take (g_steal_pointer (&contents), length) : NULL;
}

static GBytes *
make_chart (GbProject *project, GbChartKind kind, const char *format, GError **error)
{
  const GbBoat *boat = gb_project_get_boat (project);
  g_autoptr (GbHistory) history = kind == GB_CHART_HISTORY ? gb_history_find (boat, NULL, NULL) : NULL;
  const GbChartSource source = { .boat = boat,
                                 .findings = gb_project_get_findings (project),
                                 .history = history,
                                 .moved_to = { NAN, NAN, NAN } };
  g_autoptr (GbChart) chart = gb_chart_new (kind, &source);

  return strcmp (format, "text") == 0 ? chart_text (chart) : chart_file (chart, format, error);
}

GbExit
gb_command_report (GStrv words, GHashTable *options)
{
  int report = gb_report_kind_by_name (words[0]);
  int chart = chart_by_name (words[0]);
  g_autofree char *format = wanted_format (options, chart >= 0);
  const char *output = g_hash_table_lookup (options, "output");
  g_autoptr (GbProject) project = NULL;
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GError) error = NULL;

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

  project = gb_project_open (words[1], TRUE, &error);
  if (project != NULL && report >= 0)
    bytes = gb_report_make ((GbReportKind) report, (GbReportFormat) gb_report_format_by_name (format),
                            gb_project_get_boat (project), gb_project_get_findings (project), gb_today (),
                            &error);
  else if (project != NULL)
    bytes = make_chart (project, (GbChartKind) chart, format, &error);
  if (bytes == NULL)
    return gb_command_complain (GB_EXIT_FAULT, "%s", error->message);
  return gb_command_write (output, bytes) ? GB_EXIT_DONE : GB_EXIT_FAULT;
}
