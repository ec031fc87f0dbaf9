/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Where a function is nothing. */

#include "near.h"

#include "engine/root.h"

static guint n_calls;

static double
cosine_less_x (double x, gpointer data)
{
  n_calls++;
  return cos (x) - x;
}

static double
steep_and_flat (double x, gpointer data)
{
  n_calls++;
  return expm1 (30 * x) - 1e-3;
}

static double
jump (double x, gpointer data)
{
  n_calls++;
  return x < *(const double *) data ? -1 : 1e-6;
}

static double
unknown (double x, gpointer data)
{
  n_calls++;
  return NAN;
}

static void
test_smooth (void)
{
  /* The Dottie number, OEIS A003957. */
  n_calls = 0;
  assert_near (gb_root (cosine_less_x, NULL, 0, 1, 1, cos (1) - 1, 1e-12), 0.739085133215160641, 1e-12);
  g_assert_cmpuint (n_calls, <, 12);
  /* From the other end. */
  assert_near (gb_root (cosine_less_x, NULL, 1, cos (1) - 1, 0, 1, 1e-12), 0.739085133215160641, 1e-12);
}

static void
test_hard (void)
{
  double at = 0.123456789;

  n_calls = 0;
  assert_near (gb_root (steep_and_flat, NULL, -1, expm1 (-30) - 1e-3, 1, expm1 (30) - 1e-3, 1e-12), log1p (1e-3) / 30, 1e-11);
  g_assert_cmpuint (n_calls, <, 70);
  n_calls = 0;
  assert_near (gb_root (jump, &at, 0, -1, 1, 1e-6, 1e-10), at, 1e-9);
  g_assert_cmpuint (n_calls, <, 70);
}

/* It ends, whatever the function does. */
static void
test_unknown (void)
{
  double x = gb_root (unknown, NULL, 0, -1, 1, 1, 1e-12);

  g_assert_cmpfloat (x, >, 0);
  g_assert_cmpfloat (x, <, 1);
  /* Its ends are near enough already. */
  n_calls = 0;
  assert_near (gb_root (cosine_less_x, NULL, 0.7390, 1e-4, 0.7391, -1e-4, 1), 0.739, 1e-3);
  g_assert_cmpuint (n_calls, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/root/smooth", test_smooth);
  g_test_add_func ("/root/hard", test_hard);
  g_test_add_func ("/root/unknown", test_unknown);
  return g_test_run ();
}
