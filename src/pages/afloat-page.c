/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-afloat-page"

#include "afloat-page-private.h"

#include <glib/gi18n-lib.h>

#include "pages/afloat-grids.h"
#include "pages/divided-layout.h"

/* What divides the page, by its name in the template. */
static const struct
{
  const char *name;
  double share;
  int wanted;
} dividers[] = {
  { "across", 0.38, 590 }, /* so wide the names of all views are read in full */
  { "right", 0.47, 0 },
  { "left", 0.28, 0 },
  { "lower_left", 0.3, 0 },
};

G_DEFINE_FINAL_TYPE (GbAfloatPage, gb_afloat_page, GB_TYPE_PAGE)

/* Nothing lives in this id: a table of it is empty. */
#define NOBODY -1

static gint64
only_selected (GbGridPane *pane)
{
  guint n;
  g_autofree gint64 *ids = gb_grid_dup_selected (gb_grid_pane_get_grid (pane), &n);

  return n == 1 ? ids[0] : 0;
}

static const GbBoat *
boat_of (GbAfloatPage *self)
{
  return gb_project_get_boat (self->project);
}

/* The condition that is selected; while none is, the one before as long as it is there, else the first. */
static gint64
find_condition (GbAfloatPage *self)
{
  const GPtrArray *roots = gb_boat_roots (boat_of (self), GB_RECORD_CONDITION);
  gint64 selected = only_selected (self->conditions);

  if (gb_boat_get (boat_of (self), GB_RECORD_CONDITION, selected) != NULL)
    return selected;
  if (gb_boat_get (boat_of (self), GB_RECORD_CONDITION, self->condition) != NULL)
    return self->condition;
  return roots->len > 0 ? ((const GbRecord *) roots->pdata[0])->id : 0;
}

/* Showing ----------------------------------------------------------------------------------------------- */

static void
show_record (GbAfloatPage *self, GbRecordKind kind, const gint64 *ids, guint n)
{
  const GbRecord *record = n == 1 ? gb_boat_get (boat_of (self), kind, ids[0]) : NULL;
  g_autofree char *title
      = record != NULL ? gb_record_dup_title (record) : g_strdup (_ (gb_record_type (kind)->plural));

  gtk_label_set_text (self->details_title, title);
  gb_inspector_show (self->inspector, self->project, kind, ids, n);
}

/* While tests are in sight and none of them is selected, the one that their readings belong to. */
static gboolean
show_test_at_hand (GbAfloatPage *self)
{
  gint64 id = 0;

  if (self->touched == gb_test_log_get_grid (gb_inclining_log_get_tables (self->inclining)))
    id = gb_test_log_at_hand (gb_inclining_log_get_tables (self->inclining));
  else if (self->touched == gb_test_log_get_grid (gb_tub_log_get_tables (self->tub)))
    id = gb_test_log_at_hand (gb_tub_log_get_tables (self->tub));
  if (id != 0)
    show_record (self, gb_grid_get_type_data (self->touched)->kind, &id, 1);
  return id != 0;
}

/* What was touched last, else the load that is selected, else the condition. */
void
gb_afloat_page_show_details (GbAfloatPage *self)
{
  GbGrid *const grids[] = { self->touched, gb_grid_pane_get_grid (self->loads) };

  if (show_test_at_hand (self))
    return;
  for (guint i = 0; i < G_N_ELEMENTS (grids); i++)
    {
      guint n = 0;
      g_autofree gint64 *ids = grids[i] != NULL ? gb_grid_dup_selected (grids[i], &n) : NULL;

      if (n > 0)
        {
          show_record (self, gb_grid_get_type_data (grids[i])->kind, ids, n);
          return;
        }
    }
  show_record (self, GB_RECORD_CONDITION, &self->condition, self->condition != 0 ? 1 : 0);
}

