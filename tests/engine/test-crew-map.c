/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A load at every place in plan view. */

#include "afloat-fixture.h"

#include "engine/crew-map.h"

static GbCrewMap *
map_of (Craft *craft, gint64 condition, const GbLoad *load)
{
  craft_find (craft, condition);
  return gb_crew_map_find (craft->self, load->rec.id, NULL, NULL, NULL);
}

/* Each place of the map is how she floats when the load is entered there. */
static void
test_places_are_rests (void)
{
  g_auto (Craft) craft = new_craft (1000, 800, 1.9, 0.2);
  gint64 condition = craft_condition (&craft);
  GbLoad *person = craft_load (&craft, condition, GB_LOAD_PERSON, 80, (GbVec3){ 2, 0.1, 0.3 });
  g_autoptr (GbCrewMap) map = NULL;

  add_block (craft.boat, 4, 1, 0.5);
  person->posture = GB_POSTURE_SITTING;
  map = map_of (&craft, condition, person);
  g_assert_cmpuint (map->n_rows_found, ==, GB_MAP_ROWS);
  assert_near (map->x0, 0, 1e-12);
  assert_near (map->x1, 4, 1e-12);
  assert_near (map->y0, -0.5, 1e-12);
  assert_near (map->y1, 0.5, 1e-12);
  assert_near (map->z, 0.55, 1e-12);
  for (guint row = 0; row < GB_MAP_ROWS; row += 7)
    for (guint column = 0; column < GB_MAP_COLUMNS; column += 11)
      {
        const GbCrewPlace *place = &map->places[row][column];

        person->x = (column + 0.5) * 4 / GB_MAP_COLUMNS;
        person->y = -0.5 + (row + 0.5) / GB_MAP_ROWS;
        craft_find (&craft, condition);
        g_assert_cmpint (place->state, ==, craft.afloat.state);
        assert_near (place->freeboard, craft.afloat.least.freeboard, 1e-9);
        assert_near (place->heel, craft.afloat.heel, 1e-9);
        assert_near (place->trim, craft.afloat.trim, 1e-9);
      }
}

/* The best place in a box is where it brings her level: its moment makes up for that of the light craft. */
static void
test_best_place (void)
{
  g_auto (Craft) craft = new_craft (1000, 800, 1.95, 0.2);
  gint64 condition = craft_condition (&craft);
  GbLoad *person = craft_load (&craft, condition, GB_LOAD_PERSON, 80, (GbVec3){ 3, 0.2, 0.3 });
  g_autoptr (GbCrewMap) map = NULL;

  add_block (craft.boat, 4, 1, 0.5);
  map = map_of (&craft, condition, person);
  assert_near (map->best.x, 2 + 0.05 * 800 / 80, 2e-3);
  assert_near (map->best.y, 0, 2e-3);
  assert_near (map->best.z, 0.3, 1e-12);
  assert_near (map->best_freeboard, 0.5 - 0.22, 1e-4);
  g_assert_cmpint (map->first_under, ==, 0);
}

/* Somebody so light that no place gains a millimetre stays, on the centreline. */
static void
test_not_worth_moving (void)
{
  g_auto (Craft) craft = new_craft (1000, 800, 2, 0.2);
  gint64 condition = craft_condition (&craft);
  GbLoad *child = craft_load (&craft, condition, GB_LOAD_PERSON, 1, (GbVec3){ 2.6, 0.3, 0.3 });
  g_autoptr (GbCrewMap) map = NULL;

  add_block (craft.boat, 4, 1, 0.5);
  map = map_of (&craft, condition, child);
  assert_near (map->best.x, 2.6, 0);
  assert_near (map->best.y, 0, 0);
  /* GM along is L2 / (12 T) = 6.66 m and 0.1 m less: she trims 0.6 x 1 / (801 x 6.6), over 2 m. */
  assert_near (map->best_freeboard, 0.5 - 0.801 / 4 - 2 * 0.6 / (801 * 6.6), 1e-4);
  g_assert_cmpfloat (map->best_freeboard, >, 0.5 - 0.801 / 4 - 1e-3);

  /* For somebody heavy it is, and on the centreline still. */
  child->mass = 80;
  gb_crew_map_free (g_steal_pointer (&map));
  map = map_of (&craft, condition, child);
  assert_near (map->best.x, 2, 2e-3);
  assert_near (map->best.y, 0, 0);
}

/* By the wall-sided formula: so far out that the lower edge is at the accepted freeboard. */
static void
test_furthest (void)
{
  g_auto (Craft) craft = new_craft (1000, 800, 2, 0.2);
  gint64 condition = craft_condition (&craft);
  GbLoad *person = craft_load (&craft, condition, GB_LOAD_PERSON, 200, (GbVec3){ 2, 0.45, 0.2 });
  g_autoptr (GbCrewMap) map = NULL;
  double heel = asin (0.25 / hypot (0.5, 0.25)), tangent, gm = 0.125 + 1.0 / 3 - 0.2;

  /* 0.1 = 0.25 cos - 0.5 sin. */
  heel -= asin (0.1 / hypot (0.5, 0.25));
  tangent = tan (heel);
  add_block (craft.boat, 4, 1, 0.5);
  map = map_of (&craft, condition, person);
  assert_near (map->furthest_starboard, -(gm + tangent * tangent / 6) * tangent * 1000 / 200, 1e-3);
  assert_near (map->furthest_port, -map->furthest_starboard, 1e-3);

  /* Light enough, she may sit on the edge itself; with more freeboard asked for than there is, nowhere. */
  person->mass = 10;
  gb_crew_map_free (g_steal_pointer (&map));
  map = map_of (&craft, condition, person);
  assert_near (map->furthest_starboard, -0.5, 1e-12);
  assert_near (map->furthest_port, 0.5, 1e-12);
  craft_build (&craft)->freeboard = 0.4;
  gb_crew_map_free (g_steal_pointer (&map));
  map = map_of (&craft, condition, person);
  g_assert_true (isnan (map->furthest_starboard) && isnan (map->furthest_port));
  craft_build (&craft)->freeboard = NAN;
  gb_crew_map_free (g_steal_pointer (&map));
  map = map_of (&craft, condition, person);
  g_assert_true (isnan (map->furthest_starboard) && isnan (map->furthest_port));
}

