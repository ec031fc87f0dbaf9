/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-hull-apart"

/* Hulls that lie so far from the rest that they cannot be of one boat: a metre entered as a kilometre, most
 * likely. Hulls within reach of each other make a flock; the flock that holds most is the boat. */

#include "body.h"
#include "hull-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Farther from all others than so many times the longest hull is too far (common sense, no source). */
#define TIMES_THE_LONGEST 3

typedef struct
{
  double low[3], high[3];
  double volume;
  guint flock; /* number of its first hull */
} Place;

static Place
place_of (const GbHullShape *shape, guint i)
{
  Place place = { .volume = gb_body_volume (shape->body), .flock = i };

  for (guint axis = 0; axis < 3; axis++)
    gb_body_extent (shape->body, (GbVec3){ axis == 0, axis == 1, axis == 2 }, &place.low[axis],
                    &place.high[axis]);
  return place;
}

static double
length_of (const Place *place)
{
  double length = 0;

  for (guint axis = 0; axis < 3; axis++)
    length = fmax (length, place->high[axis] - place->low[axis]);
  return length;
}

/* Between the boxes; 0 where they meet. */
static double
distance_between (const Place *a, const Place *b)
{
  double square = 0;

  for (guint axis = 0; axis < 3; axis++)
    {
      double gap = fmax (0, fmax (a->low[axis] - b->high[axis], b->low[axis] - a->high[axis]));

      square += gap * gap;
    }
  return sqrt (square);
}

static Place
mirrored (Place place)
{
  double low = place.low[1];

  place.low[1] = -place.high[1];
  place.high[1] = -low;
  return place;
}

/* The nearest of what there is of two hulls, each of which may be a pair. */
static double
distance_of_hulls (const GbHullSet *set, const Place *places, guint i, guint j)
{
  double distance = distance_between (&places[i], &places[j]);
  Place other = mirrored (places[j]);

  return set->hulls[i].mirrored == NULL && set->hulls[j].mirrored == NULL
             ? distance
             : fmin (distance, distance_between (&places[i], &other));
}

static void
join_flocks (Place *places, guint n, guint a, guint b)
{
  for (guint i = 0; i < n; i++)
    if (places[i].flock == MAX (a, b))
      places[i].flock = MIN (a, b);
}

static double
longest_of (const GbHullSet *set, const Place *places)
{
  double longest = 0;

  for (guint i = 0; i < set->n_hulls; i++)
    if (set->hulls[i].body != NULL)
      longest = fmax (longest, length_of (&places[i]));
  return longest;
}

/* The number of the flock with the greatest volume; of equal ones the first. */
static guint
greatest_flock (const GbHullSet *set, const Place *places)
{
  g_autofree double *volumes = g_new0 (double, set->n_hulls);
  guint greatest = 0;

  for (guint i = 0; i < set->n_hulls; i++)
    if (set->hulls[i].body != NULL)
      volumes[places[i].flock] += places[i].volume;
  for (guint i = 1; i < set->n_hulls; i++)
    if (volumes[i] > volumes[greatest])
      greatest = i;
  return greatest;
}

/* Joins all that are within @reach of each other. */
static void
gather (const GbHullSet *set, Place *places, double reach)
{
  for (guint i = 0; i < set->n_hulls; i++)
    for (guint j = 0; j < i; j++)
      if (set->hulls[i].body != NULL && set->hulls[j].body != NULL && places[i].flock != places[j].flock
          && distance_of_hulls (set, places, i, j) <= reach)
        join_flocks (places, set->n_hulls, places[i].flock, places[j].flock);
}

void
gb_hull_set_check_apart (GbHullSet *set)
{
  g_autofree Place *places = g_new0 (Place, set->n_hulls + 1);
  double reach;
  guint boat;

  for (guint i = 0; i < set->n_hulls; i++)
    if (set->hulls[i].body != NULL)
      places[i] = place_of (&set->hulls[i], i);
  reach = TIMES_THE_LONGEST * longest_of (set, places);
  gather (set, places, reach);
  boat = greatest_flock (set, places);
  for (guint i = 0; i < set->n_hulls; i++)
    {
      Place other = mirrored (places[i]);

      if (set->hulls[i].body == NULL)
        continue;
      if (places[i].flock != boat)
        gb_hull_shape_refuse (
            &set->hulls[i],
            g_strdup (_ ("This hull lies far away from the rest of the boat, more than three times "
                         "her length. Check its x, y and z.")));
      else if (set->hulls[i].mirrored != NULL && distance_between (&places[i], &other) > reach)
        gb_hull_shape_refuse (
            &set->hulls[i],
            g_strdup (_ ("The two hulls of this pair lie far away from each other, more than three "
                         "times their length. Check its y.")));
    }
}
