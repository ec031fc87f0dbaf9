/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What a point of a picture means in the boat, and back; and the axes and lines that this rests on. */

#include "charts/level-lines.h"
#include "charts/water-axes.h"
#include "sample.h"

#include <math.h>
#include <string.h>

#define DEGREE (G_PI / 180)
#define WIDTH 900.0
#define HEIGHT 600.0

/* Axes of the water ------------------------------------------------------------ */

static GbAttitude
random_attitude (void)
{
  return gb_attitude (g_test_rand_double_range (-G_PI, G_PI), g_test_rand_double_range (-1.5, 1.5),
                      g_test_rand_double_range (-1, 1));
}

static GbVec3
random_point (void)
{
  return (GbVec3){ g_test_rand_double_range (-3, 3), g_test_rand_double_range (-3, 3),
                   g_test_rand_double_range (-3, 3) };
}

static void
assert_same (GbVec3 a, GbVec3 b)
{
  g_assert_cmpfloat_with_epsilon (a.x, b.x, 1e-9);
  g_assert_cmpfloat_with_epsilon (a.y, b.y, 1e-9);
  g_assert_cmpfloat_with_epsilon (a.z, b.z, 1e-9);
}

/* Height in them is height above the water, and there and back is where it was; fore is level, and at the
 * bow's end. */
static void
test_water_axes (void)
{
  for (guint round = 0; round < 200; round++)
    {
      GbAttitude attitude = random_attitude ();
      GbWaterAxes axes = gb_water_axes (attitude);
      GbVec3 p = random_point (), q = gb_water_axes_to (&axes, p);

      assert_same (gb_water_axes_from (&axes, q), p);
      g_assert_cmpfloat_with_epsilon (q.z, gb_attitude_above (attitude, p), 1e-9);
      g_assert_cmpfloat_with_epsilon (hypot (hypot (q.x, q.y), q.z + attitude.height),
                                      hypot (hypot (p.x, p.y), p.z), 1e-9);
      g_assert_cmpfloat (axes.fore.x, >=, -1e-12);
    }
}

/* By hand: heeled a right angle to starboard, port is up; trimmed so by the bow, the stern is. */
static void
test_water_axes_by_hand (void)
{
  GbWaterAxes heeled = gb_water_axes (gb_attitude (90 * DEGREE, 0, 0)),
              standing = gb_water_axes (gb_attitude (0, 90 * DEGREE, 0));
  GbWaterAxes odd = gb_water_axes (gb_attitude (NAN, 0, 0));

  assert_same (gb_water_axes_to (&heeled, (GbVec3){ 1, 2, 3 }), (GbVec3){ 1, -3, 2 });
  g_assert_cmpfloat_with_epsilon (gb_water_axes_to (&standing, (GbVec3){ 1, 0, 0 }).z, -1, 1e-9);
  assert_same (gb_water_axes_to (&odd, (GbVec3){ 1, 2, 3 }), (GbVec3){ 1, 2, 3 });
}

/* What stands in a view at a point's place is that point, but for what the line of sight hides. */
static void
test_on_sight (void)
{
  for (guint round = 0; round < 300; round++)
    {
      GbWaterAxes axes = gb_water_axes (random_attitude ());
      GbView view = (GbView)g_test_rand_int_range (0, GB_N_VIEWS);
      GbVec3 p = random_point (), found;
      double right, up;
      guint n_hidden;

      gb_view_place (view, gb_water_axes_to (&axes, p), &right, &up);
      found = gb_water_axes_on_sight (&axes, view, right, up, p);
      n_hidden = (isnan (found.x) ? 1 : 0) + (isnan (found.y) ? 1 : 0) + (isnan (found.z) ? 1 : 0);
      g_assert_cmpuint (n_hidden, ==, 1);
      assert_same ((GbVec3){ isnan (found.x) ? p.x : found.x, isnan (found.y) ? p.y : found.y,
                             isnan (found.z) ? p.z : found.z },
                   p);
    }
}

