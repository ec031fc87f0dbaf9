/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-window-files"

/* The window's dealings with files: new, open, demo, copy, check, drop, import. */

#include "window-private.h"

#include <glib/gi18n-lib.h>

#include "boat/money.h"
#include "pages/import-dialog.h"
#include "store/store.h"

/* Choosers ---------------------------------------------------------------------------------------------------------- */

typedef struct
{
  GbWindowChosen func;
  gconstpointer data; /* static */
} Choice;

static void
chooser_response_cb (GtkNativeDialog *dialog, int response, GbWindow *self)
{
  Choice *choice = g_object_get_data (G_OBJECT (dialog), "choice");

  if (response == GTK_RESPONSE_ACCEPT)
    {
      g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));

      if (file != NULL)
        choice->func (self, file, choice->data);
    }
  g_object_unref (dialog);
}

void
gb_window_choose_file (GbWindow *self, const char *title, gboolean save, const char *file_name, GtkFileFilter *filter,
                       GbWindowChosen func, gconstpointer data)
{
  GtkFileChooserNative *dialog
      = gtk_file_chooser_native_new (title, GTK_WINDOW (self), save ? GTK_FILE_CHOOSER_ACTION_SAVE : GTK_FILE_CHOOSER_ACTION_OPEN,
                                     save ? _ ("_Save") : _ ("_Open"), _ ("_Cancel"));
  g_autoptr (GFile) folder = g_file_new_for_path (gb_builds_folder ());
  Choice *choice = g_new (Choice, 1);

  *choice = (Choice){ func, data };
  g_object_set_data_full (G_OBJECT (dialog), "choice", choice, g_free);
  gtk_file_chooser_set_current_folder (GTK_FILE_CHOOSER (dialog), folder, NULL);
  if (file_name != NULL)
    gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (dialog), file_name);
  if (filter != NULL)
    gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (dialog), filter);
  g_signal_connect_object (dialog, "response", G_CALLBACK (chooser_response_cb), self, 0);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

static GtkFileFilter *
filter_for (const char *name, const char *pattern)
{
  GtkFileFilter *filter = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, name);
  gtk_file_filter_add_pattern (filter, pattern);
  return filter;
}

static char *
path_with_ending (GFile *file)
{
  g_autofree char *path = g_file_get_path (file);

  if (path == NULL || g_str_has_suffix (path, ".garboard"))
    return g_steal_pointer (&path);
  return g_strconcat (path, ".garboard", NULL);
}

/* Opening ----------------------------------------------------------------------------------------------------------- */

static void
remember (const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autofree char *uri = g_file_get_uri (file);
  static char *groups[] = { (char *) "garboard", NULL };
  GtkRecentData data = { .mime_type = (char *) "application/x-garboard",
                         .app_name = (char *) "Garboard",
                         .app_exec = (char *) "garboard %f",
                         .groups = groups };

  gtk_recent_manager_add_full (gtk_recent_manager_get_default (), uri, &data);
}

gboolean
gb_window_open (GbWindow *self, const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GbProject) project = gb_project_open (path, TRUE, &error);

  if (project == NULL)
    {
      gb_window_tell (self, error->message);
      return FALSE;
    }
  gb_window_set_project (self, project);
  remember (path);
  return TRUE;
}

static void
open_elsewhere (GbWindow *self, const char *path)
{
  gb_application_open_path (GB_APPLICATION (gtk_window_get_application (GTK_WINDOW (self))), path, GTK_WINDOW (self));
}

static void
opened_cb (GbWindow *self, GFile *file, gconstpointer data)
{
  g_autofree char *path = g_file_get_path (file);

  if (path != NULL)
    open_elsewhere (self, path);
}

static void
open_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  g_autoptr (GtkFileFilter) filter = filter_for (_ ("Builds"), "*.garboard");

  gb_window_choose_file (GB_WINDOW (widget), _ ("Open a Build"), FALSE, NULL, filter, opened_cb, NULL);
}

static void
open_path_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  open_elsewhere (GB_WINDOW (widget), g_variant_get_string (parameter, NULL));
}

