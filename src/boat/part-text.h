/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat.h"

G_BEGIN_DECLS

/* A part's take-off in one line, as the tree and the parts list show it, in the build's units: "2 × 2350 × 25
 * × 18 mm", "1 × 0.71 m² × 6 mm", "pair, 2 × ...", "2 coats on Hull", "4 pieces". The first number counts
 * both of a pair. A size that is not known is an en dash. Of a group: "pair, 2 off", or "" where there is one
 * of it. Translated; free the result. */
char *gb_part_amount_text (const GbBoat *boat, const GbPart *part);

G_END_DECLS
