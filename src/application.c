/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-application"

#include "application.h"

#include <glib/gi18n-lib.h>

#include "widgets/resources.h"
#include "window.h"

struct _GbApplication
{
  AdwApplication parent_instance;

  GSettings *settings;
};

G_DEFINE_FINAL_TYPE (GbApplication, gb_application, ADW_TYPE_APPLICATION)

/* Appearance -------------------------------------------------------------------------------------------------------- */

static void
appearance_changed_cb (GSettings *settings, const char *key, GbApplication *self)
{
  static const struct
  {
    const char *name;
    AdwColorScheme scheme;
  } schemes[] = {
    { "system", ADW_COLOR_SCHEME_DEFAULT }, { "light", ADW_COLOR_SCHEME_FORCE_LIGHT }, { "dark", ADW_COLOR_SCHEME_FORCE_DARK }
  };
  g_autofree char *appearance = g_settings_get_string (settings, "appearance");

  for (guint i = 0; i < G_N_ELEMENTS (schemes); i++)
    if (g_str_equal (schemes[i].name, appearance))
      adw_style_manager_set_color_scheme (adw_style_manager_get_default (), schemes[i].scheme);
}

/* Actions ----------------------------------------------------------------------------------------------------------- */

static void
new_window_action (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  gtk_window_present (GTK_WINDOW (gb_window_new (data)));
}

static void
quit_action (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  /* Every edit is on disk already; closing a window only commits the cell that is being typed. */
  while (gtk_application_get_windows (data) != NULL)
    {
      GtkWindow *window = gtk_application_get_windows (data)->data;

      gtk_window_close (window);
      if (gtk_application_get_windows (data) != NULL && gtk_application_get_windows (data)->data == window)
        gtk_window_destroy (window);
    }
}

static void
about_action (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  GtkWindow *parent = gtk_application_get_active_window (data);

  adw_show_about_window (parent, "application-name", "Garboard", "application-icon", GB_APP_ID, "version", GB_VERSION, "developer-name",
                         _ ("The Garboard developers"), "license-type", GTK_LICENSE_GPL_3_0, "comments",
                         _ ("For somebody who builds a small boat at home. An aid to the builder: try the boat in sheltered shallow "
                            "water, wear a buoyancy aid, and let local rules and a qualified person decide."),
                         NULL);
}

static const GActionEntry actions[] = {
  { "new-window", new_window_action },
  { "quit", quit_action },
  { "about", about_action },
};

static const struct
{
  const char *action;
  const char *accels[3];
} accelerators[] = {
  { "app.new-window", { "<Control><Shift>n" } },
  { "app.quit", { "<Control>q" } },
  { "win.new-build", { "<Control>n" } },
  { "win.open", { "<Control>o" } },
  { "win.save-copy", { "<Control><Shift>s" } },
  { "win.undo", { "<Control>z" } },
  { "win.redo", { "<Control><Shift>z", "<Control>y" } },
  { "win.find", { "<Control>f" } },
  { "win.close", { "<Control>w" } },
  { "win.preferences", { "<Control>comma" } },
  { "win.show-help-overlay", { "<Control>question", "F1" } },
  { "win.page::parts", { "<Alt>1" } },
  { "win.page::materials", { "<Alt>2" } },
  { "win.page::purchases", { "<Alt>3" } },
  { "win.page::hulls", { "<Alt>4" } },
  { "win.page::afloat", { "<Alt>5" } },
  { "win.page::weight", { "<Alt>6" } },
  { "win.page::money", { "<Alt>7" } },
};

/* Files ------------------------------------------------------------------------------------------------------------- */

static GbWindow *
find_window (GbApplication *self, const char *path)
{
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (self)); l != NULL; l = l->next)
    {
      GbProject *project = GB_IS_WINDOW (l->data) ? gb_window_get_project (l->data) : NULL;

      if (project != NULL && g_strcmp0 (gb_project_get_path (project), path) == 0)
        return l->data;
    }
  return NULL;
}

void
gb_application_open_path (GbApplication *self, const char *path, GtkWindow *window)
{
  g_autofree char *full = g_canonicalize_filename (path, NULL);
  GbWindow *target = find_window (self, full);

  if (target == NULL)
    {
      gboolean free_window = window != NULL && GB_IS_WINDOW (window) && gb_window_get_project (GB_WINDOW (window)) == NULL;

      target = free_window ? GB_WINDOW (window) : gb_window_new (self);
      gb_window_open (target, full);
    }
  gtk_window_present (GTK_WINDOW (target));
}

static void
gb_application_open (GApplication *application, GFile **files, int n_files, const char *hint)
{
  for (int i = 0; i < n_files; i++)
    {
      g_autofree char *path = g_file_get_path (files[i]);

      if (path != NULL)
        gb_application_open_path (GB_APPLICATION (application), path,
                                  gtk_application_get_active_window (GTK_APPLICATION (application)));
    }
}

static void
gb_application_activate (GApplication *application)
{
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (application));

  gtk_window_present (window != NULL ? window : GTK_WINDOW (gb_window_new (GB_APPLICATION (application))));
}

static void
gb_application_startup (GApplication *application)
{
  GbApplication *self = GB_APPLICATION (application);

  gb_resources_register ();
  G_APPLICATION_CLASS (gb_application_parent_class)->startup (application);
  gtk_window_set_default_icon_name (GB_APP_ID);

  self->settings = g_settings_new (GB_APP_ID);
  g_signal_connect_object (self->settings, "changed::appearance", G_CALLBACK (appearance_changed_cb), self, 0);
  appearance_changed_cb (self->settings, "appearance", self);

  g_action_map_add_action_entries (G_ACTION_MAP (self), actions, G_N_ELEMENTS (actions), self);
  for (guint i = 0; i < G_N_ELEMENTS (accelerators); i++)
    gtk_application_set_accels_for_action (GTK_APPLICATION (self), accelerators[i].action, accelerators[i].accels);
}

static void
gb_application_dispose (GObject *object)
{
  g_clear_object (&GB_APPLICATION (object)->settings);
  G_OBJECT_CLASS (gb_application_parent_class)->dispose (object);
}

static void
gb_application_class_init (GbApplicationClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = gb_application_dispose;
  G_APPLICATION_CLASS (klass)->startup = gb_application_startup;
  G_APPLICATION_CLASS (klass)->activate = gb_application_activate;
  G_APPLICATION_CLASS (klass)->open = gb_application_open;
}

static void
gb_application_init (GbApplication *self)
{
}

GbApplication *
gb_application_new (void)
{
  return g_object_new (GB_TYPE_APPLICATION, "application-id", GB_APP_ID, "flags", G_APPLICATION_HANDLES_OPEN, "resource-base-path",
                       "/org/garboard/Garboard", NULL);
}

int
gb_application_run (int argc, char *argv[])
{
  g_autoptr (GbApplication) application = gb_application_new ();

  return g_application_run (G_APPLICATION (application), argc, argv);
}
