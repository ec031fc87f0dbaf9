/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-parts-page"

/* Actions, all in the page's menu; the keys are those of the table (see widgets/grid.h):
 *
 *   parts.add              Ctrl+Enter       a new part below the row at hand
 *   parts.add-group        Ctrl+Shift+G     a new group there
 *   parts.group            Ctrl+G           the selected rows into a group of their own
 *   parts.cut, copy, paste Ctrl+X, C, V
 *   parts.duplicate        Ctrl+D
 *   parts.delete           Delete
 *   parts.move-up, -down   Alt+Up, Alt+Down
 *   parts.indent, outdent  Alt+Right, Alt+Left
 *   parts.open-all, close-all  Ctrl+Shift+Right, Ctrl+Shift+Left
 *   parts.select-all       Ctrl+A
 *   parts.find             Ctrl+F
 *   parts.next-unknown     F8               the next part without a mass, or without a place
 *   parts.inspector        F9               the details beside the list */

#include "parts-page.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "pages/part-facts.h"
#include "pages/part-grid.h"
#include "pages/part-sums.h"
#include "project/words.h"
#include "widgets/inspector.h"
#include "widgets/side-pane.h"

/* More than this are not compared field by field. */
#define MOST_INSPECTED 1000

struct _GbPartsPage
{
  GbPage parent_instance;

  GbProject *project; /* the page's own, borrowed */
  GbGrid *grid;
  gboolean started; /* the builder asked for the empty list */

  GtkStack *stack;
  GbSidePane *pane;
  GtkBox *list;
  GtkBox *side;
  GbPartFacts *facts;
  GtkWidget *inspector;
  GtkLabel *side_hint;
  GtkMenuButton *menu_button;
  GtkButton *unknown_button;
  GtkWidget *foot_bar;
  GtkLabel *foot;
  GMenu *page_menu;
  GMenuModel *row_menu;
};

G_DEFINE_FINAL_TYPE (GbPartsPage, gb_parts_page, GB_TYPE_PAGE)

/* Showing ------------------------------------------------------------------------------------------------ */

static void
update_foot (GbPartsPage *self, const gint64 *tops, guint n)
{
  g_autofree char *unknown = gb_part_sums_unknown (self->project);
  g_autofree char *words
    = n > 1 ? gb_part_sums_selected (self->project, tops, n) : gb_part_sums_all (self->project);

  gtk_label_set_text (self->foot, words);
  gtk_widget_set_visible (GTK_WIDGET (self->unknown_button), unknown != NULL);
  if (unknown != NULL)
    gtk_button_set_label (self->unknown_button, unknown);
}

static void
update_side (GbPartsPage *self)
{
  g_autofree gint64 *ids = NULL;
  g_autofree gint64 *tops = NULL;
  gboolean boat = gb_grid_is_boat_selected (self->grid);
  guint n, n_tops;

  ids = gb_grid_dup_selected (self->grid, &n);
  /* What lies in a selected group is in its sum already. */
  tops = gb_grid_dup_selected_tops (self->grid, &n_tops);
  boat = boat && n == 0;
  gb_part_facts_show (self->facts, self->project, tops, n_tops, boat);
  if (boat)
    gb_inspector_show (GB_INSPECTOR (self->inspector), self->project, GB_RECORD_BUILD, (const gint64[]){ 1 },
                       1);
  else
    gb_inspector_show (GB_INSPECTOR (self->inspector), self->project, GB_RECORD_PART, ids,
                       n > MOST_INSPECTED ? 0 : n);
  gtk_widget_set_visible (GTK_WIDGET (self->side_hint), n == 0 && !boat);
}

static void
update_actions (GbPartsPage *self, guint n)
{
  static const char *const of_rows[]
    = { "parts.group",   "parts.cut",       "parts.copy",   "parts.duplicate", "parts.delete",
        "parts.move-up", "parts.move-down", "parts.indent", "parts.outdent" };
  static const char *const of_all[] = { "parts.add", "parts.add-group", "parts.paste" };
  gboolean writable = self->project != NULL && gb_project_get_read_only_reason (self->project) == NULL;

  for (guint i = 0; i < G_N_ELEMENTS (of_rows); i++)
    gtk_widget_action_set_enabled (GTK_WIDGET (self), of_rows[i],
                                   n > 0 && (writable || g_str_equal (of_rows[i], "parts.copy")));
  for (guint i = 0; i < G_N_ELEMENTS (of_all); i++)
    gtk_widget_action_set_enabled (GTK_WIDGET (self), of_all[i], writable);
}

static void
update (GbPartsPage *self)
{
  g_autofree gint64 *tops = NULL;
  gboolean listed;
  guint n;

  if (self->project == NULL)
    return;
  listed = self->started || gb_boat_n (gb_project_get_boat (self->project), GB_RECORD_PART) > 0;
  gtk_stack_set_visible_child_name (self->stack, listed ? "list" : "empty");
  gtk_widget_set_visible (self->foot_bar, listed);
  tops = gb_grid_dup_selected_tops (self->grid, &n);
  update_actions (self, n);
  update_foot (self, tops, n);
  update_side (self);
}

