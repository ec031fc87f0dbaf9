/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-report-afloat"

/* How she floats: every condition's rest, loads and freeboards here; what turns her over, swamped and
 * measured in afloat-*.c. */

#include "afloat-private.h"
#include "report-private.h"

#include "boat/quantity.h"
#include "engine/loads.h"
#include "engine/working.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Points of one edge that are listed, besides the lowest. */
#define MAX_POINTS 24

void
gb_afloat_heading (GbTable *table, const char *condition)
{
  gb_table_row (table, GB_ROW_GROUP, 0);
  gb_table_text (table, condition);
  gb_table_text (table, condition);
  gb_table_skip (table, table->n_columns - 2);
}

void
gb_afloat_row (GbTable *table, const char *name, const char *code, const char *condition)
{
  gb_table_row (table, GB_ROW_NORMAL, 1);
  gb_table_coded (table, name, code);
  gb_table_text (table, condition);
}

/* What each condition's tables are made by. */
typedef void (*AddCondition) (const GbAfloatReport *self, GbTable *table, const GbAfloat *afloat,
                              const char *name);

static void
for_each_condition (const GbAfloatReport *self, GbTable *table, AddCondition add)
{
  for (guint i = 0; i < self->findings->n_afloat; i++)
    {
      const GbAfloat *afloat = &self->findings->afloat[i];
      g_autofree char *name = gb_condition_dup_name (self->boat, afloat->condition);

      add (self, table, afloat, name);
    }
}

/* Conditions --------------------------------------------------------------------------------------------- */

