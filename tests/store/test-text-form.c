/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The text form: there and back to the last bit, what a person may write by hand, and a sentence with its line for all else. */

#include "random-boat.h"
#include "scratch.h"

#include "store/text-form.h"

#include <json-glib/json-glib.h>
#include <math.h>
#include <string.h>

static GbBoat *
read_text (const char *text)
{
  g_autoptr (GError) error = NULL;
  GbBoat *boat = gb_text_form_read (text, -1, &error);

  g_assert_no_error (error);
  g_assert_nonnull (boat);
  return boat;
}

static const GbPart *
part (const GbBoat *boat, guint index)
{
  return gb_boat_all (boat, GB_RECORD_PART)->pdata[index];
}

/* There and back --------------------------------------------------------------------------------------------------- */

static void
assert_same_order (const GbBoat *a, const GbBoat *b)
{
  for (guint k = 0; k < GB_N_RECORDS; k++)
    for (guint i = 0; i < gb_boat_n (a, k); i++)
      g_assert_cmpint (((GbRecord *) gb_boat_all (a, k)->pdata[i])->id, ==, ((GbRecord *) gb_boat_all (b, k)->pdata[i])->id);
}

static void
assert_there_and_back (const GbBoat *boat)
{
  g_autofree char *text = gb_text_form_write (boat);
  g_autoptr (GbBoat) back = read_text (text);
  g_autofree char *again = gb_text_form_write (back);

  scratch_assert_equal (boat, back);
  assert_same_order (boat, back);
  g_assert_cmpstr (text, ==, again);
}

static void
test_random_builds_go_there_and_back (void)
{
  g_autoptr (GRand) rand = random_seeded ();
  g_autoptr (GbBoat) empty = gb_boat_new ();

  assert_there_and_back (empty);
  for (guint i = 0; i < 20; i++)
    {
      g_autoptr (GbBoat) boat = random_boat (rand, 300);

      assert_there_and_back (boat);
    }
}

/* What is written is JSON to another reader too, and says the same. */
static void
test_another_reader_agrees (void)
{
  g_autoptr (GRand) rand = random_seeded ();
  g_autoptr (GbBoat) boat = random_boat (rand, 300);
  g_autofree char *text = gb_text_form_write (boat);
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GError) error = NULL;
  const GPtrArray *materials = gb_boat_roots (boat, GB_RECORD_MATERIAL);
  JsonObject *root;
  JsonArray *list;

  json_parser_load_from_data (parser, text, -1, &error);
  g_assert_no_error (error);
  root = json_node_get_object (json_parser_get_root (parser));
  g_assert_cmpint (json_object_get_int_member (root, "garboard"), ==, 1);
  list = json_object_get_array_member (root, "material");
  g_assert_cmpuint (json_array_get_length (list), ==, materials->len);
  for (guint i = 0; i < materials->len; i++)
    {
      const GbMaterial *material = materials->pdata[i];
      JsonObject *object = json_array_get_object_element (list, i);
      gboolean typed = material->rec.typed != NULL && strstr (material->rec.typed, "density=") != NULL;

      g_assert_cmpint (json_object_get_int_member (object, "id"), ==, material->rec.id);
      g_assert_cmpstr (json_object_get_string_member_with_default (object, "name", NULL), ==, material->name);
      if (!isnan (material->density) && !typed)
        g_assert_cmpfloat (json_object_get_double_member (object, "density"), ==, material->density);
    }
}

/* Money is written in the currency's decimals: none, two and three by ISO 4217. */
static void
test_money_goes_by_its_currency (void)
{
  const struct
  {
    const char *currency, *text;
  } cases[] = { { "JPY", "\"cost_allowance\": \"12345\"" },
                { "EUR", "\"cost_allowance\": \"123.45\"" },
                { "KWD", "\"cost_allowance\": \"12.345\"" } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GbBoat) boat = gb_boat_new ();
      GbRecord *build = (GbRecord *) gb_boat_build (boat);
      g_autofree char *text = NULL;

      gb_field_set_text (gb_field (GB_RECORD_BUILD, "currency"), build, cases[i].currency);
      gb_field_set_integer (gb_field (GB_RECORD_BUILD, "cost_allowance"), build, 12345);
      text = gb_text_form_write (boat);
      g_assert_nonnull (strstr (text, cases[i].text));
      assert_there_and_back (boat);
    }
}