static void
test_on_sight_upright (void)
{
  GbWaterAxes axes = gb_water_axes_upright ();
  GbVec3 held = { 5, 6, 7 }, side = gb_water_axes_on_sight (&axes, GB_VIEW_SIDE, 1, 2, held),
         plan = gb_water_axes_on_sight (&axes, GB_VIEW_PLAN, 1, 2, held),
         end = gb_water_axes_on_sight (&axes, GB_VIEW_END, 1, 2, held);

  g_assert_true (side.x == 1 && isnan (side.y) && side.z == 2);
  g_assert_true (plan.x == 1 && plan.y == 2 && isnan (plan.z));
  g_assert_true (isnan (end.x) && end.y == -1 && end.z == 2);
}

/* Lines of a net ------------------------------------------------------------ */

/* Four corners of a square of side 1 and its middle; the value is the height of a pyramid of height 1. */
static const GbVec3 pyramid[] = { { 0, 0, 0 }, { 1, 0, 0 }, { 1, 1, 0 }, { 0, 1, 0 }, { 0.5, 0.5, 0 } };
static const guint faces[][3] = { { 0, 1, 4 }, { 1, 2, 4 }, { 2, 3, 4 }, { 3, 0, 4 } };

static double
area_between (const GbNet *net, double lo, double hi)
{
  double sum = 0;

  for (guint t = 0; t < net->n_triangles; t++)
    {
      GbVec3 c[GB_MOST_CORNERS];
      guint n = gb_level_part (net, t, lo, hi, c);

      for (guint k = 1; k + 1 < n; k++)
        sum += ((c[k].x - c[0].x) * (c[k + 1].y - c[0].y) - (c[k].y - c[0].y) * (c[k + 1].x - c[0].x)) / 2;
    }
  return sum;
}

/* Halfway up a pyramid is a square of half the side: closed, in five points; closed forms for the areas too.
 */
static void
test_level_lines (void)
{
  const double values[] = { 0, 0, 0, 0, 1 };
  const GbNet net = { pyramid, values, faces, G_N_ELEMENTS (faces) };
  g_autoptr (GPtrArray) lines = gb_level_lines (&net, 0.5);
  g_autoptr (GPtrArray) none = gb_level_lines (&net, 1.5);
  const GArray *line;

  g_assert_cmpuint (none->len, ==, 0);
  g_assert_cmpuint (lines->len, ==, 1);
  line = g_ptr_array_index (lines, 0);
  g_assert_cmpuint (line->len, ==, 5);
  assert_same (g_array_index (line, GbVec3, 0), g_array_index (line, GbVec3, 4));
  for (guint i = 0; i < 5; i++)
    {
      GbVec3 p = g_array_index (line, GbVec3, i);

      g_assert_cmpfloat_with_epsilon (fmax (fabs (p.x - 0.5), fabs (p.y - 0.5)), 0.25, 1e-12);
    }
  g_assert_cmpfloat_with_epsilon (area_between (&net, 0.5, INFINITY), 0.25, 1e-12);
  g_assert_cmpfloat_with_epsilon (area_between (&net, -INFINITY, 0.5), 0.75, 1e-12);
  g_assert_cmpfloat_with_epsilon (area_between (&net, 0.25, 0.5), 0.75 * 0.75 - 0.25, 1e-12);
}

/* Where a value is missing there is no line; what is left is open. A triangle that is none changes nothing.
 */
static void
test_level_lines_with_gaps (void)
{
  const double values[] = { 0, 0, NAN, 0, 1 };
  const guint with_none[][3] = { { 0, 1, 4 }, { 1, 2, 4 }, { 2, 3, 4 }, { 3, 0, 4 }, { 4, 4, 0 } };
  const GbNet net = { pyramid, values, with_none, G_N_ELEMENTS (with_none) };
  g_autoptr (GPtrArray) lines = gb_level_lines (&net, 0.5);

  g_assert_cmpuint (lines->len, ==, 1);
  g_assert_cmpuint (((const GArray *)g_ptr_array_index (lines, 0))->len, ==, 3);
  g_assert_cmpfloat_with_epsilon (area_between (&net, -INFINITY, INFINITY), 0.5, 1e-12);
}

