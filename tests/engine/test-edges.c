/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The edges that must stay dry: hulls' own and openings, where they lie and which is nearest to the water. */

#include "hull-fixture.h"

#include "engine/edges.h"

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (GbHullSet, gb_hull_set_clear)
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (GbEdgeSet, gb_edge_set_clear)

static GbOpening *
add_opening (GbBoat *boat, const GbHull *hull, const char *name)
{
  GbOpening *opening = add_record (boat, GB_RECORD_OPENING, hull->rec.id);

  opening->name = g_strdup (name);
  return opening;
}

static GbCorner *
add_corner (GbBoat *boat, const GbOpening *opening, double x, double y, double z)
{
  GbCorner *corner = add_record (boat, GB_RECORD_CORNER, opening->rec.id);

  corner->x = x;
  corner->y = y;
  corner->z = z;
  return corner;
}

static void
find (GbEdgeSet *set, GbHullSet *hulls, GbBoat *boat)
{
  find_hulls (hulls, boat);
  gb_edge_set_find (set, boat, hulls);
}

static const GbEdgeLine *
line_of (const GbEdgeSet *set, guint i)
{
  g_assert_cmpuint (i, <, set->lines->len);
  return set->lines->pdata[i];
}

static void
assert_point (const GbEdgeLine *line, guint i, double x, double y, double z)
{
  GbVec3 p;

  g_assert_cmpuint (i, <, line->points->len);
  p = g_array_index (line->points, GbVec3, i);
  assert_near (p.x, x, 1e-12);
  assert_near (p.y, y, 1e-12);
  assert_near (p.z, z, 1e-12);
}

static void
test_own_edge (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_auto (GbHullSet) hulls = { NULL, 0 };
  g_auto (GbEdgeSet) set = { 0 };
  GbHull *hull = add_block (boat, 4, 1, 0.5);
  const GArray *points;

  hull->name = g_strdup ("Box");
  find (&set, &hulls, boat);
  g_assert_cmpuint (set.lines->len, ==, 1);
  g_assert_cmpuint (set.troubles->len, ==, 0);
  g_assert_cmpint (line_of (&set, 0)->hull, ==, hull->rec.id);
  g_assert_cmpint (line_of (&set, 0)->opening, ==, 0);
  g_assert_cmpstr (line_of (&set, 0)->name, ==, "Box");
  g_assert_false (line_of (&set, 0)->mirrored);
  points = line_of (&set, 0)->points;
  g_assert_cmpmem (&g_array_index (points, GbVec3, 0), sizeof (GbVec3),
                   &g_array_index (points, GbVec3, points->len - 1), sizeof (GbVec3));

  /* A deck all over has no edge to keep dry; nor has a hull that lies in another. */
  hull->edge = GB_EDGE_CLOSED;
  find (&set, &hulls, boat);
  g_assert_cmpuint (set.lines->len, ==, 0);
  hull->edge = GB_EDGE_OPEN;
  hull->inside = TRUE;
  find (&set, &hulls, boat);
  hulls.hulls[0].inside = TRUE;
  gb_edge_set_find (&set, boat, &hulls);
  g_assert_cmpuint (set.lines->len, ==, 0);
}

static void
test_pair_of_hulls (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_auto (GbHullSet) hulls = { NULL, 0 };
  g_auto (GbEdgeSet) set = { 0 };
  GbHull *hull = add_block (boat, 4, 0.5, 0.5);
  GbVec3 at;
  GbAttitude heeled = gb_attitude (0.1, 0, 0);

  hull->pair = TRUE;
  hull->y = 1;
  find (&set, &hulls, boat);
  g_assert_cmpuint (set.lines->len, ==, 2);
  g_assert_false (line_of (&set, 0)->mirrored);
  g_assert_true (line_of (&set, 1)->mirrored);

  /* Heeled to starboard, the outer edge of the hull to starboard is lowest: -1.25 across, 0.5 up. */
  assert_near (gb_edge_set_least (&set, heeled).freeboard, 0.5 * cos (0.1) - 1.25 * sin (0.1), 1e-12);
  g_assert_cmpint (gb_edge_set_least (&set, heeled).line, ==, 1);
  assert_near (gb_edge_set_least (&set, heeled).at.y, -1.25, 1e-12);
  assert_near (gb_edge_line_least (line_of (&set, 0), heeled, &at), 0.5 * cos (0.1) + 0.75 * sin (0.1), 1e-12);
  assert_near (at.y, 0.75, 1e-12);
}

