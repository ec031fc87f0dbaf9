/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-window"

#include "window-private.h"

#include <glib/gi18n-lib.h>

#include "pages/afloat-page.h"
#include "pages/hulls-page.h"
#include "pages/materials-page.h"
#include "pages/money-page.h"
#include "pages/parts-page.h"
#include "pages/purchases-page.h"
#include "pages/weight-page.h"
#include "preferences.h"

G_DEFINE_FINAL_TYPE (GbWindow, gb_window, ADW_TYPE_APPLICATION_WINDOW)

/* Below this width the sidebar shows icons alone. */
#define NARROW_WIDTH 1000

/* The pages in the sidebar's order. 'add' and 'find' are the page's own actions behind the buttons in the header. */
static const struct
{
  const char *name;
  const char *label;
  const char *icon;
  GType (*type) (void);
  const char *add, *add_label;
  const char *find;
  GbRecordKind kinds[7]; /* whose edits live here; ends with GB_N_RECORDS */
} pages[] = {
  { "parts", N_ ("Parts"), "gb-parts-symbolic", gb_parts_page_get_type, "parts.add", N_ ("Part"), "parts.find",
    { GB_RECORD_PART, GB_RECORD_WEIGHING, GB_N_RECORDS } },
  { "materials", N_ ("Materials"), "gb-materials-symbolic", gb_materials_page_get_type, "materials.add", N_ ("Add"),
    "materials.find", { GB_RECORD_MATERIAL, GB_RECORD_SAMPLE, GB_RECORD_STOCK, GB_N_RECORDS } },
  { "purchases", N_ ("Purchases"), "gb-purchases-symbolic", gb_purchases_page_get_type, "purchases.add", N_ ("Receipt"),
    "purchases.find", { GB_RECORD_PURCHASE, GB_RECORD_LINE, GB_N_RECORDS } },
  { "hulls", N_ ("Hulls"), "gb-hulls-symbolic", gb_hulls_page_get_type, "hulls.add", N_ ("Hull"), NULL,
    { GB_RECORD_HULL, GB_RECORD_STATION, GB_RECORD_OFFSET, GB_RECORD_OPENING, GB_RECORD_CORNER, GB_N_RECORDS } },
  { "afloat", N_ ("Afloat"), "gb-afloat-symbolic", gb_afloat_page_get_type, "afloat.add", N_ ("Load"), NULL,
    { GB_RECORD_CONDITION, GB_RECORD_LOAD, GB_RECORD_INCLINING, GB_RECORD_SHIFT, GB_RECORD_TUB, GB_RECORD_TUB_LOAD, GB_N_RECORDS } },
  { "weight", N_ ("Weight"), "gb-weight-symbolic", gb_weight_page_get_type, NULL, NULL, NULL,
    { GB_RECORD_WEIGHING, GB_RECORD_READING, GB_N_RECORDS } },
  { "money", N_ ("Money"), "gb-money-symbolic", gb_money_page_get_type, NULL, NULL, NULL, { GB_RECORD_CATEGORY, GB_N_RECORDS } },
};

static int
page_index (const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    if (g_strcmp0 (pages[i].name, name) == 0)
      return (int) i;
  return -1;
}

/* What is shown -------------------------------------------------------------------------------------------------- */

static void
show_toast (GbWindow *self, const char *sentence, gboolean undo)
{
  g_autofree char *escaped = g_markup_escape_text (sentence, -1);
  AdwToast *toast = adw_toast_new (escaped);

  if (undo)
    {
      adw_toast_set_button_label (toast, _ ("Undo"));
      adw_toast_set_action_name (toast, "win.undo");
    }
  if (self->toast != NULL)
    adw_toast_dismiss (self->toast);
  g_set_weak_pointer (&self->toast, toast);
  adw_toast_overlay_add_toast (self->toasts, toast);
}

void
gb_window_tell (GbWindow *self, const char *sentence)
{
  g_return_if_fail (GB_IS_WINDOW (self));
  show_toast (self, sentence, FALSE);
}

