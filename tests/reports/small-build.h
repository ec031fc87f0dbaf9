/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/boat.h"
#include "engine/findings.h"

G_BEGIN_DECLS

/* A build so small that it can be worked by hand:
 *
 *   Bottom       2 m x 0.8 m x 6 mm x 500 kg/m3           4.8 kg   x 1.0   C
 *   Side panel   pair of 0.5 m2 x 6 mm: 3.0; scale: 3.2    3.2 kg   x 1.1   A
 *   Mast         lump                                      3.0 kg   x 1.5   E
 *   Tiller       a length of no material                   unknown
 *   Knee         2 of 0.1 kg in a group of which there are 2: 0.4 kg, x 0.5 + 0.2
 *   all                                                   11.4 kg   x (4.8 + 3.52 + 4.5 + 0.28)/11.4
 * = 1.14912
 *
 * By basis 3.0 E, 5.2 C, 3.2 A; margin 15 % of 3.0 and 5 % of 5.2: 0.45 + 0.26 = 0.71. Load: one person of 75
 * kg: 87.11 kg in all. Hull: a block of 2 m x 0.8 m x 0.3 m, which at a draught of 0.15 m displaces 240 l of
 * water of 1000 kg/m3: 240 kg. */
GbBoat *small_build_new (void);

#define SMALL_BUILD_TODAY 739687 /* 12 March 2026 */

GbFindings *small_build_find (const GbBoat *boat);

G_END_DECLS
