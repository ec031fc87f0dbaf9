/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-rollup"

#include "rollup-private.h"

/* The roll-up.
 *
 * 1. Take-off. One of each part has a mass m (takeoff.c), a centre c, and an extent: its second moments about
 * its centre over its mass. Sheets, lengths and blocks are boxes, rods and tubes, length along x, width along
 * y, thickness along z, then turned; a drawn outline and a skin have theirs; the rest are points. A scale's
 * word stands instead of the take-off's (weighing.c).
 *
 * 2. Gathering. Each group adds up, in its own axes and for one of it, the matrix S = sum of m p pT with p =
 * (1, x, y, z): mass, first and second moments in one. A turn and a shift are a matrix A on p, so the group's
 * parts lie in the axes around it as A S AT. A pair adds the mirror image in y; a quantity multiplies.
 * Centre, inertia and radii of gyration follow from S by the parallel axis theorem.
 *
 * 3. Errors. The vector v = (M, Mx, My, Mz) is linear in everything that may be off. What is off in one part
 * alone (its amount, its place, its scale) adds to the covariance matrix C of v, which goes the way of S: A C
 * AT. What is off in a material is off in all that is made of it, by one share e of unknown size and standard
 * deviation r: so for each material the vector g of what v would change by for e = 1 is carried along
 * (rollup-shared.c). Copies and mirror images are one linear map on v, so their errors stay one error. At the
 * end the covariance is C + sum of r2 g gT. That of the centre M1/M follows in first order. Distances are
 * exact; a group's own place is off only where the builder says so.
 *
 * 4. Parts without a place count for the mass and not for the centre: they are summed apart ('loose'), errors
 * as well. Parts without a mass are counted.
 *
 * 5. Scales on groups. The mass that the scale gives stands for the sum of the parts, with its own error
 * alone; the centre stays, with its errors, unless supports tell it (rollup-scale.c). What that makes of each
 * part's mass in a statement is its 'scale', found on a second way down the tree.
 *
 * The sums run in the order of the tree, which nothing on a screen changes, and with nothing but + - x / and
 * sqrt, sin and cos, so they come out the same everywhere. */

/* Where the builder says nothing: what a new build starts with. */
static double
or_start (double value, const char *field)
{
  return isnan (value) ? gb_field (GB_RECORD_BUILD, field)->start : value;
}

/* Of a mass that was put on a scale, as is said, but without a weighing. Common practice, no source. */
#define WEIGHED_SPREAD 0.005

static GbRollupWork *
work_new (void)
{
  GbRollupWork *work = g_new0 (GbRollupWork, 1);

  work->book = gb_book_new ();
  work->open = g_array_new (FALSE, FALSE, sizeof (GbGathering));
  work->standing = g_array_new (FALSE, FALSE, sizeof (GbStanding));
  work->spans = g_array_new (FALSE, FALSE, sizeof (GbSpan));
  work->shares = g_array_new (FALSE, FALSE, sizeof (GbShares));
  work->surface_of = g_array_new (FALSE, TRUE, sizeof (guint));
  work->surfaces = g_array_new (FALSE, FALSE, sizeof (GbSurfaces));
  work->waiting = g_array_new (FALSE, FALSE, sizeof (GbWaiting));
  return work;
}

static void
work_free (GbRollupWork *work)
{
  if (work == NULL)
    return;
  gb_book_free (work->book);
  g_array_unref (work->open);
  g_array_unref (work->standing);
  g_array_unref (work->spans);
  g_array_unref (work->shares);
  g_array_unref (work->surface_of);
  g_array_unref (work->surfaces);
  g_array_unref (work->waiting);
  gb_shared_errors_clear (&work->shared);
  g_free (work);
}

static void
start (GbRollup *rollup, const GbBoat *boat, const GbHullSet *hulls)
{
  const GbBuild *build = gb_boat_build (boat);
  GbRollupWork *work = rollup->work != NULL ? rollup->work : work_new ();
  guint n_parts = gb_boat_n (boat, GB_RECORD_PART), n_weighings = gb_boat_n (boat, GB_RECORD_WEIGHING);

  if (n_parts != rollup->n_parts)
    rollup->parts = g_renew (GbMass, rollup->parts, n_parts);
  if (n_weighings != rollup->n_weighings)
    rollup->weighings = g_renew (GbWeighed, rollup->weighings, n_weighings);
  rollup->n_parts = n_parts;
  rollup->n_weighings = n_weighings;
  rollup->work = work;

  work->rollup = rollup;
  work->boat = boat;
  work->spread[GB_AS_ESTIMATED] = or_start (build->spread_estimated, "spread_estimated");
  work->spread[GB_AS_CALCULATED] = or_start (build->spread_calculated, "spread_calculated");
  work->spread[GB_AS_WEIGHED] = WEIGHED_SPREAD;
  work->place_spread = or_start (build->place_spread, "place_spread");
  work->next_standing = 0;
  work->scaled = FALSE;
  g_array_set_size (work->spans, 0);
  g_array_set_size (work->shares, n_weighings);
  g_array_set_size (work->surface_of, 0);
  g_array_set_size (work->surface_of, n_parts); /* all none */
  g_array_set_size (work->surfaces, 0);
  gb_shared_errors_start (&work->shared, gb_boat_n (boat, GB_RECORD_MATERIAL));
  gb_book_open (work->book, boat, hulls);
}

