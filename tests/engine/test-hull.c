/* SPDX-License-Identifier: GPL-3.0-or-later */

/* From hull records to closed meshes: volumes against closed forms, edges, pairs, and a sentence for each
 * hull that cannot be. */

#include "hull-fixture.h"

#include "engine/body.h"

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (GbHullSet, gb_hull_set_clear)

static const GbMesh *
sound_mesh (const GbHullSet *set, guint i)
{
  const GbHullShape *shape = &set->hulls[i];

  if (shape->trouble != NULL)
    g_error ("%s", shape->trouble);
  g_assert_nonnull (shape->mesh);
  g_assert_true (gb_mesh_is_closed (shape->mesh));
  if (shape->mirrored != NULL)
    g_assert_true (gb_mesh_is_closed (shape->mirrored));
  return shape->mesh;
}

static double
volume_below (const GbMesh *mesh, double z)
{
  return gb_mesh_cut (mesh, (GbVec3){ 0, 0, 1 }, z).volume;
}

static void
test_box_by_stations (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_auto (GbHullSet) set = { NULL, 0 };
  GbHull *hull = add_hull (boat, GB_HULL_STATIONS);
  const GbMesh *mesh;
  const GArray *edge;
  GbCut whole;

  /* Entered forward end first, moved about. */
  ADD_STATION (boat, hull, 3, 0.5, 0, 0.5, 0.4);
  ADD_STATION (boat, hull, 0, 0.5, 0, 0.5, 0.4);
  hull->x = 10;
  hull->y = 0.25;
  hull->z = -0.1;
  find_hulls (&set, boat);
  g_assert_cmpuint (set.n_hulls, ==, 1);
  g_assert_cmpint (set.hulls[0].id, ==, hull->rec.id);
  mesh = sound_mesh (&set, 0);

  whole = gb_mesh_whole (mesh);
  assert_near (whole.volume, 3 * 1 * 0.4, 1e-14);
  assert_near (whole.centre.x, 11.5, 1e-14);
  assert_near (whole.centre.y, 0.25, 1e-14);
  assert_near (whole.centre.z, 0.1, 1e-14);
  assert_near (whole.area, 2 * (3 + 1.2 + 0.4), 1e-14);
  assert_near (set.hulls[0].keel, -0.1, 1e-15);
  assert_near (set.hulls[0].lowest_edge, 0.3, 1e-15);

  /* An open hull has no skin across its top. */
  assert_near (gb_mesh_surface (mesh, -INFINITY, INFINITY).area, 3 + 2 * (1.2 + 0.4), 1e-14);
  g_assert_cmpuint (set.hulls[0].edges->len, ==, 1);
  edge = set.hulls[0].edges->pdata[0];
  g_assert_cmpuint (edge->len, ==, 5);
  assert_near (g_array_index (edge, GbVec3, 0).x, 10, 0);
  assert_near (g_array_index (edge, GbVec3, 4).x, 10, 0);
  assert_near (g_array_index (edge, GbVec3, 1).y, 0.75, 1e-15);
  assert_near (g_array_index (edge, GbVec3, 2).y, -0.25, 1e-15);

  hull->edge = GB_EDGE_CLOSED;
  find_hulls (&set, boat);
  assert_near (gb_mesh_surface (sound_mesh (&set, 0), -INFINITY, INFINITY).area, 2 * (3 + 1.2 + 0.4), 1e-14);
  g_assert_cmpuint (set.hulls[0].edges->len, ==, 0);
  g_assert_true (isnan (set.hulls[0].lowest_edge));
}

