/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A receipt entered as fast as it can be read: shop, then line after line; stock and parts by name; a return.
 */

#include "boat/money.h"
#include "pages/purchases-page.h"
#include "support.h"

typedef struct
{
  Support *support;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data)
{
  GbStock *sheet = (GbStock *) gb_record_new (GB_RECORD_STOCK);

  fixture->support = support_new (NULL);
  sheet->name = g_strdup ("Ply sheet 6 mm");
  sheet->supplier = g_strdup ("The plywood shop");
  sheet->material = 1;
  sheet->price = 5000;
  g_assert_cmpint (gb_project_add (fixture->support->project, &sheet->rec, 0, 0, NULL), >, 0);
  support_show (fixture->support, g_object_new (GB_TYPE_PURCHASES_PAGE, NULL), 1100, 700);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  support_free (fixture->support);
}

static const GbBoat *
boat (Fixture *fixture)
{
  return gb_project_get_boat (fixture->support->project);
}

static const GbLine *
line_at (Fixture *fixture, guint index)
{
  const GPtrArray *lines = gb_boat_all (boat (fixture), GB_RECORD_LINE);

  return index < lines->len ? lines->pdata[index] : NULL;
}

static void
enter_receipt (Fixture *fixture)
{
  gtk_widget_activate_action (fixture->support->page, "purchases.add", NULL);
  support_until (support_is_editing (fixture->support));
  support_type (fixture->support, "The plywood shop");
  support_keys (fixture->support, "Return");
  support_until (gb_boat_n (boat (fixture), GB_RECORD_PURCHASE) == 1);
}

/* Types @what into the blank line and waits for the line. */
static void
enter_line (Fixture *fixture, const char *what, guint index)
{
  gb_grid_start_blank (support_grid (fixture->support->page, GB_RECORD_LINE));
  support_until (support_is_editing (fixture->support));
  support_type (fixture->support, what);
  support_keys (fixture->support, "Return");
  support_until (line_at (fixture, index) != NULL);
}

static void
test_receipt (Fixture *fixture, gconstpointer data)
{
  const GbPurchase *purchase;
  GbGrid *receipts = support_grid (fixture->support->page, GB_RECORD_PURCHASE);

  enter_receipt (fixture);
  purchase = gb_boat_roots (boat (fixture), GB_RECORD_PURCHASE)->pdata[0];
  g_assert_cmpint (purchase->date, ==, gb_today ());
  g_assert_cmpstr (purchase->supplier, ==, "The plywood shop");

  /* Stock by its name brings its price along; Enter goes on to the quantity. */
  enter_line (fixture, "Ply sheet 6 mm", 0);
  g_assert_cmpint (line_at (fixture, 0)->kind, ==, GB_LINE_STOCK);
  g_assert_cmpint (line_at (fixture, 0)->stock, ==, 1);
  g_assert_cmpint (line_at (fixture, 0)->price, ==, 5000);
  support_type (fixture->support, "2");
  support_until (support_is_editing (fixture->support));
  support_keys (fixture->support, "Return");
  support_until (line_at (fixture, 0)->quantity == 2);
  g_assert_cmpint (gb_project_get_findings (fixture->support->project)->costs.spent, ==, 10000);
  g_assert_cmpstr (support_cell (receipts, GB_RECORD_PURCHASE, purchase->rec.id, "total"), ==, "100.00");

  /* A part by its name. */
  enter_line (fixture, "Lantern", 1);
  g_assert_cmpint (line_at (fixture, 1)->part, ==, support_part (fixture->support, "Lantern"));
  g_assert_cmpint (gb_boat_part (boat (fixture), line_at (fixture, 1)->part)->state, ==, GB_STATE_BOUGHT);

  /* Something else; and a return. */
  enter_line (fixture, "Sandpaper", 2);
  g_assert_cmpint (line_at (fixture, 2)->kind, ==, GB_LINE_OTHER);
  support_keys (fixture->support, "Right");
  support_type (fixture->support, "7.20");
  support_until (support_is_editing (fixture->support));
  support_keys (fixture->support, "Return");
  support_until (line_at (fixture, 2)->price == 720);
  enter_line (fixture, "Ply sheet 6 mm", 3);
  support_type (fixture->support, "-1");
  support_until (support_is_editing (fixture->support));
  support_keys (fixture->support, "Return");
  support_until (line_at (fixture, 3)->quantity == -1);
  g_assert_cmpint (gb_project_get_findings (fixture->support->project)->costs.spent, ==, 5720);
}

static void
test_delete_receipt (Fixture *fixture, gconstpointer data)
{
  GbGrid *receipts = support_grid (fixture->support->page, GB_RECORD_PURCHASE);

  enter_receipt (fixture);
  enter_line (fixture, "Sandpaper", 0);
  gb_grid_go_to (receipts, GB_RECORD_PURCHASE, 1, NULL, TRUE);
  support_keys (fixture->support, "Delete");
  support_until (gb_boat_n (boat (fixture), GB_RECORD_PURCHASE) == 0);
  g_assert_cmpuint (fixture->support->toasts->len, ==, 1);
  g_assert_true (gb_project_undo (fixture->support->project, NULL));
  g_assert_cmpuint (gb_boat_n (boat (fixture), GB_RECORD_LINE), ==, 1);
}

int
main (int argc, char **argv)
{
  support_init (&argc, &argv);
#define ADD(path, func) g_test_add (path, Fixture, NULL, set_up, func, tear_down)
  ADD ("/purchases/receipt", test_receipt);
  ADD ("/purchases/delete-receipt", test_delete_receipt);
  return g_test_run ();
}
