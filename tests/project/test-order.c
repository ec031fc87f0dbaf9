/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Moving and duplicating: the order that results, renumbering where there is no room, what is refused. */

#include "fixture.h"

#include <string.h>

static void
assert_names (GbProject *project, gint64 owner, const char *expected)
{
  g_autofree char *names = fixture_names (project, owner);

  g_assert_cmpstr (names, ==, expected);
}

static void
move (Fixture *c, const gint64 *ids, guint n, gint64 owner, gint64 before)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (gb_project_move (c->project, GB_RECORD_PART, ids, n, owner, before, &error));
  g_assert_no_error (error);
}

static void
test_move_within_a_group (Fixture *c, gconstpointer data)
{
  const gint64 frames = FRAMES, both[] = { SIDE, BOTTOM };

  move (c, &frames, 1, HULL, BOTTOM);
  assert_names (c->project, HULL, "Frames Bottom Side panel");
  fixture_assert_undo (c->project, "move of Frames", c->before);
  /* In the order of the build, whatever the order of the ids. */
  move (c, both, 2, HULL, FRAMES);
  assert_names (c->project, HULL, "Bottom Side panel Frames");
  move (c, both, 2, HULL, 0);
  assert_names (c->project, HULL, "Frames Bottom Side panel");
}

static void
test_move_into_another_group (Fixture *c, gconstpointer data)
{
  /* What lies below something that is moved goes with it. */
  const gint64 ids[] = { FRAMES, FRAME_1, BOTTOM };

  move (c, ids, 3, RIG, MAST);
  assert_names (c->project, RIG, "Bottom Frames Mast");
  assert_names (c->project, FRAMES, "Frame 1 Frame 2");
  assert_names (c->project, HULL, "Side panel");
  fixture_assert_undo (c->project, "move of 2 parts", c->before);
}

static void
test_move_to_the_top (Fixture *c, gconstpointer data)
{
  const gint64 id = FRAME_2;

  move (c, &id, 1, 0, HULL);
  assert_names (c->project, 0, "Frame 2 Hull Rig Paint");
  move (c, &id, 1, 0, 0);
  assert_names (c->project, 0, "Hull Rig Paint Frame 2");
  fixture_assert_fresh (c->project);
}

static void
test_not_into_itself (Fixture *c, gconstpointer data)
{
  const gint64 id = HULL;
  g_autoptr (GError) error = NULL;

  g_assert_false (gb_project_move (c->project, GB_RECORD_PART, &id, 1, FRAMES, 0, &error));
  g_assert_nonnull (strstr (error->message, "into itself"));
  g_clear_error (&error);
  g_assert_false (gb_project_move (c->project, GB_RECORD_PART, &id, 1, HULL, 0, &error));
  g_clear_error (&error);
  g_assert_false (gb_project_move (c->project, GB_RECORD_PART, &id, 1, MAST, 0, &error));
  g_assert_nonnull (strstr (error->message, "no group"));
  scratch_assert_equal (gb_project_get_boat (c->project), c->before);
}

static void
test_move_to_where_it_is (Fixture *c, gconstpointer data)
{
  const gint64 apart[] = { BOTTOM, FRAMES }, side_by_side[] = { BOTTOM, SIDE };

  move (c, side_by_side, 2, HULL, FRAMES);
  move (c, side_by_side, 2, HULL, SIDE);
  g_assert_null (gb_project_get_undo_words (c->project));
  move (c, apart, 2, HULL, BOTTOM);
  assert_names (c->project, HULL, "Bottom Frames Side panel");
}

/* Always into the same gap: halving runs out of room after some thirty, and then all are numbered anew. */
static void
test_renumbering (Fixture *c, gconstpointer data)
{
  GString *expected = g_string_new ("Bottom");
  gint64 before = SIDE;

  for (guint i = 0; i < 80; i++)
    {
      GbRecord *draft = gb_record_new (GB_RECORD_PART);
      g_autofree char *name = g_strdup_printf ("n%u", i);

      ((GbPart *) draft)->name = g_strdup (name);
      g_assert_cmpint (gb_project_add (c->project, draft, HULL, before, NULL), >, 0);
      g_string_append_printf (expected, " %s", name);
    }
  g_string_append (expected, " Side panel Frames");
  assert_names (c->project, HULL, expected->str);
  fixture_assert_fresh (c->project);
  for (guint i = 0; i < 80; i++)
    g_assert_true (gb_project_undo (c->project, NULL));
  scratch_assert_equal (gb_project_get_boat (c->project), c->before);
  g_string_free (expected, TRUE);
}

