/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "level-lines.h"

#include <math.h>

/* A line across a triangle, from one of its edges to another; edges are known by their ends. All run with
 * what is higher at the same hand, so the end of one is the start of the next. */
typedef struct
{
  guint64 from, to;
  GbVec3 a, b;
  gboolean used;
} Link;

static guint64
edge_key (guint i, guint j)
{
  return i < j ? (guint64)i << 32 | j : (guint64)j << 32 | i;
}

/* Always reckoned from the same end, so that both triangles of an edge find the same point. */
static GbVec3
point_between (const GbNet *net, guint i, guint j, double level)
{
  guint a = MIN (i, j), b = MAX (i, j);
  GbVec3 p = net->points[a], q = net->points[b];
  double share = (level - net->values[a]) / (net->values[b] - net->values[a]);

  return (GbVec3){ p.x + share * (q.x - p.x), p.y + share * (q.y - p.y), p.z + share * (q.z - p.z) };
}

/* With three corners, and a value at each. */
static gboolean
is_known (const GbNet *net, guint t)
{
  const guint *corners = net->triangles[t];

  for (guint k = 0; k < 3; k++)
    if (corners[k] == corners[(k + 1) % 3] || !isfinite (net->values[corners[k]]))
      return FALSE;
  return TRUE;
}

static gboolean
cross_triangle (const GbNet *net, guint t, double level, Link *link)
{
  const guint *corners = net->triangles[t];
  guint n = 0;

  if (!is_known (net, t))
    return FALSE;
  for (guint k = 0; k < 3; k++)
    {
      guint i = corners[k], j = corners[(k + 1) % 3];
      gboolean first = net->values[i] >= level, second = net->values[j] >= level;

      if (first == second)
        continue;
      n++;
      if (first)
        {
          link->from = edge_key (i, j);
          link->a = point_between (net, i, j, level);
        }
      else
        {
          link->to = edge_key (i, j);
          link->b = point_between (net, i, j, level);
        }
    }
  link->used = FALSE;
  return n == 2;
}

static GArray *
find_links (const GbNet *net, double level)
{
  GArray *links = g_array_new (FALSE, FALSE, sizeof (Link));
  Link link = { 0 };

  for (guint t = 0; t < net->n_triangles; t++)
    if (cross_triangle (net, t, level, &link))
      g_array_append_val (links, link);
  return links;
}

static GArray *
follow (GHashTable *by_start, Link *link)
{
  GArray *line = g_array_new (FALSE, FALSE, sizeof (GbVec3));

  g_array_append_val (line, link->a);
  for (; link != NULL && !link->used; link = g_hash_table_lookup (by_start, &link->to))
    {
      link->used = TRUE;
      g_array_append_val (line, link->b);
    }
  return line;
}

GPtrArray *
gb_level_lines (const GbNet *net, double level)
{
  g_autoptr (GArray) links = find_links (net, level);
  g_autoptr (GHashTable) by_start = g_hash_table_new (g_int64_hash, g_int64_equal);
  g_autoptr (GHashTable) ends = g_hash_table_new (g_int64_hash, g_int64_equal);
  GPtrArray *lines = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);

  for (guint i = 0; i < links->len; i++)
    {
      Link *link = &g_array_index (links, Link, i);

      g_hash_table_insert (by_start, &link->from, link);
      g_hash_table_add (ends, &link->to);
    }
  /* Those that nothing leads to are the starts of open lines; what is left then goes round. */
  for (guint open = 0; open < 2; open++)
    for (guint i = 0; i < links->len; i++)
      {
        Link *link = &g_array_index (links, Link, i);

        if (!link->used && (open == 1 || !g_hash_table_contains (ends, &link->from)))
          g_ptr_array_add (lines, follow (by_start, link));
      }
  return lines;
}

/* Cuts what is under @level off (@sign 1), or what is above it (-1). */
static guint
cut_off (GbVec3 *corners, double *values, guint n, double level, double sign)
{
  GbVec3 kept[GB_MOST_CORNERS + 1];
  double kept_values[GB_MOST_CORNERS + 1];
  guint n_kept = 0;

  for (guint k = 0; k < n; k++)
    {
      guint next = (k + 1) % n;
      double here = sign * (values[k] - level), there = sign * (values[next] - level);
      double share = here / (here - there);
      GbVec3 p = corners[k], q = corners[next];

      if (here >= 0 && n_kept < G_N_ELEMENTS (kept))
        {
          kept[n_kept] = p;
          kept_values[n_kept++] = values[k];
        }
      if ((here >= 0) == (there >= 0) || n_kept >= G_N_ELEMENTS (kept))
        continue;
      kept[n_kept]
          = (GbVec3){ p.x + share * (q.x - p.x), p.y + share * (q.y - p.y), p.z + share * (q.z - p.z) };
      kept_values[n_kept++] = level;
    }
  n_kept = MIN (n_kept, GB_MOST_CORNERS);
  for (guint k = 0; k < n_kept; k++)
    {
      corners[k] = kept[k];
      values[k] = kept_values[k];
    }
  return n_kept;
}

guint
gb_level_part (const GbNet *net, guint t, double lo, double hi, GbVec3 corners[GB_MOST_CORNERS])
{
  double values[GB_MOST_CORNERS];
  guint n = 3;

  if (!is_known (net, t))
    return 0;
  for (guint k = 0; k < 3; k++)
    {
      corners[k] = net->points[net->triangles[t][k]];
      values[k] = net->values[net->triangles[t][k]];
    }
  if (lo > -INFINITY)
    n = cut_off (corners, values, n, lo, 1);
  if (n > 0 && hi < INFINITY)
    n = cut_off (corners, values, n, hi, -1);
  return n;
}
