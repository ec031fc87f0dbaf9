/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/boat.h"

G_BEGIN_DECLS

/* What is known of a material's mass. The figures that a material does not have are NAN. 'spread' is the relative standard
 * deviation, common to all that is made of it; where the builder gives none: 10 % for wood (Wood Handbook, coefficient of variation of
 * specific gravity), else 5 % (common practice, no source). Samples that were weighed stand instead of the given figure: their mean,
 * and as spread the larger of the standard error of that mean and what the scales allow. */
typedef struct
{
  double density;     /* kg/m3 */
  double areal_mass;  /* kg/m2 */
  double linear_mass; /* kg/m */
  double spread;
  guint n_samples; /* weighed samples that were used */
} GbMaterialFigures;

GbMaterialFigures gb_material_figures (const GbMaterial *material);

/* What one sample says of the figure that its material is known by; NAN where a size or the mass is missing. */
double gb_sample_figure (const GbSample *sample, GbMeasure measure);

/* Specific gravity at moisture content @m (a fraction) from the basic one, and the density at that moisture in kg/m3.
 * a = (0.30 - m)/0.30 for m < 0.30, else 0; G = Gb/(1 - 0.265 a Gb); rho = 1000 G (1 + m).
 * Source: Simpson, FPL-GTR-76 (1993), and Wood Handbook FPL-GTR-190 (2010), chapter 4. */
double gb_wood_gravity (double basic_gravity, double m);
double gb_wood_density (double basic_gravity, double m);

G_END_DECLS