static void
test_wedge_and_pyramid_by_stations (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_auto (GbHullSet) set = { NULL, 0 };
  GbHull *wedge = add_hull (boat, GB_HULL_STATIONS);
  GbHull *pyramid = add_hull (boat, GB_HULL_STATIONS);
  GbHull *gable = add_hull (boat, GB_HULL_STATIONS);
  GbCut cut;

  /* Sharp keel, sharp stem; a point at the end; a level line at the end. */
  ADD_STATION (boat, wedge, 0, 0, 0, 0.6, 0.5);
  ADD_STATION (boat, wedge, 4, 0, 0, 0, 0.5);
  ADD_STATION (boat, pyramid, 0, 0.5, 0, 0.5, 1);
  ADD_STATION (boat, pyramid, 3, 0, 0.5, 0, 0.5);
  ADD_STATION (boat, gable, 0, 0.5, 0, 0.5, 1);
  ADD_STATION (boat, gable, 3, 0.5, 1, 0.5, 1);
  find_hulls (&set, boat);

  /* Its sections are triangles whose width dwindles to nothing: a quarter of 4 x 1.2 x 0.5. */
  assert_near (gb_mesh_whole (sound_mesh (&set, 0)).volume, 4 * 1.2 * 0.5 / 4, 1e-14);
  cut = gb_mesh_cut (set.hulls[0].mesh, (GbVec3){ 0, 0, 1 }, 0.25);
  assert_near (cut.plane_y, 0, 1e-15);
  assert_near (gb_mesh_whole (sound_mesh (&set, 1)).volume, 1.0, 1e-14);
  assert_near (gb_mesh_whole (set.hulls[1].mesh).centre.x, 0.75, 1e-14);
  assert_near (gb_mesh_whole (sound_mesh (&set, 2)).volume, 1.5, 1e-14);
}

/* A skeg without thickness, a chine that ends before the bow, a section that is pinched, a point entered
 * twice. */
static void
test_odd_sections_close (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_auto (GbHullSet) set = { NULL, 0 };
  GbHull *skeg = add_hull (boat, GB_HULL_STATIONS);
  GbHull *chine = add_hull (boat, GB_HULL_STATIONS);
  GbHull *pinched = add_hull (boat, GB_HULL_STATIONS);
  GbHull *tunnel = add_hull (boat, GB_HULL_STATIONS);

  ADD_STATION (boat, skeg, 0, 0, 0, 0, 0.1, 0, 0.2, 0.5, 0.6);
  ADD_STATION (boat, skeg, 1, 0, 0, 0, 0.2, 0, 0.3, 0.5, 0.6);
  ADD_STATION (boat, skeg, 2, 0, 0.1, 0.2, 0.2, 0.4, 0.2, 0.5, 0.6);

  ADD_STATION (boat, chine, 0, 0, 0, 0.3, 0.05, 0.45, 0.2, 0.5, 0.4);
  ADD_STATION (boat, chine, 1, 0, 0, 0.3, 0.05, 0.3, 0.05, 0.4, 0.4);
  ADD_STATION (boat, chine, 2, 0, 0.1, 0.1, 0.2, 0.2, 0.5);
  ADD_STATION (boat, chine, 2.5, 0, 0.2, 0, 0.55);

  ADD_STATION (boat, pinched, 0, 0.2, 0, 0, 0.2, 0.3, 0.4);
  ADD_STATION (boat, pinched, 1, 0.2, 0, 0, 0.2, 0.3, 0.4);

  /* The keel line above the turn of the bilge. */
  ADD_STATION (boat, tunnel, 0, 0, 0.3, 0.2, 0.3, 0.3, 0, 0.5, 0, 0.6, 0.4);
  ADD_STATION (boat, tunnel, 2, 0, 0.3, 0.2, 0.3, 0.3, 0, 0.5, 0, 0.6, 0.4);

  find_hulls (&set, boat);
  for (guint i = 0; i < set.n_hulls; i++)
    {
      const GbMesh *mesh = sound_mesh (&set, i);
      GbCut whole = gb_mesh_whole (mesh);

      g_assert_cmpfloat (whole.volume, >, 0);
      assert_near (whole.centre.y, 0, 1e-14);
      /* From both sides. */
      for (double z = 0.05; z < 0.6; z += 0.07)
        assert_near (volume_below (mesh, z) + gb_mesh_cut (mesh, (GbVec3){ 0, 0, -1 }, -z).volume,
                     whole.volume, 1e-14);
    }
  /* Two triangles of 0.4 x 0.2 / 2 and 0.6 x 0.2 / 2. */
  assert_near (gb_mesh_whole (set.hulls[2].mesh).volume, 0.1, 1e-14);
  /* The half section by its corners: (0, 0.3), (0.2, 0.3), (0.3, 0), (0.5, 0), (0.6, 0.4),
   * (0, 0.4): 0.145. */
  assert_near (gb_mesh_whole (set.hulls[3].mesh).volume, 2 * 2 * 0.145, 1e-14);
  /* Its ends are not counted twice where the section turns back: ends, sides by girth, no deck. */
  assert_near (gb_mesh_surface (set.hulls[3].mesh, -INFINITY, INFINITY).area,
               4 * 0.145 + 4 * (0.2 + hypot (0.1, 0.3) + 0.2 + hypot (0.1, 0.4)), 1e-13);
}

