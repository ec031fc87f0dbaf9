/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "project/project.h"
#include "widgets/grid.h"

G_BEGIN_DECLS

/* What tests of pages share: a build in a folder of its own, a real window, real keys and clicks, waiting for
 * what they do, and pictures. */

/* Starts the toolkit, with the settings in memory and without animations. */
void support_init (int *argc, char ***argv);

/* Turns the main loop until @condition holds; a watchdog ends the test with the condition's text. */
#define support_until(condition) \
  G_STMT_START \
  { \
    guint support_watchdog_id = support_watch (G_STRLOC ": " #condition); \
    while (!(condition)) \
      g_main_context_iteration (NULL, TRUE); \
    g_source_remove (support_watchdog_id); \
  } \
  G_STMT_END
guint support_watch (const char *what);
/* Turns the main loop until a frame of the widget is on screen. */
void support_wait_for_draw (GtkWidget *widget);
/* Turns the main loop until there is nothing to do. */
void support_settle (void);

typedef struct
{
  char *folder;
  GbProject *project;
  GtkWindow *window;
  GtkWidget *page;
  GPtrArray *told;    /* (element-type utf8) what was told by "win.tell" */
  GPtrArray *toasts;  /* (element-type utf8) what was told by "win.toast-undo" */
} Support;

/* @demo: the name of a demo build; NULL: a small build made by hand, see support.c. */
Support *support_new (const char *demo);
/* A build of its own that holds @boat. */
Support *support_new_for (const GbBoat *boat);
void support_free (Support *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Support, support_free)

/* Shows @page in a window, with its property "project" set. */
void support_show (Support *self, GtkWidget *page, int width, int height);

/* Gives the keyboard to @window; support_show() does so for its own. */
void support_focus (Support *self, GtkWindow *window);

/* Real input, through the X server. Keys in the notation of xdotool: "Down", "ctrl+Return". */
void support_keys (Support *self, const char *keys);
void support_type (Support *self, const char *text);
/* In the coordinates of @widget; a share of 0.5 is its middle. */
void support_click (Support *self, GtkWidget *widget, double x_share, double y_share, int n_clicks);
void support_drag (Support *self, GtkWidget *from, GtkWidget *to, double y_share);
/* A press at one point of @widget, and on to another in a few steps; the button stays down until support_release(). */
void support_press_and_move (Support *self, GtkWidget *widget, double from_x, double from_y, double to_x, double to_y);
void support_release (void);

/* Leaves NAME-light.png and NAME-dark.png in the build folder. */
void support_picture (Support *self, const char *name);

/* The id of the part called @name; 0 if there is none. */
gint64 support_part (Support *self, const char *name);
/* The position of the row of a record in the grid; asserts that it is there. */
guint support_row (GbGrid *grid, GbRecordKind kind, gint64 id);
/* What a cell shows, scrolled to if need be. Borrowed. */
const char *support_cell (GbGrid *grid, GbRecordKind kind, gint64 id, const char *column);
/* The widget of type @type below @top, the first in order; NULL: none. */
GtkWidget *support_find (GtkWidget *top, GType type);
/* The table of @kind below @top; asserts that it is there. */
GbGrid *support_grid (GtkWidget *top, GbRecordKind kind);
/* TRUE if the focus is in the editor of a cell. */
gboolean support_is_editing (Support *self);

G_END_DECLS
