/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-afloat"

#include "afloat.h"

#include "afloat-private.h"
#include "mesh-private.h"

static const GbVec3 nowhere = { NAN, NAN, NAN };

/* Under this an edge is under water, and not just at it. */
#define JUST_UNDER 1e-9

/* What may still come aboard ---------------------------------------------------------------------------- */

/* Centre of gravity when she is level. */
static GbVec3
level_gravity (const GbCase *self)
{
  const GbFloater *floater = self->floater;
  GbFloatSums sums;

  if (floater->tanks->len == 0)
    return vec3_scale (floater->moment, 1 / floater->mass);
  gb_floater_sums (floater, gb_attitude (0, 0, self->least.z), &sums);
  return sums.gravity;
}

/* What is added must bring the centre of gravity over the centre of buoyancy that she has, level, at the
 * limit. */
static void
find_room (GbAfloat *afloat, const GbCase *self)
{
  GbVec3 at = vec3_sub (vec3_scale (self->limit_at, self->limit), vec3_scale (afloat->gravity, self->total));

  afloat->room = isnan (afloat->left) ? NAN : fmax (afloat->left, 0);
  if (!(afloat->room > 0))
    return;
  at = vec3_scale (at, 1 / afloat->room);
  if (at.x >= self->least.x && at.x <= self->most.x && at.y >= self->least.y && at.y <= self->most.y)
    afloat->room_at = (GbVec3){ at.x, at.y, NAN };
}

/* At rest ----------------------------------------------------------------------------------------------- */

/* The directions of the water's surface: forward and to port, level. */
typedef struct
{
  GbVec3 forward, port;
} Level;

static Level
level_directions (const GbAfloat *afloat)
{
  double heel = afloat->heel, trim = afloat->trim;
  GbVec3 forward = { cos (trim), sin (heel) * sin (trim), cos (heel) * sin (trim) };

  return (Level){ forward, vec3_cross (afloat->attitude.up, forward) };
}

/* Second moment of what @t is the tensor of, along the direction @e. */
static double
moment_along (GbTensor t, GbVec3 e)
{
  return t.xx * e.x * e.x + t.yy * e.y * e.y + t.zz * e.z * e.z
         + 2 * (t.xy * e.x * e.y + t.yz * e.y * e.z + t.zx * e.z * e.x);
}

/* Of the waterplane about the axis through its centre, square to @e. */
static double
plane_moment_along (const GbAfloat *afloat, const GbFloatSums *sums, GbVec3 e)
{
  double centre = vec3_dot (afloat->flotation, e);

  return moment_along (sums->hulls.plane_second, e) - sums->hulls.plane * centre * centre;
}

double
gb_draught_at (GbAttitude attitude, double keel, double x)
{
  GbVec3 up = attitude.up;

  return up.z > 0.01 ? (attitude.height - up.x * x) / up.z - keel : NAN;
}

static void
find_draughts (GbAfloat *afloat, const GbCase *self)
{
  afloat->keel = self->least.z;
  afloat->fore_x = self->most.x;
  afloat->aft_x = self->least.x;
  afloat->draught_fore = gb_draught_at (afloat->attitude, afloat->keel, afloat->fore_x);
  afloat->draught_aft = gb_draught_at (afloat->attitude, afloat->keel, afloat->aft_x);
  afloat->draught_mid = gb_draught_at (afloat->attitude, afloat->keel, (afloat->fore_x + afloat->aft_x) / 2);
}

/* Heights are from the line of the keel under the centre of buoyancy, along the way up of the water. */
static void
find_stiffness (GbAfloat *afloat, const GbFloatSums *sums)
{
  Level level = level_directions (afloat);
  GbVec3 keel = { afloat->buoyancy.x, 0, afloat->keel };
  double loss_long = moment_along (sums->free_surfaces, level.forward) / afloat->total;
  double length = afloat->fore_x - afloat->aft_x;

  afloat->kb = vec3_dot (afloat->attitude.up, vec3_sub (afloat->buoyancy, keel));
  afloat->kg = vec3_dot (afloat->attitude.up, vec3_sub (afloat->gravity, keel));
  afloat->bm = plane_moment_along (afloat, sums, level.port) / afloat->volume;
  afloat->bm_long = plane_moment_along (afloat, sums, level.forward) / afloat->volume;
  afloat->free_surface = moment_along (sums->free_surfaces, level.port) / afloat->total;
  afloat->gm = afloat->kb + afloat->bm - afloat->kg - afloat->free_surface;
  afloat->gm_long = afloat->kb + afloat->bm_long - afloat->kg - loss_long;
  afloat->heel_moment = afloat->total * afloat->gm * sin (G_PI / 180);
  afloat->trim_moment = afloat->total * afloat->gm_long * 0.01 / length;
}

static void
find_figures (GbAfloat *afloat, const GbCase *self)
{
  double density = self->floater->density;
  GbFloatSums sums;

  afloat->heel = gb_attitude_heel (afloat->attitude);
  afloat->trim = gb_attitude_trim (afloat->attitude);
  afloat->least = gb_edge_set_least (&self->edges, afloat->attitude);
  gb_floater_sums (self->floater, afloat->attitude, &sums);
  afloat->gravity = sums.gravity;
  afloat->volume = sums.hulls.volume;
  afloat->waterplane = sums.hulls.plane;
  afloat->per_cm = sums.hulls.plane * density * 0.01;
  afloat->buoyancy = vec3_scale (sums.hulls.moment, 1 / sums.hulls.volume);
  afloat->flotation = vec3_scale (sums.hulls.plane_moment, 1 / sums.hulls.plane);
  afloat->reserve = afloat->most / density - afloat->volume;
  find_draughts (afloat, self);
  find_stiffness (afloat, &sums);
}

