/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/project.h"

G_BEGIN_DECLS

/* Buys: adds @draft (a GbLine, consumed) to the receipt @purchase, or for 0 to a new one of @date and
 * @supplier (NULL: the stock's). What the line leaves open is filled in: kind by what it names, words and
 * price by the stock (a pack's price) or the part (its planned price). One undo. Returns the line's id, or 0
 * with a sentence.
 *
 * Buying moves a part's state, here and wherever else an edit writes a line that buys something new: a line
 * for a part moves that part (all that is planned in a group) from planned to bought; a line for stock moves
 * all planned parts that name the stock, once what is on hand and bought covers the whole need. */
gint64 gb_project_buy (GbProject *self, GbRecord *draft, gint64 purchase, gint64 date, const char *supplier,
                       GError **error);

G_END_DECLS
