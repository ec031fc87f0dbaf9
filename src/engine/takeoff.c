/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-takeoff"

#include "takeoff-book.h"

#include <glib/gi18n-lib.h>
#include <math.h>

const char *
gb_trouble_sentence (GbTrouble trouble)
{
  switch (trouble)
    {
    case GB_TROUBLE_NO_MATERIAL:
      return _ ("It has no material. Choose one, or stock that has one.");
    case GB_TROUBLE_NO_DENSITY:
      return _ ("Its material lacks the figure that is needed here. Enter a density, or a mass per area or "
                "length, on the materials page.");
    case GB_TROUBLE_NO_SIZE:
      return _ ("A size is missing. Enter what is still empty, or choose stock that has it.");
    case GB_TROUBLE_BAD_SIZE:
      return _ ("Its sizes cannot be. Look for one that is not above nothing, or for a wall thicker than its "
                "tube.");
    case GB_TROUBLE_BAD_OUTLINE:
      return _ ("Its outline cannot be read, crosses itself or has no area. Correct its points.");
    case GB_TROUBLE_NO_HULL:
      return _ ("It is the skin of no hull. Choose a hull.");
    case GB_TROUBLE_BAD_HULL:
      return _ ("Its hull has no shape yet. See what is wrong with it on the hulls page.");
    case GB_TROUBLE_NO_SURFACE:
      return _ (
          "There is nothing to coat. Enter an area, or choose another part or group that has surfaces.");
    case GB_TROUBLE_NO_MASS:
      return _ ("It has no mass. Enter what one weighs.");
    case GB_TROUBLE_NONE:
    default:
      return "";
    }
}

/* The first thing that is wrong is the one that is told. */
static void
note (GbTakenOff *taken, GbTrouble trouble)
{
  if (taken->trouble == GB_TROUBLE_NONE)
    taken->trouble = trouble;
}

static double
need (GbTakenOff *taken, double size, GbTrouble without)
{
  if (size > 0 && isfinite (size))
    return size;
  note (taken, isnan (size) ? without : GB_TROUBLE_BAD_SIZE);
  return NAN;
}

static double
need_size (GbTakenOff *taken, double size)
{
  return need (taken, size, GB_TROUBLE_NO_SIZE);
}

static void
give_own_figure (GbTakenOff *taken, GbFigureKind by, double figure, GbTrouble without)
{
  taken->by = by;
  taken->figure = need (taken, figure, without);
}

/* The figure of the sort @natural; of a material that is known by area or by length, that one. */
static void
give_figure (GbBook *book, GbTakenOff *taken, GbFigureKind natural)
{
  const GbMaterial *material = gb_book_material (book, taken->size.material);
  const GbMaterialFigures *figures;

  taken->by = natural;
  if (material == NULL)
    {
      note (taken, GB_TROUBLE_NO_MATERIAL);
      return;
    }
  figures = gb_book_figures (book, material->rec.index);
  if (natural == GB_BY_DENSITY)
    taken->figure = figures->density;
  else
    taken->figure = natural == GB_BY_AREAL ? figures->areal_mass : figures->linear_mass;
  taken->material = material->rec.index;
  if (!(taken->figure > 0 && isfinite (taken->figure)))
    {
      taken->figure = NAN;
      note (taken, GB_TROUBLE_NO_DENSITY);
    }
}

static gboolean
is_known_by (GbBook *book, const GbTakenOff *taken, GbMeasure measure)
{
  const GbMaterial *material = gb_book_material (book, taken->size.material);

  return material != NULL && material->measure == (gint64) measure;
}

static void
extend_box (GbTakenOff *taken, double length, double width, double thickness)
{
  taken->extent = (GbMoments){
    .m = 1, .xx = length * length / 12, .yy = width * width / 12, .zz = thickness * thickness / 12
  };
}

static double
or_zero (double size)
{
  return size > 0 ? size : 0;
}

/* Of so much area, by thickness and density or by mass per area. */
static void
give_areal_figure (GbBook *book, GbTakenOff *taken)
{
  if (is_known_by (book, taken, GB_MEASURE_AREAL))
    {
      give_figure (book, taken, GB_BY_AREAL);
      taken->per = 1;
    }
  else
    {
      give_figure (book, taken, GB_BY_DENSITY);
      taken->per = need_size (taken, taken->size.thickness);
    }
}

/* Gives the length of the edges all round; NAN where the shape is not known. */
static double
measure_outline (GbBook *book, const char *text, GbTakenOff *taken)
{
  const GbOutlineProperties *outline = gb_book_outline (book, text);

  if (outline == NULL)
    {
      note (taken, GB_TROUBLE_BAD_OUTLINE);
      return NAN;
    }
  taken->amount = outline->area;
  extend_box (taken, 0, 0, or_zero (taken->size.thickness));
  taken->extent.xx = outline->iyy / outline->area;
  taken->extent.yy = outline->ixx / outline->area;
  taken->extent.xy = outline->ixy / outline->area;
  return outline->perimeter;
}

