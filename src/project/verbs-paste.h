/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/project.h"

G_BEGIN_DECLS

/* Parts on the clipboard, within a build and between builds. (Rows for a spreadsheet: reports/import.h.) */

/* The parts with all that is in them, and what they refer to, as the text form of a small build. Free it. */
char *gb_project_copy (GbProject *self, const gint64 *ids, guint n_ids);

/* Pastes what gb_project_copy() gave into @owner before the sibling @before (0: last). Materials, stock and
 * budget heads are matched by name with those of the build, or come along. FALSE with a sentence for a text
 * that is none. @copies as for duplicate. */
gboolean gb_project_paste (GbProject *self, const char *text, gint64 owner, gint64 before, GArray **copies,
                           GError **error);

/* The same for parts of a build in memory. */
gboolean gb_project_paste_from (GbProject *self, const GbBoat *from, const gint64 *ids, guint n_ids,
                                gint64 owner, gint64 before, GArray **copies, GError **error);

G_END_DECLS
