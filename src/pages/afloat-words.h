/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/findings.h"

G_BEGIN_DECLS

/* How she floats, in the words of the page and its tables. All translated; free them. */

/* "floats, 212 mm free". @passed, which may be NULL: a limit is passed, or she does not float at all. */
char *gb_afloat_state_words (const GbAfloat *afloat, const GbBuild *build, gboolean *passed);
/* Where the least freeboard is: "Hull, x 1200 mm, to port". */
char *gb_afloat_edge_words (const GbAfloat *afloat, const GbEdgeSet *edges, GbUnits units);
/* "233, 266, 300 mm"; a dash where none is known. */
char *gb_afloat_lengths_words (double a, double b, double c, GbUnits units);
/* "x 1200, y −40 mm"; a dash where it is not known. */
char *gb_afloat_place_words (double x, double y, GbUnits units);
/* "x 1200, y −40, z 300 mm"; without a height as above. */
char *gb_afloat_point_words (GbVec3 p, GbUnits units);
/* "1.2° by the bow"; "3.0° to starboard"; "level", "upright". @angle in radians. */
char *gb_afloat_trim_words (double angle);
char *gb_afloat_heel_words (double angle);
/* "3.2 %"; "under 0.1 %". */
char *gb_afloat_chance_words (double chance);

/* More than one in twenty is too much to go afloat with: the usual bound of a rare event. */
#define GB_TOO_LIKELY 0.05

G_END_DECLS
