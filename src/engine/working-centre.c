/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-working"

/* How a centre of gravity came about: of a group by the moment table, of a part by the way out through its
 * groups. */

#include "rollup-private.h"
#include "working-private.h"

#include <glib/gi18n-lib.h>

static const double nowhere[3] = { NAN, NAN, NAN };

/* Masses and moments of what has a place, in the boat's axes: of one group, as it is entered. */
typedef struct
{
  double mass, centre[3], largest_arm;
} Sum;

static Sum
sum_of (const GbRollup *rollup, const GPtrArray *children)
{
  Sum sum = { 0 };
  double moments[3] = { 0, 0, 0 };

  for (guint i = 0; i < children->len; i++)
    {
      const GbMass *mass = gb_rollup_part (rollup, children->pdata[i]);
      const double centre[3] = { mass->x, mass->y, mass->z };

      if (!(mass->placed_mass > 0))
        continue;
      sum.mass += mass->placed_mass;
      for (guint axis = 0; axis < 3; axis++)
        {
          moments[axis] += mass->placed_mass * centre[axis];
          sum.largest_arm = MAX (sum.largest_arm, fabs (centre[axis]));
        }
    }
  for (guint axis = 0; axis < 3; axis++)
    sum.centre[axis] = moments[axis] / sum.mass;
  return sum;
}

static void
show_table (GbHand *hand, const GPtrArray *children, const Sum *sum)
{
  const GbRollup *rollup = &hand->findings->rollup;
  GbMomentTable table = gb_moment_table (hand, sum->mass, sum->largest_arm);

  gb_moment_columns (hand);
  for (guint i = 0; i < children->len; i++)
    {
      const GbMass *mass = gb_rollup_part (rollup, children->pdata[i]);

      const double centre[3] = { mass->x, mass->y, mass->z };
      gboolean placed = mass->placed_mass > 0;

      gb_moment_row (hand, &table, gb_record_dup_title (children->pdata[i]), placed ? mass->placed_mass : NAN,
               placed ? centre : nowhere);
    }
  gb_moment_row (hand, &table, g_strdup (_ ("Sum, and its centre")), sum->mass, sum->centre);
}

static void
show_division (GbHand *hand, const Sum *sum)
{
  static const char *const axes[3] = { "x", "y", "z" };
  GbMomentTable table = gb_moment_table (hand, sum->mass, sum->largest_arm);
  g_autofree char *mass = gb_column_show (table.mass, sum->mass);
  const char *mass_unit = gb_quantity_unit (GB_DIM_MASS, hand->units);
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < 3; i++)
    {
      g_autofree char *moment = gb_column_show (table.moment, sum->mass * sum->centre[i]);
      g_autofree char *arm = gb_hand_show (hand, sum->centre[i], GB_DIM_LENGTH);

      g_string_append_printf (text, "%s%s: %s %s ÷ %s %s = %s", i > 0 ? "; " : "", axes[i], moment,
                              gb_moment_unit (hand->units), mass, mass_unit, arm);
    }
  gb_hand_step (hand, _ ("Centre: sum of the moments ÷ sum of the masses, in the boat's axes"),
                g_string_free (g_steal_pointer (&text), FALSE), NULL);
}

static void
show_left_out (GbHand *hand, const GbMass *mass)
{
  g_autofree char *no_place = NULL, *no_mass = NULL;

  if (mass->n_no_place > 0)
    {
      no_place = g_strdup_printf (ngettext ("%u part without a place is left out",
                                            "%u parts without a place are left out", mass->n_no_place),
                                  mass->n_no_place);
      gb_hand_step (hand, no_place, gb_hand_show (hand, mass->mass - mass->placed_mass, GB_DIM_MASS), NULL);
    }
  if (mass->n_no_mass > 0)
    {
      no_mass = g_strdup_printf (ngettext ("%u part without a mass is left out",
                                           "%u parts without a mass are left out", mass->n_no_mass),
                                 mass->n_no_mass);
      gb_hand_step (hand, no_mass, NULL, NULL);
    }
}

/* Supports tell the centre along x, along y, or both. */
static void
show_supports (GbHand *hand, gint64 part)
{
  const GbWeighing *weighing = gb_hand_weighing (hand, part);
  const GbWeighed *weighed;
  g_autofree char *x = NULL, *y = NULL;

  if (weighing == NULL)
    return;
  weighed = &hand->findings->rollup.weighings[weighing->rec.index];
  x = gb_hand_show (hand, weighed->x, GB_DIM_LENGTH);
  y = gb_hand_show (hand, weighed->y, GB_DIM_LENGTH);
  if (!isnan (weighed->x))
    gb_hand_step (hand,
                  _ ("The supports say: sum of reading × x ÷ sum of readings, in the axes of the weighing"),
                  g_strdup_printf ("x %s", x), NULL);
  if (!isnan (weighed->y))
    gb_hand_step (hand,
                  _ ("The supports say: sum of reading × y ÷ sum of readings, in the axes of the weighing"),
                  g_strdup_printf ("y %s", y), NULL);
}

