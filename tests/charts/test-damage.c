/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Findings with any of their figures unknown, absurd or at odds with the rest: each chart still draws, and
 * says nothing that is no number. */

#include "sample.h"

#include <math.h>
#include <string.h>

static double
random_number (void)
{
  static const double numbers[]
      = { NAN, NAN, NAN, 0, -0.0, -1, 1, 1e-9, 1e9, -1e9, 1e300, INFINITY, -INFINITY };

  return numbers[g_test_rand_int_range (0, G_N_ELEMENTS (numbers))];
}

static gint64
random_money (void)
{
  static const gint64 sums[]
      = { GB_MONEY_UNKNOWN, GB_MONEY_UNKNOWN, 0, -1, 1, -100000, G_MAXINT64 / 4, -G_MAXINT64 / 4 };

  return sums[g_test_rand_int_range (0, G_N_ELEMENTS (sums))];
}

/* Each with a small chance. */
static void
damage_number (double *number)
{
  if (g_test_rand_int_range (0, 6) == 0)
    *number = random_number ();
}

static void
damage_money (gint64 *money)
{
  if (g_test_rand_int_range (0, 6) == 0)
    *money = random_money ();
}

static void
damage_mass (GbMass *mass)
{
  double *const numbers[] = { &mass->mass, &mass->mass_sd,  &mass->x,        &mass->y,
                              &mass->z,    &mass->by_as[0], &mass->by_as[1], &mass->by_as[2] };

  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    damage_number (numbers[i]);
}

/* A struct of real numbers alone. */
static void
damage_state (GbHydrostatics *state)
{
  double *numbers = (double *) state;

  for (guint i = 0; i < sizeof *state / sizeof (double); i++)
    damage_number (&numbers[i]);
}

static void
damage_flotation (GbFlotation *flotation)
{
  double *const numbers[]
      = { &flotation->light,    &flotation->margin,  &flotation->load_mass, &flotation->total,
          &flotation->total_sd, &flotation->total_x, &flotation->total_y,   &flotation->total_z,
          &flotation->left,     &flotation->chance };

  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    damage_number (numbers[i]);
  damage_state (&flotation->limit);
  damage_state (&flotation->afloat);
  for (guint i = 0; i < flotation->n_curve; i++)
    damage_state (&flotation->curve[i]);
}

static void
damage_costs (GbCosts *costs)
{
  gint64 *const sums[]
      = { &costs->budget, &costs->spent, &costs->to_buy, &costs->allowance, &costs->forecast };

  for (guint i = 0; i < G_N_ELEMENTS (sums); i++)
    damage_money (sums[i]);
  for (guint i = 0; i < costs->n_heads; i++)
    {
      damage_money (&costs->heads[i].budget);
      damage_money (&costs->heads[i].spent);
      damage_money (&costs->heads[i].to_buy);
      damage_money (&costs->heads[i].forecast);
    }
  for (guint i = 0; i < costs->n_course; i++)
    {
      damage_money (&costs->course[i].spent);
      if (g_test_rand_int_range (0, 8) == 0)
        costs->course[i].date = g_test_rand_int_range (0, 2) ? 0 : G_MAXINT32;
    }
}

static void
damage_all (Sample *sample)
{
  GbBuild *build = (GbBuild *) gb_boat_build (sample->boat);

  for (guint i = 0; i < sample->findings.rollup.n_parts; i++)
    damage_mass (&sample->findings.rollup.parts[i]);
  damage_mass (&sample->findings.rollup.boat);
  damage_flotation (&sample->findings.flotation);
  damage_costs (&sample->findings.costs);
  for (guint i = 0; i < sample->history.n_points; i++)
    {
      damage_number (&sample->history.points[i].mass);
      damage_number (&sample->history.points[i].mass_sd);
      damage_number (&sample->history.points[i].weighed_share);
    }
  damage_number (&build->target_mass);
}

static void
assert_sound (GbChart *chart)
{
  static const GbChartStyle styles[] = { GB_CHART_LIGHT, GB_CHART_DARK, GB_CHART_PRINT };
  g_autofree char *tip = NULL;
  g_auto (Paper) paper;

  paper_init (&paper, 640, 300, styles[g_test_rand_int_range (0, 3)]);
  gb_chart_render (chart, &paper.canvas, g_test_rand_int_range (0, 2));
  g_assert_cmpint (cairo_status (paper.cr), ==, CAIRO_STATUS_SUCCESS);
  tip = gb_chart_tooltip (chart, 640, 300, g_test_rand_double_range (0, 640),
                          g_test_rand_double_range (0, 300));
  gb_chart_pick (chart, 640, 300, g_test_rand_double_range (0, 640), g_test_rand_double_range (0, 300));
  g_assert_cmpuint (strlen (gb_chart_title (chart)), >, 0);
  g_assert_null (strstr (gb_chart_description (chart), "nan"));
  g_assert_true (g_utf8_validate (gb_chart_description (chart), -1, NULL));
}

static void
test_any_damage (void)
{
  for (guint round = 0; round < 120; round++)
    {
      g_autoptr (Sample) sample = sample_new (g_test_rand_int_range (0, 2) ? SAMPLE_PRAM : SAMPLE_OVER);

      damage_all (sample);
      for (guint c = 0; c < GB_N_CHARTS; c++)
        {
          g_autoptr (GbChart) chart = sample_chart (sample, (GbChartKind) c);

          assert_sound (chart);
        }
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/charts/any-damage", test_any_damage);
  return g_test_run ();
}
