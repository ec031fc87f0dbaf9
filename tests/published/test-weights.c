/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Weight-and-moment examples of handbooks, worked anew by the roll-up: each is built as a boat of parts with
 * the masses and arms that are printed, rolled up, and must come out as the handbook has it, within half a
 * unit of the last figure printed.
 *
 * What is moved or taken off is a part of its own from the start: the rest is what the example gives for the
 * whole less those, so that the boat before the change must come out as given too.
 *
 * Sources:
 *   DB   Derrett and Barrass, Ship Stability for Masters and Mates, 5th ed., 1999
 *   NS   Nicholls's Seamanship and Nautical Knowledge (long tons and feet)
 *   PHAK FAA-H-8083-25, Pilot's Handbook of Aeronautical Knowledge
 *   WBH  FAA-H-8083-1, Aircraft Weight and Balance Handbook
 *   FTP, NSP  a flight training page and a nautical school page on the web
 * 'from memory' marks what was not read again in the source; the printed answer fits it. */

#include "../engine/parts-fixture.h"
#include "engine/rollup.h"

#define POUND 0.45359237 /* exact: international yard and pound agreement, 1959 */
#define LONG_TON (2240 * POUND)
#define TONNE 1000.0
#define INCH 0.0254
#define FOOT 0.3048

#define MAX_ITEMS 10

/* A mass and how far out it is: vertically, along, whatever the example is about. 0 ends a list. */
typedef struct
{
  double mass, arm;
} Item;

typedef struct
{
  const char *name;
  double mass_unit, arm_unit;
  Item whole;          /* as it is given; a mass of 0: only what is added */
  Item out[MAX_ITEMS]; /* taken off, or moved from */
  Item in[MAX_ITEMS];  /* added, or moved to */
  Item answer;         /* as printed */
  double arm_tolerance;
} Example;

/* clang-format off */
static const Example examples[] = {
  { "DB p. 95: loads and discharges, final KG 6.33 m (inputs from memory)",
    TONNE, 1, { 6000, 6 },
    { { 450, 0.6 }, { 800, 3.0 } }, { { 1000, 2.5 }, { 500, 3.5 }, { 750, 9.0 } },
    { 7000, 6.33 }, 0.005 },
  { "NSP: 200 t loaded at 1.7 m, KG 6.1 m",
    TONNE, 1, { 8800, 6.2 },
    { { 0 } }, { { 200, 1.7 } },
    { 9000, 6.1 }, 0 },
  { "NSP: 600 t discharged at 11 m, KG 5.75 m",
    TONNE, 1, { 12600, 6 },
    { { 600, 11 } }, { { 0 } },
    { 12000, 5.75 }, 0 },
  { "NSP: 100 t loaded at 15 m, KG 4.11 m",
    TONNE, 1, { 9900, 4 },
    { { 0 } }, { { 100, 15 } },
    { 10000, 4.11 }, 0 },
  { "NS question 27: KM 22 ft, GM 0.8 ft",
    LONG_TON, FOOT, { 3250, 20 },
    { { 0 } },
    { { 1000, 24 }, { 1500, 22 }, { 1250, 21 }, { 1100, 19 }, { 900, 23 }, { 600, 25 }, { 400, 18 } },
    { 10000, 22 - 0.8 }, 0.05 },
  { "NS question 28: then 1800 tons discharged, GM 1.1 ft",
    LONG_TON, FOOT, { 10000, 212050.0 / 10000 },
    { { 400, 20 }, { 300, 22 }, { 500, 23 }, { 600, 24 } }, { { 0 } },
    { 8200, 22 - 1.1 }, 0.05 },
  { "PHAK fig. 10-5: 3320 lb at 84.8 in (arms and empty weight from memory)",
    POUND, INCH, { 2100, 78.3 },
    { { 0 } }, { { 340, 85 }, { 350, 121 }, { 450, 75 }, { 80, 150 } },
    { 3320, 84.8 }, 0.05 },
  { "PHAK, weight shifting: 100 lb from 30 to 150 in, 77.0 to 78.5 in",
    POUND, INCH, { 8000, 77 },
    { { 100, 30 } }, { { 100, 150 } },
    { 8000, 78.5 }, 0 },
  { "PHAK, weight addition: 140 lb at 150 in, 81.4 in (from memory)",
    POUND, INCH, { 6860, 80 },
    { { 0 } }, { { 140, 150 } },
    { 7000, 81.4 }, 0 },
  { "PHAK, weight removal: 100 lb at 150 in, 78.8 in (from memory)",
    POUND, INCH, { 6100, 80 },
    { { 100, 150 } }, { { 0 } },
    { 6000, 78.8 }, 0.05 },
  { "WBH fig. 2-11: three weights on a lever balance at 72 in (weights from memory)",
    POUND, INCH, { 0 },
    { { 0 } }, { { 100, 0 }, { 200, 80 }, { 200, 100 } },
    { 500, 72 }, 0 },
  { "WBH chapter 3: three wheels, 2006 lb at 114.8 in (mains from memory)",
    POUND, INCH, { 0 },
    { { 0 } }, { { 830, 128 }, { 836, 128 }, { 340, 50 } },
    { 2006, 114.8 }, 0.05 },
  { "FTP: 100 lb from 55 to 145 in, 82.25 in",
    POUND, INCH, { 4000, 80 },
    { { 100, 55 } }, { { 100, 145 } },
    { 4000, 82.25 }, 0 },
  { "FTP: 120 lb moved 40 in aft, 90.50 in",
    POUND, INCH, { 2400, 88.5 },
    { { 120, 60 } }, { { 120, 100 } },
    { 2400, 90.5 }, 0 },
  { "NS p. 499: a rod with 10 lb at 2 ft and 5 lb at 8 ft, 4 ft",
    POUND, FOOT, { 0 },
    { { 0 } }, { { 10, 2 }, { 5, 8 } },
    { 15, 4 }, 0 },
  { "NS p. 499: then 10 lb at 7 ft, 5.2 ft",
    POUND, FOOT, { 15, 4 },
    { { 0 } }, { { 10, 7 } },
    { 25, 5.2 }, 0 },
  { "NS p. 499: a rod with 10 lb at 4 ft and 6 lb at 5 ft, 4.38 ft",
    POUND, FOOT, { 0 },
    { { 0 } }, { { 10, 4 }, { 6, 5 } },
    { 16, 4.38 }, 0.005 },
};
/* clang-format on */

