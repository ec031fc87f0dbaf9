/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "pages/page.h"
#include "widgets/grid.h"

G_BEGIN_DECLS

/* The tree of parts with the details of what is selected. Its actions stand at the top of parts-page.c. */
#define GB_TYPE_PARTS_PAGE (gb_parts_page_get_type ())
G_DECLARE_FINAL_TYPE (GbPartsPage, gb_parts_page, GB, PARTS_PAGE, GbPage)

GtkWidget *gb_parts_page_new (void);

GbGrid *gb_parts_page_get_grid (GbPartsPage *self);
/* Selects a part and brings it into view. */
void gb_parts_page_show_part (GbPartsPage *self, gint64 id);

G_END_DECLS