/* Places in a chart ------------------------------------------------------------ */

/* Looks through all that the pointer finds for a load, in a view. */
static gboolean
find_load (GbChart *chart, gint64 id, int view, double *x, double *y, GbChartSpot *spot)
{
  g_auto (Paper) paper;

  paper_init_blank (&paper, WIDTH, HEIGHT, GB_CHART_LIGHT);
  gb_chart_render (chart, &paper.canvas, FALSE);
  for (guint i = 0; i < paper.canvas.hits->len; i++)
    {
      GbBox box = g_array_index (paper.canvas.hits, GbHit, i).box;

      *x = box.x + box.width / 2;
      *y = box.y + box.height / 2;
      if (gb_chart_locate (chart, WIDTH, HEIGHT, *x, *y, -1, spot) && spot->kind == GB_RECORD_LOAD
          && spot->id == id && spot->view == view)
        return TRUE;
    }
  return FALSE;
}

static const GbVec3 helm = { 0.75, 0, 0.52 };

/* The pointer is on the middle of the mark. */
static void
assert_near (GbVec3 at, GbVec3 wanted)
{
  const double slack = 1e-6;

  g_assert_true (isnan (at.x) || fabs (at.x - wanted.x) < slack);
  g_assert_true (isnan (at.y) || fabs (at.y - wanted.y) < slack);
  g_assert_true (isnan (at.z) || fabs (at.z - wanted.z) < slack);
}

static void
test_loads_are_found (void)
{
  g_autoptr (GbChart) chart = sample_chart_alone (SAMPLE_PRAM, GB_CHART_FLOATING);

  for (int view = 0; view < GB_N_VIEWS; view++)
    {
      GbChartSpot spot;
      double x, y;

      g_assert_true (find_load (chart, 1, view, &x, &y, &spot));
      assert_near (spot.at, helm);
      g_assert_true (view == GB_VIEW_SIDE   ? isnan (spot.at.y)
                     : view == GB_VIEW_PLAN ? isnan (spot.at.z)
                                            : isnan (spot.at.x));
    }
}

/* The load is moved to what a point means; then it is at that point. */
static void
test_drag (void)
{
  g_autoptr (Sample) sample = sample_new (SAMPLE_PRAM);
  g_autoptr (GbChart) before = sample_chart (sample, GB_CHART_FLOATING);
  g_autoptr (GbChart) after = NULL;
  GbChartSpot spot, there;
  double x, y;

  g_assert_true (find_load (before, 1, GB_VIEW_PLAN, &x, &y, &spot));
  g_assert_true (gb_chart_locate (before, WIDTH, HEIGHT, x + 40, y + 30, spot.view, &spot));
  g_assert_cmpfloat (spot.at.x, >, helm.x);
  g_assert_cmpfloat (spot.at.y, <, helm.y);
  sample->moved_to = (GbVec3){ spot.at.x, spot.at.y, helm.z };
  after = sample_chart (sample, GB_CHART_FLOATING);
  g_assert_true (gb_chart_locate (after, WIDTH, HEIGHT, x + 40, y + 30, -1, &there));
  g_assert_cmpint (there.kind, ==, GB_RECORD_LOAD);
  g_assert_cmpint (there.id, ==, 1);
  g_assert_cmpfloat_with_epsilon (there.at.x, spot.at.x, 1e-6);
  g_assert_cmpfloat_with_epsilon (there.at.y, spot.at.y, 1e-6);
}

