/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "crew-scene.h"
#include "axis.h"
#include "boat/quantity.h"

#include <math.h>

#define DEGREE (G_PI / 180)
/* Freeboards beyond this are no boat's. */
#define MOST_FREEBOARD 100.0
/* Where she goes over, for want of a number. */
#define OVER -0.001

static double
freeboard_of (const GbCrewPlace *place)
{
  if (place->state == GB_AFLOAT_UNKNOWN || place->state == GB_AFLOAT_SINKS)
    return NAN;
  if (place->state == GB_AFLOAT_OVER)
    return isfinite (place->freeboard) ? CLAMP (place->freeboard, -MOST_FREEBOARD, OVER) : OVER;
  return isfinite (place->freeboard) ? CLAMP (place->freeboard, -MOST_FREEBOARD, MOST_FREEBOARD) : NAN;
}

/* Angles of places where she has gone over say nothing beside the others. */
static double
angle_of (const GbCrewPlace *place, double angle)
{
  return place->state == GB_AFLOAT_FLOATS || place->state == GB_AFLOAT_FILLS ? angle : NAN;
}

static void
take_places (GbCrew *crew)
{
  const GbCrewMap *map = crew->map;

  for (guint row = 0; row < GB_MAP_ROWS; row++)
    for (guint column = 0; column < GB_MAP_COLUMNS; column++)
      {
        const GbCrewPlace *place = &map->places[row][column];
        guint i = row * GB_MAP_COLUMNS + column;
        gboolean found = row < map->n_rows_found;

        crew->points[i] = (GbVec3){ map->x0 + (map->x1 - map->x0) * (column + 0.5) / GB_MAP_COLUMNS,
                                    map->y0 + (map->y1 - map->y0) * (row + 0.5) / GB_MAP_ROWS, 0 };
        crew->freeboard[i] = found ? freeboard_of (place) : NAN;
        crew->heel[i] = found ? angle_of (place, place->heel) : NAN;
        crew->trim[i] = found ? angle_of (place, place->trim) : NAN;
      }
}

/* Each square of four places is two triangles. */
static void
make_triangles (GbCrew *crew)
{
  crew->triangles = g_malloc_n ((GB_MAP_ROWS - 1) * (GB_MAP_COLUMNS - 1) * 2, sizeof *crew->triangles);
  for (guint row = 0; row + 1 < GB_MAP_ROWS; row++)
    for (guint column = 0; column + 1 < GB_MAP_COLUMNS; column++)
      {
        guint a = row * GB_MAP_COLUMNS + column, b = a + 1, c = a + GB_MAP_COLUMNS, d = c + 1;
        const guint pair[2][3] = { { a, b, d }, { a, d, c } };

        for (guint k = 0; k < 6; k++)
          crew->triangles[crew->n_triangles + k / 3][k % 3] = pair[k / 3][k % 3];
        crew->n_triangles += 2;
      }
}

static void
find_range (const double *values, double *lo, double *hi)
{
  *lo = INFINITY;
  *hi = -INFINITY;
  for (guint i = 0; i < GB_N_PLACES; i++)
    if (isfinite (values[i]))
      {
        *lo = fmin (*lo, values[i]);
        *hi = fmax (*hi, values[i]);
      }
}

/* The first of these steps that gives few lines; NAN where there is nothing to tell apart. */
static double
choose_step (const double *values, guint most)
{
  static const double degrees[] = { 0.5, 1, 2, 5, 10, 20, 45 };
  double lo, hi;

  find_range (values, &lo, &hi);
  for (guint i = 0; hi > lo && i < G_N_ELEMENTS (degrees); i++)
    if ((hi - lo) / (degrees[i] * DEGREE) <= most)
      return degrees[i] * DEGREE;
  return NAN;
}

static void
choose_steps (GbCrew *crew)
{
  double unit = gb_quantity_factor (GB_DIM_LENGTH, crew->units);

  find_range (crew->freeboard, &crew->lo, &crew->hi);
  if (!(crew->hi >= crew->lo))
    crew->lo = crew->hi = NAN;
  /* What is far under water needs no lines. */
  crew->band
      = crew->hi > 0 ? gb_round_step (fmax ((crew->hi - fmax (crew->lo, 0)) / 7, unit) / unit) * unit : NAN;
  crew->heel_step = choose_step (crew->heel, 8);
  crew->trim_step = choose_step (crew->trim, 6);
}

