/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "pages/page.h"

G_BEGIN_DECLS

/* The build's money: spent, still to buy and forecast against the budget, by head, what is still to buy of each stock, and the course of spending.
 * Property "project". */
#define GB_TYPE_MONEY_PAGE (gb_money_page_get_type ())
G_DECLARE_FINAL_TYPE (GbMoneyPage, gb_money_page, GB, MONEY_PAGE, GbPage)

G_END_DECLS
