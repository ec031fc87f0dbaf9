/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-rollup"

#include "rollup-private.h"

/* One part, before and after its copies. */
typedef struct
{
  const GbPart *part;
  GbTakenOff taken;
  double centre[3]; /* of one, in the axes of the group that it is in */
  gboolean placed;
  double copies;
  double mass; /* of one */
  GbAs as;
  gboolean weighed;
  gboolean told[2]; /* by supports: x, y */
  GbMoments errors; /* covariance of one's mass and moments, without the materials' errors; of the mass alone
                       where it has no place */
} Leaf;

/* A skin's mesh lies in the boat's axes, whatever group it is listed in. */
static void
place_skin (const GbAxes *to_boat, GbTakenOff *taken, double centre[3])
{
  GbAxes from_boat = gb_axes_inverse (to_boat);

  for (guint i = 0; i < 3; i++)
    centre[i] = taken->centre[i];
  gb_axes_outward (&from_boat, centre);
  if (from_boat.turned)
    gb_moments_turn (&taken->extent, from_boat.turn);
}

void
gb_leaf_place (const GbPart *part, const GbAxes *to_boat, GbTakenOff *taken, double centre[3])
{
  double turn[3][3];

  if (part->takeoff == GB_TAKEOFF_SKIN)
    {
      place_skin (to_boat, taken, centre);
      return;
    }
  centre[0] = part->x;
  centre[1] = part->y;
  centre[2] = part->z;
  if (taken->extent.m > 0 && gb_part_is_turned (part))
    {
      gb_turn_matrix (part, turn);
      gb_moments_turn (&taken->extent, turn);
    }
}

GbSurfaces
gb_leaf_surfaces (const GbTakenOff *taken, const double centre[3])
{
  GbSurfaces surfaces = { 0 };

  if (!(taken->surface > 0))
    return surfaces;
  if (gb_is_place (centre))
    surfaces.placed = gb_moments_at (taken->surface, centre, &taken->extent);
  else
    surfaces.loose = taken->surface;
  return surfaces;
}

/* A coating lies where the surfaces do that it is on, and is spread out as they are. */
static void
take_off_coating (GbRollupWork *work, Leaf *leaf)
{
  GbSurfaces surfaces = gb_rollup_surfaces (work, leaf->part);
  GbMoments about = surfaces.placed;
  double area = surfaces.placed.m + surfaces.loose;

  gb_take_off (work->book, leaf->part, area > 0 ? area : NAN, &leaf->taken);
  leaf->centre[0] = about.x / about.m;
  leaf->centre[1] = about.y / about.m;
  leaf->centre[2] = about.z / about.m;
  if (!(about.m > 0))
    return;
  gb_moments_centre (&about);
  gb_moments_scale (&about, 1 / about.m);
  leaf->taken.extent = about;
}

static GbAs
known_as (const GbPart *part)
{
  switch ((GbBasis) part->basis)
    {
    case GB_BASIS_ESTIMATED:
      return GB_AS_ESTIMATED;
    case GB_BASIS_CALCULATED:
      return GB_AS_CALCULATED;
    case GB_BASIS_WEIGHED:
      return GB_AS_WEIGHED;
    case GB_BASIS_BY_TAKEOFF:
    default:
      return part->takeoff == GB_TAKEOFF_LUMP ? GB_AS_ESTIMATED : GB_AS_CALCULATED;
    }
}

static double
own_place_sd (const GbRollupWork *work, const GbPart *part)
{
  return isnan (part->place_spread) ? work->place_spread : part->place_spread;
}

/* The amount is off by its spread, and the place by its own. */
static void
err_as_listed (const GbRollupWork *work, Leaf *leaf)
{
  double spread = isnan (leaf->part->spread) ? work->spread[leaf->as] : leaf->part->spread;
  double sd = leaf->mass * spread;

  if (leaf->placed)
    leaf->errors = gb_moments_at (sd * sd, leaf->centre, &(GbMoments){ 0 });
  else
    leaf->errors.m = sd * sd;
}

/* What the scale says of it instead: mass, the place as far as supports tell it, and their errors. */
static void
stand_on_scale (const GbRollupWork *work, Leaf *leaf, guint weighing)
{
  const GbWeighing *record = gb_boat_all (work->boat, GB_RECORD_WEIGHING)->pdata[weighing];
  GbOnScaleOne one
      = gb_weighing_of_one (work->boat, record, &work->rollup->weighings[weighing], leaf->centre);

  leaf->mass = one.mass;
  leaf->as = GB_AS_WEIGHED;
  leaf->weighed = TRUE;
  leaf->placed = gb_is_place (leaf->centre);
  leaf->told[0] = one.told[0];
  leaf->told[1] = one.told[1];
  leaf->errors = one.errors;
  leaf->taken.trouble = GB_TROUBLE_NONE;
}

