/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The build in memory: order, tree, orphans, and a random walk against a fresh copy. */

#include "boat/boat.h"

#include <math.h>

static GbRecord *
new_part (gint64 id, gint64 owner, double position, GbPartKind kind)
{
  GbRecord *record = gb_record_new (GB_RECORD_PART);

  record->id = id;
  record->owner = owner;
  record->position = position;
  ((GbPart *) record)->kind = kind;
  ((GbPart *) record)->name = g_strdup_printf ("part %d", (int) id);
  return record;
}

static void
test_tree_is_flattened_depth_first (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  const gint64 expected[] = { 1, 3, 2, 4 };

  /* Rows arrive out of order: children before their group, siblings backwards. */
  gb_boat_take (boat, new_part (2, 1, 2, GB_KIND_PART));
  gb_boat_take (boat, new_part (3, 1, 1, GB_KIND_PART));
  gb_boat_take (boat, new_part (4, 0, 2, GB_KIND_PART));
  gb_boat_take (boat, new_part (1, 0, 1, GB_KIND_GROUP));
  gb_boat_settle (boat);

  g_assert_cmpuint (gb_boat_n (boat, GB_RECORD_PART), ==, 4);
  for (guint i = 0; i < 4; i++)
    {
      const GbPart *part = g_ptr_array_index ((GPtrArray *) gb_boat_all (boat, GB_RECORD_PART), i);

      g_assert_cmpint (part->rec.id, ==, expected[i]);
      g_assert_cmpuint (part->rec.index, ==, i);
    }
  g_assert_cmpuint (gb_boat_part (boat, 1)->n_below, ==, 2);
  g_assert_cmpuint (gb_boat_part (boat, 2)->depth, ==, 1);
  g_assert_true (gb_boat_is_below (boat, 2, 1));
  g_assert_false (gb_boat_is_below (boat, 4, 1));
}

static void
test_orphans_and_cycles_are_kept_apart (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();

  gb_boat_take (boat, new_part (1, 2, 1, GB_KIND_GROUP));
  gb_boat_take (boat, new_part (2, 1, 1, GB_KIND_GROUP));
  gb_boat_take (boat, new_part (3, 77, 1, GB_KIND_PART));
  gb_boat_take (boat, new_part (4, 0, 1, GB_KIND_PART));
  gb_boat_settle (boat);

  g_assert_cmpuint (gb_boat_n (boat, GB_RECORD_PART), ==, 1);
  g_assert_cmpuint (gb_boat_orphans (boat, GB_RECORD_PART)->len, ==, 3);
  g_assert_true (gb_boat_is_below (boat, 1, 2));
}

static void
test_taking_again_keeps_pointers (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbRecord *first = gb_boat_take (boat, new_part (1, 0, 1, GB_KIND_PART));
  GbRecord *again;

  gb_boat_settle (boat);
  again = new_part (1, 0, 1, GB_KIND_PART);
  ((GbPart *) again)->thickness = 0.006;
  g_assert_true (gb_boat_take (boat, again) == first);
  g_assert_cmpfloat (((GbPart *) first)->thickness, ==, 0.006);
}

static GbRecord *
take (GbBoat *boat, GbRecordKind kind, gint64 id, gint64 owner)
{
  GbRecord *record = gb_record_new (kind);

  record->id = id;
  record->owner = owner;
  record->position = id;
  return gb_boat_take (boat, record);
}

/* A hull holds records of two kinds, each in an order of its own. */
static void
test_two_kinds_in_a_hull (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  const GbRecord *hull = take (boat, GB_RECORD_HULL, 1, 0);
  const GbRecord *station = take (boat, GB_RECORD_STATION, 1, 1), *opening = take (boat, GB_RECORD_OPENING, 2, 1);

  take (boat, GB_RECORD_OPENING, 1, 1);
  take (boat, GB_RECORD_CORNER, 1, 2);
  gb_boat_settle (boat);
  g_assert_cmpuint (gb_record_children (hull)->len, ==, 1);
  g_assert_true (gb_record_children (hull)->pdata[0] == station);
  g_assert_true (gb_record_children_of (hull, GB_RECORD_STATION)->pdata[0] == station);
  g_assert_cmpuint (gb_record_children_of (hull, GB_RECORD_OPENING)->len, ==, 2);
  g_assert_true (gb_record_children_of (hull, GB_RECORD_OPENING)->pdata[1] == opening);
  g_assert_cmpuint (gb_record_children_of (opening, GB_RECORD_CORNER)->len, ==, 1);
  /* A kind that cannot live there has none there. */
  g_assert_cmpuint (gb_record_children_of (station, GB_RECORD_OPENING)->len, ==, 0);
  g_assert_cmpuint (gb_record_children_of (hull, GB_RECORD_LOAD)->len, ==, 0);

  /* One kind is settled without the other. */
  gb_boat_remove (boat, GB_RECORD_OPENING, 1);
  gb_boat_settle (boat);
  g_assert_cmpuint (gb_record_children (hull)->len, ==, 1);
  g_assert_cmpuint (gb_record_children_of (hull, GB_RECORD_OPENING)->len, ==, 1);
}

