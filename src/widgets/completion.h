/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "choices.h"

G_BEGIN_DECLS

/* A list that drops down below an entry while something is typed into it. The entry keeps the focus; the list
 * is walked with the arrow keys and taken from with Enter, Tab or a click.
 *
 * Signal "chosen" (gpointer item): a GbChoiceItem was taken; its text stands in the entry. */
#define GB_TYPE_COMPLETION (gb_completion_get_type ())
G_DECLARE_FINAL_TYPE (GbCompletion, gb_completion, GB, COMPLETION, GtkPopover)

/* Drops down from @parent, which must unparent it in the end. @entry is not kept alive. */
GbCompletion *gb_completion_new (GtkWidget *parent, GtkEditable *entry);

/* Takes ownership of @choices (element-type GbChoiceItem). @strict: only what is listed will do, so that the
 * best match is picked out from the first letter on; else nothing is picked out until an arrow key is used.
 */
void gb_completion_set_choices (GbCompletion *self, GPtrArray *choices, gboolean strict);

/* Shows all choices, whatever was typed, with what stands in the entry picked out. */
void gb_completion_open (GbCompletion *self);
void gb_completion_close (GbCompletion *self);

/* TRUE if the list is open and used the key: the arrows and page keys walk in it, Escape closes it, Enter and
 * Tab take what is picked out. After Enter and Tab the result is FALSE, so that the caller goes on as after
 * any entry. */
gboolean gb_completion_key (GbCompletion *self, guint keyval, GdkModifierType state);

/* What was taken from the list, if its text still stands in the entry, or the one choice that was typed out
 * in full; or NULL. */
const GbChoiceItem *gb_completion_get_chosen (GbCompletion *self);

G_END_DECLS
