/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-working"

/* How a mass came about: of a part by its take-off, of a group by the sum of what is in it, of either by the scale. */

#include "rollup-private.h"
#include "working-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const GbMaterial *
material_at (const GbHand *hand, guint index)
{
  return index != GB_NO_MATERIAL ? gb_boat_all (hand->boat, GB_RECORD_MATERIAL)->pdata[index] : NULL;
}

/* Steps of a take-off --------------------------------------------------------------------------------------------------- */

static void
show_sheet_area (GbHand *hand, const GbPart *part, const GbTakenOff *taken)
{
  GbTerm sides[] = { { NULL, part->length, GB_DIM_LENGTH }, { GB_TIMES, part->width, GB_DIM_LENGTH } };

  if (part->outline != NULL)
    gb_hand_step (hand, _ ("Area of the outline, less its holes"), gb_hand_show (hand, taken->amount, GB_DIM_AREA), NULL);
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
    gb_hand_step (hand, _ ("Section: π ÷ 4 × diameter²"), g_strdup_printf ("π ÷ 4 × (%s)² = %s", diameter, area), NULL);
  else if (size->section == GB_SECTION_TUBE)
    gb_hand_step (hand, _ ("Section: π × (diameter − wall) × wall"),
                  g_strdup_printf ("π × (%s − %s) × %s = %s", diameter, wall, wall, area), NULL);
  else
    gb_hand_step (hand, _ ("Section: width × thickness"), gb_hand_sum (hand, sides, 2, taken->per, GB_DIM_AREA), NULL);
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
    gb_hand_step (hand, _ ("Length × width × thickness"), gb_hand_sum (hand, sides, 3, taken->amount, GB_DIM_VOLUME), NULL);
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
                  gb_hand_sum (hand, formula.terms, formula.n, taken->mass - taken->resin_mass, GB_DIM_MASS), source);
}

static void
show_resin (GbHand *hand, const GbPart *part, const GbTakenOff *taken)
{
  double cloth = taken->mass - taken->resin_mass;
  GbTerm product[] = { { NULL, cloth, GB_DIM_MASS }, { GB_TIMES, part->resin_ratio, GB_DIM_RATIO } };
  GbTerm sum[] = { { NULL, cloth, GB_DIM_MASS }, { GB_PLUS, taken->resin_mass, GB_DIM_MASS } };
  const GbMaterial *resin = material_at (hand, taken->resin);
  g_autofree char *name = resin != NULL ? gb_record_dup_title (&resin->rec) : NULL;

  gb_hand_step (hand, _ ("Resin: mass of the cloth × resin to cloth"), gb_hand_sum (hand, product, 2, taken->resin_mass, GB_DIM_MASS),
                name);
  gb_hand_step (hand, _ ("Cloth + resin"), gb_hand_sum (hand, sum, 2, taken->mass, GB_DIM_MASS), NULL);
}

static void
show_take_off (GbHand *hand, const GbPart *part, const GbTakenOff *taken)
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

/* Copies, scales and spread --------------------------------------------------------------------------------------------- */

static void
show_copies (GbHand *hand, const GbPart *part, double one, double all)
{
  GbTerm terms[3] = { { NULL, one, GB_DIM_MASS } };
  guint n = 1;

  if (isnan (all) || (part->quantity == 1 && !part->pair))
    return;
  if (part->quantity != 1)
    terms[n++] = (GbTerm){ GB_TIMES, part->quantity, GB_DIM_COUNT };
  if (part->pair)
    terms[n++] = (GbTerm){ GB_TIMES, 2, GB_DIM_COUNT };
  gb_hand_step (hand, part->pair ? _ ("All of them, to port and to starboard") : _ ("All of them"),
                gb_hand_sum (hand, terms, n, all, GB_DIM_MASS), NULL);
}

static char *
readings_text (const GbHand *hand, const GbWeighing *weighing, double total)
{
  const GPtrArray *readings = gb_record_children (&weighing->rec);
  g_autoptr (GArray) terms = g_array_new (FALSE, FALSE, sizeof (GbTerm));
  GbTerm tare = { GB_MINUS, weighing->tare, GB_DIM_MASS };

  for (guint i = 0; i < readings->len; i++)
    {
      GbTerm term = { GB_PLUS, ((const GbReading *) readings->pdata[i])->mass, GB_DIM_MASS };

      g_array_append_val (terms, term);
    }
  if (weighing->tare > 0)
    g_array_append_val (terms, tare);
  if (terms->len == 1)
    return gb_hand_show (hand, total, GB_DIM_MASS);
  return gb_hand_sum (hand, (const GbTerm *) (const void *) terms->data, terms->len, total, GB_DIM_MASS);
}