/* New --------------------------------------------------------------------------------------------------------------- */

/* A boat with the person's usual units and currency, called after its file, with one condition to put loads in. */
static GbBoat *
start_boat (GbWindow *self, const char *path)
{
  GbBoat *boat = gb_boat_new ();
  GbBuild *build = (GbBuild *) gb_boat_get (boat, GB_RECORD_BUILD, 1);
  GbRecord *condition = gb_record_new (GB_RECORD_CONDITION);
  g_autofree char *base = g_path_get_basename (path);
  g_autofree char *name = g_str_has_suffix (base, ".garboard") ? g_strndup (base, strlen (base) - strlen (".garboard")) : g_strdup (base);
  g_autofree char *title = g_utf8_make_valid (name, -1);
  g_autofree char *currency = g_settings_get_string (self->settings, "currency");
  g_autofree char *units = g_settings_get_string (self->settings, "units");

  gb_field_set_text (gb_field (GB_RECORD_BUILD, "name"), &build->rec, title);
  gb_field_set_text (gb_field (GB_RECORD_BUILD, "currency"), &build->rec, gb_currency_is_valid (currency) ? currency : "EUR");
  build->units = MAX (0, gb_field_choice (gb_field (GB_RECORD_BUILD, "units"), units));
  condition->id = 1;
  condition->position = 1;
  gb_field_set_text (gb_field (GB_RECORD_CONDITION, "name"), condition, _ ("Usual load"));
  gb_boat_take (boat, condition);
  gb_boat_settle (boat);
  return boat;
}

gboolean
gb_window_start_build (GbWindow *self, const char *path)
{
  g_autoptr (GbBoat) boat = start_boat (self, path);
  g_autoptr (GError) error = NULL;
  g_autoptr (GbProject) project = gb_project_create (path, boat, &error);

  if (project == NULL)
    {
      gb_window_tell (self, error->message);
      return FALSE;
    }
  g_clear_object (&project);
  open_elsewhere (self, path);
  return TRUE;
}

static void
new_chosen_cb (GbWindow *self, GFile *file, gconstpointer data)
{
  g_autofree char *path = path_with_ending (file);

  if (path != NULL)
    gb_window_start_build (self, path);
}

static void
new_build_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  g_autofree char *file_name = g_strconcat (_ ("My boat"), ".garboard", NULL);

  gb_window_choose_file (GB_WINDOW (widget), _ ("Where Shall the Build Be Kept?"), TRUE, file_name, NULL, new_chosen_cb, NULL);
}

/* A path in the builds' folder that is not taken yet. */
static char *
free_path (const char *base)
{
  g_autofree char *stem = g_strndup (base, strlen (base) - strlen (".garboard"));

  for (guint n = 1;; n++)
    {
      g_autofree char *name = n == 1 ? g_strdup (base) : g_strdup_printf ("%s %u.garboard", stem, n);
      g_autofree char *path = g_build_filename (gb_builds_folder (), name, NULL);

      if (!g_file_test (path, G_FILE_TEST_EXISTS))
        return g_steal_pointer (&path);
    }
}

static void
open_demo_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GbWindow *self = GB_WINDOW (widget);
  g_autoptr (GFile) demo = g_file_new_for_path (g_variant_get_string (parameter, NULL));
  g_autofree char *base = g_file_get_basename (demo);
  g_autofree char *path = free_path (base);
  g_autoptr (GFile) copy = g_file_new_for_path (path);
  g_autofree char *told = NULL;
  g_autoptr (GError) error = NULL;

  if (!g_file_copy (demo, copy, G_FILE_COPY_TARGET_DEFAULT_PERMS, NULL, NULL, NULL, &error))
    {
      gb_window_tell (self, error->message);
      return;
    }
  open_elsewhere (self, path);
  /* Translators: a file. */
  told = g_strdup_printf (_ ("This copy of the demo is yours to change: %s"), path);
  gb_window_tell (self, told);
}

/* Copy, check, close ------------------------------------------------------------------------------------------------- */