/* Telling ------------------------------------------------------------------------------------------------ */

static void
removed_cb (GbPartsPage *self, guint n, const char *title)
{
  gb_page_tell_removed (GTK_WIDGET (self), n, title);
}

static void
refused_cb (GbPartsPage *self, const char *sentence)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "win.tell", "s", sentence);
}

/* Actions ------------------------------------------------------------------------------------------------ */

static void
start_list (GbPartsPage *self)
{
  self->started = TRUE;
  update (self);
}

static void
add_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GbPartsPage *self = GB_PARTS_PAGE (widget);

  start_list (self);
  gb_grid_new_row (self->grid, GB_KIND_PART);
}

static void
add_group_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GbPartsPage *self = GB_PARTS_PAGE (widget);

  start_list (self);
  gb_grid_new_row (self->grid, GB_KIND_GROUP);
}

/* The group stands where the first of the rows stood, and takes them all in; its name is asked for next. */
static gint64
make_group (GbPartsPage *self, const gint64 *ids, guint n, GError **error)
{
  const GbBoat *boat = gb_project_get_boat (self->project);
  const GbPart *first = gb_boat_part (boat, ids[0]);
  g_autofree char *records = gb_words_count (GB_RECORD_PART, n);
  /* Translators: after "Undo:"; %s is "3 parts". */
  g_autofree char *words = g_strdup_printf (C_ ("undo", "group of %s"), records);
  g_autoptr (GbEdit) edit = gb_edit_new (words, GB_RECORD_PART, ids[0], "name");
  GbPart *group = (GbPart *) gb_record_new (GB_RECORD_PART);
  gint64 provisional;

  group->rec.owner = first->rec.owner;
  group->rec.position = first->rec.position;
  group->kind = GB_KIND_GROUP;
  group->name = g_strdup (_ ("Group"));
  group->x = group->y = group->z = 0;
  provisional = gb_edit_put (edit, &group->rec);
  for (guint i = 0; i < n; i++)
    {
      GbRecord *record = gb_record_copy (gb_boat_get (boat, GB_RECORD_PART, ids[i]));

      record->owner = provisional;
      record->position = i + 1;
      gb_edit_put (edit, record);
    }
  if (!gb_project_apply (self->project, g_steal_pointer (&edit), error))
    return 0;
  return gb_boat_part (boat, ids[0])->rec.owner;
}

static void
group_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GbPartsPage *self = GB_PARTS_PAGE (widget);
  g_autofree gint64 *ids = NULL;
  g_autoptr (GError) error = NULL;
  gint64 group;
  guint n;

  if (!gb_grid_commit (self->grid))
    return;
  ids = gb_grid_dup_selected_tops (self->grid, &n);
  if (n == 0)
    return;
  group = make_group (self, ids, n, &error);
  if (group == 0)
    {
      refused_cb (self, error->message);
      return;
    }
  gb_grid_go_to (self->grid, GB_RECORD_PART, group, "name", TRUE);
  gb_grid_edit (self->grid);
}

static void
grid_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  static const struct
  {
    const char *name;
    void (*verb) (GbGrid *grid);
  } verbs[] = {
    { "parts.cut", gb_grid_cut },
    { "parts.copy", gb_grid_copy },
    { "parts.paste", gb_grid_paste },
    { "parts.duplicate", gb_grid_duplicate },
    { "parts.delete", gb_grid_remove },
    { "parts.select-all", gb_grid_select_all },
    { "parts.find", gb_grid_find },
  };

  for (guint i = 0; i < G_N_ELEMENTS (verbs); i++)
    if (g_str_equal (name, verbs[i].name))
      verbs[i].verb (GB_PARTS_PAGE (widget)->grid);
}

static void
move_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gb_grid_move_rows (GB_PARTS_PAGE (widget)->grid, g_str_equal (name, "parts.move-up") ? -1 : 1);
}

static void
indent_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gb_grid_indent (GB_PARTS_PAGE (widget)->grid, g_str_equal (name, "parts.indent"));
}

static void
open_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gb_grid_open_groups (GB_PARTS_PAGE (widget)->grid, g_str_equal (name, "parts.open-all"));
}

static void
next_unknown_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GbPartsPage *self = GB_PARTS_PAGE (widget);
  g_autofree gint64 *ids = NULL;
  gint64 next;
  guint n;

  if (self->project == NULL || !gb_grid_commit (self->grid))
    return;
  ids = gb_grid_dup_selected (self->grid, &n);
  next = gb_part_sums_next_unknown (self->project, n > 0 ? ids[n - 1] : 0);
  if (next != 0)
    gb_grid_go_to (self->grid, GB_RECORD_PART, next, "length", TRUE);
}

static void
inspector_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GbPartsPage *self = GB_PARTS_PAGE (widget);

  gb_side_pane_set_revealed (self->pane, !gb_side_pane_get_revealed (self->pane));
}

/* The widget --------------------------------------------------------------------------------------------- */

