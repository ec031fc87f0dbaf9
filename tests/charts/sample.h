/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "charts/chart-private.h"
#include "charts/chart.h"

G_BEGIN_DECLS

/* A build with findings that are filled by hand, so that the pictures are tested apart from the engine. Only
 * the meshes are the engine's own. */
typedef enum
{
  SAMPLE_PRAM,    /* a pram within its limits, metric */
  SAMPLE_OVER,    /* the same over each of its limits, in feet */
  SAMPLE_EMPTY,   /* nothing entered */
  SAMPLE_UNKNOWN, /* as the pram, with every figure unknown */
  SAMPLE_LARGE,   /* very many groups with long names, and very heavy */
  N_SAMPLES
} SampleKind;

typedef struct
{
  GbBoat *boat;
  GbFindings findings;
  GbHistory history;
  GbRighting *righting; /* NULL: not known */
  GbCrewMap *crew_map;
  GbSwamped *swamped;
  gint64 moved; /* the load at hand */
  GbVec3 moved_to;
} Sample;

/* How it floats, by hand: filled and cleared by sample_new() and sample_free(). */
void sample_set_afloat (Sample *sample, SampleKind kind);
void sample_clear_afloat (Sample *sample);

Sample *sample_new (SampleKind kind);
void sample_free (Sample *sample);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Sample, sample_free)

GbChart *sample_chart (const Sample *sample, GbChartKind kind);

/* The chart of a sample that is gone again: a chart needs nothing more from it. */
GbChart *sample_chart_alone (SampleKind kind, GbChartKind chart);

const char *sample_name (SampleKind kind);

/* Each chart of each sample. */
typedef void (*SampleCheck) (GbChart *chart, GbChartKind kind, SampleKind sample);
void sample_for_each_chart (SampleCheck check);

/* Draws it, and cairo has nothing to say against that. */
void sample_assert_draws (GbChart *chart, double width, double height, GbChartStyle style);

/* No words over others, and none cut by the edge. */
void
sample_assert_words_apart (GbChart *chart, const char *what, double width, double height, GbChartStyle style);

/* Something to draw on; a blank one takes no paint, for the places of what is drawn alone. */
typedef struct
{
  cairo_surface_t *surface;
  cairo_t *cr;
  GbCanvas canvas;
} Paper;

void paper_init (Paper *paper, double width, double height, GbChartStyle style);
void paper_init_blank (Paper *paper, double width, double height, GbChartStyle style);
void paper_clear (Paper *paper);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Paper, paper_clear)

G_END_DECLS
