/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "axis.h"

G_BEGIN_DECLS

/* A field with an upright axis at its left and a level one below, and words at the right ends of its lines. */
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

/* Room that an axis title takes above a field, and that labels and a title take below one. */
double gb_plot_head (GbCanvas *canvas);
double gb_plot_foot (GbCanvas *canvas);

double gb_end_labels_width (GbCanvas *canvas, const GbEndLabel *labels, guint n);

/* Sets the field in @outer, with @left and @right room at its sides, and where the axes run. Their ranges are made by the caller. */
void gb_plot_arrange (GbPlot *plot, GbBox outer, double left, double top, double right, double bottom);

/* Each axis with its light lines, its numbers and its title. */
void gb_plot_draw_left (const GbPlot *plot, GbCanvas *canvas, const char *title);
void gb_plot_draw_below (const GbPlot *plot, GbCanvas *canvas, const char *title);

#define GB_MOST_END_LABELS 5u
void gb_plot_end_labels (const GbPlot *plot, GbCanvas *canvas, const GbEndLabel *labels, guint n);

/* "2025", or "2024–2026": what the ticks of a date axis may leave out. */
char *gb_years_of (const GbAxis *axis);

G_END_DECLS
