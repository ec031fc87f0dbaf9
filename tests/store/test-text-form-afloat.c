/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Openings, conditions, inclining tests and models in the text form. */

#include "scratch.h"

#include "store/text-form.h"

#include <string.h>

static GbBoat *
read_text (const char *text)
{
  g_autoptr (GError) error = NULL;
  GbBoat *boat = gb_text_form_read (text, -1, &error);

  g_assert_no_error (error);
  return boat;
}

/* What floats, as somebody would write it: two kinds of records in a hull, tests that name their condition, moments with their units. */
static void
test_afloat_written_by_hand (void)
{
  g_autoptr (GbBoat) boat
      = read_text ("{ \"garboard\": 1, \"hull\": [ { \"name\": \"Hull\", \"opening\": [ { \"name\": \"Slot\", \"ring\": true,"
                   " \"corner\": [ { \"x\": \"1190 mm\", \"z\": 0.3 }, { \"x\": 1.49, \"z\": 0.3 } ] } ],"
                   " \"station\": [ { \"x\": 0 }, { \"x\": 2 } ] }, { \"name\": \"Bag\", \"form\": \"pipe\", \"inside\": true } ],"
                   " \"inclining\": [ { \"condition\": \"Alone\", \"shift\": [ { \"mass\": 10, \"distance\": \"-400 mm\", \"angle\": \"-1.5°\" } ] } ],"
                   " \"tub\": [ { \"name\": \"Card\", \"condition\": \"Alone\", \"scale\": 8, \"tub_load\": [ { \"name\": \"Bolt\", \"mass\": \"150 g\" } ] } ],"
                   " \"condition\": [ { \"name\": \"Alone\", \"heeling_moment\": \"9 kg * 2 m\", \"load\": [ { \"name\": \"Rower\","
                   " \"posture\": \"sitting\", \"above\": \"22 cm\" }, { \"name\": \"Rope\", \"kind\": \"pull\", \"bearing\": \"90°\" } ] } ] }");
  const GbRecord *hull = gb_boat_get (boat, GB_RECORD_HULL, 1);
  const GbOpening *slot = gb_record_children_of (hull, GB_RECORD_OPENING)->pdata[0];
  const GbCondition *alone = (const GbCondition *) gb_boat_get (boat, GB_RECORD_CONDITION, 1);
  const GbLoad *rower = gb_record_children (&alone->rec)->pdata[0], *rope = gb_record_children (&alone->rec)->pdata[1];
  g_autofree char *text = gb_text_form_write (boat);
  g_autoptr (GbBoat) again = read_text (text);

  g_assert_cmpuint (gb_record_children (hull)->len, ==, 2);
  g_assert_true (slot->ring && !slot->pair);
  g_assert_cmpfloat (((GbCorner *) gb_record_children (&slot->rec)->pdata[0])->x, ==, 1.19);
  g_assert_cmpfloat (((GbCorner *) gb_record_children (&slot->rec)->pdata[0])->y, ==, 0);
  g_assert_true (((GbHull *) gb_boat_get (boat, GB_RECORD_HULL, 2))->inside);
  g_assert_cmpfloat (alone->heeling_moment, ==, 18);
  g_assert_cmpint (rower->posture, ==, GB_POSTURE_SITTING);
  g_assert_cmpfloat (rower->above, ==, 0.22);
  g_assert_cmpfloat (rope->dip, ==, G_PI / 2); /* straight down, if nothing is said */
  g_assert_cmpfloat (rope->bearing, ==, G_PI / 2);
  g_assert_cmpint (((GbInclining *) gb_boat_get (boat, GB_RECORD_INCLINING, 1))->condition, ==, 1);
  g_assert_cmpint (((GbTub *) gb_boat_get (boat, GB_RECORD_TUB, 1))->condition, ==, 1);
  g_assert_cmpuint (gb_boat_n (boat, GB_RECORD_SHIFT) + gb_boat_n (boat, GB_RECORD_TUB_LOAD), ==, 2);
  scratch_assert_equal (boat, again);
}

/* A text from before there were such things means what it meant. */
static void
test_older_texts_keep_their_meaning (void)
{
  g_autoptr (GbBoat) boat = read_text ("{\"garboard\": 1, \"condition\": [ { \"name\": \"Usual\", \"load\": ["
                                       " { \"name\": \"Rower\", \"mass\": 75, \"z\": 0.45 } ] } ] }");
  const GbLoad *rower = (const GbLoad *) gb_boat_get (boat, GB_RECORD_LOAD, 1);

  g_assert_cmpint (rower->kind, ==, GB_LOAD_PERSON);
  g_assert_cmpint (rower->posture, ==, GB_POSTURE_CENTRE);
  g_assert_cmpfloat (rower->z, ==, 0.45);
}

static void
refuse (const char *text, const char *part)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (gb_text_form_read (text, -1, &error));
  if (strstr (error->message, part) == NULL)
    g_error ("'%s' is not in '%s'", part, error->message);
}

static void
test_mistakes_are_named (void)
{
  refuse ("{ \"garboard\": 1, \"condition\": [ { \"name\": \"A\", \"heeling_moment\": \"18\" } ] }", "leaves a unit open");
  refuse ("{ \"garboard\": 1, \"condition\": [ { \"name\": \"A\", \"heeling_moment\": \"18 kg\" } ] }", "a moment is expected");
  refuse ("{ \"garboard\": 1, \"hull\": [ { \"name\": \"A\", \"openings\": [] } ] }", "\"opening\" meant");
  refuse ("{ \"garboard\": 1, \"hull\": [ { \"name\": \"A\", \"corner\": [] } ] }", "\"corner\" is not known here");
  refuse ("{ \"garboard\": 1, \"tub\": [ { \"name\": \"A\", \"condition\": \"none\" } ] }", "no condition called");
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/text-form/afloat/written-by-hand", test_afloat_written_by_hand);
  g_test_add_func ("/text-form/afloat/older-texts", test_older_texts_keep_their_meaning);
  g_test_add_func ("/text-form/afloat/mistakes", test_mistakes_are_named);
  return g_test_run ();
}
