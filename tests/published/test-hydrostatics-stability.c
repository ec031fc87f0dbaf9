/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Final KG, lists, righting levers and free surfaces against worked examples: ships are loaded, come to rest,
 * and are turned. */

#include "ship-fixture.h"

#include "engine/inclining.h"

typedef struct
{
  double mass, kg;
} Weight;

/* A ship with the metacentre @km (0: not said) and these weights in her; unloaded ones are negative. */
static GbFloater *
loaded_ship (double water, double km, const Weight *weights, guint n)
{
  double mass = 0;
  GbFloater *ship;

  for (guint i = 0; i < n; i++)
    mass += weights[i].mass;
  ship = round_ship (water, mass, km > 0 ? km : 10);
  for (guint i = 0; i < n; i++)
    load_at (ship, weights[i].mass, 0, weights[i].kg);
  return ship;
}
#define LOADED_SHIP(water, km, ...)                                                                          \
  loaded_ship (water, km, (const Weight[]){ __VA_ARGS__ },                                                   \
               sizeof ((const Weight[]){ __VA_ARGS__ }) / sizeof (Weight))

static void
test_final_kg (void)
{
  /* DB p. 95-96 (inputs from memory): 6000 t at KG 6 m; 1000 t at 2.5, 500 at 3.5, 750 at 9.0 come, 450 at
   * 0.6, 800 at 3.0 go; KM 7.33. Printed: 44330/7000 = 6.33 m, GM 1.00 m. */
  g_autoptr (GbFloater) db95 = LOADED_SHIP (SEA, 7.33, { 6000, 6 }, { 1000, 2.5 }, { 500, 3.5 }, { 750, 9 },
                                            { -450, 0.6 }, { -800, 3 });
  /* A nautical school's page: 8800 t at 6.2, 200 t at 1.7 come: 6.1 m; 12600 t at 6, 600 t at 11 go: 5.75 m;
   * 9900 t at 4, 100 t at 15 come: 4.11 m. */
  g_autoptr (GbFloater) low = LOADED_SHIP (SEA, 0, { 8800, 6.2 }, { 200, 1.7 });
  g_autoptr (GbFloater) off = LOADED_SHIP (SEA, 0, { 12600, 6 }, { -600, 11 });
  g_autoptr (GbFloater) high = LOADED_SHIP (SEA, 0, { 9900, 4 }, { 100, 15 });

  assert_near (db95->mass, 7000, 1e-9);
  assert_near (db95->moment.z, 44330, 1e-9);
  assert_near (kg_of (db95), 6.33, 0.005);
  assert_near (gm_of (db95), 1.00, 0.005);
  assert_near (kg_of (low), 6.1, 1e-9);
  assert_near (kg_of (off), 5.75, 1e-9);
  assert_near (kg_of (high), 4.11, 1e-9);
}

static void
test_final_gm_in_feet (void)
{
  /* NS question 27: light 3250 tons at 20 ft; 1000 at 24, 1500 at 22, 1250 at 21, 1100 at 19, 900 at 23, 600
   * at 25, 400 at 18 come; KM 22 ft. Printed: GM 0.8 ft. Question 28: then 400 at 20, 300 at 22, 500 at 23,
   * 600 at 24 go; printed: 1.1 ft. */
  g_autoptr (GbFloater) loaded
      = LOADED_SHIP (NS_SEA, 22, { 3250, 20 }, { 1000, 24 }, { 1500, 22 }, { 1250, 21 }, { 1100, 19 },
                     { 900, 23 }, { 600, 25 }, { 400, 18 });

  assert_near (kg_of (loaded), 212050 / 10000.0, 1e-9);
  assert_near (gm_of (loaded), 0.8, 0.01);
  load_at (loaded, -400, 0, 20);
  load_at (loaded, -300, 0, 22);
  load_at (loaded, -500, 0, 23);
  load_at (loaded, -600, 0, 24);
  assert_near (kg_of (loaded), 171550 / 8200.0, 1e-9);
  assert_near (gm_of (loaded), 1.1, 0.025);
}

/* Moved to starboard by @across and up by @up, wherever it was. */
static void
move_weight (GbFloater *ship, double mass, double across, double up)
{
  load_at (ship, -mass, 0, 0);
  load_at (ship, mass, -across, up);
}

