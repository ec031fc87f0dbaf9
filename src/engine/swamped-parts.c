/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-swamped"

/* The volume of what she is made of, where it is.
 *
 * A part's volume lies as its mass does: in balls about its centre that have its radii of gyration. That
 * keeps volume, centre and how far it reaches each way, which is what heel, trim and stiffness go by. Boards,
 * lengths and blocks are rows of balls so small that they lie no deeper in the water than the part does; of
 * the rest nobody knows the shape, so it is eight balls, before and behind, to port and starboard, over and
 * under its centre. A pair, and a group that is one, has all of it a second time, mirrored in the axes that
 * it stands in. */

#include "swamped-private.h"

#include "boat/part-size.h"
#include "density.h"
#include "rollup-private.h"

/* A solid is made of so many balls at least, and of no more than are needed for balls of this radius. */
#define LEAST_BALLS 8
#define MOST_BALLS 4096
#define RADIUS_ASKED 0.02 /* m */
/* So many times closer in height than along and across: the balls of a board on its edge must leave no gap at
 * any height, or in that gap it would neither carry nor stiffen her. */
#define CLOSER_UP 6
/* Groups that are pairs, one within another: more than these are counted without being mirrored. */
#define MOST_PAIRS 5

/* Volume
 * --------------------------------------------------------------------------------------------------- */

/* A paint's figure is often what stays on of a tin's volume; the film itself is no lighter than fresh water. */
#define LIGHTEST_FILM 1000.0

static double
density_of (const GbBoat *boat, gint64 id)
{
  const GbMaterial *material = gb_boat_material (boat, id);
  double density = material != NULL ? gb_material_figures (material).density : NAN;

  return material != NULL && material->family == GB_FAMILY_PAINT && density < LIGHTEST_FILM ? LIGHTEST_FILM
                                                                                            : density;
}

/* Of a unit of mass. Cloth has its resin with it. */
static double
specific_volume (const GbBoat *boat, const GbPart *part)
{
  double volume = 1 / density_of (boat, gb_part_size (boat, part).material), ratio = part->resin_ratio;

  if (part->takeoff == GB_TAKEOFF_COATING && part->coating == GB_COATING_CLOTH && ratio > 0)
    return (volume + ratio / density_of (boat, part->resin)) / (1 + ratio);
  return volume;
}

double
gb_part_volume (const GbBoat *boat, const GbRollup *rollup, const GbPart *part)
{
  double volume = gb_rollup_part (rollup, part)->mass * specific_volume (boat, part);

  return !gb_part_gathers (part) && volume >= 0 && isfinite (volume) ? volume : NAN;
}

/* Groups
 * --------------------------------------------------------------------------------------------------- */

/* A group that the walk down the tree is in. */
typedef struct
{
  guint end;      /* index after what is in it */
  GbAxes to_boat; /* of its own axes */
  double times;   /* copies of it and of the groups around it, pairs apart */
  guint n_pairs;
  GbVec3 mirrors[MOST_PAIRS]; /* of it and of those around it: a place on the plane that a pair is mirrored
                                 in, and */
  GbVec3 across[MOST_PAIRS];  /* the way that it faces; the innermost last */
} Level;

static Level
open_group (const Level *around, const GbPart *group)
{
  const GbAxes *axes = &around->to_boat;
  Level level = *around;
  GbAxes own;

  level.end = group->rec.index + 1 + group->n_below;
  gb_axes_of_group (group, &own);
  gb_axes_compose (&around->to_boat, &own, &level.to_boat);
  level.times *= gb_part_copies (group) / (group->pair ? 2 : 1);
  if (group->pair && level.n_pairs < MOST_PAIRS)
    {
      level.mirrors[level.n_pairs] = (GbVec3){ axes->origin[0], axes->origin[1], axes->origin[2] };
      level.across[level.n_pairs++] = (GbVec3){ axes->turn[0][1], axes->turn[1][1], axes->turn[2][1] };
    }
  else if (group->pair)
    level.times *= 2;
  return level;
}

/* Balls
 * ---------------------------------------------------------------------------------------------------- */

typedef struct
{
  GbSwamped *swamped;
  GbFloater *floater;
  const GArray *carriers;
  const GbBoat *boat;
  const GbRollup *rollup;
  GArray *levels; /* of Level, the innermost last */
  double mass;    /* of all parts so far */
} Gathering;

static double
radius_of_ball (double volume)
{
  return cbrt (3 * volume / (4 * G_PI));
}

/* Square of a radius of gyration along each axis. With Ixx the integral of y2 + z2, that of x2 is (Iyy + Izz
 * - Ixx)/2. */