static const GbColumn rest_columns[] = {
  { "condition", N_ ("Condition"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "state", N_ ("State"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "total", N_ ("Displacement"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "total_sd", N_ ("Deviation"), GB_CELL_QUANTITY, GB_DIM_MASS, GB_COLUMN_ROUGH },
  { "draught_fore", N_ ("Draught forward"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "draught_mid", N_ ("amidships"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "draught_aft", N_ ("aft"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "trim", N_ ("Trim by the bow"), GB_CELL_QUANTITY, GB_DIM_ANGLE, 0 },
  { "heel", N_ ("Heel to starboard"), GB_CELL_QUANTITY, GB_DIM_ANGLE, 0 },
  { "freeboard", N_ ("Least freeboard"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "freeboard_edge", N_ ("where"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "freeboard_x", N_ ("x"), GB_CELL_QUANTITY, GB_DIM_LENGTH, GB_COLUMN_DATA },
  { "freeboard_y", N_ ("y"), GB_CELL_QUANTITY, GB_DIM_LENGTH, GB_COLUMN_DATA },
  { "freeboard_z", N_ ("z"), GB_CELL_QUANTITY, GB_DIM_LENGTH, GB_COLUMN_DATA },
};

static const struct
{
  const char *text, *code;
} states[] = {
  [GB_AFLOAT_UNKNOWN] = { N_ ("not known"), "unknown" }, [GB_AFLOAT_FLOATS] = { N_ ("floats"), "floats" },
  [GB_AFLOAT_FILLS] = { N_ ("fills"), "fills" },         [GB_AFLOAT_OVER] = { N_ ("has gone over"), "over" },
  [GB_AFLOAT_SINKS] = { N_ ("sinks"), "sinks" },
};

static void
add_place (GbTable *table, GbVec3 at)
{
  gb_table_number (table, at.x);
  gb_table_number (table, at.y);
  gb_table_number (table, at.z);
}

static const char *
edge_name (const GbFindings *findings, int line)
{
  const GPtrArray *lines = findings->edges.lines;

  return line >= 0 && lines != NULL && (guint) line < lines->len
             ? ((const GbEdgeLine *) lines->pdata[line])->name
             : NULL;
}

static void
add_rest (const GbAfloatReport *self, GbTable *table, const GbAfloat *a, const char *name)
{
  if (a->state == GB_AFLOAT_UNKNOWN && isnan (a->total))
    return;
  gb_table_row (table, GB_ROW_NORMAL, 0);
  gb_table_text (table, name);
  gb_table_coded (table, _ (states[a->state].text), states[a->state].code);
  gb_table_number (table, a->total);
  gb_table_number (table, a->total_sd);
  gb_table_number (table, a->draught_fore);
  gb_table_number (table, a->draught_mid);
  gb_table_number (table, a->draught_aft);
  gb_table_number (table, a->trim);
  gb_table_number (table, a->heel);
  gb_table_number (table, a->least.freeboard);
  gb_table_text (table, edge_name (self->findings, a->least.line));
  add_place (table, a->least.at);
}

static const GbColumn room_columns[] = {
  { "condition", N_ ("Condition"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "limit", N_ ("Flotation limit, level"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "left", N_ ("Left to it"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "chance", N_ ("Chance of passing it"), GB_CELL_QUANTITY, GB_DIM_RATIO, 0 },
  { "room", N_ ("May come aboard"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "room_x", N_ ("at x"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "room_y", N_ ("y"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "most", N_ ("Floats her at most"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "reserve", N_ ("Reserve"), GB_CELL_QUANTITY, GB_DIM_VOLUME, 0 },
};

static void
add_room (const GbAfloatReport *self, GbTable *table, const GbAfloat *a, const char *name)
{
  if (isnan (a->limit) && isnan (a->most))
    return;
  gb_table_row (table, GB_ROW_NORMAL, 0);
  gb_table_text (table, name);
  gb_table_number (table, a->limit);
  gb_table_number (table, a->left);
  gb_table_number (table, a->chance);
  gb_table_number (table, a->room);
  gb_table_number (table, a->room_at.x);
  gb_table_number (table, a->room_at.y);
  gb_table_number (table, a->most);
  gb_table_number (table, a->reserve);
}

static const GbColumn water_columns[] = {
  { "condition", N_ ("Condition"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "volume", N_ ("Under water"), GB_CELL_QUANTITY, GB_DIM_VOLUME, 0 },
  { "waterplane", N_ ("Waterplane"), GB_CELL_QUANTITY, GB_DIM_AREA, 0 },
  { "per_cm", N_ ("For 1\302\240cm deeper"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "trim_moment_per_cm", N_ ("For 1\302\240cm of trim"), GB_CELL_QUANTITY, GB_DIM_MOMENT, 0 },
  { "lcg", N_ ("LCG"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "lcb", N_ ("LCB"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "lcf", N_ ("LCF"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "tcg", N_ ("TCG"), GB_CELL_QUANTITY, GB_DIM_LENGTH, GB_COLUMN_DATA },
  { "vcg", N_ ("VCG"), GB_CELL_QUANTITY, GB_DIM_LENGTH, GB_COLUMN_DATA },
  { "tcb", N_ ("TCB"), GB_CELL_QUANTITY, GB_DIM_LENGTH, GB_COLUMN_DATA },
  { "vcb", N_ ("VCB"), GB_CELL_QUANTITY, GB_DIM_LENGTH, GB_COLUMN_DATA },
};

static void
add_water (const GbAfloatReport *self, GbTable *table, const GbAfloat *a, const char *name)
{
  if (isnan (a->volume))
    return;
  gb_table_row (table, GB_ROW_NORMAL, 0);
  gb_table_text (table, name);
  gb_table_number (table, a->volume);
  gb_table_number (table, a->waterplane);
  gb_table_number (table, a->per_cm);
  gb_table_number (table, a->trim_moment);
  gb_table_number (table, a->gravity.x);
  gb_table_number (table, a->buoyancy.x);
  gb_table_number (table, a->flotation.x);
  gb_table_number (table, a->gravity.y);
  gb_table_number (table, a->gravity.z);
  gb_table_number (table, a->buoyancy.y);
  gb_table_number (table, a->buoyancy.z);
}

static const GbColumn stiffness_columns[] = {
  { "condition", N_ ("Condition"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "kb", N_ ("KB"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "kg", N_ ("KG"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "bm", N_ ("BM across"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "free_surface", N_ ("Taken off by liquids"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "gm", N_ ("GM across"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "heel_moment_per_deg", N_ ("For 1° of heel"), GB_CELL_QUANTITY, GB_DIM_MOMENT, 0 },
  { "bm_long", N_ ("BM along"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "gm_long", N_ ("GM along"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
};

static void
add_stiffness (const GbAfloatReport *self, GbTable *table, const GbAfloat *a, const char *name)
{
  if (isnan (a->volume))
    return;
  gb_table_row (table, GB_ROW_NORMAL, 0);
  gb_table_text (table, name);
  gb_table_number (table, a->kb);
  gb_table_number (table, a->kg);
  gb_table_number (table, a->bm);
  gb_table_number (table, a->free_surface);
  gb_table_number (table, a->gm);
  gb_table_number (table, a->heel_moment);
  gb_table_number (table, a->bm_long);
  gb_table_number (table, a->gm_long);
}

/* Loads -------------------------------------------------------------------------------------------------- */

static const GbColumn load_columns[] = {
  GB_GROUPED (N_ ("Load")),
  { "kind", N_ ("Kind"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "quantity", N_ ("Quantity"), GB_CELL_QUANTITY, GB_DIM_COUNT, 0 },
  { "mass", N_ ("Mass of one"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "weight", N_ ("In all, downwards"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "x", N_ ("Centre x"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "y", N_ ("y"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "z", N_ ("z"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
};

static void
add_load (GbTable *table, const GbLoad *load, const char *condition)
{
  gb_afloat_row (table, load->name, NULL, condition);
  gb_table_choice (table, gb_field (GB_RECORD_LOAD, "kind"), load->kind);
  gb_table_number (table, load->quantity);
  gb_table_number (table, load->mass);
  gb_table_number (table, gb_load_weight (load));
  add_place (table, gb_load_centre (load));
}

static void
add_loads (const GbAfloatReport *self, GbTable *table, const GbAfloat *a, const char *name)
{
  const GbRecord *condition = gb_boat_get (self->boat, GB_RECORD_CONDITION, a->condition);
  const GPtrArray *loads = condition != NULL ? gb_record_children (condition) : NULL;

  if (loads == NULL || loads->len == 0)
    return;
  gb_afloat_heading (table, name);
  for (guint i = 0; i < loads->len; i++)
    add_load (table, loads->pdata[i], name);
}

/* Freeboard along the edges ------------------------------------------------------------------------------ */

static const GbColumn freeboard_columns[] = {
  GB_GROUPED (N_ ("Edge")),
  { "edge", N_ ("Edge"), GB_CELL_TEXT, 0, GB_COLUMN_DATA },
  { "x", N_ ("x"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "y", N_ ("y"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "z", N_ ("z"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "freeboard", N_ ("Freeboard"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
};

static void
add_point (GbTable *table, const GbAfloat *a, const GbEdgeLine *line, GbVec3 at, const char *condition,
           gboolean is_least)
{
  /* Translators: the name of an edge. */
  g_autofree char *lowest = g_strdup_printf (_ ("%s, the lowest"), line->name);

  gb_afloat_row (table, is_least ? lowest : line->name, is_least ? "lowest" : NULL, condition);
  gb_table_text (table, line->name);
  add_place (table, at);
  gb_table_number (table, gb_attitude_above (a->attitude, at));
}

static void
add_edge (GbTable *table, const GbAfloat *a, const GbEdgeLine *line, const char *condition)
{
  guint step = MAX (1, (line->points->len + MAX_POINTS - 1) / MAX_POINTS);
  GbVec3 lowest;

  for (guint i = 0; i < line->points->len; i += step)
    add_point (table, a, line, g_array_index (line->points, GbVec3, i), condition, FALSE);
  gb_edge_line_least (line, a->attitude, &lowest);
  add_point (table, a, line, lowest, condition, TRUE);
}

static void
add_freeboards (const GbAfloatReport *self, GbTable *table, const GbAfloat *a, const char *name)
{
  const GPtrArray *lines = self->findings->edges.lines;

  if (isnan (a->least.freeboard))
    return;
  gb_afloat_heading (table, name);
  for (guint i = 0; i < lines->len; i++)
    add_edge (table, a, lines->pdata[i], name);
}

/* The whole ---------------------------------------------------------------------------------------------- */

static void
add_tables (const GbAfloatReport *self)
{
  GbDocument *document = self->document;

  for_each_condition (self,
                      gb_document_table (document, "conditions", N_ ("As she floats"), rest_columns,
                                         G_N_ELEMENTS (rest_columns)),
                      add_rest);
  for_each_condition (self,
                      gb_document_table (document, "room", N_ ("What may still come aboard"), room_columns,
                                         G_N_ELEMENTS (room_columns)),
                      add_room);
  for_each_condition (
      self,
      gb_document_table (document, "water", N_ ("Under water"), water_columns, G_N_ELEMENTS (water_columns)),
      add_water);
  for_each_condition (self,
                      gb_document_table (document, "stiffness", N_ ("Stiffness"), stiffness_columns,
                                         G_N_ELEMENTS (stiffness_columns)),
                      add_stiffness);
  for_each_condition (
      self, gb_document_table (document, "loads", N_ ("Loads"), load_columns, G_N_ELEMENTS (load_columns)),
      add_loads);
  for_each_condition (self,
                      gb_document_table (document, "freeboards", N_ ("Freeboard along each edge"),
                                         freeboard_columns, G_N_ELEMENTS (freeboard_columns)),
                      add_freeboards);
}

static void
add_facts (const GbAfloatReport *self)
{
  const GbBuild *build = gb_boat_build (self->boat);
  const GbFindings *findings = self->findings;
  const GbAfloat *worst;

  gb_document_fact (self->document, "freeboard_accepted", N_ ("Least freeboard, accepted"), GB_DIM_LENGTH,
                    build->freeboard, NULL);
  gb_document_fact (self->document, "water_density", N_ ("Water"), GB_DIM_DENSITY,
                    findings->flotation.water_density, NULL);
  if (findings->n_afloat == 0)
    return;
  worst = &findings->afloat[findings->worst];
  if (worst->state == GB_AFLOAT_UNKNOWN)
    return;
  gb_document_fact_text (self->document, "worst", N_ ("Worst condition"),
                         gb_condition_dup_name (self->boat, worst->condition));
  gb_document_fact_text (self->document, "worst_state", N_ ("There she"),
                         g_strdup (_ (states[worst->state].text)));
  if (!isnan (worst->least.freeboard))
    gb_document_fact (self->document, "worst_freeboard", N_ ("with a least freeboard of"), GB_DIM_LENGTH,
                      worst->least.freeboard, NULL);
}

static void
add_notes (GbDocument *document)
{
  gb_document_note (
      document,
      g_strdup (
          _ ("Places: x forward from the aft end of the baseline, y to port, z up from the baseline. Trim is "
             "positive by the bow, heel to starboard.")));
  gb_document_note (document, g_strdup (_ ("Draughts are from the line of the keel, the lowest point of the "
                                           "hulls, at the ends of the hulls and halfway "
                                           "between. LCG, LCB and LCF are the places along x of the centres "
                                           "of gravity, of buoyancy and of the waterplane; K "
                                           "is the keel, B the centre of buoyancy, G that of gravity, M the "
                                           "metacentre. GMs are after what liquids take off.")));
}

GbDocument *
gb_afloat_document (const GbBoat *boat, const GbFindings *findings, const GPtrArray *studies, gint64 today)
{
  GbAfloatReport self = { gb_document_new ("afloat", _ ("Afloat"), gb_boat_build (boat), today), boat,
                          findings, studies };

  self.document->landscape = TRUE;
  add_facts (&self);
  gb_document_caution (self.document, gb_caution_afloat ());
  gb_say_verdicts (self.document, boat, findings, GB_VERDICT_ON_WEIGHT);
  add_tables (&self);
  gb_afloat_add_stability (&self);
  gb_afloat_add_swamped (&self);
  gb_afloat_add_tests (&self);
  gb_document_drop_empty_tables (self.document);
  if (self.document->tables->len > 0)
    add_notes (self.document);
  return self.document;
}
