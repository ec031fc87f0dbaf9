/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-loads"

#include "loads.h"

#include <math.h>

double
gb_load_spread (const GbLoad *load)
{
  if (!isnan (load->spread))
    return load->spread;
  switch ((GbLoadKind)load->kind)
    {
    case GB_LOAD_PERSON:
    case GB_LOAD_MOTOR:
      return 0.05;
    case GB_LOAD_WATER:
    case GB_LOAD_BALLAST:
      return 0.02;
    case GB_LOAD_GEAR:
    case GB_LOAD_CARGO:
    case GB_LOAD_PULL:
    case GB_LOAD_OTHER:
    default:
      return 0.10;
    }
}

/* Height of the centre over what z is measured to. */
static double
centre_above (const GbLoad *load)
{
  if (load->kind != GB_LOAD_PERSON || load->posture == GB_POSTURE_CENTRE)
    return 0;
  if (!isnan (load->above))
    return load->above;
  return load->posture == GB_POSTURE_STANDING ? GB_ABOVE_SOLE : GB_ABOVE_SEAT;
}

GbVec3
gb_load_centre (const GbLoad *load)
{
  return (GbVec3){ load->x, load->y, load->z + centre_above (load) };
}

double
gb_load_weight (const GbLoad *load)
{
  double mass = load->quantity * load->mass;

  if (!(mass >= 0 && isfinite (mass)))
    return NAN;
  return load->kind == GB_LOAD_PULL ? mass * sin (load->dip) : mass;
}

gboolean
gb_load_has_tank (const GbLoad *load)
{
  return load->kind == GB_LOAD_WATER && load->tank_length > 0 && load->tank_width > 0 && load->tank_height > 0
         && isfinite (load->tank_length * load->tank_width * load->tank_height);
}
