/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/findings.h"
#include "project/edit.h"

G_BEGIN_DECLS

/* Buying moves a part's state. Where @edit writes a receipt's line that buys something new:
 *
 *   - a line for a part moves that part, or what is planned in that group, from planned to bought;
 *   - a line for stock does so for all planned parts that name the stock, once what is on hand and bought
 *     covers the whole need.
 *
 * The parts are put into the same edit. A return, or a line that is taken back, moves nothing: whoever cut
 * the part knows better. */
void gb_buying_complete (GbEdit *edit, const GbBoat *boat, const GbFindings *findings);

G_END_DECLS
