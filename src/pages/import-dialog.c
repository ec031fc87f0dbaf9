/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-import-dialog"

/* One road for all work on the import: a Work is put together, done here and now, or on a worker if it may take long, and what it gives is taken home
 * by finish(). While it is away the dialog has no import and takes no input.
 *
 *   file read         -> Work: read the table       -> import, shown
 *   column changed    -> Work: the import, a change -> import, shown
 *   build changed     -> Work: read the table again, with the columns as they are set -> import, shown
 *   "Import" clicked  -> Work: the import, make the edit -> import and edit, applied
 *
 * The import looks names up in a copy of the boat as it was when the table was read, hence the third. */

#include "import-dialog.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "group-choice.h"
#include "import-preview.h"
#include "import-work.h"

/* Milliseconds that a file may take before the window is shown without its table. */
#define PATIENCE 200
/* Somewhat more than an import takes, so that it can say that it is too much. */
#define READ_AT_MOST (65 * 1024 * 1024)

/* Of the window, in pixels. */
#define MARGIN 80
#define LEAST_WIDTH 640
#define MOST_WIDTH 1200
#define LEAST_HEIGHT 440
#define MOST_HEIGHT 760

#define GB_TYPE_IMPORT_DIALOG (gb_import_dialog_get_type ())
G_DECLARE_FINAL_TYPE (GbImportDialog, gb_import_dialog, GB, IMPORT_DIALOG, AdwWindow)

struct _GbImportDialog
{
  AdwWindow parent_instance;

  GbProject *project;
  GbRecordKind kind;
  char *file_name; /* as it is shown */
  GBytes *bytes;
  GbImport *import; /* NULL: not read yet, or being worked on */
  GCancellable *cancellable;
  gulong changed_id;
  guint present_id;
  gboolean stale; /* the build changed while work was going on */
  char *trouble;  /* why the rows could not come in when it was tried, until the next try */

  AdwWindowTitle *title;
  GtkWidget *import_button;
  GtkStack *stack;
  GtkLabel *summary;
  GtkSpinner *spinner;
  GtkLabel *hint;
  GtkWidget *group_box;
  GtkDropDown *group_input;
  GtkCheckButton *refused_only;
  GbImportPreview *preview;
  GtkLabel *hidden;
};

G_DEFINE_FINAL_TYPE (GbImportDialog, gb_import_dialog, ADW_TYPE_WINDOW)

/* Work -------------------------------------------------------------------------------------------------------------- */

static void
work_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  GError *error = NULL;

  if (gb_import_work_do (data, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

/* What comes home late must not keep a dialog that was closed: then it is not disposed of, and goes on. */
static GWeakRef *
weak_new (GbImportDialog *self)
{
  GWeakRef *weak = g_new0 (GWeakRef, 1);

  g_weak_ref_init (weak, self);
  return weak;
}

/* The dialog, if it is there still. Frees @weak. */
static GbImportDialog *
weak_take (GWeakRef *weak)
{
  GbImportDialog *self = g_weak_ref_get (weak);

  g_weak_ref_clear (weak);
  g_free (weak);
  return self;
}

static void finish (GbImportDialog *self, GbImportWork *work, const GError *error);

static void
work_done_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GbImportDialog) self = weak_take (data);
  g_autoptr (GError) error = NULL;

  g_task_propagate_boolean (G_TASK (result), &error);
  if (self != NULL)
    finish (self, g_task_get_task_data (G_TASK (result)), error);
}

/* Takes @work. */
static void
start (GbImportDialog *self, GbImportWork *work)
{
  g_autoptr (GbImportWork) own = work;
  g_autoptr (GTask) task = NULL;
  g_autoptr (GError) error = NULL;

  if (!gb_import_work_is_long (work))
    {
      gb_import_work_do (work, &error);
      finish (self, work, error);
      return;
    }
  gb_import_preview_show (self->preview, NULL, NULL);
  gtk_widget_set_sensitive (self->import_button, FALSE);
  gtk_spinner_start (self->spinner);
  task = g_task_new (NULL, self->cancellable, work_done_cb, weak_new (self));
  g_task_set_source_tag (task, start);
  g_task_set_task_data (task, g_steal_pointer (&own), (GDestroyNotify) gb_import_work_free);
  g_task_run_in_thread (task, work_thread);
}

