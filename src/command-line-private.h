/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "command-line.h"
#include "project/project.h"

G_BEGIN_DECLS

typedef struct
{
  const char *name;
  const char *arguments; /* untranslated: for the first line of its help */
  const char *summary;
  GbExit (*run) (GStrv words, GHashTable *options);
  const char *options; /* names of the options that it takes, with spaces between */
  guint min_words, max_words;
} GbCommand;

/* report, in command-report.c. @options: "format", "output", "condition" and "load". */
GbExit gb_command_report (GStrv words, GHashTable *options);
/* "parts, weights, ...": for help and complaints. Free it. */
char *gb_command_report_kinds (void);

/* Charts, in command-chart.c. -1: there is none of that name. */
int gb_command_chart_by_name (const char *name);
/* TRUE if the chart @kind (-1: none) has a use for @option, "condition" or "load". */
gboolean gb_command_chart_takes (int kind, const char *option);
/* Complains where it does not make the chart's bytes. */
GbExit gb_command_chart (GbProject *project, int kind, const char *format, GHashTable *options, GBytes **bytes);

/* Writes to the file @output, or to standard output for NULL. FALSE with a sentence on standard error. */
gboolean gb_command_write (const char *output, GBytes *bytes);

/* A sentence on standard error, after the program's name. */
GbExit gb_command_complain (GbExit status, const char *format, ...) G_GNUC_PRINTF (2, 3);

G_END_DECLS
