/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The boat to scale: its scale, where parts stand, what lights up, and what is left out. */

#include "charts/boat-layout.h"
#include "sample.h"

#include <string.h>

static const double sizes[][2] = { { 480, 300 }, { 640, 300 }, { 320, 480 }, { 900, 600 }, { 1600, 1000 } };

static GbScene *
scene_of (const Sample *sample, const gint64 *selected)
{
  const GbChartSource source = { .boat = sample->boat, .findings = &sample->findings, .selected = selected };

  return gb_scene_new (&source);
}

/* One scale in all three views, along and up, at every size. */
static void
test_boat_is_to_scale (void)
{
  g_autoptr (Sample) sample = sample_new (SAMPLE_PRAM);
  g_autoptr (GbScene) scene = scene_of (sample, NULL);
  const GbBoatWords words = { .key = { 0, 0, 200, 110 }, .captions = { 140, 140, 140 }, .waterlines = 60 };

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      g_auto (Paper) paper;
      const GbBox box = { 12, 60, sizes[i][0] - 24, sizes[i][1] - 72 };
      GbBoatLayout layout;

      paper_init_blank (&paper, sizes[i][0], sizes[i][1], GB_CHART_LIGHT);
      layout = gb_boat_layout (scene, &paper.canvas, box, &words);
      g_assert_cmpfloat (layout.scale, >, 0);
      for (guint v = 0; v < GB_N_VIEWS; v++)
        {
          const GbBoatView *view = &layout.views[v];
          double along = (view->right.end - view->right.start) / (view->right.to - view->right.from);
          double up = (view->up.start - view->up.end) / (view->up.to - view->up.from);

          g_assert_cmpfloat_with_epsilon (along, layout.scale, layout.scale * 1e-9);
          g_assert_cmpfloat_with_epsilon (up, layout.scale, layout.scale * 1e-9);
          g_assert_cmpfloat (view->box.x, >=, box.x);
          g_assert_cmpfloat (view->box.x + view->box.width, <=, box.x + box.width);
          g_assert_cmpfloat (view->box.y + view->box.height, <=, box.y + box.height);
          for (guint w = 0; w < v; w++)
            g_assert_false (gb_box_overlaps (view->box, layout.views[w].box));
        }
    }
}

static guint
places_of (const GbScene *scene, const char *name, GbVec3 *places, guint most)
{
  guint n = 0;

  for (guint i = 0; i < scene->dots->len; i++)
    {
      const GbSceneDot *dot = &g_array_index (scene->dots, GbSceneDot, i);

      if (g_strcmp0 (g_array_index (scene->items, GbSceneItem, dot->item).name, name) == 0 && n < most)
        places[n++] = dot->at;
    }
  return n;
}

/* One of a pair at each side, with half the mass each; a pair of groups with a pair in it makes four. */
static void
test_pairs_have_two_places (void)
{
  g_autoptr (Sample) sample = sample_new (SAMPLE_PRAM);
  g_autoptr (GbScene) scene = NULL;
  g_autoptr (GbScene) doubled = NULL;
  GbPart *hull = (GbPart *) gb_boat_part (sample->boat, 1);
  GbVec3 at[8];

  scene = scene_of (sample, NULL);
  g_assert_cmpuint (places_of (scene, "Side panel", at, 8), ==, 2);
  g_assert_cmpfloat_with_epsilon (at[0].y, 0.53, 1e-9);
  g_assert_cmpfloat_with_epsilon (at[1].y, -0.53, 1e-9);
  g_assert_cmpfloat_with_epsilon (at[1].x, 1.20, 1e-9);
  g_assert_cmpuint (places_of (scene, "Mast", at, 8), ==, 1);

  hull->pair = 1;
  hull->x = 0.1;
  hull->y = 2;
  doubled = scene_of (sample, NULL);
  g_assert_cmpuint (places_of (doubled, "Side panel", at, 8), ==, 4);
  g_assert_cmpfloat_with_epsilon (at[0].y, 2.53, 1e-9);
  g_assert_cmpfloat_with_epsilon (at[1].y, 1.47, 1e-9);
  g_assert_cmpfloat_with_epsilon (at[2].y, -2.53, 1e-9);
  g_assert_cmpfloat_with_epsilon (at[3].y, -1.47, 1e-9);
  g_assert_cmpfloat_with_epsilon (at[3].x, 1.30, 1e-9);
}

static void
test_picked_parts_light_up (void)
{
  g_autoptr (Sample) sample = sample_new (SAMPLE_PRAM);
  const gint64 selected[] = { 8, 12, 0 };
  g_autoptr (GbScene) scene = scene_of (sample, selected);
  g_autoptr (GString) picked = g_string_new (NULL);

  for (guint i = 0; i < scene->items->len; i++)
    {
      const GbSceneItem *item = &g_array_index (scene->items, GbSceneItem, i);

      if (item->picked)
        g_string_append_printf (picked, "%s|", item->name);
    }
  g_assert_cmpstr (picked->str, ==, "Mast|Rudder|Sail|");
}

static void
test_what_is_not_drawn_is_said (void)
{
  g_autoptr (Sample) sample = sample_new (SAMPLE_LARGE);
  g_autoptr (GbScene) scene = scene_of (sample, NULL);
  g_autoptr (GbChart) pram = sample_chart_alone (SAMPLE_PRAM, GB_CHART_BOAT);
  g_autoptr (GbChart) large = sample_chart_alone (SAMPLE_LARGE, GB_CHART_BOAT);

  g_assert_cmpfloat (scene->hi.x, <, 10);
  g_assert_cmpuint (scene->n_outside, >, 0);
  g_assert_nonnull (strstr (gb_chart_subtitle (large), "outside the picture"));
  g_assert_nonnull (strstr (gb_chart_subtitle (pram), "1 part has no place yet"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/charts/boat/boat-is-to-scale", test_boat_is_to_scale);
  g_test_add_func ("/charts/boat/pairs-have-two-places", test_pairs_have_two_places);
  g_test_add_func ("/charts/boat/picked-parts-light-up", test_picked_parts_light_up);
  g_test_add_func ("/charts/boat/what-is-not-drawn-is-said", test_what_is_not_drawn_is_said);
  return g_test_run ();
}
