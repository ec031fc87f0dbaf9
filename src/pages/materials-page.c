/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-materials-page"

/* Actions; the keys are those of the tables (see widgets/grid.h):
 *
 *   materials.add    a material, or stock where the stock is shown
 *   materials.find   Ctrl+F */

#include "materials-page.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "boat/quantity.h"
#include "engine/working.h"
#include "pages/grid-pane.h"
#include "pages/material-grids.h"
#include "project/project.h"
#include "project/verbs-weigh.h"
#include "widgets/complaint.h"
#include "widgets/inspector.h"
#include "widgets/side-pane.h"
#include "widgets/working-popover.h"

struct _GbMaterialsPage
{
  GbPage parent_instance;

  GbProject *project; /* the page's own, borrowed */
  GbGridPane *materials;
  GbGridPane *samples;
  GbGridPane *stock;
  GtkWidget *inspector;
  GbComplaint *complaint;

  GtkStack *views;
  GbSidePane *pane;
  GtkPaned *paned;
  GtkBox *stock_box;
  GtkBox *side;
  GtkWidget *side_hint;
  GtkBox *figure_row;
  GtkLabel *figure;
  GtkWidget *weigh_row;
  GtkWidget *weigh_entry;
};

G_DEFINE_FINAL_TYPE (GbMaterialsPage, gb_materials_page, GB_TYPE_PAGE)

/* Nothing lives in this id: a table of it is empty. */
#define NOBODY -1

static gboolean
shows_stock (GbMaterialsPage *self)
{
  return g_strcmp0 (gtk_stack_get_visible_child_name (self->views), "stock") == 0;
}

static GbGridPane *
pane_at_hand (GbMaterialsPage *self)
{
  return shows_stock (self) ? self->stock : self->materials;
}

static GbGrid *
grid_at_hand (GbMaterialsPage *self)
{
  return gb_grid_pane_get_grid (pane_at_hand (self));
}

/* The one row that is selected, or 0. */
static gint64
selected_one (GbMaterialsPage *self)
{
  guint n;
  g_autofree gint64 *ids = gb_grid_dup_selected (grid_at_hand (self), &n);

  return n == 1 ? ids[0] : 0;
}

/* Details ----------------------------------------------------------------------------------------------------------- */

static void
show_figure (GbMaterialsPage *self, gint64 material)
{
  g_autoptr (GbWorking) working = NULL;

  gtk_widget_set_visible (GTK_WIDGET (self->figure_row), material != 0);
  if (material == 0)
    return;
  working = gb_working_material (gb_project_get_boat (self->project), material);
  gtk_label_set_text (self->figure, working->title);
}

static void
show_samples (GbMaterialsPage *self, gint64 material)
{
  GbGrid *grid = gb_grid_pane_get_grid (self->samples);
  gint64 owner = material != 0 ? material : NOBODY;

  if (gb_grid_get_owner (grid) != owner)
    gb_grid_set_owner (grid, owner);
  gtk_widget_set_visible (GTK_WIDGET (self->samples), material != 0);
}

/* Only a sheet, a length or a block has sides that make a density of a mass. */
static gboolean
can_weigh (GbMaterialsPage *self, gint64 id)
{
  const GbStock *stock = id != 0 ? gb_boat_stock (gb_project_get_boat (self->project), id) : NULL;

  return stock != NULL && stock->material != 0 && stock->form <= GB_FORM_BLOCK
         && gb_project_get_read_only_reason (self->project) == NULL;
}

static void
update (GbMaterialsPage *self)
{
  GbRecordKind kind = shows_stock (self) ? GB_RECORD_STOCK : GB_RECORD_MATERIAL;
  g_autofree gint64 *ids = NULL;
  gint64 one;
  guint n;

  if (self->project == NULL)
    return;
  ids = gb_grid_dup_selected (grid_at_hand (self), &n);
  one = selected_one (self);
  gb_inspector_show (GB_INSPECTOR (self->inspector), self->project, kind, ids, n);
  gtk_widget_set_visible (self->side_hint, n == 0);
  show_figure (self, kind == GB_RECORD_MATERIAL ? one : 0);
  if (kind == GB_RECORD_MATERIAL)
    show_samples (self, one);
  gtk_widget_set_visible (self->weigh_row, kind == GB_RECORD_STOCK && can_weigh (self, one));
}

