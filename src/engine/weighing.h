/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/rollup-axes.h"
#include "engine/rollup.h"

G_BEGIN_DECLS

/* Weighings, worked out from their readings.
 *
 * The mass is the sum of the readings less the tare, which is taken as spread evenly over them. Supports tell
 * where the centre is along an axis if each of them says its place on it and they do not all stand at the
 * same one: two trestles one behind the other tell x; three supports that stand apart both ways tell x and y.
 */

/* Standard deviation of one reading where the weighing does not say: 0.5 % of it, or 5 g if that is more.
 * Common practice, no source. */
double gb_reading_sd (const GbWeighing *weighing, double mass);

/* Fills @weighed, except for 'listed' and 'stands'. */
void gb_weighing_work_out (const GbBoat *boat, const GbWeighing *weighing, GbWeighed *weighed);

/* How many of its part lay on the scale; NAN if that is not known. */
double gb_weighing_copies (const GbBoat *boat, const GbWeighing *weighing);

#define GB_WHOLE_BOAT G_MAXUINT

/* One that stands for its part. */
typedef struct
{
  guint part;     /* index, or GB_WHOLE_BOAT */
  guint weighing; /* index */
} GbStanding;

/* Works all weighings of @boat out into @weighed, and puts into @standing (of GbStanding, by part) the latest
 * of each part whose date is not after @until: by date, then by position. */
void gb_weighings_find (GbWeighed *weighed, GArray *standing, const GbBoat *boat, gint64 until);

/* What a weighing says of one: its mass, the centre, and the errors of mass and first moments. @centre holds
 * what is known otherwise, and gets x and y where the supports tell; @told says which. Of a pair that was
 * weighed together the supports do not tell y. */
typedef struct
{
  double mass;
  gboolean told[3];
  GbMoments errors; /* of the mass and of the readings' places in it; of what is not told, as it follows from
                       the mass */
} GbOnScaleOne;

GbOnScaleOne gb_weighing_of_one (const GbBoat *boat,
                                 const GbWeighing *weighing,
                                 const GbWeighed *weighed,
                                 double centre[3]);

G_END_DECLS