/* Places that no support told err by their own spread, on top of all else. */
static void
err_in_place (const GbRollupWork *work, Leaf *leaf)
{
  double sd = leaf->mass * own_place_sd (work, leaf->part), variance = sd * sd;

  leaf->errors.xx += leaf->told[0] ? 0 : variance;
  leaf->errors.yy += leaf->told[1] ? 0 : variance;
  leaf->errors.zz += variance;
}

static void
measure (GbRollupWork *work, GbGathering *group, Leaf *leaf)
{
  if (gb_part_coats_others (leaf->part))
    {
      take_off_coating (work, leaf);
      return;
    }
  gb_take_off (work->book, leaf->part, NAN, &leaf->taken);
  gb_leaf_place (leaf->part, &group->to_boat, &leaf->taken, leaf->centre);
  if (leaf->taken.surface > 0)
    {
      GbSurfaces one = gb_leaf_surfaces (&leaf->taken, leaf->centre);
      GbSurfaces all = gb_surfaces_copied (leaf->part, NULL, &one);

      gb_surfaces_add (&group->surfaces, &all);
    }
}

static void
weigh_leaf (GbRollupWork *work, GbGathering *group, guint weighing, Leaf *leaf)
{
  leaf->copies = gb_part_copies (leaf->part);
  measure (work, group, leaf);
  if (isnan (leaf->copies) && leaf->taken.trouble == GB_TROUBLE_NONE)
    leaf->taken.trouble = isnan (leaf->part->quantity) ? GB_TROUBLE_NO_SIZE : GB_TROUBLE_BAD_SIZE;
  leaf->mass = leaf->taken.mass;
  leaf->as = known_as (leaf->part);
  leaf->placed = gb_is_place (leaf->centre);
  if (weighing != GB_NOT_WEIGHED)
    stand_on_scale (work, leaf, weighing);
  else
    err_as_listed (work, leaf);
  if (leaf->placed)
    err_in_place (work, leaf);
}

/* The masses of one that follow a material's figure; a scale's word follows none. */
static guint
shared_masses (const Leaf *leaf, guint materials[2], double masses[2])
{
  const GbTakenOff *taken = &leaf->taken;
  guint n = 0;

  if (leaf->as == GB_AS_WEIGHED)
    return 0;
  if (taken->material != GB_NO_MATERIAL)
    {
      materials[n] = taken->material;
      masses[n++] = taken->mass - taken->resin_mass;
    }
  if (taken->resin != GB_NO_MATERIAL)
    {
      materials[n] = taken->resin;
      masses[n++] = taken->resin_mass;
    }
  return n;
}

static double
mass_sd (const GbRollupWork *work, const Leaf *leaf)
{
  guint materials[2];
  double masses[2], variance = leaf->errors.m, shared[2] = { 0, 0 };
  guint n = shared_masses (leaf, materials, masses);

  for (guint i = 0; i < n; i++)
    shared[i] = masses[i] * gb_book_figures (work->book, materials[i])->spread;
  if (n == 2 && materials[0] == materials[1])
    variance += (shared[0] + shared[1]) * (shared[0] + shared[1]);
  else
    variance += shared[0] * shared[0] + shared[1] * shared[1];
  return sqrt (variance);
}

/* What the supports say of the place errs with the readings. */
static double
told_sd (const Leaf *leaf, guint axis)
{
  const GbMoments *e = &leaf->errors;
  double c = leaf->centre[axis], first = axis == 0 ? e->x : e->y, second = axis == 0 ? e->xx : e->yy;

  return sqrt (MAX (second - 2 * c * first + c * c * e->m, 0)) / leaf->mass;
}

static void
fill_place (const GbRollupWork *work, const GbAxes *to_boat, const Leaf *leaf, GbMass *mass)
{
  double sd = own_place_sd (work, leaf->part);
  double centre[3] = { leaf->centre[0], leaf->part->pair ? 0 : leaf->centre[1], leaf->centre[2] };
  double sds[3] = { leaf->told[0] ? told_sd (leaf, 0) : sd, leaf->told[1] ? told_sd (leaf, 1) : sd, sd };

  /* The two of a pair err to opposite sides. */
  if (leaf->part->pair)
    sds[1] = 0;
  gb_axes_outward (to_boat, centre);
  if (to_boat->turned && !(sds[0] == sds[2] && sds[1] == sds[2]))
    {
      GbMoments spread = { .xx = sds[0] * sds[0], .yy = sds[1] * sds[1], .zz = sds[2] * sds[2] };

      gb_moments_turn (&spread, to_boat->turn);
      sds[0] = sqrt (spread.xx), sds[1] = sqrt (spread.yy), sds[2] = sqrt (spread.zz);
    }
  mass->x = centre[0], mass->y = centre[1], mass->z = centre[2];
  mass->x_sd = sds[0], mass->y_sd = sds[1], mass->z_sd = sds[2];
}

