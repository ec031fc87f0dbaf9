/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Receipts that move a part's state, and things put on a scale. */

#include "fixture.h"

#include "engine/density.h"
#include "project/verbs-buy.h"
#include "project/verbs-weigh.h"

#include <math.h>
#include <string.h>

static GbRecord *
new_line (gint64 stock, gint64 part, double quantity)
{
  GbLine *line = (GbLine *) gb_record_new (GB_RECORD_LINE);

  line->stock = stock;
  line->part = part;
  line->quantity = quantity;
  line->kind = stock != 0 ? GB_LINE_STOCK : part != 0 ? GB_LINE_PART : GB_LINE_OTHER;
  return &line->rec;
}

static const GbLine *
get_line (Fixture *c, gint64 id)
{
  return (const GbLine *) gb_boat_get (gb_project_get_boat (c->project), GB_RECORD_LINE, id);
}

static gint64
buy (Fixture *c, GbRecord *draft, gint64 purchase)
{
  g_autoptr (GError) error = NULL;
  gint64 id = gb_project_buy (c->project, draft, purchase, gb_today (), NULL, &error);

  g_assert_no_error (error);
  return id;
}

#define assert_state(c, id, expected) g_assert_cmpint (fixture_part ((c)->project, id)->state, ==, expected)

static void
test_a_part_on_a_new_receipt (Fixture *c, gconstpointer data)
{
  const GbLine *line = get_line (c, buy (c, new_line (0, MAST, 1), 0));
  const GbPurchase *purchase = (const GbPurchase *) gb_boat_get (gb_project_get_boat (c->project),
                                                                 GB_RECORD_PURCHASE, line->rec.owner);

  g_assert_cmpint (purchase->date, ==, gb_today ());
  g_assert_cmpint (line->price, ==, 9000);
  g_assert_cmpstr (line->what, ==, "Mast");
  assert_state (c, MAST, GB_STATE_BOUGHT);
  fixture_assert_undo (c->project, "purchase of Mast", c->before);
}

static void
test_stock_on_an_old_receipt (Fixture *c, gconstpointer data)
{
  GbRecord *draft = new_line (1, 0, 1);
  const GbLine *line;

  ((GbLine *) draft)->what = g_strdup ("okoume, a sheet");
  ((GbLine *) draft)->price = 4990;
  line = get_line (c, buy (c, draft, 1));
  g_assert_cmpint (line->rec.owner, ==, 1);
  g_assert_cmpint (line->price, ==, 4990);
  g_assert_cmpstr (line->what, ==, "okoume, a sheet");
  g_assert_cmpuint (gb_boat_n (gb_project_get_boat (c->project), GB_RECORD_PURCHASE), ==, 1);
  fixture_assert_undo (c->project, "purchase of okoume, a sheet", c->before);
}

static void
test_the_supplier_is_the_stocks (Fixture *c, gconstpointer data)
{
  const GbLine *line = get_line (c, buy (c, new_line (1, 0, 1), 0));
  const GbPurchase *purchase = (const GbPurchase *) gb_boat_get (gb_project_get_boat (c->project),
                                                                 GB_RECORD_PURCHASE, line->rec.owner);

  g_assert_cmpstr (purchase->supplier, ==, "Timber yard");
  g_assert_cmpint (line->price, ==, 5280);
}

/* 2.0 + 2 x 0.4 m2 with 15 % for cutting are 3.22 m2; a sheet has 3.05. */
static void
test_stock_covers_the_need (Fixture *c, gconstpointer data)
{
  buy (c, new_line (1, 0, 1), 0);
  assert_state (c, BOTTOM, GB_STATE_PLANNED);
  buy (c, new_line (1, 0, 1), 0);
  assert_state (c, BOTTOM, GB_STATE_BOUGHT);
  assert_state (c, SIDE, GB_STATE_BOUGHT);
  assert_state (c, FRAME_1, GB_STATE_PLANNED);
  fixture_assert_fresh (c->project);
}

static void
test_what_is_made_stays_made (Fixture *c, gconstpointer data)
{
  GbValue made = GB_VALUE_INTEGER (GB_STATE_MADE);

  g_assert_true (gb_project_set (c->project, GB_RECORD_PART, SIDE, fixture_field ("state"), &made, NULL));
  buy (c, new_line (1, 0, 3), 0);
  assert_state (c, SIDE, GB_STATE_MADE);
  assert_state (c, BOTTOM, GB_STATE_BOUGHT);
}

static void
test_an_unknown_amount_is_not_covered (Fixture *c, gconstpointer data)
{
  GbValue unknown = GB_VALUE_REAL (NAN);

  g_assert_true (gb_project_set (c->project, GB_RECORD_PART, SIDE, fixture_field ("area"), &unknown, NULL));
  buy (c, new_line (1, 0, 9), 0);
  assert_state (c, BOTTOM, GB_STATE_PLANNED);
}

