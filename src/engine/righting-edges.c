/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-righting"

/* Where each edge first goes under: over the sides along the curve, over the ends turned about her rest. */

#include "righting-private.h"

#include "root.h"

#include <math.h>

#define NEAR 1e-8
#define STEEPEST 89

/* A way of leaning her: by so much from her rest. */
typedef struct
{
  const GbRightingWork *work;
  const GbEdgeLine *line;
  GbAttitude nearby;
} Lean;

static double
above_when_heeled (double heel, gpointer data)
{
  const Lean *lean = data;
  GbLever lever = gb_righting_lever_at (lean->work, heel, lean->nearby);

  return isnan (lever.lever) ? NAN : gb_edge_line_least (lean->line, lever.attitude, NULL);
}

static GbAttitude
trimmed (const GbRightingWork *work, double trim, GbAttitude nearby)
{
  GbAttitude start = gb_attitude (work->rest_heel, trim, nearby.height);

  return gb_floater_rest (work->floater, start, GB_HOLD_BOTH, NULL, NULL).attitude;
}

static double
above_when_trimmed (double trim, gpointer data)
{
  const Lean *lean = data;

  return gb_edge_line_least (lean->line, trimmed (lean->work, trim, lean->nearby), NULL);
}

/* Sides ------------------------------------------------------------------------------------------------- */

/* Heel at which @line goes under, to starboard or to port; both are positive on their side. */
static double
heel_under (const GbRightingWork *work, const GbEdgeLine *line, int sign)
{
  double from = work->rest_heel, above = gb_edge_line_least (line, work->rest, NULL);
  GbAttitude nearby = work->rest;

  if (above <= 0)
    return sign * from;
  for (int i = (int)floor (sign * from / GB_DEGREE) + 1; i <= GB_UPRIGHT; i++)
    {
      const GbLever *lever = &work->righting->levers[GB_UPRIGHT + sign * i];
      double next = gb_edge_line_least (line, lever->attitude, NULL);
      Lean lean = { work, line, nearby };

      if (isnan (lever->lever))
        continue;
      if (next <= 0)
        return sign * gb_root (above_when_heeled, &lean, from, above, lever->heel, next, NEAR);
      from = lever->heel;
      above = next;
      nearby = lever->attitude;
    }
  return NAN;
}

/* Ends -------------------------------------------------------------------------------------------------- */

/* Where each line was when she was trimmed last. */
typedef struct
{
  const GbEdgeSet *edges;
  double *above;
  guint n_dry;
} Dry;

static double *
trim_of (GbRightingWork *work, guint line, int sign)
{
  GbEdgeImmersion *immersion = &g_array_index (work->righting->immersions, GbEdgeImmersion, line);

  return sign > 0 ? &immersion->bow : &immersion->stern;
}

/* Trimmed from @from to @to, where she lies as @attitude says. */
static void
look_at_lines (GbRightingWork *work, Dry *dry, int sign, double from, double to, GbAttitude attitude)
{
  for (guint i = 0; i < dry->edges->lines->len; i++)
    {
      Lean lean = { work, dry->edges->lines->pdata[i], attitude };
      double next = gb_edge_line_least (lean.line, attitude, NULL);

      if (!isnan (*trim_of (work, i, sign)))
        continue;
      if (next <= 0)
        {
          *trim_of (work, i, sign)
              = sign * gb_root (above_when_trimmed, &lean, from, dry->above[i], to, next, NEAR);
          dry->n_dry--;
        }
      dry->above[i] = next;
    }
}

/* Those that are under as she rests are so from there on. */
static void
start_dry (GbRightingWork *work, Dry *dry, int sign, double trim)
{
  for (guint i = 0; i < dry->edges->lines->len; i++)
    {
      dry->above[i] = gb_edge_line_least (dry->edges->lines->pdata[i], work->rest, NULL);
      if (dry->above[i] <= 0)
        *trim_of (work, i, sign) = sign * trim;
      else
        dry->n_dry++;
    }
}

static void
find_ends (GbRightingWork *work, const GbEdgeSet *edges, int sign)
{
  double from = gb_attitude_trim (work->rest);
  g_autofree double *above = g_new (double, edges->lines->len);
  Dry dry = { edges, above, 0 };
  GbAttitude attitude = work->rest;

  start_dry (work, &dry, sign, from);
  while (dry.n_dry > 0 && sign * from < STEEPEST * GB_DEGREE && !gb_righting_cancelled (work))
    {
      double to = from + sign * GB_DEGREE;

      attitude = trimmed (work, to, attitude);
      look_at_lines (work, &dry, sign, from, to, attitude);
      from = to;
    }
}

void
gb_righting_find_immersions (GbRightingWork *work)
{
  const GbEdgeSet *edges = gb_case_edges (work->self);

  for (guint i = 0; i < edges->lines->len && !gb_righting_cancelled (work); i++)
    {
      const GbEdgeLine *line = edges->lines->pdata[i];
      GbEdgeImmersion immersion
          = { (int)i, heel_under (work, line, 1), heel_under (work, line, -1), NAN, NAN };

      g_array_append_val (work->righting->immersions, immersion);
    }
  if (gb_righting_cancelled (work))
    return;
  find_ends (work, edges, 1);
  find_ends (work, edges, -1);
}
