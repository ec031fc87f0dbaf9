/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-crew-map"

#include "crew-map.h"

#include "afloat-private.h"
#include "mesh-private.h"

/* Up to this heel a place lends its rest to the next one; further over, the next might be found upside down
 * for no reason of its own. */
#define MOST_HEEL_LENT (45 * G_PI / 180)
/* More than so many radians from one place to the next. */
#define LEAP 0.05
/* Places are found as near as this, in metres. */
#define NEAR 1e-3
/* Nobody is sent elsewhere for less freeboard than this, in metres. */
#define WORTH_MOVING 1e-3

/* A load on its way. */
typedef struct
{
  GbCase *self; /* its own copy */
  gint64 load;
  double z;
  GbAttitude near;   /* rest of the place before this one */
  GbAttitude before; /* and of that before it, a like step away; or the same once more */
} Mover;

/* On the way from place to place she goes on leaning as she did, unless that was a leap. */
static GbAttitude
foreseen (const Mover *mover)
{
  GbAttitude near = mover->near, before = mover->before;
  GbVec3 up = vec3_sub (vec3_scale (near.up, 2), before.up);

  if (vec3_length (vec3_sub (near.up, before.up)) > LEAP)
    return near;
  return (GbAttitude){ vec3_scale (up, 1 / vec3_length (up)), 2 * near.height - before.height };
}

static GbCrewPlace
place_at_rest (const Mover *mover, GbAttitude attitude)
{
  GbLeastFreeboard least = gb_edge_set_least (&mover->self->edges, attitude);

  return (GbCrewPlace){ .state = gb_afloat_state_at_rest (attitude, least.freeboard),
                        .freeboard = least.freeboard,
                        .line = least.line,
                        .heel = gb_attitude_heel (attitude),
                        .trim = gb_attitude_trim (attitude) };
}

static GbCrewPlace
find_place (Mover *mover, double x, double y)
{
  GbRest rest;

  gb_case_move (mover->self, mover->load, (GbVec3){ x, y, mover->z });
  rest = gb_floater_rest (mover->self->floater, foreseen (mover), GB_HOLD_NOTHING, NULL, NULL);
  mover->before = mover->near;
  if (rest.kind != GB_REST_FOUND)
    return (GbCrewPlace){ GB_AFLOAT_UNKNOWN, NAN, -1, NAN, NAN };
  if (fabs (gb_attitude_heel (rest.attitude)) < MOST_HEEL_LENT)
    mover->near = rest.attitude;
  return place_at_rest (mover, rest.attitude);
}

/* Rows -------------------------------------------------------------------------------------------------- */

static double
column_x (const GbCrewMap *map, double column)
{
  return map->x0 + (map->x1 - map->x0) * (column + 0.5) / GB_MAP_COLUMNS;
}

static double
row_y (const GbCrewMap *map, double row)
{
  return map->y0 + (map->y1 - map->y0) * (row + 0.5) / GB_MAP_ROWS;
}

/* To and fro, so that the next place is always beside the last. */
static void
find_row (GbCrewMap *map, Mover *mover, guint row)
{
  mover->before = mover->near;
  for (guint i = 0; i < GB_MAP_COLUMNS; i++)
    {
      guint column = row % 2 == 0 ? i : GB_MAP_COLUMNS - 1 - i;

      map->places[row][column] = find_place (mover, column_x (map, column), row_y (map, row));
    }
}

/* FALSE if cancelled. */
static gboolean
find_rows (GbCrewMap *map, Mover *mover, GbCrewMapProgress progress, GbCancelFunc is_cancelled, gpointer data)
{
  for (guint row = 0; row < GB_MAP_ROWS; row++)
    {
      if (is_cancelled != NULL && is_cancelled (data))
        return FALSE;
      find_row (map, mover, row);
      map->n_rows_found = row + 1;
      if (progress != NULL)
        progress (map, data);
    }
  return TRUE;
}

/* The best place ---------------------------------------------------------------------------------------- */

static gboolean
is_better (const GbCrewPlace *place, double freeboard)
{
  return (place->state == GB_AFLOAT_FLOATS || place->state == GB_AFLOAT_FILLS) && !isnan (place->freeboard)
         && !(place->freeboard <= freeboard);
}

static void
take_best (GbCrewMap *map, const GbCrewPlace *place, double x, double y)
{
  if (!is_better (place, map->best_freeboard))
    return;
  map->best_freeboard = place->freeboard;
  map->best = (GbVec3){ x, y, map->z };
}

/* Looks at the eight places around the best one, so far away. */
static gboolean
look_around (GbCrewMap *map, Mover *mover, double by_x, double by_y)
{
  GbVec3 centre = map->best;

  for (int i = 0; i < 9; i++)
    {
      double x = centre.x + (i % 3 - 1) * by_x, y = centre.y + (i / 3 - 1) * by_y;
      GbCrewPlace place;

      if (i == 4 || x < map->x0 || x > map->x1 || y < map->y0 || y > map->y1)
        continue;
      place = find_place (mover, x, y);
      take_best (map, &place, x, y);
    }
  return map->best.x != centre.x || map->best.y != centre.y;
}

/* From the best of the grid on, in steps that are halved when they lead nowhere better. */
static void
find_best (GbCrewMap *map, Mover *mover)
{
  double by_x = (map->x1 - map->x0) / GB_MAP_COLUMNS, by_y = (map->y1 - map->y0) / GB_MAP_ROWS;

  for (guint row = 0; row < GB_MAP_ROWS; row++)
    for (guint column = 0; column < GB_MAP_COLUMNS; column++)
      take_best (map, &map->places[row][column], column_x (map, column), row_y (map, row));
  if (isnan (map->best_freeboard))
    return;
  for (guint i = 0; i < 100 && fmax (by_x, by_y) > NEAR; i++)
    if (!look_around (map, mover, by_x, by_y))
      {
        by_x /= 2;
        by_y /= 2;
      }
}

