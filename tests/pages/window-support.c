/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window-support.h"

#include <gdk/x11/gdkx.h>
#include <glib/gstdio.h>
#include <string.h>

#include "store/store.h"
#include "store/text-form.h"

static GbApplication *application;
static char *home;
static const char *const demos[] = { "plover", "reedling", "petrel" };

/* The program's surroundings ---------------------------------------------------------------------------------------------- */

static void
pack_demo (const char *texts, const char *folder, const char *demo)
{
  g_autofree char *text_name = g_strconcat (demo, ".json", NULL);
  g_autofree char *file_name = g_strconcat (demo, ".garboard", NULL);
  g_autofree char *text_path = g_build_filename (texts, text_name, NULL);
  g_autofree char *path = g_build_filename (folder, file_name, NULL);
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GbBoat) boat = NULL;
  gsize length;

  g_file_get_contents (text_path, &text, &length, &error);
  g_assert_no_error (error);
  boat = gb_text_form_read (text, (gssize) length, &error);
  g_assert_no_error (error);
  gb_store_create (path, boat, FALSE, &error);
  g_assert_no_error (error);
}

static void
make_home (void)
{
  g_autofree char *texts = g_strdup (g_getenv ("GARBOARD_DEMO_DIR"));
  g_autofree char *folder = NULL;
  g_autoptr (GError) error = NULL;

  home = g_dir_make_tmp ("garboard-home-XXXXXX", &error);
  g_assert_no_error (error);
  g_setenv ("HOME", home, TRUE);
  g_setenv ("XDG_DATA_HOME", home, TRUE);
  g_setenv ("XDG_CONFIG_HOME", home, TRUE);
  g_setenv ("XDG_CACHE_HOME", home, TRUE);
  g_setenv ("XDG_RUNTIME_DIR", home, TRUE);
  folder = g_build_filename (home, "demos", NULL);
  g_assert_cmpint (g_mkdir (folder, 0755), ==, 0);
  for (guint i = 0; i < G_N_ELEMENTS (demos); i++)
    pack_demo (texts, folder, demos[i]);
  g_setenv ("GARBOARD_DEMO_DIR", folder, TRUE);
}

void
window_support_init (int *argc, char ***argv)
{
  g_autoptr (GError) error = NULL;

  make_home ();
  support_init (argc, argv);
  application = gb_application_new ();
  g_application_set_flags (G_APPLICATION (application),
                           g_application_get_flags (G_APPLICATION (application)) | G_APPLICATION_NON_UNIQUE);
  g_application_register (G_APPLICATION (application), NULL, &error);
  g_assert_no_error (error);
}

static void
remove_tree (const char *path)
{
  g_autoptr (GDir) dir = g_dir_open (path, 0, NULL);

  for (const char *name = dir != NULL ? g_dir_read_name (dir) : NULL; name != NULL; name = g_dir_read_name (dir))
    {
      g_autofree char *child = g_build_filename (path, name, NULL);

      remove_tree (child);
    }
  g_remove (path);
}

int
window_support_run (void)
{
  int result = g_test_run ();

  support_settle ();
  g_object_unref (application);
  remove_tree (home);
  g_free (home);
  return result;
}

const char *
window_support_home (void)
{
  return home;
}

char *
window_support_demo (const char *name)
{
  g_autofree char *file_name = g_strconcat (name, ".garboard", NULL);

  return g_build_filename (home, "demos", file_name, NULL);
}

char *
window_support_make (const char *name, const GbBoat *boat)
{
  g_autofree char *path = g_build_filename (home, name, NULL);
  g_autoptr (GbBoat) none = boat == NULL ? gb_boat_new () : NULL;
  g_autoptr (GError) error = NULL;

  gb_store_create (path, boat != NULL ? boat : none, TRUE, &error);
  g_assert_no_error (error);
  return g_steal_pointer (&path);
}

/* Windows ----------------------------------------------------------------------------------------------------------------- */

static void
run_xdotool (const char *verb, const char *first, const char *second)
{
  const char *argv[] = { "xdotool", verb, first, second, NULL };
  g_autoptr (GError) error = NULL;

  g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH | G_SPAWN_STDOUT_TO_DEV_NULL, NULL, NULL, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
}

