/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-window-reports"

/* The window's reports: written to files in every format, and printed. */

#include "window-private.h"

#include <glib/gi18n-lib.h>

#include "reports/report.h"

typedef struct
{
  GbReportKind kind;
  GbReportFormat format;
} ReportChoice;

/* One of each, so that a chooser can point at it while it is open. */
static const ReportChoice *
report_choice (GbReportKind kind, GbReportFormat format)
{
  static ReportChoice choices[GB_N_REPORTS][GB_N_FORMATS];

  choices[kind][format] = (ReportChoice){ kind, format };
  return &choices[kind][format];
}

/* To a file ----------------------------------------------------------------------------------------------------------- */

/* A report of a large build takes its time, so a worker makes it, from a copy of the boat: the builder may go on editing. */
typedef struct
{
  GbBoat *boat;
  ReportChoice choice;
  gint64 today;
  GFile *file;
} ReportWork;

static void
report_work_free (gpointer data)
{
  ReportWork *work = data;

  gb_boat_free (work->boat);
  g_object_unref (work->file);
  g_free (work);
}

/* Gives the sentence to tell. */
static void
make_report (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  const ReportWork *work = data;
  g_autoptr (GbFindings) findings = gb_findings_new ();
  g_autoptr (GPtrArray) studies = NULL;
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *path = g_file_get_parse_name (work->file);

  gb_findings_find (findings, work->boat, GB_TOUCHED_ALL, work->today);
  if (gb_report_takes_studies (work->choice.kind))
    studies = gb_studies_find (work->boat, findings, NULL, NULL);
  bytes = gb_report_make (work->choice.kind, work->choice.format, work->boat, findings, studies, work->today, &error);
  if (bytes != NULL
      && g_file_replace_contents (work->file, g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), NULL, FALSE, G_FILE_CREATE_NONE,
                                  NULL, NULL, &error))
    g_task_return_pointer (task, g_strdup_printf (_ ("Written to %s"), path), g_free);
  else
    g_task_return_pointer (task, g_strdup (error->message), g_free);
}

void
gb_window_write_report (GbWindow *self, GbReportKind kind, GbReportFormat format, GFile *file)
{
  g_autoptr (GTask) task = NULL;
  ReportWork *work;

  g_return_if_fail (GB_IS_WINDOW (self));
  if (self->project == NULL)
    return;
  work = g_new (ReportWork, 1);
  *work = (ReportWork){ gb_boat_copy (gb_project_get_boat (self->project)), { kind, format }, gb_today (), g_object_ref (file) };
  task = g_task_new (self, NULL, gb_window_worked_cb, NULL);
  g_task_set_source_tag (task, gb_window_write_report);
  g_task_set_task_data (task, work, report_work_free);
  g_task_run_in_thread (task, make_report);
}

static void
report_chosen_cb (GbWindow *self, GFile *file, gconstpointer data)
{
  const ReportChoice *choice = data;

  gb_window_write_report (self, choice->kind, choice->format, file);
}

static void
report_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  const char *kind_name, *format_name;
  g_autofree char *file_name = NULL;
  int kind, format;

  g_variant_get (parameter, "(&s&s)", &kind_name, &format_name);
  kind = gb_report_kind_by_name (kind_name);
  format = gb_report_format_by_name (format_name);
  if (kind < 0 || format < 0)
    return;
  file_name = g_strdup_printf ("%s.%s", kind_name, gb_report_format_ending (format));
  gb_window_choose_file (GB_WINDOW (widget), gb_report_kind_label (kind), TRUE, file_name, NULL, report_chosen_cb,
                         report_choice (kind, format));
}

/* To paper ------------------------------------------------------------------------------------------------------------ */

static void
draw_page_cb (GtkPrintOperation *operation, GtkPrintContext *context, int page, GbReportPages *pages)
{
  gb_report_pages_draw (pages, (guint) page, gtk_print_context_get_cairo_context (context));
}

