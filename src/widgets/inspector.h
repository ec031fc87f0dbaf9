/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "project/project.h"

G_BEGIN_DECLS

/* All fields of one or several records, those that matter as their take-off or form stands, in the order in
 * which a builder measures, each with its editor. Several records show what they have in common, and an entry
 * goes to all of them. It follows the project by itself. */
#define GB_TYPE_INSPECTOR (gb_inspector_get_type ())
G_DECLARE_FINAL_TYPE (GbInspector, gb_inspector, GB, INSPECTOR, GtkWidget)

GtkWidget *gb_inspector_new (void);

/* No records: shows nothing. */
void gb_inspector_show (GbInspector *self, GbProject *project, GbRecordKind kind, const gint64 *ids,
                        guint n_ids);
/* Keeps what is half typed. FALSE if it is refused. */
gboolean gb_inspector_commit (GbInspector *self);
/* The editor of a field, or NULL while the field is not shown: for tests, and for pages that put the focus
 * there. */
GtkWidget *gb_inspector_find (GbInspector *self, const char *field);

G_END_DECLS