/* Typed words that do not give the value that is held are not written: the value is. */
static void
test_untrue_words_are_not_written (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbPart *bottom = (GbPart *) gb_record_new (GB_RECORD_PART);
  g_autofree char *text = NULL;

  bottom->rec.id = 1;
  bottom->thickness = 0.009;
  bottom->width = 0.3;
  gb_typed_set (&bottom->rec, "thickness", "6 mm");
  gb_typed_set (&bottom->rec, "width", "300 mm");
  gb_boat_take (boat, &bottom->rec);
  gb_boat_settle (boat);
  text = gb_text_form_write (boat);
  g_assert_nonnull (strstr (text, "\"thickness\": 0.009"));
  g_assert_nonnull (strstr (text, "\"width\": \"300 mm\""));
}

static void
test_the_text_is_fit_to_read (void)
{
  const char *text = "{\n"
                     "  \"garboard\": 1,\n"
                     "  \"build\": { \"name\": \"Plover\", \"currency\": \"EUR\", \"freeboard\": null },\n"
                     "  \"material\": [\n"
                     "    { \"id\": 1, \"name\": \"okoume ply\", \"density\": 450 }\n"
                     "  ],\n"
                     "  \"part\": [\n"
                     "    {\n"
                     "      \"id\": 1,\n"
                     "      \"name\": \"Hull\",\n"
                     "      \"kind\": \"group\",\n"
                     "      \"part\": [\n"
                     "        { \"id\": 3, \"name\": \"Bottom\", \"material\": 1, \"thickness\": \"6 mm\", \"x\": 1.2 },\n"
                     "        { \"id\": 2, \"name\": \"Side \\\"port\\\"\", \"pair\": true, \"price\": \"28.40\" }\n"
                     "      ]\n"
                     "    }\n"
                     "  ],\n"
                     "  \"purchase\": [\n"
                     "    {\n"
                     "      \"id\": 1,\n"
                     "      \"position\": 2.5,\n"
                     "      \"date\": \"2026-03-14\",\n"
                     "      \"line\": [\n"
                     "        { \"id\": 1, \"what\": \"6 mm sheet\", \"quantity\": 2, \"price\": \"28.40\" }\n"
                     "      ]\n"
                     "    }\n"
                     "  ]\n"
                     "}\n";
  g_autoptr (GbBoat) boat = read_text (text);
  g_autofree char *again = gb_text_form_write (boat);

  g_assert_cmpstr (again, ==, text);
  g_assert_cmpfloat (part (boat, 1)->thickness, ==, 0.006);
  g_assert_cmpint (part (boat, 2)->price, ==, 2840);
}

/* Written by hand -------------------------------------------------------------------------------------------------- */

/* Without ids, references by name, money as a number, measures in any unit, records in any order. */
static void
test_a_text_written_by_hand (void)
{
  g_autoptr (GbBoat) boat
      = read_text ("\xef\xbb\xbf{ \"part\": [ { \"name\": \"Hull\", \"kind\": \"group\", \"part\": ["
                   " { \"name\": \"Bottom\", \"takeoff\": \"sheet\", \"material\": \"okoume ply\", \"thickness\": \"1/4 in\","
                   " \"length\": \"(2*1220-45) mm\", \"width\": 3e-1, \"price\": 28.4,"
                   " \"quantity\": 2, \"notes\": \"a\\u00e9\\ud83d\\udef6\\n\" },"
                   " { \"name\": \"Paint\", \"takeoff\": \"coating\", \"surface_of\": \"Bottom\", \"turn_z\": \"90\" } ] } ],"
                   " \"garboard\": 1,"
                   " \"material\": [ { \"name\": \"okoume ply\", \"density\": \"450 kg/m3\", \"sample\": [ { \"mass\": \"1,5 kg\" } ] },"
                   " { \"id\": 7, \"name\": \"spruce\" } ],"
                   " \"build\": { \"cost_allowance\": 12345, \"currency\": \"JPY\" } }");
  const GbPart *bottom = part (boat, 1);
  const GbPart *paint = part (boat, 2);

  g_assert_cmpstr (bottom->name, ==, "Bottom");
  g_assert_cmpint (bottom->rec.owner, ==, part (boat, 0)->rec.id);
  g_assert_cmpint (bottom->material, ==, 8); /* after the highest that is given */
  g_assert_cmpfloat (bottom->thickness, ==, 0.00635);
  g_assert_cmpfloat_with_epsilon (bottom->length, 2.395, 1e-15);
  g_assert_cmpfloat (bottom->width, ==, 0.3);
  g_assert_cmpint (bottom->price, ==, 28); /* yen have no decimals */
  g_assert_cmpstr (bottom->notes, ==, "aé🛶\n");
  g_assert_cmpint (paint->surface_of, ==, bottom->rec.id);
  g_assert_cmpfloat (paint->turn_z, ==, G_PI / 2);
  g_assert_cmpint (gb_boat_build (boat)->cost_allowance, ==, 12345);
  g_assert_cmpuint (gb_boat_n (boat, GB_RECORD_SAMPLE), ==, 1);
  g_assert_cmpfloat (((GbSample *) gb_boat_all (boat, GB_RECORD_SAMPLE)->pdata[0])->mass, ==, 1.5);
}

