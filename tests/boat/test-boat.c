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

static void
test_random_walk_equals_a_fresh_copy (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  guint32 seed = g_test_rand_int ();
  g_autoptr (GRand) rand = g_rand_new_with_seed (seed);

  g_test_message ("seed %u", seed);
  for (guint step = 0; step < 500; step++)
    {
      gint64 id = g_rand_int_range (rand, 1, 60);

      if (g_rand_double (rand) < 0.2)
        gb_boat_remove (boat, GB_RECORD_PART, id);
      else
        gb_boat_take (boat, new_part (id, g_rand_int_range (rand, 0, 60), g_rand_double (rand), GB_KIND_GROUP));
      gb_boat_settle (boat);
      if (step % 25 == 0)
        {
          g_autoptr (GbBoat) copy = gb_boat_copy (boat);
          g_autofree char *difference = NULL;
          const GPtrArray *a = gb_boat_all (boat, GB_RECORD_PART);
          const GPtrArray *b = gb_boat_all (copy, GB_RECORD_PART);

          g_assert_true (gb_boat_equal (boat, copy, &difference));
          g_assert_null (difference);
          g_assert_cmpuint (a->len, ==, b->len);
          for (guint i = 0; i < a->len; i++)
            {
              const GbPart *p = a->pdata[i], *q = b->pdata[i];

              g_assert_cmpint (p->rec.id, ==, q->rec.id);
              g_assert_cmpuint (p->n_below, ==, q->n_below);
              g_assert_cmpuint (p->depth, ==, q->depth);
            }
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
  g_test_add_func ("/boat/random-walk-equals-a-fresh-copy", test_random_walk_equals_a_fresh_copy);
  g_test_add_func ("/boat/positions-between", test_positions_between);
  return g_test_run ();
}