static void
test_list_after_loading (void)
{
  /* DB p. 116-117: 8000 t at KG 7.6, KM 8.70; 250 t come at KG 6.1, 7.6 m to starboard; 300 t at 0.6, 6.1 m
   * to port; 50 t at 1.2, 4.6 m to port go. Printed: KG 62445/8500 = 7.35, GM 1.35, 2130 - 1830 = 300 t m to
   * starboard, GG1 0.035 m, list 1 deg 30 min; with those figures unrounded it is 1.49. */
  g_autoptr (GbFloater) ship = LOADED_SHIP (SEA, 8.7, { 8000, 7.6 });

  load_at (ship, 250, -7.6, 6.1);
  load_at (ship, 300, 6.1, 0.6);
  load_at (ship, -50, 4.6, 1.2);
  assert_near (ship->mass, 8500, 1e-9);
  assert_near (ship->moment.z, 62445, 1e-9);
  assert_near (kg_of (ship), 7.35, 0.005);
  assert_near (ship->moment.y, -300, 1e-9);
  assert_near (ship->moment.y / ship->mass, -0.035, 0.0005);
  assert_near (list_of (ship), 1.49, 0.01);
}

static void
test_lists_by_moved_weights (void)
{
  static const struct
  {
    double mass, kg, km, moved, across, up;
    double gm, list, off_list;
  } cases[] = {
    /* DB 6th edition, exercise 14.4: list 9 deg 27 min. */
    { 1500, 2.7, 3.1, 10, 10, 0, 0.4, 9 + 27 / 60.0, 0.02 },
    /* The same, exercise 14.2: for a list of 2 degrees 15 t are moved 4.2 m. */
    { 4515, 5.4, 5.8, 15, 4.2, 0, 0.4, 2, 0.01 },
    /* A nautical school's page: 5000 t, GM 0.3 (the height of G is not said); 20 t moved 5 m: 3.8 degrees. */
    { 5000, 5.7, 6, 20, 5, 0, 0.3, 3.8, 0.03 },
    /* The same: 200 t moved 10 m down and 5 m to starboard: KG 6.8, GM 0.6, 9.46 degrees. */
    { 10000, 7, 7.4, 200, 5, -10, 0.6, 9.46, 0.01 },
    /* The same: GM 1.2 (the height of G is not said), 100 t moved 12 m across and 1.5 m up: GM 1.1875, 4.81
       degrees. */
    { 12000, 5, 6.2, 100, 12, 1.5, 1.1875, 4.81, 0.01 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GbFloater) ship = LOADED_SHIP (SEA, cases[i].km, { cases[i].mass, cases[i].kg });

      move_weight (ship, cases[i].moved, 0, cases[i].up);
      assert_near (gm_of (ship), cases[i].gm, 1e-4);
      move_weight (ship, cases[i].moved, cases[i].across, 0);
      assert_near (list_of (ship), cases[i].list, cases[i].off_list);
    }
}

static void
test_righting_moments (void)
{
  /* DB p. 130: 6000 t, KB 3, KM 6, KG 5.5 m, wall-sided, 25 degrees: GZ 0.8262 sin 25 = 0.35 m, 2100 t m. */
  double draught = 6, breadth = sqrt (3 * 12 * draught);
  g_autoptr (GbFloater) ship = box_ship (SEA, 6000 / (SEA * draught * breadth), breadth, 2 * draught);
  /* DB p. 130-131: box 65 x 12 x 8 m, KG 4 m, draught 4 m: 3198 t; at 5 degrees GZ 0.0872 m, 278.9 t m; at 25
   * degrees 0.560 m, 1792 t m. */
  g_autoptr (GbFloater) box = box_ship (SEA, 65, 12, 8);
  /* DB chapter 14 (from memory): 4000 t, KG 5.5, KM 6.0, 5 degrees: 174.4 t m. */
  g_autoptr (GbFloater) small = LOADED_SHIP (SEA, 6, { 4000, 5.5 });

  load_at (ship, 6000, 0, 5.5);
  assert_near (lever_at (ship, 25), 0.8262 * sin (25 * DEGREE), 1e-4);
  assert_near (lever_at (ship, 25) * ship->mass, 2100, 6);

  load_at (box, 3198, 0, 4);
  assert_near (rest_of (box, 0, GB_HOLD_BOTH).height, 4, 1e-9);
  assert_near (gm_of (box), 1, 1e-4);
  assert_near (sin (5 * DEGREE) * gm_of (box), 0.0872, 0.0001);
  assert_near (sin (5 * DEGREE) * gm_of (box) * 3198, 278.9, 0.2);
  /* By its metacentre; the lever itself has a little more. */
  assert_near (lever_at (box, 5), sin (5 * DEGREE) * (1 + 1.5 * tan (5 * DEGREE) * tan (5 * DEGREE)), 1e-9);
  assert_near (lever_at (box, 25), 0.560, 0.0005);
  assert_near (lever_at (box, 25) * 3198, 1792, 2);

  assert_near (lever_at (small, 5) * 4000, 174.4, 0.15);
}

