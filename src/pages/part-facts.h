/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "project/project.h"

G_BEGIN_DECLS

/* What is found of the selected part, group or boat: mass and centre with how they came about, what is
 * missing, cost, and an entry for what the scale says. Of several parts: what they come to. */
#define GB_TYPE_PART_FACTS (gb_part_facts_get_type ())
G_DECLARE_FINAL_TYPE (GbPartFacts, gb_part_facts, GB, PART_FACTS, GtkBox)

/* @boat: the boat's own row is selected, and @ids do not matter. Shown anew at each call; the caller follows
 * the project. */
void gb_part_facts_show (GbPartFacts *self, GbProject *project, const gint64 *ids, guint n_ids,
                         gboolean boat);

G_END_DECLS