static void
test_what_is_on_hand_counts (Fixture *c, gconstpointer data)
{
  GbValue one = GB_VALUE_REAL (1);

  g_assert_true (
    gb_project_set (c->project, GB_RECORD_STOCK, 1, gb_field (GB_RECORD_STOCK, "on_hand"), &one, NULL));
  buy (c, new_line (1, 0, 1), 0);
  assert_state (c, BOTTOM, GB_STATE_BOUGHT);
}

static void
test_a_group_is_bought_whole (Fixture *c, gconstpointer data)
{
  buy (c, new_line (0, FRAMES, 1), 0);
  assert_state (c, FRAME_1, GB_STATE_BOUGHT);
  assert_state (c, FRAME_2, GB_STATE_BOUGHT);
  assert_state (c, FRAMES, GB_STATE_PLANNED); /* a group has no state of its own */
  assert_state (c, BOTTOM, GB_STATE_PLANNED);
}

static void
test_returns_move_nothing (Fixture *c, gconstpointer data)
{
  gint64 id = buy (c, new_line (0, MAST, -1), 0);
  GbValue planned = GB_VALUE_INTEGER (GB_STATE_PLANNED), two = GB_VALUE_REAL (2), half = GB_VALUE_REAL (0.5);

  assert_state (c, MAST, GB_STATE_PLANNED);
  /* Any edit of a line that buys more than before is a purchase; a correction of what was bought is none. */
  g_assert_true (
    gb_project_set (c->project, GB_RECORD_LINE, id, gb_field (GB_RECORD_LINE, "quantity"), &two, NULL));
  assert_state (c, MAST, GB_STATE_BOUGHT);
  g_assert_true (gb_project_set (c->project, GB_RECORD_PART, MAST, fixture_field ("state"), &planned, NULL));
  g_assert_true (
    gb_project_set (c->project, GB_RECORD_LINE, id, gb_field (GB_RECORD_LINE, "discount"), &half, NULL));
  assert_state (c, MAST, GB_STATE_PLANNED);
}

static void
test_delivery_moves_nothing (Fixture *c, gconstpointer data)
{
  gint64 id = buy (c, new_line (0, 0, 1), 1);

  g_assert_cmpstr (gb_project_get_undo_words (c->project), ==, "purchase of Line");
  g_assert_cmpint (get_line (c, id)->kind, ==, GB_LINE_OTHER);
  assert_state (c, MAST, GB_STATE_PLANNED);
}

static void
test_a_receipt_that_is_not_there (Fixture *c, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (gb_project_buy (c->project, new_line (1, 0, 1), 99, 0, NULL, &error), ==, 0);
  g_assert_nonnull (error);
  scratch_assert_equal (gb_project_get_boat (c->project), c->before);
}

/* Scales ------------------------------------------------------------------------------------------------- */

static void
test_weigh_a_part (Fixture *c, gconstpointer data)
{
  gint64 id = gb_project_weigh (c->project, MAST, gb_today (), 2.8, GB_ON_SCALE_ONE, NULL);
  const GbRecord *weighing = gb_boat_get (gb_project_get_boat (c->project), GB_RECORD_WEIGHING, id);
  const GbMass *mass
    = gb_rollup_part (&gb_project_get_findings (c->project)->rollup, fixture_part (c->project, MAST));

  g_assert_cmpuint (gb_record_children (weighing)->len, ==, 1);
  g_assert_cmpint (((const GbWeighing *) weighing)->on_scale, ==, GB_ON_SCALE_ONE);
  g_assert_cmpfloat (mass->mass, ==, 2.8);
  g_assert_cmpint (mass->as, ==, GB_AS_WEIGHED);
  fixture_assert_undo (c->project, "weighing of Mast", c->before);
}

static void
test_weigh_the_boat (Fixture *c, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (gb_project_weigh (c->project, 0, gb_today (), 31.5, GB_ON_SCALE_ALL, NULL), >, 0);
  g_assert_cmpfloat (gb_project_get_findings (c->project)->rollup.boat.mass, ==, 31.5);
  fixture_assert_undo (c->project, "weighing of Plover", c->before);
  g_assert_cmpint (gb_project_weigh (c->project, 0, 0, 0, GB_ON_SCALE_ALL, &error), ==, 0);
  g_assert_nonnull (strstr (error->message, "more than 0"));
  g_clear_error (&error);
  g_assert_cmpint (gb_project_weigh (c->project, 99, 0, 1, GB_ON_SCALE_ALL, &error), ==, 0);
  g_assert_nonnull (strstr (error->message, "no longer"));
  g_clear_error (&error);
  g_assert_cmpint (gb_project_weigh (c->project, MAST, 0, NAN, GB_ON_SCALE_ALL, &error), ==, 0);
}