static void
take_edges (GbCrew *crew, const GbEdgeSet *edges)
{
  crew->edges = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; edges->lines != NULL && i < edges->lines->len; i++)
    g_ptr_array_add (crew->edges, g_strdup (((const GbEdgeLine *)g_ptr_array_index (edges->lines, i))->name));
}

/* All of the map is shown. */
static void
widen_scene (GbCrew *crew)
{
  GbScene *scene = crew->scene;
  const GbCrewMap *map = crew->map;
  double room = 0.02 * fmax (map->x1 - map->x0, map->y1 - map->y0);

  scene->lo = (GbVec3){ fmin (scene->lo.x, map->x0 - room), fmin (scene->lo.y, map->y0 - room), scene->lo.z };
  scene->hi = (GbVec3){ fmax (scene->hi.x, map->x1 + room), fmax (scene->hi.y, map->y1 + room), scene->hi.z };
}

static gboolean
is_sound (const GbCrewMap *map)
{
  return isfinite (map->x0) && isfinite (map->y0) && map->x1 > map->x0 && map->y1 > map->y0
         && map->x1 - map->x0 < 1e4 && map->y1 - map->y0 < 1e4;
}

/* Upright to within this, no side is lower. */
#define UPRIGHT (0.25 * G_PI / 180)

static void
take_here (GbCrew *crew, const GbAfloat *afloat)
{
  crew->here = (GbCrewPlace){ .state = GB_AFLOAT_UNKNOWN, .freeboard = NAN, .line = -1, .heel = NAN, .trim = NAN };
  crew->lowest = (GbVec3){ NAN, NAN, NAN };
  if (afloat == NULL)
    return;
  crew->here = (GbCrewPlace){ afloat->state, afloat->least.freeboard, afloat->least.line, afloat->heel, afloat->trim };
  crew->lowest = afloat->least.at;
  if (fabs (afloat->heel) < UPRIGHT)
    crew->lowest.y = 0;
}

GbCrew *
gb_crew_new (const GbChartSource *source)
{
  const GbLoad *load = (const GbLoad *)gb_boat_get (source->boat, GB_RECORD_LOAD, source->crew_map->load);
  double accepted = gb_boat_build (source->boat)->freeboard;
  GbCrew *crew;

  if (!is_sound (source->crew_map))
    return NULL;
  crew = g_new0 (GbCrew, 1);
  crew->units = (GbUnits)gb_boat_build (source->boat)->units;
  crew->map = gb_crew_map_copy (source->crew_map);
  crew->map->n_rows_found = MIN (crew->map->n_rows_found, GB_MAP_ROWS);
  crew->has_accepted = accepted > 0 && isfinite (accepted);
  crew->accepted = crew->has_accepted ? accepted : 0;
  crew->load = load != NULL ? gb_record_dup_title (&load->rec) : g_strdup ("");
  crew->now = load != NULL ? gb_source_load_centre (source, load) : (GbVec3){ NAN, NAN, NAN };
  take_here (crew, gb_source_afloat (source));
  crew->key = gb_key_new ();
  crew->scene = gb_scene_new_loads (source, NULL, 1u << GB_VIEW_PLAN);
  take_edges (crew, &source->findings->edges);
  widen_scene (crew);
  take_places (crew);
  make_triangles (crew);
  choose_steps (crew);
  return crew;
}

void
gb_crew_free (gpointer data)
{
  GbCrew *crew = data;

  gb_scene_free (crew->scene);
  gb_crew_map_free (crew->map);
  g_ptr_array_unref (crew->edges);
  g_array_unref (crew->key);
  g_free (crew->triangles);
  g_free (crew->load);
  g_free (crew);
}

GbNet
gb_crew_net (const GbCrew *crew, const double *values)
{
  return (GbNet){ crew->points, values, (const guint (*)[3])crew->triangles, crew->n_triangles };
}

const GbCrewPlace *
gb_crew_place_at (const GbCrew *crew, double x, double y)
{
  const GbCrewMap *map = crew->map;
  double column = (x - map->x0) / (map->x1 - map->x0) * GB_MAP_COLUMNS;
  double row = (y - map->y0) / (map->y1 - map->y0) * GB_MAP_ROWS;

  if (!(column >= 0 && column < GB_MAP_COLUMNS && row >= 0 && row < GB_MAP_ROWS))
    return NULL;
  return &map->places[(guint)row][(guint)column];
}

gboolean
gb_crew_is_whole (const GbCrew *crew)
{
  return crew->map->n_rows_found == GB_MAP_ROWS;
}