static void
gb_parts_page_show (GbPage *page, GbProject *project)
{
  GbPartsPage *self = GB_PARTS_PAGE (page);

  self->project = project;
  self->started = FALSE;
  gb_grid_set_project (self->grid, project);
  if (project != NULL)
    {
      g_signal_connect_object (project, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
      gb_grid_go_to (self->grid, GB_RECORD_BUILD, 1, NULL, FALSE);
    }
  update_side (self);
  update (self);
}

static gboolean
gb_parts_page_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (GB_PARTS_PAGE (widget)->grid));
}

static void
gb_parts_page_dispose (GObject *object)
{
  GbPartsPage *self = GB_PARTS_PAGE (object);

  if (self->grid != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->grid, self);
      gb_page_set_project (GB_PAGE (self), NULL);
    }
  self->grid = NULL;
  gtk_widget_dispose_template (GTK_WIDGET (self), GB_TYPE_PARTS_PAGE);
  G_OBJECT_CLASS (gb_parts_page_parent_class)->dispose (object);
}

static void
install_actions (GtkWidgetClass *widget_class)
{
  static const struct
  {
    const char *name;
    GtkWidgetActionActivateFunc activate;
  } actions[] = {
    { "parts.add", add_action },
    { "parts.add-group", add_group_action },
    { "parts.group", group_action },
    { "parts.cut", grid_action },
    { "parts.copy", grid_action },
    { "parts.paste", grid_action },
    { "parts.duplicate", grid_action },
    { "parts.delete", grid_action },
    { "parts.move-up", move_action },
    { "parts.move-down", move_action },
    { "parts.indent", indent_action },
    { "parts.outdent", indent_action },
    { "parts.open-all", open_action },
    { "parts.close-all", open_action },
    { "parts.select-all", grid_action },
    { "parts.find", grid_action },
    { "parts.next-unknown", next_unknown_action },
    { "parts.inspector", inspector_action },
  };

  for (guint i = 0; i < G_N_ELEMENTS (actions); i++)
    gtk_widget_class_install_action (widget_class, actions[i].name, NULL, actions[i].activate);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_g, GDK_CONTROL_MASK, "parts.group", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_g, GDK_CONTROL_MASK | GDK_SHIFT_MASK,
                                       "parts.add-group", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_F8, 0, "parts.next-unknown", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_F9, 0, "parts.inspector", NULL);
}

static void
gb_parts_page_class_init (GbPartsPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = gb_parts_page_dispose;
  GB_PAGE_CLASS (klass)->show = gb_parts_page_show;
  widget_class->grab_focus = gb_parts_page_grab_focus;
  install_actions (widget_class);

  g_type_ensure (GB_TYPE_SIDE_PANE);
  g_type_ensure (GB_TYPE_PART_FACTS);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/garboard/Garboard/parts-page.ui");
  gtk_widget_class_bind_template_child (widget_class, GbPartsPage, stack);
  gtk_widget_class_bind_template_child (widget_class, GbPartsPage, pane);
  gtk_widget_class_bind_template_child (widget_class, GbPartsPage, list);
  gtk_widget_class_bind_template_child (widget_class, GbPartsPage, side);
  gtk_widget_class_bind_template_child (widget_class, GbPartsPage, facts);
  gtk_widget_class_bind_template_child (widget_class, GbPartsPage, side_hint);
  gtk_widget_class_bind_template_child (widget_class, GbPartsPage, menu_button);
  gtk_widget_class_bind_template_child (widget_class, GbPartsPage, unknown_button);
  gtk_widget_class_bind_template_child (widget_class, GbPartsPage, foot_bar);
  gtk_widget_class_bind_template_child (widget_class, GbPartsPage, foot);
  gtk_widget_class_bind_template_child (widget_class, GbPartsPage, page_menu);
  gtk_widget_class_bind_template_child (widget_class, GbPartsPage, row_menu);
}

static void
gb_parts_page_init (GbPartsPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->grid = GB_GRID (gb_grid_new (&gb_part_grid_type));
  gtk_box_append (self->list, GTK_WIDGET (self->grid));
  gb_grid_set_menu (self->grid, self->row_menu);
  g_menu_append_submenu (self->page_menu, _ ("_Columns"), gb_grid_get_columns_menu (self->grid));
  /* The columns' menu names actions of the grid, which the button stands beside. */
  gtk_widget_insert_action_group (GTK_WIDGET (self->menu_button), "grid", gb_grid_get_actions (self->grid));
  self->inspector = gb_inspector_new ();
  gtk_box_append (self->side, self->inspector);
  g_signal_connect_object (self->grid, "selection-changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->grid, "removed", G_CALLBACK (removed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->grid, "refused", G_CALLBACK (refused_cb), self, G_CONNECT_SWAPPED);
}

GtkWidget *
gb_parts_page_new (void)
{
  return g_object_new (GB_TYPE_PARTS_PAGE, NULL);
}

GbGrid *
gb_parts_page_get_grid (GbPartsPage *self)
{
  return self->grid;
}

void
gb_parts_page_show_part (GbPartsPage *self, gint64 id)
{
  gb_grid_go_to (self->grid, GB_RECORD_PART, id, NULL, TRUE);
}
