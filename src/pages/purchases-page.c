/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-purchases-page"

/* Actions; the keys are those of the tables (see widgets/grid.h):
 *
 *   purchases.add    a receipt of today
 *   purchases.find   Ctrl+F */

#include "purchases-page.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "boat/money.h"
#include "pages/grid-pane.h"
#include "pages/purchase-grids.h"
#include "project/project.h"
#include "project/record-list.h"

struct _GbPurchasesPage
{
  GbPage parent_instance;

  GbProject *project; /* the page's own, borrowed */
  GbGridPane *receipts;
  GbGridPane *lines;
  gboolean started; /* the builder asked for the empty list */

  GtkStack *stack;
  GtkPaned *paned;
  GtkLabel *foot;
};

G_DEFINE_FINAL_TYPE (GbPurchasesPage, gb_purchases_page, GB_TYPE_PAGE)

/* Nothing lives in this id: a table of it is empty. */
#define NOBODY -1

static const GbPurchase *
receipt_at_hand (GbPurchasesPage *self)
{
  guint n;
  g_autofree gint64 *ids = gb_grid_dup_selected (gb_grid_pane_get_grid (self->receipts), &n);

  if (self->project == NULL || n != 1)
    return NULL;
  return (const GbPurchase *) gb_boat_get (gb_project_get_boat (self->project), GB_RECORD_PURCHASE, ids[0]);
}

static void
update_foot (GbPurchasesPage *self)
{
  const char *currency = gb_project_get_build (self->project)->currency;
  guint n = gb_boat_n (gb_project_get_boat (self->project), GB_RECORD_PURCHASE);
  g_autofree char *spent = gb_money_format_full (gb_project_get_findings (self->project)->costs.spent, currency);
  g_autofree char *all = g_strdup_printf (ngettext ("%u receipt", "%u receipts", n), n);
  /* Translators: "8 receipts, € 538.15 spent in all". */
  g_autofree char *words = g_strdup_printf (_ ("%s, %s spent in all"), all, spent);

  gtk_label_set_text (self->foot, words);
}

static void
show_lines (GbPurchasesPage *self)
{
  const GbPurchase *receipt = receipt_at_hand (self);
  GbGrid *grid = gb_grid_pane_get_grid (self->lines);
  gint64 id = receipt != NULL ? receipt->rec.id : NOBODY;

  if (gb_grid_get_owner (grid) != id)
    gb_grid_set_owner (grid, id);
  gtk_widget_set_sensitive (GTK_WIDGET (self->lines), receipt != NULL);
}

static void
update (GbPurchasesPage *self)
{
  gboolean any = gb_boat_n (gb_project_get_boat (self->project), GB_RECORD_PURCHASE) > 0;

  gtk_stack_set_visible_child_name (self->stack, any || self->started ? "list" : "empty");
  show_lines (self);
  update_foot (self);
}

/* A line lives in its receipt: the table goes to that first. */
static void
place_cb (GbProject *project, const GbPlace *place, GbPurchasesPage *self)
{
  const GbRecord *record = gb_boat_get (gb_project_get_boat (project), place->kind, place->id);

  if (place->kind == GB_RECORD_PURCHASE && record != NULL)
    gb_grid_go_to (gb_grid_pane_get_grid (self->receipts), place->kind, place->id, place->field, FALSE);
  else if (place->kind == GB_RECORD_LINE && record != NULL)
    {
      gb_grid_select (gb_grid_pane_get_grid (self->receipts), &record->owner, 1);
      show_lines (self);
      gb_grid_go_to (gb_grid_pane_get_grid (self->lines), place->kind, place->id, place->field, FALSE);
    }
}

/* Actions ----------------------------------------------------------------------------------------------------------- */

static void
add_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GbPurchasesPage *self = GB_PURCHASES_PAGE (widget);

  self->started = TRUE;
  update (self);
  gb_grid_pane_start (self->receipts);
}

static void
find_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gb_grid_find (gb_grid_pane_get_grid (GB_PURCHASES_PAGE (widget)->receipts));
}

/* Object ------------------------------------------------------------------------------------------------------------ */

static void
gb_purchases_page_show (GbPage *page, GbProject *project)
{
  GbPurchasesPage *self = GB_PURCHASES_PAGE (page);

  self->project = project;
  self->started = FALSE;
  gb_grid_pane_set_project (self->receipts, project);
  gb_grid_pane_set_project (self->lines, project);
  if (project == NULL)
    return;
  g_signal_connect_object (project, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (project, "place", G_CALLBACK (place_cb), self, 0);
  gb_grid_pane_select_first (self->receipts, gb_boat_roots (gb_project_get_boat (project), GB_RECORD_PURCHASE));
  update (self);
}

static void
gb_purchases_page_dispose (GObject *object)
{
  GbPurchasesPage *self = GB_PURCHASES_PAGE (object);

  gb_page_set_project (GB_PAGE (self), NULL);
  gtk_widget_dispose_template (GTK_WIDGET (self), GB_TYPE_PURCHASES_PAGE);
  G_OBJECT_CLASS (gb_purchases_page_parent_class)->dispose (object);
}

static void
gb_purchases_page_class_init (GbPurchasesPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = gb_purchases_page_dispose;
  GB_PAGE_CLASS (klass)->show = gb_purchases_page_show;

  gtk_widget_class_set_template_from_resource (widget_class, "/org/garboard/Garboard/purchases-page.ui");
  gtk_widget_class_bind_template_child (widget_class, GbPurchasesPage, stack);
  gtk_widget_class_bind_template_child (widget_class, GbPurchasesPage, paned);
  gtk_widget_class_bind_template_child (widget_class, GbPurchasesPage, foot);
  gtk_widget_class_install_action (widget_class, "purchases.add", NULL, add_action);
  gtk_widget_class_install_action (widget_class, "purchases.find", NULL, find_action);
}

static void
gb_purchases_page_init (GbPurchasesPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->receipts = gb_grid_pane_new (&gb_purchase_grid_type, _ ("Receipts"), NULL);
  self->lines = gb_grid_pane_new (&gb_line_grid_type, _ ("Lines"), NULL);
  gb_grid_pane_set_hint (self->lines, _ ("A return is a line with a negative quantity."));
  gb_grid_set_owner (gb_grid_pane_get_grid (self->lines), NOBODY);
  gtk_widget_set_size_request (GTK_WIDGET (self->receipts), 300, -1);
  gtk_widget_set_size_request (GTK_WIDGET (self->lines), 360, -1);
  gtk_paned_set_start_child (self->paned, GTK_WIDGET (self->receipts));
  gtk_paned_set_end_child (self->paned, GTK_WIDGET (self->lines));
  g_signal_connect_object (gb_grid_pane_get_grid (self->receipts), "selection-changed", G_CALLBACK (show_lines), self,
                           G_CONNECT_SWAPPED);
}
