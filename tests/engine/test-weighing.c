/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Scales and supports, and what a weighed group makes of its parts. */

#include "engine/weighing.h"
#include "rollup-fixture.h"

#define DAY 740000

static const GbWeighed *
weighed (Case *c, const GbWeighing *weighing)
{
  return &c->rollup.weighings[weighing->rec.index];
}

static void
test_readings_less_tare (void)
{
  g_auto (Case) c = new_case ();
  GbWeighing *weighing = add_weighing (c.boat, 0, DAY, GB_ON_SCALE_ALL);

  add_reading (c.boat, weighing, 20, 0.5, NAN);
  add_reading (c.boat, weighing, 12, 2.5, NAN);
  weighing->tare = 2;
  weighing->mass_sd = 0.1;
  roll_up (&c);
  assert_near (weighed (&c, weighing)->mass, 30, 1e-14);
  assert_near (weighed (&c, weighing)->mass_sd, 0.1 * G_SQRT2, 1e-15);
  assert_near (weighed (&c, weighing)->x, (19 * 0.5 + 11 * 2.5) / 30, 1e-15);
  /* dx = dm (x_i - x)/M for each. */
  assert_near (weighed (&c, weighing)->x_sd, 0.1 / 30 * hypot (0.5 - 37.0 / 30, 2.5 - 37.0 / 30), 1e-15);
  g_assert_true (isnan (weighed (&c, weighing)->y));
}

static void
test_three_supports (void)
{
  g_auto (Case) c = new_case ();
  GbWeighing *weighing = add_weighing (c.boat, 0, DAY, GB_ON_SCALE_ALL);

  add_reading (c.boat, weighing, 20, 0, 0);
  add_reading (c.boat, weighing, 10, 3, 0.5);
  add_reading (c.boat, weighing, 10, 3, -0.5);
  roll_up (&c);
  assert_near (weighed (&c, weighing)->x, 1.5, 1e-15);
  assert_near (weighed (&c, weighing)->y, 0, 1e-15);
}

static void
test_supports_that_do_not_tell (void)
{
  g_auto (Case) c = new_case ();
  GbWeighing *in_line = add_weighing (c.boat, 0, DAY, GB_ON_SCALE_ALL),
             *bare = add_weighing (c.boat, 0, DAY, GB_ON_SCALE_ALL);
  GbWeighing *empty = add_weighing (c.boat, 0, DAY, GB_ON_SCALE_ALL),
             *light = add_weighing (c.boat, 0, DAY, GB_ON_SCALE_ALL);

  add_reading (c.boat, in_line, 1, 0, 0.2);
  add_reading (c.boat, in_line, 1, 1, 0.2);
  add_reading (c.boat, bare, 5, 1, NAN);
  add_reading (c.boat, bare, 5, NAN, NAN);
  add_reading (c.boat, light, 1, NAN, NAN);
  light->tare = 3;
  roll_up (&c);
  assert_near (weighed (&c, in_line)->x, 0.5, 1e-15);
  g_assert_true (isnan (weighed (&c, in_line)->y));
  assert_near (weighed (&c, bare)->mass, 10, 0);
  g_assert_true (isnan (weighed (&c, bare)->x));
  g_assert_true (isnan (weighed (&c, empty)->mass));
  g_assert_true (isnan (weighed (&c, light)->mass)); /* the tare is more than the readings */
  g_assert_false (weighed (&c, empty)->stands);
}

static void
test_spread_of_a_scale_that_does_not_say (void)
{
  GbWeighing weighing = { .mass_sd = NAN };

  /* 0.5 % or 5 g: common practice, no source. */
  assert_near (gb_reading_sd (&weighing, 40), 0.2, 1e-15);
  assert_near (gb_reading_sd (&weighing, 0.1), 0.005, 0);
  weighing.mass_sd = 0.5;
  assert_near (gb_reading_sd (&weighing, 40), 0.5, 0);
}

