/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-swamped"

/* Hulls that carry when she is full of water. */

#include "swamped-private.h"

static gboolean
is_tight (const GbBoat *boat, const GbHullShape *shape)
{
  const GbHull *hull = gb_boat_hull (boat, shape->id);

  return shape->edges->len == 0
         && (hull == NULL || gb_record_children_of (&hull->rec, GB_RECORD_OPENING)->len == 0);
}

static void
add_carrier (GArray *carriers, GbFloater *floater, const GbHullShape *shape, gboolean mirrored)
{
  GbCarrier carrier = { shape->id, shape->body, mirrored, { 0, 0, 0 }, { 0, 0, 0 } };
  double least, most;

  gb_body_extent (shape->body, (GbVec3){ 1, 0, 0 }, &carrier.least.x, &carrier.most.x);
  gb_body_extent (shape->body, (GbVec3){ 0, 1, 0 }, &least, &most);
  gb_body_extent (shape->body, (GbVec3){ 0, 0, 1 }, &carrier.least.z, &carrier.most.z);
  carrier.least.y = mirrored ? -most : least;
  carrier.most.y = mirrored ? -least : most;
  g_array_append_val (carriers, carrier);
  gb_floater_add_hull (floater, shape->body, mirrored);
}

GArray *
gb_carriers_find (const GbBoat *boat, const GbHullSet *hulls, GbFloater *floater)
{
  GArray *carriers = g_array_new (FALSE, FALSE, sizeof (GbCarrier));

  for (guint inside = 0; inside < 2; inside++)
    {
      guint n_around = carriers->len;

      for (guint i = 0; i < hulls->n_hulls; i++)
        {
          const GbHullShape *shape = &hulls->hulls[i];

          if (shape->body == NULL || (guint) (shape->inside != 0) != inside)
            continue;
          if (inside ? n_around > 0 && gb_carriers_contain (carriers, gb_body_centre (shape->body))
                     : !is_tight (boat, shape))
            continue;
          add_carrier (carriers, floater, shape, FALSE);
          if (shape->mirrored != NULL)
            add_carrier (carriers, floater, shape, TRUE);
        }
    }
  return carriers;
}

gboolean
gb_carriers_contain (const GArray *carriers, GbVec3 p)
{
  for (guint i = 0; i < carriers->len; i++)
    {
      const GbCarrier *carrier = &g_array_index (carriers, GbCarrier, i);

      if (p.x < carrier->least.x || p.x > carrier->most.x || p.y < carrier->least.y || p.y > carrier->most.y
          || p.z < carrier->least.z || p.z > carrier->most.z)
        continue;
      if (gb_body_contains (carrier->body, (GbVec3){ p.x, carrier->mirrored ? -p.y : p.y, p.z }))
        return TRUE;
    }
  return FALSE;
}
