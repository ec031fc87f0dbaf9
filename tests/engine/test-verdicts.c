/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Each limit that is passed and each thing that is not known has its sentence; a boat that is well has none.
 */

#include "engine/findings.h"
#include "parts-fixture.h"

#include <string.h>

#define TODAY 740000

typedef struct
{
  GbBoat *boat;
  GbBuild *build;
  GbHull *hull;
  GbPart *part;
  GbLoad *load;
} Well;

static void
set_name (char **name, const char *text)
{
  g_free (*name);
  *name = g_strdup (text);
}

/* 10 kg in a box that carries half a tonne, and somebody in it. */
static Well
new_well (void)
{
  Well well = { .boat = gb_boat_new () };
  GbCondition *condition = add_record (well.boat, GB_RECORD_CONDITION, 0);

  set_name (&condition->name, "Alone");
  well.build = (GbBuild *) gb_boat_get (well.boat, GB_RECORD_BUILD, 1);
  well.build->target_mass = 12;
  set_name (&well.build->currency, "EUR");
  well.hull = add_block (well.boat, 2, 1, 0.4);
  well.hull->x = well.hull->y = well.hull->z = 0;
  set_name (&well.hull->name, "Shell");
  well.part = add_lump (well.boat, 0, 10, 1, 0, 0.2);
  well.part->price = 1000;
  well.part->material = add_material (well.boat, GB_MEASURE_DENSITY, 500)->rec.id;
  well.load = add_record (well.boat, GB_RECORD_LOAD, condition->rec.id);
  well.load->kind = GB_LOAD_CARGO;
  well.load->spread = 0.05;
  well.load->mass = 80;
  well.load->x = 1;
  well.load->y = 0;
  well.load->z = 0.3;
  return well;
}

static void
well_clear (Well *well)
{
  gb_boat_free (well->boat);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Well, well_clear)

static GPtrArray *
judge (Well *well)
{
  g_autoptr (GbFindings) findings = gb_findings_new ();

  gb_boat_settle (well->boat);
  gb_findings_find (findings, well->boat, GB_TOUCHED_ALL, TODAY);
  return gb_findings_verdicts (well->boat, findings);
}

static void
assert_none (Well *well)
{
  g_autoptr (GPtrArray) verdicts = judge (well);

  g_assert_cmpuint (verdicts->len, ==, 0);
}

/* Just one verdict, of that kind, with those words in it. */
static void
assert_one (Well *well, GbVerdictKind kind, const char *words)
{
  g_autoptr (GPtrArray) verdicts = judge (well);
  const GbVerdict *verdict;

  for (guint i = 0; i < verdicts->len; i++)
    g_test_message ("%s", ((GbVerdict *) verdicts->pdata[i])->sentence);
  g_assert_cmpuint (verdicts->len, ==, 1);
  verdict = verdicts->pdata[0];
  g_assert_cmpint (verdict->kind, ==, kind);
  g_assert_nonnull (strstr (verdict->sentence, words));
}

/* Among others. */
static void
assert_says (Well *well, GbVerdictKind kind, const char *start, const char *words)
{
  g_autoptr (GPtrArray) verdicts = judge (well);

  for (guint i = 0; i < verdicts->len; i++)
    {
      const GbVerdict *verdict = verdicts->pdata[i];

      if (verdict->kind == kind && g_str_has_prefix (verdict->sentence, start)
          && strstr (verdict->sentence, words) != NULL)
        return;
      g_test_message ("%s", verdict->sentence);
    }
  g_error ("nothing says '%s'", words);
}

static void
test_all_is_well (void)
{
  g_auto (Well) well = new_well ();

  assert_none (&well);
}

static void
test_flotation (void)
{
  g_auto (Well) well = new_well ();

  /* The limit is 2 x 1 x 0.25 m3 of fresh water, 500 kg; the brim 800 kg. The crew's spread is 5 %. */
  well.load->mass = 470;
  assert_one (&well, GB_VERDICT_NOTE, "the chance that she comes out over it is");
  well.load->mass = 600;
  assert_one (&well, GB_VERDICT_PASSED, "over the flotation limit of 500 kg");
  well.load->mass = 900;
  assert_one (&well, GB_VERDICT_PASSED, "she sinks");
}

