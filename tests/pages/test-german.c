/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The window started in German. */

#include "window-support.h"

#include <libintl.h>
#include <locale.h>

static void
test_speaks_german (void)
{
  g_autofree char *path = window_support_demo ("plover");
  WindowSupport window;

  window_support_open (&window, path, 1280, 800);
  g_assert_true (window_support_says (GTK_WIDGET (window.window), "Teile"));
  g_assert_true (window_support_says (GTK_WIDGET (window.window), "Gewicht"));
  g_assert_false (window_support_says (GTK_WIDGET (window.window), "Purchases"));
  support_picture (&window.input, "window-german");
  window_support_close (&window);
}

int
main (int argc, char **argv)
{
  g_setenv ("LANGUAGE", "de", TRUE);
  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, g_getenv ("GARBOARD_LOCALE_DIR"));
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
  window_support_init (&argc, &argv);
  g_test_add_func ("/german/speaks-german", test_speaks_german);
  return window_support_run ();
}
