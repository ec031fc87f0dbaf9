/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-working"

/* How the mass of one part came about by its take-off: the amount, then what it is multiplied by. */

#include "working-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const GbMaterial *
material_at (const GbHand *hand, guint index)
{
  return index != GB_NO_MATERIAL ? gb_boat_all (hand->boat, GB_RECORD_MATERIAL)->pdata[index] : NULL;
}

static void
show_sheet_area (GbHand *hand, const GbPart *part, const GbTakenOff *taken)
{
  GbTerm sides[] = { { NULL, part->length, GB_DIM_LENGTH }, { GB_TIMES, part->width, GB_DIM_LENGTH } };

  if (part->outline != NULL)
    gb_hand_step (hand, _ ("Area of the outline, less its holes"),
                  gb_hand_show (hand, taken->amount, GB_DIM_AREA), NULL);
  else if (!isnan (part->area))
    gb_hand_step (hand, _ ("Area, as entered"), gb_hand_show (hand, taken->amount, GB_DIM_AREA), NULL);
  else
    gb_hand_step (hand, _ ("Length × width"), gb_hand_sum (hand, sides, 2, taken->amount, GB_DIM_AREA), NULL);
}

static void
show_section (GbHand *hand, const GbTakenOff *taken)
{
  const GbPartSize *size = &taken->size;
  GbTerm sides[] = { { NULL, size->width, GB_DIM_LENGTH }, { GB_TIMES, size->thickness, GB_DIM_LENGTH } };
  g_autofree char *area = gb_hand_show (hand, taken->per, GB_DIM_AREA);
  g_autofree char *diameter = gb_hand_show (hand, size->diameter, GB_DIM_LENGTH);
  g_autofree char *wall = gb_hand_show (hand, size->wall, GB_DIM_LENGTH);

  if (size->section == GB_SECTION_ROUND)
    gb_hand_step (hand, _ ("Section: π ÷ 4 × diameter²"),
                  g_strdup_printf ("π ÷ 4 × (%s)² = %s", diameter, area), NULL);
  else if (size->section == GB_SECTION_TUBE)
    gb_hand_step (hand, _ ("Section: π × (diameter − wall) × wall"),
                  g_strdup_printf ("π × (%s − %s) × %s = %s", diameter, wall, wall, area), NULL);
  else
    gb_hand_step (hand, _ ("Section: width × thickness"),
                  gb_hand_sum (hand, sides, 2, taken->per, GB_DIM_AREA), NULL);
}

static void
show_volume (GbHand *hand, const GbPart *part, const GbTakenOff *taken)
{
  const GbPartSize *size = &taken->size;
  GbTerm sides[] = { { NULL, size->length, GB_DIM_LENGTH },
                     { GB_TIMES, size->width, GB_DIM_LENGTH },
                     { GB_TIMES, size->thickness, GB_DIM_LENGTH } };

  if (!isnan (part->volume))
    gb_hand_step (hand, _ ("Volume, as entered"), gb_hand_show (hand, taken->amount, GB_DIM_VOLUME), NULL);
  else
    gb_hand_step (hand, _ ("Length × width × thickness"),
                  gb_hand_sum (hand, sides, 3, taken->amount, GB_DIM_VOLUME), NULL);
}

static void
show_skin_area (GbHand *hand, const GbPart *part, const GbTakenOff *taken)
{
  const GbHull *hull = gb_boat_hull (hand->boat, part->hull);
  g_autofree char *name = hull != NULL ? gb_record_dup_title (&hull->rec) : g_strdup ("–");
  g_autofree char *height = gb_hand_show (hand, part->height, GB_DIM_LENGTH), *words = NULL;

  if (part->extent == GB_EXTENT_ALL)
    words = g_strdup_printf (_ ("Surface of %s, from its shape"), name);
  else if (part->extent == GB_EXTENT_BELOW)
    /* Translators: the name of a hull, and a height above the baseline. */
    words = g_strdup_printf (_ ("Surface of %s below %s, from its shape"), name, height);
  else
    /* Translators: the name of a hull, and a height above the baseline. */
    words = g_strdup_printf (_ ("Surface of %s above %s, from its shape"), name, height);
  gb_hand_step (hand, words, gb_hand_show (hand, taken->amount, GB_DIM_AREA), NULL);
}

static void
show_coated_area (GbHand *hand, const GbPart *part, const GbTakenOff *taken)
{
  const GbPart *coated = gb_boat_part (hand->boat, part->surface_of);
  g_autofree char *words = NULL;

  if (!gb_part_coats_others (part))
    words = g_strdup (_ ("Area, as entered"));
  else if (coated == NULL)
    words = g_strdup (_ ("Surfaces"));
  else
    words = gb_hand_title (_ ("Surfaces of %s: both faces and the edges, of all copies"), coated);
  gb_hand_step (hand, words, gb_hand_show (hand, taken->amount, GB_DIM_AREA), NULL);
}

static void
show_amount (GbHand *hand, const GbPart *part, const GbTakenOff *taken)
{
  switch ((GbTakeoff) part->takeoff)
    {
    case GB_TAKEOFF_SHEET:
      show_sheet_area (hand, part, taken);
      break;
    case GB_TAKEOFF_LENGTH:
      if (taken->by == GB_BY_DENSITY)
        show_section (hand, taken);
      break;
    case GB_TAKEOFF_BLOCK:
      show_volume (hand, part, taken);
      break;
    case GB_TAKEOFF_SKIN:
      show_skin_area (hand, part, taken);
      break;
    case GB_TAKEOFF_COATING:
      show_coated_area (hand, part, taken);
      break;
    case GB_TAKEOFF_COUNT:
    case GB_TAKEOFF_LUMP:
    default:
      break;
    }
}

