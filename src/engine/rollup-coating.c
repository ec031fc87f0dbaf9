/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-rollup"

#include "rollup-private.h"

/* What a coating lies on.
 *
 * The surfaces of a part or group are gathered as masses are, area in place of mass, so that pairs, copies
 * and turns count. Coatings have no surface of their own: two coats on one group lie on the same wood, and a
 * coating of a group that it is in cannot chase its own tail.
 *
 * Each group gathers its surfaces along with its masses, and they are kept for the length of the roll-up. So
 * what is coated is mostly known by the time that its coating is met; a coating of the very group that it is
 * in waits until that one is about to close. For the rest (a coating that stands before what it coats, or
 * deeper) the surfaces are gathered ahead, once for each group. */

typedef struct
{
  const GbPart *group;
  guint end;
  GbAxes axes, to_boat;
  GbSurfaces sum;
} Level;

static gboolean
is_in_tree (const GbPart *part)
{
  return part != NULL && part->rec.index != G_MAXUINT;
}

static const GbSurfaces *
known_surfaces (GbRollupWork *work, const GbPart *group)
{
  guint known = g_array_index (work->surface_of, guint, group->rec.index);

  return known > 0 ? &g_array_index (work->surfaces, GbSurfaces, known - 1) : NULL;
}

void
gb_rollup_keep_surfaces (GbRollupWork *work, const GbPart *group, const GbSurfaces *surfaces)
{
  if (known_surfaces (work, group) != NULL)
    return;
  g_array_append_val (work->surfaces, *surfaces);
  g_array_index (work->surface_of, guint, group->rec.index) = work->surfaces->len;
}

void
gb_surfaces_add (GbSurfaces *to, const GbSurfaces *from)
{
  gb_moments_add (&to->placed, &from->placed);
  to->loose += from->loose;
}

/* Nothing if it is not known how many there are. */
GbSurfaces
gb_surfaces_copied (const GbPart *part, const GbAxes *axes, const GbSurfaces *one)
{
  double copies = gb_part_copies (part);
  GbSurfaces all = *one;

  if (isnan (copies))
    return (GbSurfaces){ 0 };
  if (axes != NULL)
    gb_moments_move (&all.placed, axes);
  gb_part_copy_moments (part, copies, &all.placed);
  all.loose *= copies;
  return all;
}

static GbSurfaces
copied_outward (const GbPart *part, const GbSurfaces *one)
{
  GbAxes axes;

  if (!gb_part_gathers (part))
    return gb_surfaces_copied (part, NULL, one);
  gb_axes_of_group (part, &axes);
  return gb_surfaces_copied (part, &axes, one);
}

static GbSurfaces
surfaces_of_leaf (GbRollupWork *work, const GbPart *part, const GbAxes *to_boat)
{
  GbTakenOff taken;
  double centre[3];

  if (part->takeoff == GB_TAKEOFF_COATING)
    return (GbSurfaces){ 0 };
  gb_take_off (work->book, part, NAN, &taken);
  gb_leaf_place (part, to_boat, &taken, centre);
  return gb_leaf_surfaces (&taken, centre);
}

/* The axes that @group's parts are in, in the boat's. */
static GbAxes
axes_in_boat (const GbBoat *boat, const GbPart *group)
{
  GbAxes to_boat = gb_axes_none;

  for (; group != NULL; group = gb_boat_part (boat, group->rec.owner))
    {
      GbAxes axes;

      gb_axes_of_group (group, &axes);
      gb_axes_compose (&axes, &to_boat, &to_boat);
    }
  return to_boat;
}

static void
open_level (GArray *levels, const GbPart *group, const GbAxes *around)
{
  Level level = { .group = group, .end = group->rec.index + group->n_below + 1 };

  gb_axes_of_group (group, &level.axes);
  gb_axes_compose (around, &level.axes, &level.to_boat);
  g_array_append_val (levels, level);
}

/* Keeps the innermost level's sum and adds it to the one around it. */
static void
close_level (GbRollupWork *work, GArray *levels)
{
  Level closed = g_array_index (levels, Level, levels->len - 1);
  GbSurfaces all = gb_surfaces_copied (closed.group, &closed.axes, &closed.sum);

  gb_rollup_keep_surfaces (work, closed.group, &closed.sum);
  g_array_set_size (levels, levels->len - 1);
  if (levels->len > 0)
    gb_surfaces_add (&g_array_index (levels, Level, levels->len - 1).sum, &all);
}

static void
gather_group (GbRollupWork *work, const GbPart *group)
{
  const GPtrArray *all = gb_boat_all (work->boat, GB_RECORD_PART);
  g_autoptr (GArray) levels = g_array_new (FALSE, FALSE, sizeof (Level));
  GbAxes around = axes_in_boat (work->boat, gb_boat_part (work->boat, group->rec.owner));
  guint end = group->rec.index + group->n_below + 1;

  open_level (levels, group, &around);
  for (guint i = group->rec.index + 1; i < end; i++)
    {
      const GbPart *part = all->pdata[i];
      const GbSurfaces *known = NULL;
      GbSurfaces one, copies;
      Level *level;

      gb_fetch_ahead (all, i);
      while (i >= g_array_index (levels, Level, levels->len - 1).end)
        close_level (work, levels);
      level = &g_array_index (levels, Level, levels->len - 1);
      if (gb_part_gathers (part))
        {
          known = known_surfaces (work, part);
          if (known == NULL)
            {
              around = level->to_boat;
              open_level (levels, part, &around);
              continue;
            }
          i += part->n_below;
        }
      one = known != NULL ? *known : surfaces_of_leaf (work, part, &level->to_boat);
      copies = copied_outward (part, &one);
      gb_surfaces_add (&level->sum, &copies);
    }
  while (levels->len > 0)
    close_level (work, levels);
}

/* One of it: of a group in its own axes, of a part in those that it is in. */
static GbSurfaces
surfaces_of_one (GbRollupWork *work, const GbPart *part)
{
  GbAxes around;

  if (gb_part_gathers (part))
    {
      if (known_surfaces (work, part) == NULL)
        gather_group (work, part);
      return *known_surfaces (work, part);
    }
  around = axes_in_boat (work->boat, gb_boat_part (work->boat, part->rec.owner));
  return surfaces_of_leaf (work, part, &around);
}

static gboolean
contains (const GbPart *group, const GbPart *part)
{
  return part->rec.index >= group->rec.index && part->rec.index <= group->rec.index + group->n_below;
}

GbSurfaces
gb_rollup_surfaces (GbRollupWork *work, const GbPart *coating)
{
  const GbPart *part = gb_boat_part (work->boat, coating->surface_of);
  const GbGathering *innermost = gb_rollup_innermost (work);
  GbSurfaces surfaces = { 0 };
  GbAxes around, inward;

  if (!is_in_tree (part) || part == coating)
    return surfaces;
  surfaces = surfaces_of_one (work, part);
  /* All copies of it count, up to the group that holds the coating too: that one's copies are coated each by
   * their own. */
  for (; part != NULL && !contains (part, coating); part = gb_boat_part (work->boat, part->rec.owner))
    surfaces = copied_outward (part, &surfaces);
  if (part == innermost->group)
    return surfaces;
  around = axes_in_boat (work->boat, part);
  inward = gb_axes_inverse (&innermost->to_boat);
  gb_axes_compose (&inward, &around, &around);
  gb_moments_move (&surfaces.placed, &around);
  return surfaces;
}