static void
update_title (GbWindow *self)
{
  g_autofree char *file = NULL;
  g_autofree char *kept = NULL;
  const char *name;
  GDateTime *at;

  if (self->project == NULL)
    {
      adw_window_title_set_title (self->title, "Garboard");
      adw_window_title_set_subtitle (self->title, "");
      gtk_window_set_title (GTK_WINDOW (self), "Garboard");
      return;
    }
  file = g_path_get_basename (gb_project_get_path (self->project));
  name = gb_project_get_title (self->project);
  if (name == NULL || *name == '\0')
    name = file;
  at = gb_project_get_kept_at (self->project);
  if (gb_project_get_read_only_reason (self->project) != NULL)
    kept = g_strdup (_ ("open to read only"));
  else if (at != NULL)
    {
      g_autofree char *time = g_date_time_format (at, "%H:%M");

      /* Translators: the time of day of the last edit. */
      kept = g_strdup_printf (_ ("all changes kept, %s"), time);
    }
  else
    kept = g_strdup (file);
  adw_window_title_set_title (self->title, name);
  adw_window_title_set_subtitle (self->title, g_strcmp0 (name, kept) != 0 ? kept : "");
  gtk_window_set_title (GTK_WINDOW (self), name);
}

static void
set_history_tooltip (GtkButton *button, const char *format, const char *plain, const char *words)
{
  g_autofree char *text = words != NULL ? g_strdup_printf (format, words) : g_strdup (plain);

  gtk_widget_set_tooltip_text (GTK_WIDGET (button), text);
}

static void
update_actions (GbWindow *self)
{
  const char *undo = self->project != NULL ? gb_project_get_undo_words (self->project) : NULL;
  const char *redo = self->project != NULL ? gb_project_get_redo_words (self->project) : NULL;
  gboolean editable = self->project != NULL && gb_project_get_read_only_reason (self->project) == NULL;
  int page = page_index (gtk_stack_get_visible_child_name (self->pages));
  gboolean can_add = self->project != NULL && page >= 0 && pages[page].add != NULL;
  gboolean can_find = self->project != NULL && page >= 0 && pages[page].find != NULL;

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.undo", undo != NULL && editable);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.redo", redo != NULL && editable);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.add", can_add && editable);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.find", can_find);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.page", self->project != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.build-settings", editable);
  gtk_widget_set_visible (self->add_button, can_add);
  gtk_widget_set_visible (self->find_button, can_find);
  if (can_add)
    adw_button_content_set_label (self->add_content, _ (pages[page].add_label));

  /* Translators: what will be undone, as "thickness of Side panel". */
  set_history_tooltip (self->undo_button, _ ("Undo: %s"), _ ("Undo"), undo);
  set_history_tooltip (self->redo_button, _ ("Redo: %s"), _ ("Redo"), redo);
  gb_window_update_file_actions (self);
}

/* The words of undo, the title and the like, which follow each change. */
static void
project_notify_cb (GbProject *project, GParamSpec *pspec, GbWindow *self)
{
  update_title (self);
  update_actions (self);
}

static void
project_changed_cb (GbProject *project, GbChanges *changes, GbWindow *self)
{
  update_title (self);
}

static gboolean
page_has_kind (guint page, GbRecordKind kind)
{
  for (const GbRecordKind *k = pages[page].kinds; *k != GB_N_RECORDS; k++)
    if (*k == kind)
      return TRUE;
  return FALSE;
}

/* To the page of the edit, unless it is in sight. The page then shows the row. */
static void
project_place_cb (GbProject *project, const GbPlace *place, GbWindow *self)
{
  int now = page_index (gtk_stack_get_visible_child_name (self->pages));

  if (now >= 0 && page_has_kind ((guint) now, place->kind))
    return;
  for (guint i = G_N_ELEMENTS (pages); i-- > 0;)
    if (page_has_kind (i, place->kind))
      {
        gb_window_show_page (self, pages[i].name);
        return;
      }
}

static void
show_notice (GbWindow *self)
{
  const char *reason = self->project != NULL ? gb_project_get_read_only_reason (self->project) : NULL;

  gtk_label_set_text (self->notice_label, reason != NULL ? reason : "");
  gtk_revealer_set_reveal_child (self->notice, reason != NULL);
}

