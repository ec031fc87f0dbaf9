/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/edit.h"

G_BEGIN_DECLS

/* A part that names stock takes its material, thickness or section from there. Where @edit gives a part that the build has already other stock, what
 * the part itself said of those is let go in the same edit, so that the stock's figures show and count; what the edit writes anew stays. Saying them
 * again later stands first: a board may be planed thinner than it is sold. */
void gb_stocking_complete (GbEdit *edit, const GbBoat *boat);

G_END_DECLS
