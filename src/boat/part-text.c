/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-part-text"

#include "part-text.h"

#include "outline.h"
#include "part-size.h"
#include "quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static char *
show (double value, GbDimension dim, GbUnits units)
{
  return gb_quantity_format (value, dim, units);
}

/* TRUE if nobody asks for a thickness: cloth is known by its mass per area. */
static gboolean
is_without_thickness (const GbBoat *boat, const GbPartSize *size)
{
  const GbMaterial *material = gb_boat_material (boat, size->material);

  return isnan (size->thickness) && material != NULL && material->measure == GB_MEASURE_AREAL;
}

/* "2350 × 25 × 18 mm": lengths that share one unit. @mark stands before the second: the sign of a diameter.
 */
static char *
join_lengths (GbUnits units, const double *lengths, guint n, const char *mark)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < n; i++)
    {
      g_autofree char *number = gb_quantity_format_bare (lengths[i], GB_DIM_LENGTH, units);

      g_string_append_printf (text, "%s%s%s", i > 0 ? " × " : "", i == 1 ? mark : "", number);
    }
  g_string_append_printf (text, " %s", gb_quantity_unit (GB_DIM_LENGTH, units));
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static double
outline_area (const char *text)
{
  g_autoptr (GbOutline) outline = gb_outline_parse (text, NULL);

  return outline != NULL ? gb_outline_properties (outline).area : NAN;
}

static char *
sheet_text (const GbBoat *boat, const GbPart *part, const GbPartSize *size, GbUnits units)
{
  gboolean thin = is_without_thickness (boat, size);
  g_autofree char *area = NULL, *thickness = NULL;

  if (part->outline == NULL && isnan (part->area))
    return join_lengths (units, (double[]){ size->length, size->width, size->thickness }, thin ? 2 : 3, "");
  area = show (part->outline != NULL ? outline_area (part->outline) : part->area, GB_DIM_AREA, units);
  if (thin)
    return g_steal_pointer (&area);
  thickness = show (size->thickness, GB_DIM_LENGTH, units);
  return g_strdup_printf ("%s × %s", area, thickness);
}

/* TRUE if nobody asks for a section: rope is known by its mass per length. */
static gboolean
is_without_section (const GbBoat *boat, const GbPartSize *size)
{
  const GbMaterial *material = gb_boat_material (boat, size->material);

  return isnan (size->linear_mass) && isnan (size->diameter) && isnan (size->thickness) && material != NULL
         && material->measure == GB_MEASURE_LINEAR;
}

static char *
length_text (const GbBoat *boat, const GbPartSize *size, GbUnits units)
{
  g_autofree char *length = NULL, *per_length = NULL;

  if (is_without_section (boat, size))
    return show (size->length, GB_DIM_LENGTH, units);
  switch (size->section)
    {
    case GB_SECTION_ROUND:
      return join_lengths (units, (double[]){ size->length, size->diameter }, 2, "Ø ");
    case GB_SECTION_TUBE:
      return join_lengths (units, (double[]){ size->length, size->diameter, size->wall }, 3, "Ø ");
    case GB_SECTION_LINEAR:
      length = show (size->length, GB_DIM_LENGTH, units);
      per_length = show (size->linear_mass, GB_DIM_LINEAR, units);
      return g_strdup_printf ("%s × %s", length, per_length);
    case GB_SECTION_RECTANGLE:
    default:
      return join_lengths (units, (double[]){ size->length, size->width, size->thickness }, 3, "");
    }
}

static char *
block_text (const GbPart *part, const GbPartSize *size, GbUnits units)
{
  if (!isnan (part->volume))
    return show (part->volume, GB_DIM_VOLUME, units);
  return join_lengths (units, (double[]){ size->length, size->width, size->thickness }, 3, "");
}

static char *
skin_surface (const GbBoat *boat, const GbPart *part, GbUnits units)
{
  const GbHull *hull = gb_boat_hull (boat, part->hull);
  const char *name = hull != NULL ? hull->name : "–";
  g_autofree char *height = NULL;

  if (part->extent == GB_EXTENT_ALL)
    return g_strdup_printf (_ ("skin of %s"), name);
  height = show (part->height, GB_DIM_LENGTH, units);
  /* Translators: the name of a hull, and a height above the baseline, with its unit. */
  return part->extent == GB_EXTENT_BELOW ? g_strdup_printf (_ ("skin of %s below %s"), name, height)
                                         : g_strdup_printf (_ ("skin of %s above %s"), name, height);
}