static void
view_shown_cb (GObject *stack, GParamSpec *pspec, gpointer data)
{
  GtkWidget *self = gtk_widget_get_ancestor (GTK_WIDGET (stack), GB_TYPE_MATERIALS_PAGE);

  if (self != NULL && GB_MATERIALS_PAGE (self)->inspector != NULL)
    update (GB_MATERIALS_PAGE (self));
}

static void
how_clicked_cb (GtkButton *button, GbMaterialsPage *self)
{
  gint64 material = selected_one (self);

  if (material != 0)
    gb_working_popover_show (GTK_WIDGET (button), gb_working_material (gb_project_get_boat (self->project), material));
}

/* Weighing a piece of stock ------------------------------------------------------------------------------------------- */

static void
complain (GbMaterialsPage *self, const char *sentence)
{
  if (self->complaint == NULL && sentence != NULL)
    self->complaint = gb_complaint_new (self->weigh_row);
  if (self->complaint != NULL)
    gb_complaint_say (self->complaint, sentence);
  if (sentence != NULL)
    gtk_widget_add_css_class (self->weigh_entry, "error");
  else
    gtk_widget_remove_css_class (self->weigh_entry, "error");
}

static void
weigh_cb (GtkEntry *entry, gpointer data)
{
  GbMaterialsPage *self = GB_MATERIALS_PAGE (gtk_widget_get_ancestor (GTK_WIDGET (entry), GB_TYPE_MATERIALS_PAGE));
  const char *text = gtk_editable_get_text (GTK_EDITABLE (entry));
  gint64 stock = selected_one (self);
  g_autoptr (GError) error = NULL;
  double mass;

  if (stock == 0 || *text == '\0')
    return;
  if (!gb_quantity_parse (text, GB_DIM_MASS, gb_project_get_build (self->project)->units, &mass, &error)
      || gb_project_weigh_stock (self->project, stock, gb_today (), mass, 1, &error) == 0)
    complain (self, error->message);
  else
    gtk_editable_set_text (GTK_EDITABLE (entry), "");
}

static void
weigh_changed_cb (GtkEditable *entry, gpointer data)
{
  GtkWidget *self = gtk_widget_get_ancestor (GTK_WIDGET (entry), GB_TYPE_MATERIALS_PAGE);

  if (self != NULL)
    complain (GB_MATERIALS_PAGE (self), NULL);
}

/* Undo comes back to where the edit was -------------------------------------------------------------------------------- */

static void
place_cb (GbProject *project, const GbPlace *place, GbMaterialsPage *self)
{
  const GbRecord *record = gb_boat_get (gb_project_get_boat (project), place->kind, place->id);

  if (record == NULL)
    return;
  if (place->kind == GB_RECORD_STOCK || place->kind == GB_RECORD_MATERIAL)
    {
      gtk_stack_set_visible_child_name (self->views, place->kind == GB_RECORD_STOCK ? "stock" : "materials");
      gb_grid_go_to (grid_at_hand (self), place->kind, place->id, place->field, FALSE);
    }
  else if (place->kind == GB_RECORD_SAMPLE)
    {
      gtk_stack_set_visible_child_name (self->views, "materials");
      gb_grid_select (grid_at_hand (self), &record->owner, 1);
      update (self);
      gb_grid_go_to (gb_grid_pane_get_grid (self->samples), place->kind, place->id, place->field, FALSE);
    }
}

/* Actions ----------------------------------------------------------------------------------------------------------- */

static void
add_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gb_grid_pane_start (pane_at_hand (GB_MATERIALS_PAGE (widget)));
}

static void
find_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gb_grid_find (grid_at_hand (GB_MATERIALS_PAGE (widget)));
}

/* Object ------------------------------------------------------------------------------------------------------------ */

