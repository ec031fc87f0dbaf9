/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* What stands there before a build is open: an empty build and the demos side by side, and the recent builds below. It only names actions of the
 * window: "win.new-build", "win.open", "win.open-demo" (s: a demo's file) and "win.open-path" (s). */
#define GB_TYPE_WELCOME_PAGE (gb_welcome_page_get_type ())
G_DECLARE_FINAL_TYPE (GbWelcomePage, gb_welcome_page, GB, WELCOME_PAGE, GtkBox)

/* A demo build that is installed. */
typedef struct
{
  char *path;
  const char *title;   /* translated */
  const char *summary; /* translated */
} GbDemo;

/* (element-type GbDemo) (transfer container): the demos that are there, in the order in which they teach. Free with g_ptr_array_unref(). */
GPtrArray *gb_demos_find (void);

/* (element-type GtkRecentInfo) (transfer full): recent builds, the newest first, at most ten, whose file is still there. */
GPtrArray *gb_recent_builds (void);

/* Where a new build or a copy of a demo is offered to be kept: the documents, else the home folder. Never NULL, borrowed. */
const char *gb_builds_folder (void);

G_END_DECLS