static char *
skin_text (const GbBoat *boat, const GbPart *part, const GbPartSize *size, GbUnits units)
{
  g_autofree char *surface = skin_surface (boat, part, units);
  g_autofree char *thick = NULL;

  if (is_without_thickness (boat, size) && isnan (part->areal_mass))
    return g_steal_pointer (&surface);
  thick = isnan (size->thickness) && !isnan (part->areal_mass) ? show (part->areal_mass, GB_DIM_AREAL, units)
                                                               : show (size->thickness, GB_DIM_LENGTH, units);
  return g_strdup_printf ("%s × %s", surface, thick);
}

static char *
coating_text (const GbBoat *boat, const GbPart *part, GbUnits units)
{
  const GbPart *coated = gb_boat_part (boat, part->surface_of);
  g_autofree char *on = isnan (part->area) && coated != NULL ? g_strdup (coated->name)
                                                             : show (part->area, GB_DIM_AREA, units);
  g_autofree char *coats = show (part->coats, GB_DIM_COUNT, units);
  gulong n = part->coats == 1 ? 1 : 2;

  /* Translators: a number, and what is coated: an area with its unit, or the name of a part. */
  return part->coating == GB_COATING_CLOTH
             ? g_strdup_printf (ngettext ("%s layer of cloth on %s", "%s layers of cloth on %s", n), coats,
                                on)
             : g_strdup_printf (ngettext ("%s coat on %s", "%s coats on %s", n), coats, on);
}

/* What one of them is; NULL where the number says all. */
static char *
one_text (const GbBoat *boat, const GbPart *part)
{
  GbPartSize size = gb_part_size (boat, part);
  GbUnits units = (GbUnits) gb_boat_build (boat)->units;

  switch ((GbTakeoff) part->takeoff)
    {
    case GB_TAKEOFF_SHEET:
      return sheet_text (boat, part, &size, units);
    case GB_TAKEOFF_LENGTH:
      return length_text (boat, &size, units);
    case GB_TAKEOFF_BLOCK:
      return block_text (part, &size, units);
    case GB_TAKEOFF_SKIN:
      return skin_text (boat, part, &size, units);
    case GB_TAKEOFF_COATING:
      return coating_text (boat, part, units);
    case GB_TAKEOFF_LUMP:
      return show (part->mass, GB_DIM_MASS, units);
    case GB_TAKEOFF_COUNT:
    default:
      return NULL;
    }
}

/* "4", or "pair, 4" where two sides share them; then what one of them is. */
static char *
count_text (const GbPart *part, const char *number, const char *one)
{
  if (part->kind == GB_KIND_GROUP)
    /* Translators: how many there are of a group of parts: "2 off", as on a drawing. */
    return part->pair ? g_strdup_printf (_ ("pair, %s off"), number) : g_strdup_printf (_ ("%s off"), number);
  if (one == NULL)
    {
      gulong n = g_str_equal (number, "1") ? 1 : 2;

      return part->pair ? g_strdup_printf (ngettext ("pair, %s piece", "pair, %s pieces", n), number)
                        : g_strdup_printf (ngettext ("%s piece", "%s pieces", n), number);
    }
  /* Translators: how many, and the size of one. */
  return part->pair ? g_strdup_printf (_ ("pair, %s × %s"), number, one)
                    : g_strdup_printf (_ ("%s × %s"), number, one);
}

char *
gb_part_amount_text (const GbBoat *boat, const GbPart *part)
{
  double n = part->quantity * (part->pair ? 2 : 1);
  gboolean single_group = part->kind == GB_KIND_GROUP && n == 1;
  g_autofree char *number = gb_quantity_format (n, GB_DIM_COUNT, GB_UNITS_METRIC);
  g_autofree char *one = part->kind == GB_KIND_GROUP ? NULL : one_text (boat, part);
  gboolean once = n == 1
                  && (part->takeoff == GB_TAKEOFF_SKIN || part->takeoff == GB_TAKEOFF_COATING
                      || part->takeoff == GB_TAKEOFF_LUMP);

  if (single_group)
    return g_strdup ("");
  /* Nobody says "1 × 2 coats on the hull". */
  if (one != NULL && once)
    return g_steal_pointer (&one);
  return count_text (part, number, one);
}
