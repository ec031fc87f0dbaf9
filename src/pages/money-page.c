/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-money-page"

#include "money-page.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "boat/money.h"
#include "engine/working.h"
#include "pages/grid-pane.h"
#include "pages/money-grids.h"
#include "project/project.h"
#include "widgets/chart-host.h"
#include "widgets/fact-row.h"

typedef enum
{
  SUM_BUDGET,
  SUM_SPENT,
  SUM_TO_BUY,
  SUM_ALLOWANCE,
  SUM_FORECAST,
  N_SUMS
} Sum;

struct _GbMoneyPage
{
  GbPage parent_instance;

  GbProject *project; /* the page's own, borrowed */
  GbChartHost *charts;
  GbFactRow *facts[N_SUMS];
  GbGridPane *budget_pane;
  GbGridPane *to_buy_pane;

  GtkStack *views;
  GbChartArea *heads;
  GbChartArea *course;
  AdwPreferencesGroup *sums;
  GtkBox *budget;
  GtkBox *to_buy;
};

G_DEFINE_FINAL_TYPE (GbMoneyPage, gb_money_page, GB_TYPE_PAGE)

static const struct
{
  const char *title;
  GbFactWorking working;
} rows[N_SUMS] = {
  [SUM_BUDGET] = { N_ ("Budget"), NULL },
  [SUM_SPENT] = { N_ ("Spent"), NULL },
  [SUM_TO_BUY] = { N_ ("Still to buy"), NULL },
  [SUM_ALLOWANCE] = { N_ ("Allowance for what is not listed"), NULL },
  [SUM_FORECAST] = { N_ ("Forecast when she is done"), gb_working_money },
};

static void
update (GbMoneyPage *self)
{
  const GbBuild *build = gb_project_get_build (self->project);
  const GbCosts *costs = &gb_project_get_findings (self->project)->costs;
  const gint64 amounts[N_SUMS] = { costs->budget, costs->spent, costs->to_buy, costs->allowance, costs->forecast };
  gboolean over = costs->budget != GB_MONEY_UNKNOWN && costs->forecast > costs->budget;

  for (guint i = 0; i < N_SUMS; i++)
    {
      g_autofree char *text = gb_money_format_full (amounts[i], build->currency);

      gb_fact_row_set_value (self->facts[i], text, i == SUM_FORECAST && over);
    }
}

static void
place_cb (GbProject *project, const GbPlace *place, GbMoneyPage *self)
{
  if (place->kind != GB_RECORD_CATEGORY)
    return;
  gtk_stack_set_visible_child_name (self->views, "budget");
  gb_grid_go_to (gb_grid_pane_get_grid (self->budget_pane), place->kind, place->id, place->field, FALSE);
}

/* What is to be bought is stock, and that is entered on its own page. */
static void
go_to_stock_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gtk_widget_activate_action (widget, "win.view", "(ss)", "materials", "stock");
}

static void
gb_money_page_show (GbPage *page, GbProject *project)
{
  GbMoneyPage *self = GB_MONEY_PAGE (page);

  self->project = project;
  gb_chart_host_set_project (self->charts, project);
  gb_grid_pane_set_project (self->budget_pane, project);
  gb_grid_pane_set_project (self->to_buy_pane, project);
  for (guint i = 0; i < N_SUMS; i++)
    gb_fact_row_set_project (self->facts[i], project);
  if (project == NULL)
    return;
  g_signal_connect_object (project, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (project, "place", G_CALLBACK (place_cb), self, 0);
  update (self);
}

static void
gb_money_page_dispose (GObject *object)
{
  GbMoneyPage *self = GB_MONEY_PAGE (object);

  gb_page_set_project (GB_PAGE (self), NULL);
  g_clear_object (&self->charts);
  gtk_widget_dispose_template (GTK_WIDGET (self), GB_TYPE_MONEY_PAGE);
  G_OBJECT_CLASS (gb_money_page_parent_class)->dispose (object);
}

static void
gb_money_page_class_init (GbMoneyPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = gb_money_page_dispose;
  GB_PAGE_CLASS (klass)->show = gb_money_page_show;

  g_type_ensure (GB_TYPE_CHART_AREA);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/garboard/Garboard/money-page.ui");
  gtk_widget_class_bind_template_child (widget_class, GbMoneyPage, views);
  gtk_widget_class_bind_template_child (widget_class, GbMoneyPage, heads);
  gtk_widget_class_bind_template_child (widget_class, GbMoneyPage, course);
  gtk_widget_class_bind_template_child (widget_class, GbMoneyPage, sums);
  gtk_widget_class_bind_template_child (widget_class, GbMoneyPage, budget);
  gtk_widget_class_bind_template_child (widget_class, GbMoneyPage, to_buy);
  gtk_widget_class_install_action (widget_class, "money.go-to-stock", NULL, go_to_stock_action);
}

static void
gb_money_page_init (GbMoneyPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  for (guint i = 0; i < N_SUMS; i++)
    {
      self->facts[i] = gb_fact_row_new (_ (rows[i].title), rows[i].working);
      adw_preferences_group_add (self->sums, GTK_WIDGET (self->facts[i]));
    }

  self->budget_pane = gb_grid_pane_new (&gb_budget_grid_type, _ ("Heads of the budget"), _ ("Add a Head"));
  self->to_buy_pane = gb_grid_pane_new (&gb_to_buy_grid_type, _ ("Stock still to buy"), NULL);
  gb_grid_pane_set_hint (self->to_buy_pane, _ ("What the parts need with the cutting allowance, less what is on hand and bought, in whole packs."));
  gb_grid_pane_set_nothing (self->budget_pane, _ ("No budget yet"),
                            _ ("Share what you mean to spend among a few heads, such as timber, rig and paint. What is spent and what is still to "
                               "buy then stands against each."),
                            _ ("_Add a Head"), NULL);
  gb_grid_pane_set_nothing (self->to_buy_pane, _ ("Nothing to buy"),
                            _ ("Once there is stock that parts are made of, this says how much of it is still to be bought, and for how much."),
                            _ ("_Go to the Stock"), "money.go-to-stock");
  gtk_box_append (self->budget, GTK_WIDGET (self->budget_pane));
  gtk_box_append (self->to_buy, GTK_WIDGET (self->to_buy_pane));

  self->charts = gb_chart_host_new ();
  gb_chart_host_add (self->charts, self->heads, GB_CHART_HEADS);
  gb_chart_host_add (self->charts, self->course, GB_CHART_COURSE);
}
