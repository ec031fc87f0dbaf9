/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "afloat-page.h"
#include "pages/afloat-drag.h"
#include "pages/afloat-facts.h"
#include "pages/crew-view.h"
#include "pages/grid-pane.h"
#include "pages/inclining-log.h"
#include "pages/righting-view.h"
#include "pages/swamped-view.h"
#include "pages/tub-log.h"
#include "widgets/chart-host.h"
#include "widgets/inspector.h"

G_BEGIN_DECLS

struct _GbAfloatPage
{
  GbPage parent_instance;

  GbProject *project; /* the page's own, borrowed */
  gint64 condition;   /* at hand; 0: there is none */
  gint64 load;        /* selected in it; 0: none, or several */
  gboolean dragging;  /* the figures shown are not the findings' */
  GbGrid *touched;    /* whose selection the details show; NULL: the loads', or the condition */

  GbChartHost *charts;
  GbAfloatDrag *drag;
  GbGridPane *conditions;
  GbGridPane *loads;

  GtkStack *main;
  GtkBox *conditions_box;
  GtkBox *loads_box;
  GtkLabel *details_title;
  GbInspector *inspector;
  GbChartArea *drawing;
  GtkWidget *switcher;
  GtkStack *views;
  GbAfloatFacts *facts;
  GtkBox *freeboard_view;
  GbChartArea *freeboard;
  GbCrewView *crew;
  GbRightingView *righting;
  GbSwampedView *swamped;
  GbIncliningLog *inclining;
  GbTubLog *tub;
};

/* afloat-page-charts.c: the charts, the views below the drawing, and loads that are dragged. */

void gb_afloat_page_make_charts (GbAfloatPage *self);
/* Who moves in the crew map; 0: there is nobody. */
gint64 gb_afloat_page_mover (GbAfloatPage *self);
/* Shows the view that is in sight anew. */
void gb_afloat_page_show_view (GbAfloatPage *self);
/* The fields of what is at hand, under its name. */
void gb_afloat_page_show_details (GbAfloatPage *self);

G_END_DECLS