static void
free_pages (gpointer pages, GClosure *closure)
{
  gb_report_pages_free (pages);
}

/* The margins are the report's own. */
static GtkPageSetup *
setup_page (const GbReportPages *pages)
{
  GtkPageSetup *setup = gtk_page_setup_new ();
  double width, height;
  GtkPaperSize *paper;

  gb_report_pages_get_size (pages, &width, &height);
  paper = gtk_paper_size_new (MIN (width, height) > 600 ? GTK_PAPER_NAME_LETTER : GTK_PAPER_NAME_A4);
  gtk_page_setup_set_paper_size (setup, paper);
  gtk_page_setup_set_orientation (setup, width > height ? GTK_PAGE_ORIENTATION_LANDSCAPE : GTK_PAGE_ORIENTATION_PORTRAIT);
  gtk_paper_size_free (paper);
  return setup;
}

void
gb_window_print_report (GbWindow *self, GbReportKind kind, GtkPrintOperationAction action, const char *export_path)
{
  g_autoptr (GtkPrintOperation) operation = gtk_print_operation_new ();
  g_autoptr (GtkPageSetup) setup = NULL;
  g_autoptr (GPtrArray) studies = NULL;
  g_autoptr (GError) error = NULL;
  GbReportPages *pages;

  g_return_if_fail (GB_IS_WINDOW (self));
  if (self->project == NULL)
    return;
  if (gb_report_takes_studies (kind))
    studies = gb_studies_find (gb_project_get_boat (self->project), gb_project_get_findings (self->project), NULL, NULL);
  pages = gb_report_pages_new (kind, gb_project_get_boat (self->project), gb_project_get_findings (self->project), studies, gb_today ());
  setup = setup_page (pages);
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_n_pages (operation, (int) gb_report_pages_n (pages));
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_job_name (operation, gb_report_kind_label (kind));
  if (export_path != NULL)
    gtk_print_operation_set_export_filename (operation, export_path);
  g_signal_connect_data (operation, "draw-page", G_CALLBACK (draw_page_cb), pages, free_pages, 0);
  if (gtk_print_operation_run (operation, action, GTK_WINDOW (self), &error) == GTK_PRINT_OPERATION_RESULT_ERROR)
    gb_window_tell (self, error->message);
}

static void
print_report_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  int kind = gb_report_kind_by_name (g_variant_get_string (parameter, NULL));

  if (kind >= 0)
    gb_window_print_report (GB_WINDOW (widget), kind, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, NULL);
}

/* Menu and actions ---------------------------------------------------------------------------------------------------- */

void
gb_window_fill_report_menu (GbWindow *self)
{
  static const char *const format_labels[GB_N_FORMATS]
      = { N_ ("As _Text…"), N_ ("As _CSV…"), N_ ("As _JSON…"), N_ ("As a _Workbook…"), N_ ("As _PDF…") };

  for (guint kind = 0; kind < GB_N_REPORTS; kind++)
    {
      g_autoptr (GMenu) formats = g_menu_new ();
      g_autoptr (GMenuItem) print = g_menu_item_new (_ ("P_rint…"), NULL);

      for (guint format = 0; format < GB_N_FORMATS; format++)
        {
          g_autoptr (GMenuItem) item = g_menu_item_new (_ (format_labels[format]), NULL);

          g_menu_item_set_action_and_target (item, "win.report", "(ss)", gb_report_kind_name (kind), gb_report_format_name (format));
          g_menu_append_item (formats, item);
        }
      g_menu_item_set_action_and_target (print, "win.print-report", "s", gb_report_kind_name (kind));
      g_menu_append_item (formats, print);
      g_menu_append_submenu (self->report_menu, gb_report_kind_label (kind), G_MENU_MODEL (formats));
    }
}

void
gb_window_install_report_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.report", "(ss)", report_action);
  gtk_widget_class_install_action (widget_class, "win.print-report", "s", print_report_action);
}
