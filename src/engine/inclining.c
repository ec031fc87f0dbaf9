/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-inclining"

#include "inclining.h"

#include "boat/quantity.h"
#include "sentences.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Farther over, tan phi is no measure of the lever any more. Common practice, no source: tests stay within a
 * few degrees. */
#define TOO_FAR (15 * G_PI / 180)
/* The condition's displacement may be this much off the test's before it is worth a word; common practice, no
 * source. */
#define MASS_APART 0.02

gboolean
gb_inclining_gm (
    const double *moments, const double *tangents, guint n, double mass, double *gm, double *gm_sd)
{
  double mm = 0, mt = 0, squares = 0, slope;

  *gm = *gm_sd = NAN;
  for (guint i = 0; i < n; i++)
    {
      mm += moments[i] * moments[i];
      mt += moments[i] * tangents[i];
    }
  slope = mt / mm;
  if (!isfinite (slope) || slope == 0 || !(mass > 0))
    return FALSE;
  for (guint i = 0; i < n; i++)
    {
      double off = tangents[i] - slope * moments[i];

      squares += off * off;
    }
  *gm = 1 / (mass * slope);
  /* The slope's relative standard error is GM's. */
  if (n > 1)
    *gm_sd = fabs (*gm / slope) * sqrt (squares / (n - 1) / mm);
  return TRUE;
}

/* The readings that can be used, and what was amiss with them. */
typedef struct
{
  GArray *moments, *tangents; /* of double */
  GArray *numbers;            /* of guint: which one of the test it is, from 1 on */
  gboolean no_line;           /* a deflection without the length of the plumb line */
  gboolean unfinished;        /* a reading that lacks something else */
  gboolean too_far;
} Readings;

double
gb_shift_tangent (const GbShift *shift, double pendulum)
{
  if (!isnan (shift->angle))
    return tan (shift->angle);
  return pendulum > 0 ? shift->deflection / pendulum : NAN;
}

static void
read_shift (Readings *readings, const GbShift *shift, guint number, double pendulum)
{
  double moment = shift->mass * shift->distance, tangent = gb_shift_tangent (shift, pendulum);

  if (isnan (tangent) && !isnan (shift->deflection))
    readings->no_line = TRUE;
  if (!isfinite (moment) || !isfinite (tangent))
    {
      readings->unfinished = TRUE;
      return;
    }
  if (fabs (tangent) > tan (TOO_FAR))
    readings->too_far = TRUE;
  g_array_append_val (readings->moments, moment);
  g_array_append_val (readings->tangents, tangent);
  g_array_append_val (readings->numbers, number);
}

static void
say_readings (GString *trouble, const Readings *readings)
{
  if (readings->moments->len == 0 && !readings->unfinished)
    gb_sentences_add (
        trouble, _ ("There is no reading yet. Enter the weight that was moved, how far, and what was read."));
  if (readings->no_line)
    gb_sentences_add (trouble, _ ("A deflection was read, but the length of the plumb line is not known."));
  else if (readings->unfinished)
    gb_sentences_add (trouble, _ ("A reading that lacks its weight, distance or heel is left out."));
  if (readings->too_far)
    gb_sentences_add (trouble, _ ("She was heeled by more than 15°, which is too far for this method."));
}

/* The readings in which she heels away from the weight, as a list of their numbers; how many they are. */
static guint
contrary_readings (const Readings *readings, GString *list)
{
  guint n = 0;

  for (guint i = 0; i < readings->moments->len; i++)
    if (g_array_index (readings->moments, double, i) * g_array_index (readings->tangents, double, i) < 0)
      g_string_append_printf (list, "%s%u", n++ > 0 ? ", " : "", g_array_index (readings->numbers, guint, i));
  return n;
}

/* A boat that rests upright heels towards the weight; readings that say otherwise were written down wrongly.
 * FALSE with a sentence if there are any. */
static gboolean
check_signs (GString *trouble, const Readings *readings)
{
  g_autoptr (GString) list = g_string_new (NULL);
  guint n = contrary_readings (readings, list);
  g_autofree char *words = NULL;

  if (n == 0)
    return TRUE;
  if (n == readings->moments->len)
    {
      gb_sentences_add (trouble,
                        _ ("She heeled away from the weight. Check which side was taken as starboard."));
      return FALSE;
    }
  /* Translators: the numbers of readings, with commas between them. */
  words = g_strdup_printf (ngettext ("Reading %s heels the other way than its weight was moved.",
                                     "Readings %s heel the other way than their weights were moved.", n),
                           list->str);
  gb_sentences_add (trouble, words);
  return FALSE;
}

/* The number of the reading that is farthest off the line of @gm. */
static guint
farthest_off (const GbInclined *inclined, const Readings *readings)
{
  double farthest = -1;
  guint number = 0;

  for (guint i = 0; i < readings->moments->len; i++)
    {
      double expected = g_array_index (readings->moments, double, i) / (inclined->mass * inclined->gm);
      double off = fabs (g_array_index (readings->tangents, double, i) - expected);

      if (off > farthest)
        {
          farthest = off;
          number = g_array_index (readings->numbers, guint, i);
        }
    }
  return number;
}

