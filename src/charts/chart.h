/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "boat/boat.h"
#include "engine/crew-map.h"
#include "engine/findings.h"
#include "engine/history.h"
#include "engine/swamped.h"

G_BEGIN_DECLS

/* Pictures drawn with cairo from findings. A chart takes what it needs when it is made, and can then be drawn
 * on any cairo_t at any size, as often as wanted, on any thread: screen, PDF, SVG, PNG, printer. */

typedef enum
{
  GB_CHART_LIMIT,     /* light craft, margin and loads against the flotation limit and the target */
  GB_CHART_GROUPS,    /* mass by top group, split by basis */
  GB_CHART_HISTORY,   /* forecast and weighed share by date */
  GB_CHART_BOAT,      /* side, plan and end view to scale: hulls, parts, centre of gravity, waterline */
  GB_CHART_DRAUGHT,   /* displacement against draught, with the limit and where she is */
  GB_CHART_COURSE,    /* spent by date against budget and forecast */
  GB_CHART_HEADS,     /* each budget head: spent, still to buy, budget */
  GB_CHART_FLOATING,  /* side, plan and end view in the water as she sits in a condition */
  GB_CHART_FREEBOARD, /* freeboard along each edge */
  GB_CHART_CREW,      /* the crew map: least freeboard, heel and trim for every place of one load */
  GB_CHART_RIGHTING,  /* righting lever against heel */
  GB_CHART_SWAMPED,   /* as she lies full of water, crew holding on */
  GB_N_CHARTS
} GbChartKind;

typedef enum
{
  GB_CHART_LIGHT,
  GB_CHART_DARK,
  GB_CHART_PRINT, /* black on white, thin lines */
} GbChartStyle;

typedef struct _GbChart GbChart;

/* What a chart is made from; all borrowed while it is made. Only boat and findings must be there. */
typedef struct
{
  const GbBoat *boat;
  const GbFindings *findings;
  const GbHistory *history; /* NULL: not known yet; the chart then says so, as with those below */
  const gint64 *selected;   /* ids of parts to light up in the drawing, 0-terminated, or NULL */

  gint64 condition; /* which one the charts of floating show; 0: the first */
  const GbAfloat
      *afloat;     /* how she floats in it; NULL: as the findings have it. Differs while a load is dragged */
  gint64 moved;    /* the load that is dragged, or is picked for the crew map; 0: none */
  GbVec3 moved_to; /* where its centre is shown while it is dragged; NAN: where the records have it */
  const GbRighting *righting;
  const GbCrewMap *crew_map; /* may not be whole yet */
  const GbSwamped *swamped;
} GbChartSource;

GbChart *gb_chart_new (GbChartKind kind, const GbChartSource *source);
GbChart *gb_chart_ref (GbChart *chart);
void gb_chart_unref (GbChart *chart);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbChart, gb_chart_unref)

const char *
gb_chart_kind_name (GbChartKind kind); /* "limit", "groups" ...: on the command line and in file names */
const char *gb_chart_kind_label (GbChartKind kind); /* translated */

const char *gb_chart_title (const GbChart *chart);       /* a finding */
const char *gb_chart_subtitle (const GbChart *chart);    /* what is drawn */
const char *gb_chart_description (const GbChart *chart); /* for a screen reader: the values in words */
gboolean gb_chart_is_empty (const GbChart *chart); /* nothing to draw yet; the title says what belongs here */

/* Draws into (0, 0, width, height), in points (1/72 inch) or logical pixels. */
void gb_chart_draw (GbChart *chart, cairo_t *cr, double width, double height, GbChartStyle style);

/* What lies under the pointer, as a sentence, or NULL; free it. Width and height as last drawn. */
char *gb_chart_tooltip (GbChart *chart, double width, double height, double x, double y);
/* The part under the pointer in GB_CHART_BOAT and GB_CHART_GROUPS; 0 for none. */
gint64 gb_chart_pick (GbChart *chart, double width, double height, double x, double y);

/* What a point of the picture means in the boat. */
typedef struct
{
  GbRecordKind kind; /* GB_RECORD_LOAD or GB_RECORD_PART; GB_N_RECORDS: nothing */
  gint64 id;
  int view;  /* which of the chart's views; -1: none. A drag stays in the view that it began in */
  GbVec3 at; /* in the boat's axes; NAN along the line of sight */
} GbChartSpot;
/* In GB_CHART_FLOATING and GB_CHART_CREW. @view: the view that is reckoned in, -1: the one under the pointer.
 * FALSE where there is none. */
gboolean gb_chart_locate (
    GbChart *chart, double width, double height, double x, double y, int view, GbChartSpot *spot);

typedef enum
{
  GB_CHART_ERROR_SIZE,
  GB_CHART_ERROR_FORMAT,
  GB_CHART_ERROR_FAILED,
} GbChartError;
#define GB_CHART_ERROR (gb_chart_error_quark ())
GQuark gb_chart_error_quark (void);

/* Writes PNG, SVG or PDF by @format ("png", "svg", "pdf"). A file that is there is replaced only by a whole
 * one. */
gboolean gb_chart_export (GbChart *chart,
                          const char *path,
                          const char *format,
                          double width,
                          double height,
                          GbChartStyle style,
                          GError **error);

G_END_DECLS
