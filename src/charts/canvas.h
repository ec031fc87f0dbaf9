/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <pango/pangocairo.h>

#include "palette.h"

G_BEGIN_DECLS

/* One drawing under way. All lengths come from its size alone, never from what it is drawn on, so the same
 * picture comes out on a screen, on paper and where only its places are wanted. While it is drawn it keeps
 * where words stand, so that none are set over others, and where the pointer finds something. */

typedef struct
{
  double x, y, width, height;
} GbBox;

/* A place that the pointer finds; the chart's own number says what is there. */
typedef struct
{
  GbBox box;
  guint what;
} GbHit;

typedef struct
{
  cairo_t *cr;
  double width, height;
  double em; /* size of the smallest text, which other distances are multiples of */
  GbChartStyle style;
  PangoContext *pango;
  GArray *words; /* (element-type GbBox) */
  GArray *marks; /* (element-type GbBox) what words that can move keep off */
  GbBox room;    /* where words that can move may stand; at first the whole */
  GArray *hits;  /* (element-type GbHit) the last one lies on top */
} GbCanvas;

void gb_canvas_init (GbCanvas *canvas, cairo_t *cr, double width, double height, GbChartStyle style);
void gb_canvas_clear (GbCanvas *canvas);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (GbCanvas, gb_canvas_clear)

void gb_canvas_hit (GbCanvas *canvas, GbBox box, guint what);
const GbHit *gb_hits_find (const GArray *hits, double x, double y); /* NULL: none */

void gb_canvas_mark (GbCanvas *canvas, GbBox box);
void gb_canvas_mark_line (GbCanvas *canvas, double x1, double y1, double x2, double y2);

gboolean gb_box_overlaps (GbBox a, GbBox b);
gboolean gb_box_holds (GbBox box, double x, double y);
GbBox gb_box_around (double x, double y, double reach);
/* @box made smaller by these at each side. */
GbBox gb_box_inset (GbBox box, double left, double top, double right, double bottom);

void gb_canvas_colour (GbCanvas *canvas, GbRole role);
/* A colour between @role and the background, for fills that carry no meaning of their own. */
void gb_canvas_tint (GbCanvas *canvas, GbRole role, double share);

/* Lines; @weight is in hairlines, of which one is a pixel at usual sizes. */
void gb_canvas_stroke (GbCanvas *canvas, GbRole role, double weight);
void
gb_canvas_line (GbCanvas *canvas, GbRole role, double weight, double x1, double y1, double x2, double y2);
void
gb_canvas_dashed (GbCanvas *canvas, GbRole role, double weight, double x1, double y1, double x2, double y2);
void gb_canvas_dot (GbCanvas *canvas, GbRole role, double x, double y, double radius);
/* From -@half to +@half about @x, with short ends: one standard deviation either way. */
void gb_canvas_whisker (GbCanvas *canvas, double x, double y, double half);

G_END_DECLS
