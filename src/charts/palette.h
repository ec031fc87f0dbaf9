/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "chart.h"

G_BEGIN_DECLS

/* The colours of every picture, by what they stand for, defined once. They come from the set of Okabe and
 * Ito, which people with the usual kinds of colour blindness can tell apart ("Color Universal Design", 2008),
 * darkened on white and lightened on black until they stand out well enough. A role's pattern doubles its
 * colour wherever it fills. */
typedef enum
{
  GB_ROLE_BACKGROUND,
  GB_ROLE_TEXT,
  GB_ROLE_QUIET, /* text of the second rank */
  GB_ROLE_LINE,  /* axes, leaders, lines of hulls */
  GB_ROLE_GRID,  /* decoration: the only one that may be faint */
  GB_ROLE_LIMIT, /* a limit, and what is over one */
  GB_ROLE_LIGHT_CRAFT,
  GB_ROLE_MARGIN,
  GB_ROLE_LOADS,
  GB_ROLE_WEIGHED,
  GB_ROLE_CALCULATED,
  GB_ROLE_ESTIMATED,
  GB_ROLE_SPENT,
  GB_ROLE_TO_BUY,
  GB_ROLE_ALLOWANCE,
  GB_ROLE_COURSE, /* the line of a course over time, or of a curve */
  GB_ROLE_WATER,
  GB_ROLE_UNDER, /* what is under water and should not be, or nearer to it than is accepted */
  GB_ROLE_PART,
  GB_ROLE_PICKED,
  GB_N_ROLES
} GbRole;

/* What doubles a colour where it fills, so that a print in grey and every eye can tell the fills apart. */
typedef enum
{
  GB_PATTERN_SOLID,
  GB_PATTERN_HATCH, /* slanting lines: what is not sure */
  GB_PATTERN_LEVEL, /* level lines */
  GB_PATTERN_DOTS,
  GB_N_PATTERNS
} GbPattern;

typedef struct
{
  double r, g, b; /* sRGB, 0 to 1 */
} GbColour;

GbColour gb_role_colour (GbRole role, GbChartStyle style);
GbPattern gb_role_pattern (GbRole role);

/* @share of @a, the rest of @b. */
GbColour gb_colour_mix (GbColour a, GbColour b, double share);

/* Contrast ratio from 1 to 21 (W3C, Web Content Accessibility Guidelines 2.1, "contrast ratio" and "relative
 * luminance"). */
double gb_colour_contrast (GbColour a, GbColour b);

G_END_DECLS
