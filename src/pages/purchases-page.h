/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "pages/page.h"

G_BEGIN_DECLS

/* The receipts: date and supplier of each beside its lines. Property "project". Actions: "purchases.add" (a receipt), "purchases.find". */
#define GB_TYPE_PURCHASES_PAGE (gb_purchases_page_get_type ())
G_DECLARE_FINAL_TYPE (GbPurchasesPage, gb_purchases_page, GB, PURCHASES_PAGE, GbPage)

G_END_DECLS
