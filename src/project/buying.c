/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-project"

#include "project/buying.h"

#include "project/edit-private.h"

/* TRUE if the line buys something that the boat's line of that id does not. */
static gboolean
buys_anew (const GbLine *line, const GbBoat *boat)
{
  const GbLine *old = (const GbLine *) gb_boat_get (boat, GB_RECORD_LINE, line->rec.id);

  if (line->kind > GB_LINE_PART || line->quantity <= 0)
    return FALSE;
  return old == NULL || old->kind != line->kind || old->stock != line->stock || old->part != line->part
         || old->quantity < line->quantity;
}

static void
mark_part (GbEdit *edit, const GbBoat *boat, const GbPart *part)
{
  const GbPart *after = (const GbPart *) gb_edit_after (edit, boat, GB_RECORD_PART, part->rec.id);

  if (after != NULL && after->kind == GB_KIND_PART && after->state == GB_STATE_PLANNED)
    ((GbPart *) gb_edit_touch (edit, boat, GB_RECORD_PART, part->rec.id))->state = GB_STATE_BOUGHT;
}

/* The part, or all in the group. */
static void
mark_part_and_below (GbEdit *edit, const GbBoat *boat, gint64 id)
{
  const GPtrArray *parts = gb_boat_all (boat, GB_RECORD_PART);
  const GbPart *part = gb_boat_part (boat, id);

  if (part == NULL || part->rec.index == G_MAXUINT)
    return;
  for (guint i = 0; i <= part->n_below; i++)
    mark_part (edit, boat, parts->pdata[part->rec.index + i]);
}

static double
line_packs (const GbRecord *record, gint64 stock)
{
  const GbLine *line = (const GbLine *) record;

  return line->kind == GB_LINE_STOCK && line->stock == stock ? line->quantity : 0;
}

/* Packs of @stock on all receipts as they will stand after the edit. */
static double
packs_bought (const GbEdit *edit, const GbBoat *boat, gint64 stock)
{
  const GPtrArray *lines = gb_boat_all (boat, GB_RECORD_LINE);
  const GPtrArray *puts = gb_edit_puts (edit);
  double packs = 0;

  for (guint i = 0; i < lines->len; i++)
    {
      const GbRecord *line = lines->pdata[i];

      if (gb_edit_get (edit, GB_RECORD_LINE, line->id) == NULL
          && gb_edit_after (edit, boat, GB_RECORD_LINE, line->id) != NULL)
        packs += line_packs (line, stock);
    }
  for (guint i = 0; i < puts->len; i++)
    if (((const GbRecord *) puts->pdata[i])->kind == GB_RECORD_LINE)
      packs += line_packs (puts->pdata[i], stock);
  return packs;
}

static gboolean
covers_need (const GbEdit *edit, const GbBoat *boat, const GbFindings *findings, const GbStock *stock)
{
  const GbStockNeed *need;

  if (stock->rec.index >= findings->costs.n_stock)
    return FALSE;
  need = &findings->costs.stock[stock->rec.index];
  return need->n_unknown == 0
         && stock->on_hand + packs_bought (edit, boat, stock->rec.id) * stock->pack
              >= need->need * (1 - 1e-9);
}

static void
mark_users (GbEdit *edit, const GbBoat *boat, const GbFindings *findings, gint64 stock_id)
{
  const GPtrArray *parts = gb_boat_all (boat, GB_RECORD_PART);
  const GbStock *stock = gb_boat_stock (boat, stock_id);

  if (stock == NULL || !covers_need (edit, boat, findings, stock))
    return;
  for (guint i = 0; i < parts->len; i++)
    if (((const GbPart *) parts->pdata[i])->stock == stock_id)
      mark_part (edit, boat, parts->pdata[i]);
}

void
gb_buying_complete (GbEdit *edit, const GbBoat *boat, const GbFindings *findings)
{
  guint n = gb_edit_n_puts (edit); /* before any part is added */

  for (guint i = 0; i < n; i++)
    {
      const GbLine *line = gb_edit_puts (edit)->pdata[i];

      if (line->rec.kind != GB_RECORD_LINE || !buys_anew (line, boat))
        continue;
      if (line->kind == GB_LINE_PART)
        mark_part_and_below (edit, boat, line->part);
      else
        mark_users (edit, boat, findings, line->stock);
    }
}
