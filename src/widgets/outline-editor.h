/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "boat/records.h"

G_BEGIN_DECLS

/* A window in which an outline with holes is drawn to scale or typed, point by point. The drawing and the
 * text are two views of the same rings: a click adds a point on the nearest edge, a drag moves one, Delete
 * takes it away; a line of text is a point "x y", an empty line starts a hole.
 *
 * Signal "done" (const char *text): the builder kept it; the text is that of outline.h, "" for none. */
#define GB_TYPE_OUTLINE_EDITOR (gb_outline_editor_get_type ())
G_DECLARE_FINAL_TYPE (GbOutlineEditor, gb_outline_editor, GB, OUTLINE_EDITOR, AdwWindow)

/* @text: an outline to start with, which may be one that cannot be read; or NULL. */
GtkWidget *gb_outline_editor_new (GtkWindow *parent, GbUnits units, const char *text);

/* For tests: what the two views hold now. */
GtkTextBuffer *gb_outline_editor_get_buffer (GbOutlineEditor *self);
GtkWidget *gb_outline_editor_get_drawing (GbOutlineEditor *self);

G_END_DECLS
