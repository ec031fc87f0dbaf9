/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "text.h"

G_BEGIN_DECLS

/* An axis: a range in SI (or money, or days) with ticks at round numbers of the unit that the builder reads,
 * and where it runs in the picture. */

#define GB_MOST_TICKS 24u

/* The least of 1, 2 and 5 times a power of ten that is not under @least. */
double gb_round_step (double least);

typedef struct
{
  double value;
  char text[32];
} GbTick;

typedef struct
{
  double from, to;   /* values */
  double start, end; /* their places */
  GbTick ticks[GB_MOST_TICKS];
  guint n_ticks;
} GbAxis;

/* How many ticks go into a length, @each apart. */
guint gb_axis_most_ticks (double length, double each);

/* A range that holds @lo and @hi and begins and ends on a tick. @factor is what one shown unit is worth. At
 * most @most ticks, and at least two; three where it goes from below nothing to above. Anything not finite
 * gives 0 to 1. */
void gb_axis_linear (GbAxis *axis, double lo, double hi, double factor, guint most);
/* From @lo to @hi as they are, with ticks @step shown units apart. */
void gb_axis_within (GbAxis *axis, double lo, double hi, double factor, double step);
/* From @lo to @hi, Julian days, as they are; ticks at days, Mondays, months or years. The first says its
 * year, and each that begins another. */
void gb_axis_dates (GbAxis *axis, gint64 lo, gint64 hi, guint most);

/* Says the unit at the last tick: "250 kg". */
void gb_axis_say_unit (GbAxis *axis, const char *unit);

/* Where a value stands, and how long a difference is. NAN for NAN; places very far off are drawn in to near
 * the axis's ends. */
double gb_axis_at (const GbAxis *axis, double value);
double gb_axis_length (const GbAxis *axis, double difference);
double gb_axis_value (const GbAxis *axis, double place); /* what stands at a place */
double gb_axis_widest (const GbAxis *axis, GbCanvas *canvas);

/* Level axis under a field: tick labels under @y and light lines up to @top. Labels that would touch are left
 * out. */
void gb_axis_draw_below (const GbAxis *axis, GbCanvas *canvas, double y, double top);
void gb_axis_draw_lines (const GbAxis *axis, GbCanvas *canvas, double y, double top); /* without numbers */
/* Upright axis to the left of a field: labels left of @x and light lines to @right. */
void gb_axis_draw_left (const GbAxis *axis, GbCanvas *canvas, double x, double right);

G_END_DECLS