static void
test_openings (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_auto (GbHullSet) hulls = { NULL, 0 };
  g_auto (GbEdgeSet) set = { 0 };
  GbHull *hull = add_block (boat, 4, 1, 0.5);
  GbOpening *hatch, *slot;

  hull->name = g_strdup ("Hull");
  hull->edge = GB_EDGE_CLOSED;
  hull->x = 10;
  hull->y = 2;
  hull->z = 0.1;
  hatch = add_opening (boat, hull, "hatch");
  hatch->ring = TRUE;
  add_corner (boat, hatch, 1, 0.1, 0.5);
  add_corner (boat, hatch, 2, 0.1, 0.5);
  add_corner (boat, hatch, 2, 0.3, 0.5);
  slot = add_opening (boat, hull, "slot");
  add_corner (boat, slot, 3, 0, 0.2);
  find (&set, &hulls, boat);

  g_assert_cmpuint (set.lines->len, ==, 2);
  g_assert_cmpstr (line_of (&set, 0)->name, ==, "Hull, hatch");
  g_assert_cmpint (line_of (&set, 0)->opening, ==, hatch->rec.id);
  g_assert_cmpuint (line_of (&set, 0)->points->len, ==, 4);
  assert_point (line_of (&set, 0), 0, 11, 2.1, 0.6);
  assert_point (line_of (&set, 0), 3, 11, 2.1, 0.6);
  g_assert_cmpuint (line_of (&set, 1)->points->len, ==, 1);
  assert_point (line_of (&set, 1), 0, 13, 2, 0.3);
  assert_near (gb_edge_set_least (&set, gb_attitude (0, 0, 0.25)).freeboard, 0.05, 1e-12);
  g_assert_cmpint (gb_edge_set_least (&set, gb_attitude (0, 0, 0.25)).line, ==, 1);

  /* Across the hull's own centreline, and both once more on the hull's mirror image. */
  hatch->pair = TRUE;
  find (&set, &hulls, boat);
  g_assert_cmpuint (set.lines->len, ==, 3);
  assert_point (line_of (&set, 1), 0, 11, 1.9, 0.6);
  g_assert_true (line_of (&set, 1)->mirrored);
  hull->pair = TRUE;
  find (&set, &hulls, boat);
  g_assert_cmpuint (set.lines->len, ==, 6);
  assert_point (line_of (&set, 1), 0, 11, -2.1, 0.6);
  assert_point (line_of (&set, 2), 0, 11, 1.9, 0.6);
  assert_point (line_of (&set, 3), 0, 11, -1.9, 0.6);
  assert_point (line_of (&set, 5), 0, 13, -2, 0.3);
}

static void
assert_trouble (const GbEdgeSet *set, guint i, const char *part)
{
  g_assert_cmpuint (i, <, set->troubles->len);
  if (strstr (set->troubles->pdata[i], part) == NULL)
    g_error ("“%s” does not say “%s”", (const char *) set->troubles->pdata[i], part);
}

static void
test_openings_that_cannot_be (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_auto (GbHullSet) hulls = { NULL, 0 };
  g_auto (GbEdgeSet) set = { 0 };
  GbHull *hull = add_block (boat, 4, 1, 0.5);
  GbOpening *empty, *far, *half;

  hull->edge = GB_EDGE_CLOSED;
  empty = add_opening (boat, hull, "empty");
  far = add_opening (boat, hull, "far");
  add_corner (boat, far, 1, 0, 0.5);
  add_corner (boat, far, 6.1, 0, 0.5);
  half = add_opening (boat, hull, "half");
  half->ring = TRUE;
  add_corner (boat, half, 1, 0, 0.5);
  add_corner (boat, half, NAN, 0, 0.5);
  add_corner (boat, half, 2, 0, INFINITY);
  find (&set, &hulls, boat);

  g_assert_cmpuint (set.lines->len, ==, 1);
  g_assert_cmpint (line_of (&set, 0)->opening, ==, half->rec.id);
  g_assert_cmpuint (line_of (&set, 0)->points->len, ==, 1);
  g_assert_cmpuint (set.troubles->len, ==, 3);
  assert_trouble (&set, 0, "“empty”");
  assert_trouble (&set, 0, "no corner");
  assert_trouble (&set, 1, "far away");
  assert_trouble (&set, 2, "2 corners of “half”");

  add_corner (boat, empty, NAN, NAN, NAN);
  find (&set, &hulls, boat);
  g_assert_cmpuint (set.lines->len, ==, 1);
  /* The sentence about the hull says enough. */
  hull->x = NAN;
  find (&set, &hulls, boat);
  g_assert_cmpuint (set.lines->len + set.troubles->len, ==, 0);
}

static void
test_nothing_there (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_auto (GbHullSet) hulls = { NULL, 0 };
  g_auto (GbEdgeSet) set = { 0 }, copy = { 0 };

  g_assert_cmpint (gb_edge_set_least (&set, gb_attitude (0, 0, 0)).line, ==, -1);
  find (&set, &hulls, boat);
  g_assert_cmpint (gb_edge_set_least (&set, gb_attitude (0, 0, 0)).line, ==, -1);
  g_assert_true (isnan (gb_edge_set_least (&set, gb_attitude (0, 0, 0)).freeboard));
  gb_edge_set_copy (&copy, &set);
  g_assert_cmpuint (copy.lines->len + copy.troubles->len, ==, 0);
}

/* A copy stands by itself. */
static void
test_copy (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_auto (GbHullSet) hulls = { NULL, 0 };
  g_auto (GbEdgeSet) set = { 0 }, copy = { 0 };
  GbHull *hull = add_block (boat, 4, 1, 0.5);
  GbAttitude attitude = gb_attitude (0.2, -0.1, 0.1);
  double freeboard;

  hull->name = g_strdup ("Box");
  find (&set, &hulls, boat);
  freeboard = gb_edge_set_least (&set, attitude).freeboard;
  gb_edge_set_copy (&copy, &set);
  gb_edge_set_clear (&set);
  assert_near (gb_edge_set_least (&copy, attitude).freeboard, freeboard, 0);
  g_assert_cmpstr (line_of (&copy, 0)->name, ==, "Box");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/edges/own-edge", test_own_edge);
  g_test_add_func ("/edges/pair-of-hulls", test_pair_of_hulls);
  g_test_add_func ("/edges/openings", test_openings);
  g_test_add_func ("/edges/openings-that-cannot-be", test_openings_that_cannot_be);
  g_test_add_func ("/edges/nothing-there", test_nothing_there);
  g_test_add_func ("/edges/copy", test_copy);
  return g_test_run ();
}