GbAfloatState
gb_afloat_state_at_rest (GbAttitude attitude, double freeboard)
{
  if (attitude.up.z < 0)
    return GB_AFLOAT_OVER;
  return freeboard < -JUST_UNDER ? GB_AFLOAT_FILLS : GB_AFLOAT_FLOATS;
}

static void
find_rest (GbAfloat *afloat, const GbCase *self, const GbAttitude *start)
{
  GbAttitude upright = gb_attitude (0, 0, (self->least.z + self->most.z) / 2);
  GbRest rest;

  if (self->total > self->carries)
    {
      afloat->state = GB_AFLOAT_SINKS;
      return;
    }
  rest = gb_floater_rest (self->floater, start != NULL ? *start : upright, GB_HOLD_NOTHING, NULL, NULL);
  if (rest.kind == GB_REST_SINKS)
    afloat->state = GB_AFLOAT_SINKS;
  if (rest.kind != GB_REST_FOUND)
    return;
  afloat->attitude = rest.attitude;
  find_figures (afloat, self);
  afloat->state = gb_afloat_state_at_rest (afloat->attitude, afloat->least.freeboard);
}

/* The whole --------------------------------------------------------------------------------------------- */

/* All that is not found is unknown. */
static GbAfloat
nothing_known (const GbCase *self)
{
  return (GbAfloat){
    .condition = self->condition,
    .troubles = g_ptr_array_new_with_free_func (g_free),
    .light = self->light,
    .margin = self->margin,
    .load_mass = self->load_mass,
    .total = self->total,
    .total_sd = self->total_sd,
    .gravity = nowhere,
    .most = self->carries,
    .limit = self->limit,
    .left = self->limit - self->total,
    .chance = gb_chance_over (self->limit, self->total, self->total_sd),
    .room = NAN,
    .room_at = nowhere,
    .attitude = { nowhere, NAN },
    .heel = NAN,
    .trim = NAN,
    .fore_x = NAN,
    .aft_x = NAN,
    .draught_fore = NAN,
    .draught_mid = NAN,
    .draught_aft = NAN,
    .least = { NAN, nowhere, -1 },
    .volume = NAN,
    .waterplane = NAN,
    .per_cm = NAN,
    .trim_moment = NAN,
    .heel_moment = NAN,
    .buoyancy = nowhere,
    .flotation = nowhere,
    .keel = NAN,
    .kb = NAN,
    .kg = NAN,
    .bm = NAN,
    .gm = NAN,
    .bm_long = NAN,
    .gm_long = NAN,
    .free_surface = NAN,
    .reserve = NAN,
  };
}

static void
count_loads (GbAfloat *afloat, const GbCase *self)
{
  for (guint i = 0; i < self->loads->len; i++)
    {
      const GbCaseLoad *load = &g_array_index (self->loads, GbCaseLoad, i);

      afloat->n_no_mass += isnan (load->weight);
      afloat->n_no_place += !isnan (load->weight) && isnan (load->centre.x);
    }
}

void
gb_afloat_find (GbAfloat *afloat, const GbCase *self, const GbAttitude *start)
{
  /* It may be the attitude that is there from before. */
  GbAttitude from = start != NULL ? *start : (GbAttitude){ nowhere, NAN };

  gb_afloat_clear (afloat);
  *afloat = nothing_known (self);
  count_loads (afloat, self);
  gb_case_add_troubles (self, afloat->troubles);
  if (self->trouble == NULL)
    {
      afloat->gravity = level_gravity (self);
      find_room (afloat, self);
      find_rest (afloat, self, start != NULL ? &from : NULL);
    }
  afloat->sentence = gb_afloat_sentence (self, afloat);
}

void
gb_afloat_clear (GbAfloat *afloat)
{
  g_clear_pointer (&afloat->sentence, g_free);
  g_clear_pointer (&afloat->troubles, g_ptr_array_unref);
}

/* Which is worse ---------------------------------------------------------------------------------------- */

/* TRUE if @a is less; what is not known is not. */
static gboolean
is_less (double a, double b)
{
  return !isnan (a) && (isnan (b) || a < b);
}

gboolean
gb_afloat_is_worse (const GbAfloat *a, const GbAfloat *b)
{
  static const int rank[] = { [GB_AFLOAT_UNKNOWN] = 0,
                              [GB_AFLOAT_FLOATS] = 1,
                              [GB_AFLOAT_FILLS] = 2,
                              [GB_AFLOAT_OVER] = 3,
                              [GB_AFLOAT_SINKS] = 4 };

  if (a->state != b->state)
    return rank[a->state] > rank[b->state];
  if (is_less (a->least.freeboard, b->least.freeboard) || is_less (b->least.freeboard, a->least.freeboard))
    return is_less (a->least.freeboard, b->least.freeboard);
  return is_less (a->left, b->left);
}