static GbVec3
squares_of (const GbMass *mass)
{
  const GbInertia *i = &mass->inertia;
  double twice = 2 * mass->mass;

  return (GbVec3){ (i->yy + i->zz - i->xx) / twice, (i->zz + i->xx - i->yy) / twice,
                   (i->xx + i->yy - i->zz) / twice };
}

/* Balls of one size in rows along the axes. */
typedef struct
{
  guint nx, ny, nz;
  double each; /* volume of one */
  GbVec3 step; /* from one to the next */
} Rows;

/* One row more along the axis on which a box with these radii of gyration has its balls farthest apart. */
static void
add_row (Rows *rows, GbVec3 gyration)
{
  double x = gyration.x / rows->nx, y = gyration.y / rows->ny, z = CLOSER_UP * gyration.z / rows->nz;

  if (z >= x && z >= y)
    rows->nz++;
  else if (x >= y)
    rows->nx++;
  else
    rows->ny++;
}

static double
root_of (double square)
{
  return square > 0 && isfinite (square) ? sqrt (square) : 0;
}

/* Of n points a step apart the square of the radius of gyration is step2 (n2 - 1)/12, and a ball has a fifth
 * of its radius squared of its own. */
static double
step_of (guint n, double square, double radius)
{
  return n > 1 ? root_of (12 * (square - radius * radius / 5) / (n * n - 1.0)) : 0;
}

static Rows
rows_of (GbVec3 squares, double volume, gboolean is_solid)
{
  GbVec3 gyration = { root_of (squares.x), root_of (squares.y), root_of (squares.z) };
  double enough = CLAMP (volume / (4 * G_PI / 3 * pow (RADIUS_ASKED, 3)), LEAST_BALLS, MOST_BALLS), radius;
  Rows rows = { 2, 2, 2, 0, { 0, 0, 0 } };

  if (is_solid && gyration.x + gyration.y + gyration.z > 0)
    for (rows.nx = rows.ny = rows.nz = 1; rows.nx * rows.ny * rows.nz < enough;)
      add_row (&rows, gyration);
  rows.each = volume / (rows.nx * rows.ny * rows.nz);
  radius = radius_of_ball (rows.each);
  rows.step = (GbVec3){ step_of (rows.nx, squares.x, radius), step_of (rows.ny, squares.y, radius),
                        step_of (rows.nz, squares.z, radius) };
  return rows;
}

static GbVec3
mirrored (GbVec3 p, GbVec3 on, GbVec3 across)
{
  return vec3_sub (p, vec3_scale (across, 2 * vec3_dot (vec3_sub (p, on), across)));
}

/* One ball and its images in the pairs around it. What lies in a hull that carries is in that hull's
 * volume. */
static void
add_ball (Gathering *gathering, const Level *level, GbVec3 at, double volume)
{
  GbVec3 places[1 << MOST_PAIRS] = { at };
  guint n = 1;
  GbBall ball = { .radius = radius_of_ball (volume) };

  for (guint k = level->n_pairs; k > 0; k--)
    {
      for (guint i = 0; i < n; i++)
        places[n + i] = mirrored (places[i], level->mirrors[k - 1], level->across[k - 1]);
      n *= 2;
    }
  for (guint i = 0; i < n; i++)
    {
      if (gb_carriers_contain (gathering->carriers, places[i]))
        continue;
      ball.at = places[i];
      g_array_append_val (gathering->floater->balls, ball);
      gathering->swamped->parts_volume += volume;
    }
}

static void
add_rows (Gathering *gathering, const Level *level, GbVec3 centre, const Rows *rows)
{
  for (guint i = 0; i < rows->nx; i++)
    for (guint j = 0; j < rows->ny; j++)
      for (guint k = 0; k < rows->nz; k++)
        {
          GbVec3 at = { centre.x + (i - (rows->nx - 1) / 2.0) * rows->step.x,
                        centre.y + (j - (rows->ny - 1) / 2.0) * rows->step.y,
                        centre.z + (k - (rows->nz - 1) / 2.0) * rows->step.z };

          add_ball (gathering, level, at, rows->each);
        }
}