static GbLoad *
add_cargo (Well *well, const char *condition_name, double mass, double y)
{
  GbCondition *condition = add_record (well->boat, GB_RECORD_CONDITION, 0);
  GbLoad *load = add_record (well->boat, GB_RECORD_LOAD, condition->rec.id);

  set_name (&condition->name, condition_name);
  load->kind = GB_LOAD_CARGO;
  load->mass = mass;
  load->spread = 0.001;
  load->x = 1;
  load->y = y;
  load->z = 0.3;
  return load;
}

/* A box of 2 m2 floats 0.5 mm deeper for each kilogram: with 10 kg, 1.5 kg of margin and 600 kg 306 mm deep
 * of her 400 mm, 94 mm free; 150 mm are accepted. The first condition's limit has its own verdict. */
static void
test_further_conditions (void)
{
  g_auto (Well) well = new_well ();
  GbLoad *load = add_cargo (&well, "Bricks", 600, 0);

  assert_one (&well, GB_VERDICT_PASSED,
              "Bricks: the edge of “Shell” has a freeboard of 94 mm, and 150 mm is the least");
  load->mass = 900;
  assert_one (&well, GB_VERDICT_PASSED, "Bricks: She sinks");
  load->mass = 495 - 11.5;
  load->spread = 0.05;
  assert_one (&well, GB_VERDICT_NOTE, "Bricks: she is within the flotation limit, but the chance");
  load->mass = 300;
  load->y = 0.45;
  assert_says (&well, GB_VERDICT_PASSED, "Bricks: She ", "");
}

static void
test_openings (void)
{
  g_auto (Well) well = new_well ();
  GbOpening *opening = add_record (well.boat, GB_RECORD_OPENING, well.hull->rec.id);
  GbCorner *corner;

  set_name (&opening->name, "Slot");
  assert_one (&well, GB_VERDICT_NOTE, "“Slot” on “Shell” has no corner with a place yet");
  corner = add_record (well.boat, GB_RECORD_CORNER, opening->rec.id);
  corner->x = 1;
  corner->y = 0;
  corner->z = 0.16; /* 115 mm above the water */
  /* It sets the limit too: 10 mm of draught, 2 m2. */
  assert_says (&well, GB_VERDICT_PASSED, "With margin", "over the flotation limit of 20 kg");
  assert_says (&well, GB_VERDICT_PASSED, "Alone: the edge of “Shell, Slot”", "a freeboard of 114 mm");
  corner->z = 0;
  assert_says (&well, GB_VERDICT_PASSED, "Alone: She sinks: “Shell, Slot” is under water however light she is.", "");
}

/* Where there is no condition she is judged empty: 11.5 kg take her 6 mm down. */
static void
test_nobody_aboard (void)
{
  g_auto (Well) well = new_well ();
  GbOpening *opening = add_record (well.boat, GB_RECORD_OPENING, well.hull->rec.id);
  GbCorner *corner = add_record (well.boat, GB_RECORD_CORNER, opening->rec.id);

  set_name (&opening->name, "Slot");
  corner->x = 1;
  corner->y = 0;
  corner->z = 0.1;
  gb_boat_remove (well.boat, GB_RECORD_CONDITION, well.load->rec.owner);
  gb_boat_remove (well.boat, GB_RECORD_LOAD, well.load->rec.id);
  assert_says (&well, GB_VERDICT_PASSED, "Nobody aboard: the edge of “Shell, Slot”",
               "a freeboard of 94 mm");
}

static void
test_swamped (void)
{
  g_auto (Well) well = new_well ();

  well.part->material = 0;
  assert_one (&well, GB_VERDICT_NOTE, "1 part with a mass is of no known density");
}

static void
test_tests (void)
{
  g_auto (Well) well = new_well ();
  GbTub *tub = add_record (well.boat, GB_RECORD_TUB, 0);

  set_name (&tub->name, "Bath");
  assert_says (&well, GB_VERDICT_NOTE, "Bath: ", "");
  gb_boat_remove (well.boat, GB_RECORD_TUB, tub->rec.id);
  add_record (well.boat, GB_RECORD_INCLINING, 0);
  assert_says (&well, GB_VERDICT_NOTE, "Inclining test: ", "");
}

