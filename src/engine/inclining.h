/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/afloat.h"

G_BEGIN_DECLS

/* An inclining test: GM = w d / (m tan phi), by least squares through nothing over all readings (tan phi
 * against moved moment), with the standard error of the slope. tan phi = deflection / length of the plumb
 * line. With one reading there is no scatter to judge by: the deviation is NAN. */

/* From @n moments (mass x distance, kg m) and tangents; @mass: displacement, kg. FALSE where no tangent or no
 * moment differs from nothing. */
gboolean gb_inclining_gm (const double *moments, const double *tangents, guint n, double mass, double *gm,
                          double *gm_sd);

/* Tangent of the heel that was read, as an angle or by a plumb line of that length. NAN: not known. */
double gb_shift_tangent (const GbShift *shift, double pendulum);

typedef struct
{
  gint64 inclining; /* id */
  char *trouble;    /* a sentence: no reading, no displacement, readings that disagree; or NULL */
  guint n;          /* readings used */
  double mass;      /* displacement */
  double gm, gm_sd; /* NAN where readings disagree: in the way that she heels, or by more than GM itself */
  double km;        /* computed for that displacement as the condition floats */
  double kg, kg_sd; /* from these: KM - GM, liquids' free surfaces put right */
  double z, z_sd;   /* height of the centre of gravity above the baseline */
  double computed_gm, computed_z; /* of the condition, to set beside them */
} GbInclined;

/* @afloat: how the test's condition floats; NULL: unknown. @inclined starts as zeroes. */
void gb_inclined_find (GbInclined *inclined, const GbBoat *boat, const GbInclining *test,
                       const GbAfloat *afloat);
void gb_inclined_clear (GbInclined *inclined);

G_END_DECLS
