/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-welcome-page"

#include "welcome-page.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

struct _GbWelcomePage
{
  GtkBox parent_instance;

  GtkListBox *demos;
  GtkWidget *recent_box;
  GtkListBox *recent;
  gulong recent_id;
};

G_DEFINE_FINAL_TYPE (GbWelcomePage, gb_welcome_page, GTK_TYPE_BOX)

#define MAX_RECENT 10

static const struct
{
  const char *file;
  const char *title;
  const char *summary;
} known_demos[] = {
  { "plover.garboard", N_ ("Plover, a pram"), N_ ("Stitch and glue, half built") },
  { "reedling.garboard", N_ ("Reedling, a canoe"), N_ ("Strip planked, just begun, in feet and inches") },
  { "petrel.garboard", N_ ("Petrel, an outrigger"), N_ ("Nearly done, and over its limits") },
};

static void
demo_free (gpointer data)
{
  GbDemo *demo = data;

  g_free (demo->path);
  g_free (demo);
}

/* The folders that may hold the demos: beside the build when it is run from there, else the system's. */
static GPtrArray *
demo_folders (void)
{
  GPtrArray *folders = g_ptr_array_new_with_free_func (g_free);
  const char *given = g_getenv ("GARBOARD_DEMO_DIR");

  if (given != NULL)
    g_ptr_array_add (folders, g_strdup (given));
  g_ptr_array_add (folders, g_build_filename (GB_PKGDATADIR, "demos", NULL));
  for (const char *const *dir = g_get_system_data_dirs (); *dir != NULL; dir++)
    g_ptr_array_add (folders, g_build_filename (*dir, "garboard", "demos", NULL));
  return folders;
}

GPtrArray *
gb_demos_find (void)
{
  GPtrArray *demos = g_ptr_array_new_with_free_func (demo_free);
  g_autoptr (GPtrArray) folders = demo_folders ();

  for (guint i = 0; i < G_N_ELEMENTS (known_demos); i++)
    for (guint j = 0; j < folders->len; j++)
      {
        g_autofree char *path = g_build_filename (folders->pdata[j], known_demos[i].file, NULL);
        GbDemo *demo;

        if (!g_file_test (path, G_FILE_TEST_IS_REGULAR))
          continue;
        demo = g_new0 (GbDemo, 1);
        demo->path = g_steal_pointer (&path);
        demo->title = _ (known_demos[i].title);
        demo->summary = _ (known_demos[i].summary);
        g_ptr_array_add (demos, demo);
        break;
      }
  return demos;
}

static int
compare_visited (gconstpointer a, gconstpointer b)
{
  GDateTime *s = gtk_recent_info_get_modified (*(GtkRecentInfo *const *) a);
  GDateTime *t = gtk_recent_info_get_modified (*(GtkRecentInfo *const *) b);

  return g_date_time_compare (t, s);
}

GPtrArray *
gb_recent_builds (void)
{
  GPtrArray *builds = g_ptr_array_new_with_free_func ((GDestroyNotify) gtk_recent_info_unref);
  GList *all = gtk_recent_manager_get_items (gtk_recent_manager_get_default ());

  for (GList *l = all; l != NULL; l = l->next)
    if (g_str_has_suffix (gtk_recent_info_get_uri (l->data), ".garboard") && gtk_recent_info_exists (l->data))
      g_ptr_array_add (builds, gtk_recent_info_ref (l->data));
  g_list_free_full (all, (GDestroyNotify) gtk_recent_info_unref);

  g_ptr_array_sort (builds, compare_visited);
  if (builds->len > MAX_RECENT)
    g_ptr_array_set_size (builds, MAX_RECENT);
  return builds;
}

const char *
gb_builds_folder (void)
{
  const char *documents = g_get_user_special_dir (G_USER_DIRECTORY_DOCUMENTS);

  return documents != NULL && g_file_test (documents, G_FILE_TEST_IS_DIR) ? documents : g_get_home_dir ();
}

static void
add_row (GtkListBox *list, const char *title, const char *subtitle, const char *path)
{
  GtkWidget *row = adw_action_row_new ();
  GtkWidget *arrow = gtk_image_new_from_icon_name ("go-next-symbolic");

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), title);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), subtitle);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), arrow);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), TRUE);
  g_object_set_data_full (G_OBJECT (row), "path", g_strdup (path), g_free);
  gtk_list_box_append (list, row);
}

static void
demo_activated_cb (GtkListBox *list, GtkListBoxRow *row, gpointer data)
{
  gtk_widget_activate_action (GTK_WIDGET (list), "win.open-demo", "s", g_object_get_data (G_OBJECT (row), "path"));
}

static void
recent_activated_cb (GtkListBox *list, GtkListBoxRow *row, gpointer data)
{
  gtk_widget_activate_action (GTK_WIDGET (list), "win.open-path", "s", g_object_get_data (G_OBJECT (row), "path"));
}

static void
fill_demos (GbWelcomePage *self)
{
  g_autoptr (GPtrArray) demos = gb_demos_find ();

  for (guint i = 0; i < demos->len; i++)
    {
      const GbDemo *demo = demos->pdata[i];

      add_row (self->demos, demo->title, demo->summary, demo->path);
    }
}

static void
fill_recent (GbWelcomePage *self)
{
  g_autoptr (GPtrArray) builds = gb_recent_builds ();
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->recent))) != NULL)
    gtk_list_box_remove (self->recent, child);
  for (guint i = 0; i < builds->len; i++)
    {
      g_autoptr (GFile) file = g_file_new_for_uri (gtk_recent_info_get_uri (builds->pdata[i]));
      g_autofree char *path = g_file_get_path (file);
      g_autofree char *folder = path != NULL ? g_path_get_dirname (path) : NULL;
      g_autofree char *shown = folder != NULL ? g_filename_display_name (folder) : NULL;

      if (path != NULL)
        add_row (self->recent, gtk_recent_info_get_display_name (builds->pdata[i]), shown, path);
    }
  gtk_widget_set_visible (self->recent_box, builds->len > 0);
}

static void
gb_welcome_page_dispose (GObject *object)
{
  GbWelcomePage *self = GB_WELCOME_PAGE (object);

  g_clear_signal_handler (&self->recent_id, gtk_recent_manager_get_default ());
  gtk_widget_dispose_template (GTK_WIDGET (self), GB_TYPE_WELCOME_PAGE);
  G_OBJECT_CLASS (gb_welcome_page_parent_class)->dispose (object);
}

static void
gb_welcome_page_class_init (GbWelcomePageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gb_welcome_page_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/garboard/Garboard/welcome-page.ui");
  gtk_widget_class_bind_template_child (widget_class, GbWelcomePage, demos);
  gtk_widget_class_bind_template_child (widget_class, GbWelcomePage, recent_box);
  gtk_widget_class_bind_template_child (widget_class, GbWelcomePage, recent);
  gtk_widget_class_bind_template_callback (widget_class, demo_activated_cb);
  gtk_widget_class_bind_template_callback (widget_class, recent_activated_cb);
}

static void
gb_welcome_page_init (GbWelcomePage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fill_demos (self);
  fill_recent (self);
  self->recent_id = g_signal_connect_object (gtk_recent_manager_get_default (), "changed", G_CALLBACK (fill_recent), self,
                                             G_CONNECT_SWAPPED);
}
