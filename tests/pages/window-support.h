/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "support.h"
#include "window.h"

G_BEGIN_DECLS

/* What tests of the whole window share: an application in a home folder of its own, with the demo builds packed in it. */

/* Starts the application. Call first in main(). */
void window_support_init (int *argc, char ***argv);
/* Ends it and removes the folder; gives what g_test_run() gave. */
int window_support_run (void);

const char *window_support_home (void);
/* The file of a demo build; free it. */
char *window_support_demo (const char *name);
/* A file for @boat (NULL: an empty build) in the home folder; free the path. */
char *window_support_make (const char *name, const GbBoat *boat);

/* A window of the usual size, drawn, active, and with @path open in it (NULL: the welcome page). */
typedef struct
{
  Support input; /* keys, clicks and pictures go to its window; it owns nothing */
  GbWindow *window;
} WindowSupport;
void window_support_open (WindowSupport *self, const char *path, int width, int height);
/* Closes the window; it must be gone afterwards, and the project with it. */
void window_support_close (WindowSupport *self);
/* Gives the window the keys. */
void window_support_focus (WindowSupport *self);

/* A child of a template, by its id. */
gpointer window_support_child (gpointer widget, const char *id);
/* The page called @name, on its view @view (NULL: as it is). */
GtkWidget *window_support_page (WindowSupport *self, const char *name, const char *view);
/* The newest sentence at the foot of the window; NULL: none. */
const char *window_support_told (WindowSupport *self);
/* TRUE if @text is in what any visible label below @top says. */
gboolean window_support_says (GtkWidget *top, const char *text);
/* The nth visible widget of @type below @top, in order, from 0; NULL: none. */
GtkWidget *window_support_nth (GtkWidget *top, GType type, guint n);

G_END_DECLS