/* Points stay on their own line: equal numbers are joined by number, others by girth. */
static void
test_joins_of_unlike_sections (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_auto (GbHullSet) set = { NULL, 0 };
  GbHull *plain = add_hull (boat, GB_HULL_STATIONS);
  GbHull *more = add_hull (boat, GB_HULL_STATIONS);

  /* The same wall-sided hull, once with further points on its straight lines. */
  ADD_STATION (boat, plain, 0, 0, 0, 0.4, 0, 0.4, 0.4);
  ADD_STATION (boat, plain, 2, 0, 0, 0.4, 0, 0.4, 0.4);
  ADD_STATION (boat, more, 0, 0, 0, 0.4, 0, 0.4, 0.4);
  ADD_STATION (boat, more, 2, 0, 0, 0.1, 0, 0.4, 0, 0.4, 0.1, 0.4, 0.3, 0.4, 0.4);
  find_hulls (&set, boat);
  assert_near (gb_mesh_whole (sound_mesh (&set, 0)).volume, 0.64, 1e-14);
  assert_near (gb_mesh_whole (sound_mesh (&set, 1)).volume, 0.64, 1e-14);
  assert_near (volume_below (set.hulls[1].mesh, 0.15), 0.24, 1e-14);
}

static void
test_block (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_auto (GbHullSet) set = { NULL, 0 };
  GbHull *raked, *tapered, *both, *v;
  GbSurface skin;

  add_block (boat, 4, 1, 0.5);
  raked = add_block (boat, 4, 1, 0.5);
  raked->rake_aft = 0.3;
  raked->rake_fore = 1.2;
  tapered = add_block (boat, 4, 1, 0.5);
  tapered->width_aft = 0.6;
  tapered->width_fore = 0;
  both = add_block (boat, 4, 1, 0.5);
  both->rake_aft = 0.3;
  both->rake_fore = 1.2;
  both->width_fore = 0.4;
  v = add_block (boat, 4, 1, 0.5);
  v->rake_aft = 3;
  v->rake_fore = 1;
  find_hulls (&set, boat);

  assert_near (gb_mesh_whole (sound_mesh (&set, 0)).volume, 2, 1e-14);
  skin = gb_mesh_surface (set.hulls[0].mesh, -INFINITY, INFINITY);
  assert_near (skin.area, 4 + 2 * 2 + 2 * 0.5, 1e-14);
  assert_near (set.hulls[0].lowest_edge, 0.5, 1e-15);

  /* Side area is a trapezium of (4 + 2.5)/2 x 0.5. */
  assert_near (gb_mesh_whole (sound_mesh (&set, 1)).volume, 3.25 * 0.5, 1e-14);
  assert_near (gb_mesh_surface (set.hulls[1].mesh, -INFINITY, INFINITY).area,
               2.5 + hypot (0.3, 0.5) + hypot (1.2, 0.5) + 2 * 3.25 * 0.5, 1e-13);

  /* Plan area: trapezium aft, triangle forward. */
  assert_near (gb_mesh_whole (sound_mesh (&set, 2)).volume, 0.5 * (2 * 0.8 + 2 * 0.5), 1e-14);

  /* The plan is 1 wide aft of amidships, and forward 1 - 0.3 t with t metres from there. What the rakes take
   * off is a triangle in side view: aft 0.3 x 0.5/2 at full width; forward the integral of 0.5 (t - 0.8)/1.2
   * (1 - 0.3 t) from 0.8 to 2. */
  assert_near (gb_mesh_whole (sound_mesh (&set, 3)).volume,
               0.5 * (2 + 2 * 0.7) - 0.075 - 0.5 / 1.2 * (0.76 * 0.72 - 0.3 * 0.576), 1e-14);

  assert_near (gb_mesh_whole (sound_mesh (&set, 4)).volume, 1, 1e-14);
}

