/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-floater"

/* Down to rest.
 *
 * Newton's method within a radius that can be trusted: each step goes to the least of the second-order
 * model, but turns no further than the radius; it is taken only if the energy falls, and the radius grows
 * or shrinks by how well the model told by how much. As the water turns about the centre of the waterplane,
 * the model knows no coupling of sinking and turning.
 *
 * The model is of no use where nothing of her or all of her is under water, and not much where the water is
 * far from the height that carries her: there she first finds that height, which is a search in one
 * direction, the volume never growing less.
 *
 * Where all is at rest and she could still turn over, as upright on an edge or a boat that is not stiff,
 * she leaves to starboard. A turn that costs nothing, as that of a ball, is rest. */

#include "floater-private.h"

#define MOST_STEPS 500
#define MOST_HALVINGS 120
/* Radians. */
#define FIRST_RADIUS 0.2
#define WIDEST_RADIUS 0.3
#define LEAST_RADIUS 1e-13
#define STEEPEST_TRIM (89 * G_PI / 180)
/* Relative to the weight, and for moments to weight and size. */
#define AT_REST 1e-13
#define AT_REST_AS_FAR_AS_ROUNDING_LETS 1e-8
#define NO_SLOPE 1e-14
#define NEUTRAL 1e-10
#define FAR_FROM_BALANCE 0.3
/* Falls of the energy of so many grains are hidden by rounding; in a body that reaches far beyond what carries her,
 * the energy may waver by so many. */
#define HIDDEN 100
#define WAVERS 1000
#define NEAR_BALANCE 1e-12

typedef struct
{
  const GbFloater *floater;
  guint n_turns;
  double held_heel; /* where only trim is free */
  double most, size;
  double start_heel;
  GbFloatPoint point;
  GbFloatFrame frame;
  double radius;
  guint n_steps;
  GbStepFunc step_cb;
  gpointer data;
} Descent;

/* What rounding may do to the energy: that of the weight, of the water that a cut reckons with, and of
 * pulls. */
static double
grain (const Descent *descent)
{
  const GbFloatPoint *point = &descent->point;
  double weight = point->mass * (vec3_length (point->gravity) + fabs (point->at.height));

  return 4e-16 * (weight + descent->most * descent->size / 4 + fabs (point->energy));
}

/* A trim that is held at its bound has no slope beyond it. */
static void
find_frame (const Descent *descent, const GbFloatPoint *point, GbFloatFrame *frame)
{
  double trim = gb_attitude_trim (point->at);

  gb_float_frame (point, frame);
  if (descent->n_turns == 1 && fabs (trim) >= STEEPEST_TRIM - 1e-12 && frame->slopes[0] * trim < 0)
    frame->slopes[0] = 0;
}

/* How far from rest: the largest of the forces and moments. */
static double
unrest (const Descent *descent, const GbFloatPoint *point, const GbFloatFrame *frame)
{
  double most = fabs (point->sink);

  for (guint i = 0; i < descent->n_turns; i++)
    most = fmax (most, fabs (frame->slopes[i]) / descent->size);
  return most / point->mass;
}

static void
take (Descent *descent, const GbFloatPoint *point, const GbFloatFrame *frame)
{
  descent->point = *point;
  descent->frame = *frame;
  descent->n_steps++;
  if (descent->step_cb != NULL)
    descent->step_cb (point->at, point->energy, descent->data);
}

static GbAttitude
turned (const Descent *descent, const double turn[2], double sink)
{
  GbAttitude at = gb_float_turned (descent->point.at, &descent->frame, turn, sink);
  double over, trim;

  if (descent->n_turns != 1)
    return at;
  trim = CLAMP (gb_attitude_trim (descent->point.at) + turn[0], -STEEPEST_TRIM, STEEPEST_TRIM);
  over = at.height - vec3_dot (at.up, descent->frame.pivot);
  at = gb_attitude (descent->held_heel, trim, 0);
  at.height = vec3_dot (at.up, descent->frame.pivot) + over;
  return at;
}

/* A search for the one height at which she carries her weight, from where she is: Newton's method with bisection as its guard. As turning will disturb
 * it again, it ends where a hundredth of what was wrong is left and water is at her side. FALSE if there is nothing to be gained. */
