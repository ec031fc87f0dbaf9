/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* A list with its details to the right. Where the window is too narrow for both the details slide over the
 * list. Properties "content" and "side" (GtkWidget), "revealed" (boolean): whether the details are shown.
 * Whether they are while there is room is kept in the settings. */
#define GB_TYPE_SIDE_PANE (gb_side_pane_get_type ())
G_DECLARE_FINAL_TYPE (GbSidePane, gb_side_pane, GB, SIDE_PANE, GtkWidget)

gboolean gb_side_pane_get_revealed (GbSidePane *self);
void gb_side_pane_set_revealed (GbSidePane *self, gboolean revealed);
gboolean gb_side_pane_is_folded (GbSidePane *self);

G_END_DECLS
