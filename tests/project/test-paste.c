/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Parts by way of the clipboard's text, within a build and into another one. */

#include "fixture.h"

#include "project/verbs-paste.h"

#include <string.h>

typedef struct
{
  Scratch *scratch;
  GbProject *project;
  GbBoat *before;
  Scratch *other_scratch;
  GbProject *other; /* an empty build */
} Case;

static void
set_up (Case *c, gconstpointer data)
{
  GbBoat *empty = gb_boat_new ();

  gb_field_set_text (gb_field (GB_RECORD_BUILD, "currency"), gb_boat_get (empty, GB_RECORD_BUILD, 1), "EUR");
  c->scratch = scratch_new ();
  c->project = fixture_project (c->scratch);
  c->before = gb_boat_copy (gb_project_get_boat (c->project));
  c->other_scratch = scratch_new ();
  c->other = gb_project_create (c->other_scratch->path, empty, NULL);
  gb_boat_free (empty);
}

static void
tear_down (Case *c, gconstpointer data)
{
  gb_boat_free (c->before);
  g_assert_finalize_object (c->project);
  g_assert_finalize_object (c->other);
  scratch_free (c->scratch);
  scratch_free (c->other_scratch);
}

/* Pastes what is copied of @ids into @into; gives the ids of the new parts. */
static GArray *
carry (Case *c, const gint64 *ids, guint n, GbProject *into, gint64 owner, gint64 before)
{
  g_autofree char *text = gb_project_copy (c->project, ids, n);
  g_autoptr (GError) error = NULL;
  GArray *copies = NULL;

  g_assert_true (gb_project_paste (into, text, owner, before, &copies, &error));
  g_assert_no_error (error);
  return copies;
}

static const GbPart *
nth (GbProject *project, GArray *ids, guint n)
{
  return fixture_part (project, g_array_index (ids, gint64, n));
}

static void
test_within_a_build (Case *c, gconstpointer data)
{
  const gint64 ids[] = { FRAMES, BOTTOM };
  g_autoptr (GArray) copies = carry (c, ids, 2, c->project, RIG, MAST);
  g_autofree char *names = fixture_names (c->project, RIG);
  const GbBoat *boat = gb_project_get_boat (c->project);

  g_assert_cmpstr (names, ==, "Bottom Frames Mast");
  g_assert_cmpuint (nth (c->project, copies, 1)->n_below, ==, 2);
  g_assert_cmpint (nth (c->project, copies, 0)->stock, ==, 1);
  /* Nothing was copied along. */
  g_assert_cmpuint (gb_boat_n (boat, GB_RECORD_STOCK), ==, 2);
  g_assert_cmpuint (gb_boat_n (boat, GB_RECORD_MATERIAL), ==, 2);
  fixture_assert_undo (c->project, "paste of 2 parts", c->before);
}

static void
test_a_coating_keeps_what_it_coats (Case *c, gconstpointer data)
{
  const gint64 id = PAINT;
  g_autoptr (GArray) copies = carry (c, &id, 1, c->project, 0, 0);
  g_autoptr (GArray) elsewhere = carry (c, &id, 1, c->other, 0, 0);

  g_assert_cmpuint (copies->len, ==, 1);
  g_assert_cmpint (nth (c->project, copies, 0)->surface_of, ==, HULL);
  g_assert_cmpstr (gb_project_get_undo_words (c->project), ==, "paste of Paint");
  /* In a build without a Hull it coats nothing, and no Hull came along. */
  g_assert_cmpint (nth (c->other, elsewhere, 0)->surface_of, ==, 0);
  g_assert_cmpuint (gb_boat_n (gb_project_get_boat (c->other), GB_RECORD_PART), ==, 1);
}

static void
test_into_another_build (Case *c, gconstpointer data)
{
  const gint64 ids[] = { HULL, PAINT };
  g_autoptr (GbBoat) empty = gb_boat_copy (gb_project_get_boat (c->other));
  g_autoptr (GArray) copies = carry (c, ids, 2, c->other, 0, 0);
  const GbBoat *boat = gb_project_get_boat (c->other);
  const GbStock *sheet = gb_boat_roots (boat, GB_RECORD_STOCK)->pdata[0];

  g_assert_cmpuint (gb_boat_n (boat, GB_RECORD_PART), ==, 7);
  g_assert_cmpint (nth (c->other, copies, 1)->surface_of, ==, g_array_index (copies, gint64, 0));
  g_assert_cmpuint (gb_boat_n (boat, GB_RECORD_STOCK), ==, 1);
  g_assert_cmpuint (gb_boat_n (boat, GB_RECORD_MATERIAL), ==, 2);
  g_assert_cmpuint (gb_boat_n (boat, GB_RECORD_CATEGORY), ==, 1);
  g_assert_cmpstr (sheet->name, ==, "6 mm sheet");
  g_assert_cmpint (sheet->price, ==, 5280);
  g_assert_cmpstr (gb_boat_material (boat, sheet->material)->name, ==, "okoume ply");
  fixture_assert_undo (c->other, "paste of 2 parts", empty);
}

