/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "boat/boat.h"

G_BEGIN_DECLS

/* A drop-down from which a group of parts is picked: no group first, then the groups as the tree has them. */

/* Makes @drop_down one. Once. */
void gb_group_choice_init (GtkDropDown *drop_down);

/* Lists the groups of @boat; what was picked stays so, while it is there. Returns how many groups there are. */
guint gb_group_choice_fill (GtkDropDown *drop_down, const GbBoat *boat);

/* The id of the group; 0: the top. */
gint64 gb_group_choice_get (GtkDropDown *drop_down);

G_END_DECLS
