/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The reports of a build that is worked by hand in small-build.h, in every format. */

#include "generate.h"
#include "reports/import.h"
#include "reports/report.h"
#include "report-testing.h"
#include "small-build.h"

#include <json-glib/json-glib.h>
#include <math.h>
#include <string.h>

/* Parts ------------------------------------------------------------------------------------------------------------- */

static void
test_parts_as_text (void)
{
  g_autoptr (GbBoat) boat = small_build_new ();
  g_autofree char *text = report_text (boat, GB_REPORT_PARTS, GB_FORMAT_TEXT);
  const char *expected
      = "Parts list: Wren\n"
        "2026-03-12\n"
        "====================================================================================================\n"
        "Parts              5\n"
        "Mass of all parts  11.4 kg ± 0.5\n"
        "Planned cost       €\302\240111.52\n"
        "\n"
        "1 part has no mass yet and is in no sum: Tiller.\n"
        "\n"
        "1 part has no planned cost yet and is in no sum of money.\n"
        "\n"
        "Parts\n"
        "\n"
        "Name          Amount                   Material  Stock       Mass,  Mass,  E/C/A  State    Planned\n"
        "                                                              each     in                     cost\n"
        "                                                              (kg)    all                    (EUR)\n"
        "                                                                     (kg)\n"
        "--------------------------------------------------------------------------------------------------\n"
        "Hull                                                           8      8    C A               50.52\n"
        "  Bottom      1 × 2000 × 800 × 6 mm    ply       6 mm sheet    4.8    4.8  C      Made       31.09\n"
        "  Side panel  pair, 2 × 0.5 m² × 6 mm  ply       6 mm sheet    1.6    3.2  A      Planned    19.43\n"
        "Rig                                                            3      3    E                 55.00\n"
        "  Mast        3 kg                                             3      3    E      Planned    55.00\n"
        "  Tiller      1 × 900 × 30 × 20 mm                             –      –    –      Planned     –\n"
        "Frames        2 off                                            0.2    0.4  C                  6.00\n"
        "  Knee        2 pieces                                         0.1    0.4  C      Planned     6.00\n"
        "--------------------------------------------------------------------------------------------------\n"
        "All parts                                                            11.4  E C A            111.52\n"
        "\n"
        "Basis: E is estimated, C is calculated from sizes and densities, A is the actual mass, off a scale.\n"
        "\n"
        "Tiller: It has no material. Choose one, or stock that has one.\n";

  g_assert_cmpstr (text, ==, expected);
}

static void
test_parts_as_json (void)
{
  g_autoptr (GbBoat) boat = small_build_new ();
  g_autoptr (JsonNode) root = report_json (boat, GB_REPORT_PARTS);
  JsonObject *side = report_row (root, "parts", "name", "Side panel");
  JsonObject *knee = report_row (root, "parts", "name", "Knee");
  JsonObject *tiller = report_row (root, "parts", "name", "Tiller");

  report_assert_number (side, "mass_each_kg", 1.6);
  report_assert_number (side, "mass_kg", 3.2);
  g_assert_cmpstr (json_object_get_string_member (side, "group"), ==, "Hull");
  g_assert_cmpstr (json_object_get_string_member (side, "pair"), ==, "yes");
  g_assert_cmpstr (json_object_get_string_member (side, "takeoff"), ==, "sheet");
  g_assert_cmpstr (json_object_get_string_member (side, "state"), ==, "planned");
  report_assert_number (side, "thickness_m", 0.006);
  /* 0.5 m2 twice of a sheet of 3.125 m2 at 52.80 with 15 % for cutting. */
  g_assert_cmpint (json_object_get_int_member (side, "cost_minor"), ==, 1943);
  report_assert_number (knee, "in_all", 4);
  report_assert_number (knee, "mass_kg", 0.4);
  g_assert_true (json_object_get_null_member (tiller, "mass_kg"));
  g_assert_true (json_object_get_null_member (tiller, "cost_minor"));
  g_assert_nonnull (json_object_get_string_member (tiller, "missing"));
}

