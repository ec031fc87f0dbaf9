/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The roll-up's sums: masses, centres and inertia up the tree, against closed forms and against every copy
 * placed one by one. */

#include "generate.h"
#include "rollup-fixture.h"

#include <string.h>

static void
test_mass_and_centre (void)
{
  g_auto (Case) c = new_case ();
  const GbMass *boat;

  add_lump (c.boat, 0, 10, 1, 0.5, 0.2);
  add_lump (c.boat, 0, 30, 3, -0.1, 0.6);
  boat = roll_up (&c);
  assert_near (boat->mass, 40, 1e-13);
  assert_centre (boat, 2.5, 0.05, 0.5, 1e-13);
  assert_near (boat->by_as[GB_AS_ESTIMATED], 40, 1e-13);
  g_assert_cmpuint (boat->n_parts, ==, 2);
}

static void
test_nothing_listed_is_no_mass (void)
{
  g_auto (Case) c = new_case ();

  assert_near (roll_up (&c)->mass, 0, 0);
  g_assert_true (isnan (c.rollup.boat.x));
  g_assert_cmpuint (c.rollup.boat.n_parts, ==, 0);
}

static void
test_quantity_and_pair_multiply (void)
{
  g_auto (Case) c = new_case ();
  GbPart *group = add_group (c.boat, 0, 1, 0.5, 0);
  GbPart *part = add_lump (c.boat, group->rec.id, 2, 0, 0.25, 0.1);

  group->pair = 1;
  part->quantity = 3;
  roll_up (&c);
  assert_near (mass_of (&c, part)->mass, 6, 1e-14);
  assert_near (mass_of (&c, part)->unit_mass, 2, 0);
  assert_centre (mass_of (&c, part), 1, 0.75, 0.1, 1e-15); /* the one as entered */
  assert_near (mass_of (&c, group)->unit_mass, 6, 1e-14);
  assert_near (c.rollup.boat.mass, 12, 1e-14);
  assert_centre (&c.rollup.boat, 1, 0, 0.1, 1e-15); /* between the two */
  /* Two of 6 kg, each 0.75 m out. */
  assert_near (c.rollup.boat.inertia.xx, 12 * 0.75 * 0.75, 1e-13);
  assert_near (c.rollup.boat.inertia.yy, 0, 1e-13);
  assert_near (c.rollup.boat.inertia.zz, 12 * 0.75 * 0.75, 1e-13);
}

static void
test_a_pair_of_parts_lies_between_the_two (void)
{
  g_auto (Case) c = new_case ();
  GbPart *part = add_lump (c.boat, 0, 2, 1, 0.4, 0.3);

  part->pair = 1;
  roll_up (&c);
  assert_near (mass_of (&c, part)->mass, 4, 0);
  assert_centre (mass_of (&c, part), 1, 0, 0.3, 0);
  assert_near (mass_of (&c, part)->inertia.xx, 4 * 0.16, 1e-15);
  assert_near (mass_of (&c, part)->y_sd, 0, 0);
}

static void
test_turns_go_about_x_then_y_then_z (void)
{
  g_auto (Case) c = new_case ();
  GbPart *group = add_group (c.boat, 0, 2, 3, 4);
  GbPart *part = add_lump (c.boat, group->rec.id, 1, 1, 0, 0);

  group->turn_z = G_PI_2; /* swings the forward end to port */
  roll_up (&c);
  assert_centre (mass_of (&c, part), 2, 4, 4, 1e-15);

  /* (0, 1, 0) goes to (0, 0, 1), on to (1, 0, 0), on to (0, 1, 0). */
  group->turn_x = group->turn_y = group->turn_z = G_PI_2;
  part->x = 0;
  part->y = 1;
  roll_up (&c);
  assert_centre (mass_of (&c, part), 2, 4, 4, 1e-15);
}

