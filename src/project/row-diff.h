/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* One run of a difference: at @position of the list as it stands after the runs before, @removed rows go and
 * @added come. */
typedef void (*GbRowRun) (guint position, guint removed, const gint64 *added, guint n_added,
                          gpointer user_data);

/* Sets two lists of keys against each other, each key at most once in a list, and hands out the runs that
 * lead from the one to the other. A row that moves goes and comes; of two that changed places it is the one
 * that went farther. Very many runs are told as one. */
void gb_row_diff (const gint64 *old_keys, guint n_old, const gint64 *new_keys, guint n_new, GbRowRun run,
                  gpointer user_data);

G_END_DECLS
