/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-project"

#include "project/verbs-buy.h"

#include "project/project-private.h"
#include "project/words.h"

#include <glib/gi18n-lib.h>

/* Fills in what the line leaves open. Returns what it names, or NULL. */
static const GbRecord *
complete_line (GbLine *line, const GbBoat *boat)
{
  const GbStock *stock = gb_boat_stock (boat, line->stock);
  const GbPart *part = gb_boat_part (boat, line->part);

  if (stock != NULL)
    {
      line->kind = GB_LINE_STOCK;
      if (line->price == GB_MONEY_UNKNOWN)
        line->price = stock->price;
    }
  else if (part != NULL)
    {
      line->kind = GB_LINE_PART;
      if (line->price == GB_MONEY_UNKNOWN)
        line->price = part->price;
    }
  else
    return NULL;
  if (line->what == NULL)
    line->what = gb_record_dup_title (stock != NULL ? &stock->rec : &part->rec);
  return stock != NULL ? &stock->rec : &part->rec;
}

static gint64
put_purchase (GbEdit *edit, gint64 date, const char *supplier)
{
  GbPurchase *purchase = (GbPurchase *) gb_record_new (GB_RECORD_PURCHASE);

  purchase->date = date;
  purchase->supplier = supplier != NULL && *supplier != '\0' ? g_strdup (supplier) : NULL;
  return gb_edit_put (edit, &purchase->rec);
}

gint64
gb_project_buy (GbProject *self, GbRecord *draft, gint64 purchase, gint64 date, const char *supplier,
                GError **error)
{
  GbLine *line = (GbLine *) draft;
  const GbRecord *bought = complete_line (line, self->boat);
  g_autofree char *title = gb_words_title (draft);
  /* Translators: after "Undo:". "purchase of 6 mm sheet" */
  g_autofree char *words = g_strdup_printf (C_ ("undo", "purchase of %s"), title);
  g_autoptr (GbEdit) edit = gb_edit_new (words, GB_RECORD_LINE, 0, NULL);

  g_return_val_if_fail (draft->kind == GB_RECORD_LINE, 0);

  if (supplier == NULL && bought != NULL && bought->kind == GB_RECORD_STOCK)
    supplier = ((const GbStock *) bought)->supplier;
  draft->id = 0;
  draft->owner = purchase != 0 ? purchase : put_purchase (edit, date, supplier);
  gb_edit_put (edit, draft);
  return gb_project_apply_keep (self, edit, error) ? draft->id : 0;
}