/* The mass of a pair is that of both, and its centre lies halfway between them. */
static void
add_balls (Gathering *gathering, const Level *level, const GbPart *part, const GbMass *mass, double volume)
{
  const GbAxes *axes = &level->to_boat;
  gboolean is_solid = part->takeoff == GB_TAKEOFF_SHEET || part->takeoff == GB_TAKEOFF_LENGTH
                      || part->takeoff == GB_TAKEOFF_BLOCK;
  GbVec3 centre = { mass->x, mass->y, mass->z }, squares = squares_of (mass);
  GbVec3 out = vec3_scale ((GbVec3){ axes->turn[0][1], axes->turn[1][1], axes->turn[2][1] }, part->y);
  Rows rows;

  if (!is_solid || !part->pair || !isfinite (part->y))
    {
      rows = rows_of (squares, volume, is_solid);
      add_rows (gathering, level, centre, &rows);
      return;
    }
  squares = vec3_sub (squares, (GbVec3){ out.x * out.x, out.y * out.y, out.z * out.z });
  rows = rows_of (squares, volume / 2, TRUE);
  add_rows (gathering, level, vec3_add (centre, out), &rows);
  add_rows (gathering, level, vec3_sub (centre, out), &rows);
}

/* Where nothing says where it is: all of it in the middle of the boat. */
static void
add_without_place (Gathering *gathering, const Level *level, double volume)
{
  const GbMass *light = &gathering->rollup->boat;
  GbBall ball = { { light->x, light->y, light->z }, 0 };
  double all = volume * (1 << level->n_pairs);

  gathering->swamped->n_no_place++;
  if (isnan (light->x + light->y + light->z))
    return;
  ball.radius = radius_of_ball (all);
  g_array_append_val (gathering->floater->balls, ball);
  gathering->swamped->parts_volume += all;
}

static gboolean
is_skin_of_carrier (const Gathering *gathering, const GbPart *part)
{
  for (guint i = 0; part->takeoff == GB_TAKEOFF_SKIN && i < gathering->carriers->len; i++)
    if (g_array_index (gathering->carriers, GbCarrier, i).hull == part->hull)
      return TRUE;
  return FALSE;
}

static void
add_part (Gathering *gathering, const Level *level, const GbPart *part)
{
  const GbMass *mass = gb_rollup_part (gathering->rollup, part);
  double times = level->times * mass->scale;
  double volume = gb_part_volume (gathering->boat, gathering->rollup, part) * times;
  gboolean is_placed = isfinite (mass->x + mass->y + mass->z);

  if (!(mass->mass * times > 0))
    return;
  gathering->mass += mass->mass * times * (1 << level->n_pairs);
  if (is_skin_of_carrier (gathering, part))
    return;
  if (isfinite (volume) && is_placed)
    add_balls (gathering, level, part, mass, volume);
  else if (isfinite (volume))
    add_without_place (gathering, level, volume);
  else if (!is_placed || !gb_carriers_contain (gathering->carriers, (GbVec3){ mass->x, mass->y, mass->z }))
    {
      gathering->swamped->n_no_volume++;
      gathering->swamped->no_volume_mass += mass->mass * times * (1 << level->n_pairs);
    }
}

/* What a scale said of groups beyond their parts. */
static void
add_unlisted (const Gathering *gathering)
{
  double all = gathering->rollup->boat.mass, left = all - gathering->mass;

  if (!(left > 1e-9 * all))
    return;
  gathering->swamped->n_no_volume++;
  gathering->swamped->no_volume_mass += left;
}

gboolean
gb_swamped_add_parts (GbSwamped *swamped,
                      GbFloater *floater,
                      const GArray *carriers,
                      const GbBoat *boat,
                      const GbRollup *rollup,
                      GbCancelFunc is_cancelled,
                      gpointer data)
{
  const GPtrArray *parts = gb_boat_all (boat, GB_RECORD_PART);
  g_autoptr (GArray) levels = g_array_new (FALSE, FALSE, sizeof (Level));
  Gathering gathering = { swamped, floater, carriers, boat, rollup, levels, 0 };
  Level boat_level = { .end = G_MAXUINT, .to_boat = gb_axes_none, .times = 1 };

  g_array_append_val (levels, boat_level);
  for (guint i = 0; i < parts->len && i < rollup->n_parts; i++)
    {
      const GbPart *part = parts->pdata[i];
      const Level *level;

      if (i % 1024 == 0 && is_cancelled != NULL && is_cancelled (data))
        return FALSE;
      while (i >= g_array_index (levels, Level, levels->len - 1).end)
        g_array_set_size (levels, levels->len - 1);
      level = &g_array_index (levels, Level, levels->len - 1);
      if (gb_part_gathers (part))
        {
          Level inner = open_group (level, part);

          g_array_append_val (levels, inner);
        }
      else
        add_part (&gathering, level, part);
    }
  add_unlisted (&gathering);
  return TRUE;
}
