/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The report of floating, of a box that is worked by hand.
 *
 * 2 m x 1 m x 0.4 m in water of 1000 kg/m3; 10 kg of wood of 500 kg/m3 at z 0.2. With 90 kg at z 0.3: 100 kg,
 * 50 mm deep, 350 mm free; KB 25 mm, BM 1 / (12 x 0.05) = 1.6667 m, KG 0.29 m, GM 1.4017 m; 20 kg a
 * centimetre. 500 kg at the accepted 150 mm, 800 kg at the brim. "Far too much" is 900 kg. Swamped, 10 kg of
 * that wood carry 20 kg. */

#include "report-testing.h"

#include "store/text-form.h"

#include <math.h>
#include <string.h>

static const char text[] =
    "{ \"garboard\": 1,"
    "  \"build\": { \"name\": \"Crate\", \"water\": \"given\", \"water_density\": 1000, \"freeboard\": 0.15, "
    "\"margin_estimated\": 0 },"
    "  \"material\": [ { \"id\": 1, \"name\": \"plank\", \"family\": \"wood\", \"density\": 500, \"source\": "
    "\"weighed\" } ],"
    "  \"hull\": [ { \"id\": 1, \"name\": \"Crate\", \"form\": \"block\", \"length\": 2, \"width\": 1, "
    "\"height\": 0.4 } ],"
    "  \"part\": [ { \"id\": 1, \"name\": \"Planks\", \"takeoff\": \"lump\", \"material\": 1, \"mass\": 10, "
    "\"x\": 1, \"z\": 0.2 } ],"
    "  \"condition\": ["
    "    { \"id\": 1, \"name\": \"Bricks\", \"heeling_moment\": 20, \"load\": [ { \"name\": \"Pallet\", "
    "\"kind\": \"cargo\","
    "      \"mass\": 90, \"x\": 1, \"z\": 0.3 } ] },"
    "    { \"id\": 2, \"name\": \"Far too much\", \"load\": [ { \"name\": \"Stone\", \"kind\": \"cargo\", "
    "\"mass\": 900, \"x\": 1, \"z\": 0.3 } ] } ],"
    "  \"inclining\": [ { \"date\": \"2026-03-01\", \"condition\": 1, \"pendulum\": 0.5, \"shift\": ["
    "      { \"mass\": 5, \"distance\": 0.4, \"deflection\": 0.01 } ] } ],"
    "  \"tub\": [ { \"name\": \"Bath\", \"condition\": 1, \"scale\": 10, \"water_density\": 1000, \"mass\": "
    "0.11, \"x\": 0.1, \"z\": 0.029,"
    "      \"fore_draught\": 0.0055, \"aft_draught\": 0.0055 } ] }";

static GbBoat *
crate (void)
{
  g_autoptr (GError) error = NULL;
  GbBoat *boat = gb_text_form_read (text, -1, &error);

  g_assert_no_error (error);
  return boat;
}

static gboolean
is_null (JsonObject *row, const char *key)
{
  return json_object_get_null_member (row, key);
}

static void
test_conditions (void)
{
  g_autoptr (GbBoat) boat = crate ();
  g_autoptr (JsonNode) root = report_json (boat, GB_REPORT_AFLOAT);
  JsonObject *bricks = report_row (root, "conditions", "condition", "Bricks"),
             *stone = report_row (root, "conditions", "condition", "Far too much");
  JsonObject *room = report_row (root, "room", "condition", "Bricks"),
             *water = report_row (root, "water", "condition", "Bricks");
  JsonObject *stiff = report_row (root, "stiffness", "condition", "Bricks");

  g_assert_cmpstr (json_object_get_string_member (report_facts (root), "worst"), ==, "Far too much");
  g_assert_cmpstr (json_object_get_string_member (bricks, "state"), ==, "floats");
  report_assert_number (bricks, "total_kg", 100);
  report_assert_near (bricks, "draught_fore_m", 0.05, 1e-8);
  report_assert_near (bricks, "draught_mid_m", 0.05, 1e-8);
  report_assert_near (bricks, "draught_aft_m", 0.05, 1e-8);
  report_assert_near (bricks, "trim_rad", 0, 1e-8);
  report_assert_near (bricks, "freeboard_m", 0.35, 1e-8);
  g_assert_cmpstr (json_object_get_string_member (stone, "state"), ==, "sinks");
  g_assert_true (is_null (stone, "draught_mid_m"));
  report_assert_near (room, "limit_kg", 500, 1e-6);
  report_assert_near (room, "room_kg", 400, 1e-6);
  report_assert_near (room, "room_x_m", 1, 1e-6);
  report_assert_near (room, "reserve_m3", 0.7, 1e-6);
  report_assert_near (water, "per_cm_kg", 20, 1e-6);
  report_assert_near (water, "lcb_m", 1, 1e-6);
  report_assert_near (stiff, "gm_m", 0.025 + 1 / 0.6 - 0.29, 1e-6);
  report_assert_near (stiff, "heel_moment_per_deg_kg_m", 100 * (0.025 + 1 / 0.6 - 0.29) * sin (G_PI / 180),
                      1e-5);
}