void
gb_window_set_project (GbWindow *self, GbProject *project)
{
  if (self->project != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->project, self);
      /* A page's editor may hold a half-typed entry: leaving commits it. */
      gtk_window_set_focus (GTK_WINDOW (self), NULL);
    }
  /* Before the pages: one that is to show where an edit was must be in sight by then. */
  if (project != NULL)
    g_signal_connect_object (project, "place", G_CALLBACK (project_place_cb), self, 0);
  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    g_object_set (gtk_stack_get_child_by_name (self->pages, pages[i].name), "project", project, NULL);
  gb_strip_set_project (self->strip, project);

  g_set_object (&self->project, project);
  if (project != NULL)
    {
      g_signal_connect_object (project, "changed", G_CALLBACK (project_changed_cb), self, 0);
      g_signal_connect_object (project, "notify", G_CALLBACK (project_notify_cb), self, 0);
    }
  gtk_stack_set_visible_child_name (self->main, project != NULL ? "build" : "welcome");
  show_notice (self);
  update_title (self);
  update_actions (self);
  if (project != NULL)
    gb_window_show_page (self, "parts");
}

GbProject *
gb_window_get_project (GbWindow *self)
{
  g_return_val_if_fail (GB_IS_WINDOW (self), NULL);
  return self->project;
}

/* Pages ------------------------------------------------------------------------------------------------------------- */

void
gb_window_show_page (GbWindow *self, const char *name)
{
  int index = page_index (name);

  g_return_if_fail (GB_IS_WINDOW (self));
  if (index < 0)
    return;
  gtk_stack_set_visible_child_name (self->pages, name);
  gtk_list_box_select_row (self->sidebar, gtk_list_box_get_row_at_index (self->sidebar, index));
}

GtkWidget *
gb_window_get_page (GbWindow *self, const char *name)
{
  g_return_val_if_fail (GB_IS_WINDOW (self), NULL);
  return gtk_stack_get_child_by_name (self->pages, name);
}

static void
sidebar_selected_cb (GtkListBox *sidebar, GtkListBoxRow *row, gpointer data)
{
  GbWindow *self = GB_WINDOW (gtk_widget_get_root (GTK_WIDGET (sidebar)));

  if (row != NULL)
    gtk_stack_set_visible_child_name (self->pages, pages[gtk_list_box_row_get_index (row)].name);
}

static void
page_shown_cb (GObject *stack, GParamSpec *pspec, gpointer data)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (stack));

  if (GB_IS_WINDOW (root))
    update_actions (GB_WINDOW (root));
}

static void
add_page (GbWindow *self, guint i)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *label = gtk_label_new (_ (pages[i].label));

  gtk_stack_add_named (self->pages, g_object_new (pages[i].type (), NULL), pages[i].name);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_box_append (GTK_BOX (box), gtk_image_new_from_icon_name (pages[i].icon));
  gtk_box_append (GTK_BOX (box), label);
  gtk_widget_set_tooltip_text (box, _ (pages[i].label));
  gtk_list_box_append (self->sidebar, box);
}

/* What is picked in the tree lights up in the drawing. */
static void
parts_selected_cb (GbGrid *grid, GbWindow *self)
{
  GbWeightPage *weight = GB_WEIGHT_PAGE (gb_window_get_page (self, "weight"));
  guint n;
  g_autofree gint64 *ids = gb_grid_dup_selected (grid, &n);

  ids = g_renew (gint64, ids, n + 1);
  ids[n] = 0;
  gb_weight_page_set_selected (weight, ids);
}

/* Shows the words beside the icons of the sidebar, or not. */
static gboolean
apply_narrow_cb (gpointer data)
{
  GbWindow *self = data;

  self->narrow_id = 0;
  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    {
      GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->sidebar, (int) i);

      gtk_widget_set_visible (gtk_widget_get_last_child (gtk_list_box_row_get_child (row)), !self->narrow);
    }
  return G_SOURCE_REMOVE;
}