/* All that follows the condition and the load at hand. */
static void
show_all (GbAfloatPage *self)
{
  GbGrid *loads = gb_grid_pane_get_grid (self->loads);

  if (self->project == NULL)
    return;
  self->condition = find_condition (self);
  gtk_stack_set_visible_child_name (self->main, self->condition != 0 ? "page" : "nothing");
  if (gb_grid_get_owner (loads) != (self->condition != 0 ? self->condition : NOBODY))
    gb_grid_set_owner (loads, self->condition != 0 ? self->condition : NOBODY);
  self->load = only_selected (self->loads);
  gb_afloat_drag_set (self->drag, self->project, self->condition, self->load);
  gb_chart_host_set_condition (self->charts, self->condition, gb_afloat_page_mover (self));
  gb_afloat_page_show_details (self);
  gb_afloat_page_show_view (self);
}

static void
selected_cb (GbGrid *grid, GbAfloatPage *self)
{
  guint n;
  g_autofree gint64 *ids = gb_grid_dup_selected (grid, &n);
  gboolean is_condition = grid == gb_grid_pane_get_grid (self->conditions);

  if (n > 0)
    self->touched = grid;
  /* The loads of another condition: those that were selected are not there any more. */
  if (is_condition && n == 1 && ids[0] != self->condition)
    gb_grid_select (gb_grid_pane_get_grid (self->loads), NULL, 0);
  show_all (self);
}

/* The details are those of a test while tests are in sight, and not when they are not. */
static void
view_shown_cb (GObject *views, GParamSpec *pspec, gpointer data)
{
  GbAfloatPage *self = GB_AFLOAT_PAGE (gtk_widget_get_ancestor (GTK_WIDGET (views), GB_TYPE_AFLOAT_PAGE));
  const char *view = gtk_stack_get_visible_child_name (GTK_STACK (views));

  if (self == NULL || self->project == NULL)
    return;
  self->touched = NULL;
  if (g_strcmp0 (view, "inclining") == 0)
    self->touched = gb_test_log_get_grid (gb_inclining_log_get_tables (self->inclining));
  else if (g_strcmp0 (view, "model") == 0)
    self->touched = gb_test_log_get_grid (gb_tub_log_get_tables (self->tub));
  gb_afloat_page_show_details (self);
  gb_afloat_page_show_view (self);
}

/* A condition that is new is at hand, though the blank row may be selected still. */
static void
changed_cb (GbProject *project, GbChanges *changes, GbAfloatPage *self)
{
  for (guint i = 0; i < changes->changes->len; i++)
    {
      const GbChange *change = &g_array_index (changes->changes, GbChange, i);

      if (change->kind == GB_RECORD_CONDITION && change->op == GB_CHANGE_ADDED)
        self->condition = change->id;
    }
  show_all (self);
}

/* Places ------------------------------------------------------------------------------------------------ */

/* To the row of an edit that was undone, by way of what it lives in. */
static void
place_cb (GbProject *project, const GbPlace *place, GbAfloatPage *self)
{
  const GbRecord *record = gb_boat_get (boat_of (self), place->kind, place->id);

  if (place->kind == GB_RECORD_INCLINING || place->kind == GB_RECORD_SHIFT)
    {
      gtk_stack_set_visible_child_name (self->views, "inclining");
      gb_test_log_go_to (gb_inclining_log_get_tables (self->inclining), place);
    }
  else if (place->kind == GB_RECORD_TUB || place->kind == GB_RECORD_TUB_LOAD)
    {
      gtk_stack_set_visible_child_name (self->views, "model");
      gb_test_log_go_to (gb_tub_log_get_tables (self->tub), place);
    }
  else if (place->kind == GB_RECORD_CONDITION && record != NULL)
    gb_grid_go_to (gb_grid_pane_get_grid (self->conditions), place->kind, place->id, place->field, FALSE);
  else if (place->kind == GB_RECORD_LOAD && record != NULL)
    {
      gb_grid_go_to (gb_grid_pane_get_grid (self->conditions), GB_RECORD_CONDITION, record->owner, NULL,
                     FALSE);
      gb_grid_go_to (gb_grid_pane_get_grid (self->loads), place->kind, place->id, place->field, FALSE);
      /* It may have been selected all along, and then nothing tells of it. */
      self->touched = gb_grid_pane_get_grid (self->loads);
      gb_afloat_page_show_details (self);
    }
}