static double
measure_sheet (GbBook *book, const GbPart *part, GbTakenOff *taken)
{
  double length, width;

  if (part->outline != NULL)
    return measure_outline (book, part->outline, taken);
  if (!isnan (part->area))
    {
      taken->amount = need_size (taken, part->area);
      return NAN;
    }
  length = need_size (taken, part->length);
  width = need_size (taken, part->width);
  taken->amount = length * width;
  extend_box (taken, length, width, or_zero (taken->size.thickness));
  return 2 * (length + width);
}

static void
take_off_sheet (GbBook *book, const GbPart *part, GbTakenOff *taken)
{
  double edge = measure_sheet (book, part, taken);

  taken->surface = 2 * taken->amount + (isnan (edge) ? 0 : edge * or_zero (taken->size.thickness));
  give_areal_figure (book, taken);
}

static void
measure_rectangle (GbTakenOff *taken, double length)
{
  double width = need_size (taken, taken->size.width), thickness = need_size (taken, taken->size.thickness);

  taken->per = width * thickness;
  taken->surface = 2 * (width + thickness) * length + 2 * taken->per;
  extend_box (taken, length, width, thickness);
}

/* Solid where @wall is the radius. */
static void
measure_tube (GbTakenOff *taken, double length, double diameter, double wall)
{
  double inside = diameter - 2 * wall;

  if (inside < 0)
    {
      note (taken, GB_TROUBLE_BAD_SIZE);
      return;
    }
  taken->per = G_PI * (diameter - wall) * wall;
  taken->surface = G_PI * diameter * length + 2 * taken->per;
  taken->extent = (GbMoments){ .m = 1,
                               .xx = length * length / 12,
                               .yy = (diameter * diameter + inside * inside) / 16,
                               .zz = (diameter * diameter + inside * inside) / 16 };
}

static void
measure_section (GbTakenOff *taken, double length)
{
  double diameter;

  switch (taken->size.section)
    {
    case GB_SECTION_ROUND:
      diameter = need_size (taken, taken->size.diameter);
      measure_tube (taken, length, diameter, diameter / 2);
      break;
    case GB_SECTION_TUBE:
      diameter = need_size (taken, taken->size.diameter);
      measure_tube (taken, length, diameter, need_size (taken, taken->size.wall));
      break;
    case GB_SECTION_RECTANGLE:
    case GB_SECTION_LINEAR:
    default:
      measure_rectangle (taken, length);
      break;
    }
}

static void
take_off_length (GbBook *book, const GbPart *part, GbTakenOff *taken)
{
  double length = need_size (taken, part->length);
  gboolean by_material = is_known_by (book, taken, GB_MEASURE_LINEAR);

  taken->amount = length;
  if (taken->size.section != GB_SECTION_LINEAR && !by_material)
    {
      measure_section (taken, length);
      give_figure (book, taken, GB_BY_DENSITY);
      return;
    }
  taken->per = 1;
  extend_box (taken, length, 0, 0);
  if (taken->size.section == GB_SECTION_LINEAR && !isnan (taken->size.linear_mass))
    give_own_figure (taken, GB_BY_LINEAR, taken->size.linear_mass, GB_TROUBLE_NO_MASS);
  else
    give_figure (book, taken, GB_BY_LINEAR);
}

static void
take_off_block (GbBook *book, const GbPart *part, GbTakenOff *taken)
{
  taken->per = 1;
  if (!isnan (part->volume))
    {
      taken->amount = need_size (taken, part->volume);
    }
  else
    {
      double l = need_size (taken, taken->size.length), w = need_size (taken, taken->size.width);
      double t = need_size (taken, taken->size.thickness);

      taken->amount = l * w * t;
      taken->surface = 2 * (l * w + w * t + t * l);
      extend_box (taken, l, w, t);
    }
  give_figure (book, taken, GB_BY_DENSITY);
}

static void
measure_skin (GbBook *book, const GbPart *part, GbTakenOff *taken)
{
  const GbHullShape *hull = gb_book_hull (book, part->hull);
  GbMoments moments;

  if (hull == NULL || hull->mesh == NULL)
    {
      note (taken, hull == NULL ? GB_TROUBLE_NO_HULL : GB_TROUBLE_BAD_HULL);
      return;
    }
  if (part->extent != GB_EXTENT_ALL && isnan (part->height))
    {
      note (taken, GB_TROUBLE_NO_SIZE);
      return;
    }
  moments = gb_book_skin (book, part);
  taken->amount = taken->surface = need (taken, moments.m > 0 ? moments.m : NAN, GB_TROUBLE_NO_SURFACE);
  taken->centre[0] = moments.x / moments.m;
  taken->centre[1] = moments.y / moments.m;
  taken->centre[2] = moments.z / moments.m;
  gb_moments_centre (&moments);
  gb_moments_scale (&moments, 1 / moments.m);
  taken->extent = moments;
}