/* A drag is reckoned in the view that it began in, wherever the pointer is. */
static void
test_drag_keeps_its_view (void)
{
  g_autoptr (GbChart) chart = sample_chart_alone (SAMPLE_PRAM, GB_CHART_FLOATING);
  GbChartSpot in_side, in_plan, spot;
  double x, y, side_x, side_y;

  g_assert_true (find_load (chart, 1, GB_VIEW_SIDE, &side_x, &side_y, &in_side));
  g_assert_true (find_load (chart, 1, GB_VIEW_PLAN, &x, &y, &in_plan));
  g_assert_true (gb_chart_locate (chart, WIDTH, HEIGHT, x, y, GB_VIEW_SIDE, &spot));
  g_assert_cmpint (spot.view, ==, GB_VIEW_SIDE);
  g_assert_true (isnan (spot.at.y));
  g_assert_cmpfloat (fabs (spot.at.z - in_side.at.z), >, 0.2);
  g_assert_false (gb_chart_locate (chart, WIDTH, HEIGHT, 1, 1, -1, &spot));
  g_assert_true (gb_chart_locate (chart, WIDTH, HEIGHT, 1, 1, GB_VIEW_END, &spot));
  g_assert_false (gb_chart_locate (chart, WIDTH, HEIGHT, x, y, 7, &spot));
  g_assert_false (gb_chart_locate (chart, WIDTH, HEIGHT, NAN, y, -1, &spot));
  g_assert_false (gb_chart_locate (chart, 0, HEIGHT, x, y, -1, &spot));
}

/* On the map there is one view; each place says what it does. */
static void
test_crew_map_places (void)
{
  g_autoptr (GbChart) chart = sample_chart_alone (SAMPLE_PRAM, GB_CHART_CREW);
  GbChartSpot spot;
  guint n_told = 0, n_over = 0;
  double x, y;

  g_assert_true (find_load (chart, 1, GB_VIEW_PLAN, &x, &y, &spot));
  assert_near (spot.at, helm);
  for (y = 0; y < HEIGHT; y += 19)
    for (x = 0; x < WIDTH; x += 19)
      {
        g_autofree char *tip = gb_chart_tooltip (chart, WIDTH, HEIGHT, x, y);

        if (tip == NULL || !gb_chart_locate (chart, WIDTH, HEIGHT, x, y, -1, &spot)
            || spot.kind == GB_RECORD_LOAD)
          continue;
        n_told++;
        g_assert_true (g_str_has_prefix (tip, "Helm, x "));
        g_assert_true (isnan (spot.at.z) && fabs (spot.at.y) < 0.61 && spot.at.x > -0.01 && spot.at.x < 2.41);
        n_over += strstr (tip, "she goes over") != NULL;
        if (fabs (spot.at.y) < 0.3 && fabs (spot.at.x - 1.1) < 0.3)
          g_assert_nonnull (strstr (tip, "least freeboard "));
      }
  g_assert_cmpuint (n_told, >, 60);
  g_assert_cmpuint (n_over, >, 5);
}

static void
test_charts_without_places (void)
{
  g_autoptr (GbChart) boat = sample_chart_alone (SAMPLE_PRAM, GB_CHART_BOAT);
  g_autoptr (GbChart) empty = sample_chart_alone (SAMPLE_EMPTY, GB_CHART_FLOATING);
  GbChartSpot spot;

  g_assert_false (gb_chart_locate (boat, WIDTH, HEIGHT, 200, 200, -1, &spot));
  g_assert_false (gb_chart_locate (empty, WIDTH, HEIGHT, 200, 200, -1, &spot));
  g_assert_cmpint (spot.kind, ==, GB_N_RECORDS);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/charts/places/water-axes", test_water_axes);
  g_test_add_func ("/charts/places/water-axes-by-hand", test_water_axes_by_hand);
  g_test_add_func ("/charts/places/on-sight", test_on_sight);
  g_test_add_func ("/charts/places/on-sight-upright", test_on_sight_upright);
  g_test_add_func ("/charts/places/level-lines", test_level_lines);
  g_test_add_func ("/charts/places/level-lines-with-gaps", test_level_lines_with_gaps);
  g_test_add_func ("/charts/places/loads-are-found", test_loads_are_found);
  g_test_add_func ("/charts/places/drag", test_drag);
  g_test_add_func ("/charts/places/drag-keeps-its-view", test_drag_keeps_its_view);
  g_test_add_func ("/charts/places/crew-map-places", test_crew_map_places);
  g_test_add_func ("/charts/places/charts-without-places", test_charts_without_places);
  return g_test_run ();
}
