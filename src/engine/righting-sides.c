/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-righting"

/* What is read off the curve: where it is nothing, and how each side stands. */

#include "righting-private.h"

#include "root.h"

#include <math.h>

/* Heels are found as near as this, in radians. */
#define NEAR 1e-9
/* Less than this share of the greatest lever is nothing. */
#define NOTHING 1e-9

/* The lever less @wanted, for finding where it is nothing. */
typedef struct
{
  const GbRightingWork *work;
  double wanted;
} Search;

static double
lever_over (double heel, gpointer data)
{
  const Search *search = data;
  const GbLever *nearby = gb_righting_nearest (search->work->righting, heel);

  return gb_righting_lever_at (search->work, heel, nearby->attitude).lever - search->wanted;
}

static double
greatest_lever (const GbRighting *righting)
{
  double greatest = 0;

  for (guint i = 0; i < GB_N_LEVERS; i++)
    greatest = fmax (greatest, fabs (righting->levers[i].lever));
  return greatest;
}

/* Where the lever is @wanted, between two of the curve. */
static double
heel_between (const GbRightingWork *work, const GbLever *a, const GbLever *b, double wanted)
{
  Search search = { work, wanted };

  return gb_root (lever_over, &search, a->heel, a->lever - wanted, b->heel, b->lever - wanted, NEAR);
}

/* Balances ---------------------------------------------------------------------------------------------- */

/* The curve is a ring: half a turn to either side is the same. */
typedef struct
{
  const GbRighting *righting;
  double nothing;
} Ring;

#define RING (GB_N_LEVERS - 1)

static const GbLever *
ring_lever (const Ring *ring, int i)
{
  return &ring->righting->levers[(i % RING + RING) % RING];
}

/* 0: nothing, or not known. */
static int
ring_sign (const Ring *ring, int i)
{
  double lever = ring_lever (ring, i)->lever;

  return fabs (lever) > ring->nothing ? (lever > 0 ? 1 : -1) : 0;
}

static double
wrapped (double heel)
{
  if (heel > G_PI + NEAR)
    return heel - 2 * G_PI;
  return heel <= -G_PI + NEAR ? heel + 2 * G_PI : heel;
}

/* Between the levers @a and @b of the ring, which have different signs; those between them are nothing or not
 * known. */
static void
add_balance (GbRightingWork *work, const Ring *ring, int a, int b)
{
  GbLever from = *ring_lever (ring, a), to = *ring_lever (ring, b);
  GbBalance balance = { .stable = from.lever < 0 };
  int middle = a + (b - a) / 2;

  from.heel = (a - GB_UPRIGHT) * GB_DEGREE;
  to.heel = (b - GB_UPRIGHT) * GB_DEGREE;
  if (fabs (ring_lever (ring, middle)->lever) <= ring->nothing)
    balance.heel = (middle - GB_UPRIGHT) * GB_DEGREE;
  else
    {
      balance.heel = heel_between (work, &from, &to, 0);
      /* A jump, as where she would suddenly trim another way, lets her fall over but not come to rest. */
      if (balance.stable
          && !(fabs (gb_righting_lever_at (work, balance.heel, from.attitude).lever)
               <= 1e-3 * greatest_lever (ring->righting)))
        return;
    }
  balance.heel = wrapped (balance.heel);
  g_array_append_val (work->righting->balances, balance);
}

static int
compare_balances (gconstpointer a, gconstpointer b)
{
  double x = ((const GbBalance *)a)->heel, y = ((const GbBalance *)b)->heel;

  return (x > y) - (x < y);
}

void
gb_righting_find_balances (GbRightingWork *work)
{
  Ring ring = { work->righting, NOTHING * greatest_lever (work->righting) };
  int first = 0;

  while (first < RING && ring_sign (&ring, first) == 0)
    first++;
  if (first == RING)
    return;
  for (int i = first + 1, last = first; i <= first + RING; i++)
    if (ring_sign (&ring, i) != 0)
      {
        if (ring_sign (&ring, i) != ring_sign (&ring, last))
          add_balance (work, &ring, last, i);
        last = i;
      }
  g_array_sort (work->righting->balances, compare_balances);
}

/* One side ---------------------------------------------------------------------------------------------- */

typedef struct
{
  GbRightingWork *work;
  int sign;
  double start, end; /* angles, positive on this side */
} Side;

/* The first balance of that kind further over than @angle. NAN: none before she is upside down. */
static double
next_balance (const Side *side, double angle, gboolean stable)
{
  const GArray *balances = side->work->righting->balances;
  double next = NAN;

  for (guint i = 0; i < balances->len; i++)
    {
      GbBalance balance = g_array_index (balances, GbBalance, i);
      double at = side->sign * balance.heel;

      if (balance.stable == stable && at > angle + NEAR && at < G_PI - NEAR)
        next = fmin (next, at);
    }
  return next;
}

/* Where the curve says that she rests: ropes that pull at her, which are not in the curve, hold her elsewhere. */
static double
rest_of_curve (const Side *side)
{
  const GArray *balances = side->work->righting->balances;
  double rest = side->work->rest_heel, nearest = NAN;

  for (guint i = 0; i < balances->len && side->work->floater->pulls->len > 0; i++)
    {
      GbBalance balance = g_array_index (balances, GbBalance, i);

      if (balance.stable && !(fabs (balance.heel - rest) >= fabs (nearest - rest)))
        nearest = balance.heel;
    }
  return side->sign * (isnan (nearest) ? rest : nearest);
}

