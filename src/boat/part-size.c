/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-part-size"

#include "part-size.h"

#include <math.h>

static void
fill (double *size, double from_stock)
{
  if (isnan (*size))
    *size = from_stock;
}

/* TRUE if the part gives any size of the section that it names; else the section is the stock's to say. */
static gboolean
has_own_section (const GbPart *part)
{
  switch ((GbSection) part->section)
    {
    case GB_SECTION_ROUND:
      return !isnan (part->diameter);
    case GB_SECTION_TUBE:
      return !isnan (part->diameter) || !isnan (part->wall);
    case GB_SECTION_LINEAR:
      return !isnan (part->linear_mass);
    case GB_SECTION_RECTANGLE:
    default:
      return !isnan (part->width) || !isnan (part->thickness);
    }
}

static void
fill_section (GbPartSize *size, const GbPart *part, const GbStock *stock)
{
  if (!has_own_section (part))
    size->section = (GbSection) stock->section;
  if (size->section != (GbSection) stock->section)
    return;
  fill (&size->width, stock->width);
  fill (&size->thickness, stock->thickness);
  fill (&size->diameter, stock->diameter);
  fill (&size->wall, stock->wall);
  fill (&size->linear_mass, stock->linear_mass);
}

GbPartSize
gb_part_size_from (const GbPart *part, const GbStock *stock)
{
  GbPartSize size = {
    .material = part->material,
    .length = part->length,
    .width = part->width,
    .thickness = part->thickness,
    .section = (GbSection) part->section,
    .diameter = part->diameter,
    .wall = part->wall,
    .linear_mass = part->linear_mass,
    .unit_mass = part->unit_mass,
  };

  if (stock == NULL)
    return size;
  if (size.material == 0)
    size.material = stock->material;
  if (part->takeoff == GB_TAKEOFF_COUNT)
    fill (&size.unit_mass, stock->mass);
  else if (part->takeoff == GB_TAKEOFF_LENGTH && stock->form == GB_FORM_LENGTH)
    fill_section (&size, part, stock);
  /* A skin that says its own mass per area needs no thickness. */
  else if (part->takeoff != GB_TAKEOFF_SKIN || isnan (part->areal_mass))
    fill (&size.thickness, stock->thickness);
  return size;
}

GbPartSize
gb_part_size (const GbBoat *boat, const GbPart *part)
{
  return gb_part_size_from (part, gb_boat_stock (boat, part->stock));
}