static void
take_off_skin (GbBook *book, const GbPart *part, GbTakenOff *taken)
{
  measure_skin (book, part, taken);
  if (!isnan (taken->size.thickness) || isnan (part->areal_mass))
    {
      give_areal_figure (book, taken);
      return;
    }
  taken->per = 1;
  give_own_figure (taken, GB_BY_AREAL, part->areal_mass, GB_TROUBLE_NO_MASS);
}

gboolean
gb_part_coats_others (const GbPart *part)
{
  return part->takeoff == GB_TAKEOFF_COATING && isnan (part->area) && part->surface_of != 0;
}

/* The cloth as such; then resin by its ratio to that. */
static void
take_off_cloth (GbBook *book, const GbPart *part, GbTakenOff *taken)
{
  const GbMaterial *resin = gb_book_material (book, part->resin);

  taken->per = need_size (taken, part->coats);
  give_figure (book, taken, GB_BY_AREAL);
  taken->resin_mass = taken->amount * taken->per * taken->figure * part->resin_ratio;
  if (!(part->resin_ratio >= 0))
    note (taken, isnan (part->resin_ratio) ? GB_TROUBLE_NO_SIZE : GB_TROUBLE_BAD_SIZE);
  if (resin != NULL)
    taken->resin = resin->rec.index;
}

/* A paint's density is that of what stays on; so is the mass per area of one coat. */
static void
take_off_paint (GbBook *book, const GbPart *part, GbTakenOff *taken)
{
  double coats = need_size (taken, part->coats);

  if (is_known_by (book, taken, GB_MEASURE_AREAL))
    {
      taken->per = coats;
      give_figure (book, taken, GB_BY_AREAL);
      return;
    }
  taken->per = coats / need_size (taken, part->coverage);
  give_figure (book, taken, GB_BY_DENSITY);
}

static void
take_off_coating (GbBook *book, const GbPart *part, double coated, GbTakenOff *taken)
{
  taken->amount = need (taken, isnan (part->area) ? coated : part->area, GB_TROUBLE_NO_SURFACE);
  if (part->coating == GB_COATING_CLOTH)
    take_off_cloth (book, part, taken);
  else
    take_off_paint (book, part, taken);
}

static void
take_off_pieces (GbTakenOff *taken, double mass)
{
  taken->amount = taken->per = 1;
  give_own_figure (taken, GB_BY_MASS, mass, GB_TROUBLE_NO_MASS);
}

/* One by one: clearing the struct as a whole costs as much as a take-off. */
static inline void
start (GbTakenOff *taken)
{
  taken->trouble = GB_TROUBLE_NONE;
  taken->by = GB_BY_MASS;
  taken->amount = taken->per = taken->figure = NAN;
  taken->resin_mass = 0;
  taken->material = taken->resin = GB_NO_MATERIAL;
  taken->surface = NAN;
  taken->centre[0] = taken->centre[1] = taken->centre[2] = NAN;
  taken->extent = (GbMoments){ 0 };
}

/* What a scale may still weigh is a point until its sizes are known. */
static inline void
finish (GbTakenOff *taken)
{
  if (taken->trouble == GB_TROUBLE_NONE)
    {
      taken->mass = taken->amount * taken->per * taken->figure + taken->resin_mass;
      return;
    }
  taken->mass = NAN;
  if (!isfinite (taken->extent.xx + taken->extent.yy + taken->extent.zz))
    taken->extent = (GbMoments){ 0 };
}

void
gb_take_off (GbBook *book, const GbPart *part, double coated, GbTakenOff *taken)
{
  start (taken);
  taken->size = gb_part_size_from (part, gb_book_stock (book, part->stock));
  switch ((GbTakeoff) part->takeoff)
    {
    case GB_TAKEOFF_SHEET:
      take_off_sheet (book, part, taken);
      break;
    case GB_TAKEOFF_LENGTH:
      take_off_length (book, part, taken);
      break;
    case GB_TAKEOFF_BLOCK:
      take_off_block (book, part, taken);
      break;
    case GB_TAKEOFF_SKIN:
      take_off_skin (book, part, taken);
      break;
    case GB_TAKEOFF_COATING:
      take_off_coating (book, part, coated, taken);
      break;
    case GB_TAKEOFF_COUNT:
      take_off_pieces (taken, taken->size.unit_mass);
      break;
    case GB_TAKEOFF_LUMP:
    default:
      take_off_pieces (taken, part->mass);
      break;
    }
  finish (taken);
}