/* The rest nearest upright on this side. A boat that lolls has one on either side, and one that merely
 * lists has one for both. */
static double
start_of (const Side *side)
{
  double rest = rest_of_curve (side), falls = next_balance (side, rest, FALSE), lolls;

  if (!(rest < 0 && falls <= -rest))
    return rest;
  lolls = next_balance (side, falls, TRUE);
  return lolls < G_PI / 2 ? lolls : rest;
}

/* The lever of the curve at so many whole degrees on this side. */
static double
side_lever (const Side *side, int degree)
{
  return side->sign * side->work->righting->levers[GB_UPRIGHT + side->sign * degree].lever;
}

/* Whole degrees strictly between start and end. */
static int
first_degree (const Side *side)
{
  return (int)floor (side->start / GB_DEGREE) + 1;
}

static int
last_degree (const Side *side)
{
  return side->end < G_PI ? (int)ceil (side->end / GB_DEGREE) - 1 : GB_UPRIGHT;
}

/* The top of the parabola through three of the curve. */
static void
take_top (const Side *side, int degree, GbRightingSide *found)
{
  double before = side_lever (side, degree - 1), top = side_lever (side, degree),
         after = side_lever (side, degree + 1);
  double bend = before - 2 * top + after, by = (before - after) / (2 * bend);

  if (!(bend < 0 && fabs (by) <= 1))
    return;
  found->greatest = top - (before - after) * by / 4;
  found->greatest_at = (degree + by) * GB_DEGREE;
}

static void
find_greatest (const Side *side, GbRightingSide *found)
{
  int top = first_degree (side), last = last_degree (side);

  found->greatest = found->greatest_at = NAN;
  for (int i = top; i <= last; i++)
    if (side_lever (side, i) > side_lever (side, top) || isnan (side_lever (side, top)))
      top = i;
  if (top > last || isnan (side_lever (side, top)))
    return;
  found->greatest = side_lever (side, top);
  found->greatest_at = top * GB_DEGREE;
  if (top > -GB_UPRIGHT && top < GB_UPRIGHT)
    take_top (side, top, found);
}

/* By the trapezium rule on the curve; it starts from nothing, and comes to @last at its end. */
static double
area_of (const Side *side, double last)
{
  double area = 0, angle = side->start, lever = 0;

  for (int i = first_degree (side); i <= last_degree (side); i++)
    {
      double next = side_lever (side, i);

      area += (lever + next) / 2 * (i * GB_DEGREE - angle);
      angle = i * GB_DEGREE;
      lever = next;
    }
  return area + (side->end < G_PI ? (lever + last) / 2 * (side->end - angle) : 0);
}

/* Where the rising curve first meets the lever of the moment. */
static double
steady_heel (const Side *side)
{
  const GbRighting *righting = side->work->righting;
  double wanted = fabs (righting->moment) / righting->total;
  GbLever from = { .heel = side->sign * side->start, .lever = 0 };

  if (!(wanted > 0))
    return isnan (wanted) ? NAN : side->start;
  for (int i = first_degree (side); i <= last_degree (side); i++)
    {
      const GbLever *to = &righting->levers[GB_UPRIGHT + side->sign * i];

      if (side_lever (side, i) >= wanted)
        return side->sign * heel_between (side->work, &from, to, side->sign * wanted);
      from = *to;
    }
  return NAN;
}

void
gb_righting_find_side (GbRightingWork *work, int sign, GbRightingSide *found)
{
  Side side = { work, sign, 0, G_PI };

  side.start = start_of (&side);
  found->vanishing = next_balance (&side, side.start, FALSE);
  if (!isnan (found->vanishing))
    side.end = found->vanishing;
  find_greatest (&side, found);
  found->area = area_of (&side, 0);
  found->steady = steady_heel (&side);
}

static double
first_immersion (const GbRighting *righting, int sign)
{
  double first = NAN;

  for (guint i = 0; i < righting->immersions->len; i++)
    {
      const GbEdgeImmersion *edge = &g_array_index (righting->immersions, GbEdgeImmersion, i);

      first = fmin (first, sign > 0 ? edge->starboard : edge->port);
    }
  return first;
}

/* @last: the lever at the side's end. */
static void
find_dry_greatest (const Side *side, double last, GbRightingSide *found)
{
  if (found->greatest_at <= side->end)
    return;
  found->dry_greatest = last;
  found->dry_greatest_at = side->end;
  for (int i = first_degree (side); i <= last_degree (side); i++)
    if (side_lever (side, i) > found->dry_greatest)
      {
        found->dry_greatest = side_lever (side, i);
        found->dry_greatest_at = i * GB_DEGREE;
      }
}

void
gb_righting_find_filling (GbRightingWork *work, int sign, GbRightingSide *found)
{
  Side side = { work, sign, 0, G_PI };
  double heel, last;

  found->filling = first_immersion (work->righting, sign);
  found->dry_area = found->area;
  found->dry_greatest = found->greatest;
  found->dry_greatest_at = found->greatest_at;
  if (isnan (found->filling) || found->filling >= found->vanishing)
    return;
  side.start = start_of (&side);
  side.end = fmax (found->filling, side.start);
  heel = sign * side.end;
  last = sign * gb_righting_lever_at (work, heel, gb_righting_nearest (work->righting, heel)->attitude).lever;
  found->dry_area = area_of (&side, last);
  find_dry_greatest (&side, last, found);
}
