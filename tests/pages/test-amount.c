/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A part's sizes as one entry, and what is picked from lists. No window. */

#include <glib/gstdio.h>
#include <math.h>

#include "boat/catalogue.h"
#include "pages/amount-entry.h"
#include "widgets/choices.h"

typedef struct
{
  char *folder;
  GbProject *project;
  gint64 id;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path = NULL;

  fixture->folder = g_dir_make_tmp ("garboard-amount-XXXXXX", NULL);
  path = g_build_filename (fixture->folder, "amount.garboard", NULL);
  fixture->project = gb_project_create (path, NULL, &error);
  g_assert_no_error (error);
  fixture->id = gb_project_add_part (fixture->project, "Part", GB_KIND_PART, 0, 0, &error);
  g_assert_no_error (error);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  g_autofree char *path = g_build_filename (fixture->folder, "amount.garboard", NULL);

  g_assert_finalize_object (fixture->project);
  g_unlink (path);
  g_rmdir (fixture->folder);
  g_free (fixture->folder);
}

static const GbPart *
part (Fixture *fixture)
{
  return gb_boat_part (gb_project_get_boat (fixture->project), fixture->id);
}

static void
choose (Fixture *fixture, const char *field, gint64 choice)
{
  GbValue value = GB_VALUE_INTEGER (choice);

  g_assert_true (gb_project_set (fixture->project, GB_RECORD_PART, fixture->id,
                                 gb_field (GB_RECORD_PART, field), &value, NULL));
}

static void
enter (Fixture *fixture, const char *text)
{
  g_autoptr (GError) error = NULL;

  gb_amount_enter (fixture->project, &fixture->id, 1, text, &error);
  g_assert_no_error (error);
}

static void
check_text (Fixture *fixture, const char *expected)
{
  g_autofree char *text = gb_amount_edit_text (fixture->project, part (fixture));

  g_assert_cmpstr (text, ==, expected);
}

static void
refuse (Fixture *fixture, const char *text, const char *words)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (gb_amount_enter (fixture->project, &fixture->id, 1, text, &error));
  g_assert_nonnull (error);
  g_assert_nonnull (strstr (error->message, words));
}

static void
test_sheet (Fixture *fixture, gconstpointer data)
{
  check_text (fixture, "");
  enter (fixture, "2100 x 860 x 6");
  g_assert_cmpfloat (part (fixture)->length, ==, 2.1);
  g_assert_cmpfloat (part (fixture)->width, ==, 0.86);
  g_assert_cmpfloat (part (fixture)->thickness, ==, 0.006);
  g_assert_cmpfloat (part (fixture)->quantity, ==, 1);
  check_text (fixture, "2100 x 860 x 6");
  /* Fewer sizes leave the rest, and so does a dash. */
  enter (fixture, "1 m");
  g_assert_cmpfloat (part (fixture)->length, ==, 1);
  g_assert_cmpfloat (part (fixture)->width, ==, 0.86);
  enter (fixture, "- × – × 1/4\"");
  g_assert_cmpfloat (part (fixture)->length, ==, 1);
  g_assert_cmpfloat_with_epsilon (part (fixture)->thickness, 0.00635, 1e-12);
  check_text (fixture, "1 m x 860 x 1/4\"");
  /* One more than it takes: the first is the number of them. */
  enter (fixture, "4 X 500 X 200 X 9");
  g_assert_cmpfloat (part (fixture)->quantity, ==, 4);
  check_text (fixture, "4 x 500 x 200 x 9");
}

static void
test_sheet_by_area (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  gb_project_enter (fixture->project, GB_RECORD_PART, &fixture->id, 1, gb_field (GB_RECORD_PART, "area"),
                    "1.2", &error);
  g_assert_no_error (error);
  enter (fixture, "0.8 m2 x 4");
  g_assert_cmpfloat (part (fixture)->area, ==, 0.8);
  g_assert_cmpfloat (part (fixture)->thickness, ==, 0.004);
}

static void
test_length (Fixture *fixture, gconstpointer data)
{
  choose (fixture, "takeoff", GB_TAKEOFF_LENGTH);
  enter (fixture, "2350 x 25 x 18");
  g_assert_cmpfloat (part (fixture)->length, ==, 2.35);
  g_assert_cmpfloat (part (fixture)->width, ==, 0.025);
  g_assert_cmpfloat (part (fixture)->thickness, ==, 0.018);
  choose (fixture, "section", GB_SECTION_TUBE);
  enter (fixture, "3000 x 60 x 2");
  g_assert_cmpfloat (part (fixture)->diameter, ==, 0.06);
  g_assert_cmpfloat (part (fixture)->wall, ==, 0.002);
  choose (fixture, "section", GB_SECTION_ROUND);
  enter (fixture, "2 x 900 x 30");
  g_assert_cmpfloat (part (fixture)->quantity, ==, 2);
  g_assert_cmpfloat (part (fixture)->diameter, ==, 0.03);
}