static void
test_null_is_unknown (void)
{
  g_autoptr (GbBoat) boat = read_text ("{\"garboard\":1,\"build\":{\"freeboard\":null,\"name\":null},"
                                       "\"part\":[{\"quantity\":null,\"material\":null,\"price\":null,\"name\":null}]}");

  g_assert_true (isnan (gb_boat_build (boat)->freeboard));
  g_assert_null (gb_boat_build (boat)->name);
  g_assert_true (isnan (part (boat, 0)->quantity));
  g_assert_cmpint (part (boat, 0)->material, ==, 0);
  g_assert_cmpint (part (boat, 0)->price, ==, GB_MONEY_UNKNOWN);
  g_assert_null (part (boat, 0)->name);
}

static void
test_the_text_need_not_end_in_nul (void)
{
  const char *text = "{\"garboard\":1}xxx";
  g_autoptr (GError) error = NULL;
  g_autoptr (GbBoat) boat = gb_text_form_read (text, 14, &error);

  g_assert_no_error (error);
  g_assert_nonnull (boat);
  g_assert_null (gb_text_form_read (text, 13, NULL));
}

/* Refusals --------------------------------------------------------------------------------------------------------- */

static void
refuse (const char *text, gssize length, int code, const char *const *parts)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GbBoat) boat = gb_text_form_read (text, length, &error);

  g_assert_null (boat);
  g_assert_error (error, GB_TEXT_FORM_ERROR, code);
  for (; *parts != NULL; parts++)
    if (strstr (error->message, *parts) == NULL)
      g_error ("'%s' is not in '%s'", *parts, error->message);
}

