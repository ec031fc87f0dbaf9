/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-grid-pane"

#include "grid-pane.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "boat/quantity.h"
#include "pages/page.h"

struct _GbGridPane
{
  GtkBox parent_instance;

  GbGrid *grid;
  GtkLabel *hint;
  GbProject *project;
  GtkWidget *table;    /* all of it but what stands there while there is nothing */
  GtkWidget *nothing;  /* NULL: the table is shown from the start */
  gboolean started;    /* the builder asked for the empty table, or emptied it */
};

G_DEFINE_FINAL_TYPE (GbGridPane, gb_grid_pane, GTK_TYPE_BOX)

/* Adding rows ------------------------------------------------------------------------------------------------------- */

gint64
gb_grid_add_draft (GbGrid *grid, GbRecord *draft, const char *field_name, const char *text, const GbChoiceItem *chosen,
                   GbGridSpot spot, GError **error)
{
  g_autoptr (GbRecord) record = draft;
  GbProject *project = gb_grid_get_project (grid);
  const GbField *field = gb_field (record->kind, field_name);

  if (field->dim == GB_DIM_REF)
    {
      if (chosen == NULL && *text != '\0')
        {
          g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE, _ ("There is no “%s” in this build."), text);
          return 0;
        }
      gb_field_set_integer (field, record, chosen != NULL ? chosen->id : 0);
    }
  else
    {
      g_auto (GbValue) value = { 0 };

      if (!gb_field_parse (field, text, gb_project_get_build (project), &value, error))
        return 0;
      gb_field_set (field, record, &value);
    }
  return gb_project_add (project, g_steal_pointer (&record), spot.owner, gb_grid_sibling_after (grid, spot), error);
}

gint64
gb_grid_add_record (GbGrid *grid, const char *field, const char *text, const GbChoiceItem *chosen, GbGridSpot spot, GError **error)
{
  return gb_grid_add_draft (grid, gb_record_new (gb_grid_get_type_data (grid)->kind), field, text, chosen, spot, error);
}

/* The pane ---------------------------------------------------------------------------------------------------------- */

static void
removed_cb (GbGrid *grid, guint n, const char *title, GbGridPane *self)
{
  gb_page_tell_removed (GTK_WIDGET (self), n, title);
}

static void
refused_cb (GbGrid *grid, const char *sentence, GbGridPane *self)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "win.tell", "s", sentence);
}

/* The verbs of the rows, as the grid's keys do them: actions of the group "rows". */
static const struct
{
  const char *name;
  void (*verb) (GbGrid *grid);
} verbs[] = {
  { "duplicate", gb_grid_duplicate }, { "delete", gb_grid_remove }, { "cut", gb_grid_cut }, { "copy", gb_grid_copy },
  { "paste", gb_grid_paste },         { "find", gb_grid_find },     { "edit", gb_grid_edit }, { "select-all", gb_grid_select_all },
};

static void
verb_cb (GSimpleAction *action, GVariant *parameter, gpointer grid)
{
  for (guint i = 0; i < G_N_ELEMENTS (verbs); i++)
    if (g_str_equal (g_action_get_name (G_ACTION (action)), verbs[i].name))
      verbs[i].verb (grid);
}

static void
move_cb (GSimpleAction *action, GVariant *parameter, gpointer grid)
{
  gb_grid_move_rows (grid, g_variant_get_int32 (parameter));
}

static GSimpleActionGroup *
make_actions (GbGrid *grid)
{
  GSimpleActionGroup *group = g_simple_action_group_new ();
  GActionEntry move = { "move", move_cb, "i" };

  for (guint i = 0; i < G_N_ELEMENTS (verbs); i++)
    {
      GActionEntry entry = { verbs[i].name, verb_cb };

      g_action_map_add_action_entries (G_ACTION_MAP (group), &entry, 1, grid);
    }
  g_action_map_add_action_entries (G_ACTION_MAP (group), &move, 1, grid);
  return group;
}