/* DB p. 230-231 (inputs from memory): a log 6 x 3 x 3 m of relative density 0.4 in fresh water: draught 1.2,
 * KB 0.6, BM 0.625, KM 1.225, KG 1.5, GM -0.275 m; by the wall-sided formula tan = sqrt (0.55/0.625) =
 * 0.9381, a loll of 43 deg 10 min. The log's own bottom comes out of the water before that, so the formula is
 * held to a body with its waterplane and volume whose sides go deeper; the log alone gives GM. */
static void
test_loll (void)
{
  static const GbVec3 deep[] = { { 0, -1.5, -1.6 }, { 0, -1, -1.6 },  { 0, -1, -1 },   { 0, 1, -1 },
                                 { 0, 1, -1.6 },    { 0, 1.5, -1.6 }, { 0, 1.5, 1.8 }, { 0, -1.5, 1.8 } };
  g_autoptr (GbFloater) log = box_ship (FRESH, 6, 3, 3);
  g_autoptr (GbFloater) walls = float_body (FRESH, new_prism (6, deep, G_N_ELEMENTS (deep)));
  double kb;
  GbFloatSums sums;

  load_at (log, 0.4 * 54, 0, 1.5);
  assert_near (rest_of (log, 0, GB_HOLD_BOTH).height, 1.2, 1e-9);
  assert_near (gm_of (log), -0.275, 1e-4);

  load_at (walls, 0.4 * 54, 0, 0);
  gb_floater_sums (walls, rest_of (walls, 0, GB_HOLD_BOTH), &sums);
  kb = sums.hulls.moment.z / sums.hulls.volume;
  walls->moment.z = walls->mass * (kb + 0.625 + 0.275);
  assert_near (gm_of (walls), -0.275, 1e-4);
  assert_near (fabs (list_of (walls)), 43 + 10 / 60.0, 0.01);
  /* From the other side she lolls the other way. */
  assert_near (gb_attitude_heel (rest_of (walls, -0.2, GB_HOLD_NOTHING)) / DEGREE, -(43 + 10 / 60.0), 0.01);
}

/* An exam question: 12250 t, KM 8, KB 3.8, KG 8 m (no GM), 2 t moved 12 m, wall-sided: tan3 = 2 w d/(W
 * BM), 5.58 degrees. */
static void
test_list_without_gm (void)
{
  double draught = 2 * 3.8, breadth = sqrt (12 * draught * (8 - 3.8));
  g_autoptr (GbFloater) ship = box_ship (SEA, 12250 / (SEA * draught * breadth), breadth, 2 * draught);

  load_at (ship, 12250, 0, 8);
  assert_near (gm_of (ship), 0, 1e-4);
  move_weight (ship, 2, 12, 0);
  assert_near (list_of (ship), 5.58, 0.01);
}

/* DB p. 206: box 150 x 24 m at 5 m, GM 0.9 m: KG 11.2. 20 m bilged amidships: GM 0.005 m by KB 2.885 and
 * BM 8.32. A DB exercise: box 40 x 6 m at 2 m, GM 0.6 m, 10 m bilged: GM 0.558 m. */
