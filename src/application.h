/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

/* The program as the desktop sees it: opens files in windows, one window a file, and keeps the person's settings. */
#define GB_TYPE_APPLICATION (gb_application_get_type ())
G_DECLARE_FINAL_TYPE (GbApplication, gb_application, GB, APPLICATION, AdwApplication)

GbApplication *gb_application_new (void);

/* Opens @path: in the window that has it already, else in @window if that holds no build yet (may be NULL), else in a new one. */
void gb_application_open_path (GbApplication *self, const char *path, GtkWindow *window);

/* Runs the window; what main() calls. Returns the exit code. */
int gb_application_run (int argc, char *argv[]);

G_END_DECLS