/* Work on the import that is there. */
static GbImportWork *
take_import (GbImportDialog *self)
{
  GbImportWork *work = gb_import_work_new ();

  g_clear_pointer (&self->trouble, g_free);
  work->import = g_steal_pointer (&self->import);
  return work;
}

/* Reads the table, with the columns as @like has them (NULL: as their headings say). */
static void
read_table (GbImportDialog *self, const GbImport *like)
{
  GbImportWork *work = gb_import_work_new ();

  work->kind = self->kind;
  work->bytes = g_bytes_ref (self->bytes);
  work->boat = gb_boat_copy (gb_project_get_boat (self->project));
  for (guint c = 0; like != NULL && c < gb_import_n_columns (like); c++)
    gb_import_work_wish (work, (GbImportWish){ c, TRUE, TRUE, gb_import_get_field (like, c), (char *) gb_import_get_unit (like, c) });
  self->stale = FALSE;
  start (self, work);
}

/* Words ------------------------------------------------------------------------------------------------------------- */

static guint
count_accepted (const GbImport *import)
{
  guint n = 0;

  for (guint r = 0; r < gb_import_n_rows (import); r++)
    n += gb_import_refusal (import, r) == NULL;
  return n;
}

static char *
say_summary (GbRecordKind kind, guint n, guint total)
{
  gboolean parts = kind == GB_RECORD_PART;

  if (total == 0)
    return g_strdup (_ ("There are no rows below the headings."));
  if (n == 0)
    return g_strdup (_ ("No row can come in as it stands."));
  if (n == total && parts)
    return g_strdup_printf (ngettext ("The one row comes in as a part.", "All %u rows come in as parts.", total), total);
  if (n == total)
    return g_strdup_printf (ngettext ("The one row comes in as a purchase.", "All %u rows come in as purchases.", total), total);
  if (parts)
    /* Translators: how many rows of a table come in, and how many there are. */
    return g_strdup_printf (ngettext ("%u of %u rows comes in as a part.", "%u of %u rows come in as parts.", n), n, total);
  return g_strdup_printf (ngettext ("%u of %u rows comes in as a purchase.", "%u of %u rows come in as purchases.", n), n, total);
}

/* TRUE if no column goes into the field that no part can do without. */
static gboolean
lacks_name (const GbImport *import, GbRecordKind kind)
{
  const GbField *name = kind == GB_RECORD_PART ? gb_field (kind, "name") : NULL;

  for (guint c = 0; name != NULL && c < gb_import_n_columns (import); c++)
    if (gb_import_get_field (import, c) == name)
      return FALSE;
  return name != NULL;
}

static char *
say_hint (const GbImport *import, GbRecordKind kind, guint n_refused)
{
  if (n_refused > 0 && lacks_name (import, kind))
    return g_strdup (_ ("No column holds the names yet. Choose “Name” at the head of the one that does."));
  if (n_refused > 0)
    return g_strdup_printf (ngettext ("%u is refused; what is wrong stands beside it.",
                                      "%u are refused; what is wrong stands beside each.", n_refused),
                            n_refused);
  return g_strdup (_ ("What each column holds is chosen at its head."));
}

static void
show_hidden (GbImportDialog *self)
{
  guint n = gb_import_preview_n_hidden (self->preview);
  g_autofree char *words
    = g_strdup_printf (ngettext ("%u more column is left out and not shown.", "%u more columns are left out and not shown.", n), n);

  gtk_label_set_text (self->hidden, words);
  gtk_widget_set_visible (GTK_WIDGET (self->hidden), n > 0);
}

