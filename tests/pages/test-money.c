/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The money page by keys: a head of the budget is named, given its money, and undone. */

#include "pages/money-page.h"
#include "support.h"

static const GbCategory *
last_head (Support *support)
{
  const GPtrArray *heads = gb_boat_roots (gb_project_get_boat (support->project), GB_RECORD_CATEGORY);

  return heads->len > 0 ? heads->pdata[heads->len - 1] : NULL;
}

static void
test_head_of_the_budget (void)
{
  g_autoptr (Support) support = support_new ("plover");
  guint n = gb_boat_n (gb_project_get_boat (support->project), GB_RECORD_CATEGORY);
  gint64 budget = gb_project_get_findings (support->project)->costs.budget;
  GtkWidget *page = g_object_new (GB_TYPE_MONEY_PAGE, NULL);
  GbGrid *grid;

  support_show (support, page, 1100, 700);
  gtk_stack_set_visible_child_name (GTK_STACK (support_find (page, GTK_TYPE_STACK)), "budget");
  support_settle ();
  grid = support_grid (page, GB_RECORD_CATEGORY);
  gb_grid_start_blank (grid);
  support_until (support_is_editing (support));
  support_type (support, "Sails");
  support_keys (support, "Return");
  support_until (gb_boat_n (gb_project_get_boat (support->project), GB_RECORD_CATEGORY) == n + 1);
  g_assert_cmpstr (last_head (support)->name, ==, "Sails");

  gb_grid_go_to (grid, GB_RECORD_CATEGORY, last_head (support)->rec.id, "budget", TRUE);
  support_type (support, "120.50");
  support_keys (support, "Return");
  support_until (last_head (support)->budget == 12050);
  g_assert_cmpint (gb_project_get_findings (support->project)->costs.budget, ==, budget + 12050);

  g_assert_true (gb_project_undo (support->project, NULL));
  g_assert_cmpint (gb_project_get_findings (support->project)->costs.budget, ==, budget);
}

int
main (int argc, char **argv)
{
  support_init (&argc, &argv);
  g_test_add_func ("/money/head-of-the-budget", test_head_of_the_budget);
  return g_test_run ();
}