/* Order, tree and orphans of @kind are the same in both. */
static void
assert_same_order (const GbBoat *a, const GbBoat *b, GbRecordKind kind)
{
  const GPtrArray *pairs[][2] = { { gb_boat_all (a, kind), gb_boat_all (b, kind) },
                                  { gb_boat_roots (a, kind), gb_boat_roots (b, kind) } };

  for (guint k = 0; k < G_N_ELEMENTS (pairs); k++)
    {
      g_assert_cmpuint (pairs[k][0]->len, ==, pairs[k][1]->len);
      for (guint i = 0; i < pairs[k][0]->len; i++)
        {
          const GbRecord *r = pairs[k][0]->pdata[i], *s = pairs[k][1]->pdata[i];

          g_assert_cmpint (r->id, ==, s->id);
          g_assert_cmpuint (r->index, ==, s->index);
          g_assert_cmpuint (gb_record_children (r)->len, ==, gb_record_children (s)->len);
          if (kind == GB_RECORD_PART)
            {
              g_assert_cmpuint (((const GbPart *) r)->n_below, ==, ((const GbPart *) s)->n_below);
              g_assert_cmpuint (((const GbPart *) r)->depth, ==, ((const GbPart *) s)->depth);
            }
        }
    }
  g_assert_cmpuint (gb_boat_orphans (a, kind)->len, ==, gb_boat_orphans (b, kind)->len);
}

/* Several records come, go and move between two settlings, the same one more than once. */
static void
test_random_walk_equals_a_fresh_copy (void)
{
  static const GbRecordKind kinds[] = { GB_RECORD_PART, GB_RECORD_HULL, GB_RECORD_STATION, GB_RECORD_OFFSET };
  g_autoptr (GbBoat) boat = gb_boat_new ();
  guint32 seed = g_test_rand_int ();
  g_autoptr (GRand) rand = g_rand_new_with_seed (seed);

  g_test_message ("seed %u", seed);
  for (guint step = 0; step < 3000; step++)
    {
      GbRecordKind kind = g_rand_boolean (rand) ? GB_RECORD_PART : kinds[g_rand_int_range (rand, 0, G_N_ELEMENTS (kinds))];
      gint64 id = g_rand_int_range (rand, 1, kind == GB_RECORD_PART ? 60 : 12);
      GbRecord *record;

      if (g_rand_double (rand) < 0.3)
        gb_boat_remove (boat, kind, id);
      else
        {
          record = kind == GB_RECORD_PART ? new_part (id, 0, 0, GB_KIND_GROUP) : gb_record_new (kind);
          record->id = id;
          record->owner = gb_record_type (kind)->owner != GB_N_RECORDS ? g_rand_int_range (rand, 0, kind == GB_RECORD_PART ? 60 : 12) : 0;
          record->position = g_rand_int_range (rand, 0, 20);
          gb_boat_take (boat, record);
        }
      if (g_rand_double (rand) < 0.4)
        continue;
      gb_boat_settle (boat);
      if (step % 10 == 0)
        {
          g_autoptr (GbBoat) copy = gb_boat_copy (boat);
          g_autofree char *difference = NULL;

          g_assert_true (gb_boat_equal (boat, copy, &difference));
          g_assert_null (difference);
          for (guint k = 0; k < G_N_ELEMENTS (kinds); k++)
            assert_same_order (boat, copy, kinds[k]);
        }
    }
}

static void
test_positions_between (void)
{
  g_assert_cmpfloat (gb_position_between (NAN, NAN), ==, 1);
  g_assert_cmpfloat (gb_position_between (3, NAN), >, 3);
  g_assert_cmpfloat (gb_position_between (NAN, 3), <, 3);
  g_assert_cmpfloat (gb_position_between (1, 2), ==, 1.5);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/boat/tree-is-flattened-depth-first", test_tree_is_flattened_depth_first);
  g_test_add_func ("/boat/orphans-and-cycles-are-kept-apart", test_orphans_and_cycles_are_kept_apart);
  g_test_add_func ("/boat/taking-again-keeps-pointers", test_taking_again_keeps_pointers);
  g_test_add_func ("/boat/two-kinds-in-a-hull", test_two_kinds_in_a_hull);
  g_test_add_func ("/boat/random-walk-equals-a-fresh-copy", test_random_walk_equals_a_fresh_copy);
  g_test_add_func ("/boat/positions-between", test_positions_between);
  return g_test_run ();
}
