/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-afloat"

/* How she floats, in sentences. */

#include "afloat-private.h"

#include "boat/quantity.h"

#include <glib/gi18n-lib.h>

/* A person outside these is a slip of the pen. */
#define LIGHTEST_PERSON 1.0
#define HEAVIEST_PERSON 500.0

/* Less than this is level, or upright: nobody sees it. */
#define SMALLEST_SHOWN (0.05 * G_PI / 180)

/* Loads ------------------------------------------------------------------------------------------------- */

/* TRUE where it lies outside the box round the hulls by more than half their length; a rope may pull at the
 * masthead, which is higher. */
static gboolean
is_outside (const GbCase *self, const GbCaseLoad *load)
{
  GbVec3 p = load->centre;
  double reach = (self->most.x - self->least.x) / 2;
  double above = load->kind == GB_LOAD_PULL ? 5 * reach : reach;

  return p.x < self->least.x - reach || p.x > self->most.x + reach || p.y < self->least.y - reach
         || p.y > self->most.y + reach || p.z < self->least.z - reach || p.z > self->most.z + above;
}

static char *
person_trouble (const GbCase *self, const GbCaseLoad *load)
{
  g_autofree char *mass = gb_quantity_format (load->each, GB_DIM_MASS, self->units);

  /* Translators: the name of a load, and a mass that no person has. */
  return g_strdup_printf (_ ("“%s”: a person of %s?"), load->name, mass);
}

/* A tank filled to the brim is no more than full. */
static gboolean
is_overfull (const GbCaseLoad *load)
{
  return load->holds > 0 && load->each > load->holds * (1 + 1e-6);
}

static char *
tank_trouble (const GbCase *self, const GbCaseLoad *load)
{
  g_autofree char *mass = gb_quantity_format (load->each, GB_DIM_MASS, self->units);
  g_autofree char *holds = gb_quantity_format (load->holds, GB_DIM_MASS, self->units);

  /* Translators: the name of a tank, and two masses. */
  return g_strdup_printf (_ ("“%s”: %s is more than the tank holds, %s."), load->name, mass, holds);
}

static void
add_load_troubles (const GbCase *self, const GbCaseLoad *load, GPtrArray *troubles)
{
  if (isnan (load->weight))
    {
      g_ptr_array_add (troubles,
                       g_strdup_printf (_ ("“%s” has no mass yet, so it is left out."), load->name));
      return;
    }
  if (load->kind == GB_LOAD_PERSON && !(load->each >= LIGHTEST_PERSON && load->each <= HEAVIEST_PERSON))
    g_ptr_array_add (troubles, person_trouble (self, load));
  if (is_overfull (load))
    g_ptr_array_add (troubles, tank_trouble (self, load));
  if (isnan (load->centre.x))
    g_ptr_array_add (
        troubles, g_strdup_printf (_ ("“%s” has no place yet: it is taken to lie at the boat's own centre."),
                                   load->name));
  else if (is_outside (self, load))
    g_ptr_array_add (troubles, g_strdup_printf (_ ("“%s” lies far outside the boat."), load->name));
}

void
gb_case_add_troubles (const GbCase *self, GPtrArray *troubles)
{
  for (guint i = 0; i < self->loads->len; i++)
    add_load_troubles (self, &g_array_index (self->loads, GbCaseLoad, i), troubles);
}

/* State ------------------------------------------------------------------------------------------------- */

/* The opening that is under water even with nobody aboard; NULL: none is. */
static const GbEdgeLine *
opening_too_low (const GbCase *self, const GbAfloat *afloat)
{
  int line = gb_edge_set_least (&self->edges, gb_attitude (0, 0, 0)).line;
  const GbEdgeLine *lowest = line >= 0 ? self->edges.lines->pdata[line] : NULL;

  return lowest != NULL && lowest->opening != 0 && afloat->most < self->light ? lowest : NULL;
}

static char *
sinks_sentence (const GbCase *self, const GbAfloat *afloat)
{
  const GbEdgeLine *opening = opening_too_low (self, afloat);
  g_autofree char *total = gb_quantity_format (afloat->total, GB_DIM_MASS, self->units);
  g_autofree char *most = gb_quantity_format (afloat->most, GB_DIM_MASS, self->units);

  if (opening != NULL && !(afloat->most > 0))
    return g_strdup_printf (_ ("She sinks: “%s” is under water however light she is."), opening->name);
  if (opening != NULL)
    /* Translators: two masses, and the name of an opening. */
    return g_strdup_printf (_ ("She sinks: %s all up, and from %s on “%s” is under water."), total, most,
                            opening->name);
  /* Translators: two masses: of the boat with all that is aboard, and what the hulls carry. */
  return g_strdup_printf (_ ("She sinks: %s all up, %s floats her."), total, most);
}

static char *
fills_sentence (const GbCase *self, const GbAfloat *afloat)
{
  const GbEdgeLine *line = self->edges.lines->pdata[afloat->least.line];
  g_autofree char *under = gb_quantity_format (-afloat->least.freeboard, GB_DIM_LENGTH, self->units);

  return g_strdup_printf (_ ("She fills: the edge of “%s” is %s under water."), line->name, under);
}

static char *
over_sentence (const GbCase *self, const GbAfloat *afloat)
{
  g_autofree char *heel = gb_quantity_format (fabs (afloat->heel), GB_DIM_ANGLE, self->units);

  return g_strdup_printf (_ ("She has gone over: she comes to rest at %s of heel."), heel);
}

char *
gb_afloat_sentence (const GbCase *self, const GbAfloat *afloat)
{
  switch (afloat->state)
    {
    case GB_AFLOAT_UNKNOWN:
      return g_strdup (self->trouble != NULL ? self->trouble : _ ("She finds no rest."));
    case GB_AFLOAT_SINKS:
      return sinks_sentence (self, afloat);
    case GB_AFLOAT_FILLS:
      return fills_sentence (self, afloat);
    case GB_AFLOAT_OVER:
      return over_sentence (self, afloat);
    case GB_AFLOAT_FLOATS:
    default:
      return NULL;
    }
}

/* Attitude ---------------------------------------------------------------------------------------------- */

static char *
trim_text (double trim)
{
  double degrees = fabs (trim) * 180 / G_PI;

  if (!(fabs (trim) >= SMALLEST_SHOWN))
    return g_strdup (_ ("level"));
  if (trim > 0)
    /* Translators: how much deeper the bow lies than when level. */
    return g_strdup_printf (_ ("%.1f° by the bow"), degrees);
  return g_strdup_printf (_ ("%.1f° by the stern"), degrees);
}

static char *
heel_text (double heel)
{
  double degrees = fabs (heel) * 180 / G_PI;

  if (!(fabs (heel) >= SMALLEST_SHOWN))
    return g_strdup (_ ("upright"));
  if (heel > 0)
    return g_strdup_printf (_ ("%.1f° to starboard"), degrees);
  return g_strdup_printf (_ ("%.1f° to port"), degrees);
}

char *
gb_afloat_attitude_text (const GbAfloat *afloat)
{
  g_autofree char *trim = NULL, *heel = NULL;

  if (isnan (afloat->trim) || isnan (afloat->heel))
    return g_strdup (afloat->sentence);
  trim = trim_text (afloat->trim);
  heel = heel_text (afloat->heel);
  /* Translators: trim, then heel: "1.2° by the bow, upright". */
  return g_strdup_printf (_ ("%s, %s"), trim, heel);
}
