/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "support.h"

#include <adwaita.h>
#include <gdk/x11/gdkx.h>
#include <glib/gstdio.h>
#include <locale.h>
#include <math.h>

#include "store/text-form.h"
#include "widgets/resources.h"

#define PATIENCE 60 /* seconds; a busy machine under a sanitizer is slow */

void
support_init (int *argc, char ***argv)
{
  setlocale (LC_ALL, "");
  g_test_init (argc, argv, NULL);
  adw_init ();
  gb_widgets_init ();
  g_object_set (gtk_settings_get_default (), "gtk-enable-animations", FALSE, NULL);
}

static gboolean
bark_cb (gpointer what)
{
  g_error ("waited in vain for %s", (const char *) what);
  return G_SOURCE_REMOVE;
}

guint
support_watch (const char *what)
{
  return g_timeout_add_seconds (PATIENCE, bark_cb, (gpointer) what);
}

void
support_settle (void)
{
  while (g_main_context_iteration (NULL, FALSE))
    ;
}

void
support_wait_for_draw (GtkWidget *widget)
{
  guint watchdog = support_watch ("a frame");

  gtk_test_widget_wait_for_draw (widget);
  g_source_remove (watchdog);
}

/* Builds ------------------------------------------------------------------------------------------------- */

static GbPart *
make_part (gint64 id, const char *name, gint64 owner, double position, GbPartKind kind)
{
  GbPart *part = (GbPart *) gb_record_new (GB_RECORD_PART);

  part->rec.id = id;
  part->rec.owner = owner;
  part->rec.position = position;
  part->kind = kind;
  part->name = g_strdup (name);
  return part;
}

static void
take_sheet (GbBoat *boat, gint64 id, const char *name, gint64 owner, double position, double length,
            double width)
{
  GbPart *part = make_part (id, name, owner, position, GB_KIND_PART);

  part->material = 1;
  part->length = length;
  part->width = width;
  part->thickness = 0.006;
  part->x = 1;
  part->z = 0.2;
  gb_boat_take (boat, &part->rec);
}

/* Hull { Bottom, Side, Transom }, Rig { Mast }, Lantern: sheets of one plywood of 500 kg/m3, and a lump
 * without a mass. */
static GbBoat *
small_boat (void)
{
  GbBoat *boat = gb_boat_new ();
  GbRecord *build = gb_record_copy (&gb_boat_build (boat)->rec);
  GbMaterial *ply = (GbMaterial *) gb_record_new (GB_RECORD_MATERIAL);
  GbPart *mast = make_part (6, "Mast", 5, 1, GB_KIND_PART);
  GbPart *lantern = make_part (7, "Lantern", 0, 3, GB_KIND_PART);

  gb_field_set_text (gb_field (GB_RECORD_BUILD, "name"), build, "Test boat");
  gb_field_set_text (gb_field (GB_RECORD_BUILD, "currency"), build, "EUR");
  gb_boat_take (boat, build);
  ply->rec.id = ply->rec.position = 1;
  ply->name = g_strdup ("Test ply");
  ply->family = GB_FAMILY_PLYWOOD;
  ply->density = 500;
  gb_boat_take (boat, &ply->rec);
  gb_boat_take (boat, &make_part (1, "Hull", 0, 1, GB_KIND_GROUP)->rec);
  take_sheet (boat, 2, "Bottom", 1, 1, 2, 1);
  take_sheet (boat, 3, "Side", 1, 2, 2, 0.4);
  take_sheet (boat, 4, "Transom", 1, 3, 1, 0.4);
  gb_boat_take (boat, &make_part (5, "Rig", 0, 2, GB_KIND_GROUP)->rec);
  mast->takeoff = lantern->takeoff = GB_TAKEOFF_LUMP;
  mast->mass = 2;
  mast->x = 1.5;
  mast->z = 1;
  gb_boat_take (boat, &mast->rec);
  gb_boat_take (boat, &lantern->rec);
  gb_boat_settle (boat);
  return boat;
}

static GbBoat *
demo_boat (const char *demo)
{
  g_autofree char *name = g_strconcat (demo, ".json", NULL);
  g_autofree char *path = g_build_filename (g_getenv ("GARBOARD_DEMO_DIR"), name, NULL);
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  GbBoat *boat;
  gsize length;

  g_file_get_contents (path, &text, &length, &error);
  g_assert_no_error (error);
  boat = gb_text_form_read (text, (gssize) length, &error);
  g_assert_no_error (error);
  return boat;
}

