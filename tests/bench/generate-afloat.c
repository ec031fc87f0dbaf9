/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The hulls of a generated build, what she carries, and the tests that were made of her. */

#include "generate-private.h"

#include <math.h>

/* Hulls ---------------------------------------------------------------------------------------------------- */

static void
make_offset (GenerateMaker *maker, gint64 station, double y, double z)
{
  GbOffset *offset = generate_make (maker, GB_RECORD_OFFSET, station);

  offset->y = y;
  offset->z = z;
  generate_take (maker, offset);
}

static void
make_corner (GenerateMaker *maker, gint64 opening, double x, double y)
{
  GbCorner *corner = generate_make (maker, GB_RECORD_CORNER, opening);

  corner->x = x;
  corner->y = y;
  corner->z = 0.45;
  generate_take (maker, corner);
}

static void
make_slot (GenerateMaker *maker, gint64 hull)
{
  GbOpening *opening = generate_make (maker, GB_RECORD_OPENING, hull);

  opening->name = g_strdup ("Slot");
  opening->ring = 1;
  generate_take (maker, opening);
  make_corner (maker, opening->rec.id, 2.2, -0.01);
  make_corner (maker, opening->rec.id, 2.5, -0.01);
  make_corner (maker, opening->rec.id, 2.5, 0.01);
  make_corner (maker, opening->rec.id, 2.2, 0.01);
}

void
generate_hulls (GenerateMaker *maker)
{
  GbHull *hull = generate_make (maker, GB_RECORD_HULL, 0);
  GbHull *pipe = generate_make (maker, GB_RECORD_HULL, 0);

  hull->name = g_strdup ("Hull");
  hull->x = hull->z = 0;
  for (guint i = 0; i < 9; i++)
    {
      GbStation *station = generate_make (maker, GB_RECORD_STATION, hull->rec.id);
      double fullness = 1 - pow ((i - 4.0) / 5.0, 2);

      station->x = 0.5 * i;
      make_offset (maker, station->rec.id, 0, 0.02 * fabs (i - 4.0));
      for (guint k = 1; k <= 4; k++)
        make_offset (maker, station->rec.id, 0.8 * fullness * sin (G_PI_2 * k / 4), 0.1 + 0.1 * k);
      generate_take (maker, station);
    }
  generate_take (maker, hull);
  make_slot (maker, hull->rec.id);

  pipe->name = g_strdup ("Floats");
  pipe->form = GB_HULL_PIPE;
  pipe->pair = 1;
  pipe->edge = GB_EDGE_CLOSED;
  pipe->x = 1;
  pipe->y = 1.2;
  pipe->z = 0.4;
  pipe->length = 2;
  pipe->diameter = 0.2;
  generate_take (maker, pipe);
}

/* Conditions and tests ------------------------------------------------------------------------------------- */

static GbLoad *
make_load (GenerateMaker *maker, GbLoadKind kind, double mass, double x, double z)
{
  GbLoad *load = generate_make (maker, GB_RECORD_LOAD, maker->next[GB_RECORD_CONDITION]);

  load->name = g_strdup_printf ("Load %" G_GINT64_FORMAT, load->rec.id);
  load->kind = kind;
  load->mass = mass;
  load->x = x;
  load->z = z;
  return load;
}

static void
make_crew (GenerateMaker *maker, GbPosture posture, double x, double z)
{
  GbLoad *person = make_load (maker, GB_LOAD_PERSON, 75, x, z);

  person->posture = posture;
  generate_take (maker, person);
}

static void
make_tank (GenerateMaker *maker)
{
  GbLoad *tank = make_load (maker, GB_LOAD_WATER, 12, 1.5, 0.15);

  tank->tank_length = 0.4;
  tank->tank_width = 0.3;
  tank->tank_height = 0.15;
  generate_take (maker, tank);
}

static void
make_condition (GenerateMaker *maker, const char *name)
{
  GbCondition *condition = generate_make (maker, GB_RECORD_CONDITION, 0);

  condition->name = g_strdup (name);
  condition->heeling_moment = 10;
  generate_take (maker, condition);
}

static void
make_inclining (GenerateMaker *maker)
{
  GbInclining *inclining = generate_make (maker, GB_RECORD_INCLINING, 0);

  inclining->condition = 1;
  inclining->pendulum = 1.5;
  generate_take (maker, inclining);
  for (int i = -2; i <= 2; i++)
    {
      GbShift *shift = generate_make (maker, GB_RECORD_SHIFT, inclining->rec.id);

      shift->mass = 10;
      shift->distance = 0.2 * i;
      shift->deflection = 0.02 * i;
      generate_take (maker, shift);
    }
}

static void
make_tub (GenerateMaker *maker)
{
  GbTub *tub = generate_make (maker, GB_RECORD_TUB, 0);
  GbTubLoad *ballast = generate_make (maker, GB_RECORD_TUB_LOAD, 1);

  tub->name = g_strdup ("Model");
  tub->condition = 1;
  tub->scale = 8;
  tub->mass = 0.1;
  tub->x = 0.25;
  tub->fore_draught = tub->aft_draught = 0.02;
  generate_take (maker, tub);
  ballast->name = g_strdup ("Ballast");
  ballast->mass = 0.3;
  ballast->x = 0.25;
  generate_take (maker, ballast);
}

void
generate_conditions (GenerateMaker *maker)
{
  make_condition (maker, "Two up");
  make_crew (maker, GB_POSTURE_SITTING, 1, 0.2);
  make_crew (maker, GB_POSTURE_SITTING, 2.5, 0.2);
  make_condition (maker, "At anchor");
  make_crew (maker, GB_POSTURE_STANDING, 2, 0.05);
  make_tank (maker);
  generate_take (maker, make_load (maker, GB_LOAD_PULL, 5, 4, 0.4));
  make_inclining (maker);
  make_tub (maker);
}
