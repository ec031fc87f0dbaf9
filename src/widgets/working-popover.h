/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "engine/working.h"

G_BEGIN_DECLS

/* Opens a popover at @relative_to that shows how a figure came about: formula in words, then with numbers, its source, the table, the caution, and a
 * button that copies it all as text. Takes ownership of @working. The popover goes away by itself. */
void gb_working_popover_show (GtkWidget *relative_to, GbWorking *working);

/* A flat 'how?' button, which says so to a screen reader as well. */
GtkWidget *gb_how_button_new (void);

G_END_DECLS