/* What the field table promises of each turn alone. */
static void
test_positive_turns (void)
{
  g_auto (Case) c = new_case ();
  GbPart *group = add_group (c.boat, 0, 0, 0, 0);
  GbPart *part = add_lump (c.boat, group->rec.id, 1, 0, 1, 0);

  group->turn_x = 0.1; /* lifts the port side */
  roll_up (&c);
  g_assert_cmpfloat (mass_of (&c, part)->z, >, 0);
  group->turn_x = 0;
  group->turn_y = 0.1; /* lowers the forward end */
  part->x = 1;
  part->y = 0;
  roll_up (&c);
  g_assert_cmpfloat (mass_of (&c, part)->z, <, 0);
}

static void
test_a_group_without_an_origin_is_a_heading (void)
{
  g_auto (Case) c = new_case ();
  GbPart *group = add_group (c.boat, 0, NAN, NAN, NAN);

  add_lump (c.boat, group->rec.id, 1, 1, 2, 3);
  assert_centre (roll_up (&c), 1, 2, 3, 0);
  g_assert_cmpuint (c.rollup.boat.n_no_place, ==, 0);
}

static void
assert_inertia (const GbInertia *inertia, double xx, double yy, double zz, double tolerance)
{
  assert_near (inertia->xx, xx, tolerance);
  assert_near (inertia->yy, yy, tolerance);
  assert_near (inertia->zz, zz, tolerance);
}

/* Closed forms, standard in any mechanics text: box m (b2 + c2)/12; solid rod m (3 r2 + l2)/12 across and m
 * r2/2 along; tube m (3 (r2 + s2)
 * + l2)/12 and m (r2 + s2)/2; thin rod m l2/12. */
static void
test_inertia_of_bodies (void)
{
  g_auto (Case) c = new_case ();
  const GbMaterial *metal = add_material (c.boat, GB_MEASURE_DENSITY, 2700);
  const GbMaterial *rope = add_material (c.boat, GB_MEASURE_LINEAR, 0.2);
  GbPart *box = add_box (c.boat, 0, metal, 2, 0.3, 0.1);
  GbPart *rod = add_part (c.boat, 0, GB_TAKEOFF_LENGTH, 0, 0, 0),
         *tube = add_part (c.boat, 0, GB_TAKEOFF_LENGTH, 0, 0, 0);
  GbPart *line = add_part (c.boat, 0, GB_TAKEOFF_LENGTH, 0, 0, 0);
  double m, r = 0.03, s = 0.028, l = 1.5;

  rod->material = tube->material = metal->rec.id;
  rod->length = tube->length = line->length = l;
  rod->section = GB_SECTION_ROUND;
  tube->section = GB_SECTION_TUBE;
  rod->diameter = tube->diameter = 2 * r;
  tube->wall = r - s;
  line->material = rope->rec.id;
  roll_up (&c);

  m = 2 * 0.3 * 0.1 * 2700;
  assert_inertia (&mass_of (&c, box)->inertia, m * (0.09 + 0.01) / 12, m * (4 + 0.01) / 12,
                  m * (4 + 0.09) / 12, 1e-12);
  m = G_PI * r * r * l * 2700;
  assert_inertia (&mass_of (&c, rod)->inertia, m * r * r / 2, m * (3 * r * r + l * l) / 12,
                  m * (3 * r * r + l * l) / 12, 1e-12);
  m = G_PI * (r * r - s * s) * l * 2700;
  assert_inertia (&mass_of (&c, tube)->inertia, m * (r * r + s * s) / 2,
                  m * (3 * (r * r + s * s) + l * l) / 12, m * (3 * (r * r + s * s) + l * l) / 12, 1e-12);
  m = 0.2 * l;
  assert_inertia (&mass_of (&c, line)->inertia, 0, m * l * l / 12, m * l * l / 12, 1e-13);
}