static gboolean
find_balance (Descent *descent)
{
  GbFloatPoint point = descent->point;
  GbFloatFrame frame;
  double low, high, height = point.at.height, enough = fabs (point.sink) / 100;

  gb_floater_extent (descent->floater, point.at.up, &low, &high);
  for (guint i = 0; i < MOST_HALVINGS && fabs (point.sink) > (point.plane > 0 ? enough : 0) + AT_REST * point.mass; i++)
    {
      if (point.sink > 0)
        high = fmin (high, height);
      else
        low = fmax (low, height);
      height -= point.sink / point.plane;
      if (!(height > low && height < high))
        height = low + (high - low) * (i == 0 ? point.mass / descent->most : 0.5);
      if (i > 0 && !(height > low && height < high))
        break;
      gb_float_point_find (&point, descent->floater, (GbAttitude){ point.at.up, height }, descent->point.heel);
    }
  if (!(fabs (point.sink) < fabs (descent->point.sink)) || point.energy > descent->point.energy + grain (descent))
    return FALSE;
  find_frame (descent, &point, &frame);
  take (descent, &point, &frame);
  return TRUE;
}

/* How much the model says that the energy falls. */
static double
foretold (const Descent *descent, const double turn[2], double sink)
{
  const GbFloatFrame *frame = &descent->frame;
  double falls = -sink * (descent->point.sink + descent->point.plane * sink / 2);

  for (guint i = 0; i < descent->n_turns; i++)
    falls -= turn[i] * (frame->slopes[i] + frame->bends[i] * turn[i] / 2);
  return falls - frame->cross * turn[0] * turn[1];
}

static void
try_at (const Descent *descent, const double turn[2], double sink, GbFloatPoint *point, GbFloatFrame *frame)
{
  gb_float_point_find (point, descent->floater, turned (descent, turn, sink), descent->point.heel);
  find_frame (descent, point, frame);
}

/* Takes the step if the energy falls. */
static gboolean
try_step (Descent *descent, const double turn[2], double sink, double falls)
{
  GbFloatPoint point;
  GbFloatFrame frame;
  double fell, way = hypot (turn[0], turn[1]);

  try_at (descent, turn, sink, &point, &frame);
  fell = descent->point.energy - point.energy;
  if (!(fell > 1e-4 * falls))
    return FALSE;
  if (fell < falls / 4)
    descent->radius = fmax (way / 2, LEAST_RADIUS);
  else if (fell > falls * 3 / 4 && way > 0.9 * descent->radius)
    descent->radius = fmin (2 * descent->radius, WIDEST_RADIUS);
  take (descent, &point, &frame);
  return TRUE;
}

/* So near to rest that rounding hides whether the energy falls, the step is taken if she comes
 * much nearer. */
static gboolean
try_to_settle (Descent *descent, const double turn[2], double sink)
{
  GbFloatPoint point;
  GbFloatFrame frame;

  try_at (descent, turn, sink, &point, &frame);
  if (!(fabs (descent->point.energy - point.energy) <= WAVERS * grain (descent))
      || !(unrest (descent, &point, &frame) < unrest (descent, &descent->point, &descent->frame) / 2))
    return FALSE;
  take (descent, &point, &frame);
  return TRUE;
}

/* How far to turn and to sink. Returns how much the energy would fall by the model. */
static double
choose (const Descent *descent, double radius, double turn[2], double *sink)
{
  const GbFloatPoint *point = &descent->point;

  *sink = point->plane > 0 ? CLAMP (-point->sink / point->plane, -descent->size, descent->size) : 0;
  gb_float_turn (&descent->frame, descent->n_turns, radius, NO_SLOPE * point->mass * descent->size, turn);
  return foretold (descent, turn, *sink);
}

/* FALSE if no step leads further down. */
static gboolean
step (Descent *descent)
{
  double turn[2], sink, falls = choose (descent, WIDEST_RADIUS, turn, &sink);

  if (falls <= HIDDEN * grain (descent) && try_to_settle (descent, turn, sink))
    return TRUE;
  while (descent->radius >= LEAST_RADIUS)
    {
      falls = choose (descent, descent->radius, turn, &sink);
      if (falls <= 10 * grain (descent))
        return FALSE;
      if (try_step (descent, turn, sink, falls))
        return TRUE;
      if (fabs (descent->point.sink) > NEAR_BALANCE * descent->point.mass && find_balance (descent))
        return TRUE;
      descent->radius = fmin (descent->radius, hypot (turn[0], turn[1])) / 4;
    }
  return FALSE;
}

/* Leaves a place where she is balanced but would go further down to either side: to starboard, or by the
 * bow. FALSE if there is no such side. */
