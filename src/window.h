/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "application.h"
#include "project/project.h"

G_BEGIN_DECLS

/* One window: one build, or the welcome page before there is one. Holds the pages, the strip and the actions of section "win". */
#define GB_TYPE_WINDOW (gb_window_get_type ())
G_DECLARE_FINAL_TYPE (GbWindow, gb_window, GB, WINDOW, AdwApplicationWindow)

GbWindow *gb_window_new (GbApplication *application);

/* NULL before a build is open. */
GbProject *gb_window_get_project (GbWindow *self);
/* Opens @path; what goes wrong is said in the window, which then stays as it was. */
gboolean gb_window_open (GbWindow *self, const char *path);
/* Shows a page by its name: "parts", "materials", "purchases", "hulls", "weight", "money". */
void gb_window_show_page (GbWindow *self, const char *name);
GtkWidget *gb_window_get_page (GbWindow *self, const char *name);
/* A sentence at the foot of the window for a while. */
void gb_window_tell (GbWindow *self, const char *sentence);

G_END_DECLS
