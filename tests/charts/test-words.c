/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What each chart says: a finding as its title, and its values in words. */

#include "sample.h"

#include <math.h>
#include <string.h>

static void
check_sentences (GbChart *chart, GbChartKind kind, SampleKind sample)
{
  const char *texts[] = { gb_chart_title (chart), gb_chart_subtitle (chart), gb_chart_description (chart) };

  g_assert_cmpuint (strlen (texts[0]), >, 0);
  g_assert_true (g_str_has_prefix (texts[2], texts[0]));
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_assert_true (g_utf8_validate (texts[i], -1, NULL));
      g_assert_null (strstr (texts[i], "nan"));
      g_assert_null (strstr (texts[i], "inf"));
      g_assert_null (strstr (texts[i], "  "));
      g_assert_null (strstr (texts[i], ".."));
    }
}

static void
test_sentences (void)
{
  sample_for_each_chart (check_sentences);
}

static void
assert_title (SampleKind sample, GbChartKind kind, const char *title)
{
  g_autoptr (GbChart) chart = sample_chart_alone (sample, kind);

  g_assert_cmpstr (gb_chart_title (chart), ==, title);
}

static void
test_titles_are_findings (void)
{
  assert_title (SAMPLE_PRAM, GB_CHART_LIMIT,
                "42 kg may still come aboard, and the boat is 3.2 kg under its target");
  assert_title (SAMPLE_OVER, GB_CHART_LIMIT,
                "All up 129 lb over the flotation limit, and the boat is 6.2 lb over its target");
  assert_title (SAMPLE_PRAM, GB_CHART_GROUPS,
                "Hull makes up 65 % of the weight; 17 % of the whole is still estimated");
  assert_title (SAMPLE_PRAM, GB_CHART_HISTORY,
                "Weighing has lowered the forecast by 0.8 kg; 51 % is weighed");
  assert_title (SAMPLE_OVER, GB_CHART_HISTORY, "Weighing has raised the forecast by 7.5 lb; 51 % is weighed");
  assert_title (SAMPLE_PRAM, GB_CHART_BOAT,
                "All up, the weight lies 80 mm aft of the buoyancy: the stern will go down");
  assert_title (SAMPLE_PRAM, GB_CHART_DRAUGHT,
                "All up the boat floats 203 mm deep, with 217 mm of freeboard");
  assert_title (SAMPLE_LARGE, GB_CHART_DRAUGHT, "All up 1061302 kg is more than the hulls can carry");
  assert_title (SAMPLE_PRAM, GB_CHART_COURSE,
                "€\u00a0302.00 spent, and €\u00a017.20 of the budget will be left if all goes as planned");
  assert_title (SAMPLE_OVER, GB_CHART_COURSE,
                "€\u00a0401.00 spent, and the plan goes €\u00a081.80 over the budget");
  assert_title (SAMPLE_PRAM, GB_CHART_HEADS, "Every head keeps within its budget");
  assert_title (SAMPLE_OVER, GB_CHART_HEADS, "Timber goes €\u00a092.40 over its budget");
}

/* The parts of a limit's title, with each of its two limits known or not. */
static void
test_limit_with_one_limit (void)
{
  g_autoptr (Sample) sample = sample_new (SAMPLE_PRAM);
  g_autoptr (GbChart) no_target = NULL;
  g_autoptr (GbChart) no_limit = NULL;
  g_autoptr (GbChart) neither = NULL;
  GbBuild *build = (GbBuild *) gb_boat_build (sample->boat);

  build->target_mass = NAN;
  no_target = sample_chart (sample, GB_CHART_LIMIT);
  g_assert_cmpstr (gb_chart_title (no_target), ==, "42 kg may still come aboard");
  sample->findings.flotation.left = sample->findings.flotation.chance
      = sample->findings.flotation.limit.displacement = NAN;
  neither = sample_chart (sample, GB_CHART_LIMIT);
  g_assert_cmpstr (gb_chart_title (neither), ==, "All up 177 kg; no limit is known yet");
  build->target_mass = 26;
  build->freeboard = NAN;
  no_limit = sample_chart (sample, GB_CHART_LIMIT);
  g_assert_cmpstr (gb_chart_title (no_limit), ==, "2.8 kg over target");
  g_assert_nonnull (strstr (gb_chart_subtitle (no_limit), "accepted least freeboard"));
  sample_assert_draws (neither, 640, 300, GB_CHART_LIGHT);
  sample_assert_draws (no_limit, 640, 300, GB_CHART_LIGHT);
}