/* Both may take long in a large build, so a worker does them through a connection of its own, which takes the file as it is on the disk. */
typedef struct
{
  char *from;
  char *to; /* NULL: to be checked */
} FileWork;

static void
file_work_free (gpointer data)
{
  FileWork *work = data;

  g_free (work->from);
  g_free (work->to);
  g_free (work);
}

/* Gives the sentence to tell. */
static void
work_on_file (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  const FileWork *work = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GbStore) store = gb_store_open (work->from, TRUE, &error);
  g_autoptr (GPtrArray) faults = store != NULL && work->to == NULL ? gb_store_check (store) : NULL;
  char *told;

  if (store == NULL || (work->to != NULL && !gb_store_save_copy (store, work->to, &error)))
    told = g_strdup (error->message);
  else if (work->to != NULL)
    told = g_strdup_printf (_ ("A copy is in %s"), work->to);
  else
    told = g_strdup (faults->len == 0 ? _ ("The file is sound.") : faults->pdata[0]);
  g_task_return_pointer (task, told, g_free);
}

void
gb_window_worked_cb (GObject *window, GAsyncResult *result, gpointer data)
{
  g_autofree char *told = g_task_propagate_pointer (G_TASK (result), NULL);

  if (told != NULL)
    gb_window_tell (GB_WINDOW (window), told);
}

static void
start_file_work (GbWindow *self, const char *to)
{
  g_autoptr (GTask) task = g_task_new (self, NULL, gb_window_worked_cb, NULL);
  FileWork *work = g_new (FileWork, 1);

  *work = (FileWork){ g_strdup (gb_project_get_path (self->project)), g_strdup (to) };
  g_task_set_source_tag (task, start_file_work);
  g_task_set_task_data (task, work, file_work_free);
  g_task_run_in_thread (task, work_on_file);
}

void
gb_window_save_copy (GbWindow *self, const char *path)
{
  g_return_if_fail (GB_IS_WINDOW (self));
  if (self->project != NULL)
    start_file_work (self, path);
}

static void
copy_chosen_cb (GbWindow *self, GFile *file, gconstpointer data)
{
  g_autofree char *path = path_with_ending (file);

  if (path != NULL)
    gb_window_save_copy (self, path);
}

static void
save_copy_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GbWindow *self = GB_WINDOW (widget);
  g_autofree char *base = g_path_get_basename (gb_project_get_path (self->project));

  gb_window_choose_file (self, _ ("Save a Copy"), TRUE, base, NULL, copy_chosen_cb, NULL);
}

static void
check_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  start_file_work (GB_WINDOW (widget), NULL);
}

static void
close_build_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gb_window_set_project (GB_WINDOW (widget), NULL);
}

/* Import ------------------------------------------------------------------------------------------------------------ */

static const GbRecordKind import_parts = GB_RECORD_PART;
static const GbRecordKind import_lines = GB_RECORD_LINE;

static void
import_chosen_cb (GbWindow *self, GFile *file, gconstpointer data)
{
  if (self->project != NULL)
    gb_import_dialog_present (GTK_WINDOW (self), self->project, *(const GbRecordKind *) data, file);
}

static void
import_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gboolean parts = g_str_equal (name, "win.import-parts");

  gb_window_choose_file (GB_WINDOW (widget), parts ? _ ("Import Parts") : _ ("Import Purchases"), FALSE, NULL, NULL, import_chosen_cb,
               parts ? &import_parts : &import_lines);
}

/* Menus and drops ----------------------------------------------------------------------------------------------------- */

static void
fill_recent_menu (GbWindow *self)
{
  g_autoptr (GPtrArray) builds = gb_recent_builds ();

  g_menu_remove_all (self->recent_menu);
  for (guint i = 0; i < builds->len; i++)
    {
      g_autoptr (GFile) file = g_file_new_for_uri (gtk_recent_info_get_uri (builds->pdata[i]));
      g_autofree char *path = g_file_get_path (file);
      g_autoptr (GMenuItem) item = g_menu_item_new (gtk_recent_info_get_display_name (builds->pdata[i]), NULL);

      if (path == NULL)
        continue;
      g_menu_item_set_action_and_target (item, "win.open-path", "s", path);
      g_menu_append_item (self->recent_menu, item);
    }
}

