/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-outline"

#include "outline.h"

#include <math.h>

/* Integrals over an area, about some point: 1, x, y, y2, x2 and xy. */
typedef struct
{
  double area, x, y, yy, xx, xy;
} Sums;

/* Adds what Green's theorem gives for the ring's edges, about @origin. Counter-clockwise counts up, clockwise
 * down. */
static Sums
ring_sums (const GbRing *ring, GbPoint origin)
{
  Sums sums = { 0 };

  for (guint i = 0; i < ring->n; i++)
    {
      const GbPoint *p = &ring->points[i];
      const GbPoint *q = &ring->points[(i + 1) % ring->n];
      double ax = p->x - origin.x, ay = p->y - origin.y;
      double bx = q->x - origin.x, by = q->y - origin.y;
      double cross = ax * by - bx * ay;

      sums.area += cross / 2;
      sums.x += (ax + bx) * cross / 6;
      sums.y += (ay + by) * cross / 6;
      sums.yy += (ay * ay + ay * by + by * by) * cross / 12;
      sums.xx += (ax * ax + ax * bx + bx * bx) * cross / 12;
      sums.xy += (ax * by + 2 * ax * ay + 2 * bx * by + bx * ay) * cross / 24;
    }
  return sums;
}

static void
add_times (Sums *sums, const Sums *more, double times)
{
  sums->area += times * more->area;
  sums->x += times * more->x;
  sums->y += times * more->y;
  sums->yy += times * more->yy;
  sums->xx += times * more->xx;
  sums->xy += times * more->xy;
}

static double
ring_length (const GbRing *ring)
{
  double length = 0;

  for (guint i = 0; i < ring->n; i++)
    length += hypot (ring->points[(i + 1) % ring->n].x - ring->points[i].x,
                     ring->points[(i + 1) % ring->n].y - ring->points[i].y);
  return length;
}

GbOutlineProperties
gb_outline_properties (const GbOutline *outline)
{
  /* About a point of the edge, so that a small outline far out keeps its digits. */
  GbPoint origin = outline->rings[0].points[0];
  GbOutlineProperties properties = { 0 };
  Sums sums = { 0 };
  double x, y;

  for (guint i = 0; i < outline->n_rings; i++)
    {
      Sums ring = ring_sums (&outline->rings[i], origin);

      /* The edge counts up and holes down, whichever way round they were entered. */
      add_times (&sums, &ring, (ring.area > 0) == (i == 0) ? 1 : -1);
      properties.perimeter += ring_length (&outline->rings[i]);
    }
  x = sums.x / sums.area;
  y = sums.y / sums.area;
  properties.area = sums.area;
  properties.x = origin.x + x;
  properties.y = origin.y + y;
  properties.ixx = sums.yy - sums.area * y * y;
  properties.iyy = sums.xx - sums.area * x * x;
  properties.ixy = sums.xy - sums.area * x * y;
  return properties;
}