/* A coating of the group that it is in lies on all that is in it. */
static gboolean
coats_its_group (GbRollupWork *work, const GbPart *part)
{
  const GbPart *group = gb_rollup_innermost (work)->group;

  return gb_part_coats_others (part) && group != NULL && part->surface_of == group->rec.id;
}

static void
put_off (GbRollupWork *work, const GbPart *part, guint weighing)
{
  GbWaiting waiting = { part, weighing };

  g_array_append_val (work->waiting, waiting);
}

/* Depth first, as the tree lies flattened; a group is closed before what follows it. */
static void
walk (GbRollupWork *work)
{
  const GPtrArray *all = gb_boat_all (work->boat, GB_RECORD_PART);

  gb_rollup_open_group (work, NULL, G_MAXUINT, gb_rollup_weighing_of (work, GB_WHOLE_BOAT));
  for (guint i = 0; i < all->len; i++)
    {
      const GbPart *part = all->pdata[i];
      guint weighing = gb_rollup_weighing_of (work, i);

      gb_fetch_ahead (all, i);
      while (i >= gb_rollup_innermost (work)->end)
        gb_rollup_close_group (work);
      if (gb_part_gathers (part))
        gb_rollup_open_group (work, part, i + part->n_below + 1, weighing);
      else if (coats_its_group (work, part))
        put_off (work, part, weighing);
      else
        gb_rollup_add_leaf (work, part, weighing);
    }
  while (work->open->len > 0)
    gb_rollup_close_group (work);
}

static double
or_nothing (double value)
{
  return isnan (value) ? 0 : value;
}

static GbMargin
margin_of (const GbBuild *build, const GbMass *boat)
{
  GbMargin margin = {
    .estimated = boat->by_as[GB_AS_ESTIMATED] * or_nothing (build->margin_estimated),
    .calculated = boat->by_as[GB_AS_CALCULATED] * or_nothing (build->margin_calculated),
    .weighed = boat->by_as[GB_AS_WEIGHED] * or_nothing (build->margin_weighed),
    .fixed = or_nothing (build->margin_mass),
  };

  margin.total = margin.estimated + margin.calculated + margin.weighed + margin.fixed;
  return margin;
}

static void
compare_with_scales (GbRollup *rollup, const GbBoat *boat)
{
  for (guint i = 0; i < rollup->n_weighings; i++)
    {
      GbWeighed *weighed = &rollup->weighings[i];
      const GbPart *part = gb_boat_part (boat, weighed->part);

      if (weighed->part == 0)
        weighed->listed = rollup->boat.listed_mass;
      else if (part != NULL && part->rec.index < rollup->n_parts)
        weighed->listed = rollup->parts[part->rec.index].listed_mass;
    }
}

void
gb_rollup_find (GbRollup *rollup, const GbBoat *boat, const GbHullSet *hulls, gint64 until)
{
  start (rollup, boat, hulls);
  gb_weighings_find (rollup->weighings, rollup->work->standing, boat, until);
  walk (rollup->work);
  if (rollup->work->scaled)
    gb_rollup_share_out (rollup->work);
  rollup->margin = margin_of (gb_boat_build (boat), &rollup->boat);
  compare_with_scales (rollup, boat);
  gb_book_close (rollup->work->book);
}

void
gb_rollup_clear (GbRollup *rollup)
{
  work_free (rollup->work);
  g_free (rollup->parts);
  g_free (rollup->weighings);
  *rollup = (GbRollup){ 0 };
}

const GbMass *
gb_rollup_part (const GbRollup *rollup, const GbPart *part)
{
  static const GbMass not_in_the_tree = {
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
    .surface = NAN,
    .amount = NAN,
  };

  return part->rec.index < rollup->n_parts ? &rollup->parts[part->rec.index] : &not_in_the_tree;
}

void
gb_radii_of_gyration (const GbMass *mass, double radii[3])
{
  const double inertia[3] = { mass->inertia.xx, mass->inertia.yy, mass->inertia.zz };

  for (guint i = 0; i < 3; i++)
    radii[i] = mass->placed_mass > 0 ? sqrt (inertia[i] / mass->placed_mass) : NAN;
}

double
gb_part_times (const GbBoat *boat, const GbPart *part)
{
  double times = 1;

  for (const GbPart *group = gb_boat_part (boat, part->rec.owner); group != NULL;
       group = gb_boat_part (boat, group->rec.owner))
    times *= gb_part_copies (group);
  return times;
}
