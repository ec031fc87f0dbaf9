/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "axis.h"

G_BEGIN_DECLS

/* A field with an upright axis at its left and a level one below, and words at the right ends of its lines.
 */
typedef struct
{
  GbBox outer, field;
  GbAxis x, y;
} GbPlot;

/* What stands at the right end of a line. */
typedef struct
{
  double value; /* of the y axis; NAN: not there */
  const char *text;
  GbRole role;
} GbEndLabel;

/* Room that an axis title takes above a field, and that labels, with or without a title, take below one. */
double gb_plot_head (GbCanvas *canvas);
double gb_plot_foot (GbCanvas *canvas, gboolean titled);

/* How many ticks an upright axis of that height may have: few, and never crowded. */
guint gb_plot_ticks (GbCanvas *canvas, double height);

double gb_end_labels_width (GbCanvas *canvas, const GbEndLabel *labels, guint n);

/* Sets the field in @outer, with @left and @right room at its sides, and where the axes run. Their ranges are
 * made by the caller. */
void gb_plot_arrange (GbPlot *plot, GbBox outer, double left, double top, double right, double bottom);

/* Each axis with its light lines, its numbers and its title (NULL: none below; dates need none). */
void gb_plot_draw_left (const GbPlot *plot, GbCanvas *canvas, const char *title);
void gb_plot_draw_below (const GbPlot *plot, GbCanvas *canvas, const char *title);

#define GB_MOST_END_LABELS 5u
void gb_plot_end_labels (const GbPlot *plot, GbCanvas *canvas, const GbEndLabel *labels, guint n);

G_END_DECLS
