/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-grid-columns-shown"

/* Which columns are shown, and in which order: the person's choice, made in menus or by dragging titles, and
 * kept in the settings. */

#include "grid-private.h"

#include <glib/gi18n-lib.h>

/* Columns that are not shown are not in the view at all: hidden ones would take width there. */
static gboolean
is_shown (const GbColumn *column)
{
  return gtk_column_view_column_get_column_view (column->view_column) != NULL;
}

/* Numbers have their titles above them, at the right. The title widgets are the toolkit's, in the order of
 * the columns. */
static void
align_titles (GbGrid *self)
{
  g_autoptr (GArray) shown = gb_grid_shown_columns (self);
  GtkWidget *title = gtk_widget_get_first_child (gtk_widget_get_first_child (GTK_WIDGET (self->view)));

  for (guint i = 0; title != NULL && i < shown->len; title = gtk_widget_get_next_sibling (title), i++)
    {
      GtkWidget *label = title;

      while (label != NULL && !GTK_IS_LABEL (label))
        label = gtk_widget_get_first_child (label);
      if (label != NULL)
        {
          gboolean right = gb_grid_column (self, g_array_index (shown, guint, i))->is_number;

          gtk_widget_set_hexpand (label, TRUE);
          gtk_label_set_xalign (GTK_LABEL (label), right ? 1 : 0);
        }
    }
}

static gboolean
save_columns_cb (gpointer user_data)
{
  GbGrid *self = user_data;
  g_autoptr (GArray) shown = gb_grid_shown_columns (self);
  g_autoptr (GPtrArray) names = g_ptr_array_new ();

  self->save_columns_id = 0;
  align_titles (self);
  if (self->settings == NULL)
    return G_SOURCE_REMOVE;
  for (guint i = 0; i < shown->len; i++)
    g_ptr_array_add (names, gb_grid_column (self, g_array_index (shown, guint, i))->name);
  g_ptr_array_add (names, NULL);
  g_settings_set_strv (self->settings, self->type->settings_key, (const char *const *) names->pdata);
  return G_SOURCE_REMOVE;
}

static void
columns_changed_cb (GbGrid *self)
{
  if (self->save_columns_id == 0)
    self->save_columns_id = g_idle_add (save_columns_cb, self);
}

static char *
show_action_name (const char *column)
{
  g_autofree char *name = g_strconcat ("show-", column, NULL);

  return g_strdelimit (g_steal_pointer (&name), "_", '-');
}

static void
set_shown (GbGrid *self, GbColumn *column, gboolean shown)
{
  g_autofree char *name = show_action_name (column->name);
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self->actions), name);

  if (!shown && !gb_grid_commit (self))
    return;
  if (shown && !is_shown (column))
    gtk_column_view_append_column (self->view, column->view_column);
  else if (!shown && is_shown (column))
    gtk_column_view_remove_column (self->view, column->view_column);
  g_simple_action_set_state (G_SIMPLE_ACTION (action), g_variant_new_boolean (shown));
  if (!shown && self->cursor_column == column->index)
    self->cursor_column = gb_grid_main_column (self);
  columns_changed_cb (self);
}

static void
show_state_cb (GSimpleAction *action, GVariant *state, gpointer user_data)
{
  GbColumn *column = user_data;

  set_shown (column->grid, column, g_variant_get_boolean (state));
}

static void
hide_cb (GSimpleAction *action, GVariant *target, gpointer user_data)
{
  GbGrid *self = user_data;
  GbColumn *column = gb_grid_column_by_name (self, g_variant_get_string (target, NULL));

  if (column != NULL && !gb_grid_is_main (self, column))
    set_shown (self, column, FALSE);
}

/* Past the next one, to the left or to the right. */
static void
shift_column (GbGrid *self, GbColumn *column, int by)
{
  GListModel *all = gtk_column_view_get_columns (self->view);
  int n = (int) g_list_model_get_n_items (all);
  int at = -1;

  for (int i = 0; i < n; i++)
    {
      g_autoptr (GtkColumnViewColumn) other = g_list_model_get_item (all, (guint) i);

      if (other == column->view_column)
        at = i;
    }
  if (at >= 0 && at + by >= 0 && at + by < n)
    gtk_column_view_insert_column (self->view, (guint) (at + by), column->view_column);
}

static void
move_column_cb (GSimpleAction *action, GVariant *target, gpointer user_data)
{
  GbGrid *self = user_data;
  GbColumn *column = gb_grid_column_by_name (self, g_variant_get_string (target, NULL));
  int by = g_str_has_suffix (g_action_get_name (G_ACTION (action)), "left") ? -1 : 1;

  if (column != NULL && gb_grid_commit (self))
    shift_column (self, column, by);
}

static void
usual_columns_cb (GSimpleAction *action, GVariant *target, gpointer user_data)
{
  GbGrid *self = user_data;

  if (!gb_grid_commit (self))
    return;
  for (guint i = 0; i < self->columns->len; i++)
    {
      GbColumn *column = gb_grid_column (self, i);

      set_shown (self, column, g_strv_contains (self->type->shown, column->name));
    }
  for (guint i = 0; self->type->shown[i] != NULL; i++)
    gtk_column_view_insert_column (self->view, i,
                                   gb_grid_column_by_name (self, self->type->shown[i])->view_column);
}

