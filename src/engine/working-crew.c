/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-working"

/* The crew map: how its places are found, and the row of them that the load is in. */

#include "working-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define EVERY 5 /* places along between two rows of the table */

static char *
place_text (const GbHand *hand, double x, double y)
{
  g_autofree char *along = gb_hand_show (hand, x, GB_DIM_LENGTH), *across = gb_hand_show (hand, y, GB_DIM_LENGTH);

  return g_strdup_printf ("x %s, y %s", along, across);
}

static void
show_best (GbHand *hand, const GbCrewMap *map)
{
  g_autofree char *place = place_text (hand, map->best.x, map->best.y),
                  *freeboard = gb_hand_show (hand, map->best_freeboard, GB_DIM_LENGTH);

  if (isnan (map->best_freeboard))
    gb_hand_say (hand, _ ("She floats with it nowhere"));
  else
    /* Translators: a place and a length. */
    gb_hand_step (hand, _ ("The place where the least freeboard is greatest, sought between the map's places around the best of them"),
                  g_strdup_printf (_ ("%s: %s"), place, freeboard), NULL);
}

static void
show_furthest (GbHand *hand, double furthest, const char *words)
{
  if (!isnan (furthest))
    gb_hand_step (hand, words, gb_hand_show (hand, furthest, GB_DIM_LENGTH), NULL);
}

/* The row of places that @y is in. */
static guint
row_of (const GbCrewMap *map, double y)
{
  double row = floor ((y - map->y0) / (map->y1 - map->y0) * GB_MAP_ROWS);

  return isfinite (row) ? (guint) CLAMP (row, 0, GB_MAP_ROWS - 1) : GB_MAP_ROWS / 2;
}

static void
show_row (GbHand *hand, const GbCrewMap *map, guint row)
{
  gb_hand_columns (hand, "x", _ ("Least freeboard"), _ ("Heel"), _ ("Trim"), NULL);
  for (guint c = EVERY / 2; c < GB_MAP_COLUMNS; c += EVERY)
    {
      const GbCrewPlace *place = &map->places[row][c];

      gb_hand_row (hand,
                   gb_hand_show (hand, map->x0 + (c + 0.5) * (map->x1 - map->x0) / GB_MAP_COLUMNS, GB_DIM_LENGTH),
                   gb_hand_show (hand, place->freeboard, GB_DIM_LENGTH), gb_hand_show (hand, place->heel, GB_DIM_ANGLE),
                   gb_hand_show (hand, place->trim, GB_DIM_ANGLE), NULL);
    }
}

GbWorking *
gb_working_crew (const GbBoat *boat, const GbFindings *findings, const GbCrewMap *map)
{
  GbHand hand = gb_hand_start (boat, findings, g_strdup (_ ("Crew map")));
  const GbLoad *load = map != NULL ? (const GbLoad *) gb_boat_get (boat, GB_RECORD_LOAD, map->load) : NULL;

  hand.working->caution = g_strdup (gb_caution_afloat ());
  if (load == NULL || map->n_rows_found < GB_MAP_ROWS)
    {
      gb_hand_say (&hand, _ ("The map is not found yet"));
      return hand.working;
    }
  gb_hand_step (&hand, _ ("The load is put at each of 60 × 40 places over the hulls, at its own height, and she is let go in sinkage, "
                          "trim and heel until weight and buoyancy balance; there the lowest of her edges gives the least freeboard"),
                gb_hand_show (&hand, map->z, GB_DIM_LENGTH), NULL);
  show_best (&hand, map);
  show_furthest (&hand, map->furthest_port, _ ("From where it is straight across to port, as far as the accepted freeboard lets it"));
  show_furthest (&hand, map->furthest_starboard,
                 _ ("From where it is straight across to starboard, as far as the accepted freeboard lets it"));
  show_row (&hand, map, row_of (map, load->y));
  return hand.working;
}
