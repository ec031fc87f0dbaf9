/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Makes the templates and icons known. The application calls it before it starts up, and then finds style and icons by itself. */
void gb_resources_register (void);

/* The same and the style sheet, for windows without the application: tests. Call after the toolkit is initialised. */
void gb_widgets_init (void);

G_END_DECLS