/* Loads need a condition to live in. */
static gboolean
ensure_condition (GbAfloatPage *self)
{
  g_autoptr (GError) error = NULL;
  GbRecord *condition;

  if (gb_boat_n (boat_of (self), GB_RECORD_CONDITION) > 0)
    return TRUE;
  condition = gb_record_new (GB_RECORD_CONDITION);
  gb_field_set_text (gb_field (GB_RECORD_CONDITION, "name"), condition, _ ("Usual load"));
  if (gb_project_add (self->project, condition, 0, 0, &error) != 0)
    return TRUE;
  gtk_widget_activate_action (GTK_WIDGET (self), "win.tell", "s", error->message);
  return FALSE;
}

static void
add_load_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GbAfloatPage *self = GB_AFLOAT_PAGE (widget);

  if (self->project != NULL && ensure_condition (self))
    gb_grid_pane_start (self->loads);
}

gint64
gb_afloat_page_get_condition (GbAfloatPage *self)
{
  g_return_val_if_fail (GB_IS_AFLOAT_PAGE (self), 0);
  return self->condition;
}

/* Object ------------------------------------------------------------------------------------------------ */

static void
gb_afloat_page_show (GbPage *page, GbProject *project)
{
  GbAfloatPage *self = GB_AFLOAT_PAGE (page);

  self->project = project;
  self->condition = self->load = 0;
  gb_afloat_drag_set (self->drag, project, 0, 0);
  gb_chart_host_set_project (self->charts, project);
  gb_grid_pane_set_project (self->conditions, project);
  gb_grid_pane_set_project (self->loads, project);
  gb_test_log_set_project (gb_inclining_log_get_tables (self->inclining), project);
  gb_test_log_set_project (gb_tub_log_get_tables (self->tub), project);
  if (project == NULL)
    {
      gb_afloat_facts_show (self->facts, NULL, NULL);
      gb_inspector_show (self->inspector, NULL, GB_RECORD_CONDITION, NULL, 0);
      return;
    }
  g_signal_connect_object (project, "changed", G_CALLBACK (changed_cb), self, 0);
  g_signal_connect_object (project, "study-found", G_CALLBACK (gb_afloat_page_show_view), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (project, "place", G_CALLBACK (place_cb), self, 0);
  gb_grid_pane_select_first (self->conditions,
                             gb_boat_roots (gb_project_get_boat (project), GB_RECORD_CONDITION));
  self->touched = NULL;
  show_all (self);
}

static void
gb_afloat_page_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (gb_afloat_page_parent_class)->map (widget);
  gb_afloat_page_show_view (GB_AFLOAT_PAGE (widget));
}

static void
gb_afloat_page_dispose (GObject *object)
{
  GbAfloatPage *self = GB_AFLOAT_PAGE (object);

  gb_page_set_project (GB_PAGE (self), NULL);
  g_clear_object (&self->charts);
  g_clear_object (&self->drag);
  gtk_widget_dispose_template (GTK_WIDGET (self), GB_TYPE_AFLOAT_PAGE);
  G_OBJECT_CLASS (gb_afloat_page_parent_class)->dispose (object);
}

static void
ensure_types (void)
{
  g_type_ensure (GB_TYPE_AFLOAT_FACTS);
  g_type_ensure (GB_TYPE_CHART_AREA);
  g_type_ensure (GB_TYPE_CREW_VIEW);
  g_type_ensure (GB_TYPE_INCLINING_LOG);
  g_type_ensure (GB_TYPE_INSPECTOR);
  g_type_ensure (GB_TYPE_RIGHTING_VIEW);
  g_type_ensure (GB_TYPE_SWAMPED_VIEW);
  g_type_ensure (GB_TYPE_TUB_LOG);
}