static void
test_loads_and_freeboards (void)
{
  g_autoptr (GbBoat) boat = crate ();
  g_autoptr (JsonNode) root = report_json (boat, GB_REPORT_AFLOAT);
  JsonObject *pallet = report_row (root, "loads", "name", "Pallet"),
             *lowest = report_row (root, "freeboards", "name", "lowest");

  g_assert_cmpstr (json_object_get_string_member (pallet, "condition"), ==, "Bricks");
  g_assert_cmpstr (json_object_get_string_member (pallet, "kind"), ==, "cargo");
  report_assert_number (pallet, "weight_kg", 90);
  g_assert_cmpstr (json_object_get_string_member (lowest, "edge"), ==, "Crate");
  report_assert_near (lowest, "freeboard_m", 0.35, 1e-8);
}

static void
test_stability (void)
{
  g_autoptr (GbBoat) boat = crate ();
  g_autoptr (JsonNode) root = report_json (boat, GB_REPORT_AFLOAT);
  JsonObject *side = report_row (root, "sides", "name", "starboard"),
             *port = report_row (root, "sides", "name", "port");
  JsonObject *lever = report_row (root, "levers", "name", "10°");
  JsonObject *edge = report_row (root, "immersions", "name", "Crate");
  double t = tan (G_PI / 18);

  report_assert_near (side, "gm_m", 1.4017, 1e-3);
  report_assert_number (side, "moment_kg_m", 20);
  g_assert_true (is_null (port, "moment_kg_m"));
  /* Until a chine comes out a wall-sided box rights by sin (GM + BM tan2 / 2), here to tan = 0.1 with BM as
   * the chine comes out at 2 x 0.05 / 1; at 10 degrees a triangle is under water: GZ by its own geometry. Its
   * breadth b = sqrt (2 A / t), area A 0.05 m2. */
  {
    double breadth = sqrt (2 * 0.05 / t), y = 0.5 - breadth / 3, z = breadth * t / 3;

    report_assert_near (lever, "lever_m", y * cos (G_PI / 18) - (0.29 - z) * sin (G_PI / 18), 1e-6);
  }
  /* The edge goes under where 0.05 m2 fill the triangle below the diagonal of 0.4 m: breadth 2 x 0.05 / 0.4 =
   * 0.25 m. */
  report_assert_near (edge, "starboard_rad", atan2 (0.4, 0.25), 1e-3);
  /* Water comes in before she would go over. */
  g_assert_cmpfloat (json_object_get_double_member (side, "dry_area_m_rad"), <,
                     json_object_get_double_member (side, "area_m_rad"));
  g_assert_cmpfloat (json_object_get_double_member (side, "dry_greatest_m"), <=,
                     json_object_get_double_member (side, "greatest_m"));
}

static void
test_swamped (void)
{
  g_autoptr (GbBoat) boat = crate ();
  g_autoptr (JsonNode) root = report_json (boat, GB_REPORT_AFLOAT);
  JsonObject *aboard = report_row (root, "swamped", "name", "aboard"),
             *own = report_row (root, "foam", "name", "own");
  JsonObject *capacity = report_row (root, "capacity", "condition", "Bricks");

  g_assert_cmpstr (json_object_get_string_member (aboard, "state"), ==, "sinks");
  report_assert_near (aboard, "weight_kg", 100, 1e-6);
  report_assert_near (aboard, "most_kg", 20, 1e-6);
  g_assert_cmpfloat (json_object_get_double_member (own, "volume_m3"), >, 0);
  g_assert_cmpstr (json_object_get_string_member (capacity, "kind"), ==, "by_hand");
  /* 0.8 m3 of water of 62.4 lb/ft3 less 10 kg of boat, 3/10 of it. */
  report_assert_near (capacity, "weight_capacity_kg", 0.3 * (0.8 * 62.4 * GB_POUND / GB_CUBIC_FOOT - 10),
                      1e-6);
  report_assert_number (report_row (root, "rule_lines", "material", "plank"), "dry_kg", 10);
}