static void
test_a_weighed_part (void)
{
  g_auto (Case) c = new_case ();
  const GbMaterial *wood = add_material (c.boat, GB_MEASURE_DENSITY, 1000);
  GbPart *part = add_box (c.boat, 0, wood, 0.1, 0.1, 0.1);
  GbWeighing *weighing;

  part->pair = 1;
  weighing = weigh (c.boat, part->rec.id, DAY, 2.4); /* both on the scale */
  weighing->mass_sd = 0.1;
  roll_up (&c);
  assert_near (mass_of (&c, part)->mass, 2.4, 1e-15);
  assert_near (mass_of (&c, part)->unit_mass, 1.2, 1e-15);
  assert_near (mass_of (&c, part)->listed_mass, 2, 1e-14);
  assert_near (weighed (&c, weighing)->listed, 2, 1e-14);
  assert_near (mass_of (&c, part)->mass_sd, 0.1, 1e-15); /* the wood's own spread is gone */
  assert_near (c.rollup.boat.by_as[GB_AS_WEIGHED], 2.4, 1e-15);
  g_assert_true (mass_of (&c, part)->weighed);
  weighing->on_scale = GB_ON_SCALE_ONE;
  roll_up (&c);
  assert_near (mass_of (&c, part)->mass, 4.8, 1e-15);
  assert_near (mass_of (&c, part)->mass_sd, 0.2, 1e-15);
  assert_near (weighed (&c, weighing)->mass, 4.8, 1e-15);
}

static void
test_a_part_that_only_the_scale_knows (void)
{
  g_auto (Case) c = new_case ();
  GbPart *part = add_part (c.boat, 0, GB_TAKEOFF_SHEET, 1, 0, 0);

  part->length = 2; /* and no width */
  weigh (c.boat, part->rec.id, DAY, 3);
  roll_up (&c);
  assert_near (c.rollup.boat.inertia.zz, 0, 0);
  assert_near (c.rollup.boat.mass, 3, 0);
  assert_near (c.rollup.boat.x, 1, 0);
  assert_near (c.rollup.boat.listed_mass, 3, 0);
  g_assert_true (isnan (mass_of (&c, part)->listed_mass));
  g_assert_cmpuint (c.rollup.boat.n_no_mass, ==, 0);
  g_assert_cmpint (mass_of (&c, part)->trouble, ==, GB_TROUBLE_NONE);
}

static void
test_the_latest_stands (void)
{
  g_auto (Case) c = new_case ();
  GbPart *part = add_lump (c.boat, 0, 1, 0, 0, 0);
  GbWeighing *late = weigh (c.boat, part->rec.id, DAY + 5, 5), *early = weigh (c.boat, part->rec.id, DAY, 4);

  roll_up (&c);
  assert_near (c.rollup.boat.mass, 5, 0);
  g_assert_true (weighed (&c, late)->stands);
  g_assert_false (weighed (&c, early)->stands);
  early->date = DAY + 5; /* on the same day the one that comes later in the log */
  roll_up (&c);
  assert_near (c.rollup.boat.mass, 4, 0);
  gb_rollup_find (&c.rollup, c.boat, NULL, DAY + 4);
  assert_near (c.rollup.boat.mass, 1, 0);
  g_assert_false (weighed (&c, late)->stands);
}

static void
test_weighings_of_what_is_not_there (void)
{
  g_auto (Case) c = new_case ();
  GbPart *none = add_lump (c.boat, 0, 2, 0, 0, 0);

  none->quantity = 0;
  weigh (c.boat, 4711, DAY, 5);
  weigh (c.boat, none->rec.id, DAY, 5);
  roll_up (&c);
  assert_near (c.rollup.boat.mass, 0, 0);
}

