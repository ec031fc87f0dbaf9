/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "similarity.h"

G_BEGIN_DECLS

/* Lets the boat float with the model's own mass and centre in place of the condition's, and says what part of
 * the difference comes from which. Needs what was read and computed in @tubbed. Returns a sentence where she
 * would not float so, else NULL. */
char *gb_tubbed_explain (GbTubbed *tubbed, GbUnits units, const GbCase *case_, const GbAfloat *afloat);

G_END_DECLS
