/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-rollup"

#include "rollup-private.h"

guint
gb_rollup_weighing_of (GbRollupWork *work, guint index)
{
  const GbStanding *standing = (const GbStanding *) (const void *) work->standing->data;
  guint n = work->standing->len;

  /* In the order of the parts, and the boat's last. */
  if (index == GB_WHOLE_BOAT)
    return n > 0 && standing[n - 1].part == GB_WHOLE_BOAT ? standing[n - 1].weighing : GB_NOT_WEIGHED;
  while (work->next_standing < n && standing[work->next_standing].part < index)
    work->next_standing++;
  if (work->next_standing < n && standing[work->next_standing].part == index)
    return standing[work->next_standing].weighing;
  return GB_NOT_WEIGHED;
}

/* What was weighed itself keeps its mass, and the difference falls on the rest, in proportion; where there is
 * no rest, or it would have to be less than nothing, all change alike. */
static GbShares
shares_of (const GbGathering *group, double mass)
{
  double sum = group->placed.m + group->loose, weighed = group->by_as[GB_AS_WEIGHED], rest = sum - weighed;

  if (rest > 1e-9 * sum && mass > weighed)
    return (GbShares){ .unweighed = (mass - weighed) / rest, .weighed = 1 };
  if (sum > 0)
    return (GbShares){ .unweighed = mass / sum, .weighed = mass / sum };
  return (GbShares){ 1, 1 };
}

/* The centre that supports do not tell stays where the parts put it, with the errors that they put it there
 * with; those of their masses are gone. (A centre c = M/m is off by (dM - c dm)/m.) */
static void
keep_errors_of_centre (GbRollupWork *work,
                       GbGathering *group,
                       const GbOnScaleOne *one,
                       const double centre[3])
{
  double per = group->placed.m > 0 ? one->mass / group->placed.m : 0;
  double x = one->told[0] ? 0 : per, y = one->told[1] ? 0 : per, z = per;
  GbMoments *e = &group->errors;
  const double *c = centre;

  e->xy = x * y * (e->xy - c[0] * e->y - c[1] * e->x + c[0] * c[1] * e->m);
  e->yz = y * z * (e->yz - c[1] * e->z - c[2] * e->y + c[1] * c[2] * e->m);
  e->zx = z * x * (e->zx - c[2] * e->x - c[0] * e->z + c[2] * c[0] * e->m);
  e->xx = x * x * (e->xx - 2 * c[0] * e->x + c[0] * c[0] * e->m);
  e->yy = y * y * (e->yy - 2 * c[1] * e->y + c[1] * c[1] * e->m);
  e->zz = z * z * (e->zz - 2 * c[2] * e->z + c[2] * c[2] * e->m);
  e->m = e->x = e->y = e->z = 0;
  for (guint i = group->shared; i < work->shared.stack->len; i++)
    {
      GbSharedError *error = &g_array_index (work->shared.stack, GbSharedError, i);
      GbFirst *f = &error->first;

      *f = (GbFirst){ 0, x * (f->x - c[0] * f->m), y * (f->y - c[1] * f->m), z * (f->z - c[2] * f->m) };
      error->loose = 0;
    }
}

/* As spread out as the parts are, in their proportions, about the centre. */
static void
put_mass_at (GbGathering *group, double mass, const double centre[3])
{
  GbMoments *placed = &group->placed;
  GbAxes to_centre = gb_axes_none;

  for (guint i = 0; i < 3; i++)
    to_centre.origin[i] = centre[i];
  gb_moments_centre (placed);
  if (placed->m > 0)
    gb_moments_scale (placed, mass / placed->m);
  *placed = (GbMoments){ .m = mass,
                         .xx = placed->xx,
                         .yy = placed->yy,
                         .zz = placed->zz,
                         .xy = placed->xy,
                         .yz = placed->yz,
                         .zx = placed->zx };
  gb_moments_move (placed, &to_centre);
  group->loose = group->loose_variance = 0;
}

static void
put_mass_nowhere (GbRollupWork *work, GbGathering *group, const GbOnScaleOne *one)
{
  group->placed = group->errors = (GbMoments){ 0 };
  group->loose = one->mass;
  group->loose_variance = one->errors.m;
  group->n_no_place = MAX (group->n_no_place, 1);
  gb_shared_errors_drop (&work->shared, group->shared);
}

void
gb_rollup_stand_on_scale (GbRollupWork *work, GbGathering *group)
{
  const GbWeighing *weighing = gb_boat_all (work->boat, GB_RECORD_WEIGHING)->pdata[group->weighing];
  double m = group->placed.m;
  double centre[3] = { group->placed.x / m, group->placed.y / m, group->placed.z / m };
  GbOnScaleOne one
      = gb_weighing_of_one (work->boat, weighing, &work->rollup->weighings[group->weighing], centre);

  g_array_index (work->shares, GbShares, group->weighing) = shares_of (group, one.mass);
  work->scaled = TRUE;
  if (!group->known)
    group->listed = NAN;
  group->known = TRUE;
  for (guint i = 0; i < GB_N_AS; i++)
    group->by_as[i] = i == GB_AS_WEIGHED ? one.mass : 0;
  if (!gb_is_place (centre))
    {
      put_mass_nowhere (work, group, &one);
      return;
    }
  keep_errors_of_centre (work, group, &one, centre);
  gb_moments_add (&group->errors, &one.errors);
  put_mass_at (group, one.mass, centre);
}

typedef struct
{
  guint end;
  GbShares shares;
} Sharing;

/* What of @mass was weighed changes by one share, the rest by the other. */
static double
scale_of (const GbMass *mass, const GbShares *shares)
{
  double weighed = mass->by_as[GB_AS_WEIGHED];

  return mass->mass > 0
             ? (shares->unweighed * (mass->mass - weighed) + shares->weighed * weighed) / mass->mass
             : 1;
}

static void
open_sharing (GbRollupWork *work, GArray *open, const GbSpan *span)
{
  Sharing inner = g_array_index (open, Sharing, open->len - 1);

  inner.end = span->end;
  if (span->weighing != GB_NOT_WEIGHED)
    {
      const GbShares *shares = &g_array_index (work->shares, GbShares, span->weighing);
      double scale = work->rollup->parts[span->index].scale;

      inner.shares = (GbShares){ scale * shares->unweighed, scale * shares->weighed };
    }
  g_array_append_val (open, inner);
}

/* Down the tree: each group hands on what the scales above it make of what is in it. */
void
gb_rollup_share_out (GbRollupWork *work)
{
  g_autoptr (GArray) open = g_array_new (FALSE, FALSE, sizeof (Sharing));
  guint next = 0; /* of the spans */
  guint of_boat = gb_rollup_weighing_of (work, GB_WHOLE_BOAT);
  Sharing outermost = { .end = G_MAXUINT, .shares = { 1, 1 } };

  if (of_boat != GB_NOT_WEIGHED)
    outermost.shares = g_array_index (work->shares, GbShares, of_boat);
  g_array_append_val (open, outermost);
  for (guint i = 0; i < work->rollup->n_parts; i++)
    {
      const GbShares *shares;

      while (i >= g_array_index (open, Sharing, open->len - 1).end)
        g_array_set_size (open, open->len - 1);
      shares = &g_array_index (open, Sharing, open->len - 1).shares;
      if (shares->unweighed != 1 || shares->weighed != 1)
        work->rollup->parts[i].scale = scale_of (&work->rollup->parts[i], shares);
      if (next < work->spans->len && g_array_index (work->spans, GbSpan, next).index == i)
        open_sharing (work, open, &g_array_index (work->spans, GbSpan, next++));
    }
}
