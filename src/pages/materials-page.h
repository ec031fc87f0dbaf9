/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "pages/page.h"

G_BEGIN_DECLS

/* The materials of the build with what is known of their mass, and the stock that the shop sells or the shed holds. Property "project".
 * Actions: "materials.add" (a material, or stock where that is shown), "materials.find". */
#define GB_TYPE_MATERIALS_PAGE (gb_materials_page_get_type ())
G_DECLARE_FINAL_TYPE (GbMaterialsPage, gb_materials_page, GB, MATERIALS_PAGE, GbPage)

G_END_DECLS