static void
add_items (GbBoat *boat, const Example *example, const Item *items)
{
  for (guint i = 0; i < MAX_ITEMS && items[i].mass > 0; i++)
    add_lump (boat, 0, items[i].mass * example->mass_unit, items[i].arm * example->arm_unit, 0,
              items[i].arm * example->arm_unit);
}

/* The whole as given, less what will be taken off. */
static Item
rest_of (const Example *example)
{
  double mass = example->whole.mass, moment = mass * example->whole.arm;

  for (guint i = 0; i < MAX_ITEMS; i++)
    {
      mass -= example->out[i].mass;
      moment -= example->out[i].mass * example->out[i].arm;
    }
  return (Item){ mass, moment / mass };
}

static void
assert_rolls_up_to (const Example *example, const Item *change, Item answer, double arm_tolerance)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbRollup rollup = { 0 };

  if (example->whole.mass > 0)
    add_items (boat, example, (Item[MAX_ITEMS]){ rest_of (example) });
  add_items (boat, example, change);
  gb_boat_settle (boat);
  gb_rollup_find (&rollup, boat, NULL, G_MAXINT64);
  g_test_message ("%s: %.6g at %.6g, printed %.6g at %.6g", example->name,
                  rollup.boat.mass / example->mass_unit, rollup.boat.x / example->arm_unit, answer.mass,
                  answer.arm);
  assert_near (rollup.boat.mass / example->mass_unit, answer.mass, 1e-9 * answer.mass);
  assert_near (rollup.boat.x / example->arm_unit, answer.arm, arm_tolerance + 1e-9);
  assert_near (rollup.boat.z / example->arm_unit, answer.arm, arm_tolerance + 1e-9);
  gb_rollup_clear (&rollup);
}

static void
test_example (gconstpointer data)
{
  const Example *example = data;

  if (example->whole.mass > 0)
    assert_rolls_up_to (example, example->out, example->whole, 0);
  assert_rolls_up_to (example, example->in, example->answer, example->arm_tolerance);
}

/* NS p. 519, complete: tons, height of each above the keel in feet, and its moment. They stand here in
 * groups, as holds and decks. */
typedef struct
{
  double tons, height, moment;
} Stowage;

#define HOLD_SIZE 4
static const Stowage holds[][HOLD_SIZE] = {
  { { 942, 14, 13188 }, { 115, 26, 2990 }, { 161, 32, 5152 } },
  { { 1397, 14, 19558 }, { 80, 25, 2000 }, { 210, 31, 6510 } },
  { { 804, 14, 11256 }, { 197, 25, 4925 }, { 6, 31, 186 } },
  { { 750, 16, 12000 } },
  { { 1178, 14, 16492 }, { 60, 25, 1500 }, { 260, 31, 8060 } },
  { { 933, 16, 14928 }, { 110, 26, 2860 } },
  { { 660, 16, 10560 }, { 103, 2, 206 }, { 27, 12, 324 } },
  { { 4450, 13, 57850 } }, /* the ship herself */
};