static void
test_pipe (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_auto (GbHullSet) set = { NULL, 0 };
  GbHull *pipe = add_hull (boat, GB_HULL_PIPE);
  double r = 0.15, l = 3, area = G_PI * r * r;
  GbCut half, quarter;

  pipe->length = l;
  pipe->diameter = 2 * r;
  pipe->pair = TRUE;
  pipe->y = 0.8;
  find_hulls (&set, boat);
  /* Its volume is exact; a pipe has no open edge, whatever is said of it. */
  assert_near (gb_mesh_whole (sound_mesh (&set, 0)).volume, area * l, 1e-14);
  g_assert_cmpuint (set.hulls[0].edges->len, ==, 0);
  assert_near (gb_mesh_whole (set.hulls[0].mesh).area, 2 * G_PI * r * l + 2 * area, 3e-4 * 2 * G_PI * r * l);
  assert_near (gb_mesh_whole (set.hulls[0].mirrored).centre.y, -0.8, 1e-14);

  /* Half under: volume L pi r^2/2, centre 4r/(3 pi) below the axis, waterplane 2 r L. */
  half = gb_mesh_cut (set.hulls[0].mesh, (GbVec3){ 0, 0, 1 }, r);
  assert_near (half.volume, area * l / 2, 1e-12);
  assert_near (half.centre.z, r - 4 * r / (3 * G_PI), 1e-4 * r);
  assert_near (half.waterplane, 2 * r * l, 4e-4 * 2 * r * l);

  /* A segment: r^2 (acos (h/r) - (h/r) sqrt (1 - (h/r)^2)) with h = r/2. */
  quarter = gb_mesh_cut (set.hulls[0].mesh, (GbVec3){ 0, 0, 1 }, r / 2);
  assert_near (quarter.volume, l * r * r * (acos (0.5) - 0.5 * sqrt (0.75)), 1e-4 * area * l);
}

static void
test_prism (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_auto (GbHullSet) set = { NULL, 0 };
  /* An L, once each way round. */
  static const char *const plans[] = { "0 0, 2 0, 2 1, 1 1, 1 3, 0 3", "0 3, 1 3, 1 1, 2 1, 2 0, 0 0" };

  for (guint i = 0; i < 2; i++)
    {
      GbHull *prism = add_hull (boat, GB_HULL_PRISM);

      prism->outline = g_strdup (plans[i]);
      prism->height = 0.5;
      prism->z = 1;
    }
  find_hulls (&set, boat);
  for (guint i = 0; i < 2; i++)
    {
      const GbMesh *mesh = sound_mesh (&set, i);
      GbCut whole = gb_mesh_whole (mesh);

      assert_near (whole.volume, 2, 1e-14);
      assert_near (whole.centre.x, (2 * 1 + 2 * 0.5) / 4, 1e-14);
      assert_near (whole.centre.y, (2 * 0.5 + 2 * 2) / 4, 1e-14);
      assert_near (gb_mesh_surface (mesh, -INFINITY, INFINITY).area, 4 + 10 * 0.5, 1e-14);
      assert_near (volume_below (mesh, 1.2), 0.8, 1e-14);
      assert_near (set.hulls[i].lowest_edge, 1.5, 1e-15);
      g_assert_cmpuint (((GArray *)set.hulls[i].edges->pdata[0])->len, ==, 7);
    }
}

