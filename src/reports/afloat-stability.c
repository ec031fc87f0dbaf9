/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-report-afloat"

/* What turns her over: righting levers, what is read off them, and which edge goes under first. */

#include "afloat-private.h"

#include "boat/quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define EVERY 10   /* degrees between two rows */
#define ALIKE 5e-5 /* m: less than is shown */

typedef void (*AddRighting) (const GbAfloatReport *self, GbTable *table, const GbRighting *righting,
                             const char *name);

static void
for_each_righting (const GbAfloatReport *self, GbTable *table, AddRighting add)
{
  for (guint i = 0; i < self->studies->len; i++)
    {
      const GbStudy *study = self->studies->pdata[i];
      g_autofree char *name = gb_condition_dup_name (self->boat, study->condition);

      if (study->righting != NULL)
        add (self, table, study->righting, name);
    }
}

/* Read off the curve ------------------------------------------------------------------------------------- */

static const GbColumn side_columns[] = {
  GB_GROUPED (N_ ("Side")),
  { "gm", N_ ("GM"), GB_CELL_QUANTITY, GB_DIM_LENGTH, GB_COLUMN_DATA },
  { "gm_solid", N_ ("GM, liquids frozen"), GB_CELL_QUANTITY, GB_DIM_LENGTH, GB_COLUMN_DATA },
  { "filling", N_ ("Water comes in at"), GB_CELL_QUANTITY, GB_DIM_ANGLE, 0 },
  { "dry_greatest", N_ ("Greatest lever to there"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "dry_greatest_at", N_ ("at"), GB_CELL_QUANTITY, GB_DIM_ANGLE, 0 },
  { "dry_area_m_rad", N_ ("Area to there (m\302\240rad)"), GB_CELL_QUANTITY, GB_DIM_COUNT, 0 },
  { "greatest", N_ ("Greatest lever, closed"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "greatest_at", N_ ("at"), GB_CELL_QUANTITY, GB_DIM_ANGLE, 0 },
  { "vanishing", N_ ("Closed, she goes over at"), GB_CELL_QUANTITY, GB_DIM_ANGLE, 0 },
  { "area_m_rad", N_ ("Area, closed (m\302\240rad)"), GB_CELL_QUANTITY, GB_DIM_COUNT, 0 },
  { "moment", N_ ("Steady moment"), GB_CELL_QUANTITY, GB_DIM_MOMENT, 0 },
  { "steady", N_ ("heels her to"), GB_CELL_QUANTITY, GB_DIM_ANGLE, 0 },
};

static void
add_side (GbTable *table, const GbRighting *righting, const GbRightingSide *side, gboolean acts,
          const char *name, const char *code, const char *condition)
{
  gb_afloat_row (table, name, code, condition);
  gb_table_number (table, righting->gm);
  gb_table_number (table, righting->gm_solid);
  gb_table_number (table, side->filling);
  gb_table_number (table, side->dry_greatest);
  gb_table_number (table, side->dry_greatest_at);
  gb_table_number (table, side->dry_area);
  gb_table_number (table, side->greatest);
  gb_table_number (table, side->greatest_at);
  gb_table_number (table, side->vanishing);
  gb_table_number (table, side->area);
  /* Where no moment acts there is no heel under it, which is not the same as an unknown one. */
  if (!acts)
    {
      gb_table_skip (table, 2);
      return;
    }
  gb_table_number (table, righting->moment);
  gb_table_number (table, side->steady);
}

static void
add_sides (const GbAfloatReport *self, GbTable *table, const GbRighting *righting, const char *condition)
{
  gb_afloat_heading (table, condition);
  add_side (table, righting, &righting->starboard, righting->moment >= 0, _ ("starboard"), "starboard",
            condition);
  add_side (table, righting, &righting->port, righting->moment < 0, _ ("port"), "port", condition);
}

/* Edges -------------------------------------------------------------------------------------------------- */

static const GbColumn immersion_columns[] = {
  GB_GROUPED (N_ ("First under at")),
  { "starboard", N_ ("heel to starboard"), GB_CELL_QUANTITY, GB_DIM_ANGLE, 0 },
  { "port", N_ ("heel to port"), GB_CELL_QUANTITY, GB_DIM_ANGLE, 0 },
  { "bow", N_ ("trim by the bow"), GB_CELL_QUANTITY, GB_DIM_ANGLE, 0 },
  { "stern", N_ ("trim by the stern"), GB_CELL_QUANTITY, GB_DIM_ANGLE, 0 },
};

static void
add_immersions (const GbAfloatReport *self, GbTable *table, const GbRighting *righting, const char *condition)
{
  const GPtrArray *lines = self->findings->edges.lines;

  gb_afloat_heading (table, condition);
  for (guint i = 0; i < righting->immersions->len; i++)
    {
      const GbEdgeImmersion *edge = &g_array_index (righting->immersions, GbEdgeImmersion, i);

      gb_afloat_row (table, ((const GbEdgeLine *) lines->pdata[edge->line])->name, NULL, condition);
      gb_table_number (table, edge->starboard);
      gb_table_number (table, edge->port);
      gb_table_number (table, edge->bow);
      gb_table_number (table, edge->stern);
    }
}

/* Balances ----------------------------------------------------------------------------------------------- */

static const GbColumn balance_columns[] = {
  GB_GROUPED (N_ ("Balance")),
  { "heel", N_ ("Heel"), GB_CELL_QUANTITY, GB_DIM_ANGLE, 0 },
};

static void
add_balances (const GbAfloatReport *self, GbTable *table, const GbRighting *righting, const char *condition)
{
  gb_afloat_heading (table, condition);
  for (guint i = 0; i < righting->balances->len; i++)
    {
      const GbBalance *balance = &g_array_index (righting->balances, GbBalance, i);

      gb_afloat_row (table, balance->stable ? _ ("She rests there") : _ ("She tips from there"),
                     balance->stable ? "stable" : "unstable", condition);
      gb_table_number (table, balance->heel);
    }
}

/* The curve ---------------------------------------------------------------------------------------------- */

static const GbColumn lever_columns[] = {
  GB_GROUPED (N_ ("Heel")),
  { "heel", N_ ("Heel"), GB_CELL_QUANTITY, GB_DIM_ANGLE, GB_COLUMN_DATA },
  { "lever", N_ ("Lever"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "lever_solid", N_ ("Liquids frozen"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "trim", N_ ("Trim"), GB_CELL_QUANTITY, GB_DIM_ANGLE, 0 },
  { "freeboard", N_ ("Least freeboard"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
};

/* TRUE if port is starboard's mirror image, so that one of them tells it all. */
static gboolean
is_alike (const GbRighting *righting)
{
  for (guint i = 0; i < GB_N_LEVERS / 2; i++)
    if (!(fabs (righting->levers[i].lever + righting->levers[GB_N_LEVERS - 1 - i].lever) < ALIKE))
      return FALSE;
  return TRUE;
}

static void
add_levers (const GbAfloatReport *self, GbTable *table, const GbRighting *righting, const char *condition)
{
  gb_afloat_heading (table, condition);
  for (guint i = is_alike (righting) ? GB_N_LEVERS / 2 : 0; i < GB_N_LEVERS; i += EVERY)
    {
      const GbLever *lever = &righting->levers[i];
      g_autofree char *heel = gb_quantity_format (lever->heel, GB_DIM_ANGLE, self->document->units);

      gb_afloat_row (table, heel, NULL, condition);
      gb_table_number (table, lever->heel);
      gb_table_number (table, lever->lever);
      gb_table_number (table, lever->solid);
      gb_table_number (table, lever->trim);
      gb_table_number (table, lever->freeboard);
    }
}

static gboolean
has_righting (const GbAfloatReport *self)
{
  for (guint i = 0; self->studies != NULL && i < self->studies->len; i++)
    if (((const GbStudy *) self->studies->pdata[i])->righting != NULL)
      return TRUE;
  return FALSE;
}

void
gb_afloat_add_stability (const GbAfloatReport *self)
{
  GbDocument *document = self->document;

  if (!has_righting (self))
    return;
  for_each_righting (
      self,
      gb_document_table (document, "sides", N_ ("Stability"), side_columns, G_N_ELEMENTS (side_columns)),
      add_sides);
  for_each_righting (self,
                     gb_document_table (document, "immersions", N_ ("When edges go under"), immersion_columns,
                                        G_N_ELEMENTS (immersion_columns)),
                     add_immersions);
  for_each_righting (self,
                     gb_document_table (document, "balances", N_ ("Where she balances"), balance_columns,
                                        G_N_ELEMENTS (balance_columns)),
                     add_balances);
  for_each_righting (self,
                     gb_document_table (document, "levers", N_ ("Righting levers"), lever_columns,
                                        G_N_ELEMENTS (lever_columns)),
                     add_levers);
  gb_document_note (
      document,
      g_strdup (_ (
          "Righting levers are with trim and sinkage free; positive ones bring her upright from starboard. "
          "Where both sides are alike only starboard is listed. From where the first edge goes under water comes in: "
          "beyond that the levers are those of a boat closed there, and no comfort. The area times her weight is the "
          "work of turning her so far.")));
}