static GMenu *
make_row_menu (void)
{
  GMenu *menu = g_menu_new ();
  g_autoptr (GMenu) clipboard = g_menu_new ();
  g_autoptr (GMenu) rows = g_menu_new ();
  g_autoptr (GMenu) move = g_menu_new ();

  g_menu_append (clipboard, _ ("Cu_t"), "rows.cut");
  g_menu_append (clipboard, _ ("_Copy"), "rows.copy");
  g_menu_append (clipboard, _ ("_Paste"), "rows.paste");
  g_menu_append (rows, _ ("_Duplicate"), "rows.duplicate");
  g_menu_append (rows, _ ("D_elete"), "rows.delete");
  g_menu_append (rows, _ ("_Select All"), "rows.select-all");
  g_menu_append (move, _ ("Move _Up"), "rows.move(-1)");
  g_menu_append (move, _ ("Move Do_wn"), "rows.move(1)");
  g_menu_append_section (menu, NULL, G_MENU_MODEL (rows));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (clipboard));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (move));
  return menu;
}

/* The same with what belongs to the whole table. */
static GMenuModel *
make_pane_menu (GbGrid *grid, GMenu *row_menu)
{
  GMenu *menu = g_menu_new ();
  g_autoptr (GMenu) table = g_menu_new ();

  g_menu_append (table, _ ("_Find"), "rows.find");
  g_menu_append_submenu (table, _ ("C_olumns"), gb_grid_get_columns_menu (grid));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (row_menu));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (table));
  return G_MENU_MODEL (menu);
}

static GtkWidget *
make_header (GbGridPane *self, const char *heading, const char *add_label)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *label = gtk_label_new (heading);
  GtkWidget *button = gtk_menu_button_new ();
  g_autoptr (GMenu) row_menu = make_row_menu ();
  g_autoptr (GMenuModel) pane_menu = make_pane_menu (self->grid, row_menu);

  gtk_widget_add_css_class (box, "page-toolbar");
  gtk_widget_add_css_class (label, "heading");
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_box_append (GTK_BOX (box), label);
  if (add_label != NULL)
    {
      GtkWidget *add = gtk_button_new_with_label (add_label);

      g_signal_connect_object (add, "clicked", G_CALLBACK (gb_grid_pane_start), self, G_CONNECT_SWAPPED);
      gtk_box_append (GTK_BOX (box), add);
    }
  gtk_menu_button_set_icon_name (GTK_MENU_BUTTON (button), "view-more-symbolic");
  gtk_menu_button_set_menu_model (GTK_MENU_BUTTON (button), pane_menu);
  gtk_widget_set_tooltip_text (button, _ ("Rows and columns"));
  gtk_widget_add_css_class (button, "flat");
  gtk_box_append (GTK_BOX (box), button);
  gb_grid_set_menu (self->grid, G_MENU_MODEL (row_menu));
  return box;
}

/* While there is nothing ---------------------------------------------------------------------------------------------- */

static void
show_table_or_nothing (GbGridPane *self)
{
  GbRecordKind kind = gb_grid_get_type_data (self->grid)->kind;

  if (self->project != NULL && gb_boat_n (gb_project_get_boat (self->project), kind) > 0)
    self->started = TRUE;
  if (self->nothing == NULL)
    return;
  gtk_widget_set_visible (self->table, self->started);
  gtk_widget_set_visible (self->nothing, !self->started);
  gtk_widget_set_sensitive (adw_status_page_get_child (ADW_STATUS_PAGE (self->nothing)),
                            self->project != NULL && gb_project_get_read_only_reason (self->project) == NULL);
}

void
gb_grid_pane_start (GbGridPane *self)
{
  g_return_if_fail (GB_IS_GRID_PANE (self));
  self->started = TRUE;
  show_table_or_nothing (self);
  gb_grid_start_blank (self->grid);
}

void
gb_grid_pane_set_project (GbGridPane *self, GbProject *project)
{
  g_return_if_fail (GB_IS_GRID_PANE (self));
  if (self->project != NULL)
    g_signal_handlers_disconnect_by_data (self->project, self);
  g_set_object (&self->project, project);
  gb_grid_set_project (self->grid, project);
  self->started = FALSE;
  if (project != NULL)
    g_signal_connect_object (project, "changed", G_CALLBACK (show_table_or_nothing), self, G_CONNECT_SWAPPED);
  show_table_or_nothing (self);
}