/* Fields and structure: each with the line, the record, the field, and what was expected. */
static void
test_each_mistake_is_named (void)
{
#define PART(...) "{\n\"garboard\": 1,\n\"part\": [\n {\n  \"name\": \"Bottom\",\n  " __VA_ARGS__ " } ] }"
  const struct
  {
    const char *text;
    const char *parts[4];
  } cases[] = {
    { PART ("\"thickness\": \"6 mmm\""), { "Line 6:", "Bottom", "thickness: ", "mm" } },
    { PART ("\"thickness\": \"6 kg\""), { "Line 6:", "thickness: " } },
    { PART ("\"thickness\": \"6\""), { "Line 6:", "thickness: ", "leaves a unit open" } },
    { PART ("\"length\": \"2*1220-45 mm\""), { "Line 6:", "length: ", "leaves a unit open" } },
    { PART ("\"thickness\": true"), { "Line 6:", "thickness: ", "a number in SI units is expected" } },
    { PART ("\"thickness\": -1"), { "Line 6:", "thickness: ", "more than" } },
    { PART ("\"thickness\": 1e999"), { "Line 6:", "thickness: ", "finite" } },
    { PART ("\"thickness\": 1e6"), { "Line 6:", "thickness: ", "at most" } },
    { PART ("\"thicknes\": 1"), { "Line 6:", "Bottom", "\"thicknes\"", "\"thickness\" meant" } },
    { PART ("\"colour of the sky\": 1"), { "Line 6:", "one of these is expected", "thickness", "part" } },
    { PART ("\"part\": [\n { \"name\": \"\" } ]"), { "Line 7:", "name: ", "empty" } },
    { PART ("\"name\": \"Side\""), { "Line 6:", "name: ", "twice" } },
    { PART ("\"takeoff\": \"shet\""), { "Line 6:", "takeoff: ", "\"sheet\", \"length\"" } },
    { PART ("\"takeoff\": null"), { "Line 6:", "takeoff: ", "\"sheet\"" } },
    { PART ("\"pair\": \"yes\""), { "Line 6:", "pair: ", "true or false" } },
    { PART ("\"price\": \"much\""), { "Line 6:", "price: ", "12.50" } },
    { PART ("\"price\": []"), { "Line 6:", "price: ", "28.40" } },
    { PART ("\"price\": -3"), { "Line 6:", "price: ", "negative" } },
    { PART ("\"notes\": 3"), { "Line 6:", "notes: ", "text in quotes" } },
    { PART ("\"notes\": \"a\\u0007\""), { "Line 6:", "notes: ", "control character" } },
    { PART ("\"material\": {}"), { "Line 6:", "material: ", "id or the name" } },
    { PART ("\"part\": {}"), { "Line 6:", "\"part\"", "list in brackets" } },
    { PART ("\"part\": [\n3 ]"), { "Line 7:", "\"part\"", "braces" } },
    { PART ("\"part\": [ {},\n\n{ \"quantity\": \"x\" } ]"), { "Line 8:", "Part: quantity: " } },
    { PART ("\"id\": 0"), { "Line 6:", "id: ", "from 1 up" } },
    { PART ("\"id\": 1.5"), { "Line 6:", "id: " } },
    { PART ("\"id\": 1e30"), { "Line 6:", "id: " } },
    { PART ("\"id\": \"a\""), { "Line 6:", "id: " } },
    { PART ("\"id\": 3, \"part\": [\n{ \"id\": 3 } ]"), { "Line 7:", "id: ", "already" } },
    { PART ("\"position\": \"first\""), { "Line 6:", "position: " } },
    { PART ("\"position\": 1e300"), { "Line 6:", "position: " } },
    { PART ("\"part\": [ {}, {},\n{ \"position\": 1 } ]"), { "Line 7:", "position: ", "before" } },
    { "{\"garboard\": 1,\n\"materials\": []}", { "Line 2:", "\"materials\"", "\"material\" meant" } },
    { "{\"garboard\": 1,\n\"sample\": []}", { "Line 2:", "\"sample\"" } },
    { "{\"garboard\": 1,\n\"part\": 3}", { "Line 2:", "\"part\"", "list in brackets" } },
    { "{\"garboard\": 1,\n\"part\": [],\n\"part\": []}", { "Line 3:", "\"part\"", "twice" } },
    { "{\"garboard\": 1,\n\"garboard\": 1}", { "Line 2:", "twice" } },
    { "{\"garboard\": 1,\n\"build\": []}", { "Line 2:", "\"build\"", "braces" } },
    { "{\"garboard\": 1,\n\"build\": { \"currency\": \"Euro\" } }", { "Line 2:", "currency: ", "EUR" } },
    { "{\"garboard\": 1,\n\"build\": { \"id\": 1 } }", { "Line 2:", "\"id\"" } },
    { "{\"garboard\": 1,\n\"build\": { \"temperature\": \"20\" } }", { "Line 2:", "temperature: ", "leaves a unit open" } },
    { "{\"garboard\": 1,\n\"purchase\": [ { \"date\": \"14.3.2026\" } ] }", { "Line 2:", "date: ", "2026-03-14" } },
    { "{\"garboard\": 1,\n\"purchase\": [ { \"date\": \"2026-02-30\" } ] }", { "Line 2:", "date: " } },
    { "{\"garboard\": 1,\n\"purchase\": [ { \"date\": \"2026-03-144\" } ] }", { "Line 2:", "date: " } },
    { "{\"garboard\": 1,\n\"purchase\": [ { \"date\": 20260314 } ] }", { "Line 2:", "date: " } },
    { "\n{\"part\": []}", { "Line 2:", "\"garboard\": 1" } },
    { "{\"garboard\": \"1\"}", { "Line 1:", "\"garboard\": 1" } },
    { "\n\n[]", { "Line 3:", "brace" } },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    refuse (cases[i].text, -1, GB_TEXT_FORM_ERROR_FIELD,
            (const char *[]){ cases[i].parts[0], cases[i].parts[1], cases[i].parts[2], cases[i].parts[3], NULL });
}

static void
test_references_must_lead_somewhere (void)
{
  const struct
  {
    const char *text;
    const char *parts[3];
  } cases[] = {
    { PART ("\"material\": 7"), { "Line 6:", "material: ", "id 7" } },
    { PART ("\"material\": -7"), { "Line 6:", "material: ", "id -7" } },
    { PART ("\"material\": 0"), { "Line 6:", "material: ", "id 0" } },
    { PART ("\"material\": \"oak\""), { "Line 6:", "material: ", "“oak”" } },
    { PART ("\"material\": \"oak\" } ], \"material\": [ { \"name\": \"oak\" }, { \"name\": \"oak\" } ], \"stock\": [ {"),
      { "Line 6:", "material: ", "more than one" } },
    { PART ("\"surface_of\": 4"), { "Line 6:", "surface_of: ", "id 4" } },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    refuse (cases[i].text, -1, GB_TEXT_FORM_ERROR_REFERENCE,
            (const char *[]){ cases[i].parts[0], cases[i].parts[1], cases[i].parts[2], NULL });
}

static void
test_a_newer_text_is_said_to_be_newer (void)
{
  refuse ("{\n\"garboard\": 2, \"wings\": 7}", -1, GB_TEXT_FORM_ERROR_NEWER, (const char *[]){ "Line 2:", "newer", NULL });
}

/* The grammar is that of RFC 8259, section 2 to 7, to the letter. */
static void
test_what_is_no_json (void)
{
  const struct
  {
    const char *text;
    const char *parts[2];
  } cases[] = {
    { "", { "Line 1:", "too early" } },
    { "\n\n{", { "Line 3:", "name in quotes" } },
    { "{\"a\"\n1}", { "Line 2:", "colon" } },
    { "{\"a\":\n}", { "Line 2:", "a value is expected" } },
    { "{\"a\": 1,\n}", { "Line 2:", "comma too many" } },
    { "{\"a\": [1,\n]}", { "Line 2:", "comma too many" } },
    { "{\"a\": [1\n2]}", { "Line 2:", "comma or a closing ]" } },
    { "{\"a\": 1\n\"b\": 2}", { "Line 2:", "comma or a closing }" } },
    { "{\"a\": 1}\n{", { "Line 2:", "after the last bracket" } },
    { "{a: 1}", { "Line 1:", "name in quotes" } },
    { "{'a': 1}", { "Line 1:", "name in quotes" } },
    { "{\"a\": 'b'}", { "Line 1:", "a value is expected" } },
    { "{\"a\": 01}", { "Line 1:", "no number" } },
    { "{\"a\": 1.}", { "Line 1:", "no number" } },
    { "{\"a\": .5}", { "Line 1:", "a value is expected" } },
    { "{\"a\": +1}", { "Line 1:", "a value is expected" } },
    { "{\"a\": -}", { "Line 1:", "no number" } },
    { "{\"a\": 1e}", { "Line 1:", "no number" } },
    { "{\"a\": 0x10}", { "Line 1:", "no number" } },
    { "{\"a\": 1,5}", { "Line 1:", "name in quotes" } },
    { "{\"a\": NaN}", { "Line 1:", "a value is expected" } },
    { "{\"a\": Infinity}", { "Line 1:", "a value is expected" } },
    { "{\"a\": nul}", { "Line 1:", "a value is expected" } },
    { "{\"a\": truely}", { "Line 1:", "comma or a closing }" } },
    { "{\"a\": \"b", { "Line 1:", "no closing quote" } },
    { "{\"a\": \"b\nc\"}", { "Line 1:", "line break" } },
    { "{\"a\": \"b\tc\"}", { "Line 1:", "control character" } },
    { "{\"a\": \"\\x\"}", { "Line 1:", "backslash" } },
    { "{\"a\": \"\\", { "Line 1:", "backslash" } },
    { "{\"a\": \"\\u12\"}", { "Line 1:", "four digits" } },
    { "{\"a\": \"\\ud83d\"}", { "Line 1:", "half of a letter" } },
    { "{\"a\": \"\\udef6\"}", { "Line 1:", "no letter" } },
    { "{\"a\": \"\\u0000\"}", { "Line 1:", "no letter" } },
    { "{ // no\n}", { "Line 1:", "name in quotes" } },
    { "{}\n\xff", { "Line 2:", "UTF-8" } },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    refuse (cases[i].text, -1, GB_TEXT_FORM_ERROR_SYNTAX, (const char *[]){ cases[i].parts[0], cases[i].parts[1], NULL });
  refuse ("{}\0{}", 5, GB_TEXT_FORM_ERROR_SYNTAX, (const char *[]){ "UTF-8", NULL });
}

/* Depth ------------------------------------------------------------------------------------------------------------ */

static GbBoat *
nested_boat (gint64 depth)
{
  GbBoat *boat = gb_boat_new ();

  for (gint64 i = 1; i <= depth; i++)
    {
      GbRecord *group = gb_record_new (GB_RECORD_PART);

      group->id = i;
      group->owner = i - 1;
      group->position = 1;
      ((GbPart *) group)->kind = GB_KIND_GROUP;
      gb_boat_take (boat, group);
    }
  gb_boat_settle (boat);
  return boat;
}

static void
test_groups_nest_deeply (void)
{
  g_autoptr (GbBoat) deep = nested_boat (1000);
  g_autoptr (GbBoat) deeper = nested_boat (1001);
  g_autofree char *text = gb_text_form_write (deeper);

  assert_there_and_back (deep);
  refuse (text, -1, GB_TEXT_FORM_ERROR_SYNTAX, (const char *[]){ "nested too deeply", NULL });
}

static void
test_a_million_brackets_do_no_harm (void)
{
  g_autofree char *brackets = g_strnfill (1000000, '[');
  g_autofree char *text = g_strconcat ("{\"garboard\":1,\"part\":", brackets, NULL);
  g_autoptr (GbBoat) deep = nested_boat (20000);
  g_autofree char *written = gb_text_form_write (deep);

  refuse (text, -1, GB_TEXT_FORM_ERROR_SYNTAX, (const char *[]){ "nested too deeply", NULL });
  g_assert_cmpuint (strlen (written), >, 20000);
}

/* Any text cut short or with a letter changed is read or refused with a sentence, never worse. */
static void
test_spoiled_texts_do_no_harm (void)
{
  g_autoptr (GRand) rand = random_seeded ();
  g_autoptr (GbBoat) boat = random_boat (rand, 40);
  g_autofree char *text = gb_text_form_write (boat);
  gsize length = strlen (text);
  const char letters[] = "{}[]\",:0123456789.-e\\ \nabc\xff";

  for (guint i = 0; i < 2000; i++)
    {
      g_autofree char *spoiled = g_memdup2 (text, length);
      g_autoptr (GError) error = NULL;
      g_autoptr (GbBoat) read = NULL;
      gsize end = i % 2 == 0 ? length : (gsize) g_rand_int_range (rand, 0, (gint32) length);

      for (guint j = 0; j < 1 + i % 3; j++)
        spoiled[g_rand_int_range (rand, 0, (gint32) length)] = letters[g_rand_int_range (rand, 0, sizeof letters)];
      read = gb_text_form_read (spoiled, (gssize) end, &error);
      g_assert_true ((read == NULL) == (error != NULL));
      g_assert_true (error == NULL || g_str_has_prefix (error->message, "Line "));
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/text-form/random-builds-go-there-and-back", test_random_builds_go_there_and_back);
  g_test_add_func ("/text-form/another-reader-agrees", test_another_reader_agrees);
  g_test_add_func ("/text-form/money-goes-by-its-currency", test_money_goes_by_its_currency);
  g_test_add_func ("/text-form/untrue-words-are-not-written", test_untrue_words_are_not_written);
  g_test_add_func ("/text-form/the-text-is-fit-to-read", test_the_text_is_fit_to_read);
  g_test_add_func ("/text-form/a-text-written-by-hand", test_a_text_written_by_hand);
  g_test_add_func ("/text-form/null-is-unknown", test_null_is_unknown);
  g_test_add_func ("/text-form/the-text-need-not-end-in-nul", test_the_text_need_not_end_in_nul);
  g_test_add_func ("/text-form/each-mistake-is-named", test_each_mistake_is_named);
  g_test_add_func ("/text-form/references-must-lead-somewhere", test_references_must_lead_somewhere);
  g_test_add_func ("/text-form/a-newer-text", test_a_newer_text_is_said_to_be_newer);
  g_test_add_func ("/text-form/what-is-no-json", test_what_is_no_json);
  g_test_add_func ("/text-form/groups-nest-deeply", test_groups_nest_deeply);
  g_test_add_func ("/text-form/a-million-brackets", test_a_million_brackets_do_no_harm);
  g_test_add_func ("/text-form/spoiled-texts", test_spoiled_texts_do_no_harm);
  return g_test_run ();
}
