/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "floating-scene.h"

G_BEGIN_DECLS

/* What the drawing of the boat in the water says. */
void gb_floating_say (GbChartWords *words,
                      const GbFloating *floating,
                      const GbChartSource *source,
                      const GbAfloat *afloat);

/* "aft, to port": in which third of what reaches from @lo to @hi, and at which side; on the centreline within
 * a twentieth of the breadth. Static. */
const char *gb_where_along (GbVec3 lo, GbVec3 hi, GbVec3 p);

/* Why she does not float as she should, without a full stop, as a title wants it. */
void gb_say_state (GString *title, const GbAfloat *afloat);
/* "Two up, 177 kg." */
void gb_say_condition (GString *text, const GbChartSource *source, double total);

/* How she lies, for the key; NULL where it is not known. */
char *gb_lies_words (const GbAfloat *afloat);

G_END_DECLS
