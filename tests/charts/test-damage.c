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
  double *numbers = (double *)state;

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

/* Each number of a struct of real numbers. */
static void
damage_numbers (double *numbers, gsize size)
{
  for (gsize i = 0; i < size / sizeof (double); i++)
    damage_number (&numbers[i]);
}

static void
damage_afloat (GbFindings *findings)
{
  GbAfloat *afloat = &findings->afloat[0];
  double *const numbers[] = { &afloat->total,
                              &afloat->limit,
                              &afloat->heel,
                              &afloat->trim,
                              &afloat->fore_x,
                              &afloat->aft_x,
                              &afloat->draught_fore,
                              &afloat->draught_mid,
                              &afloat->draught_aft,
                              &afloat->keel,
                              &afloat->gm,
                              &afloat->attitude.height,
                              &afloat->gravity.x,
                              &afloat->buoyancy.z,
                              &afloat->attitude.up.x,
                              &afloat->attitude.up.z,
                              &afloat->least.freeboard };

  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    damage_number (numbers[i]);
  if (g_test_rand_int_range (0, 3) == 0)
    afloat->state = (GbAfloatState)g_test_rand_int_range (0, GB_AFLOAT_SINKS + 1);
  if (g_test_rand_int_range (0, 3) == 0)
    g_clear_pointer (&afloat->sentence, g_free);
  for (guint i = 0; i < findings->edges.lines->len; i++)
    {
      GArray *points = ((GbEdgeLine *)findings->edges.lines->pdata[i])->points;

      damage_number (&g_array_index (points, GbVec3, g_test_rand_int_range (0, (int)points->len)).z);
    }
}

static void
damage_righting (GbRighting *righting)
{
  for (guint i = 0; i < GB_N_LEVERS; i += 7)
    {
      damage_number (&righting->levers[i].heel);
      damage_number (&righting->levers[i].lever);
      damage_number (&righting->levers[i].solid);
      damage_number (&righting->levers[i].freeboard);
    }
  damage_numbers ((double *)&righting->starboard, sizeof righting->starboard);
  damage_numbers ((double *)&righting->port, sizeof righting->port);
  damage_number (&righting->gm);
  damage_number (&righting->moment);
  damage_number (&righting->total);
  for (guint i = 0; i < righting->balances->len; i++)
    damage_number (&g_array_index (righting->balances, GbBalance, i).heel);
  for (guint i = 0; i < righting->immersions->len; i++)
    {
      GbEdgeImmersion *immersion = &g_array_index (righting->immersions, GbEdgeImmersion, i);

      immersion->line = g_test_rand_int_range (-2, 4);
      damage_number (&immersion->starboard);
      damage_number (&immersion->port);
    }
}

static void
damage_map (GbCrewMap *map)
{
  double *const numbers[] = { &map->x0,
                              &map->x1,
                              &map->y0,
                              &map->y1,
                              &map->best_freeboard,
                              &map->best.x,
                              &map->best.y,
                              &map->furthest_port,
                              &map->furthest_starboard };

  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    if (g_test_rand_int_range (0, 4) == 0)
      damage_number (numbers[i]);
  for (guint i = 0; i < GB_MAP_ROWS * GB_MAP_COLUMNS; i += 5)
    {
      GbCrewPlace *place = &map->places[i / GB_MAP_COLUMNS][i % GB_MAP_COLUMNS];

      damage_number (&place->freeboard);
      damage_number (&place->heel);
      damage_number (&place->trim);
      place->line = g_test_rand_int_range (-3, 5);
      if (g_test_rand_int_range (0, 4) == 0)
        place->state = (GbAfloatState)g_test_rand_int_range (0, GB_AFLOAT_SINKS + 1);
    }
  map->n_rows_found = (guint)g_test_rand_int_range (0, GB_MAP_ROWS + 3);
  map->first_under = g_test_rand_int_range (-2, 5);
  map->load = g_test_rand_int_range (0, 5);
}

static void
damage_swamped (GbSwamped *swamped)
{
  GbSwampedRest *const rests[] = { &swamped->aboard, &swamped->holding_on };
  double *const numbers[]
      = { &swamped->holding, &swamped->foam_volume, &swamped->foam_mass,   &swamped->foam_x,
          &swamped->foam_y,  &swamped->foam_apart,  &swamped->foam_lowest, &swamped->no_volume_mass };

  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    damage_number (numbers[i]);
  for (guint i = 0; i < G_N_ELEMENTS (rests); i++)
    {
      damage_numbers ((double *)&rests[i]->attitude, sizeof rests[i]->attitude);
      damage_number (&rests[i]->heel);
      damage_number (&rests[i]->trim);
      damage_number (&rests[i]->most);
      damage_number (&rests[i]->weight);
      damage_number (&rests[i]->edge);
      damage_number (&rests[i]->gm);
      rests[i]->kind = (GbRestKind)g_test_rand_int_range (0, 3);
    }
}

static void
damage_all (Sample *sample)
{
  GbBuild *build = (GbBuild *)gb_boat_build (sample->boat);

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
  damage_number (&build->freeboard);
  damage_afloat (&sample->findings);
  damage_righting (sample->righting);
  damage_map (sample->crew_map);
  damage_swamped (sample->swamped);
  damage_number (&sample->moved_to.x);
}

static void
assert_no_number_missing (const char *words)
{
  if (strstr (words, "nan") != NULL || strstr (words, "inf") != NULL)
    g_error ("no number in words: %s", words);
}

static void
assert_sound (GbChart *chart)
{
  static const GbChartStyle styles[] = { GB_CHART_LIGHT, GB_CHART_DARK, GB_CHART_PRINT };
  g_autofree char *tip = NULL;
  g_auto (Paper) paper;
  GbChartSpot spot;

  paper_init (&paper, 640, 300, styles[g_test_rand_int_range (0, 3)]);
  gb_chart_render (chart, &paper.canvas, g_test_rand_int_range (0, 2));
  g_assert_cmpint (cairo_status (paper.cr), ==, CAIRO_STATUS_SUCCESS);
  tip = gb_chart_tooltip (chart, 640, 300, g_test_rand_double_range (0, 640),
                          g_test_rand_double_range (0, 300));
  gb_chart_pick (chart, 640, 300, g_test_rand_double_range (0, 640), g_test_rand_double_range (0, 300));
  gb_chart_locate (chart, 640, 300, g_test_rand_double_range (0, 640), g_test_rand_double_range (0, 300),
                   g_test_rand_int_range (-1, 4), &spot);
  g_assert_cmpuint (strlen (gb_chart_title (chart)), >, 0);
  assert_no_number_missing (gb_chart_description (chart));
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
          g_autoptr (GbChart) chart = sample_chart (sample, (GbChartKind)c);

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
