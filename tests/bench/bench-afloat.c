/* SPDX-License-Identifier: GPL-3.0-or-later */

/* How long floating takes: a cut against reading the mesh's bytes once (its points and its triangles'
 * corners), coming to rest, the level curve, the whole righting curve and the crew map. */

#include "../engine/floating-fixture.h"

#include "engine/crew-map.h"
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
        double down = G_PI / 2 * (1 - band / (double)n), round = 2 * G_PI * i / n_round;

        gb_mesh_builder_add_point (&builder, 2.5 * cos (down) * cos (round), 0.7 * cos (down) * sin (round),
                                   0.6 - 0.6 * sin (down));
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
  return (double)(g_get_monotonic_time () - start) / 1e6;
}

/* What is timed; @n counts up, so that each may be another. Its sum keeps the compiler from leaving it out.
 */
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
      if (each * batch >= BATCH)
        fastest = fmin (fastest, each);
      else
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

  for (gsize i = 0; i < (gsize)mesh->n_points * 3; i++)
    sum += numbers[i];
  for (gsize i = 0; i < (gsize)mesh->n_triangles * 3; i++)
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
  double building = seconds_since (start), reading = time_of (read_once, mesh),
         cutting = time_of (cut_body, body);

  g_print ("%8u triangles: %9.0f cuts/s (%8.1f us), reading the mesh once %8.1f us, ratio %6.3f; through all "
           "triangles %8.1f us; "
           "made in %7.2f ms\n",
           mesh->n_triangles, 1 / cutting, cutting * 1e6, reading * 1e6, cutting / reading,
           time_of (cut_mesh, mesh) * 1e6, building * 1e3);
}

/* From one of many attitudes that are some degrees off. */
static double
come_to_rest (gconstpointer what, guint n)
{
  GbAttitude start = gb_attitude (0.3 * sin (n), 0.05 * cos (3 * n), 0.3);

  return gb_floater_rest (what, start, GB_HOLD_NOTHING, NULL, NULL).attitude.height;
}

static void
measure_rest (guint n)
{
  g_autoptr (GbMesh) mesh = new_boat_mesh (n);
  g_autoptr (GbBody) body = gb_body_new (mesh);
  g_autoptr (GbFloater) floater = gb_floater_new (1000);
  double rest;

  gb_floater_add_hull (floater, body, FALSE);
  gb_floater_add_mass (floater, 500, (GbVec3){ 0.1, 0.05, 0.35 });
  rest = time_of (come_to_rest, floater);
  g_print ("%8u triangles: %9.0f equilibria/s (%8.1f us, %u steps from 17 degrees)\n", mesh->n_triangles,
           1 / rest, rest * 1e6,
           gb_floater_rest (floater, gb_attitude (0.3, 0.05, 0.3), GB_HOLD_NOTHING, NULL, NULL).n_steps);
}

/* A boat of about 5,000 triangles, as a builder would enter her: 22 stations of 24 points, and two people in
 * her. */
static double
half_breadth (double x, double z)
{
  return 0.75 * sin (G_PI * (x + 0.4) / 5.4) * (1 - exp (-6 * (z + 0.55))) + 0.05 * (z + 0.5);
}

static Floating
new_boat (void)
{
  Floating f = new_floating ();
  GbPart *part = add_record (f.boat, GB_RECORD_PART, 0);
  GbCondition *condition = add_condition (&f);

  add_analytic_hull (f.boat, 4.8, 0.5, 26, 23, half_breadth);
  part->takeoff = GB_TAKEOFF_LUMP;
  part->mass = 90;
  part->x = 2.2;
  part->z = -0.2;
  add_load (&f, condition, GB_LOAD_PERSON, 80, 1.8, 0.1, 0.1);
  add_load (&f, condition, GB_LOAD_PERSON, 70, 3.1, 0, 0.1);
  find_floating (&f);
  return f;
}

static double
find_flotation (gconstpointer what, guint n)
{
  const Floating *f = what;
  GbFlotation flotation = { 0 };
  double draught;

  gb_flotation_find (&flotation, f->boat, &f->hulls, &f->edges, &f->rollup);
  draught = flotation.afloat.draught;
  gb_flotation_clear (&flotation);
  return draught;
}

static double
find_righting (gconstpointer what, guint n)
{
  g_autoptr (GbRighting) righting = gb_righting_find (what, NULL, NULL);

  return righting->gm;
}

static double
find_afloat (gconstpointer what, guint n)
{
  GbAfloat afloat = { 0 };
  double gm;

  gb_afloat_find (&afloat, what, NULL);
  gm = afloat.gm;
  gb_afloat_clear (&afloat);
  return gm;
}

typedef struct
{
  const GbCase *self;
  gint64 load;
} MapOf;

static double
find_crew_map (gconstpointer what, guint n)
{
  const MapOf *of = what;
  g_autoptr (GbCrewMap) map = gb_crew_map_find (of->self, of->load, NULL, NULL, NULL);

  return map->best_freeboard;
}

static void
measure_boat (void)
{
  g_auto (Floating) f = new_boat ();
  const GbCondition *condition = gb_boat_roots (f.boat, GB_RECORD_CONDITION)->pdata[0];
  const GbLoad *crew = gb_record_children (&condition->rec)->pdata[0];
  g_autoptr (GbCase) self = floating_case (&f, condition->rec.id);
  MapOf map = { self, crew->rec.id };

  g_print ("A boat of %u triangles: level curve and limit %.3f ms, one condition %.3f ms, righting curve "
           "%.1f ms, crew map %.0f ms\n",
           f.hulls.hulls[0].mesh->n_triangles, time_of (find_flotation, &f) * 1e3,
           time_of (find_afloat, self) * 1e3, time_of (find_righting, self) * 1e3,
           time_of (find_crew_map, &map) * 1e3);
}

int
main (void)
{
  static const guint sizes[] = { 16, 35, 50, 158, 500 };

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    measure_cuts (sizes[i]);
  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    measure_rest (sizes[i]);
  measure_boat ();
  return 0;
}
