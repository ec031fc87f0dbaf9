/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* A sentence below a cell or an entry that says what is wrong with what stands in it. It takes neither focus
 * nor clicks. */
#define GB_TYPE_COMPLAINT (gb_complaint_get_type ())
G_DECLARE_FINAL_TYPE (GbComplaint, gb_complaint, GB, COMPLAINT, GtkPopover)

/* @parent must unparent it in the end. */
GbComplaint *gb_complaint_new (GtkWidget *parent);

/* NULL hides it. */
void gb_complaint_say (GbComplaint *self, const char *sentence);
const char *gb_complaint_get_sentence (GbComplaint *self); /* NULL while hidden */

G_END_DECLS
