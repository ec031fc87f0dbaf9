/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "purchase-grids.h"

#include <glib/gi18n-lib.h>

#include "boat/money.h"
#include "pages/grid-pane.h"
#include "project/verbs-buy.h"

static char *
show_money (GbGrid *grid, gint64 amount)
{
  return gb_money_format (amount, gb_project_get_build (gb_grid_get_project (grid))->currency);
}

/* Receipts ---------------------------------------------------------------------------------------------------------- */

gint64
gb_purchase_total (const GbRecord *purchase)
{
  const GPtrArray *lines = gb_record_children (purchase);
  gint64 total = 0;

  for (guint i = 0; i < lines->len; i++)
    total = gb_money_add (total, gb_line_total (lines->pdata[i]));
  return total;
}

static void
look_total (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  gint64 total = gb_purchase_total (record);

  look->text = show_money (grid, total);
  look->flags = GB_CELL_STRONG;
  if (total == GB_MONEY_UNKNOWN)
    {
      look->flags |= GB_CELL_TROUBLE;
      look->note = g_strdup (_ ("A line of this receipt has no price yet."));
    }
}

/* A date that is still to come is as likely a slip as a plan: it is said, and counted all the same. */
static void
look_date (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  look->text = gb_project_display (gb_grid_get_project (grid), gb_field (GB_RECORD_PURCHASE, "date"), record);
  if (((const GbPurchase *) record)->date > gb_today ())
    {
      look->flags = GB_CELL_TROUBLE;
      look->note = g_strdup (_ ("This date is still to come."));
    }
}

static gint64
add_purchase (GbGrid *grid, const char *text, const GbChoiceItem *chosen, GbGridSpot spot, GbPartKind kind, GError **error)
{
  GbRecord *draft = gb_record_new (GB_RECORD_PURCHASE);

  ((GbPurchase *) draft)->date = gb_today ();
  return gb_grid_add_draft (grid, draft, "supplier", text, NULL, spot, error);
}

/* The suppliers that the build knows, from its stock and its receipts. */
static GPtrArray *
offer_suppliers (GbGrid *grid)
{
  static const GbRecordKind kinds[] = { GB_RECORD_STOCK, GB_RECORD_PURCHASE };
  const GbBoat *boat = gb_project_get_boat (gb_grid_get_project (grid));
  GPtrArray *choices = g_ptr_array_new_with_free_func ((GDestroyNotify) gb_choice_item_free);
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint k = 0; k < G_N_ELEMENTS (kinds); k++)
    {
      const GPtrArray *all = gb_boat_all (boat, kinds[k]);
      const GbField *field = gb_field (kinds[k], "supplier");

      for (guint i = 0; i < all->len; i++)
        {
          const char *supplier = gb_field_get_text (field, all->pdata[i]);

          if (supplier != NULL && g_hash_table_add (seen, (gpointer) supplier))
            g_ptr_array_add (choices, gb_choice_item_new (supplier, NULL, GB_N_RECORDS, 0));
        }
    }
  return choices;
}

static const GbGridColumn purchase_columns[] = {
  { .name = "supplier", .width = 15 },
  { .name = "date", .width = 10, .look = look_date },
  { .name = "total", .title = N_ ("Total"), .width = 10, .is_number = TRUE, .look = look_total },
  { NULL },
};
static const char *const purchase_shown[] = { "supplier", "date", "total", NULL };
const GbGridType gb_purchase_grid_type = {
  .kind = GB_RECORD_PURCHASE,
  .shown = purchase_shown,
  .main_column = "supplier",
  .settings_key = "purchases-columns",
  .blank_text = N_ ("Type a shop"),
  .columns = purchase_columns,
  .add = add_purchase,
  .add_choices = offer_suppliers,
};

/* Lines ------------------------------------------------------------------------------------------------------------- */

static void
look_what (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  const GbLine *line = (const GbLine *) record;
  GbProject *project = gb_grid_get_project (grid);

  if (line->what != NULL)
    look->text = g_strdup (line->what);
  else
    look->text = gb_project_display (project, gb_field (GB_RECORD_LINE, line->stock != 0 ? "stock" : "part"), record);
}

static void
look_line_total (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  gint64 total = gb_line_total ((const GbLine *) record);

  look->text = show_money (grid, total);
  look->flags = GB_CELL_STRONG;
  if (total == GB_MONEY_UNKNOWN)
    {
      look->flags |= GB_CELL_TROUBLE;
      look->note = g_strdup (_ ("No price yet, so it is in no sum."));
    }
}

/* Stock and parts that are typed are bought as such; anything else is something else. */
static gint64
add_line (GbGrid *grid, const char *text, const GbChoiceItem *chosen, GbGridSpot spot, GbPartKind kind, GError **error)
{
  GbRecord *draft = gb_record_new (GB_RECORD_LINE);
  GbLine *line = (GbLine *) draft;
  g_auto (GbValue) what = GB_VALUE_TEXT (text);

  if (!gb_field_check (gb_field (GB_RECORD_LINE, "what"), &what, error))
    {
      gb_record_free (draft);
      return 0;
    }
  line->kind = GB_LINE_OTHER;
  if (chosen != NULL && chosen->kind == GB_RECORD_STOCK)
    {
      line->kind = GB_LINE_STOCK;
      line->stock = chosen->id;
    }
  else if (chosen != NULL && chosen->kind == GB_RECORD_PART)
    {
      line->kind = GB_LINE_PART;
      line->part = chosen->id;
    }
  else
    gb_field_set_text (gb_field (GB_RECORD_LINE, "what"), draft, text);
  return gb_project_buy (gb_grid_get_project (grid), draft, spot.owner, 0, NULL, error);
}

static GPtrArray *
offer_things (GbGrid *grid)
{
  GPtrArray *choices = g_ptr_array_new_with_free_func ((GDestroyNotify) gb_choice_item_free);

  gb_choices_add_records (choices, gb_grid_get_project (grid), GB_RECORD_STOCK);
  gb_choices_add_records (choices, gb_grid_get_project (grid), GB_RECORD_PART);
  return choices;
}

static const GbGridColumn line_columns[] = {
  { .name = "what", .width = 20, .look = look_what },
  { .name = "price", .width = 8 },
  { .name = "total", .title = N_ ("Comes to"), .width = 10, .is_number = TRUE, .look = look_line_total },
  { NULL },
};
static const char *const line_shown[] = { "what", "quantity", "price", "total", "discount", "kind", "category", NULL };
const GbGridType gb_line_grid_type = {
  .kind = GB_RECORD_LINE,
  .shown = line_shown,
  .main_column = "what",
  .blank_text = N_ ("Type what was bought"),
  .columns = line_columns,
  .add = add_line,
  .add_choices = offer_things,
};