static void
gb_window_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  GbWindow *self = GB_WINDOW (widget);
  gboolean narrow = width < NARROW_WIDTH;

  GTK_WIDGET_CLASS (gb_window_parent_class)->size_allocate (widget, width, height, baseline);
  /* Nothing may change its size while sizes are handed out, so that waits for the next turn. */
  if (narrow != self->narrow && self->narrow_id == 0)
    {
      self->narrow = narrow;
      self->narrow_id = g_idle_add_full (G_PRIORITY_HIGH_IDLE, apply_narrow_cb, self, NULL);
    }
}

/* Actions ----------------------------------------------------------------------------------------------------------- */

static void
undo_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GbWindow *self = GB_WINDOW (widget);
  g_autoptr (GError) error = NULL;
  gboolean done = g_str_equal (name, "win.undo") ? gb_project_undo (self->project, &error) : gb_project_redo (self->project, &error);

  if (!done)
    gb_window_tell (self, error->message);
}

static void
page_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gb_window_show_page (GB_WINDOW (widget), g_variant_get_string (parameter, NULL));
}

/* A page and one of its views. */
static void
view_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GbWindow *self = GB_WINDOW (widget);
  const char *page, *view;
  GtkWidget *shown;
  GObject *views;

  g_variant_get (parameter, "(&s&s)", &page, &view);
  shown = gb_window_get_page (self, page);
  if (shown == NULL)
    return;
  gb_window_show_page (self, page);
  views = gtk_widget_get_template_child (shown, G_OBJECT_TYPE (shown), "views");
  if (GTK_IS_STACK (views))
    gtk_stack_set_visible_child_name (GTK_STACK (views), view);
}

static void
go_to_part_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GbWindow *self = GB_WINDOW (widget);
  gint64 id = g_variant_get_int64 (parameter);

  if (self->project == NULL || gb_boat_part (gb_project_get_boat (self->project), id) == NULL)
    return;
  gb_window_show_page (self, "parts");
  gb_parts_page_show_part (GB_PARTS_PAGE (gb_window_get_page (self, "parts")), id);
}

static void
add_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GbWindow *self = GB_WINDOW (widget);
  int page = page_index (gtk_stack_get_visible_child_name (self->pages));
  const char *action;

  if (page < 0)
    return;
  action = g_str_equal (name, "win.add") ? pages[page].add : pages[page].find;
  if (action != NULL)
    gtk_widget_activate_action (gtk_stack_get_visible_child (self->pages), action, NULL);
}

static void
tell_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gb_window_tell (GB_WINDOW (widget), g_variant_get_string (parameter, NULL));
}

static void
toast_undo_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  show_toast (GB_WINDOW (widget), g_variant_get_string (parameter, NULL), TRUE);
}

static void
preferences_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GbWindow *self = GB_WINDOW (widget);

  gb_preferences_present (GTK_WINDOW (self), self->project, g_str_equal (name, "win.build-settings"));
}

static void
close_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gtk_window_close (GTK_WINDOW (widget));
}

/* Object ------------------------------------------------------------------------------------------------------------ */

static void
save_size (GbWindow *self)
{
  int width, height;

  gtk_window_get_default_size (GTK_WINDOW (self), &width, &height);
  g_settings_set (self->settings, "window-size", "(ii)", width, height);
  g_settings_set_boolean (self->settings, "window-maximized", gtk_window_is_maximized (GTK_WINDOW (self)));
}

static void
restore_size (GbWindow *self)
{
  int width, height;

  g_settings_get (self->settings, "window-size", "(ii)", &width, &height);
  gtk_window_set_default_size (GTK_WINDOW (self), width, height);
  if (g_settings_get_boolean (self->settings, "window-maximized"))
    gtk_window_maximize (GTK_WINDOW (self));
}

static gboolean
gb_window_close_request (GtkWindow *window)
{
  /* What stands in a cell is committed as the focus leaves it; all else is on disk already. */
  gtk_window_set_focus (window, NULL);
  save_size (GB_WINDOW (window));
  return GTK_WINDOW_CLASS (gb_window_parent_class)->close_request (window);
}