/* Takes the place at @x, @y for the best one if no other is better by what is worth moving for. */
static gboolean
prefer (GbCrewMap *map, Mover *mover, double x, double y)
{
  GbCrewPlace place;

  if (x < map->x0 || x > map->x1 || y < map->y0 || y > map->y1)
    return FALSE;
  place = find_place (mover, x, y);
  if (!is_better (&place, map->best_freeboard - WORTH_MOVING)
      || (place.state == GB_AFLOAT_FILLS && map->best_freeboard >= 0))
    return FALSE;
  map->best_freeboard = place.freeboard;
  map->best = (GbVec3){ x, y, map->z };
  return TRUE;
}

/* Of places that are as good the one on the centreline, and there the one beside where the load is now. */
static void
prefer_centreline (GbCrewMap *map, Mover *mover, double x)
{
  if (!isnan (map->best_freeboard) && !prefer (map, mover, x, 0))
    prefer (map, mover, map->best.x, 0);
}

/* How far out ------------------------------------------------------------------------------------------- */

static gboolean
is_well (Mover *mover, double x, double y)
{
  GbCrewPlace place = find_place (mover, x, y);

  return place.state == GB_AFLOAT_FLOATS && !(place.freeboard < mover->self->freeboard);
}

/* From @y, where all is well, by @step to the end of the hulls, and then between the last place that is well
 * and the next. */
static double
furthest (Mover *mover, double x, double y, double end, double step)
{
  double bad = y;

  do
    {
      y = bad;
      if (fabs (end - y) <= NEAR)
        return end;
      bad = fabs (end - y) > fabs (step) ? y + step : end;
    }
  while (is_well (mover, x, bad));
  while (fabs (bad - y) > NEAR / 10)
    {
      double middle = (y + bad) / 2;

      if (is_well (mover, x, middle))
        y = middle;
      else
        bad = middle;
    }
  return y;
}

/* The place across that leaves most freeboard, or is most upright where there is no edge. */
static double
safest_y (const GbCrewMap *map, Mover *mover, double x)
{
  GbCrewPlace best = find_place (mover, x, (map->y0 + map->y1) / 2);
  double y = (map->y0 + map->y1) / 2;

  for (guint row = 0; row < GB_MAP_ROWS; row++)
    {
      GbCrewPlace place = find_place (mover, x, row_y (map, row));

      if (is_better (&place, best.freeboard)
          || (isnan (place.freeboard) && fabs (place.heel) < fabs (best.heel)))
        {
          best = place;
          y = row_y (map, row);
        }
    }
  return y;
}

static void
find_furthest (GbCrewMap *map, Mover *mover, double x)
{
  double step = (map->y1 - map->y0) / GB_MAP_ROWS, y;

  if (isnan (mover->self->freeboard))
    return;
  y = safest_y (map, mover, x);
  if (!is_well (mover, x, y))
    return;
  map->furthest_port = furthest (mover, x, y, map->y1, step);
  is_well (mover, x, y);
  map->furthest_starboard = furthest (mover, x, y, map->y0, -step);
}

/* The map ----------------------------------------------------------------------------------------------- */

static GbCrewMap *
new_map (const GbCase *self, gint64 load, double z)
{
  GbCrewMap *map = g_new0 (GbCrewMap, 1);

  map->condition = self->condition;
  map->load = load;
  map->x0 = self->least.x;
  map->x1 = self->most.x;
  map->y0 = self->least.y;
  map->y1 = self->most.y;
  map->z = z;
  map->best = (GbVec3){ NAN, NAN, NAN };
  map->best_freeboard = map->furthest_starboard = map->furthest_port = NAN;
  map->first_under = -1;
  for (guint i = 0; i < GB_MAP_ROWS * GB_MAP_COLUMNS; i++)
    map->places[i / GB_MAP_COLUMNS][i % GB_MAP_COLUMNS]
        = (GbCrewPlace){ GB_AFLOAT_UNKNOWN, NAN, -1, NAN, NAN };
  return map;
}

GbCrewMap *
gb_crew_map_find (
    const GbCase *self, gint64 load, GbCrewMapProgress progress, GbCancelFunc is_cancelled, gpointer data)
{
  const GbCaseLoad *record = gb_case_find_load (self, load);
  g_autoptr (GbCase) moving = NULL;
  g_autoptr (GbCrewMap) map = NULL;
  g_auto (GbAfloat) afloat = { 0 };
  Mover mover;

  if (record == NULL)
    return NULL;
  map = new_map (self, load, record->at.z);
  gb_afloat_find (&afloat, self, NULL);
  /* As heavy as she is she may sink wherever the load is. */
  if (isnan (record->weight) || afloat.state == GB_AFLOAT_UNKNOWN || afloat.state == GB_AFLOAT_SINKS)
    {
      map->n_rows_found = GB_MAP_ROWS;
      return g_steal_pointer (&map);
    }
  map->first_under = afloat.least.line;
  moving = gb_case_copy (self);
  mover = (Mover){
    .self = moving, .load = load, .z = map->z, .near = gb_attitude (0, 0, (self->least.z + self->most.z) / 2)
  };
  if (!find_rows (map, &mover, progress, is_cancelled, data))
    return NULL;
  find_best (map, &mover);
  prefer_centreline (map, &mover, record->at.x);
  find_furthest (map, &mover, record->at.x);
  return g_steal_pointer (&map);
}

GbCrewMap *
gb_crew_map_copy (const GbCrewMap *map)
{
  return g_memdup2 (map, sizeof *map);
}

void
gb_crew_map_free (GbCrewMap *map)
{
  g_free (map);
}