static gboolean
leave_edge (Descent *descent)
{
  GbFloatModes modes;
  double sense, falls;

  if (descent->n_turns == 0)
    return FALSE;
  gb_float_modes (&descent->frame, descent->n_turns, &modes);
  if (modes.bends[0] >= -NEUTRAL * descent->point.mass * descent->size)
    return FALSE;
  sense = fabs (modes.ways[0][1]) > 1e-9 ? modes.ways[0][1] : modes.ways[0][0];
  for (double way = 0.05; way > 1e-6; way /= 4)
    {
      double turn[2] = { copysign (way, sense) * modes.ways[0][0], copysign (way, sense) * modes.ways[0][1] };

      falls = foretold (descent, turn, 0);
      if (falls > 10 * grain (descent) && try_step (descent, turn, 0, falls))
        {
          descent->radius = FIRST_RADIUS;
          return TRUE;
        }
    }
  return FALSE;
}

static gboolean
is_far_from_balance (const Descent *descent)
{
  const GbFloatPoint *point = &descent->point;

  return fabs (point->sink) > (point->plane > 0 ? FAR_FROM_BALANCE : AT_REST) * point->mass;
}

static gboolean
rolls_on_and_on (const Descent *descent)
{
  return descent->floater->heeling_moment != 0 && fabs (descent->point.heel - descent->start_heel) > 2 * G_PI;
}

static double
unrest_now (const Descent *descent)
{
  return unrest (descent, &descent->point, &descent->frame);
}

/* TRUE if it came to rest. */
static gboolean
descend (Descent *descent)
{
  for (guint i = 0; i < MOST_STEPS && !rolls_on_and_on (descent); i++)
    {
      if (is_far_from_balance (descent) && find_balance (descent))
        continue;
      if (unrest_now (descent) > AT_REST && step (descent))
        continue;
      if (unrest_now (descent) > AT_REST_AS_FAR_AS_ROUNDING_LETS || !leave_edge (descent))
        break;
    }
  return unrest_now (descent) <= AT_REST_AS_FAR_AS_ROUNDING_LETS && !rolls_on_and_on (descent);
}

static GbAttitude
sound_start (GbAttitude start, GbHold hold)
{
  double length = vec3_length (start.up);
  GbAttitude at = { { 0, 0, 1 }, isfinite (start.height) ? start.height : 0 };

  if (isfinite (length) && length > 0)
    at.up = vec3_scale (start.up, 1 / length);
  if (hold == GB_HOLD_HEEL)
    at = gb_attitude (gb_attitude_heel (at), CLAMP (gb_attitude_trim (at), -STEEPEST_TRIM, STEEPEST_TRIM),
                      at.height);
  return at;
}

static gboolean
is_finite_point (const GbFloatPoint *point)
{
  const GbTensor *bend = &point->bend;

  return isfinite (point->energy) && isfinite (point->sink) && isfinite (vec3_length (point->turn))
         && isfinite (vec3_length (point->gravity))
         && isfinite (bend->xx + bend->yy + bend->zz + bend->xy + bend->yz + bend->zx);
}

GbRest
gb_floater_rest (const GbFloater *floater, GbAttitude start, GbHold hold, GbStepFunc step_cb, gpointer data)
{
  static const guint n_turns[] = { [GB_HOLD_NOTHING] = 2, [GB_HOLD_HEEL] = 1, [GB_HOLD_BOTH] = 0 };
  GbAttitude from = sound_start (start, hold);
  Descent descent = {
    .floater = floater,
    .n_turns = n_turns[hold],
    .held_heel = gb_attitude_heel (from),
    .start_heel = gb_attitude_heel (from),
    .radius = FIRST_RADIUS,
    .step_cb = step_cb,
    .data = data,
  };
  GbRest rest = { .kind = GB_REST_NONE, .attitude = from, .energy = NAN };

  descent.most = gb_floater_most (floater, &descent.size);
  gb_float_point_find (&descent.point, floater, from, descent.start_heel);
  if (!(descent.most > 0) || !isfinite (descent.most) || !(descent.point.mass > 0)
      || !is_finite_point (&descent.point))
    return rest;
  if (descent.point.mass > descent.most * (1 + 1e-12))
    {
      rest.kind = GB_REST_SINKS;
      return rest;
    }
  find_frame (&descent, &descent.point, &descent.frame);
  if (step_cb != NULL)
    step_cb (from, descent.point.energy, data);
  if (descend (&descent))
    rest = (GbRest){ GB_REST_FOUND, descent.point.at, descent.point.energy, 0 };
  rest.n_steps = descent.n_steps;
  return rest;
}
