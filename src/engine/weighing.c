/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-weighing"

#include "weighing.h"

#include <math.h>

#define SCALE_SPREAD 0.005
#define SCALE_LEAST 0.005 /* kg */

double
gb_reading_sd (const GbWeighing *weighing, double mass)
{
  return isnan (weighing->mass_sd) ? MAX (SCALE_SPREAD * fabs (mass), SCALE_LEAST) : weighing->mass_sd;
}

static double
copies_of (const GbPart *part)
{
  return part->quantity * (part->pair ? 2 : 1);
}

double
gb_weighing_copies (const GbBoat *boat, const GbWeighing *weighing)
{
  const GbPart *part = gb_boat_part (boat, weighing->part);

  return part != NULL && weighing->on_scale == GB_ON_SCALE_ALL ? copies_of (part) : 1;
}

static double
place (const GbReading *reading, guint axis)
{
  return axis == 0 ? reading->x : reading->y;
}

/* TRUE if each support says its place along the axis and they stand apart. */
static gboolean
supports_tell (const GPtrArray *readings, guint axis)
{
  gboolean apart = FALSE;

  for (guint i = 0; i < readings->len; i++)
    {
      double here = place (readings->pdata[i], axis);

      if (isnan (here))
        return FALSE;
      if (here != place (readings->pdata[0], axis))
        apart = TRUE;
    }
  return apart;
}

static double
tare_of_each (const GbWeighing *weighing, guint n_readings)
{
  return isnan (weighing->tare) ? 0 : weighing->tare / n_readings;
}

static double
total_of (const GbWeighing *weighing, const GPtrArray *readings)
{
  double total = 0;

  for (guint i = 0; i < readings->len; i++)
    total += ((const GbReading *) readings->pdata[i])->mass - tare_of_each (weighing, readings->len);
  return total > 0 ? total : NAN;
}

static double
variance_of (const GbWeighing *weighing, const GPtrArray *readings)
{
  double variance = 0;

  for (guint i = 0; i < readings->len; i++)
    {
      double sd = gb_reading_sd (weighing, ((const GbReading *) readings->pdata[i])->mass);

      variance += sd * sd;
    }
  return variance;
}

/* Where the centre of what lay there is along one axis, and its standard deviation. */
static void
locate (const GbWeighing *weighing, const GPtrArray *readings, guint axis, double *at, double *sd)
{
  double total = total_of (weighing, readings), moment = 0, variance = 0;

  *at = *sd = NAN;
  if (isnan (total) || !supports_tell (readings, axis))
    return;
  for (guint i = 0; i < readings->len; i++)
    {
      const GbReading *reading = readings->pdata[i];

      moment += (reading->mass - tare_of_each (weighing, readings->len)) * place (reading, axis);
    }
  *at = moment / total;
  for (guint i = 0; i < readings->len; i++)
    {
      const GbReading *reading = readings->pdata[i];
      double term = gb_reading_sd (weighing, reading->mass) * (place (reading, axis) - *at) / total;

      variance += term * term;
    }
  *sd = sqrt (variance);
}

void
gb_weighing_work_out (const GbBoat *boat, const GbWeighing *weighing, GbWeighed *weighed)
{
  const GPtrArray *readings = gb_record_children (&weighing->rec);
  const GbPart *part = gb_boat_part (boat, weighing->part);
  double of_all = part != NULL && weighing->on_scale == GB_ON_SCALE_ONE ? copies_of (part) : 1;

  *weighed = (GbWeighed){
    .weighing = weighing->rec.id, .part = weighing->part, .date = weighing->date, .listed = NAN
  };
  weighed->mass = total_of (weighing, readings) * of_all;
  weighed->mass_sd = isnan (weighed->mass) ? NAN : sqrt (variance_of (weighing, readings)) * of_all;
  locate (weighing, readings, 0, &weighed->x, &weighed->x_sd);
  locate (weighing, readings, 1, &weighed->y, &weighed->y_sd);
}

/* Covariance of the mass and of its moments about the origin of the readings' axes. */
static GbMoments
reading_errors (const GbWeighing *weighing)
{
  const GPtrArray *readings = gb_record_children (&weighing->rec);
  GbMoments errors = { 0 };

  for (guint i = 0; i < readings->len; i++)
    {
      const GbReading *reading = readings->pdata[i];
      double sd = gb_reading_sd (weighing, reading->mass), v = sd * sd;

      errors.m += v;
      errors.x += v * reading->x;
      errors.y += v * reading->y;
      errors.xx += v * reading->x * reading->x;
      errors.yy += v * reading->y * reading->y;
      errors.xy += v * reading->x * reading->y;
    }
  return errors;
}

