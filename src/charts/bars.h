/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "axis.h"

G_BEGIN_DECLS

/* Level bars of pieces end to end, from zero. */

#define GB_MOST_PIECES 3u

typedef struct
{
  const char *label; /* translated, static */
  GbRole role;
} GbPiece;

/* Draws the pieces, in order, into (y, height). Gives where the last one ends. What is not finite or not over
 * zero has no piece. */
double gb_bar_draw (GbCanvas *canvas,
                    const GbAxis *axis,
                    double y,
                    double height,
                    const GbPiece *pieces,
                    const double *values,
                    guint n);

/* What is said of a place on a bar: a name and, in a second line, its value. */
typedef struct
{
  double at; /* a value of the axis */
  const char *name, *words;
  GbRole role; /* of the words */
} GbBarLabel;

/* Fills @labels with one for the middle of each piece that there is. Gives how many. */
guint gb_bar_label_pieces (
    GbBarLabel *labels, const GbPiece *pieces, const double *values, char *const *words, guint n);

/* Draws labels that are in order, spread out so that none touch, with leaders down to the bar's edge at @y.
 */
#define GB_MOST_BAR_LABELS (GB_MOST_PIECES + 1)
void gb_bar_draw_labels (GbCanvas *canvas, const GbAxis *axis, double y, const GbBarLabel *labels, guint n);
double gb_bar_labels_height (GbCanvas *canvas);

/* Rows of such bars under one scale. The first is the whole, whose pieces carry the labels; the rest stand in
 * the given order, and what does not fit is drawn as one row at the end. */
#define GB_MOST_BAR_ROWS 60u /* are ever shown one by one; those after them need neither name nor words */

typedef struct
{
  char *name;
  char *words; /* at the end of the bar */
  double values[GB_MOST_PIECES];
  double sd;     /* of their sum; 0 or NAN: none */
  double mark;   /* a limit; NAN: none */
  gboolean over; /* the words say that the limit is passed */
} GbBarRow;

void gb_bar_row_clear (GbBarRow *row);

typedef struct
{
  GArray *rows; /* (element-type GbBarRow) */
  const GbPiece *pieces;
  guint n_pieces;
  double factor;                                   /* of the shown unit */
  const char *unit;                                /* its name, or "" */
  char *(*say) (double value, gconstpointer data); /* a value in words */
  gconstpointer data;
} GbBars;

/* Hits are numbered as the rows. */
void gb_bars_draw (const GbBars *bars, GbCanvas *canvas, GbBox box);

G_END_DECLS