/* "This sheet weighs 9.8 kg": 9.8 / (2.5 x 1.22 x 0.006) = 535.5 kg/m3. */
static void
test_weigh_a_sheet (Fixture *c, gconstpointer data)
{
  gint64 id = gb_project_weigh_stock (c->project, 1, gb_today (), 9.8, 1, NULL);
  const GbSample *sample
    = (const GbSample *) gb_boat_get (gb_project_get_boat (c->project), GB_RECORD_SAMPLE, id);

  g_assert_cmpint (sample->rec.owner, ==, 2);
  g_assert_cmpfloat (sample->length, ==, 2.5);
  g_assert_cmpfloat_with_epsilon (
    gb_material_figures (gb_boat_material (gb_project_get_boat (c->project), 2)).density,
    9.8 / (2.5 * 1.22 * 0.006), 1e-9);
  fixture_assert_undo (c->project, "weighing of okoume ply", c->before);
}

/* Round rods and tubes come out as the material they are: mass over true volume. */
static void
test_weigh_round_lengths (Fixture *c, gconstpointer data)
{
  GbStock *rod = (GbStock *) gb_record_new (GB_RECORD_STOCK);
  GbValue tube = GB_VALUE_INTEGER (GB_SECTION_TUBE);
  gint64 id;
  const GbMaterial *spruce = gb_boat_material (gb_project_get_boat (c->project), 1);

  rod->name = g_strdup ("rod");
  rod->form = GB_FORM_LENGTH;
  rod->section = GB_SECTION_ROUND;
  rod->material = 1;
  rod->length = 3;
  rod->diameter = 0.04;
  rod->wall = 0.003;
  id = gb_project_add (c->project, &rod->rec, 0, 0, NULL);
  g_assert_cmpint (gb_project_weigh_stock (c->project, id, gb_today (), 3.4, 2, NULL), >, 0);
  g_assert_cmpfloat_with_epsilon (gb_material_figures (spruce).density,
                                  3.4 / (2 * 3 * G_PI / 4 * 0.04 * 0.04), 1e-9);
  g_assert_true (gb_project_undo (c->project, NULL));
  g_assert_true (
    gb_project_set (c->project, GB_RECORD_STOCK, id, gb_field (GB_RECORD_STOCK, "section"), &tube, NULL));
  g_assert_cmpint (gb_project_weigh_stock (c->project, id, gb_today (), 1.2, 1, NULL), >, 0);
  g_assert_cmpfloat_with_epsilon (gb_material_figures (spruce).density,
                                  1.2 / (3 * G_PI / 4 * (0.04 * 0.04 - 0.034 * 0.034)), 1e-9);
}

static void
test_stock_that_says_nothing (Fixture *c, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  GbValue material = GB_VALUE_INTEGER (1);

  g_assert_cmpint (gb_project_weigh_stock (c->project, 2, 0, 5.8, 1, &error), ==, 0);
  g_assert_nonnull (strstr (error->message, "what material"));
  g_clear_error (&error);
  g_assert_true (
    gb_project_set (c->project, GB_RECORD_STOCK, 2, gb_field (GB_RECORD_STOCK, "material"), &material, NULL));
  g_assert_cmpint (gb_project_weigh_stock (c->project, 2, 0, 5.8, 1, &error), ==, 0);
  g_assert_nonnull (strstr (error->message, "sides of this stock"));
  g_clear_error (&error);
  g_assert_cmpint (gb_project_weigh_stock (c->project, 99, 0, 5.8, 1, &error), ==, 0);
  g_clear_error (&error);
  g_assert_cmpint (gb_project_weigh_stock (c->project, 1, 0, -1, 1, &error), ==, 0);
  g_assert_nonnull (strstr (error->message, "more than 0"));
}

#define ADD(path, function) g_test_add ("/project/" path, Fixture, NULL, fixture_set_up, function, fixture_tear_down)

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  ADD ("buy/part", test_a_part_on_a_new_receipt);
  ADD ("buy/stock", test_stock_on_an_old_receipt);
  ADD ("buy/supplier", test_the_supplier_is_the_stocks);
  ADD ("buy/covers-need", test_stock_covers_the_need);
  ADD ("buy/made-stays", test_what_is_made_stays_made);
  ADD ("buy/unknown-amount", test_an_unknown_amount_is_not_covered);
  ADD ("buy/on-hand", test_what_is_on_hand_counts);
  ADD ("buy/group", test_a_group_is_bought_whole);
  ADD ("buy/returns", test_returns_move_nothing);
  ADD ("buy/delivery", test_delivery_moves_nothing);
  ADD ("buy/no-receipt", test_a_receipt_that_is_not_there);
  ADD ("weigh/part", test_weigh_a_part);
  ADD ("weigh/boat", test_weigh_the_boat);
  ADD ("weigh/sheet", test_weigh_a_sheet);
  ADD ("weigh/round", test_weigh_round_lengths);
  ADD ("weigh/says-nothing", test_stock_that_says_nothing);
  return g_test_run ();
}
