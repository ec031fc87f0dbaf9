/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "money-grids.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "boat/money.h"
#include "boat/quantity.h"
#include "pages/grid-pane.h"

static const GbCosts *
costs_of (GbGrid *grid)
{
  return &gb_project_get_findings (gb_grid_get_project (grid))->costs;
}

static char *
show_money (GbGrid *grid, gint64 amount)
{
  return gb_money_format (amount, gb_project_get_build (gb_grid_get_project (grid))->currency);
}

/* Budget ------------------------------------------------------------------------------------------------------------ */

static const GbHead *
find_head (GbGrid *grid, const GbRecord *record)
{
  const GbCosts *costs = costs_of (grid);

  return record->index < costs->n_heads ? &costs->heads[record->index] : NULL;
}

static void
look_spent (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  const GbHead *head = find_head (grid, record);

  look->text = head != NULL ? show_money (grid, head->spent) : NULL;
}

static void
look_head_to_buy (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  const GbHead *head = find_head (grid, record);

  look->text = head != NULL ? show_money (grid, head->to_buy) : NULL;
}

static void
look_forecast (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  const GbHead *head = find_head (grid, record);

  if (head == NULL)
    return;
  look->text = show_money (grid, head->forecast);
  look->flags = GB_CELL_STRONG;
  if (head->budget != GB_MONEY_UNKNOWN && head->forecast != GB_MONEY_UNKNOWN && head->forecast > head->budget)
    {
      look->flags |= GB_CELL_TROUBLE;
      look->note = g_strdup (_ ("The forecast is over this head's budget."));
    }
}

static gint64
add_head (GbGrid *grid, const char *text, const GbChoiceItem *chosen, GbGridSpot spot, GbPartKind kind, GError **error)
{
  return gb_grid_add_record (grid, "name", text, chosen, spot, error);
}

static const GbGridColumn budget_columns[] = {
  { .name = "name", .width = 24 },
  { .name = "spent", .title = N_ ("Spent"), .width = 11, .is_number = TRUE, .look = look_spent },
  { .name = "to-buy", .title = N_ ("Still to buy"), .width = 11, .is_number = TRUE, .look = look_head_to_buy },
  { .name = "forecast", .title = N_ ("Forecast"), .width = 11, .is_number = TRUE, .look = look_forecast },
  { NULL },
};
static const char *const budget_shown[] = { "name", "budget", "spent", "to-buy", "forecast", NULL };
const GbGridType gb_budget_grid_type = {
  .kind = GB_RECORD_CATEGORY,
  .shown = budget_shown,
  .main_column = "name",
  .blank_text = N_ ("Type a name to add a head"),
  .columns = budget_columns,
  .add = add_head,
};

/* Still to buy ------------------------------------------------------------------------------------------------------ */

static const GbStockNeed *
find_need (GbGrid *grid, const GbRecord *record)
{
  const GbCosts *costs = costs_of (grid);

  return record->index < costs->n_stock ? &costs->stock[record->index] : NULL;
}

static char *
show_pieces (double pieces)
{
  return isnan (pieces) ? g_strdup ("–") : g_strdup_printf (pieces == floor (pieces) ? "%.0f" : "%.2f", pieces);
}

static void
look_need (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  const GbStockNeed *need = find_need (grid, record);

  if (need == NULL)
    return;
  look->text = show_pieces (need->need);
  if (need->n_unknown > 0)
    {
      look->flags = GB_CELL_TROUBLE;
      look->note = g_strdup_printf (
          ngettext ("%u part that needs it has no amount yet.", "%u parts that need it have no amount yet.", need->n_unknown),
          need->n_unknown);
    }
}

static void
look_bought (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  const GbStockNeed *need = find_need (grid, record);

  look->text = need != NULL ? show_pieces (need->bought) : NULL;
}

static void
look_to_buy (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  const GbStockNeed *need = find_need (grid, record);

  if (need == NULL)
    return;
  look->text = show_pieces (need->to_buy);
  look->flags = need->to_buy > 0 ? GB_CELL_STRONG : GB_CELL_DIM;
}

static void
look_cost (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  const GbStockNeed *need = find_need (grid, record);

  if (need == NULL)
    return;
  look->text = show_money (grid, need->cost);
  if (need->to_buy > 0 && need->cost == GB_MONEY_UNKNOWN)
    {
      look->flags = GB_CELL_TROUBLE;
      look->note = g_strdup (_ ("No price yet, so the forecast leaves it out."));
    }
}

static const GbGridColumn to_buy_columns[] = {
  { .name = "name", .width = 22 },
  { .name = "need", .title = N_ ("Needed"), .width = 8, .is_number = TRUE, .look = look_need },
  { .name = "bought", .title = N_ ("Bought"), .width = 8, .is_number = TRUE, .look = look_bought },
  { .name = "to-buy", .title = N_ ("Packs to buy"), .width = 10, .is_number = TRUE, .look = look_to_buy },
  { .name = "cost", .title = N_ ("For"), .width = 10, .is_number = TRUE, .look = look_cost },
  { NULL },
};
static const char *const to_buy_shown[] = { "name", "supplier", "need", "on_hand", "bought", "to-buy", "price", "cost", NULL };
const GbGridType gb_to_buy_grid_type = {
  .kind = GB_RECORD_STOCK,
  .shown = to_buy_shown,
  .main_column = "name",
  .columns = to_buy_columns,
};
