/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What the charts of floating say and measure, in each state that a boat can be in. */

#include "charts/floating-scene.h"
#include "sample.h"

#include <math.h>
#include <string.h>

#define DEGREE (G_PI / 180)

static void
assert_says (const char *words, const char *part)
{
  if (strstr (words, part) == NULL)
    g_error ("\"%s\" is not in: %s", part, words);
}

static void
assert_chart_says (SampleKind sample, GbChartKind kind, const char *title, const char *const *described)
{
  g_autoptr (GbChart) chart = sample_chart_alone (sample, kind);

  assert_says (gb_chart_title (chart), title);
  for (guint i = 0; described[i] != NULL; i++)
    assert_says (gb_chart_description (chart), described[i]);
}

static void
test_words (void)
{
  assert_chart_says (SAMPLE_PRAM, GB_CHART_FLOATING, "by the stern, heeled 3° to starboard, with ",
                     (const char *[]){ "177 kg of 218 kg", "Draught: aft 190 mm", "Least freeboard",
                                       "Helm: 78 kg, x 750 mm", "Centre of buoyancy: x 1070 mm", NULL });
  assert_chart_says (SAMPLE_OVER, GB_CHART_FLOATING, "She fills: the edge of “Hull” is 1/2\" under water",
                     (const char *[]){ "14.0° to starboard", " under", NULL });
  assert_chart_says (SAMPLE_LARGE, GB_CHART_FLOATING, "She sinks: 1061 t aboard, 440 kg floats her",
                     (const char *[]){ "Nobody aboard", NULL });
  assert_chart_says (SAMPLE_PRAM, GB_CHART_FREEBOARD, "Hull",
                     (const char *[]){ "Least accepted: 180 mm", "aft, to starboard", NULL });
  assert_chart_says (
      SAMPLE_PRAM, GB_CHART_RIGHTING, "She comes back from up to 96°; greatest lever 162 mm at 48°",
      (const char *[]){ "GM 310 mm", "Hull goes under at 24° to starboard", "Hull goes under at 22° to port",
                        "balances at 0° and stays", "Area under the curve 0.165 m rad", NULL });
  assert_chart_says (
      SAMPLE_OVER, GB_CHART_RIGHTING,
      "She comes back from up to 24°, then she fills; greatest lever before that 4 1/2\" at 24°",
      (const char *[]){ "dashed: with all liquids frozen", "heels to 8°",
                        "She fills at 24°. Were she closed, the lever would vanish at 96°", "0.0820 ft rad",
                        NULL });
  assert_chart_says (
      SAMPLE_PRAM, GB_CHART_CREW,
      "“Helm” is best at x 1100 mm, in the middle: that leaves 240 mm of freeboard",
      (const char *[]){ "160 mm to starboard … 160 mm to port", "Lowest edge now: Hull", NULL });
  assert_chart_says (SAMPLE_OVER, GB_CHART_CREW, "Each place for “Helm” is being worked out",
                     (const char *[]){ NULL });
  assert_chart_says (
      SAMPLE_PRAM, GB_CHART_SWAMPED, "Swamped, she floats with her lowest edge",
      (const char *[]){ "13 % of their weight", "none needed", "2 parts, 3.2 kg: they carry nothing", NULL });
  assert_chart_says (SAMPLE_OVER, GB_CHART_SWAMPED,
                     "As far as densities are known, she sinks when swamped: 4.6 gal of foam needed",
                     (const char *[]){ "to either side", NULL });
}

/* Before the worker has answered, and where there is nothing to ask it. */
static void
test_waiting (void)
{
  g_autoptr (Sample) sample = sample_new (SAMPLE_PRAM);
  static const struct
  {
    GbChartKind kind;
    const char *waiting;
  } cases[] = { { GB_CHART_RIGHTING, "The righting lever is being worked out" },
                { GB_CHART_SWAMPED, "How she lies full of water is being worked out" },
                { GB_CHART_CREW, "What each place does is being worked out" } };

  g_clear_pointer (&sample->righting, gb_righting_free);
  g_clear_pointer (&sample->crew_map, gb_crew_map_free);
  g_clear_pointer (&sample->swamped, gb_swamped_free);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GbChart) chart = sample_chart (sample, cases[i].kind);

      g_assert_true (gb_chart_is_empty (chart));
      g_assert_cmpstr (gb_chart_title (chart), ==, cases[i].waiting);
    }
  sample->moved = 0;
  {
    g_autoptr (GbChart) chart = sample_chart (sample, GB_CHART_CREW);

    assert_says (gb_chart_title (chart), "Pick a person");
  }
}