static void
test_target (void)
{
  g_auto (Well) well = new_well ();

  well.build->target_mass = 11; /* 10 kg and 15 % margin */
  assert_one (&well, GB_VERDICT_PASSED, "comes to 11.5 kg: 0.5 kg over the target of 11 kg");
  well.build->target_mass = NAN;
  assert_none (&well);
}

static void
test_budget (void)
{
  g_auto (Well) well = new_well ();
  GbCategory *category = add_record (well.boat, GB_RECORD_CATEGORY, 0);

  set_name (&category->name, "Timber");
  category->budget = 900;
  assert_one (&well, GB_VERDICT_PASSED, "over the budget of");
}

static void
test_parts_that_lack_something (void)
{
  g_auto (Well) well = new_well ();
  GbPart *bare = add_part (well.boat, 0, GB_TAKEOFF_BLOCK, 0, 0, 0);

  bare->price = 0;
  assert_one (&well, GB_VERDICT_NOTE, "1 part without a mass");
  bare->takeoff = GB_TAKEOFF_LUMP;
  bare->mass = 0.1;
  bare->material = well.part->material;
  bare->z = NAN;
  assert_one (&well, GB_VERDICT_NOTE, "1 part without a place");
}

static void
test_hulls (void)
{
  g_auto (Well) well = new_well ();
  GbHull *hull = add_hull (well.boat, GB_HULL_STATIONS);

  hull->x = hull->y = hull->z = 0;
  set_name (&hull->name, "Outrigger");
  assert_one (&well, GB_VERDICT_NOTE, "Outrigger: ");
  gb_boat_remove (well.boat, GB_RECORD_HULL, hull->rec.id);
  gb_boat_remove (well.boat, GB_RECORD_HULL, well.hull->rec.id);
  assert_one (&well, GB_VERDICT_NOTE, "no hull yet");
}

static void
test_water (void)
{
  g_auto (Well) well = new_well ();

  well.build->water = GB_WATER_GIVEN;
  assert_one (&well, GB_VERDICT_NOTE, "density of the water");
}

static void
test_loads (void)
{
  g_auto (Well) well = new_well ();

  well.load->mass = NAN;
  assert_one (&well, GB_VERDICT_NOTE, "has no mass yet");
  well.load->mass = 80;
  well.load->x = NAN;
  assert_one (&well, GB_VERDICT_NOTE, "has no place yet");
  well.load->x = 40;
  assert_says (&well, GB_VERDICT_NOTE, "Alone: ", "lies far outside the boat");
}

static void
test_money (void)
{
  g_auto (Well) well = new_well ();
  GbPurchase *purchase = add_record (well.boat, GB_RECORD_PURCHASE, 0);
  GbLine *line = add_record (well.boat, GB_RECORD_LINE, purchase->rec.id);

  line->kind = GB_LINE_TOOLS;
  line->price = 100;
  purchase->date = TODAY + 1;
  assert_one (&well, GB_VERDICT_NOTE, "1 receipt is dated in the future");
  purchase->date = TODAY;
  line->price = GB_MONEY_UNKNOWN;
  assert_one (&well, GB_VERDICT_NOTE, "without a price or a quantity");
  line->price = 100;
  well.part->price = GB_MONEY_UNKNOWN;
  assert_one (&well, GB_VERDICT_NOTE, "1 thing still to buy is without a price");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/verdicts/well", test_all_is_well);
  g_test_add_func ("/verdicts/flotation", test_flotation);
  g_test_add_func ("/verdicts/further-conditions", test_further_conditions);
  g_test_add_func ("/verdicts/openings", test_openings);
  g_test_add_func ("/verdicts/nobody-aboard", test_nobody_aboard);
  g_test_add_func ("/verdicts/swamped", test_swamped);
  g_test_add_func ("/verdicts/tests", test_tests);
  g_test_add_func ("/verdicts/target", test_target);
  g_test_add_func ("/verdicts/budget", test_budget);
  g_test_add_func ("/verdicts/parts", test_parts_that_lack_something);
  g_test_add_func ("/verdicts/hulls", test_hulls);
  g_test_add_func ("/verdicts/water", test_water);
  g_test_add_func ("/verdicts/loads", test_loads);
  g_test_add_func ("/verdicts/money", test_money);
  return g_test_run ();
}