static void
show_words (GbImportDialog *self)
{
  guint total = gb_import_n_rows (self->import);
  guint n = count_accepted (self->import);
  g_autofree char *summary = say_summary (self->kind, n, total);
  g_autofree char *hint = self->trouble != NULL ? g_strdup (self->trouble) : say_hint (self->import, self->kind, total - n);

  gtk_label_set_text (self->summary, summary);
  gtk_label_set_text (self->hint, hint);
  if (n < total || self->trouble != NULL)
    gtk_widget_add_css_class (GTK_WIDGET (self->hint), "error");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->hint), "error");
  gtk_widget_set_sensitive (self->import_button, n > 0);
  gtk_widget_set_sensitive (GTK_WIDGET (self->refused_only), n < total);
  if (n == total)
    gtk_check_button_set_active (self->refused_only, FALSE);
}

static void
show_groups (GbImportDialog *self)
{
  guint n = gb_group_choice_fill (self->group_input, gb_project_get_boat (self->project));

  gtk_widget_set_visible (self->group_box, self->kind == GB_RECORD_PART && n > 0);
}

/* Ends -------------------------------------------------------------------------------------------------------------- */

/* Shows the window; where nobody has used it yet, at what is done next. */
static void
present (GbImportDialog *self)
{
  g_clear_handle_id (&self->present_id, g_source_remove);
  if (!gtk_widget_get_visible (GTK_WIDGET (self)))
    gtk_window_present (GTK_WINDOW (self));
  if (self->import != NULL && gtk_widget_get_sensitive (self->import_button))
    gtk_widget_grab_focus (self->import_button);
}

static gboolean
present_cb (gpointer data)
{
  GB_IMPORT_DIALOG (data)->present_id = 0;
  present (data);
  return G_SOURCE_REMOVE;
}

/* The file cannot come in: that is told in the parent, and the dialog goes. */
static void
give_up (GbImportDialog *self, const char *why)
{
  GtkWindow *parent = gtk_window_get_transient_for (GTK_WINDOW (self));
  /* Translators: the name of a file, and a sentence that says why. */
  g_autofree char *told = g_strdup_printf (_ ("“%s” is not imported. %s"), self->file_name, why);

  gtk_widget_activate_action (GTK_WIDGET (parent), "win.tell", "s", told);
  gtk_window_destroy (GTK_WINDOW (self));
}

static char *
say_imported (GbRecordKind kind, guint n)
{
  if (kind == GB_RECORD_PART)
    return g_strdup_printf (ngettext ("%u part imported", "%u parts imported", n), n);
  return g_strdup_printf (ngettext ("%u purchase imported", "%u purchases imported", n), n);
}

/* Applies @edit (taken), and then the dialog goes. */
static void
apply (GbImportDialog *self, GbEdit *edit)
{
  GtkWindow *parent = gtk_window_get_transient_for (GTK_WINDOW (self));
  g_autofree char *done = say_imported (self->kind, count_accepted (self->import));
  g_autoptr (GbImport) import = g_steal_pointer (&self->import); /* what changes meanwhile is the edit itself, or makes it stale */
  g_autoptr (GError) error = NULL;

  if (gb_project_apply (self->project, edit, &error))
    {
      gtk_widget_activate_action (GTK_WIDGET (parent), "win.toast-undo", "s", done);
      gtk_window_destroy (GTK_WINDOW (self));
      return;
    }
  self->trouble = g_strdup (error->message);
  if (self->stale)
    {
      read_table (self, import);
      return;
    }
  self->import = g_steal_pointer (&import);
  show_words (self);
}

