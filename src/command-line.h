/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The commands that need no display: pack, unpack, report, check, --help, --version. The man page garboard(1)
 * says what each does. */

/* What the program leaves with. */
typedef enum
{
  GB_EXIT_DONE = 0,
  GB_EXIT_LIMIT = 1,  /* check: a limit is passed */
  GB_EXIT_FAULT = 2,  /* a file is not there, not sound, or cannot be written */
  GB_EXIT_USAGE = 64, /* the command line is not understood (as sysexits.h has it) */
} GbExit;

/* Runs the command that @argv names and says in @status what to leave with. FALSE if it names none: then the
 * window is wanted. */
gboolean gb_command_line_run (int argc, char *argv[], int *status);

G_END_DECLS