static void
gb_afloat_page_class_init (GbAfloatPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gb_afloat_page_dispose;
  widget_class->map = gb_afloat_page_map;
  GB_PAGE_CLASS (klass)->show = gb_afloat_page_show;

  ensure_types ();
  gtk_widget_class_set_template_from_resource (widget_class, "/org/garboard/Garboard/afloat-page.ui");
  for (guint i = 0; i < G_N_ELEMENTS (dividers); i++)
    gtk_widget_class_bind_template_child_full (widget_class, dividers[i].name, FALSE, 0);
  gtk_widget_class_bind_template_child (widget_class, GbAfloatPage, main);
  gtk_widget_class_bind_template_child (widget_class, GbAfloatPage, conditions_box);
  gtk_widget_class_bind_template_child (widget_class, GbAfloatPage, loads_box);
  gtk_widget_class_bind_template_child (widget_class, GbAfloatPage, details_title);
  gtk_widget_class_bind_template_child (widget_class, GbAfloatPage, inspector);
  gtk_widget_class_bind_template_child (widget_class, GbAfloatPage, drawing);
  gtk_widget_class_bind_template_child (widget_class, GbAfloatPage, switcher);
  gtk_widget_class_bind_template_child (widget_class, GbAfloatPage, views);
  gtk_widget_class_bind_template_child (widget_class, GbAfloatPage, facts);
  gtk_widget_class_bind_template_child (widget_class, GbAfloatPage, freeboard_view);
  gtk_widget_class_bind_template_child (widget_class, GbAfloatPage, freeboard);
  gtk_widget_class_bind_template_child (widget_class, GbAfloatPage, crew);
  gtk_widget_class_bind_template_child (widget_class, GbAfloatPage, righting);
  gtk_widget_class_bind_template_child (widget_class, GbAfloatPage, swamped);
  gtk_widget_class_bind_template_child (widget_class, GbAfloatPage, inclining);
  gtk_widget_class_bind_template_child (widget_class, GbAfloatPage, tub);
  gtk_widget_class_bind_template_callback (widget_class, view_shown_cb);
  gtk_widget_class_install_action (widget_class, "afloat.add", NULL, add_load_action);
}

static void
make_tables (GbAfloatPage *self)
{
  self->conditions = gb_grid_pane_new (&gb_condition_grid_type, _ ("Conditions"), NULL);
  self->loads = gb_grid_pane_new (&gb_load_grid_type, _ ("Aboard"), NULL);
  gb_grid_pane_set_nothing (self->loads, _ ("Nobody aboard yet"),
                            _ ("List who and what comes aboard: people, gear, water."), _ ("_Add a Load"),
                            "afloat.add");
  gtk_box_append (self->conditions_box, GTK_WIDGET (self->conditions));
  gtk_box_append (self->loads_box, GTK_WIDGET (self->loads));
  g_signal_connect_object (gb_grid_pane_get_grid (self->conditions), "selection-changed",
                           G_CALLBACK (selected_cb), self, 0);
  g_signal_connect_object (gb_grid_pane_get_grid (self->loads), "selection-changed", G_CALLBACK (selected_cb),
                           self, 0);
  g_signal_connect_object (gb_test_log_get_grid (gb_inclining_log_get_tables (self->inclining)),
                           "selection-changed", G_CALLBACK (selected_cb), self, 0);
  g_signal_connect_object (gb_test_log_get_grid (gb_tub_log_get_tables (self->tub)), "selection-changed",
                           G_CALLBACK (selected_cb), self, 0);
}

/* Words that are too long for a narrow window are cut, and then said by the tooltip. */
static void
let_labels_shrink (GtkWidget *switcher)
{
  for (GtkWidget *button = gtk_widget_get_first_child (switcher); button != NULL;
       button = gtk_widget_get_next_sibling (button))
    {
      GtkWidget *label = gtk_widget_get_first_child (button);

      if (!GTK_IS_LABEL (label))
        continue;
      gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
      gtk_label_set_width_chars (GTK_LABEL (label), 4);
      gtk_widget_set_tooltip_text (button, gtk_label_get_text (GTK_LABEL (label)));
    }
}

static void
make_layout (GbAfloatPage *self)
{
  GtkLayoutManager *layout = gb_divided_layout_new ();

  for (guint i = 0; i < G_N_ELEMENTS (dividers); i++)
    {
      GObject *divider
          = gtk_widget_get_template_child (GTK_WIDGET (self), GB_TYPE_AFLOAT_PAGE, dividers[i].name);

      gb_divided_layout_add (GB_DIVIDED_LAYOUT (layout), GTK_PANED (divider), dividers[i].share,
                             dividers[i].wanted);
    }
  gtk_widget_set_layout_manager (GTK_WIDGET (self), layout);
}

static void
gb_afloat_page_init (GbAfloatPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  make_layout (self);
  make_tables (self);
  gb_afloat_page_make_charts (self);
  let_labels_shrink (self->switcher);
}
