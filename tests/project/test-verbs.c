/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Each verb: what it does, its words, its place, that it is undone as one, and what it refuses. */

#include "fixture.h"

#include "project/words.h"

#include "boat/quantity.h"

#include <math.h>
#include <string.h>

static void
assert_sentence (GError *error, const char *words)
{
  g_assert_nonnull (error);
  if (strstr (error->message, words) == NULL)
    g_error ("“%s” does not hold “%s”", error->message, words);
}

/* The last undo's place, as the signal gives it. */
static void
place_cb (GbProject *project, const GbPlace *place, gpointer data)
{
  *(GbPlace *) data = *place;
}

static GbPlace
undo_place (GbProject *project)
{
  GbPlace place = { 0 };
  gulong id = g_signal_connect (project, "place", G_CALLBACK (place_cb), &place);

  g_assert_true (gb_project_undo (project, NULL));
  g_signal_handler_disconnect (project, id);
  return place;
}

static void
test_set (Fixture *c, gconstpointer data)
{
  GbValue value = GB_VALUE_REAL (0.009);
  g_autoptr (GError) error = NULL;
  GbPlace place;

  g_assert_true (
    gb_project_set (c->project, GB_RECORD_PART, SIDE, fixture_field ("thickness"), &value, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat (fixture_part (c->project, SIDE)->thickness, ==, 0.009);
  fixture_assert_undo (c->project, "thickness of Side panel", c->before);

  place = undo_place (c->project);
  g_assert_cmpint (place.kind, ==, GB_RECORD_PART);
  g_assert_cmpint (place.id, ==, SIDE);
  g_assert_cmpstr (place.field, ==, "thickness");
}

static void
test_set_all (Fixture *c, gconstpointer data)
{
  const gint64 ids[] = { FRAME_1, FRAME_2, SIDE };
  GbValue value = GB_VALUE_INTEGER (GB_STATE_MADE);

  g_assert_true (
    gb_project_set_all (c->project, GB_RECORD_PART, ids, 3, fixture_field ("state"), &value, NULL));
  for (guint i = 0; i < 3; i++)
    g_assert_cmpint (fixture_part (c->project, ids[i])->state, ==, GB_STATE_MADE);
  fixture_assert_undo (c->project, "state of 3 parts", c->before);
}

static void
test_what_is_there_already_is_no_edit (Fixture *c, gconstpointer data)
{
  GbValue value = GB_VALUE_REAL (0.4);
  const gint64 id = SIDE, frame = FRAME_1;

  g_assert_true (gb_project_set (c->project, GB_RECORD_PART, SIDE, fixture_field ("area"), &value, NULL));
  g_assert_true (
    gb_project_enter (c->project, GB_RECORD_PART, &id, 1, fixture_field ("name"), "Side panel", NULL));
  g_assert_true (
    gb_project_enter (c->project, GB_RECORD_PART, &frame, 1, fixture_field ("material"), "spruce", NULL));
  g_assert_true (gb_project_move (c->project, GB_RECORD_PART, &id, 1, HULL, FRAMES, NULL));
  g_assert_null (gb_project_get_undo_words (c->project));
  g_assert_null (gb_project_get_kept_at (c->project));
}

static void
test_a_number_is_not_rounded_to_what_was_shown (Fixture *c, gconstpointer data)
{
  GbValue value = GB_VALUE_REAL (1.0 / 3);
  const gint64 id = BOTTOM;
  g_autofree char *shown = NULL;

  g_assert_true (gb_project_set (c->project, GB_RECORD_PART, BOTTOM, fixture_field ("x"), &value, NULL));
  shown = gb_field_edit_text (fixture_field ("x"), &fixture_part (c->project, BOTTOM)->rec,
                              gb_project_get_build (c->project));
  g_assert_true (gb_project_enter (c->project, GB_RECORD_PART, &id, 1, fixture_field ("x"), shown, NULL));
  g_assert_cmpfloat (fixture_part (c->project, BOTTOM)->x, ==, 1.0 / 3);
}

static void
test_refused_values (Fixture *c, gconstpointer data)
{
  static const struct
  {
    const char *field, *text, *words;
  } cases[] = {
    { "thickness", "-3 mm", "Thickness" },
    { "thickness", "3 kg", "Thickness" },
    { "thickness", "3 furlong", "Thickness" },
    { "quantity", "many", "Quantity" },
    { "name", "", "Name: must not be empty" },
    { "name", "bell \a", "control" },
    { "state", "rotten", "State" },
    { "name", "\xff\xfe", "UTF-8" },
  };
  g_autofree char *long_name = g_strnfill (10000, 'x');
  const gint64 id = SIDE, gone = 999;
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_assert_false (gb_project_enter (c->project, GB_RECORD_PART, &id, 1, fixture_field (cases[i].field),
                                        cases[i].text, &error));
      assert_sentence (error, cases[i].words);
      g_clear_error (&error);
    }
  g_assert_false (
    gb_project_enter (c->project, GB_RECORD_PART, &id, 1, fixture_field ("name"), long_name, &error));
  assert_sentence (error, "too long");
  g_clear_error (&error);
  g_assert_false (
    gb_project_enter (c->project, GB_RECORD_PART, &gone, 1, fixture_field ("name"), "x", &error));
  assert_sentence (error, "no longer in this build");
  scratch_assert_equal (gb_project_get_boat (c->project), c->before);
  g_assert_null (gb_project_get_undo_words (c->project));
}

static void
test_enter_keeps_what_was_typed (Fixture *c, gconstpointer data)
{
  const gint64 ids[] = { FRAME_1, FRAME_2 };
  g_autofree char *kept = NULL;

  g_assert_true (
    gb_project_enter (c->project, GB_RECORD_PART, ids, 2, fixture_field ("length"), "2*560-45 mm", NULL));
  g_assert_cmpfloat_with_epsilon (fixture_part (c->project, FRAME_2)->length, 1.075, 1e-12);
  kept = gb_typed_get (&fixture_part (c->project, FRAME_1)->rec, "length");
  g_assert_true (g_str_has_prefix (kept, "2*560"));
  fixture_assert_undo (c->project, "length of 2 parts", c->before);
}

static void
test_add (Fixture *c, gconstpointer data)
{
  GbRecord *draft = gb_record_new (GB_RECORD_PART);
  g_autofree char *names = NULL;
  g_autoptr (GError) error = NULL;
  gint64 id;

  ((GbPart *) draft)->name = g_strdup ("Transom");
  id = gb_project_add (c->project, draft, HULL, SIDE, &error);
  g_assert_no_error (error);
  g_assert_cmpint (id, >, PAINT);
  names = fixture_names (c->project, HULL);
  g_assert_cmpstr (names, ==, "Bottom Transom Side panel Frames");
  fixture_assert_undo (c->project, "new part Transom", c->before);
  g_assert_cmpint (undo_place (c->project).id, ==, id);
}

static void
test_add_of_other_kinds (Fixture *c, gconstpointer data)
{
  GbRecord *load = gb_record_new (GB_RECORD_LOAD), *material = gb_record_new (GB_RECORD_MATERIAL);
  GbRecord *line = gb_record_new (GB_RECORD_LINE), *nowhere = gb_record_new (GB_RECORD_STATION);
  g_autoptr (GError) error = NULL;

  ((GbLoad *) load)->name = g_strdup ("Dog");
  g_assert_cmpint (gb_project_add (c->project, load, 1, 1, NULL), >, 0);
  g_assert_cmpstr (gb_project_get_undo_words (c->project), ==, "new load Dog");
  g_assert_true (
    gb_record_children (gb_boat_get (gb_project_get_boat (c->project), GB_RECORD_CONDITION, 1))->pdata[0]
    == gb_boat_get (gb_project_get_boat (c->project), GB_RECORD_LOAD, 2));
  ((GbMaterial *) material)->name = g_strdup ("ash");
  g_assert_cmpint (gb_project_add (c->project, material, 0, 1, NULL), >, 0);
  g_assert_cmpint (gb_project_add (c->project, line, 1, 0, NULL), >, 0);
  g_assert_cmpstr (gb_project_get_undo_words (c->project), ==, "new line");
  ((GbStation *) nowhere)->x = 1;
  g_assert_cmpint (gb_project_add (c->project, nowhere, 0, 0, &error), ==, 0);
  g_assert_nonnull (error);
  fixture_assert_fresh (c->project);
}

static void
test_add_part_takes_its_start_from_above (Fixture *c, gconstpointer data)
{
  gint64 id = gb_project_add_part (c->project, "Frame 3", GB_KIND_PART, FRAMES, FRAME_1, NULL);
  const GbPart *part = fixture_part (c->project, id), *above = fixture_part (c->project, FRAME_1);
  g_autofree char *names = fixture_names (c->project, FRAMES);

  g_assert_cmpstr (names, ==, "Frame 1 Frame 3 Frame 2");
  g_assert_cmpint (part->takeoff, ==, GB_TAKEOFF_LENGTH);
  g_assert_cmpint (part->material, ==, above->material);
  g_assert_cmpfloat (part->width, ==, above->width);
  g_assert_cmpfloat (part->thickness, ==, above->thickness);
  g_assert_true (isnan (part->length));
  fixture_assert_undo (c->project, "new part Frame 3", c->before);
}

static void
test_add_part_last_and_groups (Fixture *c, gconstpointer data)
{
  gint64 last = gb_project_add_part (c->project, "Boom", GB_KIND_PART, RIG, 0, NULL);
  gint64 group = gb_project_add_part (c->project, "  Foils ", GB_KIND_GROUP, 0, RIG, NULL);
  gint64 first = gb_project_add_part (c->project, "Rudder", GB_KIND_PART, group, 0, NULL);
  g_autofree char *rig = fixture_names (c->project, RIG);
  g_autofree char *top = fixture_names (c->project, 0);
  g_autoptr (GError) error = NULL;

  g_assert_cmpstr (rig, ==, "Mast Boom");
  g_assert_cmpint (fixture_part (c->project, last)->takeoff, ==, GB_TAKEOFF_LUMP);
  g_assert_cmpstr (top, ==, "Hull Rig Foils Paint");
  g_assert_cmpfloat (fixture_part (c->project, group)->x, ==, 0);
  g_assert_cmpfloat (fixture_part (c->project, group)->z, ==, 0);
  g_assert_cmpint (fixture_part (c->project, first)->takeoff, ==, GB_TAKEOFF_SHEET);
  g_assert_cmpint (gb_project_add_part (c->project, "", GB_KIND_PART, RIG, 0, &error), ==, 0);
  assert_sentence (error, "Name");
  g_clear_error (&error);
  g_assert_cmpint (gb_project_add_part (c->project, "Nail", GB_KIND_PART, BOTTOM, 0, &error), ==, 0);
  assert_sentence (error, "no group");
}

static void
test_remove (Fixture *c, gconstpointer data)
{
  const gint64 ids[] = { FRAMES, MAST, 999 };
  GbPlace place;

  g_assert_true (gb_project_remove (c->project, GB_RECORD_PART, ids, 2, NULL));
  g_assert_null (fixture_part (c->project, FRAME_1));
  fixture_assert_undo (c->project, "deletion of 2 parts", c->before);
  place = undo_place (c->project);
  g_assert_cmpint (place.id, ==, FRAMES);

  g_assert_true (gb_project_remove (c->project, GB_RECORD_PART, ids, 1, NULL));
  fixture_assert_undo (c->project, "deletion of Frames", c->before);
  g_assert_true (
    gb_project_remove (c->project, GB_RECORD_PART, ids + 2, 1, NULL)); /* not there: nothing to do */
  g_assert_cmpstr (gb_project_get_undo_words (c->project), ==, "deletion of Frames");
}

static void
test_removing_leaves_references_unknown (Fixture *c, gconstpointer data)
{
  const gint64 stock = 1, material = 2, hull = HULL;

  g_assert_true (gb_project_remove (c->project, GB_RECORD_STOCK, &stock, 1, NULL));
  g_assert_cmpint (fixture_part (c->project, BOTTOM)->stock, ==, 0);
  fixture_assert_undo (c->project, "deletion of 6 mm sheet", c->before);
  g_assert_true (gb_project_remove (c->project, GB_RECORD_MATERIAL, &material, 1, NULL));
  g_assert_true (gb_project_remove (c->project, GB_RECORD_PART, &hull, 1, NULL));
  g_assert_cmpint (fixture_part (c->project, PAINT)->surface_of, ==, 0);
  fixture_assert_fresh (c->project);
}

static void
test_build (Fixture *c, gconstpointer data)
{
  const gint64 id = 1;
  g_autoptr (GError) error = NULL;

  g_assert_true (gb_project_enter (c->project, GB_RECORD_BUILD, &id, 1,
                                   gb_field (GB_RECORD_BUILD, "freeboard"), "180 mm", NULL));
  fixture_assert_undo (c->project, "least freeboard of Plover", c->before);
  g_assert_false (gb_project_remove (c->project, GB_RECORD_BUILD, &id, 1, &error));
  assert_sentence (error, "The build itself");
  g_clear_error (&error);
  g_assert_false (gb_project_enter (c->project, GB_RECORD_BUILD, &id, 1,
                                    gb_field (GB_RECORD_BUILD, "currency"), "money", &error));
  assert_sentence (error, "Currency");
}

static void
test_long_titles_are_cut_in_words (Fixture *c, gconstpointer data)
{
  g_autofree char *name = g_strnfill (900, 'n');
  const gint64 id = SIDE;

  g_assert_true (gb_project_enter (c->project, GB_RECORD_PART, &id, 1, fixture_field ("name"), name, NULL));
  g_assert_true (gb_project_remove (c->project, GB_RECORD_PART, &id, 1, NULL));
  g_assert_cmpint (g_utf8_strlen (gb_project_get_undo_words (c->project), -1), <, 90);
  g_assert_true (g_str_has_suffix (gb_project_get_undo_words (c->project), "…"));
}

#define ADD(path, function) g_test_add ("/project/verbs/" path, Fixture, NULL, fixture_set_up, function, fixture_tear_down)

/* A kind that was forgotten would be counted as builds. */
static void
test_every_kind_is_counted_by_its_name (Fixture *c, gconstpointer data)
{
  for (guint k = GB_RECORD_BUILD + 1; k < GB_N_RECORDS; k++)
    {
      g_autofree char *one = gb_words_count (k, 1);
      g_autofree char *several = gb_words_count (k, 3);

      g_assert_true (g_str_has_prefix (one, "1 ") && !g_str_has_suffix (one, "build"));
      g_assert_true (g_str_has_prefix (several, "3 ") && !g_str_has_suffix (several, "builds"));
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  ADD ("set", test_set);
  ADD ("set-all", test_set_all);
  ADD ("no-edit", test_what_is_there_already_is_no_edit);
  ADD ("not-rounded", test_a_number_is_not_rounded_to_what_was_shown);
  ADD ("refused-values", test_refused_values);
  ADD ("enter-typed", test_enter_keeps_what_was_typed);
  ADD ("add", test_add);
  ADD ("add-other-kinds", test_add_of_other_kinds);
  ADD ("add-part-start", test_add_part_takes_its_start_from_above);
  ADD ("add-part-last", test_add_part_last_and_groups);
  ADD ("remove", test_remove);
  ADD ("remove-references", test_removing_leaves_references_unknown);
  ADD ("build", test_build);
  ADD ("counts", test_every_kind_is_counted_by_its_name);
  ADD ("long-titles", test_long_titles_are_cut_in_words);
  return g_test_run ();
}