/* Two halves glued end to end are the whole; wherever the group stands. */
static void
test_inertia_by_the_parallel_axis_theorem (void)
{
  g_auto (Case) c = new_case ();
  const GbMaterial *wood = add_material (c.boat, GB_MEASURE_DENSITY, 500);
  GbPart *whole = add_box (c.boat, 0, wood, 2, 0.3, 0.1);
  GbPart *group = add_group (c.boat, 0, 4, -2, 1);
  GbPart *aft = add_box (c.boat, group->rec.id, wood, 1, 0.3, 0.1),
         *fore = add_box (c.boat, group->rec.id, wood, 1, 0.3, 0.1);
  const GbMass *a, *b;
  double radii[3];

  aft->x = -0.5;
  fore->x = 0.5;
  whole->turn_x = group->turn_x = 0.3;
  whole->turn_y = group->turn_y = -0.4;
  whole->turn_z = group->turn_z = 0.7;
  roll_up (&c);
  a = mass_of (&c, whole);
  b = mass_of (&c, group);
  assert_inertia (&b->inertia, a->inertia.xx, a->inertia.yy, a->inertia.zz, 1e-12);
  assert_near (b->inertia.xy, a->inertia.xy, 1e-12);
  assert_near (b->inertia.yz, a->inertia.yz, 1e-12);
  assert_near (b->inertia.zx, a->inertia.zx, 1e-12);
  g_assert_cmpfloat (fabs (a->inertia.xy), >, 1);
  assert_centre (b, 4, -2, 1, 1e-13);

  whole->turn_x = whole->turn_y = whole->turn_z = 0;
  roll_up (&c);
  gb_radii_of_gyration (mass_of (&c, whole), radii);
  assert_near (radii[2], sqrt ((4 + 0.09) / 12), 1e-14);
}

/* Turned by an angle a about z, a thin rod along x has m l2/12 times sin2 a, cos2 a and 1, and the product
 * sin a cos a. */
static void
test_inertia_of_a_turned_rod (void)
{
  g_auto (Case) c = new_case ();
  const GbMaterial *rope = add_material (c.boat, GB_MEASURE_LINEAR, 1);
  GbPart *line = add_part (c.boat, 0, GB_TAKEOFF_LENGTH, 0, 0, 0);
  double a = 0.5, i = 27.0 / 12;

  line->material = rope->rec.id;
  line->length = 3;
  line->turn_z = a;
  roll_up (&c);
  assert_inertia (&mass_of (&c, line)->inertia, i * sin (a) * sin (a), i * cos (a) * cos (a), i, 1e-14);
  assert_near (mass_of (&c, line)->inertia.xy, i * sin (a) * cos (a), 1e-14);
}

/* Worked with 50 digits, every copy written out, by a program that has nothing of this one. */
static void
test_a_nested_paired_and_turned_build_to_twelve_digits (void)
{
  g_auto (Case) c = new_case ();
  GbMaterial *a = add_material (c.boat, GB_MEASURE_DENSITY, 450),
             *b = add_material (c.boat, GB_MEASURE_DENSITY, 700);
  GbPart *group = add_group (c.boat, 0, 1.2, 0.3, 0.1);
  GbPart *one = add_box (c.boat, group->rec.id, a, 0.5, 0.2, 0.02),
         *two = add_box (c.boat, group->rec.id, b, 0.3, 0.3, 0.05);
  GbPart *lump = add_lump (c.boat, 0, 3.2, 2, 0, 0.5);
  const GbMass *m;

  a->spread = 0.08;
  b->spread = 0.05;
  group->turn_x = 0.2;
  group->turn_y = -0.3;
  group->turn_z = 0.5;
  group->pair = 1;
  group->quantity = 2;
  one->x = 0.1, one->y = 0.2, one->z = 0.3;
  one->turn_z = 0.4;
  one->spread = 0.03;
  two->x = -0.2, two->y = 0.1, two->z = 0.4;
  two->pair = 1;
  two->spread = 0.05;
  lump->spread = 0.15;
  m = roll_up (&c);
  assert_near (m->mass, 32, 32e-12);
  assert_near (m->x, 1.0902289600798709798523160544330462, 1e-12);
  assert_near (m->y, 0, 1e-15);
  assert_near (m->z, 0.42758289169778903951615989307246310, 1e-12);
  assert_inertia (&m->inertia, 1.2632503237232070021797084088214154, 3.3798737965850192971488952885925468,
                  4.5067246443654338508544031017887836, 4e-12);
  assert_near (m->inertia.zx, 0.26778375628629230854243710954525766, 3e-13);
  assert_near (m->mass_sd, 1.8708842828993994197207865269258573, 2e-12);
  assert_near (m->x_sd, 0.016720301310126868191179683554925775, 2e-14);
  assert_near (m->y_sd, 0.001, 1e-15);
  assert_near (m->z_sd, 0.0079828879328260221346454818052422280, 1e-14);
}