static void
test_pairs (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_auto (GbHullSet) set = { NULL, 0 };
  GbHull *hull = add_block (boat, 4, 0.4, 0.4);
  const GArray *edge;

  hull->pair = TRUE;
  hull->y = 1;
  find_hulls (&set, boat);
  sound_mesh (&set, 0);
  g_assert_nonnull (set.hulls[0].mirrored);
  assert_near (gb_mesh_whole (set.hulls[0].mirrored).volume, 0.64, 1e-14);
  assert_near (gb_mesh_whole (set.hulls[0].mirrored).centre.y, -1, 1e-14);
  g_assert_cmpuint (set.hulls[0].edges->len, ==, 2);
  edge = set.hulls[0].edges->pdata[1];
  g_assert_cmpfloat (g_array_index (edge, GbVec3, 0).y, <, 0);

  /* Side by side they touch, and may. */
  hull->y = 0.2;
  find_hulls (&set, boat);
  sound_mesh (&set, 0);
  hull->y = 0.1;
  find_hulls (&set, boat);
  g_assert_nonnull (strstr (set.hulls[0].trouble, "overlap"));
  g_assert_null (set.hulls[0].mesh);
}

/* Each hull that cannot be has its sentence; the others are found all the same. */
static void
assert_trouble (GbBoat *boat, const char *words)
{
  g_auto (GbHullSet) set = { NULL, 0 };

  find_hulls (&set, boat);
  g_assert_cmpuint (set.n_hulls, ==, 2);
  sound_mesh (&set, 0);
  g_test_message ("expecting: %s", words);
  g_assert_null (set.hulls[1].mesh);
  g_assert_nonnull (set.hulls[1].trouble);
  if (strstr (set.hulls[1].trouble, words) == NULL)
    g_error ("\"%s\" does not say \"%s\"", set.hulls[1].trouble, words);
  g_assert_true (isnan (set.hulls[1].keel));
  g_assert_true (isnan (set.hulls[1].lowest_edge));
  g_assert_cmpuint (set.hulls[1].edges->len, ==, 0);
}

static GbBoat *
boat_with_a_block (void)
{
  GbBoat *boat = gb_boat_new ();

  add_block (boat, 2, 1, 0.5);
  return boat;
}

typedef struct
{
  const char *words;
  double x[3];
  guint n[3];
  double yz[3][8];
} BadStations;

