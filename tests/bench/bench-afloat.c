/* SPDX-License-Identifier: GPL-3.0-or-later */

/* How long it takes to cut a body by a plane, against reading the mesh's bytes once: its points and its triangles' corners. The boat is an ellipsoid
 * with a flat top, cut at many attitudes. */

#include "engine/body.h"
#include "engine/mesh-private.h"

/* For about so long is each thing done, in batches of at least so long; seconds. */
#define LONG_ENOUGH 0.3
#define BATCH 0.003

/* A hull-like body of 4 n2 triangles or a little more: half an ellipsoid of 5 x 1.4 x 0.6 m under a deck. */
static GbMesh *
new_boat_mesh (guint n)
{
  g_auto (GbMeshBuilder) builder = { NULL, NULL };
  guint n_round = 2 * n, keel, deck;

  gb_mesh_builder_init (&builder);
  for (guint band = 1; band <= n; band++)
    for (guint i = 0; i < n_round; i++)
      {
        double down = G_PI / 2 * (1 - band / (double) n), round = 2 * G_PI * i / n_round;

        gb_mesh_builder_add_point (&builder, 2.5 * cos (down) * cos (round), 0.7 * cos (down) * sin (round), 0.6 - 0.6 * sin (down));
      }
  keel = gb_mesh_builder_add_point (&builder, 0, 0, 0);
  deck = gb_mesh_builder_add_point (&builder, 0, 0, 0.6);
  for (guint i = 0; i < n_round; i++)
    {
      guint j = (i + 1) % n_round, top = (n - 1) * n_round;

      gb_mesh_builder_add_triangle (&builder, keel, j, i);
      gb_mesh_builder_add_triangle (&builder, deck, top + i, top + j);
      for (guint band = 0; band + 1 < n; band++)
        {
          guint low = band * n_round, high = low + n_round;

          gb_mesh_builder_add_triangle (&builder, low + i, low + j, high + j);
          gb_mesh_builder_add_triangle (&builder, low + i, high + j, high + i);
        }
    }
  return gb_mesh_builder_finish (&builder, 0);
}

static double
seconds_since (gint64 start)
{
  return (double) (g_get_monotonic_time () - start) / 1e6;
}

/* What is timed; @n counts up, so that each may be another. Its sum keeps the compiler from leaving it out. */
typedef double (*Job) (gconstpointer what, guint n);

/* Seconds for one: the fastest of many batches, for other programs run as well. */
static double
time_of (Job job, gconstpointer what)
{
  gint64 start = g_get_monotonic_time ();
  volatile double sink = 0;
  double fastest = INFINITY;
  guint batch = 1;

  do
    {
      gint64 began = g_get_monotonic_time ();
      double each;

      for (guint n = 0; n < batch; n++)
        sink = sink + job (what, n);
      each = seconds_since (began) / batch;
      fastest = fmin (fastest, each);
      if (each * batch < BATCH)
        batch *= 2;
    }
  while (seconds_since (start) < LONG_ENOUGH);
  return fastest;
}

static double
read_once (gconstpointer what, guint n)
{
  const GbMesh *mesh = what;
  const double *numbers = &mesh->points[0].x;
  const guint *corners = &mesh->triangles[0][0];
  double sum = n;
  guint whole = 0;

  for (gsize i = 0; i < (gsize) mesh->n_points * 3; i++)
    sum += numbers[i];
  for (gsize i = 0; i < (gsize) mesh->n_triangles * 3; i++)
    whole += corners[i];
  return sum + whole;
}

/* All angles of heel and some of trim in turn. */
static GbVec3
up_of (guint n)
{
  double heel = 0.1 * (n % 63), trim = 0.005 * (n % 17);

  return (GbVec3){ -sin (trim), sin (heel) * cos (trim), cos (heel) * cos (trim) };
}

static double
cut_body (gconstpointer what, guint n)
{
  GbImmersion in = { .volume = 0 };

  gb_body_immerse (what, FALSE, up_of (n), 0.2 * cos (0.1 * (n % 63)), &in);
  return in.volume;
}

static double
cut_mesh (gconstpointer what, guint n)
{
  return gb_mesh_cut (what, up_of (n), 0.2 * cos (0.1 * (n % 63))).volume;
}

static void
measure_cuts (guint n)
{
  g_autoptr (GbMesh) mesh = new_boat_mesh (n);
  gint64 start = g_get_monotonic_time ();
  g_autoptr (GbBody) body = gb_body_new (mesh);
  double building = seconds_since (start), reading = time_of (read_once, mesh), cutting = time_of (cut_body, body);

  g_print ("%8u triangles: %9.0f cuts/s (%8.1f us), reading the mesh once %8.1f us, ratio %6.3f; through all triangles %8.1f us; "
           "made in %7.2f ms\n",
           mesh->n_triangles, 1 / cutting, cutting * 1e6, reading * 1e6, cutting / reading, time_of (cut_mesh, mesh) * 1e6,
           building * 1e3);
}

int
main (void)
{
  static const guint sizes[] = { 16, 35, 50, 158, 500 };

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    measure_cuts (sizes[i]);
  return 0;
}