static void
make_actions (GbGrid *self)
{
  const GActionEntry entries[] = {
    { "hide", hide_cb, "s", NULL, NULL },
    { "column-left", move_column_cb, "s", NULL, NULL },
    { "column-right", move_column_cb, "s", NULL, NULL },
    { "usual-columns", usual_columns_cb, NULL, NULL, NULL },
  };

  self->actions = g_simple_action_group_new ();
  g_action_map_add_action_entries (G_ACTION_MAP (self->actions), entries, G_N_ELEMENTS (entries), self);
  for (guint i = 0; i < self->columns->len; i++)
    {
      GbColumn *column = gb_grid_column (self, i);
      g_autofree char *name = show_action_name (column->name);
      g_autoptr (GSimpleAction) action
        = g_simple_action_new_stateful (name, NULL, g_variant_new_boolean (is_shown (column)));

      g_signal_connect (action, "change-state", G_CALLBACK (show_state_cb), column);
      g_simple_action_set_enabled (action, !gb_grid_is_main (self, column));
      g_action_map_add_action (G_ACTION_MAP (self->actions), G_ACTION (action));
    }
  gtk_widget_insert_action_group (GTK_WIDGET (self), "grid", G_ACTION_GROUP (self->actions));
}

static GMenu *
make_columns_menu (GbGrid *self)
{
  GMenu *menu = g_menu_new ();
  g_autoptr (GMenu) all = g_menu_new ();

  for (guint i = 0; i < self->columns->len; i++)
    {
      GbColumn *column = gb_grid_column (self, i);
      g_autofree char *name = show_action_name (column->name);
      g_autofree char *action = g_strconcat ("grid.", name, NULL);

      if (!gb_grid_is_main (self, column))
        g_menu_append (all, gtk_column_view_column_get_title (column->view_column), action);
    }
  g_menu_append_section (menu, NULL, G_MENU_MODEL (all));
  g_menu_append (menu, _ ("_Usual columns"), "grid.usual-columns");
  return menu;
}

static void
append_for_column (GMenu *menu, const char *label, const char *action, GbColumn *column)
{
  g_autoptr (GMenuItem) item = g_menu_item_new (label, NULL);

  g_menu_item_set_action_and_target (item, action, "s", column->name);
  g_menu_append_item (menu, item);
}

static void
make_header_menus (GbGrid *self)
{
  for (guint i = 0; i < self->columns->len; i++)
    {
      GbColumn *column = gb_grid_column (self, i);
      g_autoptr (GMenu) menu = g_menu_new ();
      g_autoptr (GMenu) own = g_menu_new ();

      append_for_column (own, _ ("Move _left"), "grid.column-left", column);
      append_for_column (own, _ ("Move _right"), "grid.column-right", column);
      if (!gb_grid_is_main (self, column))
        append_for_column (own, _ ("_Hide"), "grid.hide", column);
      g_menu_append_section (menu, NULL, G_MENU_MODEL (own));
      g_menu_append_submenu (menu, _ ("_Columns"), G_MENU_MODEL (self->columns_menu));
      gtk_column_view_column_set_header_menu (column->view_column, G_MENU_MODEL (menu));
    }
}

/* The names kept in the settings, or the usual ones; unknown names are passed over, the main column is always
 * among them. */
static void
put_columns (GbGrid *self)
{
  g_auto (GStrv) kept
    = self->settings != NULL ? g_settings_get_strv (self->settings, self->type->settings_key) : NULL;
  const char *const *names = kept != NULL && kept[0] != NULL ? (const char *const *) kept : self->type->shown;

  if (!g_strv_contains (names, self->type->main_column))
    gtk_column_view_append_column (self->view,
                                   gb_grid_column (self, gb_grid_main_column (self))->view_column);
  for (guint i = 0; names[i] != NULL; i++)
    {
      GbColumn *column = gb_grid_column_by_name (self, names[i]);

      if (column != NULL && !is_shown (column))
        gtk_column_view_append_column (self->view, column->view_column);
    }
}

void
gb_grid_columns_init (GbGrid *self)
{
  if (self->type->settings_key != NULL)
    self->settings = g_settings_new ("org.garboard.Garboard");
  gb_grid_make_columns (self);
  put_columns (self);
  make_actions (self);
  self->columns_menu = make_columns_menu (self);
  make_header_menus (self);
  self->cursor_column = gb_grid_main_column (self);
  align_titles (self);
  g_signal_connect_object (gtk_column_view_get_columns (self->view), "items-changed",
                           G_CALLBACK (columns_changed_cb), self, G_CONNECT_SWAPPED);
}

/* The view lets its columns go one by one, which is no choice of the person's. */
void
gb_grid_columns_dispose (GbGrid *self)
{
  if (self->view != NULL)
    g_signal_handlers_disconnect_by_func (gtk_column_view_get_columns (self->view), columns_changed_cb, self);
  g_clear_handle_id (&self->save_columns_id, g_source_remove);
}

GMenuModel *
gb_grid_get_columns_menu (GbGrid *self)
{
  return G_MENU_MODEL (self->columns_menu);
}

GActionGroup *
gb_grid_get_actions (GbGrid *self)
{
  return G_ACTION_GROUP (self->actions);
}