static void
test_bad_stations (void)
{
  static const BadStations cases[] = {
    { "at least two stations", { 0 }, { 0 }, { { 0 } } },
    { "at least two stations", { 1 }, { 2 }, { { 0, 0, 0.5, 0.5 } } },
    { "no x", { NAN, 1 }, { 2, 2 }, { { 0, 0, 0.5, 0.5 }, { 0, 0, 0.5, 0.5 } } },
    { "fewer than two points", { 0, 1 }, { 2, 1 }, { { 0, 0, 0.5, 0.5 }, { 0, 0 } } },
    { "fewer than two points", { 0, 1 }, { 2, 0 }, { { 0, 0, 0.5, 0.5 }, { 0 } } },
    { "lacks its y or z", { 0, 1 }, { 2, 2 }, { { 0, 0, 0.5, 0.5 }, { 0, 0, NAN, 0.5 } } },
    { "over the centreline", { 0, 1 }, { 2, 2 }, { { 0, 0, 0.5, 0.5 }, { -0.1, 0, 0.5, 0.5 } } },
    { "runs downwards", { 0, 1 }, { 2, 2 }, { { 0, 0, 0.5, 0.5 }, { 0.5, 0.5, 0, 0 } } },
    { "crosses itself", { 0, 1 }, { 4, 2 }, { { 0, 0, 0.5, 0.4, 0.5, 0.1, 0.1, 0.5 }, { 0, 0, 0.5, 0.5 } } },
    /* It meets the deck that goes straight across from its sheer. */
    { "crosses itself", { 0, 1 }, { 4, 2 }, { { 0, 0, 0.2, 0.6, 0.5, 0.2, 0.5, 0.5 }, { 0, 0, 0.5, 0.5 } } },
    /* It goes back the way it came. */
    { "crosses itself", { 0, 1 }, { 4, 2 }, { { 0, 0, 0.5, 0, 0.2, 0, 0.2, 0.5 }, { 0, 0, 0.5, 0.5 } } },
    { "same x", { 1, 0, 1 }, { 2, 2, 2 }, { { 0, 0, 0.5, 0.5 }, { 0, 0, 0.5, 0.5 }, { 0, 0, 0.4, 0.5 } } },
    /* Each section is sound, but the points of one go another way about. */
    { "between the stations",
      { 0, 1 },
      { 4, 4 },
      { { 0, 0, 0.6, 0.1, 0.1, 0.2, 0.1, 0.5 }, { 0, 0, 0.1, 0.4, 0.6, 0.1, 0.4, 0.5 } } },
    { "encloses nothing", { 0, 1 }, { 2, 2 }, { { 0, 0, 0, 0.5 }, { 0, 0, 0, 0.5 } } },
    { "encloses nothing", { 0, 1 }, { 2, 2 }, { { 0, 0.5, 0.4, 0.5 }, { 0, 0.5, 0.4, 0.5 } } },
  };

  for (guint c = 0; c < G_N_ELEMENTS (cases); c++)
    {
      g_autoptr (GbBoat) boat = boat_with_a_block ();
      GbHull *hull = add_hull (boat, GB_HULL_STATIONS);
      guint n = c == 0 ? 0 : c == 1 ? 1 : cases[c].n[2] > 0 ? 3 : 2;

      for (guint i = 0; i < n; i++)
        add_station (boat, hull, cases[c].x[i], cases[c].yz[i], cases[c].n[i]);
      assert_trouble (boat, cases[c].words);
    }
}

static void
test_too_many_points (void)
{
  g_autoptr (GbBoat) boat = boat_with_a_block ();
  GbHull *hull = add_hull (boat, GB_HULL_STATIONS);
  g_autofree double *yz = g_new0 (double, 2 * 2001);

  for (guint k = 0; k < 2001; k++)
    yz[2 * k + 1] = yz[2 * k] = k * 1e-3;
  add_station (boat, hull, 0, yz, 2001);
  add_station (boat, hull, 1, yz, 2001);
  assert_trouble (boat, "too many points");
}

static void
test_bad_bodies (void)
{
  g_autoptr (GbBoat) boat = boat_with_a_block ();
  GbHull *hull = add_hull (boat, GB_HULL_BLOCK);

  assert_trouble (boat, "length, a width and a height");
  hull->length = hull->width = 1;
  hull->height = -1;
  assert_trouble (boat, "length, a width and a height");
  hull->height = 0.5;
  hull->rake_aft = hull->rake_fore = 0.6;
  assert_trouble (boat, "longer than the block");
  hull->rake_aft = -0.1;
  assert_trouble (boat, "never below zero");
  hull->rake_aft = 0.1;
  hull->x = NAN;
  assert_trouble (boat, "no place");
  hull->x = 0;

  hull->form = GB_HULL_PIPE;
  assert_trouble (boat, "length and a diameter");

  hull->form = GB_HULL_PRISM;
  assert_trouble (boat, "outline and a height");
  hull->outline = g_strdup ("0 0, 1 0, 1 1; 0.5 0.2, 0.6 0.2, 0.6 0.3");
  assert_trouble (boat, "no holes");
  g_free (hull->outline);
  hull->outline = g_strdup ("0 0, 1 1, 1 0, 0 1");
  assert_trouble (boat, "");
}