static void
test_always_first (Fixture *c, gconstpointer data)
{
  gint64 first = MAST;

  for (guint i = 0; i < 12; i++)
    {
      GbRecord *draft = gb_record_new (GB_RECORD_PART);

      ((GbPart *) draft)->name = g_strdup_printf ("n%u", i);
      first = gb_project_add (c->project, draft, RIG, first, NULL);
      g_assert_cmpint (first, >, 0);
      g_assert_true (gb_record_children (&fixture_part (c->project, RIG)->rec)->pdata[0]
                     == fixture_part (c->project, first));
    }
}

static void
test_duplicate (Fixture *c, gconstpointer data)
{
  const gint64 ids[] = { FRAME_1, SIDE };
  g_autoptr (GArray) copies = NULL;
  const GbPart *copy;

  g_assert_true (gb_project_duplicate (c->project, GB_RECORD_PART, ids, 2, &copies, NULL));
  assert_names (c->project, HULL, "Bottom Side panel Side panel 2 Frames");
  assert_names (c->project, FRAMES, "Frame 1 Frame 3 Frame 2");
  g_assert_cmpuint (copies->len, ==, 2);
  copy = fixture_part (c->project, g_array_index (copies, gint64, 0));
  g_assert_cmpstr (copy->name, ==, "Side panel 2");
  g_assert_cmpfloat (copy->area, ==, 0.4);
  fixture_assert_undo (c->project, "copy of 2 parts", c->before);
}

static void
test_duplicate_a_group (Fixture *c, gconstpointer data)
{
  const gint64 id = HULL;
  GbValue fitted = GB_VALUE_INTEGER (GB_STATE_FITTED);
  g_autoptr (GArray) copies = NULL;
  const GbPart *copy;

  g_assert_true (
    gb_project_set (c->project, GB_RECORD_PART, FRAME_1, fixture_field ("state"), &fitted, NULL));
  g_assert_true (gb_project_duplicate (c->project, GB_RECORD_PART, &id, 1, &copies, NULL));
  copy = fixture_part (c->project, g_array_index (copies, gint64, 0));
  assert_names (c->project, 0, "Hull Hull 2 Rig Paint");
  assert_names (c->project, copy->rec.id, "Bottom Side panel Frames");
  g_assert_cmpuint (copy->n_below, ==, 5);
  /* What is not made yet is planned. */
  for (guint i = 1; i <= copy->n_below; i++)
    g_assert_cmpint (
      ((GbPart *) gb_boat_all (gb_project_get_boat (c->project), GB_RECORD_PART)->pdata[copy->rec.index + i])
        ->state,
      ==, GB_STATE_PLANNED);
  fixture_assert_fresh (c->project);
}

static void
test_references_within_what_is_copied (Fixture *c, gconstpointer data)
{
  const gint64 both[] = { HULL, PAINT }, alone = PAINT;
  g_autoptr (GArray) copies = NULL;
  g_autoptr (GArray) again = NULL;

  g_assert_true (gb_project_duplicate (c->project, GB_RECORD_PART, both, 2, &copies, NULL));
  g_assert_cmpint (fixture_part (c->project, g_array_index (copies, gint64, 1))->surface_of, ==,
                   g_array_index (copies, gint64, 0));
  g_assert_true (gb_project_duplicate (c->project, GB_RECORD_PART, &alone, 1, &again, NULL));
  g_assert_cmpint (fixture_part (c->project, g_array_index (again, gint64, 0))->surface_of, ==, HULL);
}

