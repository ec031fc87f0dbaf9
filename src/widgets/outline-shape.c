/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-outline-shape"

#include "outline-shape.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "boat/quantity.h"

struct _GbShape
{
  GPtrArray *rings; /* (element-type GArray of GbPoint) */
};

static GArray *
ring_at (const GbShape *shape, guint ring)
{
  return shape->rings->pdata[ring];
}

static GArray *
add_ring (GbShape *shape)
{
  GArray *ring = g_array_new (FALSE, FALSE, sizeof (GbPoint));

  g_ptr_array_add (shape->rings, ring);
  return ring;
}

GbShape *
gb_shape_new (const GbOutline *outline)
{
  GbShape *shape = g_new0 (GbShape, 1);

  shape->rings = g_ptr_array_new_with_free_func ((GDestroyNotify) g_array_unref);
  for (guint r = 0; outline != NULL && r < outline->n_rings; r++)
    g_array_append_vals (add_ring (shape), outline->rings[r].points, outline->rings[r].n);
  return shape;
}

void
gb_shape_free (GbShape *shape)
{
  if (shape == NULL)
    return;
  g_ptr_array_unref (shape->rings);
  g_free (shape);
}

guint
gb_shape_n_rings (const GbShape *shape)
{
  return shape->rings->len;
}

guint
gb_shape_n_points (const GbShape *shape, guint ring)
{
  return ring_at (shape, ring)->len;
}

GbPoint
gb_shape_point (const GbShape *shape, guint ring, guint index)
{
  return g_array_index (ring_at (shape, ring), GbPoint, index);
}

gboolean
gb_shape_bounds (const GbShape *shape, GbPoint *least, GbPoint *most)
{
  *least = (GbPoint){ INFINITY, INFINITY };
  *most = (GbPoint){ -INFINITY, -INFINITY };
  for (guint r = 0; r < shape->rings->len; r++)
    for (guint i = 0; i < gb_shape_n_points (shape, r); i++)
      {
        GbPoint point = gb_shape_point (shape, r, i);

        *least = (GbPoint){ fmin (least->x, point.x), fmin (least->y, point.y) };
        *most = (GbPoint){ fmax (most->x, point.x), fmax (most->y, point.y) };
      }
  return least->x <= most->x;
}

gboolean
gb_shape_find (const GbShape *shape, GbPoint at, double reach, GbShapeSpot *spot)
{
  double nearest = reach;
  gboolean found = FALSE;

  for (guint r = 0; r < shape->rings->len; r++)
    for (guint i = 0; i < gb_shape_n_points (shape, r); i++)
      {
        GbPoint point = gb_shape_point (shape, r, i);
        double distance = hypot (point.x - at.x, point.y - at.y);

        if (distance <= nearest)
          {
            nearest = distance;
            *spot = (GbShapeSpot){ r, i };
            found = TRUE;
          }
      }
  return found;
}

static double
distance_to_edge (GbPoint p, GbPoint a, GbPoint b)
{
  double dx = b.x - a.x, dy = b.y - a.y;
  double length2 = dx * dx + dy * dy;
  double t = length2 > 0 ? CLAMP (((p.x - a.x) * dx + (p.y - a.y) * dy) / length2, 0, 1) : 0;

  return hypot (a.x + t * dx - p.x, a.y + t * dy - p.y);
}

GbShapeSpot
gb_shape_insert (GbShape *shape, GbPoint at)
{
  GbShapeSpot spot = { 0, 0 };
  double nearest = INFINITY;

  if (shape->rings->len == 0)
    add_ring (shape);
  for (guint r = 0; r < shape->rings->len; r++)
    for (guint i = 0, n = gb_shape_n_points (shape, r); i < n; i++)
      {
        double distance
          = distance_to_edge (at, gb_shape_point (shape, r, i), gb_shape_point (shape, r, (i + 1) % n));

        /* The first three points of a ring come in the order of the clicks. */
        if (distance < nearest)
          {
            nearest = distance;
            spot = (GbShapeSpot){ r, n < 3 ? n : i + 1 };
          }
      }
  g_array_insert_val (ring_at (shape, spot.ring), spot.index, at);
  return spot;
}

void
gb_shape_move (GbShape *shape, GbShapeSpot spot, GbPoint to)
{
  g_array_index (ring_at (shape, spot.ring), GbPoint, spot.index) = to;
}

void
gb_shape_remove (GbShape *shape, GbShapeSpot spot)
{
  g_array_remove_index (ring_at (shape, spot.ring), spot.index);
  if (gb_shape_n_points (shape, spot.ring) == 0)
    g_ptr_array_remove_index (shape->rings, spot.ring);
}

/* As text ------------------------------------------------------------------------------------------------ */

char *
gb_shape_to_lines (const GbShape *shape, GbUnits units)
{
  double unit = gb_quantity_factor (GB_DIM_LENGTH, units);
  GString *lines = g_string_new (NULL);

  for (guint r = 0; r < shape->rings->len; r++)
    {
      if (r > 0)
        g_string_append_c (lines, '\n');
      for (guint i = 0; i < gb_shape_n_points (shape, r); i++)
        {
          GbPoint point = gb_shape_point (shape, r, i);

          g_string_append_printf (lines, "%.7g %.7g\n", point.x / unit, point.y / unit);
        }
    }
  return g_string_free (lines, FALSE);
}

/* Both numbers may hold spaces ("3 1/2", "1200 mm"), so each place between two words is tried. */
static gboolean
read_line (const char *line, GbUnits units, GbPoint *point)
{
  for (const char *gap = line; *gap != '\0'; gap++)
    {
      g_autofree char *x = NULL;

      if (!g_ascii_isspace (*gap))
        continue;
      x = g_strndup (line, (gsize) (gap - line));
      if (gb_quantity_parse (x, GB_DIM_LENGTH, units, &point->x, NULL)
          && gb_quantity_parse (gap + 1, GB_DIM_LENGTH, units, &point->y, NULL))
        return TRUE;
    }
  return FALSE;
}

GbShape *
gb_shape_from_lines (const char *text, GbUnits units, GError **error)
{
  g_autoptr (GbShape) shape = gb_shape_new (NULL);
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  GArray *ring = NULL;

  for (guint i = 0; lines[i] != NULL; i++)
    {
      GbPoint point;

      g_strstrip (lines[i]);
      if (*lines[i] == '\0')
        {
          ring = NULL;
          continue;
        }
      if (!read_line (lines[i], units, &point))
        {
          g_set_error (
            error, GB_QUANTITY_ERROR, GB_QUANTITY_ERROR_SYNTAX,
            _ ("Line %u: an x and a y are expected with a space between them, such as “1200 400”."), i + 1);
          return NULL;
        }
      if (ring == NULL)
        ring = add_ring (shape);
      g_array_append_val (ring, point);
    }
  return g_steal_pointer (&shape);
}

char *
gb_shape_to_text (const GbShape *shape)
{
  g_autofree GbRing *rings = g_new0 (GbRing, shape->rings->len);
  GbOutline outline = { rings, shape->rings->len };

  for (guint r = 0; r < shape->rings->len; r++)
    rings[r] = (GbRing){ (GbPoint *) (gpointer) ring_at (shape, r)->data, ring_at (shape, r)->len };
  return shape->rings->len > 0 ? gb_outline_format (&outline) : g_strdup ("");
}