/* Each copy of each part placed by itself: a walk that knows nothing of sums of moments. */
typedef struct
{
  double mass, moment[3];
} Points;

static void
turned (double p[3], double x, double y, double z)
{
  double a = p[0], b = p[1], c = p[2], t;

  t = b * cos (x) - c * sin (x), c = b * sin (x) + c * cos (x), b = t;
  t = a * cos (y) + c * sin (y), c = c * cos (y) - a * sin (y), a = t;
  t = a * cos (z) - b * sin (z), b = a * sin (z) + b * cos (z), a = t;
  p[0] = a, p[1] = b, p[2] = c;
}

/* @mirrored: a bit for each level, outermost last, that says which of a pair is meant. */
static void
place_copy (const GbBoat *boat, const GbPart *part, double mass, guint mirrored, Points *points)
{
  double p[3] = { part->x, part->y, part->z }, n = part->quantity;

  for (;;)
    {
      if (mirrored & 1)
        p[1] = -p[1];
      mirrored >>= 1;
      part = gb_boat_part (boat, part->rec.owner);
      if (part == NULL)
        break;
      n *= part->quantity;
      turned (p, part->turn_x, part->turn_y, part->turn_z);
      p[0] += part->x, p[1] += part->y, p[2] += part->z;
    }
  points->mass += n * mass;
  for (guint i = 0; i < 3; i++)
    points->moment[i] += n * mass * p[i];
}

static void
place_copies (const GbBoat *boat, const GbPart *part, double mass, Points *points)
{
  guint pairs = 0;

  for (const GbPart *p = part; p != NULL; p = gb_boat_part (boat, p->rec.owner))
    pairs |= p->pair ? 1u << (part->depth - p->depth) : 0;
  for (guint mirrored = 0; mirrored <= pairs; mirrored++)
    if ((mirrored & ~pairs) == 0)
      place_copy (boat, part, mass, mirrored, points);
}

static void
test_against_every_copy_placed_by_itself (void)
{
  for (guint32 seed = 1; seed <= 5; seed++)
    {
      g_auto (Case) c = { .boat = generate_boat (1500, seed) };
      const GPtrArray *parts = gb_boat_all (c.boat, GB_RECORD_PART),
                      *weighings = gb_boat_all (c.boat, GB_RECORD_WEIGHING);
      Points points = { 0 };

      while (weighings->len > 0)
        {
          gb_boat_remove (c.boat, GB_RECORD_WEIGHING, ((GbRecord *) weighings->pdata[0])->id);
          gb_boat_settle (c.boat);
        }
      for (guint i = 0; i < parts->len; i++)
        {
          GbPart *part = parts->pdata[i];

          if (part->takeoff == GB_TAKEOFF_SKIN || part->surface_of != 0)
            part->quantity = 0;
          if (isnan (part->x))
            part->x = 0;
        }
      roll_up (&c);
      for (guint i = 0; i < parts->len; i++)
        {
          const GbPart *part = parts->pdata[i];

          if (part->kind == GB_KIND_PART && part->quantity > 0 && !isnan (c.rollup.parts[i].mass))
            place_copies (c.boat, part, c.rollup.parts[i].unit_mass, &points);
        }
      assert_near (c.rollup.boat.mass, points.mass, 1e-12 * points.mass);
      assert_near (c.rollup.boat.x, points.moment[0] / points.mass, 1e-11);
      assert_near (c.rollup.boat.y, points.moment[1] / points.mass, 1e-11);
      assert_near (c.rollup.boat.z, points.moment[2] / points.mass, 1e-11);
    }
}

