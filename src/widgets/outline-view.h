/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "outline-shape.h"

G_BEGIN_DECLS

/* The drawing of an outline, to scale, whose points can be added, dragged and taken away. Arrow keys move the
 * point at hand by a millimetre or a sixteenth of an inch, with Shift by ten; Delete removes it.
 *
 * Signal "edited" (): the shape was changed here. */
#define GB_TYPE_OUTLINE_VIEW (gb_outline_view_get_type ())
G_DECLARE_FINAL_TYPE (GbOutlineView, gb_outline_view, GB, OUTLINE_VIEW, GtkWidget)

GtkWidget *gb_outline_view_new (GbUnits units);
/* Takes ownership of @shape. */
void gb_outline_view_set_shape (GbOutlineView *self, GbShape *shape);
const GbShape *gb_outline_view_get_shape (GbOutlineView *self);
void gb_outline_view_remove_point (GbOutlineView *self); /* the one at hand */
/* Where a point of the outline is in the widget, and the reverse. */
graphene_point_t gb_outline_view_to_widget (GbOutlineView *self, GbPoint point);
GbPoint gb_outline_view_from_widget (GbOutlineView *self, double x, double y);

G_END_DECLS
