/* SPDX-License-Identifier: GPL-3.0-or-later */

/* An edit that is put together: provisional ids, what is put twice, what stands after it, what it would
 * break. */

#include "fixture.h"
#include "project/edit-private.h"
#include "project/siblings.h"

#include <string.h>

static GbRecord *
new_part (const char *name, gint64 owner)
{
  GbRecord *record = gb_record_new (GB_RECORD_PART);

  ((GbPart *) record)->name = g_strdup (name);
  record->owner = owner;
  return record;
}

static GbEdit *
new_edit (void)
{
  return gb_edit_new ("words", GB_RECORD_PART, 0, NULL);
}

static gint64
next_id (GbRecordKind kind, gpointer data)
{
  gint64 *last = data;

  return ++last[kind];
}

static void
test_new_records_get_provisional_ids (void)
{
  g_autoptr (GbEdit) edit = gb_edit_new ("thickness of Bottom", GB_RECORD_PART, BOTTOM, "thickness");
  gint64 group = gb_edit_put (edit, new_part ("Group", 0));
  gint64 part = gb_edit_put (edit, new_part ("Part", group));

  g_assert_cmpint (group, <, 0);
  g_assert_cmpint (part, <, 0);
  g_assert_cmpint (part, !=, group);
  g_assert_cmpuint (gb_edit_n_puts (edit), ==, 2);
  g_assert_cmpstr (gb_edit_words (edit), ==, "thickness of Bottom");
  g_assert_cmpint (gb_edit_place (edit)->id, ==, BOTTOM);
  g_assert_cmpstr (gb_edit_place (edit)->field, ==, "thickness");
}

static void
test_real_ids_reach_owners_references_and_place (void)
{
  g_autoptr (GbEdit) edit = new_edit ();
  gint64 last[GB_N_RECORDS] = { [GB_RECORD_PART] = 20, [GB_RECORD_MATERIAL] = 30 };
  GbRecord *material = gb_record_new (GB_RECORD_MATERIAL);
  GbRecord *group = new_part ("Group", 0), *part, *old;

  gb_edit_put (edit, group);
  part = new_part ("Part", group->id);
  ((GbPart *) part)->surface_of = group->id;
  ((GbPart *) part)->material = gb_edit_put (edit, material);
  gb_edit_put (edit, part);
  old = new_part ("Old", group->id);
  old->id = BOTTOM;
  gb_edit_put (edit, old);
  gb_edit_assign_ids (edit, next_id, last);

  g_assert_cmpint (group->id, ==, 21);
  g_assert_cmpint (part->id, ==, 22);
  g_assert_cmpint (part->owner, ==, 21);
  g_assert_cmpint (((GbPart *) part)->surface_of, ==, 21);
  g_assert_cmpint (((GbPart *) part)->material, ==, 31);
  g_assert_cmpint (old->id, ==, BOTTOM);
  g_assert_cmpint (old->owner, ==, 21);
  g_assert_cmpint (gb_edit_place (edit)->id, ==, 21);
  g_assert_true (gb_edit_get (edit, GB_RECORD_PART, 22) == part);
  g_assert_null (gb_edit_get (edit, GB_RECORD_PART, -1));
}

static void
test_a_record_put_twice_is_replaced (void)
{
  g_autoptr (GbEdit) edit = new_edit ();
  GbRecord *first = new_part ("First", 0), *second = new_part ("Second", 0);

  first->id = second->id = 5;
  gb_edit_put (edit, first);
  g_assert_cmpint (gb_edit_put (edit, second), ==, 5);
  g_assert_cmpuint (gb_edit_n_puts (edit), ==, 1);
  g_assert_true (gb_edit_get (edit, GB_RECORD_PART, 5) == second);
  gb_edit_delete (edit, GB_RECORD_PART, 7);
  gb_edit_delete (edit, GB_RECORD_PART, 7);
  g_assert_cmpuint (gb_edit_deletions (edit)->len, ==, 1);
}

static void
test_what_stands_after_the_edit (void)
{
  g_autoptr (GbBoat) boat = fixture_boat ();
  g_autoptr (GbEdit) edit = new_edit ();

  gb_edit_delete (edit, GB_RECORD_PART, HULL);
  gb_edit_touch (edit, boat, GB_RECORD_PART, FRAME_1)->owner = RIG;
  g_assert_null (gb_edit_after (edit, boat, GB_RECORD_PART, HULL));
  g_assert_null (gb_edit_after (edit, boat, GB_RECORD_PART, FRAME_2));    /* goes with its group's group */
  g_assert_nonnull (gb_edit_after (edit, boat, GB_RECORD_PART, FRAME_1)); /* moved out of it */
  g_assert_nonnull (gb_edit_after (edit, boat, GB_RECORD_PART, MAST));
  g_assert_null (gb_edit_touch (edit, boat, GB_RECORD_PART, 999));

  gb_edit_touch (edit, boat, GB_RECORD_PART, MAST);
  gb_edit_drop_unchanged (edit, boat);
  g_assert_cmpuint (gb_edit_n_puts (edit), ==, 1);
  g_assert_null (gb_edit_get (edit, GB_RECORD_PART, MAST));
}