static void
test_too_large (void)
{
  g_autoptr (GbBoat) boat = boat_with_a_block ();
  GbHull *hull = add_block (boat, 1e150, 1e150, 1e150);

  assert_trouble (boat, "too large");
  hull->z = 1e300;
  assert_trouble (boat, "too large");
}

/* A metre entered as a kilometre: the stray one is told, and the boat is found without it. */
static void
test_far_apart (void)
{
  g_autoptr (GbBoat) boat = boat_with_a_block ();
  g_auto (GbHullSet) set = { NULL, 0 };
  GbHull *stray = add_block (boat, 0.5, 0.5, 0.5);

  stray->y = 6.7;
  find_hulls (&set, boat);
  sound_mesh (&set, 1);
  stray->y = 6.8; /* 6.05 m from the other's side, and that one is 2 m long */
  assert_trouble (boat, "far away from the rest");
  stray->y = 0;
  stray->z = -1000;
  assert_trouble (boat, "far away from the rest");
  /* In a row each is within reach of the next. */
  add_block (boat, 1, 1, 1)->z = -4;
  stray->z = -9;
  find_hulls (&set, boat);
  g_assert_cmpuint (set.n_hulls, ==, 3);
  sound_mesh (&set, 1);
}

static void
test_pair_far_apart (void)
{
  g_autoptr (GbBoat) boat = boat_with_a_block ();
  g_auto (GbHullSet) set = { NULL, 0 };
  GbHull *pair = add_block (boat, 2, 0.4, 0.4);

  pair->pair = TRUE;
  pair->y = 2;
  find_hulls (&set, boat);
  sound_mesh (&set, 1);
  /* Within reach of the middle one, and so of each other by it, yet too far from each other. */
  pair->y = 6;
  assert_trouble (boat, "hulls of this pair");
  pair->y = 60;
  assert_trouble (boat, "far away from the rest");

  /* The other one of a pair counts as near. */
  pair->y = 2;
  add_block (boat, 1, 0.4, 0.4)->y = -8;
  find_hulls (&set, boat);
  sound_mesh (&set, 2);
}

/* An air box has no edge to be kept dry. */
static void
test_inside (void)
{
  g_autoptr (GbBoat) boat = boat_with_a_block ();
  g_auto (GbHullSet) set = { NULL, 0 };
  GbHull *box = add_block (boat, 0.5, 0.5, 0.2);

  box->inside = TRUE;
  g_assert_cmpint (box->edge, ==, GB_EDGE_OPEN);
  find_hulls (&set, boat);
  g_assert_true (set.hulls[1].inside && !set.hulls[0].inside);
  g_assert_cmpuint (set.hulls[1].edges->len, ==, 0);
  g_assert_true (isnan (set.hulls[1].lowest_edge));
  assert_near (gb_mesh_surface (sound_mesh (&set, 1), -INFINITY, INFINITY).area, 0.5 + 0.4, 1e-14);
}

/* Each hull's body is its mesh. */
static void
test_bodies (void)
{
  g_autoptr (GbBoat) boat = boat_with_a_block ();
  g_auto (GbHullSet) set = { NULL, 0 };
  GbHull *pipe = add_hull (boat, GB_HULL_PIPE);

  add_hull (boat, GB_HULL_STATIONS);
  pipe->length = 2;
  pipe->diameter = 0.3;
  find_hulls (&set, boat);
  for (guint i = 0; i < 2; i++)
    assert_near (gb_body_volume (set.hulls[i].body), gb_mesh_whole (set.hulls[i].mesh).volume, 1e-14);
  g_assert_null (set.hulls[2].body);
}