static void
test_measured (void)
{
  g_autoptr (GbBoat) boat = crate ();
  g_autoptr (JsonNode) root = report_json (boat, GB_REPORT_AFLOAT);
  JsonObject *inclined = report_row (root, "inclining", "condition", "Bricks"),
             *tub = report_row (root, "tubs", "test", "Bath");
  JsonObject *wanted = report_row (root, "wanted_models", "test", "Bath");

  /* 5 x 0.4 / (100 x 0.01 / 0.5) */
  report_assert_near (inclined, "gm_m", 1, 1e-6);
  g_assert_true (is_null (inclined, "gm_sd_m")); /* one reading */
  report_assert_near (tub, "mass_kg", 110, 1e-6);
  report_assert_near (tub, "draught_fore_m", 0.055, 1e-9);
  report_assert_near (tub, "draught_fore_computed_m", 0.05, 1e-6);
  report_assert_near (wanted, "mass_kg", 0.1, 1e-9);
  report_row (root, "explanations", "test", "Bath");
}

static void
assert_holds (const char *all, const char *words)
{
  if (strstr (all, words) == NULL)
    g_error ("'%s' is not in:\n%s", words, all);
}

static void
test_as_text (void)
{
  g_autoptr (GbBoat) boat = crate ();
  g_autofree char *shown = report_text (boat, GB_REPORT_AFLOAT, GB_FORMAT_TEXT);

  assert_holds (shown, "Far too much: She sinks: 910 kg all up, 800 kg floats her.");
  assert_holds (shown, "buoyancy aid");
  assert_holds (shown, "Swamp her on purpose");
  assert_holds (shown, "33 CFR part 183");
  assert_holds (shown, "Froude's law");
}

/* Without them, what needs a study is left out, and the rest is there. */
static void
test_without_studies (void)
{
  g_autoptr (GbBoat) boat = crate ();
  g_autoptr (GbFindings) findings = gb_findings_new ();
  g_autoptr (GBytes) bytes = NULL;
  g_autofree char *shown = NULL;
  g_autoptr (GError) error = NULL;

  gb_findings_find (findings, boat, GB_TOUCHED_ALL, 740000);
  bytes = gb_report_make (GB_REPORT_AFLOAT, GB_FORMAT_TEXT, boat, findings, NULL, 740000, &error);
  g_assert_no_error (error);
  shown = g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
  assert_holds (shown, "Freeboard along each edge");
  g_assert_null (strstr (shown, "Righting levers"));
  g_assert_null (strstr (shown, "33 CFR"));
}

/* A build without a hull says so once, and shows no table that has nothing in it. */
static void
test_nothing_there (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_autofree char *shown = report_text (boat, GB_REPORT_AFLOAT, GB_FORMAT_TEXT);
  const char *hull = strstr (shown, "There is no hull yet");

  g_assert_nonnull (hull);
  g_assert_null (strstr (hull + 1, "There is no hull yet"));
  g_assert_null (strstr (shown, "---"));
  g_assert_null (strstr (shown, "There she"));
  for (int format = 0; format < GB_N_FORMATS; format++)
    {
      g_autofree char *any = report_text (boat, GB_REPORT_AFLOAT, (GbReportFormat) format);

      g_assert_cmpstr (any, !=, "");
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/report-afloat/conditions", test_conditions);
  g_test_add_func ("/report-afloat/loads-and-freeboards", test_loads_and_freeboards);
  g_test_add_func ("/report-afloat/stability", test_stability);
  g_test_add_func ("/report-afloat/swamped", test_swamped);
  g_test_add_func ("/report-afloat/measured", test_measured);
  g_test_add_func ("/report-afloat/text", test_as_text);
  g_test_add_func ("/report-afloat/nothing-there", test_nothing_there);
  g_test_add_func ("/report-afloat/without-studies", test_without_studies);
  return g_test_run ();
}