void
gb_grid_pane_set_nothing (GbGridPane *self, const char *title, const char *sentence, const char *button, const char *action)
{
  GtkWidget *page = adw_status_page_new ();
  GtkWidget *start = gtk_button_new_with_mnemonic (button);

  g_return_if_fail (GB_IS_GRID_PANE (self));
  g_return_if_fail (self->nothing == NULL);

  gtk_widget_set_halign (start, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (start, "pill");
  gtk_widget_add_css_class (start, "suggested-action");
  if (action != NULL)
    gtk_actionable_set_action_name (GTK_ACTIONABLE (start), action);
  else
    g_signal_connect_object (start, "clicked", G_CALLBACK (gb_grid_pane_start), self, G_CONNECT_SWAPPED);
  adw_status_page_set_title (ADW_STATUS_PAGE (page), title);
  adw_status_page_set_description (ADW_STATUS_PAGE (page), sentence);
  adw_status_page_set_child (ADW_STATUS_PAGE (page), start);
  gtk_widget_add_css_class (page, "compact");
  gtk_widget_set_vexpand (page, TRUE);
  gtk_widget_set_hexpand (page, TRUE);
  gtk_box_append (GTK_BOX (self), page);
  self->nothing = page;
  show_table_or_nothing (self);
}

void
gb_grid_pane_set_hint (GbGridPane *self, const char *hint)
{
  g_return_if_fail (GB_IS_GRID_PANE (self));
  gtk_label_set_text (self->hint, hint);
  gtk_widget_set_visible (GTK_WIDGET (self->hint), *hint != '\0');
}

GbGrid *
gb_grid_pane_get_grid (GbGridPane *self)
{
  g_return_val_if_fail (GB_IS_GRID_PANE (self), NULL);
  return self->grid;
}

void
gb_grid_pane_select_first (GbGridPane *self, const GPtrArray *records)
{
  g_return_if_fail (GB_IS_GRID_PANE (self));
  if (records->len > 0)
    gb_grid_select (self->grid, &((const GbRecord *) records->pdata[0])->id, 1);
}

static void
gb_grid_pane_dispose (GObject *object)
{
  GbGridPane *self = GB_GRID_PANE (object);

  if (self->project != NULL)
    gb_grid_pane_set_project (self, NULL);
  G_OBJECT_CLASS (gb_grid_pane_parent_class)->dispose (object);
}

static void
gb_grid_pane_class_init (GbGridPaneClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = gb_grid_pane_dispose;
}

static void
gb_grid_pane_init (GbGridPane *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
}

GbGridPane *
gb_grid_pane_new (const GbGridType *type, const char *heading, const char *add_label)
{
  GbGridPane *self = g_object_new (GB_TYPE_GRID_PANE, NULL);
  g_autoptr (GSimpleActionGroup) actions = NULL;

  self->grid = GB_GRID (gb_grid_new (type));
  self->hint = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (self->hint, 0);
  gtk_label_set_wrap (self->hint, TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (self->hint), "pane-hint");
  gtk_widget_add_css_class (GTK_WIDGET (self->hint), "dim-label");
  gtk_widget_set_visible (GTK_WIDGET (self->hint), FALSE);
  gtk_widget_set_vexpand (GTK_WIDGET (self->grid), TRUE);

  self->table = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (self->table), make_header (self, heading, add_label));
  gtk_box_append (GTK_BOX (self->table), GTK_WIDGET (self->hint));
  gtk_box_append (GTK_BOX (self->table), GTK_WIDGET (self->grid));
  gtk_box_append (GTK_BOX (self), self->table);
  /* The menus name actions of the grid, which the button stands beside. */
  gtk_widget_insert_action_group (GTK_WIDGET (self), "grid", gb_grid_get_actions (self->grid));
  actions = make_actions (self->grid);
  gtk_widget_insert_action_group (GTK_WIDGET (self), "rows", G_ACTION_GROUP (actions));
  g_signal_connect_object (self->grid, "removed", G_CALLBACK (removed_cb), self, 0);
  g_signal_connect_object (self->grid, "refused", G_CALLBACK (refused_cb), self, 0);
  return self;
}