/* What lay on the scale; and what all of them weigh, where that was one. */
static void
show_scale (GbHand *hand, const GbPart *part, const GbMass *mass)
{
  const GbWeighing *weighing = gb_hand_weighing (hand, part != NULL ? part->rec.id : 0);
  gboolean one = part != NULL && weighing != NULL && weighing->on_scale == GB_ON_SCALE_ONE;
  g_autofree char *date = NULL, *words = NULL;

  if (weighing == NULL)
    return;
  date = weighing->date > 0 ? gb_date_format (weighing->date) : NULL;
  /* Translators: a date. */
  words = date != NULL ? g_strdup_printf (_ ("The scale says, on %s"), date) : g_strdup (_ ("The scale says"));
  gb_hand_step (hand, words, readings_text (hand, weighing, one ? mass->unit_mass : mass->mass), NULL);
  if (one)
    show_copies (hand, part, mass->unit_mass, mass->mass);
  gb_hand_step (hand, _ ("That stands instead of what was listed"), gb_hand_show (hand, mass->listed_mass, GB_DIM_MASS), NULL);
}

/* A weighed group above it says what its share is. */
static void
show_share (GbHand *hand, const GbMass *mass)
{
  GbTerm terms[] = { { NULL, mass->mass, GB_DIM_MASS }, { GB_TIMES, mass->scale, GB_DIM_RATIO } };

  if (mass->scale != 1 && mass->mass > 0)
    gb_hand_step (hand, _ ("Its share of what the scale says of the group that it is in"),
                  gb_hand_sum (hand, terms, 2, mass->mass * mass->scale, GB_DIM_MASS), NULL);
}

static void
show_spread (GbHand *hand, const char *words, double mass, double sd)
{
  g_autofree char *mass_text = gb_hand_show (hand, mass, GB_DIM_MASS), *sd_text = gb_hand_show (hand, sd, GB_DIM_MASS);

  if (!isnan (mass) && !isnan (sd))
    gb_hand_step (hand, words, g_strdup_printf ("%s ± %s", mass_text, sd_text), NULL);
}

static void
show_part (GbHand *hand, const GbPart *part, const GbMass *mass)
{
  g_autoptr (GbBook) book = gb_book_new ();
  GbTakenOff taken;

  gb_book_open (book, hand->boat, &hand->findings->hulls);
  gb_take_off (book, part, gb_part_coats_others (part) ? mass->amount : NAN, &taken);
  show_take_off (hand, part, &taken);
  if (taken.trouble == GB_TROUBLE_NONE && mass->trouble != GB_TROUBLE_NONE)
    gb_hand_step (hand, gb_trouble_sentence (mass->trouble), NULL, NULL);
  show_copies (hand, part, taken.mass, mass->listed_mass);
  if (mass->weighed)
    show_scale (hand, part, mass);
  show_share (hand, mass);
  show_spread (hand,
               mass->weighed ? _ ("Standard deviation, from the scale")
                             : _ ("Standard deviation, from the spread of the amount and of the material"),
               mass->mass, mass->mass_sd);
}

/* Sums ------------------------------------------------------------------------------------------------------------------- */

static char *
basis_text (const GbMass *mass)
{
  static const char *const words[GB_N_AS] = { N_ ("estimated"), N_ ("calculated"), N_ ("weighed") };
  guint n = 0, last = 0;

  for (guint i = 0; i < GB_N_AS; i++)
    if (mass->by_as[i] > 0)
      {
        n++;
        last = i;
      }
  if (n == 0)
    return g_strdup ("–");
  return g_strdup (n == 1 ? _ (words[last]) : _ ("mixed"));
}

static void
show_sum (GbHand *hand, const GPtrArray *children, double total)
{
  GbColumnFormat format = gb_column_format (total, gb_quantity_factor (GB_DIM_MASS, hand->units));
  g_autofree char *mass_heading = gb_hand_heading (_ ("Mass"), gb_quantity_unit (GB_DIM_MASS, hand->units));
  g_autofree char *sd_heading = gb_hand_heading (_ ("Standard deviation"), gb_quantity_unit (GB_DIM_MASS, hand->units));

  gb_hand_columns (hand, _ ("Name"), mass_heading, sd_heading, _ ("Basis"), NULL);
  for (guint i = 0; i < children->len; i++)
    {
      const GbMass *mass = gb_rollup_part (&hand->findings->rollup, children->pdata[i]);

      gb_hand_row (hand, gb_record_dup_title (children->pdata[i]), gb_column_show (format, mass->mass),
                   gb_column_show (format, mass->mass_sd), basis_text (mass), NULL);
    }
  gb_hand_row (hand, g_strdup (_ ("Sum")), gb_column_show (format, total), g_strdup (""), g_strdup (""), NULL);
}