/* What comes of @work, which stays the caller's. */
static void
finish (GbImportDialog *self, GbImportWork *work, const GError *error)
{
  gboolean first = !g_str_equal (gtk_stack_get_visible_child_name (self->stack), "table");

  if (error != NULL)
    {
      give_up (self, error->message);
      return;
    }
  self->import = g_steal_pointer (&work->import);
  gtk_spinner_stop (self->spinner);
  gb_import_preview_show (self->preview, self->import, gb_project_get_build (self->project));
  show_words (self);
  /* Where the build changed meanwhile the builder looks once more. */
  if (work->edit != NULL && !self->stale)
    {
      apply (self, g_steal_pointer (&work->edit));
      return;
    }
  if (first)
    {
      gtk_stack_set_visible_child_name (self->stack, "table");
      show_hidden (self);
      present (self);
    }
  if (self->stale)
    {
      g_autoptr (GbImport) like = g_steal_pointer (&self->import);

      read_table (self, like);
    }
}

/* What happens ------------------------------------------------------------------------------------------------------ */

static void
field_chosen_cb (GbImportDialog *self, guint column, const GbField *field)
{
  GbImportWork *work = take_import (self);

  gb_import_work_wish (work, (GbImportWish){ column, TRUE, FALSE, field, NULL });
  start (self, work);
}

static void
unit_chosen_cb (GbImportDialog *self, guint column, const char *unit)
{
  GbImportWork *work = take_import (self);

  gb_import_work_wish (work, (GbImportWish){ column, FALSE, TRUE, NULL, (char *) unit });
  start (self, work);
}

static void
import_clicked_cb (GbImportDialog *self)
{
  GbImportWork *work = take_import (self);

  work->wants_edit = TRUE;
  work->owner = self->kind == GB_RECORD_PART ? gb_group_choice_get (self->group_input) : 0;
  start (self, work);
}

static void
refused_only_toggled_cb (GbImportDialog *self)
{
  gb_import_preview_set_refused_only (self->preview, gtk_check_button_get_active (self->refused_only));
}

static void
project_changed_cb (GbImportDialog *self)
{
  g_autoptr (GbImport) like = g_steal_pointer (&self->import);

  show_groups (self);
  if (like != NULL)
    read_table (self, like);
  else
    self->stale = TRUE;
}

/* Reading ----------------------------------------------------------------------------------------------------------- */

static gboolean
read_more_cb (const char *contents, goffset size, gpointer data)
{
  return size < READ_AT_MOST;
}

static void
loaded_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GbImportDialog) self = weak_take (data);
  g_autoptr (GError) error = NULL;
  g_autofree char *contents = NULL;
  gsize length;

  g_file_load_partial_contents_finish (G_FILE (source), result, &contents, &length, NULL, &error);
  if (self == NULL)
    return;
  if (error != NULL)
    {
      give_up (self, error->message);
      return;
    }
  self->bytes = g_bytes_new_take (g_steal_pointer (&contents), length);
  read_table (self, NULL);
}

/* As large as its parent lets it be, for tables are wide. */
static void
set_size (GbImportDialog *self, GtkWindow *parent)
{
  int width, height;

  gtk_window_get_default_size (parent, &width, &height);
  width = MAX (width, gtk_widget_get_width (GTK_WIDGET (parent)));
  height = MAX (height, gtk_widget_get_height (GTK_WIDGET (parent)));
  gtk_window_set_default_size (GTK_WINDOW (self), CLAMP (width - MARGIN, LEAST_WIDTH, MOST_WIDTH),
                               CLAMP (height - MARGIN, LEAST_HEIGHT, MOST_HEIGHT));
}

/* The name may be in any characters. */
static char *
shown_name (GFile *file)
{
  g_autofree char *base = g_file_get_basename (file);

  return base != NULL ? g_filename_display_name (base) : g_file_get_uri (file);
}

