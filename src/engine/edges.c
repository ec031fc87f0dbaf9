/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-edges"

#include "edges.h"

#include <glib/gi18n-lib.h>

static void
line_free (gpointer data)
{
  GbEdgeLine *line = data;

  g_free (line->name);
  g_array_unref (line->points);
  g_free (line);
}

static void
set_init (GbEdgeSet *set)
{
  set->lines = g_ptr_array_new_with_free_func (line_free);
  set->troubles = g_ptr_array_new_with_free_func (g_free);
}

/* @line starts with what is known of it; its points are taken. */
static void
add_line (GbEdgeSet *set, GbEdgeLine line)
{
  g_ptr_array_add (set->lines, g_memdup2 (&line, sizeof line));
}

static GArray *
mirrored_points (const GArray *points, double middle)
{
  GArray *mirrored = g_array_sized_new (FALSE, FALSE, sizeof (GbVec3), points->len);

  for (guint i = 0; i < points->len; i++)
    {
      GbVec3 p = g_array_index (points, GbVec3, i);

      p.y = 2 * middle - p.y;
      g_array_append_val (mirrored, p);
    }
  return mirrored;
}

static void
add_own_edges (GbEdgeSet *set, const GbHull *hull, const GbHullShape *shape)
{
  for (guint i = 0; i < shape->edges->len; i++)
    add_line (set, (GbEdgeLine){ .hull = shape->id,
                                 .name = gb_record_dup_title (&hull->rec),
                                 .points = g_array_ref (shape->edges->pdata[i]),
                                 .mirrored = shape->mirrored != NULL && i > 0 });
}

/* Openings ---------------------------------------------------------------------------------------------- */

typedef struct
{
  const GbHull *hull;
  const GbOpening *opening;
  char *hull_name, *opening_name;
} Place;

static void
place_clear (Place *place)
{
  g_free (place->hull_name);
  g_free (place->opening_name);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Place, place_clear)

/* TRUE where @p lies outside the hull's box by more than half its length: a slip of the pen, and no hatch. */
static gboolean
is_far (const GbMesh *mesh, GbVec3 p)
{
  GbVec3 least = mesh->points[0], most = least;
  double reach;

  for (guint i = 1; i < mesh->n_points; i++)
    {
      GbVec3 q = mesh->points[i];

      least = (GbVec3){ fmin (least.x, q.x), fmin (least.y, q.y), fmin (least.z, q.z) };
      most = (GbVec3){ fmax (most.x, q.x), fmax (most.y, q.y), fmax (most.z, q.z) };
    }
  reach = (most.x - least.x) / 2;
  return p.x < least.x - reach || p.x > most.x + reach || p.y < least.y - reach || p.y > most.y + reach
         || p.z < least.z - reach || p.z > most.z + reach;
}

/* The corners that have a place, in the boat's axes. */
static GArray *
corners_of (const Place *place, guint *n_no_place)
{
  const GPtrArray *corners = gb_record_children_of (&place->opening->rec, GB_RECORD_CORNER);
  GArray *points = g_array_new (FALSE, FALSE, sizeof (GbVec3));

  *n_no_place = 0;
  for (guint i = 0; i < corners->len; i++)
    {
      const GbCorner *corner = corners->pdata[i];
      GbVec3 p = { place->hull->x + corner->x, place->hull->y + corner->y, place->hull->z + corner->z };

      if (isfinite (p.x) && isfinite (p.y) && isfinite (p.z))
        g_array_append_val (points, p);
      else
        *n_no_place += 1;
    }
  return points;
}

/* A sentence where the opening cannot be; what can be told of it all the same is kept. FALSE if nothing can.
 */
static gboolean
check_corners (
    GbEdgeSet *set, const Place *place, const GbHullShape *shape, const GArray *points, guint n_no_place)
{
  if (points->len == 0)
    {
      g_ptr_array_add (set->troubles,
                       g_strdup_printf (_ ("“%s” on “%s” has no corner with a place yet, so it is left out."),
                                        place->opening_name, place->hull_name));
      return FALSE;
    }
  for (guint i = 0; i < points->len; i++)
    if (is_far (shape->mesh, g_array_index (points, GbVec3, i)))
      {
        g_ptr_array_add (set->troubles,
                         g_strdup_printf (_ ("“%s” lies far away from its hull, “%s”, so it is left out. Its "
                                             "corners are measured from the hull's own place."),
                                          place->opening_name, place->hull_name));
        return FALSE;
      }
  if (n_no_place > 0)
    g_ptr_array_add (
        set->troubles,
        g_strdup_printf (ngettext ("%u corner of “%s” on “%s” has no place, so it is left out.",
                                   "%u corners of “%s” on “%s” have no place, so they are left out.",
                                   n_no_place),
                         n_no_place, place->opening_name, place->hull_name));
  return TRUE;
}