/* Nothing is known of her, and where she sinks there is no curve. */
static void
test_not_afloat (void)
{
  static const GbChartKind kinds[]
      = { GB_CHART_FLOATING, GB_CHART_FREEBOARD, GB_CHART_CREW, GB_CHART_RIGHTING, GB_CHART_SWAMPED };

  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autoptr (GbChart) unknown = sample_chart_alone (SAMPLE_UNKNOWN, kinds[i]);
      g_autoptr (GbChart) sunk = sample_chart_alone (SAMPLE_LARGE, kinds[i]);

      g_assert_true (gb_chart_is_empty (unknown));
      g_assert_cmpint (gb_chart_is_empty (sunk), ==, kinds[i] != GB_CHART_FLOATING);
    }
}

static void
test_states_without_a_sentence (void)
{
  static const struct
  {
    GbAfloatState state;
    const char *title;
  } cases[] = { { GB_AFLOAT_SINKS, "She sinks" },
                { GB_AFLOAT_OVER, "She has gone over" },
                { GB_AFLOAT_FILLS, "Water comes over an edge" } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (Sample) sample = sample_new (SAMPLE_PRAM);
      g_autoptr (GbChart) chart = NULL;

      sample->findings.afloat[0].state = cases[i].state;
      chart = sample_chart (sample, GB_CHART_FLOATING);
      g_assert_cmpstr (gb_chart_title (chart), ==, cases[i].title);
    }
}

/* A pram of 1.2 m, heeled: what is measured is what the engine's own edges and attitude say. */
static void
test_measured (void)
{
  g_autoptr (Sample) sample = sample_new (SAMPLE_PRAM);
  const GbAfloat *afloat = &sample->findings.afloat[0];
  const GbChartSource source
      = { .boat = sample->boat, .findings = &sample->findings, .moved_to = { NAN, NAN, NAN } };
  g_autoptr (GbFloating) floating = gb_floating_new (&source, &afloat->attitude, GB_ALL_VIEWS);
  const GbMeasured *measured = floating->measured;
  g_autofree char *where = NULL;

  gb_floating_take (floating, afloat);
  g_assert_cmpfloat_with_epsilon (measured[GB_FREEBOARD_LEAST].value, afloat->least.freeboard, 1e-9);
  g_assert_cmpfloat_with_epsilon (measured[GB_FREEBOARD_STARBOARD].value, afloat->least.freeboard, 1e-9);
  g_assert_cmpfloat (measured[GB_FREEBOARD_PORT].value, >, afloat->least.freeboard);
  for (guint i = 0; i <= GB_DRAUGHT_FORE; i++)
    g_assert_cmpfloat_with_epsilon (measured[i].to.z, 0, 1e-6);
  where = gb_floating_where_least (floating);
  g_assert_cmpstr (where, ==, "aft, to starboard");
  g_assert_cmpuint (floating->waterline->len, ==, 1);
}

/* An empty picture says the true reason. */
static void
test_reasons (void)
{
  g_autoptr (Sample) sample = sample_new (SAMPLE_PRAM);
  g_autoptr (GbChart) dry = NULL;
  g_autoptr (GbChart) light = NULL;
  GbAfloat *afloat = &sample->findings.afloat[0];

  sample->swamped->holding_on.kind = GB_REST_SINKS;
  sample->swamped->parts_volume = sample->swamped->hulls_volume = 0;
  light = sample_chart (sample, GB_CHART_SWAMPED);
  g_assert_true (gb_chart_is_empty (light));
  assert_says (gb_chart_title (light), "no part has a known density");

  afloat->state = GB_AFLOAT_UNKNOWN;
  g_free (afloat->sentence);
  afloat->sentence = g_strdup ("The water's density is missing.");
  dry = sample_chart (sample, GB_CHART_FLOATING);
  g_assert_true (gb_chart_is_empty (dry));
  g_assert_cmpstr (gb_chart_title (dry), ==, "The water's density is missing");
}

/* A limit of nothing is no limit to be "of". */
static void
test_no_limit (void)
{
  g_autoptr (Sample) sample = sample_new (SAMPLE_PRAM);
  g_autoptr (GbChart) chart = NULL;

  sample->findings.afloat[0].limit = 0;
  chart = sample_chart (sample, GB_CHART_FLOATING);
  assert_says (gb_chart_description (chart), "177 kg: an edge is lower than the accepted freeboard");
}

