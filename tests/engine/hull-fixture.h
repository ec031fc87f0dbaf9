/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* A boat's hulls for tests, written in a few lines. */

#include "boat/boat.h"
#include "engine/mesh.h"
#include "near.h"

/* A new record of @kind in @owner, after those that are there. */
static inline gpointer
add_record (GbBoat *boat, GbRecordKind kind, gint64 owner)
{
  static gint64 last_id = 1;
  GbRecord *record = gb_record_new (kind);

  record->id = ++last_id;
  record->owner = owner;
  record->position = last_id;
  return gb_boat_take (boat, record);
}

static inline GbHull *
add_hull (GbBoat *boat, GbHullForm form)
{
  GbHull *hull = add_record (boat, GB_RECORD_HULL, 0);

  hull->form = form;
  return hull;
}

static inline GbHull *
add_block (GbBoat *boat, double length, double width, double height)
{
  GbHull *hull = add_hull (boat, GB_HULL_BLOCK);

  hull->length = length;
  hull->width = width;
  hull->height = height;
  return hull;
}

/* One station, its points as y, z, y, z ... from the keel to the sheer. */
static inline void
add_station (GbBoat *boat, GbHull *hull, double x, const double *yz, guint n_points)
{
  GbStation *station = add_record (boat, GB_RECORD_STATION, hull->rec.id);

  station->x = x;
  for (guint k = 0; k < n_points; k++)
    {
      GbOffset *offset = add_record (boat, GB_RECORD_OFFSET, station->rec.id);

      offset->y = yz[2 * k];
      offset->z = yz[2 * k + 1];
    }
}
#define ADD_STATION(boat, hull, x, ...)                                                                              \
  add_station (boat, hull, x, (const double[]){ __VA_ARGS__ }, sizeof ((const double[]){ __VA_ARGS__ }) / sizeof (double) / 2)

/* Half breadths out of a formula: @n_x intervals along the hull and @n_z over its height; z runs from -depth to 0. */
static inline GbHull *
add_analytic_hull (GbBoat *boat, double length, double depth, guint n_x, guint n_z, double (*half_breadth) (double x, double z))
{
  GbHull *hull = add_hull (boat, GB_HULL_STATIONS);

  for (guint i = 0; i <= n_x; i++)
    {
      g_autofree double *yz = g_new (double, 2 * (n_z + 1));
      double x = length * i / n_x;

      for (guint k = 0; k <= n_z; k++)
        {
          yz[2 * k + 1] = -depth + depth * k / n_z;
          yz[2 * k] = fmax (half_breadth (x, yz[2 * k + 1]), 0);
        }
      add_station (boat, hull, x, yz, n_z + 1);
    }
  return hull;
}

static inline void
find_hulls (GbHullSet *set, GbBoat *boat)
{
  gb_boat_settle (boat);
  gb_hull_set_find (set, boat);
}
