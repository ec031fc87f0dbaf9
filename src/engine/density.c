/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-density"

#include "density.h"

#include <math.h>

#define WOOD_SPREAD 0.10  /* Wood Handbook: coefficient of variation of specific gravity */
#define OTHER_SPREAD 0.05 /* common practice, no source */
#define FIBRE_SATURATION 0.30

double
gb_wood_gravity (double basic_gravity, double m)
{
  double a;

  if (isnan (m))
    return NAN;
  a = m < FIBRE_SATURATION ? (FIBRE_SATURATION - m) / FIBRE_SATURATION : 0;
  return basic_gravity / (1 - 0.265 * a * basic_gravity);
}

double
gb_wood_density (double basic_gravity, double m)
{
  return 1000 * gb_wood_gravity (basic_gravity, m) * (1 + m);
}

/* How much of the material was on the scale, in what its mass is known by: m3, m2 or m. NAN where a side is
 * not known. */
static double
sample_amount (const GbSample *sample, GbMeasure measure)
{
  double amount = sample->pieces * sample->length;

  if (measure != GB_MEASURE_LINEAR)
    amount *= sample->width;
  if (measure == GB_MEASURE_DENSITY || measure == GB_MEASURE_WOOD)
    amount *= sample->thickness;
  return amount > 0 ? amount : NAN;
}

double
gb_sample_figure (const GbSample *sample, GbMeasure measure)
{
  double figure = sample->mass / sample_amount (sample, measure);

  return isfinite (figure) && figure > 0 ? figure : NAN;
}

typedef struct
{
  guint n, n_scales;
  double mean, squares; /* of the figures; sum of squares about the mean */
  double sum_scales;    /* of the scales' relative spreads */
} Samples;

/* Welford's way, so that samples that agree have no spread at all. */
static void
add_figure (Samples *samples, double figure)
{
  double before = figure - samples->mean;

  samples->n++;
  samples->mean += before / samples->n;
  samples->squares += before * (figure - samples->mean);
}

static Samples
read_samples (const GbMaterial *material)
{
  const GPtrArray *records = gb_record_children (&material->rec);
  Samples samples = { 0 };

  for (guint i = 0; i < records->len; i++)
    {
      const GbSample *sample = records->pdata[i];
      double figure = gb_sample_figure (sample, (GbMeasure) material->measure);

      if (isnan (figure))
        continue;
      add_figure (&samples, figure);
      if (!isnan (sample->mass_sd))
        {
          samples.n_scales++;
          samples.sum_scales += sample->mass_sd / sample->mass;
        }
    }
  return samples;
}

/* The larger of the relative standard error of the mean and what the scales allow. One scale errs the same
 * way each time, so that more weighings do not make up for it. 0 where neither is known: a single sample does
 * not tell how others differ, nor do two that a coarse scale makes the same. */
static double
samples_spread (const Samples *samples)
{
  double error = 0;
  double scales = samples->n_scales > 0 ? samples->sum_scales / samples->n_scales : 0;

  if (samples->n > 1)
    error = sqrt (samples->squares / (samples->n - 1) / samples->n) / samples->mean;
  return MAX (error, scales);
}

static double
own_spread (const GbMaterial *material)
{
  if (!isnan (material->spread))
    return material->spread;
  if (material->family == GB_FAMILY_WOOD || material->measure == GB_MEASURE_WOOD)
    return WOOD_SPREAD;
  return OTHER_SPREAD;
}

/* Where the figure stands by which the material's mass is known. */
static double *
main_figure (GbMaterialFigures *figures, GbMeasure measure)
{
  switch (measure)
    {
    case GB_MEASURE_AREAL:
      return &figures->areal_mass;
    case GB_MEASURE_LINEAR:
      return &figures->linear_mass;
    case GB_MEASURE_DENSITY:
    case GB_MEASURE_WOOD:
    default:
      return &figures->density;
    }
}

GbMaterialFigures
gb_material_figures (const GbMaterial *material)
{
  GbMeasure measure = (GbMeasure) material->measure;
  GbMaterialFigures figures = { material->density, NAN, NAN, own_spread (material), 0 };
  Samples samples = read_samples (material);

  if (measure == GB_MEASURE_WOOD)
    figures.density = gb_wood_density (material->basic_gravity, material->moisture);
  else if (measure == GB_MEASURE_AREAL)
    figures.areal_mass = material->areal_mass;
  else if (measure == GB_MEASURE_LINEAR)
    figures.linear_mass = material->linear_mass;

  if (samples.n > 0)
    {
      double spread = samples_spread (&samples);

      *main_figure (&figures, measure) = samples.mean;
      figures.spread = spread > 0 ? spread : figures.spread;
      figures.n_samples = samples.n;
    }
  return figures;
}
