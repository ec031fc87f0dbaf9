/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Lays out a page whose room is divided among several panes: each divider keeps its share of the page, or
 * what a hand gave it, whatever the size of the window. The children of the page all fill it. */
#define GB_TYPE_DIVIDED_LAYOUT (gb_divided_layout_get_type ())
G_DECLARE_FINAL_TYPE (GbDividedLayout, gb_divided_layout, GB, DIVIDED_LAYOUT, GtkLayoutManager)

GtkLayoutManager *gb_divided_layout_new (void);
/* @divider, somewhere in the page, stands at @share of the page's width or height to begin with, but leaves
 * @wanted pixels behind it (0: none) until a hand moves it. Its start child should not resize by itself. */
void gb_divided_layout_add (GbDividedLayout *self, GtkPaned *divider, double share, int wanted);

G_END_DECLS
