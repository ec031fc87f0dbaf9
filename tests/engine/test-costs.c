/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Money, worked by hand: receipts, need of stock, what is bought as such, heads, course. Amounts are in
 * cents. */

#include "parts-fixture.h"

#include "engine/costs.h"

#define TODAY 738000

typedef struct
{
  GbBoat *boat;
  GbRollup rollup;
  GbCosts costs;
} Fixture;

static void
set_up (Fixture *f, gconstpointer unused)
{
  f->boat = gb_boat_new ();
}

static void
tear_down (Fixture *f, gconstpointer unused)
{
  gb_costs_clear (&f->costs);
  gb_rollup_clear (&f->rollup);
  gb_boat_free (f->boat);
}

static void
find (Fixture *f)
{
  gb_boat_settle (f->boat);
  gb_rollup_find (&f->rollup, f->boat, NULL, G_MAXINT64);
  gb_costs_find (&f->costs, f->boat, &f->rollup, TODAY);
}

static GbBuild *
build_of (Fixture *f)
{
  return (GbBuild *) gb_boat_get (f->boat, GB_RECORD_BUILD, 1);
}

static GbStock *
add_stock (Fixture *f, GbForm form, gint64 price)
{
  GbStock *stock = add_record (f->boat, GB_RECORD_STOCK, 0);

  stock->form = form;
  stock->price = price;
  return stock;
}

/* A sheet of 2.5 x 1.22 m at 60.00. */
static GbStock *
add_plywood (Fixture *f)
{
  GbStock *stock = add_stock (f, GB_FORM_SHEET, 6000);

  stock->length = 2.5;
  stock->width = 1.22;
  stock->thickness = 0.006;
  return stock;
}

static GbPart *
add_panel (Fixture *f, gint64 owner, const GbStock *stock, double area)
{
  GbPart *part = add_part (f->boat, owner, GB_TAKEOFF_SHEET, 0, 0, 0);

  part->stock = stock != NULL ? stock->rec.id : 0;
  part->area = area;
  return part;
}

static GbPurchase *
add_purchase (Fixture *f, gint64 date)
{
  GbPurchase *purchase = add_record (f->boat, GB_RECORD_PURCHASE, 0);

  purchase->date = date;
  return purchase;
}

static GbLine *
add_line (Fixture *f, const GbPurchase *purchase, double quantity, gint64 price)
{
  GbLine *line = add_record (f->boat, GB_RECORD_LINE, purchase->rec.id);

  line->kind = GB_LINE_OTHER;
  line->quantity = quantity;
  line->price = price;
  return line;
}

static GbLine *
buy_stock (Fixture *f, const GbPurchase *purchase, const GbStock *stock, double quantity, gint64 price)
{
  GbLine *line = add_line (f, purchase, quantity, price);

  line->kind = GB_LINE_STOCK;
  line->stock = stock->rec.id;
  return line;
}

static GbLine *
buy_part (Fixture *f, const GbPurchase *purchase, const GbPart *part, double quantity, gint64 price)
{
  GbLine *line = add_line (f, purchase, quantity, price);

  line->kind = GB_LINE_PART;
  line->part = part->rec.id;
  return line;
}

static const GbStockNeed *
need_of (const Fixture *f, const GbStock *stock)
{
  return &f->costs.stock[stock->rec.index];
}

static const GbPartCost *
cost_of (const Fixture *f, const GbPart *part)
{
  return &f->costs.parts[part->rec.index];
}

