/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "command-line.h"

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

/* report, in command-report.c. @options: "format" and "output". */
GbExit gb_command_report (GStrv words, GHashTable *options);
/* "parts, weights, ...": for help and complaints. Free it. */
char *gb_command_report_kinds (void);

/* Writes to the file @output, or to standard output for NULL. FALSE with a sentence on standard error. */
gboolean gb_command_write (const char *output, GBytes *bytes);

/* A sentence on standard error, after the program's name. */
GbExit gb_command_complain (GbExit status, const char *format, ...) G_GNUC_PRINTF (2, 3);

G_END_DECLS