GbOnScaleOne
gb_weighing_of_one (const GbBoat *boat,
                    const GbWeighing *weighing,
                    const GbWeighed *weighed,
                    double centre[3])
{
  const GbPart *part = gb_boat_part (boat, weighing->part);
  gboolean both_sides = part != NULL && part->pair && weighing->on_scale == GB_ON_SCALE_ALL;
  double copies = part != NULL ? copies_of (part) : 1, on_scale = gb_weighing_copies (boat, weighing);
  GbOnScaleOne one = { .mass = weighed->mass / copies };
  GbMoments from = reading_errors (weighing), *to = &one.errors;

  one.told[0] = !isnan (weighed->x);
  one.told[1] = !isnan (weighed->y) && !both_sides;
  if (one.told[0])
    centre[0] = weighed->x;
  if (one.told[1])
    centre[1] = weighed->y;

  /* A moment that the supports do not tell is the mass times a place, and errs with the mass alone. */
  to->m = from.m;
  to->x = one.told[0] ? from.x : centre[0] * from.m;
  to->y = one.told[1] ? from.y : centre[1] * from.m;
  to->z = centre[2] * from.m;
  to->xx = one.told[0] ? from.xx : centre[0] * to->x;
  to->yy = one.told[1] ? from.yy : centre[1] * to->y;
  to->zz = centre[2] * to->z;
  to->zx = centre[2] * to->x;
  to->yz = centre[2] * to->y;
  if (one.told[0] && one.told[1])
    to->xy = from.xy;
  else
    to->xy = one.told[0] ? centre[1] * to->x : centre[0] * to->y;
  gb_moments_scale (to, 1 / (on_scale * on_scale));
  return one;
}

typedef struct
{
  GbStanding standing;
  gint64 date;
} Candidate;

static int
compare_candidates (gconstpointer a, gconstpointer b)
{
  const Candidate *c = a, *d = b;

  if (c->standing.part != d->standing.part)
    return c->standing.part < d->standing.part ? -1 : 1;
  if (c->date != d->date)
    return c->date < d->date ? -1 : 1;
  return c->standing.weighing < d->standing.weighing ? -1 : c->standing.weighing > d->standing.weighing;
}

/* FALSE if it can stand for nothing: no mass, or a part that is not in the boat or of which there is none. */
static gboolean
find_subject (const GbBoat *boat, const GbWeighed *weighed, guint *part)
{
  const GbPart *subject = gb_boat_part (boat, weighed->part);

  *part = subject != NULL ? subject->rec.index : GB_WHOLE_BOAT;
  if (!(weighed->mass > 0))
    return FALSE;
  if (weighed->part == 0)
    return TRUE;
  return subject != NULL && subject->rec.index != G_MAXUINT && copies_of (subject) > 0;
}

void
gb_weighings_find (GbWeighed *weighed, GArray *standing, const GbBoat *boat, gint64 until)
{
  const GPtrArray *all = gb_boat_all (boat, GB_RECORD_WEIGHING);
  g_autoptr (GArray) candidates = g_array_new (FALSE, FALSE, sizeof (Candidate));

  for (guint i = 0; i < all->len; i++)
    {
      Candidate candidate = { .standing.weighing = i };

      gb_weighing_work_out (boat, all->pdata[i], &weighed[i]);
      candidate.date = weighed[i].date;
      if (weighed[i].date <= until && find_subject (boat, &weighed[i], &candidate.standing.part))
        g_array_append_val (candidates, candidate);
    }
  g_array_sort (candidates, compare_candidates);

  g_array_set_size (standing, 0);
  for (guint i = 0; i < candidates->len; i++)
    {
      const Candidate *candidate = &g_array_index (candidates, Candidate, i);
      gboolean last = i + 1 == candidates->len || candidate[1].standing.part != candidate->standing.part;

      if (!last)
        continue;
      weighed[candidate->standing.weighing].stands = TRUE;
      g_array_append_val (standing, candidate->standing);
    }
}
