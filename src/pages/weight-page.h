/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "pages/page.h"

G_BEGIN_DECLS

/* The boat's weight: a summary against target and flotation limit, the boat to scale, by group, by date, and the weighing log. Property "project". */
#define GB_TYPE_WEIGHT_PAGE (gb_weight_page_get_type ())
G_DECLARE_FINAL_TYPE (GbWeightPage, gb_weight_page, GB, WEIGHT_PAGE, GbPage)

/* Lights up in the drawing what is selected elsewhere: ids of parts that end with 0. NULL: nothing. */
void gb_weight_page_set_selected (GbWeightPage *self, const gint64 *ids);

G_END_DECLS
