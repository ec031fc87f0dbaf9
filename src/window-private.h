/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "pages/welcome-page.h"
#include "reports/report.h"
#include "widgets/strip.h"
#include "window.h"

G_BEGIN_DECLS

struct _GbWindow
{
  AdwApplicationWindow parent_instance;

  GbProject *project;
  AdwToast *toast; /* the newest; it takes the place of the one before, which is no news any more */
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

/* window-files.c: the actions that open, make, copy, import and check files. */
void gb_window_install_file_actions (GtkWidgetClass *widget_class);
void gb_window_fill_file_menus (GbWindow *self);
void gb_window_accept_drops (GbWindow *self);
/* Enables and disables them, and those of the reports, by whether a build is open. */
void gb_window_update_file_actions (GbWindow *self);

/* What the actions do once a file is chosen. A new build at @path; FALSE if that is told to be impossible. */
gboolean gb_window_start_build (GbWindow *self, const char *path);
/* Builds are opened, tables imported. (element-type GFile) */
void gb_window_take_files (GbWindow *self, GSList *files);
/* On a worker; what came of it is told. */
void gb_window_save_copy (GbWindow *self, const char *path);

/* Asks for a file, and calls @func with it if one is chosen. @data must stay; @file_name and @filter may be NULL. */
typedef void (*GbWindowChosen) (GbWindow *self, GFile *file, gconstpointer data);
void gb_window_choose_file (GbWindow *self, const char *title, gboolean save, const char *file_name, GtkFileFilter *filter,
                            GbWindowChosen func, gconstpointer data);
/* Tells the sentence that a worker's task gives. */
void gb_window_worked_cb (GObject *window, GAsyncResult *result, gpointer data);

/* window-reports.c: reports to files and to paper. */
void gb_window_install_report_actions (GtkWidgetClass *widget_class);
void gb_window_fill_report_menu (GbWindow *self);
/* On a worker, from a copy of the boat; what came of it is told. */
void gb_window_write_report (GbWindow *self, GbReportKind kind, GbReportFormat format, GFile *file);
/* @export_path: for the action that exports to a file. */
void gb_window_print_report (GbWindow *self, GbReportKind kind, GtkPrintOperationAction action, const char *export_path);

G_END_DECLS