static void
show_unknown (GbHand *hand, const GbMass *mass)
{
  g_autofree char *words = NULL;

  if (mass->n_no_mass == 0)
    return;
  words = g_strdup_printf (ngettext ("%u part without a mass is not in it", "%u parts without a mass are not in it", mass->n_no_mass),
                           mass->n_no_mass);
  gb_hand_step (hand, words, NULL, NULL);
}

/* Of those that are known. */
static double
sum_of (const GbRollup *rollup, const GPtrArray *children)
{
  double sum = children->len > 0 ? NAN : 0;

  for (guint i = 0; i < children->len; i++)
    {
      double mass = gb_rollup_part (rollup, children->pdata[i])->mass;

      if (!isnan (mass))
        sum = isnan (sum) ? mass : sum + mass;
    }
  return sum;
}

/* @part: the group, or NULL for the boat. */
static void
show_group (GbHand *hand, const GbPart *part, const GPtrArray *children, const GbMass *mass)
{
  double sum = sum_of (&hand->findings->rollup, children);

  gb_hand_step (hand, _ ("Sum of what is in it, as in the table"), gb_hand_show (hand, sum, GB_DIM_MASS), NULL);
  show_unknown (hand, mass);
  if (mass->weighed)
    show_scale (hand, part, mass);
  else if (part != NULL)
    show_copies (hand, part, sum, mass->mass);
  if (part != NULL)
    show_share (hand, mass);
  show_spread (hand,
               mass->weighed ? _ ("Standard deviation, from the scale")
                             : _ ("Standard deviation: amounts err each for itself, parts of one material together"),
               mass->mass, mass->mass_sd);
  show_sum (hand, children, sum);
}

static void
show_margin (GbHand *hand)
{
  const GbBuild *build = gb_boat_build (hand->boat);
  const GbRollup *rollup = &hand->findings->rollup;
  const GbMargin *margin = &rollup->margin;
  const double shares[GB_N_AS] = { build->margin_estimated, build->margin_calculated, build->margin_weighed };
  const double parts[GB_N_AS] = { margin->estimated, margin->calculated, margin->weighed };
  const char *words[GB_N_AS] = { _ ("Margin on what is estimated"), _ ("Margin on what is calculated"),
                                 _ ("Margin on what was weighed") };
  GbTerm sum[] = { { NULL, rollup->boat.mass, GB_DIM_MASS }, { GB_PLUS, margin->total, GB_DIM_MASS } };

  for (guint i = 0; i < GB_N_AS; i++)
    {
      GbTerm terms[] = { { NULL, rollup->boat.by_as[i], GB_DIM_MASS }, { GB_TIMES, shares[i], GB_DIM_RATIO } };

      if (parts[i] > 0)
        gb_hand_step (hand, words[i], gb_hand_sum (hand, terms, 2, parts[i], GB_DIM_MASS), NULL);
    }
  if (margin->fixed > 0)
    gb_hand_step (hand, _ ("Margin, fixed"), gb_hand_show (hand, margin->fixed, GB_DIM_MASS), NULL);
  gb_hand_step (hand, _ ("Light craft + margin"), gb_hand_sum (hand, sum, 2, rollup->boat.mass + margin->total, GB_DIM_MASS), NULL);
}

GbWorking *
gb_working_mass (const GbBoat *boat, const GbFindings *findings, gint64 part_id)
{
  const GbPart *part = gb_boat_part (boat, part_id);
  GbHand hand;

  if (part_id == 0)
    {
      hand = gb_hand_start (boat, findings, g_strdup (_ ("Mass of the boat")));
      show_group (&hand, NULL, gb_boat_roots (boat, GB_RECORD_PART), &findings->rollup.boat);
      show_margin (&hand);
      return hand.working;
    }
  if (part == NULL)
    return gb_hand_of_nothing (boat);
  /* Translators: the name of a part. */
  hand = gb_hand_start (boat, findings, gb_hand_title (_ ("Mass of %s"), part));
  if (gb_part_gathers (part))
    show_group (&hand, part, gb_record_children (&part->rec), gb_rollup_part (&findings->rollup, part));
  else
    show_part (&hand, part, gb_rollup_part (&findings->rollup, part));
  return hand.working;
}