/* Any rising sections close, whatever their numbers of points and wherever they touch the centreline. */
static void
test_random_sections_close (void)
{
  for (guint round = 0; round < 100; round++)
    {
      g_autoptr (GbBoat) boat = gb_boat_new ();
      g_auto (GbHullSet) set = { NULL, 0 };
      GbHull *hull = add_hull (boat, GB_HULL_STATIONS);
      const GbMesh *mesh;
      double volume;

      for (guint i = 0; i < 4; i++)
        {
          guint n = g_test_rand_int_range (2, 8);
          double yz[16], z = g_test_rand_double_range (0, 0.2);

          for (guint k = 0; k < n; k++, z += g_test_rand_double_range (0.01, 0.2))
            {
              yz[2 * k] = g_test_rand_int_range (0, 3) == 0 ? 0 : g_test_rand_double_range (0.1, 0.6);
              yz[2 * k + 1] = z;
            }
          /* So that no end touches its own deck or bottom. */
          yz[2 * n - 2] = 0.5;
          add_station (boat, hull, i, yz, n);
        }
      find_hulls (&set, boat);
      mesh = sound_mesh (&set, 0);
      volume = gb_mesh_whole (mesh).volume;
      assert_near (gb_mesh_whole (mesh).centre.y, 0, 1e-13);
      for (double z = 0.05; z < 1; z += 0.1)
        assert_near (volume_below (mesh, z) + gb_mesh_cut (mesh, (GbVec3){ 0, 0, -1 }, -z).volume, volume,
                     1e-13);
    }
}

/* A station hull that is wide where it is high: what the mesh holds is what the trapezium rule finds, with
 * equal steps. */
static double
flared (double x, double z)
{
  return (0.2 + 0.3 * sin (x)) * (1 + z) * (1 + 0.1 * x * z);
}

static void
test_ruled_surface_is_the_trapezium_rule (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_auto (GbHullSet) set = { NULL, 0 };
  const guint n_x = 7, n_z = 5;
  double sum = 0;

  add_analytic_hull (boat, 3, 1, n_x, n_z, flared);
  find_hulls (&set, boat);
  for (guint i = 0; i <= n_x; i++)
    for (guint k = 0; k <= n_z; k++)
      sum += flared (3.0 * i / n_x, -1 + k / (double)n_z) * (i == 0 || i == n_x ? 0.5 : 1)
             * (k == 0 || k == n_z ? 0.5 : 1);
  assert_near (gb_mesh_whole (sound_mesh (&set, 0)).volume, 2 * sum * (3.0 / n_x) * (1.0 / n_z), 1e-14);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/hull/box-by-stations", test_box_by_stations);
  g_test_add_func ("/hull/wedge-and-pyramid-by-stations", test_wedge_and_pyramid_by_stations);
  g_test_add_func ("/hull/odd-sections-close", test_odd_sections_close);
  g_test_add_func ("/hull/joins-of-unlike-sections", test_joins_of_unlike_sections);
  g_test_add_func ("/hull/block", test_block);
  g_test_add_func ("/hull/pipe", test_pipe);
  g_test_add_func ("/hull/prism", test_prism);
  g_test_add_func ("/hull/pairs", test_pairs);
  g_test_add_func ("/hull/bad-stations", test_bad_stations);
  g_test_add_func ("/hull/too-many-points", test_too_many_points);
  g_test_add_func ("/hull/too-large", test_too_large);
  g_test_add_func ("/hull/far-apart", test_far_apart);
  g_test_add_func ("/hull/pair-far-apart", test_pair_far_apart);
  g_test_add_func ("/hull/inside", test_inside);
  g_test_add_func ("/hull/bodies", test_bodies);
  g_test_add_func ("/hull/bad-bodies", test_bad_bodies);
  g_test_add_func ("/hull/random-sections-close", test_random_sections_close);
  g_test_add_func ("/hull/ruled-surface-is-the-trapezium-rule", test_ruled_surface_is_the_trapezium_rule);
  return g_test_run ();
}
