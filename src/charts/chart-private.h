/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "canvas.h"
#include "chart.h"

G_BEGIN_DECLS

/* What a chart says, gathered while it is made. */
typedef struct
{
  GString *title;
  GString *subtitle;
  GString *description; /* begins after the title and the subtitle */
} GbChartWords;

#define GB_NO_HIT G_MAXUINT

/* One kind of chart. make() takes what it needs out of the source, writes the words, and gives the data to
 * draw from, or NULL if there is nothing to draw yet; the title then says what belongs here. The rest work on
 * those data alone and change nothing. */
typedef struct
{
  const char *name;
  const char *label; /* untranslated */
  gboolean caution;  /* shows floating: what leaves the screen carries the usual caution */
  gboolean steady;   /* a load is dragged in it: words that change must not move the drawing */
  gpointer (*make) (const GbChartSource *source, GbChartWords *words);
  void (*draw) (gconstpointer data, GbCanvas *canvas, GbBox box);
  /* What is said of, and which part or load is, the 'what' of a hit. May be NULL. */
  char *(*tell) (gconstpointer data, guint what);
  gint64 (*part) (gconstpointer data, guint what);
  gint64 (*load) (gconstpointer data, guint what);
  /* What a point of the picture means in the boat: fills view and place, reckoned in @spot's view, or in the
   * one under the point where that is -1. @what: of the hit there, GB_NO_HIT for none. And what is said of
   * such a place. May be NULL. */
  gboolean (*locate) (
      gconstpointer data, GbCanvas *canvas, GbBox box, double x, double y, guint what, GbChartSpot *spot);
  char *(*tell_place) (gconstpointer data, const GbChartSpot *spot);
  void (*free) (gpointer data);
} GbChartMethod;

extern const GbChartMethod gb_chart_limit;
extern const GbChartMethod gb_chart_groups;
extern const GbChartMethod gb_chart_history;
extern const GbChartMethod gb_chart_boat;
extern const GbChartMethod gb_chart_draught;
extern const GbChartMethod gb_chart_course;
extern const GbChartMethod gb_chart_heads;
extern const GbChartMethod gb_chart_floating;
extern const GbChartMethod gb_chart_freeboard;
extern const GbChartMethod gb_chart_crew;
extern const GbChartMethod gb_chart_righting;
extern const GbChartMethod gb_chart_swamped;

/* How she floats in the source's condition; NULL where that is not known. */
const GbAfloat *gb_source_afloat (const GbChartSource *source);
/* The condition's record; NULL: nobody aboard. */
const GbCondition *gb_source_condition (const GbChartSource *source);
/* Where the centre of a load is shown: where it is dragged to, or where the records have it. */
GbVec3 gb_source_load_centre (const GbChartSource *source, const GbLoad *load);

/* Draws with a canvas that keeps the places of words and hits afterwards. On paper and in files there is no
 * page around the picture that says the caution: there it stands in the picture. */
void gb_chart_render (const GbChart *chart, GbCanvas *canvas, gboolean alone);
void gb_chart_draw_alone (
    GbChart *chart, cairo_t *cr, double width, double height, GbChartStyle style, gboolean alone);

G_END_DECLS
