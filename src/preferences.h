/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "project/project.h"

G_BEGIN_DECLS

/* Opens the window with what belongs to the person (appearance, units and currency of new builds) and, where a build is open, what belongs to that.
 * @show_build: starts with the latter. @project may be NULL. */
void gb_preferences_present (GtkWindow *parent, GbProject *project, gboolean show_build);

G_END_DECLS