Support *
support_new_for (const GbBoat *boat)
{
  Support *self = g_new0 (Support, 1);
  g_autoptr (GError) error = NULL;
  g_autofree char *path = NULL;

  self->told = g_ptr_array_new_with_free_func (g_free);
  self->toasts = g_ptr_array_new_with_free_func (g_free);
  self->folder = g_dir_make_tmp ("garboard-pages-XXXXXX", &error);
  g_assert_no_error (error);
  path = g_build_filename (self->folder, "test.garboard", NULL);
  self->project = gb_project_create (path, boat, &error);
  g_assert_no_error (error);
  return self;
}

Support *
support_new (const char *demo)
{
  g_autoptr (GbBoat) boat = demo != NULL ? demo_boat (demo) : small_boat ();

  return support_new_for (boat);
}

static void
remove_folder (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);

  for (const char *name = g_dir_read_name (dir); name != NULL; name = g_dir_read_name (dir))
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      g_unlink (path);
    }
  g_rmdir (folder);
}

void
support_free (Support *self)
{
  if (self->window != NULL)
    gtk_window_destroy (g_steal_pointer (&self->window));
  /* What was dragged or copied is let go a moment later. */
  gdk_clipboard_set_content (gdk_display_get_clipboard (gdk_display_get_default ()), NULL);
  support_until (G_OBJECT (self->project)->ref_count == 1);
  g_assert_finalize_object (self->project);
  g_ptr_array_unref (self->told);
  g_ptr_array_unref (self->toasts);
  remove_folder (self->folder);
  g_free (self->folder);
  g_free (self);
}

/* The window --------------------------------------------------------------------------------------------- */

static void
told_cb (GSimpleAction *action, GVariant *words, gpointer user_data)
{
  g_ptr_array_add (user_data, g_variant_dup_string (words, NULL));
}

static void
add_action (GSimpleActionGroup *group, const char *name, GPtrArray *words)
{
  g_autoptr (GSimpleAction) action = g_simple_action_new (name, G_VARIANT_TYPE_STRING);

  g_signal_connect (action, "activate", G_CALLBACK (told_cb), words);
  g_action_map_add_action (G_ACTION_MAP (group), G_ACTION (action));
}

static gboolean
has_been_drawn (GtkWidget *widget)
{
  return gtk_widget_get_mapped (widget) && gtk_widget_get_width (widget) > 0;
}

static void run_xdotool (const char *first, ...) G_GNUC_NULL_TERMINATED;
static gboolean try_xdotool (const char *first, ...) G_GNUC_NULL_TERMINATED;

void
support_focus (Support *self, GtkWindow *window)
{
  g_autofree char *xid
    = g_strdup_printf ("%lu", gdk_x11_surface_get_xid (gtk_native_get_surface (GTK_NATIVE (window))));

  /* The server refuses as long as it has not shown the window. */
  while (!gtk_window_is_active (window))
    {
      guint watchdog = support_watch ("the focus");

      try_xdotool ("windowfocus", xid, NULL);
      support_wait_for_draw (GTK_WIDGET (window));
      g_source_remove (watchdog);
    }
}

void
support_show (Support *self, GtkWidget *page, int width, int height)
{
  g_autoptr (GSimpleActionGroup) group = g_simple_action_group_new ();

  add_action (group, "tell", self->told);
  add_action (group, "toast-undo", self->toasts);
  self->window = GTK_WINDOW (gtk_window_new ());
  self->page = page;
  gtk_widget_insert_action_group (GTK_WIDGET (self->window), "win", G_ACTION_GROUP (group));
  gtk_window_set_default_size (self->window, width, height);
  gtk_window_set_titlebar (self->window, gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0));
  gtk_window_set_child (self->window, page);
  g_object_set (page, "project", self->project, NULL);
  gtk_window_present (self->window);
  support_until (has_been_drawn (page));
  support_wait_for_draw (GTK_WIDGET (self->window));
  run_xdotool ("mousemove", "1279", "899", NULL); /* out of the way */
  support_focus (self, self->window);
}

/* Input -------------------------------------------------------------------------------------------------- */

static gboolean
spawn_xdotool (const char *first, va_list args)
{
  g_autoptr (GPtrArray) argv = g_ptr_array_new ();
  g_autoptr (GError) error = NULL;
  int status;

  g_ptr_array_add (argv, (gpointer) "xdotool");
  for (const char *arg = first; arg != NULL; arg = va_arg (args, const char *))
    g_ptr_array_add (argv, (gpointer) arg);
  g_ptr_array_add (argv, NULL);
  g_spawn_sync (NULL, (char **) argv->pdata, NULL,
                G_SPAWN_SEARCH_PATH | G_SPAWN_STDOUT_TO_DEV_NULL | G_SPAWN_STDERR_TO_DEV_NULL, NULL, NULL,
                NULL, NULL, &status, &error);
  g_assert_no_error (error);
  return status == 0;
}

