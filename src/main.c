/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "application.h"
#include "command-line.h"

#include <glib/gi18n-lib.h>
#include <locale.h>

/* A command runs without a display; anything else is for the window. */
int
main (int argc, char *argv[])
{
  const char *words = g_getenv ("GARBOARD_LOCALE_DIR"); /* to run out of a build folder */
  int status;

  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, words != NULL ? words : GB_LOCALEDIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);

  if (gb_command_line_run (argc, argv, &status))
    return status;
  return gb_application_run (argc, argv);
}