void
gb_window_fill_file_menus (GbWindow *self)
{
  g_autoptr (GPtrArray) demos = gb_demos_find ();

  for (guint i = 0; i < demos->len; i++)
    {
      const GbDemo *demo = demos->pdata[i];
      g_autoptr (GMenuItem) item = g_menu_item_new (demo->title, NULL);

      g_menu_item_set_action_and_target (item, "win.open-demo", "s", demo->path);
      g_menu_append_item (self->demo_menu, item);
    }
  fill_recent_menu (self);
  g_signal_connect_object (gtk_recent_manager_get_default (), "changed", G_CALLBACK (fill_recent_menu), self, G_CONNECT_SWAPPED);
  gb_window_fill_report_menu (self);
}

static gboolean
is_table (const char *path)
{
  static const char *const endings[] = { ".csv", ".tsv", ".txt" };
  g_autofree char *lower = g_ascii_strdown (path, -1);

  for (guint i = 0; i < G_N_ELEMENTS (endings); i++)
    if (g_str_has_suffix (lower, endings[i]))
      return TRUE;
  return FALSE;
}

void
gb_window_take_files (GbWindow *self, GSList *files)
{
  g_return_if_fail (GB_IS_WINDOW (self));
  for (GSList *l = files; l != NULL; l = l->next)
    {
      g_autofree char *path = g_file_get_path (l->data);

      if (path == NULL)
        continue;
      if (!is_table (path))
        open_elsewhere (self, path);
      else if (self->project == NULL)
        gb_window_tell (self, _ ("Open a build first: a table is imported into it."));
      else
        import_chosen_cb (self, l->data, &import_parts);
    }
}

static gboolean
dropped_cb (GtkDropTarget *target, const GValue *value, double x, double y, gpointer data)
{
  gb_window_take_files (data, g_value_get_boxed (value));
  return TRUE;
}

void
gb_window_accept_drops (GbWindow *self)
{
  GtkDropTarget *target = gtk_drop_target_new (GDK_TYPE_FILE_LIST, GDK_ACTION_COPY);

  g_signal_connect (target, "drop", G_CALLBACK (dropped_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (target));
}

void
gb_window_update_file_actions (GbWindow *self)
{
  static const char *const need_build[] = { "win.save-copy", "win.check", "win.close-build", "win.report", "win.print-report" };
  static const char *const need_edit[] = { "win.import-parts", "win.import-purchases" };
  gboolean open = self->project != NULL;
  gboolean editable = open && gb_project_get_read_only_reason (self->project) == NULL;

  for (guint i = 0; i < G_N_ELEMENTS (need_build); i++)
    gtk_widget_action_set_enabled (GTK_WIDGET (self), need_build[i], open);
  for (guint i = 0; i < G_N_ELEMENTS (need_edit); i++)
    gtk_widget_action_set_enabled (GTK_WIDGET (self), need_edit[i], editable);
}

void
gb_window_install_file_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.new-build", NULL, new_build_action);
  gtk_widget_class_install_action (widget_class, "win.open", NULL, open_action);
  gtk_widget_class_install_action (widget_class, "win.open-path", "s", open_path_action);
  gtk_widget_class_install_action (widget_class, "win.open-demo", "s", open_demo_action);
  gtk_widget_class_install_action (widget_class, "win.save-copy", NULL, save_copy_action);
  gtk_widget_class_install_action (widget_class, "win.check", NULL, check_action);
  gtk_widget_class_install_action (widget_class, "win.close-build", NULL, close_build_action);
  gtk_widget_class_install_action (widget_class, "win.import-parts", NULL, import_action);
  gtk_widget_class_install_action (widget_class, "win.import-purchases", NULL, import_action);
  gb_window_install_report_actions (widget_class);
}
