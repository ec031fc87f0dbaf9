/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The generated builds themselves: whole, allowed by the field table, and the same each time. */

#include "generate.h"

static void
test_same_seed_same_build (void)
{
  g_autoptr (GbBoat) a = generate_boat (500, 7);
  g_autoptr (GbBoat) b = generate_boat (500, 7);
  g_autoptr (GbBoat) other = generate_boat (500, 8);
  g_autofree char *difference = NULL;

  g_assert_true (gb_boat_equal (a, b, &difference));
  g_assert_false (gb_boat_equal (a, other, NULL));
}

static void
check_record (const GbBoat *boat, const GbRecord *record)
{
  const GbRecordType *type = gb_record_type (record->kind);

  for (guint i = 0; i < type->n_fields; i++)
    {
      const GbField *field = &type->fields[i];
      g_auto (GbValue) value = gb_field_get (field, record);
      g_autoptr (GError) error = NULL;

      gb_field_check (field, &value, &error);
      g_assert_no_error (error);
      if (field->dim == GB_DIM_REF && value.integer != 0)
        g_assert_nonnull (gb_boat_get (boat, field->refers_to, value.integer));
    }
}

static void
test_every_value_is_allowed (void)
{
  g_autoptr (GbBoat) boat = generate_boat (2000, 1);

  g_assert_cmpuint (gb_boat_n (boat, GB_RECORD_PART), ==, 2000);
  for (guint kind = 0; kind < GB_N_RECORDS; kind++)
    {
      const GPtrArray *all = gb_boat_all (boat, kind);

      g_assert_cmpuint (all->len, >, 0);
      g_assert_cmpuint (gb_boat_orphans (boat, kind)->len, ==, 0);
      for (guint i = 0; i < all->len; i++)
        check_record (boat, all->pdata[i]);
    }
}

static void
test_small_builds (void)
{
  for (guint n = 0; n < 5; n++)
    {
      g_autoptr (GbBoat) boat = generate_boat (n, 3);

      g_assert_cmpuint (gb_boat_n (boat, GB_RECORD_PART), ==, n);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/generate/same-seed-same-build", test_same_seed_same_build);
  g_test_add_func ("/generate/every-value-is-allowed", test_every_value_is_allowed);
  g_test_add_func ("/generate/small-builds", test_small_builds);
  return g_test_run ();
}
