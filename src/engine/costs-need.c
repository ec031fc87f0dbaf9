/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-costs-need"

/* From a part's amount to pieces of the stock that it is made from. */

#include "costs-private.h"
#include "rollup-private.h"

#include <math.h>

static double
sheets (const GbStock *stock, const GbPart *part, const GbMass *mass)
{
  double layers = part->takeoff == GB_TAKEOFF_COATING ? part->coats : 1;

  if (part->takeoff == GB_TAKEOFF_LENGTH || part->takeoff == GB_TAKEOFF_BLOCK)
    return NAN;
  return mass->amount * layers / (stock->length * stock->width);
}

/* A skin of strips, or a deck of planks, is laid side by side. */
static double
lengths (const GbStock *stock, const GbPart *part, const GbMass *mass)
{
  switch ((GbTakeoff) part->takeoff)
    {
    case GB_TAKEOFF_LENGTH:
      return mass->amount / stock->length;
    case GB_TAKEOFF_SHEET:
    case GB_TAKEOFF_SKIN:
      return mass->amount / (stock->length * stock->width);
    default:
      return NAN;
    }
}

static double
blocks (const GbStock *stock, const GbPart *part, const GbMass *mass)
{
  if (part->takeoff != GB_TAKEOFF_BLOCK)
    return NAN;
  return mass->amount / (stock->length * stock->width * stock->thickness);
}

/* By what the tin says that is in it: volume or mass, of which the density makes the other. */
static double
tins_for (const GbStock *tin, double density, double volume, double mass)
{
  if (!isnan (tin->volume) && !isnan (volume))
    return volume / tin->volume;
  if (!isnan (tin->mass) && !isnan (mass))
    return mass / tin->mass;
  if (!isnan (tin->volume))
    return mass / (density * tin->volume);
  return volume * density / tin->mass;
}

static double
taken_off_mass (const GbPart *part, const GbMass *mass)
{
  return mass->listed_mass / gb_part_copies (part);
}

double
gb_tins_of_resin (const GbStock *tin, double density, const GbPart *part, const GbMass *mass)
{
  return tins_for (tin, density, NAN,
                   taken_off_mass (part, mass) * part->resin_ratio / (1 + part->resin_ratio));
}

static double
tins (const GbStock *tin, double density, const GbPart *part, const GbMass *mass)
{
  double volume = NAN;

  if (part->takeoff == GB_TAKEOFF_COATING && part->coating == GB_COATING_CLOTH)
    return gb_tins_of_resin (tin, density, part, mass);
  if (part->takeoff == GB_TAKEOFF_COATING)
    volume = mass->amount * part->coats / part->coverage;
  else if (part->takeoff == GB_TAKEOFF_BLOCK)
    volume = mass->amount;
  return tins_for (tin, density, volume, taken_off_mass (part, mass));
}

static double
pieces (const GbStock *stock, double density, const GbPart *part, const GbMass *mass)
{
  if (part->takeoff == GB_TAKEOFF_COUNT)
    return mass->amount;
  switch ((GbForm) stock->form)
    {
    case GB_FORM_SHEET:
      return sheets (stock, part, mass);
    case GB_FORM_LENGTH:
      return lengths (stock, part, mass);
    case GB_FORM_BLOCK:
      return blocks (stock, part, mass);
    case GB_FORM_TIN:
      return tins (stock, density, part, mass);
    case GB_FORM_PIECE:
    default:
      return 1;
    }
}

double
gb_pieces_of_stock (const GbStock *stock, double density, const GbPart *part, const GbMass *mass)
{
  double n = pieces (stock, density, part, mass);

  return isfinite (n) ? n : NAN;
}