static void
assert_described (SampleKind sample, GbChartKind kind, const char *const *values)
{
  g_autoptr (GbChart) chart = sample_chart_alone (sample, kind);

  for (guint i = 0; values[i] != NULL; i++)
    if (strstr (gb_chart_description (chart), values[i]) == NULL)
      g_error ("\"%s\" is not in \"%s\"", values[i], gb_chart_description (chart));
}

static void
test_descriptions_hold_the_values (void)
{
  assert_described (SAMPLE_PRAM, GB_CHART_LIMIT,
                    (const char *[]){ "26.9 kg", "1.9 kg", "148 kg", "218 kg", "32 kg", "177 kg", NULL });
  assert_described (
      SAMPLE_PRAM, GB_CHART_GROUPS,
      (const char *[]){ "Hull: 17.5 kg", "Weighed 12.9 kg", "Rig: 4.5 kg", "Paint and glue: 1.2 kg", NULL });
  assert_described (SAMPLE_PRAM, GB_CHART_HISTORY,
                    (const char *[]){ "Before anything was weighed: forecast 27.9 kg", "2025-04-05",
                                      "38 % weighed", "Target 32 kg", NULL });
  assert_described (SAMPLE_PRAM, GB_CHART_BOAT,
                    (const char *[]){ "all up: x 1080 mm, y 40 mm, z 470 mm", "buoyancy: x 1160 mm",
                                      "Bottom: 6.2 kg", NULL });
  assert_described (SAMPLE_PRAM, GB_CHART_DRAUGHT,
                    (const char *[]){ "218 kg: draught 240 mm", "177 kg: draught 203 mm", "440 kg", NULL });
  assert_described (SAMPLE_PRAM, GB_CHART_COURSE,
                    (const char *[]){ "2025-03-01: €\u00a0155.00", "Still to buy €\u00a0135.80",
                                      "Budget €\u00a0470.00", NULL });
  assert_described (SAMPLE_PRAM, GB_CHART_HEADS,
                    (const char *[]){ "Timber: Spent €\u00a0184.50. Still to buy €\u00a028.90.",
                                      "Budget €\u00a0220.00", NULL });
}

static void
test_empty_charts_say_what_belongs_there (void)
{
  g_autoptr (Sample) sample = sample_new (SAMPLE_EMPTY);

  for (guint c = 0; c < GB_N_CHARTS; c++)
    {
      g_autoptr (GbChart) chart = sample_chart (sample, (GbChartKind) c);
      g_autofree char *tip = gb_chart_tooltip (chart, 640, 300, 320, 150);

      g_assert_true (gb_chart_is_empty (chart));
      g_assert_null (tip);
      g_assert_cmpint (gb_chart_pick (chart, 640, 300, 320, 150), ==, 0);
    }
}

/* What is unknown is counted in words, and nothing is made of it. */
static void
test_unknown_is_counted (void)
{
  g_autoptr (Sample) sample = sample_new (SAMPLE_UNKNOWN);
  static const GbChartKind counting[] = { GB_CHART_LIMIT, GB_CHART_GROUPS };

  for (guint c = 0; c < GB_N_CHARTS; c++)
    {
      g_autoptr (GbChart) chart = sample_chart (sample, (GbChartKind) c);

      g_assert_cmpint (gb_chart_is_empty (chart), ==, c != GB_CHART_BOAT && c != GB_CHART_HEADS);
      g_assert_null (strstr (gb_chart_description (chart), " 0 kg"));
      g_assert_null (strstr (gb_chart_description (chart), "0.00"));
    }
  for (guint i = 0; i < G_N_ELEMENTS (counting); i++)
    {
      g_autoptr (GbChart) chart = sample_chart (sample, counting[i]);

      g_assert_nonnull (strstr (gb_chart_subtitle (chart), "1 part has no mass yet"));
    }
}

static void
test_kinds_have_names (void)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint c = 0; c < GB_N_CHARTS; c++)
    {
      g_assert_cmpuint (strlen (gb_chart_kind_label ((GbChartKind) c)), >, 0);
      g_assert_true (g_hash_table_add (seen, (gpointer) gb_chart_kind_name ((GbChartKind) c)));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/charts/words/sentences", test_sentences);
  g_test_add_func ("/charts/words/titles-are-findings", test_titles_are_findings);
  g_test_add_func ("/charts/words/limit-with-one-limit", test_limit_with_one_limit);
  g_test_add_func ("/charts/words/descriptions-hold-the-values", test_descriptions_hold_the_values);
  g_test_add_func ("/charts/words/empty-charts-say-what-belongs-there",
                   test_empty_charts_say_what_belongs_there);
  g_test_add_func ("/charts/words/unknown-is-counted", test_unknown_is_counted);
  g_test_add_func ("/charts/words/kinds-have-names", test_kinds_have_names);
  return g_test_run ();
}