/* The line, and its mirror image with the other hull of a pair. */
static void
add_with_mirror (GbEdgeSet *set, const Place *place, GArray *points, gboolean mirrored)
{
  GbEdgeLine line = {
    .hull = place->hull->rec.id, .opening = place->opening->rec.id, .points = points, .mirrored = mirrored
  };

  /* Translators: a hull and an opening in it: "Main hull, hatch". */
  line.name = g_strdup_printf (_ ("%s, %s"), place->hull_name, place->opening_name);
  add_line (set, line);
  if (!place->hull->pair)
    return;
  line.name = g_strdup (line.name);
  line.points = mirrored_points (points, 0);
  line.mirrored = TRUE;
  add_line (set, line);
}

static void
add_opening (GbEdgeSet *set, const GbHull *hull, const GbHullShape *shape, const GbOpening *opening)
{
  g_auto (Place) place
      = { hull, opening, gb_record_dup_title (&hull->rec), gb_record_dup_title (&opening->rec) };
  guint n_no_place;
  g_autoptr (GArray) points = corners_of (&place, &n_no_place);

  if (!check_corners (set, &place, shape, points, n_no_place))
    return;
  if (opening->ring && points->len > 2)
    g_array_append_val (points, g_array_index (points, GbVec3, 0));
  add_with_mirror (set, &place, g_array_ref (points), FALSE);
  if (opening->pair)
    add_with_mirror (set, &place, mirrored_points (points, hull->y), TRUE);
}

/* The set ----------------------------------------------------------------------------------------------- */

void
gb_edge_set_find (GbEdgeSet *set, const GbBoat *boat, const GbHullSet *hulls)
{
  gb_edge_set_clear (set);
  set_init (set);
  for (guint i = 0; i < hulls->n_hulls; i++)
    {
      const GbHullShape *shape = &hulls->hulls[i];
      const GbHull *hull = gb_boat_hull (boat, shape->id);
      const GPtrArray *openings;

      /* What lies in another hull is wet or dry with that; a hull that cannot be has its own sentence. */
      if (hull == NULL || shape->mesh == NULL || shape->inside)
        continue;
      add_own_edges (set, hull, shape);
      openings = gb_record_children_of (&hull->rec, GB_RECORD_OPENING);
      for (guint k = 0; k < openings->len; k++)
        add_opening (set, hull, shape, openings->pdata[k]);
    }
}

void
gb_edge_set_clear (GbEdgeSet *set)
{
  g_clear_pointer (&set->lines, g_ptr_array_unref);
  g_clear_pointer (&set->troubles, g_ptr_array_unref);
}

void
gb_edge_set_copy (GbEdgeSet *to, const GbEdgeSet *from)
{
  set_init (to);
  for (guint i = 0; from->lines != NULL && i < from->lines->len; i++)
    {
      GbEdgeLine line = *(const GbEdgeLine *)from->lines->pdata[i];

      line.name = g_strdup (line.name);
      line.points = g_array_ref (line.points);
      add_line (to, line);
    }
}

/* Freeboard --------------------------------------------------------------------------------------------- */

double
gb_edge_line_least (const GbEdgeLine *line, GbAttitude attitude, GbVec3 *at)
{
  double least = NAN;

  for (guint i = 0; i < line->points->len; i++)
    {
      GbVec3 p = g_array_index (line->points, GbVec3, i);
      double above = gb_attitude_above (attitude, p);

      if (above < least || isnan (least))
        {
          least = above;
          if (at != NULL)
            *at = p;
        }
    }
  return least;
}

GbLeastFreeboard
gb_edge_set_least (const GbEdgeSet *set, GbAttitude attitude)
{
  GbLeastFreeboard least = { NAN, { NAN, NAN, NAN }, -1 };

  for (guint i = 0; set->lines != NULL && i < set->lines->len; i++)
    {
      GbVec3 at;
      double freeboard = gb_edge_line_least (set->lines->pdata[i], attitude, &at);

      if (freeboard < least.freeboard || (least.line < 0 && !isnan (freeboard)))
        least = (GbLeastFreeboard){ freeboard, at, (int)i };
    }
  return least;
}