/* The CSV is a table that can be read again. */
static void
test_parts_as_csv_come_back (void)
{
  g_autoptr (GbBoat) boat = small_build_new ();
  g_autofree char *csv = report_text (boat, GB_REPORT_PARTS, GB_FORMAT_CSV);
  g_autoptr (GError) error = NULL;
  g_autoptr (GbImport) import = gb_import_new (GB_RECORD_PART, csv, -1, boat, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (gb_import_n_rows (import), ==, gb_boat_n (boat, GB_RECORD_PART));
  for (guint r = 0; r < gb_import_n_rows (import); r++)
    g_assert_cmpstr (gb_import_refusal (import, r), ==, NULL);
}

/* Weights ----------------------------------------------------------------------------------------------------------- */

static void
test_weights (void)
{
  g_autoptr (GbBoat) boat = small_build_new ();
  g_autoptr (JsonNode) root = report_json (boat, GB_REPORT_WEIGHTS),
                       afloat = report_json (boat, GB_REPORT_AFLOAT);
  JsonObject *all = report_facts (root);
  double x = (4.8 * 1.0 + 3.2 * 1.1 + 3.0 * 1.5 + 0.4 * 0.7) / 11.4;

  report_assert_number (all, "light_kg", 11.4);
  report_assert_number (all, "light_with_margin_kg", 12.11);
  report_assert_number (all, "x_m", x);
  report_assert_number (all, "y_m", 0);
  report_assert_number (all, "total_kg", 87.11);
  /* 2 m x 0.8 m x 0.15 m of water of 1000 kg/m3. */
  report_assert_number (all, "limit_kg", 240);
  report_assert_number (all, "left_kg", 240 - 87.11);
  /* Trimmed as she is, as the report on floating has her. */
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (all, "draught_fore_m")
                                      + json_object_get_double_member (all, "draught_aft_m"),
                                  2 * 0.08711 / 1.6, 1e-9);
  report_assert_number (all, "freeboard_m",
                        json_object_get_double_member (report_facts (afloat), "worst_freeboard_m"));
  g_assert_true (json_object_get_null_member (all, "target_kg"));
  g_assert_cmpuint (
      json_array_get_length (json_object_get_array_member (json_node_get_object (root), "cautions")), ==, 1);
}

static void
test_weights_balance_and_moments (void)
{
  g_autoptr (GbBoat) boat = small_build_new ();
  g_autoptr (JsonNode) root = report_json (boat, GB_REPORT_WEIGHTS);
  JsonObject *side = report_row (root, "parts", "name", "Side panel");
  JsonObject *total = report_row (root, "parts", "name", "total");

  report_assert_number (report_row (root, "balance", "name", "margin_estimated"), "mass_kg", 0.45);
  report_assert_number (report_row (root, "balance", "name", "margin_calculated"), "mass_kg", 0.26);
  report_assert_number (report_row (root, "balance", "name", "loads"), "mass_kg", 75);
  report_assert_number (report_row (root, "balance", "name", "left"), "mass_kg", 240 - 87.11);
  report_assert_number (report_row (root, "basis", "basis", "estimated"), "mass_kg", 3.0);
  report_assert_number (report_row (root, "basis", "basis", "calculated"), "share", 5.2 / 11.4);
  report_assert_number (report_row (root, "basis", "basis", "weighed"), "mass_kg", 3.2);
  report_assert_number (side, "moment_x_kg_m", 3.52);
  report_assert_number (side, "listed_kg", 3.0);
  report_assert_number (side, "ratio", 3.2 / 3.0);
  report_assert_number (report_row (root, "parts", "name", "Knee"), "moment_x_kg_m", 0.14);
  report_assert_number (report_row (root, "parts", "name", "Frames (2 off)"), "moment_x_kg_m", 0.28);
  report_assert_number (total, "moment_x_kg_m", 4.8 + 3.52 + 4.5 + 0.28);
  g_assert_true (json_object_get_null_member (report_row (root, "parts", "name", "Tiller"), "moment_x_kg_m"));
  report_assert_number (report_row (root, "weighings", "what", "Side panel"), "mass_kg", 3.2);
  g_assert_cmpstr (
      json_object_get_string_member (report_row (root, "weighings", "what", "Side panel"), "stands"), ==,
      "yes");
}

/* 11.4 kg and 0.71 kg of margin are over a target of 10 kg. */
static void
test_passed_limits_are_warnings (void)
{
  g_autoptr (GbBoat) boat = small_build_new ();
  g_autoptr (JsonNode) fine = report_json (boat, GB_REPORT_WEIGHTS), over = NULL;
  g_autofree char *text = NULL;
  JsonArray *warnings = json_object_get_array_member (json_node_get_object (fine), "warnings");

  g_assert_cmpuint (json_array_get_length (warnings), ==, 0);
  ((GbBuild *) gb_boat_get (boat, GB_RECORD_BUILD, 1))->target_mass = 10;
  over = report_json (boat, GB_REPORT_WEIGHTS);
  warnings = json_object_get_array_member (json_node_get_object (over), "warnings");
  g_assert_cmpuint (json_array_get_length (warnings), ==, 1);
  g_assert_nonnull (strstr (json_array_get_string_element (warnings, 0), "over the target of 10 kg"));
  text = report_text (boat, GB_REPORT_WEIGHTS, GB_FORMAT_TEXT);
  g_assert_nonnull (strstr (text, "\n! The finished boat"));
}