/* 4 kg listed, of which 1 kg was weighed; the scale says 5.5 kg for the group. */
static void
test_a_weighed_group_scales_its_parts (void)
{
  g_auto (Case) c = new_case ();
  GbPart *group = add_group (c.boat, 0, 1, 0, 0);
  GbPart *known = add_lump (c.boat, group->rec.id, 2, 0, 0, 0);
  GbPart *inner = add_group (c.boat, group->rec.id, 0, 0, 0);
  GbPart *one = add_lump (c.boat, inner->rec.id, 1, 2, 0, 0);
  GbPart *two = add_lump (c.boat, inner->rec.id, 1, 2, 0, 0);
  GbPart *outside = add_lump (c.boat, 0, 10, 0, 0, 0);
  double shares = 0;

  weigh (c.boat, known->rec.id, DAY, 1);
  two->quantity = 2;
  weigh (c.boat, group->rec.id, DAY, 5.5);
  roll_up (&c);
  assert_near (mass_of (&c, group)->mass, 5.5, 0);
  assert_near (mass_of (&c, group)->listed_mass, 5, 1e-15); /* as taken off, without any scale */
  assert_near (c.rollup.boat.mass, 15.5, 1e-14);
  assert_near (mass_of (&c, known)->scale, 1, 0);
  assert_near (mass_of (&c, one)->scale, 1.5, 1e-15);
  assert_near (mass_of (&c, inner)->scale, 1.5, 1e-15);
  assert_near (mass_of (&c, outside)->scale, 1, 0);
  assert_near (mass_of (&c, group)->scale, 1, 0);
  for (guint i = 0; i < 3; i++)
    {
      const GbMass *m = mass_of (&c, ((GbPart *[]){ known, one, two })[i]);

      shares += m->mass * m->scale;
    }
  assert_near (shares, 5.5, 1e-14);
  /* The centre stays where the parts put it: (1 x 0 + 3 x 2)/4 of its own x. */
  assert_near (mass_of (&c, group)->x, 1 + 1.5, 1e-15);
}

static void
test_scales_within_scales (void)
{
  g_auto (Case) c = new_case ();
  GbPart *group = add_group (c.boat, 0, 0, 0, 0), *inner = add_group (c.boat, group->rec.id, 0, 0, 0);
  GbPart *part = add_lump (c.boat, inner->rec.id, 2, 0, 0, 0),
         *rest = add_lump (c.boat, group->rec.id, 4, 0, 0, 0);

  weigh (c.boat, inner->rec.id, DAY, 3);
  weigh (c.boat, group->rec.id, DAY, 9);
  weigh (c.boat, 0, DAY, 18); /* all is weighed by then: all changes alike */
  roll_up (&c);
  assert_near (mass_of (&c, group)->scale, 2, 0);
  assert_near (mass_of (&c, inner)->scale, 2, 1e-15); /* 3 of the 9 kg, doubled */
  assert_near (mass_of (&c, part)->scale, 3, 1e-15);  /* 2 to 3 kg, doubled */
  assert_near (mass_of (&c, rest)->scale, 3, 1e-15);  /* 4 to 6 kg, doubled */
  assert_near (c.rollup.boat.mass, 18, 0);
  assert_near (c.rollup.boat.listed_mass, 6, 0);
}

static void
test_a_scale_that_says_less_than_its_weighed_parts (void)
{
  g_auto (Case) c = new_case ();
  GbPart *group = add_group (c.boat, 0, 0, 0, 0);
  GbPart *heavy = add_lump (c.boat, group->rec.id, 6, 0, 0, 0),
         *light = add_lump (c.boat, group->rec.id, 2, 0, 0, 0);

  weigh (c.boat, heavy->rec.id, DAY, 6);
  weigh (c.boat, group->rec.id, DAY, 4);
  roll_up (&c);
  assert_near (mass_of (&c, heavy)->scale, 0.5, 1e-15);
  assert_near (mass_of (&c, light)->scale, 0.5, 1e-15);
}

static void
test_a_weighed_group_of_unknown_parts (void)
{
  g_auto (Case) c = new_case ();
  GbPart *group = add_group (c.boat, 0, 1, 0, 0);
  GbPart *empty = add_group (c.boat, 0, 1, 0, 0);
  GbWeighing *weighing = weigh (c.boat, group->rec.id, DAY, 7);

  add_part (c.boat, group->rec.id, GB_TAKEOFF_SHEET, 1, 0, 0);
  weigh (c.boat, empty->rec.id, DAY, 2);
  roll_up (&c);
  assert_near (mass_of (&c, group)->mass, 7, 0);
  g_assert_true (isnan (mass_of (&c, group)->listed_mass));
  g_assert_true (isnan (weighed (&c, weighing)->listed));
  assert_near (c.rollup.boat.mass, 9, 0);
  g_assert_true (isnan (c.rollup.boat.x)); /* nothing in them says where they lie */
  g_assert_cmpuint (c.rollup.boat.n_no_place, ==, 2);
  g_assert_cmpuint (c.rollup.boat.n_no_mass, ==, 1);
}

