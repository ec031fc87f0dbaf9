/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "pages/page.h"

G_BEGIN_DECLS

/* The hulls with their stations and offsets or sizes, the loads of the usual condition, and what the hulls carry at each draught. Property
 * "project". Actions: "hulls.add" (a hull), "loads.add" (a load). */
#define GB_TYPE_HULLS_PAGE (gb_hulls_page_get_type ())
G_DECLARE_FINAL_TYPE (GbHullsPage, gb_hulls_page, GB, HULLS_PAGE, GbPage)

G_END_DECLS
