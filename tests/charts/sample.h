/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "charts/chart-private.h"
#include "charts/chart.h"

G_BEGIN_DECLS

/* A build with findings that are filled by hand, so that the pictures are tested apart from the engine. Only the meshes are the engine's own. */
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
} Sample;

Sample *sample_new (SampleKind kind);
void sample_free (Sample *sample);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Sample, sample_free)

GbChart *sample_chart (const Sample *sample, GbChartKind kind);

const char *sample_name (SampleKind kind);

G_END_DECLS
