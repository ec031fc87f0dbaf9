/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "pages/welcome-page.h"
#include "widgets/strip.h"
#include "window.h"

G_BEGIN_DECLS

struct _GbWindow
{
  AdwApplicationWindow parent_instance;

  GbProject *project;
  GSettings *settings;
  gboolean narrow;
  guint narrow_id;

  AdwWindowTitle *title;
  GtkButton *undo_button;
  GtkButton *redo_button;
  GtkWidget *add_button;
  AdwButtonContent *add_content;
  GtkWidget *find_button;
  GtkRevealer *notice;
  GtkLabel *notice_label;
  AdwToastOverlay *toasts;
  GtkStack *main;
  GtkListBox *sidebar;
  GtkStack *pages;
  GbStrip *strip;
  GMenu *demo_menu;
  GMenu *recent_menu;
  GMenu *report_menu;
};

/* Takes over @project (transfer none), or goes back to the welcome page for NULL. */
void gb_window_set_project (GbWindow *self, GbProject *project);

/* window-files.c: the actions that open, make, copy, import and write files. */
void gb_window_install_file_actions (GtkWidgetClass *widget_class);
void gb_window_fill_file_menus (GbWindow *self);
void gb_window_accept_drops (GbWindow *self);
/* Enables and disables them by whether a build is open. */
void gb_window_update_file_actions (GbWindow *self);

G_END_DECLS
