/* SPDX-License-Identifier: GPL-3.0-or-later */

/* References that are entered by name: what is found, what is made along with it, and the sentence where
 * nothing is. */

#include "fixture.h"

#include "boat/catalogue.h"
#include "project/names.h"

#include <string.h>

static gboolean
enter (Fixture *c, GbRecordKind kind, gint64 id, const char *field, const char *text, GError **error)
{
  return gb_project_enter (c->project, kind, &id, 1, gb_field (kind, field), text, error);
}

static void
assert_entered (Fixture *c, GbRecordKind kind, gint64 id, const char *field, const char *text)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (enter (c, kind, id, field, text, &error));
  g_assert_no_error (error);
}

static void
assert_refused (Fixture *c, GbRecordKind kind, gint64 id, const char *field, const char *text, const char *words)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (enter (c, kind, id, field, text, &error));
  g_assert_nonnull (error);
  if (strstr (error->message, words) == NULL)
    g_error ("“%s” does not hold “%s”", error->message, words);
}

static void
test_by_name_whatever_the_case (Fixture *c, gconstpointer data)
{
  assert_entered (c, GB_RECORD_PART, FRAME_1, "material", "  OKOUME Ply ");
  g_assert_cmpint (fixture_part (c->project, FRAME_1)->material, ==, 2);
  fixture_assert_undo (c->project, "material of Frame 1", c->before);
  assert_entered (c, GB_RECORD_PART, FRAME_1, "material", "");
  g_assert_cmpint (fixture_part (c->project, FRAME_1)->material, ==, 0);
  assert_entered (c, GB_RECORD_PART, FRAME_1, "stock", "6 MM sheet");
  g_assert_cmpint (fixture_part (c->project, FRAME_1)->stock, ==, 1);
}

static void
test_from_the_catalogue (Fixture *c, gconstpointer data)
{
  const GbMaterial *row = gb_catalogue_get ()->pdata[3];
  g_autofree char *upper = g_utf8_strup (row->name, -1);
  const GbMaterial *copied;
  gint64 id;

  assert_entered (c, GB_RECORD_PART, FRAME_1, "material", upper);
  id = fixture_part (c->project, FRAME_1)->material;
  copied = gb_boat_material (gb_project_get_boat (c->project), id);
  g_assert_cmpstr (copied->name, ==, row->name);
  g_assert_cmpstr (copied->source, ==, row->source);
  g_assert_cmpuint (gb_boat_n (gb_project_get_boat (c->project), GB_RECORD_MATERIAL), ==, 3);
  fixture_assert_undo (c->project, "material of Frame 1", c->before);
  /* The second time it is the build's own. */
  assert_entered (c, GB_RECORD_PART, FRAME_2, "material", row->name);
  g_assert_cmpint (fixture_part (c->project, FRAME_2)->material, ==, id);
}

static void
test_a_new_budget_head (Fixture *c, gconstpointer data)
{
  assert_entered (c, GB_RECORD_PART, MAST, "category", "Rig and foils");
  g_assert_cmpint (fixture_part (c->project, MAST)->category, ==, 3);
  fixture_assert_undo (c->project, "budget head of Mast", c->before);
  assert_entered (c, GB_RECORD_STOCK, 2, "category", "rig AND foils");
  g_assert_cmpuint (gb_boat_n (gb_project_get_boat (c->project), GB_RECORD_CATEGORY), ==, 3);
}

static void
test_unknown_names (Fixture *c, gconstpointer data)
{
  assert_refused (c, GB_RECORD_PART, FRAME_1, "material", "moon rock",
                  "neither in this build nor in the table");
  assert_refused (c, GB_RECORD_PART, FRAME_1, "stock", "9 mm", "There is “6 mm sheet”, “epoxy tin”");
  assert_refused (c, GB_RECORD_PART, PAINT, "hull", "Float", "There is “Box”");
  assert_refused (c, GB_RECORD_PART, PAINT, "surface_of", "Keel", "nothing is called “Keel”");
  assert_refused (c, GB_RECORD_PART, FRAME_1, "stock", "\xff\xff", "UTF-8");
  scratch_assert_equal (gb_project_get_boat (c->project), c->before);
}

static void
test_nothing_there_yet (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_autoptr (GbEdit) edit = gb_edit_new ("words", GB_RECORD_PART, 0, NULL);
  g_autoptr (GError) error = NULL;
  gint64 id;

  g_assert_false (gb_names_read (boat, fixture_field ("stock"), "6 mm", edit, &id, &error));
  g_assert_nonnull (strstr (error->message, "none in this build yet"));
}