static gboolean
try_xdotool (const char *first, ...)
{
  va_list args;
  gboolean done;

  va_start (args, first);
  done = spawn_xdotool (first, args);
  va_end (args);
  return done;
}

static void
run_xdotool (const char *first, ...)
{
  va_list args;

  va_start (args, first);
  g_assert_true (spawn_xdotool (first, args));
  va_end (args);
}

void
support_keys (Support *self, const char *keys)
{
  g_auto (GStrv) each = g_strsplit (keys, " ", -1);

  for (char **key = each; *key != NULL; key++)
    {
      run_xdotool ("key", *key, NULL);
      support_settle ();
    }
}

void
support_type (Support *self, const char *text)
{
  run_xdotool ("type", "--delay", "1", "--", text, NULL);
  support_settle ();
}

/* A point of @widget on the screen. */
static void
on_screen (Support *self, GtkWidget *widget, double x_share, double y_share, int *x, int *y)
{
  GtkNative *native = gtk_widget_get_native (widget);
  graphene_point_t point = GRAPHENE_POINT_INIT ((float) (gtk_widget_get_width (widget) * x_share),
                                                (float) (gtk_widget_get_height (widget) * y_share));
  graphene_point_t at;
  Window child;
  double dx, dy;
  int window_x, window_y;
  GdkSurface *surface = gtk_native_get_surface (native);
  Display *display = gdk_x11_display_get_xdisplay (gdk_surface_get_display (surface));

  g_assert_true (gtk_widget_compute_point (widget, GTK_WIDGET (native), &point, &at));
  gtk_native_get_surface_transform (native, &dx, &dy);
  XTranslateCoordinates (display, gdk_x11_surface_get_xid (surface), DefaultRootWindow (display), 0, 0,
                         &window_x, &window_y, &child);
  *x = window_x + (int) (at.x + dx);
  *y = window_y + (int) (at.y + dy);
}

static void
move_pointer (Support *self, GtkWidget *widget, double x_share, double y_share)
{
  g_autofree char *x = NULL;
  g_autofree char *y = NULL;
  int px, py;

  on_screen (self, widget, x_share, y_share, &px, &py);
  x = g_strdup_printf ("%d", px);
  y = g_strdup_printf ("%d", py);
  run_xdotool ("mousemove", x, y, NULL);
  support_settle ();
}

void
support_click (Support *self, GtkWidget *widget, double x_share, double y_share, int n_clicks)
{
  g_autofree char *n = g_strdup_printf ("%d", n_clicks);

  support_wait_for_draw (GTK_WIDGET (self->window));
  move_pointer (self, widget, x_share, y_share);
  run_xdotool ("click", "--repeat", n, "--delay", "20", "1", NULL);
  support_settle ();
}

/* The controller from which a drag of @widget begins. */
static GtkEventController *
find_drag_source (GtkWidget *widget)
{
  for (; widget != NULL; widget = gtk_widget_get_parent (widget))
    {
      g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (widget);

      for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
        {
          g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

          if (GTK_IS_DRAG_SOURCE (controller))
            return controller;
        }
    }
  return NULL;
}

static void
drag_ended_cb (gboolean *ended)
{
  *ended = TRUE;
}

void
support_drag (Support *self, GtkWidget *from, GtkWidget *to, double y_share)
{
  GtkEventController *source = find_drag_source (from);
  gboolean ended = FALSE;
  gulong id;

  g_assert_nonnull (source);
  id = g_signal_connect_swapped (source, "drag-end", G_CALLBACK (drag_ended_cb), &ended);
  support_wait_for_draw (GTK_WIDGET (self->window));
  move_pointer (self, from, 0.3, 0.5);
  run_xdotool ("mousedown", "1", NULL);
  support_settle ();
  /* Past the threshold first, then there in a few steps, as a hand does. */
  for (int step = 1; step <= 4; step++)
    {
      move_pointer (self, from, 0.3 + 0.05 * step, 0.5);
      support_wait_for_draw (GTK_WIDGET (self->window));
    }
  move_pointer (self, to, 0.45, y_share);
  move_pointer (self, to, 0.5, y_share);
  support_wait_for_draw (GTK_WIDGET (self->window));
  run_xdotool ("mouseup", "1", NULL);
  support_until (ended);
  g_signal_handler_disconnect (source, id);
}