static void
test_duplicate_other_kinds (Fixture *c, gconstpointer data)
{
  const gint64 id = 1;
  const GbBoat *boat = gb_project_get_boat (c->project);
  g_autoptr (GArray) copies = NULL;

  g_assert_true (gb_project_duplicate (c->project, GB_RECORD_CONDITION, &id, 1, &copies, NULL));
  g_assert_cmpuint (
    gb_record_children (gb_boat_get (boat, GB_RECORD_CONDITION, g_array_index (copies, gint64, 0)))->len, ==,
    1);
  g_assert_cmpstr (gb_project_get_undo_words (c->project), ==, "copy of Two up");
  g_assert_true (gb_project_duplicate (c->project, GB_RECORD_PURCHASE, &id, 1, NULL, NULL));
  g_assert_cmpuint (gb_boat_n (boat, GB_RECORD_LINE), ==, 2);
  fixture_assert_fresh (c->project);
}

#define ADD(path, function) g_test_add ("/project/order/" path, Fixture, NULL, fixture_set_up, function, fixture_tear_down)

/* Records of two kinds live in a hull: each keeps its own order, and both go with a copy. */
static gint64
add_opening (Fixture *c, const char *name, gint64 before)
{
  GbRecord *opening = gb_record_new (GB_RECORD_OPENING);
  g_autoptr (GError) error = NULL;
  gint64 id;

  ((GbOpening *) opening)->name = g_strdup (name);
  id = gb_project_add (c->project, opening, 1, before, &error);
  g_assert_no_error (error);
  return id;
}

static void
assert_openings (Fixture *c, gint64 hull, const char *first, const char *second)
{
  const GbRecord *record = gb_boat_get (gb_project_get_boat (c->project), GB_RECORD_HULL, hull);
  const GPtrArray *openings = gb_record_children_of (record, GB_RECORD_OPENING);

  g_assert_cmpuint (openings->len, ==, 2);
  g_assert_cmpstr (((GbOpening *) openings->pdata[0])->name, ==, first);
  g_assert_cmpstr (((GbOpening *) openings->pdata[1])->name, ==, second);
}

static void
test_openings_go_with_their_hull (Fixture *c, gconstpointer data)
{
  gint64 hatch = add_opening (c, "Hatch", 0), slot = add_opening (c, "Slot", hatch), hull = 1;
  GbRecord *corner = gb_record_new (GB_RECORD_CORNER);
  g_autoptr (GArray) copies = NULL;
  const GbRecord *copy;

  g_assert_cmpint (gb_project_add (c->project, corner, slot, 0, NULL), >, 0);
  assert_openings (c, 1, "Slot", "Hatch");
  g_assert_true (gb_project_move (c->project, GB_RECORD_OPENING, &slot, 1, 1, 0, NULL));
  assert_openings (c, 1, "Hatch", "Slot");
  g_assert_cmpstr (gb_project_get_undo_words (c->project), ==, "move of Slot");

  g_assert_true (gb_project_duplicate (c->project, GB_RECORD_HULL, &hull, 1, &copies, NULL));
  assert_openings (c, g_array_index (copies, gint64, 0), "Hatch", "Slot");
  copy = gb_boat_get (gb_project_get_boat (c->project), GB_RECORD_HULL, g_array_index (copies, gint64, 0));
  g_assert_cmpuint (
    gb_record_children (gb_record_children_of (copy, GB_RECORD_OPENING)->pdata[1])->len, ==, 1);
  fixture_assert_fresh (c->project);
  for (guint i = 0; i < 5; i++)
    g_assert_true (gb_project_undo (c->project, NULL));
  scratch_assert_equal (gb_project_get_boat (c->project), c->before);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  ADD ("move-within", test_move_within_a_group);
  ADD ("move-into", test_move_into_another_group);
  ADD ("move-to-top", test_move_to_the_top);
  ADD ("not-into-itself", test_not_into_itself);
  ADD ("move-to-where-it-is", test_move_to_where_it_is);
  ADD ("renumbering", test_renumbering);
  ADD ("always-first", test_always_first);
  ADD ("duplicate", test_duplicate);
  ADD ("duplicate-group", test_duplicate_a_group);
  ADD ("references", test_references_within_what_is_copied);
  ADD ("duplicate-other-kinds", test_duplicate_other_kinds);
  ADD ("openings", test_openings_go_with_their_hull);
  return g_test_run ();
}