/* A value that its own deviation exceeds tells nothing. */
static void
drop_scatter (GbInclined *inclined, GString *trouble, const Readings *readings)
{
  g_autofree char *words = NULL;

  if (!(inclined->gm_sd > inclined->gm))
    return;
  words = g_strdup_printf (_ ("The readings do not agree: nothing can be told from them. Reading %u is "
                              "farthest off."),
                           farthest_off (inclined, readings));
  gb_sentences_add (trouble, words);
  inclined->gm = inclined->gm_sd = NAN;
}

static void
find_gm (GbInclined *inclined, GString *trouble, const Readings *readings)
{
  const double *moments = (const double *) (const void *) readings->moments->data;
  const double *tangents = (const double *) (const void *) readings->tangents->data;

  if (readings->moments->len == 0 || !check_signs (trouble, readings))
    return;
  if (!(inclined->mass > 0))
    {
      gb_sentences_add (
          trouble,
          _ ("The displacement at the test is not known. Enter it, or choose a condition that floats."));
      return;
    }
  if (gb_inclining_gm (moments, tangents, readings->moments->len, inclined->mass, &inclined->gm,
                       &inclined->gm_sd))
    drop_scatter (inclined, trouble, readings);
  else
    gb_sentences_add (trouble,
                      _ ("Nothing was moved, or nothing was read: a stiffness cannot be told from that."));
}

static void
say_mass_apart (GString *trouble, const GbBoat *boat, double mass, double total)
{
  GbUnits units = (GbUnits) gb_boat_build (boat)->units;
  g_autofree char *test = NULL, *condition = NULL, *words = NULL;

  if (!(fabs (mass - total) > MASS_APART * total))
    return;
  test = gb_quantity_format (mass, GB_DIM_MASS, units);
  condition = gb_quantity_format (total, GB_DIM_MASS, units);
  /* Translators: two masses. KM is the height of the metacentre over the keel. */
  words = g_strdup_printf (
      _ ("She weighed %s at the test, and the condition comes to %s: KM is that of the condition."), test,
      condition);
  gb_sentences_add (trouble, words);
}

/* From the stiffness to the height of the weight, by the shape of what is under water. */
static void
find_kg (GbInclined *inclined, GString *trouble, const GbBoat *boat, const GbAfloat *afloat)
{
  if (afloat == NULL)
    {
      gb_sentences_add (
          trouble, _ ("Choose the condition that she was tested in, to learn the height of her weight."));
      return;
    }
  inclined->km = afloat->kb + afloat->bm;
  inclined->computed_gm = afloat->gm;
  inclined->computed_z = afloat->gravity.z;
  if (isnan (inclined->km))
    {
      gb_sentences_add (trouble, afloat->sentence != NULL
                                     ? afloat->sentence
                                     : _ ("It is not known how she floats in that condition."));
      return;
    }
  if (isnan (inclined->gm))
    return;
  say_mass_apart (trouble, boat, inclined->mass, afloat->total);
  /* What was measured is less by what liquids' free surfaces take off. */
  inclined->kg = inclined->km - inclined->gm - afloat->free_surface;
  inclined->z = afloat->keel + inclined->kg;
  inclined->kg_sd = inclined->z_sd = inclined->gm_sd;
}

void
gb_inclined_find (GbInclined *inclined, const GbBoat *boat, const GbInclining *test, const GbAfloat *afloat)
{
  g_autoptr (GArray) moments = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (GArray) tangents = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (GString) trouble = g_string_new (NULL);
  g_autoptr (GArray) numbers = g_array_new (FALSE, FALSE, sizeof (guint));
  const GPtrArray *shifts = gb_record_children (&test->rec);
  Readings readings = { .moments = moments, .tangents = tangents, .numbers = numbers };

  gb_inclined_clear (inclined);
  *inclined = (GbInclined){
    .inclining = test->rec.id,
    .mass = test->mass > 0   ? test->mass
            : afloat != NULL ? afloat->total
                             : NAN,
    .gm = NAN,
    .gm_sd = NAN,
    .km = NAN,
    .kg = NAN,
    .kg_sd = NAN,
    .z = NAN,
    .z_sd = NAN,
    .computed_gm = NAN,
    .computed_z = NAN,
  };
  for (guint i = 0; i < shifts->len; i++)
    read_shift (&readings, shifts->pdata[i], i + 1, test->pendulum);
  inclined->n = moments->len;
  say_readings (trouble, &readings);
  find_gm (inclined, trouble, &readings);
  find_kg (inclined, trouble, boat, afloat);
  if (trouble->len > 0)
    inclined->trouble = g_strdup (trouble->str);
}

void
gb_inclined_clear (GbInclined *inclined)
{
  g_clear_pointer (&inclined->trouble, g_free);
}