static void
gb_materials_page_show (GbPage *page, GbProject *project)
{
  GbMaterialsPage *self = GB_MATERIALS_PAGE (page);

  self->project = project;
  gb_grid_pane_set_project (self->materials, project);
  gb_grid_pane_set_project (self->samples, project);
  gb_grid_pane_set_project (self->stock, project);
  if (project == NULL)
    {
      gb_inspector_show (GB_INSPECTOR (self->inspector), NULL, GB_RECORD_MATERIAL, NULL, 0);
      return;
    }
  g_signal_connect_object (project, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (project, "place", G_CALLBACK (place_cb), self, 0);
  gb_grid_pane_select_first (self->materials, gb_boat_roots (gb_project_get_boat (project), GB_RECORD_MATERIAL));
  gb_grid_pane_select_first (self->stock, gb_boat_roots (gb_project_get_boat (project), GB_RECORD_STOCK));
  update (self);
}

static void
gb_materials_page_dispose (GObject *object)
{
  GbMaterialsPage *self = GB_MATERIALS_PAGE (object);

  gb_page_set_project (GB_PAGE (self), NULL);
  if (self->complaint != NULL)
    gtk_widget_unparent (GTK_WIDGET (self->complaint));
  self->complaint = NULL;
  self->inspector = NULL;
  gtk_widget_dispose_template (GTK_WIDGET (self), GB_TYPE_MATERIALS_PAGE);
  G_OBJECT_CLASS (gb_materials_page_parent_class)->dispose (object);
}

static void
gb_materials_page_class_init (GbMaterialsPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = gb_materials_page_dispose;
  GB_PAGE_CLASS (klass)->show = gb_materials_page_show;

  g_type_ensure (GB_TYPE_SIDE_PANE);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/garboard/Garboard/materials-page.ui");
  gtk_widget_class_bind_template_child (widget_class, GbMaterialsPage, views);
  gtk_widget_class_bind_template_child (widget_class, GbMaterialsPage, pane);
  gtk_widget_class_bind_template_child (widget_class, GbMaterialsPage, paned);
  gtk_widget_class_bind_template_child (widget_class, GbMaterialsPage, stock_box);
  gtk_widget_class_bind_template_child (widget_class, GbMaterialsPage, side);
  gtk_widget_class_bind_template_child (widget_class, GbMaterialsPage, side_hint);
  gtk_widget_class_bind_template_child (widget_class, GbMaterialsPage, figure_row);
  gtk_widget_class_bind_template_child (widget_class, GbMaterialsPage, figure);
  gtk_widget_class_bind_template_child (widget_class, GbMaterialsPage, weigh_row);
  gtk_widget_class_bind_template_child (widget_class, GbMaterialsPage, weigh_entry);
  gtk_widget_class_bind_template_callback (widget_class, view_shown_cb);
  gtk_widget_class_bind_template_callback (widget_class, weigh_cb);
  gtk_widget_class_bind_template_callback (widget_class, weigh_changed_cb);
  gtk_widget_class_install_action (widget_class, "materials.add", NULL, add_action);
  gtk_widget_class_install_action (widget_class, "materials.find", NULL, find_action);
}

static void
gb_materials_page_init (GbMaterialsPage *self)
{
  GtkWidget *how = gb_how_button_new ();

  gtk_widget_init_template (GTK_WIDGET (self));
  self->materials = gb_grid_pane_new (&gb_material_grid_type, _ ("Materials of this build"), NULL);
  self->samples = gb_grid_pane_new (&gb_sample_grid_type, _ ("Weighed samples"), NULL);
  self->stock = gb_grid_pane_new (&gb_stock_grid_type, _ ("Stock: what the shop sells and the shed holds"), NULL);
  gb_grid_pane_set_hint (self->samples, _ ("Put a piece on the scale and measure its sides: the figure follows, with its own spread."));
  gb_grid_set_owner (gb_grid_pane_get_grid (self->samples), NOBODY);
  gb_grid_pane_set_nothing (self->materials, _ ("No materials yet"),
                            _ ("Name what the boat is made of. What is in Garboard's table comes with its figures and their source; your own can be put "
                               "on the scale."),
                            _ ("_Add a Material"), NULL);
  gb_grid_pane_set_nothing (self->stock, _ ("No stock yet"),
                            _ ("Sheets, lengths, tins and fittings: what the shop sells, and what is in the shed already. Parts that name their stock "
                               "take their material and thickness from it, and you see what to buy."),
                            _ ("_Add Stock"), NULL);
  gtk_widget_set_size_request (GTK_WIDGET (self->materials), -1, 170);
  gtk_widget_set_size_request (GTK_WIDGET (self->samples), -1, 200);
  gtk_widget_set_hexpand (GTK_WIDGET (self->stock), TRUE);
  gtk_paned_set_start_child (self->paned, GTK_WIDGET (self->materials));
  gtk_paned_set_end_child (self->paned, GTK_WIDGET (self->samples));
  gtk_box_append (self->stock_box, GTK_WIDGET (self->stock));

  g_signal_connect_object (how, "clicked", G_CALLBACK (how_clicked_cb), self, 0);
  gtk_box_append (self->figure_row, how);
  self->inspector = gb_inspector_new ();
  gtk_box_append (self->side, self->inspector);
  g_signal_connect_object (gb_grid_pane_get_grid (self->materials), "selection-changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (gb_grid_pane_get_grid (self->stock), "selection-changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
}