/* What of it all is multiplied, with the words for that. */
typedef struct
{
  const char *words;
  GbTerm terms[4];
  guint n;
} Formula;

static void
add_term (Formula *formula, const char *sign, double value, GbDimension dim)
{
  formula->terms[formula->n++] = (GbTerm){ sign, value, dim };
}

static Formula
formula_of_sheet (const GbTakenOff *taken)
{
  Formula formula = { 0 };

  add_term (&formula, NULL, taken->amount, GB_DIM_AREA);
  if (taken->by == GB_BY_AREAL)
    {
      formula.words = _ ("Area × mass per area");
      add_term (&formula, GB_TIMES, taken->figure, GB_DIM_AREAL);
    }
  else
    {
      formula.words = _ ("Area × thickness × density");
      add_term (&formula, GB_TIMES, taken->per, GB_DIM_LENGTH);
      add_term (&formula, GB_TIMES, taken->figure, GB_DIM_DENSITY);
    }
  return formula;
}

static Formula
formula_of_length (const GbTakenOff *taken)
{
  Formula formula = { 0 };

  add_term (&formula, NULL, taken->amount, GB_DIM_LENGTH);
  if (taken->by == GB_BY_LINEAR)
    {
      formula.words = _ ("Length × mass per length");
      add_term (&formula, GB_TIMES, taken->figure, GB_DIM_LINEAR);
    }
  else
    {
      formula.words = _ ("Length × section × density");
      add_term (&formula, GB_TIMES, taken->per, GB_DIM_AREA);
      add_term (&formula, GB_TIMES, taken->figure, GB_DIM_DENSITY);
    }
  return formula;
}

static Formula
formula_of_coating (const GbPart *part, const GbTakenOff *taken)
{
  Formula formula = { 0 };

  add_term (&formula, NULL, taken->amount, GB_DIM_AREA);
  add_term (&formula, GB_TIMES, part->coats, GB_DIM_COUNT);
  if (taken->by == GB_BY_AREAL)
    {
      formula.words = part->coating == GB_COATING_CLOTH ? _ ("Area × layers × mass per area of the cloth")
                                                        : _ ("Area × coats × mass per area of one coat");
      add_term (&formula, GB_TIMES, taken->figure, GB_DIM_AREAL);
    }
  else
    {
      formula.words = _ ("Area × coats ÷ coverage × density of what stays on");
      add_term (&formula, GB_DIVIDED, part->coverage, GB_DIM_COVERAGE);
      add_term (&formula, GB_TIMES, taken->figure, GB_DIM_DENSITY);
    }
  return formula;
}

static Formula
formula_of (const GbPart *part, const GbTakenOff *taken)
{
  Formula formula = { 0 };

  switch ((GbTakeoff) part->takeoff)
    {
    case GB_TAKEOFF_SHEET:
    case GB_TAKEOFF_SKIN:
      return formula_of_sheet (taken);
    case GB_TAKEOFF_LENGTH:
      return formula_of_length (taken);
    case GB_TAKEOFF_COATING:
      return formula_of_coating (part, taken);
    case GB_TAKEOFF_BLOCK:
      formula.words = _ ("Volume × density");
      add_term (&formula, NULL, taken->amount, GB_DIM_VOLUME);
      add_term (&formula, GB_TIMES, taken->figure, GB_DIM_DENSITY);
      return formula;
    case GB_TAKEOFF_COUNT:
    case GB_TAKEOFF_LUMP:
    default:
      return formula;
    }
}

static void
show_formula (GbHand *hand, const GbPart *part, const GbTakenOff *taken)
{
  Formula formula = formula_of (part, taken);
  const GbMaterial *material = material_at (hand, taken->material);
  g_autofree char *source = material != NULL ? gb_hand_source (hand, material) : NULL;

  if (formula.n == 0)
    gb_hand_step (hand, part->takeoff == GB_TAKEOFF_COUNT ? _ ("Mass of one piece") : _ ("Mass, as entered"),
                  gb_hand_show (hand, taken->mass, GB_DIM_MASS), NULL);
  else
    gb_hand_step (hand, formula.words,
                  gb_hand_sum (hand, formula.terms, formula.n, taken->mass - taken->resin_mass, GB_DIM_MASS),
                  source);
}

static void
show_resin (GbHand *hand, const GbPart *part, const GbTakenOff *taken)
{
  double cloth = taken->mass - taken->resin_mass;
  GbTerm product[] = { { NULL, cloth, GB_DIM_MASS }, { GB_TIMES, part->resin_ratio, GB_DIM_RATIO } };
  GbTerm sum[] = { { NULL, cloth, GB_DIM_MASS }, { GB_PLUS, taken->resin_mass, GB_DIM_MASS } };
  const GbMaterial *resin = material_at (hand, taken->resin);
  g_autofree char *name = resin != NULL ? gb_record_dup_title (&resin->rec) : NULL;

  gb_hand_step (hand, _ ("Resin: mass of the cloth × resin to cloth"),
                gb_hand_sum (hand, product, 2, taken->resin_mass, GB_DIM_MASS), name);
  gb_hand_step (hand, _ ("Cloth + resin"), gb_hand_sum (hand, sum, 2, taken->mass, GB_DIM_MASS), NULL);
}

void
gb_hand_take_off (GbHand *hand, const GbPart *part, const GbTakenOff *taken)
{
  if (taken->trouble != GB_TROUBLE_NONE)
    {
      gb_hand_step (hand, gb_trouble_sentence (taken->trouble), NULL, NULL);
      return;
    }
  show_amount (hand, part, taken);
  show_formula (hand, part, taken);
  if (taken->resin_mass > 0)
    show_resin (hand, part, taken);
}
