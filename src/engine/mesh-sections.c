/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-mesh-sections"

/* The closed mesh through a row of cross-sections.
 *
 * Only the port half is built: points come in twos, one to port and its mirror, and each triangle brings its
 * mirror with it. The halves are joined straight across at keel, deck and ends; on the centreline that is a
 * strip without width, and no case of its own (a skeg drawn on it has two faces). Four points that do not lie
 * in a plane get a fifth in their middle: the four triangles round it hold exactly what the ruled surface
 * does, as the trapezium rule has it, with no bias from the choice of a diagonal. */

#include "hull-private.h"
#include "mesh-private.h"

/* Port points have even numbers. */
static guint
add_point (GbMeshBuilder *builder, double x, double y, double z)
{
  guint port = gb_mesh_builder_add_point (builder, x, y, z);

  gb_mesh_builder_add_point (builder, x, -y, z);
  return port;
}

static guint
mirror_of (guint i)
{
  return i ^ 1;
}

static void
add_both (GbMeshBuilder *builder, guint i, guint j, guint k)
{
  gb_mesh_builder_add_triangle (builder, i, j, k);
  gb_mesh_builder_add_triangle (builder, mirror_of (i), mirror_of (k), mirror_of (j));
}

static void
add_patch (GbMeshBuilder *builder, const guint corners[4])
{
  GbVec3 p[4], a, b, c;
  guint middle;

  for (guint i = 0; i < 4; i++)
    p[i] = gb_mesh_builder_point (builder, corners[i]);
  a = vec3_sub (p[1], p[0]);
  b = vec3_sub (p[2], p[0]);
  c = vec3_sub (p[3], p[0]);
  if (fabs (vec3_dot (a, vec3_cross (b, c))) <= 1e-12 * vec3_length (a) * vec3_length (b) * vec3_length (c))
    {
      add_both (builder, corners[0], corners[1], corners[2]);
      add_both (builder, corners[0], corners[2], corners[3]);
      return;
    }
  middle = add_point (builder, (p[0].x + p[1].x + p[2].x + p[3].x) / 4,
                      (p[0].y + p[1].y + p[2].y + p[3].y) / 4, (p[0].z + p[1].z + p[2].z + p[3].z) / 4);
  for (guint i = 0; i < 4; i++)
    add_both (builder, corners[i], corners[(i + 1) % 4], middle);
}

/* How far along the section each point is, 0 at the keel and 1 at the sheer. */
static double *
girth_shares (const GbCrossSection *section)
{
  double *shares = g_new0 (double, section->n);
  guint last = section->n - 1;

  for (guint k = 1; k <= last; k++)
    shares[k] = shares[k - 1]
                + hypot (section->points[k].y - section->points[k - 1].y,
                         section->points[k].z - section->points[k - 1].z);
  for (guint k = 1; k <= last; k++)
    shares[k] = shares[last] > 0 && k < last ? shares[k] / shares[last] : k / (double) last;
  return shares;
}

static double
next_share (const double *shares, guint n, guint k)
{
  return k + 1 < n ? shares[k + 1] : INFINITY;
}

GArray *
gb_section_joins (const GbCrossSection *a, const GbCrossSection *b)
{
  GArray *joins = g_array_sized_new (FALSE, FALSE, sizeof (GbJoin), a->n + b->n);
  g_autofree double *shares_a = girth_shares (a);
  g_autofree double *shares_b = girth_shares (b);
  GbJoin join = { 0, 0 };

  g_array_append_val (joins, join);
  while (join.a + 1 < a->n || join.b + 1 < b->n)
    {
      double ahead
          = a->n == b->n ? 0 : next_share (shares_a, a->n, join.a) - next_share (shares_b, b->n, join.b);

      join.a += ahead <= 1e-9;
      join.b += ahead >= -1e-9;
      g_array_append_val (joins, join);
    }
  return joins;
}

/* Returns the number of its keel point; the port points follow by twos. */
static guint
add_section (GbMeshBuilder *builder, const GbCrossSection *section)
{
  guint keel = builder->points->len;

  for (guint k = 0; k < section->n; k++)
    add_point (builder, section->x, section->points[k].y, section->points[k].z);
  return keel;
}

