/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-outline"

#include "outline.h"

#include "expression.h"
#include "quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Every edge is held against every other. */
#define MOST_POINTS 2000
#define FARTHEST 100.0
/* What is nearer than this, in metres, touches. */
#define TOUCH 1e-9
#define LEAST_AREA 1e-9

void
gb_outline_free (GbOutline *outline)
{
  if (outline == NULL)
    return;
  for (guint i = 0; i < outline->n_rings; i++)
    g_free (outline->rings[i].points);
  g_free (outline->rings);
  g_free (outline);
}

G_GNUC_PRINTF (2, 3)
static gboolean
fail (GError **error, const char *format, ...)
{
  va_list args;
  GError *new_error;

  va_start (args, format);
  new_error = g_error_new_valist (GB_QUANTITY_ERROR, GB_QUANTITY_ERROR_SYNTAX, format, args);
  va_end (args);
  g_propagate_error (error, new_error);
  return FALSE;
}

/* Reading ------------------------------------------------------------------------------------------------ */

static const char *
skip_space (const char *p)
{
  while (g_ascii_isspace (*p))
    p++;
  return p;
}

/* A number with a unit of length, or metres. */
static gboolean
read_length (const char **text, double *v)
{
  const char *p = skip_space (*text);
  const GbUnit *unit;
  char *end;
  gsize length;

  if (strspn (p, "+-.0123456789") == 0 || strncasecmp (p + strspn (p, "+-"), "0x", 2) == 0)
    return FALSE;
  *v = g_ascii_strtod (p, &end);
  if (end == p || !(fabs (*v) < G_MAXDOUBLE))
    return FALSE;
  p = skip_space (end);
  unit = gb_unit_match (p, &length);
  if (unit != NULL)
    {
      if (!gb_powers_equal (unit->powers, (GbPowers){ .length = 1 }))
        return FALSE;
      *v = *v * unit->num / unit->den;
      end = (char *) p + length;
    }
  *text = end;
  return TRUE;
}

static gboolean
read_point (const char *text, GbPoint *point, GError **error)
{
  const char *p = text;
  g_autofree char *quote = NULL;

  if (read_length (&p, &point->x) && read_length (&p, &point->y) && *skip_space (p) == '\0')
    {
      if (fabs (point->x) <= FARTHEST && fabs (point->y) <= FARTHEST)
        return TRUE;
      quote = gb_entry_quote (text);
      return fail (error, _ ("The point “%s” is farther out than any small boat needs; at most %g m."), quote,
                   FARTHEST);
    }
  quote = gb_entry_quote (text);
  return fail (error, _ ("“%s” is no point; enter x and y, such as 1.2 0.4 or 1200 mm 400 mm."), quote);
}

static double
distance (GbPoint a, GbPoint b)
{
  return hypot (a.x - b.x, a.y - b.y);
}

/* Points that lie on the one before them are left out, and a last one on the first. */
static gboolean
read_ring (const char *text, GArray *points, GError **error)
{
  g_auto (GStrv) pieces = g_strsplit (text, ",", MOST_POINTS + 1);
  GbPoint *first;

  for (char **piece = pieces; *piece != NULL; piece++)
    {
      GbPoint point = { 0 };
      const GbPoint *last = points->len > 0 ? &g_array_index (points, GbPoint, points->len - 1) : NULL;

      if (!read_point (g_strstrip (*piece), &point, error))
        return FALSE;
      if (last == NULL || distance (*last, point) > TOUCH)
        g_array_append_val (points, point);
    }
  first = (GbPoint *) (gpointer) points->data;
  while (points->len > 1 && distance (first[0], first[points->len - 1]) <= TOUCH)
    g_array_set_size (points, points->len - 1);
  if (points->len < 3)
    return fail (error, _ ("An outline needs at least three points, such as 0 0, 1.2 0, 1.2 0.4."));
  return TRUE;
}

static GbOutline *
read_rings (const char *text, GError **error)
{
  g_auto (GStrv) pieces = g_strsplit (text, ";", MOST_POINTS + 1);
  g_autoptr (GbOutline) outline = g_new0 (GbOutline, 1);

  outline->rings = g_new0 (GbRing, g_strv_length (pieces) + 1);
  for (char **piece = pieces; *piece != NULL; piece++)
    {
      g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (GbPoint));

      if (!read_ring (*piece, points, error))
        return NULL;
      outline->rings[outline->n_rings].n = points->len;
      outline->rings[outline->n_rings++].points
          = (GbPoint *) (gpointer) g_array_free (g_steal_pointer (&points), FALSE);
    }
  if (outline->n_rings == 0)
    {
      fail (error, _ ("An outline needs at least three points, such as 0 0, 1.2 0, 1.2 0.4."));
      return NULL;
    }
  return g_steal_pointer (&outline);
}

/* Soundness ---------------------------------------------------------------------------------------------- */

