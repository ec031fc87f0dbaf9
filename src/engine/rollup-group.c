/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-rollup"

#include "rollup-private.h"

void
gb_rollup_open_group (GbRollupWork *work, const GbPart *group, guint end, guint weighing)
{
  GbGathering opened = {
    .group = group,
    .end = end,
    .weighing = weighing,
    .axes = gb_axes_none,
    .to_boat = gb_axes_none,
    .shared = work->shared.stack->len,
    .waiting = work->waiting->len,
  };

  if (group != NULL)
    {
      GbSpan span = { group->rec.index, end, weighing };

      g_array_append_val (work->spans, span);
      gb_axes_of_group (group, &opened.axes);
      gb_axes_compose (&gb_rollup_innermost (work)->to_boat, &opened.axes, &opened.to_boat);
    }
  g_array_append_val (work->open, opened);
}

/* A place that the group itself is said to be uncertain by moves all of it. */
static void
err_in_place (GbGathering *group)
{
  double sd = isnan (group->group->place_spread) ? 0 : group->group->place_spread * group->placed.m;

  group->errors.xx += sd * sd;
  group->errors.yy += sd * sd;
  group->errors.zz += sd * sd;
}

/* From one of it in its own axes to all of them in the axes around it. */
static void
copy_outward (GbRollupWork *work, GbGathering *group)
{
  const GbPart *part = group->group;
  double copies = gb_part_copies (part);

  gb_moments_move (&group->placed, &group->axes);
  gb_moments_move (&group->errors, &group->axes);
  err_in_place (group);
  gb_part_copy_moments (part, copies, &group->placed);
  gb_part_copy_errors (part, copies, &group->errors);
  group->loose *= copies;
  group->loose_variance *= copies * copies;
  group->listed *= copies;
  for (guint i = 0; i < GB_N_AS; i++)
    group->by_as[i] *= copies;
  for (guint i = group->shared; i < work->shared.stack->len; i++)
    {
      GbSharedError *error = &g_array_index (work->shared.stack, GbSharedError, i);

      gb_first_move (&error->first, &group->axes);
      error->first = gb_part_copy_first (part, copies, &error->first);
      error->loose *= copies;
    }
}

/* Variance of the mass, and covariance of the centre in the second moments of the result: each error's own
 * first, then each material's. A moment that is off by dM and a mass that is off by dm move the centre c by
 * (dM - c dm)/m. */
static GbMoments
spread_of (const GbRollupWork *work, const GbGathering *group)
{
  const GbMoments *e = &group->errors;
  double m = group->placed.m, x = group->placed.x / m, y = group->placed.y / m, z = group->placed.z / m;
  GbMoments spread = {
    .m = e->m + group->loose_variance,
    .xx = (e->xx - 2 * x * e->x + x * x * e->m) / (m * m),
    .yy = (e->yy - 2 * y * e->y + y * y * e->m) / (m * m),
    .zz = (e->zz - 2 * z * e->z + z * z * e->m) / (m * m),
    .xy = (e->xy - x * e->y - y * e->x + x * y * e->m) / (m * m),
    .yz = (e->yz - y * e->z - z * e->y + y * z * e->m) / (m * m),
    .zx = (e->zx - z * e->x - x * e->z + z * x * e->m) / (m * m),
  };

  for (guint i = group->shared; i < work->shared.stack->len; i++)
    {
      const GbSharedError *error = &g_array_index (work->shared.stack, GbSharedError, i);
      const GbFirst *f = &error->first;
      double r = gb_book_figures (work->book, error->material)->spread, all = r * (f->m + error->loose);
      double dx = r * (f->x - x * f->m) / m, dy = r * (f->y - y * f->m) / m, dz = r * (f->z - z * f->m) / m;

      spread.m += all * all;
      spread.xx += dx * dx, spread.yy += dy * dy, spread.zz += dz * dz;
      spread.xy += dx * dy, spread.yz += dy * dz, spread.zx += dz * dx;
    }
  return spread;
}

/* @to_boat: where the axes lie in which @group now stands. */
static void
fill_place (const GbGathering *group, const GbAxes *to_boat, GbMoments *spread, GbMass *mass)
{
  double m = group->placed.m;
  double centre[3] = { group->placed.x / m, group->placed.y / m, group->placed.z / m };
  GbMoments about = group->placed;

  gb_axes_outward (to_boat, centre);
  mass->x = centre[0], mass->y = centre[1], mass->z = centre[2];
  if (to_boat->turned)
    gb_moments_turn (spread, to_boat->turn);
  /* Rounding may leave a hair below nothing. */
  mass->x_sd = sqrt (MAX (spread->xx, 0));
  mass->y_sd = sqrt (MAX (spread->yy, 0));
  mass->z_sd = sqrt (MAX (spread->zz, 0));
  gb_moments_centre (&about);
  mass->inertia = gb_inertia_of (&about, to_boat);
}

static const GbInertia unknown_inertia = { NAN, NAN, NAN, NAN, NAN, NAN };