static void
test_what_is_unknown_is_counted (void)
{
  g_auto (Case) c = new_case ();
  GbPart *group = add_group (c.boat, 0, 0, 0, 0);
  GbPart *bare = add_part (c.boat, group->rec.id, GB_TAKEOFF_SHEET, 1, 0, 0);
  GbPart *loose = add_lump (c.boat, group->rec.id, 5, 1, 0, NAN);
  GbPart *dark = add_group (c.boat, 0, 0, 0, 0);
  const GbMass *boat;

  add_lump (c.boat, group->rec.id, 2, 3, 1, 0.5);
  add_part (c.boat, dark->rec.id, GB_TAKEOFF_BLOCK, 0, 0, 0);
  boat = roll_up (&c);
  assert_near (boat->mass, 7, 1e-14);
  assert_near (boat->placed_mass, 2, 1e-14);
  assert_centre (boat, 3, 1, 0.5, 1e-14);
  g_assert_cmpuint (boat->n_parts, ==, 4);
  g_assert_cmpuint (boat->n_no_mass, ==, 2);
  g_assert_cmpuint (boat->n_no_place, ==, 1);
  g_assert_true (isnan (mass_of (&c, bare)->mass));
  g_assert_cmpint (mass_of (&c, bare)->trouble, ==, GB_TROUBLE_NO_SIZE);
  assert_near (mass_of (&c, loose)->mass, 5, 0);
  g_assert_true (isnan (mass_of (&c, loose)->x));
  g_assert_true (isnan (mass_of (&c, dark)->mass));
  g_assert_cmpuint (mass_of (&c, group)->n_no_mass, ==, 1);
}

static void
test_a_number_of_pieces_that_is_not_said (void)
{
  g_auto (Case) c = new_case ();
  GbPart *part = add_lump (c.boat, 0, 5, 0, 0, 0);
  GbPart *group = add_group (c.boat, 0, 0, 0, 0);

  add_lump (c.boat, group->rec.id, 5, 0, 0, 0);
  add_lump (c.boat, 0, 1, 0, 0, 0);
  part->quantity = group->quantity = NAN;
  roll_up (&c);
  assert_near (c.rollup.boat.mass, 1, 0);
  g_assert_cmpuint (c.rollup.boat.n_no_mass, ==, 2);
  g_assert_cmpint (mass_of (&c, part)->trouble, ==, GB_TROUBLE_NO_SIZE);
  g_assert_cmpint (mass_of (&c, group)->trouble, ==, GB_TROUBLE_NO_SIZE);

  part->quantity = 0; /* none of it: that is known */
  group->quantity = 0;
  roll_up (&c);
  assert_near (c.rollup.boat.mass, 1, 0);
  g_assert_cmpuint (c.rollup.boat.n_no_mass, ==, 0);
}

static void
test_margin_by_basis (void)
{
  g_auto (Case) c = new_case ();
  GbPart *part = add_lump (c.boat, 0, 10, 0, 0, 0);
  GbPart *other = add_lump (c.boat, 0, 20, 0, 0, 0);

  other->basis = GB_BASIS_CALCULATED;
  weigh (c.boat, add_lump (c.boat, 0, 8, 0, 0, 0)->rec.id, 740000, 9);
  build_of (&c)->margin_mass = 1;
  build_of (&c)->margin_weighed = 0.01;
  roll_up (&c);
  assert_near (c.rollup.margin.estimated, 1.5, 1e-14); /* 15 % of 10, as a new build has it */
  assert_near (c.rollup.margin.calculated, 1, 1e-14);  /* 5 % of 20 */
  assert_near (c.rollup.margin.weighed, 0.09, 1e-14);
  assert_near (c.rollup.margin.total, 3.59, 1e-14);
  part->basis = GB_BASIS_WEIGHED;
  roll_up (&c);
  assert_near (c.rollup.margin.weighed, 0.19, 1e-14);
}