/* Materials --------------------------------------------------------------------------------------------------------- */

static void
test_materials (void)
{
  g_autoptr (GbBoat) boat = small_build_new ();
  g_autoptr (JsonNode) root = report_json (boat, GB_REPORT_MATERIALS);
  JsonArray *rows = json_object_get_array_member (json_node_get_object (root), "materials");
  JsonObject *ply = report_row (root, "materials", "name", "ply");

  /* What is not in use is not listed. */
  g_assert_cmpuint (json_array_get_length (rows), ==, 3);
  report_assert_number (ply, "density_kg_per_m3", 500);
  report_assert_number (ply, "mass_kg", 8);
  report_assert_number (ply, "parts", 2);
  g_assert_cmpstr (json_object_get_string_member (ply, "source"), ==, "weighed");
  g_assert_true (json_object_get_null_member (ply, "areal_mass_kg_per_m2"));
  report_assert_number (report_row (root, "materials", "name", "none"), "mass_kg", 3.4);
  report_assert_number (report_row (root, "materials", "name", "total"), "mass_kg", 11.4);
}

/* 2 m2 of cloth of 200 g/m2 in two layers is 0.8 kg, and as much resin again by a ratio of 1. */
static void
test_cloth_counts_with_its_resin (void)
{
  g_autoptr (GbBoat) boat = small_build_new ();
  g_autoptr (JsonNode) root = NULL;
  GbMaterial *cloth = (GbMaterial *) gb_record_new (GB_RECORD_MATERIAL);
  GbPart *part = (GbPart *) gb_record_new (GB_RECORD_PART);

  cloth->rec.id = 7;
  cloth->name = g_strdup ("cloth");
  cloth->measure = GB_MEASURE_AREAL;
  cloth->areal_mass = 0.2;
  gb_boat_take (boat, &cloth->rec);
  part->rec.id = 90;
  part->name = g_strdup ("Sheathing");
  part->takeoff = GB_TAKEOFF_COATING;
  part->coating = GB_COATING_CLOTH;
  part->material = 7;
  part->resin = 2;
  part->area = 2;
  part->coats = 2;
  gb_boat_take (boat, &part->rec);
  gb_boat_settle (boat);
  root = report_json (boat, GB_REPORT_MATERIALS);
  report_assert_number (report_row (root, "materials", "name", "cloth"), "mass_kg", 0.8);
  report_assert_number (report_row (root, "materials", "name", "not in use"), "mass_kg", 0.8);
  report_assert_number (report_row (root, "materials", "name", "total"), "mass_kg", 13);
  report_assert_number (report_row (root, "materials", "name", "total"), "parts", 6);
}

/* Money ------------------------------------------------------------------------------------------------------------- */

static void
test_purchases (void)
{
  g_autoptr (GbBoat) boat = small_build_new ();
  g_autoptr (JsonNode) root = report_json (boat, GB_REPORT_PURCHASES);
  JsonObject *ply = report_row (root, "purchases", "what", "6 mm sheet");
  JsonObject *clamps = report_row (root, "purchases", "what", "=clamps, wrong size");

  /* 2 x 52.80 less 5 %: 100.32. */
  g_assert_cmpint (json_object_get_int_member (ply, "total_minor"), ==, 10032);
  report_assert_number (ply, "discount", 0.05);
  g_assert_cmpstr (json_object_get_string_member (ply, "head"), ==, "Timber");
  g_assert_cmpstr (json_object_get_string_member (ply, "date"), ==, "2026-03-01");
  g_assert_cmpint (json_object_get_int_member (clamps, "total_minor"), ==, -1000);
  g_assert_cmpint (json_object_get_int_member (report_row (root, "purchases", "what", "total"), "total_minor"),
                   ==, 11532);
  g_assert_cmpint (json_object_get_int_member (report_facts (root), "returns_minor"), ==, -1000);
}

static void
test_money (void)
{
  g_autoptr (GbBoat) boat = small_build_new ();
  g_autoptr (JsonNode) root = report_json (boat, GB_REPORT_MONEY);
  JsonObject *timber = report_row (root, "heads", "head", "Timber");
  JsonObject *all = report_row (root, "heads", "head", "total");
  JsonObject *march = report_row (root, "course", "month", "2026-03");

  g_assert_cmpint (json_object_get_int_member (timber, "budget_minor"), ==, 20000);
  g_assert_cmpint (json_object_get_int_member (timber, "spent_minor"), ==, 10032);
  g_assert_cmpint (json_object_get_int_member (timber, "left_minor"), ==, 9968);
  g_assert_true (json_object_get_null_member (report_row (root, "heads", "head", "Rig"), "budget_minor"));
  /* 115.32 spent, 55.00 + 4 x 1.50 to buy, 20.00 allowed. */
  g_assert_cmpint (json_object_get_int_member (all, "forecast_minor"), ==, 19632);
  g_assert_cmpint (json_object_get_int_member (report_row (root, "to_buy", "name", "Knee"), "cost_minor"), ==,
                   600);
  g_assert_cmpint (json_object_get_int_member (march, "spent_minor"), ==, 9032);
  g_assert_cmpint (json_object_get_int_member (march, "so_far_minor"), ==, 11532);
}

