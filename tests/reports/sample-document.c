/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sample-document.h"

#include <math.h>

const char *const sample_hostile[] = {
  "=1+1",
  "=HYPERLINK(\"http://example.org\",\"x\")",
  "+1",
  "-1+2",
  "@SUM(A1)",
  "\t=1",
  "\r=1",
  "'=1",
  "a, \"quoted\" name",
  "two\nlines",
  "http://example.org",
  "mailto:a@example.org",
  "_x0041_",
  "<b>&amp;</b>",
  "not UTF-8: \xff\xfe",
  "bell \a and escape \033[31m",
  "",
};
const guint sample_n_hostile = G_N_ELEMENTS (sample_hostile);

static const GbColumn columns[] = {
  { "name", "Name", GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
  { "group", "Group", GB_CELL_TEXT, 0, GB_COLUMN_DATA },
  { "mass", "Mass", GB_CELL_QUANTITY, GB_DIM_MASS, 0 },
  { "x", "x", GB_CELL_QUANTITY, GB_DIM_LENGTH, 0 },
  { "moment_x", "Mass\302\240×\302\240x", GB_CELL_MOMENT, 0, 0 },
  { "bought", "Bought", GB_CELL_DATE, 0, 0 },
  { "cost", "Cost", GB_CELL_MONEY, 0, 0 },
};

static void
add_row (GbTable *table,
         GbRowKind kind,
         guint depth,
         const char *name,
         double mass,
         double x,
         gint64 date,
         gint64 cost)
{
  gb_table_row (table, kind, depth);
  gb_table_text (table, name);
  gb_table_text (table, "Hull");
  gb_table_number (table, mass);
  gb_table_number (table, x);
  gb_table_number (table, mass * x);
  gb_table_date (table, date);
  gb_table_money (table, cost);
}

static void
add_total (GbTable *table)
{
  gb_table_row (table, GB_ROW_TOTAL, 0);
  gb_table_coded (table, "Total", "total");
  gb_table_skip (table, 1);
  gb_table_number (table, 10.8);
  gb_table_skip (table, 3);
  gb_table_money (table, 12345);
}

static void
add_hostile (GbDocument *document)
{
  static const GbColumn hostile[] = { { "text", "Text", GB_CELL_TEXT, 0, GB_COLUMN_WIDE },
                                      { "number", "Number", GB_CELL_QUANTITY, GB_DIM_COUNT, 0 } };
  GbTable *table = gb_document_table (document, "hostile", "Hostile texts", hostile, G_N_ELEMENTS (hostile));

  for (guint i = 0; i < sample_n_hostile; i++)
    {
      gb_table_row (table, GB_ROW_NORMAL, 0);
      gb_table_text (table, sample_hostile[i]);
      gb_table_number (table, -1.0 - i);
    }
}

static GbDocument *
new_document (GbUnits units)
{
  g_autoptr (GbRecord) build = gb_record_new (GB_RECORD_BUILD);

  ((GbBuild *) build)->name = g_strdup ("Wren");
  ((GbBuild *) build)->currency = g_strdup ("EUR");
  ((GbBuild *) build)->units = units;
  return gb_document_new ("parts", "Parts list", (GbBuild *) build, SAMPLE_DATE);
}

GbDocument *
sample_document (GbUnits units)
{
  GbDocument *document = new_document (units);
  GbTable *table = gb_document_table (document, "parts", "Parts", columns, G_N_ELEMENTS (columns));

  gb_document_fact (document, "mass", "Mass", GB_DIM_MASS, 10.8, g_strdup ("10.8 kg ± 0.4 kg"));
  gb_document_fact (document, "freeboard", "Freeboard", GB_DIM_LENGTH, NAN, NULL);
  gb_document_fact_money (document, "spent", "Spent", 12345);
  gb_document_fact_text (document, "water", "Water", g_strdup ("fresh"));
  gb_document_say (document, g_strdup ("1 part has no mass yet and is in no sum: Tiller."));
  gb_document_caution (document, "Test in sheltered shallow water.");
  add_row (table, GB_ROW_GROUP, 0, "Hull", 7.8, 1.25, 0, GB_MONEY_UNKNOWN);
  add_row (table, GB_ROW_NORMAL, 1, "Bottom", 4.8, 1.2, SAMPLE_DATE, 12345);
  add_row (table, GB_ROW_NORMAL, 1, "Tiller", NAN, 0.1, 0, GB_MONEY_UNKNOWN);
  add_total (table);
  add_hostile (document);
  gb_document_note (document, g_strdup ("Places: x forward."));
  return document;
}

GbDocument *
sample_long_document (guint n_rows)
{
  GbDocument *document = new_document (GB_UNITS_METRIC);
  GbTable *table = gb_document_table (document, "parts", "Parts", columns, G_N_ELEMENTS (columns));

  gb_document_caution (document, "Test in sheltered shallow water.");
  for (guint i = 0; i < n_rows; i++)
    {
      g_autofree char *name
          = g_strdup_printf ("Part %u of a build with very many parts, whose names are long", i + 1);

      add_row (table, GB_ROW_NORMAL, i % 5, name, 0.1 * i, 0.01 * i, SAMPLE_DATE, 100 * i);
    }
  add_total (table);
  return document;
}
