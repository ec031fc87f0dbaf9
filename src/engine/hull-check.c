/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-hull-check"

/* Do these sections make a hull? Each by itself, and each with its neighbour: the section half-way between
 * two is looked at as well, for there the surface crosses itself where points of one were entered in another
 * order than those of the other. */

#include "hull-private.h"

#include "boat/quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Each piece of a section is held against every other. */
#define MOST_POINTS 2000

static double
turn_at (GbSectionPoint a, GbSectionPoint b, GbSectionPoint c)
{
  return (b.y - a.y) * (c.z - a.z) - (c.y - a.y) * (b.z - a.z);
}

/* TRUE if the two segments touch or cross. */
static gboolean
segments_meet (GbSectionPoint a, GbSectionPoint b, GbSectionPoint c, GbSectionPoint d)
{
  if (MAX (a.y, b.y) < MIN (c.y, d.y) || MAX (c.y, d.y) < MIN (a.y, b.y) || MAX (a.z, b.z) < MIN (c.z, d.z)
      || MAX (c.z, d.z) < MIN (a.z, b.z))
    return FALSE;
  return turn_at (a, b, c) * turn_at (a, b, d) <= 0 && turn_at (c, d, a) * turn_at (c, d, b) <= 0;
}

/* TRUE if the line goes back over itself at @b. */
static gboolean
folds_back (GbSectionPoint a, GbSectionPoint b, GbSectionPoint c)
{
  return turn_at (a, b, c) == 0 && (b.y - a.y) * (c.y - b.y) + (b.z - a.z) * (c.z - b.z) < 0;
}

static guint
append_unless_same (GbSectionPoint *line, guint n, GbSectionPoint point)
{
  if (n == 0 || line[n - 1].y != point.y || line[n - 1].z != point.z)
    line[n++] = point;
  return n;
}

/* The half section with what goes straight across to the centreline at keel and sheer; points entered twice
 * are taken once. */
static guint
closed_line (const GbSectionPoint *points, guint n_points, GbSectionPoint *line)
{
  double low = INFINITY, high = -INFINITY;
  guint n = 0;

  for (guint k = 0; k < n_points; k++)
    {
      low = MIN (low, points[k].z);
      high = MAX (high, points[k].z);
    }
  /* An end may come down to a level line; then there is nothing to close. */
  if (low < high)
    n = append_unless_same (line, n, (GbSectionPoint){ 0, points[0].z });
  for (guint k = 0; k < n_points; k++)
    n = append_unless_same (line, n, points[k]);
  if (low < high)
    n = append_unless_same (line, n, (GbSectionPoint){ 0, points[n_points - 1].z });
  return n;
}

static gboolean
crosses_itself (const GbSectionPoint *points, guint n_points)
{
  g_autofree GbSectionPoint *line = g_new (GbSectionPoint, n_points + 2);
  guint n = closed_line (points, n_points, line);

  for (guint i = 0; i + 2 < n; i++)
    {
      if (folds_back (line[i], line[i + 1], line[i + 2]))
        return TRUE;
      for (guint j = i + 2; j + 1 < n; j++)
        if (segments_meet (line[i], line[i + 1], line[j], line[j + 1]))
          return TRUE;
    }
  return FALSE;
}

static gboolean
crosses_between (const GbCrossSection *a, const GbCrossSection *b)
{
  g_autoptr (GArray) joins = gb_section_joins (a, b);
  g_autofree GbSectionPoint *middle = g_new (GbSectionPoint, joins->len);

  for (guint k = 0; k < joins->len; k++)
    {
      GbJoin join = g_array_index (joins, GbJoin, k);
      GbSectionPoint p = a->points[join.a], q = b->points[join.b];

      middle[k] = (GbSectionPoint){ (p.y + q.y) / 2, (p.z + q.z) / 2 };
    }
  return crosses_itself (middle, joins->len);
}

/* A sentence with the place of one station in it. */
G_GNUC_FORMAT (1)
static char *
sentence_at (const char *format, double x, GbUnits units)
{
  g_autofree char *place = gb_quantity_format (x, GB_DIM_LENGTH, units);

  return g_strdup_printf (format, place);
}

static char *
check_section (const GbCrossSection *section, GbUnits units)
{
  if (!isfinite (section->x))
    return g_strdup (_ ("A station has no x. Enter where its section is cut."));
  if (section->n < 2)
    return sentence_at (
        _ ("The station at %s has fewer than two points. Enter them from the keel up to the sheer."),
        section->x, units);
  if (section->n > MOST_POINTS)
    return sentence_at (_ ("The station at %s has too many points. Two thousand are the most."), section->x,
                        units);
  for (guint k = 0; k < section->n; k++)
    {
      if (!isfinite (section->points[k].y) || !isfinite (section->points[k].z))
        return sentence_at (_ ("A point of the station at %s lacks its y or z."), section->x, units);
      if (section->points[k].y < 0)
        return sentence_at (
            _ ("The station at %s goes over the centreline. Half breadths are never below zero."), section->x,
            units);
    }
  if (section->points[section->n - 1].z < section->points[0].z)
    return sentence_at (
        _ ("The station at %s runs downwards. Enter its points from the keel up to the sheer."), section->x,
        units);
  if (crosses_itself (section->points, section->n))
    return sentence_at (_ ("The section at %s crosses itself. Check the order of its points."), section->x,
                        units);
  return NULL;
}

static int
compare_sections (gconstpointer a, gconstpointer b)
{
  double x = ((const GbCrossSection *) a)->x, y = ((const GbCrossSection *) b)->x;

  return x < y ? -1 : x > y;
}

char *
gb_sections_check (GArray *sections, GbUnits units)
{
  if (sections->len < 2)
    return g_strdup (_ ("A hull needs at least two stations."));
  for (guint i = 0; i < sections->len; i++)
    {
      char *trouble = check_section (&g_array_index (sections, GbCrossSection, i), units);

      if (trouble != NULL)
        return trouble;
    }
  g_array_sort (sections, compare_sections);
  for (guint i = 1; i < sections->len; i++)
    {
      const GbCrossSection *aft = &g_array_index (sections, GbCrossSection, i - 1);
      const GbCrossSection *fore = &g_array_index (sections, GbCrossSection, i);
      g_autofree char *aft_place = NULL, *fore_place = NULL;

      if (aft->x == fore->x)
        return sentence_at (_ ("Two stations are at the same x, %s. Give each its own."), aft->x, units);
      if (!crosses_between (aft, fore))
        continue;
      aft_place = gb_quantity_format (aft->x, GB_DIM_LENGTH, units);
      fore_place = gb_quantity_format (fore->x, GB_DIM_LENGTH, units);
      return g_strdup_printf (
          _ ("The surface between the stations at %s and %s crosses itself. Enter the points of both in the "
             "same order."),
          aft_place, fore_place);
    }
  return NULL;
}