/* The side between two neighbours, @aft and @fore their keel points. */
static void
add_side (GbMeshBuilder *builder, const GArray *joins, guint aft, guint fore)
{
  for (guint k = 1; k < joins->len; k++)
    {
      GbJoin low = g_array_index (joins, GbJoin, k - 1), high = g_array_index (joins, GbJoin, k);
      guint aft_low = aft + 2 * low.a, aft_high = aft + 2 * high.a;
      guint fore_low = fore + 2 * low.b, fore_high = fore + 2 * high.b;

      if (aft_high > aft_low && fore_high > fore_low)
        add_patch (builder, (guint[]){ aft_low, aft_high, fore_high, fore_low });
      else if (aft_high > aft_low)
        add_both (builder, aft_low, aft_high, fore_low);
      else
        add_both (builder, aft_low, fore_high, fore_low);
    }
}

/* Straight across from @aft and @fore to their mirrors; facing down, or up if they are given the other way
 * round. */
static void
add_across (GbMeshBuilder *builder, guint aft, guint fore)
{
  guint mirror_aft = mirror_of (aft), mirror_fore = mirror_of (fore);

  gb_mesh_builder_add_triangle (builder, aft, fore, mirror_fore);
  gb_mesh_builder_add_triangle (builder, aft, mirror_fore, mirror_aft);
}

/* The whole section at the first or last station, facing aft or forward. */
static void
add_end (GbMeshBuilder *builder, guint keel, guint n, gboolean forward)
{
  g_autofree guint *corners = g_new (guint, 2 * n);

  for (guint k = 0; k < n; k++)
    {
      corners[k] = forward ? keel + 2 * k : mirror_of (keel + 2 * k);
      corners[2 * n - 1 - k] = mirror_of (corners[k]);
    }
  gb_mesh_builder_add_face (builder, corners, 2 * n);
}

GbMesh *
gb_mesh_from_sections (const GArray *sections, gboolean open)
{
  const GbCrossSection *s = (const GbCrossSection *) sections->data;
  guint last = sections->len - 1, n_before;
  g_autofree guint *keels = g_new (guint, sections->len);
  g_auto (GbMeshBuilder) builder = { NULL, NULL };

  gb_mesh_builder_init (&builder);
  for (guint i = 0; i <= last; i++)
    keels[i] = add_section (&builder, &s[i]);
  add_end (&builder, keels[0], s[0].n, FALSE);
  add_end (&builder, keels[last], s[last].n, TRUE);
  for (guint i = 0; i < last; i++)
    {
      g_autoptr (GArray) joins = gb_section_joins (&s[i], &s[i + 1]);

      add_side (&builder, joins, keels[i], keels[i + 1]);
      add_across (&builder, keels[i], keels[i + 1]);
    }
  n_before = builder.triangles->len;
  for (guint i = 0; i < last; i++)
    add_across (&builder, keels[i + 1] + 2 * (s[i + 1].n - 1), keels[i] + 2 * (s[i].n - 1));
  return gb_mesh_builder_finish (&builder, open ? builder.triangles->len - n_before : 0);
}

GArray *
gb_sections_edge (const GArray *sections)
{
  GArray *edge = g_array_new (FALSE, FALSE, sizeof (GbVec3));
  GbVec3 first;

  for (guint i = 0; i < 2 * sections->len; i++)
    {
      gboolean port = i < sections->len;
      const GbCrossSection *section
          = &g_array_index (sections, GbCrossSection, port ? i : 2 * sections->len - 1 - i);
      GbSectionPoint sheer = section->points[section->n - 1];
      GbVec3 point = { section->x, port ? sheer.y : -sheer.y, sheer.z };

      if (port || sheer.y != 0)
        g_array_append_val (edge, point);
    }
  /* Through a copy: the array may move while it grows. */
  first = g_array_index (edge, GbVec3, 0);
  g_array_append_val (edge, first);
  return edge;
}