void
window_support_focus (WindowSupport *self)
{
  GdkSurface *surface = gtk_native_get_surface (GTK_NATIVE (self->window));
  g_autofree char *xid = g_strdup_printf ("%lu", gdk_x11_surface_get_xid (surface));

  /* Without a window manager the newest window is not raised by itself. */
  run_xdotool ("windowraise", xid, NULL);
  run_xdotool ("windowfocus", "--sync", xid);
  support_until (gtk_window_is_active (GTK_WINDOW (self->window)));
}

void
window_support_open (WindowSupport *self, const char *path, int width, int height)
{
  *self = (WindowSupport){ .window = gb_window_new (application) };
  self->input.window = GTK_WINDOW (self->window);
  gtk_window_set_default_size (GTK_WINDOW (self->window), width, height);
  if (path != NULL)
    g_assert_true (gb_window_open (self->window, path));
  self->input.project = gb_window_get_project (self->window);
  gtk_window_present (GTK_WINDOW (self->window));
  support_until (gtk_widget_get_mapped (GTK_WIDGET (self->window)));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (self->window));
  run_xdotool ("mousemove", "1279", "899");
  window_support_focus (self);
  support_settle ();
}

void
window_support_close (WindowSupport *self)
{
  gpointer window = self->window;
  gpointer project = gb_window_get_project (self->window);

  g_object_add_weak_pointer (window, &window);
  if (project != NULL)
    g_object_add_weak_pointer (project, &project);
  gtk_window_close (GTK_WINDOW (self->window));
  support_until (window == NULL);
  support_until (project == NULL);
}

/* Looking ------------------------------------------------------------------------------------------------------------------ */

gpointer
window_support_child (gpointer widget, const char *id)
{
  GObject *child = gtk_widget_get_template_child (widget, G_OBJECT_TYPE (widget), id);

  g_assert_nonnull (child);
  return child;
}

GtkWidget *
window_support_page (WindowSupport *self, const char *name, const char *view)
{
  GtkWidget *page = gb_window_get_page (self->window, name);

  g_assert_nonnull (page);
  gb_window_show_page (self->window, name);
  if (view != NULL)
    gtk_stack_set_visible_child_name (window_support_child (page, "views"), view);
  support_settle ();
  return page;
}

typedef gboolean (*WidgetFunc) (GtkWidget *widget, gpointer data);

/* Depth first, what is seen alone; the first for which @func is true. */
static GtkWidget *
walk (GtkWidget *top, WidgetFunc func, gpointer data)
{
  if (!gtk_widget_get_visible (top) || !gtk_widget_get_child_visible (top))
    return NULL;
  if (func (top, data))
    return top;
  for (GtkWidget *child = gtk_widget_get_first_child (top); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = walk (child, func, data);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static gboolean
label_has (GtkWidget *widget, gpointer text)
{
  return GTK_IS_LABEL (widget) && strstr (gtk_label_get_text (GTK_LABEL (widget)), text) != NULL;
}

gboolean
window_support_says (GtkWidget *top, const char *text)
{
  return walk (top, label_has, (gpointer) text) != NULL;
}

typedef struct
{
  GType type;
  guint left;
} Nth;

static gboolean
is_nth (GtkWidget *widget, gpointer data)
{
  Nth *nth = data;

  return g_type_is_a (G_OBJECT_TYPE (widget), nth->type) && nth->left-- == 0;
}

GtkWidget *
window_support_nth (GtkWidget *top, GType type, guint n)
{
  Nth nth = { type, n };

  return walk (top, is_nth, &nth);
}

static gboolean
is_toast (GtkWidget *widget, gpointer data)
{
  return g_str_equal (G_OBJECT_TYPE_NAME (widget), "AdwToastWidget");
}

const char *
window_support_told (WindowSupport *self)
{
  GtkWidget *overlay = window_support_child (self->window, "toasts");
  GtkWidget *toast = walk (overlay, is_toast, NULL);
  GtkWidget *label = toast != NULL ? window_support_nth (toast, GTK_TYPE_LABEL, 0) : NULL;

  return label != NULL ? gtk_label_get_text (GTK_LABEL (label)) : NULL;
}