static void
gb_window_dispose (GObject *object)
{
  GbWindow *self = GB_WINDOW (object);

  g_clear_handle_id (&self->narrow_id, g_source_remove);
  g_clear_weak_pointer (&self->toast);
  if (self->project != NULL)
    gb_window_set_project (self, NULL);
  g_clear_object (&self->settings);
  gtk_widget_dispose_template (GTK_WIDGET (self), GB_TYPE_WINDOW);
  G_OBJECT_CLASS (gb_window_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, GbWindow, title);
  gtk_widget_class_bind_template_child (widget_class, GbWindow, undo_button);
  gtk_widget_class_bind_template_child (widget_class, GbWindow, redo_button);
  gtk_widget_class_bind_template_child (widget_class, GbWindow, add_button);
  gtk_widget_class_bind_template_child (widget_class, GbWindow, add_content);
  gtk_widget_class_bind_template_child (widget_class, GbWindow, find_button);
  gtk_widget_class_bind_template_child (widget_class, GbWindow, notice);
  gtk_widget_class_bind_template_child (widget_class, GbWindow, notice_label);
  gtk_widget_class_bind_template_child (widget_class, GbWindow, toasts);
  gtk_widget_class_bind_template_child (widget_class, GbWindow, main);
  gtk_widget_class_bind_template_child (widget_class, GbWindow, sidebar);
  gtk_widget_class_bind_template_child (widget_class, GbWindow, pages);
  gtk_widget_class_bind_template_child (widget_class, GbWindow, strip);
  gtk_widget_class_bind_template_child (widget_class, GbWindow, demo_menu);
  gtk_widget_class_bind_template_child (widget_class, GbWindow, recent_menu);
  gtk_widget_class_bind_template_child (widget_class, GbWindow, report_menu);
}

static void
gb_window_class_init (GbWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gb_window_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = gb_window_close_request;
  widget_class->size_allocate = gb_window_size_allocate;

  g_type_ensure (GB_TYPE_WELCOME_PAGE);
  g_type_ensure (GB_TYPE_STRIP);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/garboard/Garboard/window.ui");
  bind_children (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, sidebar_selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, page_shown_cb);

  gtk_widget_class_install_action (widget_class, "win.undo", NULL, undo_action);
  gtk_widget_class_install_action (widget_class, "win.redo", NULL, undo_action);
  gtk_widget_class_install_action (widget_class, "win.page", "s", page_action);
  gtk_widget_class_install_action (widget_class, "win.view", "(ss)", view_action);
  gtk_widget_class_install_action (widget_class, "win.go-to-part", "x", go_to_part_action);
  gtk_widget_class_install_action (widget_class, "win.add", NULL, add_action);
  gtk_widget_class_install_action (widget_class, "win.find", NULL, add_action);
  gtk_widget_class_install_action (widget_class, "win.tell", "s", tell_action);
  gtk_widget_class_install_action (widget_class, "win.toast-undo", "s", toast_undo_action);
  gtk_widget_class_install_action (widget_class, "win.preferences", NULL, preferences_action);
  gtk_widget_class_install_action (widget_class, "win.build-settings", NULL, preferences_action);
  gtk_widget_class_install_action (widget_class, "win.close", NULL, close_action);
  gb_window_install_file_actions (widget_class);
}

static void
gb_window_init (GbWindow *self)
{
  self->settings = g_settings_new (GB_APP_ID);
  gtk_widget_init_template (GTK_WIDGET (self));
  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    add_page (self, i);
  g_signal_connect_object (gb_parts_page_get_grid (GB_PARTS_PAGE (gb_window_get_page (self, "parts"))), "selection-changed",
                           G_CALLBACK (parts_selected_cb), self, 0);
  gb_window_fill_file_menus (self);
  gb_window_accept_drops (self);
  restore_size (self);
  update_title (self);
  update_actions (self);
}

GbWindow *
gb_window_new (GbApplication *application)
{
  return g_object_new (GB_TYPE_WINDOW, "application", application, NULL);
}