static void
show_result (GbHand *hand, const GbMass *mass)
{
  double radii[3];
  g_autofree char *centre = gb_hand_place (hand, (const double[]){ mass->x, mass->y, mass->z });
  g_autofree char *sds = gb_hand_place (hand, (const double[]){ mass->x_sd, mass->y_sd, mass->z_sd });

  gb_hand_step (hand, _ ("Centre, in the boat's axes"), g_steal_pointer (&centre), NULL);
  if (isnan (mass->x))
    return;
  gb_hand_step (hand, _ ("Standard deviation"), g_steal_pointer (&sds), NULL);
  gb_radii_of_gyration (mass, radii);
  for (guint i = 0; i < 3; i++)
    radii[i] = radii[i] < 1e-6 ? 0 : radii[i]; /* rounding leaves a hair of a point or a plane */
  gb_hand_step (hand, _ ("Radius of gyration about each axis through the centre: √(inertia ÷ mass)"),
                gb_hand_place (hand, radii), NULL);
}

static void
show_group (GbHand *hand, const GbPart *part, const GPtrArray *children, const GbMass *mass)
{
  Sum sum = sum_of (&hand->findings->rollup, children);

  if (sum.mass > 0)
    show_division (hand, &sum);
  show_left_out (hand, mass);
  if (mass->weighed)
    show_supports (hand, part != NULL ? part->rec.id : 0);
  if (part != NULL && part->pair)
    gb_hand_step (hand, _ ("There is one to port and one to starboard: the centre of both lies between them"),
                  NULL, NULL);
  show_result (hand, mass);
  show_table (hand, children, &sum);
}

/* The way out ------------------------------------------------------------------------------- */

/* Where one of it lies in the group that it is in, as entered or as the supports say. FALSE if its place does
 * not come from there. */
static gboolean
show_own_place (GbHand *hand, const GbPart *part, double centre[3])
{
  const GbPart *group = gb_boat_part (hand->boat, part->rec.owner);
  g_autofree char *words = NULL;

  if (part->takeoff == GB_TAKEOFF_SKIN)
    {
      gb_hand_step (hand, _ ("A skin lies where its hull does: centre of the surface, from the hull's shape"),
                    NULL, NULL);
      return FALSE;
    }
  if (gb_part_coats_others (part))
    {
      gb_hand_step (hand, _ ("A coating lies on what it coats: centre of those surfaces, each by its area"),
                    NULL, NULL);
      return FALSE;
    }
  words = group != NULL ? gb_hand_title (_ ("Its place, as entered, in the axes of %s"), group)
                        : g_strdup (_ ("Its place, as entered, in the boat's axes"));
  centre[0] = part->x;
  centre[1] = part->pair ? 0 : part->y;
  centre[2] = part->z;
  gb_hand_step (hand, words, gb_hand_place (hand, (const double[]){ part->x, part->y, part->z }), NULL);
  return TRUE;
}

static void
take_from_supports (const GbHand *hand, const GbPart *part, double centre[3])
{
  const GbWeighing *weighing = gb_hand_weighing (hand, part->rec.id);
  double one[3] = { part->x, part->y, part->z };

  if (weighing == NULL)
    return;
  gb_weighing_of_one (hand->boat, weighing, &hand->findings->rollup.weighings[weighing->rec.index], one);
  centre[0] = one[0];
  centre[1] = part->pair ? 0 : one[1];
}

static void
show_step_outward (GbHand *hand, const GbPart *group, double centre[3])
{
  const GbPart *around = gb_boat_part (hand->boat, group->rec.owner);
  g_autofree char *name = gb_record_dup_title (&group->rec), *outer = NULL, *words = NULL;
  GbAxes axes;

  gb_axes_of_group (group, &axes);
  gb_axes_outward (&axes, centre);
  outer = around != NULL ? gb_record_dup_title (&around->rec) : g_strdup (_ ("the boat"));
  /* Translators: the name of a group, and that of the group around it. */
  words = g_strdup_printf (axes.turned ? _ ("Turned with %s, and shifted by its origin, into the axes of %s")
                                       : _ ("Shifted by the origin of %s, into the axes of %s"),
                           name, outer);
  gb_hand_step (hand, words, gb_hand_place (hand, centre), NULL);
}

static void
show_part (GbHand *hand, const GbPart *part, const GbMass *mass)
{
  double centre[3];

  if (show_own_place (hand, part, centre))
    {
      if (part->pair)
        gb_hand_step (hand,
                      _ ("There is one to port and one to starboard: the centre of both lies between them"),
                      gb_hand_place (hand, centre), NULL);
      if (mass->weighed)
        {
          show_supports (hand, part->rec.id);
          take_from_supports (hand, part, centre);
        }
      for (const GbPart *group = gb_boat_part (hand->boat, part->rec.owner);
           group != NULL && gb_is_place (centre); group = gb_boat_part (hand->boat, group->rec.owner))
        show_step_outward (hand, group, centre);
    }
  show_result (hand, mass);
}

GbWorking *
gb_working_centre (const GbBoat *boat, const GbFindings *findings, gint64 part_id)
{
  const GbPart *part = gb_boat_part (boat, part_id);
  GbHand hand;

  if (part_id == 0)
    {
      hand = gb_hand_start (boat, findings, g_strdup (_ ("Centre of gravity of the boat")));
      show_group (&hand, NULL, gb_boat_roots (boat, GB_RECORD_PART), &findings->rollup.boat);
      return hand.working;
    }
  if (part == NULL)
    return gb_hand_of_nothing (boat);
  /* Translators: the name of a part. */
  hand = gb_hand_start (boat, findings, gb_hand_title (_ ("Centre of gravity of %s"), part));
  if (gb_part_gathers (part))
    show_group (&hand, part, gb_record_children (&part->rec), gb_rollup_part (&findings->rollup, part));
  else
    show_part (&hand, part, gb_rollup_part (&findings->rollup, part));
  return hand.working;
}
