/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/project.h"

G_BEGIN_DECLS

/* What several parts come to, in words: "3 parts selected: 4.2 kg, 18.40 €". @ids without what lies in
 * another of them. Free it. */
char *gb_part_sums_selected (GbProject *project, const gint64 *ids, guint n_ids);

/* How many parts there are: "34 parts". Free it. */
char *gb_part_sums_all (GbProject *project);

/* "28.40 € planned, 12.00 € bought" for a part or group. Free it. */
char *gb_part_sums_cost (GbProject *project, const GbPart *part);

/* The next part after @after (in the tree's order, starting over at the end) that has no mass, or, where all
 * have one, no place. 0: none. */
gint64 gb_part_sums_next_unknown (GbProject *project, gint64 after);
/* "3 parts without a mass", "2 parts without a place"; NULL if all is known. Free it. */
char *gb_part_sums_unknown (GbProject *project);

G_END_DECLS
