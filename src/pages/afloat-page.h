/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "pages/page.h"

G_BEGIN_DECLS

/* How she floats: conditions with their loads, the boat in the water as she sits, and below it the figures,
 * the curve or the map that is chosen. Property "project". Action "afloat.add": a new load in the condition
 * at hand. */
#define GB_TYPE_AFLOAT_PAGE (gb_afloat_page_get_type ())
G_DECLARE_FINAL_TYPE (GbAfloatPage, gb_afloat_page, GB, AFLOAT_PAGE, GbPage)
/* The condition at hand; 0: there is none. */
gint64 gb_afloat_page_get_condition (GbAfloatPage *self);

G_END_DECLS
