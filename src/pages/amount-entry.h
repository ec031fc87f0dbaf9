/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/project.h"

G_BEGIN_DECLS

/* A part's amount as one entry: the sizes that its take-off asks for, in the order in which a builder
 * measures, with an x between them: "2100 x 860 x 6" for a sheet, "2350 x 25 x 18" for a length, "4 x 2350 x
 * 25 x 18" for four of them, "12" for a count. Fewer sizes leave the last ones as they are, and so does a
 * dash in the place of one. Each size takes what its own field takes. */

/* What an editor starts with; NULL for a group. Free it. */
char *gb_amount_edit_text (GbProject *project, const GbPart *part);

/* Reads @text into all parts @ids as one undo. FALSE with a sentence. */
gboolean gb_amount_enter (GbProject *project, const gint64 *ids, guint n_ids, const char *text,
                          GError **error);

G_END_DECLS