static void
test_line_totals (Fixture *f, gconstpointer unused)
{
  GbPurchase *purchase = add_purchase (f, TODAY);
  static const struct
  {
    double quantity, discount;
    gint64 price, total;
  } cases[] = {
    { 3, 0, 1250, 3750 },
    { 1.5, 0, 333, 500 },        /* 499.5 */
    { 1, 0.5, 1005, 503 },       /* 502.5: halves go up */
    { -1, 0.5, 1005, -503 },     /* and down, for a return */
    { 3, 0.1, 335, 905 },        /* 904.5, rounded once: not 3 x 302 */
    { 0.335, 0, 300, 101 },      /* 100.5 */
    { 2, NAN, 700, 1400 },       /* no discount said */
    { 2, 1, 700, 0 },
    { NAN, 0, 700, GB_MONEY_UNKNOWN },
    { 2, 0, GB_MONEY_UNKNOWN, GB_MONEY_UNKNOWN },
    { 0, 0, 700, 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      GbLine *line = add_line (f, purchase, cases[i].quantity, cases[i].price);

      line->discount = cases[i].discount;
      g_assert_cmpint (gb_line_total (line), ==, cases[i].total);
    }
}

static void
test_empty_build (Fixture *f, gconstpointer unused)
{
  find (f);
  g_assert_cmpint (f->costs.budget, ==, GB_MONEY_UNKNOWN);
  g_assert_cmpint (f->costs.spent, ==, 0);
  g_assert_cmpint (f->costs.to_buy, ==, 0);
  g_assert_cmpint (f->costs.forecast, ==, 0);
  g_assert_cmpuint (f->costs.n_heads, ==, 1);
  g_assert_cmpuint (f->costs.n_course, ==, 0);
}

static void
test_sheets (Fixture *f, gconstpointer unused)
{
  GbStock *plywood = add_plywood (f);
  GbPart *side, *bottom;

  build_of (f)->cutting_allowance = 0.15;
  side = add_panel (f, 0, plywood, 0.71);
  side->pair = TRUE;
  bottom = add_panel (f, 0, plywood, NAN);
  bottom->length = 2.1;
  bottom->width = 0.86;
  find (f);

  /* (2 x 0.71 + 2.1 x 0.86) / (2.5 x 1.22) x 1.15 = 1.21633: two sheets. */
  assert_near (need_of (f, plywood)->need, (1.42 + 1.806) / 3.05 * 1.15, 1e-12);
  g_assert_cmpfloat (need_of (f, plywood)->to_buy, ==, 2);
  g_assert_cmpint (need_of (f, plywood)->cost, ==, 12000);
  g_assert_cmpuint (need_of (f, plywood)->n_parts, ==, 2);
  g_assert_cmpuint (f->costs.sheets, ==, 2);
  g_assert_cmpint (f->costs.to_buy, ==, 12000);

  /* The side's share: 1.42 / 3.05 x 1.15 x 60.00 = 32.1246. */
  g_assert_cmpint (cost_of (f, side)->planned, ==, 3212);
  g_assert_cmpint (cost_of (f, side)->to_buy, ==, 0);

  /* An area that is not known is counted, and the rest is needed still. */
  side->area = NAN;
  find (f);
  g_assert_cmpuint (need_of (f, plywood)->n_unknown, ==, 1);
  assert_near (need_of (f, plywood)->need, 1.806 / 3.05 * 1.15, 1e-12);
  g_assert_cmpint (cost_of (f, side)->planned, ==, GB_MONEY_UNKNOWN);
}

static void
test_on_hand_receipts_and_returns (Fixture *f, gconstpointer unused)
{
  GbStock *plywood = add_plywood (f);
  GbPurchase *purchase = add_purchase (f, TODAY - 3);

  build_of (f)->cutting_allowance = 0;
  add_panel (f, 0, plywood, 3.05 * 5)->state = GB_STATE_FITTED;
  plywood->on_hand = 0.5;
  find (f);
  g_assert_cmpfloat (need_of (f, plywood)->to_buy, ==, 5);

  buy_stock (f, purchase, plywood, 4, 5800);
  find (f);
  g_assert_cmpfloat (need_of (f, plywood)->bought, ==, 4);
  g_assert_cmpfloat (need_of (f, plywood)->to_buy, ==, 1);
  g_assert_cmpint (need_of (f, plywood)->spent, ==, 23200);
  g_assert_cmpint (f->costs.forecast, ==, 23200 + 6000);

  /* One goes back. */
  buy_stock (f, purchase, plywood, -1, 5800);
  find (f);
  g_assert_cmpfloat (need_of (f, plywood)->to_buy, ==, 2);
  g_assert_cmpint (f->costs.spent, ==, 17400);

  /* What is there to the last square centimetre is enough, whatever the sums' last digit says. */
  plywood->on_hand = 2;
  find (f);
  g_assert_cmpfloat (need_of (f, plywood)->to_buy, ==, 0);
  g_assert_cmpint (need_of (f, plywood)->cost, ==, 0);
}

static void
test_lengths (Fixture *f, gconstpointer unused)
{
  GbStock *spruce = add_stock (f, GB_FORM_LENGTH, 900), *strip = add_stock (f, GB_FORM_LENGTH, 250);
  GbPart *gunwale, *planking;

  build_of (f)->cutting_allowance = 0.1;
  spruce->length = strip->length = 4;
  strip->width = 0.018;
  strip->thickness = 0.006;
  gunwale = add_part (f->boat, 0, GB_TAKEOFF_LENGTH, 0, 0, 0);
  gunwale->stock = spruce->rec.id;
  gunwale->length = 2.35;
  gunwale->pair = TRUE;
  gunwale->quantity = 3;
  /* Planking of 3.6 m2, by strips laid side by side: 200 m of them. */
  planking = add_panel (f, 0, strip, 3.6);
  find (f);
  assert_near (need_of (f, spruce)->need, 6 * 2.35 / 4 * 1.1, 1e-12);
  g_assert_cmpuint (f->costs.lengths, ==, 4 + 55);
  assert_near (need_of (f, strip)->need, 55, 1e-12);
  g_assert_cmpint (cost_of (f, planking)->planned, ==, 55 * 250);
}

static void
test_blocks (Fixture *f, gconstpointer unused)
{
  GbStock *foam = add_stock (f, GB_FORM_BLOCK, 2000);
  GbPart *filling;

  build_of (f)->cutting_allowance = 0.2;
  foam->length = 1;
  foam->width = 0.5;
  foam->thickness = 0.1;
  filling = add_part (f->boat, 0, GB_TAKEOFF_BLOCK, 0, 0, 0);
  filling->stock = foam->rec.id;
  filling->volume = 0.06;
  find (f);
  assert_near (need_of (f, foam)->need, 0.06 / 0.05 * 1.2, 1e-12);
  g_assert_cmpuint (f->costs.blocks, ==, 2);

  /* A sheet is not cut from a block, as far as can be told from here. */
  filling->takeoff = GB_TAKEOFF_LENGTH;
  filling->length = 1;
  find (f);
  g_assert_cmpuint (need_of (f, foam)->n_unknown, ==, 1);
}

static void
test_paint_by_volume (Fixture *f, gconstpointer unused)
{
  GbStock *tin = add_stock (f, GB_FORM_TIN, 3500);
  GbPart *paint;

  tin->volume = 0.75e-3;
  paint = add_part (f->boat, 0, GB_TAKEOFF_COATING, 0, 0, 0);
  paint->stock = tin->rec.id;
  paint->coating = GB_COATING_PAINT;
  paint->area = 8;
  paint->coats = 2;
  paint->coverage = 10e3;
  find (f);
  /* 8 m2 x 2 / (10 m2 a litre) = 1.6 litres; nothing is allowed for cutting paint. */
  assert_near (need_of (f, tin)->need, 1.6 / 0.75, 1e-12);
  g_assert_cmpuint (f->costs.tins, ==, 3);
  /* 2.1333 tins x 35.00 = 74.6667. */
  g_assert_cmpint (cost_of (f, paint)->planned, ==, 7467);
}

static void
test_cloth_and_its_resin (Fixture *f, gconstpointer unused)
{
  GbMaterial *glass = add_material (f->boat, GB_MEASURE_AREAL, 0.2), *epoxy = add_material (f->boat, GB_MEASURE_DENSITY, 1150);
  GbStock *roll = add_stock (f, GB_FORM_SHEET, 4000), *by_mass = add_stock (f, GB_FORM_TIN, 3000);
  GbStock *by_volume = add_stock (f, GB_FORM_TIN, 2500);
  GbPart *sheathing;

  build_of (f)->cutting_allowance = 0.1;
  roll->material = glass->rec.id;
  roll->length = 10;
  roll->width = 1;
  by_mass->material = by_volume->material = epoxy->rec.id;
  by_mass->mass = 1;
  by_volume->volume = 1e-3;
  sheathing = add_part (f->boat, 0, GB_TAKEOFF_COATING, 0, 0, 0);
  sheathing->coating = GB_COATING_CLOTH;
  sheathing->stock = roll->rec.id;
  sheathing->resin = epoxy->rec.id;
  sheathing->resin_ratio = 1.5;
  sheathing->coats = 2;
  sheathing->area = 6;
  sheathing->quantity = 2;
  find (f);
  /* 2 x 6 m2 x 2 layers of a roll of 10 m2; 24 m2 x 0.2 kg/m2 x 1.5 = 7.2 kg of resin out of the first tin of
   * it. */
  assert_near (need_of (f, roll)->need, 24 / 10.0 * 1.1, 1e-12);
  assert_near (need_of (f, by_mass)->need, 7.2, 1e-12);
  assert_near (need_of (f, by_volume)->need, 0, 0);
  /* 2.64 x 40.00 and 7.2 x 30.00. */
  g_assert_cmpint (cost_of (f, sheathing)->planned, ==, 10560 + 21600);

  /* A part may name the tin itself: then that is where its resin comes from, here by the density. */
  sheathing->stock = by_volume->rec.id;
  sheathing->material = glass->rec.id;
  find (f);
  assert_near (need_of (f, by_mass)->need, 0, 0);
  assert_near (need_of (f, by_volume)->need, 7.2 / 1150 / 1e-3, 1e-12);

  /* Glue by its volume, from a tin that says its mass. */
  sheathing->takeoff = GB_TAKEOFF_BLOCK;
  sheathing->volume = 2e-3;
  sheathing->material = epoxy->rec.id;
  sheathing->stock = by_mass->rec.id;
  find (f);
  assert_near (need_of (f, by_mass)->need, 2 * 2e-3 * 1150, 1e-12);
}

static void
test_packs_of_pieces (Fixture *f, gconstpointer unused)
{
  GbStock *screws = add_stock (f, GB_FORM_PIECE, 450), *sheets = add_plywood (f);
  GbPart *fastenings, *boxes;

  screws->pack = 100;
  screws->on_hand = 30;
  fastenings = add_part (f->boat, 0, GB_TAKEOFF_COUNT, 0, 0, 0);
  fastenings->stock = screws->rec.id;
  fastenings->quantity = 240;
  /* Sheets by the pack of four. */
  sheets->pack = 4;
  build_of (f)->cutting_allowance = 0;
  boxes = add_panel (f, 0, sheets, 3.05);
  boxes->quantity = 5;
  find (f);
  assert_near (need_of (f, screws)->need, 240, 1e-12);
  g_assert_cmpfloat (need_of (f, screws)->to_buy, ==, 3);
  g_assert_cmpint (need_of (f, screws)->cost, ==, 1350);
  g_assert_cmpint (cost_of (f, fastenings)->planned, ==, 1080);
  g_assert_cmpfloat (need_of (f, sheets)->to_buy, ==, 2);
  g_assert_cmpint (need_of (f, sheets)->cost, ==, 12000);
  /* The strip counts packs of screws, and sheets one by one. */
  g_assert_cmpuint (f->costs.pieces, ==, 3);
  g_assert_cmpuint (f->costs.sheets, ==, 8);

  buy_stock (f, add_purchase (f, 0), screws, 2, 450);
  find (f);
  g_assert_cmpfloat (need_of (f, screws)->bought, ==, 200);
  g_assert_cmpfloat (need_of (f, screws)->to_buy, ==, 1);
}

static void
test_saved_and_found_cost_nothing (Fixture *f, gconstpointer unused)
{
  GbStock *saved = add_plywood (f);
  GbPart *panel = add_panel (f, 0, saved, 3.05);

  saved->origin = GB_ORIGIN_SAVED;
  find (f);
  g_assert_cmpfloat (need_of (f, saved)->to_buy, >, 0);
  g_assert_cmpint (need_of (f, saved)->cost, ==, 0);
  g_assert_cmpint (cost_of (f, panel)->planned, ==, 0);
  g_assert_cmpint (f->costs.to_buy, ==, 0);
  saved->price = GB_MONEY_UNKNOWN;
  find (f);
  g_assert_cmpuint (f->costs.n_no_price, ==, 0);
}

static void
test_nested_groups_multiply (Fixture *f, gconstpointer unused)
{
  GbStock *plywood = add_plywood (f);
  GbPart *outer = add_group (f->boat, 0, 0, 0, 0), *inner, *panel, *cleat;

  build_of (f)->cutting_allowance = 0;
  outer->quantity = 2;
  inner = add_group (f->boat, outer->rec.id, 0, 0, 0);
  inner->pair = TRUE;
  panel = add_panel (f, inner->rec.id, plywood, 0.61);
  panel->quantity = 3;
  cleat = add_part (f->boat, inner->rec.id, GB_TAKEOFF_COUNT, 0, 0, 0);
  cleat->price = 325;
  find (f);
  assert_near (need_of (f, plywood)->need, 12 * 0.2, 1e-12);
  g_assert_cmpint (cost_of (f, cleat)->planned, ==, 4 * 325);
  g_assert_cmpint (cost_of (f, cleat)->to_buy, ==, 1300);
  g_assert_cmpint (cost_of (f, panel)->planned, ==, 14400);
  g_assert_cmpint (cost_of (f, inner)->planned, ==, 15700);
  g_assert_cmpint (cost_of (f, outer)->planned, ==, 15700);
  g_assert_cmpint (cost_of (f, outer)->to_buy, ==, 1300);
  g_assert_cmpuint (f->costs.others, ==, 1);
  g_assert_cmpint (f->costs.to_buy, ==, 3 * 6000 + 1300);

  /* None of them: nothing to buy. */
  outer->quantity = 0;
  find (f);
  assert_near (need_of (f, plywood)->need, 0, 0);
  g_assert_cmpint (f->costs.to_buy, ==, 0);
  g_assert_cmpuint (f->costs.others, ==, 0);
  g_assert_cmpuint (need_of (f, plywood)->n_unknown, ==, 0);

  outer->quantity = NAN;
  find (f);
  g_assert_cmpuint (need_of (f, plywood)->n_unknown, ==, 1);
  g_assert_cmpint (cost_of (f, cleat)->planned, ==, GB_MONEY_UNKNOWN);
}

static void
test_bought_as_such (Fixture *f, gconstpointer unused)
{
  GbPart *mast = add_lump (f->boat, 0, 5, 0, 0, 0), *oars = add_lump (f->boat, 0, 2, 0, 0, 0);
  GbPart *bare = add_lump (f->boat, 0, 1, 0, 0, 0);
  GbPurchase *purchase = add_purchase (f, TODAY);

  mast->price = 12000;
  oars->price = 2000;
  oars->quantity = 2;
  find (f);
  g_assert_cmpint (f->costs.to_buy, ==, 16000);
  g_assert_cmpuint (f->costs.others, ==, 3);
  g_assert_cmpuint (f->costs.n_no_price, ==, 1);
  g_assert_cmpint (cost_of (f, bare)->to_buy, ==, GB_MONEY_UNKNOWN);

  /* A state says that it is there, a receipt that it was paid. */
  mast->state = GB_STATE_MADE;
  bare->state = GB_STATE_BOUGHT;
  buy_part (f, purchase, oars, 1, 3500);
  find (f);
  g_assert_cmpint (f->costs.to_buy, ==, 0);
  g_assert_cmpint (f->costs.spent, ==, 3500);
  g_assert_cmpint (cost_of (f, oars)->planned, ==, 4000);
  g_assert_cmpint (cost_of (f, oars)->bought, ==, 3500);
  g_assert_cmpuint (f->costs.n_no_price, ==, 0);

  /* Taken back, it is still to buy. */
  buy_part (f, purchase, oars, -1, 3500);
  find (f);
  g_assert_cmpint (f->costs.to_buy, ==, 4000);
  g_assert_cmpint (f->costs.spent, ==, 0);
  g_assert_cmpfloat (cost_of (f, oars)->n_bought, ==, 0);
}

static void
test_bought_ready_takes_no_stock (Fixture *f, gconstpointer unused)
{
  GbStock *plywood = add_plywood (f);
  GbPart *thwart = add_panel (f, 0, plywood, 0.5);

  add_panel (f, 0, plywood, 0.61);
  build_of (f)->cutting_allowance = 0;
  buy_part (f, add_purchase (f, TODAY), thwart, 1, 4500);
  find (f);
  assert_near (need_of (f, plywood)->need, 0.2, 1e-12);
  g_assert_cmpuint (need_of (f, plywood)->n_parts, ==, 2);
  g_assert_cmpint (cost_of (f, thwart)->bought, ==, 4500);
}

static void
test_kits_and_bought_groups (Fixture *f, gconstpointer unused)
{
  GbPart *rig = add_group (f->boat, 0, 0, 0, 0), *sail = add_lump (f->boat, rig->rec.id, 3, 0, 0, 0);
  GbPart *sheet = add_lump (f->boat, rig->rec.id, 1, 0, 0, 0);

  /* The kit has a price; the sheet comes on top with its own. */
  rig->price = 30000;
  sheet->price = 1800;
  find (f);
  g_assert_cmpint (f->costs.to_buy, ==, 31800);
  g_assert_cmpuint (f->costs.n_no_price, ==, 0);
  g_assert_cmpuint (f->costs.others, ==, 2);
  g_assert_cmpint (cost_of (f, rig)->planned, ==, 31800);
  g_assert_cmpint (cost_of (f, rig)->to_buy, ==, 31800);
  g_assert_cmpint (cost_of (f, sail)->to_buy, ==, 0);

  /* Bought as a whole, on a receipt or by its state. */
  buy_part (f, add_purchase (f, TODAY), rig, 1, 29500);
  find (f);
  g_assert_cmpint (f->costs.to_buy, ==, 0);
  g_assert_cmpint (cost_of (f, rig)->bought, ==, 29500);
  rig->price = GB_MONEY_UNKNOWN;
  rig->state = GB_STATE_FITTED;
  find (f);
  g_assert_cmpint (f->costs.to_buy, ==, 0);
  g_assert_cmpuint (f->costs.n_no_price, ==, 0);
}

static void
test_heads (Fixture *f, gconstpointer unused)
{
  GbCategory *timber = add_record (f->boat, GB_RECORD_CATEGORY, 0), *rig = add_record (f->boat, GB_RECORD_CATEGORY, 0);
  GbStock *plywood = add_plywood (f);
  GbPurchase *purchase = add_purchase (f, TODAY);
  GbPart *group = add_group (f->boat, 0, 0, 0, 0), *mast = add_lump (f->boat, group->rec.id, 5, 0, 0, 0);
  GbPart *shroud = add_lump (f->boat, group->rec.id, 1, 0, 0, 0);
  GbLine *delivery;
  const GbHead *heads;

  timber->budget = 20000;
  plywood->category = timber->rec.id;
  group->category = rig->rec.id;
  mast->price = 9000;
  shroud->price = 1000;
  shroud->category = timber->rec.id;
  add_panel (f, 0, plywood, 3.05 * 2);
  build_of (f)->cutting_allowance = 0;
  build_of (f)->cost_allowance = 5000;
  buy_stock (f, purchase, plywood, 1, 6000);
  buy_part (f, purchase, mast, 1, 8000);
  delivery = add_line (f, purchase, 1, 700);
  delivery->kind = GB_LINE_DELIVERY;
  add_line (f, purchase, 1, 300)->category = rig->rec.id;
  add_line (f, purchase, 1, 40)->category = 999999;
  find (f);

  heads = f->costs.heads;
  g_assert_cmpuint (f->costs.n_heads, ==, 3);
  g_assert_cmpint (heads[0].category, ==, timber->rec.id);
  g_assert_cmpint (heads[0].budget, ==, 20000);
  g_assert_cmpint (heads[0].spent, ==, 6000);
  g_assert_cmpint (heads[0].to_buy, ==, 6000 + 1000);
  g_assert_cmpint (heads[0].forecast, ==, 13000);
  g_assert_cmpint (heads[1].budget, ==, GB_MONEY_UNKNOWN);
  g_assert_cmpint (heads[1].spent, ==, 8300);
  g_assert_cmpint (heads[1].to_buy, ==, 0);
  g_assert_cmpint (heads[2].category, ==, 0);
  g_assert_cmpint (heads[2].spent, ==, 740);
  g_assert_cmpint (f->costs.budget, ==, 20000);
  g_assert_cmpint (f->costs.spent, ==, 15040);
  g_assert_cmpint (f->costs.to_buy, ==, 7000);
  g_assert_cmpint (f->costs.allowance, ==, 5000);
  g_assert_cmpint (f->costs.forecast, ==, 27040);

  g_assert_cmpint (gb_part_category (f->boat, mast), ==, rig->rec.id);
  g_assert_cmpint (gb_part_category (f->boat, shroud), ==, timber->rec.id);
  g_assert_cmpint (gb_line_category (f->boat, delivery), ==, 0);
}

static void
test_course (Fixture *f, gconstpointer unused)
{
  static const gint64 dates[] = { TODAY, TODAY - 10, 0, TODAY - 10, TODAY + 2 };

  for (guint i = 0; i < G_N_ELEMENTS (dates); i++)
    add_line (f, add_purchase (f, dates[i]), 1, 100 << i);
  add_line (f, add_purchase (f, TODAY - 5), 1, GB_MONEY_UNKNOWN);
  add_purchase (f, TODAY - 4);
  find (f);
  g_assert_cmpuint (f->costs.n_course, ==, 5);
  g_assert_cmpint (f->costs.course[0].date, ==, 0);
  g_assert_cmpint (f->costs.course[0].spent, ==, 400);
  g_assert_cmpint (f->costs.course[1].date, ==, TODAY - 10);
  g_assert_cmpint (f->costs.course[1].spent, ==, 400 + 200 + 800);
  g_assert_cmpint (f->costs.course[2].spent, ==, 1400);
  g_assert_cmpint (f->costs.course[3].spent, ==, 1500);
  g_assert_cmpint (f->costs.course[4].date, ==, TODAY + 2);
  g_assert_cmpint (f->costs.course[4].spent, ==, 3100);
  g_assert_cmpint (f->costs.spent, ==, 3100);
  g_assert_cmpuint (f->costs.n_future, ==, 1);
  g_assert_cmpuint (f->costs.n_no_price_lines, ==, 1);
}

static void
test_without_prices (Fixture *f, gconstpointer unused)
{
  GbStock *plywood = add_plywood (f), *idle = add_stock (f, GB_FORM_TIN, GB_MONEY_UNKNOWN);
  GbPart *panel = add_panel (f, 0, plywood, 1), *stray = add_panel (f, 0, NULL, 1);

  plywood->price = GB_MONEY_UNKNOWN;
  panel->price = 1500;
  stray->stock = 424242;
  stray->price = 700;
  find (f);
  g_assert_cmpint (need_of (f, plywood)->cost, ==, GB_MONEY_UNKNOWN);
  g_assert_cmpint (need_of (f, idle)->cost, ==, 0);
  g_assert_cmpuint (f->costs.n_no_price, ==, 1);
  /* Where the stock gives no price the part's own stands for its planned cost; stock that is not there is
   * none. */
  g_assert_cmpint (cost_of (f, panel)->planned, ==, 1500);
  g_assert_cmpint (cost_of (f, stray)->to_buy, ==, 700);

  /* Prices of nothing are prices. */
  plywood->price = 0;
  find (f);
  g_assert_cmpint (need_of (f, plywood)->cost, ==, 0);
  g_assert_cmpuint (f->costs.n_no_price, ==, 0);
}

/* The same build found twice, or after more is in it, gives the same as a fresh one. */
static void
test_finding_again (Fixture *f, gconstpointer unused)
{
  GbStock *plywood = add_plywood (f);
  GbCosts fresh = { 0 };

  add_panel (f, 0, plywood, 2);
  add_line (f, add_purchase (f, TODAY), 2, 500);
  find (f);
  find (f);
  add_panel (f, 0, plywood, 3);
  add_line (f, add_purchase (f, TODAY - 1), 2, 700);
  find (f);
  gb_costs_find (&fresh, f->boat, &f->rollup, TODAY);
  g_assert_cmpint (f->costs.forecast, ==, fresh.forecast);
  g_assert_cmpuint (f->costs.n_course, ==, 2);
  g_assert_cmpmem (f->costs.parts, f->costs.n_parts * sizeof (GbPartCost), fresh.parts, fresh.n_parts * sizeof (GbPartCost));
  gb_costs_clear (&fresh);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
#define ADD(path, function) g_test_add ("/costs/" path, Fixture, NULL, set_up, function, tear_down)
  ADD ("line-totals", test_line_totals);
  ADD ("empty-build", test_empty_build);
  ADD ("sheets", test_sheets);
  ADD ("on-hand-receipts-and-returns", test_on_hand_receipts_and_returns);
  ADD ("lengths", test_lengths);
  ADD ("blocks", test_blocks);
  ADD ("paint-by-volume", test_paint_by_volume);
  ADD ("cloth-and-its-resin", test_cloth_and_its_resin);
  ADD ("packs-of-pieces", test_packs_of_pieces);
  ADD ("saved-and-found-cost-nothing", test_saved_and_found_cost_nothing);
  ADD ("nested-groups-multiply", test_nested_groups_multiply);
  ADD ("bought-as-such", test_bought_as_such);
  ADD ("bought-ready-takes-no-stock", test_bought_ready_takes_no_stock);
  ADD ("kits-and-bought-groups", test_kits_and_bought_groups);
  ADD ("heads", test_heads);
  ADD ("course", test_course);
  ADD ("without-prices", test_without_prices);
  ADD ("finding-again", test_finding_again);
  return g_test_run ();
}