static void
test_stowage_in_groups (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbPart *groups[G_N_ELEMENTS (holds)];
  GbRollup rollup = { 0 };
  const double ton_foot = LONG_TON * FOOT;

  for (guint h = 0; h < G_N_ELEMENTS (holds); h++)
    {
      /* Each with an origin of its own, as a builder has it; heights are given from that. */
      groups[h] = add_group (boat, 0, 0, 0, h * FOOT);
      for (guint i = 0; i < HOLD_SIZE && holds[h][i].tons > 0; i++)
        add_lump (boat, groups[h]->rec.id, holds[h][i].tons * LONG_TON, 0, 0,
                  (holds[h][i].height - h) * FOOT);
    }
  gb_boat_settle (boat);
  gb_rollup_find (&rollup, boat, NULL, G_MAXINT64);

  for (guint h = 0; h < G_N_ELEMENTS (holds); h++)
    {
      const GbMass *mass = gb_rollup_part (&rollup, groups[h]);
      double tons = 0, moment = 0;

      for (guint i = 0; i < HOLD_SIZE; i++)
        {
          tons += holds[h][i].tons;
          moment += holds[h][i].moment;
        }
      assert_near (mass->mass / LONG_TON, tons, 1e-9);
      assert_near (mass->mass * mass->z / ton_foot, moment, 1e-7);
    }
  assert_near (rollup.boat.mass / LONG_TON, 12443, 1e-8);
  assert_near (rollup.boat.mass * rollup.boat.z / ton_foot, 190545, 1e-6);
  assert_near (rollup.boat.z / FOOT, 15.3, 0.05); /* and with KM 18.0 ft, GM 2.7 ft */
  gb_rollup_clear (&rollup);
}

/* DB p. 116: 8000 t at KG 7.6 m; loaded 250 t at 6.1 m, 7.6 m to starboard, and 300 t at 0.6 m, 6.1 m to
 * port; discharged 50 t at 1.2 m, 4.6 m to port. Printed: KG 7.35 m; listing moment 2130 - 1830 = 300 t m to
 * starboard; GG1 0.035 m. Port is positive here. */
static void
test_off_the_centreline (void)
{
  const Example example = { .whole = { 8000, 7.6 }, .out = { { 50, 1.2 } } };
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbRollup rollup = { 0 };
  Item rest = rest_of (&example);

  add_lump (boat, 0, rest.mass * TONNE, 0, -50 * 4.6 / rest.mass, rest.arm);
  add_lump (boat, 0, 250 * TONNE, 0, -7.6, 6.1);
  add_lump (boat, 0, 300 * TONNE, 0, 6.1, 0.6);
  gb_boat_settle (boat);
  gb_rollup_find (&rollup, boat, NULL, G_MAXINT64);
  assert_near (rollup.boat.mass, 8500 * TONNE, 1e-6);
  assert_near (rollup.boat.z, 7.35, 0.005);
  assert_near (rollup.boat.mass * rollup.boat.y / TONNE, -300, 1e-8);
  assert_near (rollup.boat.y, -0.035, 0.0005);
  gb_rollup_clear (&rollup);
}

/* WBH chapter 3: the same three wheels, as three supports under the whole. */
static void
test_three_wheels_as_supports (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbWeighing *weighing = add_weighing (boat, 0, 740000, GB_ON_SCALE_ALL);
  GbRollup rollup = { 0 };

  add_lump (boat, 0, 1, 0, 0, 0); /* whatever was listed, the scales say */
  add_reading (boat, weighing, 830 * POUND, 128 * INCH, NAN);
  add_reading (boat, weighing, 836 * POUND, 128 * INCH, NAN);
  add_reading (boat, weighing, 340 * POUND, 50 * INCH, NAN);
  gb_boat_settle (boat);
  gb_rollup_find (&rollup, boat, NULL, G_MAXINT64);
  assert_near (rollup.boat.mass / POUND, 2006, 1e-9);
  assert_near (rollup.boat.x / INCH, 114.8, 0.05);
  assert_near (rollup.boat.mass * rollup.boat.x / (POUND * INCH), 230248, 1e-6);
  gb_rollup_clear (&rollup);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (examples); i++)
    {
      g_autofree char *path = g_strdup_printf ("/weights/example-%02u", i + 1);

      g_test_add_data_func (path, &examples[i], test_example);
    }
  g_test_add_func ("/weights/stowage-in-groups", test_stowage_in_groups);
  g_test_add_func ("/weights/three-wheels-as-supports", test_three_wheels_as_supports);
  g_test_add_func ("/weights/off-the-centreline", test_off_the_centreline);
  return g_test_run ();
}
