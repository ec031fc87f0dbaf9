/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Trim by loads moved, taken aboard and put ashore, against worked examples. The books give the moment that
 * changes trim and say no more of the ship: she is the box that has it. A box L long and B broad, its weight
 * as high as its centre of buoyancy, needs the moment water x B L2/12 for each unit of trim over her length.
 */

#include "ship-fixture.h"

#define CM 0.01
#define INCH (1 / 12.0) /* ft */

/* Where the centre of flotation lies, forward of amidships, and what she needs: the moment for trim 1 over
 * her length. */
typedef struct
{
  GbFloater *floater;
  double length, middle;
} Ship;

static void
ship_clear (Ship *ship)
{
  gb_floater_free (ship->floater);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Ship, ship_clear)

/* Upright and level at @draught before trim. */
static Ship
ship_by_moment (double water, double length, double moment, double draught, double middle)
{
  double breadth = moment * 12 / (water * length * length);
  Ship ship = { NULL, length, middle };

  ship.floater = float_body (water, new_box ((GbVec3){ middle - length / 2, -breadth / 2, 0 },
                                             (GbVec3){ middle + length / 2, breadth / 2, 3 * draught }));
  gb_floater_add_mass (ship.floater, water * length * breadth * draught, (GbVec3){ middle, 0, draught / 2 });
  return ship;
}

/* A weight at @forward of amidships, as high as her centre of gravity; negative: it goes ashore. */
static void
load_along (Ship *ship, double mass, double forward)
{
  gb_floater_add_mass (ship->floater, mass,
                       (GbVec3){ forward, 0, ship->floater->moment.z / ship->floater->mass });
}

static void
move_along (Ship *ship, double mass, double by)
{
  ship->floater->moment.x += mass * by;
}

/* At @forward of amidships. */
static double
draught_at (const Ship *ship, double forward)
{
  GbAttitude at = rest_of (ship->floater, 0, GB_HOLD_NOTHING);

  return (at.height - at.up.x * forward) / at.up.z;
}

/* Fore draught less aft draught, over her length. */
static double
trim_of (const Ship *ship)
{
  return draught_at (ship, ship->middle + ship->length / 2)
         - draught_at (ship, ship->middle - ship->length / 2);
}

/* DB p. 147-148: 25 cm by the stern, centre of flotation amidships, 100 t m for 1 cm; 3800 t go: 1200 from
 * number 2 hold (30 m forward), 600 from number 3 (20 m aft), the rest from number 1 (50 m forward) and
 * number 4 (45 m aft), and 360 t come into a tank 5 m aft. To end on an even keel 649.5 t are from number 1
 * and 1350.5 from number 4. */
static void
test_to_an_even_keel (void)
{
  g_auto (Ship) ship = ship_by_moment (SEA, 120, 100 / CM, 11, 0);

  move_along (&ship, 1, -25 * 100);
  assert_near (trim_of (&ship), -25 * CM, 1e-6);
  load_along (&ship, -1200, 30);
  load_along (&ship, -600, -20);
  load_along (&ship, -649.5, 50);
  load_along (&ship, -1350.5, -45);
  load_along (&ship, 360, -5);
  assert_near (trim_of (&ship), 0, 0.5 * CM);
}

/* DB p. 148: 4.50 m aft, 3.80 m forward; 100 t come 24 m aft, 30 t 30 m forward and 60 t 15 m forward of
 * amidships; then 5.10 m aft, 4.40 m forward. So her centre of flotation is 600/190 = 3.16 m aft of
 * amidships, and as she sank 60 cm, her waterplane is 190/(1.025 x 0.60) m2. */
static void
test_where_trim_stays (void)
{
  double length = 60, water_plane = 190 / (SEA * 0.6), middle = -600 / 190.0;
  g_auto (Ship) ship
      = ship_by_moment (SEA, length, SEA * water_plane * length / 12, 4.15 - 0.7 * middle / length, middle);

  move_along (&ship, 1, -0.7 * SEA * water_plane * length / 12);
  assert_near (middle, -3.16, 0.005);
  assert_near (draught_at (&ship, -30), 4.50, 1e-3);
  assert_near (draught_at (&ship, 30), 3.80, 1e-3);
  load_along (&ship, 100, -24);
  load_along (&ship, 30, 30);
  load_along (&ship, 60, 15);
  assert_near (draught_at (&ship, -30), 5.10, 3e-3);
  assert_near (draught_at (&ship, 30), 4.40, 3e-3);
}

/* NS p. 525: a trim of 49.8 in is to be made with 1423 foot tons for an inch and 400 tons: 70865 foot tons,
 * 177 ft. */
static void
test_weight_moved_along (void)
{
  g_auto (Ship) ship = ship_by_moment (NS_SEA, 400, 1423 / INCH, 24, 0);

  move_along (&ship, 400, 177);
  assert_near (ship.floater->moment.x, 70865, 70);
  assert_near (trim_of (&ship), 49.8 * INCH, 0.1 * INCH);
}

/* NS question 29: 21 ft 0 in forward, 23 ft 0 in aft, 45 tons for an inch, 1100 foot tons for an inch of
 * trim; 200 tons 30 ft, 450 at 25 ft and 300 at 50 ft forward of the tipping centre, 500 at 35 ft and 200 at
 * 40 ft aft of it go ashore. Printed: 17 ft 8 1/2 in forward, 20 ft 2 1/4 in aft; by the same way unrounded
 * 17 ft 8.3 in and 20 ft 2.4 in. */
static void
test_draughts_after_unloading (void)
{
  double waterplane = 45 * 35 * 12, length = 1100 / INCH * 12 * 35 / waterplane;
  g_auto (Ship) ship = ship_by_moment (NS_SEA, length, 1100 / INCH, 22, 0);

  move_along (&ship, 1, -24 * 1100);
  assert_near (draught_at (&ship, length / 2), 21, 1e-3);
  assert_near (draught_at (&ship, -length / 2), 23, 1e-3);
  load_along (&ship, -200, 30);
  load_along (&ship, -450, 25);
  load_along (&ship, -300, 50);
  load_along (&ship, -500, -35);
  load_along (&ship, -200, -40);
  assert_near (draught_at (&ship, length / 2), 17 + 8.3 * INCH, 0.25 * INCH);
  assert_near (draught_at (&ship, -length / 2), 20 + 2.4 * INCH, 0.25 * INCH);
}

/* DB chapter 15 (from memory): a ship 126 m long, 5.5 m forward, 6.5 m aft, centre of flotation 3 m aft of
 * amidships, 240 t m for 1 cm; 120 t moved 45 m forward: 22.5 cm by the head. */
static void
test_change_of_trim (void)
{
  g_auto (Ship) ship = ship_by_moment (SEA, 126, 240 / CM, 6, -3);
  double before;

  move_along (&ship, 100 * 240, -1);
  before = trim_of (&ship);
  assert_near (before, -1, 1e-3);
  move_along (&ship, 120, 45);
  assert_near (trim_of (&ship) - before, 22.5 * CM, 0.05 * CM);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/hydrostatics/trim/to-an-even-keel", test_to_an_even_keel);
  g_test_add_func ("/hydrostatics/trim/where-trim-stays", test_where_trim_stays);
  g_test_add_func ("/hydrostatics/trim/weight-moved-along", test_weight_moved_along);
  g_test_add_func ("/hydrostatics/trim/draughts-after-unloading", test_draughts_after_unloading);
  g_test_add_func ("/hydrostatics/trim/change-of-trim", test_change_of_trim);
  return g_test_run ();
}