static void
test_names_that_are_there_are_matched (Case *c, gconstpointer data)
{
  const gint64 id = FRAME_1;
  GbMaterial *spruce = (GbMaterial *) gb_record_new (GB_RECORD_MATERIAL);
  g_autoptr (GArray) copies = NULL;
  gint64 own;

  spruce->name = g_strdup ("Spruce");
  spruce->density = 430;
  own = gb_project_add (c->other, &spruce->rec, 0, 0, NULL);
  copies = carry (c, &id, 1, c->other, 0, 0);
  g_assert_cmpint (nth (c->other, copies, 0)->material, ==, own);
  g_assert_cmpuint (gb_boat_n (gb_project_get_boat (c->other), GB_RECORD_MATERIAL), ==, 1);
}

static void
test_samples_come_along (Case *c, gconstpointer data)
{
  GbSample *sample = (GbSample *) gb_record_new (GB_RECORD_SAMPLE);
  const gint64 id = FRAME_1;
  g_autoptr (GArray) copies = NULL;

  sample->mass = 1;
  sample->length = sample->width = sample->thickness = 0.1;
  g_assert_cmpint (gb_project_add (c->project, &sample->rec, 1, 0, NULL), >, 0);
  copies = carry (c, &id, 1, c->other, 0, 0);
  g_assert_cmpuint (gb_boat_n (gb_project_get_boat (c->other), GB_RECORD_SAMPLE), ==, 1);
}

static void
test_other_money_is_left_behind (Case *c, gconstpointer data)
{
  const gint64 ids[] = { MAST, BOTTOM }, build = 1;
  g_autoptr (GArray) copies = NULL;

  g_assert_true (gb_project_enter (c->other, GB_RECORD_BUILD, &build, 1,
                                   gb_field (GB_RECORD_BUILD, "currency"), "NZD", NULL));
  copies = carry (c, ids, 2, c->other, 0, 0);
  g_assert_cmpint (nth (c->other, copies, 1)->price, ==, GB_MONEY_UNKNOWN);
  g_assert_cmpint (
    ((const GbStock *) gb_boat_all (gb_project_get_boat (c->other), GB_RECORD_STOCK)->pdata[0])->price, ==,
    GB_MONEY_UNKNOWN);
}

static void
test_what_is_no_parts (Case *c, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (gb_project_paste (c->project, "a shopping list", 0, 0, NULL, &error));
  g_assert_nonnull (error);
  g_clear_error (&error);
  g_assert_false (gb_project_paste (c->project, "{ \"garboard\": 1 }", 0, 0, NULL, &error));
  g_assert_nonnull (strstr (error->message, "no parts on the clipboard"));
  g_clear_error (&error);
  g_assert_false (gb_project_paste (c->project, "", 0, 0, NULL, &error));
  scratch_assert_equal (gb_project_get_boat (c->project), c->before);
}

/* A whole build's text may be pasted too: all of its parts. */
static void
test_a_build_written_by_hand (Case *c, gconstpointer data)
{
  const char *text
    = "{ \"garboard\": 1, \"material\": [ { \"id\": 1, \"name\": \"spruce\" } ],"
      "  \"part\": [ { \"name\": \"Oar\", \"takeoff\": \"lump\", \"mass\": \"1.1 kg\" },"
      "             { \"name\": \"Boom\", \"takeoff\": \"length\", \"material\": 1, \"length\": 2 } ] }";
  g_autoptr (GArray) copies = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_true (gb_project_paste (c->project, text, RIG, 0, &copies, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat (nth (c->project, copies, 0)->mass, ==, 1.1);
  g_assert_cmpint (nth (c->project, copies, 1)->material, ==, 1);
  fixture_assert_fresh (c->project);
}

static void
test_not_into_a_part (Case *c, gconstpointer data)
{
  const gint64 id = MAST;
  g_autofree char *text = gb_project_copy (c->project, &id, 1);
  g_autoptr (GError) error = NULL;

  g_assert_false (gb_project_paste (c->project, text, BOTTOM, 0, NULL, &error));
  g_assert_nonnull (strstr (error->message, "no group"));
}

#define ADD(path, function) g_test_add ("/project/paste/" path, Case, NULL, set_up, function, tear_down)

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  ADD ("within", test_within_a_build);
  ADD ("coating", test_a_coating_keeps_what_it_coats);
  ADD ("another-build", test_into_another_build);
  ADD ("matched", test_names_that_are_there_are_matched);
  ADD ("samples", test_samples_come_along);
  ADD ("other-money", test_other_money_is_left_behind);
  ADD ("no-parts", test_what_is_no_parts);
  ADD ("by-hand", test_a_build_written_by_hand);
  ADD ("into-a-part", test_not_into_a_part);
  return g_test_run ();
}