/* Somebody heavy on a narrow deck: over at the sides, and well in the middle as if she had never gone over. */
static void
test_going_over (void)
{
  g_auto (Craft) craft = new_craft (1000, 100, 2, 0.1);
  gint64 condition = craft_condition (&craft);
  GbLoad *person = craft_load (&craft, condition, GB_LOAD_PERSON, 100, (GbVec3){ 2, 0, 0.3 });
  g_autoptr (GbCrewMap) map = NULL;
  guint n_over = 0;

  add_block (craft.boat, 4, 0.7, 0.3)->edge = GB_EDGE_CLOSED;
  map = map_of (&craft, condition, person);
  for (guint column = 0; column < GB_MAP_COLUMNS; column++)
    {
      n_over += map->places[0][column].state == GB_AFLOAT_OVER;
      g_assert_cmpint (map->places[GB_MAP_ROWS / 2][column].state, ==, GB_AFLOAT_FLOATS);
    }
  g_assert_cmpuint (n_over, >, 0);
  /* No edge, no freeboard, no best place. */
  g_assert_true (isnan (map->best.x));
  g_assert_cmpint (map->first_under, ==, -1);
  g_assert_cmpfloat (map->furthest_starboard, <, 0);
  g_assert_cmpfloat (map->furthest_starboard, >, -0.35);
}

static gboolean
count_down_cb (gpointer data)
{
  int *left = data;

  return --*left < 0;
}

static void
row_cb (const GbCrewMap *map, gpointer data)
{
  int *left = data;

  g_assert_cmpint (map->n_rows_found, ==, 8 - *left);
  g_assert_cmpint (map->places[map->n_rows_found - 1][0].state, !=, GB_AFLOAT_UNKNOWN);
  g_assert_cmpint (map->places[GB_MAP_ROWS - 1][0].state, ==, GB_AFLOAT_UNKNOWN);
}

static void
test_progress_and_cancel (void)
{
  g_auto (Craft) craft = new_craft (1000, 800, 2, 0.2);
  gint64 condition = craft_condition (&craft);
  GbLoad *person = craft_load (&craft, condition, GB_LOAD_PERSON, 80, (GbVec3){ 2, 0, 0.3 });
  int left = 8;

  add_block (craft.boat, 4, 1, 0.5);
  craft_find (&craft, condition);
  g_assert_null (gb_crew_map_find (craft.self, person->rec.id, row_cb, count_down_cb, &left));
  g_assert_cmpint (left, ==, -1);
  g_assert_null (gb_crew_map_find (craft.self, 999999, NULL, NULL, NULL));
}

static void
assert_nothing_found (Craft *craft, gint64 condition, const GbLoad *load)
{
  g_autoptr (GbCrewMap) map = map_of (craft, condition, load);
  g_autoptr (GbCrewMap) copy = gb_crew_map_copy (map);

  g_assert_cmpuint (copy->n_rows_found, ==, GB_MAP_ROWS);
  for (guint row = 0; row < GB_MAP_ROWS; row++)
    g_assert_cmpint (copy->places[row][0].state, ==, GB_AFLOAT_UNKNOWN);
  g_assert_true (isnan (copy->best.x) && isnan (copy->furthest_port));
}

static void
test_nothing_to_find (void)
{
  g_auto (Craft) craft = new_craft (1000, 800, 2, 0.2);
  gint64 condition = craft_condition (&craft);
  GbLoad *person = craft_load (&craft, condition, GB_LOAD_PERSON, 80, (GbVec3){ 2, 0, 0.3 });

  assert_nothing_found (&craft, condition, person);
  add_block (craft.boat, 4, 1, 0.5);
  person->mass = 5000;
  assert_nothing_found (&craft, condition, person);
  person->mass = NAN;
  assert_nothing_found (&craft, condition, person);
  gb_crew_map_free (NULL);
}

/* Without a place it starts at the boat's own centre. */
static void
test_load_without_a_place (void)
{
  g_auto (Craft) craft = new_craft (1000, 800, 2, 0.25);
  gint64 condition = craft_condition (&craft);
  GbLoad *person = craft_load (&craft, condition, GB_LOAD_PERSON, 80, (GbVec3){ NAN, 0, NAN });
  g_autoptr (GbCrewMap) map = NULL;

  add_block (craft.boat, 4, 1, 0.5);
  map = map_of (&craft, condition, person);
  assert_near (map->z, 0.25, 0);
  assert_near (map->best.x, 2, 2e-3);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/crew-map/places-are-rests", test_places_are_rests);
  g_test_add_func ("/crew-map/best-place", test_best_place);
  g_test_add_func ("/crew-map/not-worth-moving", test_not_worth_moving);
  g_test_add_func ("/crew-map/furthest", test_furthest);
  g_test_add_func ("/crew-map/going-over", test_going_over);
  g_test_add_func ("/crew-map/progress-and-cancel", test_progress_and_cancel);
  g_test_add_func ("/crew-map/nothing-to-find", test_nothing_to_find);
  g_test_add_func ("/crew-map/load-without-a-place", test_load_without_a_place);
  return g_test_run ();
}