void
gb_import_dialog_present (GtkWindow *parent, GbProject *project, GbRecordKind kind, GFile *file)
{
  const char *reason = gb_project_get_read_only_reason (project);
  GbImportDialog *self;

  g_return_if_fail (GTK_IS_WINDOW (parent) && GB_IS_PROJECT (project) && G_IS_FILE (file));
  g_return_if_fail (kind == GB_RECORD_PART || kind == GB_RECORD_LINE);
  if (reason != NULL)
    {
      gtk_widget_activate_action (GTK_WIDGET (parent), "win.tell", "s", reason);
      return;
    }
  self = g_object_new (GB_TYPE_IMPORT_DIALOG, "transient-for", parent, NULL);
  self->project = g_object_ref (project);
  self->kind = kind;
  self->file_name = shown_name (file);
  self->changed_id = g_signal_connect_swapped (project, "changed", G_CALLBACK (project_changed_cb), self);
  adw_window_title_set_title (self->title, kind == GB_RECORD_PART ? _ ("Import Parts") : _ ("Import Purchases"));
  adw_window_title_set_subtitle (self->title, self->file_name);
  gtk_window_set_title (GTK_WINDOW (self), adw_window_title_get_title (self->title));
  set_size (self, parent);
  show_groups (self);
  self->present_id = g_timeout_add (PATIENCE, present_cb, self);
  g_file_load_partial_contents_async (file, self->cancellable, read_more_cb, loaded_cb, weak_new (self));
}

/* Object ------------------------------------------------------------------------------------------------------------ */

static void
gb_import_dialog_dispose (GObject *object)
{
  GbImportDialog *self = GB_IMPORT_DIALOG (object);

  g_cancellable_cancel (self->cancellable);
  g_clear_handle_id (&self->present_id, g_source_remove);
  g_clear_signal_handler (&self->changed_id, self->project);
  gtk_widget_dispose_template (GTK_WIDGET (self), GB_TYPE_IMPORT_DIALOG);
  g_clear_object (&self->project);
  G_OBJECT_CLASS (gb_import_dialog_parent_class)->dispose (object);
}

static void
gb_import_dialog_finalize (GObject *object)
{
  GbImportDialog *self = GB_IMPORT_DIALOG (object);

  g_clear_pointer (&self->import, gb_import_free);
  g_clear_pointer (&self->bytes, g_bytes_unref);
  g_object_unref (self->cancellable);
  g_free (self->file_name);
  g_free (self->trouble);
  G_OBJECT_CLASS (gb_import_dialog_parent_class)->finalize (object);
}

static void
gb_import_dialog_class_init (GbImportDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gb_import_dialog_dispose;
  G_OBJECT_CLASS (klass)->finalize = gb_import_dialog_finalize;
  g_type_ensure (GB_TYPE_IMPORT_PREVIEW);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/garboard/Garboard/import-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, GbImportDialog, title);
  gtk_widget_class_bind_template_child (widget_class, GbImportDialog, import_button);
  gtk_widget_class_bind_template_child (widget_class, GbImportDialog, stack);
  gtk_widget_class_bind_template_child (widget_class, GbImportDialog, summary);
  gtk_widget_class_bind_template_child (widget_class, GbImportDialog, spinner);
  gtk_widget_class_bind_template_child (widget_class, GbImportDialog, hint);
  gtk_widget_class_bind_template_child (widget_class, GbImportDialog, group_box);
  gtk_widget_class_bind_template_child (widget_class, GbImportDialog, group_input);
  gtk_widget_class_bind_template_child (widget_class, GbImportDialog, refused_only);
  gtk_widget_class_bind_template_child (widget_class, GbImportDialog, preview);
  gtk_widget_class_bind_template_child (widget_class, GbImportDialog, hidden);
  gtk_widget_class_bind_template_callback (widget_class, import_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, refused_only_toggled_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
gb_import_dialog_init (GbImportDialog *self)
{
  self->cancellable = g_cancellable_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
  gb_group_choice_init (self->group_input);
  g_signal_connect_object (self->preview, "field-chosen", G_CALLBACK (field_chosen_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->preview, "unit-chosen", G_CALLBACK (unit_chosen_cb), self, G_CONNECT_SWAPPED);
}