/* Each breaks one rule; the sentence names the thing. */
static void
assert_refused (GbEdit *edit, const GbBoat *boat, const char *words)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (gb_edit_check (edit, boat, &error));
  g_assert_nonnull (error);
  if (strstr (error->message, words) == NULL)
    g_error ("“%s” does not hold “%s”", error->message, words);
  gb_edit_free (edit);
}

static void
test_rules (void)
{
  g_autoptr (GbBoat) boat = fixture_boat ();
  GbEdit *edit = new_edit ();

  gb_edit_touch (edit, boat, GB_RECORD_PART, HULL)->owner = FRAMES;
  assert_refused (edit, boat, "“Hull” cannot be moved into itself");

  edit = new_edit ();
  gb_edit_touch (edit, boat, GB_RECORD_PART, HULL)->owner = HULL;
  assert_refused (edit, boat, "into itself");

  edit = new_edit ();
  gb_edit_put (edit, new_part ("Nail", BOTTOM));
  assert_refused (edit, boat, "“Bottom”, which is a part and no group");

  edit = new_edit ();
  gb_edit_put (edit, new_part ("Nail", 999));
  assert_refused (edit, boat, "“Nail” cannot go there");

  edit = new_edit ();
  gb_edit_put (edit, new_part ("Nail", HULL));
  gb_edit_delete (edit, GB_RECORD_PART, HULL);
  assert_refused (edit, boat, "“Nail” cannot go there");

  edit = new_edit ();
  ((GbPart *) gb_edit_touch (edit, boat, GB_RECORD_PART, BOTTOM))->material = 999;
  assert_refused (edit, boat, "Material: there is no such thing");

  edit = new_edit ();
  ((GbPart *) gb_edit_touch (edit, boat, GB_RECORD_PART, BOTTOM))->stock = 1;
  gb_edit_delete (edit, GB_RECORD_STOCK, 1);
  assert_refused (edit, boat, "Stock: there is no such thing");

  edit = new_edit ();
  ((GbPart *) gb_edit_touch (edit, boat, GB_RECORD_PART, BOTTOM))->thickness = -1;
  assert_refused (edit, boat, "Thickness");

  edit = new_edit ();
  gb_edit_put (edit, new_part (NULL, 0));
  assert_refused (edit, boat, "Name: must not be empty");

  edit = new_edit ();
  ((GbPart *) gb_edit_touch (edit, boat, GB_RECORD_PART, HULL))->kind = GB_KIND_PART;
  assert_refused (edit, boat, "“Hull” is a group with parts in it");

  edit = new_edit ();
  gb_edit_touch (edit, boat, GB_RECORD_MATERIAL, 1)->owner = 1;
  assert_refused (edit, boat, "“spruce” cannot be put into something else");

  edit = new_edit ();
  gb_edit_delete (edit, GB_RECORD_BUILD, 1);
  assert_refused (edit, boat, "The build itself");

  edit = new_edit ();
  gb_field_set_text (gb_field (GB_RECORD_BUILD, "currency"), gb_edit_touch (edit, boat, GB_RECORD_BUILD, 1),
                     "euro");
  assert_refused (edit, boat, "Currency");

  edit = new_edit ();
  gb_edit_put (edit, gb_record_copy (&gb_boat_part (boat, BOTTOM)->rec));
  gb_edit_get (edit, GB_RECORD_PART, BOTTOM)->id = 999;
  assert_refused (edit, boat, "no longer in this build");
}

static void
test_moving_out_frees_a_group (void)
{
  g_autoptr (GbBoat) boat = fixture_boat ();
  g_autoptr (GbEdit) edit = new_edit ();
  g_autoptr (GError) error = NULL;

  gb_edit_touch (edit, boat, GB_RECORD_PART, MAST)->owner = HULL;
  ((GbPart *) gb_edit_touch (edit, boat, GB_RECORD_PART, RIG))->kind = GB_KIND_PART;
  g_assert_true (gb_edit_check (edit, boat, &error));
  g_assert_no_error (error);
}

static void
test_new_records_go_last (void)
{
  g_autoptr (GbBoat) boat = fixture_boat ();
  g_autoptr (GbEdit) edit = new_edit ();
  GbRecord *first = new_part ("First", RIG), *second = new_part ("Second", RIG), *own = new_part ("Own", RIG);
  GbRecord *alone = new_part ("Alone", 0);

  own->position = 40;
  gb_edit_put (edit, first);
  gb_edit_put (edit, own);
  gb_edit_put (edit, second);
  gb_edit_put (edit, alone);
  gb_siblings_place_new (edit, boat);
  g_assert_cmpfloat (first->position, ==, MAST + 1);
  g_assert_cmpfloat (own->position, ==, 40);
  g_assert_cmpfloat (second->position, ==, 41);
  g_assert_cmpfloat (alone->position, ==, PAINT + 1);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/project/edit/provisional-ids", test_new_records_get_provisional_ids);
  g_test_add_func ("/project/edit/real-ids", test_real_ids_reach_owners_references_and_place);
  g_test_add_func ("/project/edit/put-twice", test_a_record_put_twice_is_replaced);
  g_test_add_func ("/project/edit/after", test_what_stands_after_the_edit);
  g_test_add_func ("/project/edit/rules", test_rules);
  g_test_add_func ("/project/edit/moving-out", test_moving_out_frees_a_group);
  g_test_add_func ("/project/edit/new-go-last", test_new_records_go_last);
  return g_test_run ();
}
