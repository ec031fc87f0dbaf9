/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "project/project.h"

G_BEGIN_DECLS

/* The strip along the bottom of every page: weight against its target, flotation against its limit, the centre of gravity, money against the
 * budget, and what is still to buy. Follows the project's "changed". */
#define GB_TYPE_STRIP (gb_strip_get_type ())
G_DECLARE_FINAL_TYPE (GbStrip, gb_strip, GB, STRIP, GtkWidget)

/* NULL lets go. */
void gb_strip_set_project (GbStrip *self, GbProject *project);

G_END_DECLS