/* Any build, any format --------------------------------------------------------------------------------------------- */

static void
test_names (void)
{
  for (guint k = 0; k < GB_N_REPORTS; k++)
    {
      g_assert_cmpint (gb_report_kind_by_name (gb_report_kind_name (k)), ==, k);
      g_assert_nonnull (gb_report_kind_label (k));
    }
  for (guint f = 0; f < GB_N_FORMATS; f++)
    {
      g_assert_cmpint (gb_report_format_by_name (gb_report_format_name (f)), ==, f);
      g_assert_nonnull (gb_report_format_type (f));
    }
  g_assert_cmpint (gb_report_kind_by_name ("nothing"), ==, -1);
  g_assert_cmpint (gb_report_format_by_name ("nothing"), ==, -1);
  g_assert_cmpstr (gb_report_format_ending (GB_FORMAT_TEXT), ==, "txt");
}

static void
make_all (const GbBoat *boat)
{
  for (guint k = 0; k < GB_N_REPORTS; k++)
    for (guint f = 0; f < GB_N_FORMATS; f++)
      {
        g_autoptr (GBytes) bytes = report_make (boat, k, f);

        g_assert_cmpuint (g_bytes_get_size (bytes), >, 20);
      }
}

static void
test_empty_build (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();

  make_all (boat);
}

static void
test_generated_builds (void)
{
  for (guint32 seed = 1; seed <= 4; seed++)
    {
      g_autoptr (GbBoat) boat = generate_boat (60 * seed, seed);

      ((GbBuild *) gb_boat_get (boat, GB_RECORD_BUILD, 1))->units
          = seed % 2 == 0 ? GB_UNITS_FEET : GB_UNITS_METRIC;
      make_all (boat);
    }
}

/* Read by pdftotext: each part's name on some page, the caution on every one. */
static void
test_two_thousand_parts_on_paper (void)
{
  g_autoptr (GbBoat) boat = generate_boat (2000, 7);
  g_autoptr (GBytes) pdf = report_make (boat, GB_REPORT_WEIGHTS, GB_FORMAT_PDF);
  g_autofree char *path = g_test_build_filename (G_TEST_BUILT, "reports", "weights-2000.pdf", NULL);
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;
  g_auto (GStrv) pages = NULL;
  const char *argv[] = { "pdftotext", "-layout", path, "-", NULL };

  g_assert_true (
      g_file_set_contents (path, g_bytes_get_data (pdf, NULL), (gssize) g_bytes_get_size (pdf), &error));
  g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &text, NULL, NULL, &error);
  g_assert_no_error (error);
  pages = g_strsplit (text, "\f", -1);
  g_assert_cmpuint (g_strv_length (pages), >, 30);
  for (guint i = 0; pages[i + 1] != NULL; i++)
    {
      g_autofree char *number = g_strdup_printf ("page %u of %u", i + 1, g_strv_length (pages) - 1);

      g_assert_nonnull (strstr (pages[i], number));
      g_assert_nonnull (strstr (pages[i], "buoyancy aid"));
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reports/parts-as-text", test_parts_as_text);
  g_test_add_func ("/reports/parts-as-json", test_parts_as_json);
  g_test_add_func ("/reports/parts-as-csv-come-back", test_parts_as_csv_come_back);
  g_test_add_func ("/reports/weights", test_weights);
  g_test_add_func ("/reports/weights-balance-and-moments", test_weights_balance_and_moments);
  g_test_add_func ("/reports/passed-limits-are-warnings", test_passed_limits_are_warnings);
  g_test_add_func ("/reports/materials", test_materials);
  g_test_add_func ("/reports/cloth-counts-with-its-resin", test_cloth_counts_with_its_resin);
  g_test_add_func ("/reports/purchases", test_purchases);
  g_test_add_func ("/reports/money", test_money);
  g_test_add_func ("/reports/names", test_names);
  g_test_add_func ("/reports/empty-build", test_empty_build);
  g_test_add_func ("/reports/generated-builds", test_generated_builds);
  g_test_add_func ("/reports/two-thousand-parts-on-paper", test_two_thousand_parts_on_paper);
  return g_test_run ();
}