/* Where an opening is the lowest, it is named. */
static void
test_opening_is_named (void)
{
  g_autoptr (Sample) sample = sample_new (SAMPLE_PRAM);
  g_autoptr (GbChart) chart = NULL;
  GbEdgeLine *line = g_ptr_array_index (sample->findings.edges.lines, 0);

  line->opening = 77;
  g_free (line->name);
  line->name = g_strdup ("Hull, slot");
  chart = sample_chart (sample, GB_CHART_FLOATING);
  assert_says (gb_chart_title (chart), "of freeboard at “Hull, slot”");
}

/* The moment is to one side, and said of that one. */
static void
test_moment_has_a_side (void)
{
  g_autoptr (GbChart) chart = sample_chart_alone (SAMPLE_OVER, GB_CHART_RIGHTING);
  const char *first = strstr (gb_chart_description (chart), "Under the heeling moment");

  g_assert_nonnull (first);
  g_assert_null (strstr (first + 1, "Under the heeling moment"));
}

/* While a load is dragged: a few degrees change nothing in what is shown, many degrees are shown wholly. */
static void
test_scale_is_held (void)
{
  g_autoptr (Sample) sample = sample_new (SAMPLE_PRAM);
  const GbChartSource source
      = { .boat = sample->boat, .findings = &sample->findings, .moved_to = { NAN, NAN, NAN } };
  static const double heels[] = { 1, 3, 40 };
  const GbAttitude upright = gb_attitude (0, 0, 0.2);
  g_autoptr (GbScene) base = gb_scene_new_loads (&source, &upright, GB_ALL_VIEWS);

  for (guint i = 0; i < G_N_ELEMENTS (heels); i++)
    {
      const GbAttitude heeled = gb_attitude (heels[i] * DEGREE, 0, 0.2);
      g_autoptr (GbScene) scene = gb_scene_new_loads (&source, &heeled, GB_ALL_VIEWS);
      const GbMesh *mesh = &g_array_index (scene->hulls, GbSceneHull, 0).mesh;

      gb_scene_hold (scene, base);
      g_assert_cmpint (scene->lo.y == base->lo.y && scene->hi.z == base->hi.z, ==, heels[i] < 10);
      for (guint k = 0; k < mesh->n_points; k++)
        {
          GbVec3 p = mesh->points[k];

          g_assert_true (p.x > scene->lo.x && p.y > scene->lo.y && p.z > scene->lo.z);
          g_assert_true (p.x < scene->hi.x && p.y < scene->hi.y && p.z < scene->hi.z);
        }
    }
}

/* The sizes that the page of floating gives its picture. */
static const double panes[][2] = { { 690, 310 }, { 570, 170 } };

/* A title of two lines moves nothing. */
static void
test_title_moves_nothing (void)
{
  g_autoptr (Sample) sample = sample_new (SAMPLE_PRAM);
  g_autoptr (GbChart) brief = NULL;
  g_autoptr (GbChart) lengthy = NULL;
  GbBuild *build = (GbBuild *)gb_boat_build (sample->boat);

  build->freeboard = 0.01;
  brief = sample_chart (sample, GB_CHART_FLOATING);
  build->freeboard = 0.5;
  lengthy = sample_chart (sample, GB_CHART_FLOATING);
  g_assert_cmpuint (strlen (gb_chart_title (lengthy)), >, strlen (gb_chart_title (brief)) + 20);
  for (guint i = 0; i < G_N_ELEMENTS (panes); i++)
    {
      g_auto (Paper) one;
      g_auto (Paper) other;

      paper_init_blank (&one, panes[i][0], panes[i][1], GB_CHART_LIGHT);
      paper_init_blank (&other, panes[i][0], panes[i][1], GB_CHART_LIGHT);
      gb_chart_render (brief, &one.canvas, FALSE);
      gb_chart_render (lengthy, &other.canvas, FALSE);
      g_assert_cmpuint (one.canvas.hits->len, ==, other.canvas.hits->len);
      for (guint k = 0; k < one.canvas.hits->len; k++)
        {
          GbBox a = g_array_index (one.canvas.hits, GbHit, k).box;
          GbBox b = g_array_index (other.canvas.hits, GbHit, k).box;

          g_assert_true (a.x == b.x && a.y == b.y && a.width == b.width && a.height == b.height);
        }
    }
}