static void
test_supports_move_the_centre (void)
{
  g_auto (Case) c = new_case ();
  GbPart *group = add_group (c.boat, 0, 10, 0, 0);
  GbWeighing *weighing = add_weighing (c.boat, group->rec.id, DAY, GB_ON_SCALE_ALL);
  const GbMaterial *wood = add_material (c.boat, GB_MEASURE_DENSITY, 1000);
  GbPart *plank = add_box (c.boat, group->rec.id, wood, 4, 0.1, 0.01);
  GbWeighing *of_boat;

  plank->y = 0.3;
  plank->z = 0.2;
  add_reading (c.boat, weighing, 2, -1, NAN);
  add_reading (c.boat, weighing, 6, 1, NAN);
  roll_up (&c);
  assert_centre (mass_of (&c, group), 10.5, 0.3, 0.2, 1e-14);
  assert_near (mass_of (&c, group)->inertia.zz, 8 * (16 + 0.01) / 12,
               1e-13); /* twice the mass, about its new centre */

  of_boat = add_weighing (c.boat, 0, DAY, GB_ON_SCALE_ALL);
  add_reading (c.boat, of_boat, 4, 10, 0.5);
  add_reading (c.boat, of_boat, 4, 11, -0.5);
  roll_up (&c);
  assert_centre (&c.rollup.boat, 10.5, 0, 0.2, 1e-14);
}

/* Both of a pair on one scale: where they lie apart the supports cannot tell. */
static void
test_supports_under_a_pair (void)
{
  g_auto (Case) c = new_case ();
  GbPart *part = add_lump (c.boat, 0, 1, 0, 0.7, 0);
  GbWeighing *weighing = add_weighing (c.boat, part->rec.id, DAY, GB_ON_SCALE_ALL);

  part->pair = 1;
  add_reading (c.boat, weighing, 1, 0, 0.1);
  add_reading (c.boat, weighing, 3, 1, -0.1);
  roll_up (&c);
  assert_centre (mass_of (&c, part), 0.75, 0, 0, 1e-15);
  assert_near (mass_of (&c, part)->inertia.xx, 4 * 0.49, 1e-14);
  weighing->on_scale = GB_ON_SCALE_ONE;
  roll_up (&c);
  assert_near (mass_of (&c, part)->mass, 8, 0);
  assert_near (mass_of (&c, part)->inertia.xx, 8 * 0.05 * 0.05, 1e-14);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/weighing/readings-less-tare", test_readings_less_tare);
  g_test_add_func ("/weighing/three-supports", test_three_supports);
  g_test_add_func ("/weighing/supports-that-do-not-tell", test_supports_that_do_not_tell);
  g_test_add_func ("/weighing/spread-of-a-scale", test_spread_of_a_scale_that_does_not_say);
  g_test_add_func ("/weighing/part", test_a_weighed_part);
  g_test_add_func ("/weighing/only-the-scale-knows", test_a_part_that_only_the_scale_knows);
  g_test_add_func ("/weighing/latest", test_the_latest_stands);
  g_test_add_func ("/weighing/what-is-not-there", test_weighings_of_what_is_not_there);
  g_test_add_func ("/weighing/group", test_a_weighed_group_scales_its_parts);
  g_test_add_func ("/weighing/scales-within-scales", test_scales_within_scales);
  g_test_add_func ("/weighing/less-than-its-parts", test_a_scale_that_says_less_than_its_weighed_parts);
  g_test_add_func ("/weighing/unknown-parts", test_a_weighed_group_of_unknown_parts);
  g_test_add_func ("/weighing/supports-move-the-centre", test_supports_move_the_centre);
  g_test_add_func ("/weighing/supports-under-a-pair", test_supports_under_a_pair);
  return g_test_run ();
}