static void
test_bilged_boxes (void)
{
  static const struct
  {
    double length, breadth, draught, lost, kg, gm, bilged_gm, tolerance;
  } cases[] = {
    { 150, 24, 5, 20, 11.2, 0.9, 0.005, 0.0005 },
    { 40, 6, 2, 10, 1 + 1.5 - 0.6, 0.6, 0.558, 0.001 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double l = cases[i].length, b = cases[i].breadth / 2, part = (l - cases[i].lost) / 2;
      double mass = l * 2 * b * cases[i].draught * SEA;
      g_autoptr (GbFloater) sound = box_ship (SEA, l, 2 * b, 3 * cases[i].draught);
      g_autoptr (GbFloater) bilged = float_body (
          SEA, new_box ((GbVec3){ -l / 2, -b, 0 }, (GbVec3){ part - l / 2, b, 3 * cases[i].draught }));
      g_autoptr (GbMesh) fore
          = new_box ((GbVec3){ l / 2 - part, -b, 0 }, (GbVec3){ l / 2, b, 3 * cases[i].draught });
      g_autoptr (GbBody) body = gb_body_new (fore);

      gb_floater_add_hull (bilged, body, FALSE);
      load_at (sound, mass, 0, cases[i].kg);
      load_at (bilged, mass, 0, cases[i].kg);
      assert_near (gm_of (sound), cases[i].gm, 1e-4);
      assert_near (gm_of (bilged), cases[i].bilged_gm, cases[i].tolerance);
    }
}

/* DB p. 195, example 1: 8153.75 t, KM 8, KG 7.5; a tank 15 x 10 x 2 m full of salt water is pumped out to
 * half (153.75 t from KG 1.5). G rises 0.115 m, the free surface takes 0.160 m, GM is 0.225 m. */
static void
test_free_surface (void)
{
  const GbVec3 centre = { 0, 0, 1 }, size = { 15, 10, 2 };
  g_autoptr (GbFloater) full = LOADED_SHIP (SEA, 8, { 8153.75, 7.5 }, { -307.5, 1 });
  g_autoptr (GbFloater) half = LOADED_SHIP (SEA, 8, { 8153.75, 7.5 }, { -307.5, 1 });
  GbFloatSums sums;

  gb_floater_add_tank (full, centre, size, SEA, 307.5, 1);
  gb_floater_add_tank (half, centre, size, SEA, 153.75, 1);
  assert_near (kg_of (full), 7.5, 1e-9);
  assert_near (gm_of (full), 0.5, 1e-4);
  gb_floater_sums (half, gb_attitude (0, 0, 8), &sums);
  assert_near (sums.mass, 8000, 1e-9);
  assert_near (sums.gravity.z, 7.5 + 0.115, 0.0005);
  assert_near (sums.free_surfaces.yy / sums.mass, 0.160, 0.0005);
  assert_near (gm_of (half), 0.225, 0.0005);
}

/* A deck officers' exam question: 750 tons, a slack hold 60 ft long and 31 ft wide: GM is less by 5.67 ft. DB
 * p. 193-195: walls that divide a tank in n across make the loss n2 times less. */
static void
test_slack_hold (void)
{
  for (guint n = 1; n <= 3; n++)
    {
      g_autoptr (GbFloater) ship = gb_floater_new (NS_SEA);
      double width = 31.0 / n, water = 60 * 31 * 1 * NS_SEA;
      GbFloatSums sums;

      load_at (ship, 750 - water, 0, 10);
      for (guint i = 0; i < n; i++)
        gb_floater_add_tank (ship, (GbVec3){ 0, (i + 0.5) * width - 15.5, 5 }, (GbVec3){ 60, width, 4 },
                             NS_SEA, water / n, 1);
      gb_floater_sums (ship, gb_attitude (0, 0, 0), &sums);
      assert_near (sums.mass, 750, 1e-9);
      assert_near (sums.free_surfaces.yy / sums.mass, 5.67 / (n * n), 0.005);
    }
}

/* DB chapter 26 (from memory): 8000 t, 25 t moved 15 m, a plumb line of 4 m goes out 20 cm, KM 7 m: GM
 * 0.9375, KG 6.06 m. The ship that has this KG is inclined, and the reading leads back to it. */
static void
test_inclining (void)
{
  g_autoptr (GbFloater) ship = LOADED_SHIP (SEA, 7, { 8000, 7 - 0.9375 });
  double moment = 25 * 15, tangent, gm, gm_sd;

  move_weight (ship, 25, 15, 0);
  tangent = tan (list_of (ship) * DEGREE);
  assert_near (4 * tangent, 0.20, 1e-4);
  g_assert_true (gb_inclining_gm (&moment, &tangent, 1, ship->mass, &gm, &gm_sd));
  assert_near (gm, 0.9375, 1e-4);
  assert_near (7 - gm, 6.06, 0.005);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/hydrostatics/stability/final-kg", test_final_kg);
  g_test_add_func ("/hydrostatics/stability/final-gm-in-feet", test_final_gm_in_feet);
  g_test_add_func ("/hydrostatics/stability/list-after-loading", test_list_after_loading);
  g_test_add_func ("/hydrostatics/stability/lists-by-moved-weights", test_lists_by_moved_weights);
  g_test_add_func ("/hydrostatics/stability/righting-moments", test_righting_moments);
  g_test_add_func ("/hydrostatics/stability/loll", test_loll);
  g_test_add_func ("/hydrostatics/stability/list-without-gm", test_list_without_gm);
  g_test_add_func ("/hydrostatics/stability/bilged-boxes", test_bilged_boxes);
  g_test_add_func ("/hydrostatics/stability/free-surface", test_free_surface);
  g_test_add_func ("/hydrostatics/stability/slack-hold", test_slack_hold);
  g_test_add_func ("/hydrostatics/stability/inclining", test_inclining);
  return g_test_run ();
}