static double
cross (GbPoint a, GbPoint b, GbPoint c)
{
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

static gboolean
lies_on (GbPoint p, GbPoint a, GbPoint b)
{
  double dx = b.x - a.x;
  double dy = b.y - a.y;
  double t = CLAMP (((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy), 0, 1);

  return distance (p, (GbPoint){ a.x + t * dx, a.y + t * dy }) <= TOUCH;
}

static gboolean
are_apart (double a, double b, double c, double d)
{
  return MAX (a, b) + TOUCH < MIN (c, d) || MAX (c, d) + TOUCH < MIN (a, b);
}

/* TRUE if the edges ab and cd cross or touch. Where rounding might hide a crossing, an end lies on the other
 * edge. */
static gboolean
edges_meet (GbPoint a, GbPoint b, GbPoint c, GbPoint d)
{
  if (are_apart (a.x, b.x, c.x, d.x) || are_apart (a.y, b.y, c.y, d.y))
    return FALSE;
  if (lies_on (a, c, d) || lies_on (b, c, d) || lies_on (c, a, b) || lies_on (d, a, b))
    return TRUE;
  return (cross (a, b, c) > 0) != (cross (a, b, d) > 0) && (cross (c, d, a) > 0) != (cross (c, d, b) > 0);
}

static GbPoint
point_of (const GbRing *ring, guint i)
{
  return ring->points[i % ring->n];
}

static gboolean
rings_meet (const GbRing *a, const GbRing *b)
{
  for (guint i = 0; i < a->n; i++)
    for (guint j = 0; j < b->n; j++)
      if (edges_meet (point_of (a, i), point_of (a, i + 1), point_of (b, j), point_of (b, j + 1)))
        return TRUE;
  return FALSE;
}

/* Neighbours meet anyway; where one goes back over the other, the next but one meets it too. */
static gboolean
meets_itself (const GbRing *ring)
{
  for (guint i = 0; i + 2 < ring->n; i++)
    for (guint j = i + 2; j < ring->n - (i == 0 ? 1 : 0); j++)
      if (edges_meet (point_of (ring, i), point_of (ring, i + 1), point_of (ring, j), point_of (ring, j + 1)))
        return TRUE;
  return FALSE;
}

static double
ring_area (const GbRing *ring)
{
  double twice = 0;

  for (guint i = 1; i + 1 < ring->n; i++)
    twice += cross (ring->points[0], ring->points[i], ring->points[i + 1]);
  return fabs (twice) / 2;
}

static gboolean
is_inside (GbPoint p, const GbRing *ring)
{
  gboolean inside = FALSE;

  for (guint i = 0; i < ring->n; i++)
    {
      GbPoint a = point_of (ring, i);
      GbPoint b = point_of (ring, i + 1);

      if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y))
        inside = !inside;
    }
  return inside;
}

static gboolean
check_ring (const GbRing *ring, GError **error)
{
  if (meets_itself (ring))
    return fail (error,
                 _ ("The outline crosses or touches itself; enter its points in order round the edge."));
  if (ring_area (ring) < LEAST_AREA)
    return fail (error, _ ("The outline has no area: its points lie on a line."));
  return TRUE;
}

static gboolean
check_holes (const GbOutline *outline, GError **error)
{
  for (guint i = 1; i < outline->n_rings; i++)
    for (guint j = 0; j < i; j++)
      {
        const GbRing *hole = &outline->rings[i];
        const GbRing *other = &outline->rings[j];

        if (rings_meet (hole, other))
          return fail (error, j == 0 ? _ ("A hole crosses or touches the outline's edge.")
                                     : _ ("Two holes in the outline cross or touch."));
        if (j == 0 && !is_inside (hole->points[0], other))
          return fail (error, _ ("A hole lies outside the outline's edge."));
        if (j > 0 && (is_inside (hole->points[0], other) || is_inside (other->points[0], hole)))
          return fail (error, _ ("A hole in the outline lies inside another."));
      }
  return TRUE;
}

GbOutline *
gb_outline_parse (const char *text, GError **error)
{
  g_autoptr (GbOutline) outline = NULL;
  guint n = 1;

  if (!g_utf8_validate (text, -1, NULL))
    {
      fail (error, _ ("This text is not UTF-8; plain text is expected."));
      return NULL;
    }
  for (const char *p = text; *p != '\0'; p++)
    n += *p == ',' || *p == ';';
  if (n > MOST_POINTS)
    {
      fail (error, _ ("The outline has too many points; at most %d are read."), MOST_POINTS);
      return NULL;
    }
  outline = read_rings (text, error);
  if (outline == NULL)
    return NULL;
  for (guint i = 0; i < outline->n_rings; i++)
    if (!check_ring (&outline->rings[i], error))
      return NULL;
  return check_holes (outline, error) ? g_steal_pointer (&outline) : NULL;
}

/* Writing ------------------------------------------------------------------------------------------------ */

static void
append_number (GString *text, double v)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  g_ascii_formatd (digits, sizeof digits, "%.15g", v);
  if (g_ascii_strtod (digits, NULL) != v)
    g_ascii_dtostr (digits, sizeof digits, v);
  g_string_append (text, v == 0 ? "0" : digits);
}

char *
gb_outline_format (const GbOutline *outline)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < outline->n_rings; i++)
    for (guint j = 0; j < outline->rings[i].n; j++)
      {
        if (i > 0 || j > 0)
          g_string_append (text, j == 0 ? "; " : ", ");
        append_number (text, outline->rings[i].points[j].x);
        g_string_append_c (text, ' ');
        append_number (text, outline->rings[i].points[j].y);
      }
  return g_string_free (text, FALSE);
}