/* Groups within groups within groups; each a millimetre on. */
static void
test_deep_nesting (void)
{
  g_auto (Case) c = new_case ();
  gint64 owner = 0;

  for (guint i = 0; i < 20000; i++)
    owner = add_group (c.boat, owner, 0.001, 0, 0)->rec.id;
  add_lump (c.boat, owner, 1, 0, 0, 0);
  roll_up (&c);
  assert_near (c.rollup.boat.mass, 1, 0);
  assert_near (c.rollup.boat.x, 20, 1e-9);
}

static void
test_parts_in_a_part_count_as_in_a_group (void)
{
  g_auto (Case) c = new_case ();
  GbPart *part = add_lump (c.boat, 0, 100, 1, 0, 0);

  add_lump (c.boat, part->rec.id, 3, 1, 0, 0);
  roll_up (&c);
  assert_near (c.rollup.boat.mass, 3, 0);
  assert_near (c.rollup.boat.x, 2, 0);
}

static void
test_memory_that_is_used_again_changes_nothing (void)
{
  g_auto (Case) used = { .boat = generate_boat (3000, 4) };
  GbRollup fresh = { 0 };

  roll_up (&used);
  gb_boat_free (used.boat);
  used.boat = generate_boat (2000, 5);
  roll_up (&used);
  gb_rollup_find (&fresh, used.boat, &used.hulls, G_MAXINT64);
  g_assert_cmpmem (used.rollup.parts, used.rollup.n_parts * sizeof (GbMass), fresh.parts,
                   fresh.n_parts * sizeof (GbMass));
  g_assert_cmpmem (&used.rollup.boat, sizeof (GbMass), &fresh.boat, sizeof (GbMass));
  gb_rollup_clear (&fresh);

  gb_rollup_find (&used.rollup, used.boat, NULL,
                  G_MAXINT64); /* no hulls: skins have nothing to be the skin of */
  g_assert_cmpuint (used.rollup.boat.n_no_mass, >=, fresh.boat.n_no_mass);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/rollup/mass-and-centre", test_mass_and_centre);
  g_test_add_func ("/rollup/nothing-listed", test_nothing_listed_is_no_mass);
  g_test_add_func ("/rollup/quantity-and-pair", test_quantity_and_pair_multiply);
  g_test_add_func ("/rollup/pair-of-parts", test_a_pair_of_parts_lies_between_the_two);
  g_test_add_func ("/rollup/turns", test_turns_go_about_x_then_y_then_z);
  g_test_add_func ("/rollup/positive-turns", test_positive_turns);
  g_test_add_func ("/rollup/group-without-origin", test_a_group_without_an_origin_is_a_heading);
  g_test_add_func ("/rollup/inertia-of-bodies", test_inertia_of_bodies);
  g_test_add_func ("/rollup/parallel-axis", test_inertia_by_the_parallel_axis_theorem);
  g_test_add_func ("/rollup/turned-rod", test_inertia_of_a_turned_rod);
  g_test_add_func ("/rollup/twelve-digits", test_a_nested_paired_and_turned_build_to_twelve_digits);
  g_test_add_func ("/rollup/every-copy", test_against_every_copy_placed_by_itself);
  g_test_add_func ("/rollup/unknown", test_what_is_unknown_is_counted);
  g_test_add_func ("/rollup/unknown-quantity", test_a_number_of_pieces_that_is_not_said);
  g_test_add_func ("/rollup/margin", test_margin_by_basis);
  g_test_add_func ("/rollup/deep-nesting", test_deep_nesting);
  g_test_add_func ("/rollup/parts-in-a-part", test_parts_in_a_part_count_as_in_a_group);
  g_test_add_func ("/rollup/memory", test_memory_that_is_used_again_changes_nothing);
  return g_test_run ();
}
