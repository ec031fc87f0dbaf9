/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Froude's similarity against printed tables and examples. MSC: IMO MSC/Circ.616 (22 June 1993), section 4.
 */

#include "../engine/near.h"

#include "engine/similarity.h"

static void
test_powers (void)
{
  /* From model to full scale, MSC table 4.2 and a lecture's table of Froude scaling; pressure by its
   * dimensions. */
  static const struct
  {
    GbLike like;
    double power;
    gboolean has_mass;
  } rows[] = { { GB_LIKE_LENGTH, 1, FALSE }, { GB_LIKE_AREA, 2, FALSE },    { GB_LIKE_VOLUME, 3, FALSE },
               { GB_LIKE_TIME, 0.5, FALSE }, { GB_LIKE_SPEED, 0.5, FALSE }, { GB_LIKE_ANGLE, 0, FALSE },
               { GB_LIKE_MASS, 3, TRUE },    { GB_LIKE_FORCE, 3, TRUE },    { GB_LIKE_MOMENT, 4, TRUE },
               { GB_LIKE_INERTIA, 5, TRUE }, { GB_LIKE_PRESSURE, 1, TRUE }, { GB_LIKE_POWER, 3.5, TRUE } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      assert_near (gb_similarity_power (rows[i].like), rows[i].power, 0);
      assert_near (gb_similarity_factor (rows[i].like, 4, 1), pow (4, rows[i].power), 1e-9);
      /* What has mass in it goes with the waters as well, in the first power. */
      assert_near (gb_similarity_factor (rows[i].like, 1, 1.025), rows[i].has_mass ? 1.025 : 1, 1e-12);
    }
}

static void
test_lifeboat (void)
{
  /* MSC table 4.3: a lifeboat, model 1:5. 10.0 x 3.5 x 3.4 m, 11.5 t: 2.00 x 0.70 x 0.68 m, 92.00 kg. Its
   * centre, 4.8 m, comes to 0.96 m (computed). */
  double length = gb_similarity_factor (GB_LIKE_LENGTH, 5, 1),
         mass = gb_similarity_factor (GB_LIKE_MASS, 5, 1);

  assert_near (10.0 / length, 2.00, 1e-12);
  assert_near (3.5 / length, 0.70, 1e-12);
  assert_near (3.4 / length, 0.68, 1e-12);
  assert_near (11500 / mass, 92.00, 1e-9);
  assert_near (1 / mass, 0.008, 1e-12);
  assert_near (4.8 / length, 0.96, 1e-12);
}

static void
test_tenth_model (void)
{
  /* A fluid mechanics text's exercise, answer computed: a ship of 125 m and a model of a tenth. */
  assert_near (125 / gb_similarity_factor (GB_LIKE_LENGTH, 10, 1), 12.5, 1e-12);
  assert_near (1 / gb_similarity_factor (GB_LIKE_SPEED, 10, 1), 0.3162, 0.00005);
  assert_near (gb_similarity_factor (GB_LIKE_FORCE, 10, 1), 1000, 1e-9);
  assert_near (gb_similarity_factor (GB_LIKE_POWER, 10, 1), 3162.3, 0.05);
}

static void
test_speed (void)
{
  /* A reference page: scale 30, the ship goes 6.57 m/s = 12.78 kn; the model 1.2 m/s (computed). */
  const double knot = 1852.0 / 3600;

  assert_near (6.573 / gb_similarity_factor (GB_LIKE_SPEED, 30, 1), 1.2, 0.0005);
  assert_near (1.2 * gb_similarity_factor (GB_LIKE_SPEED, 30, 1) / knot, 12.78, 0.005);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/published/similarity/powers", test_powers);
  g_test_add_func ("/published/similarity/lifeboat", test_lifeboat);
  g_test_add_func ("/published/similarity/tenth-model", test_tenth_model);
  g_test_add_func ("/published/similarity/speed", test_speed);
  return g_test_run ();
}
