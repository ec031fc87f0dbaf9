/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-hull-body"

/* Hulls given by a few sizes. Each stands on its origin: its lowest point is at z = 0, its after end at x =
 * 0, and block and pipe lie along the x axis. */

#include "hull-private.h"

#include "boat/outline.h"
#include "mesh-private.h"

#include <glib/gi18n-lib.h>

static gboolean
is_size (double size)
{
  return isfinite (size) && size > 0;
}

static double
or_else (double size, double instead)
{
  return isfinite (size) ? size : instead;
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return x < y ? -1 : x > y;
}

/* Half the width at @x: it tapers from amidships to either end. */
static double
block_half_width (const GbHull *hull, double x)
{
  double end = or_else (x < hull->length / 2 ? hull->width_aft : hull->width_fore, hull->width);
  double share = fabs (x - hull->length / 2) / (hull->length / 2);

  return ((1 - share) * hull->width + share * end) / 2;
}

static double
block_bottom (double height, double length, double rake_aft, double rake_fore, double x)
{
  double aft = rake_aft > 0 ? 1 - x / rake_aft : 0;
  double fore = rake_fore > 0 ? 1 - (length - x) / rake_fore : 0;

  return height * MAX (0, MAX (aft, fore));
}

/* A block has a section wherever it has a corner. Its sides are upright, its ends are flat, and its bottom is
 * level between the rakes. */
GArray *
gb_block_sections (const GbHull *hull, char **trouble)
{
  double rake_aft = or_else (hull->rake_aft, 0), rake_fore = or_else (hull->rake_fore, 0);
  double at[] = { 0, rake_aft, hull->length / 2, hull->length - rake_fore, hull->length };
  GArray *sections;

  if (!is_size (hull->length) || !is_size (hull->width) || !is_size (hull->height))
    *trouble = g_strdup (_ ("A block needs a length, a width and a height."));
  else if (rake_aft < 0 || rake_fore < 0 || or_else (hull->width_aft, 0) < 0
           || or_else (hull->width_fore, 0) < 0)
    *trouble = g_strdup (_ ("Rakes and widths of a block are never below zero."));
  else if (rake_aft + rake_fore > hull->length)
    *trouble = g_strdup (_ ("The rakes together are longer than the block."));
  if (*trouble != NULL)
    return NULL;

  sections = gb_sections_new ();
  qsort (at, G_N_ELEMENTS (at), sizeof *at, compare_doubles);
  for (guint i = 0; i < G_N_ELEMENTS (at); i++)
    if (i == 0 || at[i] > at[i - 1])
      {
        GbSectionPoint *points = gb_sections_add (sections, at[i], 2);
        double y = block_half_width (hull, at[i]);

        points[0]
            = (GbSectionPoint){ y, block_bottom (hull->height, hull->length, rake_aft, rake_fore, at[i]) };
        points[1] = (GbSectionPoint){ y, hull->height };
      }
  return sections;
}

/* A pipe is a prism of 96 sides, whose corners lie so far out that its section has the circle's area: its
 * volume is exact, whatever is cut off it is right to a few parts in ten thousand, and its skin is too large
 * by two. */
#define PIPE_SIDES 96

GArray *
gb_pipe_sections (const GbHull *hull, char **trouble)
{
  double step = 2 * G_PI / PIPE_SIDES;
  double radius = hull->diameter / 2, corner = radius * sqrt (step / sin (step));
  GArray *sections;

  if (!is_size (hull->length) || !is_size (hull->diameter))
    {
      *trouble = g_strdup (_ ("A pipe needs a length and a diameter."));
      return NULL;
    }
  sections = gb_sections_new ();
  for (guint end = 0; end < 2; end++)
    {
      GbSectionPoint *points = gb_sections_add (sections, end * hull->length, PIPE_SIDES / 2 + 1);

      for (guint k = 0; k <= PIPE_SIDES / 2; k++)
        points[k] = (GbSectionPoint){ corner * sin (k * step), radius - corner * cos (k * step) };
      points[0].y = points[PIPE_SIDES / 2].y = 0;
    }
  return sections;
}

static GbOutline *
parse_plan (const GbHull *hull, char **trouble)
{
  g_autoptr (GbOutline) outline = NULL;
  g_autoptr (GError) error = NULL;

  if (hull->outline == NULL || !is_size (hull->height))
    *trouble = g_strdup (_ ("A prism needs an outline and a height."));
  else if ((outline = gb_outline_parse (hull->outline, &error)) == NULL)
    *trouble = g_strdup (error->message);
  else if (outline->n_rings > 1)
    *trouble = g_strdup (_ ("The outline of a hull has no holes. Enter its edge alone."));
  return *trouble == NULL ? g_steal_pointer (&outline) : NULL;
}

/* The ring's points, anticlockwise seen from above, at z. Their numbers follow each other. */
static void
add_ring (GbMeshBuilder *builder, const GbRing *ring, double z)
{
  double turn = 0;

  for (guint i = 0; i < ring->n; i++)
    {
      GbPoint p = ring->points[i], q = ring->points[(i + 1) % ring->n];

      turn += (p.x - ring->points[0].x) * (q.y - ring->points[0].y)
              - (q.x - ring->points[0].x) * (p.y - ring->points[0].y);
    }
  for (guint i = 0; i < ring->n; i++)
    {
      GbPoint p = ring->points[turn > 0 ? i : ring->n - 1 - i];

      gb_mesh_builder_add_point (builder, p.x, p.y, z);
    }
}

GbMesh *
gb_prism_mesh (const GbHull *hull, gboolean open, GArray **edge, char **trouble)
{
  g_autoptr (GbOutline) outline = parse_plan (hull, trouble);
  g_auto (GbMeshBuilder) builder = { NULL, NULL };
  g_autofree guint *top = NULL;
  g_autofree guint *bottom = NULL;
  guint n, n_before;

  if (outline == NULL)
    return NULL;
  n = outline->rings[0].n;
  top = g_new (guint, n);
  bottom = g_new (guint, n);
  gb_mesh_builder_init (&builder);
  add_ring (&builder, &outline->rings[0], 0);
  add_ring (&builder, &outline->rings[0], hull->height);
  for (guint i = 0; i < n; i++)
    {
      guint j = (i + 1) % n;

      gb_mesh_builder_add_triangle (&builder, i, j, n + j);
      gb_mesh_builder_add_triangle (&builder, i, n + j, n + i);
      bottom[n - 1 - i] = i;
      top[i] = n + i;
    }
  gb_mesh_builder_add_face (&builder, bottom, n);
  n_before = builder.triangles->len;
  gb_mesh_builder_add_face (&builder, top, n);

  *edge = g_array_new (FALSE, FALSE, sizeof (GbVec3));
  g_array_append_vals (*edge, &g_array_index (builder.points, GbVec3, n), n);
  g_array_append_vals (*edge, &g_array_index (builder.points, GbVec3, n), 1);
  return gb_mesh_builder_finish (&builder, open ? builder.triangles->len - n_before : 0);
}
