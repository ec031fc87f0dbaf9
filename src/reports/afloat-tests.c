/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-report-afloat"

/* What was measured, beside what was computed: inclining tests, and the model in the tub. */

#include "afloat-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Inclining tests ---------------------------------------------------------------------------------------- */

static const GbColumn inclining_columns[] = {
  { "date", N_ ("Inclined on"), GB_CELL_DATE, 0, 0 },
  { "condition", N_ ("Condition"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "readings", N_ ("Readings"), GB_CELL_QUANTITY, GB_DIM_COUNT, 0 },
  { "mass", N_ ("Displacement"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "gm", N_ ("GM"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "gm_sd", N_ ("Deviation"), GB_CELL_QUANTITY, GB_DIM_LENGTH, GB_COLUMN_ROUGH },
  { "gm_computed", N_ ("GM computed"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "km", N_ ("KM"), GB_CELL_QUANTITY, GB_DIM_LENGTH, GB_COLUMN_DATA },
  { "kg", N_ ("KG"), GB_CELL_QUANTITY, GB_DIM_LENGTH, GB_COLUMN_DATA },
  { "kg_sd", N_ ("Deviation of KG"), GB_CELL_QUANTITY, GB_DIM_LENGTH, GB_COLUMN_ROUGH | GB_COLUMN_DATA },
  { "z", N_ ("Centre z"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "z_sd", N_ ("Deviation"), GB_CELL_QUANTITY, GB_DIM_LENGTH, GB_COLUMN_ROUGH },
  { "z_computed", N_ ("z computed"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
};

static void
add_inclined (const GbAfloatReport *self, GbTable *table, const GbInclining *test, const GbInclined *inclined)
{
  g_autofree char *condition = gb_condition_dup_name (self->boat, test->condition);

  gb_table_row (table, GB_ROW_NORMAL, 0);
  gb_table_date (table, test->date);
  gb_table_text (table, condition);
  gb_table_number (table, inclined->n);
  gb_table_number (table, inclined->mass);
  gb_table_number (table, inclined->gm);
  gb_table_number (table, inclined->gm_sd);
  gb_table_number (table, inclined->computed_gm);
  gb_table_number (table, inclined->km);
  gb_table_number (table, inclined->kg);
  gb_table_number (table, inclined->kg_sd);
  gb_table_number (table, inclined->z);
  gb_table_number (table, inclined->z_sd);
  gb_table_number (table, inclined->computed_z);
}

static void
add_inclinings (const GbAfloatReport *self)
{
  const GPtrArray *tests = gb_boat_all (self->boat, GB_RECORD_INCLINING);
  guint n = MIN (tests->len, self->findings->n_inclined);
  GbTable *table;

  if (n == 0)
    return;
  table = gb_document_table (self->document, "inclining", N_ ("Inclining tests"), inclining_columns,
                             G_N_ELEMENTS (inclining_columns));
  for (guint i = 0; i < n; i++)
    add_inclined (self, table, tests->pdata[i], &self->findings->inclined[i]);
}

/* The model in the tub ----------------------------------------------------------------------------------- */

#define TEST_COLUMN                                                                                          \
  {                                                                                                          \
    "test", N_ ("Test"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE                                                     \
  }

static const GbColumn tub_columns[] = {
  TEST_COLUMN,
  { "condition", N_ ("Condition"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "scale", N_ ("Scale 1 to"), GB_CELL_QUANTITY, GB_DIM_COUNT, 0 },
  { "mass", N_ ("Its mass, boat size"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "draught_fore", N_ ("Forward, read"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "draught_fore_computed", N_ ("computed"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "draught_fore_own", N_ ("for its own mass"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "draught_aft", N_ ("Aft, read"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "draught_aft_computed", N_ ("computed"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "draught_aft_own", N_ ("for its own mass"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "heel", N_ ("Heel, read"), GB_CELL_QUANTITY, GB_DIM_ANGLE, GB_COLUMN_DATA },
  { "heel_computed", N_ ("Heel, computed"), GB_CELL_QUANTITY, GB_DIM_ANGLE, GB_COLUMN_DATA },
  { "trim", N_ ("Trim, read"), GB_CELL_QUANTITY, GB_DIM_ANGLE, GB_COLUMN_DATA },
  { "trim_computed", N_ ("Trim, computed"), GB_CELL_QUANTITY, GB_DIM_ANGLE, GB_COLUMN_DATA },
};

static void
add_tub (const GbAfloatReport *self, GbTable *table, const GbTub *tub, const GbTubbed *tubbed)
{
  g_autofree char *condition = gb_condition_dup_name (self->boat, tub->condition);

  gb_table_row (table, GB_ROW_NORMAL, 0);
  gb_table_text (table, tub->name);
  gb_table_text (table, condition);
  gb_table_number (table, tubbed->scale);
  gb_table_number (table, tubbed->mass);
  gb_table_number (table, tubbed->draught_fore);
  gb_table_number (table, tubbed->computed_fore);
  gb_table_number (table, tubbed->own_fore);
  gb_table_number (table, tubbed->draught_aft);
  gb_table_number (table, tubbed->computed_aft);
  gb_table_number (table, tubbed->own_aft);
  gb_table_number (table, tubbed->heel);
  gb_table_number (table, tubbed->computed_heel);
  gb_table_number (table, tubbed->trim);
  gb_table_number (table, tubbed->computed_trim);
}

static const GbColumn explanation_columns[] = {
  TEST_COLUMN,
  { "words", N_ ("What would explain a difference"), GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "fore", N_ ("Forward"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "aft", N_ ("Aft"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
};

static void
add_explanations (GbTable *table, const GbTub *tub, const GbTubbed *tubbed)
{
  for (guint i = 0; i < tubbed->explanations->len; i++)
    {
      const GbExplanation *explanation = tubbed->explanations->pdata[i];

      gb_table_row (table, GB_ROW_NORMAL, 0);
      gb_table_text (table, tub->name);
      gb_table_text (table, explanation->words);
      gb_table_number (table, explanation->fore);
      gb_table_number (table, explanation->aft);
    }
}

static const GbColumn wanted_columns[] = {
  TEST_COLUMN,
  { "mass", N_ ("The model must weigh"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "x", N_ ("Centre x"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "y", N_ ("y"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "z", N_ ("z"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "ballast", N_ ("Weight to add"), GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "ballast_x", N_ ("at x"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "ballast_y", N_ ("y"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "ballast_z", N_ ("z"), GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "time_factor", N_ ("Times × this"), GB_CELL_QUANTITY, GB_DIM_COUNT, GB_COLUMN_DATA },
  { "speed_factor", N_ ("Speeds × this"), GB_CELL_QUANTITY, GB_DIM_COUNT, GB_COLUMN_DATA },
};

static void
add_wanted (GbTable *table, const GbTub *tub, const GbTubbed *tubbed)
{
  gb_table_row (table, GB_ROW_NORMAL, 0);
  gb_table_text (table, tub->name);
  gb_table_number (table, tubbed->wanted_mass);
  gb_table_number (table, tubbed->wanted_centre.x);
  gb_table_number (table, tubbed->wanted_centre.y);
  gb_table_number (table, tubbed->wanted_centre.z);
  gb_table_number (table, tubbed->ballast);
  gb_table_number (table, tubbed->ballast_centre.x);
  gb_table_number (table, tubbed->ballast_centre.y);
  gb_table_number (table, tubbed->ballast_centre.z);
  gb_table_number (table, tubbed->time_factor);
  gb_table_number (table, tubbed->speed_factor);
}

static void
add_tubs (const GbAfloatReport *self)
{
  const GPtrArray *tubs = gb_boat_all (self->boat, GB_RECORD_TUB);
  guint n = MIN (tubs->len, self->findings->n_tubbed);
  GbTable *read, *explanations, *wanted;

  if (n == 0)
    return;
  read = gb_document_table (self->document, "tubs", N_ ("The model in the tub, in boat size"), tub_columns,
                            G_N_ELEMENTS (tub_columns));
  explanations = gb_document_table (self->document, "explanations", N_ ("What would explain the differences"),
                                    explanation_columns, G_N_ELEMENTS (explanation_columns));
  wanted = gb_document_table (self->document, "wanted_models", N_ ("What the model must be, in its own size"),
                              wanted_columns, G_N_ELEMENTS (wanted_columns));
  for (guint i = 0; i < n; i++)
    {
      add_tub (self, read, tubs->pdata[i], &self->findings->tubbed[i]);
      add_explanations (explanations, tubs->pdata[i], &self->findings->tubbed[i]);
      add_wanted (wanted, tubs->pdata[i], &self->findings->tubbed[i]);
    }
  gb_document_note (self->document, g_strdup (_ ("The model is scaled up by Froude's law: lengths by the "
                                                 "scale, masses by its cube and the ratio of the "
                                                 "waters' densities, times and speeds by its root.")));
}

void
gb_afloat_add_tests (const GbAfloatReport *self)
{
  add_inclinings (self);
  add_tubs (self);
}