/* Of all of them about their common centre: the two of a pair lie apart. */
static GbInertia
inertia_of (const GbAxes *to_boat, const Leaf *leaf)
{
  const GbMoments *extent = &leaf->taken.extent;
  gboolean pair = leaf->part->pair != 0;
  double all = leaf->copies * leaf->mass;
  GbMoments moments = {
    .xx = all * extent->xx,
    .yy = all * (extent->yy + (pair ? leaf->centre[1] * leaf->centre[1] : 0)),
    .zz = all * extent->zz,
    .xy = pair ? 0 : all * extent->xy,
    .yz = pair ? 0 : all * extent->yz,
    .zx = all * extent->zx,
  };

  return gb_inertia_of (&moments, to_boat);
}

static void
fill (const GbRollupWork *work, const GbAxes *to_boat, const Leaf *leaf, GbMass *mass)
{
  double all = leaf->copies * leaf->mass;

  *mass = (GbMass){
    .mass = all,
    .unit_mass = leaf->mass,
    .listed_mass = leaf->copies * leaf->taken.mass,
    .placed_mass = leaf->placed ? all : 0,
    .scale = 1,
    .x = NAN,
    .y = NAN,
    .z = NAN,
    .mass_sd = leaf->copies * mass_sd (work, leaf),
    .x_sd = NAN,
    .y_sd = NAN,
    .z_sd = NAN,
    .inertia = inertia_of (to_boat, leaf),
    .surface = leaf->taken.surface,
    .amount = leaf->taken.amount,
    .n_parts = 1,
    .n_no_mass = isnan (all) ? 1 : 0,
    .n_no_place = !isnan (all) && !leaf->placed ? 1 : 0,
    .trouble = leaf->taken.trouble,
    .as = leaf->as,
    .weighed = leaf->weighed,
  };
  if (isnan (all))
    mass->placed_mass = 0;
  else
    mass->by_as[leaf->as] = all;
  if (leaf->placed)
    fill_place (work, to_boat, leaf, mass);
}

/* Adds all of them to what the group around them gathers. */
static void
gather (GbRollupWork *work, GbGathering *group, const Leaf *leaf, const GbMass *mass)
{
  guint materials[2];
  double masses[2];
  guint n = shared_masses (leaf, materials, masses);

  if (leaf->placed)
    {
      GbMoments moments = gb_moments_at (leaf->mass, leaf->centre, &leaf->taken.extent),
                errors = leaf->errors;

      gb_part_copy_moments (leaf->part, leaf->copies, &moments);
      gb_part_copy_errors (leaf->part, leaf->copies, &errors);
      gb_moments_add (&group->placed, &moments);
      gb_moments_add (&group->errors, &errors);
    }
  else
    {
      group->loose += mass->mass;
      group->loose_variance += leaf->copies * leaf->copies * leaf->errors.m;
    }
  for (guint i = 0; i < n; i++)
    {
      GbFirst none = { 0 }, at = { 1, leaf->centre[0], leaf->centre[1], leaf->centre[2] };
      GbFirst first = leaf->placed ? gb_part_copy_first (leaf->part, leaf->copies * masses[i], &at) : none;

      gb_shared_errors_add (&work->shared, group->shared, materials[i], &first,
                            leaf->placed ? 0 : leaf->copies * masses[i]);
    }
  group->known = TRUE;
  group->listed += isnan (mass->listed_mass) ? mass->mass : mass->listed_mass;
  group->by_as[leaf->as] += mass->mass;
}

void
gb_rollup_add_leaf (GbRollupWork *work, const GbPart *part, guint weighing)
{
  GbGathering *group = gb_rollup_innermost (work);
  GbMass *mass = &work->rollup->parts[part->rec.index];
  Leaf leaf;

  leaf.part = part;
  leaf.weighed = leaf.told[0] = leaf.told[1] = FALSE;
  leaf.errors = (GbMoments){ 0 };
  weigh_leaf (work, group, weighing, &leaf);
  fill (work, &group->to_boat, &leaf, mass);
  group->n_parts++;
  group->n_no_mass += mass->n_no_mass;
  group->n_no_place += mass->n_no_place;
  if (!isnan (mass->mass))
    gather (work, group, &leaf, mass);
}