void
support_press_and_move (Support *self, GtkWidget *widget, double from_x, double from_y, double to_x, double to_y)
{
  const guint n_steps = 5;

  support_wait_for_draw (GTK_WIDGET (self->window));
  move_pointer (self, widget, from_x, from_y);
  run_xdotool ("mousedown", "1", NULL);
  support_settle ();
  for (guint i = 1; i <= n_steps; i++)
    {
      double share = (double) i / n_steps;

      move_pointer (self, widget, from_x + share * (to_x - from_x), from_y + share * (to_y - from_y));
      support_wait_for_draw (GTK_WIDGET (self->window));
    }
}

void
support_release (void)
{
  run_xdotool ("mouseup", "1", NULL);
  support_settle ();
}

/* Pictures ----------------------------------------------------------------------------------------------- */

static void
save_picture (Support *self, const char *name, const char *scheme)
{
  GtkWidget *widget = GTK_WIDGET (self->window);
  g_autoptr (GdkPaintable) paintable = NULL;
  g_autoptr (GtkSnapshot) snapshot = NULL;
  g_autoptr (GskRenderNode) node = NULL;
  g_autoptr (GdkTexture) texture = NULL;
  g_autofree char *folder = g_build_filename (g_test_get_dir (G_TEST_BUILT), "pictures", NULL);
  g_autofree char *file = g_strdup_printf ("%s/%s-%s.png", folder, name, scheme);
  int width, height;

  support_settle ();
  gtk_widget_queue_draw (widget);
  support_wait_for_draw (widget);
  width = gtk_widget_get_width (widget);
  height = gtk_widget_get_height (widget);
  paintable = gtk_widget_paintable_new (widget);
  snapshot = gtk_snapshot_new ();
  gdk_paintable_snapshot (paintable, snapshot, width, height);
  node = gtk_snapshot_to_node (snapshot);
  g_assert_nonnull (node);
  texture = gsk_renderer_render_texture (gtk_native_get_renderer (GTK_NATIVE (widget)), node,
                                         &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  g_mkdir_with_parents (folder, 0755);
  g_assert_true (gdk_texture_save_to_png (texture, file));
}

void
support_picture (Support *self, const char *name)
{
  AdwStyleManager *style = adw_style_manager_get_default ();

  adw_style_manager_set_color_scheme (style, ADW_COLOR_SCHEME_FORCE_LIGHT);
  save_picture (self, name, "light");
  adw_style_manager_set_color_scheme (style, ADW_COLOR_SCHEME_FORCE_DARK);
  save_picture (self, name, "dark");
  adw_style_manager_set_color_scheme (style, ADW_COLOR_SCHEME_FORCE_LIGHT);
}

/* Looking ------------------------------------------------------------------------------------------------ */

gint64
support_part (Support *self, const char *name)
{
  const GPtrArray *parts = gb_boat_all (gb_project_get_boat (self->project), GB_RECORD_PART);

  for (guint i = 0; i < parts->len; i++)
    if (g_strcmp0 (((const GbPart *) parts->pdata[i])->name, name) == 0)
      return ((const GbRecord *) parts->pdata[i])->id;
  return 0;
}

guint
support_row (GbGrid *grid, GbRecordKind kind, gint64 id)
{
  guint position = GTK_INVALID_LIST_POSITION;

  g_assert_true (gb_grid_rows_find (GB_GRID_ROWS (gb_grid_get_rows (grid)), kind, id, &position));
  return position;
}

const char *
support_cell (GbGrid *grid, GbRecordKind kind, gint64 id, const char *column)
{
  GbCell *cell = gb_grid_find_cell (grid, support_row (grid, kind, id), column);

  g_assert_nonnull (cell);
  return gb_cell_get_text (cell);
}

GtkWidget *
support_find (GtkWidget *top, GType type)
{
  if (G_TYPE_CHECK_INSTANCE_TYPE (top, type))
    return top;
  for (GtkWidget *child = gtk_widget_get_first_child (top); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = support_find (child, type);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static GbGrid *
find_grid (GtkWidget *top, GbRecordKind kind)
{
  GbGrid *found = NULL;

  if (GB_IS_GRID (top))
    return gb_grid_get_type_data (GB_GRID (top))->kind == kind ? GB_GRID (top) : NULL;
  for (GtkWidget *child = gtk_widget_get_first_child (top); child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    found = find_grid (child, kind);
  return found;
}

GbGrid *
support_grid (GtkWidget *top, GbRecordKind kind)
{
  GbGrid *grid = find_grid (top, kind);

  g_assert_nonnull (grid);
  return grid;
}

gboolean
support_is_editing (Support *self)
{
  GtkWidget *focus = gtk_window_get_focus (self->window);

  return GTK_IS_TEXT (focus) && gtk_widget_get_ancestor (focus, GB_TYPE_CELL) != NULL;
}