static void
test_others (Fixture *fixture, gconstpointer data)
{
  choose (fixture, "takeoff", GB_TAKEOFF_COUNT);
  enter (fixture, "48");
  g_assert_cmpfloat (part (fixture)->quantity, ==, 48);
  check_text (fixture, "48");
  choose (fixture, "takeoff", GB_TAKEOFF_LUMP);
  enter (fixture, "2 x 3.5 kg");
  g_assert_cmpfloat (part (fixture)->mass, ==, 3.5);
  g_assert_cmpfloat (part (fixture)->quantity, ==, 2);
  choose (fixture, "takeoff", GB_TAKEOFF_COATING);
  enter (fixture, "3");
  g_assert_cmpfloat (part (fixture)->coats, ==, 3);
  choose (fixture, "takeoff", GB_TAKEOFF_SKIN);
  enter (fixture, "5");
  g_assert_cmpfloat (part (fixture)->thickness, ==, 0.005);
  choose (fixture, "takeoff", GB_TAKEOFF_BLOCK);
  enter (fixture, "1 x 300 x 200 x 100");
  g_assert_cmpfloat (part (fixture)->width, ==, 0.2);
}

static void
test_refused (Fixture *fixture, gconstpointer data)
{
  enter (fixture, "2100 x 860 x 6");
  refuse (fixture, "1 x 2 x 3 x 4 x 5", "length x width x thickness");
  refuse (fixture, "2100 x wide", "Width");
  refuse (fixture, "2100 x 5 kg", "Width");
  refuse (fixture, "-100", "Length");
  refuse (fixture, "0 x 100", "Length");
  refuse (fixture, "1e999", "Length");
  g_assert_cmpfloat (part (fixture)->length, ==, 2.1);
  choose (fixture, "takeoff", GB_TAKEOFF_COUNT);
  refuse (fixture, "2 x 3", "quantity");
}

/* A group has no amount, and nothing happens to it among others. */
static void
test_group (Fixture *fixture, gconstpointer data)
{
  gint64 ids[2] = { gb_project_add_part (fixture->project, "Group", GB_KIND_GROUP, 0, 0, NULL), fixture->id };
  const GbPart *group = gb_boat_part (gb_project_get_boat (fixture->project), ids[0]);

  g_assert_null (gb_amount_edit_text (fixture->project, group));
  g_assert_true (gb_amount_enter (fixture->project, ids, 2, "700", NULL));
  g_assert_true (isnan (group->length));
  g_assert_cmpfloat (part (fixture)->length, ==, 0.7);
  g_assert_cmpstr (gb_project_get_undo_words (fixture->project), ==, "sizes of Part");
}

/* Choices ------------------------------------------------------------------------------------------------ */

static void
test_choices (Fixture *fixture, gconstpointer data)
{
  const GbField *material = gb_field (GB_RECORD_PART, "material");
  const GbMaterial *known = g_ptr_array_index (gb_catalogue_get (), 0);
  g_autoptr (GPtrArray) kinds = gb_choices_for_field (fixture->project, gb_field (GB_RECORD_PART, "takeoff"));
  g_autoptr (GPtrArray) all = gb_choices_for_field (fixture->project, material);
  g_autoptr (GPtrArray) after = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_cmpuint (kinds->len, ==, gb_field_n_choices (gb_field (GB_RECORD_PART, "takeoff")));
  g_assert_cmpuint (all->len, ==, gb_catalogue_get ()->len);
  /* Taken into the build, it is offered once: as the build's own. */
  gb_project_enter (fixture->project, GB_RECORD_PART, &fixture->id, 1, material, known->name, &error);
  g_assert_no_error (error);
  after = gb_choices_for_field (fixture->project, material);
  g_assert_cmpuint (after->len, ==, all->len);
  g_assert_cmpstr (((const GbChoiceItem *) after->pdata[0])->text, ==, known->name);
  g_assert_cmpint (((const GbChoiceItem *) after->pdata[0])->id, !=, 0);
}

static void
test_matches (void)
{
  static const char *const texts[] = { "Red oak", "Oak, white", "Soaked foam", "Spruce", "Eiche (Oak)" };
  g_autoptr (GPtrArray) choices = g_ptr_array_new_with_free_func ((GDestroyNotify) gb_choice_item_free);
  g_autoptr (GPtrArray) matches = NULL;
  g_autoptr (GPtrArray) none = NULL;
  g_autoptr (GPtrArray) all = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    g_ptr_array_add (choices, gb_choice_item_new (texts[i], NULL, GB_N_RECORDS, i));
  matches = gb_choices_match (choices, " OAK ");
  g_assert_cmpuint (matches->len, ==, 4);
  g_assert_cmpstr (((const GbChoiceItem *) matches->pdata[0])->text, ==, "Oak, white");
  g_assert_cmpstr (((const GbChoiceItem *) matches->pdata[1])->text, ==, "Red oak");
  g_assert_cmpstr (((const GbChoiceItem *) matches->pdata[2])->text, ==, "Eiche (Oak)");
  g_assert_cmpstr (((const GbChoiceItem *) matches->pdata[3])->text, ==, "Soaked foam");
  none = gb_choices_match (choices, "teak");
  g_assert_cmpuint (none->len, ==, 0);
  all = gb_choices_match (choices, "");
  g_assert_cmpuint (all->len, ==, choices->len);
  g_assert_cmpstr (gb_choices_find (choices, "spruce")->text, ==, "Spruce");
  g_assert_null (gb_choices_find (choices, "oak"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(path, func) g_test_add (path, Fixture, NULL, set_up, func, tear_down)
  ADD ("/amount/sheet", test_sheet);
  ADD ("/amount/sheet-by-area", test_sheet_by_area);
  ADD ("/amount/length", test_length);
  ADD ("/amount/others", test_others);
  ADD ("/amount/refused", test_refused);
  ADD ("/amount/group", test_group);
  ADD ("/choices/for-field", test_choices);
  g_test_add_func ("/choices/matches", test_matches);
  return g_test_run ();
}