/* All three views are there in each, and take most of its width. */
static void
test_panes_are_filled (void)
{
  g_autoptr (GbChart) chart = sample_chart_alone (SAMPLE_PRAM, GB_CHART_FLOATING);

  for (guint i = 0; i < G_N_ELEMENTS (panes); i++)
    {
      double first = INFINITY, last = 0;
      guint seen = 0;

      for (double x = 0; x < panes[i][0]; x += 15)
        for (double y = 0; y < panes[i][1]; y += 15)
          {
            GbChartSpot spot;

            if (!gb_chart_locate (chart, panes[i][0], panes[i][1], x, y, -1, &spot))
              continue;
            seen |= 1u << spot.view;
            first = fmin (first, x);
            last = fmax (last, x);
          }
      g_assert_cmpuint (seen, ==, GB_ALL_VIEWS);
      g_assert_cmpfloat (last - first, >, panes[i][0] * 0.6);
    }
}

/* The waterline is closed and goes all round. */
static void
test_waterline (void)
{
  g_autoptr (Sample) sample = sample_new (SAMPLE_PRAM);
  const GbChartSource source
      = { .boat = sample->boat, .findings = &sample->findings, .moved_to = { NAN, NAN, NAN } };
  const GbAttitude level = gb_attitude (0, 0, 0.25);
  g_autoptr (GbFloating) floating = gb_floating_new (&source, &level, GB_ALL_VIEWS);
  GbHydrostatics at = gb_hydrostatics_at (&sample->findings.hulls, 1000, 0.25);
  double area = 0;

  for (guint i = 0; i < floating->waterline->len; i++)
    {
      const GArray *line = g_ptr_array_index (floating->waterline, i);
      GbVec3 first = g_array_index (line, GbVec3, 0), last = g_array_index (line, GbVec3, line->len - 1);

      g_assert_true (first.x == last.x && first.y == last.y);
      for (guint k = 0; k + 1 < line->len; k++)
        {
          GbVec3 p = g_array_index (line, GbVec3, k), q = g_array_index (line, GbVec3, k + 1);

          g_assert_cmpfloat_with_epsilon (p.z, 0, 1e-9);
          area += (p.x * q.y - q.x * p.y) / 2;
        }
    }
  g_assert_cmpfloat_with_epsilon (fabs (area), at.waterplane, 1e-9);
}

/* Told under the pointer. */
static void
test_tooltips (void)
{
  static const struct
  {
    GbChartKind kind;
    const char *begin;
  } cases[] = {
    { GB_CHART_FLOATING, "Hull, aft, to starboard: freeboard " },
    { GB_CHART_FLOATING, "Draught aft 190 mm" },
    { GB_CHART_FLOATING, "Crew: 64 kg" },
    { GB_CHART_FREEBOARD, "Hull, x 1200 mm, starboard: " },
    { GB_CHART_RIGHTING, "Heeled 30° to starboard: lever " },
    { GB_CHART_RIGHTING, "Heeled 12° to port: lever " },
    { GB_CHART_SWAMPED, "Helm: 78 kg" },
    { GB_CHART_CREW, "Crew: 64 kg" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GbChart) chart = sample_chart_alone (SAMPLE_PRAM, cases[i].kind);
      gboolean found = FALSE;
      g_auto (Paper) paper;

      paper_init_blank (&paper, 900, 600, GB_CHART_LIGHT);
      gb_chart_render (chart, &paper.canvas, FALSE);
      for (guint k = 0; k < paper.canvas.hits->len && !found; k++)
        {
          GbBox box = g_array_index (paper.canvas.hits, GbHit, k).box;
          g_autofree char *tip
              = gb_chart_tooltip (chart, 900, 600, box.x + box.width / 2, box.y + box.height / 2);

          found = tip != NULL && g_str_has_prefix (tip, cases[i].begin);
        }
      if (!found)
        g_error ("no tooltip begins \"%s\"", cases[i].begin);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/charts/floating/words", test_words);
  g_test_add_func ("/charts/floating/waiting", test_waiting);
  g_test_add_func ("/charts/floating/not-afloat", test_not_afloat);
  g_test_add_func ("/charts/floating/states-without-a-sentence", test_states_without_a_sentence);
  g_test_add_func ("/charts/floating/measured", test_measured);
  g_test_add_func ("/charts/floating/reasons", test_reasons);
  g_test_add_func ("/charts/floating/no-limit", test_no_limit);
  g_test_add_func ("/charts/floating/opening-is-named", test_opening_is_named);
  g_test_add_func ("/charts/floating/moment-has-a-side", test_moment_has_a_side);
  g_test_add_func ("/charts/floating/scale-is-held", test_scale_is_held);
  g_test_add_func ("/charts/floating/title-moves-nothing", test_title_moves_nothing);
  g_test_add_func ("/charts/floating/panes-are-filled", test_panes_are_filled);
  g_test_add_func ("/charts/floating/waterline", test_waterline);
  g_test_add_func ("/charts/floating/tooltips", test_tooltips);
  return g_test_run ();
}