static void
fill (
    const GbRollupWork *work, const GbGathering *group, double unit_mass, const GbAxes *to_boat, GbMass *mass)
{
  GbMoments spread = spread_of (work, group);

  *mass = (GbMass){
    .mass = group->placed.m + group->loose,
    .unit_mass = unit_mass,
    .listed_mass = group->listed,
    .placed_mass = group->placed.m,
    .scale = 1,
    .x = NAN,
    .y = NAN,
    .z = NAN,
    .mass_sd = sqrt (spread.m),
    .x_sd = NAN,
    .y_sd = NAN,
    .z_sd = NAN,
    .inertia = unknown_inertia,
    .surface = NAN,
    .amount = NAN,
    .n_parts = group->n_parts,
    .n_no_mass = group->n_no_mass,
    .n_no_place = group->n_no_place,
    .as = group->weighing != GB_NOT_WEIGHED ? GB_AS_WEIGHED : GB_AS_CALCULATED,
    .weighed = group->weighing != GB_NOT_WEIGHED,
  };
  for (guint i = 0; i < GB_N_AS; i++)
    mass->by_as[i] = group->by_as[i];
  if (group->placed.m > 0)
    fill_place (group, to_boat, &spread, mass);
}

/* A group of which nothing is known; or of which it is not known how many there are. */
static void
fill_unknown (const GbGathering *group, GbTrouble trouble, GbMass *mass)
{
  *mass = (GbMass){
    .mass = NAN,
    .unit_mass = NAN,
    .listed_mass = NAN,
    .scale = 1,
    .x = NAN,
    .y = NAN,
    .z = NAN,
    .mass_sd = NAN,
    .x_sd = NAN,
    .y_sd = NAN,
    .z_sd = NAN,
    .inertia = unknown_inertia,
    .surface = NAN,
    .amount = NAN,
    .n_parts = group->n_parts,
    .n_no_mass = group->n_parts,
    .trouble = trouble,
    .as = GB_AS_CALCULATED,
  };
}

static void
gather (GbRollupWork *work, GbGathering *outer, const GbGathering *group, const GbMass *mass)
{
  GbSurfaces surfaces = gb_surfaces_copied (group->group, &group->axes, &group->surfaces);

  gb_surfaces_add (&outer->surfaces, &surfaces);
  outer->n_parts += mass->n_parts;
  outer->n_no_mass += mass->n_no_mass;
  outer->n_no_place += mass->n_no_place;
  if (isnan (mass->mass))
    {
      gb_shared_errors_drop (&work->shared, group->shared);
      return;
    }
  outer->known |= group->known;
  gb_moments_add (&outer->placed, &group->placed);
  gb_moments_add (&outer->errors, &group->errors);
  outer->loose += group->loose;
  outer->loose_variance += group->loose_variance;
  outer->listed += isnan (mass->listed_mass) ? mass->mass : mass->listed_mass;
  for (guint i = 0; i < GB_N_AS; i++)
    outer->by_as[i] += group->by_as[i];
  gb_shared_errors_close (&work->shared, outer->shared, group->shared);
}

static void
finish (GbRollupWork *work, GbGathering *group, const GbAxes *to_boat, GbMass *mass)
{
  double copies = group->group != NULL ? gb_part_copies (group->group) : 1, unit_mass;

  if (group->weighing != GB_NOT_WEIGHED)
    gb_rollup_stand_on_scale (work, group);
  if (isnan (copies))
    {
      fill_unknown (group, isnan (group->group->quantity) ? GB_TROUBLE_NO_SIZE : GB_TROUBLE_BAD_SIZE, mass);
      return;
    }
  if (group->n_parts > 0 && !group->known)
    {
      fill_unknown (group, GB_TROUBLE_NONE, mass);
      return;
    }
  unit_mass = group->placed.m + group->loose;
  if (group->group != NULL)
    copy_outward (work, group);
  fill (work, group, unit_mass, to_boat, mass);
}

/* The coatings of the group that they are in, now that all its surfaces are known. */
static void
add_waiting (GbRollupWork *work)
{
  const GbGathering *group = gb_rollup_innermost (work);
  guint first = group->waiting;

  if (group->group != NULL)
    gb_rollup_keep_surfaces (work, group->group, &group->surfaces);
  for (guint i = first; i < work->waiting->len; i++)
    {
      const GbWaiting *waiting = &g_array_index (work->waiting, GbWaiting, i);

      gb_rollup_add_leaf (work, waiting->part, waiting->weighing);
    }
  g_array_set_size (work->waiting, first);
}

void
gb_rollup_close_group (GbRollupWork *work)
{
  GbGathering group;
  GbGathering *outer;

  add_waiting (work);
  group = *gb_rollup_innermost (work);
  g_array_set_size (work->open, work->open->len - 1);
  if (work->open->len == 0)
    {
      finish (work, &group, &gb_axes_none, &work->rollup->boat);
      return;
    }
  outer = gb_rollup_innermost (work);
  finish (work, &group, &outer->to_boat, &work->rollup->parts[group.group->rec.index]);
  gather (work, outer, &group, &work->rollup->parts[group.group->rec.index]);
}