static void
test_long_lists_are_cut_short (Fixture *c, gconstpointer data)
{
  for (guint i = 0; i < 12; i++)
    {
      GbRecord *stock = gb_record_new (GB_RECORD_STOCK);

      ((GbStock *) stock)->name = g_strdup_printf ("board %u", i);
      gb_project_add (c->project, stock, 0, 0, NULL);
    }
  assert_refused (c, GB_RECORD_PART, FRAME_1, "stock", "9 mm", "“board 5” and 6 more.");
}

static void
test_shared_names (Fixture *c, gconstpointer data)
{
  gint64 other = gb_project_add_part (c->project, "bottom", GB_KIND_PART, RIG, 0, NULL);
  gint64 third;

  /* The very same case decides. */
  assert_entered (c, GB_RECORD_PART, PAINT, "surface_of", "bottom");
  g_assert_cmpint (fixture_part (c->project, PAINT)->surface_of, ==, other);
  assert_entered (c, GB_RECORD_PART, PAINT, "surface_of", "Bottom");
  g_assert_cmpint (fixture_part (c->project, PAINT)->surface_of, ==, BOTTOM);
  assert_refused (c, GB_RECORD_PART, PAINT, "surface_of", "BOTTOM", "2 parts are called");

  third = gb_project_add_part (c->project, "Bottom", GB_KIND_PART, FRAMES, 0, NULL);
  assert_refused (c, GB_RECORD_PART, MAST, "surface_of", "Bottom", "a slash before it");
  assert_entered (c, GB_RECORD_PART, PAINT, "surface_of", "hull / frames / Bottom");
  g_assert_cmpint (fixture_part (c->project, PAINT)->surface_of, ==, third);
  /* What is shown already stands, though others share the name. */
  assert_entered (c, GB_RECORD_PART, PAINT, "surface_of", "Bottom");
  g_assert_cmpint (fixture_part (c->project, PAINT)->surface_of, ==, third);
}

static void
test_two_materials_of_one_name (Fixture *c, gconstpointer data)
{
  GbRecord *twin = gb_record_new (GB_RECORD_MATERIAL);

  ((GbMaterial *) twin)->name = g_strdup ("spruce");
  gb_project_add (c->project, twin, 0, 0, NULL);
  assert_refused (c, GB_RECORD_PART, BOTTOM, "material", "spruce", "give them different names first");
}

static void
test_the_whole_boat (Fixture *c, gconstpointer data)
{
  const GbRecord *weighing = gb_boat_get (gb_project_get_boat (c->project), GB_RECORD_WEIGHING, 1);
  const GbField *field = gb_field (GB_RECORD_WEIGHING, "part");
  g_autofree char *part = gb_project_display (c->project, field, weighing);
  g_autofree char *boat = NULL;

  g_assert_cmpstr (part, ==, "Bottom");
  assert_entered (c, GB_RECORD_WEIGHING, 1, "part", "Plover");
  g_assert_cmpint (((const GbWeighing *) weighing)->part, ==, 0);
  boat = gb_project_display (c->project, field, weighing);
  g_assert_cmpstr (boat, ==, "The whole boat");
  assert_entered (c, GB_RECORD_WEIGHING, 1, "part", "Mast");
  assert_entered (c, GB_RECORD_WEIGHING, 1, "part", boat);
  g_assert_cmpint (((const GbWeighing *) weighing)->part, ==, 0);
}

static void
test_display (Fixture *c, gconstpointer data)
{
  const GbRecord *bottom = &fixture_part (c->project, BOTTOM)->rec;
  g_autofree char *stock = gb_project_display (c->project, fixture_field ("stock"), bottom);
  g_autofree char *material = gb_project_display (c->project, fixture_field ("material"), bottom);
  g_autofree char *state = gb_project_display (c->project, fixture_field ("state"), bottom);

  g_assert_cmpstr (stock, ==, "6 mm sheet");
  g_assert_cmpstr (material, ==, "");
  g_assert_cmpstr (state, ==, "Planned");
}

#define ADD(path, function) g_test_add ("/project/enter/" path, Fixture, NULL, fixture_set_up, function, fixture_tear_down)

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  ADD ("by-name", test_by_name_whatever_the_case);
  ADD ("catalogue", test_from_the_catalogue);
  ADD ("new-head", test_a_new_budget_head);
  ADD ("unknown", test_unknown_names);
  g_test_add_func ("/project/enter/nothing-there", test_nothing_there_yet);
  ADD ("long-lists", test_long_lists_are_cut_short);
  ADD ("shared-names", test_shared_names);
  ADD ("twin-materials", test_two_materials_of_one_name);
  ADD ("whole-boat", test_the_whole_boat);
  ADD ("display", test_display);
  return g_test_run ();
}
